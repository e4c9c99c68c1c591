//! The plan before and after side by side: how it is judged, its piles, its beams, its bridged
//! corners. Everything is read from the two analyses.

use super::outcome::{
    BridgedBeam, BridgedCorner, ForceChange, GoverningCheck, LayoutState, MomentChange,
    RelocatedBeam, RelocatedPile,
};
use super::standing::{Standing, Tracked};
use crate::contract::{Check, CheckStatus, Work, verdict_so_far};
use crate::layout::bench::Bench;
use crate::layout::codes::checks as plan;
use crate::layout::{LayoutBeam, LayoutPile, MomentExtreme, Outcome, PlanPoint};
use crate::quantity::{Force, Length, Moment};

/// A check in short.
pub(super) fn in_short(check: &Check) -> GoverningCheck {
    GoverningCheck {
        check: check.id.to_string(),
        subject: check.subject.clone(),
        combination: check.combination.clone(),
        utilisation_ratio: check.utilisation_ratio,
        source: check.source.id.to_string(),
    }
}

/// How far a judged check is used; one that failed without a ratio counts as the highest.
pub(super) fn used(check: &Check) -> Option<f64> {
    match check.status {
        CheckStatus::NotEvaluated => None,
        CheckStatus::Fail => Some(check.utilisation_ratio.unwrap_or(f64::INFINITY)),
        CheckStatus::Pass | CheckStatus::Warn => check.utilisation_ratio,
    }
}

/// Whether a check is of what a beam bears in bending, shear or torsion.
pub(super) fn of_beam(check: &Check) -> bool {
    let strengths = [
        plan::BEAM_MOMENT_SAGGING.id,
        plan::BEAM_MOMENT_HOGGING.id,
        plan::BEAM_SHEAR.id,
        plan::BEAM_TORSION.id,
    ];
    strengths.contains(&&*check.id)
}

/// How `pile-layout` judges a plan, from what it wrote.
pub(super) fn state(outcome: &Outcome, work: &mut Work) -> LayoutState {
    let verdict = verdict_so_far(work);
    let mut governing: Option<(f64, &Check)> = None;
    for check in &work.checks {
        // an advice is none to govern
        if check.status == CheckStatus::Warn {
            continue;
        }
        if let Some(u) = used(check)
            && governing.is_none_or(|g| u > g.0)
        {
            governing = Some((u, check));
        }
    }
    let failed = work.checks.iter().filter(|c| c.status == CheckStatus::Fail);
    let of_beams = work.checks.iter().filter(|c| of_beam(c));
    let beams = of_beams.filter_map(used).reduce(f64::max);
    LayoutState {
        verdict,
        pile_count: outcome.pile_count,
        failed_count: failed.count() as u32,
        max_utilisation_ratio: outcome.max_utilisation_ratio,
        max_beam_utilisation_ratio: beams.filter(|u| u.is_finite()),
        governing: governing.map(|g| in_short(g.1)),
    }
}

/// After over before less 1.
fn change(before: Option<f64>, after: Option<f64>) -> Option<f64> {
    match (before, after) {
        (Some(b), Some(a)) if b != 0.0 && a != 0.0 => Some(a / b - 1.0),
        _ => None,
    }
}

fn forces(before: Option<Force>, after: Option<Force>) -> ForceChange {
    ForceChange {
        before,
        after,
        change_ratio: change(before.map(|f| f.si()), after.map(|f| f.si())),
    }
}

/// Every pile of before and after.
pub(super) fn piles(
    standing: &Standing,
    before: &Outcome,
    after: Option<&Outcome>,
) -> Vec<RelocatedPile> {
    let rows = standing.piles.iter();
    rows.map(|pile| {
        let old = pile.before.map(|i| &before.piles[i]);
        let new = pile.after.and_then(|i| after.map(|a| &a.piles[i]));
        one(standing, pile, old, new)
    })
    .collect()
}

