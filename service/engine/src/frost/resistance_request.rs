//! What is asked about what holds a pile down: dead load, tension resistance, and by which
//! format and factors they are compared with the force of the moving ground.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::helix::HelixMethods;
use crate::quantity::{Force, ForceUnit};
use crate::soil::SoilProfile;
use crate::text::Label;

/// What holds a pile down against frost or swelling soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostResistance {
    /// Format of the comparison with its factors. Codes give none for adfreeze or swelling
    /// soil, so each is echoed with its source.
    #[validate(nested)]
    pub design_basis: FrostBasis,
    /// Dead load that is always on the pile once the building stands, unfactored; 0 to
    /// 10 MN. Live load and snow count nothing.
    #[validate(range(min = Force::ZERO, max = Force::new(10_000.0, ForceUnit::KN)))]
    pub dead_load: Force,
    /// Tension resistance of the ground below frost, or below the active zone against
    /// swelling.
    #[validate(nested)]
    pub tension: FrostTension,
}

/// Format of the comparison.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FrostBasis {
    /// Force - factor x dead load at most ultimate tension / safety factor.
    AllowableStress(FrostAllowableStress),
    /// Factor x force - factor x dead load at most factor x ultimate tension.
    LimitStates(FrostLimitStates),
}

validate_choice!(FrostBasis { AllowableStress = "allowable_stress", LimitStates = "limit_states" });

/// Allowable-stress factors.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostAllowableStress {
    /// Share of the dead load that counts; 0 to 1, 0.6 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub dead_load_factor: Option<f64>,
    /// Safety factor on ultimate tension; 1 to 10. When left out: 3 by analysis or torque,
    /// 2 by load test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10))]
    pub tension_safety_factor: Option<f64>,
}

/// Limit-states factors.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostLimitStates {
    /// Load factor on the force of the moving ground; 1 to 3, 1.25 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 3.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 3))]
    pub frost_load_factor: Option<f64>,
    /// Load factor on the dead load that counteracts; 0 to 1, 0.9 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub dead_load_factor: Option<f64>,
    /// Resistance factor on ultimate tension; 0.05 to 1. When left out: 0.3 by analysis or
    /// torque, 0.4 by load test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.05, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.05, maximum = 1))]
    pub tension_resistance_factor: Option<f64>,
}

/// Tension resistance of the ground below frost, or below the active zone.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
#[allow(clippy::large_enum_variant)]
pub enum FrostTension {
    /// The caller's own, ultimate.
    Given(GivenTension),
    /// The caller's own, already allowable or factored; the service divides or factors it no
    /// further.
    GivenDesign(GivenDesignTension),
    /// By helix theory from a soil profile; ground that freezes, or against swelling the
    /// active zone, is given no credit, so only helices below it count.
    FromSoil(TensionFromSoil),
}

validate_choice!(FrostTension {
    Given = "given", GivenDesign = "given_design", FromSoil = "from_soil"
});

/// A tension resistance sent by the caller.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenTension {
    /// Ultimate, neither factored nor divided by a safety factor, and without anything in
    /// ground that freezes, or against swelling in the active zone; 0 to 20 MN.
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub ultimate: Force,
    /// How it was found; the safety or resistance factor follows from it.
    pub by: TensionBy,
    /// Where it comes from.
    #[validate(nested)]
    pub reference: Label,
}

/// A tension resistance sent by the caller that is allowable or factored already.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenDesignTension {
    /// Without anything in ground that freezes, or against swelling in the active zone; 0 to
    /// 20 MN.
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub resistance: Force,
    /// Whether it is allowable, which goes with `allowable_stress`, or factored, which goes
    /// with `limit_states`; another pair is refused.
    pub level: TensionLevel,
    /// How it was found.
    pub by: TensionBy,
    /// Where it comes from.
    #[validate(nested)]
    pub reference: Label,
}

/// Level of a resistance in tension.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TensionLevel {
    /// Ultimate divided by a safety factor.
    Allowable,
    /// Ultimate times a resistance factor.
    Factored,
}

/// How a tension resistance was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TensionBy {
    /// Computed from the ground.
    Analysis,
    /// From installation torque; the 12-diameter rule then holds.
    Torque,
    /// Measured in a tension test on this site.
    LoadTest,
}

/// Tension resistance by helix theory.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TensionFromSoil {
    /// Soil at the pile.
    #[validate(nested)]
    pub profile: SoilProfile,
    /// Choice of methods; each has a default.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub methods: Option<HelixMethods>,
}
