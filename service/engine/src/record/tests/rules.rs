//! Each rule by a log that trips it alone and by one that just does not. Limits are on the
//! limit: what stands on it passes.

use super::*;

/// Status, verdict and failed or open checks of the pile with these members replaced.
pub(super) fn judged(more: Json) -> (Verdict, Vec<String>) {
    of(&with(linnet(&GOOD), more))
}

fn of(request: &Json) -> (Verdict, Vec<String>) {
    let answer = answer(request);
    let mut all = codes(&answer, CheckStatus::Fail);
    all.extend(codes(&answer, CheckStatus::NotEvaluated));
    (answer.verdict, all.into_iter().map(str::to_owned).collect())
}

pub(super) fn trips(more: Json, verdict: Verdict, code: &str) {
    assert_eq!(
        judged(more.clone()),
        (verdict, vec![code.to_owned()]),
        "{more}"
    );
}

pub(super) fn passes(more: Json) {
    assert_eq!(
        judged(more.clone()),
        (Verdict::Accept, Vec::new()),
        "{more}"
    );
}

/// The trace with its last rows replaced.
fn ending(last: &[f64]) -> Json {
    let mut torques = GOOD.to_vec();
    torques.truncate(GOOD.len() - last.len());
    torques.extend(last);
    json!({ "log": log(&torques) })
}

/// Rows at these depths in place of the last four.
fn rows_at(depths: &[f64]) -> Json {
    let first = GOOD[..16].iter().enumerate();
    let mut rows: Vec<Json> = first.map(|(i, t)| json!([i + 1, t, 2.8, 12])).collect();
    rows.extend(depths.iter().map(|d| json!([d, 2900.0, 2.8, 12])));
    json!({ "log": log_of(rows) })
}

fn stated(torque: f64, tension: bool) -> Json {
    json!({ "target": { "from_demand": null, "stated": { "torque": q(torque, "ft_lbf"), "tension": tension } } })
}

#[test]
fn torque_by_the_mean() {
    trips(stated(2950.1, false), Verdict::Continue, "record_torque");
    passes(stated(2950.0, false));
}

#[test]
fn torque_by_the_least_reading() {
    // 2,777.8 x 0.8 = 2,222.2; the mean is 2,800
    trips(
        ending(&[2200.0, 3000.0, 3200.0]),
        Verdict::Continue,
        "record_least_torque",
    );
    passes(ending(&[2223.0, 3000.0, 3200.0]));
    let low = with(
        ending(&[2200.0, 3000.0, 3200.0]),
        json!({ "limits": { "least_torque_ratio": 0.79 } }),
    );
    passes(low);
}

#[test]
fn length_of_fresh_penetration() {
    let drilled = |ft: f64| json!({ "history": { "pre_drilled_depth": q(ft, "ft") } });
    let (verdict, codes) = judged(drilled(17.5));
    assert_eq!(verdict, Verdict::Continue);
    assert_eq!(codes, ["record_plateau", "record_torque"]);
    passes(drilled(17.0));
    let redriven = |ft: f64| json!({ "history": { "disturbed_depth": q(ft, "ft") } });
    assert_eq!(judged(redriven(17.5)).0, Verdict::Continue);
    passes(redriven(17.0));
}

#[test]
fn a_rise_at_the_end() {
    // the row before is 2,950; 1.5 times that is 4,425
    trips(ending(&[4426.0]), Verdict::Continue, "record_rise_held");
    passes(ending(&[4425.0]));
    // over 2 ft it has not held, over 3 ft it has
    trips(
        ending(&[4360.0, 4360.0]),
        Verdict::Continue,
        "record_rise_held",
    );
    passes(ending(&[4290.0, 4290.0, 4290.0]));
}

#[test]
fn a_torque_that_falls() {
    // 0.85 of the means 3,416.7 and 3,366.7: 2,904.2 and 2,861.7
    trips(
        ending(&[3700.0, 3700.0, 2850.0]),
        Verdict::Continue,
        "record_torque_falling",
    );
    passes(ending(&[3600.0, 3600.0, 2900.0]));
}

#[test]
fn rows_that_are_missing() {
    trips(
        rows_at(&[17.0, 19.5, 20.0]),
        Verdict::Provisional,
        "record_row_spacing",
    );
    passes(rows_at(&[17.0, 18.0, 20.0]));
    passes(with(
        rows_at(&[17.0, 19.5, 20.0]),
        json!({ "limits": { "row_spacing": q(2.5, "ft") } }),
    ));
}

