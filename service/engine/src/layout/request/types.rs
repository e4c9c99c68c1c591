//! Piles that a caller may choose from, and ground that differs over the plan. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::{CAPACITY_MIN, CapacityLevel, FORCE_MAX, PlanPoint, STIFFNESS_MAX, STIFFNESS_MIN};
use crate::quantity::{Force, LengthUnit, Size, SpringStiffness};
use crate::text::{Label, Tags};

/// Least diameter of a helix.
pub(super) const HELIX_MIN: Size = Size::new(50.0, LengthUnit::Mm);
/// Greatest diameter of a helix.
pub(super) const HELIX_MAX: Size = Size::new(3_000.0, LengthUnit::Mm);

/// The caller's own piles to choose from, instead of one `pile_capacity`.
///
/// Types are preferred in this order: least cost where costs are given, least
/// compression, least tension, the first in the list. A pile that is not told its type
/// takes the first in this order that carries its compression and its tension; where none
/// does, the one that is used least.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileTypes {
    /// Whether these are allowable capacities (with `allowable_stress`) or factored
    /// resistances (with `limit_states`); the two are never mixed.
    pub level: CapacityLevel,
    /// The types; 1 to 40.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 40))]
    pub types: Vec<PileType>,
    /// Currency of every `cost`; echoed, never interpreted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub currency: Option<Label>,
}

/// A type of pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileType {
    /// Its name, no two alike.
    #[validate(nested)]
    pub label: Label,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Capacity in compression; 0.01 to 10,000 kN.
    #[validate(range(min = CAPACITY_MIN, max = FORCE_MAX))]
    pub compression: Force,
    /// Capacity in tension; 0 to 10,000 kN.
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub tension: Force,
    /// Its stiffness at the head, instead of `pile_stiffness`; 10 to 100,000,000 kN/m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = STIFFNESS_MIN, max = STIFFNESS_MAX))]
    pub stiffness: Option<SpringStiffness>,
    /// What one costs, in place; either every type has a cost or none. 0 to 1,000,000,000
    /// in `currency`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1e9))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0, maximum = 1e9))]
    pub cost: Option<f64>,
    /// Diameter of its largest helix, for the least spacing; 50 to 3,000 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = HELIX_MIN, max = HELIX_MAX))]
    pub largest_helix: Option<Size>,
}

/// A part of the plan where piles carry something else than elsewhere. A pile on the
/// border (3 mm) of one zone has the lower capacity of inside and outside, on a border of
/// several zones the lowest of theirs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SoilZone {
    /// Its name, no two alike.
    #[validate(nested)]
    pub label: Label,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Corners in order, without repeating the first; 3 to 200.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 3, max_items = 200))]
    pub corners: Vec<PlanPoint>,
    /// What a pile carries here: one entry for every type of `pile_types`, or a single
    /// one without `pile_type` beside `pile_capacity`.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 40))]
    pub capacities: Vec<ZoneCapacity>,
}

/// What a pile carries in a zone, at the level of its capacity elsewhere.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ZoneCapacity {
    /// Label of the type in `pile_types`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile_type: Option<Label>,
    /// In compression; 0.01 to 10,000 kN.
    #[validate(range(min = CAPACITY_MIN, max = FORCE_MAX))]
    pub compression: Force,
    /// In tension; 0 to 10,000 kN.
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub tension: Force,
}
