//! What `pile-relocation` is asked: the plan as it was, what became of its piles, and within
//! which limits a way out is sought. Types only.

mod events;
mod ways;

pub use events::*;
pub use ways::*;

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::layout;
use crate::quantity::{
    FlexuralRigidity, Force, ForceUnit, LengthUnit, Moment, MomentUnit, Pressure, RigidityUnit,
    Size, SpringStiffness, SpringUnit, StressUnit,
};

const ALLOWANCE_MAX: Size = Size::new(0.3, LengthUnit::M);
const PLATE_MIN: Size = Size::new(50.0, LengthUnit::Mm);
const PLATE_MAX: Size = Size::new(2_000.0, LengthUnit::Mm);
const COVER_MAX: Size = Size::new(300.0, LengthUnit::Mm);
const RIGIDITY_MIN: FlexuralRigidity = FlexuralRigidity::new(0.1, RigidityUnit::KNM2);
const RIGIDITY_MAX: FlexuralRigidity = FlexuralRigidity::new(1e6, RigidityUnit::KNM2);
const SUBGRADE_MIN: Pressure = Pressure::new(0.01, StressUnit::MPa);
const SUBGRADE_MAX: Pressure = Pressure::new(10_000.0, StressUnit::MPa);
const FORCE_MAX: Force = Force::new(10_000.0, ForceUnit::KN);
const CAPACITY_MIN: Force = Force::new(0.01, ForceUnit::KN);
const STIFFNESS_MIN: SpringStiffness = SpringStiffness::new(10.0, SpringUnit::KNPerM);
const STIFFNESS_MAX: SpringStiffness = SpringStiffness::new(1e8, SpringUnit::KNPerM);
const OFF_MAX: Size = Size::new(1.0, LengthUnit::M);
const MOMENT_MIN: Moment = Moment::new(0.001, MomentUnit::KNM);
const MOMENT_MAX: Moment = Moment::new(1e6, MomentUnit::KNM);

/// A plan with given piles and what became of single ones: moved, stopped short, left out,
/// replaced, added. The plan is analysed as it was and as it now stands, and where it does not
/// do, ways out are calculated.
///
/// Nothing is stored: the answer hands back the plan as it now stands, to be sent again as
/// `layout` with the next events.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = PileRelocationRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// The plan before the events, a request of `pile-layout` with `piles.given`.
    #[validate(nested)]
    pub layout: layout::Request,
    /// What became of its piles, in order; 1 to 200. One event for each pile: one that was moved
    /// and then stopped short is `moved` with its `residual`.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 200))]
    pub events: Vec<RelocationEvent>,
    /// What the design allows for piles that are not where they were drawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub mislocation: Option<Mislocation>,
    /// What the moment of a pile off its line meets. Without it that moment is told and not
    /// judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub eccentricity: Option<EccentricHead>,
    /// The plate on the head of the piles and its cover to the form; judged for piles with an
    /// event that stand in a beam of known width.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub head: Option<HeadPlate>,
    /// Seeks ways out for one pile; left out, none are sought.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub ways_out: Option<WaysOut>,
}

/// What the design allows for piles that are not where they were drawn.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Mislocation {
    /// Distance off the line for which the beam and the piles are designed. Up to it a pile may
    /// stand off its line; beyond it the engineer is asked. 3 in when left out, which is the
    /// least that IBC asks for; 0 to 300 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = ALLOWANCE_MAX))]
    pub allowance: Option<Size>,
    /// A rule by which piles may be overloaded by a mislocation that was not intended; left out,
    /// none may. Only with `allowable_stress`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub overload: Option<OverloadRule>,
}

/// A rule for the overload of piles by a mislocation.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum OverloadRule {
    /// IBC 1810.3.1.3: compression up to 110 % of the allowable one where it comes from a
    /// mislocation. Taken for piles that were not overloaded before, by events with `unintended`.
    #[serde(rename = "ibc_1810_3_1_3")]
    Ibc1810313,
}

/// What the moment of a pile off its line meets: the head of the pile and the beam that twists.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EccentricHead {
    /// Flexural rigidity E I of the shaft; 0.1 to 1,000,000 kN m2.
    #[validate(range(min = RIGIDITY_MIN, max = RIGIDITY_MAX))]
    pub flexural_rigidity: FlexuralRigidity,
    /// Force of the ground on a unit length of shaft for a unit of movement (modulus of subgrade
    /// reaction times diameter), even over the depth that bends; 0.01 to 10,000 MPa.
    #[validate(range(min = SUBGRADE_MIN, max = SUBGRADE_MAX))]
    pub subgrade: Pressure,
    /// Bending strength of shaft and head connection beside their axial load, at the level of the
    /// design basis; 0.001 to 1,000,000 kN m.
    #[validate(range(min = MOMENT_MIN, max = MOMENT_MAX))]
    pub moment_capacity: Moment,
}

/// The plate on the head of the piles.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HeadPlate {
    /// Width of the plate across the beam; 50 to 2,000 mm.
    #[validate(range(min = PLATE_MIN, max = PLATE_MAX))]
    pub plate_width: Size,
    /// Least distance from the edge of the plate to the form; 0 to 300 mm.
    #[validate(range(min = Size::ZERO, max = COVER_MAX))]
    pub cover: Size,
}
