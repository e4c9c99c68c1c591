//! Choices of `footing-bearing`: theories, corrections, design basis, load. No equation is
//! here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::basis::DemandLevel;
use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit, LineLoad, LineLoadUnit, SoilStress, StressUnit};

/// Theory of bearing capacity, each with its own shape and depth factors; factors of one are
/// never used with another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum FootingMethod {
    /// Terzaghi, rough base: shape factors, no depth factors, so nothing is counted for the
    /// strength of the soil above the base. N_gamma by its table.
    #[serde(rename = "terzaghi_1943")]
    Terzaghi1943,
    /// Meyerhof: depth factors held from a depth of one width on.
    #[serde(rename = "meyerhof_1963")]
    Meyerhof1963,
    /// Hansen.
    #[serde(rename = "hansen_1970")]
    Hansen1970,
    /// Vesic.
    #[serde(rename = "vesic_1973")]
    Vesic1973,
    /// Skempton, for soil that carries load undrained only:
    /// N_c = 5 (1 + 0.2 B/L)(1 + 0.2 D/B), the last at most 1.5.
    #[serde(rename = "skempton_1951")]
    Skempton1951,
}

impl FootingMethod {
    /// Name on the wire.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Terzaghi1943 => "terzaghi_1943",
            Self::Meyerhof1963 => "meyerhof_1963",
            Self::Hansen1970 => "hansen_1970",
            Self::Vesic1973 => "vesic_1973",
            Self::Skempton1951 => "skempton_1951",
        }
    }
}

/// Whether a kind of factor is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FootingFactorUse {
    /// As the theory has it.
    Include,
    /// Taken as 1.
    LeaveOut,
}

/// Reduction for local shear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FootingLocalShear {
    /// The strength as sent: general shear.
    None,
    /// atan(2/3 tan phi) and two thirds of the cohesion or undrained strength, for loose or
    /// soft soil that does not fail in general shear.
    TwoThirds,
}

/// Which pressure under the footing is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FootingPressureKind {
    /// The whole pressure on the base: structure, footing and the soil on it.
    Gross,
    /// The gross pressure less the overburden that was there before; close to the load of the
    /// structure alone over the base where footing and backfill weigh as the soil did.
    Net,
}

/// Format of the design.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FootingBasis {
    /// Allowable pressure = ultimate / safety factor; compared with unfactored load.
    AllowableStress(FootingAllowableStress),
    /// Factored resistance = resistance factor x ultimate; compared with factored load.
    LimitStates(FootingLimitStates),
}

validate_choice!(FootingBasis {
    AllowableStress = "allowable_stress", LimitStates = "limit_states"
});

/// Allowable-stress design of a footing.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingAllowableStress {
    /// Safety factor against failure of the soil; 1 to 10, 3 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 10))]
    pub safety_factor: Option<f64>,
    /// What is divided by it; `gross` when left out, which allows less: q_ult / F, and net
    /// q_ult / F less the overburden, but not below 0. `net` divides the net part only, as is
    /// usual in clay.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub applied_to: Option<FootingPressureKind>,
}

/// Limit-states design of a footing.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingLimitStates {
    /// Resistance factor of bearing; 0.1 to 1, 0.5 when left out (from memory: the answer
    /// warns).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub resistance_factor: Option<f64>,
    /// What is multiplied by it; `gross` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub applied_to: Option<FootingPressureKind>,
}

/// Load on the footing: vertical and through its centre.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingDemand {
    /// Whether the load is unfactored, for an allowable-stress basis, or factored, for a
    /// limit-states basis. The wrong pair is refused.
    pub level: DemandLevel,
    /// Whether the load is gross, with the weight of footing and backfill, or net.
    pub counted: FootingPressureKind,
    /// The load.
    #[validate(nested)]
    pub action: FootingAction,
}

/// A load on a footing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FootingAction {
    /// A pressure on the base.
    Pressure(FootingPressureAction),
    /// A force on a base of finite length; not for a strip.
    Load(FootingLoadAction),
    /// A load on a length of strip; only for a strip.
    LineLoad(FootingLineAction),
}

validate_choice!(FootingAction {
    Pressure = "pressure", Load = "load", LineLoad = "line_load"
});

/// A pressure on the base.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingPressureAction {
    /// The pressure; 0 to 100 MPa.
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(100_000.0, StressUnit::KPa)))]
    pub pressure: SoilStress,
}

/// A force on the base.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingLoadAction {
    /// The force; 0 to 100 MN.
    #[validate(range(min = Force::ZERO, max = Force::new(100_000.0, ForceUnit::KN)))]
    pub force: Force,
}

/// A load on a length of strip.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingLineAction {
    /// The load per length; 0 to 100 MN/m.
    #[validate(range(min = LineLoad::ZERO, max = LineLoad::new(100_000.0, LineLoadUnit::KNPerM)))]
    pub intensity: LineLoad,
}
