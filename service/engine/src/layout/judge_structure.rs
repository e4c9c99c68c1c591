//! Checks and warnings of torsion, of settlement and of piles that lift off. The numbers
//! come from the outcome.

use super::codes::{checks, warnings};
use super::judge::{NAMED_MAX, on};
use super::outcome::Outcome;
use super::report::Analysis;
use crate::contract::{Check, SubjectKind, Work};
use crate::source::{BEARWELL_CHOICE, CALLER};

/// Writes them.
pub(super) fn structure(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    torsion(analysis, outcome, work);
    settlement(analysis, outcome, work);
    lifted(outcome, work);
}

fn torsion(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    let both = analysis.solved.len() > 1;
    for (beam, row) in analysis.request.beams.iter().zip(&outcome.beams) {
        let Some(capacity) = beam.torsion_capacity else {
            continue;
        };
        let check = match &row.torsion {
            Some(t) => on(
                Check::at_most(&checks::BEAM_TORSION, t.torque, capacity, &CALLER)
                    .combination(t.combination.as_str()),
                both,
                t.supports,
            ),
            None => Check::not_evaluated(
                &checks::BEAM_TORSION,
                "torsion_released: send `beam_torsion` as `included`",
                &BEARWELL_CHOICE,
            ),
        };
        work.check(check.subject(SubjectKind::Beam, row.label.as_str()));
    }
}

fn settlement(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    let Some(limit) = &analysis.request.settlement_limit else {
        return;
    };
    let unknown = |def| {
        Check::not_evaluated(
            def,
            "no_pile_stiffness: only rigid piles were modelled; send `pile_stiffness` and `flexural_rigidity`",
            &BEARWELL_CHOICE,
        )
    };
    if let Some(most) = limit.total {
        let def = &checks::TOTAL_SETTLEMENT;
        work.check(match &outcome.total_settlement {
            Some(s) => Check::at_most(def, s.settlement, most, &CALLER)
                .subject(SubjectKind::Pile, s.pile.as_str())
                .combination(s.combination.as_str()),
            None => unknown(def),
        });
    }
    if let Some(most) = limit.differential_ratio {
        let def = &checks::DIFFERENTIAL_SETTLEMENT;
        work.check(match &outcome.differential_settlement {
            Some(d) => Check::at_most(def, d.angular_distortion_ratio, most, &CALLER)
                .subject(SubjectKind::Pile, d.from.as_str())
                .combination(d.combination.as_str())
                .reason(format!("to {}", d.to)),
            // a single pile, or none in line with another
            None if analysis.solved.len() > 1 => Check::at_most(def, 0.0, most, &CALLER)
                .reason("no two piles are neighbours along a beam"),
            None => unknown(def),
        });
    }
}

fn lifted(outcome: &Outcome, work: &mut Work) {
    let mut named: Vec<&str> = Vec::new();
    for row in outcome.lift_off.iter().flatten() {
        if !named.contains(&row.pile.as_str()) {
            named.push(&row.pile);
        }
    }
    if named.is_empty() {
        return;
    }
    let more = named.len().saturating_sub(NAMED_MAX);
    named.truncate(NAMED_MAX);
    let tail = if more > 0 {
        format!(" and {more} more")
    } else {
        String::new()
    };
    work.warn(
        &warnings::PILE_LIFTS_OFF,
        format!("{}{tail}", named.join(", ")),
    );
}
