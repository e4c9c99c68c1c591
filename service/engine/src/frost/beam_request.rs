//! What is asked about the grade beam: where it is, what touches its sides, and what its
//! underside rests on. The void form has its own file.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::void_request::HeavePrediction;
use crate::choice::validate_choice;
use crate::quantity::{Length, LengthUnit, SoilStress, StressUnit};
use crate::text::Label;

/// Where the grade beam is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
#[allow(clippy::large_enum_variant)]
pub enum FrostBeam {
    /// Clear of the ground: frost cannot grip it.
    AboveGround(BeamAboveGround),
    /// Its sides stand in soil.
    InSoil(BeamInSoil),
}

validate_choice!(FrostBeam { AboveGround = "above_ground", InSoil = "in_soil" });

/// A beam clear of the ground.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamAboveGround {}

/// A beam whose sides stand in soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamInSoil {
    /// Depth of the beam's underside below final grade; 0.01 to 5 m. The shaft is taken to
    /// touch soil from here down unless `contact_top_depth` says otherwise.
    #[validate(range(min = Length::new(0.01, LengthUnit::M), max = Length::new(5.0, LengthUnit::M)))]
    pub underside_depth: Length,
    /// Length of beam that this pile carries; 0.1 to 30 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(30.0, LengthUnit::M)))]
    pub tributary_length: Length,
    /// What is between the sides and the soil; `bonded` when left out, and the grip is then
    /// added to the uplift on the pile.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub sides: Option<BeamSides>,
    /// Sides that touch soil, 1 or 2; 2 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1, max = 2))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub side_count: Option<u32>,
    /// Width of the beam; 0.1 to 3 m. Needed for the uplift under a beam that bears on
    /// swelling soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(3.0, LengthUnit::M)))]
    pub width: Option<Length>,
    /// Height of the beam, from its underside to its top; 0.1 to 5 m. Only told and drawn.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(5.0, LengthUnit::M)))]
    pub height: Option<Length>,
    /// Predicted heave of the ground under a beam that lies on it, without a void form; 0 is
    /// accepted as a statement of yours. With a `void_form` the heave belongs there, and one
    /// here is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub predicted_heave: Option<HeavePrediction>,
}

/// What is between the sides of a beam and the soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BeamSides {
    /// Soil that can heave, in touch with the beam.
    Bonded(BondedSides),
    /// A layer that lets frozen or swelling soil slide past; the caller stands for it.
    BondBreak(FreeSides),
    /// Drained backfill that neither heaves by frost nor swells, over the whole frozen and
    /// active depth; the caller stands for it.
    NonSusceptibleBackfill(FreeSides),
}

validate_choice!(BeamSides {
    Bonded = "bonded", BondBreak = "bond_break", NonSusceptibleBackfill = "non_susceptible_backfill"
});

/// Sides that frozen or swelling soil grips.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BondedSides {
    /// Bond stress of frozen soil on the sides; 0 to 1,000 kPa, 65 kPa (fine soil on
    /// concrete or wood) when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub bond_stress: Option<SoilStress>,
    /// Adhesion of swelling soil on the sides; 0 to 1,000 kPa, that on the shaft when left
    /// out. Counts where `swelling` is sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub swell_adhesion: Option<SoilStress>,
}

/// Sides that frozen or swelling soil cannot grip.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FreeSides {
    /// What this rests on, such as a detail of the plans.
    #[validate(nested)]
    pub reference: Label,
}
