//! What `length-forecast` answers. Only types: the model stands in `posterior.rs` and `job.rs`.

use serde::{Deserialize, Serialize};

use crate::quantity::{Length, Torque};
use crate::text::{Label, Tags};

/// How deep the piles to come will go. A member is left out where it was not asked for or does
/// not exist.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = LengthForecastOutcome))]
pub struct Outcome {
    /// Name of the job, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub label: Option<Label>,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Probability with which depths and pieces suffice.
    pub confidence_ratio: f64,
    /// Length of penetration that the torque was averaged over.
    pub averaging_length: Length,
    /// Whether places in plan were used.
    pub uses_positions: bool,
    /// For each required torque what the logs say, the least torque first.
    pub torques: Vec<TorqueForecast>,
    /// The piles to come, as sent.
    pub piles: Vec<PileForecast>,
    /// All piles to come together.
    pub total_depth: TotalDepth,
    /// Extensions of the piles to come, as sent in `pieces.extensions`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub extensions: Option<Vec<ExtensionTotal>>,
}

/// What the logs say of one required torque.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorqueForecast {
    /// The torque.
    pub required_torque: Torque,
    /// Logs that met it.
    pub met_count: usize,
    /// Logs that ended before they met it.
    pub not_met_count: usize,
    /// Each log.
    pub logs: Vec<LogReading>,
    /// Average depth at which all piles to come would meet it, expected.
    pub average_depth: Length,
    /// Standard deviation of that average: how far all may be off together.
    pub average_standard_deviation: Length,
    /// Standard deviation of the depth of one pile about the mean of the ground, expected.
    pub pile_standard_deviation: Length,
    /// Share of that variance that neighbours do not have in common, expected. With places
    /// only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub own_variance_ratio: Option<f64>,
    /// Distance over which the correlation of neighbours falls to 0.37, expected. With places
    /// only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub correlation_length: Option<Length>,
    /// Probability that the stated standard deviation is right as it stands; 0.6 before the
    /// first log.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub prior_holds_ratio: Option<f64>,
    /// Grounds that the forecast sums over: values of scatter, own share, correlation length
    /// and width of the prior that the logs allow.
    pub ground_count: usize,
}

/// What one log says of one torque.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LogReading {
    /// Name of the pile.
    pub label: Label,
    /// How it counts.
    pub status: LogStatus,
    /// Depth from which on the torque was met, or down to which it was not.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub depth: Option<Length>,
    /// Why it counts so.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub reason: Option<String>,
}

/// How a log counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LogStatus {
    /// The torque was met.
    Met,
    /// It was not met down to the depth: the pile goes deeper.
    NotMet,
    /// It says nothing of this torque.
    NotUsable,
}

/// Depths between which a pile ends with a certain probability.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DepthBand {
    /// Upper end.
    pub from: Length,
    /// Lower end.
    pub to: Length,
}

/// How deep one pile will go: final depth of its tip, the deeper of its least depth and of the
/// depth at which its torque is met.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileForecast {
    /// Its name.
    pub label: Label,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Torque it must meet.
    pub required_torque: Torque,
    /// Its least depth, as sent.
    pub minimum_depth: Length,
    /// Depth it has been driven to without meeting its torque.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub driven_depth: Option<Length>,
    /// Distance in plan to the nearest log that says something of its torque. With places only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub nearest_log: Option<Length>,
    /// As likely deeper as not.
    pub median: Length,
    /// With a probability of 0.5 between these.
    pub band_50: DepthBand,
    /// With a probability of 0.8.
    pub band_80: DepthBand,
    /// With a probability of 0.9.
    pub band_90: DepthBand,
    /// Not exceeded with the probability `confidence_ratio`.
    pub at_confidence: Length,
    /// Probability that the torque is met above the least depth, which then governs.
    pub minimum_governs_ratio: f64,
    /// Its pieces.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pieces: Option<PilePieces>,
}

/// The pieces of one pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PilePieces {
    /// Number of each extension, in the order sent, that reaches `at_confidence`.
    pub extension_counts: Vec<usize>,
    /// Length of steel of the lead with these.
    pub length: Length,
    /// What it may come to: the lead with ever more extensions, as far as it matters
    /// (probabilities between 0.001 and 0.999).
    pub options: Vec<PileAssembly>,
}

/// A lead with extensions.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileAssembly {
    /// Number of each extension, in the order sent.
    pub extension_counts: Vec<usize>,
    /// Depth of the tip that it reaches.
    pub reach: Length,
    /// Probability that the pile goes deeper.
    pub deeper_probability_ratio: f64,
}

/// Sum of the final depths of all piles to come.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TotalDepth {
    /// Expected.
    pub mean: Length,
    /// Not exceeded with a probability of 0.9, as far as the ground moves all piles together.
    pub p90_by_model: Length,
    /// The same if the piles had nothing in common: too little.
    pub p90_independent: Length,
    /// The same if all piles were deep at once: on the safe side, never less than by the model.
    pub p90_fully_correlated: Length,
}

/// Extensions of one length for all piles to come, whole piles counted: for a pile being driven
/// those in the ground too.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ExtensionTotal {
    /// Its name, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub label: Option<Label>,
    /// Its length, as sent.
    pub length: Length,
    /// Expected number.
    pub mean_count: f64,
    /// Suffices with the probability `confidence_ratio`, as far as the ground moves all piles
    /// together.
    pub by_model_count: usize,
    /// The same if the piles had nothing in common: too few.
    pub independent_count: usize,
    /// The same if all piles were deep at once: on the safe side, never fewer than by the model.
    pub fully_correlated_count: usize,
    /// How many there are, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub available_count: Option<u32>,
}
