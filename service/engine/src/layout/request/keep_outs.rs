//! Where no pile may stand: things in the ground and above it, boundaries, stretches of a
//! beam. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::{LONG, PlanPoint, SPACING_MAX};
use crate::choice::validate_choice;
use crate::quantity::Length;
use crate::text::{Label, Tags};

/// Something that piles keep away from. A search puts no pile nearer than the clearance;
/// given piles are checked.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct KeepOut {
    /// Its name, no two alike.
    #[validate(nested)]
    pub label: Label,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// What it is or why, in the caller's words; echoed in checks.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub why: Option<Label>,
    /// Where it lies.
    #[validate(nested)]
    pub shape: KeepOutShape,
    /// Least distance from the shape to the centre of a pile. Half a helix, the tolerance
    /// of the position and the reach of the rig are the caller's to add. 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = SPACING_MAX))]
    pub clearance: Length,
}

/// Where a keep-out lies.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum KeepOutShape {
    /// An area; piles stay outside.
    Polygon(KeepOutPolygon),
    /// A round thing, such as a tree or a boulder; piles stay outside.
    Circle(KeepOutCircle),
    /// A line, such as a pipe; piles stay away on both sides.
    Line(KeepOutLine),
    /// A straight boundary without end, such as a property line; piles stay on one side.
    Boundary(KeepOutBoundary),
    /// A lot; piles stay inside.
    Lot(KeepOutPolygon),
}

validate_choice!(KeepOutShape {
    Polygon = "polygon", Circle = "circle", Line = "line", Boundary = "boundary", Lot = "lot"
});

/// An area by its corners.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct KeepOutPolygon {
    /// Corners in order, without repeating the first; 3 to 200.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 3, max_items = 200))]
    pub corners: Vec<PlanPoint>,
}

/// A circle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct KeepOutCircle {
    /// Its centre.
    #[validate(nested)]
    pub centre: PlanPoint,
    /// Its radius; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = SPACING_MAX))]
    pub radius: Length,
}

/// A line of straight parts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct KeepOutLine {
    /// Its points; 2 to 200.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 2, max_items = 200))]
    pub points: Vec<PlanPoint>,
}

/// A straight boundary without end, through two points.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct KeepOutBoundary {
    /// A point on it.
    #[validate(nested)]
    pub from: PlanPoint,
    /// Another point on it.
    #[validate(nested)]
    pub to: PlanPoint,
    /// Side of the piles, looking from `from` to `to`.
    pub piles_on: BoundarySide,
}

/// Side of a boundary.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum BoundarySide {
    /// Left of it.
    Left,
    /// Right of it.
    Right,
}

/// A stretch of a beam where the search puts no pile; at its ends one may stand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ForbiddenStretch {
    /// Label of the beam.
    #[validate(nested)]
    pub beam: Label,
    /// Where it begins, along the beam from its first point.
    #[validate(range(min = Length::ZERO, max = LONG))]
    pub from: Length,
    /// Where it ends, along the beam from its first point.
    #[validate(range(min = Length::ZERO, max = LONG))]
    pub to: Length,
}

/// What a search makes as small as it can.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SearchObjective {
    /// The number of piles; then the highest utilisation.
    FewestPiles,
    /// The sum of the costs of the piles; every type of `pile_types` needs a cost.
    LeastCost,
}
