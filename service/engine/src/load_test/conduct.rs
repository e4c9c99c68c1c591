//! How a load test was run, as it is told in the request, and which of its checks must be
//! judged. The checks are in `run.rs`, the steps of the load in `steps.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Force, ForceUnit, Length, LengthUnit};

/// How the test was run, for checks against what the test standards ask. Each check is made
/// where its data were sent, and left out where they were not; one named in `checks` is listed
/// in any case, as not evaluated where data are missing. None of them changes the failure load.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LoadTestConduct {
    /// Checks that must be judged: without their data the verdict is `provisional`; 1 to 5.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 5))]
    pub checks: Option<Vec<ConductCheck>>,
    /// Failure load that was foreseen when the steps were chosen; 1 to 20,000 kN. For a quick
    /// test only.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::new(1.0, ForceUnit::KN), max = Force::new(20_000.0, ForceUnit::KN)))]
    pub anticipated_failure: Option<Force>,
    /// Service load of the pile; the test is to be carried to twice this; 1 to 10,000 kN. Left
    /// out: the load in `demand` where that is a service load and `largest_load` is among
    /// `checks`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::new(1.0, ForceUnit::KN), max = Force::new(10_000.0, ForceUnit::KN)))]
    pub design_load: Option<Force>,
    /// Clear distance from the pile to the nearest anchor or support of the reaction; 0 to
    /// 30 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub reaction_distance: Option<Length>,
}

/// A check of how a test was run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ConductCheck {
    /// Steps of load over the failure load foreseen; quick tests. Needs `anticipated_failure`.
    StepSize,
    /// Time of each step; quick tests. Needs the column `elapsed`.
    StepTime,
    /// Largest load of the test over the service load. Needs `design_load`.
    LargestLoad,
    /// Distance of the reaction. Needs `reaction_distance`.
    ReactionDistance,
    /// Rate of movement at the end of the hold at the largest load. Needs two readings there
    /// with the column `elapsed`.
    SettlementRate,
}
