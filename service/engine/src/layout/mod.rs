//! `pile-layout`: where piles go along grade beams so that the fewest carry every load
//! combination, or what piles at given places carry. The beam itself is in `beam`.

pub mod codes;
mod outcome;
mod request;

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
