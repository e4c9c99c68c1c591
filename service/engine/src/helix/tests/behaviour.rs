//! What happens at the edges of the theory: soil without credit, weak layers, the options
//! one by one. Expected numbers are own arithmetic with the published factors.

use serde_json::{Value as Json, json};

use super::*;
use crate::helix::{BearingLaw, GoverningMode, NoCreditReason};
use crate::quantity::{AreaUnit, ForceUnit, LengthUnit, StressUnit};

fn peat() -> Json {
    json!({ "organic": {} })
}

/// Net area of a helix on a 73 mm shaft, m2.
fn net(d: f64) -> f64 {
    std::f64::consts::FRAC_PI_4 * (d * d - 0.073 * 0.073)
}

#[test]
fn a_helix_in_fill_gives_nothing_and_the_others_stand() {
    let ground = soil(&[(3.0, 17.0, fill()), (12.0, 18.0, clay(80.0))]);
    let a = answer(json!({
        "soil": ground,
        "pile": pile(0.073, &[(0.3, 2.0), (0.3, 5.0), (0.3, 6.0)]),
    }));
    for r in [compression(&a), tension(&a)] {
        let top = helix(r, 0);
        assert_eq!(top.no_credit, Some(NoCreditReason::FillOrOrganic));
        assert_eq!(top.resistance.si(), 0.0);
        assert!(top.zone.iter().all(|z| z.law == BearingLaw::NoCredit));
        // 2 x 9 x 80 kPa x net area: the two helices below are 2 m and more under the fill
        let expected = 2.0 * 720.0 * net(0.3);
        near(
            r.individual_bearing.total.get(ForceUnit::KN),
            expected,
            1e-6,
        );
        // the cylinder stands between the helices in credit only
        let cylinder = r.cylindrical_shear.as_ref().unwrap();
        assert_eq!(cylinder.gaps.len(), 1);
        assert_eq!(cylinder.gaps[0].upper, "2");
    }
    assert!(warns(&a, "helix_without_credit"));
    let e = tension(&a).embedment.as_ref().unwrap();
    assert_eq!(e.helix, "2");
    near(e.embedment.get(LengthUnit::M), 2.0, 1e-9);
}

#[test]
fn a_zone_that_reaches_organic_soil_kills_its_helix() {
    let ask = |depth: f64| {
        let ground = soil(&[
            (5.0, 18.0, clay(60.0)),
            (6.0, 12.0, peat()),
            (12.0, 18.0, clay(60.0)),
        ]);
        answer(json!({ "soil": ground, "pile": pile(0.073, &[(0.3, depth)]) }))
    };
    // 2 diameters below: 4.4 m ends exactly on the peat, 4.41 m within it
    assert!(helix(compression(&ask(4.4)), 0).no_credit.is_none());
    assert!(helix(compression(&ask(4.41)), 0).no_credit.is_some());
    assert!(helix(tension(&ask(4.41)), 0).no_credit.is_none());
    // and above: 6.6 m ends exactly under the peat
    assert!(helix(tension(&ask(6.6)), 0).no_credit.is_none());
    assert!(helix(tension(&ask(6.59)), 0).no_credit.is_some());
    // nothing left: no capacity, no cylinder, no label
    let none = ask(5.5);
    assert_eq!(tension(&none).ultimate.si(), 0.0);
    assert!(tension(&none).embedment.is_none());
    assert_eq!(
        compression(&none).governing_mode,
        GoverningMode::IndividualBearing
    );
}

#[test]
fn uplift_just_below_peat_breaks_out_through_the_crust() {
    // H counts from the peat: 1 m, H/D 3.333; 1.2 x 3.333 x 60 + s'_v, against 9 x 60
    let ground = soil(&[(6.0, 12.0, peat()), (12.0, 18.0, clay(60.0))]);
    let a = answer(json!({ "soil": ground, "pile": pile(0.073, &[(0.3, 7.0)]) }));
    let h = helix(tension(&a), 0);
    assert_eq!(h.zone[0].law, BearingLaw::UndrainedBreakout);
    near(
        h.bearing.get(StressUnit::KPa),
        1.2 / 0.3 * 60.0 + 6.0 * 12.0 + 18.0,
        1e-6,
    );
}

