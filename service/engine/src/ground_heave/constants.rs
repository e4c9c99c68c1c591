//! Constants of heave, each beside its source. No equations.

use super::swell_request::Expansiveness;
use crate::quantity::{Length, LengthUnit};
use crate::source::{
    AASHTO_HEAVE_RATE, IBC_EXPANSIVE_SOIL, ICE_EXPANSION, SEED_1962, SEED_SCATTER,
    SEGREGATION_CLASSES, Sourced, USACE_3_PERCENT, VAN_DER_MERWE_1964,
};

/// Gain of volume of water in the pores that freezes.
pub static PORE_EXPANSION: Sourced<f64> =
    Sourced::new("ice_expansion_ratio", 0.0906, &ICE_EXPANSION);
/// Volume of ice from water that is drawn to the front.
pub static ICE_VOLUME: Sourced<f64> = Sourced::new("ice_volume_ratio", 1.09, &ICE_EXPANSION);
/// Least frost depth for the segregation potential.
pub const SEGREGATION_DEPTH_MIN: Length = Length::new(0.05, LengthUnit::M);

/// Depth over which swell falls to a tenth.
pub static DEPTH_OF_A_TENTH: Sourced<Length> = Sourced::new(
    "van_der_merwe_depth",
    Length::new(20.0, LengthUnit::Ft),
    &VAN_DER_MERWE_1964,
);
static UNIT_HEAVE_LOW: Sourced<f64> =
    Sourced::new("van_der_merwe_low_ratio", 0.0, &VAN_DER_MERWE_1964);
static UNIT_HEAVE_MEDIUM: Sourced<f64> = Sourced::new(
    "van_der_merwe_medium_ratio",
    0.25 / 12.0,
    &VAN_DER_MERWE_1964,
);
static UNIT_HEAVE_HIGH: Sourced<f64> =
    Sourced::new("van_der_merwe_high_ratio", 0.5 / 12.0, &VAN_DER_MERWE_1964);
static UNIT_HEAVE_VERY_HIGH: Sourced<f64> = Sourced::new(
    "van_der_merwe_very_high_ratio",
    1.0 / 12.0,
    &VAN_DER_MERWE_1964,
);

/// Strain at the surface of the ground, by expansiveness.
pub fn unit_heave(expansiveness: Expansiveness) -> &'static Sourced<f64> {
    match expansiveness {
        Expansiveness::Low => &UNIT_HEAVE_LOW,
        Expansiveness::Medium => &UNIT_HEAVE_MEDIUM,
        Expansiveness::High => &UNIT_HEAVE_HIGH,
        Expansiveness::VeryHigh => &UNIT_HEAVE_VERY_HIGH,
    }
}

/// Coefficient of swell by the plasticity index, in per cent of per cent.
pub static SEED_COEFFICIENT: Sourced<f64> = Sourced::new("seed_coefficient", 2.16e-3, &SEED_1962);
/// Its exponent.
pub static SEED_EXPONENT: Sourced<f64> = Sourced::new("seed_exponent", 2.44, &SEED_1962);
/// Plasticity indices for which the relation is known.
pub static SEED_RANGE: Sourced<(f64, f64)> = Sourced::new("seed_range", (0.1, 0.7), &SEED_1962);
/// Scatter of the relation upwards.
pub static SEED_UPPER: Sourced<f64> = Sourced::new("seed_scatter_ratio", 0.33, &SEED_SCATTER);

/// Share finer than 0.02 mm from which soil is taken for susceptible.
pub static THREE_PERCENT: Sourced<f64> =
    Sourced::new("frost_susceptible_fines_ratio", 0.03, &USACE_3_PERCENT);
/// Boundaries of the classes by heave rate, mm/day.
pub static HEAVE_RATES: Sourced<[f64; 5]> = Sourced::new(
    "heave_rate_classes",
    [0.5, 1.0, 2.0, 4.0, 8.0],
    &AASHTO_HEAVE_RATE,
);
/// Boundaries of the classes by segregation potential, mm2/(K h).
pub static SEGREGATION_BOUNDS: Sourced<[f64; 3]> =
    Sourced::new("segregation_classes", [0.5, 1.5, 3.0], &SEGREGATION_CLASSES);

/// Plasticity index from which a soil can be expansive.
pub static EXPANSIVE_PLASTICITY: Sourced<f64> = Sourced::new(
    "expansive_plasticity_index_ratio",
    0.15,
    &IBC_EXPANSIVE_SOIL,
);
/// Share of fines above which a soil can be expansive, for both sizes.
pub static EXPANSIVE_FINES: Sourced<f64> =
    Sourced::new("expansive_fines_ratio", 0.10, &IBC_EXPANSIVE_SOIL);
/// Expansion index above which a soil is expansive.
pub static EXPANSIVE_INDEX: Sourced<f64> =
    Sourced::new("expansive_index_factor", 20.0, &IBC_EXPANSIVE_SOIL);
