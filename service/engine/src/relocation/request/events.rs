//! What became of single piles, and of beams that were made stronger. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::{
    CAPACITY_MIN, FORCE_MAX, MOMENT_MAX, MOMENT_MIN, OFF_MAX, STIFFNESS_MAX, STIFFNESS_MIN,
};
use crate::choice::validate_choice;
use crate::layout::{BeamMomentCapacity, GivenPile};
use crate::quantity::{Force, Length, LengthUnit, Moment, Size, SpringStiffness};
use crate::text::Label;

const ALONG_MAX: Length = Length::new(1_000.0, LengthUnit::M);
const ALONG_MIN: Length = Length::new(-1_000.0, LengthUnit::M);
const OFF_MIN: Size = Size::new(-1.0, LengthUnit::M);
const DEPTH_MAX: Length = Length::new(200.0, LengthUnit::M);

/// What became of a pile, or of a beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum RelocationEvent {
    /// It stands elsewhere.
    Moved(PileMoved),
    /// It could not be turned down to its depth or torque.
    StoppedShort(PileStoppedShort),
    /// Another pile stands at its place.
    Replaced(PileReplaced),
    /// It is left out.
    Omitted(PileOmitted),
    /// A further pile.
    Added(PileAdded),
    /// A beam is made stronger than it was drawn.
    Strengthened(BeamStrengthened),
}

validate_choice!(RelocationEvent {
    Moved = "moved",
    StoppedShort = "stopped_short",
    Replaced = "replaced",
    Omitted = "omitted",
    Added = "added",
    Strengthened = "strengthened",
});

impl RelocationEvent {
    /// Its name in a request.
    pub const fn tag(&self) -> &'static str {
        match self {
            Self::Moved(_) => "moved",
            Self::StoppedShort(_) => "stopped_short",
            Self::Replaced(_) => "replaced",
            Self::Omitted(_) => "omitted",
            Self::Added(_) => "added",
            Self::Strengthened(_) => "strengthened",
        }
    }
}

/// A pile that stands elsewhere than it was drawn, along its beam, off its line, or both.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileMoved {
    /// Label of the pile.
    #[validate(nested)]
    pub pile: Label,
    /// How far along the beam, positive away from the beam's first point, following its corners;
    /// 0 when left out. -1,000 to 1,000 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = ALONG_MIN, max = ALONG_MAX))]
    pub along: Option<Length>,
    /// The beam along which it moves, and off whose line it stands; needed where the pile stands
    /// on several.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub beam: Option<Label>,
    /// How far its centre now stands off the centre line of the beam, positive to the left of it,
    /// looking from its first point; as before when left out. -1 to 1 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = OFF_MIN, max = OFF_MAX))]
    pub off_line: Option<Size>,
    /// What it carries where it now stands, where that is not what it carried before.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub residual: Option<ResidualCapacity>,
    /// Whether nobody meant to move it; false when left out. A pile that is moved on purpose is a
    /// redesign and never overloaded.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unintended: Option<bool>,
    /// Why, in the caller's words.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub why: Option<Label>,
}

/// What may be counted on of a pile that did not become what was drawn, at the level of
/// `pile_capacity` or `pile_types`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ResidualCapacity {
    /// In compression; 0 to 10,000 kN.
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub compression: Force,
    /// In tension; 0 to 10,000 kN. A pile that is short may have lost it all.
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub tension: Force,
    /// Its stiffness, where it is another; 10 to 100,000,000 kN/m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = STIFFNESS_MIN, max = STIFFNESS_MAX))]
    pub stiffness: Option<SpringStiffness>,
    /// It stands on rock and does not move while the other piles are springs; it has no stiffness
    /// then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub founded_on_rock: Option<bool>,
}

/// A pile that could not be turned down to its depth or torque.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileStoppedShort {
    /// Label of the pile.
    #[validate(nested)]
    pub pile: Label,
    /// What may be counted on. Left out, nothing may: the pile is no support, and the plan is
    /// analysed without it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub residual: Option<ResidualCapacity>,
    /// Depth it reached; echoed. 0 to 200 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = DEPTH_MAX))]
    pub depth: Option<Length>,
    /// Why, in the caller's words. Needed where more is counted on than before.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub why: Option<Label>,
}

/// Another pile at the place of one that was drawn; at least one of `pile_type`, `compression`,
/// `tension` and `stiffness`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileReplaced {
    /// Label of the pile.
    #[validate(nested)]
    pub pile: Label,
    /// Its new type, a label of `pile_types`; its own capacities go with the old one.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile_type: Option<Label>,
    /// Its capacity in compression; as before when left out. 0 to 10,000 kN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub compression: Option<Force>,
    /// Its capacity in tension; as before when left out. 0 to 10,000 kN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub tension: Option<Force>,
    /// Its stiffness; as before when left out. 10 to 100,000,000 kN/m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = STIFFNESS_MIN, max = STIFFNESS_MAX))]
    pub stiffness: Option<SpringStiffness>,
    /// Why, in the caller's words. Needed where a capacity is above that of the pile it replaces.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub why: Option<Label>,
}

/// A pile that is left out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileOmitted {
    /// Label of the pile.
    #[validate(nested)]
    pub pile: Label,
    /// Why, in the caller's words.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub why: Option<Label>,
}

/// A pile that was not drawn.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileAdded {
    /// The pile; its `label` is needed and no pile of the plan had it before.
    #[validate(nested)]
    pub pile: GivenPile,
    /// Why, in the caller's words.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub why: Option<Label>,
}

/// A beam of `beams` that is made stronger than it was drawn; at least one strength. Not for a
/// beam with a `section`, nor for the side of an outline: send those changed in `layout`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamStrengthened {
    /// Label of the beam.
    #[validate(nested)]
    pub beam: Label,
    /// Its bending strength.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub moment_capacity: Option<BeamMomentCapacity>,
    /// Its shear strength; 0.01 to 10,000 kN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = CAPACITY_MIN, max = FORCE_MAX))]
    pub shear_capacity: Option<Force>,
    /// Its torsional strength; 0.001 to 1,000,000 kN m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = MOMENT_MIN, max = MOMENT_MAX))]
    pub torsion_capacity: Option<Moment>,
    /// Why, in the caller's words.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub why: Option<Label>,
}