#[test]
fn soil_above_the_depth_of_credit_counts_its_weight_alone() {
    let ask = |depth: f64, none: f64| {
        answer(json!({
            "soil": soil(&[(12.0, 18.0, clay(60.0))]), "pile": pile(0.073, &[(0.3, depth)]),
            "methods": { "no_credit_above": q(none, "m") },
        }))
    };
    // zone 1.5 to 2.1 m, of which 0.3 m is above 1.8 m; H = 0.3 m
    let h = ask(2.1, 1.8);
    let h = helix(tension(&h), 0);
    assert_eq!(h.zone.len(), 2);
    near(
        h.bearing.get(StressUnit::KPa),
        0.5 * (1.2 * 60.0 + 2.1 * 18.0),
        1e-6,
    );
    let above = ask(1.8, 1.8);
    let above = helix(compression(&above), 0);
    assert_eq!(above.no_credit, Some(NoCreditReason::AboveCreditDepth));
    let deep = ask(6.0, 1.8);
    near(
        helix(tension(&deep), 0).bearing.get(StressUnit::KPa),
        540.0,
        1e-9,
    );
    // below the depth compression is not touched
    near(
        helix(compression(&deep), 0).bearing.get(StressUnit::KPa),
        540.0,
        1e-9,
    );
}

#[test]
fn a_deeper_depth_of_credit_gives_no_more_where_the_zone_reaches_into_fill() {
    // zone 0.9 to 1.5 m, of which 0.1 m is fill: nothing, with or without a depth of credit
    for none in [0.0, 0.9, 1.1, 1.4] {
        let a = answer(json!({
            "soil": soil(&[(1.0, 18.0, fill()), (9.0, 18.0, clay(60.0))]),
            "pile": pile(0.073, &[(0.3, 1.5)]), "methods": { "no_credit_above": q(none, "m") },
        }));
        let h = helix(tension(&a), 0);
        assert_eq!(h.no_credit, Some(NoCreditReason::FillOrOrganic));
        assert_eq!(h.resistance.si(), 0.0);
    }
}

#[test]
fn weak_soil_within_three_diameters_is_told() {
    let ask = |depth: f64, su: f64| {
        let ground = soil(&[(6.0, 18.0, clay(100.0)), (12.0, 18.0, clay(su))]);
        warns(
            &answer(json!({
                "soil": ground, "pile": pile(0.073, &[(0.3, depth)]), "directions": "compression",
            })),
            "weak_layer_near_helix",
        )
    };
    assert!(!ask(5.1, 50.0), "begins exactly 3 diameters below");
    assert!(ask(5.11, 50.0));
    assert!(!ask(5.11, 60.0), "on 60 %");
    assert!(ask(5.11, 59.9));
    // above in tension
    let ground = soil(&[(3.0, 17.0, clay(20.0)), (12.0, 18.0, clay(100.0))]);
    let up = |depth: f64| {
        warns(
            &answer(json!({
                "soil": ground, "pile": pile(0.073, &[(0.3, depth)]), "directions": "tension",
            })),
            "weak_layer_near_helix",
        )
    };
    assert!(!up(3.9) && up(3.89));
}

#[test]
fn a_profile_that_ends_soon_below_is_told() {
    let ask = |depth: f64| {
        let a = answer(json!({
            "soil": soil(&[(8.0, 18.0, clay(60.0))]), "pile": pile(0.073, &[(0.3, depth)]),
        }));
        warns(&a, "profile_ends_near_helix")
    };
    assert!(!ask(7.1) && ask(7.2));
}

#[test]
fn steep_friction_is_told_where_it_is_used() {
    let ask = |degrees: f64, depth: f64| {
        let ground = soil(&[(4.0, 18.0, sand(degrees)), (12.0, 18.0, sand(35.0))]);
        warns(
            &answer(json!({ "soil": ground, "pile": pile(0.073, &[(0.3, depth)]) })),
            "friction_angle_above_40",
        )
    };
    assert!(!ask(40.0, 2.0) && ask(40.1, 2.0));
    assert!(!ask(43.0, 8.0), "not near the helix");
}

