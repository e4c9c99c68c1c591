//! Points of the request on the runs: where a pile, a point load or a forced point
//! stands, and where a line load lies.

use super::{Plan, Point, TOLERANCE};
use crate::catalogue::RefusalDef;
use crate::contract::Issue;
use crate::layout::request::PlanPoint;
use crate::quantity::in_both_systems;

/// A place on the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::layout) struct Place {
    /// The run; the first of those that meet here.
    pub run: usize,
    /// Where on that run.
    pub at: f64,
    /// The meeting, where runs meet here.
    pub meeting: Option<usize>,
}

/// Where faults of a list of points are filed.
pub(in crate::layout) struct Faults<'a> {
    /// Asked for where there is a fault.
    pub pointer: &'a dyn Fn() -> String,
    pub code: &'static RefusalDef,
    pub issues: &'a mut Vec<Issue>,
}

impl Plan {
    /// The place of a point, or a fault with the distance to the nearest beam.
    pub fn locate(&self, point: &PlanPoint, faults: Faults<'_>) -> Option<Place> {
        let p = Point {
            x: point.x.si() - self.corner.x,
            y: point.y.si() - self.corner.y,
        };
        let mut nearest = (f64::INFINITY, 0, 0.0);
        for (r, run) in self.runs.iter().enumerate() {
            let way = run.start.to(p);
            let along = way.dot(run.direction);
            let off = way.cross(run.direction).abs();
            if off >= nearest.0 {
                continue;
            }
            let at = along.clamp(0.0, run.length);
            let distance = if at == along {
                off
            } else {
                run.point(at).distance(p)
            };
            if distance < nearest.0 {
                nearest = (distance, r, at);
            }
        }
        let (distance, run, at) = nearest;
        if distance > TOLERANCE {
            faults.issues.push(
                Issue::new(
                    (faults.pointer)(),
                    faults.code,
                    format!(
                        "the nearest beam is {}, {} away",
                        self.called[self.runs[run].beam_at(at)],
                        in_both_systems(distance, "m")
                    ),
                )
                .limit(in_both_systems(TOLERANCE, "m")),
            );
            return None;
        }
        Some(self.settle(run, at))
    }

    /// A place on a run, moved onto a meeting, a joint or an end that it is next to.
    pub fn settle(&self, run: usize, at: f64) -> Place {
        let r = &self.runs[run];
        let near = |x: f64| (x - at).abs() <= TOLERANCE;
        if let Some(mark) = r.meetings.iter().find(|m| near(m.at)) {
            let (first, place) = self.meetings[mark.meeting].on[0];
            return Place {
                run: first,
                at: place,
                meeting: Some(mark.meeting),
            };
        }
        let fixed = [0.0, r.length].into_iter().chain(r.joints());
        Place {
            run,
            at: fixed.into_iter().find(|x| near(*x)).unwrap_or(at),
            meeting: None,
        }
    }

    /// The place of a place along a beam; beside an opening without a beam, on the part
    /// before it or after it.
    pub fn along_beam(&self, beam: usize, at: f64, before: bool) -> (usize, f64) {
        let parts = &self.beam_parts[beam];
        let i = if before {
            parts.partition_point(|p| p.to < at - TOLERANCE)
        } else {
            parts
                .partition_point(|p| p.from <= at + TOLERANCE)
                .saturating_sub(1)
        };
        parts[i.min(parts.len() - 1)].on_run(at)
    }

    /// The point of a place.
    pub fn point_of(&self, place: &Place) -> Point {
        self.runs[place.run].point(place.at)
    }
}
