//! What is found for a layer and told of it: corrections in force, limits that hold, kinds
//! that are given nothing, warnings, steps and methods.

use serde_json::{Value as Json, json};

use super::{deg, found, kpa, layer, m, near, only, q, uniform, used, warns, whole};
use crate::quantity::{AngleUnit, SoilStress, StressUnit};
use crate::soil::{GroundHazard, Strength};

fn sand(count: f64, more: &Json) -> Json {
    let mut spt = json!({ "blow_count": count, "form": "n60" });
    for (member, value) in more.as_object().expect("members") {
        spt[member] = value.clone();
    }
    uniform(json!({ "sand": { "from_spt": spt } }))
}

#[test]
fn a_raw_count_at_60_percent_is_n60() {
    let (with, work) = found(sand(18.0, &json!({ "form": "raw", "energy_ratio": 0.6 })));
    assert!(!warns(&work, "spt_energy_unknown"));
    let (without, work) = found(sand(18.0, &json!({ "form": "raw" })));
    assert!(warns(&work, "spt_energy_unknown"));
    assert!(used(&work, "spt_n60_correction"));
    let (plain, work) = found(sand(18.0, &json!({})));
    assert!(!used(&work, "spt_n60_correction"));
    for raw in [&with[0], &without[0]] {
        assert_eq!(raw.friction_angle, plain[0].friction_angle);
        assert_eq!(raw.penetration.unwrap().energy_ratio, Some(0.6));
    }
}

/// 20 kN/m3: at 1 m C_N would be sqrt(5) = 2.236; at 3 m it is sqrt(100/60) = 1.29099.
#[test]
fn the_overburden_correction_has_a_cap() {
    for (depth, cap, expected) in [
        (1.0, None, 1.7),
        (1.0, Some(2.0), 2.0),
        (3.0, None, 1.290_994),
        (3.0, Some(1.0), 1.0),
    ] {
        let mut more = json!({ "test_depth": q(depth, "m") });
        if let Some(cap) = cap {
            more["overburden_cap_factor"] = json!(cap);
        }
        let told = only(sand(10.0, &more)).penetration.unwrap();
        near(told.overburden_factor.unwrap(), expected, 1e-6);
        near(told.n1_60_count.unwrap(), 10.0 * expected, 1e-6);
    }
}

/// By hand: water at 2 m, 18.5 and 20 kN/m3, test at 7 m: s'_v 87.95; 25 is 20 below water;
/// C_N 1.066307; (N_1)_60 21.32613; 33.25225 deg.
#[test]
fn silty_sand_below_water_counts_less() {
    let mut wet = layer(
        0.0,
        12.0,
        18.5,
        json!({ "sand": { "from_spt": {
            "blow_count": 25, "form": "n60", "test_depth": q(7.0, "m"), "silty_below_water": true } } }),
    );
    wet["saturated_unit_weight"] = q(20.0, "kN_per_m3");
    let found = only(json!({ "layers": [wet], "water_depth": q(2.0, "m") }));
    near(found.effective_stress.get(StressUnit::KPa), 87.95, 1e-9);
    let told = found.penetration.unwrap();
    assert_eq!(told.silty_sand_count, Some(20.0));
    near(told.overburden_factor.unwrap(), 1.066_307, 1e-6);
    near(told.n1_60_count.unwrap(), 21.326_13, 1e-6);
    near(deg(found.friction_angle), 33.252_25, 1e-6);
}

#[test]
fn high_counts_and_angles_are_held_and_told() {
    let hatanaka = json!({ "correlation": "hatanaka_uchida_1996", "test_depth": q(5.0, "m") });
    let (all, work) = found(sand(70.0, &hatanaka));
    assert!(warns(&work, "blow_count_held") && warns(&work, "friction_angle_held"));
    let told = all[0].penetration.unwrap();
    near(told.n1_60_count.unwrap(), 70.0, 1e-12);
    assert_eq!(told.used_count, 60.0);
    // sqrt(15.4 x 60) + 20 = 50.3974
    near(deg(all[0].friction_angle_before_limit), 50.3974, 1e-5);
    near(deg(all[0].friction_angle), 45.0, 1e-12);
    let (all, work) = found(sand(40.0, &json!({})));
    assert!(!warns(&work, "blow_count_held") && !warns(&work, "friction_angle_held"));
    assert_eq!(all[0].friction_angle_before_limit, None);
}

#[test]
fn the_answer_tells_correlation_scatter_and_source() {
    let (all, work) = found(sand(20.0, &json!({})));
    let entry = &all[0];
    assert_eq!(entry.layer, "L1");
    assert_eq!(
        entry.correlation,
        "friction_spt_peck_hanson_thornburn_wolff"
    );
    assert!(used(&work, &entry.correlation) && used(&work, "spt_overburden_correction"));
    assert!(warns(&work, "strength_from_correlation"));
    assert!(entry.scatter.contains("scatter"));
    assert_eq!(entry.source.id, "peck_hanson_thornburn_wolff");
    let steps = work.trace.into_steps().unwrap();
    let symbols: Vec<_> = steps.iter().map(|s| s.symbol.as_ref()).collect();
    assert_eq!(symbols, ["C_N", "(N_1)_60", "phi'"]);
    assert!(
        steps
            .iter()
            .all(|s| s.subject.as_deref() == Some("layer L1"))
    );
}

