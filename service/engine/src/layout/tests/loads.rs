//! Load combinations: what the published sets become with the loads of a plan.

use serde_json::{Value, json};

use super::answer;
use crate::contract::{Call, Refusal};
use crate::layout::Request;

fn plan(basis: Value, loads: &[(&str, Option<&str>)]) -> Call<Request> {
    let loads: Vec<Value> = loads
        .iter()
        .map(|(kind, case)| {
            let mut load = json!({"kind": kind, "load": {"value": 1, "unit": "kN_per_m"}});
            if let Some(case) = case {
                load["case"] = json!(case);
            }
            load
        })
        .collect();
    let at =
        |x: f64| json!({"at": {"x": {"value": x, "unit": "m"}, "y": {"value": 0, "unit": "m"}}});
    serde_json::from_value(json!({
        "design_basis": basis,
        "beams": [{
            "points": [at(0.0)["at"], at(4.0)["at"]],
            "line_loads": loads,
        }],
        "piles": {"given": {"positions": [at(0.0), at(4.0)]}},
    }))
    .unwrap()
}

fn published(basis: &str, edition: &str) -> Value {
    json!({basis: {"combinations": {"published": {"edition": edition}}}})
}

fn names(call: &Call<Request>) -> Vec<String> {
    let a = answer(call).unwrap();
    a.result
        .combinations
        .iter()
        .map(|c| c.name.clone())
        .collect()
}

fn codes(refusal: Result<impl std::fmt::Debug, Refusal>) -> Vec<(String, String)> {
    refusal
        .unwrap_err()
        .issues
        .iter()
        .map(|i| (i.pointer.clone(), i.code.to_string()))
        .collect()
}

const ALL: &[(&str, Option<&str>)] = &[
    ("dead", None),
    ("live", None),
    ("roof_live", None),
    ("snow", None),
    ("wind", None),
    ("seismic", None),
];

/// ASCE 7-16, 2.4.1 and 2.4.5 (verified list); companions also left out.
#[test]
fn allowable_stress_7_16() {
    let call = plan(published("allowable_stress", "asce_7_16"), ALL);
    let got = names(&call);
    for listed in [
        "D",
        "D+L",
        "D+Lr",
        "D+S",
        "D+0.75L+0.75Lr",
        "D+0.75L+0.75S",
        "D+0.6W",
        "D+0.45W+0.75L+0.75Lr",
        "D+0.45W+0.75L+0.75S",
        "0.6D+0.6W",
        "D+0.7E",
        "D+0.525E+0.75L+0.75S",
        "0.6D+0.7E",
    ] {
        assert!(got.iter().any(|g| g == listed), "{listed} not in {got:?}");
    }
    assert_eq!(got.len(), 13 + 3 + 2, "{got:?}");
}

/// Loads that are not there leave no combinations, and none stands twice.
#[test]
fn absent_kinds_collapse() {
    let some = [("dead", None), ("live", None), ("snow", None)];
    let basis = || published("allowable_stress", "asce_7_16");
    assert_eq!(
        names(&plan(basis(), &some)),
        ["D", "D+L", "D+S", "D+0.75L+0.75S"]
    );
    assert_eq!(names(&plan(basis(), &some[..1])), ["D"]);
    let basis = published("limit_states", "asce_7_16");
    assert_eq!(
        names(&plan(basis, &some)),
        [
            "1.4D",
            "1.2D+1.6L",
            "1.2D+1.6L+0.5S",
            "1.2D+1.6S",
            "1.2D+1.6S+L"
        ]
    );
}

/// ASCE 7-16, 2.3.1 and 2.3.6 (verified list).
#[test]
fn strength_7_16() {
    let got = names(&plan(published("limit_states", "asce_7_16"), ALL));
    for listed in [
        "1.4D",
        "1.2D+1.6L+0.5Lr",
        "1.2D+1.6L+0.5S",
        "1.2D+1.6Lr+L",
        "1.2D+1.6Lr+0.5W",
        "1.2D+1.6S+L",
        "1.2D+1.6S+0.5W",
        "1.2D+W+L+0.5Lr",
        "1.2D+W+L+0.5S",
        "0.9D+W",
        "1.2D+E+L+0.2S",
        "0.9D+E",
    ] {
        assert!(got.iter().any(|g| g == listed), "{listed} not in {got:?}");
    }
}

