//! Groups of piles: published cases and figures by hand. Properties are in
//! `groups_properties.rs`.

use serde_json::{Value as Json, json};

use super::*;
use crate::contract::{CheckStatus, Verdict};
use crate::examples::{request, through};
use crate::helix::{GroupCompression, GroupFindings, GroupMode, GroupTension};
use crate::quantity::{ForceUnit, LengthUnit, StressUnit, VolumeUnit};

pub fn array(rows: u32, columns: u32, row_spacing: f64, column_spacing: f64) -> Json {
    json!({ "plan": { "array": {
        "row_count": rows, "column_count": columns,
        "row_spacing": q(row_spacing, "m"), "column_spacing": q(column_spacing, "m"),
    } } })
}

pub fn with(mut request: Json, name: &str, value: Json) -> Json {
    request[name] = value;
    request
}

fn example(name: &str) -> Answer<Outcome> {
    let text = request::<HelixCapacity>(name);
    through::<HelixCapacity>(&text, Trace::on()).unwrap().1
}

pub fn group(a: &Answer<Outcome>) -> &GroupFindings {
    a.result.group.as_ref().expect("a group")
}

pub fn pushed(a: &Answer<Outcome>) -> &GroupCompression {
    group(a).compression.as_ref().expect("compression")
}

pub fn pulled(a: &Answer<Outcome>) -> &GroupTension {
    group(a).tension.as_ref().expect("tension")
}

fn check<'a>(a: &'a Answer<Outcome>, id: &str) -> &'a crate::contract::Check {
    a.checks.iter().find(|c| c.id == id).expect(id)
}

/// UP-10: n 4, individual allowable 40 kN, block 240 kN effective and 300 kN of shear, 2.5
/// dimensions apart: 160 kN, block 360 kN. IBC 1810.3.3.1.6, verified.
#[test]
fn up_10_group_uplift_by_the_code() {
    let a = example("up-10");
    near(
        tension(&a)
            .design
            .as_ref()
            .unwrap()
            .capacity
            .get(ForceUnit::KN),
        40.0,
        0.01,
    );
    let t = pulled(&a);
    near(group(&a).spacing_ratio, 2.5, 1e-9);
    assert!(t.block_counts);
    let design = t.design.as_ref().unwrap();
    near(design.block.unwrap().get(ForceUnit::KN), 360.0, 0.01);
    near(design.piles.get(ForceUnit::KN), 160.0, 0.01);
    near(design.capacity.get(ForceUnit::KN), 160.0, 0.01);
    assert_eq!(design.governing, GroupMode::Piles);
    assert_eq!(design.block_rule.as_ref().unwrap().id, "ibc_1810_3_3_1_6");
    assert_eq!(a.verdict, Verdict::Accept);
}

/// UP-11: B 2 m, L 4 m, Z 6 m, sides 4V:1H: 120 m3 of exact frustum, verified by
/// integration. Weight by hand: 120 x 18 = 2160 kN.
#[test]
fn up_11_block_with_leaning_sides() {
    let a = example("up-11");
    let plan = group(&a).block_plan;
    near(plan.breadth.get(LengthUnit::M), 2.0, 1e-9);
    near(plan.length.get(LengthUnit::M), 4.0, 1e-9);
    let block = pulled(&a).block.as_ref().unwrap();
    near(block.volume.unwrap().get(VolumeUnit::M3), 120.0, 1e-9);
    near(block.effective_weight.get(ForceUnit::KN), 2160.0, 1e-9);
    assert_eq!(block.shear, crate::quantity::Force::ZERO);
}

/// UP-12: B 2 m, L 4 m, Z 6 m, s_u 40 kPa, water at 2 m, 18 and 20 kN/m3: 3494.08 kN, from
/// 2 x 6 x (2 + 4) x 40 = 2880 of shear and 8 x 76.76 = 614.08 of weight. UFC 3-220-20 eq.
/// 6-42 and 6-43, secondary.
#[test]
fn up_12_block_in_clay() {
    let block = example("up-12")
        .result
        .group
        .unwrap()
        .tension
        .unwrap()
        .block
        .unwrap();
    near(block.effective_weight.get(ForceUnit::KN), 614.08, 1e-6);
    near(block.shear.get(ForceUnit::KN), 2880.0, 1e-6);
    near(block.total.get(ForceUnit::KN), 3494.08, 0.05);
}