#[test]
fn torque_limit_of_the_shaft() {
    let limit = |t: f64| json!({ "limits": { "shaft_torque": q(t, "ft_lbf") } });
    trips(limit(2999.0), Verdict::Reject, "record_shaft_torque");
    passes(limit(3000.0));
    trips(
        json!({ "limits": { "shaft_torque": null } }),
        Verdict::Provisional,
        "record_shaft_torque",
    );
}

#[test]
fn advance_in_a_turn() {
    let log = |last: [f64; 2]| {
        let mut log = log(&GOOD);
        log["rows"][18][2] = json!(last[0]);
        log["rows"][19][2] = json!(last[1]);
        json!({ "log": log })
    };
    trips(log([2.8, 2.54]), Verdict::Continue, "record_advance");
    passes(log([2.8, 2.55]));
    trips(
        log([2.54, 2.8]),
        Verdict::Continue,
        "record_advance_in_window",
    );
    passes(log([2.55, 2.8]));
    // a tenth of the pitch is 0.3 in: less is no advance at all, and nothing helps by depth
    trips(log([2.8, 0.29]), Verdict::Reject, "record_advance");
    trips(log([2.8, 0.3]), Verdict::Continue, "record_advance");
    let mut silent = super::log(&GOOD);
    silent["rows"][19][2] = json!(null);
    trips(
        json!({ "log": silent }),
        Verdict::Provisional,
        "record_advance",
    );
    trips(
        json!({ "pile": { "helix_pitch": null } }),
        Verdict::Provisional,
        "record_advance",
    );
}

/// The same advance by turns: 12 in in 4.2857 turns is 2.8 in.
#[test]
fn advance_by_turns() {
    let by_turns = |turns: f64| {
        let rows = GOOD.iter().enumerate();
        let rows: Vec<Json> = rows.map(|(i, t)| json!([i + 1, t, turns])).collect();
        json!({ "log": { "columns": [
            { "name": "depth", "unit": "ft" }, { "name": "torque", "unit": "ft_lbf" }, { "name": "turns", "unit": "1" },
        ], "rows": rows } })
    };
    passes(by_turns(12.0 / 2.55));
    let (verdict, codes) = judged(by_turns(12.0 / 2.54));
    assert_eq!(verdict, Verdict::Continue);
    assert_eq!(codes, ["record_advance", "record_advance_in_window"]);
}

#[test]
fn depth_of_the_tip() {
    let depths = |least: f64, most: f64| json!({ "depths": { "minimum_tip_depth": q(least, "ft"), "maximum_tip_depth": q(most, "ft") } });
    trips(depths(20.01, 28.0), Verdict::Continue, "record_tip_depth");
    passes(depths(20.0, 28.0));
    trips(
        depths(17.0, 19.99),
        Verdict::Reject,
        "record_greatest_depth",
    );
    passes(depths(17.0, 20.0));
    trips(
        json!({ "depths": { "minimum_tip_depth": null } }),
        Verdict::Provisional,
        "record_tip_depth",
    );
}

#[test]
fn refusal_short_of_depth() {
    let stop = |why: &str| json!({ "stop": why, "depths": { "minimum_tip_depth": q(21.0, "ft") } });
    trips(
        stop("drive_stalled"),
        Verdict::Reject,
        "record_refusal_short",
    );
    trips(stop("still_turning"), Verdict::Continue, "record_tip_depth");
    // 95 % of the limit of the shaft: 3,000 of 3,157.9
    let at = |t: f64| {
        with(
            stop("still_turning"),
            json!({ "limits": { "shaft_torque": q(t, "ft_lbf") } }),
        )
    };
    trips(at(3157.0), Verdict::Reject, "record_refusal_short");
    trips(at(3159.0), Verdict::Continue, "record_tip_depth");
    let (verdict, codes) = judged(json!({ "stop": "obstruction" }));
    assert_eq!(
        (verdict, codes),
        (Verdict::Reject, vec!["record_obstruction".to_owned()])
    );
    passes(json!({ "stop": "target_reached" }));
}

