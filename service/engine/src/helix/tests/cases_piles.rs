//! Reference cases of whole piles: bearing, zone, uplift, cylinder. Intermediate values
//! are asserted before results.

use serde_json::{Value as Json, json};

use super::*;
use crate::contract::CheckStatus;
use crate::helix::{BearingLaw, EmbedmentMode, GoverningMode};
use crate::quantity::{AreaUnit, ForceUnit, LengthUnit, StressUnit};

fn clay_75() -> Json {
    soil(&[(12.0, 18.0, clay(75.0))])
}

/// The pile of HB-02: 8, 10 and 12 in on a 73 mm shaft, 3 diameters of the lower helix apart.
const THREE: &[(f64, f64)] = &[(0.2032, 6.0), (0.254, 5.3904), (0.3048, 4.6284)];

/// HB-02 (computed, verified): net areas and their sum at 9 s_u; the lowest gross.
#[test]
fn hb_02_three_helices_in_clay() {
    let a = answer(json!({ "soil": clay_75(), "pile": pile(0.073, THREE) }));
    let c = compression(&a);
    let labels: Vec<_> = c
        .individual_bearing
        .helices
        .iter()
        .map(|h| &h.label)
        .collect();
    assert_eq!(labels, ["1", "2", "3"], "numbered from the top");
    // the case lists them from the bottom
    for (i, area) in [(2, 0.028244), (1, 0.046485), (0, 0.06878)] {
        near(helix(c, i).area.get(AreaUnit::M2), area, 0.05);
        near(helix(c, i).bearing.get(StressUnit::KPa), 675.0, 1e-9);
    }
    near(c.individual_bearing.total.get(ForceUnit::KN), 96.869, 0.05);
    let gross = answer(json!({
        "soil": clay_75(), "pile": pile(0.073, THREE), "methods": { "helix_area": "bottom_gross" },
    }));
    near(
        compression(&gross)
            .individual_bearing
            .total
            .get(ForceUnit::KN),
        99.694,
        0.05,
    );
    near(
        tension(&gross).individual_bearing.total.get(ForceUnit::KN),
        96.869,
        0.05,
    );
}

/// HB-04 (computed, verified): the lesser governs; half of it is allowable.
#[test]
fn hb_04_the_lesser_governs() {
    let a = answer(json!({
        "soil": clay_75(), "pile": pile(0.073, THREE), "design_basis": { "allowable_stress": {} },
    }));
    let c = compression(&a);
    let cylinder = c.cylindrical_shear.as_ref().unwrap();
    // own arithmetic: 675 x 0.028244 + pi 75 (0.2286 x 0.6096 + 0.2794 x 0.762)
    near(cylinder.total.get(ForceUnit::KN), 102.065, 0.05);
    assert_eq!(cylinder.end_helix, "3");
    near(c.ultimate.get(ForceUnit::KN), 96.869, 0.05);
    assert_eq!(c.governing_mode, GoverningMode::IndividualBearing);
    let design = c.design.as_ref().unwrap();
    near(design.capacity.get(ForceUnit::KN), 48.435, 0.05);
    assert_eq!(a.result.factors[0].used_factor, 2.0);
}

fn equal_helices(spacing: f64) -> Json {
    let d = 0.3048;
    pile(
        0.073,
        &[
            (d, 4.0),
            (d, 4.0 + spacing * d),
            (d, 4.0 + 2.0 * spacing * d),
        ],
    )
}

/// HB-05 (computed, verified): with equal helices in uniform clay the modes cross at a
/// spacing of 2.1209 diameters (net), 2.25 (gross).
#[test]
fn hb_05_spacing_at_which_the_modes_cross() {
    let at = |spacing: f64, area: &str| {
        let a = answer(json!({
            "soil": clay_75(), "pile": equal_helices(spacing), "directions": "compression",
            "methods": { "helix_area": area },
        }));
        let c = a.result.compression.unwrap();
        let cylinder = c.cylindrical_shear.unwrap().total.get(ForceUnit::KN);
        (
            c.individual_bearing.total.get(ForceUnit::KN),
            cylinder,
            c.governing_mode,
        )
    };
    let (individual, cylinder, mode) = at(1.5, "net");
    near(individual, 139.28, 0.05);
    near(cylinder, 112.096, 0.05);
    assert_eq!(mode, GoverningMode::CylindricalShear);
    let (_, cylinder, mode) = at(3.0, "net");
    near(cylinder, 177.765, 0.05);
    assert_eq!(mode, GoverningMode::IndividualBearing);
    for (area, crossing) in [("net", 2.1209), ("gross", 2.25)] {
        let (i, c, _) = at(crossing, area);
        near(c, i, 0.05);
        assert_eq!(
            at(crossing * 0.999, area).2,
            GoverningMode::CylindricalShear
        );
        assert_eq!(
            at(crossing * 1.001, area).2,
            GoverningMode::IndividualBearing
        );
    }
}

