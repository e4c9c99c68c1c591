//! The one soil a footing stands in: its strength, its weight, its water. No equation is
//! here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{
    Angle, AngleUnit, Length, LengthUnit, SoilStress, StressUnit, UnitWeight, UnitWeightUnit,
};

/// The soil, the same from the ground surface to at least one width below the base. Layers are
/// not covered.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingSoil {
    /// Its strength.
    #[validate(nested)]
    pub strength: FootingStrength,
    /// Unit weight above the water table; 8 to 26 kN/m3.
    #[validate(range(min = UnitWeight::new(8.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(26.0, UnitWeightUnit::KNPerM3)))]
    pub unit_weight: UnitWeight,
    /// Unit weight below the water table; equal to `unit_weight` when left out; 10 to 26
    /// kN/m3.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(10.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(26.0, UnitWeightUnit::KNPerM3)))]
    pub saturated_unit_weight: Option<UnitWeight>,
    /// Depth of the water table below the ground; 0 to 100 m. Left out, there is none near.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub water_depth: Option<Length>,
    /// Unit weight of water; 9.7 to 10.5 kN/m3, 9.81 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(9.7, UnitWeightUnit::KNPerM3), max = UnitWeight::new(10.5, UnitWeightUnit::KNPerM3)))]
    pub water_unit_weight: Option<UnitWeight>,
}

/// Strength of the soil under the footing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FootingStrength {
    /// Sand, gravel, or any soil in the long term; effective stresses.
    Drained(FootingDrained),
    /// Clay or silt under load that comes faster than the water can leave; total stresses,
    /// phi = 0.
    Undrained(FootingUndrained),
}

validate_choice!(FootingStrength { Drained = "drained", Undrained = "undrained" });

/// Drained strength; one of the two must be above 0.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingDrained {
    /// Effective friction angle; 0 to 45 degrees. Above 40 degrees the answer warns.
    #[validate(range(min = Angle::ZERO, max = Angle::new(45.0, AngleUnit::Deg)))]
    pub friction_angle: Angle,
    /// Effective cohesion; 0 to 500 kPa, 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(500.0, StressUnit::KPa)))]
    pub cohesion: Option<SoilStress>,
}

/// Undrained strength.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingUndrained {
    /// Undrained shear strength; 1 to 1,000 kPa.
    #[validate(range(min = SoilStress::new(1.0, StressUnit::KPa), max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub undrained_strength: SoilStress,
}
