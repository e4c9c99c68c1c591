//! What is answered: heave by freezing and by swelling with their parts, which counts, and
//! the classes of the soil.

use serde::{Deserialize, Serialize};

use crate::quantity::{FreezingIndex, HeaveRate, Length, SegregationPotential, Size};
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// How far the ground comes up.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = GroundHeaveOutcome))]
pub struct Outcome {
    /// Name of the place, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub label: Option<Label>,
    /// Codes, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<Tags>,
    /// Heave by freezing, where data for it was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub frost: Option<FreezingHeave>,
    /// Heave by swelling, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub swell: Option<SwellHeave>,
    /// The heave that counts, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design: Option<DesignHeave>,
    /// Classes of frost susceptibility, where they were asked for. A class gives no heave.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub susceptibility: Option<SusceptibilityOutcome>,
    /// Whether a building code calls the soil expansive, where it was asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expansive_soil: Option<ExpansiveSoilOutcome>,
}

/// The heave that counts: the larger of frost and swell, not their sum.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DesignHeave {
    /// Upward movement of the ground.
    pub movement: Size,
    /// Which cause that is; the first of equals.
    pub governed_by: HeaveCause,
    /// Whether it is the upper end of a range.
    pub is_upper_end: bool,
}

/// Causes of heave.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum HeaveCause {
    /// Freezing.
    Frost,
    /// Swelling soil.
    Swell,
}

/// Heave by freezing with its parts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FreezingHeave {
    /// Depth of ground that freezes.
    pub frost_depth: Length,
    /// Of the water in the pores, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_situ: Option<PoreFreezingHeave>,
    /// Of the water drawn to the front, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub segregation: Option<IceSegregationHeave>,
    /// Both together.
    pub movement: Size,
}

/// Heave of the water in the pores.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PoreFreezingHeave {
    /// Gain of volume of the ground.
    pub volume_increase_ratio: f64,
    /// Heave.
    pub movement: Size,
}

/// Heave of the water drawn to the front.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct IceSegregationHeave {
    /// Segregation potential as sent.
    pub potential: SegregationPotential,
    /// The same under the load that was sent.
    pub potential_under_load: SegregationPotential,
    /// Freezing index at the surface.
    pub surface_freezing_index: FreezingIndex,
    /// Where the potential comes from, as sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<Label>,
    /// Heave.
    pub movement: Size,
}

/// Heave by swelling.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SwellHeave {
    /// How it was found.
    pub method: SwellMethod,
    /// Where it comes from.
    pub source: SourceNote,
    /// What the caller says of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reference: Option<Label>,
    /// The heave that counts; the upper end where it is a range.
    pub movement: Size,
    /// The range, where the method gives no single value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub range: Option<SwellRange>,
    /// Layer by layer, where the method has layers.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub layers: Vec<SwellLayer>,
}

/// Ways to a swell.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SwellMethod {
    /// The caller's.
    Given,
    /// The caller's, as a potential vertical rise.
    PotentialVerticalRise,
    /// Swell tests in the oedometer.
    Oedometer,
    /// Expansiveness and depth.
    VanDerMerwe,
    /// Plasticity index alone.
    IndexScreening,
}

/// A swell that is known as a range only.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SwellRange {
    /// Strain by the relation itself.
    pub relation_ratio: f64,
    /// Heave by the relation itself.
    pub relation: Size,
    /// Lower end.
    pub lower: Size,
    /// Upper end.
    pub upper: Size,
    /// Why it is a range, and what can lie outside.
    pub reasons: Vec<String>,
}

/// Swell of one layer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SwellLayer {
    /// Its label, or its number from the top.
    pub label: String,
    /// Its thickness.
    pub thickness: Length,
    /// What it adds.
    pub movement: Size,
}

/// Frost susceptibility by every scheme that the data allows.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SusceptibilityOutcome {
    /// Group by the share finer than 0.02 mm; this one counts.
    pub group: FrostGroup,
    /// Where it comes from.
    pub group_source: SourceNote,
    /// Group by the share finer than 0.075 mm. Left out where that share is needed and was
    /// not sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_group: Option<FrostGroup>,
    /// Where that comes from.
    pub other_group_source: SourceNote,
    /// Whether both schemes name the same group, where both do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub groups_agree: Option<bool>,
    /// What the difference is, in words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub disagreement: Option<String>,
    /// Whether at least 3 % are finer than 0.02 mm, where that share was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub three_percent_met: Option<bool>,
    /// Heave rate in the laboratory, as sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub laboratory_heave_rate: Option<HeaveRate>,
    /// Class by that rate.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub laboratory_class: Option<HeaveRateClass>,
    /// Class by the segregation potential, where one was sent; from memory.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub potential_class: Option<SegregationClass>,
}

/// Groups of frost susceptibility, from none upwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FrostGroup {
    /// Below the first group of its scheme.
    BelowGroups,
    /// Not frost-susceptible.
    Nfs,
    /// Possibly frost-susceptible; a freezing test decides.
    Pfs,
    /// Gravelly soil of low susceptibility.
    S1,
    /// Sandy soil of low susceptibility.
    S2,
    /// Negligible to low.
    F1,
    /// Low to medium.
    F2,
    /// High.
    F3,
    /// Very high.
    F4,
}

/// Classes by the heave rate of a freezing test.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum HeaveRateClass {
    /// Below 0.5 mm/day.
    Negligible,
    /// 0.5 to 1 mm/day.
    VeryLow,
    /// 1 to 2 mm/day.
    Low,
    /// 2 to 4 mm/day.
    Medium,
    /// 4 to 8 mm/day.
    High,
    /// Above 8 mm/day.
    VeryHigh,
}

/// Classes by the segregation potential.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SegregationClass {
    /// Below 0.5 mm2/(K h).
    NotSusceptible,
    /// 0.5 to 1.5 mm2/(K h).
    Low,
    /// 1.5 to 3 mm2/(K h).
    Medium,
    /// Above 3 mm2/(K h).
    Strong,
}

/// Whether a building code calls the soil expansive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ExpansiveSoilOutcome {
    /// The answer; `not_known` where what was sent does not decide it.
    pub expansive: ExpansiveAnswer,
    /// What decided it, or would.
    pub decided_by: ExpansiveRule,
    /// Properties sent that meet their limit.
    pub met: Vec<ExpansiveProperty>,
    /// Properties sent that do not.
    pub not_met: Vec<ExpansiveProperty>,
    /// Properties that were not sent and would be needed.
    pub missing: Vec<ExpansiveProperty>,
    /// Where the rule comes from.
    pub source: SourceNote,
}

/// Whether a soil is expansive.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ExpansiveAnswer {
    /// It is.
    Yes,
    /// It is not.
    No,
    /// What was sent does not decide it.
    NotKnown,
}

/// What decides whether a soil is expansive.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ExpansiveRule {
    /// The expansion index alone.
    ExpansionIndex,
    /// Plasticity index and both shares of fines; all must be met.
    IndexProperties,
}

/// Properties in the rule for expansive soil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ExpansiveProperty {
    /// Plasticity index of at least 15 %.
    PlasticityIndex,
    /// More than 10 % passing 0.075 mm.
    Fines,
    /// More than 10 % finer than 0.005 mm.
    ClaySize,
    /// Expansion index above 20.
    ExpansionIndex,
}
