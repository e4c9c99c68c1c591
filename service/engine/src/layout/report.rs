//! From the analysis to the outcome: piles, beams, combinations and distances, as the
//! caller reads them. Judges nothing and searches nothing.

use compact_str::CompactString;

use super::analysis::{Governing, Range, Solved, above, beam_envelopes, closure, factors, ranges};
use super::combine::{Combination, Loading, code_of};
use super::equations::{case_load, combined_load, pile_reaction};
use super::frame::{Frame, resultant};
use super::outcome::{
    BeamShare, CombinationFactor, LayoutBeam, LayoutCombination, LayoutPile, MomentExtreme,
    Outcome, PileDemand, PilePair, PileReaction, ReactionRange, ShearExtreme, SpacingSummary,
    SupportModel, TorsionExtreme,
};
use super::outline::Form;
use super::plan::Place;
use super::request::{PlanPoint, Request};
use super::site::{Pile, nearest};
use super::spans::{Span, longest_overhang, spans};
use super::touching::Touching;
use super::tributary;
use super::types::{self, Spacing, Terrain};
use crate::beam::Load;
use crate::contract::utilisation;
use crate::quantity::{Force, Length, Moment, Size};
use crate::trace::Trace;

/// Forces below this share of the load of a combination are rounding.
pub(super) const NOISE: f64 = 1e-12;

/// Piles of which the working is shown.
pub(super) const STEPS_MAX: usize = 200;

/// A plan analysed on its piles.
pub(super) struct Analysis<'a> {
    pub request: &'a Request,
    pub form: &'a Form<'a>,
    pub frame: &'a Frame,
    pub loading: &'a Loading,
    /// The same as sent: by kinds and cases of load, where `frame` and `loading` have every
    /// combination as one case.
    pub sent: (&'a Frame, &'a Loading),
    pub beam_labels: &'a [String],
    pub piles: &'a [Pile],
    /// Rigid first, then spring.
    pub solved: &'a [Solved],
    /// Whether every reaction is listed.
    pub all_reactions: bool,
    /// Whether the shares of beams are told.
    pub shares: bool,
    pub terrain: &'a Terrain,
    pub spacing: Spacing,
}

