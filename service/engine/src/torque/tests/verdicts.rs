//! What decides a verdict: gauge band, factor in tension, rating and section, depth of
//! the top helix. Expected numbers are arithmetic on listed factors.

use serde_json::json;

use super::*;
use crate::contract::{CheckStatus, Verdict};
use crate::quantity::{ForceUnit, LengthUnit, MomentUnit};

/// 2,778 ft lbf less 10 % is 2,500 ft lbf: 11.25 kip of 12.5: conditional.
#[test]
fn a_verdict_that_turns_within_the_gauge_band_is_provisional() {
    let of = |accuracy: f64, torque: f64| {
        planned(
            round(2.875),
            json!({ "installed": { "reading": gauge(torque, "ft_lbf"), "gauge_accuracy_ratio": accuracy },
                "torsion": { "rating": q(5500.0, "ft_lbf") } }),
        )
    };
    let banded = of(0.1, 2778.0);
    let installed = banded.result.installed.as_ref().unwrap();
    near(
        installed.torque_low.unwrap().get(MomentUnit::FtLbf),
        2500.2,
        1e-10,
    );
    let compression = installed.compression.as_ref().unwrap();
    near(
        compression.design.unwrap().get(ForceUnit::Kip),
        12.501,
        1e-10,
    );
    near(
        compression.design_low.unwrap().get(ForceUnit::Kip),
        11.25,
        0.01,
    );
    near(
        compression.design_high.unwrap().get(ForceUnit::Kip),
        13.751,
        0.01,
    );
    assert_eq!(
        status(&banded, "torque_compression_capacity"),
        CheckStatus::Pass
    );
    assert_eq!(banded.verdict, Verdict::Provisional);
    assert_eq!(banded.verdict_reasons[0].code, "gauge_band");
    // without a band, or with the torque clear of it
    assert_eq!(of(0.0, 2778.0).verdict, Verdict::Accept);
    assert_eq!(of(0.1, 3100.0).verdict, Verdict::Accept);
    // just short: it fails, and the answer says that the band reaches over
    let short = of(0.1, 2700.0);
    assert_eq!(short.verdict, Verdict::Reject);
    assert!(warns(&short, "gauge_band"));
    // the rating too: 5,300 plus 10 % is above 5,500
    let high = of(0.1, 5300.0);
    assert_eq!(status(&high, "installed_torque_limit"), CheckStatus::Pass);
    assert_eq!(high.verdict, Verdict::Provisional);
}

/// The torque factor in tension: 4,000 ft lbf x 9 = 36 kip, / 3 = 12; by 24/33 26.18, / 3 =
/// 8.73. A load of 8 passes, of 10 hangs on it, of 13 fails.
#[test]
fn a_verdict_that_hangs_on_the_factor_in_tension_is_provisional() {
    let of = |load: f64| {
        answer(json!({
            "shaft": round(2.875), "torque_factor": { "listed_shaft": {} },
            "embedment": { "top_helix_depth": q(12.0, "ft"), "largest_helix_diameter": q(12.0, "in") },
            "installed": { "reading": gauge(4000.0, "ft_lbf") },
            "demand": { "level": "allowable", "tension": q(load, "kip") },
            "design_basis": { "allowable_stress": {} },
            "torsion": { "rating": q(9000.0, "ft_lbf") },
        }))
    };
    let doubtful = of(10.0);
    let installed = doubtful.result.installed.as_ref().unwrap();
    let tension = installed.tension.as_ref().unwrap();
    near(tension.ultimate.get(ForceUnit::Kip), 36.0, 1e-10);
    near(tension.design.unwrap().get(ForceUnit::Kip), 12.0, 1e-10);
    let reduced = installed.tension_reduced.as_ref().unwrap();
    near(reduced.ultimate.get(ForceUnit::Kip), 26.1818, 0.001);
    near(reduced.design.unwrap().get(ForceUnit::Kip), 8.72727, 0.001);
    assert_eq!(doubtful.verdict, Verdict::Provisional);
    assert_eq!(doubtful.verdict_reasons[0].code, "tension_factor_in_doubt");
    assert_eq!(of(8.0).verdict, Verdict::Accept);
    assert_eq!(of(13.0).verdict, Verdict::Reject);
}

/// A factor from the caller's own tension tests is not doubted, nor one from an own pair.
#[test]
fn an_own_factor_in_tension_is_taken_as_it_is() {
    let answer = answer(json!({
        "shaft": round(5.5),
        "torque_factor": { "own": { "compression": q(6.0, "per_ft"), "tension": q(5.0, "per_ft"),
            "reference": "Two tension tests on the site" } },
        "installed": { "reading": gauge(4000.0, "ft_lbf") },
        "demand": { "level": "allowable", "tension": q(6.6, "kip") },
        "design_basis": { "allowable_stress": {} },
        "torsion": { "rating": q(9000.0, "ft_lbf") },
    }));
    // 5 x 4,000 / 3 = 6.667 kip
    assert_eq!(answer.verdict, Verdict::Accept);
    let factor = answer.result.torque_factor.as_ref().unwrap();
    assert!(factor.tension_reduced.is_none());
    assert_eq!(factor.acceptance_criteria, None);
    assert_eq!(
        factor.own_reference.as_deref(),
        Some("Two tension tests on the site")
    );
}

