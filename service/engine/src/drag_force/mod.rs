//! `drag-force`: ground that settles round the shaft and hangs on it. Where the neutral plane
//! is, what drag comes on the steel and what the steel must bear. Capacity of helices is not
//! here, nor is the settlement of the ground.

mod asked;
pub mod codes;
mod friction_request;
mod outcome;
mod request;

#[cfg(feature = "compute")]
mod calculation;
#[cfg(feature = "compute")]
pub mod constants;
#[cfg(feature = "compute")]
mod curve;
#[cfg(feature = "compute")]
pub mod equations;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
mod friction;
#[cfg(feature = "compute")]
mod judge;
#[cfg(feature = "compute")]
mod plane;
#[cfg(feature = "compute")]
mod screening;
#[cfg(feature = "compute")]
mod structural;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use asked::*;
pub use friction_request::*;
pub use outcome::*;
pub use request::*;

#[cfg(feature = "compute")]
pub use {faults::faults, faults::lengths, judge::DragPile, judge::judge};

use crate::contract::Noun;

/// The calculation `drag-force`.
#[derive(Debug)]
pub struct DragForce;

impl Noun for DragForce {
    const NAME: &'static str = "drag-force";
    const SUMMARY: &'static str = "Ground that settles round the shaft: the neutral plane, the drag force on the steel, and whether the steel bears it.";
    type Request = Request;
    type Outcome = Outcome;
}
