//! What is asked about single rows of piles without lateral bracing. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Length, LengthUnit, Size};

const HEIGHT_MIN: Length = Length::new(0.5, LengthUnit::M);
const HEIGHT_MAX: Length = Length::new(500.0, LengthUnit::M);
pub(super) const WALL_MIN: Size = Size::new(25.0, LengthUnit::Mm);
pub(super) const WALL_MAX: Size = Size::new(3_000.0, LengthUnit::Mm);

/// Whether single rows of piles may stand without lateral bracing. Every pile of the plan is
/// judged as one of a single row; piles in groups with a rigid cap are not looked for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SingleRowBracing {
    /// What is built.
    pub building: BracedBuilding,
    /// Storeys above grade plane; 1 to 100.
    #[validate(range(min = 1, max = 100))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 100))]
    pub storey_count: u32,
    /// Height of the building as its code measures it; 0.5 to 500 m.
    #[validate(range(min = HEIGHT_MIN, max = HEIGHT_MAX))]
    pub height: Length,
    /// Width of the walls that the piles support, where a beam has no `wall_width` of its own;
    /// 25 to 3,000 mm.
    #[validate(range(min = WALL_MIN, max = WALL_MAX))]
    pub wall_width: Size,
}

/// Kinds of building.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum BracedBuilding {
    /// A one- or two-family dwelling.
    OneOrTwoFamilyDwelling,
    /// Light construction of another use.
    LightConstruction,
    /// Anything else: a single row needs bracing, which is not judged here.
    Other,
}
