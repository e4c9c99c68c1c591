//! Friction between soil and shaft as it is sent: layer by layer, or as the shaft resistance
//! summed over depth.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::limits::SHAFT_RESISTANCE_ROWS;
use crate::quantity::{
    AreaLoad, Force, ForceUnit, Length, LengthUnit, SoilStress, StressUnit, UnitWeight,
    UnitWeightUnit,
};
use crate::table::{Column, Columns, Table};
use crate::text::{Label, Tags};

/// Where the friction on the shaft comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum DragFrictionSource {
    /// From the layers of the ground.
    Layers(DragLayers),
    /// Shaft resistance summed over depth, the same in drag as in resistance.
    Cumulative(DragCumulative),
}

validate_choice!(DragFrictionSource { Layers = "layers", Cumulative = "cumulative" });

/// Layers of the ground. Vertical effective stress at a depth z below final grade is
/// `surcharge` plus the unit weights of all layers above z times their thickness, less pore
/// pressure: 9.81 kN/m3 times (z - `water_depth`) below the water and nil above it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragLayers {
    /// The layers from final grade down, without a gap; 1 to 60. They reach the toe, or, where
    /// only `fill_base` is asked and no toe is sent, the settling depth.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 60))]
    pub layers: Vec<DragLayer>,
    /// Depth of the water table below final grade; 0 to 100 m. Left out, there is no water. For
    /// drawdown, the water table after it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub water_depth: Option<Length>,
    /// Load of wide extent on the ground, over and above the layers; 0 to 1,000 kPa. It adds to
    /// the vertical effective stress at every depth; 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = AreaLoad::ZERO, max = AreaLoad::new(1000.0, StressUnit::KPa)))]
    pub surcharge: Option<AreaLoad>,
}

/// A layer of ground along the shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragLayer {
    /// Name of the layer; `1`, `2`, ... from the top when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Thickness; 0.01 to 100 m.
    #[validate(range(min = Length::new(0.01, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub thickness: Length,
    /// Total unit weight, soil with its water, above and below the water table alike; 10 to 30
    /// kN/m3. Split a layer at the water table where the two differ.
    #[validate(range(min = UnitWeight::new(10.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(30.0, UnitWeightUnit::KNPerM3)))]
    pub unit_weight: UnitWeight,
    /// Unit friction on the shaft: an upper value for drag, a lower one for resistance.
    #[validate(nested)]
    pub friction: DragFriction,
    /// Limit of unit friction, upper and lower alike, laid on the product of factor and stress:
    /// f = min(beta sigma'v, limit) at each depth; 0 to 2,000 kPa. None when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(2000.0, StressUnit::KPa)))]
    pub friction_limit: Option<SoilStress>,
}

/// Unit friction of a layer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum DragFriction {
    /// beta sigma'v with the published range of beta for a soil: its upper end for drag, its
    /// lower end for resistance.
    BetaBySoil(DragBetaBySoil),
    /// beta sigma'v with the caller's beta.
    Beta(DragBeta),
    /// alpha s_u.
    Alpha(DragAlpha),
}

validate_choice!(DragFriction { BetaBySoil = "beta_by_soil", Beta = "beta", Alpha = "alpha" });

/// beta by soil.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragBetaBySoil {
    /// The soil.
    pub soil: DragSoil,
}

/// Soils with a published range of beta.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DragSoil {
    /// 0.15 to 0.35.
    Clay,
    /// 0.25 to 0.50.
    Silt,
    /// 0.30 to 0.90.
    Sand,
    /// 0.35 to 0.80.
    Gravel,
}

/// beta of the caller.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragBeta {
    /// beta for resistance, at most the upper one; 0 to 3.
    #[validate(range(min = 0.0, max = 3.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 3))]
    pub lower_factor: f64,
    /// beta for drag; 0 to 3.
    #[validate(range(min = 0.0, max = 3.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 3))]
    pub upper_factor: f64,
}

/// Friction by undrained strength.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragAlpha {
    /// alpha for drag; 0 to 1.5.
    #[validate(range(min = 0.0, max = 1.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1.5))]
    pub upper_factor: f64,
    /// alpha for resistance, at most the upper one; 0 to 1.5, the upper one when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1.5))]
    pub lower_factor: Option<f64>,
    /// Undrained strength s_u; 0 to 1,000 kPa.
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub undrained_strength: SoilStress,
}

/// Shaft resistance summed over depth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragCumulative {
    /// The sum at each depth; 2 to 200 rows, straight between them.
    #[validate(nested)]
    pub table: ShaftResistanceTable,
}

/// Columns of a table of shaft resistance.
#[derive(Debug, Clone, PartialEq)]
pub struct ShaftResistanceColumns;

/// Place of the depth among the columns.
pub const DEPTH: usize = 0;
/// Place of the resistance among the columns.
pub const RESISTANCE: usize = 1;

impl Columns for ShaftResistanceColumns {
    const NAME: &'static str = "ShaftResistanceTable";
    const ABOUT: &'static str = "Ultimate shaft resistance from where the shaft first touches soil down to each depth. Depths grow from row to row, the resistance never falls, the last row is at the toe. The table may begin below the ground; then the neutral plane must be within it.";
    const ALL: &'static [Column] = &[
        Column::required::<Length>(
            "depth",
            "depth below final grade; 0 to 100 m.",
            0.0,
            Length::new(100.0, LengthUnit::M).si(),
        ),
        Column::required::<Force>(
            "cumulative_resistance",
            "shaft resistance down to that depth, unfactored; 0 to 20 MN.",
            0.0,
            Force::new(20_000.0, ForceUnit::KN).si(),
        ),
    ];
    const LEAST_ROWS: usize = 2;
    const MOST_ROWS: usize = SHAFT_RESISTANCE_ROWS;
}

/// Shaft resistance summed over depth.
pub type ShaftResistanceTable = Table<ShaftResistanceColumns>;
