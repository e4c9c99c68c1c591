//! What the cold goes through: layers of soil, fill, concrete, insulation and snow.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{
    ConductivityUnit, HeatCapacity, HeatCapacityUnit, HeatUnit, LatentHeat, Length, LengthUnit,
    ThermalConductivity, ThermalResistance, ThermalResistanceUnit, UnitWeight, UnitWeightUnit,
};
use crate::text::Label;

/// One layer that the cold goes through.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FreezingLayer {
    /// Its name; its number from the top when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Its thickness; 0.001 to 10 m. Left out for the last layer, which goes on down, and only
    /// for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.001, LengthUnit::M), max = Length::new(10.0, LengthUnit::M)))]
    pub thickness: Option<Length>,
    /// What it is made of.
    #[validate(nested)]
    pub material: FreezingMaterial,
}

/// What a layer is made of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FreezingMaterial {
    /// Mineral soil or fill by its dry unit weight and water.
    Soil(FreezingSoil),
    /// Anything by its thermal properties, such as peat or fill of unknown make.
    Given(GivenThermal),
    /// Dry concrete.
    Concrete(FreezingConcrete),
    /// A board of insulation.
    Insulation(InsulationBoard),
    /// Snow that lies on the ground all winter.
    Snow(SnowCover),
}

validate_choice!(FreezingMaterial {
    Soil = "soil", Given = "given", Concrete = "concrete", Insulation = "insulation", Snow = "snow"
});

/// Mineral soil by its dry unit weight and water. Not for peat, which must be `given`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FreezingSoil {
    /// Silt and clay, or sand and gravel.
    pub texture: SoilTexture,
    /// Dry unit weight; 10 to 24 kN_per_m3.
    #[validate(range(min = UnitWeight::new(10.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(24.0, UnitWeightUnit::KNPerM3)))]
    pub dry_unit_weight: UnitWeight,
    /// Water by mass of dry soil, 0.15 for 15 %; 0 to 1. Fine soil from 0.07, coarse from 0.01
    /// up to saturation.
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub water_content_ratio: f64,
    /// Unit weight of the grains over that of water, for the water that saturates the soil; 2.5
    /// to 3.2, 2.70 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 2.5, max = 3.2))]
    #[cfg_attr(feature = "openapi", schema(minimum = 2.5, maximum = 3.2))]
    pub grain_density_ratio: Option<f64>,
}

/// Texture of a soil, for its conductivity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SoilTexture {
    /// Silt and clay.
    Fine,
    /// Sand and gravel.
    Coarse,
}

/// Thermal properties the caller has.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenThermal {
    /// Conductivity frozen; 0.02 to 6 W_per_m_K.
    #[validate(range(min = ThermalConductivity::new(0.02, ConductivityUnit::WPerMK), max = ThermalConductivity::new(6.0, ConductivityUnit::WPerMK)))]
    pub frozen_conductivity: ThermalConductivity,
    /// Conductivity unfrozen; 0.02 to 6 W_per_m_K.
    #[validate(range(min = ThermalConductivity::new(0.02, ConductivityUnit::WPerMK), max = ThermalConductivity::new(6.0, ConductivityUnit::WPerMK)))]
    pub unfrozen_conductivity: ThermalConductivity,
    /// Heat capacity, mean of frozen and unfrozen; 0.01 to 5 MJ_per_m3_K.
    #[validate(range(min = HeatCapacity::new(0.01, HeatCapacityUnit::MJPerM3K), max = HeatCapacity::new(5.0, HeatCapacityUnit::MJPerM3K)))]
    pub heat_capacity: HeatCapacity,
    /// Latent heat of its water; 0 to 340 MJ_per_m3, 0 where it is dry.
    #[validate(range(min = LatentHeat::ZERO, max = LatentHeat::new(340.0, HeatUnit::MJPerM3)))]
    pub latent_heat: LatentHeat,
    /// Where they come from.
    #[validate(nested)]
    pub reference: Label,
}

/// Dry concrete: it carries heat and holds no water that freezes.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FreezingConcrete {
    /// Conductivity; 0.2 to 4 W_per_m_K, 1.0 Btu_per_h_ft_F (1.73 W_per_m_K) when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = ThermalConductivity::new(0.2, ConductivityUnit::WPerMK), max = ThermalConductivity::new(4.0, ConductivityUnit::WPerMK)))]
    pub conductivity: Option<ThermalConductivity>,
    /// Heat capacity; 0.5 to 4 MJ_per_m3_K, 28 Btu_per_ft3_F (1.88 MJ_per_m3_K) when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = HeatCapacity::new(0.5, HeatCapacityUnit::MJPerM3K), max = HeatCapacity::new(4.0, HeatCapacityUnit::MJPerM3K)))]
    pub heat_capacity: Option<HeatCapacity>,
}

/// A board of insulation: it only resists. Exactly one of its members is sent. Its heat
/// capacity is taken as nil.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct InsulationBoard {
    /// Conductivity, wet as it lies; 0.01 to 0.3 W_per_m_K.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = ThermalConductivity::new(0.01, ConductivityUnit::WPerMK), max = ThermalConductivity::new(0.3, ConductivityUnit::WPerMK)))]
    pub conductivity: Option<ThermalConductivity>,
    /// Resistance of the whole thickness, wet as it lies; 0.01 to 20 m2_K_per_W.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = ThermalResistance::new(0.01, ThermalResistanceUnit::M2KPerW), max = ThermalResistance::new(20.0, ThermalResistanceUnit::M2KPerW)))]
    pub resistance: Option<ThermalResistance>,
}

/// Snow that lies on the ground all winter, as thick as it is then on average. It holds no
/// water that freezes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SnowCover {
    /// Conductivity; 0.02 to 1.5 W_per_m_K.
    #[validate(range(min = ThermalConductivity::new(0.02, ConductivityUnit::WPerMK), max = ThermalConductivity::new(1.5, ConductivityUnit::WPerMK)))]
    pub conductivity: ThermalConductivity,
    /// Heat capacity; 0.05 to 2 MJ_per_m3_K.
    #[validate(range(min = HeatCapacity::new(0.05, HeatCapacityUnit::MJPerM3K), max = HeatCapacity::new(2.0, HeatCapacityUnit::MJPerM3K)))]
    pub heat_capacity: HeatCapacity,
    /// Where they come from.
    #[validate(nested)]
    pub reference: Label,
}
