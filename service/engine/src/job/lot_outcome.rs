//! What is said of the piles of a job as a lot. Only types: the rules stand in `lot.rs`.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use crate::quantity::Length;
use crate::source::SourceNote;
use crate::text::Label;

/// The piles as a lot.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct JobLot {
    /// Proof tests; left out where no share was asked for.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub proof_tests: Option<ProofTests>,
    /// Piles to test first: every one that is provisional by its torque, and as many more as
    /// proof tests are missing; those with the least margin of torque first.
    pub candidates: Vec<ProofTestCandidate>,
    /// Depths against those of the tested piles; left out where none was tested.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub length_tolerance: Option<LengthTolerance>,
    /// Piles that failed by their log or in a load test.
    pub failures: Vec<LotFailure>,
    /// What these ask of others; left out where they ask nothing.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub retests: Option<LotRetests>,
}

/// Proof tests of a lot.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ProofTests {
    /// Share asked for, as sent.
    pub asked_ratio: f64,
    /// Piles to be tested: the share of all piles, rounded up.
    pub required_count: usize,
    /// Piles that were tested, whatever came out.
    pub done_count: usize,
    /// Where the share comes from.
    pub source: SourceNote,
}

/// A pile to test first.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ProofTestCandidate {
    /// The pile.
    pub pile: Label,
    /// Required torque over the one that counts; left out where there is none that counts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torque_utilisation_ratio: Option<f64>,
    /// Its verdict is `provisional` for a reason that has to do with its torque.
    pub provisional_by_torque: bool,
}

/// Depths against those of the tested piles.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LengthTolerance {
    /// Difference that is allowed, as a part of the tested depth.
    pub tolerance_ratio: f64,
    /// Greatest difference among the piles that were not tested; left out where there is none.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub greatest_ratio: Option<f64>,
    /// Piles outside it, in the order of the job.
    pub outside: Vec<LengthOutside>,
    /// Where the rule comes from.
    pub source: SourceNote,
}

/// A pile whose depth differs from those of the tested ones.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LengthOutside {
    /// The pile.
    pub pile: Label,
    /// Depth of its tip.
    pub tip_depth: Length,
    /// The tested pile that it differs from least.
    pub tested_pile: Label,
    /// Depth of the tip of that one.
    pub tested_depth: Length,
    /// Difference as a part of the tested depth, without a sign.
    pub difference_ratio: f64,
}

/// A pile that failed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotFailure {
    /// The pile.
    pub pile: Label,
    /// How it failed.
    pub by: LotFailureKind,
    /// Checks of its log that failed.
    pub codes: Vec<Cow<'static, str>>,
    /// Whether it says something of the ground or the torque factor that the piles next to it
    /// rest on. A pile that stopped short or on an obstruction never reached that ground; one
    /// that is out of its place says nothing of it.
    pub concerns_others: bool,
    /// Piles that it asks to be tested or turned again, the nearest in the order of the job
    /// first.
    pub retest: Vec<Label>,
}

/// How a pile failed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LotFailureKind {
    /// Its load test failed.
    LoadTest,
    /// Its log is rejected.
    Log,
}

/// What failed piles ask of others.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotRetests {
    /// Piles that one failed pile asks for.
    pub each_count: usize,
    /// Piles asked for, each counted once.
    pub required_count: usize,
    /// Those that are done: load-tested, or, where only a log failed, turned again after a wait
    /// with enough torque.
    pub done_count: usize,
    /// Those that are open, in the order of the job.
    pub open: Vec<Label>,
    /// Where the number comes from.
    pub source: SourceNote,
}
