//! The example requests under `openapi/examples/ground-heave`: each that should be answered
//! is, and what is printed is sound; each that should be refused is, all faults at once.

use super::ask;
use crate::contract::Verdict;
use crate::examples::{refused_as, request, requests, through};
use crate::ground_heave::{GroundHeave, Outcome, Request};
use crate::trace::Trace;

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in requests::<GroundHeave>("") {
        let (call, answer) = through::<GroundHeave>(&text, Trace::on())
            .unwrap_or_else(|e| panic!("{name} is refused: {e:?}"));
        assert!(answer.checks.is_empty(), "{name}");
        assert_eq!(answer.verdict, Verdict::NotAsked, "{name}");
        assert!(
            !answer.methods.is_empty() && !answer.cautions.is_empty(),
            "{name}"
        );
        let plain = serde_json::to_string(&answer.result).unwrap();
        let back: Outcome = serde_json::from_str(&plain).unwrap();
        assert_eq!(back, answer.result, "{name}");
        let again: Request =
            serde_json::from_str(&serde_json::to_string(&call.request).unwrap()).unwrap();
        assert_eq!(again, call.request, "{name}");
        let (_, silent) = through::<GroundHeave>(&text, Trace::off()).unwrap();
        assert_eq!(silent.result, answer.result, "{name}");
    }
}

/// The soils report of the house in US units: near 3 in by frost, which counts before the
/// rise of 1.5 in.
#[test]
fn the_house_heaves_near_three_inches() {
    let text = request::<GroundHeave>("linnet");
    let (_, answer) = through::<GroundHeave>(&text, Trace::off()).unwrap();
    let design = answer.result.design.unwrap();
    let inches = design.movement.get(crate::quantity::LengthUnit::In);
    assert!((2.9..3.0).contains(&inches), "{inches}");
    assert_eq!(design.governed_by, crate::ground_heave::HeaveCause::Frost);
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    refused_as::<GroundHeave>(&[
        (
            "clay-without-plasticity",
            "physics",
            "susceptibility_data_missing",
        ),
        (
            "expansive-soil-empty",
            "physics",
            "expansive_soil_data_missing",
        ),
        ("fines-contradict", "physics", "fines_contradict"),
        ("frost-without-data", "physics", "frost_heave_data_missing"),
        ("index-outside", "physics", "swell_index_outside"),
        ("layer-upside-down", "physics", "layer_inverted"),
        ("layers-gap", "physics", "layer_gap"),
        ("layers-overlap", "physics", "layer_overlap"),
        ("no-frost-depth", "shape", "missing field `frost_depth`"),
        ("no-layers", "lengths", "list_too_short"),
        (
            "no-segregation-potential",
            "physics",
            "segregation_potential_missing",
        ),
        ("nothing-asked", "physics", "heave_not_asked"),
        ("porosity-in-percent", "values", "porosity_ratio"),
        (
            "rise-without-reference",
            "shape",
            "missing field `reference`",
        ),
        (
            "several-faults",
            "physics",
            "expansive_soil_data_missing segregation_potential_missing susceptibility_data_missing swell_data_missing",
        ),
        ("swell-without-tests", "physics", "swell_data_missing"),
        ("two-swells", "shape", ""),
        (
            "unknown-expansiveness",
            "shape",
            "unknown variant `extreme`",
        ),
    ]);
}

#[test]
fn a_fault_points_to_its_place_and_says_what_is_missing() {
    let text = request::<GroundHeave>("oedometer");
    let mut sent: serde_json::Value = serde_json::from_str(&text).unwrap();
    let layer = &mut sent["swell"]["oedometer"]["layers"][1];
    layer.as_object_mut().unwrap().remove("index");
    layer.as_object_mut().unwrap().remove("swell_pressure");
    let refusal = ask(sent).expect_err("a refusal");
    let [issue] = refusal.issues.as_slice() else {
        panic!("{:?}", refusal.issues)
    };
    assert_eq!(issue.pointer, "/swell/oedometer/layers/1");
    assert_eq!(issue.detail, "send `index`, `swell_pressure`");
    assert!(issue.source.is_some());
}
