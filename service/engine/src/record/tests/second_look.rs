//! Rules at their edges: units on the edge of the window, a stone in a rise, silence at the end,
//! what else is judged beside the torque.

use super::rules::{judged, passes, trips};
use super::*;

/// Rows every foot, the last one N ft: a slow row on the upper edge of the window, N - 3 ft, is
/// not in it, in feet and in metres.
#[test]
fn a_row_on_the_edge_of_the_window_is_out_of_it_in_any_unit() {
    for last in 17..25 {
        let rows = |unit: &str, per_foot: f64| {
            let row = |ft: i32| {
                let slow = if ft == last - 3 { 2.0 } else { 2.8 };
                json!([f64::from(ft) * per_foot, 3000.0, slow, 12])
            };
            let mut log = log_of((1..=last).map(row).collect());
            log["columns"][0]["unit"] = json!(unit);
            json!({ "log": log })
        };
        for (unit, per_foot) in [("ft", 1.0), ("m", 0.3048), ("in", 12.0)] {
            assert_eq!(
                judged(rows(unit, per_foot)),
                (Verdict::Accept, vec![]),
                "{last} {unit}"
            );
        }
    }
}

/// A rise of one reading stays one reading when a stone is added to it.
#[test]
fn a_stone_in_a_rise_is_no_second_reading() {
    let log = |end: &[(f64, f64)]| {
        let first = (1..=17).map(|ft| json!([ft, 1500.0, 2.8, 12]));
        let end = end.iter().map(|(ft, t)| json!([ft, t, 2.8, 12]));
        json!({ "log": log_of(first.chain(end).collect()), "limits": { "shaft_torque": q(9000.0, "ft_lbf"), "row_spacing": q(4.0, "ft") } })
    };
    let one = judged(log(&[(20.1, 3000.0)]));
    assert!(one.1.contains(&"record_rise_held".to_owned()), "{one:?}");
    let two = judged(log(&[(18.5, 6000.0), (20.1, 3000.0)]));
    assert_eq!(one, two);
}

#[test]
fn turned_in_without_a_reading() {
    let silent = |ft: f64| {
        let mut log = log(&GOOD);
        let rows = log["rows"].as_array_mut().expect("rows");
        rows.push(json!([ft, null, 2.8, 12]));
        json!({ "log": log })
    };
    trips(silent(22.1), Verdict::Provisional, "record_row_spacing");
    passes(silent(22.0));
}

#[test]
fn a_second_torque_counts_against_the_limit() {
    let again = |t: f64| json!({ "retorque": { "waited": q(1.0, "h"), "torque": q(t, "ft_lbf") } });
    trips(again(5501.0), Verdict::Reject, "record_shaft_torque");
    passes(again(5500.0));
}

#[test]
fn spun_out_says_the_operator() {
    trips(
        json!({ "stop": "spin_out" }),
        Verdict::Reject,
        "record_spun_out",
    );
}

/// 25.0 kip are needed; a shaft of 24 kip does not bear them.
#[test]
fn other_ultimate_capacities_are_judged_too() {
    let shaft = |kip: f64| {
        json!({ "target": { "from_demand": { "design_basis": { "allowable_stress": {
            "other_ultimates": { "shaft": q(kip, "kip") } } } } } })
    };
    trips(shaft(24.0), Verdict::Reject, "torque_other_ultimates");
    passes(shaft(25.0));
}

/// 2,777.8 ft lbf by 9 per ft; 2,950 are reached, 3,125 are needed by 8 per ft.
#[test]
fn the_band_of_the_tests_on_the_site_holds_the_verdict_back() {
    let tests = |low: f64| {
        json!({ "torque_factor": { "listed_shaft": null, "site_tests": {
            "compression": { "factor": q(9.0, "per_ft"), "factor_low": q(low, "per_ft"), "factor_high": q(9.5, "per_ft") },
            "test_count": 2, "reference": "site tests T1 and T2" } } })
    };
    let held = answer(&with(linnet(&GOOD), tests(8.0)));
    assert_eq!(held.verdict, Verdict::Provisional);
    assert_eq!(held.verdict_reasons[0].code, "site_factor_band");
    passes(tests(8.5));
}

