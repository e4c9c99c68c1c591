//! What is found of a group of piles.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::super::outcome::DesignCapacityKind;
use crate::quantity::{Area, Force, Length, SoilStress, Volume};
use crate::source::SourceNote;

/// A group of piles, direction by direction.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GroupFindings {
    /// Number of piles.
    pub pile_count: u32,
    /// Least distance between the centres of two piles.
    pub least_spacing: Length,
    /// The same over the diameter of the largest helix.
    pub spacing_ratio: f64,
    /// What a pile of the group carries over what it carries alone; left out where none is
    /// known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub efficiency: Option<GroupEfficiency>,
    /// The block in plan.
    pub block_plan: BlockPlan,
    /// Distance below which EN 1997-1 has the block considered in tension: the root of the
    /// diameter of the largest helix times the depth of the lowest one below the lowest soil
    /// without credit. Information on every other basis; left out where no helix is in credit.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub eurocode_block_spacing: Option<Length>,
    /// The group pushed down, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<GroupCompression>,
    /// The group pulled up, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<GroupTension>,
    /// How what the sources leave open was read.
    pub readings: Vec<Cow<'static, str>>,
}

/// Efficiency of a group.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GroupEfficiency {
    /// Over the resistance of a pile alone.
    pub efficiency_factor: f64,
    /// Sent in the request, rather than read from the source.
    pub from_request: bool,
    /// Where it comes from.
    pub source: SourceNote,
}

/// The block in plan: the convex outline of the centres, moved out by half the largest
/// helix with square corners.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BlockPlan {
    /// Least width, to the outer edges of the helices.
    pub breadth: Length,
    /// Extent across the least width.
    pub length: Length,
    /// Area.
    pub area: Area,
    /// Perimeter.
    pub perimeter: Length,
}

/// What gives the least of a group.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum GroupMode {
    /// The piles, each for itself.
    Piles,
    /// The block of soil between them.
    Block,
}

/// A group pushed down.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GroupCompression {
    /// Number of piles times the ultimate resistance of one, with each helix held at what
    /// weaker soil below it takes, times the efficiency where one is known.
    pub piles: Force,
    /// The block; left out where no helix is in credit, or where the soil is not known to
    /// one breadth below it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub block: Option<CompressionBlock>,
    /// Ultimate resistance of the group: the lesser.
    pub ultimate: Force,
    /// Which is less.
    pub governing: GroupMode,
    /// Capacity on the design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design: Option<GroupDesign>,
}

/// The block pushed down.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CompressionBlock {
    /// Depth of its base, at the lowest helix in credit.
    pub base_depth: Length,
    /// Bearing of its base: the least that a soil within two breadths below takes of the load
    /// spread down to it.
    pub bearing: SoilStress,
    /// The layer that takes the least.
    pub bearing_layer: String,
    /// Bearing times area.
    pub base: Force,
    /// Shear on its sides.
    pub shear: Force,
    /// The sides, from the top down.
    pub sides: Vec<BlockSide>,
    /// Base and sides.
    pub total: Force,
}

/// The sides of a block within one layer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BlockSide {
    /// Label of the layer.
    pub layer: String,
    /// Top of the part.
    pub top: Length,
    /// Bottom of the part.
    pub bottom: Length,
    /// Mean shear stress; 0 without credit.
    pub mean_shear_stress: SoilStress,
    /// Shear.
    pub shear: Force,
}

/// A group pulled up.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GroupTension {
    /// Number of piles times the ultimate resistance of one, times the efficiency where one
    /// is known.
    pub piles: Force,
    /// The block; left out where no helix is in credit and none was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub block: Option<UpliftBlockFindings>,
    /// Whether the block counts: where the least distance between centres is below 3
    /// diameters of the largest helix; in New York City at any distance; by EN 1997-1 also
    /// where it is at most `eurocode_block_spacing`.
    pub block_counts: bool,
    /// Ultimate resistance of the group: the lesser of what counts.
    pub ultimate: Force,
    /// Which is less.
    pub governing: GroupMode,
    /// Capacity on the design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design: Option<GroupDesign>,
}

/// The block pulled up.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct UpliftBlockFindings {
    /// Sent in the request, rather than computed.
    pub from_request: bool,
    /// Depth of its base, at the lowest helix in credit; left out where it was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub base_depth: Option<Length>,
    /// Its volume; left out where it was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub volume: Option<Volume>,
    /// Effective weight of the soil within.
    pub effective_weight: Force,
    /// Shear on its sides; 0 on sides that lean.
    pub shear: Force,
    /// The sides that shear, from the top down.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub sides: Vec<BlockSide>,
    /// Weight and shear.
    pub total: Force,
}

/// Capacity of a group that may be used.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GroupDesign {
    /// Allowable load or factored resistance.
    pub kind: DesignCapacityKind,
    /// Number of piles times the capacity of one, times the efficiency where one is known.
    pub piles: Force,
    /// Capacity of the block, where it counts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub block: Option<Force>,
    /// Capacity of the group: the lesser.
    pub capacity: Force,
    /// Which is less.
    pub governing: GroupMode,
    /// Rule of the block, where it counts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub block_rule: Option<SourceNote>,
}
