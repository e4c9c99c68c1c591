//! The ground: a layered profile with its water, and the strength of its layers, sent or
//! found from tests. What a soil carries is for the calculations.

pub mod codes;
mod cpt;
mod derived;
mod grade;
mod kind;
mod profile;
mod spt;
mod strength;

#[cfg(feature = "compute")]
pub mod correlations;
#[cfg(feature = "compute")]
mod derive;
#[cfg(feature = "compute")]
mod derive_drained;
#[cfg(feature = "compute")]
mod derive_undrained;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
mod strata;
#[cfg(feature = "compute")]
mod strength_faults;
#[cfg(feature = "compute")]
mod stress;
#[cfg(feature = "compute")]
mod weights;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use cpt::*;
pub use derived::*;
pub use grade::*;
pub use kind::*;
pub use profile::*;
pub use spt::*;
pub use strength::*;

#[cfg(feature = "compute")]
pub use strata::*;
#[cfg(feature = "compute")]
pub use weights::{WATER_UNIT_WEIGHT, moist_unit_weight, saturated_unit_weight};
