//! What `helix-capacity` answers.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::findings::{
    DepthCurveFindings, ExpectedTorqueFindings, HelixSetsFindings, MinimumDepthFindings,
};
use super::group::GroupFindings;
use super::methods::HelixMethods;
use super::movement::HeadMovementFindings;
use super::pile::AxialDirection;
use super::reliability::ReliabilityOutcome;
use crate::quantity::{Area, Force, Length, Size, SoilStress};
use crate::soil::DerivedStrength;
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// Capacity of the pile, direction by direction.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = HelixCapacityOutcome))]
pub struct Outcome {
    /// Name of the pile, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub label: Option<Label>,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Resistance to being pushed down, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<AxialResistance>,
    /// Resistance to being pulled up, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<AxialResistance>,
    /// Factors in force, with their sources; empty without a design basis.
    pub factors: Vec<HelixFactor>,
    /// Every ultimate compression load the code takes the least of, and whether it was
    /// considered.
    pub ultimates: Vec<UltimateItem>,
    /// Capacities over depth, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub depth_curve: Option<DepthCurveFindings>,
    /// The least depth, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub minimum_depth: Option<MinimumDepthFindings>,
    /// The sets of helices, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub helix_sets: Option<HelixSetsFindings>,
    /// The torque to expect at the depth of the pile as sent, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub expected_torque: Option<ExpectedTorqueFindings>,
    /// Strengths that were found from tests, stress history or an index, from the top down.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub derived_strengths: Vec<DerivedStrength>,
    /// Indicative estimate of reliability, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub reliability: Option<ReliabilityOutcome>,
    /// The group of piles, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub group: Option<GroupFindings>,
    /// Movement of the head of the pile under load, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub head_movement: Option<HeadMovementFindings>,
    /// Every choice of method in force, defaults filled in.
    pub methods: HelixMethods,
    /// What these capacities leave out.
    pub not_included: Vec<Cow<'static, str>>,
}

/// Resistance of the pile in one direction.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct AxialResistance {
    /// Direction of the load.
    pub direction: AxialDirection,
    /// Ultimate resistance of the soil: the lesser of the modes, plus shaft adhesion where
    /// it is counted.
    pub ultimate: Force,
    /// The same with the bearing of each helix held at what weaker soil below it takes,
    /// where that is less; compression only. The check `helix_punching` counts this.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub ultimate_by_punching: Option<Force>,
    /// The mode that gives the least.
    pub governing_mode: GoverningMode,
    /// Capacity on the design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design: Option<DesignCapacity>,
    /// Each helix bearing for itself.
    pub individual_bearing: IndividualBearing,
    /// The outermost helix in the direction of the load bearing, and the cylinder of soil
    /// between the helices shearing; left out with fewer than two helices in credit.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cylindrical_shear: Option<CylindricalShear>,
    /// Shallow or deep, by the top helix in credit; tension only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub embedment: Option<Embedment>,
    /// Adhesion on the shaft above the top helix, as counted in `ultimate`.
    pub shaft_adhesion: Force,
}

/// Modes of failure of the soil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum GoverningMode {
    /// Each helix bears for itself.
    IndividualBearing,
    /// One helix bears and the soil between the helices shears as a cylinder.
    CylindricalShear,
}

impl GoverningMode {
    /// Name on the wire.
    pub const fn name(self) -> &'static str {
        match self {
            GoverningMode::IndividualBearing => "individual_bearing",
            GoverningMode::CylindricalShear => "cylindrical_shear",
        }
    }
}

/// Capacity that may be used.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DesignCapacity {
    /// Allowable load or factored resistance.
    pub kind: DesignCapacityKind,
    /// The ultimate it is taken from: the bearing of the soil, or less where the request
    /// sent a smaller one; the least measured one where load tests stand in its place.
    pub from_ultimate: Force,
    /// The capacity; the least of `combinations` where there are several.
    pub capacity: Force,
    /// Characteristic resistance, by EN 1997-1.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub characteristic: Option<Force>,
    /// Capacity by combination, where the basis has several or takes characteristic actions.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub combinations: Vec<CombinationCapacity>,
}

