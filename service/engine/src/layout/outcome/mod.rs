//! What `pile-layout` answers: piles with their reactions, beams with their extremes,
//! combinations with their totals, and what a search can claim. Types only.

mod claims;
mod outline;
mod pattern;
mod pile_table;
mod slab;
mod staking;
mod strength;
mod structure;
mod support;

pub use claims::*;
pub use outline::*;
pub use pattern::*;
pub use pile_table::*;
pub use slab::*;
pub use staking::*;
pub use strength::*;
pub use structure::*;
pub use support::*;

use serde::{Deserialize, Serialize};

mod types;

pub use types::*;

use compact_str::CompactString;

use super::request::{LoadKind, PlanPoint};
use crate::concrete::SectionStrength;
use crate::quantity::{Force, Length, Moment, Size};
use crate::text::Tags;

/// Piles, beams and load combinations of a plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = PileLayoutOutcome))]
pub struct Outcome {
    /// Number of piles.
    pub pile_count: u32,
    /// Highest utilisation of any pile in compression or tension; left out without
    /// capacities or where a pile has none for its load.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub max_utilisation_ratio: Option<f64>,
    /// Relative closure of forces and of moments about both plan axes, before rounding:
    /// the largest over straight runs, the plan, combinations and support models.
    pub statics_residual_ratio: f64,
    /// Support models that were analysed; the worse one is judged.
    pub supports: Vec<SupportModel>,
    /// The piles: as given, or from a search along the beams. Empty with `reaction_detail:
    /// table`.
    #[cfg_attr(feature = "openapi", schema(value_type = Vec<LayoutPile>))]
    pub piles: PileRows,
    /// The piles as a table, in the same order; only with `reaction_detail: table`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pile_table: Option<PileTable>,
    /// The beams, in the order of the request; after them those of outlines, side by side.
    pub beams: Vec<LayoutBeam>,
    /// The outside form lines and what became of them; only with `outlines`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub outlines: Option<Vec<LayoutOutline>>,
    /// Ends of beams that were moved onto a centre line; only with `joins_outline`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub joined_ends: Option<Vec<JoinedEnd>>,
    /// The combinations that act, each with its totals.
    pub combinations: Vec<LayoutCombination>,
    /// Distances between piles.
    pub spacing: SpacingSummary,
    /// How many piles there are of every type; only with `pile_types`, in their order.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub type_counts: Option<Vec<PileTypeCount>>,
    /// What all piles cost; only where types have costs.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub total_cost: Option<PileCost>,
    /// Slabs and what they bring to the beams; only with `slabs`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub slabs: Option<Vec<LayoutSlab>>,
    /// How loads were left out span by span; only with `pattern_load`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pattern: Option<PatternReport>,
    /// The stiffness of a pile and where it comes from; only with `pile_support`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pile_support: Option<PileSupportReport>,
    /// Piles from which the beam lifts off; only with `lifts_off`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub lift_off: Option<Vec<LiftedPile>>,
    /// The greatest settlement of a pile; only with spring supports.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub total_settlement: Option<TotalSettlement>,
    /// Where the settlement differs most along a beam; only with spring supports.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub differential_settlement: Option<DifferentialSettlement>,
    /// What the search can claim; only with `search`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub search: Option<SearchReport>,
    /// The piles for setting out; only with `staking`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub staking: Option<StakingOutcome>,
}

/// How piles were modelled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SupportModel {
    /// Piles that do not move.
    Rigid,
    /// Piles as springs.
    Spring,
}

/// Why a pile stands where it does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PlacedBy {
    /// Given by the caller.
    Given,
    /// At a point the caller forced.
    ForcedPoint,
    /// At the end of a beam.
    BeamEnd,
    /// At a corner.
    Corner,
    /// Where beams meet or cross.
    Junction,
    /// Found by the search.
    Search,
}