/// Factors from memory are used with a warning; those that were seen are not.
#[test]
fn sets_from_memory_warn() {
    for (basis, edition, memory) in [
        ("allowable_stress", "asce_7_16", false),
        ("limit_states", "asce_7_16", false),
        ("allowable_stress", "asce_7_22", true),
        ("limit_states", "asce_7_22", true),
        ("limit_states", "nbc_2020", true),
    ] {
        let call = plan(published(basis, edition), &[("dead", None), ("snow", None)]);
        let a = answer(&call).unwrap();
        let warned = a.warnings.iter().any(|w| w.code == "default_from_memory");
        assert_eq!(warned, memory, "{basis} {edition}");
    }
    // the snow factors that tell the editions apart
    let two = [("dead", None), ("live", None), ("snow", None)];
    let got = names(&plan(published("allowable_stress", "asce_7_22"), &two));
    assert_eq!(got, ["D", "D+L", "D+0.7S", "D+0.75L+0.525S"]);
    let got = names(&plan(published("limit_states", "asce_7_22"), &two));
    assert!(got.contains(&"1.2D+S+L".to_owned()) && got.contains(&"1.2D+1.6L+0.3S".to_owned()));
    let got = names(&plan(published("limit_states", "nbc_2020"), &two));
    assert_eq!(
        got,
        [
            "1.4D",
            "1.25D+1.5L",
            "1.25D+1.5L+S",
            "0.9D+1.5L",
            "0.9D+1.5L+S",
            "1.25D+1.5S",
            "1.25D+1.5S+L",
            "0.9D+1.5S",
            "0.9D+1.5S+L"
        ]
    );
}

/// Cases of one kind never act together; a load without a case acts with each of them.
#[test]
fn cases_are_alternatives() {
    let loads = [
        ("dead", None),
        ("wind", Some("east")),
        ("wind", Some("west")),
        ("wind", None),
    ];
    let call = plan(published("allowable_stress", "asce_7_16"), &loads);
    let a = answer(&call).unwrap();
    let got: Vec<_> = a
        .result
        .combinations
        .iter()
        .map(|c| c.name.as_str())
        .collect();
    assert_eq!(
        got,
        [
            "D",
            "D+0.6W[east]",
            "D+0.6W[west]",
            "0.6D+0.6W[east]",
            "0.6D+0.6W[west]"
        ]
    );
    // 4 m x (1 dead + 0.6 of the case + 0.6 of the load without a case) kN/m
    super::close(
        a.result.combinations[1].total_load.si(),
        4_000.0 * 2.2,
        1e-12,
    );
    let own = json!({"limit_states": {"combinations": {"own": {"list": [
        {"name": "A", "factors": [{"kind": "dead", "factor": 0.9}, {"kind": "wind", "factor": 1.4}]},
        {"name": "B", "factors": [{"kind": "wind", "case": "west", "factor": 1}]},
    ]}}}});
    assert_eq!(names(&plan(own, &loads)), ["A [east]", "A [west]", "B"]);
}

#[test]
fn loads_and_combinations_that_do_not_belong_together() {
    let basis = published("limit_states", "nbc_2020");
    let loads = [("dead", None), ("roof_live", None), ("frost", None)];
    assert_eq!(
        codes(answer(&plan(basis, &loads))),
        [
            (
                "/beams/0/line_loads/1/kind".into(),
                "load_kind_not_combined".into()
            ),
            (
                "/beams/0/line_loads/2/kind".into(),
                "load_kind_not_combined".into()
            ),
        ]
    );
    let own = json!({"limit_states": {"combinations": {"own": {"list": [
        {"name": "A", "factors": [{"kind": "snow", "factor": 1}]}]}}}});
    assert_eq!(
        codes(answer(&plan(own, &[("dead", None)]))),
        [("/design_basis".into(), "no_load".into())]
    );
    let own = json!({"limit_states": {"combinations": {"own": {"list": [
        {"name": "A", "factors": [{"kind": "dead", "factor": 1}]}]}}}});
    let a = answer(&plan(own, &[("dead", None), ("swell", None)])).unwrap();
    assert!(
        a.warnings
            .iter()
            .any(|w| w.code == "combination_unused_load")
    );
    // 40 wind cases make 80 combinations with 0.6 D + 0.6 W and D + 0.6 W
    let cases: Vec<String> = (0..40).map(|i| format!("w{i}")).collect();
    let loads: Vec<_> = std::iter::once(("dead", None))
        .chain(cases.iter().map(|c| ("wind", Some(c.as_str()))))
        .collect();
    let found = codes(answer(&plan(
        published("allowable_stress", "asce_7_16"),
        &loads,
    )));
    assert_eq!(
        found,
        [("/design_basis".into(), "too_many_combinations".into())]
    );
}
