//! Faults of a profile: each code where it belongs, and all of a look at once.

use serde_json::{Value as Json, json};

use super::{clay, layer, profile, q, uniform};

#[track_caller]
fn codes(value: Json) -> Vec<(String, String)> {
    let mut issues = profile(value).faults("");
    crate::contract::sort_issues(&mut issues);
    let pair = |i: crate::contract::Issue| (i.pointer, i.code.into_owned());
    issues.into_iter().map(pair).collect()
}

#[track_caller]
fn refused(value: Json, expected: &[(&str, &str)]) {
    let found = codes(value);
    let found: Vec<_> = found
        .iter()
        .map(|(p, c)| (p.as_str(), c.as_str()))
        .collect();
    assert_eq!(found, expected);
}

fn weighed(members: Json) -> Json {
    let mut layer = layer(0.0, 12.0, 1.0, clay());
    layer["unit_weight"] = Json::Null;
    for (member, value) in members.as_object().expect("members") {
        layer[member] = value.clone();
    }
    json!({ "layers": [layer] })
}

fn kn(weight: f64) -> Json {
    q(weight, "kN_per_m3")
}

#[test]
fn every_fault_of_the_layering_is_found_at_once() {
    let value = json!({ "layers": [
        layer(1.0, 4.0, 18.0, clay()), layer(5.0, 8.0, 18.0, clay()), layer(7.0, 6.0, 18.0, clay()),
    ] });
    let found: Vec<_> = codes(value).into_iter().map(|(_, code)| code).collect();
    assert_eq!(
        found,
        ["layer_gap", "layer_gap", "layer_inverted", "layer_overlap"]
    );
}

#[test]
fn weights_are_sent_one_way() {
    refused(weighed(json!({})), &[("/layers/0", "unit_weight_not_one")]);
    let both =
        json!({ "unit_weight": kn(18.0), "dry_unit_weight": kn(15.0), "water_content_ratio": 0.2 });
    refused(weighed(both), &[("/layers/0", "unit_weight_not_one")]);
    let halves = json!({ "unit_weight": kn(18.0), "water_content_ratio": 0.2 });
    refused(weighed(halves), &[("/layers/0", "dry_weight_unpaired")]);
    let grains = json!({ "unit_weight": kn(18.0), "specific_gravity_ratio": 2.7 });
    refused(weighed(grains), &[("/layers/0", "dry_weight_unpaired")]);
    let twice = json!({ "dry_unit_weight": kn(15.0), "water_content_ratio": 0.2,
        "saturated_unit_weight": kn(19.0), "specific_gravity_ratio": 2.7 });
    refused(
        weighed(twice),
        &[("/layers/0/specific_gravity_ratio", "saturated_weight_twice")],
    );
}

#[test]
fn the_saturated_weight_of_dry_soil_is_asked_for_where_there_is_water() {
    let dry = json!({ "dry_unit_weight": kn(15.0), "water_content_ratio": 0.2 });
    refused(weighed(dry.clone()), &[]);
    let mut wet = weighed(dry.clone());
    wet["water_depth"] = q(11.0, "m");
    refused(wet, &[("/layers/0", "saturated_weight_unknown")]);
    let mut below = weighed(dry);
    below["water_depth"] = q(12.0, "m");
    refused(below, &[]);
}

/// 17 kN/m3 with grains of 2.7: full at 9.81/17 - 1/2.7 = 0.2067; 26 kN/m3 leaves no pores at
/// 2.6 (25.5 kN/m3).
#[test]
fn dry_soil_has_room_for_its_water() {
    let of = |dry: f64, w: f64, gs: f64| {
        weighed(
            json!({ "dry_unit_weight": kn(dry), "water_content_ratio": w, "specific_gravity_ratio": gs }),
        )
    };
    let fault = [("/layers/0/dry_unit_weight", "dry_weight_impossible")];
    refused(of(17.0, 0.2066, 2.7), &[]);
    refused(of(17.0, 0.2068, 2.7), &fault);
    refused(of(24.0, 0.0, 2.4), &fault);
}

#[test]
fn water_is_sent_one_way_and_downward() {
    let mut value = uniform(clay());
    value["water_depth"] = q(2.0, "m");
    value["pore_pressures"] = json!([
        { "depth": q(2.0, "m"), "pressure": q(5.0, "kPa") },
        { "depth": q(2.0, "m"), "pressure": q(9.0, "kPa") },
    ]);
    refused(
        value,
        &[
            ("/pore_pressures", "water_given_twice"),
            (
                "/pore_pressures/0/pressure",
                "pore_pressure_starts_above_zero",
            ),
            ("/pore_pressures/1/depth", "pore_pressures_not_downward"),
        ],
    );
}

