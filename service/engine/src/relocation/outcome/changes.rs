//! What changed from before to after: piles, beams, places of support. Types only.

use serde::{Deserialize, Serialize};

use crate::layout::PlanPoint;
use crate::quantity::{Force, Length, Moment, RotationalStiffness, Size};

/// What became of a pile.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PileFate {
    /// No event is about it.
    Unchanged,
    /// It stands elsewhere.
    Moved,
    /// It stopped short and carries what is left.
    Residual,
    /// It stopped short and carries nothing.
    Lost,
    /// Another pile stands at its place.
    Replaced,
    /// It was left out.
    Omitted,
    /// It was not drawn.
    Added,
}

/// One pile before and after.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RelocatedPile {
    /// Its label.
    pub label: String,
    /// What became of it.
    pub fate: PileFate,
    /// Number of the event that is about it, counted from 0.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub event_index: Option<u32>,
    /// Where it stood; left out where it was not there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub at_before: Option<PlanPoint>,
    /// Where it stands, on the line of its beam; left out where it is not there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub at: Option<PlanPoint>,
    /// How far off the line it stands; only where it does.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub off_line: Option<Size>,
    /// Greatest compression.
    pub compression: ForceChange,
    /// Greatest tension.
    pub tension: ForceChange,
    /// The higher utilisation of compression and tension before; left out without capacities.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_before_ratio: Option<f64>,
    /// The same after.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_after_ratio: Option<f64>,
    /// Greatest reaction on rigid supports of the continuous beam.
    pub rigid: ForceChange,
    /// Greatest reaction on spring supports; only where they were analysed.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub spring: Option<ForceChange>,
    /// Greatest reaction by tributary lengths; for comparison only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tributary: Option<ForceChange>,
}

/// A force before and after.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ForceChange {
    /// Before; left out where there was none to tell.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub before: Option<Force>,
    /// After; left out where there is none to tell.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub after: Option<Force>,
    /// After over before less 1; left out where one of both is missing or nil.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub change_ratio: Option<f64>,
}

/// One beam before and after.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RelocatedBeam {
    /// Its label.
    pub label: String,
    /// Greatest moment with tension at the bottom.
    pub sagging: MomentChange,
    /// Greatest moment with tension at the top.
    pub hogging: MomentChange,
    /// Greatest shear.
    pub shear: ForceChange,
    /// Longest distance between neighbouring piles, a free end counted twice, before.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub span_before: Option<Length>,
    /// The same after.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub span_after: Option<Length>,
    /// Whether bending and shear strength of the beam are known.
    pub strength_known: bool,
}

/// A moment before and after, with its places.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MomentChange {
    /// Before.
    pub before: Moment,
    /// After; left out where beams no longer stand.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub after: Option<Moment>,
    /// After over before less 1; left out where one of both is missing or nil.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub change_ratio: Option<f64>,
    /// Where it acted.
    pub at_before: PlanPoint,
    /// Where it acts.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub at: Option<PlanPoint>,
}

/// A pile that was moved or stands off its line by an event.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MovedPile {
    /// Its label.
    pub label: String,
    /// Number of the event, counted from 0.
    pub event_index: u32,
    /// The beam along which it moved.
    pub beam: String,
    /// How far along it, positive away from the beam's first point.
    pub along: Length,
    /// How far off the line its centre stands, positive to the left of the beam.
    pub off_line: Size,
    /// Where its centre is.
    pub centre: PlanPoint,
    /// Distances to the next piles along its beams before.
    pub spans_before: Vec<SpanToPile>,
    /// The same after.
    pub spans_after: Vec<SpanToPile>,
    /// The moment about the beam's axis; only off the line.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub eccentricity: Option<EccentricMoment>,
    /// Distance from the edge of its plate to the form, negative outside; only with `head` and
    /// where the width of the beam is known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub plate_to_form: Option<Size>,
}

/// A pile next to another along a beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SpanToPile {
    /// The beam.
    pub beam: String,
    /// Label of the next pile; left out for the end of the beam.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub to: Option<String>,
    /// How far.
    pub distance: Length,
}

/// The moment of a pile off its line, and who takes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct EccentricMoment {
    /// Greatest compression of the pile times its distance off the line. This is judged.
    pub by_reaction: Moment,
    /// The same with the load by tributary lengths; for comparison only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub by_tributary: Option<Moment>,
    /// Stiffness of the head of the pile; only with `eccentricity`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pile_stiffness: Option<RotationalStiffness>,
    /// Stiffness of the beam in torsion up to the next piles; only with `eccentricity` and where
    /// its torsional rigidity is known.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub beam_stiffness: Option<RotationalStiffness>,
    /// What the pile takes.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pile_moment: Option<Moment>,
    /// Greatest torque of the beam beside the pile.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub beam_torque: Option<Moment>,
}

/// A corner or junction at the ends of beams that lost its pile: one question, three statics. The plan is
/// judged with the tips joined.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BridgedCorner {
    /// Where it is.
    pub at: PlanPoint,
    /// Its beams, each with the piles next to the corner.
    pub beams: Vec<BridgedBeam>,
}

/// A beam that ends at a corner without a pile. All reactions are the greatest ones over the
/// combinations, on rigid supports.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BridgedBeam {
    /// Its label.
    pub beam: String,
    /// The pile next to the corner.
    pub pile: String,
    /// The one after it; left out where there is none.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub next_pile: Option<String>,
    /// Length beyond the pile.
    pub overhang: Length,
    /// Moment over the pile of the loads beyond it alone, as a positive number where the top is
    /// in tension; left out where couples act there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cantilever_moment: Option<Moment>,
    /// Reaction of the pile with a hinge over the next one and the tips apart.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub hinge: Option<Force>,
    /// Reaction of the pile with the beam continuous and the tips apart; left out where other
    /// beams hand load on to it without a pile there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub continuous: Option<Force>,
    /// That of the next pile then.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub next_continuous: Option<Force>,
    /// The pile along this straight run that carries most then.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub most_loaded_pile: Option<String>,
    /// Its reaction then.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub most_loaded_continuous: Option<Force>,
    /// Reaction of the pile with the tips joined, without torsion unless it is included.
    pub joined: Force,
    /// That of the next pile then.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub next_joined: Option<Force>,
}

/// Where the bars of a beam are asked for something else than before.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ReinforcementPlace {
    /// A support that was not there: bars at the top over it, and no lap of them is here.
    TopOverNewSupport,
    /// A support that is gone: bars at the bottom run through, and no lap of them is here.
    BottomAtOldSupport,
    /// Between two piles in the stead of one: bars at the bottom.
    BottomBetweenPair,
}

/// A place where the bars of a beam are asked for something else than before.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ReinforcementNote {
    /// What is asked.
    pub place: ReinforcementPlace,
    /// The beam.
    pub beam: String,
    /// Where.
    pub at: PlanPoint,
    /// The pile there, now or before.
    pub pile: String,
    /// Greatest moment with tension at the bottom there before; 0 if there was none.
    pub sagging_before: Moment,
    /// The same after.
    pub sagging_after: Moment,
    /// Greatest moment with tension at the top there before, as a positive number.
    pub hogging_before: Moment,
    /// The same after.
    pub hogging_after: Moment,
}
