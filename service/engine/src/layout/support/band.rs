//! The plan on springs of both ends of the band of an estimated stiffness.

use super::Found;
use crate::contract::{Refusal, Work};
use crate::layout::analysis::{Solved, factors, ranges};
use crate::layout::calc::fault_issues;
use crate::layout::codes::warnings;
use crate::layout::lift_off;
use crate::layout::outcome::{Outcome, PileSupportReport, SupportBound};
use crate::layout::plan::Place;
use crate::layout::report::Analysis;
use crate::layout::request::TensionConnection;
use crate::quantity::{Force, SpringStiffness, round9};

/// Puts the stiffness into the outcome, with the plan on both ends of its band.
pub(in crate::layout) fn band(
    found: &Found,
    analysis: &Analysis<'_>,
    outcome: &mut Outcome,
    work: &mut Work,
) -> Result<(), Refusal> {
    let mut report = PileSupportReport {
        pile_stiffness_source: found.source,
        stiffness: found.stiffness,
        working_load: found.load,
        working_load_from: found.load_from,
        movement: found.movement,
        estimate: None,
    };
    if let Some(parts) = &found.estimate {
        let soft = bound(parts.soft, found, analysis, work)?;
        let stiff = bound(parts.stiff, found, analysis, work)?;
        let most = outcome
            .piles
            .iter()
            .map(|p| p.compression.demand.si())
            .fold(0.0, f64::max);
        for (which, end) in [("less stiff", &soft), ("stiffer", &stiff)] {
            if round9(end.compression.si()) > round9(most) {
                work.warn(
                    &warnings::STIFFNESS_BAND_GOVERNS,
                    format!(
                        "with piles {which} ({}) pile {} has {}, more than any in this answer",
                        SpringStiffness::ROLE.in_both_systems(end.stiffness.si()),
                        end.pile,
                        Force::ROLE.in_both_systems(end.compression.si())
                    ),
                );
            }
        }
        report.estimate = found.estimate_row(soft, stiff);
    }
    outcome.pile_support = Some(report);
    Ok(())
}

/// The plan with every pile that has the stiffness found at another one.
fn bound(
    stiffness: SpringStiffness,
    found: &Found,
    analysis: &Analysis<'_>,
    work: &Work,
) -> Result<SupportBound, Refusal> {
    work.go_on()?;
    let places: Vec<Place> = analysis.piles.iter().map(|p| p.place).collect();
    let springs: Vec<f64> = analysis
        .piles
        .iter()
        .map(|p| match p.spring() {
            Some(own) if own != found.stiffness.si() => own,
            _ => stiffness.si(),
        })
        .collect();
    let mut solved = Solved::of(analysis.frame, &places, Some(&springs))
        .map_err(|fault| Refusal::of(fault_issues(analysis.frame, fault)))?;
    if analysis.request.tension_connection == Some(TensionConnection::LiftsOff) {
        let model = std::slice::from_mut(&mut solved);
        lift_off::release(
            analysis.frame,
            analysis.loading,
            analysis.piles,
            model,
            work,
        )?;
    }
    let combinations = &analysis.loading.combinations;
    let factors = factors(combinations, analysis.frame.cases);
    let all = ranges(
        &solved.reactions(places.len(), &factors),
        combinations.len(),
    );
    let mut worst = (0, all[0]);
    for (p, range) in all.iter().enumerate().skip(1) {
        if crate::layout::analysis::above(range.max, worst.1.max) {
            worst = (p, *range);
        }
    }
    Ok(SupportBound {
        stiffness,
        compression: Force::from_si(worst.1.max.max(0.0)),
        pile: analysis.piles[worst.0].label.clone(),
        combination: analysis.name(worst.1.max_in),
    })
}
