//! Questions over depth: the curve against single depths, the least depth against the
//! curve, sets of helices, torque, punching.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::{
    answer, clay, codes, compression, fill, pile, q, refusable, sand, soil, tension, warns,
};
use crate::contract::{Check, CheckStatus, Verdict};

/// The pile with its lowest helix moved to a depth, m.
fn moved(request: &Json, depth: f64) -> Json {
    let mut request = request.clone();
    let helices = request["pile"]["helices"].as_array_mut().unwrap();
    let depth_of = |h: &Json| h["depth"]["value"].as_f64().unwrap();
    let lowest = helices.iter().map(depth_of).fold(0.0, f64::max);
    for helix in helices {
        let own = depth_of(helix);
        helix["depth"] = q(depth - (lowest - own), "m");
    }
    for question in [
        "depth_curve",
        "minimum_depth",
        "helix_sets",
        "expected_torque",
    ] {
        request.as_object_mut().unwrap().remove(question);
    }
    request
}

fn soils() -> impl Strategy<Value = Json> {
    prop_oneof![
        (10.0..150.0_f64).prop_map(clay),
        (24.0..42.0_f64).prop_map(sand),
        Just(fill()),
    ]
}

/// A profile of layers to 20 m or more, with or without water.
fn profiles() -> impl Strategy<Value = Json> {
    let layer = (0.4..4.0_f64, 15.0..20.0_f64, soils());
    (
        prop::collection::vec(layer, 1..7),
        prop::option::of(0.0..9.0_f64),
    )
        .prop_map(|(layers, water)| {
            let mut bottom = 0.0;
            let mut list: Vec<(f64, f64, Json)> = layers
                .into_iter()
                .map(|(height, weight, soil)| {
                    bottom += height;
                    (bottom, weight, soil)
                })
                .collect();
            list.push((bottom + 22.0, 18.0, clay(80.0)));
            let mut profile = soil(&list);
            if let Some(water) = water {
                profile["water_depth"] = q(water, "m");
            }
            profile
        })
}

fn piles() -> impl Strategy<Value = Json> {
    let helix = (0.2..0.45_f64, 1.2..3.5_f64);
    prop::collection::vec(helix, 1..5).prop_map(|list| {
        let mut depth = 5.0;
        let helices: Vec<(f64, f64)> = list
            .into_iter()
            .map(|(diameter, spacing)| {
                let here = (diameter, depth);
                depth -= spacing * diameter;
                here
            })
            .collect();
        pile(0.0889, &helices)
    })
}

fn methods() -> impl Strategy<Value = Json> {
    prop_oneof![
        Just(json!({})),
        Just(json!({ "uplift_sand": { "nq_tension": {} } })),
        Just(json!({ "bearing_zone_rule": "weakest", "width_term": "include" })),
        Just(json!({ "no_credit_above": q(1.5, "m"), "shaft_adhesion": { "alpha": {} } })),
        Just(json!({ "drained_bearing": "meyerhof_1963", "stress_limit": "usace_1991_loose" })),
    ]
}

/// Column of the points by its name.
fn column(a: &Json, name: &str) -> Vec<f64> {
    let points = &a["result"]["depth_curve"]["points"];
    let columns = points["columns"].as_array().unwrap();
    let at = columns.iter().position(|c| c["name"] == name);
    let at = at.unwrap_or_else(|| panic!("no column {name}"));
    let rows = points["rows"].as_array().unwrap();
    rows.iter().map(|r| r[at].as_f64().unwrap()).collect()
}

