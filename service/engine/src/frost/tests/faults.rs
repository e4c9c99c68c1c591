//! What cannot be answered, and where the fault is said to be; and what is decided on the
//! limit.

use serde_json::{Value as Json, json};

use super::{answer, ask, pile, q, statuses, warned, with};
use crate::contract::CheckStatus::{Fail, NotEvaluated, Pass};
use crate::contract::Verdict;

fn faults(request: Json) -> Vec<(String, String)> {
    ask(request)
        .expect_err("a refusal")
        .issues
        .into_iter()
        .map(|i| (i.pointer, i.code.into_owned()))
        .collect()
}

fn one(pointer: &str, code: &str) -> Vec<(String, String)> {
    vec![(pointer.to_owned(), code.to_owned())]
}

#[test]
fn frost_below_the_tip_is_refused_with_both_depths() {
    let refusal = ask(pile(88.9, &[(0.3, 1.5)], 1.8)).expect_err("a refusal");
    assert_eq!(refusal.issues.len(), 1);
    let issue = &refusal.issues[0];
    assert_eq!(issue.pointer, "/frost/official_depth");
    assert_eq!(issue.code, "frost_below_tip");
    assert!(issue.detail.contains("1.8 m") && issue.detail.contains("1.5 m"));
    assert!(issue.limit.is_some());
}

#[test]
fn depths_out_of_order_are_all_found_at_once() {
    let mut request = pile(88.9, &[(0.3, 3.0), (0.3, 4.0)], 1.2);
    request["tip_depth"] = q(3.5, "m");
    request["head_depth"] = q(3.2, "m");
    request["frost"]["cold_surface_depth"] = q(1.0, "m");
    request["beam"] =
        json!({ "in_soil": { "underside_depth": q(3.1, "m"), "tributary_length": q(2.0, "m") } });
    request["uplift"] = json!({
        "bond": { "fine": {} },
        "contact_top_depth": q(0.5, "m"),
        "construction": { "standing_over_winter": { "contact_top_depth": q(3.4, "m") } }
    });
    let found = faults(request);
    let pointers: Vec<_> = found.iter().map(|(p, _)| p.as_str()).collect();
    assert_eq!(
        pointers,
        [
            "/beam/in_soil/underside_depth",
            "/head_depth",
            "/tip_depth",
            "/uplift/construction/standing_over_winter/contact_top_depth",
            "/uplift/contact_top_depth",
        ]
    );
    assert!(found.iter().all(|(_, code)| code == "depths_out_of_order"));
}

#[test]
fn a_cold_surface_below_the_top_helix_is_out_of_order() {
    let mut request = pile(88.9, &[(0.3, 1.0), (0.3, 4.0)], 1.2);
    request["frost"]["cold_surface_depth"] = q(1.5, "m");
    assert_eq!(
        faults(request),
        one("/frost/cold_surface_depth", "depths_out_of_order")
    );
}

#[test]
fn a_void_form_needs_a_heave_and_must_crush() {
    let base = pile(88.9, &[(0.3, 3.0)], 1.2);
    let form = |rest: Json| {
        let mut form = json!({ "nominal_thickness": q(150.0, "mm") });
        for (key, value) in rest.as_object().unwrap() {
            form[key] = value.clone();
        }
        with(base.clone(), "void_form", form)
    };
    assert_eq!(
        faults(form(json!({}))),
        one("/void_form", "void_form_without_heave")
    );
    assert_eq!(
        faults(form(json!({ "heave": {} }))),
        one("/void_form/heave", "void_form_without_heave")
    );
    let tested = |mm: f64| {
        form(json!({
            "heave": { "swell": { "given": { "movement": q(5.0, "mm") } } },
            "residual": { "tested": { "crushed_thickness": q(mm, "mm"), "reference": "test" } }
        }))
    };
    assert_eq!(
        faults(tested(143.0)),
        one(
            "/void_form/residual/tested/crushed_thickness",
            "crushed_not_below_nominal"
        )
    );
    assert!(ask(tested(142.5)).is_ok());
}

/// Exactly at the base of frost a helix is below it, by the rule for every limit; a hair
/// above it is in ground that freezes.
#[test]
fn a_helix_exactly_at_the_frost_line_passes() {
    let at = |depth: f64| {
        answer(with(
            pile(88.9, &[(0.2, depth), (0.2, 3.0)], 1.2),
            "embedment",
            json!({ "frost_margin": q(0.0, "m") }),
        ))
    };
    let on = at(1.2);
    assert_eq!(statuses(&on, "helix_below_frost"), [Pass, Pass]);
    assert_eq!(statuses(&on, "top_helix_frost_margin"), [Pass]);
    let above = at(1.2 - 1e-6);
    assert_eq!(statuses(&above, "helix_below_frost"), [Fail, Pass]);
    assert_eq!(above.verdict, Verdict::Reject);
    // 48 in of frost against 4 ft of depth must not fail by a last bit
    let mixed = answer(json!({
        "pile": {
            "shaft": { "round": { "outside_diameter": q(2.875, "in") } },
            "helices": [{ "diameter": q(8.0, "in"), "depth": q(5.0, "ft") }]
        },
        "frost": { "official_depth": q(48.0, "in") },
        "embedment": { "frost_margin": q(12.0, "in") }
    }));
    assert_eq!(statuses(&mixed, "top_helix_frost_margin"), [Pass]);
    assert_eq!(mixed.result.embedment.shortfall.si(), 0.0);
}

