//! What is asked of `helix-capacity`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::basis::HelixBasis;
use super::group::PileGroup;
use super::methods::HelixMethods;
use super::movement::HeadMovement;
use super::pile::HelixPile;
use super::questions::{DepthCurve, ExpectedTorque, HelixSets, MinimumDepth};
use super::reliability::ReliabilityOptions;
use crate::basis::AxialDemand;
use crate::soil::SoilProfile;

/// Ultimate and usable capacity of a helical pile in compression and tension, from the
/// strength of the layers of soil around its helices.
///
/// Individual bearing of the helices and the cylinder of soil between them are both
/// computed and reported; the lesser governs. Steel and
/// buckling are not covered here.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = HelixCapacityRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// The ground.
    #[validate(nested)]
    pub soil: SoilProfile,
    /// The pile.
    #[validate(nested)]
    pub pile: HelixPile,
    /// Directions of load to compute; `both` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub directions: Option<AxialDirections>,
    /// Choice of methods; the defaults when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub methods: Option<HelixMethods>,
    /// Design basis; without it only ultimate values are answered. Required with `demand`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub design_basis: Option<HelixBasis>,
    /// Load to judge the pile by; without it nothing is judged, unless the design basis
    /// carries actions.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub demand: Option<AxialDemand>,
    /// Capacities over a range of depths.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub depth_curve: Option<DepthCurve>,
    /// The least depth that meets the demand and the rules of embedment together.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub minimum_depth: Option<MinimumDepth>,
    /// Sets of helices, of which the lightest that works is asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub helix_sets: Option<HelixSets>,
    /// The installation torque to expect.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub expected_torque: Option<ExpectedTorque>,
    /// Asks for an indicative estimate of reliability.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub reliability: Option<ReliabilityOptions>,
    /// A group of such piles, and the load on it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub group: Option<PileGroup>,
    /// Movement of the head of the pile under load, as an estimate.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub head_movement: Option<HeadMovement>,
}

/// Directions of load to compute.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum AxialDirections {
    /// Compression and tension.
    #[default]
    Both,
    /// Compression alone.
    Compression,
    /// Tension alone.
    Tension,
}