#[test]
fn helices_below_frost_fill_and_active_zone() {
    // the top helix stands at 17 ft = 5.1816 m
    let frost = |m: f64| json!({ "depths": { "frost_depth": q(m, "m") } });
    trips(frost(4.8817), Verdict::Continue, "record_helix_below_frost");
    passes(frost(4.8816));
    let bare =
        |m: f64| json!({ "depths": { "frost_depth": q(m, "m"), "frost_margin": q(0.2, "m") } });
    passes(bare(4.98));
    trips(
        json!({ "depths": { "frost_depth": null } }),
        Verdict::Provisional,
        "record_helix_below_frost",
    );
    for (member, code) in [
        ("fill_depth", "record_helix_below_fill"),
        ("active_depth", "record_helix_below_active_zone"),
    ] {
        let depth = |ft: f64| json!({ "depths": { member: q(ft, "ft") } });
        trips(depth(17.01), Verdict::Continue, code);
        passes(depth(17.0));
    }
}

#[test]
fn tension_asks_for_depth_and_for_torque_at_the_top_helix() {
    // 14 to 17 ft: (2,250 + 2,700 + 2,850) / 3 = 2,600
    trips(
        stated(2600.1, true),
        Verdict::Continue,
        "record_tension_top_torque",
    );
    passes(stated(2600.0, true));
    let helix = |inches: f64| {
        let mut request = with(linnet(&GOOD), stated(1500.0, true));
        request["pile"]["helices"][1]["diameter"] = q(inches, "in");
        request
    };
    let tripped = vec!["record_tension_depth".to_owned()];
    assert_eq!(of(&helix(17.1)), (Verdict::Continue, tripped));
    assert_eq!(of(&helix(17.0)), (Verdict::Accept, Vec::new()));
}

#[test]
fn calibration_in_date() {
    let driven = |day: &str| json!({ "indicator": { "driven_on": day } });
    passes(driven("2027-03-02"));
    trips(
        driven("2027-03-03"),
        Verdict::Provisional,
        "record_calibration",
    );
    trips(
        driven("2026-03-01"),
        Verdict::Provisional,
        "record_calibration",
    );
    trips(
        json!({ "indicator": null }),
        Verdict::Provisional,
        "record_calibration",
    );
    trips(
        json!({ "indicator": { "driven_on": null } }),
        Verdict::Provisional,
        "record_calibration",
    );
    passes(json!({ "indicator": { "driven_on": "2027-03-03", "valid_day_count": 366 } }));
}

#[test]
fn position_and_plumb() {
    for (member, code) in [
        ("along", "record_position_along"),
        ("off_line", "record_position_off_line"),
    ] {
        trips(
            json!({ "position": { member: q(3.1, "in") } }),
            Verdict::Reject,
            code,
        );
        passes(json!({ "position": { member: q(3.0, "in") } }));
        trips(
            json!({ "position": { member: null } }),
            Verdict::Provisional,
            code,
        );
    }
    let at_limit = answer(&with(
        linnet(&GOOD),
        json!({ "position": { "off_line": q(3.0, "in") } }),
    ));
    assert!(
        at_limit
            .warnings
            .iter()
            .any(|w| w.code == "record_design_allowance_used")
    );
    trips(
        json!({ "position": { "inclination": q(1.01, "deg") } }),
        Verdict::Reject,
        "record_inclination",
    );
    passes(json!({ "position": { "inclination": q(1.0, "deg") } }));
    passes(
        json!({ "position": { "inclination": q(2.0, "deg"), "allowed_inclination": q(2.0, "deg") } }),
    );
}

#[test]
fn speed_only_advises() {
    let mut fast = log(&GOOD);
    fast["rows"][3][3] = json!(31);
    let answer = answer(&with(linnet(&GOOD), json!({ "log": fast })));
    assert_eq!(answer.verdict, Verdict::Accept);
    let found = check(&answer, "record_rotation_speed").map(|c| c.status);
    assert_eq!(found, Some(CheckStatus::Warn));
}

#[test]
fn a_pile_that_was_used_before() {
    for what in ["extracted_before", "over_torqued_before"] {
        trips(
            json!({ "history": { what: true } }),
            Verdict::Provisional,
            "record_reused_pile",
        );
        passes(json!({ "history": { what: true, "inspected_since": true } }));
    }
}