#[test]
fn without_data_for_uplift_nothing_is_accepted() {
    let base = pile(88.9, &[(0.3, 3.0)], 1.2);
    let none = answer(base.clone());
    assert_eq!(statuses(&none, "frost_uplift"), [NotEvaluated]);
    assert_eq!(none.verdict, Verdict::Provisional);
    let force_only = answer(with(base, "uplift", json!({ "bond": { "fine": {} } })));
    assert_eq!(statuses(&force_only, "frost_uplift"), [NotEvaluated]);
    assert!(statuses(&force_only, "frost_uplift_severe").is_empty());
    assert_eq!(force_only.verdict, Verdict::Provisional);
    let up = force_only.result.uplift.unwrap();
    assert!(up.factors.is_none() && up.tension.is_none() && up.tension_path_demand.is_none());
    assert!(up.stages.iter().all(|s| s.dead_load.is_none()));
}

#[test]
fn what_is_not_said_of_the_beam_is_warned_of() {
    let mut request = pile(88.9, &[(0.3, 3.0)], 1.2);
    request["uplift"] = json!({ "bond": { "fine": {} } });
    assert!(!warned(&answer(request.clone()), "beam_sides_not_stated"));
    request.as_object_mut().unwrap().remove("beam");
    assert!(warned(&answer(request), "beam_sides_not_stated"));
}

#[test]
fn a_given_tension_is_warned_of_where_a_helix_is_frozen_in() {
    let mut request = pile(88.9, &[(0.3, 1.0), (0.3, 3.0)], 1.2);
    request["uplift"] = json!({
        "bond": { "fine": {} },
        "resistance": {
            "design_basis": { "allowable_stress": {} },
            "dead_load": q(30.0, "kN"),
            "tension": { "given": { "ultimate": q(200.0, "kN"), "by": "analysis", "reference": "report" } }
        }
    });
    let a = answer(request);
    assert!(warned(&a, "given_tension_with_frozen_helix"));
    assert_eq!(statuses(&a, "helix_below_frost"), [Fail, Pass]);
}

#[test]
fn a_rating_that_is_missing_holds_the_verdict_back() {
    let a = answer(with(
        pile(88.9, &[(0.3, 3.0)], 1.2),
        "void_form",
        json!({
            "nominal_thickness": q(150.0, "mm"),
            "heave": { "frost": { "given": { "movement": q(50.0, "mm") } } },
            "wet_concrete": { "depth": q(0.75, "m") }
        }),
    ));
    assert_eq!(statuses(&a, "void_form_concrete_load"), [NotEvaluated]);
    assert!(a.result.void_form.unwrap().concrete_load.is_some());
}

#[test]
fn helices_are_judged_on_their_shaft_with_and_without_a_profile() {
    let mut request = pile(88.9, &[(0.3, 3.0), (0.35, 3.0)], 1.2);
    assert_eq!(
        faults(request.clone()),
        one("/pile/helices/1/depth", "helices_coincide")
    );
    request["uplift"] = json!({
        "bond": { "fine": {} },
        "resistance": {
            "design_basis": { "limit_states": {} },
            "dead_load": q(12.0, "kN"),
            "tension": { "from_soil": {
                "profile": { "layers": [{
                    "top": q(0.5, "m"), "bottom": q(2.0, "m"), "unit_weight": q(18.0, "kN_per_m3"),
                    "soil": { "clay": { "undrained_strength": q(50.0, "kPa") } }
                }] },
                "methods": { "drained_bearing": "terzaghi_1943", "width_term": "include" }
            } }
        }
    });
    let tension = "/uplift/resistance/tension/from_soil";
    let want = [
        ("/pile/helices/0/depth".to_owned(), "helix_below_profile"),
        ("/pile/helices/1/depth".to_owned(), "helices_coincide"),
        ("/pile/helices/1/depth".to_owned(), "helix_below_profile"),
        (
            format!("{tension}/methods/width_term"),
            "no_closed_width_factor",
        ),
        (format!("{tension}/profile/layers/0/top"), "layer_gap"),
    ];
    let found = faults(request);
    assert_eq!(found.len(), want.len(), "{found:?}");
    for ((pointer, code), (at, what)) in found.iter().zip(&want) {
        assert_eq!((pointer, code.as_str()), (at, *what));
    }
    let narrow = pile(320.0, &[(0.3, 3.0)], 1.2);
    assert_eq!(
        faults(narrow),
        one("/pile/helices/0/diameter", "helix_not_wider_than_shaft")
    );
}
