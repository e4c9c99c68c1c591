//! The plan as builders draw it: the outside form line with the width of its beams, and
//! openings in walls and beams. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::structure::{TWIST_MAX, TWIST_MIN};
use super::{
    BeamLineLoad, BeamMomentCapacity, BeamSection, CAPACITY_MIN, DeflectionLimit, FORCE_MAX,
    LINE_MAX, LINE_MIN, LONG, LoadKind, MOMENT_MAX, MOMENT_MIN, PlanPoint, RIGIDITY_MAX,
    RIGIDITY_MIN, bracing,
};
use crate::quantity::{
    FlexuralRigidity, Force, Length, LengthUnit, LineLoad, Moment, Size, TorsionalRigidity,
};
use crate::text::{Label, Tags};

pub(super) const WIDTH_MIN: Size = Size::new(10.0, LengthUnit::Mm);
pub(super) const WIDTH_MAX: Size = Size::new(10.0, LengthUnit::M);
const INSET_MIN: Size = Size::new(1.0, LengthUnit::Mm);

/// Beams along the outside form line of a building or of a part of it.
///
/// Every side, from one point to the next, becomes a beam: its centre line is the form line
/// moved inwards by the inset, up to where it meets the centre lines of the sides beside it.
/// Angled walls, bays and re-entrant corners come out right; where a side would have no
/// length left, or centre lines or inner faces of other sides would meet, the request is
/// refused. The beams are called after the outline, `<label>-1`, `<label>-2`, ..., and are
/// treated and answered like those of `beams`, after them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = PlanOutline))]
#[serde(deny_unknown_fields)]
pub struct Outline {
    /// Name of the outline; `F1`, `F2`, ... in the order given when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo, on each of its beams.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// The outside form line, at least two points; a ring, of three corners or more, ends at
    /// its first point, either way round. Points nearer than 3 mm are one point.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 2, max_items = 200))]
    pub points: Vec<PlanPoint>,
    /// On which side of an open line the building lies, looking from its first point along
    /// it. Needed for an open line and left out for a ring, which has its inside.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inside: Option<OutlineInside>,
    /// Lets the two ends of an open line that stand on the form line of another outline, or
    /// in the width of its beams, go on along their own beam to its centre line; see
    /// `joins_outline` of a beam. False when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joins_outline: Option<bool>,
    /// Width of the beams; 10 mm to 10 m.
    #[validate(range(min = WIDTH_MIN, max = WIDTH_MAX))]
    pub beam_width: Size,
    /// Distance of the centre line, on which the piles stand, from the outside form line;
    /// half the width when left out. Within the beam; 1 mm to 10 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = INSET_MIN, max = WIDTH_MAX))]
    pub pile_inset: Option<Size>,
    /// Flexural rigidity E I of the beams, as that of a beam. 0.1 to 1,000,000,000 kN m2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = RIGIDITY_MIN, max = RIGIDITY_MAX))]
    pub flexural_rigidity: Option<FlexuralRigidity>,
    /// Torsional rigidity G J of the beams, as that of a beam. 0.001 to 1,000,000,000 kN m2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TWIST_MIN, max = TWIST_MAX))]
    pub torsional_rigidity: Option<TorsionalRigidity>,
    /// Torsional strength of the beams, as that of a beam. 0.001 to 1,000,000 kN m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = MOMENT_MIN, max = MOMENT_MAX))]
    pub torsion_capacity: Option<Moment>,
    /// Bending strength of the beams, as that of a beam.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub moment_capacity: Option<BeamMomentCapacity>,
    /// Shear strength of the beams, as that of a beam. 0.01 to 10,000 kN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = CAPACITY_MIN, max = FORCE_MAX))]
    pub shear_capacity: Option<Force>,
    /// Section of the beams, as that of a beam.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub section: Option<BeamSection>,
    /// How far the beams may bend between piles, as that of a beam.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub deflection_limit: Option<DeflectionLimit>,
    /// Width of the wall on the beams, for `bracing`; 25 to 3,000 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = bracing::WALL_MIN, max = bracing::WALL_MAX))]
    pub wall_width: Option<Size>,
    /// Loads along the whole of every side.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 20000))]
    pub line_loads: Option<Vec<OutlineLoad>>,
    /// To which length `line_loads` of the outline belong; the centre line when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line_loads_per: Option<OutlineLength>,
    /// Sides that differ from the rest; each at most once.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 200))]
    pub sides: Option<Vec<OutlineSide>>,
}

