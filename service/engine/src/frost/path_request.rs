//! What is asked about the pile itself: its own weight, and what its coupling, head and the
//! anchor into the beam carry in tension.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::resistance_request::TensionLevel;
use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit};
use crate::text::Label;

/// The pile's own weight.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PileWeight {
    /// From the steel of the shaft between head and tip, as if all of it were under water;
    /// the helices are left out. Needs the wall of a round shaft.
    FromShaft(WeightFromShaft),
    /// The caller's own.
    Given(GivenWeight),
}

validate_choice!(PileWeight { FromShaft = "from_shaft", Given = "given" });

/// Weight computed from the shaft.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct WeightFromShaft {}

/// Weight sent by the caller.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenWeight {
    /// Weight of the pile, not contained in any dead load sent; 0 to 1 MN.
    #[validate(range(min = Force::ZERO, max = Force::new(1000.0, ForceUnit::KN)))]
    pub weight: Force,
    /// Where it comes from.
    #[validate(nested)]
    pub reference: Label,
}

/// What the parts that pass tension on carry; at least one of them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TensionPath {
    /// Whether these are allowable, which goes with `allowable_stress`, or factored, which
    /// goes with `limit_states`; another pair is refused.
    pub level: TensionLevel,
    /// Coupling of the shaft with its bolts, and the shaft; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub coupling: Option<Force>,
    /// Head or bracket on the pile; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub head: Option<Force>,
    /// Anchor of the head in the beam; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub beam_anchor: Option<Force>,
    /// Where they come from, such as an evaluation report.
    #[validate(nested)]
    pub reference: Label,
}
