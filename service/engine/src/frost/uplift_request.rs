//! What is asked about uplift: bond on the shaft, what holds the pile down, and by which
//! format the two are compared.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::helix::HelixMethods;
use crate::quantity::{Force, ForceUnit, Length, LengthUnit, SoilStress, StressUnit};
use crate::soil::SoilProfile;
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

/// What holds a pile down against frost.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostResistance {
    /// Format of the comparison with its factors. Codes give none for adfreeze, so each is
    /// echoed with its source.
    #[validate(nested)]
    pub design_basis: FrostBasis,
    /// Dead load that is always on the pile once the building stands, unfactored; 0 to
    /// 10 MN. Live load and snow count nothing.
    #[validate(range(min = Force::ZERO, max = Force::new(10_000.0, ForceUnit::KN)))]
    pub dead_load: Force,
    /// Ultimate tension resistance of the ground below frost.
    #[validate(nested)]
    pub tension: FrostTension,
}

/// Format of the comparison.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FrostBasis {
    /// Force - factor x dead load at most ultimate tension / safety factor.
    AllowableStress(FrostAllowableStress),
    /// Factor x force - factor x dead load at most factor x ultimate tension.
    LimitStates(FrostLimitStates),
}

validate_choice!(FrostBasis { AllowableStress = "allowable_stress", LimitStates = "limit_states" });

/// Allowable-stress factors.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostAllowableStress {
    /// Share of the dead load that counts; 0 to 1, 0.6 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub dead_load_factor: Option<f64>,
    /// Safety factor on ultimate tension; 1 to 10. When left out: 3 by analysis or torque,
    /// 2 by load test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10))]
    pub tension_safety_factor: Option<f64>,
}

/// Limit-states factors.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostLimitStates {
    /// Load factor on the frost force; 1 to 3, 1.25 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 3.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 3))]
    pub frost_load_factor: Option<f64>,
    /// Load factor on the dead load that counteracts; 0 to 1, 0.9 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub dead_load_factor: Option<f64>,
    /// Resistance factor on ultimate tension; 0.05 to 1. When left out: 0.3 by analysis or
    /// torque, 0.4 by load test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.05, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.05, maximum = 1))]
    pub tension_resistance_factor: Option<f64>,
}

/// Ultimate tension resistance of the ground below frost.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
#[allow(clippy::large_enum_variant)]
pub enum FrostTension {
    /// The caller's own.
    Given(GivenTension),
    /// By helix theory from a soil profile; ground that freezes is given no credit, so only
    /// helices below the base of frost count.
    FromSoil(TensionFromSoil),
}

validate_choice!(FrostTension { Given = "given", FromSoil = "from_soil" });

/// A tension resistance sent by the caller.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenTension {
    /// Ultimate, neither factored nor divided by a safety factor, and without anything in
    /// ground that freezes; 0 to 20 MN.
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub ultimate: Force,
    /// How it was found; the safety or resistance factor follows from it.
    pub by: TensionBy,
    /// Where it comes from.
    #[validate(nested)]
    pub reference: Label,
}

/// How a tension resistance was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TensionBy {
    /// Computed from the ground.
    Analysis,
    /// From installation torque; the 12-diameter rule then holds.
    Torque,
    /// Measured in a tension test on this site.
    LoadTest,
}

/// Tension resistance by helix theory.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TensionFromSoil {
    /// Soil at the pile.
    #[validate(nested)]
    pub profile: SoilProfile,
    /// Choice of methods; each has a default.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub methods: Option<HelixMethods>,
}
