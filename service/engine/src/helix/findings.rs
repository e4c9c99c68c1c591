//! Answers to the questions of `questions.rs`.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::pile::AxialDirection;
use crate::answer_table::AnswerTable;
use crate::quantity::{Force, Length, Mass, Torque, TorqueFactor};
use crate::source::SourceNote;
use crate::text::Tags;

/// Capacities over the depth of the lowest helix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DepthCurveFindings {
    /// First depth of the lowest helix.
    pub from: Length,
    /// Last depth.
    pub to: Length,
    /// How many depths were computed.
    pub depth_count: u32,
    /// Compression, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<CurveSummary>,
    /// Tension, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<CurveSummary>,
    /// Every depth, where asked: `depth` of the lowest helix; for each direction the
    /// `..._ultimate`, the two modes `..._individual` and `..._cylinder` (with fewer than two
    /// helices in credit the individual bearing stands in both), `compression_punching` (the
    /// ultimate with each helix held at what weaker soil below it takes), `..._capacity` on
    /// the design basis, and `torque` where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub points: Option<AnswerTable>,
}

/// Ends of a curve in one direction.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CurveSummary {
    /// Least ultimate resistance among the depths, the first of them.
    pub least: DepthAndUltimate,
    /// Greatest ultimate resistance among the depths, the first of them.
    pub greatest: DepthAndUltimate,
}

/// One depth of a curve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DepthAndUltimate {
    /// Depth of the lowest helix.
    pub depth: Length,
    /// Ultimate resistance there.
    pub ultimate: Force,
}

/// The least depth that meets every rule.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MinimumDepthFindings {
    /// Depth of the lowest helix from which the search went.
    pub searched_from: Length,
    /// Depth down to which it went.
    pub searched_to: Length,
    /// The least depth of the lowest helix at which everything is met; left out where there
    /// is none.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub depth: Option<Length>,
    /// What is not met just above it, by the code of its check; empty where it is the first
    /// depth of the search, or where there is none.
    pub governed_by: Vec<Cow<'static, str>>,
    /// All ranges of depth in which everything is met, from the top down, at most 20.
    pub passing: Vec<DepthRange>,
    /// What is at the least depth; where there is none, at the depth at which the worst rule
    /// comes nearest to being met.
    pub at: AtDepthFindings,
}

/// A range of depths of the lowest helix.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DepthRange {
    /// Upper end.
    pub from: Length,
    /// Lower end.
    pub to: Length,
}

/// The pile at one depth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AtDepthFindings {
    /// Depth of the lowest helix.
    pub depth: Length,
    /// Depth of the top helix.
    pub top_helix_depth: Length,
    /// Every rule there.
    pub rules: Vec<RuleAtDepth>,
    /// Ultimate resistance in compression, where it was computed.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression_ultimate: Option<Force>,
    /// Ultimate resistance in tension, where it was computed.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension_ultimate: Option<Force>,
    /// Torque to expect, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque: Option<TorqueBand>,
}

/// One rule at a depth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RuleAtDepth {
    /// Code of the check.
    pub rule: Cow<'static, str>,
    /// Demand over capacity; at most 1 is met. Left out where nothing is there to meet the
    /// demand.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_ratio: Option<f64>,
    /// Whether it is met.
    pub met: bool,
}

/// Torque with its band.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorqueBand {
    /// Expected torque.
    pub expected: Torque,
    /// Lower end of the band.
    pub low: Torque,
    /// Upper end of the band.
    pub high: Torque,
}

/// The torque to expect with the lowest helix at the depth of the pile as sent.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ExpectedTorqueFindings {
    /// Direction whose ultimate resistance it is taken from: compression, or tension where
    /// compression is not computed.
    pub from_direction: AxialDirection,
    /// The ultimate resistance.
    pub from_ultimate: Force,
    /// Torque factor in force.
    pub torque_factor: TorqueFactor,
    /// Where the factor comes from.
    pub source: SourceNote,
    /// Half width of the band, as a share.
    pub band_ratio: f64,
    /// The torque.
    pub torque: TorqueBand,
}

/// Sets of helices at their least depths.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct HelixSetsFindings {
    /// Label of the lightest set that works; left out where none does, or where the mass of
    /// a set that works is not known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub lightest: Option<String>,
    /// Labels of the sets that work and whose mass is known, the lightest first.
    pub lightest_first: Vec<String>,
    /// The sets in the order sent.
    pub sets: Vec<HelixSetFindings>,
}

/// One set at its least depth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct HelixSetFindings {
    /// Its name.
    pub label: String,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Whether it meets everything at some depth.
    pub works: bool,
    /// Its least depth.
    pub minimum_depth: MinimumDepthFindings,
    /// Length of shaft at the least depth, from the head to the tip.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub shaft_length: Option<Length>,
    /// Mass of steel at the least depth; left out where wall or plates are not known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub steel_mass: Option<Mass>,
}
