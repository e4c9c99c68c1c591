//! The ways to the strength of a layer, as the caller sends them: given, or from a test,
//! the stress history or an index. What a test reads is in `spt.rs` and `cpt.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::cpt::{FrictionFromCpt, UndrainedFromCpt};
use super::spt::{FrictionFromSpt, UndrainedFromSpt};
use crate::quantity::{Angle, AngleUnit, Length, LengthUnit, SoilStress, StressUnit};

/// Undrained strength: exactly one of the ways to it.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Undrained {
    /// Undrained shear strength s_u; 1 to 1,000 kPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(1.0, StressUnit::KPa), max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub undrained_strength: Option<SoilStress>,
    /// From blow counts of a standard penetration test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub from_spt: Option<UndrainedFromSpt>,
    /// From a cone penetration test.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub from_cpt: Option<UndrainedFromCpt>,
    /// From the effective stress and the overconsolidation.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub from_stress_history: Option<FromStressHistory>,
    /// From the plasticity index, the effective stress and the overconsolidation.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub from_index: Option<UndrainedFromIndex>,
}

/// Drained strength: exactly one of the ways to the friction angle, and cohesion where there
/// is any.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Drained {
    /// Effective friction angle; 5 to 45 degrees. Above 40 degrees the answer warns.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Angle::new(5.0, AngleUnit::Deg), max = Angle::new(45.0, AngleUnit::Deg)))]
    pub friction_angle: Option<Angle>,
    /// From blow counts of a standard penetration test; not in gravel.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub from_spt: Option<FrictionFromSpt>,
    /// From a cone penetration test; not in gravel.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub from_cpt: Option<FrictionFromCpt>,
    /// From the relative density.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub from_index: Option<FrictionFromIndex>,
    /// Effective cohesion c'; 0 to 100 kPa, none when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(100.0, StressUnit::KPa)))]
    pub cohesion: Option<SoilStress>,
}

/// Undrained strength from stress history: s_u = s'_v S OCR^m, with s'_v at one depth for the
/// whole layer. Split a layer in which it grows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FromStressHistory {
    /// Overconsolidation ratio OCR; 1 to 20. 1 is normally consolidated.
    #[validate(range(min = 1.0, max = 20.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 20))]
    pub overconsolidation_ratio: f64,
    /// Strength over effective stress of the normally consolidated soil, S; 0.1 to 0.5, 0.22
    /// when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.1, max = 0.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 0.5))]
    pub strength_ratio: Option<f64>,
    /// Exponent m on the overconsolidation ratio; 0.5 to 1, 0.8 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.5, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 1))]
    pub exponent_factor: Option<f64>,
    /// Depth at which the effective stress is taken, within the layer; its middle when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub reference_depth: Option<Length>,
}

/// Undrained strength from the plasticity index: s_u = s'_v (0.11 + 0.37 PI) OCR^m, with s'_v
/// at one depth for the whole layer. Split a layer in which it grows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct UndrainedFromIndex {
    /// Plasticity index PI as a ratio; 0.1 to 1 (0.25 is 25 %).
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub plasticity_index_ratio: f64,
    /// Overconsolidation ratio OCR; 1 to 20. 1 is normally consolidated.
    #[validate(range(min = 1.0, max = 20.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 20))]
    pub overconsolidation_ratio: f64,
    /// Exponent m on the overconsolidation ratio; 0.5 to 1, 0.8 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.5, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 1))]
    pub exponent_factor: Option<f64>,
    /// Depth at which the effective stress is taken, within the layer; its middle when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub reference_depth: Option<Length>,
}

/// Friction angle from the relative density: phi' = phi_cv + 3 I_R degrees, I_R = I_D (10 -
/// ln p') - 1 held between 0 and 4, p' the mean effective stress at failure in kPa.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrictionFromIndex {
    /// Relative density I_D as a ratio; 0.1 to 1 (0.6 is 60 %).
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub relative_density_ratio: f64,
    /// Friction angle at constant volume phi_cv, from tests or the mineral; 25 to 40 degrees.
    #[validate(range(min = Angle::new(25.0, AngleUnit::Deg), max = Angle::new(40.0, AngleUnit::Deg)))]
    pub critical_friction_angle: Angle,
    /// Mean effective stress p' at failure; 150 to 10,000 kPa. Left out, it is the geometric
    /// mean of vertical effective stress and bearing pressure, s'_v sqrt(N_q), at least
    /// 150 kPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(150.0, StressUnit::KPa), max = SoilStress::new(10_000.0, StressUnit::KPa)))]
    pub mean_stress: Option<SoilStress>,
    /// Depth at which the effective stress is taken, within the layer; its middle when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub reference_depth: Option<Length>,
}
