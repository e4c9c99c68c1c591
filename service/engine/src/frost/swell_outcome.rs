//! What is answered about uplift by swelling soil, about frost and swelling together, and
//! about the worst of all.

use serde::{Deserialize, Serialize};

use super::uplift_outcome::{FrostFactors, FrostStage, FrostTensionOutcome};
use crate::quantity::{Force, Length, Size, SoilStress};
use crate::source::SourceNote;

/// Uplift by swelling soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SwellOutcome {
    /// Depth below final grade to which the soil swells.
    pub active_depth: Length,
    /// Adhesion on the shaft that decides.
    pub adhesion: SoilStress,
    /// Where it, or its factor, comes from.
    pub adhesion_source: SourceNote,
    /// Share of the swell pressure or of the undrained strength that was used.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub adhesion_factor: Option<f64>,
    /// Whether the undrained strength caps it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capped_by_strength: Option<bool>,
    /// Adhesion at the lower end of a range; shown, never decides.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower_adhesion: Option<SoilStress>,
    /// Swell pressure that was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub swell_pressure: Option<SoilStress>,
    /// Perimeter of the shaft in touch with the soil.
    pub shaft_perimeter: Size,
    /// The grip on the beam's sides, where a beam stands in soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beam_grip: Option<SwellBeamGrip>,
    /// Factors of the comparison, where a resistance was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub factors: Option<FrostFactors>,
    /// Tension resistance below the active zone, where one was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension: Option<FrostTensionOutcome>,
    /// With the building on the pile, and before.
    pub stages: Vec<SwellStage>,
    /// The stage with the largest net tension, or the largest force where no resistance was
    /// sent; the first of equals.
    pub governing_stage: FrostStage,
}

/// Grip of swelling soil on the sides of the beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SwellBeamGrip {
    /// Depth of side in the active zone.
    pub active_depth: Length,
    /// Adhesion; nil where a bond break or backfill that does not swell was stated.
    pub adhesion: SoilStress,
    /// Where it comes from.
    pub adhesion_source: SourceNote,
    /// Sides that touch soil.
    pub side_count: u32,
    /// Force carried to this pile.
    pub force: Force,
}

/// One stage in the life of the pile, in swelling soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SwellStage {
    /// Which stage.
    pub stage: FrostStage,
    /// Depth below final grade from which the shaft touches soil.
    pub contact_top_depth: Length,
    /// Length of shaft in soil that swells.
    pub swelling_length: Length,
    /// Whether the beam is on the pile by then, so that head and anchor pass the tension on.
    pub beam_in_place: bool,
    /// Dead load on the pile with its own weight where that counts, unfactored; where a
    /// resistance was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dead_load: Option<Force>,
    /// At the adhesion that decides.
    pub design: SwellDemand,
    /// At the lower end of a range of adhesion.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower: Option<SwellDemand>,
}

/// What swelling soil asks of the pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SwellDemand {
    /// Force on the shaft, unfactored.
    pub shaft_force: Force,
    /// Force on the beam's sides that comes on this pile, unfactored.
    pub beam_force: Force,
    /// Force of the crushed void form on the beam that comes on this pile, unfactored; where
    /// its pressure was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub void_form_force: Option<Force>,
    /// All together, unfactored.
    pub swell_force: Force,
    /// Factored force less factored dead load, at least nil; where a resistance was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub net_swell_tension: Option<Force>,
    /// Ultimate tension resistance below the active zone that this asks for; left out where
    /// the resistance was sent allowable or factored.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub required_ultimate_tension: Option<Force>,
    /// Net tension over design tension resistance; at most 1 passes. Left out where the
    /// resistance is nil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub utilisation_ratio: Option<f64>,
}

/// Frost and swelling together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CombinedUplift {
    /// Tension resistance below frost and active zone, where one was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension: Option<FrostTensionOutcome>,
    /// The stages that both have.
    pub stages: Vec<CombinedStage>,
}

/// One stage under frost and swelling together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CombinedStage {
    /// Which stage.
    pub stage: FrostStage,
    /// Whether the beam is on the pile by then.
    pub beam_in_place: bool,
    /// Force of frost and of swelling added in full, the void form once; unfactored. An
    /// upper bound where both grip the same length of shaft.
    pub force: Force,
    /// The smaller dead load of the two, unfactored, where a resistance was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dead_load: Option<Force>,
    /// Factored force less factored dead load, at least nil; where a resistance was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub net_tension: Option<Force>,
    /// Ultimate tension resistance that this asks for; left out where the resistance was
    /// sent allowable or factored.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub required_ultimate_tension: Option<Force>,
    /// Net tension over design tension resistance; at most 1 passes. Left out where the
    /// resistance is nil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub utilisation_ratio: Option<f64>,
}

/// The worst of all uplift: the highest utilisation, the first of equals.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GoverningUplift {
    /// What pulls.
    pub cause: UpliftCause,
    /// In which stage.
    pub stage: FrostStage,
    /// Factored force less factored dead load.
    pub net_tension: Force,
    /// Design tension resistance below the moving ground.
    pub design_tension: Force,
    /// Net tension over design tension resistance. Left out where the resistance is nil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub utilisation_ratio: Option<f64>,
    /// Largest net tension of all causes and stages: coupling and shaft must carry it.
    pub coupling_demand: Force,
    /// Largest net tension of all causes over the stages in which the beam is on the pile:
    /// head and anchor must carry it.
    pub head_demand: Force,
}

/// What pulls a pile out of the ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum UpliftCause {
    /// Freezing.
    Frost,
    /// Swelling soil.
    Swell,
    /// Both at one time.
    FrostAndSwell,
}
