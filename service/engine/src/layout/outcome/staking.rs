//! What `pile-layout` answers for setting out: coordinates, distances along string lines,
//! diagonals, and their texts. Types only.

use serde::{Deserialize, Serialize};

use crate::layout::request::{PlanPoint, SiteUnit, TapeText};
use crate::quantity::{Angle, Length, Size};
use crate::text::Tags;

/// The piles for setting out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StakingOutcome {
    /// What every point and distance here is measured to.
    pub measured_to: MeasuredTo,
    /// How distances for the tape are written.
    pub tape: TapeText,
    /// How the plan lies in the site grid.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub grid: Option<StakingGrid>,
    /// A stake for each pile, in the order of `piles`.
    pub points: Vec<Stake>,
    /// A string line for each straight run of beam, in the order of the runs from south-west.
    pub string_lines: Vec<StringLine>,
    /// Diagonals to be taped across the corners that four straight runs enclose, the largest
    /// first; of several such between the same two runs the outermost. At most 100.
    pub frames: Vec<CornerFrame>,
    /// Distances from both ends of the longest run to every corner and beam end off it, which
    /// fix a plan of any shape with two tapes; left out where there is none or above 400.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub corner_ties: Option<CornerTies>,
}

/// What a stake marks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum MeasuredTo {
    /// The centre of the pile on the centre line of its beam: not the face of a wall, not
    /// the form line.
    PileCentreOnBeamCentreLine,
}

/// How the plan lies in the site grid: E = E_a + k (cos r (x - x_a) - sin r (y - y_a)),
/// N = N_a + k (sin r (x - x_a) + cos r (y - y_a)), with the anchor (x_a, y_a), (E_a, N_a), the
/// rotation r and the factor k.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StakingGrid {
    /// Unit of the texts.
    pub unit: SiteUnit,
    /// Angle from the grid's east to the plan's x, anticlockwise.
    pub rotation: Angle,
    /// Distance on the grid per distance on the plan.
    pub combined_factor: f64,
    /// The point about which the plan is turned: the point sent, or the middle of the two
    /// control points.
    pub anchor: GridAnchor,
    /// How the control points fit; only with them.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub control: Option<ControlFit>,
}

/// One point on the plan and on site.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GridAnchor {
    /// On the plan.
    pub plan: PlanPoint,
    /// On site.
    pub site: SiteStake,
}

/// How the control points fit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ControlFit {
    /// Distance of the two on the plan.
    pub plan_distance: Length,
    /// Distance of the two on site.
    pub site_distance: Length,
    /// `site_distance` less `plan_distance` times `combined_factor`.
    pub difference: Size,
    /// What the difference and the check point were allowed.
    pub tolerance: Size,
    /// The points as sent, the check point last, each with how far it lies from where the
    /// plan puts it.
    pub points: Vec<ControlResidual>,
}

/// A control point as sent, and how far it is off.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ControlResidual {
    /// Its label, or `first`, `second`, `check`.
    pub label: String,
    /// Where it is on the plan.
    pub plan: PlanPoint,
    /// Where it is on site.
    pub site: SiteStake,
    /// From there to where the plan puts it.
    pub residual: Size,
}

/// A place on site. The numbers are in the units of the answer and to nine digits, which at
/// 2,000,000 ft are 0.01 ft: a stake is set by the texts, which are in the unit of the grid.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SiteStake {
    /// North.
    pub northing: Length,
    /// East.
    pub easting: Length,
    /// North in the unit of the grid, to 0.001 ft or 0.1 mm.
    pub northing_text: String,
    /// East in the unit of the grid, to 0.001 ft or 0.1 mm.
    pub easting_text: String,
}

/// The stake of one pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Stake {
    /// Label of the pile.
    pub label: String,
    /// Codes as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// What stands there, for the list of points: `pile`, with its type where it has one.
    pub description: String,
    /// Where it stands on the plan.
    pub at: PlanPoint,
    /// Its x for the tape.
    pub x_text: String,
    /// Its y for the tape.
    pub y_text: String,
    /// Where it stands on site.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub site: Option<SiteStake>,
    /// Elevation of its top, where one was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub elevation: Option<Length>,
    /// That elevation in the unit of the grid, to 0.001 ft or 0.1 mm.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub elevation_text: Option<String>,
}

