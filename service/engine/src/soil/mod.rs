//! The ground: a layered profile with its water table. Effective stress and layer
//! look-up live here; what a soil carries is for the calculations.

pub mod codes;
mod kind;
mod profile;
#[cfg(feature = "compute")]
mod strata;
#[cfg(feature = "compute")]
mod stress;

pub use kind::*;
pub use profile::*;
#[cfg(feature = "compute")]
pub use strata::*;
#[cfg(feature = "compute")]
pub use stress::*;
