//! What is asked of `pile-layout`: the plan of grade beams with its loads, the design
//! basis, what a pile can carry, and where the piles stand or may stand. Types only.

mod bracing;
mod keep_outs;
mod loads;
mod outline;
mod pattern;
mod slab;
mod staking;
mod strength;
mod structure;
mod support;
mod types;
mod wishes;

pub use bracing::*;
pub use keep_outs::*;
pub use loads::*;
pub use outline::*;
pub use pattern::*;
pub use slab::*;
pub use staking::*;
pub use strength::*;
pub use structure::*;
pub use support::*;
pub use types::*;
pub use wishes::*;

use serde::{Deserialize, Serialize};
use validator::Validate;

use structure::{TWIST_MAX, TWIST_MIN};

use super::basis::{LayoutBasis, OwnCombinations};
use crate::choice::validate_choice;
use crate::quantity::{
    FlexuralRigidity, Force, ForceUnit, Length, LengthUnit, LineLoad, LineLoadUnit, Moment,
    MomentUnit, RigidityUnit, Size, SpringStiffness, SpringUnit, TorsionalRigidity,
};
use crate::text::{Label, Tags};

const FAR: Length = Length::new(1e7, LengthUnit::M);
const NEAR: Length = Length::new(-1e7, LengthUnit::M);
const LONG: Length = Length::new(1e5, LengthUnit::M);
const SPACING_MAX: Length = Length::new(100.0, LengthUnit::M);
const SPACING_MIN: Length = Length::new(0.05, LengthUnit::M);
const SNAP_MIN: Length = Length::new(0.001, LengthUnit::M);
const SNAP_MAX: Length = Length::new(10.0, LengthUnit::M);
const FORCE_MAX: Force = Force::new(10_000.0, ForceUnit::KN);
const FORCE_MIN: Force = Force::new(-10_000.0, ForceUnit::KN);
const OFF_MAX: Size = Size::new(1.0, LengthUnit::M);
const OFF_MIN: Size = Size::new(-1.0, LengthUnit::M);
const CAPACITY_MIN: Force = Force::new(0.01, ForceUnit::KN);
const LINE_MAX: LineLoad = LineLoad::new(1_000.0, LineLoadUnit::KNPerM);
const LINE_MIN: LineLoad = LineLoad::new(-1_000.0, LineLoadUnit::KNPerM);
const MOMENT_MIN: Moment = Moment::new(0.001, MomentUnit::KNM);
const MOMENT_MAX: Moment = Moment::new(1e6, MomentUnit::KNM);
const RIGIDITY_MIN: FlexuralRigidity = FlexuralRigidity::new(0.1, RigidityUnit::KNM2);
const RIGIDITY_MAX: FlexuralRigidity = FlexuralRigidity::new(1e9, RigidityUnit::KNM2);
pub(super) const STIFFNESS_MIN: SpringStiffness = SpringStiffness::new(10.0, SpringUnit::KNPerM);
pub(super) const STIFFNESS_MAX: SpringStiffness = SpringStiffness::new(1e8, SpringUnit::KNPerM);