/// 12.5 kip in tension at a safety factor of 2: 2,777.8 ft lbf by the factor in compression,
/// 3,819.4 by the reduced one; the last 3 ft hold 2,950.
#[test]
fn the_factor_in_tension_is_in_doubt() {
    let pull = json!({
        "target": { "from_demand": { "demand": { "compression": null, "tension": q(12.5, "kip") },
            "design_basis": { "allowable_stress": { "tension_safety_factor": 2.0 } } } },
        "log": log(&[[2800.0; 10], [2950.0; 10]].concat()),
    });
    let answer = answer(&with(linnet(&GOOD), pull));
    assert_eq!(
        answer.verdict,
        Verdict::Provisional,
        "{:?}",
        answer.verdict_reasons
    );
    assert_eq!(
        answer.verdict_reasons[0].code,
        "record_tension_factor_in_doubt"
    );
}

/// 2,223 is above 2,222.2 (0.8 of 2,777.8) and within 1 % of it.
#[test]
fn the_accuracy_counts_for_every_reading_that_is_judged() {
    let mut torques = GOOD.to_vec();
    torques.splice(17.., [2223.0, 3000.0, 3200.0]);
    let band = json!({ "log": log(&torques), "indicator": { "accuracy_ratio": 0.005 } });
    let held = answer(&with(linnet(&GOOD), band));
    assert_eq!(held.verdict, Verdict::Provisional);
    let detail = &held.verdict_reasons[0].detail;
    assert!(detail.contains("record_least_torque"), "{detail}");
    let again = json!({
        "retorque": { "waited": q(1.0, "h"), "torque": q(2780.0, "ft_lbf") },
        "indicator": { "accuracy_ratio": 0.01 },
    });
    let held = answer(&with(linnet(&GOOD), again));
    assert!(held.verdict_reasons[0].detail.contains("record_retorque"));
    assert_eq!(held.verdict, Verdict::Provisional);
}

/// A log too short for its torque still has a top helix that is deep enough or not.
#[test]
fn depth_for_tension_needs_no_torque() {
    let mut request = with(
        linnet(&GOOD),
        json!({ "history": { "pre_drilled_depth": q(17.5, "ft") } }),
    );
    request["target"] = json!({ "stated": { "torque": q(1500.0, "ft_lbf"), "tension": true } });
    let answer = answer(&request);
    let depth = check(&answer, "record_tension_depth").map(|c| c.status);
    assert_eq!(depth, Some(CheckStatus::Pass));
    let torque = check(&answer, "record_tension_top_torque").map(|c| c.status);
    assert_eq!(torque, Some(CheckStatus::NotEvaluated));
}

/// Every fault of the torque side at once, each at its place.
#[test]
fn a_missing_factor_hides_no_other_fault() {
    let request = with(
        linnet(&GOOD),
        json!({
            "torque_factor": null,
            "target": { "from_demand": { "demand": { "level": "factored" } } },
        }),
    );
    let refusal = refused(&request);
    let found: Vec<_> = refusal
        .issues
        .iter()
        .map(|i| (&*i.pointer, &*i.code))
        .collect();
    assert_eq!(
        found,
        [
            ("", "missing_member"),
            ("/target/from_demand/demand/level", "basis_mixed")
        ]
    );
    let bare = refused(&with(linnet(&GOOD), json!({ "pile": { "shaft": null } })));
    let found: Vec<_> = bare
        .issues
        .iter()
        .map(|i| (&*i.pointer, &*i.code))
        .collect();
    assert_eq!(found, [("/pile", "missing_member")]);
}
