//! Figures a practitioner checks by hand: required torque, motor planning, listed
//! widths. Verdicts are in `verdicts.rs`. Expected numbers are arithmetic on listed factors.

use serde_json::json;

use super::*;
use crate::contract::{CheckStatus, Verdict};
use crate::quantity::{ForceUnit, MomentUnit, PerLengthUnit, StressUnit};
use crate::torque::TorqueDirection;

/// 12.5 kip x 2 / 9 per ft = 2,777.78 ft lbf = 3.766 kN m; / 7 per ft = 3,571.43.
#[test]
fn required_torque_of_a_service_load() {
    let nine = planned(round(2.875), json!({}));
    let required = nine.result.required.as_ref().unwrap();
    near(step(&nine, "Q_req"), 25_000.0 * 4.448_221_615_260_5, 1e-10);
    near(
        required.torque.get(MomentUnit::FtLbf),
        25_000.0 / 9.0,
        1e-10,
    );
    near(required.torque.get(MomentUnit::KNM), 3.766, 0.01);
    // rounded up for the operator only
    assert_eq!(required.cab.us_customary.value(), 2780.0);
    assert_eq!(required.cab.us_customary.unit(), "ft_lbf");
    assert_eq!(required.cab.si.value(), 3.77);
    let seven = planned(round(3.5), json!({}));
    let required = seven.result.required.as_ref().unwrap();
    near(
        required.torque.get(MomentUnit::FtLbf),
        25_000.0 / 7.0,
        1e-10,
    );
    assert_eq!(required.cab.us_customary.value(), 3580.0);
    // no rating: the limit is not judged and the verdict waits for it
    assert_eq!(
        status(&seven, "required_torque_limit"),
        CheckStatus::NotEvaluated
    );
    assert_eq!(seven.verdict, Verdict::Provisional);
    let rated = planned(
        round(3.5),
        json!({ "torsion": { "rating": q(8000.0, "ft_lbf") } }),
    );
    assert_eq!(rated.verdict, Verdict::Accept);
    let weak = planned(
        round(3.5),
        json!({ "torsion": { "rating": q(3500.0, "ft_lbf") } }),
    );
    assert_eq!(weak.verdict, Verdict::Reject);
    assert_eq!(status(&weak, "required_torque_limit"), CheckStatus::Fail);
}

/// A torque on a whole step stays there: 2,780 ft lbf from 12,510 lbf x 2 / 9 per ft.
#[test]
fn a_whole_step_is_not_rounded_up() {
    use crate::quantity::Torque;
    use crate::torque::rounding::{Whole, round_torque};
    assert_eq!(
        round_torque(Torque::new(2780.0, MomentUnit::FtLbf), Whole::Up)
            .us_customary
            .value(),
        2780.0
    );
    assert_eq!(
        round_torque(Torque::new(2_780.000_01, MomentUnit::FtLbf), Whole::Up)
            .us_customary
            .value(),
        2790.0
    );
    assert_eq!(
        round_torque(Torque::new(3.77, MomentUnit::KNM), Whole::Up)
            .si
            .value(),
        3.77
    );
    assert_eq!(
        round_torque(Torque::new(3.771, MomentUnit::KNM), Whole::Up)
            .si
            .value(),
        3.78
    );
    assert_eq!(round_torque(Torque::ZERO, Whole::Up).si.value(), 0.0);
}

