//! What is asked of a group of piles: where they stand, how the block of soil between them
//! is taken, and the load on the whole.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::basis::DemandLevel;
use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit, Length, LengthUnit};

/// A group of piles, every one as `pile`: the sum of its piles against the block of soil
/// between them, in each direction that is computed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileGroup {
    /// Where the piles stand.
    #[validate(nested)]
    pub plan: GroupPlan,
    /// What a pile of the group carries over what it carries alone; 0.3 to 1. Left out: 1
    /// where the least distance between centres is 3 diameters of the largest helix or more;
    /// where it is less none is known, the sum is not reduced, and a verdict is provisional
    /// but for tension in allowable stress, for which the codes say what counts.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.3, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.3, maximum = 1))]
    pub efficiency_factor: Option<f64>,
    /// Height over which the sides of the block shear in compression; `between_helices` when
    /// left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shear_height: Option<BlockShearHeight>,
    /// The block in tension; `straight_sides` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub uplift_block: Option<UpliftBlock>,
    /// Load on the whole group; without it the group is not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub demand: Option<GroupDemand>,
}

/// Where the piles of a group stand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum GroupPlan {
    /// Rows and columns at right angles.
    Array(GroupArray),
    /// Each pile by its place.
    Positions(GroupPositions),
}

validate_choice!(GroupPlan { Array = "array", Positions = "positions" });

/// Rows and columns at right angles; at least 2 piles.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GroupArray {
    /// Rows; 1 to 20.
    #[validate(range(min = 1, max = 20))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 20))]
    pub row_count: u32,
    /// Piles in a row; 1 to 20.
    #[validate(range(min = 1, max = 20))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 20))]
    pub column_count: u32,
    /// From one row to the next, centre to centre; 0.1 to 50 m. Needed where there are two
    /// rows or more.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(50.0, LengthUnit::M)))]
    pub row_spacing: Option<Length>,
    /// From one pile of a row to the next, centre to centre; 0.1 to 50 m. Needed where a row
    /// has two piles or more.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(50.0, LengthUnit::M)))]
    pub column_spacing: Option<Length>,
}

/// Piles by their places.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GroupPositions {
    /// Centres of the piles in plan; 2 to 100.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 2, max_items = 100))]
    pub piles: Vec<GroupPosition>,
}

/// Centre of a pile in plan.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GroupPosition {
    /// East; -1,000 to 1,000 m.
    #[validate(range(min = Length::new(-1000.0, LengthUnit::M), max = Length::new(1000.0, LengthUnit::M)))]
    pub x: Length,
    /// North; -1,000 to 1,000 m.
    #[validate(range(min = Length::new(-1000.0, LengthUnit::M), max = Length::new(1000.0, LengthUnit::M)))]
    pub y: Length,
}

/// Height over which the sides of the block shear in compression.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum BlockShearHeight {
    /// From the top helix to the lowest, both in credit: the soil the helices push down. A
    /// pile of one helix has none.
    #[default]
    BetweenHelices,
    /// From final grade, or the depth from which soil is credited, to the lowest helix in
    /// credit, as for piles with thick shafts.
    FullDepth,
}

/// The block of soil that a group lifts.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum UpliftBlock {
    /// Straight sides from the lowest helix in credit to final grade: effective weight of the
    /// soil within, and shear on the sides.
    StraightSides,
    /// Sides that lean out by 1 for 4 up, from the lowest helix in credit to final grade:
    /// effective weight of the soil within and no shear. For sand and gravel alone.
    LeaningSides,
    /// Weight and shear as the caller found them.
    Given(GivenUpliftBlock),
}

validate_choice!(UpliftBlock { Given = "given" } plain { StraightSides, LeaningSides });

/// A block by its weight and shear.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenUpliftBlock {
    /// Effective weight of the group and of the soil within the block; 0 to 1,000 MN.
    #[validate(range(min = Force::ZERO, max = Force::new(1_000_000.0, ForceUnit::KN)))]
    pub effective_weight: Force,
    /// Ultimate shear on the sides of the block; 0 to 1,000 MN.
    #[validate(range(min = Force::ZERO, max = Force::new(1_000_000.0, ForceUnit::KN)))]
    pub ultimate_shear: Force,
}

/// Load on the whole group, never negative; at least one of `compression` and `tension`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GroupDemand {
    /// Whether the loads are unfactored, for a basis of allowable capacity, or factored. The
    /// wrong pair is refused.
    pub level: DemandLevel,
    /// Compression; 0 to 1,000 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(1_000_000.0, ForceUnit::KN)))]
    pub compression: Option<Force>,
    /// Tension; 0 to 1,000 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(1_000_000.0, ForceUnit::KN)))]
    pub tension: Option<Force>,
}
