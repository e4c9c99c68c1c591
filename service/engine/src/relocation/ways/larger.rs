//! Larger piles in the stead of those that fail.

use super::bench::{Candidate, Seeker, Tried};
use super::kinds::as_is;
use crate::contract::{Check, Refusal, utilisation};
use crate::layout::codes::checks as plan;
use crate::relocation::outcome::PileFate;
use crate::relocation::request::{LargerPile, PileReplaced, RelocationEvent, ResidualCapacity};
use crate::text::Label;

/// Rounds after which piles that still fail are left: stiffer piles draw load.
const ROUNDS: usize = 10;

/// Makes piles that fail larger, one round after the other, on the plan as it is and without the
/// pile.
pub(super) fn larger_piles(seeker: &mut Seeker<'_, '_>, tried: &mut Tried) -> Result<(), Refusal> {
    if seeker.ways.larger_piles.is_none() {
        tried.reason = Some("no larger piles were sent".to_owned());
        return Ok(());
    }
    for base in as_is(seeker) {
        if let Some(candidate) = enlarged(seeker, base)? {
            seeker.attempt(candidate, tried)?;
        }
    }
    if tried.best.is_none() {
        tried.reason = Some("no larger pile carries what a pile that fails has to".to_owned());
    }
    Ok(())
}

/// A candidate with larger piles where piles fail; none where no pile becomes larger.
pub(super) fn enlarged(
    seeker: &mut Seeker<'_, '_>,
    base: Candidate,
) -> Result<Option<Candidate>, Refusal> {
    let sent = seeker.ways.larger_piles.as_deref().unwrap_or_default();
    let mut offers: Vec<&LargerPile> = sent.iter().collect();
    let price = |l: &LargerPile| {
        let all = seeker.ways.prices.as_ref().and_then(|p| p.replaced_pile);
        l.price.or(all).unwrap_or(0.0)
    };
    offers.sort_by(|a, b| {
        price(a)
            .total_cmp(&price(b))
            .then(a.compression.si().total_cmp(&b.compression.si()))
            .then(a.tension.si().total_cmp(&b.tension.si()))
    });
    let mut candidate = base;
    let mut taken: Vec<(usize, usize)> = Vec::new();
    for _ in 0..ROUNDS {
        let Some((judged, outcome)) = seeker.analyse(&candidate)? else {
            break;
        };
        let mut changed = false;
        for row in &outcome.piles {
            if !judged.failed.iter().any(|c| is_of(c, &row.label)) {
                continue;
            }
            let pile = candidate
                .standing
                .piles
                .iter()
                .position(|p| p.label == row.label);
            let Some(pile) = pile else { continue };
            let now = taken.iter().position(|t| t.0 == pile);
            let from = now.map_or(0, |t| taken[t].1 + 1);
            let demand = (row.compression.demand.si(), row.tension.demand.si());
            let carries = |l: &&LargerPile| {
                utilisation(demand.0, l.compression.si()).1
                    && utilisation(demand.1, l.tension.si()).1
            };
            let next = (from..offers.len()).find(|i| carries(&offers[*i]));
            let Some(next) = next else { continue };
            match now {
                Some(t) => taken[t].1 = next,
                None => taken.push((pile, next)),
            }
            changed = true;
        }
        if !changed {
            break;
        }
        candidate = replaced(seeker, &candidate, &taken, &offers);
    }
    Ok((!taken.is_empty()).then_some(candidate))
}

fn is_of(check: &Check, label: &str) -> bool {
    let piles = [plan::PILE_COMPRESSION.id, plan::PILE_TENSION.id];
    let subject = check.subject.as_ref();
    piles.contains(&&*check.id) && subject.is_some_and(|s| s.label == label)
}

fn replaced(
    seeker: &Seeker<'_, '_>,
    base: &Candidate,
    taken: &[(usize, usize)],
    offers: &[&LargerPile],
) -> Candidate {
    let mut out = base.clone();
    out.events
        .retain(|e| !matches!(e, RelocationEvent::Replaced(_)));
    for (pile, offer) in taken {
        let larger = offers[*offer];
        let tracked = &mut out.standing.piles[*pile];
        if let Some(after) = tracked.after {
            let position = &mut out.standing.positions[after];
            position.compression = Some(larger.compression);
            position.tension = Some(larger.tension);
            if larger.stiffness.is_some() {
                position.stiffness = larger.stiffness;
                position.founded_on_rock = None;
            }
        }
        if told(&mut out.events, &tracked.label, larger) {
            continue;
        }
        tracked.fate = PileFate::Replaced;
        tracked.event = Some(seeker.next_event());
        out.events.push(RelocationEvent::Replaced(PileReplaced {
            pile: Label(tracked.label.clone()),
            pile_type: None,
            compression: Some(larger.compression),
            tension: Some(larger.tension),
            stiffness: larger.stiffness,
            why: Some(larger.label.clone()),
        }));
    }
    out.larger = taken.len() as u32;
    out
}

/// Tells it in the event that adds or moves the pile, where there is one.
fn told(events: &mut [RelocationEvent], label: &str, larger: &LargerPile) -> bool {
    for event in events {
        match event {
            RelocationEvent::Added(a)
                if a.pile.label.as_ref().is_some_and(|l| l.as_str() == label) =>
            {
                a.pile.compression = Some(larger.compression);
                a.pile.tension = Some(larger.tension);
                if larger.stiffness.is_some() {
                    a.pile.stiffness = larger.stiffness;
                    a.pile.founded_on_rock = None;
                }
                a.why = Some(larger.label.clone());
                return true;
            }
            RelocationEvent::Moved(m) if m.pile.as_str() == label => {
                m.residual = Some(ResidualCapacity {
                    compression: larger.compression,
                    tension: larger.tension,
                    stiffness: larger.stiffness,
                    founded_on_rock: None,
                });
                m.why = Some(larger.label.clone());
                return true;
            }
            _ => {}
        }
    }
    false
}
