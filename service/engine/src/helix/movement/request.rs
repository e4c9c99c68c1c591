//! What is asked of the movement of the head of the pile.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Force, ForceUnit, Length, LengthUnit, Size, SteelStress, StressUnit};

/// Estimate of the movement of the head of the pile under load, in each direction that is
/// computed. Needs the wall of a round shaft.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HeadMovement {
    /// Load at which the movement is asked for; left out: the unfactored `demand`, else the
    /// allowable capacity, else half of the ultimate resistance. A factored load is never
    /// taken for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub working_load: Option<WorkingLoad>,
    /// Most that the head may move under the working load; 0.1 to 500 mm. Judged in each
    /// direction that is sent an unfactored load, or under the allowable capacity where none
    /// is sent at all; with a factored basis, or none, it needs `working_load`. Left out, the
    /// movement is not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::new(0.1, LengthUnit::Mm), max = Size::new(500.0, LengthUnit::Mm)))]
    pub limit: Option<Size>,
    /// Height of the head of the pile above final grade; -30 to 10 m, 0 when left out.
    /// Negative where the head is below grade, at most down to the top helix.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(-30.0, LengthUnit::M), max = Length::new(10.0, LengthUnit::M)))]
    pub head_height: Option<Length>,
    /// Elastic modulus of the shaft; 50 to 250 GPa, 200 GPa when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SteelStress::new(50_000.0, StressUnit::MPa), max = SteelStress::new(250_000.0, StressUnit::MPa)))]
    pub elastic_modulus: Option<SteelStress>,
    /// Failure ratio of the hyperbola of a helix: its ultimate over the load the hyperbola
    /// tends to; 0 to 0.95, 0.75 when left out, which puts half the ultimate at a fifth of
    /// the movement at the ultimate. 0 is a straight line.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 0.95))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.95))]
    pub failure_ratio: Option<f64>,
    /// Movement of a helix at its ultimate over its diameter, in sand and gravel; 0.02 to
    /// 0.3, 0.1 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.02, max = 0.3))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.02, maximum = 0.3))]
    pub coarse_movement_ratio: Option<f64>,
    /// The same in clay and silt; 0.02 to 0.3, 0.05 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.02, max = 0.3))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.02, maximum = 0.3))]
    pub fine_movement_ratio: Option<f64>,
    /// How many points of the curve of load and movement, in equal steps of load from nil to
    /// the ultimate, the answer lists; 2 to 50. Left out, none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 2, max = 50))]
    #[cfg_attr(feature = "openapi", schema(minimum = 2, maximum = 50))]
    pub point_count: Option<u32>,
}

/// Unfactored load at which a movement is asked for, never negative.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct WorkingLoad {
    /// Compression; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub compression: Option<Force>,
    /// Tension; 0 to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub tension: Option<Force>,
}
