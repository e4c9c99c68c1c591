//! Capacities over the depth of the lowest helix, and where they jump.

use super::codes::{methods, refusals, warnings};
use super::depths::{AtDepth, LEAST_HELIX_DEPTH, Movable};
use super::expected_torque::TorqueLaw;
use super::findings::{CurveSummary, DepthAndUltimate, DepthCurveFindings};
use super::pile::AxialDirection;
use super::plates::told;
use super::questions::DepthCurve;
use super::rule::DesignRule;
use super::solve::Solution;
use crate::answer_table::{AnswerColumn, AnswerTable, Cell};
use crate::contract::{Issue, Refusal, Work};
use crate::quantity::{Force, Length, Torque};

/// Least change of the ultimate resistance at one depth that is told as a jump.
const JUMP_RATIO: f64 = 0.01;
/// Half of the distance between the two sides of a depth that are compared, m.
const JUMP_GAP_M: f64 = 1e-4;
/// Most jumps told of in a direction.
const JUMPS_TOLD: usize = 20;

/// Faults of a range of depths; `at` is its pointer.
pub(crate) fn range_faults(
    pile: &Movable,
    from: Length,
    to: Length,
    at: &str,
    issues: &mut Vec<Issue>,
) {
    if from.si() >= to.si() {
        issues.push(Issue::new(
            format!("{at}/to"),
            &refusals::DEPTH_RANGE_INVERTED,
            format!("from {} to {}", told(from), told(to)),
        ));
        return;
    }
    let shallowest = pile.span() + LEAST_HELIX_DEPTH;
    if from.si() < shallowest.si() - 1e-9 {
        issues.push(
            Issue::new(
                format!("{at}/from"),
                &refusals::DEPTH_RANGE_ABOVE_GROUND,
                format!(
                    "with the lowest helix at {} the top helix is less than {} deep",
                    told(from),
                    told(LEAST_HELIX_DEPTH)
                ),
            )
            .limit(told(shallowest)),
        );
    }
    let faults = pile.faults_between(from, to).into_iter();
    issues.extend(faults.map(|issue| Issue {
        pointer: format!("{at}/to"),
        ..issue
    }));
}

/// The curve of a range without faults.
pub(crate) fn curve(
    asked: &DepthCurve,
    pile: &mut Movable,
    rules: &[(AxialDirection, DesignRule)],
    torque: Option<&TorqueLaw>,
    work: &mut Work,
) -> Result<DepthCurveFindings, Refusal> {
    work.method(&methods::DEPTH_CURVE);
    let last = f64::from(asked.depth_count - 1);
    let mut sides = [None, None];
    let mut rows = Vec::new();
    for k in 0..asked.depth_count {
        work.go_on()?;
        let depth = if k + 1 == asked.depth_count {
            asked.to
        } else {
            asked.from + (asked.to - asked.from) * (f64::from(k) / last)
        };
        let at = pile.at(depth);
        for (side, solution) in sides.iter_mut().zip([at.compression, at.tension]) {
            if let Some(solution) = solution {
                grow(side, depth, solution.ultimate);
            }
        }
        if asked.points == Some(true) {
            rows.push(row(depth, &at, rules, torque));
        }
    }
    tell_jumps(asked, pile, work);
    let points = (asked.points == Some(true)).then(|| AnswerTable {
        columns: columns(&pile.at(asked.to), rules, torque),
        rows,
    });
    let [compression, tension] = sides;
    Ok(DepthCurveFindings {
        from: asked.from,
        to: asked.to,
        depth_count: asked.depth_count,
        compression,
        tension,
        points,
    })
}

fn grow(side: &mut Option<CurveSummary>, depth: Length, ultimate: Force) {
    let here = DepthAndUltimate { depth, ultimate };
    let summary = side.get_or_insert(CurveSummary {
        least: here,
        greatest: here,
    });
    if ultimate < summary.least.ultimate {
        summary.least = here;
    }
    if ultimate > summary.greatest.ultimate {
        summary.greatest = here;
    }
}

