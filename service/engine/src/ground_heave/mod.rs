//! Noun `ground-heave`: how far the ground comes up by freezing and by swelling, and what
//! kind of soil says so. `frost-embedment` uses the same parts for its void form. How deep
//! the ground freezes and what a pile does in it are not here.

pub mod codes;
mod outcome;
mod request;
mod soil_request;
mod swell_request;

#[cfg(feature = "compute")]
mod calculation;
#[cfg(feature = "compute")]
pub mod constants;
#[cfg(feature = "compute")]
pub mod equations;
#[cfg(feature = "compute")]
mod expansive;
#[cfg(feature = "compute")]
pub mod freezing;
#[cfg(feature = "compute")]
mod susceptibility;
#[cfg(feature = "compute")]
pub mod swelling;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use outcome::*;
pub use request::*;
pub use soil_request::*;
pub use swell_request::*;

use crate::contract::Noun;

/// The calculation `ground-heave`.
#[derive(Debug)]
pub struct GroundHeave;

impl Noun for GroundHeave {
    const NAME: &'static str = "ground-heave";
    const SUMMARY: &'static str = "How far does the ground come up by frost and by swelling, and how susceptible is the soil?";
    type Request = Request;
    type Outcome = Outcome;
}
