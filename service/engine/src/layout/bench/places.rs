//! Places along beams: where a pile stands, where it comes to when it moves, what is next to it.

use super::Bench;
use crate::layout::codes::refusals::PILE_OFF_BEAM;
use crate::layout::plan::{Faults, Place, Point};
use crate::layout::request::PlanPoint;
use crate::layout::site::along_runs;
use crate::quantity::Length;

/// A place along a beam, m from its first point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Along {
    pub beam: usize,
    pub at: f64,
}

/// What is next to a pile along a straight run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Neighbour {
    /// The beam beside the pile on that side.
    pub beam: usize,
    /// The next pile; none for the end of the run.
    pub pile: Option<usize>,
    /// How far, m.
    pub distance: f64,
    /// The run and the stretch of it from the pile to there.
    pub run: usize,
    pub from: f64,
    pub to: f64,
}

/// How far a pile can go from a place along a beam.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Reach {
    pub from: f64,
    pub to: f64,
}

impl Bench<'_> {
    /// A point in the plan's own axes.
    pub(super) fn inside(&self, p: &PlanPoint) -> Point {
        let corner = self.prepared.frame.plan.corner;
        Point {
            x: p.x.si() - corner.x,
            y: p.y.si() - corner.y,
        }
    }

    fn outside(&self, p: Point) -> PlanPoint {
        let p = self.prepared.frame.plan.outside(p);
        PlanPoint {
            x: Length::from_si(p.x),
            y: Length::from_si(p.y),
        }
    }

    /// The runs that a place is on.
    pub(super) fn touched(&self, place: &Place) -> Vec<(usize, f64)> {
        match place.meeting {
            Some(m) => self.prepared.frame.plan.meetings[m].on.clone(),
            None => vec![(place.run, place.at)],
        }
    }

    /// The beams on which a pile stands, each with the place along it; in order of beams. At a
    /// ring's first point the place is nil.
    pub fn stands_on(&self, pile: usize) -> Vec<Along> {
        self.along_beams(&self.prepared.piles[pile].place)
    }

    /// The beams at a point, each with the place along it; none off every beam.
    pub fn along_at(&self, point: &PlanPoint) -> Vec<Along> {
        let mut issues = Vec::new();
        let faults = Faults {
            pointer: &String::new,
            code: &PILE_OFF_BEAM,
            issues: &mut issues,
        };
        let place = self.prepared.frame.plan.locate(point, faults);
        place.map_or_else(Vec::new, |p| self.along_beams(&p))
    }

    fn along_beams(&self, place: &Place) -> Vec<Along> {
        let plan = &self.prepared.frame.plan;
        let mut out: Vec<Along> = Vec::new();
        for (run, at) in self.touched(place) {
            for (beam, parts) in plan.beam_parts.iter().enumerate() {
                if out.iter().any(|o| o.beam == beam) {
                    continue;
                }
                let on = |p: &&crate::layout::plan::BeamPart| {
                    let (low, high) = (p.run_from.min(p.run_to), p.run_from.max(p.run_to));
                    p.run == run && low <= at && at <= high
                };
                if let Some(p) = parts.iter().find(on) {
                    let share = (at - p.run_from) / (p.run_to - p.run_from);
                    let at = p.from + share * (p.to - p.from);
                    out.push(Along { beam, at });
                }
            }
        }
        out.sort_by_key(|o| o.beam);
        out
    }

    /// Length of a beam along its line.
    pub fn beam_length(&self, beam: usize) -> f64 {
        self.prepared.frame.plan.beam_length[beam]
    }

    /// The point at a place along a beam and the unit vector to the left of the beam there; none
    /// beyond its ends and in an opening without a beam.
    pub fn point_along(&self, along: Along) -> Option<(PlanPoint, (f64, f64))> {
        let plan = &self.prepared.frame.plan;
        let parts = &plan.beam_parts[along.beam];
        let on = |slack: f64| {
            parts
                .iter()
                .find(|p| p.from - slack <= along.at && along.at <= p.to + slack)
        };
        // a nanometre for the rounding of units
        let part = on(0.0).or_else(|| on(1e-9))?;
        let (run, at) = part.on_run(along.at);
        let run = &plan.runs[run];
        let way = if part.run_to >= part.run_from {
            1.0
        } else {
            -1.0
        };
        let left = (-run.direction.y * way, run.direction.x * way);
        Some((self.outside(run.point(at)), left))
    }

    /// Piles, or the ends of runs, next to a pile along each run it stands on.
    pub fn neighbours(&self, pile: usize) -> Vec<Neighbour> {
        let plan = &self.prepared.frame.plan;
        let places: Vec<Place> = self.prepared.piles.iter().map(|p| p.place).collect();
        let along = along_runs(plan, &places);
        let mut out = Vec::new();
        for (run, at) in self.touched(&places[pile]) {
            let line = &plan.runs[run];
            let own = &along[run];
            let Some(i) = own.iter().position(|(_, p)| *p == pile) else {
                continue;
            };
            let before = i.checked_sub(1).map(|i| own[i]);
            let after = own.get(i + 1).copied();
            for (other, end, beam) in [
                (before, 0.0, line.beam_at(at)),
                (after, line.length, line.beam_after(at)),
            ] {
                let to = other.map_or(end, |o| o.0);
                if to != at {
                    out.push(Neighbour {
                        beam,
                        pile: other.map(|o| o.1),
                        distance: (to - at).abs(),
                        run,
                        from: at,
                        to,
                    });
                }
            }
        }
        out
    }

    /// From where to where along its beam a place can go before it comes to a pile, other than
    /// `but`, or to the end of the beam.
    pub fn reach(&self, along: Along, but: Option<usize>) -> Reach {
        let mut reach = Reach {
            from: 0.0,
            to: self.beam_length(along.beam),
        };
        for (i, pile) in self.prepared.piles.iter().enumerate() {
            if Some(i) == but {
                continue;
            }
            for other in self.along_beams(&pile.place) {
                if other.beam != along.beam {
                    continue;
                }
                if other.at < along.at {
                    reach.from = reach.from.max(other.at);
                } else if other.at > along.at {
                    reach.to = reach.to.min(other.at);
                }
            }
        }
        reach
    }

    /// Longest span of each beam, a free end counted twice; none without piles on its runs.
    pub fn longest_spans(&self) -> Vec<Option<f64>> {
        let plan = &self.prepared.frame.plan;
        let places: Vec<Place> = self.prepared.piles.iter().map(|p| p.place).collect();
        let mut out: Vec<Option<f64>> = vec![None; plan.beam_length.len()];
        let mut note = |beam: usize, length: f64| {
            let slot = &mut out[beam];
            *slot = Some(slot.map_or(length, |l| l.max(length)));
        };
        for (run, own) in plan.runs.iter().zip(along_runs(plan, &places)) {
            for pair in own.windows(2) {
                let (from, to) = (pair[0].0, pair[1].0);
                for part in &run.parts {
                    if part.from < to && part.to > from {
                        note(part.beam, to - from);
                    }
                }
            }
            if let (Some(first), Some(last)) = (own.first(), own.last()) {
                if first.0 > 0.0 {
                    note(run.beam_after(0.0), 2.0 * first.0);
                }
                if last.0 < run.length {
                    note(run.beam_at(run.length), 2.0 * (run.length - last.0));
                }
            }
        }
        out
    }

    /// Sum of torsional rigidity over length from a pile to the next ones along one beam's run,
    /// one number a side; none where the rigidity of a beam there is not known or there is no
    /// next pile at all.
    pub fn torsion_beside(&self, pile: usize, beam: usize) -> Option<Vec<f64>> {
        let plan = &self.prepared.frame.plan;
        let on_beam = |run: usize| plan.beam_parts[beam].iter().any(|p| p.run == run);
        let mut sides = Vec::new();
        for n in self.neighbours(pile) {
            if n.pile.is_none() || !on_beam(n.run) {
                continue;
            }
            let (low, high) = (n.from.min(n.to), n.from.max(n.to));
            let mut give = 0.0;
            for part in &plan.runs[n.run].parts {
                let length = part.to.min(high) - part.from.max(low);
                if length > 0.0 {
                    let rigidity = self.beams()[part.beam].torsional_rigidity?;
                    give += length / rigidity.si();
                }
            }
            sides.push(1.0 / give);
        }
        (!sides.is_empty()).then_some(sides)
    }
}
