//! What `drag-force` answers: the drag force with the neutral plane, friction by layer, the
//! load in the pile over depth, what the steel bears.

use serde::{Deserialize, Serialize};

use super::asked::DragMethod;
use crate::answer_table::AnswerTable;
use crate::quantity::{Force, Length, Shown, Size, SoilStress};
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// Settling ground round one pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = DragForceOutcome))]
pub struct Outcome {
    /// Name of the pile; `pile` when none was sent.
    pub label: Label,
    /// Codes of the pile, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<Tags>,
    /// Drag on its shaft.
    pub drag: DragOutcome,
}

/// Drag of settling ground on a shaft. Forces are unfactored unless a member says otherwise.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DragOutcome {
    /// The method the steel is judged by.
    pub method: DragMethod,
    /// Permanent load Q.
    pub permanent_load: Force,
    /// The neutral plane of that method; left out where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub governing: Option<DragAt>,
    /// Balance of load and resistance, where a toe was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balance: Option<DragBalance>,
    /// The neutral plane taken at the base of the settling ground, where its depth was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fill_base: Option<DragAt>,
    /// Friction by layer, along the shaft; empty with a cumulative table.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub layers: Vec<DragLayerOutcome>,
    /// What the steel must bear, where its strength was sent and there is a neutral plane.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub structural: Option<DragStructuralOutcome>,
    /// Class and settlement of collapsing soil, where its potential was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub collapse: Option<CollapseOutcome>,
    /// Triggers for a look at drag, of the figures that were sent.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub screening: Vec<DragTriggerOutcome>,
    /// Load over depth, from where the shaft touches soil. Columns: `depth`, `load_from_above`
    /// (Q plus upper friction above), with a toe `resistance_from_below` (mobilised toe plus
    /// lower friction below), and, with a neutral plane, `load`: the load in the pile, that
    /// from above down to the neutral plane and then less by the lower friction passed, at
    /// least nil.
    pub curve: AnswerTable,
}

/// A neutral plane with what follows.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DragAt {
    /// Its depth below final grade.
    pub depth: Length,
    /// Drag force DF: upper friction above it.
    pub drag_force: Force,
    /// Largest load in the pile, Q + DF.
    pub maximum_load: Force,
}

/// Balance of load and resistance on the pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DragBalance {
    /// Mobilised resistance of the toe.
    pub toe_resistance: Force,
    /// Lower friction over the whole shaft.
    pub shaft_resistance: Force,
    /// Upper friction over the whole shaft.
    pub greatest_drag: Force,
    /// Where the neutral plane is.
    pub position: NeutralPlanePosition,
    /// The neutral plane; left out where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub neutral_plane: Option<DragAt>,
}

/// Where the neutral plane is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum NeutralPlanePosition {
    /// Along the shaft.
    AlongShaft,
    /// At the toe: all of the shaft is dragged, and the toe bears it without all of its
    /// resistance.
    AtToe,
    /// There is none: the permanent load alone exceeds toe and shaft together. The pile does
    /// not hold.
    None,
}

/// Friction of one layer along the shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DragLayerOutcome {
    /// Name of the layer.
    pub label: Label,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<Tags>,
    /// Depth from which the shaft is in it.
    pub top: Length,
    /// Depth to which the shaft is in it.
    pub bottom: Length,
    /// Vertical effective stress at `top`.
    pub effective_stress_top: SoilStress,
    /// Vertical effective stress at `bottom`.
    pub effective_stress_bottom: SoilStress,
    /// beta or alpha for drag.
    pub upper_factor: f64,
    /// beta or alpha for resistance.
    pub lower_factor: f64,
    /// Where the factors come from.
    pub factor_source: SourceNote,
    /// Upper friction over the layer.
    pub upper_force: Force,
    /// Lower friction over the layer.
    pub lower_force: Force,
}

/// What the steel must bear.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DragStructuralOutcome {
    /// Format of the comparison.
    pub format: DragFormat,
    /// Factor on the permanent load; 1 in allowable stress.
    pub permanent_load_factor: f64,
    /// Factor on the drag force; 1 in allowable stress.
    pub drag_load_factor: f64,
    /// Both together, factored.
    pub load: Force,
    /// Strength it is held against: factored, or allowable.
    pub strength: Force,
    /// Resistance factor at which the steel would just do, by limit states.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least_resistance_factor: Option<f64>,
}

/// Format of the comparison.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DragFormat {
    /// Factored load against factored resistance.
    LimitStates,
    /// Load against allowable strength.
    AllowableStress,
}

/// Soil that collapses on wetting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CollapseOutcome {
    /// Class of its collapse potential.
    pub class: CollapseClass,
    /// Where the class comes from.
    pub source: SourceNote,
    /// Collapse potential times the thickness that collapses.
    pub settlement: Size,
}

/// Classes of collapse potential.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CollapseClass {
    /// Up to 2 %.
    Slight,
    /// Above 2 up to 6 %.
    Moderate,
    /// Above 6 up to 10 %.
    ModeratelySevere,
    /// Above 10 %.
    Severe,
}

/// One figure of the site against its trigger.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DragTriggerOutcome {
    /// Which figure.
    pub trigger: DragTrigger,
    /// As sent.
    pub figure: Shown,
    /// The trigger: drag is worth a look above it.
    pub threshold: Shown,
    /// Whether the figure is above it.
    pub exceeded: bool,
}

/// Figures with a trigger.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DragTrigger {
    /// Settlement of the ground surface in all.
    GroundSettlement,
    /// Settlement after the pile is loaded.
    SettlementAfterConstruction,
    /// Height of fill.
    FillHeight,
    /// Thickness of compressible ground.
    CompressibleThickness,
    /// Drawdown of the water table.
    WaterDrawdown,
}

impl DragTrigger {
    /// Name on the wire.
    pub const fn name(self) -> &'static str {
        match self {
            DragTrigger::GroundSettlement => "ground_settlement",
            DragTrigger::SettlementAfterConstruction => "settlement_after_construction",
            DragTrigger::FillHeight => "fill_height",
            DragTrigger::CompressibleThickness => "compressible_thickness",
            DragTrigger::WaterDrawdown => "water_drawdown",
        }
    }
}
