//! What is asked about uplift by frost: bond on the shaft, measures against it, and the
//! pile before the building stands. What holds the pile down has its own file.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::resistance_request::FrostResistance;
use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit, Length, LengthUnit, SoilStress, StressUnit};
use crate::text::Label;

/// Uplift by frozen ground that grips the shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostUplift {
    /// Bond stress of the frozen soil on the steel shaft.
    #[validate(nested)]
    pub bond: AdfreezeBond,
    /// Depth below final grade from which the shaft touches soil once the building stands;
    /// 0 to 10 m. When left out: the beam's underside where `beam` is `in_soil`, else the
    /// surface that is exposed to the cold.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(10.0, LengthUnit::M)))]
    pub contact_top_depth: Option<Length>,
    /// A loose sleeve round the shaft. Counts only where it reaches the base of frost or
    /// below and the caller states that it can heave freely; else the answer says why not.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub sleeve: Option<ShaftSleeve>,
    /// A coating of the shaft such as zinc, bitumen or a wrap. It is given no credit, and the
    /// answer says so; a tested bond is sent as `given` under `bond`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub coating: Option<Label>,
    /// The pile before the building stands on it; `standing_over_winter` without any load
    /// when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub construction: Option<ConstructionStage>,
    /// What holds the pile down. Left out, the forces are answered and the check is not
    /// evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub resistance: Option<FrostResistance>,
}

impl FrostUplift {
    /// The unloaded pile over a winter, as sent or by default; its members are empty where
    /// the stage is left out.
    pub fn standing(&self) -> StandingOverWinter {
        match self.construction {
            Some(ConstructionStage::StandingOverWinter(stage)) => stage,
            _ => StandingOverWinter::default(),
        }
    }

    /// Whether the unloaded pile over a winter is left out.
    pub fn loaded_before_winter(&self) -> bool {
        matches!(
            self.construction,
            Some(ConstructionStage::LoadedBeforeWinter(_))
        )
    }
}

/// Bond stress of frozen soil on a steel shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum AdfreezeBond {
    /// Fine soil (silt, clay, silty sand): 100 kPa.
    Fine(DefaultBond),
    /// Saturated gravel: 150 kPa.
    Gravel(DefaultBond),
    /// The severe value for silt: 275 kPa.
    Severe(DefaultBond),
    /// The highest laboratory peak on steel: 350 kPa.
    LaboratoryPeak(DefaultBond),
    /// Soil that does not heave over the whole frozen length, or a drained annulus of clean
    /// granular soil: 0. The caller stands for it.
    NotSusceptible(NotSusceptible),
    /// The caller's own.
    Given(GivenBond),
}

validate_choice!(AdfreezeBond {
    Fine = "fine", Gravel = "gravel", Severe = "severe", LaboratoryPeak = "laboratory_peak",
    NotSusceptible = "not_susceptible", Given = "given"
});

/// The service's value for this soil.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DefaultBond {}

/// Soil that does not heave.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct NotSusceptible {
    /// What this rests on, such as a grading or a backfill detail.
    #[validate(nested)]
    pub reference: Label,
}

/// A bond stress sent by the caller.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenBond {
    /// Average bond stress over the frozen length; 0 to 1,000 kPa. The answer warns below
    /// 100 kPa.
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub stress: SoilStress,
    /// Where it comes from.
    #[validate(nested)]
    pub reference: Label,
}

/// The pile before the building stands on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ConstructionStage {
    /// It may stand unloaded through a freezing season.
    StandingOverWinter(StandingOverWinter),
    /// The building's dead load is on it before the ground freezes; the stage is left out
    /// and the answer says so.
    LoadedBeforeWinter(LoadedBeforeWinter),
}

validate_choice!(ConstructionStage {
    StandingOverWinter = "standing_over_winter", LoadedBeforeWinter = "loaded_before_winter"
});

/// A pile that stands unloaded through a freezing season.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct StandingOverWinter {
    /// What weighs on it then: its own weight, a beam, or nothing; 0 to 10 MN, 0 when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(10_000.0, ForceUnit::KN)))]
    pub dead_load: Option<Force>,
    /// Depth below final grade from which the shaft touches soil then; 0 to 10 m. When left
    /// out: the surface that is exposed to the cold, or as in service where the beam is
    /// cast.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(10.0, LengthUnit::M)))]
    pub contact_top_depth: Option<Length>,
    /// Whether the beam is cast by then, so that frost grips its sides too; `false` when
    /// left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beam_cast: Option<bool>,
}

/// A pile that is loaded before the ground freezes.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LoadedBeforeWinter {}

/// A loose sleeve round the shaft, in place before the ground freezes for the first time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ShaftSleeve {
    /// Depth of the sleeve's lower end below final grade; 0.1 to 10 m. It begins where the
    /// shaft comes in touch with soil.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(10.0, LengthUnit::M)))]
    pub bottom_depth: Length,
    /// That frozen ground can lift the sleeve without lifting the pile; the caller stands
    /// for it. Left out, the sleeve counts nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub free_to_heave: Option<FreeToHeave>,
}

/// The statement that a sleeve can heave freely.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FreeToHeave {
    /// What this rests on, such as a detail of the plans.
    #[validate(nested)]
    pub reference: Label,
}
