//! The ways out and the places where a pile may go. Types only.

use serde::{Deserialize, Serialize};

use super::{GoverningCheck, ReinforcementNote};
use crate::contract::Verdict;
use crate::layout::{self, BeamMomentCapacity, PileCost, PlanPoint};
use crate::quantity::{Again, Force, Length, Moment, Shown, Size};
use crate::relocation::request::RelocationEvent;

/// Ways out for one pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WaysOutReport {
    /// The pile.
    pub pile: String,
    /// Where it was drawn, from where places are counted.
    pub drawn_at: PlanPoint,
    /// Whether it still stands as a support while a way out is sought.
    pub stands: bool,
    /// Places along its beams where it, or one in its stead, may stand with nothing failing.
    pub may_stand: Vec<FeasibleStretch>,
    /// The ways out, best first: those where nothing fails, those accepted, the cheapest where
    /// each has a cost, the fewest piles more, the fewest changes, the lowest utilisation, the
    /// least movement.
    pub options: Vec<WayOut>,
    /// Ways out where nothing fails.
    pub feasible_count: u32,
    /// Kinds of way out that were tried, and what became of each.
    pub tried: Vec<TriedKind>,
    /// Where nothing works: the limits that could be relaxed, each alone, the smallest first. Where
    /// none alone would do, the limit that the nearest way out misses most, with all it fails.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub relax: Option<Vec<LimitToRelax>>,
    /// Analyses that were done.
    pub work_count: u64,
    /// Analyses after which the search stops.
    pub work_limit_count: u64,
    /// Whether every place within the limits was looked at.
    pub complete: bool,
}

/// A kind of way out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum WayOutKind {
    /// Nothing more is done: the pile is left as it is, or left out.
    LeaveOut,
    /// It, or one in its stead, stands elsewhere along a beam.
    ShiftAlong,
    /// It, or one in its stead, stands beside the line.
    ShiftOff,
    /// Two piles stand in its stead, one on either side.
    StraddlingPair,
    /// Other piles are larger.
    LargerPiles,
    /// A further pile stands beside it.
    ExtraPile,
    /// Beams are stronger.
    StrongerBeam,
}

/// What became of one kind of way out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct TriedKind {
    /// The kind.
    pub kind: WayOutKind,
    /// Places or sets that were looked at.
    pub tried_count: u32,
    /// Those where nothing fails.
    pub feasible_count: u32,
    /// Why nothing of the kind is offered.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub reason: Option<String>,
}

/// Places along a beam, next to each other on the grid, where nothing fails; each was analysed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FeasibleStretch {
    /// The beam.
    pub beam: String,
    /// Its first place, along the beam from its first point.
    pub from: Length,
    /// Its last place.
    pub to: Length,
    /// The first place in plan.
    pub from_point: PlanPoint,
    /// The last place in plan.
    pub to_point: PlanPoint,
    /// Highest utilisation of piles and beams with the pile at the first place.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub from_utilisation_ratio: Option<f64>,
    /// The same at the last place.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub to_utilisation_ratio: Option<f64>,
}

/// Places beside the line, next to each other on the grid, where nothing fails.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FeasibleOffset {
    /// The beam off whose line it stands.
    pub beam: String,
    /// Its least offset, positive to the left of the beam.
    pub from: Size,
    /// Its greatest offset.
    pub to: Size,
}

/// A way out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct WayOut {
    /// Its place in the order, from 1.
    pub rank: u32,
    /// Its kind.
    pub kind: WayOutKind,
    /// Whether nothing fails.
    pub feasible: bool,
    /// What this answer would say with it.
    pub verdict: Verdict,
    /// Events that bring it about; send them with `layout` as it now stands.
    #[cfg_attr(feature = "openapi", schema(value_type = Vec<RelocationEvent>))]
    pub events: Again<Vec<RelocationEvent>>,
    /// Stretches in which the pile may stand: those of the place taken first. For two piles the
    /// range of each within pairs that do.
    pub stretches: Vec<FeasibleStretch>,
    /// Ranges of the offset; only with `shift_off`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub offsets: Option<Vec<FeasibleOffset>>,
    /// Highest utilisation of any pile; left out without capacities.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pile_utilisation_ratio: Option<f64>,
    /// Highest utilisation of any beam in bending, shear or torsion; left out where none was
    /// judged.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub beam_utilisation_ratio: Option<f64>,
    /// The higher of both; options are ranked by it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_ratio: Option<f64>,
    /// Checks that fail.
    pub failed: Vec<GoverningCheck>,
    /// Checks that could not be judged and hold the verdict back.
    pub open: Vec<GoverningCheck>,
    /// Piles in the ground beyond those of now; one in the stead of a lost one counts.
    pub extra_pile_count: u32,
    /// Piles that are larger.
    pub larger_pile_count: u32,
    /// Changes in all.
    pub change_count: u32,
    /// Farthest distance of a pile from where it was drawn.
    pub movement: Length,
    /// What it costs by the prices sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cost: Option<PileCost>,
    /// What the beams have to carry; only with `stronger_beam`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub needed_strengths: Option<Vec<NeededStrength>>,
    /// Piles that change most by it.
    pub neighbours: Vec<NeighbourLoad>,
    /// Where it moves the support of beams from the plan as it was drawn, and what that asks of
    /// their bars.
    pub reinforcement: Vec<ReinforcementNote>,
    /// The whole plan with it; only with `option_detail` as `full`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    #[cfg_attr(feature = "openapi", schema(value_type = Option<layout::Request>))]
    pub layout: Option<Again<layout::Request>>,
    /// What `pile-layout` answers to it; only with `option_detail` as `full`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub result: Option<layout::Outcome>,
}

/// A pile whose load a way out changes, from the plan as it was drawn.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NeighbourLoad {
    /// Its label.
    pub pile: String,
    /// Greatest compression as drawn; left out where it was not there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub before: Option<Force>,
    /// Greatest compression with the way out.
    pub after: Force,
    /// Its utilisation with the way out.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_ratio: Option<f64>,
}

/// What a beam has to carry.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NeededStrength {
    /// The beam.
    pub beam: String,
    /// Bending strength; only where what was sent does not do.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub moment_capacity: Option<BeamMomentCapacity>,
    /// Shear strength; only where what was sent does not do.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub shear_capacity: Option<Force>,
    /// Torsional strength; only where what was sent does not do.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torsion_capacity: Option<Moment>,
}

/// A limit that could be relaxed where nothing works.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LimitToRelax {
    /// The limit: the check that fails, or the member of `ways_out` that bounds the search.
    pub limit: String,
    /// What it is about.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub subject: Option<String>,
    /// The limit as it is.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub from: Option<Shown>,
    /// What it would have to be.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub to: Option<Shown>,
    /// By how much of itself it is missed; left out where it is nil.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub excess_ratio: Option<f64>,
    /// The way out that it would allow.
    pub option: WayOut,
}
