//! Noun `frost-embedment`: one pile in ground that moves. Depth of helix and tip against
//! frost, fill, active zone and collapsing soil; uplift by adfreeze and by swelling soil
//! against what holds the pile down; the beam's sides and underside; void form against heave.

mod beam_request;
pub mod codes;
mod outcome;
mod path_request;
mod request;
mod resistance_request;
mod section_outcome;
mod swell_outcome;
mod swell_request;
mod uplift_outcome;
mod uplift_request;
mod void_outcome;
mod void_request;

#[cfg(feature = "compute")]
mod adhesion;
#[cfg(feature = "compute")]
mod beam_grip;
#[cfg(feature = "compute")]
mod bond;
#[cfg(feature = "compute")]
mod calculation;
#[cfg(feature = "compute")]
mod combined;
#[cfg(feature = "compute")]
pub mod constants;
#[cfg(feature = "compute")]
mod depth;
#[cfg(feature = "compute")]
mod drag;
#[cfg(feature = "compute")]
mod embedment;
#[cfg(feature = "compute")]
pub mod equations;
#[cfg(feature = "compute")]
mod factors;
#[cfg(feature = "compute")]
mod governing;
#[cfg(feature = "compute")]
mod ground;
#[cfg(feature = "compute")]
mod ground_faults;
#[cfg(feature = "compute")]
mod measures;
#[cfg(feature = "compute")]
mod resist;
#[cfg(feature = "compute")]
mod section;
#[cfg(feature = "compute")]
mod stages;
#[cfg(feature = "compute")]
mod swell;
#[cfg(feature = "compute")]
pub mod swell_equations;
#[cfg(feature = "compute")]
mod swell_faults;
#[cfg(feature = "compute")]
mod tension;
#[cfg(feature = "compute")]
mod underside;
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
#[cfg(feature = "compute")]
mod weight;

#[cfg(all(test, feature = "compute"))]
mod tests;

pub use beam_request::*;
pub use outcome::*;
pub use path_request::*;
pub use request::*;
pub use resistance_request::*;
pub use section_outcome::*;
pub use swell_outcome::*;
pub use swell_request::*;
pub use uplift_outcome::*;
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
    const SUMMARY: &'static str = "Is the pile deep enough for frost, does frost or swelling soil pull it out, and does the void form leave room for heave?";
    type Request = Request;
    type Outcome = Outcome;
}
