//! Figures a practitioner checks: acceptance of a pile, a refusal in debris, a stone.

use super::*;
use crate::quantity::{ForceUnit, LengthUnit, MomentUnit};

fn near(a: f64, b: f64) {
    assert!((a / b - 1.0).abs() < 1e-4, "{a} is not {b}");
}

/// 12.5 kip x 2 / 9 per ft = 2,777.8 ft lbf; the last 3 ft average 2,950, the last 3 x 12 in
/// the same.
#[test]
fn a_good_pile_is_accepted_with_every_check_listed() {
    let answer = answer(&linnet(&GOOD));
    assert_eq!(
        answer.verdict,
        Verdict::Accept,
        "{:?}",
        answer.verdict_reasons
    );
    let found = answer.result.effective.expect("a torque");
    near(found.torque.get(MomentUnit::FtLbf), 2950.0);
    let required = answer.result.required.expect("a torque");
    near(required.torque.get(MomentUnit::FtLbf), 2_777.777_78);
    near(
        found.held_length.expect("a length").get(LengthUnit::Ft),
        6.0,
    );
    assert!(answer.result.next_steps.is_empty());
    let checks: Vec<&str> = answer.checks.iter().map(|c| &*c.id).collect();
    assert_eq!(
        checks,
        [
            "record_shaft_torque",
            "record_plateau",
            "record_row_spacing",
            "record_torque",
            "record_least_torque",
            "record_torque_falling",
            "record_advance",
            "record_advance_in_window",
            "record_rotation_speed",
            "record_tip_depth",
            "record_greatest_depth",
            "record_helix_below_frost",
            "record_helix_below_fill",
            "record_calibration",
            "record_position_along",
            "record_position_off_line",
            "record_inclination",
        ]
    );
}

/// Tip 5.0 ft, lower helix 4.5 ft, upper 2.0 ft, least depth 17 ft, frost 4 ft: rejected,
/// although 5,500 ft lbf x 9 per ft / 2 = 24.75 kip.
#[test]
fn a_refusal_in_debris_is_rejected_whatever_its_torque() {
    let rows = [
        (400.0, 2.8),
        (700.0, 2.8),
        (1400.0, 2.6),
        (2900.0, 1.1),
        (5500.0, 0.1),
    ];
    let rows = rows.iter().enumerate();
    let rows = rows.map(|(i, (t, a))| json!([i + 1, t, a, 9])).collect();
    let request = with(
        linnet(&GOOD),
        json!({ "log": log_of(rows), "stop": "obstruction" }),
    );
    let answer = answer(&request);
    assert_eq!(answer.verdict, Verdict::Reject);
    let failed = failed(&answer);
    for code in [
        "record_obstruction",
        "record_rise_held",
        "record_advance",
        "record_refusal_short",
        "record_helix_below_frost",
        "record_helix_below_fill",
    ] {
        assert!(failed.contains(&code), "{code} is not in {failed:?}");
    }
    let capacity = answer.result.capacity.expect("a capacity");
    assert!(capacity.indicative_only);
    let last = capacity.by_final_torque.expect("by the last torque");
    near(
        last.compression_design
            .expect("allowable")
            .get(ForceUnit::Kip),
        24.75,
    );
    let depths: Vec<f64> = answer
        .result
        .helices
        .iter()
        .map(|h| h.depth.get(LengthUnit::Ft))
        .collect();
    near(depths[0], 2.0);
    near(depths[1], 4.5);
    let steps: Vec<NextStepKind> = answer.result.next_steps.iter().map(|s| s.step).collect();
    assert!(steps.contains(&NextStepKind::PreDrill));
    assert!(steps.contains(&NextStepKind::ExtractAndMove));
    assert!(!steps.contains(&NextStepKind::DriveDeeper));
    assert!(!steps.contains(&NextStepKind::WaitAndRetorque));
    assert_eq!(steps.last(), Some(&NextStepKind::AskEngineer));
}

/// 1,500 / 1,500 / 5,500 averages 2,833, above 2,778, and is not accepted.
#[test]
fn one_stone_does_not_make_a_pile() {
    let mut torques = GOOD.to_vec();
    torques.truncate(17);
    torques.extend([1500.0, 1500.0, 5500.0]);
    let answer = answer(&linnet(&torques));
    assert_ne!(answer.verdict, Verdict::Accept);
    assert!(failed(&answer).contains(&"record_rise_held"));
}
