//! Where the support of beams moved: the places at which their bars are asked for something else
//! than before, with the moments there.

use super::compare::same_place;
use super::outcome::{PileFate, ReinforcementNote, ReinforcementPlace};
use super::standing::Standing;
use crate::layout::bench::{Bench, Probe, Probed};
use crate::layout::{Outcome, PlanPoint};
use crate::quantity::Moment;

/// A place that is looked at before and after.
pub(super) struct Place {
    place: ReinforcementPlace,
    pile: String,
    at: PlanPoint,
    probe: Probe,
}

/// The places where a support is new or gone. `before` are the piles as they stood.
pub(super) fn places(standing: &Standing, before: &[PlanPoint], bench: &Bench<'_>) -> Vec<Place> {
    let mut out = Vec::new();
    let positions = &standing.positions;
    let stands = |at: &PlanPoint| positions.iter().any(|p| same_place(&p.at, at));
    for pile in &standing.piles {
        let went = matches!(pile.fate, PileFate::Lost | PileFate::Omitted)
            || pile.moved.is_some_and(|m| m.1 != 0.0);
        let came = pile.fate == PileFate::Added || pile.moved.is_some_and(|m| m.1 != 0.0);
        let old = pile.before.map(|b| before[b]).filter(|_| went);
        let new = pile.after.map(|a| positions[a].at).filter(|_| came);
        let mut look = |at: PlanPoint, place: ReinforcementPlace| {
            out.extend(bench.probes(&at).into_iter().map(|probe| Place {
                place,
                pile: pile.label.clone(),
                at,
                probe,
            }));
        };
        // where another pile took the place nothing is gone, and nothing new
        if let Some(at) = old.filter(|at| !stands(at)) {
            let pair = straddled(standing, &at, bench);
            look(
                at,
                if pair {
                    ReinforcementPlace::BottomBetweenPair
                } else {
                    ReinforcementPlace::BottomAtOldSupport
                },
            );
        }
        if let Some(at) = new.filter(|at| !before.iter().any(|b| same_place(b, at))) {
            look(at, ReinforcementPlace::TopOverNewSupport);
        }
    }
    out
}

/// Whether two piles were added on either side of a place on one run.
fn straddled(standing: &Standing, at: &PlanPoint, bench: &Bench<'_>) -> bool {
    let added = standing.piles.iter().filter(|p| p.fate == PileFate::Added);
    let points: Vec<PlanPoint> = added
        .filter_map(|p| p.after)
        .map(|a| standing.positions[a].at)
        .collect();
    bench.probes(at).iter().any(|here| {
        let on_run = points.iter().flat_map(|p| bench.probes(p));
        let sides: Vec<f64> = on_run.filter_map(|p| here.to(&p)).collect();
        sides.iter().any(|d| *d < 0.0) && sides.iter().any(|d| *d > 0.0)
    })
}

/// The places to probe.
pub(super) fn probes(places: &[Place]) -> Vec<Probe> {
    places.iter().map(|p| p.probe).collect()
}

/// The notes, from the moments before and after.
pub(super) fn notes(
    places: Vec<Place>,
    before: &[Probed],
    after: &[Probed],
    outcome: &Outcome,
) -> Vec<ReinforcementNote> {
    let rows = places.into_iter().zip(before.iter().zip(after));
    rows.map(|(p, (was, is))| ReinforcementNote {
        place: p.place,
        beam: outcome.beams[p.probe.beam].label.clone(),
        at: p.at,
        pile: p.pile,
        sagging_before: Moment::from_si(was.sagging),
        sagging_after: Moment::from_si(is.sagging),
        hogging_before: Moment::from_si(was.hogging),
        hogging_after: Moment::from_si(is.hogging),
    })
    .collect()
}