#[test]
fn a_second_torque_after_a_wait() {
    let again =
        |t: f64| json!({ "retorque": { "waited": q(24.0, "h"), "torque": q(t, "ft_lbf") } });
    trips(again(2777.0), Verdict::Continue, "record_retorque");
    passes(again(2778.0));
}

#[test]
fn nothing_known_of_the_ground() {
    trips(
        json!({ "ground": null }),
        Verdict::Provisional,
        "record_ground",
    );
    trips(
        json!({ "ground": { "report": null, "no_report": {} } }),
        Verdict::Provisional,
        "record_ground",
    );
}

fn profile(layers: Json) -> Json {
    json!({ "ground": { "report": null, "profile": { "layers": layers, "water_depth": q(7.0, "ft") } } })
}

fn layer(top: f64, bottom: f64, soil: Json) -> Json {
    json!({ "top": q(top, "ft"), "bottom": q(bottom, "ft"), "unit_weight": q(115.0, "pcf"), "soil": soil })
}

fn clay(psf: f64) -> Json {
    json!({ "clay": { "undrained_strength": q(psf, "psf") } })
}

#[test]
fn the_log_against_the_profile() {
    // 9 x 2,500 psf on 1.241 ft2 is 27.9 kip, 3,103 ft lbf expected, 4,344 at the upper end
    passes(profile(json!([
        layer(0.0, 11.0, clay(500.0)),
        layer(11.0, 30.0, clay(2500.0))
    ])));
    // 1,500 psf explain 2,607 at most; a stated 1,000 stands for 9 kip, which they carry
    let weak = profile(json!([
        layer(0.0, 11.0, clay(500.0)),
        layer(11.0, 30.0, clay(1500.0))
    ]));
    trips(
        with(stated(1000.0, false), weak),
        Verdict::Provisional,
        "record_torque_explained",
    );
    // the helix in organic soil counts for nothing, so the torque is more than the rest explains
    let (verdict, codes) = judged(profile(json!([
        layer(0.0, 16.0, clay(500.0)),
        layer(16.0, 18.0, json!({ "organic": {} })),
        layer(18.0, 30.0, clay(2500.0)),
    ])));
    assert_eq!(verdict, Verdict::Continue);
    assert_eq!(
        codes,
        [
            "record_helix_ground",
            "record_torque_explained",
            "record_ground_capacity"
        ]
    );
    let deep = profile(json!([
        layer(0.0, 11.0, clay(500.0)),
        layer(11.0, 18.0, clay(2500.0))
    ]));
    trips(deep, Verdict::Provisional, "record_helix_ground");
}

/// 25.0 kip ultimate are needed. 300 psf below 20.7 ft under a crust: 27.9 kip on the
/// helices, less by punching.
#[test]
fn a_crust_over_soft_ground() {
    let crust = |below: f64, deep: f64| {
        profile(json!([
            layer(0.0, 11.0, clay(500.0)),
            layer(11.0, below, clay(2500.0)),
            layer(below, 30.0, clay(deep)),
        ]))
    };
    trips(
        crust(20.7, 300.0),
        Verdict::Provisional,
        "record_ground_capacity",
    );
    let answer = answer(&with(linnet(&GOOD), crust(20.7, 300.0)));
    assert!(
        answer
            .warnings
            .iter()
            .any(|w| w.code == "record_ground_below")
    );
    passes(crust(28.0, 300.0));
}

#[test]
fn a_pile_that_was_turned_back() {
    let back = |ft: f64| {
        let mut log = log(&GOOD);
        let rows = log["rows"].as_array_mut().expect("rows");
        rows.push(json!([ft, 800.0, 2.8, 12]));
        json!({ "log": log })
    };
    trips(back(19.5), Verdict::Continue, "record_left_deepest");
    passes(back(20.0));
}

#[test]
fn accuracy_of_the_indicator() {
    // 2,950 x 0.95 = 2,802.5 and x 0.94 = 2,773 around 2,777.8
    let accuracy = |a: f64| {
        answer(&with(
            linnet(&GOOD),
            json!({ "indicator": { "accuracy_ratio": a } }),
        ))
    };
    assert_eq!(accuracy(0.05).verdict, Verdict::Accept);
    let held = accuracy(0.06);
    assert_eq!(held.verdict, Verdict::Provisional);
    assert_eq!(held.verdict_reasons[0].code, "record_gauge_band");
}
