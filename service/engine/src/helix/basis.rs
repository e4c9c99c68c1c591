//! Design basis of `helix-capacity`: its format and the other ultimate loads beside the
//! bearing of the soil. What all calculations share is in `crate::basis`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::basis::{
    AustralianStandard2159, AxialLimitStates, Eurocode7, OwnDesignFactors, ResistanceProof,
    UpliftClause, UpliftElement,
};
use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit};

/// Format of the design.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
// one stands in a request, so its size does not matter
#[allow(clippy::large_enum_variant)]
pub enum HelixBasis {
    /// Allowable load = ultimate / safety factor; compared with unfactored load.
    AllowableStress(HelixAllowableStress),
    /// Factored resistance = resistance factor x ultimate; compared with factored load.
    LimitStates(AxialLimitStates),
    /// EN 1997-1: design resistance = characteristic resistance / partial factor; compared
    /// with the design effects of characteristic actions, or with a factored load.
    #[serde(rename = "eurocode_7")]
    Eurocode7(Eurocode7),
    /// AS 2159-2009: design geotechnical strength = reduction factor x ultimate; compared
    /// with factored load.
    #[serde(rename = "australian_standard_2159")]
    AustralianStandard2159(AustralianStandard2159),
    /// The caller's own factors; compared with load of the level the caller states.
    OwnFactors(OwnDesignFactors),
}

validate_choice!(HelixBasis {
    AllowableStress = "allowable_stress", LimitStates = "limit_states", Eurocode7 = "eurocode_7",
    AustralianStandard2159 = "australian_standard_2159", OwnFactors = "own_factors"
});

/// Allowable-stress design.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HelixAllowableStress {
    /// Safety factor in compression; 1 to 10, 2 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10))]
    pub compression_safety_factor: Option<f64>,
    /// Safety factor in tension; 1 to 10. Left out, it follows from `uplift_clause` and
    /// `proof`, and cannot be sent together with `uplift_clause`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10))]
    pub tension_safety_factor: Option<f64>,
    /// Clause the safety factor in tension is taken from; `general` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uplift_clause: Option<UpliftClause>,
    /// Whether the safety factor in tension is that of a single pile or of a group analysed
    /// as one; `single` when left out. `group` needs the clause `new_york_city`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uplift_element: Option<UpliftElement>,
    /// What the resistance rests on; `analysis` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub proof: Option<ResistanceProof>,
    /// Other ultimate compression loads of the same pile, of which the code takes the
    /// least together with the bearing of the soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub other_ultimates: Option<OtherUltimates>,
}

/// Ultimate compression loads from elsewhere; what is left out is not considered.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OtherUltimates {
    /// From a well-documented correlation with installation torque; up to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub torque_correlation: Option<Force>,
    /// From load tests; up to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub load_test: Option<Force>,
    /// Of the shaft; up to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub shaft: Option<Force>,
    /// Of the shaft couplings; up to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub couplings: Option<Force>,
    /// Sum over the helix plates as fixed to the shaft; up to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub helix_plates: Option<Force>,
}
