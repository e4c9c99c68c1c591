//! What is answered of loads that may be absent on single spans. Types only.

use serde::{Deserialize, Serialize};

use super::ReactionRange;
use crate::layout::request::LoadKind;

/// How loads were left out span by span.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PatternReport {
    /// Kinds of load that may be absent.
    pub kinds: Vec<LoadKind>,
    /// Loaded spans, overhangs and point loads over piles, one for each load case that
    /// loads it; each may be absent by itself.
    pub part_count: u32,
    /// Piles whose greatest compression or tension is greater with some of them absent.
    pub governed_pile_count: u32,
    /// Beams with a greatest moment or shear that is greater with some of them absent.
    pub governed_beam_count: u32,
}

/// Reactions of a pile with the worst spans loaded, positive in compression.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PilePattern {
    /// On rigid supports.
    pub rigid: ReactionRange,
    /// On spring supports.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub spring: Option<ReactionRange>,
}
