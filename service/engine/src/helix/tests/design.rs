//! Design bases: factors by clause, least of the ultimate loads, verdicts.

use serde_json::{Value as Json, json};

use super::*;
use crate::contract::{CheckStatus, Verdict};
use crate::helix::{DesignCapacityKind, UltimateKind};
use crate::quantity::ForceUnit;

fn on(basis: Json) -> Answer<Outcome> {
    answer(json!({
        "soil": soil(&[(12.0, 18.0, clay(150.0))]),
        "pile": pile(0.089, &[(0.3556, 5.0), (0.3048, 6.0)]), "design_basis": basis,
    }))
}

fn ratio(r: &AxialResistance) -> f64 {
    let design = r.design.as_ref().unwrap();
    design.capacity.si() / design.from_ultimate.si()
}

/// CD-01 (items verified in part): the least of the ultimate loads, halved: 178 kN gives 89.
#[test]
fn cd_01_half_of_the_least_ultimate_load() {
    let a = on(json!({ "allowable_stress": { "other_ultimates": {
        "torque_correlation": q(178.0, "kN"), "load_test": q(210.0, "kN"), "shaft": q(300.0, "kN"),
        "couplings": q(260.0, "kN"), "helix_plates": q(190.0, "kN"),
    } } }));
    let c = compression(&a);
    assert!(
        c.ultimate.get(ForceUnit::KN) > 210.0,
        "the soil carries more"
    );
    let design = c.design.as_ref().unwrap();
    near(design.from_ultimate.get(ForceUnit::KN), 178.0, 0.01);
    near(design.capacity.get(ForceUnit::KN), 89.0, 0.01);
    assert_eq!(design.kind, DesignCapacityKind::Allowable);
    let governing: Vec<_> = a.result.ultimates.iter().filter(|u| u.governing).collect();
    assert_eq!(governing.len(), 1);
    assert_eq!(governing[0].item, UltimateKind::TorqueCorrelation);
    assert!(a.result.ultimates.iter().all(|u| u.considered));
    // tension is not touched by them
    assert_eq!(
        tension(&a).design.as_ref().unwrap().from_ultimate,
        tension(&a).ultimate
    );
}

#[test]
fn an_ultimate_load_that_was_not_sent_is_absent() {
    let a = on(json!({ "allowable_stress": { "other_ultimates": { "shaft": q(5000.0, "kN") } } }));
    let considered: Vec<_> = a
        .result
        .ultimates
        .iter()
        .filter(|u| u.considered)
        .map(|u| u.item)
        .collect();
    assert_eq!(considered, [UltimateKind::SoilBearing, UltimateKind::Shaft]);
    assert!(a.result.ultimates[0].governing);
    assert_eq!(
        compression(&a).design.as_ref().unwrap().from_ultimate,
        compression(&a).ultimate
    );
}

/// CD-02 (verified), CD-03 (verified): safety factors in tension; helical clause 2.
#[test]
fn cd_02_cd_03_safety_factors_in_tension() {
    for (clause, proof, factor) in [
        (None, None, 3.0),
        (Some("general"), Some("analysis"), 3.0),
        (Some("general"), Some("load_test"), 2.0),
        (Some("general_wind_seismic"), None, 2.0),
        (Some("general_wind_seismic"), Some("load_test"), 1.5),
        (Some("helical"), None, 2.0),
        (Some("new_york_city"), None, 3.0),
        (Some("new_york_city"), Some("load_test"), 2.0),
    ] {
        let a = on(json!({ "allowable_stress": { "uplift_clause": clause, "proof": proof } }));
        near(ratio(tension(&a)), 1.0 / factor, 1e-9);
        near(ratio(compression(&a)), 0.5, 1e-9);
        let echoed = &a.result.factors[1];
        assert_eq!(echoed.id, "tension_safety_factor");
        assert_eq!((echoed.used_factor, echoed.from_request), (factor, false));
        assert_eq!(
            warns(&a, "factor_rests_on_test"),
            proof == Some("load_test")
        );
    }
    let general = on(json!({ "allowable_stress": {} }));
    assert!(warns(&general, "uplift_clauses_disagree"));
    assert_eq!(general.result.factors[1].source.id, "ibc_1810_3_3_1_5");
    let own = on(json!({ "allowable_stress": {
        "compression_safety_factor": 2.5, "tension_safety_factor": 4,
    } }));
    near(ratio(compression(&own)), 0.4, 1e-9);
    near(ratio(tension(&own)), 0.25, 1e-9);
    assert!(own.result.factors.iter().all(|f| f.from_request));
    assert!(!warns(&own, "uplift_clauses_disagree"));
}

/// CD-06 (compression secondary, tension memory): 300 kN gives 120, 180, 90, 120.
#[test]
fn cd_06_resistance_factors() {
    for (proof, c, t) in [("analysis", 120.0, 90.0), ("load_test", 180.0, 120.0)] {
        let a = on(json!({ "limit_states": { "proof": proof } }));
        near(300.0 * ratio(compression(&a)), c, 0.01);
        near(300.0 * ratio(tension(&a)), t, 0.01);
        let design = compression(&a).design.as_ref().unwrap();
        assert_eq!(design.kind, DesignCapacityKind::Factored);
        // the tension factors are remembered
        assert!(warns(&a, "default_from_memory"));
    }
    let own = on(json!({ "limit_states": {
        "compression_resistance_factor": 0.5, "tension_resistance_factor": 0.35,
    } }));
    near(ratio(compression(&own)), 0.5, 1e-9);
    near(ratio(tension(&own)), 0.35, 1e-9);
}

#[test]
fn without_a_basis_only_ultimate_values_are_answered() {
    let a = answer(json!({
        "soil": soil(&[(12.0, 18.0, clay(150.0))]), "pile": pile(0.089, &[(0.3556, 5.0)]),
    }));
    assert!(compression(&a).design.is_none() && tension(&a).design.is_none());
    assert!(a.result.factors.is_empty() && a.checks.is_empty());
    assert_eq!(a.verdict, Verdict::NotAsked);
}

#[test]
fn a_demand_is_judged_on_its_basis_and_on_the_limit_passes() {
    let ask = |push: f64, pull: f64| {
        answer(json!({
            "soil": soil(&[(12.0, 18.0, clay(150.0))]),
            "pile": pile(0.089, &[(0.3556, 5.0), (0.3048, 6.0)]),
            "design_basis": { "allowable_stress": {} },
            "demand": { "level": "allowable", "compression": q(push, "N"), "tension": q(pull, "N") },
        }))
    };
    let free = ask(1.0, 1.0);
    let limit = |r: &AxialResistance| r.design.as_ref().unwrap().capacity.si();
    let (push, pull) = (limit(compression(&free)), limit(tension(&free)));
    let on = ask(push, pull);
    assert_eq!(on.verdict, Verdict::Accept);
    let status =
        |a: &Answer<Outcome>, id: &str| a.checks.iter().find(|c| c.id == id).unwrap().status;
    assert_eq!(status(&on, "helix_compression"), CheckStatus::Pass);
    assert_eq!(status(&on, "helix_tension"), CheckStatus::Pass);
    let over = ask(push * 1.000_001, pull);
    assert_eq!(over.verdict, Verdict::Reject);
    assert_eq!(over.verdict_reasons.len(), 1);
    assert_eq!(over.verdict_reasons[0].code, "helix_compression");
}