/// HB-07 (computed, verified): 2 diameters below a helix at 3.6 m in 40 over 80 kPa average
/// 53.333 kPa; above it 40.
#[test]
fn hb_07_soils_of_the_zone_averaged() {
    let ground = soil(&[(4.0, 18.0, clay(40.0)), (9.0, 18.0, clay(80.0))]);
    let one = pile(0.073, &[(0.3, 3.6)]);
    let a = answer(json!({ "soil": ground, "pile": one }));
    let below = helix(compression(&a), 0);
    let heights: Vec<_> = below
        .zone
        .iter()
        .map(|z| (z.bottom - z.top).get(LengthUnit::M))
        .collect();
    near(heights[0], 0.4, 1e-6);
    near(heights[1], 0.2, 1e-6);
    near(below.zone[0].bearing_factor, 9.0, 1e-9);
    near(below.bearing.get(StressUnit::KPa) / 9.0, 53.333, 0.01);
    let above = helix(tension(&a), 0);
    assert_eq!(above.zone.len(), 1);
    near(above.bearing.get(StressUnit::KPa) / 9.0, 40.0, 0.01);
    // other depths of zone: own arithmetic, 40 within 1 diameter (0.3 m), 56 within 3 (0.9 m:
    // 0.4 at 40, 0.5 at 80 gives 62.222), 40 in touch, 40 the weakest
    for (methods, su) in [
        (json!({ "bearing_zone_ratio": 1 }), 40.0),
        (
            json!({ "bearing_zone_ratio": 1.5 }),
            (0.4 * 40.0 + 0.05 * 80.0) / 0.45,
        ),
        (json!({ "bearing_zone_ratio": 3 }), 62.222),
        (json!({ "bearing_zone_ratio": 0 }), 40.0),
        (json!({ "bearing_zone_rule": "weakest" }), 40.0),
    ] {
        let a = answer(json!({ "soil": ground, "pile": one, "methods": methods }));
        let q = helix(compression(&a), 0).bearing.get(StressUnit::KPa);
        near(q / 9.0, su, 0.01);
    }
}

/// UC-03 (verified by an independent library): 9 x 75 kPa.
#[test]
fn uc_03_nine_su() {
    for methods in [json!({}), json!({ "undrained_bearing": "fixed_nine" })] {
        let a = answer(json!({
            "soil": clay_75(), "pile": pile(0.073, &[(0.3, 6.0)]), "methods": methods,
        }));
        near(
            helix(compression(&a), 0).bearing.get(StressUnit::KPa),
            675.0,
            0.01,
        );
    }
}

/// UP-05 (informational, memory): shallow uplift in clay, gross area.
#[test]
fn up_05_shallow_uplift_in_clay() {
    let a = answer(json!({
        "soil": soil(&[(6.0, 17.0, clay(50.0))]), "pile": pile(0.073, &[(0.3048, 0.9)]),
        "methods": { "helix_area": "gross" },
    }));
    let t = tension(&a);
    let e = t.embedment.as_ref().unwrap();
    near(e.embedment_ratio, 2.9528, 0.1);
    near(e.critical_ratio, 7.0, 0.1);
    assert_eq!(e.mode, EmbedmentMode::Shallow);
    let part = &helix(t, 0).zone[0];
    assert_eq!(part.law, BearingLaw::UndrainedBreakout);
    near(part.bearing_factor, 3.5433, 0.1);
    near(t.ultimate.get(ForceUnit::KN), 14.043, 0.1);
    assert!(warns(&a, "default_from_memory"));
}