/// One pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LayoutPile {
    /// Name: the caller's, `P1`, `P2`, ..., or from a search the label of its beam and a
    /// number (the first beam in order of labels has the piles at shared points; plain
    /// `P1`, `P2`, ... where a beam has no label).
    pub label: String,
    /// Codes as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Where it stands.
    pub at: PlanPoint,
    /// Why it stands there.
    pub placed_by: PlacedBy,
    /// Its type; only with `pile_types`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pile_type: Option<String>,
    /// The soil zones in which it stands, on whose border too.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub soil_zones: Option<Vec<String>>,
    /// Greatest compression over all combinations and support models, with `pattern_load` with
    /// the worst spans loaded; 0 if there is none.
    pub compression: PileDemand,
    /// Greatest tension over all combinations and support models, with `pattern_load` with the
    /// worst spans loaded; 0 if there is none.
    pub tension: PileDemand,
    /// The higher utilisation of compression and tension; left out without capacities or
    /// where there is no capacity for a demand.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_ratio: Option<f64>,
    /// Reactions on rigid supports, positive in compression.
    pub rigid: ReactionRange,
    /// Reactions on spring supports, positive in compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub spring: Option<ReactionRange>,
    /// Greatest settlement on spring supports; negative where the pile only rises.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub settlement: Option<Size>,
    /// Reaction by tributary lengths (each span as a simple beam, an overhang to its last
    /// pile) in the combination of `rigid.max`, for comparison only; left out where beams
    /// rest on each other in a way that has no tributary answer.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tributary: Option<Force>,
    /// Reactions with the worst spans loaded; only with `pattern_load`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pattern: Option<PilePattern>,
    /// Shares of `rigid.max` by beam.
    pub by_beam: Vec<BeamShare>,
    /// Reaction in every combination; see `reaction_detail`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub reactions: Option<Vec<PileReaction>>,
}

/// The load a pile is judged by.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileDemand {
    /// The load, never negative.
    pub demand: Force,
    /// The combination that governs.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
    /// The support model that governs.
    pub supports: SupportModel,
    /// Whether it needs some spans without load; only with `pattern_load`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pattern_governs: Option<bool>,
}

/// Greatest and least reaction, positive in compression.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ReactionRange {
    /// Greatest reaction.
    pub max: Force,
    /// Its combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub max_combination: CompactString,
    /// Least reaction; negative is tension.
    pub min: Force,
    /// Its combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub min_combination: CompactString,
}

/// What one beam brings to a pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BeamShare {
    /// Label of the beam.
    pub beam: String,
    /// Its share, positive in compression.
    pub reaction: Force,
}

/// Reaction of a pile in one combination, positive in compression.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileReaction {
    /// The combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
    /// On rigid supports.
    pub rigid: Force,
    /// On spring supports.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub spring: Option<Force>,
}

/// One beam with the extremes over all combinations and support models, with `pattern_load`
/// with the worst spans loaded.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LayoutBeam {
    /// Its label.
    pub label: String,
    /// Codes as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Its centre line.
    pub points: Vec<PlanPoint>,
    /// Its length, openings without a beam included.
    pub length: Length,
    /// Its width, where it is known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub width: Option<Size>,
    /// Its edges in plan, part by part; only where its width is known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub edges: Option<Vec<BeamEdges>>,
    /// Greatest moment with tension at the bottom; 0 if there is none.
    pub sagging: MomentExtreme,
    /// Greatest moment with tension at the top, as a positive number; 0 if there is none.
    pub hogging: MomentExtreme,
    /// Greatest shear, as a positive number.
    pub shear: ShearExtreme,
    /// Strength of its section, at the level of factored loads; only with `section`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub strength: Option<SectionStrength>,
    /// Its deflection; only with `deflection_limit` and where service combinations are known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub deflection: Option<BeamDeflection>,
    /// Greatest torque, as a positive number; only where torsion is included.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub torsion: Option<TorsionExtreme>,
}

/// A moment with its place and combination.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MomentExtreme {
    /// The moment, never negative.
    pub moment: Moment,
    /// Where it acts.
    pub at: PlanPoint,
    /// The combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
    /// The support model.
    pub supports: SupportModel,
    /// Whether it needs some spans without load; only with `pattern_load`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pattern_governs: Option<bool>,
}

