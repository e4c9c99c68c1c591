//! The example requests under `openapi/examples/ground-heave`: each that should be answered
//! is, and what is printed is sound; each that should be refused is, all faults at once.

use super::ask;
use crate::contract::Verdict;
use crate::examples::{refused_as, request, requests, through};
use crate::ground_heave::GroundHeave;
use crate::trace::Trace;

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in requests::<GroundHeave>("") {
        let (_, answer) = through::<GroundHeave>(&text, Trace::on())
            .unwrap_or_else(|e| panic!("{name} is refused: {e:?}"));
        assert!(answer.checks.is_empty(), "{name}");
        assert_eq!(answer.verdict, Verdict::NotAsked, "{name}");
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
        (
            "lenses-beyond-frost-depth",
            "physics",
            "segregation_beyond_frost_depth",
        ),
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

/// 1.09 x 2 x 1e-9 x 86.4e6 m2 of lenses over the depth: 0.434 m of frost is all ice, less is
/// refused, and so is more potential in as much.
#[test]
fn lenses_are_never_thicker_than_the_frozen_ground() {
    let winter = |depth_m: f64, potential: f64| {
        ask(serde_json::json!({ "frost": {
            "frost_depth": super::q(depth_m, "m"),
            "segregation": {
                "potential": super::q(potential, "m2_per_s_K"),
                "surface_freezing_index": super::q(1000.0, "C_day")
            }
        } }))
    };
    let limit = (1.09 * 2.0 * 1e-9 * 86.4e6_f64).sqrt();
    let found = winter(limit, 1e-9).expect("on the limit");
    super::close(found.result.design.unwrap().movement.si(), limit, 1e-12);
    for (depth, potential) in [(limit * 0.999, 1e-9), (limit, 1.001e-9)] {
        let refusal = winter(depth, potential).expect_err("a refusal");
        assert_eq!(refusal.issues[0].code, "segregation_beyond_frost_depth");
        assert_eq!(refusal.issues[0].pointer, "/frost/segregation");
        assert!(refusal.issues[0].limit.is_some());
    }
}
