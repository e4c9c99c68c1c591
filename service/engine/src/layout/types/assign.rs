//! Which type each pile takes, and the support models with the stiffness of those types.

use super::Terrain;
use super::offers::{Capacity, Demand, choose};
use crate::beam::Fault;
use crate::layout::analysis::Solved;
use crate::layout::combine::Combination;
use crate::layout::frame::Frame;
use crate::layout::plan::Place;
use crate::layout::report::NOISE;
use crate::layout::site::Pile;

/// Rounds in which piles that springs load more take a stronger type.
const ROUNDS: usize = 64;

/// A pile whose type is to be found.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct Open {
    /// What every type carries where it stands, in the order of preference.
    pub each: Vec<Capacity>,
    /// The type, where it is fixed; it is still one of `each`.
    pub fixed: Option<usize>,
    /// Its own stiffness, whatever the type.
    pub stiffness: Option<f64>,
}

/// Support models of a plan and the type of every pile.
pub(in crate::layout) struct Models {
    /// Rigid first, then spring where every pile has a stiffness.
    pub solved: Vec<Solved>,
    pub ranks: Vec<usize>,
}

/// Analyses a plan on rigid piles, lets every pile take its type, and goes on to springs:
/// a pile that they load more may take a later type in the order of preference, never an
/// earlier one, until none does.
pub(in crate::layout) fn models(
    terrain: &Terrain,
    frame: &Frame,
    combinations: &[Combination],
    places: &[Place],
    open: &[Open],
) -> Result<Models, Fault> {
    let floors: Vec<f64> = combinations
        .iter()
        .map(|c| NOISE * frame.total_load(&c.factors).1)
        .collect();
    let mut solved = vec![Solved::of(frame, places, None)?];
    let mut demands = vec![Demand::default(); places.len()];
    let add = |s: &Solved, demands: &mut [Demand]| {
        for (c, floor) in combinations.iter().zip(&floors) {
            for (p, d) in demands.iter_mut().enumerate() {
                d.add(s.reaction(p, &c.factors), *floor);
            }
        }
    };
    add(&solved[0], &mut demands);
    let rank = |o: &Open, d: Demand| o.fixed.unwrap_or_else(|| choose(&o.each, d));
    let mut ranks: Vec<usize> = open
        .iter()
        .zip(&demands)
        .map(|(o, d)| rank(o, *d))
        .collect();
    let Some(offers) = &terrain.offers else {
        return Ok(Models { solved, ranks });
    };
    let stiffness = |ranks: &[usize]| -> Option<Vec<f64>> {
        open.iter()
            .zip(ranks)
            .map(|(o, r)| o.stiffness.or(offers.types[*r].stiffness))
            .collect()
    };
    for _ in 0..ROUNDS {
        let Some(k) = stiffness(&ranks) else {
            break;
        };
        let spring = Solved::of(frame, places, Some(&k))?;
        let mut all = demands.clone();
        add(&spring, &mut all);
        solved.truncate(1);
        solved.push(spring);
        let mut moved = false;
        for ((o, r), d) in open.iter().zip(&mut ranks).zip(&all) {
            if o.fixed.is_none() && !o.each[*r].carries(*d) {
                let later = choose(&o.each[*r..], *d) + *r;
                moved |= later != *r;
                *r = later;
            }
        }
        if !moved {
            break;
        }
    }
    Ok(Models { solved, ranks })
}

/// Gives every pile its type with capacity and stiffness. Piles whose type is told, or
/// that have capacities of their own, keep them.
pub(in crate::layout) fn assign(
    terrain: &Terrain,
    frame: &Frame,
    combinations: &[Combination],
    piles: &mut [Pile],
) -> Result<(), Fault> {
    let Some(offers) = terrain.offers.as_ref().filter(|o| o.named) else {
        return Ok(());
    };
    let places: Vec<Place> = piles.iter().map(|p| p.place).collect();
    let open: Vec<Open> = piles
        .iter()
        .map(|p| {
            let here = terrain.here(frame.plan.point_of(&p.place));
            let own = p.compression.is_some() && p.tension.is_some();
            Open {
                each: terrain
                    .capacities(&here)
                    .into_iter()
                    .map(|c| Capacity {
                        compression: p.compression.unwrap_or(c.compression),
                        tension: p.tension.unwrap_or(c.tension),
                    })
                    .collect(),
                // a pile with capacities of its own is of no type
                fixed: p.offer.or(own.then_some(0)),
                stiffness: p.spring(),
            }
        })
        .collect();
    let found = models(terrain, frame, combinations, &places, &open)?;
    for ((pile, o), rank) in piles.iter_mut().zip(&open).zip(found.ranks) {
        let own = pile.compression.is_some() && pile.tension.is_some();
        if !own || pile.offer.is_some() {
            pile.offer = Some(rank);
        }
        pile.compression = Some(o.each[rank].compression);
        pile.tension = Some(o.each[rank].tension);
        pile.stiffness = pile.stiffness.or(offers.types[rank].stiffness);
    }
    Ok(())
}