#[track_caller]
fn same(a: f64, b: f64, relative: f64) {
    let most = a.abs().max(b.abs());
    assert!((a - b).abs() <= relative * most, "{a} against {b}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// The curve is the one-depth answer at every depth, within the last bits of the shift.
    #[test]
    fn a_curve_is_the_answer_at_each_depth(
        profile in profiles(), pile in piles(), methods in methods()
    ) {
        let request = json!({
            "soil": profile, "pile": pile, "methods": methods,
            "depth_curve": {
                "from": q(6.3, "m"), "to": q(18.9, "m"), "depth_count": 7, "points": true,
            },
        });
        let a = serde_json::to_value(answer(request.clone())).unwrap();
        for (k, depth) in column(&a, "depth").into_iter().enumerate() {
            let one = answer(moved(&request, depth));
            let (c, t) = (compression(&one), tension(&one));
            let at = |name: &str| column(&a, name)[k];
            same(at("compression_ultimate"), c.ultimate.si(), 1e-9);
            same(at("compression_individual"), c.individual_bearing.total.si(), 1e-9);
            let punched = c.ultimate_by_punching.unwrap_or(c.ultimate);
            same(at("compression_punching"), punched.si(), 1e-9);
            same(at("tension_ultimate"), t.ultimate.si(), 1e-9);
            let cylinder = t.cylindrical_shear.as_ref().map_or(
                t.individual_bearing.total, |s| s.total);
            same(at("tension_cylinder"), cylinder.si(), 1e-9);
        }
    }

    /// At the least depth everything is met, a little above it something is not; the same at
    /// every end of what passes.
    #[test]
    fn the_least_depth_is_where_the_curve_says(
        profile in profiles(), pile in piles(), push in 5.0..160.0_f64, pull in 0.0..60.0_f64,
    ) {
        let request = json!({
            "soil": profile, "pile": pile,
            "design_basis": { "limit_states": {} },
            "demand": {
                "level": "factored", "compression": q(push, "kN"), "tension": q(pull, "kN"),
            },
            "minimum_depth": {
                "from": q(6.0, "m"), "to": q(18.0, "m"),
                "embedment": { "top_helix_depth": q(2.0, "m") },
            },
        });
        let a = answer(request.clone());
        let found = a.result.minimum_depth.as_ref().unwrap();
        let passes = |depth: f64| passes(&request, depth);
        match found.depth {
            None => {
                prop_assert!(found.passing.is_empty());
                for k in 0..25 {
                    prop_assert!(!passes(6.0 + 0.5 * f64::from(k)));
                }
            }
            Some(depth) => {
                prop_assert!(passes(depth.si()), "at {}", depth.si());
                prop_assert_eq!(depth, found.passing[0].from);
                for range in &found.passing {
                    let (from, to) = (range.from.si(), range.to.si());
                    prop_assert!(passes(from) && passes(to) && passes((from + to) / 2.0));
                    // ends are taken to the next whole millimetre inside
                    prop_assert!(from <= 6.0 || !passes(from - 0.0015));
                    prop_assert!(to >= 18.0 || !passes(to + 0.0015));
                }
                // nothing above the least depth passes, but within its millimetre
                for k in 0..40 {
                    let above = 6.0 + (depth.si() - 6.0) * f64::from(k) / 40.0;
                    let near = above >= depth.si() - 0.0015;
                    prop_assert!(near || !passes(above), "at {above}");
                }
            }
        }
    }
}

/// The verdict with the lowest helix at a depth, the rules of embedment included.
fn passes(request: &Json, depth: f64) -> bool {
    let mut one = moved(request, depth);
    one["minimum_depth"] = request["minimum_depth"].clone();
    answer(one).verdict == Verdict::Accept
}

fn check<'a>(a: &'a crate::contract::Answer<super::Outcome>, id: &str) -> &'a Check {
    let found = a.checks.iter().find(|c| c.id == id);
    found.unwrap_or_else(|| panic!("no check {id}"))
}

/// Stiff clay of 100 kPa to 6 m over soft clay of 20 kPa.
fn crust() -> Json {
    soil(&[(6.0, 18.0, clay(100.0)), (20.0, 17.0, clay(20.0))])
}

fn judged(profile: Json, pile: Json, kilonewtons: f64) -> Json {
    json!({
        "soil": profile, "pile": pile,
        "design_basis": { "allowable_stress": {} },
        "demand": { "level": "allowable", "compression": q(kilonewtons, "kN") },
    })
}

