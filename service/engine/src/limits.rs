//! Limits of the service, one constant each: used by the checks, the API document and
//! `GET /v1/limits`.

use serde::Serialize;

/// Bytes in the body of one request.
pub const BODY_BYTES: usize = 2 << 20;
/// Bytes in the body of a batch.
pub const BATCH_BODY_BYTES: usize = 16 << 20;
/// Depth of nesting in a body.
pub const NESTING: usize = 32;
/// Rows in a table of bearing factors.
pub const FACTOR_ROWS: usize = 100;
/// Layers in a soil profile.
pub const LAYERS: usize = 60;
/// Points of pore pressure in a soil profile.
pub const PORE_PRESSURES: usize = 60;
/// Hazards noted of a layer.
pub const LAYER_HAZARDS: usize = 8;
/// Helices on a pile.
pub const HELICES: usize = 8;
/// Resistances from other profiles, or from load tests, of one pile.
pub const PILE_RESISTANCES: usize = 20;
/// Depths in a curve.
pub const CURVE_DEPTHS: usize = 500;
/// Sets of helices to compare.
pub const HELIX_SETS: usize = 40;
/// Piles of a group by their places.
pub const GROUP_PILES: usize = 100;
/// Beams in a plan.
pub const BEAMS: usize = 2_000;
/// Points of one beam.
pub const BEAM_POINTS: usize = 200;
/// Outside form lines in a plan.
pub const OUTLINES: usize = 200;
/// Openings of one beam.
pub const OPENINGS: usize = 40;
/// Points of all beams in a plan.
pub const PLAN_POINTS: usize = 20_000;
/// Piles in a plan.
pub const PILES: usize = 10_000;
/// Types of pile to choose from.
pub const PILE_TYPES: usize = 40;
/// Soil zones of a plan.
pub const SOIL_ZONES: usize = 40;
/// Things that piles keep away from.
pub const KEEP_OUTS: usize = 200;
/// Points of one soil zone or keep-out.
pub const AREA_POINTS: usize = 200;
/// Points of all soil zones and keep-outs of a plan.
pub const PLAN_AREA_POINTS: usize = 2_000;
/// Stretches of beams where no pile may stand.
pub const FORBIDDEN_STRETCHES: usize = 1_000;
/// Load combinations.
pub const COMBINATIONS: usize = 64;
/// Loads in a plan.
pub const LOADS: usize = 20_000;
/// Slabs in a plan.
pub const SLABS: usize = 500;
/// Corners of one slab.
pub const SLAB_CORNERS: usize = 50;
/// Points of a load test.
pub const LOAD_TEST_POINTS: usize = 400;
/// Rows in a table of shaft resistance over depth.
pub const SHAFT_RESISTANCE_ROWS: usize = 200;
/// Sections in a loss by corrosion.
pub const CORRODED_SECTIONS: usize = 20;
/// Rows in an installation log.
pub const LOG_ROWS: usize = 400;
/// Piles to come in a forecast of their depths.
pub const FORECAST_PILES: usize = 500;
/// Piles in the ground that a forecast stands on.
pub const FORECAST_LOGS: usize = 60;
/// Different required torques in a forecast.
pub const FORECAST_TORQUES: usize = 8;
/// Lengths of extensions in a forecast.
pub const FORECAST_EXTENSIONS: usize = 4;
/// Piles of a job.
pub const JOB_PILES: usize = 60;
/// Events of a relocation.
pub const RELOCATION_EVENTS: usize = 200;
/// Larger piles that a way out may take.
pub const LARGER_PILES: usize = 20;
/// Load tests of a job.
pub const JOB_LOAD_TESTS: usize = 120;
/// Fields that a caller lists of an installation record.
pub const RECORD_FIELDS: usize = 40;
/// Steps of a card for the cab.
pub const CAB_CARD_STEPS: usize = 200;
/// Winters whose freezing indices are sent.
pub const FROST_WINTERS: usize = 100;
/// Correction factors of the modified Berggren equation.
pub const CORRECTION_FACTORS: usize = 100;
/// Items in a batch.
pub const BATCH_ITEMS: usize = 1_000;
/// Plans in a batch.
pub const BATCH_PLANS: usize = 200;

/// A limit as `GET /v1/limits` lists it.
#[derive(Debug, Clone, Copy, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Limit {
    /// Stable name.
    pub id: &'static str,
    /// The largest number accepted.
    pub maximum: u64,
    /// What is counted.
    pub text: &'static str,
}