impl Analysis<'_> {
    fn combinations(&self) -> &[Combination] {
        &self.loading.combinations
    }

    pub(super) fn name(&self, combination: usize) -> CompactString {
        self.combinations()[combination].name.clone()
    }

    pub(super) fn point(&self, run: usize, at: f64) -> PlanPoint {
        let plan = &self.frame.plan;
        let p = plan.outside(plan.runs[run].point(at));
        PlanPoint {
            x: Length::from_si(p.x),
            y: Length::from_si(p.y),
        }
    }

    /// The outcome without a search.
    pub fn outcome(&self, trace: &mut Trace) -> Outcome {
        let totals = self.frame.total_loads(self.combinations());
        let floors: Vec<f64> = totals.iter().map(|(_, size)| NOISE * size).collect();
        let factors = factors(self.combinations(), self.frame.cases);
        let count = self.piles.len();
        let each = self.solved.iter();
        let reactions: Vec<Vec<f64>> = each.map(|s| s.reactions(count, &factors)).collect();
        let combinations = self.combination_rows(&reactions[0], trace);
        let springs = self.solved.get(1);
        let settlements = springs.map(|s| s.settlements(count, &factors));
        let settlements = settlements.as_deref();
        let piles = self.pile_rows(&reactions, settlements, &floors, trace);
        let worst = piles
            .iter()
            .try_fold(0.0f64, |worst, p| p.utilisation_ratio.map(|u| worst.max(u)));
        Outcome {
            pile_count: self.piles.len() as u32,
            max_utilisation_ratio: worst,
            statics_residual_ratio: self
                .solved
                .iter()
                .map(|s| closure(self.frame, s, self.combinations(), &totals))
                .fold(0.0, f64::max),
            supports: self.solved.iter().map(|s| s.supports).collect(),
            piles: piles.into(),
            pile_table: None,
            beams: self.beam_rows(),
            outlines: self.form.outlines(self.beam_labels),
            joined_ends: self.form.joined(self.beam_labels),
            combinations,
            spacing: self.spacing(),
            type_counts: types::counts(self.request, self.terrain, self.piles),
            total_cost: types::total(self.terrain, self.piles)
                .map(|sum| types::money(self.terrain, sum)),
            slabs: None,
            pattern: None,
            pile_support: None,
            lift_off: None,
            total_settlement: self.total_settlement(settlements),
            differential_settlement: self.differential_settlement(settlements, trace),
            search: None,
            staking: None,
        }
    }

    /// Labels of the zones at a pile.
    fn zones(&self, pile: &Pile) -> Option<Vec<String>> {
        let here = self.terrain.here(self.frame.plan.point_of(&pile.place));
        let labels = here
            .zones
            .iter()
            .map(|z| self.terrain.zones[*z].label.clone());
        (!here.zones.is_empty()).then(|| labels.collect())
    }

    /// `reactions` on rigid piles, one row a pile.
    fn combination_rows(&self, reactions: &[f64], trace: &mut Trace) -> Vec<LayoutCombination> {
        let (frame, loading) = self.sent;
        let acting = self.combinations().len();
        let mut totals = vec![0.0; frame.cases];
        for load in frame.loads.iter().flatten() {
            totals[load.case] += resultant(&load.shape).0;
        }
        if trace.is_on() {
            self.show_cases(&totals, trace);
        }
        let rows = loading
            .combinations
            .iter()
            .enumerate()
            .take(acting)
            .map(|(i, c)| {
                trace.about(|| c.name.to_string());
                LayoutCombination {
                    name: c.name.to_string(),
                    factors: loading
                        .cases
                        .iter()
                        .zip(&c.factors)
                        .filter(|(_, f)| **f != 0.0)
                        .map(|(case, f)| CombinationFactor {
                            kind: case.kind,
                            case: case.name.clone(),
                            factor: *f,
                        })
                        .collect(),
                    total_load: combined_load(&totals, &c.factors, trace),
                    total_reaction: reactions
                        .chunks_exact(acting)
                        .map(|pile| Force::from_si(pile[i]))
                        .sum(),
                }
            });
        rows.collect()
    }

    fn show_cases(&self, totals: &[f64], trace: &mut Trace) {
        for (i, case) in self.sent.1.cases.iter().enumerate() {
            trace.about(|| match &case.name {
                Some(name) => format!("{}, {name}", code_of(case.kind)),
                None => code_of(case.kind).to_owned(),
            });
            let loads = self.sent.0.loads.iter().flatten();
            let acting = |l: &&Load| l.case == i && resultant(&l.shape) != (0.0, 0.0);
            case_load(totals[i], loads.filter(acting).count(), trace);
        }
    }

    /// `reactions` of every support model and `settlements` on springs, one row a pile.
    fn pile_rows(
        &self,
        reactions: &[Vec<f64>],
        settlements: Option<&[f64]>,
        floors: &[f64],
        trace: &mut Trace,
    ) -> Vec<LayoutPile> {
        let n = self.piles.len();
        let by_model: Vec<Vec<Range>> = reactions
            .iter()
            .map(|own| {
                let mut all = ranges(own, floors.len());
                for r in &mut all {
                    clean(&mut r.max, floors[r.max_in]);
                    clean(&mut r.min, floors[r.min_in]);
                }
                all
            })
            .collect();
        let places: Vec<Place> = self.piles.iter().map(|p| p.place).collect();
        let tributary = tributary::shares(self.frame, &places);
        let touching = Touching::of(&self.solved[0].network, n);
        let mut rows = Vec::with_capacity(n);
        for (p, pile) in self.piles.iter().enumerate() {
            let rigid = by_model[0][p];
            let spring = by_model.get(1).map(|all| all[p]);
            let (compression, tension) = self.demands(rigid, spring);
            if trace.is_on() && p < STEPS_MAX {
                trace.about(|| format!("pile {}, {}", pile.label, self.name(rigid.max_in)));
                self.show_reaction(touching.pile(p), rigid.max_in, trace);
            }
            let factors = &self.combinations()[rigid.max_in].factors;
            rows.push(LayoutPile {
                label: pile.label.clone(),
                tags: pile.tags.clone(),
                at: self.point(pile.place.run, pile.place.at),
                placed_by: pile.placed_by,
                pile_type: pile.offer.and_then(|rank| self.terrain.type_label(rank)),
                soil_zones: self.zones(pile),
                utilisation_ratio: used(pile, &compression, &tension),
                compression,
                tension,
                rigid: self.range(rigid),
                spring: spring.map(|r| self.range(r)),
                settlement: settlements.map(|all| most(row_of(all, p, floors.len()))),
                tributary: tributary.as_ref().map(|t| {
                    let row = &t[p * self.frame.cases..(p + 1) * self.frame.cases];
                    let mut sum = row.iter().zip(factors).map(|(v, f)| v * f).sum();
                    clean(&mut sum, floors[rigid.max_in]);
                    Force::from_si(sum)
                }),
                pattern: None,
                by_beam: if self.shares {
                    self.by_beam(touching.pile(p), factors, floors[rigid.max_in])
                } else {
                    Vec::new()
                },
                reactions: self
                    .all_reactions
                    .then(|| self.every_reaction(p, reactions, floors)),
            });
        }
        rows
    }

    fn show_reaction(&self, touching: &[(usize, usize)], combination: usize, trace: &mut Trace) {
        let factors = &self.combinations()[combination].factors;
        let (mut left, mut right, mut force) = (0.0, 0.0, 0.0);
        for (l, i) in touching {
            let line = &self.solved[0].solution.lines[*l];
            for (c, f) in factors.iter().enumerate() {
                let (vl, vr, p) = line.beside(*i, c);
                left += f * vl;
                right += f * vr;
                force += f * p;
            }
        }
        pile_reaction(
            Force::from_si(left),
            Force::from_si(right),
            Force::from_si(force),
            trace,
        );
    }

    fn demands(&self, rigid: Range, spring: Option<Range>) -> (PileDemand, PileDemand) {
        let mut compression = (rigid.max, rigid.max_in, SupportModel::Rigid);
        let mut tension = (-rigid.min, rigid.min_in, SupportModel::Rigid);
        if let Some(s) = spring {
            if above(s.max, compression.0) {
                compression = (s.max, s.max_in, SupportModel::Spring);
            }
            if above(-s.min, tension.0) {
                tension = (-s.min, s.min_in, SupportModel::Spring);
            }
        }
        let demand = |(value, combination, supports): (f64, usize, SupportModel)| PileDemand {
            // not `max`, which may keep a negative zero
            demand: Force::from_si(if value > 0.0 { value } else { 0.0 }),
            combination: self.name(combination),
            supports,
            pattern_governs: None,
        };
        (demand(compression), demand(tension))
    }

    pub(super) fn range(&self, r: Range) -> ReactionRange {
        ReactionRange {
            max: Force::from_si(r.max),
            max_combination: self.name(r.max_in),
            min: Force::from_si(r.min),
            min_combination: self.name(r.min_in),
        }
    }

    fn by_beam(&self, touching: &[(usize, usize)], factors: &[f64], floor: f64) -> Vec<BeamShare> {
        let mut found: Vec<(usize, f64)> = Vec::new();
        let mut add = |beam: usize, force: f64| match found.iter_mut().find(|f| f.0 == beam) {
            Some(entry) => entry.1 += force,
            None => found.push((beam, force)),
        };
        for (l, i) in touching {
            let run = &self.frame.plan.runs[*l];
            let at = self.solved[0].network.lines[*l].nodes[*i].at;
            let line = &self.solved[0].solution.lines[*l];
            let (mut left, mut right) = (0.0, 0.0);
            for (c, f) in factors.iter().enumerate() {
                let (a, b) = line.share_by_side(*i, c);
                left += f * a;
                right += f * b;
            }
            let (before, after) = (run.beam_at(at), run.beam_after(at));
            add(if at == 0.0 { after } else { before }, left);
            add(if at == run.length { before } else { after }, right);
        }
        found.sort_by(|a, b| self.beam_labels[a.0].cmp(&self.beam_labels[b.0]));
        found
            .into_iter()
            .map(|(beam, mut force)| {
                clean(&mut force, floor);
                BeamShare {
                    beam: self.beam_labels[beam].clone(),
                    reaction: Force::from_si(force),
                }
            })
            .collect()
    }

    fn every_reaction(
        &self,
        pile: usize,
        reactions: &[Vec<f64>],
        floors: &[f64],
    ) -> Vec<PileReaction> {
        let value = |all: &Vec<f64>, c: usize| {
            let mut r = row_of(all, pile, floors.len())[c];
            clean(&mut r, floors[c]);
            Force::from_si(r)
        };
        (0..self.combinations().len())
            .map(|c| PileReaction {
                combination: self.name(c),
                rigid: value(&reactions[0], c),
                spring: reactions.get(1).map(|all| value(all, c)),
            })
            .collect()
    }

    fn beam_rows(&self) -> Vec<LayoutBeam> {
        let envelopes = beam_envelopes(self.frame, self.solved, self.combinations());
        let moment = |g: &Governing| MomentExtreme {
            moment: Moment::from_si(g.value),
            at: self.point(g.run, g.at),
            combination: self.name(g.combination),
            supports: g.supports,
            pattern_governs: None,
        };
        self.request
            .beams
            .iter()
            .zip(envelopes)
            .enumerate()
            .map(|(b, (beam, e))| LayoutBeam {
                label: self.beam_labels[b].clone(),
                tags: beam.tags.clone(),
                points: beam.points.clone(),
                length: Length::from_si(self.frame.plan.beam_length[b]),
                width: beam.width,
                edges: self.form.edges(b),
                sagging: moment(&e.sagging),
                hogging: moment(&e.hogging),
                shear: ShearExtreme {
                    shear: Force::from_si(e.shear.value),
                    at: self.point(e.shear.run, e.shear.at),
                    combination: self.name(e.shear.combination),
                    supports: e.shear.supports,
                    pattern_governs: None,
                },
                strength: None,
                deflection: None,
                torsion: self.frame.torsion.as_ref().map(|_| TorsionExtreme {
                    torque: Moment::from_si(e.torque.value),
                    at: self.point(e.torque.run, e.torque.at),
                    combination: self.name(e.torque.combination),
                    supports: e.torque.supports,
                }),
            })
            .collect()
    }

    fn spacing(&self) -> SpacingSummary {
        let plan = &self.frame.plan;
        let pair = |distance: f64, a: usize, b: usize| PilePair {
            distance: Length::from_si(distance),
            from: self.piles[a].label.clone(),
            to: self.piles[b].label.clone(),
        };
        let places: Vec<Place> = self.piles.iter().map(|p| p.place).collect();
        let longest =
            spans(plan, &places)
                .into_iter()
                .fold(None, |best: Option<Span>, s| match best {
                    Some(b) if !above(s.length, b.length) => Some(b),
                    _ => Some(s),
                });
        let near = nearest(&places.iter().map(|p| plan.point_of(p)).collect::<Vec<_>>());
        let mut closest: Option<(f64, usize, usize)> = None;
        for (i, n) in near.iter().enumerate() {
            if let Some((j, d)) = n
                && closest.is_none_or(|c| above(c.0, *d))
            {
                closest = Some((*d, i, *j));
            }
        }
        SpacingSummary {
            longest_span: longest.map(|s| pair(s.length, s.piles.0, s.piles.1)),
            nearest_piles: closest.map(|(d, a, b)| pair(d, a, b)),
            longest_overhang: Length::from_si(longest_overhang(plan, &places).map_or(0.0, |o| o.1)),
        }
    }
}

/// A row of values, one a combination.
fn row_of(all: &[f64], row: usize, combinations: usize) -> &[f64] {
    &all[row * combinations..(row + 1) * combinations]
}

/// The greatest settlement.
fn most(each: &[f64]) -> Size {
    Size::from_si(each.iter().copied().fold(f64::NEG_INFINITY, f64::max))
}

pub(super) fn clean(value: &mut f64, floor: f64) {
    if value.abs() <= floor {
        *value = 0.0;
    }
}

/// The higher utilisation of a pile.
pub(super) fn used(pile: &Pile, compression: &PileDemand, tension: &PileDemand) -> Option<f64> {
    let (c, _) = utilisation(compression.demand.si(), pile.compression?);
    let (t, _) = utilisation(tension.demand.si(), pile.tension?);
    Some(c?.max(t?))
}
