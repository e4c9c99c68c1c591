//! `helix-capacity`: what the soil around the helices of a pile carries, in compression
//! and in tension. Steel and torque are not here.

mod basis;
pub mod codes;
mod findings;
mod group;
mod methods;
mod movement;
mod outcome;
mod pile;
mod questions;
mod reliability;
mod request;

#[cfg(feature = "compute")]
mod adhesion;
#[cfg(feature = "compute")]
mod ask;
#[cfg(feature = "compute")]
mod basis_faults;
#[cfg(feature = "compute")]
mod bearing;
#[cfg(feature = "compute")]
mod curve;
#[cfg(feature = "compute")]
mod cylinder;
#[cfg(feature = "compute")]
mod depths;
#[cfg(feature = "compute")]
mod design;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
mod expected_torque;
#[cfg(feature = "compute")]
mod geometry;
#[cfg(feature = "compute")]
mod ground;
#[cfg(feature = "compute")]
mod judge;
#[cfg(feature = "compute")]
mod law;
#[cfg(feature = "compute")]
mod minimum;
#[cfg(feature = "compute")]
mod plates;
#[cfg(feature = "compute")]
pub mod punching;
#[cfg(feature = "compute")]
mod record;
#[cfg(feature = "compute")]
mod reliability_equations;
#[cfg(feature = "compute")]
mod reliability_estimate;
#[cfg(feature = "compute")]
mod reliability_statistics;
#[cfg(feature = "compute")]
mod resistance;
#[cfg(feature = "compute")]
mod rule;
#[cfg(feature = "compute")]
mod rule_eurocode;
#[cfg(feature = "compute")]
mod rule_factors;
#[cfg(feature = "compute")]
mod rules;
#[cfg(feature = "compute")]
mod sets;
#[cfg(feature = "compute")]
mod settings;
#[cfg(feature = "compute")]
mod solve;
#[cfg(feature = "compute")]
pub mod uplift;
#[cfg(feature = "compute")]
mod uplift_bearing;
#[cfg(feature = "compute")]
mod weak;
#[cfg(feature = "compute")]
mod zone;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use basis::*;
pub use findings::*;
pub use group::*;
pub use methods::*;
pub use movement::*;
pub use outcome::*;
pub use pile::*;
pub use questions::*;
pub use reliability::*;
pub use request::*;

#[cfg(feature = "compute")]
pub(crate) use group::GROUP_SPACING_RATIO;
#[cfg(feature = "compute")]
pub(crate) use plates::shaft_faults;
#[cfg(feature = "compute")]
pub use plates::{pile_faults, plate_faults};
#[cfg(feature = "compute")]
pub use resistance::axial_resistance;

use crate::contract::Noun;

/// The calculation `helix-capacity`.
#[derive(Debug)]
pub struct HelixCapacity;

impl Noun for HelixCapacity {
    const NAME: &'static str = "helix-capacity";
    const SUMMARY: &'static str =
        "What the soil around a pile's helices carries in compression and tension.";
    type Request = Request;
    type Outcome = Outcome;
}
