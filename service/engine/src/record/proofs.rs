//! The torque indicator and the position of the head, as the caller sends them.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::date::IsoDate;
use crate::quantity::{Angle, AngleUnit, LengthUnit, Size};

/// The device that the torque was read on.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TorqueIndicator {
    /// Accuracy of its readings as a part of them: 0.05 for plus or minus 5 %; 0 to 0.5. A
    /// verdict that would turn inside this band is `provisional`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 0.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.5))]
    pub accuracy_ratio: Option<f64>,
    /// Day of its calibration. Left out, it is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub calibrated_on: Option<IsoDate>,
    /// Day on which the pile was turned in. Left out, the calibration is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub driven_on: Option<IsoDate>,
    /// Days for which a calibration holds; 1 to 1,830; 365 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1, max = 1830))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 1830))]
    pub valid_day_count: Option<u32>,
}

/// Where the head came to stand against the plan, and what is allowed.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RecordPosition {
    /// Distance from the planned place along the beam, either way; 0 to 10 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = Size::new(10.0, LengthUnit::M)))]
    pub along: Option<Size>,
    /// Distance off the centre line of the beam, either way; 0 to 10 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = Size::new(10.0, LengthUnit::M)))]
    pub off_line: Option<Size>,
    /// Inclination from the planned axis; 0 to 45 degrees.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Angle::ZERO, max = Angle::new(45.0, AngleUnit::Deg)))]
    pub inclination: Option<Angle>,
    /// Distance from the planned place that is allowed, along and off the line each; 0 to 1 m,
    /// 3 in when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = Size::new(1.0, LengthUnit::M)))]
    pub allowed_distance: Option<Size>,
    /// Inclination that is allowed; 0 to 45 degrees, 1 degree when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Angle::ZERO, max = Angle::new(45.0, AngleUnit::Deg)))]
    pub allowed_inclination: Option<Angle>,
}
