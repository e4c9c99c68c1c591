//! What `torque-capacity` answers for the cab of the rig: target and shaft limit as the
//! operator reads them, and the steps between. Only types: the numbers are in `cab_card.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::equipment::DriveGear;
use super::outcome::CabTorque;
use crate::answer_table::AnswerTable;
use crate::quantity::{Pressure, Shown, Torque};

/// The card for the cab: torque, and pressure where a drive head is sent, in steps of the
/// target and on to the torque rating of the shaft.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CabCard {
    /// Steps as a part of the target; 0.01 to 0.5; 0.1 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.01, max = 0.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.01, maximum = 0.5))]
    pub step_ratio: Option<f64>,
}

/// The card for the cab.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CabCardOutcome {
    /// Torque to be reached, rounded up for the operator.
    pub target: CabMark,
    /// Which torque the target is.
    pub target_of: CabTargetOf,
    /// Torque never to be exceeded, the rating of the shaft, rounded down for the operator;
    /// left out where no rating was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub shaft_limit: Option<CabMark>,
    /// Rows in steps of the target, not rounded, none above the shaft limit; the limit is the
    /// last row. Columns: `part_of_target`, `torque`, and, with a drive head,
    /// `differential_pressure` and, where return-line or no-load pressure is known,
    /// `inlet_pressure`; of a two-speed motor once with `slow_` and once with `fast_` before
    /// the name.
    pub table: AnswerTable,
}

/// Which torque a card aims at: the greater of the two where both are there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CabTargetOf {
    /// The torque the load needs.
    Required,
    /// `target_torque` of the drive head.
    TargetTorque,
}

/// A torque of the card with the pressures that belong to it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CabMark {
    /// The torque, not rounded.
    pub torque: Torque,
    /// The same rounded for the operator: a target up, a limit down.
    pub cab: CabTorque,
    /// Pressures in each gear, the slow one first; empty without a drive head.
    pub gears: Vec<CabGear>,
}

/// Pressures of a torque in one gear.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CabGear {
    /// The gear; `slow` for a motor with one speed.
    pub gear: DriveGear,
    /// Pressure difference that does the turning.
    pub differential_pressure: Pressure,
    /// Pressure to be seen at the inlet: with return-line and no-load pressure; left out where
    /// neither is known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub inlet_pressure: Option<Pressure>,
    /// Inlet pressure rounded for the operator, a target up and a limit (the cut-off) down; the
    /// difference where the inlet pressure is not known.
    pub cab: CabPressure,
    /// Whether the working pressures reach the torque; left out where they were not sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub reached: Option<bool>,
}

/// A pressure rounded for the operator, in both units whatever `output_units` says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CabPressure {
    /// To a whole 0.1 MPa.
    pub si: Shown,
    /// To a whole 10 psi.
    pub us_customary: Shown,
}
