//! Loads of a plan: their kinds, those along a beam and those at a point. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::{FORCE_MAX, FORCE_MIN, LINE_MAX, LINE_MIN, LONG, PlanPoint};
use crate::quantity::{Force, Length, LineLoad};
use crate::text::{Label, Tags};

/// Kinds of load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LoadKind {
    /// Permanent load.
    Dead,
    /// Use of floors.
    Live,
    /// Use and maintenance of roofs.
    RoofLive,
    /// Snow.
    Snow,
    /// Wind, at the level of the chosen standard; one case for each direction.
    Wind,
    /// Earthquake, horizontal and vertical effect together; one case for each direction.
    Seismic,
    /// Frost; in no published set, needs own combinations.
    Frost,
    /// Swelling ground; in no published set, needs own combinations.
    Swell,
    /// Anything else; in no published set, needs own combinations.
    Other,
}

/// A load along a beam or a part of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamLineLoad {
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
    /// The load at its end, where it varies evenly from `load`; the same when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = LINE_MIN, max = LINE_MAX))]
    pub load_at_end: Option<LineLoad>,
    /// Where it begins, along the beam from its first point; 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = LONG))]
    pub from: Option<Length>,
    /// Where it ends, along the beam from its first point; the end when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = LONG))]
    pub to: Option<Length>,
    /// The load goes with the beam, as its own weight does, and not with the wall: it acts under
    /// a `load_free` opening too, and stops where there is `no_beam`. False when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub follows_beam: Option<bool>,
}

/// A load at one point of a beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PlanPointLoad {
    /// Name of the load.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Kind of load.
    pub kind: LoadKind,
    /// Loads of one kind with different cases never act together; one without a case acts
    /// whenever its kind does.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub case: Option<Label>,
    /// Where it acts; within 3 mm of a beam's centre line.
    #[validate(nested)]
    pub at: PlanPoint,
    /// The load, positive downwards; -10,000 to 10,000 kN.
    #[validate(range(min = FORCE_MIN, max = FORCE_MAX))]
    pub load: Force,
}
