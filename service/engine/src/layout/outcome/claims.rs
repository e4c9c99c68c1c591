//! What a search says beside the count: why no layout keeps the limits and what would have
//! to give, whether the layout is its own mirror image, and where beams meet without a
//! pile. Types only.

use serde::{Deserialize, Serialize};

use super::PlanPoint;
use crate::contract::Subject;
use crate::quantity::Shown;

/// Why no layout keeps the limits.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Infeasible {
    /// Whether it is proven that no layout keeps all limits, rather than that none was
    /// found.
    pub proven: bool,
    /// The check that fails most at the layout that is answered, the best one found.
    pub check: String,
    /// What it fails on.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub subject: Option<Subject>,
    /// The combination.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub combination: Option<String>,
    /// What is asked for.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub demand: Option<Shown>,
    /// What is there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub capacity: Option<Shown>,
    /// Demand over capacity; left out where the capacity is nil.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_ratio: Option<f64>,
    /// Single limits that make the plan feasible when they alone give way, by as little as
    /// was found, in the order in which they stand in the request.
    pub relaxations: Vec<Relaxation>,
    /// Limits that cannot do it alone, or for which the counted work did not suffice.
    pub not_alone: Vec<RelaxedLimit>,
}

/// A limit that may give way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum RelaxedLimit {
    /// Capacity of a pile in compression.
    PileCompression,
    /// Capacity of a pile in tension.
    PileTension,
    /// All strengths of all beams, by one factor.
    BeamStrength,
    /// Greatest distance between neighbouring piles.
    MaxSpacing,
    /// Least distance between piles.
    MinSpacing,
    /// Greatest overhang.
    MaxOverhang,
}

/// A limit and the value at which the plan becomes feasible.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Relaxation {
    /// The limit.
    pub limit: RelaxedLimit,
    /// Where it stands in the request.
    pub pointer: String,
    /// What was sent; a factor of 1 for the strength of beams.
    pub from: Shown,
    /// The value with which a layout keeps all limits; it was found by searching again
    /// under it.
    pub to: Shown,
    /// Piles of that layout.
    pub pile_count: u32,
    /// Whether it is proven that no value nearer to the one sent will do, to one part in a
    /// million or to one staking increment; otherwise it is the best found.
    pub exact: bool,
}

/// Whether the layout is its own mirror image.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SymmetryReport {
    /// Whether it is.
    pub symmetric: bool,
    /// How it came about, or why not.
    pub reason: SymmetryReason,
    /// In words.
    pub detail: String,
    /// A point of the mirror line that was used.
    pub through: PlanPoint,
}

/// How a layout came to be its own mirror image, or why it is not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SymmetryReason {
    /// The best layout is symmetric anyway.
    AsFound,
    /// A symmetric layout of the same count that keeps all limits was taken.
    Preferred,
    /// Beams, loads, strengths or limits do not mirror onto themselves.
    PlanNotSymmetric,
    /// Every symmetric layout of that count breaks a limit or has no place on the staking
    /// increments.
    NoneKeepsTheLimits,
    /// None was found within the counted work.
    NoneFound,
    /// The search found no layout that keeps the limits at all.
    Infeasible,
}
