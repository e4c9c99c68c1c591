//! Further design bases of axial resistance as a request carries them: AS 2159 and the
//! caller's own factors. Values and equations are in `australian_factors.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::DemandLevel;
use crate::choice::validate_choice;
use crate::text::reference_text;

/// Design to AS 2159-2009: design geotechnical strength = reduction factor x ultimate;
/// compared with factored loads.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AustralianStandard2159 {
    /// Average risk rating of the site, the design and the installation, as assessed to the
    /// standard; 1 (very low) to 5 (very high).
    #[validate(range(min = 1.0, max = 5.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 5))]
    pub average_risk_rating_factor: f64,
    /// Redundancy of the system of piles.
    pub redundancy: PileRedundancy,
    /// Basic reduction factor in place of the one that follows from rating and redundancy;
    /// 0.1 to 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub basic_reduction_factor: Option<f64>,
    /// Load tests on this site; none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub load_testing: Option<AustralianTesting>,
}

/// Redundancy of a system of piles.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PileRedundancy {
    /// Few piles, so that one that fails cannot shed its load.
    Low,
    /// Loads can go over to other piles.
    High,
}

/// What load testing adds to the reduction factor.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AustralianTesting {
    /// Intrinsic test factor of the kind of test, phi_tf; 0.1 to 1.
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub intrinsic_test_factor: f64,
    /// Benefit factor of the share of piles tested, K; 0 to 1.
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub benefit_factor: f64,
}

/// The caller's own factors. A direction without a factor is given no design capacity.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnDesignFactors {
    /// What the capacity may be compared with: unfactored loads (`allowable`) or factored
    /// ones.
    pub level: DemandLevel,
    /// The code or report the factors come from, 1 to 200 characters; echoed, never
    /// interpreted.
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: String,
    /// In compression.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub compression: Option<OwnDesignFactor>,
    /// In tension.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tension: Option<OwnDesignFactor>,
}

/// One of the caller's own factors.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum OwnDesignFactor {
    /// Divides the ultimate capacity.
    Divisor(OwnDivisor),
    /// Multiplies the ultimate capacity.
    Multiplier(OwnMultiplier),
}

validate_choice!(OwnDesignFactor { Divisor = "divisor", Multiplier = "multiplier" });

/// A divisor.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnDivisor {
    /// Divides the ultimate capacity; 1 to 20.
    #[validate(range(min = 1.0, max = 20.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 20))]
    pub safety_factor: f64,
}

/// A multiplier.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnMultiplier {
    /// Multiplies the ultimate capacity; 0.05 to 1.
    #[validate(range(min = 0.05, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.05, maximum = 1))]
    pub resistance_factor: f64,
}
