//! Checks and warnings of a plan on its piles. The numbers come from the outcome; the one
//! rule of what passes is in `contract`.

use super::bracing;
use super::codes::{checks, warnings};
use super::equations::tributary_difference;
use super::judge_structure::structure;
use super::outcome::{Outcome, SupportModel};
use super::plan::Place;
use super::report::Analysis;
use super::request::PilePlacement;
use super::spans::{longest_overhang, spans};
use super::strength;
use crate::contract::{Check, SubjectKind, Work};
use crate::quantity::{Force, Length};
use crate::source::{BEARWELL_CHOICE, CALLER, Sourced, TRIBUTARY_PRACTICE};

/// Difference above which tributary loads are warned of.
static TRIBUTARY_LIMIT: Sourced<f64> =
    Sourced::new("tributary_difference_limit", 0.05, &TRIBUTARY_PRACTICE);

/// Piles named in one warning.
pub(super) const NAMED_MAX: usize = 24;

/// Limits of distance that are judged.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Distances {
    pub max: Option<Length>,
    pub overhang: Option<Length>,
}

impl Distances {
    /// As the request gives them.
    pub fn of(placement: &PilePlacement) -> Self {
        match placement {
            PilePlacement::Given(g) => Self {
                max: g.max_spacing,
                overhang: None,
            },
            PilePlacement::Search(s) => Self {
                max: Some(s.max_spacing),
                overhang: s.max_overhang,
            },
        }
    }
}

/// Writes all checks and warnings.
pub(super) fn judge(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    piles(analysis, outcome, work);
    strength::judge_strengths(analysis, outcome, work);
    strength::detailing(analysis, outcome, work);
    strength::deflections(analysis, outcome, work);
    bracing::judge(analysis, outcome, work);
    structure(analysis, outcome, work);
    distances(analysis, work);
    if analysis.solved.len() == 1 && !work.checks.is_empty() {
        work.check(
            Check::not_evaluated(
                &checks::SPRING_SUPPORT,
                "no_pile_stiffness: only rigid piles were modelled; send `pile_stiffness` or `pile_support`, and `flexural_rigidity`",
                &BEARWELL_CHOICE,
            )
            .advisory(),
        );
    }
    tributary(analysis, outcome, work);
    uplift(outcome, work);
}

fn piles(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    let both = analysis.solved.len() > 1;
    for (pile, row) in analysis.piles.iter().zip(&outcome.piles) {
        for (def, demand, capacity) in [
            (
                &checks::PILE_COMPRESSION,
                &row.compression,
                pile.compression,
            ),
            (&checks::PILE_TENSION, &row.tension, pile.tension),
        ] {
            if let Some(capacity) = capacity {
                let check = Check::at_most(def, demand.demand, Force::from_si(capacity), &CALLER)
                    .subject(SubjectKind::Pile, row.label.as_str())
                    .combination(demand.combination.as_str());
                work.check(worst_on(
                    check,
                    both,
                    demand.supports,
                    demand.pattern_governs,
                ));
            }
        }
    }
}

/// Says on which supports a demand is greatest, and whether some spans are without load.
pub(super) fn worst_on(
    check: Check,
    both: bool,
    supports: SupportModel,
    pattern: Option<bool>,
) -> Check {
    match (pattern, both, supports) {
        (Some(true), false, _) => check.reason("with some spans unloaded"),
        (Some(true), true, SupportModel::Rigid) => {
            check.reason("governed by rigid supports, with some spans unloaded")
        }
        (Some(true), true, SupportModel::Spring) => {
            check.reason("governed by spring supports, with some spans unloaded")
        }
        _ => on(check, both, supports),
    }
}

/// Names the support model that governs, where there are two.
pub(super) fn on(check: Check, both: bool, supports: SupportModel) -> Check {
    if both {
        check.reason(governed_by(supports))
    } else {
        check
    }
}

/// The support model that governs, in words.
pub(super) const fn governed_by(supports: SupportModel) -> &'static str {
    match supports {
        SupportModel::Rigid => "governed by rigid supports",
        SupportModel::Spring => "governed by spring supports",
    }
}

fn distances(analysis: &Analysis<'_>, work: &mut Work) {
    let limits = Distances::of(&analysis.request.piles);
    let plan = &analysis.frame.plan;
    let places: Vec<Place> = analysis.piles.iter().map(|p| p.place).collect();
    super::types::distances(analysis, work);
    if let Some(max) = limits.max {
        let mut longest: Vec<Option<(f64, usize, usize)>> = vec![None; analysis.beam_labels.len()];
        for s in spans(plan, &places) {
            let beam = plan.runs[s.run].beam_at(s.from + 0.5 * s.length);
            if longest[beam].is_none_or(|l| s.length > l.0) {
                longest[beam] = Some((s.length, s.piles.0, s.piles.1));
            }
        }
        for (label, l) in analysis.beam_labels.iter().zip(longest) {
            if let Some((length, a, b)) = l {
                work.check(
                    Check::at_most(&checks::PILE_SPAN, Length::from_si(length), max, &CALLER)
                        .subject(SubjectKind::Beam, label.as_str())
                        .reason(format!(
                            "{} to {}",
                            analysis.piles[a].label, analysis.piles[b].label
                        )),
                );
            }
        }
    }
    if let Some(max) = limits.overhang {
        let (run, length) = longest_overhang(plan, &places).unwrap_or((0, 0.0));
        let beam = plan.runs[run].parts[0].beam;
        work.check(
            Check::at_most(
                &checks::PILE_OVERHANG,
                Length::from_si(length),
                max,
                &CALLER,
            )
            .subject(SubjectKind::Beam, analysis.beam_labels[beam].as_str()),
        );
    }
}

fn tributary(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    let limit = work.take(&TRIBUTARY_LIMIT);
    let mut named = Vec::new();
    for row in &outcome.piles {
        let Some(t) = row.tributary.filter(|_| row.rigid.max.si() != 0.0) else {
            continue;
        };
        work.trace.about(|| format!("pile {}", row.label));
        let d = tributary_difference(t, row.rigid.max, &mut work.trace);
        if crate::quantity::round9(d.abs()) > limit {
            named.push(format!("{} ({:+.1} %)", row.label, 100.0 * d));
        }
    }
    work.trace.about(String::new);
    if named.is_empty() {
        return;
    }
    let more = named.len().saturating_sub(NAMED_MAX);
    let tail = if more > 0 {
        format!(" and {more} more")
    } else {
        String::new()
    };
    named.truncate(NAMED_MAX);
    work.warn(
        &warnings::TRIBUTARY_DIFFERS,
        format!(
            "by tributary lengths instead of a continuous beam, {} of {} piles: {}{tail}",
            named.len() + more,
            analysis.piles.len(),
            named.join(", ")
        ),
    );
}

fn uplift(outcome: &Outcome, work: &mut Work) {
    let up: Vec<&str> = outcome
        .piles
        .iter()
        .filter(|p| p.tension.demand.si() > 0.0)
        .map(|p| p.label.as_str())
        .collect();
    if up.is_empty() {
        return;
    }
    let shown = &up[..up.len().min(NAMED_MAX)];
    let tail = if up.len() > shown.len() {
        format!(" and {} more", up.len() - shown.len())
    } else {
        String::new()
    };
    work.warn(
        &warnings::PILE_UPLIFT,
        format!("{}{tail}", shown.join(", ")),
    );
}
