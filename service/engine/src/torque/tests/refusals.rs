//! Refusals: what cannot be correlated, what is missing, all faults at once with their
//! pointers, limits and sources.

use serde_json::json;

use super::*;
use crate::contract::Issue;
use crate::torque::codes;

fn issues(request: Json) -> Vec<Issue> {
    refusable(request).expect_err("a refusal").issues
}

fn installed(conditions: Json) -> Json {
    json!({
        "shaft": round(2.875), "torque_factor": { "listed_shaft": {} },
        "embedment": { "top_helix_depth": q(14.0, "ft"), "largest_helix_diameter": q(14.0, "in") },
        "installed": { "reading": gauge(2800.0, "ft_lbf"), "conditions": conditions },
    })
}

#[test]
fn a_shaft_outside_the_published_range_is_refused_with_limit_and_source() {
    for (choice, shaft, pointer, source) in [
        (
            "listed_shaft",
            round(5.5),
            "/shaft/round/outside_diameter",
            "ac358_kt_effective_diameter",
        ),
        (
            "effective_diameter",
            round(5.5),
            "/shaft/round/outside_diameter",
            "ac358_kt_effective_diameter",
        ),
        (
            "effective_diameter",
            round(2.0),
            "/shaft/round/outside_diameter",
            "ac358_kt_effective_diameter",
        ),
        (
            "effective_diameter",
            square(3.1),
            "/shaft/square/side",
            "ac358_kt_effective_diameter",
        ),
        (
            "perko_2009",
            square(1.4),
            "/shaft/square/side",
            "ac358_kt_effective_diameter",
        ),
        (
            "livneh_2008",
            round(2.875),
            "/shaft/round/outside_diameter",
            "livneh_el_naggar_2008",
        ),
        (
            "livneh_2008",
            square(3.0),
            "/shaft/square/side",
            "livneh_el_naggar_2008",
        ),
        (
            "hoyt_clemence_1989",
            round(4.5),
            "/shaft/round/outside_diameter",
            "hoyt_clemence_1989",
        ),
        (
            "hoyt_clemence_1989",
            square(3.0),
            "/shaft/square/side",
            "hoyt_clemence_1989",
        ),
    ] {
        let found = issues(json!({ "shaft": shaft, "torque_factor": { (choice): {} } }));
        assert_eq!(found.len(), 1, "{choice}");
        assert_eq!(found[0].code, "shaft_outside_torque_factor_range");
        assert_eq!(found[0].pointer, pointer);
        assert!(found[0].limit.as_ref().unwrap().contains("in"));
        assert_eq!(found[0].source.as_ref().unwrap().id, source);
    }
    // the ends themselves are inside, in metric too
    for shaft in [
        json!({ "square": { "side": q(38.0, "mm") } }),
        square(3.0),
        json!({ "round": { "outside_diameter": q(60.3, "mm") } }),
        round(4.5),
    ] {
        answer(json!({ "shaft": shaft, "torque_factor": { "effective_diameter": {} } }));
    }
    // with the caller's own factor any shaft goes
    answer(
        json!({ "shaft": round(8.0), "torque_factor": { "own": { "compression": q(10.0, "per_m"), "reference": "tests" } } }),
    );
}

