//! A soil profile as the caller sends it, and the faults it can have.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{
    Angle, AngleUnit, Length, LengthUnit, SoilStress, StressUnit, UnitWeight, UnitWeightUnit,
};
use crate::text::{Label, Tags};

/// Layers of soil from the ground surface down, with the water table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SoilProfile {
    /// Layers in order of depth, without gap or overlap, the first from depth 0; 1 to 60.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 60))]
    pub layers: Vec<Layer>,
    /// Depth of the water table below final grade; left out, there is none within the
    /// profile.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub water_depth: Option<Length>,
    /// Unit weight of water; 9.81 kN/m3 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(9.7, UnitWeightUnit::KNPerM3), max = UnitWeight::new(10.5, UnitWeightUnit::KNPerM3)))]
    pub water_unit_weight: Option<UnitWeight>,
}

/// One layer of soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Layer {
    /// Name of the layer; `L1`, `L2`, ... from the top when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Depth of its top below final grade; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub top: Length,
    /// Depth of its bottom below final grade; up to 100 m.
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub bottom: Length,
    /// Unit weight above the water table; 8 to 26 kN/m3.
    #[validate(range(min = UnitWeight::new(8.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(26.0, UnitWeightUnit::KNPerM3)))]
    pub unit_weight: UnitWeight,
    /// Unit weight below the water table; equal to `unit_weight` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(10.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(26.0, UnitWeightUnit::KNPerM3)))]
    pub saturated_unit_weight: Option<UnitWeight>,
    /// What the layer is made of, with its strength.
    #[validate(nested)]
    pub soil: Soil,
}

/// Kind of soil with its strength.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Soil {
    /// Clay or clayey silt that carries load undrained.
    Clay(Undrained),
    /// Silt that carries load undrained.
    Silt(Undrained),
    /// Sand or gravelly sand that carries load drained.
    Sand(Drained),
    /// Fill; gives no bearing and no uplift resistance.
    Fill(NoCredit),
    /// Peat or organic soil; gives no bearing and no uplift resistance.
    Organic(NoCredit),
    /// Rock; helix theory does not apply in it.
    Rock(NoCredit),
}

validate_choice!(Soil {
    Clay = "clay", Silt = "silt", Sand = "sand", Fill = "fill", Organic = "organic", Rock = "rock"
});

/// Undrained strength.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Undrained {
    /// Undrained shear strength s_u; 1 to 1,000 kPa.
    #[validate(range(min = SoilStress::new(1.0, StressUnit::KPa), max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub undrained_strength: SoilStress,
}

/// Drained strength.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Drained {
    /// Effective friction angle; 15 to 45 degrees. Above 40 degrees the answer warns.
    #[validate(range(min = Angle::new(15.0, AngleUnit::Deg), max = Angle::new(45.0, AngleUnit::Deg)))]
    pub friction_angle: Angle,
}

/// A layer that is given no credit.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct NoCredit {}
