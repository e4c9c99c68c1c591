//! What is asked about uplift by swelling soil: adhesion on the shaft by one named method,
//! the pile before it is loaded, and what holds it down.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::resistance_request::FrostResistance;
use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit, Length, LengthUnit, SoilStress, StressUnit};
use crate::text::Label;

/// Uplift by swelling soil that grips the shaft over the active depth.
///
/// Refused without the active depth or the data of its method: neither is ever assumed.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SwellUplift {
    /// Adhesion of the swelling soil on the shaft, by one method.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub adhesion: Option<SwellAdhesion>,
    /// Depth below final grade from which the shaft touches soil once the building stands;
    /// 0 to 10 m. When left out: the beam's underside where `beam` is `in_soil`, else the
    /// ground surface at the pile.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(10.0, LengthUnit::M)))]
    pub contact_top_depth: Option<Length>,
    /// The pile before the building stands on it; `unloaded` without any load when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub before_loading: Option<SwellBeforeLoading>,
    /// What holds the pile down, below the active zone. When left out, that of `uplift` with
    /// the helices in the active zone given no credit.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub resistance: Option<FrostResistance>,
    /// Whether swelling and frost can pull with their full force at one time; `false` when
    /// left out. With `true` the two forces are added in full, which needs `uplift`, and are
    /// held by the ground below both.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub peaks_with_frost: Option<bool>,
}

/// Adhesion of swelling soil on the shaft. The methods differ by 4 to 10 times; all were
/// found on concrete piers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SwellAdhesion {
    /// A share of the swell pressure, at most the undrained strength where that is sent.
    AlphaShare(AlphaShare),
    /// A share between two values; the upper decides, the lower is shown.
    AlphaRange(AlphaRange),
    /// The whole swell pressure, for an active depth of 10 to 20 ft.
    FullSwellPressure(FullSwellPressure),
    /// The undrained strength times an adhesion factor that the caller sends.
    UndrainedCap(UndrainedCap),
    /// The caller's own.
    Given(GivenAdhesion),
}

validate_choice!(SwellAdhesion {
    AlphaShare = "alpha_share", AlphaRange = "alpha_range",
    FullSwellPressure = "full_swell_pressure", UndrainedCap = "undrained_cap", Given = "given"
});

/// Adhesion as a share of the swell pressure.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AlphaShare {
    /// Swell pressure at constant volume; 0 to 5,000 kPa. Never assumed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(5000.0, StressUnit::KPa)))]
    pub swell_pressure: Option<SoilStress>,
    /// Share of the swell pressure; 0 to 1, 0.15 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub alpha_factor: Option<f64>,
    /// Undrained strength of the wetted soil, which the adhesion cannot exceed; 1 to 1,000
    /// kPa. Left out, nothing caps it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(1.0, StressUnit::KPa), max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub undrained_strength: Option<SoilStress>,
}

/// Adhesion as a share of the swell pressure between two values.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AlphaRange {
    /// Swell pressure at constant volume; 0 to 5,000 kPa. Never assumed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(5000.0, StressUnit::KPa)))]
    pub swell_pressure: Option<SoilStress>,
    /// Undrained strength of the wetted soil, which the adhesion cannot exceed; 1 to 1,000
    /// kPa. Left out, nothing caps it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(1.0, StressUnit::KPa), max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub undrained_strength: Option<SoilStress>,
}

/// Adhesion as the whole swell pressure.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FullSwellPressure {
    /// Swell pressure at constant volume; 0 to 5,000 kPa. Never assumed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(5000.0, StressUnit::KPa)))]
    pub swell_pressure: Option<SoilStress>,
}

/// Adhesion by the undrained strength.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct UndrainedCap {
    /// Undrained strength of the wetted soil; 1 to 1,000 kPa. Never assumed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::new(1.0, StressUnit::KPa), max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub undrained_strength: Option<SoilStress>,
    /// Adhesion over undrained strength; 0 to 1. Never assumed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub adhesion_factor: Option<f64>,
    /// Swell pressure at constant volume, for the uplift under a beam that bears on the
    /// ground; 0 to 5,000 kPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(5000.0, StressUnit::KPa)))]
    pub swell_pressure: Option<SoilStress>,
}

/// Adhesion sent by the caller.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenAdhesion {
    /// Adhesion of the swelling soil on the shaft; 0 to 1,000 kPa.
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(1000.0, StressUnit::KPa)))]
    pub adhesion: SoilStress,
    /// Where it comes from.
    #[validate(nested)]
    pub reference: Label,
    /// Swell pressure at constant volume, for the uplift under a beam that bears on the
    /// ground; 0 to 5,000 kPa.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SoilStress::ZERO, max = SoilStress::new(5000.0, StressUnit::KPa)))]
    pub swell_pressure: Option<SoilStress>,
}

impl SwellAdhesion {
    /// Name on the wire.
    pub const fn name(&self) -> &'static str {
        match self {
            SwellAdhesion::AlphaShare(_) => "alpha_share",
            SwellAdhesion::AlphaRange(_) => "alpha_range",
            SwellAdhesion::FullSwellPressure(_) => "full_swell_pressure",
            SwellAdhesion::UndrainedCap(_) => "undrained_cap",
            SwellAdhesion::Given(_) => "given",
        }
    }

    /// The swell pressure that was sent with it.
    pub fn swell_pressure(&self) -> Option<SoilStress> {
        match self {
            SwellAdhesion::AlphaShare(a) => a.swell_pressure,
            SwellAdhesion::AlphaRange(a) => a.swell_pressure,
            SwellAdhesion::FullSwellPressure(a) => a.swell_pressure,
            SwellAdhesion::UndrainedCap(a) => a.swell_pressure,
            SwellAdhesion::Given(a) => a.swell_pressure,
        }
    }
}

/// The pile before the building stands on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SwellBeforeLoading {
    /// The soil may be wetted while the pile is not loaded.
    Unloaded(UnloadedPile),
    /// The building's dead load is on it before the soil is wetted; the stage is left out
    /// and the answer says so.
    LoadedBeforeWetting(LoadedBeforeWetting),
}

validate_choice!(SwellBeforeLoading {
    Unloaded = "unloaded", LoadedBeforeWetting = "loaded_before_wetting"
});

/// A pile that is not loaded while the soil swells.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct UnloadedPile {
    /// What weighs on it then; 0 to 10 MN, 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = Force::new(10_000.0, ForceUnit::KN)))]
    pub dead_load: Option<Force>,
    /// Depth below final grade from which the shaft touches soil then; 0 to 10 m. When left
    /// out: the ground surface at the pile, or as in service where the beam is cast.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(10.0, LengthUnit::M)))]
    pub contact_top_depth: Option<Length>,
    /// Whether the beam is cast by then, so that the soil grips its sides too; `false` when
    /// left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beam_cast: Option<bool>,
}

/// A pile that is loaded before the soil is wetted.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LoadedBeforeWetting {}

impl SwellUplift {
    /// The unloaded pile, as sent or by default; its members are empty where the stage is
    /// left out.
    pub fn unloaded(&self) -> UnloadedPile {
        match self.before_loading {
            Some(SwellBeforeLoading::Unloaded(stage)) => stage,
            _ => UnloadedPile::default(),
        }
    }

    /// Whether the unloaded pile is left out.
    pub fn loaded_before_wetting(&self) -> bool {
        matches!(
            self.before_loading,
            Some(SwellBeforeLoading::LoadedBeforeWetting(_))
        )
    }
}
