//! The calculation contract: what a calculation is, how one is run, and what comes
//! out. HTTP, batch, command line, client and document all follow from it.

mod answer;
mod call;
mod check;
mod digest;
mod issue;
mod work;

use serde::Serialize;
use serde::de::DeserializeOwned;
use validator::Validate;

pub use answer::{
    Answer, Caution, DefaultUsed, MethodUse, Provenance, Verdict, VerdictReason, Warning,
};
pub use call::{Call, Include, Options, Paper, SHARED};
pub use check::{Check, CheckStatus, Relation, Subject, SubjectKind, utilisation};
pub use digest::request_digest;
pub use issue::{Issue, Refusal, none_of, sort as sort_issues};
pub use work::Work;

/// Set of methods and defaults in force. Raised when any method version or default is.
pub const CALCULATION_BASIS: &str = "2026.5";

/// A type with a place in the API document; nothing without the feature `openapi`.
#[cfg(feature = "openapi")]
pub trait Documented: utoipa::ToSchema {}
#[cfg(feature = "openapi")]
impl<T: utoipa::ToSchema> Documented for T {}

/// A type with a place in the API document; nothing without the feature `openapi`.
#[cfg(not(feature = "openapi"))]
pub trait Documented {}
#[cfg(not(feature = "openapi"))]
impl<T> Documented for T {}

/// A calculation by its name and types; what a client needs to know of it.
pub trait Noun: 'static {
    /// Name in the path, kebab-case.
    const NAME: &'static str;
    /// The question it answers, one line.
    const SUMMARY: &'static str;
    /// What is asked.
    type Request: DeserializeOwned + Serialize + Validate + Documented + Send + Sync + 'static;
    /// What is answered.
    type Outcome: Serialize + DeserializeOwned + Documented + Send + 'static;
}

/// A calculation that can be run.
pub trait Calculation: Noun {
    /// Faults in the lengths of lists, found before anything else is looked at.
    fn lengths(request: &Self::Request, issues: &mut Vec<Issue>);

    /// The calculation itself. Everything beside the numbers goes to `work`.
    fn evaluate(request: &Self::Request, work: &mut Work) -> Result<Self::Outcome, Refusal>;
}

/// Adds an issue when a list is shorter than `min` or longer than `max`.
pub fn list_length(
    issues: &mut Vec<Issue>,
    pointer: impl Into<String>,
    length: usize,
    min: usize,
    max: usize,
) {
    use crate::catalogue::refusals::{LIST_TOO_LONG, LIST_TOO_SHORT};
    if length < min {
        issues.push(
            Issue::new(
                pointer,
                &LIST_TOO_SHORT,
                format!("{length} given, at least {min} needed"),
            )
            .limit(min.to_string()),
        );
    } else if length > max {
        issues.push(
            Issue::new(
                pointer,
                &LIST_TOO_LONG,
                format!("{length} given, at most {max} accepted"),
            )
            .limit(max.to_string()),
        );
    }
}

/// The verdict that follows from what a workbench holds so far, with the checks that govern
/// marked.
#[cfg(feature = "compute")]
pub(crate) fn verdict_so_far(work: &mut Work) -> Verdict {
    check::mark_governing(&mut work.checks);
    answer::verdict(&work.checks, &work.hold_backs).0
}

/// Runs a calculation whose request has already been read and range-checked.
pub fn run<C: Calculation>(
    call: &Call<C::Request>,
    mut work: Work,
) -> Result<Answer<C::Outcome>, Refusal> {
    let result = C::evaluate(&call.request, &mut work)?;
    check::mark_governing(&mut work.checks);
    let (verdict, verdict_reasons) = answer::verdict(&work.checks, &work.hold_backs);
    Ok(Answer {
        verdict,
        verdict_reasons,
        result,
        checks: work.checks,
        warnings: work.warnings,
        cautions: work.cautions,
        methods: work.methods,
        defaults: work.defaults,
        provenance: Provenance {
            calculation_basis: CALCULATION_BASIS.into(),
            request_digest: request_digest(&call.request),
        },
        steps: work.trace.into_steps(),
    })
}
