//! Stresses: water at rest and water under pressure, moist and dry weights, layers split in
//! two, and ground that would lift.

use serde_json::{Value as Json, json};

use super::{clay, layer, m, near, profile, q, used, whole};
use crate::contract::Work;
use crate::quantity::{Length, LengthUnit, StressUnit};
use crate::soil::{SoilProfile, Strata};

fn kpa_at(strata: &Strata, depth: f64) -> (f64, f64, f64) {
    (
        strata.effective_stress(m(depth)).get(StressUnit::KPa),
        strata.pore_pressure(m(depth)).get(StressUnit::KPa),
        strata.total_stress(m(depth)).get(StressUnit::KPa),
    )
}

/// Every stress of two profiles agrees to a relative 1e-12 at 50 depths.
#[track_caller]
fn same_stresses(a: &SoilProfile, b: &SoilProfile) {
    let (a, b) = (a.strata(), b.strata());
    for i in 1..=50 {
        let z = a.depth() * (f64::from(i) / 50.0);
        near(
            b.effective_stress(z).si(),
            a.effective_stress(z).si(),
            1e-12,
        );
        near(b.pore_pressure(z).si(), a.pore_pressure(z).si(), 1e-12);
        let from = z * 0.3;
        near(
            b.mean_effective_stress(from, z).si(),
            a.mean_effective_stress(from, z).si(),
            1e-12,
        );
    }
}

fn points(list: &[(f64, f64)]) -> Json {
    let point = |p: &(f64, f64)| json!({ "depth": q(p.0, "m"), "pressure": q(p.1, "kPa") });
    list.iter().map(point).collect()
}

/// Two layers of which the lower is heavier below water.
fn two_layers() -> Json {
    let mut lower = layer(4.0, 15.0, 18.0, clay());
    lower["saturated_unit_weight"] = q(20.3, "kN_per_m3");
    json!({ "layers": [layer(0.0, 4.0, 17.5, clay()), lower] })
}

/// By hand: 115 pcf, water at 3 ft, depth 10 ft: 713.2 psf against 1,150 (62.4 pcf), ratio
/// 0.620.
#[test]
fn water_table_reduces_effective_stress() {
    let mut value = json!({
        "layers": [
            { "top": q(0.0, "ft"), "bottom": q(4.0, "ft"), "unit_weight": q(115.0, "pcf"), "soil": clay() },
            { "top": q(4.0, "ft"), "bottom": q(20.0, "ft"), "unit_weight": q(115.0, "pcf"), "soil": clay() },
        ],
        "water_unit_weight": q(62.4, "pcf"),
    });
    let ten = Length::new(10.0, LengthUnit::Ft);
    let at = |value: &Json| {
        let strata = whole(value.clone()).strata();
        strata.effective_stress(ten).get(StressUnit::Psf)
    };
    near(at(&value), 1150.0, 1e-12);
    value["water_depth"] = q(3.0, "ft");
    near(at(&value), 713.2, 1e-12);
    near(at(&value) / 1150.0, 0.620, 5e-4);
}

/// Perched water by hand, kPa. At 2 m: 18 + 20 - 9.81; at 5 m: 18 + 20 + 18.5 + 2 x 18, dry;
/// at 8 m: that + 2 x 18 + 20 of which 9.81 is water.
#[test]
fn perched_water_is_a_rise_and_a_fall() {
    let mut upper = layer(0.0, 2.0, 18.0, clay());
    let mut lower = layer(3.0, 12.0, 18.0, clay());
    upper["saturated_unit_weight"] = q(20.0, "kN_per_m3");
    lower["saturated_unit_weight"] = q(20.0, "kN_per_m3");
    let value = json!({
        "layers": [upper, layer(2.0, 3.0, 18.5, clay()), lower],
        "pore_pressures": points(&[(1.0, 0.0), (2.0, 9.81), (3.0, 0.0), (7.0, 0.0)]),
    });
    let profile = whole(value);
    let strata = profile.strata();
    for (depth, effective, pore) in [
        (0.5, 9.0, 0.0),
        (2.0, 28.19, 9.81),
        (2.5, 28.19 + 9.25 + 4.905, 4.905),
        (5.0, 92.5, 0.0),
        (8.0, 138.69, 9.81),
    ] {
        let (s, u, total) = kpa_at(&strata, depth);
        near(s, effective, 1e-12);
        near(u, pore, 1e-12);
        near(total, effective + pore, 1e-12);
    }
    let mut work = Work::default();
    profile.derived_strengths(&mut work);
    assert!(used(&work, "pore_pressure_profile"));
}

