//! The factor in tension by choice, and factors from tests on the site with their band.
//! Expected numbers are arithmetic on the factors sent.

use proptest::prelude::*;
use serde_json::json;

use super::*;
use crate::contract::{CheckStatus, Verdict};
use crate::quantity::{ForceUnit, MomentUnit, PerLengthUnit};

/// 4,000 ft lbf on 2.875 in: 9 per ft, or 9 x 24/33 = 6.5455 per ft; / 3.
fn in_tension(choice: Option<&str>, load: f64) -> Answer<Outcome> {
    let mut request = json!({
        "shaft": round(2.875), "torque_factor": { "listed_shaft": {} },
        "embedment": { "top_helix_depth": q(12.0, "ft"), "largest_helix_diameter": q(12.0, "in") },
        "installed": { "reading": gauge(4000.0, "ft_lbf") },
        "demand": { "level": "allowable", "tension": q(load, "kip") },
        "design_basis": { "allowable_stress": {} },
        "torsion": { "rating": q(9000.0, "ft_lbf") },
    });
    if let Some(choice) = choice {
        request["tension_factor"] = json!(choice);
    }
    answer(request)
}

#[test]
fn the_reduced_factor_is_the_factor_used_and_holds_nothing_back() {
    let reduced = in_tension(Some("reduced"), 8.0);
    let factor = reduced.result.torque_factor.as_ref().unwrap();
    let used = factor.tension.as_ref().unwrap();
    near(used.factor.get(PerLengthUnit::PerFt), 216.0 / 33.0, 1e-10);
    assert_eq!(used.source.id, "livneh_el_naggar_2008");
    assert!(factor.tension_reduced.is_none());
    near(
        factor
            .compression
            .as_ref()
            .unwrap()
            .factor
            .get(PerLengthUnit::PerFt),
        9.0,
        1e-10,
    );
    let installed = reduced.result.installed.as_ref().unwrap();
    let design = installed.tension.as_ref().unwrap().design.unwrap();
    near(design.get(ForceUnit::Kip), 8.72727, 0.001);
    assert!(installed.tension_reduced.is_none());
    // 8 x 3 x 33/216 x 1,000 = 3,666.67 ft lbf
    let required = reduced.result.required.as_ref().unwrap();
    near(required.torque.get(MomentUnit::FtLbf), 3_666.666_667, 1e-6);
    assert!(required.tension_reduced.is_none());
    assert_eq!(reduced.verdict, Verdict::Accept);
    // where the default is held back, the reduced one says no and nothing hangs on it
    assert_eq!(in_tension(None, 10.0).verdict, Verdict::Provisional);
    let no = in_tension(Some("reduced"), 10.0);
    assert_eq!(no.verdict, Verdict::Reject);
    assert!(!warns(&no, "tension_factor_in_doubt"));
    // the default by its name is the default
    assert_eq!(
        in_tension(Some("same_as_compression"), 10.0).result,
        in_tension(None, 10.0).result
    );
}

#[test]
fn a_factor_in_tension_is_chosen_only_where_one_serves_both_directions() {
    let band = json!({ "factor": q(9.0, "per_ft") });
    for (shaft, choice) in [
        (square(1.5), json!({ "livneh_2008": {} })),
        (square(1.5), json!({ "hoyt_clemence_1989": {} })),
        (
            round(2.875),
            json!({ "own": { "tension": q(9.0, "per_ft"), "reference": "tests" } }),
        ),
        (
            round(2.875),
            json!({ "site_tests": { "tension": band, "test_count": 1, "reference": "T1" } }),
        ),
    ] {
        for value in ["reduced", "same_as_compression"] {
            let issues = refusable(
                json!({ "shaft": shaft, "torque_factor": choice, "tension_factor": value }),
            )
            .unwrap_err()
            .issues;
            assert_eq!(issues.len(), 1, "{choice}");
            assert_eq!(
                (issues[0].pointer.as_str(), issues[0].code.as_ref()),
                ("/tension_factor", "tension_factor_given")
            );
        }
    }
    for choice in ["listed_shaft", "effective_diameter", "perko_2009"] {
        let found = answer(
            json!({ "shaft": round(2.875), "torque_factor": { (choice): {} },
            "tension_factor": "reduced" }),
        );
        let factor = found.result.torque_factor.unwrap();
        let (down, up) = (
            factor.compression.unwrap().factor,
            factor.tension.unwrap().factor,
        );
        near(up / down, 24.0 / 33.0, 1e-10);
    }
    let issues = refusable(json!({ "tension_factor": "reduced", "drive": {
        "displacement": q(100.0, "in3_per_rev"), "mechanical_efficiency_ratio": 0.9,
        "target_torque": q(5.0, "kN_m") } }))
    .unwrap_err()
    .issues;
    assert_eq!(issues[0].code, "missing_member");
    assert!(issues[0].detail.contains("`tension_factor`"));
}

