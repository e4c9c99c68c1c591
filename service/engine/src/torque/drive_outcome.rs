//! What `torque-capacity` answers of the drive head: torque, pressure and speed in each
//! gear. Only types: the equations stand in `hydraulics.rs` and `speed.rs`.

use serde::{Deserialize, Serialize};

use crate::quantity::{Displacement, PenetrationRate, Pressure, RotationalSpeed, Torque};

/// Torque, pressure and speed of the drive head; of a two-speed motor in its slow gear, with
/// the fast one in `fast`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DriveOutcome {
    /// Volume for one turn of the pile: displacement times gear ratio.
    pub displacement_per_pile_turn: Displacement,
    /// Torque at the working pressures.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub available: Option<PressureOfTorque>,
    /// Pressure for the required torque.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub for_required: Option<PressureOfTorque>,
    /// Pressure for the target torque.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub for_target: Option<PressureOfTorque>,
    /// Pressure at the torque rating of the shaft, not to be exceeded.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub at_rating: Option<PressureOfTorque>,
    /// Speed of the pile at the flow sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub speed: Option<PileSpeed>,
    /// The same in the fast gear of a two-speed motor.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub fast: Option<FastGearOutcome>,
}

/// Torque, pressure and speed in the fast gear.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FastGearOutcome {
    /// Volume for one turn of the pile: displacement times gear ratio.
    pub displacement_per_pile_turn: Displacement,
    /// Torque at the working pressures.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub available: Option<PressureOfTorque>,
    /// Pressure for the required torque.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub for_required: Option<PressureOfTorque>,
    /// Pressure for the target torque.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub for_target: Option<PressureOfTorque>,
    /// Pressure at the torque rating of the shaft, not to be exceeded.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub at_rating: Option<PressureOfTorque>,
    /// Speed of the pile at the flow sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub speed: Option<PileSpeed>,
}

/// A torque with the pressure that belongs to it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PressureOfTorque {
    /// Torque on the pile.
    pub torque: Torque,
    /// Pressure difference that does the turning.
    pub differential_pressure: Pressure,
    /// Pressure to be seen at the inlet, with the return and no-load pressures of
    /// `working_pressures`; left out where neither was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub inlet_pressure: Option<Pressure>,
}

/// How fast the pile turns and goes down.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileSpeed {
    /// Turns of the pile.
    pub rotational_speed: RotationalSpeed,
    /// Going down one pitch a turn; left out where no `helix_pitch` was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub penetration_rate: Option<PenetrationRate>,
}
