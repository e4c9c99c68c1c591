//! What is found of the movement of the head of the pile.

use serde::{Deserialize, Serialize};

use crate::answer_table::AnswerTable;
use crate::quantity::{Area, Force, Length, Size, SpringStiffness, SteelStress};

/// Movement of the head of the pile under load: an estimate, not a settlement analysis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct HeadMovementFindings {
    /// Steel of the shaft in cross-section, by its dimensions as sent.
    pub steel_area: Area,
    /// Elastic modulus in force.
    pub elastic_modulus: SteelStress,
    /// From the head to the lowest helix.
    pub length: Length,
    /// Failure ratio of the hyperbola in force: ultimate over the load it tends to.
    pub failure_ratio: f64,
    /// The head pushed down, where asked; left out where nothing carries.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<DirectionMovement>,
    /// The head pulled up, where asked; left out where nothing carries.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<DirectionMovement>,
}

/// Movement in one direction, positive in the direction of the load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DirectionMovement {
    /// Load that the curve reaches: the ultimate resistance of the soil.
    pub ultimate: Force,
    /// What the helices carry at the ultimate over what they would carry each for itself;
    /// below 1 where the cylinder between them governs.
    pub share_factor: f64,
    /// Load at which the movement is asked for.
    pub working_load: Force,
    /// Where that load comes from.
    pub working_load_from: WorkingLoadSource,
    /// Movement under the working load; left out where it is more than the ultimate.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub at_working_load: Option<MovementAtLoad>,
    /// Loads at a movement of a tenth of the largest helix.
    pub at_tenth_of_helix: LoadsAtMovement,
    /// The curve, where asked: `load` and `movement` of the head.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub points: Option<AnswerTable>,
}

/// Where a working load comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum WorkingLoadSource {
    /// Sent as `working_load`.
    Request,
    /// The unfactored `demand`.
    Demand,
    /// The allowable capacity of the design basis.
    AllowableCapacity,
    /// Half of the ultimate resistance.
    HalfOfUltimate,
}

/// The head under one load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MovementAtLoad {
    /// The load.
    pub load: Force,
    /// Movement of the head: shaft and lowest helix.
    pub movement: Size,
    /// Change of length of the shaft, with the load that is left in it from helix to helix.
    pub shaft_part: Size,
    /// Movement of the lowest helix in the soil.
    pub helix_part: Size,
    /// Change of length of the shaft with the whole load down to the lowest helix, P L / (A E),
    /// as a load test has it.
    pub elastic_line: Size,
    /// Load over movement; left out for no load.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub secant_stiffness: Option<SpringStiffness>,
    /// The helices, from the top down.
    pub helices: Vec<HelixMovement>,
    /// Carried by adhesion on the shaft.
    pub adhesion: Force,
}

/// One helix under load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct HelixMovement {
    /// Its label as sent, or its number from the top.
    pub label: String,
    /// Its movement.
    pub movement: Size,
    /// What it carries.
    pub load: Force,
    /// Movement at which it reaches its share of the ultimate; left out without credit.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub movement_at_ultimate: Option<Size>,
}

/// Loads at a movement.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LoadsAtMovement {
    /// The movement: a tenth of the diameter of the largest helix; criteria of load tests take
    /// the average helix.
    pub movement: Size,
    /// Load at which the head moves by it.
    pub gross: Force,
    /// Load at which the head moves by it beyond the elastic line P L / (A E).
    pub net: Force,
}
