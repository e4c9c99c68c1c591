//! What can be done with a pile that is not accepted. Only types: what is offered when, and
//! with which numbers, is in `advice.rs`.

use serde::{Deserialize, Serialize};

use crate::quantity::{Area, Length, Size, Torque};

/// A thing that can be done next, with what it would need. Numbers that the request gives no
/// ground for are left out, and `needs` says so.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NextStep {
    /// What to do.
    pub step: NextStepKind,
    /// Why it would help, and what it would need, with the numbers.
    pub needs: String,
    /// How much deeper.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub deeper_by: Option<Length>,
    /// Depth of the tip then.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub to_tip_depth: Option<Length>,
    /// Torque to reach or to stay below.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque: Option<Torque>,
    /// Total helix area that would be needed in the same ground.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub helix_area: Option<Area>,
    /// Diameter of one more helix that gives it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub added_helix_diameter: Option<Size>,
}

/// What to do next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum NextStepKind {
    /// Stop and look at shaft, couplings, bolts and plates.
    InspectShaft,
    /// Turn on, deeper.
    DriveDeeper,
    /// Turn on with more crowd and slower, so that the pile goes down its pitch in a turn.
    RestoreAdvance,
    /// Wait, then turn again and read the torque.
    WaitAndRetorque,
    /// Back out, pre-drill through what stopped it, and start again.
    PreDrill,
    /// Take it out, dig the obstruction away, or move.
    ExtractAndMove,
    /// A larger helix, or one more.
    LargerHelix,
    /// A static load test.
    LoadTest,
    /// Send what is missing.
    CompleteRecord,
    /// Put it to the engineer of record.
    AskEngineer,
}
