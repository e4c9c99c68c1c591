//! What is asked: the winter, the surface, the ground below it, and what to compute. The
//! layers have their own file.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::layer_request::FreezingLayer;
use crate::choice::validate_choice;
use crate::quantity::{
    ConductivityUnit, DurationUnit, FreezingIndex, FreezingIndexUnit, Length, LengthUnit, Season,
    Temperature, TemperatureUnit, ThermalConductivity,
};
use crate::text::{Label, Tags};

/// How deep the ground freezes, computed from a freezing index: a second opinion beside the
/// frost depth of the jurisdiction, which rules and which it never replaces.
///
/// The frost depth needs `winter` and `layers`; a request may also ask for `correction_factors`
/// alone. Depths count down from the surface that is exposed to the cold, the top of the first
/// layer. Nothing is inferred from a place. Where all this is a member of another request that has
/// an official depth of its own, `official_depth` is left out here.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = FrostDepthRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of the ground or the place; echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// The winter. Goes with `layers`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub winter: Option<FrostWinter>,
    /// What the surface makes of the cold of the air; `wind_scoured_beam` with its factor 1.0
    /// when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub surface: Option<FrostSurface>,
    /// What the cold goes through, from the surface exposed to it downwards; 1 to 60. The last
    /// one goes on down. Goes with `winter`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 60))]
    pub layers: Option<Vec<FreezingLayer>>,
    /// Method that gives the depth. When left out: `modified_berggren` where the ground is of
    /// one kind, `heat_conduction` where it is layered. The answer lists the depths by all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<FrostDepthMethod>,
    /// Heat of the solids in the heat capacity of soil; `c_0_17` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub solids_heat: Option<SolidsHeat>,
    /// Frost depth of the jurisdiction from the same surface, to be shown beside the computed
    /// one; 0 to 5 m. It rules either way.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(5.0, LengthUnit::M)))]
    pub official_depth: Option<Length>,
    /// Asks how thick a board of insulation brings the computed depth to a given one. For
    /// information: not the design of a frost-protected shallow foundation.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub insulation_for: Option<InsulationFor>,
    /// Asks for the correction factor of the modified Berggren equation by itself.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub correction_factors: Option<CorrectionFactors>,
}

/// A winter and the warmth that the ground brings into it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostWinter {
    /// Freezing index of the air, with its definition.
    #[validate(nested)]
    pub freezing_index: FreezingIndexSource,
    /// Mean annual temperature of the place, taken for the temperature of the ground when the
    /// winter begins; -30 to 30 degC, refused at and below freezing.
    #[validate(range(min = Temperature::new(-30.0, TemperatureUnit::DegC), max = Temperature::new(30.0, TemperatureUnit::DegC)))]
    pub mean_annual_temperature: Temperature,
    /// Length of the freezing season; 10 to 365 days.
    #[validate(range(min = Season::new(10.0, DurationUnit::Day), max = Season::new(365.0, DurationUnit::Day)))]
    pub season_length: Season,
}

/// Where the freezing index comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FreezingIndexSource {
    /// A value the caller has.
    Given(GivenFreezingIndex),
    /// Found from the indices of single winters.
    Winters(FreezingWinters),
}

validate_choice!(FreezingIndexSource { Given = "given", Winters = "winters" });

/// A freezing index the caller has.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenFreezingIndex {
    /// What it stands for; never taken for another one.
    pub definition: FreezingIndexDefinition,
    /// The index of the air; 1 to 5,000 C_day.
    #[validate(range(min = FreezingIndex::new(1.0, FreezingIndexUnit::CDay), max = FreezingIndex::new(5000.0, FreezingIndexUnit::CDay)))]
    pub value: FreezingIndex,
    /// Where it comes from, such as a map or a station with its years.
    #[validate(nested)]
    pub reference: Label,
}

/// Freezing indices of single winters.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FreezingWinters {
    /// What is to be found from them: `mean` (of all, at least 10), `design_3_in_30` (of the
    /// latest 30) or `coldest_in_10` (of the latest 10). `return_100` cannot be.
    pub definition: FreezingIndexDefinition,
    /// Seasonal freezing index of the air of each winter, the latest last; 1 to 100 winters,
    /// each 0 to 5,000 C_day.
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 100))]
    pub values: Vec<FreezingIndex>,
}

/// What a freezing index stands for. They differ, and none is ever taken for another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FreezingIndexDefinition {
    /// Mean of all winters: about half of them go deeper.
    Mean,
    /// Design index: mean of the three coldest winters in 30.
    #[serde(rename = "design_3_in_30")]
    Design3In30,
    /// Design index where 30 winters are not known: the coldest in 10.
    #[serde(rename = "coldest_in_10")]
    ColdestIn10,
    /// Index with a return period of 100 years.
    #[serde(rename = "return_100")]
    Return100,
}

