//! What is answered of the stiffness of a pile that was not sent as a number. Types only.

use serde::{Deserialize, Serialize};

use compact_str::CompactString;

use crate::quantity::{Force, Size, SpringStiffness};

/// The stiffness of a pile and where it comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileSupportReport {
    /// Where the stiffness comes from.
    pub pile_stiffness_source: StiffnessSource,
    /// Load over movement of the head; the springs have it.
    pub stiffness: SpringStiffness,
    /// Load at which it is taken.
    pub working_load: Force,
    /// Where that load comes from.
    pub working_load_from: SupportLoadSource,
    /// Movement of the head under it.
    pub movement: Size,
    /// What the shaft and the ground have to do with it; only for an estimate.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub estimate: Option<SupportEstimate>,
}

/// Where the stiffness of a pile comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum StiffnessSource {
    /// Estimated from the ground, the shaft and the helices.
    Estimated,
    /// A load and a movement that the caller measured.
    Measured,
}

/// Where the load comes from at which a stiffness is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SupportLoadSource {
    /// Sent with the support.
    Request,
    /// The allowable capacity of `pile_capacity`.
    AllowableCapacity,
    /// Half of the ultimate resistance of the ground.
    HalfOfUltimate,
}

/// The parts of an estimated stiffness.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SupportEstimate {
    /// Ultimate resistance of the ground in compression.
    pub ultimate: Force,
    /// Load over the shortening of the shaft: A E/L, with the load that is left in it from
    /// helix to helix.
    pub shaft_stiffness: SpringStiffness,
    /// Load over the movement of the lowest helix in the ground.
    pub helix_stiffness: SpringStiffness,
    /// The plan with piles less stiff: helices move twice as far.
    pub soft: SupportBound,
    /// The plan with stiffer piles: helices move half as far.
    pub stiff: SupportBound,
}

/// The plan on springs of another stiffness, with all loads everywhere.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SupportBound {
    /// The stiffness.
    pub stiffness: SpringStiffness,
    /// Greatest compression of any pile over all combinations.
    pub compression: Force,
    /// Label of that pile.
    pub pile: String,
    /// Its combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
}
