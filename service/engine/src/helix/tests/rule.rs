//! Properties of the rule of a design basis and of the reliability index.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use crate::basis::AxialDemand;
use crate::contract::Work;
use crate::helix::reliability_equations::{Scatter, failure_probability, reliability_index};
use crate::helix::rule::DesignRule;
use crate::helix::{AxialDirection, HelixBasis};
use crate::quantity::{Force, ForceUnit};
use crate::trace::Trace;

fn kn(value: f64) -> Json {
    json!({ "value": value, "unit": "kN" })
}

fn force(value: f64) -> Force {
    Force::new(value, ForceUnit::KN)
}

/// One basis of each kind, with a load in both directions.
fn bases() -> Vec<(Json, Option<&'static str>)> {
    let actions = json!({ "compression": { "permanent": kn(30.0), "variable": kn(20.0) },
        "tension": { "variable": kn(40.0), "permanent_favourable": kn(10.0) } });
    let others = json!([{ "compression": kn(150.0), "tension": kn(140.0) },
        { "compression": kn(250.0) }]);
    vec![
        (json!({ "allowable_stress": {} }), Some("allowable")),
        (
            json!({ "allowable_stress": { "other_ultimates": {
                "torque_correlation": kn(180.0), "shaft": kn(400.0) } } }),
            Some("allowable"),
        ),
        (json!({ "limit_states": {} }), Some("factored")),
        (
            json!({ "eurocode_7": { "approach": "da1", "pile_kind": "bored", "actions": actions } }),
            None,
        ),
        (
            json!({ "eurocode_7": { "approach": "da1", "pile_kind": "continuous_flight_auger",
                "model_factor": 1.2, "actions": actions,
                "proof": { "ground_tests": { "other_profiles": others } } } }),
            None,
        ),
        (
            json!({ "eurocode_7": { "approach": "da2", "pile_kind": "driven" } }),
            Some("factored"),
        ),
        (
            json!({ "eurocode_7": { "approach": "da2", "pile_kind": "driven",
                "proof": { "load_tests": { "tests": others } } } }),
            Some("factored"),
        ),
        (
            json!({ "australian_standard_2159": {
                "average_risk_rating_factor": 2.6, "redundancy": "high" } }),
            Some("factored"),
        ),
        (
            json!({ "own_factors": { "level": "allowable", "reference": "report",
                "compression": { "multiplier": { "resistance_factor": 0.45 } },
                "tension": { "divisor": { "safety_factor": 2.2 } } } }),
            Some("allowable"),
        ),
    ]
}

fn rules() -> Vec<(Json, DesignRule)> {
    let mut rules = Vec::new();
    for (basis, level) in bases() {
        let demand: Option<AxialDemand> = level.map(|level| {
            serde_json::from_value(
                json!({ "level": level, "compression": kn(55.0), "tension": kn(35.0) }),
            )
            .unwrap()
        });
        let read: HelixBasis = serde_json::from_value(basis.clone()).unwrap();
        for direction in [AxialDirection::Compression, AxialDirection::Tension] {
            let rule =
                DesignRule::new(&read, direction, demand.as_ref(), &mut Work::default()).unwrap();
            rules.push((basis.clone(), rule));
        }
    }
    rules
}

#[test]
fn only_load_tests_take_the_place_of_the_calculation() {
    for (basis, rule) in rules() {
        let tested = basis.pointer("/eurocode_7/proof/load_tests").is_some();
        assert_eq!(rule.follows_calculation(), !tested, "{basis}");
        let moves = rule.capacity(force(100.0)) != rule.capacity(force(101.0));
        assert_eq!(moves, !tested, "{basis}");
    }
}

#[test]
fn a_load_on_no_capacity_is_infinitely_much() {
    for (basis, rule) in rules() {
        if rule.follows_calculation() {
            let u = rule.worst_utilisation(Force::ZERO);
            assert_eq!(u, Some(f64::INFINITY), "{basis}");
        }
    }
    let basis: HelixBasis = serde_json::from_value(json!({ "limit_states": {} })).unwrap();
    let free = DesignRule::new(&basis, AxialDirection::Tension, None, &mut Work::default());
    assert_eq!(free.unwrap().worst_utilisation(force(10.0)), None);
}

proptest! {
    /// The path that records and the one that does not give the same bits; the capacity never
    /// falls and the utilisation never rises as the ultimate grows.
    #[test]
    fn both_paths_agree_and_are_monotone(low in 0.5..900.0f64, more in 0.0..900.0f64) {
        for (basis, rule) in rules() {
            let (less, greater) = (force(low), force(low + more));
            let shown = rule.design(less, &mut Trace::on());
            prop_assert_eq!(shown.capacity, rule.capacity(less), "{}", basis);
            prop_assert!(rule.capacity(greater) >= rule.capacity(less), "{}", basis);
            let u = rule.worst_utilisation(less).unwrap();
            prop_assert!(rule.worst_utilisation(greater).unwrap() <= u, "{}", basis);
            let worst = shown.combinations.iter()
                .filter_map(|c| Some(c.effect?.si() / c.capacity.si()))
                .reduce(f64::max);
            if let Some(worst) = worst {
                prop_assert_eq!(u, worst, "the worse of the combinations: {}", basis);
            }
        }
    }

    /// The capacity is never above the ultimate it is taken from, and scales with it where
    /// nothing else is part of it.
    #[test]
    fn capacities_stay_below_the_ultimate(ultimate in 1.0..1000.0f64, by in 1.0..5.0f64) {
        for (basis, rule) in rules() {
            let own = rule.capacity(force(ultimate)).si();
            if rule.follows_calculation() {
                prop_assert!(own <= force(ultimate).si(), "{}", basis);
            }
            let alone = basis.pointer("/eurocode_7/proof").is_none()
                && basis.pointer("/allowable_stress/other_ultimates").is_none();
            if alone {
                let scaled = rule.capacity(force(ultimate * by)).si();
                prop_assert!((scaled / own / by - 1.0).abs() < 1e-12, "{}", basis);
            }
        }
    }

    /// The index rises with safety factor and bias and falls with the scatter of the
    /// resistance where resistance is the larger; the probability goes the other way.
    #[test]
    fn the_index_goes_the_right_way(
        safety in 1.5..6.0f64, bias in 0.9..1.6f64, cov in 0.05..0.6f64,
        load_cov in 0.0..0.3f64, step in 0.01..0.5f64,
    ) {
        let of = |safety, bias, cov| {
            let s = Scatter {
                resistance_bias: bias, resistance_cov: cov, load_bias: 1.0, load_cov,
            };
            reliability_index(safety, s, &mut Trace::off())
        };
        let beta = of(safety, bias, cov);
        prop_assert!(of(safety + step, bias, cov) > beta);
        prop_assert!(of(safety, bias + step, cov) > beta);
        if beta > 0.0 {
            prop_assert!(of(safety, bias, cov + step) < beta);
        }
        let p = |b| failure_probability(b, &mut Trace::off());
        prop_assert!(p(beta) >= p(beta + step) && (0.0..=1.0).contains(&p(beta)));
    }
}
