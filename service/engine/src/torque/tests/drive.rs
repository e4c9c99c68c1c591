//! The drive head: both gears of a two-speed motor, turning speed, penetration rate.

use super::*;
use crate::quantity::{Displacement, DisplacementUnit};
use crate::quantity::{
    Flow, FlowUnit, LengthUnit, MomentUnit, RotationUnit, Size, StressUnit, VelocityUnit,
};
use crate::torque::hydraulics::{volume_in_gear, volume_per_pile_turn};
use crate::torque::speed::turning_speed;
use crate::torque::{DriveGear, DriveHead};

fn head(json: Json) -> DriveHead {
    serde_json::from_value(json).expect("a drive head")
}

/// 40 and 20 in3 a turn of the motor through a gear of 6: 240 and 120 in3 a turn of the pile.
#[test]
fn a_two_speed_motor_has_a_volume_in_each_gear() {
    let two = head(json!({ "displacement": q(40.0, "in3_per_rev"),
        "fast_displacement": q(20.0, "in3_per_rev"), "gear_ratio": 6.0,
        "mechanical_efficiency_ratio": 0.9 }));
    let volume = |drive: &DriveHead, gear| volume_in_gear(drive, gear, &mut Trace::off());
    let inches = |v: Option<Displacement>| v.unwrap().get(DisplacementUnit::In3PerRev);
    near(inches(volume(&two, DriveGear::Slow)), 240.0, 1e-10);
    near(inches(volume(&two, DriveGear::Fast)), 120.0, 1e-10);
    assert_eq!(
        volume(&two, DriveGear::Slow),
        Some(volume_per_pile_turn(&two, &mut Trace::off()))
    );
    let one = head(json!({ "displacement": q(240.0, "in3_per_rev"),
        "displacement_includes_gear": true, "mechanical_efficiency_ratio": 0.9 }));
    near(inches(volume(&one, DriveGear::Slow)), 240.0, 1e-10);
    assert_eq!(volume(&one, DriveGear::Fast), None);
}

/// A two-speed head of 240 and 120 in3 a turn at 30 gpm and 0.95.
fn two_speed(more: Json) -> Json {
    let mut drive = json!({ "displacement": q(240.0, "in3_per_rev"),
        "fast_displacement": q(120.0, "in3_per_rev"), "displacement_includes_gear": true,
        "mechanical_efficiency_ratio": 0.9 });
    for (key, value) in more.as_object().unwrap() {
        drive[key] = value.clone();
    }
    drive
}

/// rpm = 231 x 30 x 0.95 / 240 = 27.43 in the slow gear, 54.86 in the fast one; at 3 in a turn
/// 6.858 and 13.716 ft a minute (231 in3 in a US gallon, exact).
#[test]
fn a_flow_turns_the_pile_in_each_gear() {
    let found = answer(json!({ "drive": two_speed(json!({
        "flow": q(30.0, "gal_per_min"), "volumetric_efficiency_ratio": 0.95,
        "helix_pitch": q(3.0, "in") })) }));
    let drive = found.result.drive.unwrap();
    let slow = drive.speed.unwrap();
    near(step(&found, "n") * 60.0, 54.8625, 1e-10);
    near(
        slow.rotational_speed.get(RotationUnit::Rpm),
        27.43125,
        1e-10,
    );
    let rate =
        |s: crate::torque::PileSpeed| s.penetration_rate.unwrap().get(VelocityUnit::FtPerMin);
    near(rate(slow), 6.857812_5, 1e-10);
    let fast = drive.fast.unwrap().speed.unwrap();
    near(fast.rotational_speed.get(RotationUnit::Rpm), 54.8625, 1e-10);
    near(rate(fast), 13.715625, 1e-10);
    // above 30 in the fast gear only
    let told: Vec<_> = found
        .warnings
        .iter()
        .filter(|w| w.code == "pile_turns_fast")
        .collect();
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].detail, "54.8625 rpm in the fast gear, above 30 rpm");
    assert_eq!(found.verdict, crate::contract::Verdict::NotAsked);
    // on the limit it does not warn: 30 x 120 / (231 x 0.95)
    let limit = answer(json!({ "drive": { "displacement": q(120.0, "in3_per_rev"),
        "mechanical_efficiency_ratio": 0.9, "flow": q(3600.0 / 219.45, "gal_per_min"),
        "volumetric_efficiency_ratio": 0.95 } }));
    assert!(!warns(&limit, "pile_turns_fast"));
    assert!(limit.result.drive.unwrap().fast.is_none());
}

