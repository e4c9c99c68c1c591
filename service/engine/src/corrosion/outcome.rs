//! What `corrosion-loss` answers: how aggressive the ground is by every source, the loss, and
//! what is left of each section.

use serde::{Deserialize, Serialize};

use super::request::LossCounts;
use super::soil_request::CorrosionClass;
use crate::quantity::{Coat, Force, Lifetime, Shown, Size, SteelArea};
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// Loss of steel over a life.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = CorrosionLossOutcome))]
pub struct Outcome {
    /// Name of what is looked at, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub label: Option<Label>,
    /// Codes, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<Tags>,
    /// The life.
    pub life: Lifetime,
    /// How aggressive the ground is.
    pub soil: CorrosionSoilOutcome,
    /// How the loss was found. Left out in aggressive soil without the engineer's rate: then no
    /// loss is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub loss_by: Option<LossBy>,
    /// The sections; empty where no loss is given.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub sections: Vec<CorrodedOutcome>,
}

/// How a loss was found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LossBy {
    /// The method.
    pub method: LossMethod,
    /// What its figures count. Every figure of a section says anew for what it counts.
    pub counts: LossCounts,
    /// Where they come from.
    pub source: SourceNote,
}

/// Methods of loss.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LossMethod {
    /// Zinc and steel at steady rates.
    Fhwa,
    /// A table by kind of ground.
    Eurocode,
    /// One rate for all.
    FlatRate,
    /// Equations of acceptance criteria.
    AcceptanceCriteria,
    /// The caller's engineer.
    Given,
}

/// How aggressive the ground is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CorrosionSoilOutcome {
    /// The class in force. By tests: `aggressive` if one of the acceptance criteria or AASHTO
    /// says so; else `mild` if all five figures are inside the limits of use of published
    /// rates; else `test_more`.
    pub class: CorrosionClass,
    /// Whether the caller stated it.
    pub stated: bool,
    /// Figures that were not sent; `mild` needs all five.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub missing: Vec<CorrosionFigure>,
    /// What each source says of the tests; empty where the class was stated.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub sources: Vec<CorrosionSourceOutcome>,
    /// Whether all sources that can judge say the same; left out where the class was stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sources_agree: Option<bool>,
}

/// Figures of the soil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CorrosionFigure {
    /// Resistivity.
    Resistivity,
    /// pH.
    Ph,
    /// Sulfates.
    Sulfates,
    /// Chlorides.
    Chlorides,
    /// Organic matter.
    Organics,
    /// High organic content, as stated.
    OrganicSoil,
    /// Landfill or mine waste, as stated.
    LandfillOrMineWaste,
    /// Mine or industrial drainage, as stated.
    MineOrIndustrialDrainage,
}

/// What one source says of the tests.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CorrosionSourceOutcome {
    /// The source.
    pub source: SourceNote,
    /// What it says.
    pub says: CorrosionSourceSays,
    /// What it takes exception to.
    #[serde(skip_serializing_if = "Vec::is_empty", default)]
    pub triggers: Vec<CorrosionTrigger>,
}

/// What a source says of a soil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CorrosionSourceSays {
    /// Aggressive.
    Aggressive,
    /// Outside the limits of use of its rates.
    OutsideLimits,
    /// Sulfates and chlorides are to be tested at this resistivity.
    TestMore,
    /// None of its triggers is met by the figures that were sent.
    NotAggressive,
    /// No figure that it judges was sent.
    NotJudged,
}

/// A figure that a source takes exception to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CorrosionTrigger {
    /// Which figure.
    pub figure: CorrosionFigure,
    /// As sent; left out for a statement.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<Shown>,
    /// Aggressive below this.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub below: Option<Shown>,
    /// Aggressive above this.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub above: Option<Shown>,
}

/// A section over its life.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CorrodedOutcome {
    /// Name of the section.
    pub label: Label,
    /// Codes, echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tags: Option<Tags>,
    /// Zinc on each face, where there is any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zinc_thickness: Option<Coat>,
    /// Where that comes from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zinc_source: Option<SourceNote>,
    /// Time until the zinc is gone, by the method `fhwa`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub zinc_life: Option<Lifetime>,
    /// Steel lost from each exposed face. A figure of the method for both faces together is
    /// shared by the two, and falls whole on a face that is exposed alone.
    pub loss_each_face: Coat,
    /// Steel lost from wall, diameter, side or thickness: over all exposed faces.
    pub loss_in_all: Coat,
    /// Faces across the wall, diameter, side or thickness that lose steel: 1 or 2.
    pub exposed_face_count: u32,
    /// Steel lost from the edge of a plate, where zinc is given no credit: turning the pile in
    /// wears it off. Of plates under a method that gives credit to zinc.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edge_loss: Option<Coat>,
    /// Wall, diameter, side or thickness before.
    pub thickness_before: Size,
    /// The same after; nil where nothing is left.
    pub thickness_after: Size,
    /// Outside diameter of a tube after.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside_diameter_after: Option<Size>,
    /// Area of steel before; not of a plate without a width.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub area_before: Option<SteelArea>,
    /// Area of steel after.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub area_after: Option<SteelArea>,
    /// Area after over before, or thickness of a plate without a width.
    pub remaining_ratio: f64,
    /// Yield strength times the area after.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nominal_strength: Option<Force>,
    /// That times the resistance factor.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub factored_strength: Option<Force>,
}
