//! Movement of the head of the pile under load, as an estimate: an elastic shaft on helices
//! that each follow a hyperbola. Consolidation, creep, groups and buckling are not here.

mod outcome;
mod request;

#[cfg(feature = "compute")]
mod asked;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
mod model;

pub use outcome::*;
pub use request::*;

#[cfg(feature = "compute")]
pub use asked::{COARSE_MOVEMENT, FINE_MOVEMENT};
#[cfg(feature = "compute")]
pub(super) use evaluate::head_movement;
#[cfg(feature = "compute")]
pub(super) use faults::head_movement_faults;
