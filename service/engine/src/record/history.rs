//! What happened to hole and pile before and after the log, as the caller says. Which torque
//! then counts is in `rows.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Duration, DurationUnit, Length, LengthUnit, MomentUnit, Torque};

/// What was in the hole or happened to the pile before this log.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileHistory {
    /// Depth to which the hole was pre-drilled or pre-dug; 0 to 100 m. Torque counts only below
    /// it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub pre_drilled_depth: Option<Length>,
    /// Greatest depth that a tip reached in the same hole before; 0 to 100 m. Torque counts
    /// only below it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub disturbed_depth: Option<Length>,
    /// Whether the pile was installed elsewhere and taken out before; `false` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub extracted_before: Option<bool>,
    /// Whether the pile went above its torque limit before; `false` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over_torqued_before: Option<bool>,
    /// Whether shaft, couplings, bolts and plates were inspected after that and found sound;
    /// `false` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inspected_since: Option<bool>,
}

/// Why turning stopped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PileStop {
    /// Torque and depth are thought to be reached.
    TargetReached,
    /// On rock, a boulder, rubble or another obstruction.
    Obstruction,
    /// The drive head could not turn it any more.
    DriveStalled,
    /// It turned without going down.
    SpinOut,
    /// It has not stopped: this is how far it is.
    StillTurning,
}

/// Torque when a pile was turned again after a wait.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Retorque {
    /// The wait; 0 to 1 year.
    #[validate(range(min = Duration::ZERO, max = Duration::new(1.0, DurationUnit::Year)))]
    pub waited: Duration,
    /// Torque once it turned and went down again; 0 to 1,000 kN m.
    #[validate(range(min = Torque::ZERO, max = Torque::new(1000.0, MomentUnit::KNM)))]
    pub torque: Torque,
}
