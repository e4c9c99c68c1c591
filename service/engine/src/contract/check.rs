//! A check: one demand against one capacity, and the only place where "on the limit"
//! is decided.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use crate::catalogue::CheckDef;
use crate::quantity::{Shown, round9};
use crate::source::{Reference, SourceNote};

/// Outcome of a check.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CheckStatus {
    /// Met.
    Pass,
    /// Not met.
    Fail,
    /// Worth a look; never changes the verdict.
    Warn,
    /// Could not be judged; `reason` says why.
    NotEvaluated,
}

/// Which side of a check is the limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Relation {
    /// The demand must be at most the capacity, which is the limit.
    AtMost,
    /// The capacity (what is there) must be at least the demand, which is the limit.
    AtLeast,
}

/// What a check or a warning is about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Subject {
    /// Kind of thing.
    pub kind: SubjectKind,
    /// Its label.
    pub label: String,
}

/// Kinds of things that are judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs)]
pub enum SubjectKind {
    Pile,
    Helix,
    Beam,
    Layer,
    Section,
    LogRow,
    Plan,
}

impl Subject {
    /// A thing by kind and label.
    pub fn new(kind: SubjectKind, label: impl Into<String>) -> Self {
        Self {
            kind,
            label: label.into(),
        }
    }
}

/// One demand against one capacity.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Check {
    /// Name of the check, listed in `GET /v1/checks`.
    pub id: Cow<'static, str>,
    /// What is judged, where there are several.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub subject: Option<Subject>,
    /// The load combination, where it matters.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub combination: Option<String>,
    /// Outcome.
    pub status: CheckStatus,
    /// Which side is the limit.
    pub relation: Relation,
    /// What is asked for.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub demand: Option<Shown>,
    /// What is there.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub capacity: Option<Shown>,
    /// Demand over capacity; at most 1 passes. Left out where the capacity is nil.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub utilisation_ratio: Option<f64>,
    /// Among the checks of this id, the one with the highest utilisation.
    pub governing: bool,
    /// Why it could not be judged, or what a failure means.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub reason: Option<String>,
    /// Where the rule comes from.
    pub source: SourceNote,
    /// An unjudged check holds the verdict back only when it is needed.
    #[serde(skip, default)]
    pub(crate) needed: bool,
    /// A failure that driving the pile deeper can still mend.
    #[serde(skip, default)]
    pub(crate) deeper_may_do: bool,
}

/// Utilisation of `capacity` by `demand`, and whether it passes.
///
/// u = demand / capacity; passes when u rounded to the nine printed digits is at most
/// 1, so that what is printed decides. No demand (zero or less) always passes with
/// u = 0 unless the capacity is negative; a demand on no capacity (zero or less) fails
/// without a ratio. Both in the same unit. Source: rule of this service.
pub fn utilisation(demand: f64, capacity: f64) -> (Option<f64>, bool) {
    if capacity > 0.0 {
        let ratio = (demand / capacity).max(0.0);
        (Some(ratio), round9(ratio) <= 1.0)
    } else if demand <= 0.0 && capacity == 0.0 {
        (Some(0.0), true)
    } else if demand <= capacity {
        (None, true)
    } else {
        (None, false)
    }
}

impl Check {
    /// `demand` must be at most `capacity`. Both in the same unit.
    pub fn at_most(
        def: &'static CheckDef,
        demand: impl Into<Shown>,
        capacity: impl Into<Shown>,
        source: &'static Reference,
    ) -> Self {
        Self::judged(
            def,
            Relation::AtMost,
            demand.into(),
            capacity.into(),
            source,
        )
    }

    /// `provided` must be at least `required`. Both in the same unit.
    pub fn at_least(
        def: &'static CheckDef,
        required: impl Into<Shown>,
        provided: impl Into<Shown>,
        source: &'static Reference,
    ) -> Self {
        Self::judged(
            def,
            Relation::AtLeast,
            required.into(),
            provided.into(),
            source,
        )
    }

