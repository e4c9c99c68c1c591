//! What is asked: heave by freezing. Swelling, classes of soil have their own files.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::soil_request::{ExpansiveSoil, FrostSusceptibility};
use super::swell_request::SwellSource;
use crate::quantity::{
    FreezingIndex, FreezingIndexUnit, InverseStressUnit, Length, LengthUnit, SegregationPotential,
    SegregationUnit, SoilStress, StressSensitivity, StressUnit,
};
use crate::text::{Label, Tags};

/// How far the ground comes up by freezing and by swelling.
///
/// At least one of `frost`, `swell` and `expansive_soil` is sent. The larger of both heaves
/// counts, not their sum. A segregation potential is never invented, and a class of soil is
/// never turned into a heave. Ground that stays frozen over the summer is not covered.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = GroundHeaveRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of the place; echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Heave by freezing.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub frost: Option<GroundFreezing>,
    /// Heave by swelling.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub swell: Option<SwellSource>,
    /// Properties by which a building code calls a soil expansive.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub expansive_soil: Option<ExpansiveSoil>,
}

/// Heave by freezing: of the water that is in the pores, of the water that is drawn to the
/// front, or both; and the class of the soil. At least one of them is sent.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GroundFreezing {
    /// Depth of ground that freezes under the surface that is exposed to the cold; 0.05 to
    /// 10 m. Never inferred from a place.
    #[validate(range(min = Length::new(0.05, LengthUnit::M), max = Length::new(10.0, LengthUnit::M)))]
    pub frost_depth: Length,
    /// The water that is in the pores.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub in_situ: Option<PoreFreezing>,
    /// The water that is drawn to the front and makes lenses of ice.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub segregation: Option<IceSegregation>,
    /// Classes of frost susceptibility. They are answered beside the heave and give none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub susceptibility: Option<FrostSusceptibility>,
}

/// Water in the pores of the ground that freezes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PoreFreezing {
    /// Volume of the pores over the whole volume; 0 to 1 (open water).
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub porosity_ratio: f64,
    /// Share of the pores that is filled with water; 0 to 1.
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub saturation_ratio: f64,
}

/// Water that is drawn to the front.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct IceSegregation {
    /// Segregation potential of the soil from a freezing test or from heave that was
    /// measured, without load where `load_reduction` is sent; 0 to 1e-8 m2/(s K). Needed:
    /// there is no default, and without it the request is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SegregationPotential::ZERO, max = SegregationPotential::new(1e-8, SegregationUnit::M2PerSK)))]
    pub potential: Option<SegregationPotential>,
    /// Where the potential comes from.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub reference: Option<Label>,
    /// Freezing index at the surface of the ground, the n-factor already in it; 0 to 10,000
    /// C_day. It belongs to the same winter as the frost depth.
    #[validate(range(min = FreezingIndex::ZERO, max = FreezingIndex::new(10_000.0, FreezingIndexUnit::CDay)))]
    pub surface_freezing_index: FreezingIndex,
    /// How far load on the front reduces the potential; not at all when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub load_reduction: Option<SegregationLoad>,
}

/// Reduction of the segregation potential under load, SP = SP_0 exp(-a p).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SegregationLoad {
    /// The coefficient a of the soil; 0 to 100 per MPa.
    #[validate(range(min = StressSensitivity::ZERO, max = StressSensitivity::new(100.0, InverseStressUnit::PerMPa)))]
    pub sensitivity: StressSensitivity,
    /// Vertical stress p on the front of frost; 0 to 1,000 kPa.
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub pressure: SoilStress,
}
