//! What a caller of a search may leave open or wish: corners and junctions without a pile,
//! and a layout that mirrors onto itself. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::PlanPoint;
use crate::quantity::{Angle, AngleUnit};

const HALF_TURN: Angle = Angle::new(180.0, AngleUnit::Deg);

/// Whether a pile stands wherever beams meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum JunctionPiles {
    /// At every corner and junction.
    Required,
    /// Where the count needs one; elsewhere beams rest on each other. A beam that ends on
    /// one that goes on has its last pile within `max_spacing` of that end. At a corner all
    /// beams end, so it may go without a pile only within `max_overhang` of the last pile
    /// of every one of them.
    WhereNeeded,
}

/// A wish for a layout that is its own mirror image. It never costs a pile and never a
/// limit; among layouts of equal count it goes before the lowest utilisation.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SymmetryWish {
    /// Direction of the mirror line, anticlockwise from east: 90 degrees for a house whose
    /// west half mirrors its east half. 0 to 180 degrees.
    #[validate(range(min = Angle::ZERO, max = HALF_TURN))]
    pub direction: Angle,
    /// A point of the mirror line; left out, the middle between the plan's outermost points.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub through: Option<PlanPoint>,
}
