//! What `corrosion-loss` is asked: a life, the ground, the method, the sections.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::section_request::CorrodedSection;
use super::soil_request::CorrosionSoil;
use crate::choice::validate_choice;
use crate::quantity::{DurationUnit, Lifetime, LossRate, LossRateUnit};
use crate::text::{Label, Tags};

/// Steel in the ground over a life: how aggressive the ground is, how much steel it takes from
/// each face, what is left of each section.
///
/// Without the soil's class or tests of it the request is refused: no ground is taken to be
/// mild. In aggressive ground no number is given but by the rate of the caller's engineer.
/// Sources differ on whether a loss counts for a face or for both together; every figure says
/// which.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = CorrosionLossRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of what is looked at; echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Life over which steel is lost; 1 to 150 years.
    #[validate(range(min = Lifetime::new(1.0, DurationUnit::Year), max = Lifetime::new(150.0, DurationUnit::Year)))]
    pub life: Lifetime,
    /// How aggressive the ground is. Never assumed: without it the request is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub soil: Option<CorrosionSoil>,
    /// Kind of ground, for the method `eurocode`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub ground: Option<CorrosionGround>,
    /// How the loss is found. Left out: `eurocode` where `ground` is a fill; else `fhwa` where
    /// the soil is mild and every section is zinc-coated; else `eurocode` where `ground` is
    /// sent. In aggressive soil only `given` gives a number.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub method: Option<CorrosionMethod>,
    /// The sections; 1 to 20.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 20))]
    pub sections: Vec<CorrodedSection>,
}

/// Kind of ground as the tables of loss have it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrosionGround {
    /// Which kind.
    pub kind: CorrosionGroundKind,
    /// Whether a fill is compacted, which halves the loss (from memory of the standard);
    /// `false` when left out. Only of a fill.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub compacted: Option<bool>,
}

/// Kinds of ground.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CorrosionGroundKind {
    /// Undisturbed natural soil.
    UndisturbedNatural,
    /// Polluted natural soil and industrial ground.
    PollutedIndustrial,
    /// Aggressive natural soil such as swamp, marsh, peat.
    AggressiveNatural,
    /// Fill that is not aggressive.
    Fill,
    /// Aggressive fill such as ash and slag.
    AggressiveFill,
}

impl CorrosionGroundKind {
    /// Whether it is a fill.
    pub const fn is_fill(self) -> bool {
        matches!(self, Self::Fill | Self::AggressiveFill)
    }
}

/// How the loss is found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CorrosionMethod {
    /// Zinc first, then steel at a steady rate, for each face. Only in mild soil, which is
    /// inside its electrochemical limits.
    Fhwa(FhwaRates),
    /// A table by kind of ground, for each face; zinc is given no credit. Needs `ground` and a
    /// life of 5 to 125 years.
    Eurocode(EurocodeTable),
    /// 0.003 in a year, both faces together; zinc is given no credit.
    FlatRate(FlatRate),
    /// The equations of acceptance criteria, from memory, both faces together.
    AcceptanceCriteria(AcceptanceEquations),
    /// A rate of the caller's engineer.
    Given(GivenRate),
}

validate_choice!(CorrosionMethod {
    Fhwa = "fhwa", Eurocode = "eurocode", FlatRate = "flat_rate",
    AcceptanceCriteria = "acceptance_criteria", Given = "given"
});

/// Zinc and steel at steady rates.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FhwaRates {}

/// The table by kind of ground.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct EurocodeTable {}

/// One rate for all.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FlatRate {}

/// The equations of acceptance criteria.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AcceptanceEquations {}

/// A rate of the caller's engineer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenRate {
    /// Steel lost in a year; 0 to 2,000 um a year.
    #[validate(range(min = LossRate::ZERO, max = LossRate::new(2000.0, LossRateUnit::UmPerYear)))]
    pub loss_rate: LossRate,
    /// What it counts.
    pub counts: LossCounts,
    /// Time before steel is lost, such as the life of a coating; 0 to 150 years, 0 when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Lifetime::ZERO, max = Lifetime::new(150.0, DurationUnit::Year)))]
    pub starts_after: Option<Lifetime>,
    /// Whose rate it is, and where it is written down.
    #[validate(nested)]
    pub reference: Label,
}

/// What a loss of thickness counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LossCounts {
    /// Each face by itself.
    EachFace,
    /// Both faces together.
    BothFacesTogether,
}