/// Capacity and load of one combination of partial factors.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CombinationCapacity {
    /// Name, as in the checks.
    pub combination: Cow<'static, str>,
    /// Design resistance.
    pub capacity: Force,
    /// Design effect of the actions, or the factored load; left out without either.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub effect: Option<Force>,
}

/// What a capacity may be compared with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DesignCapacityKind {
    /// Ultimate over a safety factor; for unfactored loads.
    Allowable,
    /// For factored loads: ultimate times a resistance factor, or characteristic resistance
    /// over a partial factor.
    Factored,
}

/// Sum of the helices, each for itself.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct IndividualBearing {
    /// The sum.
    pub total: Force,
    /// The helices from the top down.
    pub helices: Vec<HelixBearing>,
}

/// One helix bearing for itself.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct HelixBearing {
    /// Its label as sent, or its number from the top.
    pub label: String,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Outside diameter.
    pub diameter: Size,
    /// Vertical depth below final grade.
    pub depth: Length,
    /// Depth over diameter.
    pub depth_ratio: f64,
    /// Area that bears.
    pub area: Area,
    /// Vertical effective stress at the helix.
    pub effective_stress: SoilStress,
    /// Effective stresses at the depths of the named limits, where the helix lies in sand
    /// and deeper than them; information unless `stress_limit` is set.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub stress_limits: Option<StressLimits>,
    /// Bearing of the soil, taken together over the zone; 0 without credit.
    pub bearing: SoilStress,
    /// Area times bearing.
    pub resistance: Force,
    /// Why the helix is given no credit, where it is not.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub no_credit: Option<NoCreditReason>,
    /// The weaker layer that begins within three diameters below the helix and what it takes
    /// of the load that spreads down to it, where there is one; compression only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub punching: Option<PunchingLimit>,
    /// The soils of the zone on the load side, from the top down.
    pub zone: Vec<ZoneBearing>,
}

/// Weaker soil below a helix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PunchingLimit {
    /// Label of the weaker layer.
    pub layer: String,
    /// From the helix down to it.
    pub distance: Length,
    /// Diameter over which the load has spread there, two down for one across.
    pub spread_diameter: Size,
    /// Bearing of the layer under that diameter.
    pub layer_bearing: SoilStress,
    /// Bearing of the helix that the layer takes. Where it is less than `bearing`, the check
    /// `helix_punching` counts no more than this.
    pub bearing_limit: SoilStress,
}

/// Effective stress at the critical depths.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StressLimits {
    /// At 10 diameters, `usace_1991_loose`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub loose: Option<SoilStress>,
    /// At 20 diameters, `usace_1991_dense`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub dense: Option<SoilStress>,
}

/// Why a helix is given no credit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum NoCreditReason {
    /// The soil on its load side is fill, organic or frozen, or the zone reaches into such soil.
    FillOrOrganic,
    /// It lies at or above `no_credit_above`.
    AboveCreditDepth,
}

/// Bearing of one soil within the zone of a helix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ZoneBearing {
    /// Label of the layer.
    pub layer: String,
    /// Top of the part of the layer within the zone.
    pub top: Length,
    /// Bottom of the part.
    pub bottom: Length,
    /// Law that gives the bearing.
    pub law: BearingLaw,
    /// Factor on the strength (clay, silt) or on the effective stress (sand) in force: N_c,
    /// N_q with the shape and depth factors in force, or the breakout factor; 0 without
    /// credit.
    pub bearing_factor: f64,
    /// Factor N_c on the cohesion of sand or gravel, where it has any; compression only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cohesion_bearing_factor: Option<f64>,
    /// Undrained strength, in clay and silt.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub undrained_strength: Option<SoilStress>,
    /// Bearing of this soil.
    pub bearing: SoilStress,
}

/// Law of bearing of one soil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum BearingLaw {
    /// s_u N_c.
    UndrainedBearing,
    /// s'_v N_q, with the width term where it is included.
    DrainedBearing,
    /// Uplift in clay that breaks out: F_c s_u + s'_v.
    UndrainedBreakout,
    /// Uplift in sand that breaks out: F_q s'_v.
    DrainedBreakout,
    /// No credit.
    NoCredit,
}