#[test]
fn all_faults_of_the_strengths_are_found_at_once() {
    let value = json!({ "layers": [
        layer(0.0, 1.0, 18.0, json!({ "clay": {} })),
        layer(1.0, 2.0, 18.0, json!({ "silt": { "undrained_strength": q(40.0, "kPa"),
            "from_stress_history": { "overconsolidation_ratio": 2 } } })),
        layer(2.0, 3.0, 18.0, json!({ "clay": { "from_spt": { "blow_count": 8, "form": "n60",
            "energy_ratio": 0.6, "test_depth": q(5.0, "m") } } })),
        layer(3.0, 4.0, 18.0, json!({ "clay": { "from_spt": { "blow_count": 8, "form": "raw",
            "plasticity_index_ratio": 0.61 } } })),
        layer(4.0, 5.0, 18.0, json!({ "gravel": { "from_cpt": { "reading": {
            "total_resistance": q(5.0, "MPa"), "area_ratio": 0.8 } } } })),
        layer(5.0, 6.0, 18.0, json!({ "sand": { "from_spt": { "blow_count": 8, "form": "n1_60",
            "overburden_cap_factor": 2, "silty_below_water": true,
            "correlation": "shioi_fukui_1982_roads" } } })),
        layer(6.0, 7.0, 18.0, json!({ "fill": { "engineered": { "record": "Report 7" } } })),
    ] });
    refused(
        value,
        &[
            ("/layers/0/soil/clay", "strength_not_one"),
            ("/layers/1/soil/silt", "strength_not_one"),
            ("/layers/2/soil/clay/from_spt", "plasticity_index_needed"),
            (
                "/layers/2/soil/clay/from_spt/energy_ratio",
                "spt_member_unused",
            ),
            (
                "/layers/2/soil/clay/from_spt/test_depth",
                "test_outside_layer",
            ),
            (
                "/layers/3/soil/clay/from_spt/plasticity_index_ratio",
                "plasticity_index_outside",
            ),
            (
                "/layers/4/soil/gravel/from_cpt",
                "correlation_not_for_gravel",
            ),
            (
                "/layers/4/soil/gravel/from_cpt/reading",
                "cone_resistance_not_one",
            ),
            ("/layers/5/soil/sand/from_spt/form", "spt_form_unfit"),
            (
                "/layers/5/soil/sand/from_spt/overburden_cap_factor",
                "spt_member_unused",
            ),
            (
                "/layers/5/soil/sand/from_spt/silty_below_water",
                "spt_member_unused",
            ),
            ("/layers/6/soil/fill/engineered", "engineered_fill_not_one"),
        ],
    );
}

#[test]
fn a_cap_without_an_overburden_correction_is_unused() {
    let of = |correlation: &str| {
        uniform(
            json!({ "sand": { "from_spt": { "blow_count": 8, "form": "n60",
            "overburden_cap_factor": 2, "correlation": correlation } } }),
        )
    };
    let pointer = "/layers/0/soil/sand/from_spt/overburden_cap_factor";
    refused(of("kulhawy_mayne_1990"), &[(pointer, "spt_member_unused")]);
    refused(of("peck_hanson_thornburn_wolff"), &[]);
}

#[test]
fn what_tests_come_to_is_judged_together() {
    let value = json!({ "layers": [
        layer(0.0, 4.0, 18.0, json!({ "sand": { "from_spt": { "blow_count": 20, "form": "n60",
            "silty_below_water": true } } })),
        layer(4.0, 8.0, 18.0, json!({ "clay": { "from_cpt": { "reading": {
            "total_resistance": q(100.0, "kPa") } } } })),
        // 1,000/15 above s_v of 180 is within the range, 18 MPa is not
        layer(8.0, 12.0, 18.0, json!({ "clay": { "from_cpt": { "reading": {
            "total_resistance": q(18.0, "MPa") } } } })),
    ] });
    refused(
        value,
        &[
            (
                "/layers/0/soil/sand/from_spt/silty_below_water",
                "spt_silty_above_water",
            ),
            (
                "/layers/1/soil/clay/from_cpt/reading",
                "cone_below_overburden",
            ),
            ("/layers/2/soil/clay/from_cpt", "derived_strength_outside"),
        ],
    );
}

/// 0.2 m at 18 kN/m3: 3.6 kPa x 0.22 is 0.79 kPa of strength; at the surface there is none.
#[test]
fn a_strength_without_stress_is_refused() {
    let of = |depth: f64| {
        json!({ "layers": [layer(0.0, 12.0, 18.0, json!({ "clay": { "from_stress_history": {
            "overconsolidation_ratio": 1, "reference_depth": q(depth, "m") } } }))] })
    };
    let pointer = "/layers/0/soil/clay/from_stress_history";
    refused(of(0.2), &[(pointer, "derived_strength_outside")]);
    refused(of(0.3), &[]);
    let pointer = format!("{pointer}/reference_depth");
    refused(of(0.0), &[(&pointer, "test_outside_layer")]);
}
