//! Relations between tests and strengths, one published equation each. Which of them runs
//! for a layer, and on which stresses, is in `derive.rs`.

pub mod cone;
pub mod friction;
pub mod penetration;
pub mod undrained;

use crate::quantity::{SoilStress, StressUnit};
use crate::source::{REFERENCE_PRESSURE, Sourced};

/// Pressure that blow counts and cone resistances are compared at.
pub static ATMOSPHERE: Sourced<SoilStress> = Sourced::new(
    "reference_pressure",
    SoilStress::new(100.0, StressUnit::KPa),
    &REFERENCE_PRESSURE,
);