fn in_sand(methods: Json) -> Answer<Outcome> {
    answer(json!({
        "soil": soil(&[(14.0, 18.0, sand(30.0))]), "pile": pile(0.073, &[(0.3, 5.0)]),
        "methods": methods,
    }))
}

fn bearing(a: &Answer<Outcome>) -> f64 {
    helix(compression(a), 0).bearing.get(StressUnit::KPa)
}

/// Factors at 30 degrees: N_q 18.40112 and N_gamma 22.40249, 15.66804 (BF-07), 15.07 (BF-04);
/// Terzaghi N_q 22.5 (BF-01). Stress at 5 m: 90 kPa. Width term 0.5 x 18 x 0.3 x 0.6.
#[test]
fn bearing_of_sand_by_each_method() {
    let width = 0.5 * 18.0 * 0.3 * 0.6;
    let nq = 18.40112;
    // d_q held at a depth ratio of 1: 1 + 0.1 tan 60 deg
    let dq = 1.0 + 0.1 * 3.0_f64.sqrt();
    for (method, factor, ngamma) in [
        ("vesic_1973", nq, 22.40249),
        ("hansen_1970", nq, 15.07),
        ("meyerhof_1963", nq * dq, 15.66804),
    ] {
        let plain = in_sand(json!({ "drained_bearing": method }));
        near(
            helix(compression(&plain), 0).zone[0].bearing_factor,
            factor,
            0.001,
        );
        near(bearing(&plain), 90.0 * factor, 0.001);
        assert!(used(&plain, method));
        let wide = in_sand(json!({ "drained_bearing": method, "width_term": "include" }));
        near(bearing(&wide), 90.0 * factor + width * ngamma, 0.002);
        // uplift has no width term
        assert_eq!(tension(&wide).ultimate, tension(&plain).ultimate);
    }
    near(
        bearing(&in_sand(json!({ "drained_bearing": "terzaghi_1943" }))),
        90.0 * 22.5,
        0.3,
    );
}

#[test]
fn local_shear_reduces_bearing_and_not_breakout() {
    // atan(2/3 tan 30 deg) = 21.0517 deg; N_q there by the closed form 7.10755 (own computation)
    let a = in_sand(json!({ "local_shear": "two_thirds" }));
    near(bearing(&a), 90.0 * 7.10755, 0.01);
    assert!(used(&a, "local_shear_two_thirds"));
    let plain = in_sand(json!({}));
    let factor = |a: &Answer<Outcome>| helix(tension(a), 0).zone[0].bearing_factor;
    // F_q* is 8.02 (UP-02), so the reduced N_q caps it now
    near(factor(&plain), 8.02, 0.1);
    near(factor(&a), 7.10755, 0.01);
}

#[test]
fn limits_on_stress_are_told_and_bind_when_asked() {
    // depth ratio 16.7: 10 diameters bind at 3 m (54 kPa), 20 do not
    let free = in_sand(json!({}));
    let limits = helix(compression(&free), 0).stress_limits.unwrap();
    near(limits.loose.unwrap().get(StressUnit::KPa), 54.0, 1e-9);
    assert!(limits.dense.is_none());
    near(bearing(&free), 90.0 * 18.40112, 0.001);
    near(
        bearing(&in_sand(json!({ "stress_limit": "usace_1991_loose" }))),
        54.0 * 18.40112,
        0.001,
    );
    near(
        bearing(&in_sand(json!({ "stress_limit": "usace_1991_dense" }))),
        90.0 * 18.40112,
        0.001,
    );
    let a = answer(json!({
        "soil": soil(&[(14.0, 18.0, clay(60.0))]), "pile": pile(0.073, &[(0.3, 5.0)]),
    }));
    assert!(
        helix(compression(&a), 0).stress_limits.is_none(),
        "not in clay"
    );
}

