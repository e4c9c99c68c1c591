//! The estimate of reliability: what is asked and what is answered. The published
//! statistics are in `reliability_statistics.rs`, equations and conditions in
//! `reliability_estimate.rs`.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit};
use crate::source::SourceNote;
use crate::text::reference_text;

/// How uncertain resistance and load are. Indicative only.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ReliabilityOptions {
    /// Statistic of measured against calculated resistance; bias 1.0 and coefficient of
    /// variation 0.40 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub statistic: Option<ResistanceStatistic>,
    /// Unfactored load. Left out, that of a demand of level `allowable` counts, and without
    /// one the safety factor of an allowable design basis; needed on every other basis.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub unfactored_load: Option<UnfactoredLoad>,
    /// Mean load over the unfactored load; 0.5 to 2, 1 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.5, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 2))]
    pub load_bias_factor: Option<f64>,
    /// Coefficient of variation of the load; 0 to 1, 0.15 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub load_cov_ratio: Option<f64>,
}

/// Where the statistic comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ResistanceStatistic {
    /// A published one; refused where it does not apply.
    Published(PublishedStatisticChoice),
    /// The caller's own.
    Own(OwnStatistic),
}

validate_choice!(ResistanceStatistic { Published = "published", Own = "own" });

/// A published statistic.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PublishedStatisticChoice {
    /// Which.
    pub name: PublishedStatisticName,
}

/// Published statistics that can be put on a resistance of this calculation.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PublishedStatisticName {
    /// Shallow uplift in sand of 40 degrees or more alone.
    #[serde(rename = "giampa_2016")]
    Giampa2016,
    /// Tension where individual bearing governs. From memory: the answer warns.
    #[serde(rename = "hoyt_clemence_1989_individual_bearing")]
    HoytClemence1989IndividualBearing,
    /// Tension where cylindrical shear governs. From memory: the answer warns.
    #[serde(rename = "hoyt_clemence_1989_cylindrical_shear")]
    HoytClemence1989CylindricalShear,
}

/// The caller's own statistic.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnStatistic {
    /// Mean of the ratio named in `given_as`; 0.1 to 10.
    #[validate(range(min = 0.1, max = 10.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 10))]
    pub mean_ratio: f64,
    /// Coefficient of variation; 0.01 to 2.
    #[validate(range(min = 0.01, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.01, maximum = 2))]
    pub cov_ratio: f64,
    /// Which way round the ratio is; measured over calculated when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub given_as: Option<StatisticDirection>,
    /// The tests or the report it comes from, 1 to 200 characters; echoed, never
    /// interpreted.
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: String,
}

/// Which way round a ratio of resistances is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum StatisticDirection {
    /// Measured over calculated: a bias.
    MeasuredOverCalculated,
    /// Calculated over measured: the inverse of a bias.
    CalculatedOverMeasured,
}

/// Unfactored load on the pile; at least one.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct UnfactoredLoad {
    /// Compression; 1 N to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::new(1.0, ForceUnit::N), max = Force::new(20_000.0, ForceUnit::KN)))]
    pub compression: Option<Force>,
    /// Tension; 1 N to 20 MN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::new(1.0, ForceUnit::N), max = Force::new(20_000.0, ForceUnit::KN)))]
    pub tension: Option<Force>,
}

/// Indicative estimate of reliability.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ReliabilityOutcome {
    /// In compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<ReliabilityEstimate>,
    /// In tension.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<ReliabilityEstimate>,
    /// The statistic of the resistance, as printed and as used.
    pub statistic: StatisticUsed,
    /// Mean load over unfactored load.
    pub load_bias_factor: f64,
    /// Coefficient of variation of the load.
    pub load_cov_ratio: f64,
    /// Every published statistic known here, used or not, for comparison.
    pub published_statistics: Vec<PublishedStatistic>,
}

/// Estimate in one direction.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ReliabilityEstimate {
    /// Ultimate resistance, with punching where that is less, over unfactored load.
    pub central_safety_factor: f64,
    /// Where that comes from.
    pub safety_from: SafetyFrom,
    /// The unfactored load, where one counts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub unfactored_load: Option<Force>,
    /// Reliability index: mean over standard deviation of the logarithm of resistance over
    /// load.
    pub reliability_index_ratio: f64,
    /// Probability that the load exceeds the resistance.
    pub failure_probability_ratio: f64,
}

/// Where a safety factor comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SafetyFrom {
    /// The ultimate resistance and an unfactored load.
    UnfactoredLoad,
    /// The design basis: the pile as if loaded up to its allowable capacity.
    DesignBasis,
}

/// The statistic of the resistance in force.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StatisticUsed {
    /// Its name; `default` or `own` where it is not a published one.
    pub name: Cow<'static, str>,
    /// Which way round it is printed.
    pub given_as: StatisticDirection,
    /// Mean of the ratio as printed.
    pub printed_mean_ratio: f64,
    /// Bias as used, measured over calculated.
    pub bias_factor: f64,
    /// Coefficient of variation, the same both ways round.
    pub cov_ratio: f64,
    /// Sent in the request.
    pub from_request: bool,
    /// Where it comes from.
    pub source: SourceNote,
    /// The caller's reference, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub own_reference: Option<String>,
}

/// A published statistic.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PublishedStatistic {
    /// Its name.
    pub name: Cow<'static, str>,
    /// What it is of, and where it applies.
    pub about: Cow<'static, str>,
    /// What is put over what.
    pub given_as: PublishedRatio,
    /// Mean as printed.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub printed_mean_ratio: Option<f64>,
    /// Coefficient of variation.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cov_ratio: Option<f64>,
    /// Lower end of the range printed.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub lowest_ratio: Option<f64>,
    /// Upper end of the range printed.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub highest_ratio: Option<f64>,
    /// Bias that follows, measured over calculated, where the ratio is of the two.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub bias_factor: Option<f64>,
    /// Whether a request can choose it.
    pub selectable: bool,
    /// Where it comes from.
    pub source: SourceNote,
}

/// What a published ratio puts over what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PublishedRatio {
    /// Measured over calculated resistance.
    MeasuredOverCalculated,
    /// Calculated over measured resistance.
    CalculatedOverMeasured,
    /// Resistance in uplift over that in compression.
    UpliftOverCompression,
}
