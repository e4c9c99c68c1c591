//! The plan with its loads and rigidities, and the network it becomes once piles stand on
//! it. Does not place piles and forms no combinations.

use super::codes::refusals;
use super::combine::{Combination, Loading};
use super::moments;
use super::outline;
use super::plan::{Faults, Place, Plan};
use super::request::{BeamLineLoad, BeamTorsion, GradeBeam, Request};
use super::slab::{self, Laid};
use super::strength::BeamStrength;
use crate::beam::{Line, LineNode, Load, Network, Shape, Support, Torsion};
use crate::contract::Issue;
use crate::quantity::in_both_systems;
use crate::trace::Trace;

/// Places along a beam that differ by less than this are equal (rounding of units), m.
const SAME: f64 = 1e-9;

/// Rigidity where none was sent: with all beams alike it cancels out on rigid supports.
const ALIKE: f64 = 1.0;

/// A plan ready to be put on piles.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Frame {
    pub plan: Plan,
    /// Loads of every run.
    pub loads: Vec<Vec<Load>>,
    /// Flexural rigidity of every beam, N m2.
    pub rigidity: Vec<f64>,
    /// Torsional rigidity of every beam, N m2; none where torsion is released.
    pub torsion: Option<Vec<f64>>,
    /// Number of load cases.
    pub cases: usize,
    /// What every beam is held against; see `take_strengths`.
    pub strength: Vec<BeamStrength>,
}

impl Frame {
    /// Puts the loads onto the runs, those of slabs among them; faults go to `issues`.
    pub fn of(
        request: &Request,
        plan: Plan,
        loading: &Loading,
        (beam_labels, slabs): (&[String], &[Laid]),
        trace: &mut Trace,
        issues: &mut Vec<Issue>,
    ) -> Self {
        let mut loads: Vec<Vec<Load>> = vec![Vec::new(); plan.runs.len()];
        for (b, beam) in request.beams.iter().enumerate() {
            for (i, l) in beam.line_loads.iter().flatten().enumerate() {
                let name = l.case.as_ref().map(|c| c.as_str());
                let case = loading.case(l.kind, name);
                let pointer = || format!("/beams/{b}/line_loads/{i}");
                if let (Some(range), Some(case)) =
                    (extent(l, plan.beam_length[b], &pointer, issues), case)
                {
                    let row = (b, beam, l);
                    spread(&plan, row, range, case, trace, &mut loads);
                }
            }
        }
        for (i, l) in request.point_loads.iter().flatten().enumerate() {
            let faults = Faults {
                pointer: &|| format!("/point_loads/{i}/at"),
                code: &refusals::POINT_LOAD_OFF_BEAM,
                issues,
            };
            let place = plan.locate(&l.at, faults);
            let case = loading.case(l.kind, l.case.as_ref().map(|c| c.as_str()));
            if let (Some(place), Some(case)) = (place, case) {
                loads[place.run].push(Load {
                    case,
                    shape: Shape::Point {
                        at: place.at,
                        force: l.load.si(),
                    },
                });
            }
        }
        for (run, load) in slab::loads(slabs) {
            loads[run].push(load);
        }
        moments::lay(request, &plan, loading, beam_labels, &mut loads, issues);
        for (run, own) in plan.runs.iter().zip(&mut loads) {
            own.sort_by(order);
            // a station where one beam goes over into another
            own.extend(run.joints().map(|at| Load {
                case: 0,
                shape: Shape::Point { at, force: 0.0 },
            }));
        }
        Self {
            rigidity: request
                .beams
                .iter()
                .map(|b| b.flexural_rigidity.map_or(ALIKE, |r| r.si()))
                .collect(),
            torsion: (request.beam_torsion == Some(BeamTorsion::Included)).then(|| {
                let all = request.beams.iter();
                all.map(|b| b.torsional_rigidity.map_or(ALIKE, |r| r.si()))
                    .collect()
            }),
            cases: loading.cases.len(),
            strength: Vec::new(),
            plan,
            loads,
        }
    }

