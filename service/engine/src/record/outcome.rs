//! What `installation-record` answers. Only types: the rules stand in `rules`, the arithmetic in
//! `window.rs`, `spikes.rs` and `rows.rs`.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::completeness_outcome::Completeness;
use super::relocation::RecordRelocationOutcome;
use super::request::EffectiveTorque;
use super::steps::NextStep;
use crate::quantity::{Again, Force, Length, RotationalSpeed, Size, Torque};
use crate::relocation;
use crate::source::SourceNote;
use crate::text::{Label, Tags};
use crate::torque::{TorqueBasisOutcome, TorqueDirection, TorqueFactorOutcome};

/// An installation as it was read. A member is left out where it could not be found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = InstallationRecordOutcome))]
pub struct Outcome {
    /// Number of the pile, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub label: Option<Label>,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Depth of the tip at the last row.
    pub tip_depth: Length,
    /// The helices at that depth, the top one first.
    pub helices: Vec<HelixPlace>,
    /// Torque that was to be reached.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub required: Option<RecordRequired>,
    /// Torque at the end.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub effective: Option<EffectiveTorqueOutcome>,
    /// Last torque that was read, whatever its standing.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub final_torque: Option<Torque>,
    /// Greatest torque that was read, over the whole log.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub greatest_torque: Option<Torque>,
    /// Advance at the end.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub advance: Option<AdvanceOutcome>,
    /// Capacity that the torque stands for; with a torque factor.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub capacity: Option<RecordCapacity>,
    /// Torque factor used.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_factor: Option<TorqueFactorOutcome>,
    /// Safety or resistance factors used.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_basis: Option<TorqueBasisOutcome>,
    /// The log against the profile of the ground.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub ground: Option<GroundOutcome>,
    /// Fields of the record against the list asked for.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub completeness: Option<Completeness>,
    /// What can be done, the first thing to try first; empty where the pile is accepted.
    pub next_steps: Vec<NextStep>,
    /// What the layout must be told of this pile; only with `relocation`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub relocation: Option<RecordRelocationOutcome>,
    /// The request of `pile-relocation` that tells it, ready to be sent; only with the layout and
    /// where the pile is rejected. Its numbers read back as they were sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    #[cfg_attr(feature = "openapi", schema(value_type = Option<relocation::Request>))]
    pub next_request: Option<Again<relocation::Request>>,
    /// The rows of the log as they were judged.
    pub rows: Vec<LogRow>,
}

/// A helix of the pile at its depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct HelixPlace {
    /// Diameter, as sent.
    pub diameter: Size,
    /// Depth below final grade; negative while it is above it.
    pub depth: Length,
}

/// Torque that was to be reached.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RecordRequired {
    /// The torque, not rounded.
    pub torque: Torque,
    /// Whether the pile must bear tension.
    pub tension: bool,
    /// Direction that governs; left out where the torque was stated.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub governing: Option<TorqueDirection>,
    /// The torque with the tension by the reduced factor, for comparison; never less than
    /// `torque`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub by_reduced_factor: Option<Torque>,
    /// The torque by the least factor of the tests on the site, where their band was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub by_least_site_factor: Option<Torque>,
    /// Where it comes from.
    pub source: SourceNote,
}

/// Torque at the end of the log.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct EffectiveTorqueOutcome {
    /// Definition that counts.
    pub definition: EffectiveTorque,
    /// The torque by it.
    pub torque: Torque,
    /// Least torque within the accuracy of the indicator.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_low: Option<Torque>,
    /// Greatest torque within the accuracy of the indicator.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_high: Option<Torque>,
    /// Where the definition comes from.
    pub source: SourceNote,
    /// The torque by every definition that the log is long enough for.
    pub by_definition: Vec<TorqueByDefinition>,
    /// Upper end of the window, a depth of the tip.
    pub window_from: Length,
    /// Lower end of the window: the last reading that counts.
    pub window_to: Length,
    /// Least reading in the window.
    pub least: Torque,
    /// Greatest reading in the window.
    pub greatest: Torque,
    /// Readings in the window.
    pub reading_count: usize,
    /// Penetration at the end over which no reading is below the least share of the required
    /// torque.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub held_length: Option<Length>,
}

