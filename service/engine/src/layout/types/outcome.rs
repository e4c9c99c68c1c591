//! Types and costs in the answer.

use super::Terrain;
use crate::layout::outcome::{PileCost, PileTypeCount};
use crate::layout::request::Request;
use crate::layout::site::Pile;

/// A sum of money: to 0.01, a half to the even digit.
pub(in crate::layout) fn money(terrain: &Terrain, sum: f64) -> PileCost {
    PileCost {
        value: (sum * 100.0).round_ties_even() / 100.0,
        currency: terrain.currency.clone(),
    }
}

/// How many piles are of every type, in the order of the request.
pub(in crate::layout) fn counts(
    request: &Request,
    terrain: &Terrain,
    piles: &[Pile],
) -> Option<Vec<PileTypeCount>> {
    let offers = terrain.offers.as_ref().filter(|o| o.named)?;
    let catalogue = request.pile_types.as_ref()?;
    let mut of_type = vec![0u32; catalogue.types.len()];
    for rank in piles.iter().filter_map(|p| p.offer) {
        of_type[offers.types[rank].index] += 1;
    }
    Some(
        catalogue
            .types
            .iter()
            .zip(of_type)
            .map(|(t, count)| PileTypeCount {
                pile_type: t.label.as_str().to_owned(),
                tags: t.tags.clone(),
                pile_count: count,
                cost: t.cost.map(|c| money(terrain, c * f64::from(count))),
            })
            .collect(),
    )
}

/// What all piles cost, where types have costs; counted type by type.
pub(in crate::layout) fn total(terrain: &Terrain, piles: &[Pile]) -> Option<f64> {
    let offers = terrain.offers.as_ref().filter(|_| terrain.costed())?;
    let mut of_type = vec![0u32; offers.types.len()];
    for rank in piles.iter().filter_map(|p| p.offer) {
        of_type[rank] += 1;
    }
    let each = offers.types.iter().zip(of_type);
    Some(
        each.map(|(t, n)| t.cost.unwrap_or(0.0) * f64::from(n))
            .sum(),
    )
}
