//! What is answered of torsion, of piles that lift off and of settlements. Types only.

use serde::{Deserialize, Serialize};

use compact_str::CompactString;

use super::SupportModel;
use crate::layout::request::PlanPoint;
use crate::quantity::{Length, Moment, Size};

/// A torque with its place and combination.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorsionExtreme {
    /// The torque, never negative; it does not change between piles and junctions.
    pub torque: Moment,
    /// Where the part of the beam begins on which it acts.
    pub at: PlanPoint,
    /// The combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
    /// The support model.
    pub supports: SupportModel,
}

/// A pile from which the beam lifts off.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LiftedPile {
    /// Label of the pile.
    pub pile: String,
    /// The support model.
    pub supports: SupportModel,
    /// The combinations in which it carries nothing.
    pub combinations: Vec<String>,
}

/// The greatest settlement of a pile, on spring supports.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TotalSettlement {
    /// Label of the pile.
    pub pile: String,
    /// How far its head goes down under the loads of the combination.
    pub settlement: Size,
    /// The combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
}

/// The two neighbouring piles along a straight run of beam between which the settlement
/// differs most for their distance, on spring supports.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DifferentialSettlement {
    /// Label of the pile that settles more.
    pub from: String,
    /// Label of the other.
    pub to: String,
    /// Difference of their settlements.
    pub difference: Size,
    /// Their distance.
    pub distance: Length,
    /// Difference by distance.
    pub angular_distortion_ratio: f64,
    /// The combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
}
