//! Design basis of an axial capacity: which factors turn an ultimate resistance into one
//! that may be used, and the load it is compared with. Shared by the calculations; which
//! formats a calculation has is a member of its request.

pub mod codes;
mod eurocode;
mod others;

#[cfg(feature = "compute")]
mod australian_factors;
#[cfg(feature = "compute")]
mod eurocode_factors;
#[cfg(feature = "compute")]
mod factors;

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Force, ForceUnit};

pub use eurocode::*;
pub use others::*;

#[cfg(feature = "compute")]
pub use australian_factors::*;
#[cfg(feature = "compute")]
pub use eurocode_factors::*;
#[cfg(feature = "compute")]
pub use factors::*;

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

/// What the safety factor in tension is that of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum UpliftElement {
    /// One pile by itself.
    Single,
    /// A group of piles analysed as one, of which this pile is part. Only the clause of New
    /// York City has such a factor: 2.5 by analysis, 2 by load test.
    Group,
}

/// What a resistance rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ResistanceProof {
    /// Calculation or correlation; a torque correlation by itself is that.
    Analysis,
    /// Static load tests on this site that bear it out; they are not part of the request
    /// and are not judged.
    LoadTest,
}

/// Limit-states design.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AxialLimitStates {
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
    pub proof: Option<ResistanceProof>,
}

/// Load on the pile, never negative; at least one of `compression` and `tension`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AxialDemand {
    /// Whether the loads are unfactored, for an allowable-stress basis, or factored, for a
    /// basis by limit states. The wrong pair is refused.
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
