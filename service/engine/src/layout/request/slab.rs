//! Structural slabs on void form that span to the grade beams, as the caller sends them.
//! Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::{LoadKind, PlanPoint};
use crate::choice::validate_choice;
use crate::quantity::{Angle, AngleUnit, AreaLoad, StressUnit};
use crate::text::{Label, Tags};

const AREA_MAX: AreaLoad = AreaLoad::new(1_000.0, StressUnit::KPa);
const AREA_MIN: AreaLoad = AreaLoad::new(-1_000.0, StressUnit::KPa);

/// A slab that spans to grade beams and rests on nothing between them (on void form).
///
/// Every edge that carries load must lie on beams: within 3 mm of their centre line, or
/// within half the width of the beam where it has one. Beyond the end of a beam an edge may
/// reach by as much. Slabs may meet; where they overlap, both loads act.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct StructuralSlab {
    /// Name of the slab, no two alike; `S1`, `S2`, ... in the order given when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Corners in order round the slab, in either direction, the first not repeated. A corner
    /// nearer than 3 mm to the straight line through its neighbours is none.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 3, max_items = 50))]
    pub corners: Vec<PlanPoint>,
    /// How its load goes to its edges. Left out: one way across the short side where the
    /// smallest rectangle about the slab is at least twice as long as it is wide, else two
    /// way.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub spanning: Option<SlabSpanning>,
    /// Loads over the whole slab, its own weight among them if it is to count; 1 to 64.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 64))]
    pub loads: Vec<SlabLoad>,
}

/// How the load of a slab goes to its edges.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SlabSpanning {
    /// Every point goes to the edge it is nearest to: lines at 45 degrees from the corners of
    /// a rectangle, bisectors of the corners of any convex slab.
    TwoWay(TwoWaySlab),
    /// Strips side by side, each with half of its load at either end.
    OneWay(OneWaySlab),
}

validate_choice!(SlabSpanning { TwoWay = "two_way", OneWay = "one_way" });

/// A slab that spans to all of its edges; it must be convex.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TwoWaySlab {}

/// A slab of strips in one direction. An edge along the strips carries nothing and needs no
/// beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OneWaySlab {
    /// Direction of the strips.
    #[validate(nested)]
    pub strips: SlabStrips,
}

/// Direction of the strips of a slab.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SlabStrips {
    /// By an angle.
    AtAngle(StripsAtAngle),
    /// At right angles to the edges of the slab on one beam.
    SquareToBeam(StripsSquareToBeam),
}

validate_choice!(SlabStrips { AtAngle = "at_angle", SquareToBeam = "square_to_beam" });

/// Strips at an angle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct StripsAtAngle {
    /// Angle of the strips from east towards north; -360 to 360 degrees.
    #[validate(range(min = Angle::new(-360.0, AngleUnit::Deg), max = Angle::new(360.0, AngleUnit::Deg)))]
    pub from_east: Angle,
}

/// Strips at right angles to a beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct StripsSquareToBeam {
    /// Label of the beam.
    #[validate(nested)]
    pub beam: Label,
}

/// A load over a slab.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SlabLoad {
    /// Kind of load.
    pub kind: LoadKind,
    /// Loads of one kind with different cases never act together; one without a case acts
    /// whenever its kind does.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub case: Option<Label>,
    /// The load, positive downwards; -1,000 to 1,000 kPa.
    #[validate(range(min = AREA_MIN, max = AREA_MAX))]
    pub load: AreaLoad,
}