#[test]
fn a_torque_that_does_not_come_from_steady_turning_is_refused() {
    let code = |conditions: Json| issues(installed(conditions))[0].clone();
    let obstruction = code(json!({ "stopped_by_obstruction": true }));
    assert_eq!(obstruction.code, "torque_at_obstruction");
    assert_eq!(
        obstruction.pointer,
        "/installed/conditions/stopped_by_obstruction"
    );
    let spin = code(json!({ "advance_per_turn": q(60.0, "mm"), "helix_pitch": q(76.2, "mm") }));
    assert_eq!(spin.code, "spin_out");
    // 3 x 14 in = 3.5 ft
    let short = code(json!({ "steady_length": q(3.49, "ft") }));
    assert_eq!(short.code, "torque_plateau_too_short");
    assert_eq!(short.source.unwrap().id, "ac358_torque_averaging");
    answer(installed(json!({ "steady_length": q(3.5, "ft") })));
    // of a smaller helix, 3 ft
    let mut small = installed(json!({ "steady_length": q(2.9, "ft") }));
    small["embedment"]["largest_helix_diameter"] = q(8.0, "in");
    assert_eq!(
        issues(small.clone())[0].source.as_ref().unwrap().id,
        "ac358_averaging_3_ft"
    );
    small["installed"]["conditions"]["steady_length"] = q(36.0, "in");
    let found = answer(small);
    near(
        found
            .result
            .installed
            .as_ref()
            .unwrap()
            .averaging_length
            .unwrap()
            .si(),
        0.9144,
        1e-10,
    );
}

#[test]
fn all_faults_come_at_once_and_sorted() {
    let mut request =
        installed(json!({ "stopped_by_obstruction": true, "advance_per_turn": q(60.0, "mm") }));
    request["shaft"] = round(5.5);
    request["demand"] = json!({ "level": "factored", "compression": q(10.0, "kip") });
    request["design_basis"] = json!({ "allowable_stress": {} });
    request["drive"] = json!({ "displacement": q(100.0, "in3_per_rev"), "displacement_includes_gear": true,
        "gear_ratio": 2.0, "mechanical_efficiency_ratio": 0.9,
        "working_pressures": { "inlet": q(100.0, "psi"), "no_load": q(120.0, "psi") } });
    let found: Vec<_> = issues(request)
        .into_iter()
        .map(|i| (i.pointer, i.code.into_owned()))
        .collect();
    let expected = [
        ("/demand/level", "basis_mixed"),
        ("/drive/gear_ratio", "gear_counted_twice"),
        ("/drive/working_pressures", "no_pressure_difference"),
        ("/installed/conditions", "missing_member"),
        (
            "/installed/conditions/stopped_by_obstruction",
            "torque_at_obstruction",
        ),
        (
            "/shaft/round/outside_diameter",
            "shaft_outside_torque_factor_range",
        ),
    ];
    assert_eq!(found, expected.map(|(p, c)| (p.to_owned(), c.to_owned())));
}

#[test]
fn what_is_missing_is_named_at_its_parent() {
    for (request, pointer, name) in [
        (
            json!({ "torque_factor": { "listed_shaft": {} } }),
            "",
            "`shaft`",
        ),
        (
            json!({ "installed": { "reading": gauge(1.0, "kN_m") } }),
            "",
            "`torque_factor`",
        ),
        (
            json!({ "shaft": round(2.875), "torque_factor": { "listed_shaft": {} }, "demand": { "level": "allowable", "compression": q(1.0, "kN") } }),
            "",
            "`design_basis`",
        ),
        (
            json!({ "shaft": round(2.875), "torque_factor": { "listed_shaft": {} }, "installed": { "reading": { "pressure": { "inlet": q(9.0, "MPa") } } } }),
            "",
            "`drive`",
        ),
        (
            json!({ "shaft": round(2.875), "torque_factor": { "listed_shaft": {} }, "installed": { "reading": gauge(1.0, "kN_m"), "conditions": { "steady_length": q(1.0, "m") } } }),
            "",
            "`embedment`",
        ),
        (
            json!({ "torsion": { "section": { "yield_strength": q(345.0, "MPa") } } }),
            "",
            "`shaft`",
        ),
        (
            json!({ "shaft": round(2.875), "torsion": { "section": { "yield_strength": q(345.0, "MPa") } } }),
            "/shaft/round",
            "`wall_thickness`",
        ),
        (
            json!({ "torque_factor": { "own": { "reference": "tests" } } }),
            "/torque_factor/own",
            "`compression`",
        ),
    ] {
        let found = issues(request);
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(
            (found[0].code.as_ref(), found[0].pointer.as_str()),
            ("missing_member", pointer)
        );
        assert!(found[0].detail.contains(name), "{found:?}");
    }
}

