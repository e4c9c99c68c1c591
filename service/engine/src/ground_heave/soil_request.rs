//! What is asked of the soil itself: frost susceptibility, and whether a building code calls
//! it expansive. Neither gives a heave.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{HeaveRate, VelocityUnit};

/// What is known of the soil for its classes of frost susceptibility.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostSusceptibility {
    /// What the soil is.
    pub soil: FrostSoil,
    /// Share by weight finer than 0.02 mm; 0 to 1. Needed for gravel and sand.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub finer_than_20_um_ratio: Option<f64>,
    /// Share by weight finer than 0.075 mm (No. 200), for the second scheme; 0 to 1, not
    /// below the share finer than 0.02 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub finer_than_75_um_ratio: Option<f64>,
    /// Plasticity index PI as a ratio; 0 to 2 (0.12 is 12 %). Needed for clay.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 2))]
    pub plasticity_index_ratio: Option<f64>,
    /// Heave rate of a freezing test in the laboratory; 0 to 100 mm/day.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = HeaveRate::ZERO, max = HeaveRate::new(100.0, VelocityUnit::MmPerDay)))]
    pub laboratory_heave_rate: Option<HeaveRate>,
}

/// Kinds of soil in the schemes of frost susceptibility.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FrostSoil {
    /// Gravel and gravelly soil.
    Gravel,
    /// Sand without silt or clay to speak of (SW, SP).
    Sand,
    /// Sand with silt or clay (SM, SC and between).
    SandWithFines,
    /// Very fine silty sand.
    VeryFineSiltySand,
    /// Silt.
    Silt,
    /// Clay.
    Clay,
    /// Varved clay and other banded fine-grained sediment.
    VarvedClay,
}

/// Properties by which a building code calls a soil expansive. What is not known is left
/// out; at least one is sent.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ExpansiveSoil {
    /// Plasticity index PI as a ratio; 0 to 2 (0.15 is 15 %).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 2))]
    pub plasticity_index_ratio: Option<f64>,
    /// Share by weight passing 0.075 mm (No. 200); 0 to 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub passing_75_um_ratio: Option<f64>,
    /// Share by weight finer than 0.005 mm; 0 to 1.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub finer_than_5_um_ratio: Option<f64>,
    /// Expansion index, a pure number; 0 to 300. It alone decides where it is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 300.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 300))]
    pub expansion_index_factor: Option<f64>,
}
