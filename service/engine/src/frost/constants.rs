//! Defaults of this calculation, each beside its source. No equations.

use crate::quantity::{Length, LengthUnit, SoilStress, StressUnit, UnitWeight, UnitWeightUnit};
use crate::source::{
    CFEM_ADFREEZE, CHEN_SWELL_UPLIFT, CONCRETE_UNIT_WEIGHT_PRACTICE, DOMASCHUK_1982,
    FROST_DEAD_LOAD_SHARE, FROST_LIMIT_STATES_FACTOR, FROST_MARGIN_PRACTICE,
    NBCC_DEAD_COUNTERACTING, NELSON_MILLER_ALPHA, STEEL_DENSITY, Sourced, TOP_HELIX_5D,
    TOP_HELIX_12D, TXDOT_SWELL_UPLIFT, USACE_ADFREEZE, VOID_FORM_RESIDUAL_PRACTICE,
};

/// Depth of the top helix and the tip below the base of frost.
pub static FROST_MARGIN: Sourced<Length> = Sourced::new(
    "frost_margin",
    Length::new(0.3, LengthUnit::M),
    &FROST_MARGIN_PRACTICE,
);
/// Depth of the top helix in diameters of the largest helix.
pub static DIAMETERS: Sourced<f64> = Sourced::new("diameters_factor", 5.0, &TOP_HELIX_5D);
/// The same where tension capacity is taken from torque.
pub static TORQUE_DIAMETERS: Sourced<f64> =
    Sourced::new("torque_diameters_factor", 12.0, &TOP_HELIX_12D);

/// Average adfreeze bond, fine soil on steel.
pub static BOND_FINE: Sourced<SoilStress> = Sourced::new(
    "bond_fine_on_steel",
    SoilStress::new(100.0, StressUnit::KPa),
    &CFEM_ADFREEZE,
);
/// Average adfreeze bond, saturated gravel on steel.
pub static BOND_GRAVEL: Sourced<SoilStress> = Sourced::new(
    "bond_gravel_on_steel",
    SoilStress::new(150.0, StressUnit::KPa),
    &CFEM_ADFREEZE,
);
/// Severe adfreeze bond, silt on steel.
pub static BOND_SEVERE: Sourced<SoilStress> = Sourced::new(
    "bond_severe",
    SoilStress::new(275.0, StressUnit::KPa),
    &USACE_ADFREEZE,
);
/// Highest laboratory peak of adfreeze bond on steel.
pub static BOND_LABORATORY_PEAK: Sourced<SoilStress> = Sourced::new(
    "bond_laboratory_peak",
    SoilStress::new(350.0, StressUnit::KPa),
    &DOMASCHUK_1982,
);
/// Average adfreeze bond, fine soil on concrete or wood.
pub static BOND_CONCRETE: Sourced<SoilStress> = Sourced::new(
    "bond_fine_on_concrete",
    SoilStress::new(65.0, StressUnit::KPa),
    &CFEM_ADFREEZE,
);

/// Share of dead load against frost, allowable stress.
pub static ASD_DEAD_LOAD: Sourced<f64> =
    Sourced::new("frost_asd_dead_load_factor", 0.6, &FROST_DEAD_LOAD_SHARE);
/// Load factor on the frost force, limit states.
pub static LSD_FROST: Sourced<f64> = Sourced::new(
    "frost_lsd_frost_load_factor",
    1.25,
    &FROST_LIMIT_STATES_FACTOR,
);
/// Load factor on dead load that counteracts, limit states.
pub static LSD_DEAD_LOAD: Sourced<f64> =
    Sourced::new("frost_lsd_dead_load_factor", 0.9, &NBCC_DEAD_COUNTERACTING);
/// Crushed over nominal thickness of a void form.
pub static VOID_RESIDUAL: Sourced<f64> = Sourced::new(
    "void_form_residual_ratio",
    0.40,
    &VOID_FORM_RESIDUAL_PRACTICE,
);
/// Wet concrete with its bars.
pub static CONCRETE_UNIT_WEIGHT: Sourced<UnitWeight> = Sourced::new(
    "concrete_unit_weight",
    UnitWeight::new(150.0, UnitWeightUnit::Pcf),
    &CONCRETE_UNIT_WEIGHT_PRACTICE,
);
/// Structural steel: 7,850 kg/m3 under standard gravity.
pub static STEEL_UNIT_WEIGHT: Sourced<UnitWeight> = Sourced::new(
    "steel_unit_weight",
    UnitWeight::new(7_850.0 * 9.806_65, UnitWeightUnit::NPerM3),
    &STEEL_DENSITY,
);

/// Share of the swell pressure that acts as adhesion.
pub static SWELL_ALPHA: Sourced<f64> = Sourced::new("swell_alpha_factor", 0.15, &CHEN_SWELL_UPLIFT);
/// Lower end of its range.
pub static SWELL_ALPHA_LOWER: Sourced<f64> =
    Sourced::new("swell_alpha_lower_factor", 0.10, &NELSON_MILLER_ALPHA);
/// Upper end of its range.
pub static SWELL_ALPHA_UPPER: Sourced<f64> =
    Sourced::new("swell_alpha_upper_factor", 0.25, &NELSON_MILLER_ALPHA);
/// Least active depth for which the whole swell pressure is published.
pub static SWELL_FULL_DEPTH_MIN: Sourced<Length> = Sourced::new(
    "swell_full_pressure_depth_min",
    Length::new(10.0, LengthUnit::Ft),
    &TXDOT_SWELL_UPLIFT,
);
/// Greatest active depth for which the whole swell pressure is published.
pub static SWELL_FULL_DEPTH_MAX: Sourced<Length> = Sourced::new(
    "swell_full_pressure_depth_max",
    Length::new(20.0, LengthUnit::Ft),
    &TXDOT_SWELL_UPLIFT,
);