/// A shear with its place and combination.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ShearExtreme {
    /// The shear, never negative.
    pub shear: Force,
    /// Where it acts.
    pub at: PlanPoint,
    /// The combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
    /// The support model.
    pub supports: SupportModel,
    /// Whether it needs some spans without load; only with `pattern_load`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pattern_governs: Option<bool>,
}

/// A combination with its totals.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LayoutCombination {
    /// Its name.
    pub name: String,
    /// Factors on the loads that are there.
    pub factors: Vec<CombinationFactor>,
    /// Sum of all loads, positive downwards.
    pub total_load: Force,
    /// Sum of all reactions on rigid supports.
    pub total_reaction: Force,
}

/// A factor in a combination.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CombinationFactor {
    /// Kind of load.
    pub kind: LoadKind,
    /// Case of that kind.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub case: Option<String>,
    /// The factor.
    pub factor: f64,
}

/// Distances between piles.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SpacingSummary {
    /// Greatest distance between neighbouring piles along a straight run of beam.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub longest_span: Option<PilePair>,
    /// The two piles nearest to each other in plan.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub nearest_piles: Option<PilePair>,
    /// Longest part of a beam beyond its last pile.
    pub longest_overhang: Length,
}

/// Two piles and their distance.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PilePair {
    /// The distance.
    pub distance: Length,
    /// Label of one pile.
    pub from: String,
    /// Label of the other.
    pub to: String,
}

/// What a search can claim about the number of piles.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SearchReport {
    /// Whether the piles found meet every limit.
    pub feasible: bool,
    /// Whether it is proven that fewer piles cannot do; with `least_cost`, that no layout
    /// costs less.
    pub proven_minimal: bool,
    /// How it is proven, or why it is not.
    pub how: Vec<ProofStep>,
    /// No layout within the limits has fewer piles than this.
    pub lower_bound_count: u32,
    /// Piles found less the lower bound; 0 where what was found does not keep the limits.
    pub gap_count: u32,
    /// What can be claimed of the cost; only with `least_cost`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cost: Option<CostReport>,
    /// Counted steps of work that were spent.
    pub work_count: u64,
    /// Counted steps of work after which the search stops improving.
    pub work_limit_count: u64,
    /// Whether, for every straight run, all layouts of that count were searched for the
    /// lowest utilisation.
    pub utilisation_searched_exhaustively: bool,
    /// Corners and junctions where beams meet without a pile.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub without_pile: Option<Vec<PlanPoint>>,
    /// Whether the layout is its own mirror image; only with `symmetry`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub symmetry: Option<SymmetryReport>,
    /// Why no layout keeps the limits, and what would have to give.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub infeasible: Option<Infeasible>,
}

/// One argument of the proof, for one straight run of beam or the whole plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ProofStep {
    /// The argument.
    pub by: ProofKind,
    /// Labels of the beams of the run; empty for the whole plan.
    pub beams: Vec<String>,
    /// Piles on the run, or on the plan.
    pub pile_count: u32,
    /// Fewest piles that this argument leaves possible.
    pub lower_bound_count: u32,
    /// In words.
    pub detail: String,
}

/// Kinds of argument.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ProofKind {
    /// Fewer piles cannot be placed within the greatest spacing.
    SpacingBound,
    /// Fewer piles cannot carry the total load.
    LoadBound,
    /// Every layout with fewer piles was tried; each breaks a limit.
    Enumeration,
    /// With fewer piles on the runs that meet at a shared pile, that pile carries too much
    /// however the runs are laid out; every layout was tried.
    SharedPile,
    /// Every layout of the run that could cost less was tried or ruled out by what its loads
    /// cost at least.
    CostEnumeration,
    /// The work limit ended the search before all layouts with fewer piles were tried.
    WorkLimit,
    /// More piles than the bounds ask for were needed to satisfy limits that tie several
    /// runs together; it is not proven that they cannot be met with fewer.
    WholePlan,
}
