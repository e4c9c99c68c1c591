//! What a reinforced section has: strengths, least steel and rigidity. Types only.

use serde::{Deserialize, Serialize};

use super::request::ConcreteCode;
use crate::quantity::{FlexuralRigidity, Force, Moment, Size, SteelArea, SteelStress, Torque};

/// Strength of a reinforced section by its code, at the level of factored loads.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SectionStrength {
    /// The code.
    pub code: ConcreteCode,
    /// With tension at the bottom.
    pub sagging: FlexuralStrength,
    /// With tension at the top.
    pub hogging: FlexuralStrength,
    /// In one-way shear.
    pub shear: OneWayShear,
    /// Torsion below which it may be left out of account.
    pub torsion_threshold: Torque,
    /// Modulus of elasticity of the concrete.
    pub elastic_modulus: SteelStress,
    /// Flexural rigidity of the uncracked section.
    pub gross_rigidity: FlexuralRigidity,
    /// Flexural rigidity of the cracked section, the lesser of the two faces.
    pub cracked_rigidity: FlexuralRigidity,
    /// The rigidity chosen for the analysis.
    pub rigidity: FlexuralRigidity,
}

/// Bending strength with tension at one face.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FlexuralStrength {
    /// From the face in compression to the bars in tension.
    pub effective_depth: Size,
    /// Depth of the rectangular stress block.
    pub stress_block_depth: Size,
    /// Depth of the neutral axis.
    pub neutral_axis_depth: Size,
    /// Strain of the bars in tension when the concrete fails.
    pub steel_strain_ratio: f64,
    /// Strength reduction factor on the moment; left out where the code reduces the materials.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub strength_reduction_factor: Option<f64>,
    /// Moment it takes, after reduction.
    pub moment: Moment,
    /// Least steel of this face.
    pub minimum_steel: SteelArea,
}

/// Strength in one-way shear.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct OneWayShear {
    /// Depth that counts for shear, by the face with the lesser one.
    pub depth: Size,
    /// What the concrete gives, after reduction.
    pub concrete: Force,
    /// What the stirrups give, after reduction; left out without stirrups or with fewer than the
    /// least, which are not counted.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub stirrups: Option<Force>,
    /// Shear it takes, after reduction.
    pub shear: Force,
    /// Area that one stirrup must have at the spacing sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub minimum_stirrup: Option<SteelArea>,
    /// Greatest spacing of the stirrups.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub greatest_spacing: Option<Size>,
}
