//! `pile-layout`: where piles go along grade beams so that the fewest carry every load
//! combination, or what piles at given places carry. The beam itself is in `beam`.

mod basis;
#[cfg(feature = "compute")]
pub(crate) mod bracing;
pub mod codes;
mod outcome;
mod request;

#[cfg(feature = "compute")]
mod analysis;
#[cfg(feature = "compute")]
pub(crate) mod bench;
#[cfg(feature = "compute")]
mod calc;
#[cfg(feature = "compute")]
mod combine;
#[cfg(feature = "compute")]
mod equations;
#[cfg(feature = "compute")]
mod frame;
#[cfg(feature = "compute")]
mod judge;
#[cfg(feature = "compute")]
mod judge_structure;
#[cfg(feature = "compute")]
mod lengths;
#[cfg(feature = "compute")]
mod lift_off;
#[cfg(feature = "compute")]
mod moments;
#[cfg(feature = "compute")]
mod movements;
#[cfg(feature = "compute")]
mod options;
#[cfg(feature = "compute")]
mod outline;
#[cfg(feature = "compute")]
mod pattern;
#[cfg(feature = "compute")]
mod plan;
#[cfg(feature = "compute")]
mod published;
#[cfg(feature = "compute")]
mod report;
#[cfg(feature = "compute")]
mod search;
#[cfg(feature = "compute")]
mod sent_loads;
#[cfg(feature = "compute")]
mod service;
#[cfg(feature = "compute")]
mod site;
#[cfg(feature = "compute")]
mod slab;
#[cfg(feature = "compute")]
mod spans;
#[cfg(feature = "compute")]
mod staking;
#[cfg(feature = "compute")]
mod strength;
#[cfg(feature = "compute")]
mod support;
#[cfg(all(test, feature = "compute"))]
mod tests;
#[cfg(feature = "compute")]
mod touching;
#[cfg(feature = "compute")]
mod tributary;
#[cfg(feature = "compute")]
mod types;

pub use basis::*;
pub use outcome::*;
pub use request::*;

use crate::contract::Noun;

/// The calculation `pile-layout`.
pub struct PileLayout;

impl Noun for PileLayout {
    const NAME: &'static str = "pile-layout";
    const SUMMARY: &'static str = "Finds the fewest piles along grade beams, or analyses given ones, by continuous-beam reactions in every load combination.";
    type Request = Request;
    type Outcome = Outcome;
}
