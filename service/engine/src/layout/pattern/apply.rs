//! What absent loads change in the outcome: demands on piles and extremes of beams that
//! grow, each marked.

use super::solve::{Asked, Enveloped, Stopped, enveloped};
use super::{cases, kinds, parts};
use crate::contract::{Refusal, Work};
use crate::layout::analysis::{BeamEnvelope, Governing, Range};
use crate::layout::codes::methods;
use crate::layout::equations::pattern_reaction;
use crate::layout::outcome::{
    LayoutBeam, LayoutPile, MomentExtreme, Outcome, PatternReport, PileDemand, PilePattern,
    ShearExtreme, SupportModel,
};
use crate::layout::plan::Place;
use crate::layout::report::{Analysis, NOISE, STEPS_MAX, clean, used};
use crate::quantity::{Force, Moment, round9};
use crate::trace::Trace;

/// Raises the outcome to the worst loads on single spans, where they may be absent.
pub(in crate::layout) fn apply(
    analysis: &Analysis<'_>,
    outcome: &mut Outcome,
    work: &mut Work,
) -> Result<(), Refusal> {
    let (Some(kinds), Some(cases)) = (
        kinds(analysis.request),
        cases(analysis.request, analysis.loading),
    ) else {
        return Ok(());
    };
    work.method(&methods::PATTERN_LOAD);
    let places: Vec<Place> = analysis.piles.iter().map(|p| p.place).collect();
    let parts = parts(analysis.frame, &places, &cases)?;
    let asked = Asked {
        frame: analysis.frame,
        places: &places,
        combinations: &analysis.loading.combinations,
        parts: &parts,
        beams: true,
    };
    let mut models = Vec::new();
    for base in analysis.solved {
        match enveloped(&asked, base, work) {
            Ok(found) => models.push((base.supports, found)),
            Err(Stopped::Refusal(refusal)) => return Err(refusal),
            Err(Stopped::Fault(fault)) => {
                return Err(Refusal::of(crate::layout::calc::fault_issues(
                    analysis.frame,
                    fault,
                )));
            }
        }
    }
    let floors: Vec<f64> = asked
        .combinations
        .iter()
        .map(|c| NOISE * analysis.frame.total_load(&c.factors).1)
        .collect();
    for (p, row) in outcome.piles.iter_mut().enumerate() {
        pile(analysis, &models, &floors, p, row);
        if let Some(range) = row.pattern.as_ref().filter(|_| p < STEPS_MAX) {
            show(analysis, p, range, &mut work.trace);
        }
    }
    work.trace.about(String::new);
    for (b, row) in outcome.beams.iter_mut().enumerate() {
        let most = floors.iter().copied().fold(0.0, f64::max);
        beam(analysis, &models, most, b, row);
    }
    let rows = &outcome.piles;
    outcome.max_utilisation_ratio = rows
        .iter()
        .try_fold(0.0f64, |worst, p| p.utilisation_ratio.map(|u| worst.max(u)));
    let marked = |flag: Option<bool>| flag == Some(true);
    outcome.pattern = Some(PatternReport {
        kinds,
        part_count: parts.len() as u32,
        governed_pile_count: rows
            .iter()
            .filter(|p| marked(p.compression.pattern_governs) || marked(p.tension.pattern_governs))
            .count() as u32,
        governed_beam_count: outcome
            .beams
            .iter()
            .filter(|b| {
                marked(b.sagging.pattern_governs)
                    || marked(b.hogging.pattern_governs)
                    || marked(b.shear.pattern_governs)
            })
            .count() as u32,
    });
    Ok(())
}

/// Shows how the greatest reaction on rigid supports comes about.
fn show(analysis: &Analysis<'_>, pile: usize, range: &PilePattern, trace: &mut Trace) {
    let name = &range.rigid.max_combination;
    let combinations = &analysis.loading.combinations;
    if let Some(c) = combinations.iter().find(|c| c.name == *name) {
        let label = &analysis.piles[pile].label;
        trace.about(|| format!("pile {label}, {name}, worst spans loaded"));
        let full = Force::from_si(analysis.solved[0].reaction(pile, &c.factors));
        pattern_reaction(full, range.rigid.max, trace);
    }
}

type Models = [(SupportModel, Enveloped)];

fn pile(
    analysis: &Analysis<'_>,
    models: &Models,
    floors: &[f64],
    pile: usize,
    row: &mut LayoutPile,
) {
    let ranges: Vec<(SupportModel, Range)> = models
        .iter()
        .map(|(supports, found)| {
            let mut range = found.piles.range(pile);
            clean(&mut range.max, floors[range.max_in]);
            clean(&mut range.min, floors[range.min_in]);
            (*supports, range)
        })
        .collect();
    for (demand, sign) in [(&mut row.compression, 1.0), (&mut row.tension, -1.0)] {
        demand.pattern_governs = Some(false);
        for (supports, range) in &ranges {
            let (value, combination) = if sign > 0.0 {
                (range.max, range.max_in)
            } else {
                (-range.min, range.min_in)
            };
            if printed_above(value, demand.demand.si()) {
                *demand = PileDemand {
                    demand: Force::from_si(value),
                    combination: analysis.name(combination),
                    supports: *supports,
                    pattern_governs: Some(true),
                };
            }
        }
    }
    row.utilisation_ratio = used(&analysis.piles[pile], &row.compression, &row.tension);
    row.pattern = ranges.first().map(|(_, rigid)| PilePattern {
        rigid: analysis.range(*rigid),
        spring: ranges.get(1).map(|(_, spring)| analysis.range(*spring)),
    });
}

/// Whether a value is above another in the digits that are printed.
fn printed_above(a: f64, b: f64) -> bool {
    round9(a) > round9(b)
}

/// Raises a beam; a moment or a shear that is more by no more than `floor` is rounding.
fn beam(analysis: &Analysis<'_>, models: &Models, floor: f64, beam: usize, row: &mut LayoutBeam) {
    let lever = analysis.frame.plan.beam_length[beam].max(1.0);
    let all = || {
        models
            .iter()
            .filter_map(|(_, found)| found.beams.as_ref().map(|b| &b[beam]))
    };
    let greatest = |which: fn(&BeamEnvelope) -> &Governing, least: f64| {
        let mut best: Option<Governing> = None;
        for g in all().map(which) {
            let before = best.map_or(least, |b| b.value);
            if printed_above(g.value, before) && g.value - before > floor * lever {
                best = Some(*g);
            }
        }
        best
    };
    let moment = |slot: &mut MomentExtreme, which: fn(&BeamEnvelope) -> &Governing| {
        slot.pattern_governs = Some(false);
        if let Some(g) = greatest(which, slot.moment.si()) {
            *slot = MomentExtreme {
                moment: Moment::from_si(g.value),
                at: analysis.point(g.run, g.at),
                combination: analysis.name(g.combination),
                supports: g.supports,
                pattern_governs: Some(true),
            };
        }
    };
    moment(&mut row.sagging, |e| &e.sagging);
    moment(&mut row.hogging, |e| &e.hogging);
    row.shear.pattern_governs = Some(false);
    if let Some(g) = greatest(|e| &e.shear, row.shear.shear.si()) {
        row.shear = ShearExtreme {
            shear: Force::from_si(g.value),
            at: analysis.point(g.run, g.at),
            combination: analysis.name(g.combination),
            supports: g.supports,
            pattern_governs: Some(true),
        };
    }
}