impl FreezingIndexDefinition {
    /// Name on the wire.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Mean => "mean",
            Self::Design3In30 => "design_3_in_30",
            Self::ColdestIn10 => "coldest_in_10",
            Self::Return100 => "return_100",
        }
    }
}

/// What a surface makes of the cold of the air: its freezing index over that of the air.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FrostSurface {
    /// Ground beside an unheated grade beam, in its shade and swept clear by the wind: 1.0.
    WindScouredBeam(NamedSurface),
    /// The surface of snow that lies on the ground and is sent as a layer: 1.0.
    Snow(NamedSurface),
    /// Concrete pavement kept free of snow: 0.75.
    ConcretePavement(NamedSurface),
    /// Asphalt pavement kept free of snow: 0.70.
    AsphaltPavement(NamedSurface),
    /// Bare sand and gravel: 0.90.
    BareSandGravel(NamedSurface),
    /// Bare soil: 0.70.
    BareSoil(NamedSurface),
    /// Turf under snow: 0.50. The snow is in the factor and must not be a layer too.
    TurfUnderSnow(NamedSurface),
    /// Trees, brush and moss under snow: 0.30. The snow is in the factor and must not be a
    /// layer too.
    TreesBrushMoss(NamedSurface),
    /// The caller's own factor.
    Given(GivenSurface),
}

validate_choice!(FrostSurface {
    WindScouredBeam = "wind_scoured_beam", Snow = "snow", ConcretePavement = "concrete_pavement",
    AsphaltPavement = "asphalt_pavement", BareSandGravel = "bare_sand_gravel",
    BareSoil = "bare_soil", TurfUnderSnow = "turf_under_snow",
    TreesBrushMoss = "trees_brush_moss", Given = "given"
});

/// The service's factor for this surface.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct NamedSurface {}

/// A surface with the caller's own factor.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenSurface {
    /// Freezing index of the surface over that of the air; 0.1 to 1.5.
    #[validate(range(min = 0.1, max = 1.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1.5))]
    pub factor: f64,
    /// Where it comes from.
    #[validate(nested)]
    pub reference: Label,
}

/// Methods for the frost depth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FrostDepthMethod {
    /// Modified Berggren equation; its layered form where the ground is layered, which goes far
    /// too deep under insulation.
    ModifiedBerggren,
    /// Conduction of heat with freezing, solved step by step over the season.
    HeatConduction,
    /// Stefan equation: latent heat only, over-predicts.
    Stefan,
}

impl FrostDepthMethod {
    /// Every method, in the order of the answer.
    pub const ALL: [Self; 3] = [Self::ModifiedBerggren, Self::HeatConduction, Self::Stefan];

    /// Name on the wire.
    pub const fn name(self) -> &'static str {
        match self {
            Self::ModifiedBerggren => "modified_berggren",
            Self::HeatConduction => "heat_conduction",
            Self::Stefan => "stefan",
        }
    }
}

/// Heat of the solids of soil, by mass, over that of water. The sources differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum SolidsHeat {
    /// 0.17.
    #[serde(rename = "c_0_17")]
    C017,
    /// 0.20.
    #[serde(rename = "c_0_20")]
    C020,
}

/// A board of insulation that is to bring the computed frost depth to a given one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct InsulationFor {
    /// Frost depth that is wanted, from the surface exposed to the cold as it is sent: the board
    /// is put in and not counted; 0.05 to 5 m.
    #[validate(range(min = Length::new(0.05, LengthUnit::M), max = Length::new(5.0, LengthUnit::M)))]
    pub depth: Length,
    /// Conductivity of the board, wet as it will lie; 0.01 to 0.3 W_per_m_K.
    #[validate(range(min = ThermalConductivity::new(0.01, ConductivityUnit::WPerMK), max = ThermalConductivity::new(0.3, ConductivityUnit::WPerMK)))]
    pub conductivity: ThermalConductivity,
    /// Label of the layer the board lies on; on the surface when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub on_top_of: Option<Label>,
}

/// Asks for correction factors of the modified Berggren equation.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrectionFactors {
    /// Fusion parameter mu: heat that the ground gives up by cooling over its latent heat; above
    /// 0 to 0.5, the range of the published chart.
    pub fusion_ratio: f64,
    /// Thermal ratio alpha: warmth of the ground over the mean cold of the surface; 1 to 100
    /// values of 0 to 7, the range of the published chart.
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 100))]
    pub thermal_ratios: Vec<f64>,
}