/// A pile of 12.5 kip with factors of the site: 9.4 per ft between 8.6 and 10.3.
fn on_site(torque: f64, accuracy: Option<f64>, tests: u32) -> Answer<Outcome> {
    let mut installed = json!({ "reading": gauge(torque, "ft_lbf") });
    if let Some(accuracy) = accuracy {
        installed["gauge_accuracy_ratio"] = json!(accuracy);
    }
    planned(
        round(2.875),
        json!({
            "torque_factor": { "site_tests": { "compression": { "factor": q(9.4, "per_ft"),
                "factor_low": q(8.6, "per_ft"), "factor_high": q(10.3, "per_ft") },
                "test_count": tests, "reference": "Tests T1 to T3" } },
            "installed": installed, "torsion": { "rating": q(5500.0, "ft_lbf") },
        }),
    )
}

/// 2,900 ft lbf: 13.63 kip by 9.4, 12.47 by 8.6 (short of 12.5), 14.935 by 10.3.
#[test]
fn a_verdict_that_turns_within_the_band_of_the_site_is_provisional() {
    let held = on_site(2900.0, None, 3);
    let capacity = held
        .result
        .installed
        .as_ref()
        .unwrap()
        .compression
        .as_ref()
        .unwrap();
    near(capacity.design.unwrap().get(ForceUnit::Kip), 13.63, 1e-10);
    near(
        capacity.design_least.unwrap().get(ForceUnit::Kip),
        12.47,
        1e-10,
    );
    near(
        capacity.design_greatest.unwrap().get(ForceUnit::Kip),
        14.935,
        1e-10,
    );
    assert_eq!(
        status(&held, "torque_compression_capacity"),
        CheckStatus::Pass
    );
    assert_eq!(held.verdict, Verdict::Provisional);
    assert_eq!(held.verdict_reasons[0].code, "site_factor_band");
    // 25,000 / 9.4, / 10.3, / 8.6
    let required = held.result.required.as_ref().unwrap().compression.unwrap();
    near(
        required.torque.get(MomentUnit::FtLbf),
        25_000.0 / 9.4,
        1e-10,
    );
    near(
        required.torque_least.unwrap().get(MomentUnit::FtLbf),
        25_000.0 / 10.3,
        1e-10,
    );
    near(
        required.torque_greatest.unwrap().get(MomentUnit::FtLbf),
        25_000.0 / 8.6,
        1e-10,
    );
    // 2,910 x 8.6 / 2 = 12.513: clear of the band
    assert_eq!(on_site(2910.0, None, 3).verdict, Verdict::Accept);
    // but not where the gauge may read 1 % high: 12.388
    let both = on_site(2910.0, Some(0.01), 3);
    assert_eq!(both.verdict, Verdict::Provisional);
    assert!(warns(&both, "site_factor_band") && !warns(&both, "gauge_band"));
    // 2,600 x 9.4 / 2 = 12.22 fails, and the band reaches over
    let short = on_site(2600.0, None, 3);
    assert_eq!(short.verdict, Verdict::Reject);
    assert!(warns(&short, "site_factor_band"));
    let factor = held.result.torque_factor.as_ref().unwrap();
    assert_eq!(factor.test_count, Some(3));
    assert_eq!(factor.own_reference.as_deref(), Some("Tests T1 to T3"));
    assert!(factor.tension.is_none());
}

