//! Depths and limits that a log is held against, as the caller sends them. The defaults stand
//! beside the rules.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Length, LengthUnit, MomentUnit, RotationUnit, RotationalSpeed, Torque};

/// Depths that the pile must reach or stay above; all below final grade.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RecordDepths {
    /// Least depth of the tip, as specified; 0 to 100 m. Left out, the depth is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub minimum_tip_depth: Option<Length>,
    /// Greatest depth of the tip that can be reached or is allowed, at or below the least; 0 to
    /// 100 m. Left out, there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub maximum_tip_depth: Option<Length>,
    /// Frost depth of the jurisdiction; 0 to 5 m, 0 where the ground does not freeze. Never
    /// inferred from a place: left out, frost is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(5.0, LengthUnit::M)))]
    pub frost_depth: Option<Length>,
    /// How far below the frost depth the top helix must be; 0 to 3 m, 0.3 m when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(3.0, LengthUnit::M)))]
    pub frost_margin: Option<Length>,
    /// Depth to the base of fill without credit; 0 to 30 m. Left out, there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub fill_depth: Option<Length>,
    /// Depth to the base of the zone of seasonal swelling and shrinking; 0 to 30 m. Left out,
    /// there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub active_depth: Option<Length>,
}

/// Limits of torque, advance and speed.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RecordLimits {
    /// Greatest installation torque of shaft, couplings and bolts together by the supplier's
    /// evaluation report; 10 N m to 1,000 kN m. Left out, over-torque is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Torque::new(10.0, MomentUnit::NM), max = Torque::new(1000.0, MomentUnit::KNM)))]
    pub shaft_torque: Option<Torque>,
    /// Least advance in a turn over pitch; 0.5 to 1, 0.85 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.5, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 1))]
    pub least_advance_ratio: Option<f64>,
    /// Least reading in the window over the required torque; 0 to 1, 0.8 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub least_torque_ratio: Option<f64>,
    /// Greatest distance between rows in the window; 0.1 to 2 m, 2 ft when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(2.0, LengthUnit::M)))]
    pub row_spacing: Option<Length>,
    /// Speed of rotation above which the answer warns; 1 to 200 rpm, 30 rpm when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = RotationalSpeed::new(1.0, RotationUnit::Rpm), max = RotationalSpeed::new(200.0, RotationUnit::Rpm)))]
    pub rotation_speed: Option<RotationalSpeed>,
}