/// CD-03: safety factor 2.5 on the analysis of a group, New York City 1810.3.4, verified. By
/// hand: block 1.05 m square and 3 m deep, s'_v 45.19 kPa, s_u 60 kPa: 1.1025 x 45.19 + 4.2 x
/// 3 x 60 = 805.822 kN, over 2.5 is 322.329; four piles of 540 x 0.0900039 kN over 3: 64.803.
#[test]
fn cd_03_group_analysis_in_new_york() {
    let a = example("cd-03-group");
    let t = pulled(&a);
    near(
        t.block.as_ref().unwrap().total.get(ForceUnit::KN),
        805.822,
        1e-3,
    );
    let design = t.design.as_ref().unwrap();
    near(design.block.unwrap().get(ForceUnit::KN), 322.329, 1e-3);
    near(design.piles.get(ForceUnit::KN), 64.803, 1e-3);
    assert!(used(&a, "group_uplift_new_york") && !used(&a, "group_uplift_ibc"));
    assert_eq!(a.verdict, Verdict::Accept);
}

/// In New York City the block counts at any distance; elsewhere below 3 diameters.
#[test]
fn when_the_block_counts_in_tension() {
    let counts = |spacing: f64, clause: Option<&str>| {
        let basis = match clause {
            Some(c) => json!({ "allowable_stress": { "uplift_clause": c } }),
            None => json!({ "allowable_stress": {} }),
        };
        let request = json!({
            "soil": soil(&[(14.0, 18.0, clay(60.0))]), "pile": pile(0.0889, &[(0.35, 3.0)]),
            "directions": "tension", "design_basis": basis,
            "group": array(2, 2, spacing, spacing),
        });
        pulled(&answer(request)).block_counts
    };
    assert!(counts(1.04, None));
    assert!(!counts(1.05, None));
    assert!(counts(1.04, Some("helical")));
    assert!(counts(2.0, Some("new_york_city")));
}

/// By hand: 5 x 5 piles 0.36 m apart, three helices of 0.3 m at 4.2, 5.1 and 6.0 m in clay of
/// 40 kPa: B = L = 1.74 m, z/B above 2.5 so N_c 9, base 1.74^2 x 360 = 1089.936 kN, sides
/// 6.96 x 1.8 x 40 = 501.12 kN; the piles 25 x 3 x 360 x (pi/4)(0.3^2 - 0.0889^2) = 1740.92.
#[test]
fn the_block_of_a_crowded_group_governs_in_clay() {
    let a = answer(json!({
        "soil": soil(&[(20.0, 18.0, clay(40.0))]),
        "pile": pile(0.0889, &[(0.3, 4.2), (0.3, 5.1), (0.3, 6.0)]),
        "directions": "compression",
        "design_basis": { "allowable_stress": {} },
        "group": with(array(5, 5, 0.36, 0.36), "demand",
            json!({ "level": "allowable", "compression": q(700.0, "kN") })),
    }));
    let c = pushed(&a);
    let block = c.block.as_ref().unwrap();
    near(block.bearing.get(StressUnit::KPa), 360.0, 1e-9);
    near(block.base.get(ForceUnit::KN), 1089.936, 1e-9);
    near(block.shear.get(ForceUnit::KN), 501.12, 1e-9);
    near(c.piles.get(ForceUnit::KN), 1740.92, 1e-3);
    near(c.ultimate.get(ForceUnit::KN), 1591.056, 1e-9);
    assert_eq!(c.governing, GroupMode::Block);
    // half of it, by the factor of the pile
    let design = c.design.as_ref().unwrap();
    near(design.capacity.get(ForceUnit::KN), 795.528, 1e-9);
    assert_eq!(design.block_rule.as_ref().unwrap().id, "block_same_factor");
    // closer than 3 diameters and no efficiency sent
    assert!(warns(&a, "group_efficiency_unknown"));
    assert_eq!(group(&a).efficiency, None);
    assert_eq!(check(&a, "group_compression").status, CheckStatus::Pass);
    assert_eq!(check(&a, "group_spacing").status, CheckStatus::Warn);
    assert_eq!(a.verdict, Verdict::Provisional);
}

