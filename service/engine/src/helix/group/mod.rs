//! A group of piles, every one as the pile of the request: the sum of its piles, the block
//! of soil they hold between them, and the lesser. Steel, caps and settlement are not here.

mod outcome;
mod request;

#[cfg(feature = "compute")]
mod bearing;
#[cfg(feature = "compute")]
mod compression;
#[cfg(feature = "compute")]
mod design;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
mod plan;
#[cfg(feature = "compute")]
mod sides;
#[cfg(feature = "compute")]
mod together;
#[cfg(feature = "compute")]
mod uplift;

pub use outcome::*;
pub use request::*;

#[cfg(feature = "compute")]
pub(crate) use evaluate::GROUP_SPACING_RATIO;
#[cfg(feature = "compute")]
pub(super) use evaluate::group;
#[cfg(feature = "compute")]
pub(super) use faults::{group_faults, group_lengths};
