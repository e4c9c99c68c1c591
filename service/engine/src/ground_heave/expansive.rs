//! Whether a building code calls the soil expansive. It gives no heave.

use super::codes::{methods, refusals};
use super::constants::{EXPANSIVE_FINES, EXPANSIVE_INDEX, EXPANSIVE_PLASTICITY};
use super::outcome::{ExpansiveAnswer, ExpansiveProperty, ExpansiveRule, ExpansiveSoilOutcome};
use super::soil_request::ExpansiveSoil;
use crate::contract::{Issue, Work};
use crate::quantity::round9;
use crate::source::IBC_EXPANSIVE_SOIL;

/// Every fault of what was sent; `at` points to it.
pub(super) fn faults(at: &str, sent: &ExpansiveSoil) -> Vec<Issue> {
    if *sent != ExpansiveSoil::default() {
        return Vec::new();
    }
    vec![
        Issue::new(
            at,
            &refusals::EXPANSIVE_SOIL_DATA_MISSING,
            "send `expansion_index_factor`, or `plasticity_index_ratio`, `passing_75_um_ratio` and `finer_than_5_um_ratio`",
        )
        .source(&IBC_EXPANSIVE_SOIL),
    ]
}

/// The answer of the rule.
pub(super) fn judge(sent: &ExpansiveSoil, work: &mut Work) -> ExpansiveSoilOutcome {
    use ExpansiveProperty::*;
    work.method(&methods::EXPANSIVE_SOIL_RULE);
    let plasticity = work.take(&EXPANSIVE_PLASTICITY);
    let fines = work.take(&EXPANSIVE_FINES);
    let index = work.take(&EXPANSIVE_INDEX);
    let above = |value: Option<f64>, limit: f64| value.map(|v| round9(v) > limit);
    let by_index = [(ExpansionIndex, above(sent.expansion_index_factor, index))];
    let by_properties = [
        (
            PlasticityIndex,
            sent.plasticity_index_ratio.map(|v| round9(v) >= plasticity),
        ),
        (Fines, above(sent.passing_75_um_ratio, fines)),
        (ClaySize, above(sent.finer_than_5_um_ratio, fines)),
    ];
    let (decided_by, deciding): (_, &[_]) = match sent.expansion_index_factor {
        Some(_) => (ExpansiveRule::ExpansionIndex, &by_index),
        None => (ExpansiveRule::IndexProperties, &by_properties),
    };
    let expansive = if deciding.iter().any(|(_, met)| *met == Some(false)) {
        ExpansiveAnswer::No
    } else if deciding.iter().all(|(_, met)| *met == Some(true)) {
        ExpansiveAnswer::Yes
    } else {
        ExpansiveAnswer::NotKnown
    };
    let which = |list: &[(ExpansiveProperty, Option<bool>)], state: Option<bool>| {
        let of_state = list.iter().filter(|(_, met)| *met == state);
        of_state.map(|(property, _)| *property).collect::<Vec<_>>()
    };
    let all = [by_properties.as_slice(), by_index.as_slice()].concat();
    ExpansiveSoilOutcome {
        expansive,
        decided_by,
        met: which(&all, Some(true)),
        not_met: which(&all, Some(false)),
        missing: match expansive {
            ExpansiveAnswer::NotKnown => which(deciding, None),
            _ => Vec::new(),
        },
        source: (&IBC_EXPANSIVE_SOIL).into(),
    }
}
