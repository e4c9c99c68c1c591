//! What is answered for a section through pile, beam and ground: levels, sizes, and each
//! force with the depths between which it acts. Nothing here is judged.

use serde::{Deserialize, Serialize};

use super::uplift_outcome::FrostStage;
use crate::quantity::{Force, Length, Size};
use crate::text::Label;

/// A section below final grade; all depths count down from there.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrostSection {
    /// Surface that is exposed to the cold.
    pub cold_surface_depth: Length,
    /// Base of frost by the jurisdiction's depth.
    pub official_frost_base_depth: Length,
    /// Base of frost by the computed depth, where one was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub computed_frost_base_depth: Option<Length>,
    /// Base of fill.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fill_depth: Option<Length>,
    /// Base of the active zone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub active_depth: Option<Length>,
    /// Base of soil that collapses.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub collapse_depth: Option<Length>,
    /// Lower end of the sleeve.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sleeve_bottom_depth: Option<Length>,
    /// The beam, where it stands in soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beam: Option<SectionBeam>,
    /// The void form under it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub void_form: Option<SectionVoidForm>,
    /// The pile.
    pub pile: SectionPile,
    /// Every force, service stage first.
    pub forces: Vec<SectionForce>,
}

/// A beam in soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SectionBeam {
    /// Its top, where its height was sent; negative above final grade.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub top_depth: Option<Length>,
    /// Its underside.
    pub underside_depth: Length,
    /// Its width, where it was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width: Option<Length>,
}

/// A void form.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SectionVoidForm {
    /// Its top, the beam's underside; left out where no beam in soil was sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub top_depth: Option<Length>,
    /// Its thickness as placed.
    pub nominal_thickness: Size,
    /// Its thickness once crushed.
    pub crushed_thickness: Size,
}

/// A pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SectionPile {
    /// Its head; negative above final grade.
    pub head_depth: Length,
    /// Its tip.
    pub tip_depth: Length,
    /// Width across its shaft.
    pub shaft_width: Size,
    /// Its helices from the top down.
    pub helices: Vec<SectionHelix>,
}

/// A helix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SectionHelix {
    /// Its label, or its number from the top.
    pub label: Label,
    /// Its depth.
    pub depth: Length,
    /// Its diameter.
    pub diameter: Size,
    /// Whether it is in ground that freezes, swells, collapses or was filled; exactly at the
    /// base of such ground it is not.
    pub in_moving_ground: bool,
}

/// A force with the depths between which it acts, unfactored.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SectionForce {
    /// What force it is.
    pub kind: SectionForceKind,
    /// In which stage.
    pub stage: FrostStage,
    /// Its size.
    pub force: Force,
    /// Where it begins.
    pub top_depth: Length,
    /// Where it ends; equal to `top_depth` where it acts at one level.
    pub bottom_depth: Length,
}

/// Forces of a section. Those of the ground on shaft and beam act upwards, dead load, drag
/// and the ground's hold downwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum SectionForceKind {
    /// Adfreeze on the shaft, upwards.
    ShaftAdfreeze,
    /// Frost grip on the beam's sides, upwards.
    BeamAdfreeze,
    /// Swelling soil on the shaft, upwards.
    ShaftSwell,
    /// Swelling soil on the beam's sides, upwards.
    BeamSwell,
    /// The crushed void form under the beam, upwards.
    VoidForm,
    /// Swelling soil under a beam without a void form, upwards.
    BeamUndersideSwell,
    /// Drag of settling ground on the shaft, downwards, down to the neutral plane; it does not
    /// act together with uplift.
    Drag,
    /// Dead load and counted weight, downwards.
    DeadLoad,
    /// Ultimate, allowable or factored tension resistance by which the ground holds the
    /// pile, downwards: ultimate where that is known.
    TensionResistance,
}
