//! Properties of the relations: monotone in the readings, the same in any unit, never beyond
//! their limits.

use proptest::prelude::*;
use serde_json::{Value as Json, json};

use super::{deg, kpa, near, only, profile, q, uniform};

fn relations() -> impl Strategy<Value = &'static str> {
    prop::sample::select(vec![
        "peck_hanson_thornburn_wolff",
        "kulhawy_mayne_1990",
        "hatanaka_uchida_1996",
        "shioi_fukui_1982_roads",
        "shioi_fukui_1982_buildings",
    ])
}

fn spt(count: f64, depth: Json, correlation: &str) -> Json {
    json!({ "sand": { "from_spt": { "blow_count": count, "form": "n60",
        "test_depth": depth, "correlation": correlation } } })
}

proptest! {
    #[test]
    fn friction_never_falls_with_the_blow_count(
        n in 1.0..99.0_f64, more in 0.0..20.0_f64, depth in 0.5..11.0_f64, correlation in relations(),
    ) {
        let at = |n: f64| deg(only(uniform(spt(n.min(100.0), q(depth, "m"), correlation))).friction_angle);
        let (low, high) = (at(n), at(n + more));
        prop_assert!(high >= low * (1.0 - 1e-12));
        prop_assert!(low >= 5.0 && high <= 45.0 * (1.0 + 1e-12));
    }

    #[test]
    fn undrained_strength_is_proportional_to_the_blow_count(
        n in 1.0..50.0_f64, pi in 0.15..0.6_f64,
    ) {
        let at = |n: f64| kpa(only(uniform(json!({ "clay": { "from_spt": {
            "blow_count": n, "form": "n60", "plasticity_index_ratio": pi } } }))).undrained_strength);
        near(at(2.0 * n), 2.0 * at(n), 1e-12);
        // the factor lies within its table
        prop_assert!(at(n) >= 4.3 * n * (1.0 - 1e-12) && at(n) <= 6.8 * n * (1.0 + 1e-12));
    }

    #[test]
    fn strengths_never_fall_with_the_cone_resistance(
        qt in 0.4..40.0_f64, more in 0.0..10.0_f64, robertson in any::<bool>(), depth in 1.0..11.0_f64,
    ) {
        let correlation = if robertson { "robertson_campanella_1983" } else { "kulhawy_mayne_1990" };
        let reading = |qt: f64| json!({ "total_resistance": q(qt, "MPa") });
        let friction = |qt: f64| uniform(json!({ "sand": { "from_cpt": { "reading": reading(qt),
            "test_depth": q(depth, "m"), "correlation": correlation } } }));
        let clay = |qt: f64| uniform(json!({ "clay": { "from_cpt": { "reading": reading(qt),
            "test_depth": q(depth, "m"), "cone_factor": 20 } } }));
        for of in [&friction as &dyn Fn(f64) -> Json, &clay] {
            // a reading without answer is below or above those with one
            let at = |qt: f64| {
                let value = of(qt);
                let whole = profile(value.clone()).faults("").is_empty();
                whole.then(|| only(value)).map(|d| d.friction_angle.map_or_else(
                    || kpa(d.undrained_strength), |phi| deg(Some(phi))))
            };
            if let (Some(low), Some(high)) = (at(qt), at(qt + more)) {
                prop_assert!(high >= low * (1.0 - 1e-12));
            }
        }
    }

    #[test]
    fn units_change_no_strength(
        n in 2.0..60.0_f64, feet in 2.0..35.0_f64, qt in 20.0..300.0_f64, correlation in relations(),
    ) {
        let us = |soil: Json| json!({ "layers": [{ "top": q(0.0, "ft"), "bottom": q(40.0, "ft"),
            "unit_weight": q(120.0, "pcf"), "soil": soil }], "water_depth": q(5.0, "ft") });
        let lbf = 4.448_221_615_260_5;
        let si = |soil: Json| json!({ "layers": [{ "top": q(0.0, "m"), "bottom": q(40.0 * 0.3048, "m"),
            "unit_weight": q(120.0 * lbf / (0.3048 * 0.3048 * 0.3048), "N_per_m3"), "soil": soil }],
            "water_depth": q(5.0 * 304.8, "mm") });
        let depth = (q(feet, "ft"), q(feet * 0.3048, "m"));
        let a = only(us(spt(n, depth.0.clone(), correlation)));
        let b = only(si(spt(n, depth.1.clone(), correlation)));
        near(deg(b.friction_angle), deg(a.friction_angle), 1e-12);
        let cone = |qt: Json, fs: Json, depth: Json| json!({ "clay": { "from_cpt": {
            "reading": { "total_resistance": qt, "sleeve_friction": fs }, "test_depth": depth } } });
        let area = 0.3048 * 0.3048;
        let psf = |ksf: f64| 1000.0 * ksf * lbf / area;
        let a = only(us(cone(q(qt, "ksf"), q(2.0, "ksf"), depth.0)));
        let b = only(si(cone(q(psf(qt), "Pa"), q(psf(2.0) / 1000.0, "kPa"), depth.1)));
        near(kpa(b.undrained_strength), kpa(a.undrained_strength), 1e-12);
        let index = |d: &super::DerivedStrength| d.cone.unwrap().behaviour_index_ratio.unwrap();
        near(index(&b), index(&a), 1e-11);
    }

    #[test]
    fn strength_from_history_grows_with_stress_and_overconsolidation(
        ocr in 1.0..19.0_f64, more in 0.0..1.0_f64, depth in 1.0..10.0_f64, deeper in 0.0..2.0_f64,
    ) {
        let at = |ocr: f64, depth: f64| kpa(only(uniform(json!({ "silt": { "from_index": {
            "plasticity_index_ratio": 0.25, "overconsolidation_ratio": ocr,
            "reference_depth": q(depth, "m") } } }))).undrained_strength);
        prop_assert!(at(ocr + more, depth) >= at(ocr, depth));
        near(at(ocr, depth + deeper), at(ocr, depth) * (depth + deeper) / depth, 1e-12);
    }

    #[test]
    fn denser_sand_is_stronger_and_deeper_sand_dilates_less(
        density in 0.1..0.95_f64, more in 0.0..0.05_f64, depth in 0.5..10.0_f64, deeper in 0.0..2.0_f64,
    ) {
        let at = |density: f64, depth: f64| deg(only(uniform(json!({ "sand": { "from_index": {
            "relative_density_ratio": density, "critical_friction_angle": q(31.0, "deg"),
            "reference_depth": q(depth, "m") } } }))).friction_angle);
        prop_assert!(at(density + more, depth) >= at(density, depth) * (1.0 - 1e-12));
        prop_assert!(at(density, depth + deeper) <= at(density, depth) * (1.0 + 1e-12));
        prop_assert!(at(density, depth) >= 31.0 * (1.0 - 1e-12));
    }
}
