//! Defaults of this calculation, each beside its source. No equations.

use super::friction_request::DragSoil;
use crate::quantity::{Length, LengthUnit, Size};
use crate::source::{
    ASTM_D5333, BEARWELL_CHOICE, DRAG_SCREENING, GEC12_BETA, Sourced, UFC_DOWNDRAG,
};

/// Lower and upper beta of clay.
pub static BETA_CLAY: Sourced<[f64; 2]> = Sourced::new("beta_clay", [0.15, 0.35], &GEC12_BETA);
/// Lower and upper beta of silt.
pub static BETA_SILT: Sourced<[f64; 2]> = Sourced::new("beta_silt", [0.25, 0.50], &GEC12_BETA);
/// Lower and upper beta of sand.
pub static BETA_SAND: Sourced<[f64; 2]> = Sourced::new("beta_sand", [0.30, 0.90], &GEC12_BETA);
/// Lower and upper beta of gravel.
pub static BETA_GRAVEL: Sourced<[f64; 2]> = Sourced::new("beta_gravel", [0.35, 0.80], &GEC12_BETA);

/// Lower and upper beta of a soil.
pub fn beta_of(soil: DragSoil) -> &'static Sourced<[f64; 2]> {
    match soil {
        DragSoil::Clay => &BETA_CLAY,
        DragSoil::Silt => &BETA_SILT,
        DragSoil::Sand => &BETA_SAND,
        DragSoil::Gravel => &BETA_GRAVEL,
    }
}

/// Part of the toe's resistance that is mobilised.
pub static MOBILISED: Sourced<f64> =
    Sourced::new("drag_toe_mobilised_ratio", 1.0, &BEARWELL_CHOICE);
/// Load factor on the permanent load.
pub static PERMANENT_LOAD: Sourced<f64> =
    Sourced::new("drag_permanent_load_factor", 1.25, &UFC_DOWNDRAG);
/// Load factor on the drag force.
pub static DRAG_LOAD: Sourced<f64> = Sourced::new("drag_load_factor", 1.10, &UFC_DOWNDRAG);

/// Trigger: settlement of the ground surface in all.
pub static GROUND_SETTLEMENT: Sourced<Size> = Sourced::new(
    "drag_trigger_ground_settlement",
    Size::new(4.0, LengthUnit::In),
    &DRAG_SCREENING,
);
/// Trigger: settlement after the pile is loaded.
pub static SETTLEMENT_AFTER: Sourced<Size> = Sourced::new(
    "drag_trigger_settlement_after_construction",
    Size::new(0.4, LengthUnit::In),
    &DRAG_SCREENING,
);
/// Trigger: height of fill.
pub static FILL_HEIGHT: Sourced<Length> = Sourced::new(
    "drag_trigger_fill_height",
    Length::new(6.0, LengthUnit::Ft),
    &DRAG_SCREENING,
);
/// Trigger: thickness of compressible ground.
pub static COMPRESSIBLE: Sourced<Length> = Sourced::new(
    "drag_trigger_compressible_thickness",
    Length::new(30.0, LengthUnit::Ft),
    &DRAG_SCREENING,
);
/// Trigger: drawdown of the water table.
pub static DRAWDOWN: Sourced<Length> = Sourced::new(
    "drag_trigger_water_drawdown",
    Length::new(12.0, LengthUnit::Ft),
    &DRAG_SCREENING,
);
/// Collapse potential at the upper end of slight, moderate and moderately severe.
pub static COLLAPSE_CLASSES: Sourced<[f64; 3]> = Sourced::new(
    "collapse_potential_classes",
    [0.02, 0.06, 0.10],
    &ASTM_D5333,
);
