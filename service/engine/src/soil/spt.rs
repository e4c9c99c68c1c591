//! Standard penetration tests, as the caller sends them: a blow count, what was done to it
//! already, and the relation that turns it into a strength.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Length, LengthUnit};

/// Friction angle from a blow count.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrictionFromSpt {
    /// Blows for the last 300 mm (1 ft), or a representative of several tests; 1 to 100.
    #[validate(range(min = 1.0, max = 100.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 100))]
    pub blow_count: f64,
    /// What has been done to the count already.
    pub form: SptForm,
    /// Energy that reaches the rods over that of the free fall; 0.3 to 1 (0.6 is 60 %). For a
    /// raw count; 0.6 and a warning when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.3, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.3, maximum = 1))]
    pub energy_ratio: Option<f64>,
    /// Correction for the diameter of the borehole; 1 to 1.2, 1 when left out. For a raw count.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 1.2))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 1.2))]
    pub borehole_factor: Option<f64>,
    /// Correction for the length of the rods; 0.7 to 1, 1 when left out. For a raw count.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.7, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.7, maximum = 1))]
    pub rod_factor: Option<f64>,
    /// Correction for the sampler; 0.8 to 1.3, 1 when left out. For a raw count.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.8, max = 1.3))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.8, maximum = 1.3))]
    pub sampler_factor: Option<f64>,
    /// Largest correction for overburden; 1 to 2, 1.7 when left out. For a relation on
    /// (N_1)_60 from another form.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub overburden_cap_factor: Option<f64>,
    /// Very fine or silty sand below water: N_60 above 15 counts as 15 + 0.5 (N_60 - 15);
    /// false when left out. Not for (N_1)_60.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub silty_below_water: Option<bool>,
    /// Depth of the test, within the layer; its middle when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub test_depth: Option<Length>,
    /// Relation between count and angle; `peck_hanson_thornburn_wolff`, a conservative one,
    /// when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub correlation: Option<SptFriction>,
}

/// What has been done to a blow count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SptForm {
    /// As counted in the field.
    Raw,
    /// Corrected to 60 % energy and for borehole, rods and sampler: N_60.
    N60,
    /// Corrected for overburden too: (N_1)_60.
    N1_60,
}

/// Relations between blow count and friction angle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SptFriction {
    /// 27.1 + 0.3 N - 0.00054 N^2 with (N_1)_60; conservative.
    #[default]
    PeckHansonThornburnWolff,
    /// atan{\[N_60/(12.2 + 20.3 s'_v/p_a)\]^0.34}.
    #[serde(rename = "kulhawy_mayne_1990")]
    KulhawyMayne1990,
    /// sqrt(15.4 N) + 20 with (N_1)_60.
    #[serde(rename = "hatanaka_uchida_1996")]
    HatanakaUchida1996,
    /// sqrt(15 N_60) + 15, for roads and bridges.
    #[serde(rename = "shioi_fukui_1982_roads")]
    ShioiFukui1982Roads,
    /// 0.3 N_60 + 27, for buildings.
    #[serde(rename = "shioi_fukui_1982_buildings")]
    ShioiFukui1982Buildings,
}

/// Undrained strength from a blow count: s_u = alpha' p_a N_60, alpha' by plasticity index
/// (Salgado 2008).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct UndrainedFromSpt {
    /// Blows for the last 300 mm (1 ft), or a representative of several tests; 1 to 100.
    #[validate(range(min = 1.0, max = 100.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 100))]
    pub blow_count: f64,
    /// What has been done to the count already.
    pub form: SptClayForm,
    /// Plasticity index PI as a ratio; 0 to 1 (0.25 is 25 %). Needed: the relation is known
    /// from 0.15 to 0.6.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub plasticity_index_ratio: Option<f64>,
    /// Energy that reaches the rods over that of the free fall; 0.3 to 1 (0.6 is 60 %). For a
    /// raw count; 0.6 and a warning when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.3, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.3, maximum = 1))]
    pub energy_ratio: Option<f64>,
    /// Correction for the diameter of the borehole; 1 to 1.2, 1 when left out. For a raw count.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 1.2))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 1.2))]
    pub borehole_factor: Option<f64>,
    /// Correction for the length of the rods; 0.7 to 1, 1 when left out. For a raw count.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.7, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.7, maximum = 1))]
    pub rod_factor: Option<f64>,
    /// Correction for the sampler; 0.8 to 1.3, 1 when left out. For a raw count.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.8, max = 1.3))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.8, maximum = 1.3))]
    pub sampler_factor: Option<f64>,
    /// Depth of the test, within the layer; its middle when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub test_depth: Option<Length>,
}

/// What has been done to a blow count in clay, where overburden is not corrected for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SptClayForm {
    /// As counted in the field.
    Raw,
    /// Corrected to 60 % energy and for borehole, rods and sampler: N_60.
    N60,
}