fn one(
    standing: &Standing,
    pile: &Tracked,
    old: Option<&LayoutPile>,
    new: Option<&LayoutPile>,
) -> RelocatedPile {
    let both = |get: fn(&LayoutPile) -> Option<Force>| forces(old.and_then(get), new.and_then(get));
    let some = |row: ForceChange| (row.before.is_some() || row.after.is_some()).then_some(row);
    let stands = pile.after.map(|i| &standing.positions[i]);
    RelocatedPile {
        label: pile.label.clone(),
        fate: pile.fate,
        event_index: pile.event.map(|e| e as u32),
        at_before: old.map(|p| p.at),
        at: new.map(|p| p.at).or(stands.map(|p| p.at)),
        off_line: stands.and_then(|p| p.off_line),
        compression: both(|p| Some(p.compression.demand)),
        tension: both(|p| Some(p.tension.demand)),
        utilisation_before_ratio: old.and_then(|p| p.utilisation_ratio),
        utilisation_after_ratio: new.and_then(|p| p.utilisation_ratio),
        rigid: both(|p| Some(p.rigid.max)),
        spring: some(both(|p| p.spring.as_ref().map(|s| s.max))),
        tributary: some(both(|p| p.tributary)),
    }
}

/// Longest spans of the beams before and after.
pub(super) struct Spans {
    pub before: Vec<Option<f64>>,
    pub after: Vec<Option<f64>>,
}

/// Every beam before and after.
pub(super) fn beams(
    bench: &Bench<'_>,
    before: &Outcome,
    after: Option<&Outcome>,
    spans: &Spans,
) -> Vec<RelocatedBeam> {
    let rows = before.beams.iter().enumerate();
    rows.map(|(b, old)| {
        let new = after.map(|a| &a.beams[b]);
        RelocatedBeam {
            label: old.label.clone(),
            sagging: moments(old, new, |b| &b.sagging),
            hogging: moments(old, new, |b| &b.hogging),
            shear: forces(Some(old.shear.shear), new.map(|n| n.shear.shear)),
            span_before: spans.before[b].map(Length::from_si),
            span_after: spans.after[b].map(Length::from_si),
            strength_known: bench.strength_known(b),
        }
    })
    .collect()
}

fn moments(
    old: &LayoutBeam,
    new: Option<&LayoutBeam>,
    get: fn(&LayoutBeam) -> &MomentExtreme,
) -> MomentChange {
    let (was, is) = (get(old), new.map(get));
    MomentChange {
        before: was.moment,
        after: is.map(|m| m.moment),
        change_ratio: change(Some(was.moment.si()), is.map(|m| m.moment.si())),
        at_before: was.at,
        at: is.map(|m| m.at),
    }
}

/// Whether two points are one.
pub(super) fn same_place(a: &PlanPoint, b: &PlanPoint) -> bool {
    let (x, y) = ((a.x - b.x).si(), (a.y - b.y).si());
    (x * x + y * y).sqrt() <= 0.003
}

/// Corners that lost their pile by an event.
pub(super) fn corners(
    bench: &Bench<'_>,
    before: &Outcome,
    after: &Outcome,
) -> Option<Vec<BridgedCorner>> {
    let mut out = Vec::new();
    for (at, beams) in bench.bridged() {
        if !before.piles.iter().any(|p| same_place(&p.at, &at)) {
            continue;
        }
        let reaction = |pile: usize| after.piles[pile].rigid.max;
        let label = |pile: usize| after.piles[pile].label.clone();
        let rows = beams.into_iter().map(|b| BridgedBeam {
            beam: bench.beam_labels()[b.beam].clone(),
            pile: label(b.pile),
            next_pile: b.next.map(label),
            overhang: Length::from_si(b.overhang),
            cantilever_moment: b.cantilever.map(Moment::from_si),
            hinge: b.hinge.map(Force::from_si),
            continuous: b.continuous.as_ref().map(|c| Force::from_si(c.pile)),
            next_continuous: b.continuous.as_ref().map(|c| Force::from_si(c.next)),
            most_loaded_pile: b.continuous.as_ref().map(|c| label(c.most.0)),
            most_loaded_continuous: b.continuous.as_ref().map(|c| Force::from_si(c.most.1)),
            joined: reaction(b.pile),
            next_joined: b.next.map(reaction),
        });
        out.push(BridgedCorner {
            at,
            beams: rows.collect(),
        });
    }
    (!out.is_empty()).then_some(out)
}
