//! What `torque-capacity` answers. Only types: the equations stand in `factor.rs`,
//! `correlation.rs`, `safety.rs`, `hydraulics.rs` and `torsion.rs`.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::card::CabCardOutcome;
use super::compared::FactorAlternative;
use super::drive_outcome::DriveOutcome;
use crate::quantity::{Force, Length, Pressure, Shown, Size, SteelStress, Torque, TorqueFactor};
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// Torque and capacity of one pile. A member is left out where it was not asked for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = TorqueCapacityOutcome))]
pub struct Outcome {
    /// Name of the pile, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub label: Option<Label>,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Torque factor used.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_factor: Option<TorqueFactorOutcome>,
    /// Safety or resistance factors used.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_basis: Option<TorqueBasisOutcome>,
    /// Installed torque and the capacity it stands for.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub installed: Option<InstalledTorqueOutcome>,
    /// Torque the load needs.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub required: Option<RequiredTorqueOutcome>,
    /// Torque and pressure of the drive head.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub drive: Option<DriveOutcome>,
    /// Torque the shaft bears.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torsion: Option<ShaftTorsionOutcome>,
    /// Every published torque factor beside the one used, where `compare_factors` asks for it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub factor_alternatives: Option<Vec<FactorAlternative>>,
    /// The card for the cab, where `cab_card` asks for it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cab_card: Option<CabCardOutcome>,
}

/// Direction of the load on a pile.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TorqueDirection {
    /// Down.
    Compression,
    /// Up.
    Tension,
}

/// Torque factors by direction.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorqueFactorOutcome {
    /// Effective diameter of the shaft: outside diameter, or diagonal of a square.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub effective_diameter: Option<Size>,
    /// In compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<TorqueFactorUsed>,
    /// In tension.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<TorqueFactorUsed>,
    /// In tension, reduced by 24/33, the only published ratio of tension to compression seen.
    /// Stands where the factor in tension is the one in compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension_reduced: Option<TorqueFactorUsed>,
    /// What acceptance criteria AC358 give for this shaft, for comparison; left out where the
    /// shaft is outside them or not sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub acceptance_criteria: Option<TorqueFactor>,
    /// Reference of the caller's own factors, or of the tests on the site, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub own_reference: Option<String>,
    /// How many piles were tested on the site, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub test_count: Option<u32>,
}

/// One torque factor with where it comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorqueFactorUsed {
    /// Ultimate capacity over torque.
    pub factor: TorqueFactor,
    /// Least factor that the tests on the site leave open, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub factor_low: Option<TorqueFactor>,
    /// Greatest factor that they leave open, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub factor_high: Option<TorqueFactor>,
    /// Shafts it holds for.
    pub range: Cow<'static, str>,
    /// Where it comes from.
    pub source: SourceNote,
}

/// Factors of the design basis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorqueBasisOutcome {
    /// Format.
    pub format: TorqueBasisFormat,
    /// In compression.
    pub compression: TorqueSafetyUsed,
    /// In tension.
    pub tension: TorqueSafetyUsed,
}

/// Format of a design.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TorqueBasisFormat {
    /// Ultimate over a safety factor.
    AllowableStress,
    /// Ultimate times a resistance factor.
    LimitStates,
}

/// One factor of the design basis with its source. One of the two stands.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorqueSafetyUsed {
    /// Divides the ultimate capacity.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub safety_factor: Option<f64>,
    /// Multiplies the ultimate capacity.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub resistance_factor: Option<f64>,
    /// Where it comes from.
    pub source: SourceNote,
}