/// On which side of an open form line the building lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum OutlineInside {
    /// Left of the line.
    Left,
    /// Right of the line.
    Right,
}

/// A length of a side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum OutlineLength {
    /// The centre line of the beam, from where it meets the one before to where it meets the
    /// next.
    CentreLine,
    /// The outside form line, from corner to corner. A load of 1 kN/m of a side of 10 m is
    /// 10 kN in all; it acts evenly along the centre line.
    FormLine,
}

/// A load along the whole of every side of an outline.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OutlineLoad {
    /// Kind of load.
    pub kind: LoadKind,
    /// Loads of one kind with different cases never act together; one without a case acts
    /// whenever its kind does.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub case: Option<Label>,
    /// The load, positive downwards; -1,000 to 1,000 kN/m.
    #[validate(range(min = LINE_MIN, max = LINE_MAX))]
    pub load: LineLoad,
    /// As `follows_beam` of a load of a beam. False when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub follows_beam: Option<bool>,
}

/// A side of an outline that differs from the rest. What is sent here takes the place of
/// what the outline says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OutlineSide {
    /// Which side: 1 is the one from the first point to the second.
    #[validate(range(min = 1, max = 200))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 200))]
    pub side: u32,
    /// Name of its beam.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Width of its beam; 10 mm to 10 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = WIDTH_MIN, max = WIDTH_MAX))]
    pub beam_width: Option<Size>,
    /// Distance of its centre line from the form line; that of the outline, or half of
    /// `beam_width` where that is sent here. 1 mm to 10 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = INSET_MIN, max = WIDTH_MAX))]
    pub pile_inset: Option<Size>,
    /// Flexural rigidity of its beam. 0.1 to 1,000,000,000 kN m2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = RIGIDITY_MIN, max = RIGIDITY_MAX))]
    pub flexural_rigidity: Option<FlexuralRigidity>,
    /// Torsional rigidity G J of its beam, as that of a beam. 0.001 to 1,000,000,000 kN m2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TWIST_MIN, max = TWIST_MAX))]
    pub torsional_rigidity: Option<TorsionalRigidity>,
    /// Torsional strength of its beam. 0.001 to 1,000,000 kN m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = MOMENT_MIN, max = MOMENT_MAX))]
    pub torsion_capacity: Option<Moment>,
    /// Bending strength of its beam.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub moment_capacity: Option<BeamMomentCapacity>,
    /// Shear strength of its beam. 0.01 to 10,000 kN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = CAPACITY_MIN, max = FORCE_MAX))]
    pub shear_capacity: Option<Force>,
    /// Section of its beam; then `moment_capacity` and `shear_capacity` of the outline do not
    /// hold for it, as the outline's section does not where one of those is sent here.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub section: Option<BeamSection>,
    /// How far its beam may bend between piles.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub deflection_limit: Option<DeflectionLimit>,
    /// Width of the wall on its beam, for `bracing`; 25 to 3,000 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = bracing::WALL_MIN, max = bracing::WALL_MAX))]
    pub wall_width: Option<Size>,
    /// All loads along this side, in place of those of the outline; per length of the centre
    /// line of the beam.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 20000))]
    pub line_loads: Option<Vec<BeamLineLoad>>,
    /// Openings in this side.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 40))]
    pub openings: Option<Vec<BeamOpening>>,
    /// Along which line `from` and `to` of its loads and openings are measured, from its first
    /// corner; the centre line when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measured_along: Option<OutlineLength>,
}

/// An opening: a door or a window in the wall above the beam, or a gap in the beam itself.
///
/// Over an opening a header carries the line loads of the wall to the two jambs, as a simple
/// beam does: an even load goes half to each. Force and moment stay what they are.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamOpening {
    /// Name of the opening.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Where it begins, along the beam from its first point.
    #[validate(range(min = Length::ZERO, max = LONG))]
    pub from: Length,
    /// Where it ends, along the beam from its first point; no corner of the beam lies between.
    #[validate(range(min = Length::ZERO, max = LONG))]
    pub to: Length,
    /// What is open.
    pub kind: OpeningKind,
    /// The kinds of load that the header carries. Left out: all of them over a `load_free`
    /// opening, none where there is `no_beam`; what it does not carry goes on acting on the beam
    /// below, and is refused where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 9))]
    pub kinds: Option<Vec<LoadKind>>,
}

/// What is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum OpeningKind {
    /// A door or a window in the wall; the beam goes through below.
    LoadFree,
    /// No wall and no beam, as at a garage door without a beam: the beam ends on either side.
    NoBeam,
}
