//! A small calculation for the tests of this crate: one member of every kind that a
//! request can have. Never part of the service.

use bearwell_engine::catalogue::refusals;
use bearwell_engine::contract::{Calculation, Issue, Noun, Refusal, Work, list_length};
use bearwell_engine::quantity::{Force, ForceUnit, Length, LengthUnit, Size};
use bearwell_engine::text::{Label, Tags};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use validator::{Validate, ValidationErrors, ValidationErrorsKind};

/// The calculation: adds forces and divides by a length.
pub struct Probe;

/// What is asked of the probe.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate, ToSchema)]
#[schema(as = ProbeRequest)]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name; echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes; echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Plates; 1 to 3.
    #[validate(nested)]
    #[schema(min_items = 1, max_items = 3)]
    pub plates: Vec<Plate>,
    /// How it is done.
    #[validate(nested)]
    pub method: Method,
    /// Grade of the plates.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grade: Option<Grade>,
    /// A factor; 0.1 to 10.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.1, max = 10.0))]
    #[schema(minimum = 0.1, maximum = 10.0)]
    pub scale_factor: Option<f64>,
    /// Repetitions; 1 to 5.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1, max = 5))]
    #[schema(minimum = 1, maximum = 5)]
    pub repeat_count: Option<u32>,
    /// Whether to leave out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub quiet: Option<bool>,
}

/// A plate.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate, ToSchema)]
#[schema(as = ProbePlate)]
#[serde(deny_unknown_fields)]
pub struct Plate {
    /// Its diameter; 100 to 900 mm.
    #[validate(range(min = Size::new(100.0, LengthUnit::Mm), max = Size::new(900.0, LengthUnit::Mm)))]
    pub diameter: Size,
    /// Its depth; 0 to 30 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub depth: Option<Length>,
}

/// Ways of doing it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[schema(as = ProbeMethod)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Method {
    /// By force.
    Pushed(Pushed),
    /// By hand.
    ByHand(ByHand),
}

impl Validate for Method {
    fn validate(&self) -> Result<(), ValidationErrors> {
        let (tag, inner) = match self {
            Self::Pushed(inner) => ("pushed", inner.validate()),
            Self::ByHand(inner) => ("by_hand", inner.validate()),
        };
        inner.map_err(|errors| {
            let mut all = ValidationErrors::new();
            let errors = ValidationErrorsKind::Struct(Box::new(errors));
            all.errors_mut().insert(tag.into(), errors);
            all
        })
    }
}

/// Pushed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate, ToSchema)]
#[schema(as = ProbePushed)]
#[serde(deny_unknown_fields)]
pub struct Pushed {
    /// The force; 1 to 1,000 kN.
    #[validate(range(min = Force::new(1.0, ForceUnit::KN), max = Force::new(1000.0, ForceUnit::KN)))]
    pub force: Force,
}

/// By hand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate, ToSchema)]
#[schema(as = ProbeByHand)]
#[serde(deny_unknown_fields)]
pub struct ByHand {}

/// Grades.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[schema(as = ProbeGrade)]
#[serde(rename_all = "snake_case")]
pub enum Grade {
    /// Fine.
    Fine,
    /// Coarse.
    Coarse,
}

/// What the probe answers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[schema(as = ProbeOutcome)]
pub struct Outcome {
    /// Sum of the diameters.
    pub total: Size,
    /// Force over the sum, a pure number here.
    pub share_ratio: f64,
}

impl Noun for Probe {
    const NAME: &'static str = "probe";
    const SUMMARY: &'static str = "What do the plates add up to?";
    type Request = Request;
    type Outcome = Outcome;
}

impl Calculation for Probe {
    fn lengths(request: &Request, issues: &mut Vec<Issue>) {
        list_length(issues, "/plates", request.plates.len(), 1, 3);
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        work.go_on()?;
        if request.grade == Some(Grade::Coarse) {
            return Err(Issue::new("/grade", &refusals::DUPLICATE_LABEL, "coarse").into());
        }
        let total: Size = request.plates.iter().map(|p| p.diameter).sum();
        let force = match &request.method {
            Method::Pushed(p) => p.force.si(),
            Method::ByHand(_) => f64::NAN,
        };
        Ok(Outcome {
            total,
            share_ratio: force * request.scale_factor.unwrap_or(1.0),
        })
    }
}

/// A request that answers.
pub const GOOD: &str = r#"{
    "label": "p", "tags": {"code": "1"},
    "plates": [{"diameter": {"value": 10, "unit": "in"}}, {"diameter": {"value": 300, "unit": "mm"}, "depth": {"value": 2, "unit": "m"}}],
    "method": {"pushed": {"force": {"value": 12.5, "unit": "kip"}}},
    "grade": "fine", "scale_factor": 2, "repeat_count": 3, "quiet": false, "output_units": "si", "include": ["steps"]
}"#;
