//! A soil profile as the caller sends it: layers, their weights and what they are made of,
//! and the water. How a strength is found from a test is in `strength.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::grade::GradeChange;
use super::strength::{Drained, Undrained};
use crate::choice::validate_choice;
use crate::quantity::{Length, LengthUnit, SoilStress, StressUnit, UnitWeight, UnitWeightUnit};
use crate::text::{Label, Tags};

/// Layers of soil from existing grade down, with the water in them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SoilProfile {
    /// Layers in order of depth, without gap or overlap, the first from depth 0; 1 to 60.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 60))]
    pub layers: Vec<Layer>,
    /// Depth of the water table below existing grade, pressure growing with depth as in water at
    /// rest; left out, there is none within the profile. For perched or artesian water send
    /// `pore_pressures` instead.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub water_depth: Option<Length>,
    /// Pore pressures at depths that increase, the first of them zero, in place of
    /// `water_depth`; 1 to 60. Between two depths the pressure is a straight line, above the
    /// first it is zero, below the last it grows as in water at rest. Soil is saturated
    /// wherever the pressure is above zero. Perched water is a rise and a fall back to zero;
    /// artesian water rises faster than water at rest.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 60))]
    pub pore_pressures: Option<Vec<PorePressure>>,
    /// Unit weight of water; 9.81 kN/m3 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(9.7, UnitWeightUnit::KNPerM3), max = UnitWeight::new(10.5, UnitWeightUnit::KNPerM3)))]
    pub water_unit_weight: Option<UnitWeight>,
    /// How final grade, from which the depths of piles count, differs from existing grade, from
    /// which layers, water and tests are given; when left out they are one.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub grade_change: Option<GradeChange>,
}

/// Pressure of the water in the pores at one depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PorePressure {
    /// Depth below existing grade; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub depth: Length,
    /// Pressure above that of the air; 0 to 2,000 kPa.
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(2000.0, StressUnit::KPa)))]
    pub pressure: SoilStress,
}

/// One layer of soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Layer {
    /// Name of the layer; `L1`, `L2`, ... from the top when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Depth of its top below existing grade; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub top: Length,
    /// Depth of its bottom below existing grade; up to 100 m.
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub bottom: Length,
    /// Unit weight where the pore pressure is zero, moisture included; 8 to 26 kN/m3. Exactly
    /// one of this and `dry_unit_weight`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(8.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(26.0, UnitWeightUnit::KNPerM3)))]
    pub unit_weight: Option<UnitWeight>,
    /// Unit weight of the dry soil, together with `water_content_ratio`; 6 to 24 kN/m3.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(6.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(24.0, UnitWeightUnit::KNPerM3)))]
    pub dry_unit_weight: Option<UnitWeight>,
    /// Weight of water over weight of dry soil where the pore pressure is zero; 0 to 3 (0.18
    /// is 18 %). Together with `dry_unit_weight`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 3.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 3))]
    pub water_content_ratio: Option<f64>,
    /// Unit weight where the pore pressure is above zero; 10 to 26 kN/m3. Left out, it follows
    /// from `specific_gravity_ratio`, or it is `unit_weight`; with `dry_unit_weight` one of
    /// the two is needed where there is water.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(10.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(26.0, UnitWeightUnit::KNPerM3)))]
    pub saturated_unit_weight: Option<UnitWeight>,
    /// Unit weight of the grains over that of water, for the saturated unit weight from
    /// `dry_unit_weight`; 1.5 to 4. There is no default.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.5, max = 4.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1.5, maximum = 4))]
    pub specific_gravity_ratio: Option<f64>,
    /// What is known of the layer that helix theory does not cover; up to 8. A helix bearing
    /// in such a layer, or passing it within its zone, is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(max_items = 8))]
    pub hazards: Option<Vec<GroundHazard>>,
    /// What the layer is made of, with its strength.
    #[validate(nested)]
    pub soil: Soil,
}

/// Ground that changes its strength or stops a helix; it needs a test or a study of the site.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum GroundHazard {
    /// Boulders or cobbles.
    Boulders,
    /// Soil that collapses when it is wetted.
    Collapsible,
    /// Clay that loses much of its strength when it is disturbed.
    Sensitive,
    /// Soil that may liquefy.
    Liquefiable,
    /// Ground frozen for years.
    Permafrost,
}

impl GroundHazard {
    /// How it is called in a sentence.
    pub const fn told(self) -> &'static str {
        match self {
            GroundHazard::Boulders => "boulders",
            GroundHazard::Collapsible => "collapsible soil",
            GroundHazard::Sensitive => "sensitive soil",
            GroundHazard::Liquefiable => "liquefiable soil",
            GroundHazard::Permafrost => "permafrost",
        }
    }
}

/// Kind of soil with its strength.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Soil {
    /// Clay or clayey silt that carries load undrained.
    Clay(Undrained),
    /// Silt that carries load undrained.
    Silt(Undrained),
    /// Sand or gravelly sand that carries load drained.
    Sand(Drained),
    /// Gravel that carries load drained.
    Gravel(Drained),
    /// Fill; gives no bearing and no uplift resistance unless it is engineered.
    Fill(Fill),
    /// Peat or organic soil; gives no bearing and no uplift resistance.
    Organic(NoCredit),
    /// Rock; helix theory does not apply in it.
    Rock(NoCredit),
    /// Soil that is frozen, now or in season; gives no bearing and no uplift resistance.
    Frozen(NoCredit),
}

validate_choice!(Soil {
    Clay = "clay", Silt = "silt", Sand = "sand", Gravel = "gravel", Fill = "fill",
    Organic = "organic", Rock = "rock", Frozen = "frozen"
});

/// Fill.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Fill {
    /// Fill that was placed and tested to a specification; left out, it counts nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub engineered: Option<Box<EngineeredFill>>,
}

/// Fill that counts as the soil it was placed as: exactly one of `clay`, `sand` and `gravel`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EngineeredFill {
    /// The record of its placement and tests; echoed, not judged.
    #[validate(nested)]
    pub record: Label,
    /// Placed as clay.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub clay: Option<Undrained>,
    /// Placed as sand.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub sand: Option<Drained>,
    /// Placed as gravel.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub gravel: Option<Drained>,
}

/// A layer that is given no credit.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct NoCredit {}

impl SoilProfile {
    /// Name of layer `i`: its label, or `L1`, `L2`, ... from the top.
    pub fn label(&self, i: usize) -> String {
        match &self.layers[i].label {
            Some(label) => label.0.clone(),
            None => format!("L{}", i + 1),
        }
    }

    /// Depth to which the profile reaches.
    pub fn depth(&self) -> Length {
        self.layers.last().map_or(Length::ZERO, |l| l.bottom)
    }
}
