//! What is answered of slabs that span to beams. Types only.

use serde::{Deserialize, Serialize};

use crate::layout::request::LoadKind;
use crate::quantity::{Angle, Area, Force, Length};
use crate::text::Tags;

/// A slab and what it brings to the beams.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LayoutSlab {
    /// Its label.
    pub label: String,
    /// Codes as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Its area.
    pub area: Area,
    /// How its load goes to its edges.
    pub spanning: SpanningUsed,
    /// Direction of the strips of a slab that spans one way, from east towards north, from
    /// -90 (not included) to 90 degrees.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub strips_from_east: Option<Angle>,
    /// Its loads in all, case by case.
    pub loads: Vec<SlabCaseLoad>,
    /// What goes to each beam; their loads add up to those of the slab.
    pub beams: Vec<SlabOnBeam>,
}

/// How the load of a slab went to its edges.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SpanningUsed {
    /// Every point to the edge it is nearest to.
    TwoWay,
    /// In strips, half to either end.
    OneWay,
}

/// The load of one case.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SlabCaseLoad {
    /// Kind of load.
    pub kind: LoadKind,
    /// Case of that kind.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub case: Option<String>,
    /// The load, positive downwards.
    pub load: Force,
}

/// The part of a slab that goes to one beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SlabOnBeam {
    /// Label of the beam.
    pub beam: String,
    /// Area of the slab that goes to it.
    pub area: Area,
    /// Length of the beam that it goes to.
    pub length: Length,
    /// Greatest width of that area at right angles to the beam.
    pub widest: Length,
    /// Its loads in all, case by case.
    pub loads: Vec<SlabCaseLoad>,
}