#[test]
fn bearing_of_clay_by_each_method() {
    // depth ratio 1: N_c 7.2 (UC-01); cavity expansion at I_rr 100: 10.0444 (UC-02)
    let ask = |methods: Json| {
        answer(json!({
            "soil": soil(&[(14.0, 18.0, clay(50.0))]), "pile": pile(0.073, &[(0.5, 0.5)]),
            "methods": methods,
        }))
    };
    near(bearing(&ask(json!({}))), 360.0, 1e-6);
    near(
        bearing(&ask(json!({ "undrained_bearing": "fixed_nine" }))),
        450.0,
        1e-6,
    );
    let cavity = ask(json!({
        "undrained_bearing": { "cavity_expansion": { "reduced_rigidity_ratio": 100 } },
    }));
    near(bearing(&cavity), 502.22, 0.01);
    assert!(used(&cavity, "cavity_expansion"));
}

#[test]
fn a_share_of_the_deep_bearing_in_clay_in_tension() {
    let ask = |depth: f64, share: f64| {
        let a = answer(json!({
            "soil": soil(&[(14.0, 18.0, clay(50.0))]), "pile": pile(0.073, &[(0.3, depth)]),
            "methods": { "clay_tension_factor": share },
        }));
        helix(tension(&a), 0).bearing.get(StressUnit::KPa)
    };
    near(ask(6.0, 0.8), 360.0, 1e-6);
    near(ask(6.0, 1.0), 450.0, 1e-6);
    // the breakout above is the lesser and stays
    near(ask(0.9, 0.8), 1.2 * 3.0 * 50.0 + 0.9 * 18.0, 1e-6);
}

#[test]
fn a_share_of_bearing_in_sand_falls_back_on_breakout_when_shallow() {
    // critical depth ratio 4 at 30 degrees
    let ask = |ratio: f64, methods: Json| {
        let a = answer(json!({
            "soil": soil(&[(14.0, 18.0, sand(30.0))]),
            "pile": pile(0.073, &[(0.3, 0.3 * ratio)]), "methods": methods,
        }));
        helix(tension(&a), 0).bearing.get(StressUnit::KPa)
    };
    let share = json!({ "uplift_sand": { "nq_tension": {} } });
    near(ask(3.9, share.clone()), ask(3.9, json!({})), 1e-9);
    near(ask(4.0, share.clone()), 0.7 * 18.40112 * 18.0 * 1.2, 0.001);
    assert!(ask(4.0, json!({})) < ask(4.0, share));
}

#[test]
fn the_cylinder_in_sand_at_rest() {
    // equal 0.3 m helices at 5 and 6 m in 30 degrees: K tan phi = 0.5 tan 30 deg; mean 99 kPa
    let ask = |methods: Json| {
        answer(json!({
            "soil": soil(&[(14.0, 18.0, sand(30.0))]), "pile": pile(0.073, &[(0.3, 5.0), (0.3, 6.0)]),
            "methods": methods,
        }))
    };
    let expected = std::f64::consts::PI * 0.3 * 99.0 * 0.5 / 3.0_f64.sqrt();
    let a = ask(json!({}));
    let shear = |r: &AxialResistance| r.cylindrical_shear.as_ref().unwrap().shear;
    near(shear(compression(&a)).get(ForceUnit::KN), expected, 1e-6);
    // K_u 0.9 at 30 degrees (UP-03) against 0.5 at rest
    near(shear(tension(&a)).get(ForceUnit::KN), 1.8 * expected, 1e-6);
    let rest = ask(json!({ "cylinder_lateral_stress": "at_rest" }));
    near(shear(tension(&rest)).get(ForceUnit::KN), expected, 1e-6);
    assert!(used(&a, "mitsch_clemence_1985") && !used(&rest, "mitsch_clemence_1985"));
}

