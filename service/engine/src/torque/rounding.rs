//! Torques and pressures as an operator reads them: a target up, a limit down, to whole
//! steps in both unit systems.

use super::card::CabPressure;
use super::outcome::CabTorque;
use crate::quantity::{MomentUnit, Pressure, Shown, StressUnit, Torque, UnitDef, round9};

/// Which way a number is rounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whole {
    /// A target: never below.
    Up,
    /// A limit: never above.
    Down,
}

/// A number in whole steps of `step / per_unit`. What prints as a whole step stays there.
fn whole(value: f64, unit: &UnitDef, per_unit: f64, step: f64, way: Whole) -> Shown {
    let steps = round9(value * per_unit / step);
    let steps = match way {
        Whole::Up => steps.ceil(),
        Whole::Down => steps.floor(),
    };
    Shown::as_read(steps * step / per_unit, unit.name.to_owned())
}

/// A torque to a whole 0.01 kN m and to a whole 10 ft lbf.
pub fn round_torque(torque: Torque, way: Whole) -> CabTorque {
    let of =
        |unit: MomentUnit, per_unit, step| whole(torque.get(unit), unit.def(), per_unit, step, way);
    CabTorque {
        si: of(MomentUnit::KNM, 100.0, 1.0),
        us_customary: of(MomentUnit::FtLbf, 1.0, 10.0),
    }
}

/// A pressure to a whole 0.1 MPa and to a whole 10 psi.
pub fn round_pressure(pressure: Pressure, way: Whole) -> CabPressure {
    let of = |unit: StressUnit, per_unit, step| {
        whole(pressure.get(unit), unit.def(), per_unit, step, way)
    };
    CabPressure {
        si: of(StressUnit::MPa, 10.0, 1.0),
        us_customary: of(StressUnit::Psi, 1.0, 10.0),
    }
}