/// 58.2 kN / 0.4 = 145.5 kN, / 22.966 per m = 6.336 kN m; tension 52.0 / 0.3 = 173.3 kN, 7.55
/// kN m governs; with a static test 58.2 / 0.6 = 97.0 kN, 4.224 kN m.
#[test]
fn required_torque_of_factored_loads() {
    let of = |basis: Json, tension: bool| {
        let mut demand = json!({ "level": "factored", "compression": q(58.2, "kN") });
        if tension {
            demand["tension"] = q(52.0, "kN");
        }
        answer(json!({
            "label": "P12",
            "shaft": { "round": { "outside_diameter": q(88.9, "mm") } },
            "torque_factor": { "listed_shaft": {} },
            "demand": demand, "design_basis": { "limit_states": basis },
            "torsion": { "rating": q(12.0, "kN_m") },
        }))
    };
    let both = of(json!({}), true);
    let required = both.result.required.as_ref().unwrap();
    let factor = both
        .result
        .torque_factor
        .as_ref()
        .unwrap()
        .compression
        .as_ref()
        .unwrap()
        .factor;
    near(factor.get(PerLengthUnit::PerM), 22.966, 0.01);
    let compression = required.compression.unwrap();
    near(compression.ultimate.get(ForceUnit::KN), 145.5, 1e-10);
    near(compression.torque.get(MomentUnit::KNM), 6.336, 0.02);
    let tension = required.tension.unwrap();
    near(tension.ultimate.get(ForceUnit::KN), 173.333, 0.001);
    near(tension.torque.get(MomentUnit::KNM), 7.547, 0.02);
    assert_eq!(required.governing, TorqueDirection::Tension);
    assert_eq!(required.torque, tension.torque);
    // by the reduced factor 7.547 x 33/24 = 10.378
    near(
        required
            .tension_reduced
            .unwrap()
            .torque
            .get(MomentUnit::KNM),
        10.378,
        0.02,
    );
    assert_eq!(both.verdict, Verdict::Accept);
    assert_eq!(both.checks[0].subject.as_ref().unwrap().label, "P12");
    // round figures give 145.6 kN and 6.34 kN m, 173.4 kN and 7.55 kN m: to 0.1 %
    near(compression.torque.get(MomentUnit::KNM), 6.34, 0.1);
    near(tension.torque.get(MomentUnit::KNM), 7.55, 0.1);
    let tested = of(json!({ "proof": "load_test" }), false);
    let required = tested.result.required.unwrap();
    near(
        required.compression.unwrap().ultimate.get(ForceUnit::KN),
        97.0,
        1e-10,
    );
    near(required.torque.get(MomentUnit::KNM), 4.23, 0.2);
    let same = of(json!({ "compression_resistance_factor": 0.6 }), false);
    near(
        same.result.required.unwrap().torque.si(),
        required.torque.si(),
        1e-10,
    );
}

/// 100 in3 a turn at 2,500 psi and 90 %: 2,984 ft lbf; enough for 2,778, not for 3,572;
/// 2,778 needs 2,327 psi.
#[test]
fn motor_planning() {
    let drive = json!({ "drive": {
        "displacement": q(100.0, "in3_per_rev"), "displacement_includes_gear": true,
        "mechanical_efficiency_ratio": 0.9, "working_pressures": { "inlet": q(2500.0, "psi") },
        "target_torque": q(2778.0, "ft_lbf") },
        "torsion": { "rating": q(8000.0, "ft_lbf") } });
    let enough = planned(round(2.875), drive.clone());
    let found = enough.result.drive.unwrap();
    near(
        found.available.unwrap().torque.get(MomentUnit::FtLbf),
        2984.16,
        0.001,
    );
    let pressure = found.for_target.unwrap().differential_pressure;
    near(pressure.get(StressUnit::Psi), 2327.0, 0.02);
    // for the 2,777.78 of the load itself, 24 pi x 2,777.78 / 90
    let needed = found.for_required.unwrap().differential_pressure;
    near(needed.get(StressUnit::Psi), 2327.11, 0.001);
    assert_eq!(status(&enough, "drive_torque"), CheckStatus::Pass);
    assert_eq!(enough.verdict, Verdict::Accept);
    // the whole inlet pressure was counted, and the answer says so
    assert!(warns(&enough, "back_pressure_not_deducted"));
    assert_eq!(found.for_required.unwrap().inlet_pressure, None);
    let short = planned(round(3.5), drive);
    assert_eq!(status(&short, "drive_torque"), CheckStatus::Fail);
    assert_eq!(short.verdict, Verdict::Reject);
}