#[test]
fn shaft_adhesion_counts_only_when_asked() {
    // by hand: alpha within 1.5 m and one diameter (0.3 m) above the helix at 6 m, su 50;
    // s'_v 18 z: psi 50/(18 z), above 1 up to 2.778 m
    let ask = |methods: Json| {
        answer(json!({
            "soil": soil(&[(14.0, 18.0, clay(50.0))]), "pile": pile(0.1, &[(0.3, 6.0)]),
            "methods": methods,
        }))
    };
    let none = ask(json!({}));
    assert_eq!(compression(&none).shaft_adhesion.si(), 0.0);
    assert!(
        none.result
            .not_included
            .iter()
            .any(|n| n == "shaft_adhesion")
    );
    let a = ask(json!({ "shaft_adhesion": { "alpha": {} } }));
    assert!(!a.result.not_included.iter().any(|n| n == "shaft_adhesion"));
    let n = 100_000;
    let mut expected = 0.0;
    for i in 0..n {
        let z = 1.5 + 4.2 * (f64::from(i) + 0.5) / f64::from(n);
        let psi: f64 = 50.0 / (18.0 * z);
        let alpha = 0.5
            / if psi <= 1.0 {
                psi.sqrt()
            } else {
                psi.sqrt().sqrt()
            };
        expected += alpha.min(1.0) * 50.0 * std::f64::consts::PI * 0.1 * 4.2 / f64::from(n);
    }
    let got = compression(&a).shaft_adhesion;
    near(got.get(ForceUnit::KN), expected, 0.05);
    near(
        (compression(&a).ultimate - compression(&none).ultimate).si(),
        got.si(),
        1e-6,
    );
}

#[test]
fn a_square_shaft_takes_its_square_out() {
    let a = answer(json!({
        "soil": soil(&[(14.0, 18.0, clay(50.0))]),
        "pile": { "shaft": { "square": { "side": q(1.5, "in") } },
            "helices": [{ "diameter": q(10.0, "in"), "depth": q(4.0, "m") }] },
    }));
    // pi/4 x 100 - 2.25 in2
    near(
        helix(compression(&a), 0).area.get(AreaUnit::In2),
        76.289_816,
        1e-5,
    );
}

#[test]
fn labels_and_tags_come_back_and_the_echo_can_be_sent_again() {
    let mut request = json!({
        "soil": soil(&[(14.0, 18.0, sand(33.0))]), "methods": { "bearing_zone_ratio": 1.5 },
        "pile": { "label": "B7", "tags": { "cost": "02-3" }, "shaft": round(0.089, "m"),
            "helices": [
                { "label": "lead", "tags": { "item": "h" }, "diameter": q(0.25, "m"), "depth": q(6.0, "m") },
                { "diameter": q(0.3, "m"), "depth": q(5.0, "m") },
            ] },
    });
    let a = answer(request.clone());
    assert_eq!(a.result.label.as_ref().unwrap().as_str(), "B7");
    let labels: Vec<_> = compression(&a)
        .individual_bearing
        .helices
        .iter()
        .map(|h| (h.label.as_str(), h.tags.is_some()))
        .collect();
    assert_eq!(labels, [("1", false), ("lead", true)]);
    let echoed = serde_json::to_value(a.result.methods).unwrap();
    assert_eq!(
        echoed.as_object().unwrap().len(),
        15,
        "every choice is told"
    );
    request["methods"] = echoed;
    let again = answer(request);
    assert_eq!(again.result, a.result);
}

#[test]
fn every_step_tells_what_it_is_about_and_where_it_comes_from() {
    let a = answer(json!({
        "soil": soil(&[(4.0, 18.0, clay(40.0)), (14.0, 18.0, sand(33.0))]),
        "pile": pile(0.073, &[(0.3, 3.5), (0.25, 4.5)]), "design_basis": { "allowable_stress": {} },
    }));
    let steps = a.steps.as_ref().unwrap();
    for step in steps {
        assert!(step.subject.is_some(), "{}", step.symbol);
        assert!(step.shown.value().is_finite(), "{}", step.symbol);
    }
    for symbol in [
        "A", "s'_v", "N_c", "N_q", "F_q", "F_c", "q_zone", "Q", "D_m", "T", "Q_cyl", "Q_ult", "P_a",
    ] {
        assert!(steps.iter().any(|s| s.symbol == symbol), "{symbol}");
    }
    assert!(a.cautions.len() >= 5);
}
