//! `corrosion-loss`: the steel that the ground takes over a life, and the section that is left.
//! Strength of the pile as a whole, bolts and threads are not here.

pub mod codes;
mod outcome;
mod request;
mod section_request;
mod soil_request;

#[cfg(feature = "compute")]
mod calculation;
#[cfg(feature = "compute")]
pub mod classify;
#[cfg(feature = "compute")]
pub mod coating;
#[cfg(feature = "compute")]
pub mod constants;
#[cfg(feature = "compute")]
pub mod equations;
#[cfg(feature = "compute")]
mod method;
#[cfg(feature = "compute")]
mod section;
#[cfg(feature = "compute")]
pub mod thresholds;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use outcome::*;
pub use request::*;
pub use section_request::*;
pub use soil_request::*;

use crate::contract::Noun;

/// The calculation `corrosion-loss`.
#[derive(Debug)]
pub struct CorrosionLoss;

impl Noun for CorrosionLoss {
    const NAME: &'static str = "corrosion-loss";
    const SUMMARY: &'static str = "How aggressive is the ground, how much steel does it take over a life, and what is left of shaft and helix?";
    type Request = Request;
    type Outcome = Outcome;
}
