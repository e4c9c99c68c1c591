//! What became of the form lines: sides with their lengths, ends of beams that were moved
//! onto a centre line, and the edges of beams. Types only.

use serde::{Deserialize, Serialize};

use crate::layout::request::PlanPoint;
use crate::quantity::{Area, Length, Size};
use crate::text::Tags;

/// An outside form line and the beams that came of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LayoutOutline {
    /// Its label.
    pub label: String,
    /// Codes as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// The outside form line, as sent.
    pub points: Vec<PlanPoint>,
    /// Length of the form line.
    pub form_length: Length,
    /// Length of the centre lines of its beams, before ends were joined.
    pub centre_length: Length,
    /// Area within the form line; left out for an open line.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub form_area: Option<Area>,
    /// Plan area of its beams, between form line and inner faces.
    pub beam_area: Area,
    /// The sides in their order.
    pub sides: Vec<LayoutOutlineSide>,
}

/// A side of an outline.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LayoutOutlineSide {
    /// Label of its beam.
    pub beam: String,
    /// Length along the form line.
    pub form_length: Length,
    /// Length along the centre line, before an end was joined.
    pub centre_length: Length,
    /// Where the centre line begins, along the form line from the side's first corner;
    /// negative where it begins before it, at a re-entrant corner.
    pub centre_from: Length,
    /// Distance of the centre line from the form line.
    pub inset: Size,
}

/// The end of a beam that was moved along its axis onto the centre line of an outline's beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct JoinedEnd {
    /// Label of the beam.
    pub beam: String,
    /// Which end.
    pub end: WhichEnd,
    /// Label of the beam that it was joined to.
    pub onto: String,
    /// Where the end was.
    pub from: PlanPoint,
    /// Where it is now.
    pub to: PlanPoint,
    /// By how much the beam became longer; negative where it became shorter.
    pub longer_by: Length,
}

/// An end of a beam.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum WhichEnd {
    /// At its first point.
    First,
    /// At its last point.
    Last,
}

/// The two edges of a beam in plan, or of one part of it where openings without a beam
/// interrupt it; seen along the beam from its first point, with as many points each, mitred
/// at corners. A ring ends at its first point. Ends on another beam run to its centre line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BeamEdges {
    /// The left edge.
    pub left: Vec<PlanPoint>,
    /// The right edge.
    pub right: Vec<PlanPoint>,
}
