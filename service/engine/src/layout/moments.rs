//! Couples of the request on the runs. Forces and line loads are in `frame`.

use super::codes::refusals;
use super::combine::Loading;
use super::plan::{Plan, Point, TOLERANCE};
use super::request::{PlanPointMoment, Request};
use crate::beam::{Load, Shape};
use crate::contract::Issue;
use crate::quantity::in_both_systems;

/// Lays the couples onto the runs; faults go to `issues`.
pub(super) fn lay(
    request: &Request,
    plan: &Plan,
    loading: &Loading,
    beam_labels: &[String],
    loads: &mut [Vec<Load>],
    issues: &mut Vec<Issue>,
) {
    for (i, m) in request.point_moments.iter().flatten().enumerate() {
        let case = loading.case(m.kind, m.case.as_ref().map(|c| c.as_str()));
        let Some(beam) = beam_labels.iter().position(|l| l == m.beam.as_str()) else {
            issues.push(Issue::new(
                format!("/point_moments/{i}/beam"),
                &refusals::MOMENT_OFF_BEAM,
                "no beam has this label",
            ));
            continue;
        };
        let place = on_beam(plan, beam, m, i, issues);
        if let (Some((run, at, forward)), Some(case)) = (place, case) {
            let moment = m.moment.si();
            loads[run].push(Load {
                case,
                shape: Shape::Couple {
                    at,
                    moment: if forward { moment } else { -moment },
                },
            });
        }
    }
}

/// The run, the place on it, and whether the beam runs the same way; the earlier part at a
/// corner of the beam.
fn on_beam(
    plan: &Plan,
    beam: usize,
    m: &PlanPointMoment,
    number: usize,
    issues: &mut Vec<Issue>,
) -> Option<(usize, f64, bool)> {
    let p = Point {
        x: m.at.x.si() - plan.corner.x,
        y: m.at.y.si() - plan.corner.y,
    };
    let mut nearest = (f64::INFINITY, 0, 0.0, true);
    for part in &plan.beam_parts[beam] {
        let run = &plan.runs[part.run];
        let (low, high) = (
            part.run_from.min(part.run_to),
            part.run_from.max(part.run_to),
        );
        let at = run.start.to(p).dot(run.direction).clamp(low, high);
        let distance = run.point(at).distance(p);
        // what rounding alone brings nearer is the same corner
        if distance < nearest.0 - 1e-9 {
            nearest = (distance, part.run, at, part.run_from < part.run_to);
        }
    }
    let (distance, run, at, forward) = nearest;
    if distance > TOLERANCE {
        issues.push(
            Issue::new(
                format!("/point_moments/{number}/at"),
                &refusals::MOMENT_OFF_BEAM,
                format!("the beam is {} away", in_both_systems(distance, "m")),
            )
            .limit(in_both_systems(TOLERANCE, "m")),
        );
        return None;
    }
    let r = &plan.runs[run];
    let fixed = r.meetings.iter().map(|m| m.at).chain([0.0, r.length]);
    let at = fixed
        .chain(r.joints())
        .find(|x| (x - at).abs() <= TOLERANCE)
        .unwrap_or(at);
    Some((run, at, forward))
}