/// Grade beams in plan with their loads, and either the piles that are to be analysed
/// or the limits within which the fewest piles are to be found.
///
/// Every reaction is that of a continuous beam (direct stiffness), in every load
/// combination. Beams that meet end to end in one straight line are continuous; at a
/// corner or a junction beams share their vertical movement only (no torsion), unless
/// `beam_torsion` says otherwise.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = PileLayoutRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Format of the safety margin and the load combinations.
    #[validate(nested)]
    pub design_basis: LayoutBasis,
    /// Grade beams by their centre lines; up to 2,000 together with the sides of outlines, at
    /// least one in all, with 20,000 points in all.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 2000))]
    pub beams: Vec<GradeBeam>,
    /// Beams by the outside form line, as builders draw it; `beams` may be empty then. Up to 200.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 200))]
    pub outlines: Option<Vec<Outline>>,
    /// Loads at single points of the beams; up to 20,000 loads in all.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 20000))]
    pub point_loads: Option<Vec<PlanPointLoad>>,
    /// Slabs that span to the beams, on void form; up to 500.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 500))]
    pub slabs: Option<Vec<StructuralSlab>>,
    /// Loads that may be absent on single spans; left out, every load acts wherever it was
    /// sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pattern_load: Option<PatternLoad>,
    /// Couples at single points of the beams; they count among the 20,000 loads. Only with
    /// given piles.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 20000))]
    pub point_moments: Option<Vec<PlanPointMoment>>,
    /// Whether beams are twisted where they meet; `released` when left out. `included` needs
    /// `flexural_rigidity` and `torsional_rigidity` on every beam and given piles.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beam_torsion: Option<BeamTorsion>,
    /// What a pile does where the beam would pull on it; `holds` when left out. `lifts_off`
    /// is for given piles; a search with a tension capacity of 0 finds piles that are never
    /// pulled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension_connection: Option<TensionConnection>,
    /// Most settlement that is accepted, under the loads of the combinations; judged on
    /// spring supports. Only with given piles.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub settlement_limit: Option<SettlementLimit>,
    /// What one pile carries. Without it nothing is judged on the piles; a search needs it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile_capacity: Option<PileCapacity>,
    /// Piles to choose from, instead of `pile_capacity`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile_types: Option<PileTypes>,
    /// Parts of the plan where piles carry something else; up to 40, none over another.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 40))]
    pub soil_zones: Option<Vec<SoilZone>>,
    /// Things that piles keep away from; up to 200, with 2,000 points of zones and
    /// keep-outs in all.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 200))]
    pub keep_outs: Option<Vec<KeepOut>>,
    /// Stiffness of one pile at its head. With it every reaction is found on rigid and on
    /// spring supports and the worse one is judged; it needs `flexural_rigidity` on every
    /// beam. 10 to 100,000,000 kN/m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = STIFFNESS_MIN, max = STIFFNESS_MAX))]
    pub pile_stiffness: Option<SpringStiffness>,
    /// Where that stiffness comes from when there is no number for it; not together with
    /// `pile_stiffness`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile_support: Option<PileSupport>,
    /// Where the piles stand, or the limits for finding them.
    #[validate(nested)]
    pub piles: PilePlacement,
    /// Compares the factored strength of sections with service loads; only with
    /// `allowable_stress`. Without it those strengths are not judged there.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub strength_check: Option<StrengthCheck>,
    /// Combinations of service loads in which deflections are judged. Left out, those of
    /// `allowable_stress` are taken; with `limit_states` nothing is judged without them.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub service_combinations: Option<OwnCombinations>,
    /// Judges whether single rows of piles may stand without lateral bracing.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub bracing: Option<SingleRowBracing>,
    /// How many reactions the answer lists. Left out: all of them up to 2,000 (piles
    /// times combinations), beyond that the governing ones.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reaction_detail: Option<ReactionDetail>,
    /// How the piles are to be set out; left out, the answer says nothing of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub staking: Option<Staking>,
}

/// A point of the plan: x east, y north.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PlanPoint {
    /// East; within 10,000 km of the origin.
    #[validate(range(min = NEAR, max = FAR))]
    pub x: Length,
    /// North; within 10,000 km of the origin.
    #[validate(range(min = NEAR, max = FAR))]
    pub y: Length,
}

