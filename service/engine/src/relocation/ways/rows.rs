//! A candidate as the answer tells it.

use super::bench::{Best, Seeker, Tried};
use crate::contract::Refusal;
use crate::layout::{Outcome, PileCost, PlanPoint};
use crate::quantity::{Again, Length, round9};
use crate::relocation::compare::in_short;
use crate::relocation::notes;
use crate::relocation::outcome::{
    NeededStrength, NeighbourLoad, ReinforcementNote, WayOut, WayOutKind,
};
use crate::relocation::standing::given;

/// Piles that are told with the load they get.
const NEIGHBOURS: usize = 6;
/// Change of a load below which it is not told, as a share of it.
const CHANGE: f64 = 1e-3;

/// The row; none where the plan could not be analysed again within the limit of work.
pub(super) fn row(
    seeker: &mut Seeker<'_, '_>,
    (kind, rank): (WayOutKind, u32),
    best: &Best,
    tried: &Tried,
    full: bool,
) -> Result<Option<WayOut>, Refusal> {
    // the limit is for the search; what was found is told
    let (count, complete) = (seeker.count, seeker.complete);
    seeker.count = 0;
    let found = seeker.analyse(&best.candidate)?;
    (seeker.count, seeker.complete) = (count + 1, complete);
    let Some((judged, outcome)) = found else {
        return Ok(None);
    };
    let finite = |u: Option<f64>| u.filter(|u| u.is_finite());
    let c = &best.candidate;
    let reinforcement = reinforcement(seeker, best)?;
    let layout = full.then(|| {
        let mut layout = seeker.applied.with(&c.standing.positions);
        for (beam, strong) in &c.stronger {
            layout.beams[*beam].clone_from(strong);
        }
        Again(layout)
    });
    Ok(Some(WayOut {
        rank,
        kind,
        feasible: judged.feasible(),
        verdict: judged.verdict,
        events: Again(c.events.clone()),
        stretches: tried.stretches.clone(),
        offsets: (kind == WayOutKind::ShiftOff).then(|| tried.offsets.clone()),
        pile_utilisation_ratio: finite(judged.pile_used),
        beam_utilisation_ratio: finite(judged.beam_used),
        utilisation_ratio: finite(judged.used),
        failed: judged.failed.iter().map(in_short).collect(),
        open: judged.open.iter().map(in_short).collect(),
        extra_pile_count: c.extra,
        larger_pile_count: c.larger,
        change_count: c.events.len() as u32,
        movement: Length::from_si(c.movement),
        cost: c.cost.map(|sum| money(seeker, sum)),
        needed_strengths: (kind == WayOutKind::StrongerBeam).then(|| needed(seeker, best)),
        neighbours: neighbours(seeker, &outcome),
        reinforcement,
        layout,
        result: full.then_some(outcome),
    }))
}

/// Where the support of beams moves, with the moments as drawn and with the way out.
fn reinforcement(
    seeker: &mut Seeker<'_, '_>,
    best: &Best,
) -> Result<Vec<ReinforcementNote>, Refusal> {
    let drawn = given(&seeker.request.layout);
    let stood: Vec<PlanPoint> = drawn.iter().map(|p| p.at).collect();
    let places = notes::places(&best.candidate.standing, &stood, seeker.bench);
    if places.is_empty() {
        return Ok(Vec::new());
    }
    let probes = notes::probes(&places);
    let mut moments = Vec::new();
    for positions in [drawn, &best.candidate.standing.positions] {
        seeker.work.go_on()?;
        let mut scratch = seeker.work.quietly();
        seeker.bench.put(positions)?;
        moments.push(seeker.bench.tried_with(&probes, &mut scratch)?.1);
    }
    Ok(notes::notes(
        places,
        &moments[0],
        &moments[1],
        seeker.before,
    ))
}

/// A sum rounded to 0.01, a half to the even digit.
fn money(seeker: &Seeker<'_, '_>, sum: f64) -> PileCost {
    let prices = seeker.ways.prices.as_ref();
    PileCost {
        value: (round9(sum) * 100.0).round_ties_even() / 100.0,
        currency: prices
            .and_then(|p| p.currency.as_ref())
            .map(|c| c.as_str().to_owned()),
    }
}

fn needed(seeker: &Seeker<'_, '_>, best: &Best) -> Vec<NeededStrength> {
    let all = best.candidate.stronger.iter();
    all.map(|(beam, strong)| {
        let was = &seeker.applied.beams()[*beam];
        NeededStrength {
            beam: seeker.bench.beam_labels()[*beam].clone(),
            moment_capacity: strong
                .moment_capacity
                .filter(|_| strong.moment_capacity != was.moment_capacity),
            shear_capacity: strong
                .shear_capacity
                .filter(|_| strong.shear_capacity != was.shear_capacity),
            torsion_capacity: strong
                .torsion_capacity
                .filter(|_| strong.torsion_capacity != was.torsion_capacity),
        }
    })
    .collect()
}

/// The piles whose load changes most from the plan as it was drawn; new ones too.
fn neighbours(seeker: &Seeker<'_, '_>, outcome: &Outcome) -> Vec<NeighbourLoad> {
    let old = |label: &str| {
        let mut all = seeker.before.piles.iter();
        all.find(|p| p.label == label).map(|p| p.compression.demand)
    };
    let mut rows: Vec<(f64, NeighbourLoad)> = Vec::new();
    for pile in &outcome.piles {
        let (before, after) = (old(&pile.label), pile.compression.demand);
        let by = (after.si() - before.map_or(0.0, |b| b.si())).abs();
        if by > CHANGE * after.si().abs() {
            rows.push((
                by,
                NeighbourLoad {
                    pile: pile.label.clone(),
                    before,
                    after,
                    utilisation_ratio: pile.utilisation_ratio,
                },
            ));
        }
    }
    rows.sort_by(|a, b| round9(b.0).total_cmp(&round9(a.0)));
    rows.into_iter().take(NEIGHBOURS).map(|r| r.1).collect()
}
