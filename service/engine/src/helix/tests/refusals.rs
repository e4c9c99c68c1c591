//! What is refused, where and why: the physical faults one by one, and several at once.

use serde_json::{Value as Json, json};

use super::*;
use crate::contract::{Calculation, Issue};
use crate::source::Status;

fn refused(request: Json) -> Refusal {
    refusable(request).expect_err("a refusal")
}

fn one_helix(layers: &[(f64, f64, Json)], d: f64, z: f64, more: Json) -> Json {
    let mut request = json!({ "soil": soil(layers), "pile": pile(0.073, &[(d, z)]) });
    let map = request.as_object_mut().unwrap();
    for (key, value) in more.as_object().unwrap() {
        map.insert(key.clone(), value.clone());
    }
    request
}

fn rock() -> Json {
    json!({ "rock": {} })
}

#[test]
fn rock_below_a_helix_is_refused_in_compression_and_not_in_tension() {
    let layers = [(5.0, 18.0, clay(60.0)), (9.0, 24.0, rock())];
    let r = refused(one_helix(&layers, 0.3, 4.6, json!({})));
    assert_eq!(codes(&r), [("/pile/helices/0/depth", "helix_in_rock")]);
    let issue = &r.issues[0];
    assert!(issue.limit.is_some());
    assert_eq!(issue.source.as_ref().unwrap().status, Status::Secondary);
    assert!(
        refusable(one_helix(
            &layers,
            0.3,
            4.6,
            json!({ "directions": "tension" })
        ))
        .is_ok()
    );
    assert!(
        refusable(one_helix(&layers, 0.3, 4.4, json!({}))).is_ok(),
        "zone ends on the rock"
    );
    // on the rock, whatever the depth of the zone
    let touching = json!({ "methods": { "bearing_zone_ratio": 0 } });
    let r = refused(one_helix(&layers, 0.3, 5.0, touching));
    assert_eq!(codes(&r), [("/pile/helices/0/depth", "helix_in_rock")]);
}

#[test]
fn a_pile_through_rock_is_refused_in_both_directions() {
    let layers = [
        (2.0, 18.0, clay(60.0)),
        (3.0, 24.0, rock()),
        (12.0, 18.0, clay(60.0)),
    ];
    for direction in ["both", "compression", "tension"] {
        let r = refused(one_helix(
            &layers,
            0.3,
            6.0,
            json!({ "directions": direction }),
        ));
        assert!(
            r.issues.iter().all(|i| i.code == "helix_in_rock"),
            "{direction}"
        );
    }
}

#[test]
fn soil_must_be_known_where_a_helix_bears() {
    let layers = [(6.0, 18.0, clay(60.0))];
    let r = refused(one_helix(&layers, 0.3, 5.5, json!({})));
    assert_eq!(
        codes(&r),
        [("/pile/helices/0/depth", "profile_ends_in_zone")]
    );
    assert!(refusable(one_helix(&layers, 0.3, 5.4, json!({}))).is_ok());
    assert!(
        refusable(one_helix(
            &layers,
            0.3,
            6.0,
            json!({ "directions": "tension" })
        ))
        .is_ok()
    );
    let touching = json!({ "methods": { "bearing_zone_ratio": 0 } });
    let r = refused(one_helix(&layers, 0.3, 6.0, touching.clone()));
    assert_eq!(
        codes(&r),
        [("/pile/helices/0/depth", "profile_ends_in_zone")]
    );
    assert!(refusable(one_helix(&layers, 0.3, 5.9, touching)).is_ok());
    // the width term needs one diameter more than a zone of none
    let width = json!({ "methods": { "bearing_zone_ratio": 0, "width_term": "include" } });
    let r = refused(one_helix(&layers, 0.3, 5.9, width));
    assert_eq!(
        codes(&r),
        [("/pile/helices/0/depth", "profile_ends_in_zone")]
    );
    let r = refused(one_helix(&layers, 0.3, 6.5, json!({})));
    assert_eq!(
        codes(&r),
        [("/pile/helices/0/depth", "helix_below_profile")]
    );
}