/// A string line along one straight run of beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StringLine {
    /// Labels of the beams along it.
    pub beams: Vec<String>,
    /// Where it begins: its western end, or if it runs north its southern end.
    pub from: LineEnd,
    /// Where it ends.
    pub to: LineEnd,
    /// Its length.
    pub length: Length,
    /// Its length for the tape.
    pub length_text: String,
    /// From the line to the faces of its beams, where all along it have the same width; the
    /// outer one is the outside form line.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub faces: Option<LineFaces>,
    /// The second string line beside it; only with `string_line_offset`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub offset: Option<OffsetLine>,
    /// The piles along it.
    pub piles: Vec<StringPile>,
}

/// From a string line, square to it, to the two faces of its beams.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LineFaces {
    /// To the face on the left, looking from the start to the end.
    pub left: Size,
    /// To the face on the right.
    pub right: Size,
}

/// One end of a string line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LineEnd {
    /// On the plan.
    pub at: PlanPoint,
    /// The pile that stands there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pile: Option<String>,
    /// On site.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub site: Option<SiteStake>,
}

/// A string line beside a run of beam, at the same distance all along. A pile stands square
/// off it, at the pile's own distance from the start.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct OffsetLine {
    /// On which side it lies, looking from the start to the end of the run.
    pub side: LineSide,
    /// Whether no other beam stands beyond it on that side, looking from the middle of the
    /// run; where both sides or none are free it lies on the left.
    pub outside: bool,
    /// From the centre line of the beam, square to it.
    pub distance: Length,
    /// That distance for the tape.
    pub distance_text: String,
    /// Opposite the start of the run.
    pub from: LineEnd,
    /// Opposite the end of the run.
    pub to: LineEnd,
}

/// Sides of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LineSide {
    /// To the left of its direction.
    Left,
    /// To the right of its direction.
    Right,
}

/// A pile along a string line. Set out by the running distances: the gaps are rounded each
/// by itself and are for checking.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StringPile {
    /// Label of the pile.
    pub label: String,
    /// Running distance from the start of the line.
    pub from_start: Length,
    /// That distance for the tape.
    pub from_start_text: String,
    /// Distance from the pile before it; left out for the first.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub from_previous: Option<Length>,
    /// That distance for the tape.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub from_previous_text: Option<String>,
}

/// Four corners that four straight runs enclose.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CornerFrame {
    /// Labels of the beams along two opposite sides.
    pub beams: Vec<String>,
    /// Whether it is a rectangle, so that both diagonals must be equal.
    pub rectangle: bool,
    /// The two diagonals.
    pub diagonals: Vec<TapeDistance>,
}

/// A distance between two points for the tape.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TapeDistance {
    /// One point.
    pub from: PlanPoint,
    /// The pile that stands there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub from_pile: Option<String>,
    /// The other point.
    pub to: PlanPoint,
    /// The pile that stands there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub to_pile: Option<String>,
    /// The distance.
    pub distance: Length,
    /// The distance for the tape.
    pub distance_text: String,
}

/// Distances from the two ends of the longest run.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CornerTies {
    /// The longest run, from its start to its end.
    pub base: TapeDistance,
    /// The corners and beam ends off it.
    pub ties: Vec<CornerTie>,
}

/// The distances of one corner or beam end from the two ends of the base.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CornerTie {
    /// Where it is on the plan.
    pub at: PlanPoint,
    /// The pile that stands there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pile: Option<String>,
    /// From the start of the base.
    pub from_start: Length,
    /// That distance for the tape.
    pub from_start_text: String,
    /// From the end of the base.
    pub from_end: Length,
    /// That distance for the tape.
    pub from_end_text: String,
}