/// UP-06 (informational, memory): shallow uplift in sand, gross area.
#[test]
fn up_06_shallow_uplift_in_sand() {
    let a = answer(json!({
        "soil": soil(&[(6.0, 17.0, sand(35.0))]), "pile": pile(0.073, &[(0.3048, 0.9144)]),
        "methods": { "helix_area": "gross" },
    }));
    let t = tension(&a);
    let part = &helix(t, 0).zone[0];
    assert_eq!(part.law, BearingLaw::DrainedBreakout);
    near(part.bearing_factor, 7.9846, 0.1);
    near(t.ultimate.get(ForceUnit::KN), 9.0564, 0.1);
    assert_eq!(t.embedment.as_ref().unwrap().mode, EmbedmentMode::Shallow);
}

/// UP-07 (informational, memory): deep uplift in sand, two helices, net area, three ways.
#[test]
fn up_07_deep_uplift_in_sand() {
    let ask = |methods: Json| {
        answer(json!({
            "soil": soil(&[(8.0, 17.0, sand(35.0))]),
            "pile": pile(0.073, &[(0.3048, 2.4384), (0.3048, 3.3528)]), "methods": methods,
        }))
    };
    let a = ask(json!({}));
    let t = tension(&a);
    let e = t.embedment.as_ref().unwrap();
    near(e.embedment_ratio, 8.0, 1e-6);
    near(e.critical_ratio, 5.0, 1e-6);
    assert_eq!(e.mode, EmbedmentMode::Deep);
    for i in 0..2 {
        near(helix(t, i).zone[0].bearing_factor, 15.97, 0.1);
    }
    near(t.individual_bearing.total.get(ForceUnit::KN), 108.12, 0.1);
    let cylinder = t.cylindrical_shear.as_ref().unwrap();
    near(
        cylinder.gaps[0].parts[0].lateral_stress_ratio.unwrap(),
        1.5,
        0.1,
    );
    assert_eq!(cylinder.end_helix, "1");
    near(cylinder.total.get(ForceUnit::KN), 90.794, 0.1);
    near(t.ultimate.get(ForceUnit::KN), 90.794, 0.1);
    assert_eq!(t.governing_mode, GoverningMode::CylindricalShear);
    let full = ask(json!({ "uplift_sand": { "nq_tension": { "tension_factor": 1 } } }));
    near(
        tension(&full).individual_bearing.total.get(ForceUnit::KN),
        225.463,
        0.1,
    );
    let share = ask(json!({ "uplift_sand": { "nq_tension": {} } }));
    near(
        tension(&share).individual_bearing.total.get(ForceUnit::KN),
        0.7 * 225.463,
        0.1,
    );
    assert!(used(&share, "nq_tension") && !used(&share, "das_breakout"));
}

/// UP-09 (secondary): top helix at least 5 diameters of the largest: 0.3556 m needs 1.778 m.
#[test]
fn up_09_least_embedment() {
    let ask = |depth: f64, demand: Json| {
        answer(json!({
            "soil": soil(&[(8.0, 18.0, clay(60.0))]),
            "pile": pile(0.089, &[(0.3048, depth), (0.3556, 4.0)]),
            "design_basis": { "allowable_stress": {} }, "demand": demand,
        }))
    };
    let pull = json!({ "level": "allowable", "tension": q(1.0, "kN") });
    for (depth, status) in [(1.778, CheckStatus::Pass), (1.777, CheckStatus::Fail)] {
        let a = ask(depth, pull.clone());
        let check = a.checks.iter().find(|c| c.id == "helix_embedment").unwrap();
        near(check.demand.as_ref().unwrap().value(), 1.778, 0.01);
        assert_eq!(check.status, status, "{depth}");
    }
    let push = ask(
        1.0,
        json!({ "level": "allowable", "compression": q(1.0, "kN") }),
    );
    assert!(push.checks.iter().all(|c| c.id != "helix_embedment"));
    let nil = json!({ "level": "allowable", "compression": q(1.0, "kN"), "tension": q(0.0, "kN") });
    assert!(
        ask(1.0, nil)
            .checks
            .iter()
            .all(|c| c.id != "helix_embedment")
    );
}