#[test]
fn helices_in_one_place_or_narrower_than_the_shaft_are_refused() {
    let ground = soil(&[(12.0, 18.0, clay(60.0))]);
    let r = refused(
        json!({ "soil": ground, "pile": pile(0.2, &[(0.3, 5.0), (0.35, 5.005), (0.2, 7.0)]) }),
    );
    assert_eq!(
        codes(&r),
        [
            ("/pile/helices/1/depth", "helices_coincide"),
            ("/pile/helices/2/diameter", "helix_not_wider_than_shaft"),
        ]
    );
    let labels = json!({ "shaft": round(0.073, "m"), "helices": [
        { "label": "2", "diameter": q(0.3, "m"), "depth": q(4.0, "m") },
        { "diameter": q(0.3, "m"), "depth": q(5.0, "m") },
    ] });
    let r = refused(json!({ "soil": ground, "pile": labels }));
    assert_eq!(codes(&r), [("/pile/helices/1", "duplicate_label")]);
}

#[test]
fn a_shaft_that_cannot_be_is_refused() {
    let ground = soil(&[(12.0, 18.0, clay(60.0))]);
    let ask = |shaft: Json, inches: f64| {
        let plate = json!([{ "diameter": q(inches, "in"), "depth": q(5.0, "m") }]);
        codes(&refused(
            json!({ "soil": ground, "pile": { "shaft": shaft, "helices": plate } }),
        ))
        .iter()
        .map(|(p, c)| format!("{p} {c}"))
        .collect::<Vec<_>>()
    };
    let thick =
        json!({ "round": { "outside_diameter": q(2.0, "in"), "wall_thickness": q(1.1, "in") } });
    assert_eq!(
        ask(thick, 8.0),
        ["/pile/shaft/round/wall_thickness shaft_wall_too_thick"]
    );
    for diagonal in [4.9, 7.2] {
        let square = json!({ "square": { "side": q(5.0, "in"), "diagonal": q(diagonal, "in") } });
        assert_eq!(
            ask(square, 12.0),
            ["/pile/shaft/square/diagonal shaft_diagonal_impossible"],
            "{diagonal}"
        );
    }
    // wider than the diagonal sent, yet with less area than the square
    let round_corners = json!({ "square": { "side": q(5.0, "in"), "diagonal": q(5.0, "in") } });
    assert_eq!(
        ask(round_corners, 5.1),
        ["/pile/helices/0/diameter helix_not_wider_than_shaft"]
    );
}

#[test]
fn methods_that_do_not_go_together_are_refused() {
    let ground = soil(&[(12.0, 18.0, sand(32.0))]);
    let r = refused(json!({
        "soil": ground, "pile": pile(0.073, &[(0.3, 5.0)]),
        "methods": { "drained_bearing": "terzaghi_1943", "width_term": "include" },
    }));
    assert_eq!(
        codes(&r),
        [("/methods/width_term", "no_closed_width_factor")]
    );
    let square = json!({ "shaft": { "square": { "side": q(1.5, "in") } },
        "helices": [{ "diameter": q(10.0, "in"), "depth": q(4.0, "m") }] });
    let r = refused(json!({
        "soil": ground, "pile": square, "methods": { "shaft_adhesion": { "alpha": {} } },
    }));
    assert_eq!(
        codes(&r),
        [("/methods/shaft_adhesion/alpha", "adhesion_on_square_shaft")]
    );
}

#[test]
fn bases_and_demands_that_do_not_suit_are_refused() {
    let ask = |basis: Json, demand: Json, directions: &str| {
        let layers = [(12.0, 18.0, clay(60.0))];
        let more = json!({ "design_basis": basis, "demand": demand, "directions": directions });
        codes(&refused(one_helix(&layers, 0.3, 5.0, more)))
            .iter()
            .map(|(p, c)| (p.to_string(), c.to_string()))
            .collect::<Vec<_>>()
    };
    let load = |level: &str| json!({ "level": level, "compression": q(5.0, "kN") });
    let one = |p: &str, c: &str| vec![(p.to_owned(), c.to_owned())];
    let allowable = json!({ "allowable_stress": {} });
    let limit = json!({ "limit_states": {} });
    let mixed = one("/demand/level", "basis_mixed");
    assert_eq!(ask(allowable.clone(), load("factored"), "both"), mixed);
    assert_eq!(ask(limit, load("allowable"), "both"), mixed);
    assert_eq!(
        ask(Json::Null, load("allowable"), "both"),
        one("", "missing_member")
    );
    assert_eq!(
        ask(allowable.clone(), json!({ "level": "allowable" }), "both"),
        one("/demand", "missing_member")
    );
    assert_eq!(
        ask(allowable, load("allowable"), "tension"),
        one("/demand/compression", "demand_not_computed")
    );
    let twice =
        json!({ "allowable_stress": { "tension_safety_factor": 2, "uplift_clause": "helical" } });
    assert_eq!(
        ask(twice, load("allowable"), "both"),
        one(
            "/design_basis/allowable_stress/tension_safety_factor",
            "tension_factor_twice"
        )
    );
}