/// Artesian water by hand, kPa: at 7.5 m 18.5 x 6 + 1.5 x 20.5 of weight against 65 + 1.5 x
/// 78.48/8 of water.
#[test]
fn artesian_water_takes_weight() {
    let mut lower = layer(6.0, 14.0, 19.0, clay());
    lower["saturated_unit_weight"] = q(20.5, "kN_per_m3");
    let value = json!({
        "layers": [layer(0.0, 6.0, 18.5, clay()), lower],
        "pore_pressures": points(&[(1.0, 0.0), (6.0, 65.0), (14.0, 143.48)]),
    });
    let (s, u, _) = kpa_at(&whole(value).strata(), 7.5);
    near(s, 62.035, 1e-12);
    near(u, 79.715, 1e-12);
}

#[test]
fn points_of_water_at_rest_are_a_water_table() {
    let mut table = two_layers();
    table["water_depth"] = q(2.2, "m");
    let table = whole(table);
    for list in [
        &[(2.2, 0.0)][..],
        &[(2.2, 0.0), (5.2, 3.0 * 9.81)],
        &[(0.0, 0.0), (2.2, 0.0), (3.2, 9.81), (20.0, 17.8 * 9.81)],
    ] {
        let mut value = two_layers();
        value["pore_pressures"] = points(list);
        same_stresses(&table, &whole(value));
    }
}

#[test]
fn splitting_a_layer_changes_no_stress() {
    let mut one = two_layers();
    let mut split = two_layers();
    let mut upper = split["layers"][1].clone();
    let mut lower = upper.clone();
    upper["bottom"] = q(7.3, "m");
    lower["top"] = q(7.3, "m");
    split["layers"] = json!([split["layers"][0], upper, lower]);
    for value in [&mut one, &mut split] {
        value["pore_pressures"] = points(&[(1.0, 0.0), (3.0, 25.0), (9.0, 70.0)]);
    }
    same_stresses(&whole(one), &whole(split));
}

/// 16 kN/m3 dry with 12 % water is 17.92 moist; with grains of 2.65 it is 19.772264 saturated
/// (16 (1 - 1/2.65) + 9.81).
#[test]
fn dry_weight_with_water_is_the_moist_weight() {
    let mut dry = layer(0.0, 12.0, 1.0, clay());
    dry["unit_weight"] = Json::Null;
    dry["dry_unit_weight"] = q(16.0, "kN_per_m3");
    dry["water_content_ratio"] = json!(0.12);
    dry["specific_gravity_ratio"] = json!(2.65);
    let mut moist = layer(0.0, 12.0, 17.92, clay());
    moist["saturated_unit_weight"] = q(16.0 * (1.0 - 1.0 / 2.65) + 9.81, "kN_per_m3");
    let of = |layer: Json| whole(json!({ "layers": [layer], "water_depth": q(3.0, "m") }));
    let (dry, moist) = (of(dry), of(moist));
    same_stresses(&dry, &moist);
    near(kpa_at(&dry.strata(), 4.0).0, 63.722_264_150_943_4, 1e-12);
    let mut work = Work::default();
    dry.derived_strengths(&mut work);
    assert!(used(&work, "unit_weight_from_phases"));
    let mut plain = Work::default();
    moist.derived_strengths(&mut plain);
    assert!(plain.methods.is_empty() && plain.warnings.is_empty());
}

/// 17 x 5 = 85 kPa of weight at 5 m. The pressure that carries it is refused, a little less
/// is not; the depth told is where the two lines cross.
#[test]
fn ground_that_would_lift_is_refused() {
    let of = |pressure: f64| {
        profile(json!({
            "layers": [layer(0.0, 5.0, 17.0, clay()), layer(5.0, 12.0, 20.0, clay())],
            "pore_pressures": points(&[(1.0, 0.0), (5.0, pressure)]),
        }))
    };
    assert!(of(84.9).faults("").is_empty());
    assert_eq!(of(85.0).faults("").len(), 1);
    let faults = of(93.0).faults("/soil");
    assert_eq!(faults[0].code, "effective_stress_not_positive");
    assert_eq!(faults[0].pointer, "/soil/pore_pressures");
    // 17 z = 93/4 (z - 1) at z = 3.72
    assert!(
        faults[0].detail.starts_with("at 3.72 m"),
        "{}",
        faults[0].detail
    );
    assert!(faults[0].source.is_some());
}

#[test]
fn a_boundary_belongs_to_the_side_asked_for() {
    let strata = whole(two_layers()).strata();
    assert_eq!(strata.layer_at(m(4.0), true), Some(1));
    assert_eq!(strata.layer_at(m(4.0), false), Some(0));
    assert_eq!(strata.layer_at(m(15.1), true), None);
    assert_eq!(strata.layer_at(m(15.0), true), Some(1));
}
