//! Defaults of this calculation, each beside its source. No equations.

use crate::quantity::{
    ConductivityUnit, HeatCapacity, HeatCapacityUnit, ThermalConductivity, UnitWeight,
    UnitWeightUnit,
};
use crate::source::{
    DRY_CONCRETE_THERMAL, GRAIN_DENSITY, SOIL_HEAT_CAPACITY_0_17, SOIL_HEAT_CAPACITY_0_20,
    SURFACE_N_FACTORS, Sourced, WATER_LATENT_HEAT, WIND_SCOURED_BEAM,
};

/// Surface factor beside an unheated beam.
pub static N_WIND_SCOURED: Sourced<f64> =
    Sourced::new("surface_factor_wind_scoured_beam", 1.0, &WIND_SCOURED_BEAM);
/// Surface factor of snow.
pub static N_SNOW: Sourced<f64> = Sourced::new("surface_factor_snow", 1.0, &SURFACE_N_FACTORS);
/// Surface factor of concrete pavement.
pub static N_CONCRETE: Sourced<f64> =
    Sourced::new("surface_factor_concrete_pavement", 0.75, &SURFACE_N_FACTORS);
/// Surface factor of asphalt pavement.
pub static N_ASPHALT: Sourced<f64> =
    Sourced::new("surface_factor_asphalt_pavement", 0.70, &SURFACE_N_FACTORS);
/// Surface factor of bare sand and gravel.
pub static N_SAND_GRAVEL: Sourced<f64> =
    Sourced::new("surface_factor_bare_sand_gravel", 0.90, &SURFACE_N_FACTORS);
/// Surface factor of bare soil.
pub static N_BARE_SOIL: Sourced<f64> =
    Sourced::new("surface_factor_bare_soil", 0.70, &SURFACE_N_FACTORS);
/// Surface factor of turf under snow.
pub static N_TURF: Sourced<f64> =
    Sourced::new("surface_factor_turf_under_snow", 0.50, &SURFACE_N_FACTORS);
/// Surface factor under trees.
pub static N_TREES: Sourced<f64> =
    Sourced::new("surface_factor_trees_brush_moss", 0.30, &SURFACE_N_FACTORS);

/// Heat of solids over that of water.
pub static SOLIDS_0_17: Sourced<f64> =
    Sourced::new("solids_heat_ratio_0_17", 0.17, &SOIL_HEAT_CAPACITY_0_17);
/// Heat of solids over that of water, the other one.
pub static SOLIDS_0_20: Sourced<f64> =
    Sourced::new("solids_heat_ratio_0_20", 0.20, &SOIL_HEAT_CAPACITY_0_20);
/// Latent heat of a pound of water, Btu.
pub static LATENT_BTU_PER_LB: Sourced<f64> =
    Sourced::new("water_latent_heat_btu_per_lb", 144.0, &WATER_LATENT_HEAT);

/// Grains over water, by weight.
pub static GRAIN_DENSITY_RATIO: Sourced<f64> =
    Sourced::new("grain_density_ratio", 2.70, &GRAIN_DENSITY);
/// Unit weight of water, for the water that saturates a soil: 62.4 lbf/ft3, of `WATER_LATENT_HEAT`.
pub static WATER: UnitWeight = UnitWeight::new(62.4, UnitWeightUnit::Pcf);

/// Conductivity of dry concrete.
pub static CONCRETE_CONDUCTIVITY: Sourced<ThermalConductivity> = Sourced::new(
    "dry_concrete_conductivity",
    ThermalConductivity::new(1.0, ConductivityUnit::BtuPerHFtF),
    &DRY_CONCRETE_THERMAL,
);
/// Heat capacity of dry concrete.
pub static CONCRETE_HEAT_CAPACITY: Sourced<HeatCapacity> = Sourced::new(
    "dry_concrete_heat_capacity",
    HeatCapacity::new(28.0, HeatCapacityUnit::BtuPerFt3F),
    &DRY_CONCRETE_THERMAL,
);
