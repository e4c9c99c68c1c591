//! Constants of the concrete codes. Numbers that are part of a published equation stand in that
//! equation.

use crate::quantity::{LengthUnit, Size, SteelStress, StressUnit};
use crate::source::{
    ACI_318_19_COVER, ACI_318_19_FLEXURE, CSA_A23_1_COVER, CSA_A23_3_19_FLEXURE,
    CSA_A23_3_19_SIMPLIFIED_SHEAR, Sourced,
};

/// Factors of ACI 318-19.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AciFactors {
    /// Strain at which concrete fails.
    pub concrete_strain: f64,
    /// Modulus of elasticity of bars.
    pub steel_modulus: SteelStress,
    /// Reduction in shear and torsion.
    pub shear: f64,
    /// Least and greatest strength of concrete.
    pub concrete: (SteelStress, SteelStress),
    /// Greatest yield strength of bars.
    pub bars: SteelStress,
    /// Greatest yield strength of stirrups.
    pub stirrups: SteelStress,
    /// Depth of beam up to which stirrups are not required.
    pub shallow: Size,
}

/// Factors of ACI 318-19 in force.
pub static ACI_FACTORS: Sourced<AciFactors> = Sourced::new(
    "aci_318_19_factors",
    AciFactors {
        concrete_strain: 0.003,
        steel_modulus: SteelStress::new(29_000.0, StressUnit::Ksi),
        shear: 0.75,
        concrete: (
            SteelStress::new(2_500.0, StressUnit::Psi),
            SteelStress::new(10_000.0, StressUnit::Psi),
        ),
        bars: SteelStress::new(80.0, StressUnit::Ksi),
        stirrups: SteelStress::new(420.0, StressUnit::MPa),
        shallow: Size::new(10.0, LengthUnit::In),
    },
    &ACI_318_19_FLEXURE,
);

/// Factors of CSA A23.3:19.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CsaFactors {
    /// On concrete.
    pub concrete_factor: f64,
    /// On bars.
    pub steel_factor: f64,
    /// Strain at which concrete fails.
    pub concrete_strain: f64,
    /// Modulus of elasticity of bars.
    pub steel_modulus: SteelStress,
    /// Least and greatest strength of concrete.
    pub concrete: (SteelStress, SteelStress),
    /// Greatest yield strength of bars with the simplified shear.
    pub bars: SteelStress,
    /// Greatest yield strength of stirrups.
    pub stirrups: SteelStress,
    /// Depth of beam above which stirrups are required.
    pub deep: Size,
    /// Strength of concrete up to which its modulus needs no unit weight.
    pub modulus_by_strength: SteelStress,
}

/// Factors of CSA A23.3:19 in force.
pub static CSA_FACTORS: Sourced<CsaFactors> = Sourced::new(
    "csa_a23_3_19_factors",
    CsaFactors {
        concrete_factor: 0.65,
        steel_factor: 0.85,
        concrete_strain: 0.0035,
        steel_modulus: SteelStress::new(200_000.0, StressUnit::MPa),
        concrete: (
            SteelStress::new(20.0, StressUnit::MPa),
            SteelStress::new(60.0, StressUnit::MPa),
        ),
        bars: SteelStress::new(400.0, StressUnit::MPa),
        stirrups: SteelStress::new(500.0, StressUnit::MPa),
        deep: Size::new(750.0, LengthUnit::Mm),
        modulus_by_strength: SteelStress::new(40.0, StressUnit::MPa),
    },
    &CSA_A23_3_19_FLEXURE,
);

/// Size of aggregate where none was sent.
pub static AGGREGATE_SIZE: Sourced<Size> = Sourced::new(
    "aggregate_size",
    Size::new(20.0, LengthUnit::Mm),
    &CSA_A23_3_19_SIMPLIFIED_SHEAR,
);

/// Least clear cover by exposure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoverRule {
    /// Cast against ground.
    pub against_ground: Size,
    /// Formed, bars thicker than `thin`.
    pub formed: Size,
    /// Formed, thinner bars.
    pub formed_thin: Size,
    /// Diameter up to which a bar is thin.
    pub thin: Size,
}

/// Cover of ACI 318-19: 3 in; 2 in for No. 6 and thicker, 1-1/2 in for No. 5 and thinner.
pub static ACI_COVER: Sourced<CoverRule> = Sourced::new(
    "aci_318_19_cover",
    CoverRule {
        against_ground: Size::new(3.0, LengthUnit::In),
        formed: Size::new(2.0, LengthUnit::In),
        formed_thin: Size::new(1.5, LengthUnit::In),
        thin: Size::new(16.0, LengthUnit::Mm),
    },
    &ACI_318_19_COVER,
);

/// Cover of CSA A23.1: 75 mm; 40 mm formed and exposed to freezing.
pub static CSA_COVER: Sourced<CoverRule> = Sourced::new(
    "csa_a23_1_cover",
    CoverRule {
        against_ground: Size::new(75.0, LengthUnit::Mm),
        formed: Size::new(40.0, LengthUnit::Mm),
        formed_thin: Size::new(40.0, LengthUnit::Mm),
        thin: Size::new(16.0, LengthUnit::Mm),
    },
    &CSA_A23_1_COVER,
);