#[test]
fn nothing_asked_is_refused() {
    for request in [
        json!({}),
        json!({ "label": "A1", "shaft": round(2.875) }),
        json!({ "torsion": { "rating": q(5000.0, "ft_lbf") } }),
        json!({ "drive": { "displacement": q(100.0, "in3_per_rev"), "mechanical_efficiency_ratio": 0.9 } }),
    ] {
        assert_eq!(issues(request)[0].code, "torque_nothing_asked");
    }
    // a rating with a drive head asks for its pressure
    answer(json!({ "torsion": { "rating": q(5000.0, "ft_lbf") },
        "drive": { "displacement": q(100.0, "in3_per_rev"), "mechanical_efficiency_ratio": 0.9 } }));
}

#[test]
fn numbers_out_of_range_do_not_pass() {
    for (pointer, bad) in [
        ("/installed/reading/gauge/torque", q(-1.0, "ft_lbf")),
        ("/installed/reading/gauge/torque", q(1e9, "ft_lbf")),
        ("/installed/gauge_accuracy_ratio", json!(0.6)),
        ("/installed/gauge_accuracy_ratio", json!(-0.1)),
    ] {
        let mut request = json!({
            "shaft": round(2.875), "torque_factor": { "listed_shaft": {} },
            "installed": { "reading": gauge(2800.0, "ft_lbf"), "gauge_accuracy_ratio": 0.1 },
        });
        *request.pointer_mut(pointer).unwrap() = bad;
        let request: Request = serde_json::from_value(request).unwrap();
        assert!(request.validate().is_err(), "{pointer}");
    }
}

/// Every refusal, warning and check of this calculation is produced by some request of these
/// tests or of the examples; here the warnings that no other test names.
#[test]
fn the_remaining_warnings() {
    let fast = answer(installed(
        json!({ "advance_per_turn": q(92.0, "mm"), "helix_pitch": q(76.2, "mm") }),
    ));
    assert!(warns(&fast, "advance_above_pitch"));
    assert!(warns(&fast, "torque_conditions_not_stated"));
    let mut shallow = installed(json!({}));
    shallow["embedment"]["top_helix_depth"] = q(4.0, "ft");
    assert!(warns(&answer(shallow), "top_helix_shallow"));
    let mut bare = installed(json!({}));
    bare.as_object_mut().unwrap().remove("embedment");
    bare["shaft"] = json!({ "square": { "side": q(1.5, "in") } });
    bare["torsion"] = json!({ "section": { "yield_strength": q(36.0, "ksi") } });
    let found = answer(bare);
    assert!(warns(&found, "tension_depth_not_stated"));
    // 0.208 x 1.5^3 x 21.6 ksi = 15.16 kip in = 1,264 ft lbf
    assert!(warns(&found, "torque_above_section"));
    assert!(found.checks.is_empty());
    let complete = answer(installed(
        json!({ "stopped_by_obstruction": false, "steady_length": q(4.0, "ft"),
        "advance_per_turn": q(76.0, "mm"), "helix_pitch": q(76.2, "mm") }),
    ));
    assert!(!warns(&complete, "torque_conditions_not_stated"));
}

#[test]
fn every_code_of_this_calculation_has_a_text() {
    for text in codes::refusals::ALL
        .iter()
        .map(|d| d.text)
        .chain(codes::warnings::ALL.iter().map(|d| d.text))
        .chain(codes::checks::ALL.iter().map(|d| d.text))
        .chain(codes::methods::ALL.iter().map(|d| d.text))
    {
        assert!(text.ends_with('.') && text.len() > 20, "{text}");
    }
    assert!(codes::methods::ALL.iter().all(|m| !m.references.is_empty()));
}
