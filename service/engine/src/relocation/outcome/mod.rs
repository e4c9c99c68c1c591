//! What `pile-relocation` answers: the plan as it now stands, what changed from before to after,
//! and the ways out. Types only.

mod changes;
mod ways;

pub use changes::*;
pub use ways::*;

use serde::{Deserialize, Serialize};

use crate::contract::{Subject, Verdict};
use crate::layout;
use crate::quantity::Again;

/// The plan before and after the events.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = PileRelocationOutcome))]
pub struct Outcome {
    /// The plan as it now stands, ready to be sent to `pile-layout`, or here with the next events.
    /// Every pile has its label. Its numbers read back as the same numbers, to the last bit, so
    /// that it has the same answer; some have more digits than those of the rest of an answer.
    #[cfg_attr(feature = "openapi", schema(value_type = layout::Request))]
    pub layout: Again<layout::Request>,
    /// The plan before the events, as `pile-layout` judges it.
    pub before: LayoutState,
    /// The plan after the events, as `pile-layout` judges it: without the rules for piles that
    /// are not where they were drawn. Left out where beams no longer stand.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub after: Option<LayoutState>,
    /// Every pile of before and after, in the order of the plan; added ones at the end.
    pub piles: Vec<RelocatedPile>,
    /// Every beam before and after.
    pub beams: Vec<RelocatedBeam>,
    /// Piles that were moved or stand off their line by an event.
    pub moved: Vec<MovedPile>,
    /// Corners that lost their pile and are carried by the piles next to them.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub bridged_corners: Option<Vec<BridgedCorner>>,
    /// Where the support of beams moved, and what it asks of their bars.
    pub reinforcement: Vec<ReinforcementNote>,
    /// Ways out for one pile; only with `ways_out`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub ways_out: Option<WaysOutReport>,
    /// What `pile-layout` answers to `layout`. Left out where beams no longer stand.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub result: Option<layout::Outcome>,
}

/// How `pile-layout` judges a plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LayoutState {
    /// Its verdict.
    pub verdict: Verdict,
    /// Number of piles.
    pub pile_count: u32,
    /// Checks that failed.
    pub failed_count: u32,
    /// Highest utilisation of any pile; left out without capacities or where a pile has none for
    /// its load.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub max_utilisation_ratio: Option<f64>,
    /// Highest utilisation of any beam in bending, shear or torsion; left out where none was
    /// judged or one has nothing to bear with.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub max_beam_utilisation_ratio: Option<f64>,
    /// The check with the highest utilisation; left out where nothing was judged.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub governing: Option<GoverningCheck>,
}

/// One check in short.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GoverningCheck {
    /// Name of the check.
    pub check: String,
    /// What it is about.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub subject: Option<Subject>,
    /// The load combination, where it matters.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub combination: Option<String>,
    /// Demand over capacity; left out where the capacity is nil.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_ratio: Option<f64>,
    /// Id of the source of the rule.
    pub source: String,
}
