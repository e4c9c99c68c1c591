//! Noun `frost-embedment`: one pile in ground that freezes. Depth of helix and tip against
//! frost, uplift by adfreeze against what holds the pile down, void form against heave.
//! Frost depth from a freezing index, swelling and downdrag are not here.

pub mod codes;
mod outcome;
mod request;
mod uplift_request;
mod void_outcome;
mod void_request;

#[cfg(feature = "compute")]
mod beam_grip;
#[cfg(feature = "compute")]
mod bond;
#[cfg(feature = "compute")]
mod calculation;
#[cfg(feature = "compute")]
pub mod constants;
#[cfg(feature = "compute")]
mod embedment;
#[cfg(feature = "compute")]
pub mod equations;
#[cfg(feature = "compute")]
mod factors;
#[cfg(feature = "compute")]
mod ground;
#[cfg(feature = "compute")]
mod tension;
#[cfg(feature = "compute")]
mod uplift;
#[cfg(feature = "compute")]
pub mod void_crush;
#[cfg(feature = "compute")]
pub mod void_equations;
#[cfg(feature = "compute")]
mod void_form;
#[cfg(feature = "compute")]
pub mod void_heave;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use outcome::*;
pub use request::*;
pub use uplift_request::*;
pub use void_outcome::*;
pub use void_request::*;

pub use crate::ground_heave::{GivenHeave, HeaveCause};

use crate::contract::Noun;

/// The calculation `frost-embedment`.
#[derive(Debug)]
pub struct FrostEmbedment;

impl Noun for FrostEmbedment {
    const NAME: &'static str = "frost-embedment";
    const SUMMARY: &'static str = "Is the pile deep enough for frost, does frost pull it out, and does the void form leave room for heave?";
    type Request = Request;
    type Outcome = Outcome;
}