    fn judged(
        def: &'static CheckDef,
        relation: Relation,
        demand: Shown,
        capacity: Shown,
        source: &'static Reference,
    ) -> Self {
        let (ratio, passes) = utilisation(demand.value(), capacity.value());
        let status = if passes {
            CheckStatus::Pass
        } else {
            CheckStatus::Fail
        };
        Self {
            demand: Some(demand),
            capacity: Some(capacity),
            utilisation_ratio: ratio,
            status,
            ..Self::blank(def, relation, source)
        }
    }

    /// A check that could not be judged; `reason` is a code or a sentence.
    pub fn not_evaluated(
        def: &'static CheckDef,
        reason: impl Into<String>,
        source: &'static Reference,
    ) -> Self {
        Self {
            reason: Some(reason.into()),
            ..Self::blank(def, Relation::AtMost, source)
        }
    }

    fn blank(def: &'static CheckDef, relation: Relation, source: &'static Reference) -> Self {
        Self {
            id: def.id.into(),
            subject: None,
            combination: None,
            status: CheckStatus::NotEvaluated,
            relation,
            demand: None,
            capacity: None,
            utilisation_ratio: None,
            governing: false,
            reason: None,
            source: source.into(),
            needed: true,
            deeper_may_do: false,
        }
    }

    /// What is judged.
    pub fn subject(mut self, kind: SubjectKind, label: impl Into<String>) -> Self {
        self.subject = Some(Subject::new(kind, label));
        self
    }

    /// The load combination it is judged in.
    pub fn combination(mut self, name: impl Into<String>) -> Self {
        self.combination = Some(name.into());
        self
    }

    /// What a failure means or what it rests on.
    pub fn reason(mut self, reason: impl Into<String>) -> Self {
        self.reason = Some(reason.into());
        self
    }

    /// A failure is only worth a look: it becomes `warn` and never changes the verdict.
    pub fn advisory(mut self) -> Self {
        if self.status == CheckStatus::Fail {
            self.status = CheckStatus::Warn;
        }
        self.needed = false;
        self
    }

    /// A failure is a proof that is missing or out of date: it becomes `not_evaluated` with its
    /// numbers and leaves the verdict open.
    pub fn unproven(mut self) -> Self {
        if self.status == CheckStatus::Fail {
            self.status = CheckStatus::NotEvaluated;
        }
        self
    }

    /// A failure is mended by driving the pile deeper: where no other kind of failure is left,
    /// the verdict is to go on.
    pub fn deeper_may_do(mut self) -> Self {
        self.deeper_may_do = true;
        self
    }

    /// Whether it passed.
    pub fn passed(&self) -> bool {
        self.status == CheckStatus::Pass
    }
}

/// Marks, for each id, the judged check with the highest utilisation (first of equals);
/// a failed one without a ratio counts as the highest.
pub(crate) fn mark_governing(checks: &mut [Check]) {
    let mut seen: Vec<(Cow<'static, str>, usize, f64)> = Vec::new();
    for (i, check) in checks.iter().enumerate() {
        if check.status == CheckStatus::NotEvaluated {
            continue;
        }
        let u = check
            .utilisation_ratio
            .unwrap_or(if check.passed() { 0.0 } else { f64::INFINITY });
        match seen.iter_mut().find(|(id, _, _)| *id == check.id) {
            Some(entry) if u > entry.2 => (entry.1, entry.2) = (i, u),
            Some(_) => {}
            None => seen.push((check.id.clone(), i, u)),
        }
    }
    for (_, i, _) in seen {
        checks[i].governing = true;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn on_the_limit_passes_and_what_is_printed_decides() {
        assert!(utilisation(0.25 * 0.3048, 3.0 * 0.0254).1);
        assert!(utilisation(3.0 * 0.0254, 0.25 * 0.3048).1);
        assert!(utilisation(1.000_000_004, 1.0).1);
        assert!(!utilisation(1.000_000_006, 1.0).1);
        assert_eq!(utilisation(0.0, 0.0), (Some(0.0), true));
        assert_eq!(utilisation(1.0, 0.0), (None, false));
        assert_eq!(utilisation(-1.0, 2.0), (Some(0.0), true));
        assert_eq!(utilisation(0.0, -1.0), (None, false));
    }
}