/// By hand: D 0.3 m at 5.9 m, 0.1 m above clay of 20 kPa: the load spreads to 0.4 m, the clay
/// bears 9 x 20 = 180 kPa there, so the helix is held at 180 x (0.4/0.3)^2 = 320 kPa; the mean
/// over 2 D is (0.1 x 900 + 0.5 x 180)/0.6 = 300 kPa, so the mean governs and the check passes
/// with it. With the zone of 0.5 D the mean is (0.1 x 900 + 0.05 x 180)/0.15 = 660 kPa and the
/// helix is held at 320.
#[test]
fn a_weak_layer_below_is_a_check() {
    let area = std::f64::consts::PI / 4.0 * (0.3 * 0.3 - 0.073 * 0.073);
    let mut request = judged(crust(), pile(0.073, &[(0.3, 5.9)]), 9.0);
    let a = answer(request.clone());
    let helix = &compression(&a).individual_bearing.helices[0];
    let limit = helix.punching.as_ref().expect("a weak layer");
    same(limit.spread_diameter.si(), 0.4, 1e-9);
    same(limit.layer_bearing.si(), 180e3, 1e-9);
    same(limit.bearing_limit.si(), 320e3, 1e-9);
    same(helix.bearing.si(), 300e3, 1e-9);
    assert_eq!(compression(&a).ultimate_by_punching, None);
    assert_eq!(check(&a, "helix_punching").status, CheckStatus::Pass);

    request["methods"] = json!({ "bearing_zone_ratio": 0.5 });
    request["demand"]["compression"] = q(12.0, "kN");
    let a = answer(request);
    let c = compression(&a);
    same(c.ultimate.si(), area * 660e3, 1e-9);
    same(c.ultimate_by_punching.unwrap().si(), area * 320e3, 1e-9);
    // 12 kN against 660/2 x area = 21.9 kN passes, against 320/2 x area = 10.6 kN does not
    assert_eq!(check(&a, "helix_compression").status, CheckStatus::Pass);
    assert_eq!(check(&a, "helix_punching").status, CheckStatus::Fail);
    assert_eq!(a.verdict, Verdict::Reject);
}

/// Fill close below a helix takes nothing, whatever lies between.
#[test]
fn fill_below_takes_the_whole_helix() {
    let profile = soil(&[
        (6.0, 18.0, clay(100.0)),
        (7.0, 17.0, fill()),
        (20.0, 18.0, clay(90.0)),
    ]);
    // 2.5 D above the fill: outside the zone, within the reach of the look
    let a = answer(judged(profile, pile(0.073, &[(0.3, 5.25)]), 1.0));
    same(
        compression(&a).ultimate_by_punching.unwrap().si(),
        0.0,
        1e-9,
    );
    assert_eq!(check(&a, "helix_punching").status, CheckStatus::Fail);
}

#[test]
fn a_curve_tells_where_the_capacity_jumps() {
    let profile = soil(&[(4.0, 18.0, fill()), (20.0, 18.0, clay(90.0))]);
    let mut request = json!({
        "soil": profile, "pile": pile(0.073, &[(0.3, 5.0)]),
        "depth_curve": { "from": q(1.0, "m"), "to": q(9.0, "m"), "depth_count": 3 },
    });
    let a = answer(request.clone());
    let jumps: Vec<&str> = a
        .warnings
        .iter()
        .filter(|w| w.code == "capacity_jumps")
        .map(|w| w.detail.as_str())
        .collect();
    // compression jumps from nothing at 4 m; tension from nothing where its zone of 0.6 m
    // above the helix leaves the fill, at 4.6 m
    assert_eq!(jumps.len(), 2, "{jumps:?}");
    assert!(jumps[0].contains("compression") && jumps[0].contains("passes 4 m"));
    assert!(jumps[1].contains("tension") && jumps[1].contains("passes 4.6 m"));
    request["soil"] = soil(&[(4.0, 18.0, sand(30.0)), (20.0, 18.0, clay(90.0))]);
    assert!(!warns(&answer(request), "capacity_jumps"));
}

