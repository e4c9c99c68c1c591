//! Noun `frost-depth`: how deep the ground freezes in a winter that is described by its
//! freezing index, through the layers the cold goes through. A second opinion beside the
//! jurisdiction's depth, which rules. What frost does to a pile is in `frost`.

pub mod codes;
mod layer_request;
mod outcome;
mod request;

#[cfg(feature = "compute")]
pub mod berggren;
#[cfg(feature = "compute")]
mod calculation;
#[cfg(feature = "compute")]
pub mod conduction;
#[cfg(feature = "compute")]
pub mod constants;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
mod ground;
#[cfg(feature = "compute")]
mod insulation;
#[cfg(feature = "compute")]
pub mod kersten;
#[cfg(feature = "compute")]
mod methods;
#[cfg(feature = "compute")]
mod winter;

#[cfg(all(test, feature = "compute"))]
mod tests;

#[cfg(feature = "compute")]
pub use calculation::{computed, lengths};
pub use layer_request::*;
pub use outcome::*;
pub use request::*;

use crate::contract::Noun;

/// The calculation `frost-depth`.
#[derive(Debug)]
pub struct FrostPenetration;

impl Noun for FrostPenetration {
    const NAME: &'static str = "frost-depth";
    const SUMMARY: &'static str = "How deep does the ground freeze by its freezing index, through soil, fill, concrete, insulation or snow, beside the jurisdiction's depth?";
    type Request = Request;
    type Outcome = Outcome;
}
