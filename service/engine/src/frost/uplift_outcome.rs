//! What is answered about uplift by frost, stage by stage, and what holds the pile down.

use serde::{Deserialize, Serialize};

use super::resistance_request::TensionBy;
use crate::helix::AxialResistance;
use crate::quantity::{Force, Length, Size, SoilStress};
use crate::soil::DerivedStrength;
use crate::source::SourceNote;

/// Uplift by frozen ground.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct UpliftOutcome {
    /// Bond stress on the shaft.
    pub bond_stress: SoilStress,
    /// Where it comes from.
    pub bond_source: SourceNote,
    /// Bond stress of the severe line, never below `bond_stress`.
    pub severe_bond_stress: SoilStress,
    /// Where that comes from.
    pub severe_bond_source: SourceNote,
    /// Perimeter of the shaft in touch with the soil.
    pub shaft_perimeter: Size,
    /// The grip on the beam's sides, where a beam stands in soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beam_grip: Option<BeamGrip>,
    /// The sleeve, where one was sent, and whether it counts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sleeve: Option<SleeveOutcome>,
    /// Factors of the comparison, where a resistance was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub factors: Option<FrostFactors>,
    /// Tension resistance below frost, where one was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension: Option<FrostTensionOutcome>,
    /// With the building on the pile, and before.
    pub stages: Vec<FrostStageOutcome>,
    /// The stage with the largest net tension, or the largest force where no resistance was
    /// sent; the first of equals.
    pub governing_stage: FrostStage,
    /// Tension that head, couplings and shaft must carry, by the factors above; of the
    /// governing stage.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension_path_demand: Option<Force>,
    /// The same at the severe bond stress.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub severe_tension_path_demand: Option<Force>,
}

/// A sleeve round the shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SleeveOutcome {
    /// Depth of its lower end below final grade.
    pub bottom_depth: Length,
    /// Whether the bond on the shaft is taken as nil. The severe line is always without it.
    pub credited: bool,
    /// Why it does not count; empty where it does.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub not_credited: Vec<SleeveFault>,
}

/// Why a sleeve does not count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SleeveFault {
    /// It ends above the base of frost.
    EndsInFrost,
    /// The caller does not state that it can heave freely.
    NotStatedFree,
}

/// Frost grip on the sides of the beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BeamGrip {
    /// Depth of side that freezes.
    pub frozen_depth: Length,
    /// Bond stress; nil where a bond break or backfill that does not heave was stated.
    pub bond_stress: SoilStress,
    /// Where it comes from.
    pub bond_source: SourceNote,
    /// Sides that touch soil.
    pub side_count: u32,
    /// Force carried to this pile.
    pub force: Force,
}

/// Factors of the comparison, each with its source.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostFactors {
    /// Format of the comparison.
    pub format: FrostFormat,
    /// Load factor on the force of the moving ground.
    pub frost_load_factor: f64,
    /// Where it comes from.
    pub frost_load_source: SourceNote,
    /// Factor on the dead load.
    pub dead_load_factor: f64,
    /// Where it comes from.
    pub dead_load_source: SourceNote,
    /// Safety factor on ultimate tension, in allowable stress.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension_safety_factor: Option<f64>,
    /// Resistance factor on ultimate tension, in limit states.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension_resistance_factor: Option<f64>,
    /// Where the factor on tension comes from.
    pub tension_source: SourceNote,
}

/// Format of the comparison.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FrostFormat {
    /// Service loads against ultimate resistance over a safety factor.
    AllowableStress,
    /// Factored loads against factored resistance.
    LimitStates,
}

/// Tension resistance below frost, or below the active zone.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostTensionOutcome {
    /// Ultimate; left out where an allowable or factored resistance was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ultimate: Option<Force>,
    /// Ultimate over the safety factor, or times the resistance factor; or as sent.
    pub design: Force,
    /// How it was found.
    pub by: TensionBy,
    /// Depth above which the ground is given no credit, where it was computed from the soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub no_credit_above: Option<Length>,
    /// Helices that are given credit, where it was computed from the soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counted_helix_count: Option<u32>,
    /// What it rests on, where it was computed from the soil. Ground that freezes is given
    /// no credit, nor is a helix exactly at the base of frost.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from_soil: Option<AxialResistance>,
    /// Strengths of the layers that were found from tests, stress history or an index.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub derived_strengths: Vec<DerivedStrength>,
}

/// One stage in the life of the pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostStageOutcome {
    /// Which stage.
    pub stage: FrostStage,
    /// Depth below final grade from which the shaft touches soil.
    pub contact_top_depth: Length,
    /// Length of shaft in ground that freezes.
    pub frozen_length: Length,
    /// Whether the beam is on the pile by then, so that head and anchor pass the tension on.
    pub beam_in_place: bool,
    /// Dead load on the pile with its own weight where that counts, unfactored; where a
    /// resistance was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dead_load: Option<Force>,
    /// At the bond stress that decides.
    pub design: FrostDemand,
    /// At the severe bond stress.
    pub severe: FrostDemand,
}

/// Stages in the life of a pile.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FrostStage {
    /// The building stands.
    Service,
    /// The pile stands over a winter, or while the soil is wetted, without the building.
    Construction,
}

impl FrostStage {
    /// Name on the wire.
    pub const fn name(self) -> &'static str {
        match self {
            FrostStage::Service => "service",
            FrostStage::Construction => "construction",
        }
    }
}

/// What frost asks of the pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostDemand {
    /// Force on the shaft, unfactored.
    pub shaft_force: Force,
    /// Force on the beam's sides that comes on this pile, unfactored.
    pub beam_force: Force,
    /// Force of the crushed void form on the beam that comes on this pile, unfactored; where
    /// its pressure was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub void_form_force: Option<Force>,
    /// All together, unfactored.
    pub frost_force: Force,
    /// Factored frost force less factored dead load, at least nil; where a resistance was
    /// sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub net_frost_tension: Option<Force>,
    /// Ultimate tension resistance below frost that this asks for; left out where the
    /// resistance was sent allowable or factored.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub required_ultimate_tension: Option<Force>,
    /// Net tension over design tension resistance; at most 1 passes. Left out where the
    /// resistance is nil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub utilisation_ratio: Option<f64>,
}
