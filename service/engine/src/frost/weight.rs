//! The pile's own weight as far as it counts against uplift.

use super::codes::methods;
use super::constants::STEEL_UNIT_WEIGHT;
use super::equations::submerged_weight;
use super::ground::Ground;
use super::path_request::PileWeight;
use super::request::Request;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Work};
use crate::quantity::Force;
use crate::soil::WATER_UNIT_WEIGHT;

/// A weight from the shaft needs its steel.
pub fn faults(request: &Request) -> Vec<Issue> {
    let from_shaft = matches!(request.pile_weight, Some(PileWeight::FromShaft(_)));
    if from_shaft && request.pile.shaft.steel_area().is_none() {
        return vec![Issue::new(
            "/pile/shaft/round",
            &MISSING_MEMBER,
            "the weight from the shaft needs `wall_thickness`",
        )];
    }
    Vec::new()
}

/// The weight that counts; `None` where none was asked for.
pub fn of(request: &Request, ground: &Ground, work: &mut Work) -> Option<Force> {
    match request.pile_weight.as_ref()? {
        PileWeight::Given(given) => Some(given.weight),
        PileWeight::FromShaft(_) => {
            let area = request.pile.shaft.steel_area()?;
            work.method(&methods::PILE_SUBMERGED_WEIGHT);
            let steel = work.take(&STEEL_UNIT_WEIGHT);
            let water = work.take(&WATER_UNIT_WEIGHT);
            work.trace.about(|| "weight of the pile".to_owned());
            let length = ground.tip - ground.head;
            let weight = submerged_weight(area, length, steel, water, &mut work.trace);
            work.trace.about(String::new);
            Some(weight)
        }
    }
}
