//! The drive head: both gears of a two-speed motor, turning speed, penetration rate.

use super::*;
use crate::quantity::{Displacement, DisplacementUnit};
use crate::torque::hydraulics::{volume_in_gear, volume_per_pile_turn};
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
