//! What `installation-job` answers: the piles and their counts. What is said of the lot is in
//! `lot_outcome.rs`. Only types.

use serde::{Deserialize, Serialize};

use super::lot_outcome::JobLot;
use super::request::JobLoadTest;
use crate::contract::{Issue, Verdict, VerdictReason, Warning};
use crate::quantity::{Length, Torque};
use crate::record::{self, NextStepKind};
use crate::text::{Label, Tags};

/// A job as its logs tell it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = InstallationJobOutcome))]
pub struct Outcome {
    /// Name of the job, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub label: Option<Label>,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// How many piles of which verdict.
    pub counts: JobCounts,
    /// Depths of the tips.
    pub depths: JobDepths,
    /// The piles as a lot.
    pub lot: JobLot,
    /// The piles, in the order they were sent.
    pub piles: Vec<JobPile>,
}

/// Piles by their verdicts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct JobCounts {
    /// All piles.
    pub pile_count: usize,
    /// `accept`.
    pub accept_count: usize,
    /// `provisional`.
    pub provisional_count: usize,
    /// `continue`.
    pub continue_count: usize,
    /// `reject`.
    pub reject_count: usize,
    /// Their log could not be judged.
    pub not_evaluated_count: usize,
}

/// Depths of the tips below final grade, of the piles that could be judged. They are no lengths
/// of steel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct JobDepths {
    /// Piles that could be judged.
    pub pile_count: usize,
    /// Sum.
    pub total: Length,
    /// Mean.
    pub mean: Length,
    /// Least.
    pub least: Length,
    /// First pile with the least depth.
    pub least_pile: Label,
    /// Greatest.
    pub greatest: Length,
    /// First pile with the greatest depth.
    pub greatest_pile: Label,
}

/// One pile of a job. A member is left out where it could not be found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct JobPile {
    /// Its label, as sent.
    pub label: Label,
    /// The verdict on its log, the same as of `installation-record`; left out where its log
    /// could not be judged.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub verdict: Option<Verdict>,
    /// What decided the verdict.
    pub reasons: Vec<VerdictReason>,
    /// Why its log could not be judged; empty where it was. Pointers are those of this request.
    pub issues: Vec<Issue>,
    /// Worth knowing of this pile.
    pub warnings: Vec<Warning>,
    /// Depth of its tip below final grade.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tip_depth: Option<Length>,
    /// Torque that was to be reached.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub required_torque: Option<Torque>,
    /// Torque at its end that counts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub effective_torque: Option<Torque>,
    /// Required torque over the one that counts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_utilisation_ratio: Option<f64>,
    /// Load over the capacity that the torque stands for, the greater of both directions; left
    /// out where no load was sent and where the capacity is indicative only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub capacity_utilisation_ratio: Option<f64>,
    /// Things that can be done next; they stand in `record`.
    pub next_step_count: usize,
    /// The first of them.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub first_step: Option<NextStepKind>,
    /// Whether its record is complete; left out where no list was asked for.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub record_complete: Option<bool>,
    /// Its load tests, as sent.
    pub load_tests: Vec<JobLoadTest>,
    /// The whole result of its log, the same as of `installation-record`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub record: Option<record::Outcome>,
}