    /// The network on piles at these places; `stiffness` of each makes them springs, unless
    /// it is infinite. The first nodes are the piles, in their order.
    pub fn network(&self, piles: &[Place], stiffness: Option<&[f64]>) -> Network {
        let mut supports: Vec<Support> = (0..piles.len())
            .map(|i| match stiffness {
                Some(k) if k[i].is_finite() => Support::Spring(k[i]),
                _ => Support::Rigid,
            })
            .collect();
        let mut at_meeting: Vec<Option<usize>> = vec![None; self.plan.meetings.len()];
        let mut on_run: Vec<Vec<LineNode>> = vec![Vec::new(); self.plan.runs.len()];
        for (node, pile) in piles.iter().enumerate() {
            match pile.meeting {
                Some(m) => at_meeting[m] = Some(node),
                None => on_run[pile.run].push(LineNode { node, at: pile.at }),
            }
        }
        for (meeting, node) in self.plan.meetings.iter().zip(&mut at_meeting) {
            let node = *node.get_or_insert_with(|| {
                supports.push(Support::Free);
                supports.len() - 1
            });
            for (run, at) in &meeting.on {
                on_run[*run].push(LineNode { node, at: *at });
            }
        }
        let mut lines = Vec::with_capacity(on_run.len());
        for (r, mut nodes) in on_run.into_iter().enumerate() {
            self.rigidity_changes(r, &mut nodes, &mut supports);
            nodes.sort_by(|a, b| a.at.total_cmp(&b.at));
            let run = &self.plan.runs[r];
            lines.push(Line {
                length: run.length,
                rigidity: nodes
                    .iter()
                    .take(nodes.len().saturating_sub(1))
                    .map(|n| self.rigidity[run.beam_after(n.at)])
                    .collect(),
                nodes,
                loads: self.loads[r].clone(),
            });
        }
        Network {
            torsion: self.torsion.as_ref().map(|gj| self.twisted(&lines, gj)),
            supports,
            lines,
            cases: self.cases,
        }
    }

    fn twisted(&self, lines: &[Line], beams: &[f64]) -> Torsion {
        let runs = &self.plan.runs;
        let of_line = |(r, line): (usize, &Line)| -> Vec<f64> {
            let spans = line.nodes.iter().take(line.rigidity.len());
            spans.map(|n| beams[runs[r].beam_after(n.at)]).collect()
        };
        Torsion {
            direction: runs
                .iter()
                .map(|r| (r.direction.x, r.direction.y))
                .collect(),
            rigidity: lines.iter().enumerate().map(of_line).collect(),
        }
    }

    /// A free node wherever the rigidity changes between two nodes of a run.
    fn rigidity_changes(&self, r: usize, nodes: &mut Vec<LineNode>, supports: &mut Vec<Support>) {
        let run = &self.plan.runs[r];
        for pair in run.parts.windows(2) {
            let at = pair[0].to;
            let differ = |of: &[f64]| of[pair[0].beam] != of[pair[1].beam];
            let changes = differ(&self.rigidity) || self.torsion.as_deref().is_some_and(differ);
            let inside = nodes.iter().any(|n| n.at < at) && nodes.iter().any(|n| n.at > at);
            if changes && inside && nodes.iter().all(|n| n.at != at) {
                supports.push(Support::Free);
                nodes.push(LineNode {
                    node: supports.len() - 1,
                    at,
                });
            }
        }
    }

    /// Sum of all loads and of their sizes, in one combination.
    pub fn total_load(&self, factors: &[f64]) -> (f64, f64) {
        total(self.forces(), factors)
    }

    /// [`Frame::total_load`] in every combination.
    pub fn total_loads(&self, combinations: &[Combination]) -> Vec<(f64, f64)> {
        let forces: Vec<(usize, f64)> = self.forces().collect();
        let each = combinations.iter();
        each.map(|c| total(forces.iter().copied(), &c.factors))
            .collect()
    }

    /// The case and the force of every load.
    fn forces(&self) -> impl Iterator<Item = (usize, f64)> + '_ {
        let loads = self.loads.iter().flatten();
        loads.map(|load| (load.case, resultant(&load.shape).0))
    }
}

/// Sum of forces in a combination, and sum of their sizes.
fn total(forces: impl Iterator<Item = (usize, f64)>, factors: &[f64]) -> (f64, f64) {
    let (mut total, mut size) = (0.0, 0.0);
    for (case, force) in forces {
        let f = factors[case] * force;
        total += f;
        size += f.abs();
    }
    (total, size)
}

