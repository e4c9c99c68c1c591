//! EN 1997-1 as a design basis of axial resistance: what the caller chooses, and the
//! characteristic actions. Values and equations are in `eurocode_factors.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit};

/// Design to EN 1997-1 with the recommended values of its annex A; those of a national
/// annex are sent as own factors.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Eurocode7 {
    /// Design approach.
    pub approach: EurocodeApproach,
    /// Kind of pile whose partial factors are used. A helical pile is none of the three;
    /// the choice is the caller's and the answer warns of it.
    pub pile_kind: EurocodePileKind,
    /// What the characteristic resistance comes from; `ground_tests` with this profile
    /// alone when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub proof: Option<EurocodeProof>,
    /// Partial factor in compression: that of the base or of the total resistance. Left
    /// out: `base` with ground tests, as helices bear on their plates and its factor is never
    /// the smaller one; `total` with load tests.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub compression_resistance: Option<EurocodeCompression>,
    /// Model factor that divides every calculated resistance, never a measured one; 1 to 3,
    /// 1 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 3.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 3))]
    pub model_factor: Option<f64>,
    /// Characteristic actions on the pile; needed for a verdict by `da1`, whose two
    /// combinations have different loads. Not together with `demand`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub actions: Option<CharacteristicActions>,
    /// Factors in place of the recommended ones.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub own_factors: Option<EurocodeOwnFactors>,
}

/// Design approaches of EN 1997-1 for piles.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum EurocodeApproach {
    /// Combination 1 (A1 + M1 + R1) and combination 2 (A2 + M1 + R4), both to be met.
    Da1,
    /// One combination, A1 + M1 + R2.
    Da2,
}

/// Kinds of piles that annex A has partial factors for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum EurocodePileKind {
    /// Table A.6.
    Driven,
    /// Table A.7.
    Bored,
    /// Table A.8.
    ContinuousFlightAuger,
}

/// Partial factor that divides the characteristic resistance in compression.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum EurocodeCompression {
    /// All of it taken as resistance of the base.
    Base,
    /// The factor of the total resistance.
    Total,
}

/// What the characteristic resistance comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum EurocodeProof {
    /// Calculation from profiles of ground tests: this request's and others.
    GroundTests(EurocodeGroundTests),
    /// Static load tests; their resistances take the place of the calculated one.
    LoadTests(EurocodeLoadTests),
}

validate_choice!(EurocodeProof { GroundTests = "ground_tests", LoadTests = "load_tests" });

/// Calculation from profiles of ground tests. The profile of this request counts as one.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EurocodeGroundTests {
    /// Ultimate resistances of the same pile calculated from other profiles of the site,
    /// before any factor; at most 20.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 20))]
    pub other_profiles: Option<Vec<EurocodeResistance>>,
}

/// Static load tests on piles of the same kind and depth in the same ground. A direction
/// without tests is given no design resistance.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EurocodeLoadTests {
    /// Ultimate resistances measured, one entry a tested pile; 1 to 20.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 20))]
    pub tests: Vec<EurocodeResistance>,
}

/// Ultimate resistance of one profile or one tested pile, without any factor; at least
/// one of `compression` and `tension`.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EurocodeResistance {
    /// In compression; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub compression: Option<Force>,
    /// In tension; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub tension: Option<Force>,
}

/// Characteristic actions on the pile, never negative.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CharacteristicActions {
    /// That press the pile down.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub compression: Option<CompressionActions>,
    /// That pull the pile up, with what holds it down.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tension: Option<TensionActions>,
}

/// Actions in compression; at least one.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CompressionActions {
    /// Permanent; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub permanent: Option<Force>,
    /// Variable, companion values included; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub variable: Option<Force>,
}

/// Actions in tension; at least one of the two that pull.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TensionActions {
    /// Permanent that pulls; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub permanent_unfavourable: Option<Force>,
    /// Variable that pulls, companion values included; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub variable: Option<Force>,
    /// Permanent that holds the pile down; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub permanent_favourable: Option<Force>,
}

/// Factors in place of the recommended ones; what is left out stays.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EurocodeOwnFactors {
    /// Of the first combination, which is the only one of `da2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub combination_1: Option<EurocodeSetFactors>,
    /// Of the second combination of `da1`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub combination_2: Option<EurocodeSetFactors>,
    /// Correlation factor on the mean resistance (xi 1 or xi 3); 1 to 2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub correlation_mean_factor: Option<f64>,
    /// Correlation factor on the least resistance (xi 2 or xi 4); 1 to 2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub correlation_least_factor: Option<f64>,
}

/// Partial factors of one combination.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EurocodeSetFactors {
    /// On unfavourable permanent actions; 1 to 2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub permanent_unfavourable_factor: Option<f64>,
    /// On favourable permanent actions; 0 to 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub permanent_favourable_factor: Option<f64>,
    /// On unfavourable variable actions; 1 to 2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub variable_factor: Option<f64>,
    /// On the resistance in compression; 1 to 4.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 4.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 4))]
    pub compression_resistance_factor: Option<f64>,
    /// On the resistance in tension; 1 to 4.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 4.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 4))]
    pub tension_resistance_factor: Option<f64>,
}
