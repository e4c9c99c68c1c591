//! Checks of distances: pile to pile, and pile to what piles keep away from.

use super::keep_outs::Barrier;
use crate::contract::{Check, SubjectKind, Work};
use crate::layout::codes::checks;
use crate::layout::plan::Point;
use crate::layout::report::Analysis;
use crate::layout::request::PilePlacement;
use crate::layout::site::{Pile, nearest};
use crate::quantity::Length;
use crate::source::CALLER;

/// Every pile against the nearest other one, and against what it keeps away from.
pub(in crate::layout) fn distances(analysis: &Analysis<'_>, work: &mut Work) {
    let plan = &analysis.frame.plan;
    let points: Vec<Point> = analysis
        .piles
        .iter()
        .map(|p| plan.point_of(&p.place))
        .collect();
    let given = matches!(analysis.request.piles, PilePlacement::Given(_));
    let offers = analysis.terrain.offers.as_ref();
    // a search keeps all piles apart by the largest helix
    let helix = |p: &Pile| {
        let typed = offers.zip(p.offer).filter(|_| given);
        typed.and_then(|(offers, rank)| offers.types[rank].helix)
    };
    let asked =
        analysis.spacing.all().is_some() || analysis.piles.iter().any(|p| helix(p).is_some());
    let near = if asked { nearest(&points) } else { Vec::new() };
    for (pile, n) in analysis.piles.iter().zip(near) {
        let Some((other, d)) = n else {
            continue;
        };
        let next = &analysis.piles[other];
        let Some((min, source)) = analysis.spacing.of_pair([helix(pile), helix(next)]) else {
            continue;
        };
        let (min, d) = (Length::from_si(min), Length::from_si(d));
        work.check(
            Check::at_least(&checks::PILE_SPACING, min, d, source)
                .subject(SubjectKind::Pile, pile.label.as_str())
                .reason(format!("to {}", next.label)),
        );
    }
    for (pile, p) in analysis.piles.iter().zip(&points) {
        keep_outs(&analysis.terrain.barriers, pile, *p, work);
    }
}

/// The thing that a pile is nearest to beyond its clearance, and every one that it is too
/// near to.
fn keep_outs(barriers: &[Barrier], pile: &Pile, p: Point, work: &mut Work) {
    let distances: Vec<f64> = barriers.iter().map(|b| b.distance(p)).collect();
    let room = |i: usize| distances[i] - barriers[i].clearance;
    let least = (0..barriers.len()).min_by(|a, b| room(*a).total_cmp(&room(*b)));
    for (i, b) in barriers.iter().enumerate() {
        if Some(i) == least || !b.allows(distances[i]) {
            let (clearance, d) = (Length::from_si(b.clearance), Length::from_si(distances[i]));
            work.check(
                Check::at_least(&checks::KEEP_OUT, clearance, d, &CALLER)
                    .subject(SubjectKind::Pile, pile.label.as_str())
                    .reason(format!("to {}", b.name())),
            );
        }
    }
}