#[test]
fn a_summary_names_the_ends_of_the_curve() {
    let a = answer(json!({
        "soil": crust(), "pile": pile(0.073, &[(0.3, 3.0)]),
        "depth_curve": { "from": q(3.0, "m"), "to": q(9.0, "m"), "depth_count": 13 },
    }));
    let curve = a.result.depth_curve.as_ref().unwrap();
    let side = curve.compression.unwrap();
    // 9 su over the whole net area, from 100 to 20 kPa
    same(side.greatest.ultimate / side.least.ultimate, 5.0, 1e-9);
    assert_eq!(side.greatest.depth.si(), 3.0);
    assert_eq!(side.least.depth.si(), 6.0);
    assert!(curve.points.is_none());
}

fn sets() -> Json {
    json!({
        "tip_length": q(0.1, "m"), "head_height": q(0.5, "m"),
        "sets": [
            { "label": "one small", "plate_thickness": q(9.5, "mm"),
              "helices": [{ "diameter": q(0.2, "m"), "above_lowest": q(0.0, "m") }] },
            { "label": "two", "plate_thickness": q(9.5, "mm"), "helices": [
              { "diameter": q(0.25, "m"), "above_lowest": q(0.0, "m") },
              { "diameter": q(0.3, "m"), "above_lowest": q(0.75, "m") } ] },
            { "label": "one large", "plate_thickness": q(9.5, "mm"),
              "helices": [{ "diameter": q(0.4, "m"), "above_lowest": q(0.0, "m") }] },
        ],
    })
}

/// By hand in clay of 40 kPa to 4 m and 100 kPa below, 50 kN on FS 2: 100 kN over
/// 9 x 100 kPa needs 0.1111 m2 net. 200 mm gives 0.0272, 250 + 300 mm 0.1114, 400 mm 0.1215.
#[test]
fn the_lightest_set_that_works_is_found() {
    let profile = soil(&[(4.0, 18.0, clay(40.0)), (25.0, 18.0, clay(100.0))]);
    let mut request = judged(profile, pile(0.073, &[(0.3, 5.0)]), 50.0);
    request["pile"]["shaft"]["round"]["wall_thickness"] = q(5.5, "mm");
    request["minimum_depth"] = json!({});
    request["helix_sets"] = sets();
    let a = answer(request.clone());
    let found = a.result.helix_sets.as_ref().unwrap();
    let works: Vec<bool> = found.sets.iter().map(|s| s.works).collect();
    assert_eq!(works, [false, true, true]);
    assert_eq!(found.lightest.as_deref(), Some("one large"));
    assert_eq!(found.lightest_first, ["one large", "two"]);
    // mass by hand: pi 0.0055 (0.073 - 0.0055) 7850 kg/m x (depth + 0.6 m) + the ring
    let large = &found.sets[2];
    let depth = large.minimum_depth.depth.unwrap().si();
    let pi = std::f64::consts::PI;
    let ring = pi / 4.0 * (0.4 * 0.4 - 0.073 * 0.073) * 0.0095 * 7850.0;
    let mass = pi * 0.0055 * 0.0675 * 7850.0 * (depth + 0.6) + ring;
    same(large.steel_mass.unwrap().si(), mass, 1e-9);
    // each set by itself has the same least depth
    let mut alone = request.clone();
    alone.as_object_mut().unwrap().remove("helix_sets");
    alone["pile"]["helices"] = super::helices(&[(0.4, 5.0)]);
    let by_itself = answer(alone).result.minimum_depth.unwrap();
    assert_eq!(by_itself.depth, large.minimum_depth.depth);
    // without a wall no mass is known, so none is called the lightest
    request["pile"]["shaft"]["round"]
        .as_object_mut()
        .unwrap()
        .remove("wall_thickness");
    let a = answer(request);
    let found = a.result.helix_sets.as_ref().unwrap();
    assert_eq!(found.lightest, None);
    assert!(found.sets[1].works && found.sets[1].steel_mass.is_none());
}

