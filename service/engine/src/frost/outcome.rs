//! What is answered: depths and embedment, uplift stage by stage. The void form has its own
//! file.

use serde::{Deserialize, Serialize};

use super::uplift_request::TensionBy;
use super::void_outcome::VoidFormOutcome;
use crate::helix::AxialResistance;
use crate::quantity::{Force, Length, Size, SoilStress};
use crate::soil::DerivedStrength;
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// One pile in ground that freezes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = FrostEmbedmentOutcome))]
pub struct Outcome {
    /// Name of the pile; `pile` when none was sent.
    pub label: Label,
    /// Codes of the pile, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<Tags>,
    /// How deep the ground freezes.
    pub frost: FrostDepth,
    /// Depth of helices and tip against every rule.
    pub embedment: EmbedmentOutcome,
    /// Uplift by frozen ground, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uplift: Option<UpliftOutcome>,
    /// The void form, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub void_form: Option<VoidFormOutcome>,
}

/// How deep the ground freezes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostDepth {
    /// Frost depth of the jurisdiction.
    pub official_depth: Length,
    /// Frost depth that is used, from the surface that is exposed to the cold.
    pub design_depth: Length,
    /// Which depth that is.
    pub governed_by: FrostDepthSource,
    /// Depth below final grade of the surface that is exposed to the cold.
    pub cold_surface_depth: Length,
    /// Depth below final grade to which the ground freezes.
    pub base_depth: Length,
}

/// Which frost depth is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FrostDepthSource {
    /// The jurisdiction's.
    Official,
}

/// Depth of helices and tip against every rule.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct EmbedmentOutcome {
    /// Diameter of the largest helix.
    pub largest_helix_diameter: Size,
    /// Depth of the top helix below final grade.
    pub top_helix_depth: Length,
    /// Depth of the tip below final grade.
    pub tip_depth: Length,
    /// Every rule for the top helix that applies, with the depth it asks for.
    pub rules: Vec<EmbedmentRule>,
    /// Depth of the top helix that meets all rules.
    pub required_top_helix_depth: Length,
    /// The rule that asks for it; the first of equals.
    pub governed_by: EmbedmentRuleId,
    /// By how much the top helix is too shallow; 0 when it is not.
    pub shortfall: Length,
    /// Depth of the tip that follows, with the same lead below the top helix.
    pub required_tip_depth: Length,
    /// Length of pile from head to tip that follows.
    pub minimum_pile_length: Length,
}

/// One rule for the depth of the top helix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct EmbedmentRule {
    /// Which rule.
    pub rule: EmbedmentRuleId,
    /// Depth of the top helix below final grade that it asks for.
    pub required_depth: Length,
    /// Where the rule comes from.
    pub source: SourceNote,
}

/// Rules for the depth of the top helix.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum EmbedmentRuleId {
    /// Below the base of frost by the margin.
    FrostMargin,
    /// A number of diameters of the largest helix below the ground.
    Diameters,
    /// The number of diameters that tension by torque asks for.
    TorqueDiameters,
    /// Below fill by its margin.
    Fill,
    /// Below the active zone by its margin.
    ActiveZone,
}

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
    /// Load factor on the frost force.
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

/// Tension resistance below frost.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostTensionOutcome {
    /// Ultimate.
    pub ultimate: Force,
    /// Ultimate over the safety factor, or times the resistance factor.
    pub design: Force,
    /// How it was found.
    pub by: TensionBy,
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
    /// Dead load on the pile, unfactored, where a resistance was sent.
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
    /// The pile stands over a winter without the building.
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
    /// Both together, unfactored.
    pub frost_force: Force,
    /// Factored frost force less factored dead load, at least nil; where a resistance was
    /// sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub net_frost_tension: Option<Force>,
    /// Ultimate tension resistance below frost that this asks for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub required_ultimate_tension: Option<Force>,
    /// Net tension over design tension resistance; at most 1 passes. Left out where the
    /// resistance is nil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub utilisation_ratio: Option<f64>,
}
