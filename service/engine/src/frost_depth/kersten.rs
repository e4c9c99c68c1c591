//! Thermal properties of mineral soil from its dry unit weight and water, one equation each.

use crate::math::{log10, pow};
use crate::quantity::{
    ConductivityUnit, HeatCapacity, HeatCapacityUnit, HeatUnit, LatentHeat, ThermalConductivity,
    UnitWeight, UnitWeightUnit,
};
use crate::source::{DERIVED, KERSTEN_1949, Reference, WATER_LATENT_HEAT};
use crate::trace::Trace;

/// Conductivity in Btu in/(ft2 h F), the unit of the published equations.
fn inch_units(value: f64) -> ThermalConductivity {
    ThermalConductivity::new(value / 12.0, ConductivityUnit::BtuPerHFtF)
}

/// Conductivity of fine soil, unfrozen.
///
/// k_u = (0.9 log10 w - 0.2) 10^(0.01 g_d) / 12; g_d dry unit weight (lbf/ft3), w water by dry
/// mass (%); Btu/(h ft F). Range: w from 7 %. Source: Kersten 1949. Positive.
pub fn fine_unfrozen(dry: UnitWeight, water: f64, trace: &mut Trace) -> ThermalConductivity {
    let g = dry.get(UnitWeightUnit::Pcf);
    trace.step(
        "k_u",
        "(0.9 log10(100 w) - 0.2) 10^(0.01 g_d) / 12",
        inch_units((0.9 * log10(100.0 * water) - 0.2) * pow(10.0, 0.01 * g)),
        [("g_d", dry.into()), ("w", water.into())],
        &KERSTEN_1949,
    )
}

/// Conductivity of fine soil, frozen.
///
/// k_f = (0.01 10^(0.022 g_d) + 0.085 10^(0.008 g_d) w) / 12; symbols and unit as
/// [`fine_unfrozen`]. Range: w from 7 %. Source: Kersten 1949. Positive.
pub fn fine_frozen(dry: UnitWeight, water: f64, trace: &mut Trace) -> ThermalConductivity {
    let g = dry.get(UnitWeightUnit::Pcf);
    trace.step(
        "k_f",
        "(0.01 10^(0.022 g_d) + 0.085 10^(0.008 g_d) 100 w) / 12",
        inch_units(0.01 * pow(10.0, 0.022 * g) + 0.085 * pow(10.0, 0.008 * g) * 100.0 * water),
        [("g_d", dry.into()), ("w", water.into())],
        &KERSTEN_1949,
    )
}

/// Conductivity of coarse soil, unfrozen.
///
/// k_u = (0.7 log10 w + 0.4) 10^(0.01 g_d) / 12; symbols and unit as [`fine_unfrozen`]. Range: w
/// from 1 %. Source: Kersten 1949. Positive.
pub fn coarse_unfrozen(dry: UnitWeight, water: f64, trace: &mut Trace) -> ThermalConductivity {
    let g = dry.get(UnitWeightUnit::Pcf);
    trace.step(
        "k_u",
        "(0.7 log10(100 w) + 0.4) 10^(0.01 g_d) / 12",
        inch_units((0.7 * log10(100.0 * water) + 0.4) * pow(10.0, 0.01 * g)),
        [("g_d", dry.into()), ("w", water.into())],
        &KERSTEN_1949,
    )
}

/// Conductivity of coarse soil, frozen.
///
/// k_f = (0.076 10^(0.013 g_d) + 0.032 10^(0.0146 g_d) w) / 12; symbols and unit as
/// [`fine_unfrozen`]. Range: w from 1 %. Source: Kersten 1949; a published reading of his chart
/// is 12 % above it. Positive.
pub fn coarse_frozen(dry: UnitWeight, water: f64, trace: &mut Trace) -> ThermalConductivity {
    let g = dry.get(UnitWeightUnit::Pcf);
    trace.step(
        "k_f",
        "(0.076 10^(0.013 g_d) + 0.032 10^(0.0146 g_d) 100 w) / 12",
        inch_units(0.076 * pow(10.0, 0.013 * g) + 0.032 * pow(10.0, 0.0146 * g) * 100.0 * water),
        [("g_d", dry.into()), ("w", water.into())],
        &KERSTEN_1949,
    )
}

/// Heat capacity of soil, mean of frozen and unfrozen.
///
/// C = g_d (c + 0.75 w); g_d dry unit weight (lbf/ft3), c heat of the solids over that of water
/// (1), w water by dry mass (1); Btu/(ft3 F). Range: from dry to saturated. Source: UFC 3-130-06
/// as coded publicly (c = 0.17), UFC 3-130-05 (c = 0.20). Positive.
pub fn heat_capacity(
    dry: UnitWeight,
    solids: f64,
    water: f64,
    source: &'static Reference,
    trace: &mut Trace,
) -> HeatCapacity {
    let g = dry.get(UnitWeightUnit::Pcf);
    trace.step(
        "C",
        "g_d (c + 0.75 w)",
        HeatCapacity::new(g * (solids + 0.75 * water), HeatCapacityUnit::BtuPerFt3F),
        [
            ("g_d", dry.into()),
            ("c", solids.into()),
            ("w", water.into()),
        ],
        source,
    )
}

/// Latent heat of the water in soil.
///
/// L = l g_d w; l latent heat of water (Btu/lb, 144), g_d dry unit weight (lbf/ft3), w water by
/// dry mass (1); Btu/ft3. Range: from dry to saturated. Source: UFC 3-130-05, chapter 12. Given
/// up in freezing, positive.
pub fn latent_heat(dry: UnitWeight, water: f64, of_water: f64, trace: &mut Trace) -> LatentHeat {
    let g = dry.get(UnitWeightUnit::Pcf);
    trace.step(
        "L",
        "144 g_d w",
        LatentHeat::new(of_water * g * water, HeatUnit::BtuPerFt3),
        [("g_d", dry.into()), ("w", water.into())],
        &WATER_LATENT_HEAT,
    )
}

/// Water by dry mass that fills all pores.
///
/// w_s = g_w / g_d - 1 / G; g_w unit weight of water, g_d dry unit weight (N/m3), G grains over
/// water (1). Range: g_d below G g_w. Source: definition of the symbols. Nil or less where the
/// soil would be denser than its grains.
pub fn saturation_water(dry: UnitWeight, water: UnitWeight, grains: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "w_s",
        "g_w / g_d - 1 / G",
        water / dry - 1.0 / grains,
        [
            ("g_w", water.into()),
            ("g_d", dry.into()),
            ("G", grains.into()),
        ],
        &DERIVED,
    )
}
