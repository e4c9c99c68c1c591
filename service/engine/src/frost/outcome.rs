//! What is answered: depths, embedment and the beam's underside. Uplift, swelling, void form
//! and the section have their own files.

use serde::{Deserialize, Serialize};

use super::request::{FrostDesignBy, PilePurpose};
use super::section_outcome::FrostSection;
use super::swell_outcome::{CombinedUplift, GoverningUplift, SwellOutcome};
use super::uplift_outcome::UpliftOutcome;
use super::void_outcome::VoidFormOutcome;
use crate::drag_force::DragOutcome;
use crate::frost_depth::{ComputedFrost, DeeperFrost};
use crate::ground_heave::HeaveCause;
use crate::quantity::{Force, Length, Size};
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// One pile in ground that freezes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = FrostEmbedmentOutcome))]
pub struct Outcome {
    /// Name of the pile; `pile` when none was sent.
    pub label: Label,
    /// Codes of the pile, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<Tags>,
    /// How deep the ground freezes.
    pub frost: FrostDepth,
    /// Depth of helices and tip against every rule.
    pub embedment: EmbedmentOutcome,
    /// Uplift by frozen ground, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uplift: Option<UpliftOutcome>,
    /// Uplift by swelling soil, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub swelling: Option<SwellOutcome>,
    /// Frost and swelling together, where the caller says that both can peak at one time.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub combined_uplift: Option<CombinedUplift>,
    /// The worst of all uplift, where what holds the pile down was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub governing_uplift: Option<GoverningUplift>,
    /// The pile's own weight that was counted beside the dead load.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pile_weight: Option<Force>,
    /// What the underside of a beam in soil rests on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beam_underside: Option<BeamUnderside>,
    /// Drag of settling ground on the shaft, where it was asked for; on the steel only.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub downdrag: Option<DragOutcome>,
    /// The void form, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub void_form: Option<VoidFormOutcome>,
    /// Everything in one section below final grade: levels, beam, pile, and each force with
    /// the depths between which it acts.
    pub section: FrostSection,
}

/// How deep the ground freezes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostDepth {
    /// Frost depth of the jurisdiction.
    pub official_depth: Length,
    /// Computed frost depth, from the same surface, where one was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub computed_depth: Option<Length>,
    /// Which of the two is deeper.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deeper: Option<DeeperFrost>,
    /// By how much.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub difference: Option<Length>,
    /// Which depth was to be used, where a computed one was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub design_by: Option<FrostDesignBy>,
    /// Frost depth that is used, from the surface that is exposed to the cold.
    pub design_depth: Length,
    /// Which depth that is; the official one of equals.
    pub governed_by: FrostDepthSource,
    /// Depth below final grade of the surface that is exposed to the cold.
    pub cold_surface_depth: Length,
    /// Depth below final grade to which the ground freezes.
    pub base_depth: Length,
    /// The computed depth with all it came from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub computed: Option<ComputedFrost>,
}

/// Which frost depth is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FrostDepthSource {
    /// The jurisdiction's.
    Official,
    /// The computed one, which is deeper.
    Computed,
}

/// Depth of helices and tip against every rule.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct EmbedmentOutcome {
    /// Diameter of the largest helix.
    pub largest_helix_diameter: Size,
    /// Depth of the top helix below final grade.
    pub top_helix_depth: Length,
    /// Depth of the tip below final grade.
    pub tip_depth: Length,
    /// What the pile is for, as sent or by how its tension resistance was found; it decides
    /// which rule of diameters holds. `tension_by_torque` adds the rule of 12 diameters.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub purpose: Option<PilePurpose>,
    /// Every rule for the top helix that applies, with the depth it asks for.
    pub rules: Vec<EmbedmentRule>,
    /// Depth of the top helix that meets all rules.
    pub required_top_helix_depth: Length,
    /// The rule that asks for it; the first of equals.
    pub governed_by: EmbedmentRuleId,
    /// By how much the top helix is too shallow; 0 when it is not.
    pub shortfall: Length,
    /// Depth of the tip that follows, with the same lead below the top helix.
    pub required_tip_depth: Length,
    /// Length of pile from head to tip that follows.
    pub minimum_pile_length: Length,
}

/// One rule for the depth of the top helix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct EmbedmentRule {
    /// Which rule.
    pub rule: EmbedmentRuleId,
    /// Depth of the top helix below final grade that it asks for.
    pub required_depth: Length,
    /// Where the rule comes from.
    pub source: SourceNote,
}

/// Rules for the depth of the top helix.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum EmbedmentRuleId {
    /// Below the base of frost by the margin.
    FrostMargin,
    /// A number of diameters of the largest helix below the ground.
    Diameters,
    /// The number of diameters that tension by torque asks for.
    TorqueDiameters,
    /// Below fill by its margin.
    Fill,
    /// Below the active zone by its margin.
    ActiveZone,
    /// Below soil that collapses by its margin.
    CollapsingSoil,
}

/// What the underside of a beam in soil rests on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BeamUnderside {
    /// On a void form, or on the ground.
    pub rests_on: BeamSupport,
    /// Predicted heave of the ground under the beam, the larger of the causes sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub predicted_heave: Option<Size>,
    /// Which cause that is; the first of equals.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heave_governed_by: Option<HeaveCause>,
    /// Uplift under the beam that comes on this pile where the soil swells against it: swell
    /// pressure on the width of the beam and its tributary length, where these are known.
    /// Told, not added to any demand. Frost has no such figure: its pressure has no known
    /// limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub swell_force: Option<Force>,
}

/// What a beam rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum BeamSupport {
    /// A void form.
    VoidForm,
    /// The ground, as no void form was sent.
    Ground,
}