/// Back pressures are deducted from the inlet, and added to the pressure to be seen.
#[test]
fn back_pressures_count_both_ways() {
    let answer = planned(
        round(2.875),
        json!({ "drive": {
            "displacement": q(100.0, "in3_per_rev"), "mechanical_efficiency_ratio": 0.9,
            "working_pressures": { "inlet": q(2900.0, "psi"), "return_line": q(150.0, "psi"), "no_load": q(250.0, "psi") } },
            "torsion": { "rating": q(2900.0, "ft_lbf") } }),
    );
    let drive = answer.result.drive.unwrap();
    let available = drive.available.unwrap();
    near(
        available.differential_pressure.get(StressUnit::Psi),
        2500.0,
        1e-10,
    );
    near(available.torque.get(MomentUnit::FtLbf), 2984.16, 0.001);
    let required = drive.for_required.unwrap();
    near(
        required.inlet_pressure.unwrap().get(StressUnit::Psi),
        2727.11,
        0.001,
    );
    // 2,984 is above the rating of 2,900: 24 pi x 2,900 / 90 = 2,429.5 psi is the limit
    assert!(warns(&answer, "drive_can_overtorque"));
    near(
        drive
            .at_rating
            .unwrap()
            .differential_pressure
            .get(StressUnit::Psi),
        2429.5,
        0.001,
    );
    assert!(!warns(&answer, "back_pressure_not_deducted"));
}

/// Looked up by dimension: metric widths within 0.5 mm of the listed ones count as listed.
#[test]
fn metric_widths_count_as_listed() {
    for (width, ft) in [
        (73.0, 9.0),
        (76.1, 8.0),
        (88.9, 7.0),
        (89.0, 7.0),
        (72.525, 9.0),
        (89.4, 7.0),
    ] {
        let found = answer(json!({
            "shaft": { "round": { "outside_diameter": q(width, "mm") } },
            "torque_factor": { "listed_shaft": {} },
        }));
        let factor = found
            .result
            .torque_factor
            .unwrap()
            .compression
            .unwrap()
            .factor;
        near(factor.get(PerLengthUnit::PerFt), ft, 1e-10);
    }
    for width in [72.52, 74.0, 89.41, 60.3, 114.3] {
        let refusal = refusable(json!({
            "shaft": { "round": { "outside_diameter": q(width, "mm") } },
            "torque_factor": { "listed_shaft": {} },
        }))
        .unwrap_err();
        assert_eq!(refusal.issues[0].code, "shaft_not_listed", "{width}");
    }
    // a square is not a round of the same width
    let square = json!({ "square": { "side": q(73.0, "mm") } });
    assert!(
        refusable(json!({ "shaft": square, "torque_factor": { "listed_shaft": {} } })).is_err()
    );
}

/// Torque read as pressures: 400 cm3 x 12 at 12 MPa and 88 %: 4.8e-3 x 12e6 x 0.88 / (2 pi) =
/// 8.067 kN m; x 22.966 per m = 185.3 kN.
#[test]
fn a_torque_read_as_pressures() {
    let answer = answer(json!({
        "shaft": round(3.5), "torque_factor": { "listed_shaft": {} },
        "drive": { "displacement": q(400.0, "cm3_per_rev"), "gear_ratio": 12.0, "mechanical_efficiency_ratio": 0.88 },
        "installed": { "reading": { "pressure": {
            "inlet": q(14.2, "MPa"), "return_line": q(9.0, "bar"), "no_load": q(1300.0, "kPa") } } },
    }));
    let installed = answer.result.installed.unwrap();
    near(
        installed
            .differential_pressure
            .unwrap()
            .get(StressUnit::MPa),
        12.0,
        1e-10,
    );
    near(installed.torque.get(MomentUnit::KNM), 8.0672, 0.001);
    near(
        installed.compression.unwrap().ultimate.get(ForceUnit::KN),
        185.27,
        0.01,
    );
    assert_eq!(answer.verdict, Verdict::NotAsked);
}