/// Torque above the rating fails whatever the capacity; a section alone only advises.
#[test]
fn over_torque_fails_and_a_section_advises() {
    let with = |torsion: Json| {
        planned(
            json!({ "round": { "outside_diameter": q(2.875, "in"), "wall_thickness": q(0.203, "in") } }),
            json!({ "installed": { "reading": gauge(5600.0, "ft_lbf") }, "torsion": torsion }),
        )
    };
    let over = with(json!({ "rating": q(5500.0, "ft_lbf") }));
    assert_eq!(status(&over, "installed_torque_limit"), CheckStatus::Fail);
    assert_eq!(over.verdict, Verdict::Reject);
    let headroom = over
        .result
        .torsion
        .as_ref()
        .unwrap()
        .installed_headroom
        .unwrap();
    near(headroom.get(MomentUnit::FtLbf), -100.0, 1e-8);
    // 5.32 kip ft of the bare section is below 5,600 ft lbf: a warning, not a failure
    let section =
        with(json!({ "section": { "yield_strength": q(50.0, "ksi"), "design_wall_ratio": 1.0 } }));
    assert_eq!(
        status(&section, "installed_torque_section"),
        CheckStatus::Warn
    );
    assert_eq!(
        status(&section, "required_torque_section"),
        CheckStatus::Pass
    );
    assert_eq!(
        status(&section, "installed_torque_limit"),
        CheckStatus::NotEvaluated
    );
    assert_eq!(section.verdict, Verdict::Provisional);
    assert!(warns(&section, "default_from_memory"));
    let both = with(
        json!({ "rating": q(6000.0, "ft_lbf"), "section": { "yield_strength": q(50.0, "ksi") } }),
    );
    assert!(warns(&both, "rating_above_section"));
    assert_eq!(both.verdict, Verdict::Accept);
    // 0.93 of 0.203 in where no wall is certified
    let wall = both
        .result
        .torsion
        .unwrap()
        .section
        .unwrap()
        .design_wall
        .unwrap();
    near(wall.get(LengthUnit::In), 0.18879, 1e-6);
}

/// A top helix at 8 ft under 12 in: tension by torque needs 12 ft.
#[test]
fn tension_is_withheld_where_the_top_helix_is_shallow() {
    let of = |demand: Option<Json>| {
        let mut request = json!({
            "shaft": round(2.875), "torque_factor": { "listed_shaft": {} },
            "embedment": { "top_helix_depth": q(8.0, "ft"), "largest_helix_diameter": q(12.0, "in") },
            "installed": { "reading": gauge(3000.0, "ft_lbf") },
            "design_basis": { "allowable_stress": {} },
            "torsion": { "rating": q(5500.0, "ft_lbf") },
        });
        if let Some(demand) = demand {
            request["demand"] = demand;
        }
        refusable(request)
    };
    let both = of(Some(
        json!({ "level": "allowable", "compression": q(5.0, "kip"), "tension": q(1.0, "kip") }),
    ))
    .unwrap();
    assert_eq!(
        status(&both, "torque_tension_capacity"),
        CheckStatus::NotEvaluated
    );
    assert_eq!(
        status(&both, "torque_compression_capacity"),
        CheckStatus::Pass
    );
    assert_eq!(both.verdict, Verdict::Provisional);
    assert!(both.result.installed.as_ref().unwrap().tension.is_none());
    // nor does the working show what is withheld
    let steps = both.steps.as_ref().unwrap();
    assert!(
        steps
            .iter()
            .all(|s| s.subject.as_deref() != Some("installed torque, tension"))
    );
    assert!(both.result.required.as_ref().unwrap().tension.is_none());
    let none = of(None).unwrap();
    assert!(none.result.installed.as_ref().unwrap().tension.is_none());
    assert!(warns(&none, "tension_by_torque_withheld"));
    let alone = of(Some(
        json!({ "level": "allowable", "tension": q(1.0, "kip") }),
    ))
    .unwrap_err();
    assert_eq!(alone.issues[0].code, "tension_by_torque_too_shallow");
    assert_eq!(alone.issues[0].pointer, "/embedment/top_helix_depth");
}

/// The same doubt with the drive head: 6 kip x 3 / 9 per ft = 2,000 ft lbf, by 24/33 2,750, and
/// 2,500 at hand.
#[test]
fn a_drive_head_that_hangs_on_the_factor_in_tension_is_provisional() {
    let of = |load: f64| {
        answer(json!({
            "shaft": round(2.875), "torque_factor": { "listed_shaft": {} },
            "demand": { "level": "allowable", "tension": q(load, "kip") },
            "design_basis": { "allowable_stress": {} },
            "drive": { "displacement": q(75.398_223_7, "in3_per_rev"), "mechanical_efficiency_ratio": 1.0,
                "working_pressures": { "inlet": q(2500.0, "psi"), "return_line": q(0.0, "psi") } },
            "torsion": { "rating": q(9000.0, "ft_lbf") },
        }))
    };
    let doubtful = of(6.0);
    let available = doubtful.result.drive.unwrap().available.unwrap().torque;
    near(available.get(MomentUnit::FtLbf), 2500.0, 1e-5);
    assert_eq!(status(&doubtful, "drive_torque"), CheckStatus::Pass);
    assert_eq!(doubtful.verdict, Verdict::Provisional);
    assert_eq!(doubtful.verdict_reasons[0].code, "tension_factor_in_doubt");
    assert_eq!(of(5.0).verdict, Verdict::Accept);
    assert_eq!(of(8.0).verdict, Verdict::Reject);
}
