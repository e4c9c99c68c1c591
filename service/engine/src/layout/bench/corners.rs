//! Corners without a pile: what the piles next to them carry by other statics than that of the
//! plan, beam by beam with the tips apart.

use super::Bench;
use crate::beam::{Line, LineNode, Network, Shape, Support, solve};
use crate::layout::combine::Combination;
use crate::layout::frame::resultant;
use crate::layout::plan::Place;
use crate::layout::request::PlanPoint;
use crate::layout::site::along_runs;

/// A beam that ends at a corner without a pile; forces in N, greatest over the combinations.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Bridged {
    pub beam: usize,
    /// The pile next to the corner and the one after it.
    pub pile: usize,
    pub next: Option<usize>,
    pub overhang: f64,
    /// None where couples act beyond the pile, as for `hinge`.
    pub cantilever: Option<f64>,
    pub hinge: Option<f64>,
    pub continuous: Option<Continuous>,
}

/// Greatest reactions of a run by itself on its own piles, N.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Continuous {
    pub pile: f64,
    pub next: f64,
    /// The pile of the run that carries most, and how much.
    pub most: (usize, f64),
}

impl Bench<'_> {
    /// Meetings at which every run ends and no pile stands, with the runs that have piles.
    pub fn bridged(&self) -> Vec<(PlanPoint, Vec<Bridged>)> {
        let plan = &self.prepared.frame.plan;
        let places: Vec<Place> = self.prepared.piles.iter().map(|p| p.place).collect();
        let along = along_runs(plan, &places);
        let mut out = Vec::new();
        for (m, meeting) in plan.meetings.iter().enumerate() {
            if places.iter().any(|p| p.meeting == Some(m)) {
                continue;
            }
            let ends = |(run, at): &(usize, f64)| *at == 0.0 || *at == plan.runs[*run].length;
            if !meeting.on.iter().all(ends) {
                continue;
            }
            let beams: Vec<Bridged> = meeting
                .on
                .iter()
                .filter_map(|(run, at)| self.one(*run, *at == 0.0, &along[*run]))
                .collect();
            if !beams.is_empty() {
                let (run, at) = meeting.on[0];
                out.push((self.outside_of(run, at), beams));
            }
        }
        out
    }

    fn outside_of(&self, run: usize, at: f64) -> PlanPoint {
        let plan = &self.prepared.frame.plan;
        let p = plan.outside(plan.runs[run].point(at));
        PlanPoint {
            x: crate::quantity::Length::from_si(p.x),
            y: crate::quantity::Length::from_si(p.y),
        }
    }

    fn one(&self, run: usize, at_start: bool, own: &[(f64, usize)]) -> Option<Bridged> {
        let frame = &self.prepared.frame;
        let length = frame.plan.runs[run].length;
        // piles in order from the tip
        let mut from_tip: Vec<(f64, usize)> = own.to_vec();
        if !at_start {
            from_tip.reverse();
        }
        let (place, pile) = *from_tip.first()?;
        let next = from_tip.get(1).copied();
        let tip = if at_start { 0.0 } else { length };
        let line = &frame.plan.runs[run];
        let combinations = &self.prepared.loading.combinations;
        Some(Bridged {
            beam: if at_start {
                line.beam_after(0.0)
            } else {
                line.beam_at(length)
            },
            pile,
            next: next.map(|n| n.1),
            overhang: (place - tip).abs(),
            cantilever: self.turning(run, tip, place, combinations),
            hinge: next.and_then(|n| {
                let turning = self.turning(run, tip, n.0, combinations)?;
                Some(turning / (n.0 - place).abs())
            }),
            continuous: next.and_then(|_| self.alone(run, own, at_start)),
        })
    }

    /// Greatest moment of the loads between the tip and a place about that place.
    ///
    /// max over combinations of sum(gamma F |x - x0|), loads of this run between tip and x0 only
    /// (N m). Source: statics.
    fn turning(
        &self,
        run: usize,
        tip: f64,
        about: f64,
        combinations: &[Combination],
    ) -> Option<f64> {
        let frame = &self.prepared.frame;
        let (low, high) = (tip.min(about), tip.max(about));
        let mut by_case = vec![0.0; frame.cases];
        for load in &frame.loads[run] {
            if let Shape::Couple { at, .. } = load.shape
                && low <= at
                && at <= high
            {
                return None;
            }
            let Some(shape) = within(&load.shape, low, high) else {
                continue;
            };
            let (force, moment) = resultant(&shape);
            let turning = if about > tip {
                force * about - moment
            } else {
                moment - force * about
            };
            by_case[load.case] += turning;
        }
        let all = combinations.iter().map(|c| {
            let rows = by_case.iter().zip(&c.factors);
            rows.map(|(v, f)| v * f).sum::<f64>()
        });
        Some(all.fold(0.0, f64::max))
    }

    /// Reactions with the run by itself on its own piles;
    /// none where other runs hand load on to it without a pile.
    fn alone(&self, run: usize, own: &[(f64, usize)], at_start: bool) -> Option<Continuous> {
        let frame = &self.prepared.frame;
        let line = &frame.plan.runs[run];
        let has_pile = |at: f64| own.iter().any(|o| o.0 == at);
        let tips = |at: f64| at == 0.0 || at == line.length;
        if line.meetings.iter().any(|m| !has_pile(m.at) && !tips(m.at)) {
            return None;
        }
        let nodes: Vec<LineNode> = own
            .iter()
            .enumerate()
            .map(|(node, o)| LineNode { node, at: o.0 })
            .collect();
        let spans = nodes.iter().take(nodes.len() - 1);
        let network = Network {
            supports: vec![Support::Rigid; nodes.len()],
            lines: vec![Line {
                length: line.length,
                rigidity: spans
                    .map(|n| frame.rigidity[line.beam_after(n.at)])
                    .collect(),
                nodes,
                loads: frame.loads[run].clone(),
            }],
            cases: frame.cases,
            torsion: None,
        };
        let solution = solve(&network).ok()?;
        let greatest = |node: usize| {
            let row = &solution.reaction[node * frame.cases..(node + 1) * frame.cases];
            let all = self.prepared.loading.combinations.iter();
            all.map(|c| row.iter().zip(&c.factors).map(|(v, f)| v * f).sum::<f64>())
                .fold(f64::NEG_INFINITY, f64::max)
        };
        let last = own.len() - 1;
        let (first, second) = if at_start { (0, 1) } else { (last, last - 1) };
        let mut most = (own[0].1, f64::NEG_INFINITY);
        for (node, (_, pile)) in own.iter().enumerate() {
            let reaction = greatest(node);
            if reaction > most.1 {
                most = (*pile, reaction);
            }
        }
        Some(Continuous {
            pile: greatest(first),
            next: greatest(second),
            most,
        })
    }
}

/// The part of a load between two places; a couple has none.
fn within(shape: &Shape, low: f64, high: f64) -> Option<Shape> {
    match *shape {
        Shape::Point { at, .. } => (low <= at && at <= high).then_some(*shape),
        Shape::Couple { .. } => None,
        Shape::Spread {
            from,
            to,
            start,
            end,
        } => {
            let (a, b) = (from.max(low), to.min(high));
            let q = |x: f64| start + (end - start) * (x - from) / (to - from);
            (b > a).then(|| Shape::Spread {
                from: a,
                to: b,
                start: q(a),
                end: q(b),
            })
        }
    }
}