/// The torque that the least factor needs, 2,907 ft lbf, is above a rating of 2,800.
#[test]
fn the_band_of_the_site_reaches_the_rating_and_the_drive_head() {
    let with = |more: Json| {
        let mut request = json!({
            "torque_factor": { "site_tests": { "compression": { "factor": q(9.4, "per_ft"),
                "factor_low": q(8.6, "per_ft") }, "test_count": 1, "reference": "T1" } } });
        for (key, value) in more.as_object().unwrap() {
            request[key] = value.clone();
        }
        planned(round(2.875), request)
    };
    let rated = with(json!({ "torsion": { "rating": q(2800.0, "ft_lbf") } }));
    assert_eq!(rated.verdict, Verdict::Provisional);
    assert!(
        rated.verdict_reasons[0]
            .detail
            .starts_with("`required_torque_limit`")
    );
    let driven = with(json!({ "torsion": { "rating": q(5500.0, "ft_lbf") },
        "drive": { "displacement": q(75.398_223_7, "in3_per_rev"), "mechanical_efficiency_ratio": 0.9,
            "working_pressures": { "inlet": q(3100.0, "psi"), "return_line": q(0.0, "psi") } } }));
    // 2,790 ft lbf at hand
    assert_eq!(status(&driven, "drive_torque"), CheckStatus::Pass);
    assert_eq!(driven.verdict, Verdict::Provisional);
    assert!(
        driven.verdict_reasons[0]
            .detail
            .starts_with("`drive_torque`")
    );
}

#[test]
fn the_number_of_tests_is_told() {
    let told = |count| {
        let found = on_site(3000.0, None, count);
        let warning = found
            .warnings
            .iter()
            .find(|w| w.code == "site_factor_tests");
        warning.expect("a warning").detail.clone()
    };
    assert!(told(1).starts_with("1 test: it holds for its own place"));
    assert!(told(3).starts_with("3 tests;"));
}

#[test]
fn a_band_holds_its_factor() {
    let of = |band: Json| {
        refusable(
            json!({ "torque_factor": { "site_tests": { "tension": band, "test_count": 1,
            "reference": "T1" } } }),
        )
    };
    let wrong = of(
        json!({ "factor": q(9.0, "per_ft"), "factor_low": q(9.1, "per_ft"),
        "factor_high": q(8.9, "per_ft") }),
    )
    .unwrap_err()
    .issues;
    let found: Vec<_> = wrong
        .iter()
        .map(|i| (i.pointer.as_str(), i.code.as_ref()))
        .collect();
    assert_eq!(
        found,
        [
            (
                "/torque_factor/site_tests/tension/factor_high",
                "site_factor_band_reversed"
            ),
            (
                "/torque_factor/site_tests/tension/factor_low",
                "site_factor_band_reversed"
            ),
        ]
    );
    // the factor itself may be an end of it, in other units too
    of(
        json!({ "factor": q(9.0, "per_ft"), "factor_low": q(29.527_559_055_1, "per_m"),
        "factor_high": q(9.0, "per_ft") }),
    )
    .unwrap();
}

proptest! {
    /// A wider band never turns `provisional` into `accept`; more torque never lowers a capacity.
    #[test]
    fn a_wider_band_is_never_surer(
        torque in 1500.0..5000.0f64, down in 0.0..0.3f64, up in 0.0..0.3f64, more in 1.0..2.0f64,
        si in any::<bool>(),
    ) {
        let of = |torque: f64, down: f64, up: f64, si: bool| {
            let factor = |per_ft: f64| if si { q(per_ft / 0.3048, "per_m") } else { q(per_ft, "per_ft") };
            planned(round(2.875), json!({
                "torque_factor": { "site_tests": { "compression": { "factor": factor(9.4),
                    "factor_low": factor(9.4 * (1.0 - down)), "factor_high": factor(9.4 * (1.0 + up)) },
                    "test_count": 2, "reference": "T" } },
                "installed": { "reading": gauge(torque, "ft_lbf") },
                "torsion": { "rating": q(9000.0, "ft_lbf") },
            }))
        };
        let rank = |v: Verdict| match v { Verdict::Accept => 2, Verdict::Provisional => 1, _ => 0 };
        let narrow = of(torque, down, up, si);
        prop_assert!(rank(of(torque, down * more, up * more, si).verdict) <= rank(narrow.verdict));
        prop_assert!(rank(of(torque * more, down, up, si).verdict) >= rank(narrow.verdict)
            || torque * more > 9000.0);
        prop_assert_eq!(of(torque, down, up, !si).verdict, narrow.verdict);
    }
}