/// Installed torque and the capacity it stands for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct InstalledTorqueOutcome {
    /// Torque as read or as found from the pressures.
    pub torque: Torque,
    /// Least torque within the stated accuracy.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_low: Option<Torque>,
    /// Greatest torque within the stated accuracy.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_high: Option<Torque>,
    /// Pressure difference that turned the pile, where pressures were read.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub differential_pressure: Option<Pressure>,
    /// Advance in one turn over helix pitch.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub advance_ratio: Option<f64>,
    /// Least length of penetration to average the torque over.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub averaging_length: Option<Length>,
    /// Capacity in compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<CapacityByTorque>,
    /// Capacity in tension; left out where the top helix is too shallow for it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<CapacityByTorque>,
    /// Capacity in tension by the reduced factor, for comparison.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension_reduced: Option<CapacityByTorque>,
}

/// Capacity in one direction.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CapacityByTorque {
    /// Torque factor times torque.
    pub by_torque: Force,
    /// Ultimate capacity: the least of those considered.
    pub ultimate: Force,
    /// Which of them is the least.
    pub governed_by: UltimateBy,
    /// Which were considered; what is not listed was not sent and is not in the answer.
    pub considered: Vec<UltimateBy>,
    /// Allowable capacity or factored resistance, by the design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design: Option<Force>,
    /// The same at the least torque within the stated accuracy.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_low: Option<Force>,
    /// The same at the greatest torque within the stated accuracy.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_high: Option<Force>,
    /// The same by the least factor of the site, at the least torque where its accuracy is
    /// stated too.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_least: Option<Force>,
    /// The same by the greatest factor of the site, at the greatest torque where its accuracy
    /// is stated too.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_greatest: Option<Force>,
}

/// A way to an ultimate capacity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum UltimateBy {
    /// Torque factor times installation torque.
    TorqueCorrelation,
    /// Helix areas times ultimate bearing of the soil.
    SoilBearing,
    /// Load tests.
    LoadTest,
    /// Axial capacity of the shaft.
    Shaft,
    /// Axial capacity of the couplings.
    Couplings,
    /// Sum of the axial capacities of the helix plates.
    HelixPlates,
}

/// Torque the load needs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RequiredTorqueOutcome {
    /// Greatest required torque, not rounded.
    pub torque: Torque,
    /// Direction that governs.
    pub governing: TorqueDirection,
    /// The same rounded up, for the operator.
    pub cab: CabTorque,
    /// For the load in compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<RequiredTorque>,
    /// For the load in tension.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<RequiredTorque>,
    /// For the load in tension by the reduced factor, for comparison.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension_reduced: Option<RequiredTorque>,
}

/// A torque rounded for the operator, a target up and a limit down, in both units whatever
/// `output_units` says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CabTorque {
    /// To a whole 0.01 kN m.
    pub si: Shown,
    /// To a whole 10 ft lbf.
    pub us_customary: Shown,
}

/// Required torque in one direction.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RequiredTorque {
    /// Load, as sent.
    pub demand: Force,
    /// Ultimate capacity the load needs.
    pub ultimate: Force,
    /// That over the torque factor.
    pub torque: Torque,
    /// That over the greatest factor of the site.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_least: Option<Torque>,
    /// That over the least factor of the site.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_greatest: Option<Torque>,
}

/// Torque the shaft bears.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ShaftTorsionOutcome {
    /// The supplier's rating, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub rating: Option<Torque>,
    /// Estimate of the bare section.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub section: Option<TorsionSectionOutcome>,
    /// Rating (section estimate where there is none) less installed torque; negative where it
    /// is exceeded.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub installed_headroom: Option<Torque>,
    /// Rating (section estimate where there is none) less required torque; negative where it
    /// is exceeded.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub required_headroom: Option<Torque>,
}

/// Nominal torsional strength of the bare section; couplings and bolt holes are not in it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorsionSectionOutcome {
    /// Wall used, round shaft.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_wall: Option<Size>,
    /// Shear stress at which the steel is taken to yield, 0.6 Fy.
    pub shear_yield: SteelStress,
    /// First yield at the outside.
    pub elastic: Torque,
    /// Thin-wall form of AISC 360 H3.1, round shaft.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub thin_wall: Option<Torque>,
    /// The lower of them.
    pub estimate: Torque,
    /// Where it comes from.
    pub source: SourceNote,
}
