//! What is asked of swelling ground: the ways to a swell, shared with the void form of
//! `frost-embedment`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{Length, LengthUnit, Size, SoilStress, StressUnit};
use crate::text::Label;

/// Where the swell of the ground comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SwellSource {
    /// The caller's own.
    Given(GivenHeave),
    /// The caller's own, as a potential vertical rise.
    PotentialVerticalRise(PotentialVerticalRise),
    /// From swell tests in the oedometer, layer by layer.
    Oedometer(OedometerSwell),
    /// From the expansiveness of the layers, falling off with depth.
    VanDerMerwe(DepthSwell),
    /// From the plasticity index alone: a range, for screening.
    IndexScreening(IndexSwell),
}

validate_choice!(SwellSource {
    Given = "given",
    PotentialVerticalRise = "potential_vertical_rise",
    Oedometer = "oedometer",
    VanDerMerwe = "van_der_merwe",
    IndexScreening = "index_screening",
});

/// A heave sent by the caller.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenHeave {
    /// Upward movement of the ground; 0 to 1,000 mm.
    #[validate(range(min = Size::ZERO, max = Size::new(1000.0, LengthUnit::Mm)))]
    pub movement: Size,
    /// Where it comes from.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub reference: Option<Label>,
}

/// A potential vertical rise sent by the caller. Its chart is not digitised here.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PotentialVerticalRise {
    /// The rise over the whole active depth; 0 to 1,000 mm.
    #[validate(range(min = Size::ZERO, max = Size::new(1000.0, LengthUnit::Mm)))]
    pub movement: Size,
    /// The report it comes from, with the moisture it was made for.
    #[validate(nested)]
    pub reference: Label,
}

/// Swell by the oedometer method.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OedometerSwell {
    /// Layers that can become wet; 1 to 60.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 60))]
    pub layers: Vec<OedometerLayer>,
}

/// One layer with its swell test. Index, stress and pressure are all needed; what is missing
/// is never assumed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OedometerLayer {
    /// Name of the layer; its number from the top when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Thickness; 0.01 to 30 m.
    #[validate(range(min = Length::new(0.01, LengthUnit::M), max = Length::new(30.0, LengthUnit::M)))]
    pub thickness: Length,
    /// Strain in a tenfold change of stress.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub index: Option<OedometerIndex>,
    /// Vertical effective stress at the middle of the layer before it becomes wet, with the
    /// load that lasts; 1 to 5,000 kPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(1.0, StressUnit::KPa), max = SoilStress::new(5000.0, StressUnit::KPa)))]
    pub initial_effective_stress: Option<SoilStress>,
    /// Swell pressure of a test at constant volume; 1 to 5,000 kPa. Where it is at most the
    /// stress, the layer does not swell.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(1.0, StressUnit::KPa), max = SoilStress::new(5000.0, StressUnit::KPa)))]
    pub swell_pressure: Option<SoilStress>,
}

/// Strain in a tenfold change of stress.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum OedometerIndex {
    /// The heave index.
    HeaveIndex(HeaveIndex),
    /// The swell index with the void ratio.
    SwellIndex(SwellIndex),
}

validate_choice!(OedometerIndex { HeaveIndex = "heave_index", SwellIndex = "swell_index" });

/// Heave index C_H.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HeaveIndex {
    /// C_H, a strain; 0.0001 to 1.
    #[validate(range(min = 0.0001, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0001, maximum = 1))]
    pub index_ratio: f64,
}

/// Swell index C_s, taken as C_s/(1 + e_0).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SwellIndex {
    /// C_s, a change of void ratio; 0.0001 to 2.
    #[validate(range(min = 0.0001, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0001, maximum = 2))]
    pub index_ratio: f64,
    /// Void ratio e_0 before the ground becomes wet; 0.1 to 5.
    #[validate(range(min = 0.1, max = 5.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 5))]
    pub void_ratio: f64,
}

/// Swell by expansiveness and depth.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DepthSwell {
    /// Layers from the surface of the ground under the beam or form down to where the ground
    /// no longer becomes wet, without gap or overlap, the first from depth 0; 1 to 60.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 60))]
    pub layers: Vec<ExpansiveLayer>,
}

/// One layer with its expansiveness.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ExpansiveLayer {
    /// Name of the layer; its number from the top when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Depth of its top; 0 to 30 m.
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub top: Length,
    /// Depth of its bottom, below the top; 0 to 30 m.
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub bottom: Length,
    /// How expansive it is.
    pub potential_expansiveness: Expansiveness,
}

/// How expansive a soil is, by plasticity index and clay content (Van der Merwe's chart; the
/// caller reads it).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Expansiveness {
    /// Does not swell.
    Low,
    /// 0.25 in per ft at the surface.
    Medium,
    /// 0.5 in per ft at the surface.
    High,
    /// 1 in per ft at the surface.
    VeryHigh,
}

/// Swell by the plasticity index alone.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct IndexSwell {
    /// Plasticity index PI as a ratio; 0 to 1 (0.35 is 35 %). The relation is known from 0.1
    /// to 0.7.
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub plasticity_index_ratio: f64,
    /// Thickness of ground that can become wet; 0.01 to 30 m.
    #[validate(range(min = Length::new(0.01, LengthUnit::M), max = Length::new(30.0, LengthUnit::M)))]
    pub thickness: Length,
}
