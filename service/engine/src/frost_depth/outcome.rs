//! What is answered: the frost depth with everything it came from, the methods side by side,
//! the comparison with the jurisdiction's depth, insulation, correction factors.

use serde::{Deserialize, Serialize};

use super::request::{FreezingIndexDefinition, FrostDepthMethod};
use crate::quantity::{
    FreezingIndex, HeatCapacity, LatentHeat, Length, Season, Size, TemperatureDifference,
    ThermalConductivity, ThermalResistance,
};
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// Frost depth and what it came from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = FrostDepthOutcome))]
pub struct Outcome {
    /// Name, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub label: Option<Label>,
    /// Codes, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<Tags>,
    /// The computed frost depth, where `winter` and `layers` were sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost: Option<ComputedFrost>,
    /// Correction factors, where they were asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub correction_factors: Option<Vec<CorrectionFactor>>,
}

/// A computed frost depth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ComputedFrost {
    /// Depth to which the ground freezes, from the surface exposed to the cold: slabs, boards
    /// and snow above the ground are counted.
    pub depth: Length,
    /// Method that gives it.
    pub method: FrostDepthMethod,
    /// Layer in which the frost ends; one that ends exactly at the depth counts.
    pub ends_in: Label,
    /// Depths by every method, side by side.
    pub depths: Vec<FrostDepthByMethod>,
    /// The freezing index and how it was found.
    pub freezing_index: FreezingIndexOutcome,
    /// Freezing index of the surface over that of the air.
    pub surface_factor: f64,
    /// Where that comes from.
    pub surface_source: SourceNote,
    /// Freezing index of the surface, n F.
    pub surface_freezing_index: FreezingIndex,
    /// Length of the freezing season.
    pub season_length: Season,
    /// Mean cold of the surface below freezing over the season, v_s.
    pub surface_cold: TemperatureDifference,
    /// Warmth of the ground above freezing when the winter begins, v_o.
    pub ground_warmth: TemperatureDifference,
    /// alpha = v_o / v_s.
    pub thermal_ratio: f64,
    /// Every layer with its thermal properties.
    pub layers: Vec<FreezingLayerOutcome>,
    /// The comparison with the jurisdiction's depth, where it was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub official: Option<FrostComparison>,
    /// Insulation that brings the depth to a given one, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub insulation: Option<InsulationOutcome>,
}

/// Depth by one method.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostDepthByMethod {
    /// Which method.
    pub method: FrostDepthMethod,
    /// The depth; left out where the method does not hold here.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth: Option<Length>,
    /// What the modified Berggren equation went through.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub berggren: Option<BerggrenTerms>,
    /// Why it does not hold.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
}

/// What the modified Berggren equation went through.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BerggrenTerms {
    /// Heat capacity, weighted by thickness over the frozen depth.
    pub heat_capacity: HeatCapacity,
    /// Latent heat, weighted by thickness over the frozen depth.
    pub latent_heat: LatentHeat,
    /// mu = v_s C / L.
    pub fusion_ratio: f64,
    /// lambda.
    pub correction_factor: f64,
}

/// A freezing index and how it was found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FreezingIndexOutcome {
    /// What it stands for.
    pub definition: FreezingIndexDefinition,
    /// Freezing index of the air, F.
    pub value: FreezingIndex,
    /// Where it comes from.
    pub source: SourceNote,
    /// The caller's own reference.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<Label>,
    /// Winters looked at.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub winter_count: Option<u32>,
    /// The winters whose mean it is, coldest first; left out for the mean of all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub coldest: Option<Vec<FreezingIndex>>,
}

/// A layer with its thermal properties.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FreezingLayerOutcome {
    /// Its label, or its number from the top.
    pub label: Label,
    /// Depth of its top below the surface exposed to the cold.
    pub top: Length,
    /// Depth of its bottom; left out for the last.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bottom: Option<Length>,
    /// How much of it freezes.
    pub frozen_thickness: Length,
    /// Conductivity frozen.
    pub frozen_conductivity: ThermalConductivity,
    /// Conductivity unfrozen.
    pub unfrozen_conductivity: ThermalConductivity,
    /// Mean of both, which the methods but Stefan's use.
    pub mean_conductivity: ThermalConductivity,
    /// Heat capacity, mean of frozen and unfrozen.
    pub heat_capacity: HeatCapacity,
    /// Latent heat of its water.
    pub latent_heat: LatentHeat,
    /// Resistance of what freezes of it, by the mean conductivity.
    pub frozen_resistance: ThermalResistance,
    /// Where the properties come from.
    pub source: SourceNote,
    /// The caller's own reference.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<Label>,
    /// Water by mass that would saturate the soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub saturation_water_ratio: Option<f64>,
}

/// The computed depth beside the jurisdiction's, which rules.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostComparison {
    /// The jurisdiction's.
    pub official_depth: Length,
    /// Which of both is deeper.
    pub deeper: DeeperFrost,
    /// By how much.
    pub difference: Length,
}

/// Which frost depth is deeper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DeeperFrost {
    /// The jurisdiction's.
    Official,
    /// The computed one.
    Computed,
    /// Both are equal.
    Equal,
}

/// A board that brings the computed frost depth to a given one. For information.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct InsulationOutcome {
    /// The depth that was asked for, the board not counted.
    pub depth: Length,
    /// The layer the board lies on; left out on the surface.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on_top_of: Option<Label>,
    /// Depth of the board's top below the surface exposed to the cold; the layers under it go
    /// down by its thickness.
    pub top: Length,
    /// Its conductivity.
    pub conductivity: ThermalConductivity,
    /// Its thickness; nil where the ground does not freeze that deep without it.
    pub thickness: Size,
    /// Its resistance.
    pub resistance: ThermalResistance,
    /// Depth without it, by the same method.
    pub depth_without: Length,
    /// Method that was used.
    pub method: FrostDepthMethod,
    /// Depths that were computed in the search.
    pub search_count: u32,
}

/// One correction factor of the modified Berggren equation.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CorrectionFactor {
    /// mu, as sent.
    pub fusion_ratio: f64,
    /// alpha, as sent.
    pub thermal_ratio: f64,
    /// lambda.
    pub correction_factor: f64,
}
