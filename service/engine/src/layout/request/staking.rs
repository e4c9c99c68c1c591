//! What is asked of the staking: the site grid that the plan is put into, elevations of the
//! pile tops, and how distances for the tape are written. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::{FAR, NEAR, PlanPoint, SPACING_MAX, SPACING_MIN};
use crate::choice::validate_choice;
use crate::quantity::{Angle, AngleUnit, Length, LengthUnit, Size};
use crate::text::Label;

const TURN: Angle = Angle::new(360.0, AngleUnit::Deg);
const BACK_TURN: Angle = Angle::new(-360.0, AngleUnit::Deg);
const LOW: Length = Length::new(-1_000.0, LengthUnit::M);
const HIGH: Length = Length::new(10_000.0, LengthUnit::M);
const TIGHT: Size = Size::new(0.1, LengthUnit::Mm);
const LOOSE: Size = Size::new(100.0, LengthUnit::Mm);

/// How the piles are to be set out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Staking {
    /// How distances for the tape are written beside their numbers.
    pub tape: TapeText,
    /// The site grid the piles are to have coordinates in; none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub grid: Option<SiteGrid>,
    /// Elevation of the tops of all piles, up from the caller's datum; -1,000 to 10,000 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = LOW, max = HIGH))]
    pub pile_top: Option<Length>,
    /// Elevations of the tops of single piles instead.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 10000))]
    pub pile_tops: Option<Vec<PileTop>>,
    /// Distance from each straight run of beam to a second string line beside it, clear of
    /// the work; none when left out. 0.05 to 100 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SPACING_MIN, max = SPACING_MAX))]
    pub string_line_offset: Option<Length>,
}

/// Ways to write a distance for the tape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TapeText {
    /// Feet, inches and the nearest sixteenth of an inch: `44'-4 7/8"`.
    FeetInches,
    /// Whole millimetres: `13535 mm`.
    Millimetres,
}

/// The elevation of the top of one pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileTop {
    /// Label of the pile.
    #[validate(nested)]
    pub pile: Label,
    /// Elevation of its top, up from the caller's datum; -1,000 to 10,000 m.
    #[validate(range(min = LOW, max = HIGH))]
    pub elevation: Length,
}

/// The site grid and how the plan lies in it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SiteGrid {
    /// Unit of the site's coordinates and elevations, in which they are written for the
    /// stakes, whatever the units of the answer.
    pub unit: SiteUnit,
    /// What ties the plan to the grid.
    #[validate(nested)]
    pub fix: GridFix,
    /// Distance on the grid per distance on the ground (and on the plan), where the grid is
    /// that of a map projection; 1 when left out, and never found from the control points.
    /// 0.99 to 1.01.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.99, max = 1.01))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.99, maximum = 1.01))]
    pub combined_factor: Option<f64>,
}

/// Units of site coordinates.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SiteUnit {
    /// Metres, written to 0.1 mm.
    M,
    /// International feet of 0.3048 m, written to 0.001 ft.
    Ft,
    /// US survey feet of 1200/3937 m, written to 0.001 ft. At 2,000,000 ft they are 4 ft from
    /// international feet.
    FtUsSurvey,
}

/// What ties the plan to the site grid.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum GridFix {
    /// Two points whose places are known on the plan and on site.
    ControlPoints(ControlPoints),
    /// One such point and the direction of the plan.
    Origin(GridOrigin),
}

validate_choice!(GridFix { ControlPoints = "control_points", Origin = "origin" });

/// Two points whose places are known on the plan and on site, and a third to check them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ControlPoints {
    /// One control point.
    #[validate(nested)]
    pub first: ControlPoint,
    /// The other one; far apart is better, as the direction follows from the two.
    #[validate(nested)]
    pub second: ControlPoint,
    /// A third one off the line through the two, which shows whether northing and easting
    /// were exchanged or a point mistaken.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub check: Option<ControlPoint>,
    /// By how much the distance of the two on site may differ from that on the plan times
    /// `combined_factor`, and the third may be off; 3 mm when left out. 0.1 to 100 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TIGHT, max = LOOSE))]
    pub tolerance: Option<Size>,
}

/// A point that is known on the plan and on site.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ControlPoint {
    /// Name of the point.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Where it is on the plan; it need not be on a beam.
    #[validate(nested)]
    pub plan: PlanPoint,
    /// Where it is on site.
    #[validate(nested)]
    pub site: SitePoint,
}

/// A point of the site grid.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SitePoint {
    /// North; within 10,000 km of the grid's origin.
    #[validate(range(min = NEAR, max = FAR))]
    pub northing: Length,
    /// East; within 10,000 km of the grid's origin.
    #[validate(range(min = NEAR, max = FAR))]
    pub easting: Length,
}

/// One point that is known on the plan and on site, and the direction of the plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GridOrigin {
    /// Where it is on the plan.
    #[validate(nested)]
    pub plan: PlanPoint,
    /// Where it is on site.
    #[validate(nested)]
    pub site: SitePoint,
    /// Angle from the grid's east to the plan's x, anticlockwise; -360 to 360 degrees.
    #[validate(range(min = BACK_TURN, max = TURN))]
    pub rotation: Angle,
}

impl SiteUnit {
    /// The unit of length it is.
    pub const fn length_unit(self) -> LengthUnit {
        match self {
            Self::M => LengthUnit::M,
            Self::Ft => LengthUnit::Ft,
            Self::FtUsSurvey => LengthUnit::FtUsSurvey,
        }
    }
}
