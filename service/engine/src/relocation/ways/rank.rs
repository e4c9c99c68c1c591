//! Which candidate is better, and what one costs.

use std::cmp::Ordering;

use super::bench::{Best, Candidate, Judged, Seeker};
use crate::contract::Verdict;
use crate::quantity::round9;
use crate::relocation::outcome::WayOutKind;
use crate::relocation::request::RelocationEvent;
use crate::text::Label;

/// What a candidate costs by the caller's prices; none where one of its parts has none.
pub(super) fn cost(seeker: &Seeker<'_, '_>, c: &Candidate) -> Option<f64> {
    let prices = seeker.ways.prices.as_ref()?;
    let larger = seeker.ways.larger_piles.as_deref().unwrap_or_default();
    // an event of a larger pile has its name for a reason
    let more = |why: Option<&Label>| match larger.iter().find(|l| Some(&l.label) == why) {
        Some(own) => own.price.or(prices.replaced_pile),
        None => Some(0.0),
    };
    let mut sum = 0.0;
    for event in &c.events {
        sum += match event {
            RelocationEvent::Moved(m) => prices.moved_pile? + more(m.why.as_ref())?,
            RelocationEvent::Added(a) => prices.extra_pile? + more(a.why.as_ref())?,
            RelocationEvent::Omitted(_) | RelocationEvent::StoppedShort(_) => 0.0,
            RelocationEvent::Replaced(r) => more(r.why.as_ref())?,
            RelocationEvent::Strengthened(s) => {
                let labels = seeker.bench.beam_labels();
                let beam = labels.iter().position(|l| l == s.beam.as_str())?;
                let length = seeker.bench.beam_length(beam);
                let by_length = prices
                    .stronger_beam_length
                    .map(|p| p.price * (length / p.per.si()));
                match (prices.stronger_beam, by_length) {
                    (None, None) => return None,
                    (each, by_length) => each.unwrap_or(0.0) + by_length.unwrap_or(0.0),
                }
            }
        };
    }
    Some(sum)
}

/// Feasible, then accepted.
fn class(judged: &Judged) -> u8 {
    match (judged.feasible(), judged.verdict) {
        (true, Verdict::Accept) => 0,
        (true, _) => 1,
        (false, _) => 2,
    }
}

/// What is printed decides, so that dust does not.
fn printed(v: Option<f64>) -> f64 {
    v.map_or(0.0, round9)
}

/// The order of two candidates, the better one first.
fn compare(a: &Best, b: &Best) -> Ordering {
    let (classes, costs) = (
        class(&a.judged).cmp(&class(&b.judged)),
        (a.candidate.cost, b.candidate.cost),
    );
    let by_cost = match costs {
        (Some(x), Some(y)) => round9(x).total_cmp(&round9(y)),
        (Some(_), None) => Ordering::Less,
        (None, Some(_)) => Ordering::Greater,
        (None, None) => Ordering::Equal,
    };
    // one that fails is as good as it is near to passing
    let missed = if class(&a.judged) == 2 {
        round9(a.judged.missed).total_cmp(&round9(b.judged.missed))
    } else {
        Ordering::Equal
    };
    classes
        .then(missed)
        .then(by_cost)
        .then(a.candidate.extra.cmp(&b.candidate.extra))
        .then(a.candidate.events.len().cmp(&b.candidate.events.len()))
        .then(printed(a.judged.used).total_cmp(&printed(b.judged.used)))
        .then(round9(a.candidate.movement).total_cmp(&round9(b.candidate.movement)))
}

/// Whether a candidate is better than the best so far; among equals the first stays.
pub(super) fn better(new: &Best, best: &Best) -> bool {
    compare(new, best) == Ordering::Less
}

/// The order of the ways out.
pub(super) fn order(a: (WayOutKind, &Best), b: (WayOutKind, &Best)) -> Ordering {
    compare(a.1, b.1).then(a.0.cmp(&b.0))
}

/// Whether a candidate that fails is nearer to passing than another.
pub(super) fn misses_less(new: &Best, best: &Best) -> bool {
    let by = |b: &Best| round9(b.judged.missed);
    by(new)
        .total_cmp(&by(best))
        .then_with(|| compare(new, best))
        == Ordering::Less
}