/// By hand: base in sand at 6 m under 18 kN/m3, water at 2 m: s'_v = 36 + 4 x 10.19 = 76.76
/// kPa, N_q(30) = 18.4011; full depth of sides: K tan phi 0.288675 on the mean of s'_v over
/// 6 m, (36 + (36 + 76.76) x 2)/6 = 43.5867 kPa, P 12 m.
#[test]
fn the_block_in_sand() {
    let mut ground = soil(&[(30.0, 18.0, sand(30.0))]);
    ground["layers"][0]["saturated_unit_weight"] = q(20.0, "kN_per_m3");
    ground["water_depth"] = q(2.0, "m");
    let a = answer(json!({
        "soil": ground, "pile": pile(0.0889, &[(0.6, 6.0)]), "directions": "compression",
        "group": with(array(2, 2, 1.4, 3.4), "shear_height", json!("full_depth")),
    }));
    let block = pushed(&a).block.as_ref().unwrap();
    near(block.bearing.get(StressUnit::KPa), 76.76 * 18.401_122, 1e-5);
    near(
        block.sides[0].mean_shear_stress.get(StressUnit::KPa),
        43.586_667 * 0.288_675_13,
        1e-5,
    );
    near(
        block.shear.get(ForceUnit::KN),
        12.0 * 6.0 * 43.586_667 * 0.288_675_13,
        1e-5,
    );
    near(
        block.base.get(ForceUnit::KN),
        8.0 * 76.76 * 18.401_122,
        1e-5,
    );
}

/// By hand: block 2 m by 4 m at 6 m in clay of 100 kPa, softer clay of 15 kPa from 7 m: spread
/// to 3 m by 5 m, N_c = 5 (1 + 0.2 x 3/5)(1 + 0.2 x 7/3) = 8.2133, q = 15 x 8.2133 x 15/8 =
/// 231.0 kPa; the stiff clay itself takes 5 x 1.1 x 1.5 x 100 = 825 kPa.
#[test]
fn softer_soil_below_the_block_is_under_the_spread_load() {
    let a = answer(json!({
        "soil": soil(&[(7.0, 18.0, clay(100.0)), (20.0, 18.0, clay(15.0))]),
        "pile": pile(0.0889, &[(0.6, 4.0), (0.6, 6.0)]),
        "directions": "compression",
        "methods": { "bearing_zone_ratio": 1.0 },
        "group": array(2, 2, 1.4, 3.4),
    }));
    let block = pushed(&a).block.as_ref().unwrap();
    assert_eq!(block.bearing_layer, "L2");
    near(block.bearing.get(StressUnit::KPa), 231.0, 1e-3);
    // fill instead takes nothing, as below a helix
    let a = answer(json!({
        "soil": soil(&[(7.0, 18.0, clay(100.0)), (20.0, 18.0, fill())]),
        "pile": pile(0.0889, &[(0.6, 4.0), (0.6, 6.0)]),
        "directions": "compression",
        "methods": { "bearing_zone_ratio": 1.0 },
        "group": array(2, 2, 1.4, 3.4),
    }));
    assert_eq!(pushed(&a).block.as_ref().unwrap().base.si(), 0.0);
}

/// The soil below a block is needed to one breadth and wanted to two; rock ends the look.
#[test]
fn how_far_the_soil_below_the_block_must_be_known() {
    let ask = |layers: &[(f64, f64, Json)]| {
        answer(json!({
            "soil": soil(layers), "pile": pile(0.0889, &[(0.3, 4.0), (0.3, 5.0)]),
            "directions": "compression", "design_basis": { "allowable_stress": {} },
            "group": with(array(2, 2, 1.7, 1.7), "demand",
                json!({ "level": "allowable", "compression": q(100.0, "kN") })),
        }))
    };
    let deep = ask(&[(9.0, 18.0, clay(80.0))]);
    assert!(!warns(&deep, "profile_ends_near_block"));
    let near_end = ask(&[(7.0, 18.0, clay(80.0))]);
    assert!(warns(&near_end, "profile_ends_near_block"));
    assert!(pushed(&near_end).block.is_some());
    assert_eq!(near_end.verdict, Verdict::Accept);
    let unknown = ask(&[(6.5, 18.0, clay(80.0))]);
    assert!(pushed(&unknown).block.is_none() && pushed(&unknown).design.is_none());
    assert_eq!(
        check(&unknown, "group_compression").status,
        CheckStatus::NotEvaluated
    );
    assert_eq!(unknown.verdict, Verdict::Provisional);
    let rock = ask(&[(6.5, 18.0, clay(80.0)), (8.0, 24.0, json!({ "rock": {} }))]);
    assert!(pushed(&rock).block.is_some());
    assert_eq!(rock.verdict, Verdict::Accept);
}

