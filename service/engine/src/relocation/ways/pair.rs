//! Two piles in the stead of one: one on either side of it along a beam, or one on each of two
//! beams at a corner.

use super::bench::{Candidate, Seeker, Tried};
use crate::contract::Refusal;
use crate::layout::PlanPoint;
use crate::layout::bench::Along;
use crate::quantity::Length;
use crate::relocation::outcome::{FeasibleStretch, PileFate};
use crate::relocation::request::{PileAdded, RelocationEvent};

/// How far along a beam from the old place, and where that is.
type Spot = (f64, PlanPoint);

/// Steps from one place of a pile of a pair to the next.
const PAIR_STEPS: u32 = 12;

/// One way to go from where the pile was drawn, with its places, nearest first.
struct Arm {
    on: Along,
    places: Vec<Spot>,
    /// The places of pairs that do, nearest and farthest.
    range: Option<(Spot, Spot)>,
}

/// Tries every pair.
pub(super) fn straddling(seeker: &mut Seeker<'_, '_>, tried: &mut Tried) -> Result<(), Refusal> {
    let steps = seeker.ways.pair_step_count.unwrap_or(PAIR_STEPS);
    let step = seeker.step() * f64::from(steps);
    let most = seeker.ways.max_along.map_or(f64::INFINITY, |m| m.si());
    let mut arms = Vec::new();
    for on in seeker.drawn.clone() {
        for side in [-1.0, 1.0] {
            let places = seeker.grid(on, step, side, most);
            if !places.is_empty() {
                arms.push(Arm {
                    on,
                    places,
                    range: None,
                });
            }
        }
    }
    for first in 0..arms.len() {
        for second in first + 1..arms.len() {
            pairs(seeker, tried, &mut arms, (first, second))?;
        }
    }
    if arms.len() < 2 {
        tried.reason = Some("there are no places within the limits on two sides of it".to_owned());
    }
    for arm in arms {
        if let Some((near, far)) = arm.range {
            let (low, high) = if near.0 < far.0 {
                (near, far)
            } else {
                (far, near)
            };
            tried.stretches.push(FeasibleStretch {
                beam: seeker.bench.beam_labels()[arm.on.beam].clone(),
                from: Length::from_si(arm.on.at + low.0),
                to: Length::from_si(arm.on.at + high.0),
                from_point: low.1,
                to_point: high.1,
                from_utilisation_ratio: None,
                to_utilisation_ratio: None,
            });
        }
    }
    Ok(())
}

/// All pairs of two arms, those nearest to the old place first.
fn pairs(
    seeker: &mut Seeker<'_, '_>,
    tried: &mut Tried,
    arms: &mut [Arm],
    (first, second): (usize, usize),
) -> Result<(), Refusal> {
    let (rows, columns) = (arms[first].places.len(), arms[second].places.len());
    for sum in 0..rows + columns - 1 {
        for i in sum.saturating_sub(columns - 1)..=sum.min(rows - 1) {
            let (a, b) = (arms[first].places[i], arms[second].places[sum - i]);
            let candidate = both(seeker, a, b);
            let found = seeker.attempt(candidate, tried)?;
            if found.is_some_and(|f| f.0) {
                widen(&mut arms[first].range, a);
                widen(&mut arms[second].range, b);
            }
            if !seeker.complete {
                return Ok(());
            }
        }
    }
    Ok(())
}

fn widen(range: &mut Option<(Spot, Spot)>, by: Spot) {
    let (near, far) = range.get_or_insert((by, by));
    if by.0.abs() < near.0.abs() {
        *near = by;
    }
    if by.0.abs() > far.0.abs() {
        *far = by;
    }
}

fn both(seeker: &Seeker<'_, '_>, a: Spot, b: Spot) -> Candidate {
    let mut out = seeker.without();
    for (suffix, (by, point)) in [("a", a), ("b", b)] {
        let pile = seeker.anew(suffix, point);
        out.standing.add(pile.clone(), seeker.next_event(), None);
        out.events
            .push(RelocationEvent::Added(PileAdded { pile, why: None }));
        out.movement = out.movement.max(by.abs());
    }
    // one that stays in the ground with less than it should carry is no pile less
    let gone = seeker.stands() && seeker.pile().fate != PileFate::Residual;
    out.extra = if gone { 1 } else { 2 };
    out
}
