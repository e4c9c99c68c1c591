//! The working of an answer: each equation records itself as it runs. Costs nothing
//! while recording is off, so equations always take a trace.

use std::borrow::Cow;

use serde::ser::SerializeStruct;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::quantity::Shown;
use crate::source::{Reference, SourceNote};

/// One equation as it was evaluated.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Symbol of the result.
    pub symbol: Cow<'static, str>,
    /// The equation in text.
    pub equation: Cow<'static, str>,
    /// The result, with its unit.
    pub shown: Shown,
    /// The values that went in.
    pub given: Vec<Given>,
    /// What the step is about, such as `helix 2`; may be left out.
    pub subject: Option<String>,
    /// Where the equation comes from.
    pub source: SourceNote,
}

/// A value that went into an equation.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Given {
    /// Symbol as in the equation.
    pub symbol: Cow<'static, str>,
    /// Its value.
    pub quantity: Shown,
}

/// Collects steps, or does nothing.
#[derive(Debug, Default)]
pub struct Trace {
    steps: Option<Vec<Step>>,
    subject: Option<String>,
}

impl Trace {
    /// A trace that records nothing.
    pub const fn off() -> Self {
        Self {
            steps: None,
            subject: None,
        }
    }

    /// A trace that records every step.
    pub const fn on() -> Self {
        Self {
            steps: Some(Vec::new()),
            subject: None,
        }
    }

    /// Whether steps are recorded; ask before building any text for them.
    pub const fn is_on(&self) -> bool {
        self.steps.is_some()
    }

    /// What the following steps are about; the text is built only while recording.
    pub fn about(&mut self, subject: impl FnOnce() -> String) {
        if self.is_on() {
            let text = subject();
            self.subject = if text.is_empty() { None } else { Some(text) };
        }
    }

    /// Records `symbol = equation` with its value and returns the value.
    #[inline]
    pub fn step<T: Copy + Into<Shown>, const N: usize>(
        &mut self,
        symbol: &'static str,
        equation: &'static str,
        value: T,
        given: [(&'static str, Shown); N],
        source: &'static Reference,
    ) -> T {
        if self.steps.is_some() {
            self.record(symbol, equation, value.into(), &given, source);
        }
        value
    }

    #[cold]
    fn record(
        &mut self,
        symbol: &'static str,
        equation: &'static str,
        shown: Shown,
        given: &[(&'static str, Shown)],
        source: &'static Reference,
    ) {
        let subject = self.subject.clone();
        if let Some(steps) = &mut self.steps {
            steps.push(Step {
                symbol: symbol.into(),
                equation: equation.into(),
                shown,
                given: given
                    .iter()
                    .map(|(symbol, quantity)| Given {
                        symbol: (*symbol).into(),
                        quantity: quantity.clone(),
                    })
                    .collect(),
                subject,
                source: source.into(),
            });
        }
    }

    /// Adds the steps of a part that was recorded by itself, each under the name of the part.
    pub fn append(&mut self, part: &str, steps: Vec<Step>) {
        let Some(all) = &mut self.steps else {
            return;
        };
        all.extend(steps.into_iter().map(|step| Step {
            subject: Some(match &step.subject {
                Some(subject) => format!("{part}: {subject}"),
                None => part.to_owned(),
            }),
            ..step
        }));
    }

    /// The steps recorded, if recording was on.
    pub fn into_steps(self) -> Option<Vec<Step>> {
        self.steps
    }
}

impl Serialize for Step {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        // under the mark of its quantity, so that `value` and `unit` are presented
        let members = 5 + usize::from(self.subject.is_some());
        let mut out = s.serialize_struct(self.shown.mark(), members)?;
        out.serialize_field("symbol", &self.symbol)?;
        out.serialize_field("equation", &self.equation)?;
        out.serialize_field("value", &self.shown.value())?;
        out.serialize_field("unit", self.shown.unit())?;
        out.serialize_field("given", &self.given)?;
        if let Some(subject) = &self.subject {
            out.serialize_field("subject", subject)?;
        }
        out.serialize_field("source", &self.source)?;
        out.end()
    }
}

impl<'de> Deserialize<'de> for Step {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let w = StepWire::deserialize(d)?;
        Ok(Self {
            symbol: w.symbol.into(),
            equation: w.equation.into(),
            shown: Shown::as_read(w.value, w.unit),
            given: w.given,
            subject: w.subject,
            source: w.source,
        })
    }
}

/// A step as it stands on the wire.
#[derive(Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = Step))]
pub struct StepWire {
    /// Symbol of the result.
    symbol: String,
    /// The equation in text.
    equation: String,
    /// The result, in `unit`.
    value: f64,
    /// Unit of the result; `1` for a pure number.
    unit: String,
    /// The values that went in.
    given: Vec<Given>,
    /// What the step is about.
    #[serde(default)]
    subject: Option<String>,
    /// Where the equation comes from.
    source: SourceNote,
}

#[cfg(feature = "openapi")]
impl utoipa::PartialSchema for Step {
    fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
        StepWire::schema()
    }
}

#[cfg(feature = "openapi")]
impl utoipa::ToSchema for Step {
    fn name() -> Cow<'static, str> {
        "Step".into()
    }
    fn schemas(
        out: &mut Vec<(
            String,
            utoipa::openapi::RefOr<utoipa::openapi::schema::Schema>,
        )>,
    ) {
        StepWire::schemas(out);
    }
}