/// The fast gear gives half the torque at the same pressure, and needs twice the pressure for
/// the same torque: 2,500 psi x 240 x 0.9 / (24 pi) = 7,161.97 and 3,580.99 ft lbf.
#[test]
fn the_slow_gear_is_judged_and_the_fast_one_shown() {
    let of = |load: f64| {
        planned(
            round(2.875),
            json!({ "drive": two_speed(json!({ "working_pressures": { "inlet": q(2700.0, "psi"),
                "return_line": q(200.0, "psi") } })), "torsion": { "rating": q(5500.0, "ft_lbf") },
                "demand": { "level": "allowable", "compression": q(load, "kip") } }),
        )
    };
    let found = of(18.0);
    let drive = found.result.drive.unwrap();
    let fast = drive.fast.unwrap();
    near(
        drive.available.unwrap().torque.get(MomentUnit::FtLbf),
        7161.97244,
        1e-6,
    );
    near(
        fast.available.unwrap().torque.get(MomentUnit::FtLbf),
        3580.98622,
        1e-6,
    );
    // 18 x 2 / 9 = 4,000 ft lbf: 24 pi x 4,000 / 216 = 1,396.26 psi, and 200 of the return line
    let slow = drive.for_required.unwrap();
    near(
        slow.differential_pressure.get(StressUnit::Psi),
        1396.2634,
        1e-6,
    );
    near(
        slow.inlet_pressure.unwrap().get(StressUnit::Psi),
        1596.2634,
        1e-6,
    );
    let quick = fast.for_required.unwrap();
    near(
        quick.differential_pressure.get(StressUnit::Psi),
        2792.5268,
        1e-6,
    );
    assert_eq!(
        status(&found, "drive_torque"),
        crate::contract::CheckStatus::Pass
    );
    assert_eq!(found.verdict, crate::contract::Verdict::Accept);
    let names: Vec<_> = found
        .steps
        .as_ref()
        .unwrap()
        .iter()
        .filter_map(|s| s.subject.as_deref())
        .collect();
    assert!(names.contains(&"drive head, slow gear") && names.contains(&"drive head, fast gear"));
}

/// Pressures read in the fast gear stand for half the torque.
#[test]
fn a_reading_names_its_gear() {
    let of = |drive: Json, gear: Option<&str>| {
        let mut pressure = json!({ "inlet": q(2000.0, "psi"), "return_line": q(100.0, "psi") });
        if let Some(gear) = gear {
            pressure["gear"] = json!(gear);
        }
        refusable(
            json!({ "shaft": round(2.875), "torque_factor": { "listed_shaft": {} },
            "drive": drive, "installed": { "reading": { "pressure": pressure } } }),
        )
    };
    let torque = |gear: &str| {
        let found = of(two_speed(json!({})), Some(gear)).unwrap();
        found
            .result
            .installed
            .unwrap()
            .torque
            .get(MomentUnit::FtLbf)
    };
    // 1,900 x 240 x 0.9 / (24 pi)
    near(torque("slow"), 5443.09905, 1e-6);
    near(torque("fast"), 2721.54953, 1e-6);
    let issue = of(two_speed(json!({})), None).unwrap_err().issues[0].clone();
    assert_eq!(
        (issue.pointer.as_str(), issue.code.as_ref()),
        ("/installed/reading/pressure", "missing_member")
    );
    assert!(issue.detail.contains("`gear`"));
    let one =
        json!({ "displacement": q(240.0, "in3_per_rev"), "mechanical_efficiency_ratio": 0.9 });
    let issue = of(one.clone(), Some("fast")).unwrap_err().issues[0].clone();
    assert_eq!(
        (issue.pointer.as_str(), issue.code.as_ref()),
        ("/drive", "missing_member")
    );
    assert_eq!(
        of(one.clone(), Some("slow")).unwrap().result,
        of(one, None).unwrap().result
    );
}

#[test]
fn flow_and_its_efficiency_go_together() {
    for (more, name) in [
        (
            json!({ "flow": q(30.0, "gal_per_min") }),
            "`volumetric_efficiency_ratio`",
        ),
        (
            json!({ "volumetric_efficiency_ratio": 0.9, "target_torque": q(1.0, "kN_m") }),
            "`flow`",
        ),
        (
            json!({ "helix_pitch": q(3.0, "in"), "target_torque": q(1.0, "kN_m") }),
            "`flow`",
        ),
    ] {
        let issues = refusable(json!({ "drive": two_speed(more) }))
            .unwrap_err()
            .issues;
        assert_eq!(issues.len(), 1);
        assert_eq!(
            (issues[0].pointer.as_str(), issues[0].code.as_ref()),
            ("/drive", "missing_member")
        );
        assert!(issues[0].detail.starts_with(name), "{issues:?}");
    }
}

proptest::proptest! {
    /// More flow never turns slower, more volume never faster; speed times volume is the flow.
    #[test]
    fn speed_follows_flow_and_volume(
        flow in 0.1..5000.0f64, volume in 1.0..2e5f64, eta in 0.5..1.0f64, more in 1.0..3.0f64,
    ) {
        let n = |flow: f64, volume: f64| {
            let volume = Displacement::new(volume, DisplacementUnit::Cm3PerRev);
            turning_speed(Flow::new(flow, FlowUnit::LPerMin), eta, volume, &mut Trace::off())
        };
        proptest::prop_assert!(n(flow * more, volume) >= n(flow, volume));
        proptest::prop_assert!(n(flow, volume * more) <= n(flow, volume));
        let back = n(flow, volume).get(RotationUnit::Rpm) * volume * 1e-3;
        proptest::prop_assert!((back / (flow * eta) - 1.0).abs() < 1e-12);
        let pitch = Size::new(76.2, LengthUnit::Mm);
        let rate = crate::torque::speed::penetration_rate(n(flow, volume), pitch, &mut Trace::off());
        proptest::prop_assert!((rate.si() / n(flow, volume).si() / 0.0762 - 1.0).abs() < 1e-12);
    }
}