/// A grade beam by its centre line.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GradeBeam {
    /// Name of the beam, no two alike; `B1`, `B2`, ... in the order given when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Centre line, at least two points. Points nearer than 3 mm are one point; a vertex
    /// nearer than 3 mm to the straight line through its neighbours is no corner. A ring
    /// ends at its first point.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 2, max_items = 200))]
    pub points: Vec<PlanPoint>,
    /// Width in plan. For drawings and for what lies within the beam; it has no part in the
    /// reactions. 10 mm to 10 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = WIDTH_MIN, max = WIDTH_MAX))]
    pub width: Option<Size>,
    /// Moves each end that stands on the form line of an outline, or in the width of one of its
    /// beams, along the beam's own axis onto the centre line of that beam; other ends stay. At
    /// least one must stand so. The answer lists the ends in `joined_ends`. Places along the
    /// beam still count from its first point as sent; loads without `from` and `to` act on the
    /// whole beam as it becomes. False when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joins_outline: Option<bool>,
    /// Openings in the wall above or in the beam itself; up to 40.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 40))]
    pub openings: Option<Vec<BeamOpening>>,
    /// Flexural rigidity E I. Needed on every beam with `pile_stiffness`, or where any
    /// beam has one; left out everywhere, all beams are alike and reactions on rigid
    /// supports do not depend on it. 0.1 to 1,000,000,000 kN m2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = RIGIDITY_MIN, max = RIGIDITY_MAX))]
    pub flexural_rigidity: Option<FlexuralRigidity>,
    /// Torsional rigidity G J, of the cracked beam: a tenth to a fifth of the uncracked one
    /// is usual. Needed on every beam where `beam_torsion` is `included`, not used
    /// otherwise. 0.001 to 1,000,000,000 kN m2.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TWIST_MIN, max = TWIST_MAX))]
    pub torsional_rigidity: Option<TorsionalRigidity>,
    /// Torsional strength, at the level of the design basis; judged where it is given.
    /// 0.001 to 1,000,000 kN m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = MOMENT_MIN, max = MOMENT_MAX))]
    pub torsion_capacity: Option<Moment>,
    /// Bending strength, at the level of the design basis; judged where it is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub moment_capacity: Option<BeamMomentCapacity>,
    /// Shear strength, at the level of the design basis; judged where it is given.
    /// 0.01 to 10,000 kN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = CAPACITY_MIN, max = FORCE_MAX))]
    pub shear_capacity: Option<Force>,
    /// Section from which strength and rigidity follow; not beside `moment_capacity` or
    /// `shear_capacity`. A `flexural_rigidity` beside it goes before that of the section.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub section: Option<BeamSection>,
    /// How far it may bend between its piles under service loads; needs `flexural_rigidity` or
    /// `section`. Bending at once, by the rigidity of the analysis: creep is not in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub deflection_limit: Option<DeflectionLimit>,
    /// Width of the wall on this beam, for `bracing`; 25 to 3,000 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = bracing::WALL_MIN, max = bracing::WALL_MAX))]
    pub wall_width: Option<Size>,
    /// Loads along the beam.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 20000))]
    pub line_loads: Option<Vec<BeamLineLoad>>,
}

/// Bending strength of a beam.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BeamMomentCapacity {
    /// With tension at the bottom; 0.001 to 1,000,000 kN m.
    #[validate(range(min = MOMENT_MIN, max = MOMENT_MAX))]
    pub sagging: Moment,
    /// With tension at the top; 0.001 to 1,000,000 kN m.
    #[validate(range(min = MOMENT_MIN, max = MOMENT_MAX))]
    pub hogging: Moment,
}

/// What one pile carries.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileCapacity {
    /// Whether these are allowable capacities (with `allowable_stress`) or factored
    /// resistances (with `limit_states`); the two are never mixed.
    pub level: CapacityLevel,
    /// In compression; 0.01 to 10,000 kN.
    #[validate(range(min = CAPACITY_MIN, max = FORCE_MAX))]
    pub compression: Force,
    /// In tension; 0 to 10,000 kN.
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub tension: Force,
}

/// Level of a capacity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CapacityLevel {
    /// Ultimate divided by a safety factor.
    Allowable,
    /// Ultimate times a resistance factor.
    Factored,
}

/// Where the piles stand, or the limits for finding them.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PilePlacement {
    /// Analyse piles at these places.
    Given(GivenPiles),
    /// Find the fewest piles.
    Search(PileSearch),
}

validate_choice!(PilePlacement { Given = "given", Search = "search" });

/// Piles at places that are fixed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenPiles {
    /// The piles; 1 to 10,000.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 10000))]
    pub positions: Vec<GivenPile>,
    /// Greatest distance between neighbouring piles along a beam; judged where it is
    /// given. 0.05 to 100 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SPACING_MIN, max = SPACING_MAX))]
    pub max_spacing: Option<Length>,
    /// Least distance between any two piles; judged where it is given. 0.05 to 100 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SPACING_MIN, max = SPACING_MAX))]
    pub min_spacing: Option<Length>,
    /// Diameter of the largest helix of these piles: with it any two stand at least three
    /// diameters apart, centre to centre. Piles of a type with a helix have that one. 50
    /// to 3,000 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = HELIX_MIN, max = HELIX_MAX))]
    pub largest_helix: Option<Size>,
}