/// Each helix counts with what the soft soil below it takes, in the group as in the check of
/// the pile.
#[test]
fn punching_counts_in_the_sum_of_the_piles() {
    let a = answer(json!({
        "soil": soil(&[(5.2, 18.0, clay(150.0)), (20.0, 18.0, clay(20.0))]),
        "pile": pile(0.0889, &[(0.3, 3.8), (0.3, 4.9)]), "directions": "compression",
        "methods": { "bearing_zone_ratio": 0.5 },
        "design_basis": { "allowable_stress": {} },
        "group": array(2, 2, 1.5, 1.5),
    }));
    let held = compression(&a)
        .ultimate_by_punching
        .expect("punching binds");
    near(pushed(&a).piles.si(), 4.0 * held.si(), 1e-9);
    near(
        pushed(&a).design.as_ref().unwrap().piles.si(),
        2.0 * held.si(),
        1e-9,
    );
}

/// The factor of the pile on the block in limit states; none by EN 1997-1.
#[test]
fn each_basis_has_its_rule_for_the_block_or_none() {
    let ask = |basis: Json| {
        answer(json!({
            "soil": soil(&[(20.0, 18.0, clay(40.0))]),
            "pile": pile(0.0889, &[(0.3, 4.2), (0.3, 5.1), (0.3, 6.0)]),
            "design_basis": basis,
            "group": with(with(array(5, 5, 0.36, 0.36), "efficiency_factor", json!(0.8)), "demand",
                json!({ "level": "factored", "compression": q(600.0, "kN"), "tension": q(100.0, "kN") })),
        }))
    };
    let a = ask(json!({ "limit_states": {} }));
    let (c, t) = (pushed(&a), pulled(&a));
    // 0.4 in compression and 0.3 in tension, CANADA_PHI
    near(
        c.design.as_ref().unwrap().block.unwrap().si(),
        0.4 * c.block.as_ref().unwrap().total.si(),
        1e-9,
    );
    near(
        t.design.as_ref().unwrap().block.unwrap().si(),
        0.3 * t.block.as_ref().unwrap().total.si(),
        1e-9,
    );
    near(
        c.piles.si(),
        25.0 * 0.8 * compression(&a).ultimate.si(),
        1e-9,
    );
    assert!(group(&a).efficiency.as_ref().unwrap().from_request);
    assert!(!warns(&a, "group_efficiency_unknown"));
    let a = ask(json!({ "eurocode_7": { "approach": "da2", "pile_kind": "bored" } }));
    assert!(pushed(&a).design.is_none() && pulled(&a).design.is_none());
    assert!(warns(&a, "no_rule_for_block"));
    assert_eq!(check(&a, "group_tension").status, CheckStatus::NotEvaluated);
}

/// Between 3 diameters and the distance of EN 1997-1 the block counts on that basis alone.
#[test]
fn the_block_counts_at_the_distance_of_en_1997_1_on_its_basis() {
    let counts = |basis: Json| {
        let a = answer(json!({
            "soil": soil(&[(20.0, 18.0, clay(60.0))]), "pile": pile(0.0889, &[(0.3, 6.0)]),
            "directions": "tension", "design_basis": basis, "group": array(2, 2, 1.2, 1.2),
        }));
        near(
            group(&a).eurocode_block_spacing.unwrap().si(),
            1.8_f64.sqrt(),
            1e-9,
        );
        pulled(&a).block_counts
    };
    assert!(counts(
        json!({ "eurocode_7": { "approach": "da2", "pile_kind": "bored" } })
    ));
    assert!(!counts(json!({ "limit_states": {} })));
}

/// Load tests stand in place of a calculation, so piles in fill alone have a resistance; but a
/// crowded group of them has no block to be held against, and none is invented.
#[test]
fn a_crowded_group_without_a_block_has_no_capacity_by_en_1997_1() {
    let ask = |apart: f64| {
        answer(json!({
            "soil": soil(&[(20.0, 18.0, fill())]), "pile": pile(0.0889, &[(0.3, 6.0)]),
            "directions": "tension", "group": array(2, 2, apart, apart),
            "design_basis": { "eurocode_7": {
                "approach": "da2", "pile_kind": "bored",
                "proof": { "load_tests": { "tests": [{ "tension": q(100.0, "kN") }] } },
            } },
        }))
    };
    let a = ask(0.6);
    assert!(pulled(&a).block_counts && pulled(&a).block.is_none());
    assert!(pulled(&a).design.is_none());
    // far apart the block does not count, and the piles stand for themselves
    let a = ask(3.0);
    assert!(!pulled(&a).block_counts && pulled(&a).design.is_some());
}

