//! Design basis and demand: which factors turn an ultimate resistance into one that may
//! be used, and what it is compared with. The factors themselves are in `factors.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit};

/// Format of the design.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HelixBasis {
    /// Allowable load = ultimate / safety factor; compared with unfactored load.
    AllowableStress(HelixAllowableStress),
    /// Factored resistance = resistance factor x ultimate; compared with factored load.
    LimitStates(HelixLimitStates),
}

validate_choice!(HelixBasis {
    AllowableStress = "allowable_stress", LimitStates = "limit_states"
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
    /// What the resistance rests on; `analysis` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub proof: Option<HelixProof>,
    /// Other ultimate compression loads of the same pile, of which the code takes the
    /// least together with the bearing of the soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub other_ultimates: Option<OtherUltimates>,
}

/// Clause of the safety factor in tension. The clauses disagree; the answer names the one
/// in force.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum UpliftClause {
    /// General uplift clause: 3 by analysis, 2 by load test.
    General,
    /// General uplift clause under wind or seismic load: 2 by analysis, 1.5 by load test.
    GeneralWindSeismic,
    /// Clause of helical piles, half of the ultimate: 2.
    Helical,
    /// New York City: 3 by analysis, 2 by load test.
    NewYorkCity,
}

/// What a resistance rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum HelixProof {
    /// The analysis of this answer.
    Analysis,
    /// Static load tests on this site that bear the analysis out; they are not part of
    /// the request and are not judged.
    LoadTest,
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

/// Limit-states design.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HelixLimitStates {
    /// Resistance factor in compression; 0.1 to 1. Left out: 0.4 by analysis, 0.6 by
    /// static test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub compression_resistance_factor: Option<f64>,
    /// Resistance factor in tension; 0.1 to 1. Left out: 0.3 by analysis, 0.4 by static
    /// test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub tension_resistance_factor: Option<f64>,
    /// What the resistance rests on; `analysis` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub proof: Option<HelixProof>,
}

/// Load on the pile, never negative; at least one of `compression` and `tension`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HelixDemand {
    /// Whether the loads are unfactored, for an allowable-stress basis, or factored, for a
    /// limit-states basis. The wrong pair is refused.
    pub level: DemandLevel,
    /// Compression; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub compression: Option<Force>,
    /// Tension; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub tension: Option<Force>,
}

/// Level of a load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DemandLevel {
    /// Unfactored (service) load of an allowable-stress combination.
    Allowable,
    /// Factored load of a limit-states combination.
    Factored,
}
