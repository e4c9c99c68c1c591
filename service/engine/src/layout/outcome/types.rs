//! Types of pile in the answer: how many of each, and what they cost. Types only.

use serde::{Deserialize, Serialize};

use crate::text::Tags;

/// How many piles are of a type.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileTypeCount {
    /// Label of the type.
    pub pile_type: String,
    /// Codes as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Piles of this type.
    pub pile_count: u32,
    /// What they cost together.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cost: Option<PileCost>,
}

/// A sum of money, rounded to 0.01 (a half to the even digit).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileCost {
    /// The sum.
    pub value: f64,
    /// The caller's currency.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub currency: Option<String>,
}

/// What a search for least cost can claim.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CostReport {
    /// Cost of the piles found.
    pub total_cost: PileCost,
    /// No layout within the limits costs less than this. A pile that beams share counts
    /// with the cheapest type.
    pub lower_bound_cost: PileCost,
    /// Cost found less the lower bound; 0 where what was found does not keep the limits.
    pub gap_cost: PileCost,
}