/// Torque by one definition.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TorqueByDefinition {
    /// The definition.
    pub definition: EffectiveTorque,
    /// The torque.
    pub torque: Torque,
}

/// Advance at the end of the log.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AdvanceOutcome {
    /// Advance in one turn at the last row.
    pub at_final_torque: Size,
    /// The same over the pitch.
    pub final_ratio: f64,
    /// Least advance over pitch among the rows of the window before the last one.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub least_ratio_in_window: Option<f64>,
}

/// Capacity that a torque stands for, by the torque correlation alone. An indication only where
/// a rule says that this torque may not be correlated or the ground gives less.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RecordCapacity {
    /// The figures must not be used: `withheld_for` says which checks stand against it.
    pub indicative_only: bool,
    /// Codes of the checks that stand against it.
    pub withheld_for: Vec<Cow<'static, str>>,
    /// By the torque that counts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub by_effective_torque: Option<CapacityOfTorque>,
    /// By the last torque that was read.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub by_final_torque: Option<CapacityOfTorque>,
}

/// Capacity of one torque, in both directions.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CapacityOfTorque {
    /// The torque.
    pub torque: Torque,
    /// Ultimate capacity in compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression_ultimate: Option<Force>,
    /// Allowable capacity or factored resistance in compression; with a design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression_design: Option<Force>,
    /// Ultimate capacity in tension.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension_ultimate: Option<Force>,
    /// Allowable capacity or factored resistance in tension; with a design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension_design: Option<Force>,
}

/// The log against the profile of the ground.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GroundOutcome {
    /// Layers that the tip went through, with the torque in them.
    pub layers: Vec<LayerTorque>,
    /// Torque to expect at the final depth from the strength of the ground; left out where the
    /// profile gives no capacity there or no torque factor was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub expected_torque: Option<ExpectedAtDepth>,
    /// Why there is no torque to expect: a code with its text.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub not_expected: Option<String>,
}

/// Torque in a layer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LayerTorque {
    /// Name of the layer.
    pub label: String,
    /// What it is made of, in words.
    pub ground: Cow<'static, str>,
    /// Depth of its top below final grade.
    pub top: Length,
    /// Depth of its bottom below final grade.
    pub bottom: Length,
    /// Mean torque by depth while the tip was in it; left out where the readings do not reach
    /// over any of it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub mean_torque: Option<Torque>,
    /// Greatest torque while the tip was in it, spikes included.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub greatest_torque: Option<Torque>,
}

/// Torque to expect from the strength of the ground.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ExpectedAtDepth {
    /// Ultimate capacity in compression of the helices in this ground.
    pub ultimate: Force,
    /// The same limited by punching into weaker ground below, where that is less.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub ultimate_by_punching: Option<Force>,
    /// `ultimate` over the torque factor.
    pub expected: Torque,
    /// Lower end of its scatter.
    pub low: Torque,
    /// Upper end of its scatter.
    pub high: Torque,
    /// Torque that counts over the expected.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub measured_ratio: Option<f64>,
}

/// A row of the log as it was judged.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LogRow {
    /// Depth of the tip, as sent.
    pub depth: Length,
    /// Torque, as sent or from the pressures.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque: Option<Torque>,
    /// How the row stands.
    pub standing: RowStanding,
    /// Advance in one turn over the pitch.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub advance_ratio: Option<f64>,
    /// Speed of rotation, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub rotation_speed: Option<RotationalSpeed>,
}

/// How a row of a log stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum RowStanding {
    /// Its torque counts.
    Counts,
    /// A rise that fell again: a stone or a thin crust. It does not count.
    Spike,
    /// A rise at the end that has not held over the averaging length. It does not count until
    /// it has.
    Unconfirmed,
    /// The tip was in a hole that was there before; its torque does not count.
    NotFresh,
    /// No torque was read.
    NoTorque,
}