/// Solutions of a depth with the names of their columns.
fn named(at: &AtDepth) -> impl Iterator<Item = (AxialDirection, [&'static str; 4], Solution)> {
    let compression = at.compression.map(|s| {
        let names = [
            "compression_ultimate",
            "compression_individual",
            "compression_cylinder",
            "compression_capacity",
        ];
        (AxialDirection::Compression, names, s)
    });
    let tension = at.tension.map(|s| {
        let names = [
            "tension_ultimate",
            "tension_individual",
            "tension_cylinder",
            "tension_capacity",
        ];
        (AxialDirection::Tension, names, s)
    });
    compression.into_iter().chain(tension)
}

fn rule_of(
    rules: &[(AxialDirection, DesignRule)],
    direction: AxialDirection,
) -> Option<&DesignRule> {
    rules.iter().find(|(d, _)| *d == direction).map(|(_, r)| r)
}

fn columns(
    at: &AtDepth,
    rules: &[(AxialDirection, DesignRule)],
    torque: Option<&TorqueLaw>,
) -> Vec<AnswerColumn> {
    let force = |name| AnswerColumn::of(name, Force::ROLE);
    let mut columns = vec![AnswerColumn::of("depth", Length::ROLE)];
    for (direction, [ultimate, individual, cylinder, capacity], _) in named(at) {
        columns.extend([force(ultimate), force(individual), force(cylinder)]);
        if direction == AxialDirection::Compression {
            columns.push(force("compression_punching"));
        }
        if rule_of(rules, direction).is_some() {
            columns.push(force(capacity));
        }
    }
    if torque.is_some() {
        columns.push(AnswerColumn::of("torque", Torque::ROLE));
    }
    columns
}

fn row(
    depth: Length,
    at: &AtDepth,
    rules: &[(AxialDirection, DesignRule)],
    torque: Option<&TorqueLaw>,
) -> Vec<Cell> {
    let mut cells = vec![Cell::of(depth)];
    for (direction, _, s) in named(at) {
        let cylinder = s.cylinder.map_or(s.individual, |c| c.total);
        cells.extend([s.ultimate, s.individual, cylinder].map(Cell::of));
        if direction == AxialDirection::Compression {
            cells.push(Cell::of(s.held));
        }
        if let Some(rule) = rule_of(rules, direction) {
            cells.push(Cell::of(rule.capacity(s.ultimate)));
        }
    }
    if let Some(torque) = torque {
        cells.push(Cell::of(torque.at(at).expected));
    }
    cells
}

/// Tells of the depths at which an ultimate resistance jumps.
fn tell_jumps(asked: &DepthCurve, pile: &mut Movable, work: &mut Work) {
    let mut found: Vec<(AxialDirection, Length)> = Vec::new();
    for depth in pile.jumps(asked.from, asked.to) {
        let gap = Length::from_si(JUMP_GAP_M);
        let (above, below) = (pile.at(depth - gap), pile.at(depth + gap));
        for ((direction, _, a), (_, _, b)) in named(&above).zip(named(&below)) {
            let most = a.ultimate.max(b.ultimate).si();
            let change = (b.ultimate - a.ultimate).si();
            if change.abs() > JUMP_RATIO * most {
                found.push((direction, depth));
            }
        }
    }
    for direction in [AxialDirection::Compression, AxialDirection::Tension] {
        let here = found.iter().filter(|(d, _)| *d == direction);
        let mut depths: Vec<String> = here.map(|(_, depth)| told(*depth)).collect();
        if depths.len() > JUMPS_TOLD {
            depths.truncate(JUMPS_TOLD);
            depths.push("and more".to_owned());
        }
        if !depths.is_empty() {
            work.warn(
                &warnings::CAPACITY_JUMPS,
                format!(
                    "in {} as the lowest helix passes {}",
                    direction.name(),
                    depths.join(", ")
                ),
            );
        }
    }
}