/// Artesian water lightens the block. By hand at 6 m: 18 x 6 - 80 = 28 kPa on 8 m2, against
/// 18 x 6 - 39.24 = 68.76 kPa with water at rest from 2 m.
#[test]
fn the_block_is_weighed_by_effective_stress() {
    let ask = |water: &str, value: Json| {
        let mut ground = soil(&[(20.0, 18.0, clay(60.0))]);
        ground[water] = value;
        let a = answer(json!({
            "soil": ground, "pile": pile(0.0889, &[(0.6, 6.0)]), "directions": "tension",
            "group": array(2, 2, 1.4, 3.4),
        }));
        pulled(&a)
            .block
            .as_ref()
            .unwrap()
            .effective_weight
            .get(ForceUnit::KN)
    };
    near(ask("water_depth", q(2.0, "m")), 8.0 * 68.76, 1e-6);
    let artesian = json!([
        { "depth": q(2.0, "m"), "pressure": q(0.0, "kPa") },
        { "depth": q(6.0, "m"), "pressure": q(80.0, "kPa") },
    ]);
    near(ask("pore_pressures", artesian), 8.0 * 28.0, 1e-6);
}

/// Ground noted as hazardous neither shears nor bears on a block.
#[test]
fn hazardous_ground_is_not_counted_on_the_block() {
    let mut ground = soil(&[
        (2.0, 18.0, clay(60.0)),
        (9.0, 18.0, clay(80.0)),
        (20.0, 18.0, clay(90.0)),
    ]);
    let ask = |ground: &Json| {
        answer(json!({
            "soil": ground, "pile": pile(0.0889, &[(0.3, 5.0)]), "group": array(2, 2, 2.0, 2.0),
        }))
    };
    let plain = ask(&ground);
    ground["layers"][0]["hazards"] = json!(["liquefiable"]);
    ground["layers"][2]["hazards"] = json!(["liquefiable"]);
    let noted = ask(&ground);
    near(
        pushed(&plain)
            .block
            .as_ref()
            .unwrap()
            .bearing
            .get(StressUnit::KPa),
        80.0 * 6.0 * (1.0 + 0.2 * 5.0 / 2.3),
        1e-9,
    );
    assert_eq!(pushed(&noted).block.as_ref().unwrap().base.si(), 0.0);
    let lost = pulled(&plain).block.as_ref().unwrap().shear.si()
        - pulled(&noted).block.as_ref().unwrap().shear.si();
    // perimeter 9.2 m, 2 m of 60 kPa
    near(lost, 9.2 * 2.0 * 60e3, 1e-9);
}

/// EN 1997-1: root of 0.3 m x (6.0 - 1.5) m.
#[test]
fn the_spacing_of_en_1997_1_counts_below_soil_without_credit() {
    let a = answer(json!({
        "soil": soil(&[(1.5, 17.0, fill()), (20.0, 18.0, clay(60.0))]),
        "pile": pile(0.0889, &[(0.3, 5.0), (0.25, 6.0)]),
        "group": array(2, 2, 1.2, 1.2),
    }));
    near(
        group(&a).eurocode_block_spacing.unwrap().si(),
        (0.3 * 4.5_f64).sqrt(),
        1e-9,
    );
}

#[test]
fn a_wide_shallow_group_is_told_when_its_block_is_less() {
    let a = answer(json!({
        "soil": soil(&[(20.0, 18.0, sand(40.0))]), "pile": pile(0.0889, &[(0.6, 2.4)]),
        "directions": "tension",
        "group": with(array(4, 4, 1.8, 1.8), "uplift_block",
            json!({ "given": { "effective_weight": q(100.0, "kN"), "ultimate_shear": q(0.0, "kN") } })),
    }));
    assert!(warns(&a, "block_less_than_piles"));
    assert!(!pulled(&a).block_counts);
    near(pulled(&a).ultimate.si(), pulled(&a).piles.si(), 1e-12);
}

#[test]
fn the_named_examples_come_to_their_verdicts() {
    for (name, expected) in [
        ("group-in-clay", Verdict::Accept),
        ("group-close-spacing", Verdict::Provisional),
        ("group-of-three", Verdict::Accept),
    ] {
        let a = example(name);
        assert_eq!(a.verdict, expected, "{name}: {:?}", a.verdict_reasons);
    }
    assert_eq!(
        check(&example("group-in-clay"), "group_spacing").status,
        CheckStatus::Warn
    );
}