macro_rules! limits {
    ($($id:literal = $value:expr, $text:literal;)+) => {
        /// Every limit.
        pub const ALL: &[Limit] = &[$(Limit { id: $id, maximum: $value as u64, text: $text }),+];
    };
}

limits! {
    "body_bytes" = BODY_BYTES, "Bytes in the body of one request.";
    "batch_body_bytes" = BATCH_BODY_BYTES, "Bytes in the body of a batch.";
    "nesting" = NESTING, "Depth of nesting in a body.";
    "factor_rows" = FACTOR_ROWS, "Friction angles, or depths, in a table of bearing factors.";
    "layers" = LAYERS, "Layers in a soil profile.";
    "pore_pressures" = PORE_PRESSURES, "Points of pore pressure in a soil profile.";
    "layer_hazards" = LAYER_HAZARDS, "Hazards noted of a layer.";
    "helices" = HELICES, "Helices on a pile.";
    "pile_resistances" = PILE_RESISTANCES, "Resistances from other profiles or from load tests.";
    "curve_depths" = CURVE_DEPTHS, "Depths in a curve of capacity over depth.";
    "helix_sets" = HELIX_SETS, "Sets of helices to compare.";
    "group_piles" = GROUP_PILES, "Piles of a group by their places.";
    "beams" = BEAMS, "Beams in a plan.";
    "beam_points" = BEAM_POINTS, "Points of one beam.";
    "outlines" = OUTLINES, "Outside form lines in a plan.";
    "openings" = OPENINGS, "Openings of one beam.";
    "plan_points" = PLAN_POINTS, "Points of all beams in a plan.";
    "piles" = PILES, "Piles in a plan.";
    "pile_types" = PILE_TYPES, "Types of pile to choose from.";
    "soil_zones" = SOIL_ZONES, "Soil zones of a plan.";
    "keep_outs" = KEEP_OUTS, "Things that piles of a plan keep away from.";
    "area_points" = AREA_POINTS, "Points of one soil zone or keep-out.";
    "plan_area_points" = PLAN_AREA_POINTS, "Points of all soil zones and keep-outs of a plan.";
    "forbidden_stretches" = FORBIDDEN_STRETCHES, "Stretches of beams where no pile may stand.";
    "combinations" = COMBINATIONS, "Load combinations.";
    "loads" = LOADS, "Loads in a plan.";
    "slabs" = SLABS, "Slabs in a plan.";
    "slab_corners" = SLAB_CORNERS, "Corners of one slab.";
    "load_test_points" = LOAD_TEST_POINTS, "Points of a load test.";
    "shaft_resistance_rows" = SHAFT_RESISTANCE_ROWS, "Rows in a table of cumulative shaft resistance over depth.";
    "corroded_sections" = CORRODED_SECTIONS, "Sections in a loss by corrosion.";
    "log_rows" = LOG_ROWS, "Rows in an installation log.";
    "forecast_piles" = FORECAST_PILES, "Piles to come in a forecast of their depths.";
    "forecast_logs" = FORECAST_LOGS, "Piles in the ground that a forecast stands on.";
    "forecast_torques" = FORECAST_TORQUES, "Different required torques in a forecast.";
    "forecast_extensions" = FORECAST_EXTENSIONS, "Lengths of extensions in a forecast.";
    "job_piles" = JOB_PILES, "Piles of a job.";
    "relocation_events" = RELOCATION_EVENTS, "Events of piles that could not go where they were drawn.";
    "larger_piles" = LARGER_PILES, "Larger piles that a way out may take.";
    "job_load_tests" = JOB_LOAD_TESTS, "Load tests of the piles of a job.";
    "record_fields" = RECORD_FIELDS, "Fields that a caller lists of an installation record.";
    "cab_card_steps" = CAB_CARD_STEPS, "Steps of a card for the cab up to the shaft limit.";
    "frost_winters" = FROST_WINTERS, "Winters whose freezing indices are sent.";
    "correction_factors" = CORRECTION_FACTORS, "Correction factors of the modified Berggren equation.";
    "batch_items" = BATCH_ITEMS, "Items in a batch.";
    "batch_plans" = BATCH_PLANS, "Plans (`pile-layout`) in a batch.";
}