#[test]
fn a_strength_that_is_sent_is_used_as_it_is() {
    let value = json!({ "layers": [
        layer(0.0, 2.0, 18.0, json!({ "silt": { "undrained_strength": q(40.0, "kPa") } })),
        layer(2.0, 4.0, 18.0, json!({ "gravel": { "friction_angle": q(36.0, "deg"), "cohesion": q(8.0, "kPa") } })),
        layer(4.0, 5.0, 18.0, json!({ "frozen": {} })),
        layer(5.0, 6.0, 18.0, json!({ "fill": {} })),
        layer(6.0, 7.0, 18.0, json!({ "organic": {} })),
        layer(7.0, 8.0, 18.0, json!({ "rock": {} })),
    ] });
    let (all, work) = found(value.clone());
    assert!(all.is_empty() && work.warnings.is_empty() && work.methods.is_empty());
    let strata = whole(value).strata();
    let strengths: Vec<_> = strata.layers.iter().map(|l| l.strength).collect();
    let kpa = |v| SoilStress::new(v, StressUnit::KPa);
    assert_eq!(strengths[0], Strength::Undrained { su: kpa(40.0) });
    let Strength::Drained { phi, cohesion } = strengths[1] else {
        panic!("gravel is drained");
    };
    near(phi.get(AngleUnit::Deg), 36.0, 1e-12);
    assert_eq!(cohesion, kpa(8.0));
    let none = [Strength::NoCredit; 3];
    assert_eq!(strengths[2..5], none);
    assert_eq!(strengths[5], Strength::Rock);
}

#[test]
fn engineered_fill_counts_as_its_soil_and_warns() {
    let (all, work) = found(uniform(json!({ "fill": { "engineered": {
        "record": "Report 7", "clay": { "from_stress_history": { "overconsolidation_ratio": 3 } } } } })));
    assert!(warns(&work, "engineered_fill_on_record"));
    // 120 kPa at mid-height: 120 x 0.22 x 3^0.8
    near(kpa(all[0].undrained_strength), 63.577_133, 1e-6);
    let told = all[0].stress_history.unwrap();
    assert_eq!((told.strength_ratio, told.exponent_factor), (0.22, 0.8));
    let strata = whole(uniform(json!({ "fill": { "engineered": {
        "record": "Report 7", "sand": { "friction_angle": q(33.0, "deg") } } } })))
    .strata();
    assert!(matches!(
        strata.layers[0].strength,
        Strength::Drained { .. }
    ));
}

#[test]
fn a_cone_that_contradicts_the_kind_is_told() {
    let of = |kind: &str, qt: f64, fs: f64| {
        let (all, work) = found(uniform(json!({ kind: { "from_cpt": {
            "reading": { "total_resistance": q(qt, "kPa"), "sleeve_friction": q(fs, "kPa") },
            "test_depth": q(5.0, "m") } } })));
        let index = all[0].cone.unwrap().behaviour_index_ratio.unwrap();
        (index, warns(&work, "behaviour_index_differs"))
    };
    let (index, differs) = of("sand", 1200.0, 60.0);
    assert!(index > 2.7 && differs);
    let (index, differs) = of("clay", 1200.0, 60.0);
    assert!(index > 2.7 && !differs);
    let (index, differs) = of("clay", 9000.0, 45.0);
    assert!(index < 2.5 && differs);
    let (index, differs) = of("sand", 9000.0, 45.0);
    assert!(index < 2.5 && !differs);
}

/// A mean stress that is not sent rests on a remembered form and says so.
#[test]
fn relative_density_tells_its_mean_stress() {
    let of = |more: Json| {
        let mut index = json!({
            "relative_density_ratio": 0.5, "critical_friction_angle": q(32.0, "deg"),
            "reference_depth": q(2.25, "m") });
        for (member, value) in more.as_object().unwrap() {
            index[member] = value.clone();
        }
        found(uniform(json!({ "sand": { "from_index": index } })))
    };
    let (all, work) = of(json!({}));
    assert!(warns(&work, "default_from_memory"));
    near(deg(all[0].friction_angle), 35.6042, 1e-5);
    let (all, work) = of(json!({ "mean_stress": q(400.0, "kPa") }));
    assert!(!warns(&work, "default_from_memory"));
    // 32 + 3 (0.5 (10 - ln 400) - 1)
    near(deg(all[0].friction_angle), 35.012_803, 1e-6);
}

#[test]
fn hazards_go_with_the_layer() {
    let mut with = layer(0.0, 12.0, 20.0, super::clay());
    with["hazards"] = json!(["sensitive", "liquefiable"]);
    let strata = whole(json!({ "layers": [with] })).strata();
    assert_eq!(
        strata.layers[0].hazards,
        [GroundHazard::Sensitive, GroundHazard::Liquefiable]
    );
    assert_eq!(strata.depth(), m(12.0));
}
