//! Loads that may be absent on single spans, as the caller sends them. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::LoadKind;

/// Loads that may be absent on any span.
///
/// A span is what lies between two neighbouring piles along a straight run of beam, or
/// beyond the last pile; a point load over a pile is a part of its own. Each load case of
/// these kinds is there or not on each span by itself, in every combination that it takes
/// part in, whichever is worse for each pile and for each point of the beams.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PatternLoad {
    /// Kinds of load that may be absent; `live` alone when left out. `dead` cannot be among
    /// them.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 8))]
    pub kinds: Option<Vec<LoadKind>>,
}