/// A pile at a place that is fixed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenPile {
    /// Name of the pile, no two alike; `P1`, `P2`, ... in the order given when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Where it stands; within 3 mm of a beam's centre line.
    #[validate(nested)]
    pub at: PlanPoint,
    /// How far its centre stands off the centre line of the beam beside `at`, to either side; the
    /// analysis leaves it on the line and tells the moment this makes. -1 to 1 m, 0 when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = OFF_MIN, max = OFF_MAX))]
    pub off_line: Option<Size>,
    /// Its type, a label of `pile_types`. Left out, it takes the first type in the order of
    /// preference that carries it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile_type: Option<Label>,
    /// Its own capacity in compression, at the level of `pile_capacity` or `pile_types`;
    /// goes before that of its type and zone. 0 to 10,000 kN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub compression: Option<Force>,
    /// Its own capacity in tension, at the level of `pile_capacity` or `pile_types`; goes
    /// before that of its type and zone. 0 to 10,000 kN.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub tension: Option<Force>,
    /// Its own stiffness; 10 to 100,000,000 kN/m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = STIFFNESS_MIN, max = STIFFNESS_MAX))]
    pub stiffness: Option<SpringStiffness>,
    /// It stands on rock and does not move while the other piles are springs; it has no
    /// stiffness then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub founded_on_rock: Option<bool>,
}

/// Limits for finding the fewest piles. A pile stands at every corner and junction unless
/// `junction_piles` says otherwise or none may stand there, at every forced point, and at
/// every beam end unless `max_overhang` is given or a keep-out or a forbidden stretch is
/// there.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PileSearch {
    /// Greatest distance between neighbouring piles along a beam; 0.05 to 100 m.
    #[validate(range(min = SPACING_MIN, max = SPACING_MAX))]
    pub max_spacing: Length,
    /// Least distance between any two piles; 0.05 to 100 m. It may be left out where
    /// `largest_helix` is given here or by a type of pile; the greater one counts.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SPACING_MIN, max = SPACING_MAX))]
    pub min_spacing: Option<Length>,
    /// Diameter of the largest helix: with it any two piles stand at least three diameters
    /// apart, centre to centre. 50 to 3,000 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = HELIX_MIN, max = HELIX_MAX))]
    pub largest_helix: Option<Size>,
    /// Staking increment: free positions are whole multiples of it along each straight run
    /// of beam, counted from the run's western (if it runs north, southern) end. 1 mm to
    /// 10 m.
    #[validate(range(min = SNAP_MIN, max = SNAP_MAX))]
    pub snap: Length,
    /// Further points where a pile must stand; within 3 mm of a beam's centre line.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 10000))]
    pub forced: Option<Vec<PlanPoint>>,
    /// Stretches of beams where no pile may stand, such as under a door; up to 1,000.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 1000))]
    pub forbidden: Option<Vec<ForbiddenStretch>>,
    /// Lets a free beam end stand beyond its last pile by at most this much; left out,
    /// every beam end has a pile. 0 to 100 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = SPACING_MAX))]
    pub max_overhang: Option<Length>,
    /// Whether a pile stands wherever beams meet; `required` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub junction_piles: Option<JunctionPiles>,
    /// A wish for a layout that is its own mirror image.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub symmetry: Option<SymmetryWish>,
    /// What is to be least; `fewest_piles` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub objective: Option<SearchObjective>,
}

/// How many reactions the answer lists, and in which form.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ReactionDetail {
    /// One table of numbers for all piles instead of a row of members for each: where they
    /// stand, what they are judged by and how far they settle. A fraction of the bytes.
    Table,
    /// The greatest and the least of each pile.
    Governing,
    /// Every combination of every pile; up to 20,000 reactions.
    All,
}