#[test]
fn every_fault_of_the_physics_is_told_at_once() {
    let mut ground = soil(&[(4.0, 18.0, clay(60.0)), (12.0, 18.0, clay(60.0))]);
    ground["layers"][1]["top"] = q(4.5, "m");
    let r = refused(json!({
        "soil": ground, "pile": pile(0.073, &[(0.3, 5.0), (0.3, 20.0)]),
        "methods": { "drained_bearing": "terzaghi_1943", "width_term": "include" },
        "design_basis": { "allowable_stress": {} },
        "demand": { "level": "factored", "compression": q(5.0, "kN") },
    }));
    assert_eq!(
        codes(&r),
        [
            ("/demand/level", "basis_mixed"),
            ("/methods/width_term", "no_closed_width_factor"),
            ("/pile/helices/1/depth", "helix_below_profile"),
            ("/soil/layers/1/top", "layer_gap"),
        ]
    );
}

#[test]
fn lengths_of_lists_are_found_first() {
    let found = |helices: usize, layers: usize| {
        let list: Vec<(f64, f64)> = (0..helices).map(|i| (0.3, 1.0 + i as f64 * 1e-3)).collect();
        let layers: Vec<_> = (0..layers)
            .map(|i| (0.1 * (i + 1) as f64, 18.0, clay(60.0)))
            .collect();
        let request: Request =
            serde_json::from_value(json!({ "soil": soil(&layers), "pile": pile(0.073, &list) }))
                .unwrap();
        let mut issues: Vec<Issue> = Vec::new();
        HelixCapacity::lengths(&request, &mut issues);
        issues
            .iter()
            .map(|i| (i.pointer.clone(), i.code.to_string()))
            .collect::<Vec<_>>()
    };
    let pair = |p: &str, c: &str| (p.to_owned(), c.to_owned());
    assert_eq!(found(8, 60), []);
    assert_eq!(found(9, 1), [pair("/pile/helices", "list_too_long")]);
    assert_eq!(found(10_000, 1), [pair("/pile/helices", "list_too_long")]);
    assert_eq!(
        found(0, 61),
        [
            pair("/soil/layers", "list_too_long"),
            pair("/pile/helices", "list_too_short"),
        ]
    );
}

#[test]
fn a_saturated_weight_no_soil_can_have_is_refused() {
    let mut ground = soil(&[(12.0, 12.0, clay(60.0))]);
    ground["layers"][0]["saturated_unit_weight"] = q(22.0, "kN_per_m3");
    let r = refused(json!({ "soil": ground, "pile": pile(0.073, &[(0.3, 5.0)]) }));
    assert_eq!(
        codes(&r),
        [(
            "/soil/layers/0/saturated_unit_weight",
            "layer_saturated_too_heavy"
        )]
    );
}

#[test]
fn another_calculation_can_ask_for_one_direction_at_its_own_pointer() {
    let request: Request = serde_json::from_value(json!({
        "soil": soil(&[(5.0, 18.0, clay(60.0)), (9.0, 24.0, rock())]),
        "pile": pile(0.073, &[(0.3, 6.0)]),
    }))
    .unwrap();
    let mut work = Work::default();
    let refusal = crate::helix::axial_resistance(
        &request.soil.strata(),
        &request.pile.shaft,
        &request.pile.helices,
        crate::helix::AxialDirection::Tension,
        &crate::helix::HelixMethods::default(),
        "/below",
        &mut work,
    )
    .unwrap_err();
    assert_eq!(
        codes(&refusal),
        [("/below/helices/0/depth", "helix_in_rock")]
    );
}