/// By hand: 9 x 75 kPa x pi/4 (0.3^2 - 0.073^2) = 44.8878 kN over 9 per ft = 29.5276 per m.
#[test]
fn the_torque_to_expect_goes_with_the_capacity() {
    let a = answer(json!({
        "soil": soil(&[(20.0, 18.0, clay(75.0))]), "pile": pile(0.073, &[(0.3, 5.0)]),
        "expected_torque": {},
    }));
    let found = a.result.expected_torque.as_ref().unwrap();
    same(found.from_ultimate.si(), 44.8878e3, 1e-5);
    same(found.torque_factor.si(), 29.527_559, 1e-7);
    same(found.torque.expected.si(), 44.8878e3 / 29.527_559, 1e-5);
    same(
        found.torque.low.si(),
        0.6 * found.torque.expected.si(),
        1e-9,
    );
    same(
        found.torque.high.si(),
        1.4 * found.torque.expected.si(),
        1e-9,
    );
    assert!(warns(&a, "default_from_memory"));
}

#[test]
fn faults_of_the_questions_are_told_together() {
    let mut request = json!({
        "soil": soil(&[(8.0, 18.0, clay(75.0))]), "pile": pile(0.2, &[(0.3, 5.0), (0.3, 4.0)]),
        "depth_curve": { "from": q(0.9, "m"), "to": q(7.9, "m"), "depth_count": 3 },
        "minimum_depth": { "from": q(7.0, "m"), "to": q(6.0, "m") },
        "expected_torque": {},
    });
    let refusal = refusable(request.clone()).unwrap_err();
    assert_eq!(
        codes(&refusal),
        [
            ("/depth_curve/from", "depth_range_above_ground"),
            ("/depth_curve/to", "profile_ends_in_zone"),
            ("/minimum_depth", "missing_member"),
            ("/minimum_depth/to", "depth_range_inverted"),
            (
                "/pile/shaft/round/outside_diameter",
                "shaft_outside_torque_factor_range"
            ),
        ]
    );
    request = judged(
        soil(&[(8.0, 18.0, clay(75.0))]),
        pile(0.073, &[(0.3, 5.0)]),
        10.0,
    );
    request["helix_sets"] = sets();
    let refusal = refusable(request.clone()).unwrap_err();
    assert_eq!(codes(&refusal), [("/helix_sets", "missing_member")]);
    request["minimum_depth"] = json!({});
    request["helix_sets"]["sets"][0]["helices"][0]["above_lowest"] = q(0.2, "m");
    request["helix_sets"]["sets"][2]["label"] = json!("two");
    let refusal = refusable(request).unwrap_err();
    assert_eq!(
        codes(&refusal),
        [
            ("/helix_sets/sets/0/helices", "helix_set_incomplete"),
            ("/helix_sets/sets/2/label", "duplicate_label"),
        ]
    );
}

/// Hazardous ground between the ends of a range is met on the way, though at neither end.
#[test]
fn a_range_over_depth_does_not_pass_hazardous_ground() {
    let mut ground = soil(&[
        (5.0, 18.0, clay(75.0)),
        (5.3, 18.0, sand(32.0)),
        (20.0, 18.0, clay(75.0)),
    ]);
    ground["layers"][1]["hazards"] = json!(["liquefiable"]);
    let curve = |from: f64, to: f64| {
        let mut request = judged(ground.clone(), pile(0.073, &[(0.3, 10.0)]), 10.0);
        request["depth_curve"] =
            json!({ "from": q(from, "m"), "to": q(to, "m"), "depth_count": 2 });
        refusable(request)
    };
    let refusal = curve(2.0, 15.0).unwrap_err();
    assert_eq!(codes(&refusal), [("/depth_curve/to", "helix_in_hazard")]);
    // tension takes the soil 2 D above: clear from 5.9 m on; compression 2 D below, to 4.4 m
    assert!(curve(5.89, 15.0).is_err());
    assert!(curve(5.91, 15.0).is_ok());
    assert!(curve(2.0, 4.41).is_err());
    assert!(curve(2.0, 4.39).is_ok());
    // without an end of its own the search stops above that ground
    let mut request = judged(ground, pile(0.073, &[(0.3, 10.0)]), 10.0);
    request["minimum_depth"] = json!({});
    let found = answer(request).result.minimum_depth.unwrap();
    assert!((found.searched_to.si() - 4.4).abs() < 1e-6);
}
