//! Cone penetration tests, as the caller sends them: the resistance of the cone, the
//! friction on its sleeve, and the relation that turns them into a strength.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Length, LengthUnit, SoilStress, StressUnit};

/// Friction angle from a cone.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrictionFromCpt {
    /// Readings of the cone.
    #[validate(nested)]
    pub reading: ConeReading,
    /// Depth of the reading, within the layer; its middle when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub test_depth: Option<Length>,
    /// Relation between resistance and angle; `kulhawy_mayne_1990` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub correlation: Option<ConeFriction>,
}

/// Undrained strength from a cone: s_u = (q_t - s_v)/N_kt.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct UndrainedFromCpt {
    /// Readings of the cone.
    #[validate(nested)]
    pub reading: ConeReading,
    /// Depth of the reading, within the layer; its middle when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub test_depth: Option<Length>,
    /// Cone factor N_kt; 10 to 20, 15 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 10.0, max = 20.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 10, maximum = 20))]
    pub cone_factor: Option<f64>,
}

/// Readings of a cone: `total_resistance`, or `cone_resistance` with `pore_pressure` and
/// `area_ratio`.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ConeReading {
    /// Resistance of the cone corrected for pore pressure, q_t; 10 kPa to 100 MPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(10.0, StressUnit::KPa), max = SoilStress::new(100.0, StressUnit::MPa)))]
    pub total_resistance: Option<SoilStress>,
    /// Resistance as measured, q_c; 10 kPa to 100 MPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(10.0, StressUnit::KPa), max = SoilStress::new(100.0, StressUnit::MPa)))]
    pub cone_resistance: Option<SoilStress>,
    /// Pore pressure behind the cone while it is pushed, u_2; -100 kPa to 10 MPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(-100.0, StressUnit::KPa), max = SoilStress::new(10.0, StressUnit::MPa)))]
    pub pore_pressure: Option<SoilStress>,
    /// Net area ratio of the cone, a; 0.3 to 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.3, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.3, maximum = 1))]
    pub area_ratio: Option<f64>,
    /// Friction on the sleeve, f_s; 0.1 kPa to 2 MPa. With it the answer tells the soil
    /// behaviour type index and warns when it contradicts the kind of soil sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(0.1, StressUnit::KPa), max = SoilStress::new(2.0, StressUnit::MPa)))]
    pub sleeve_friction: Option<SoilStress>,
}

/// Relations between the resistance of a cone and the friction angle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ConeFriction {
    /// 17.6 + 11 log10\[(q_t/p_a)/sqrt(s'_v/p_a)\].
    #[default]
    #[serde(rename = "kulhawy_mayne_1990")]
    KulhawyMayne1990,
    /// atan{\[log10(q_t/s'_v) + 0.29\]/2.68}; lower than the other where s'_v is high.
    #[serde(rename = "robertson_campanella_1983")]
    RobertsonCampanella1983,
}