/// Force of a load and its moment about the start of the run.
///
/// F = (q0 + q1) l/2, M = F a + l2 (q0 + 2 q1)/6 for a load from a over l. Source: statics.
pub(super) fn resultant(shape: &Shape) -> (f64, f64) {
    match *shape {
        Shape::Point { at, force } => (force, force * at),
        Shape::Couple { moment, .. } => (0.0, moment),
        Shape::Spread {
            from,
            to,
            start,
            end,
        } => {
            let l = to - from;
            let force = 0.5 * (start + end) * l;
            (force, force * from + l * l * (start + 2.0 * end) / 6.0)
        }
    }
}

fn extent(
    load: &BeamLineLoad,
    length: f64,
    pointer: &dyn Fn() -> String,
    issues: &mut Vec<Issue>,
) -> Option<(f64, f64)> {
    let from = load.from.map_or(0.0, |v| v.si());
    let to = load.to.map_or(length, |v| v.si());
    if to > length + super::plan::TOLERANCE || from >= to - SAME {
        issues.push(
            Issue::new(
                pointer(),
                &refusals::LINE_LOAD_OFF_BEAM,
                format!(
                    "from {} to {}",
                    in_both_systems(from, "m"),
                    in_both_systems(to, "m")
                ),
            )
            .limit(format!("0 to {}", in_both_systems(length, "m"))),
        );
        return None;
    }
    Some((from, to.min(length)))
}

/// Cuts a line load at the corners and openings of its beam and lays the parts onto the runs.
fn spread(
    plan: &Plan,
    (b, beam, load): (usize, &GradeBeam, &BeamLineLoad),
    (from, to): (f64, f64),
    case: usize,
    trace: &mut Trace,
    loads: &mut [Vec<Load>],
) {
    let (q0, q1) = (load.load.si(), load.load_at_end.unwrap_or(load.load).si());
    let slope = (q1 - q0) / (to - from);
    let q = |at: f64| {
        if q0 == q1 {
            q0
        } else {
            q0 + slope * (at - from)
        }
    };
    trace.about(|| format!("beam {}", plan.called[b]));
    let acting = outline::acting(beam, load, (from, to), q, trace);
    trace.about(String::new);
    for jamb in acting.jambs {
        let (run, at) = plan.along_beam(b, jamb.at, jamb.before);
        loads[run].push(Load {
            case,
            shape: Shape::Point {
                at: settled(plan, run, at, plan.runs[run].length),
                force: jamb.force,
            },
        });
    }
    let parts = &plan.beam_parts[b];
    for (part, (from, to)) in parts
        .iter()
        .flat_map(|p| acting.ranges.iter().map(move |r| (p, *r)))
    {
        let (a, b) = (from.max(part.from), to.min(part.to));
        if b - a <= SAME {
            continue;
        }
        let (_, s) = part.on_run(a);
        let (run, t) = part.on_run(b);
        let length = plan.runs[run].length;
        let (s, t) = (settled(plan, run, s, length), settled(plan, run, t, length));
        let (from, to, start, end) = if s <= t {
            (s, t, q(a), q(b))
        } else {
            (t, s, q(b), q(a))
        };
        loads[run].push(Load {
            case,
            shape: Shape::Spread {
                from,
                to,
                start,
                end,
            },
        });
    }
}

/// A place that rounding alone keeps from an end, a meeting or a joint.
pub(super) fn settled(plan: &Plan, run: usize, at: f64, length: f64) -> f64 {
    let r = &plan.runs[run];
    [0.0, length]
        .into_iter()
        .chain(r.meetings.iter().map(|m| m.at))
        .chain(r.joints())
        .find(|x| (x - at).abs() <= SAME)
        .unwrap_or(at)
}

/// An order of loads that does not depend on the order in which they were sent.
fn order(a: &Load, b: &Load) -> std::cmp::Ordering {
    let key = |l: &Load| match l.shape {
        Shape::Spread {
            from,
            to,
            start,
            end,
        } => [0.0, from, to, start, end],
        Shape::Point { at, force } => [1.0, at, at, force, 0.0],
        Shape::Couple { at, moment } => [2.0, at, at, moment, 0.0],
    };
    a.case.cmp(&b.case).then_with(|| {
        key(a)
            .iter()
            .zip(key(b))
            .map(|(x, y)| x.total_cmp(&y))
            .find(|o| o.is_ne())
            .unwrap_or(std::cmp::Ordering::Equal)
    })
}
