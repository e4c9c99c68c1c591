//! Small plans tried out in full by calls of the noun itself: the best of each kind, and the first
//! three ranks, are found.

use super::plans::job;
use super::*;
use crate::quantity::{Length, Size, round9};
use crate::random::Random;
use crate::text::Label;

/// What decides between two ways out without prices: what prints decides.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
struct Key {
    extra: u32,
    changes: usize,
    used: f64,
    movement: f64,
}

fn used(answered: &Answer<Outcome>) -> f64 {
    let judged = answered
        .checks
        .iter()
        .filter(|c| c.id.starts_with("beam_") || c.id.starts_with("pile_"))
        .filter(|c| !["pile_span", "pile_spacing", "pile_within_beam_width"].contains(&&*c.id));
    let all = judged.filter_map(|c| c.utilisation_ratio);
    round9(all.fold(0.0, f64::max))
}

/// The key of events on the plan as it stands, where nothing fails and it is accepted.
fn tried(now: &Request, list: Vec<RelocationEvent>, extra: u32, movement: f64) -> Option<Key> {
    let changes = list.len();
    let next = Request {
        events: list,
        ways_out: None,
        ..now.clone()
    };
    let answered = ask(&next).ok()?;
    (answered.verdict == Verdict::Accept).then(|| Key {
        extra,
        changes,
        used: used(&answered),
        movement: round9(movement),
    })
}

fn given_count(sent: &Request) -> usize {
    match &sent.layout.piles {
        crate::layout::PilePlacement::Given(g) => g.positions.len(),
        crate::layout::PilePlacement::Search(_) => 0,
    }
}

fn least(keys: impl Iterator<Item = Key>) -> Option<Key> {
    keys.reduce(|a, b| if b < a { b } else { a })
}

/// Distances of a grid up to a limit.
fn grid(step: f64, most: f64) -> impl Iterator<Item = f64> {
    let count = (most / step + 1e-9) as i32;
    (1..=count).flat_map(move |k| [-f64::from(k) * step, f64::from(k) * step])
}

/// Everything the first beam of a lost pile offers: a place along it, two of them, larger piles.
#[test]
fn the_first_ranks_are_those_of_trying_everything() {
    let mut random = Random(40);
    let (mut compared, mut found_some) = (0, 0);
    while compared < 25 {
        let mut sent = job(&mut random);
        // a lost pile inside a straight line, so that what is offered can be told by hand
        if sent.layout.beams.len() != 1 || given_count(&sent) < 3 {
            continue;
        }
        let lost = "P2";
        sent.events = events(r#"[{"stopped_short":{"pile":"P2"}}]"#);
        let ways = sent.ways_out.as_mut().expect("ways out");
        ways.pile = None;
        ways.obstruction = None;
        ways.step = Some(Length::from_si(0.2));
        ways.pair_step_count = Some(2);
        ways.max_along = Some(Length::from_si(0.8));
        ways.max_off_line = Some(Size::ZERO);
        let answered = answer(&sent);
        let Some(report) = answered.result.ways_out.clone() else {
            continue;
        };
        compared += 1;
        let now = Request {
            layout: answered.result.layout.0.clone(),
            ..sent.clone()
        };
        let drawn = pile(&answered.result, lost)
            .at_before
            .expect("it was drawn");
        let added = |suffix: &str, by: f64| {
            let mut at = drawn;
            at.x = Length::from_si(at.x.si() + by);
            let text = format!(
                r#"{{"added":{{"pile":{{"label":"{lost}{suffix}","at":{}}}}}}}"#,
                serde_json::to_string(&at).unwrap()
            );
            serde_json::from_str::<RelocationEvent>(&text).unwrap()
        };
        let leave = {
            let none = answered.verdict == Verdict::Accept;
            none.then(|| Key {
                extra: 0,
                changes: 0,
                used: used(&answered),
                movement: 0.0,
            })
        };
        let shift =
            least(grid(0.2, 0.8).filter_map(|by| tried(&now, vec![added("a", by)], 1, by.abs())));
        let pair = least(grid(0.4, 0.8).filter(|a| *a < 0.0).flat_map(|a| {
            let (now, added) = (&now, &added);
            let sides = grid(0.4, 0.8).filter(|b| *b > 0.0);
            sides.filter_map(move |b| {
                let list = vec![added("a", a), added("b", b)];
                tried(now, list, 2, f64::max(-a, b))
            })
        }));
        let larger = larger(&now, &answered.result);
        let mut all: Vec<(WayOutKind, Key)> = [
            (WayOutKind::LeaveOut, leave),
            (WayOutKind::ShiftAlong, shift),
            (WayOutKind::StraddlingPair, pair),
            (WayOutKind::LargerPiles, larger),
        ]
        .into_iter()
        .filter_map(|(kind, key)| Some((kind, key?)))
        .collect();
        all.sort_by(|a, b| {
            let keys = a.1.partial_cmp(&b.1).expect("numbers");
            keys.then(a.0.cmp(&b.0))
        });
        found_some += usize::from(!all.is_empty());
        let ranked: Vec<(WayOutKind, Key)> = report
            .options
            .iter()
            .filter(|o| o.verdict == Verdict::Accept)
            // a stronger beam has no end of strengths to try
            .filter(|o| o.kind != WayOutKind::StrongerBeam)
            // nor is every place tried with every set of larger piles
            .filter(|o| o.kind == WayOutKind::LargerPiles || o.larger_pile_count == 0)
            .map(|o| {
                let key = Key {
                    extra: o.extra_pile_count,
                    changes: o.change_count as usize,
                    used: round9(o.utilisation_ratio.expect("judged")),
                    movement: round9(o.movement.si()),
                };
                (o.kind, key)
            })
            .collect();
        let close = |a: &Key, b: &Key| {
            (a.extra, a.changes) == (b.extra, b.changes)
                && (a.used - b.used).abs() < 1e-6
                && (a.movement - b.movement).abs() < 1e-6
        };
        assert_eq!(ranked.len(), all.len(), "{ranked:?} {all:?}");
        for (ours, theirs) in ranked.iter().zip(&all).take(3) {
            let same = ours.0 == theirs.0 && close(&ours.1, &theirs.1);
            assert!(same, "{ranked:?} {all:?}");
        }
    }
    assert!(found_some > 10, "{found_some}");
}

/// The fewest larger piles: every choice of them for every pile.
fn larger(now: &Request, outcome: &Outcome) -> Option<Key> {
    let offers = now.ways_out.as_ref()?.larger_piles.clone()?;
    let labels: Vec<&str> = outcome
        .piles
        .iter()
        .filter(|p| p.fate != PileFate::Lost)
        .map(|p| p.label.as_str())
        .collect();
    let choices = offers.len() + 1;
    let count = (0..labels.len()).fold(1, |n, _| n * choices);
    let mut keys = Vec::new();
    for number in 1..count {
        let mut rest = number;
        let mut list = Vec::new();
        for label in &labels {
            let choice = rest % choices;
            rest /= choices;
            if choice > 0 {
                let offer = &offers[choice - 1];
                list.push(RelocationEvent::Replaced(PileReplaced {
                    pile: Label((*label).to_owned()),
                    pile_type: None,
                    compression: Some(offer.compression),
                    tension: Some(offer.tension),
                    stiffness: None,
                    why: Some(offer.label.clone()),
                }));
            }
        }
        keys.extend(tried(now, list, 0, 0.0));
    }
    least(keys.into_iter())
}