/// The cylinder of soil between the helices, with the helix that bears at its end.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CylindricalShear {
    /// End bearing plus shear on the cylinder.
    pub total: Force,
    /// Helix at the end: the lowest in credit in compression, the uppermost in tension.
    pub end_helix: String,
    /// Bearing of that helix.
    pub end_bearing: Force,
    /// Shear on the cylinder.
    pub shear: Force,
    /// Between each pair of helices, from the top down.
    pub gaps: Vec<CylinderGap>,
}

/// The cylinder between two helices.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CylinderGap {
    /// Helix above.
    pub upper: String,
    /// Helix below.
    pub lower: String,
    /// Distance between them.
    pub length: Length,
    /// Distance over the diameter of the lower helix.
    pub spacing_ratio: f64,
    /// Mean of the two diameters.
    pub mean_diameter: Size,
    /// Shear on the cylinder between them.
    pub shear: Force,
    /// Layer by layer, from the top down.
    pub parts: Vec<CylinderPart>,
}

/// The cylinder between two helices within one layer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CylinderPart {
    /// Label of the layer.
    pub layer: String,
    /// Top of the part.
    pub top: Length,
    /// Bottom of the part.
    pub bottom: Length,
    /// Lateral over vertical effective stress, in sand.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub lateral_stress_ratio: Option<f64>,
    /// Mean shear stress on the cylinder; 0 without credit.
    pub mean_shear_stress: SoilStress,
    /// Shear on the part.
    pub shear: Force,
}

/// Shallow or deep, by the top helix in credit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Embedment {
    /// The helix.
    pub helix: String,
    /// Depth H of the helix below the ground, or below the lowest soil above it that is
    /// given no credit.
    pub embedment: Length,
    /// H over its diameter.
    pub embedment_ratio: f64,
    /// Ratio from which uplift is called deep.
    pub critical_ratio: f64,
    /// The label that follows.
    pub mode: EmbedmentMode,
}

/// Depth of uplift failure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum EmbedmentMode {
    /// The failure reaches the surface.
    Shallow,
    /// The failure stays around the helix.
    Deep,
}

/// A factor in force.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct HelixFactor {
    /// Its name: `compression_safety_factor`, `tension_safety_factor`,
    /// `compression_resistance_factor`, `tension_resistance_factor`; by EN 1997-1
    /// `model_factor`, `correlation_mean_factor`, `correlation_least_factor`,
    /// `permanent_unfavourable_factor`, `permanent_favourable_factor`, `variable_factor`,
    /// `base_partial_factor`, `total_partial_factor`, `tension_partial_factor`; by AS 2159
    /// `basic_reduction_factor`, `intrinsic_test_factor`, `benefit_factor`,
    /// `reduction_factor`; the caller's own `divisor` and `multiplier`.
    pub id: Cow<'static, str>,
    /// Direction it is used in, where its name does not say.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub direction: Option<AxialDirection>,
    /// Combination it belongs to, where there are such.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub combination: Option<Cow<'static, str>>,
    /// The factor.
    pub used_factor: f64,
    /// Sent in the request, rather than taken from the source.
    pub from_request: bool,
    /// Where it comes from.
    pub source: SourceNote,
    /// The caller's reference for it, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub own_reference: Option<String>,
}

/// One of the ultimate compression loads the code takes the least of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct UltimateItem {
    /// Which.
    pub item: UltimateKind,
    /// Whether it was considered.
    pub considered: bool,
    /// The ultimate load, where considered.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub ultimate: Option<Force>,
    /// The least of those considered.
    pub governing: bool,
}

/// Ultimate compression loads of a helical pile.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum UltimateKind {
    /// Bearing of the soil, from this answer.
    SoilBearing,
    /// Correlation with installation torque.
    TorqueCorrelation,
    /// Load test.
    LoadTest,
    /// The shaft.
    Shaft,
    /// Couplings of the shaft.
    Couplings,
    /// Helix plates as fixed to the shaft.
    HelixPlates,
}
