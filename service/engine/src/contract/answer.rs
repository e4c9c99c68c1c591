//! The answer every calculation gives: verdict, result, checks, warnings, cautions,
//! methods, provenance and steps; and how the verdict follows from the checks.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::check::{Check, CheckStatus, Subject};
use crate::quantity::Shown;
use crate::source::Status;
use crate::trace::Step;

/// One vocabulary of verdicts for all calculations.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Every needed check passes.
    Accept,
    /// Nothing fails, but something needed could not be judged.
    Provisional,
    /// Something fails.
    Reject,
    /// Keep driving: what fails can still be met deeper (`installation-record` and
    /// `installation-job` only).
    Continue,
    /// No demand was sent, so there is nothing to judge.
    NotAsked,
}

/// What decided the verdict.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct VerdictReason {
    /// Code of the check or warning that decided.
    pub code: Cow<'static, str>,
    /// What it is about.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub subject: Option<Subject>,
    /// In words.
    pub detail: String,
}

/// Something worth knowing that does not change the verdict by itself.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Warning {
    /// Stable code, listed in `GET /v1/warnings`.
    pub code: Cow<'static, str>,
    /// What it is about.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub subject: Option<Subject>,
    /// In words, with the numbers.
    pub detail: String,
}

/// A fixed caution that applies to this answer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Caution {
    /// Stable code, listed in `GET /v1/cautions`.
    pub code: Cow<'static, str>,
    /// The text to show.
    pub text: Cow<'static, str>,
}

/// A method that was used, with its version.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MethodUse {
    /// Name, listed in `GET /v1/methods`.
    pub id: Cow<'static, str>,
    /// Raised whenever a number can move.
    pub version: u32,
}

/// A published or customary value that was taken because the request left it out.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DefaultUsed {
    /// Name of the value.
    pub name: Cow<'static, str>,
    /// The value; left out for a table or a set of values.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub value: Option<Shown>,
    /// Name of its source in `GET /v1/references`.
    pub reference: Cow<'static, str>,
    /// How far the source has been checked.
    pub status: Status,
}

/// What the answer rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Provenance {
    /// Set of methods and defaults; raised when any of them changes.
    pub calculation_basis: Cow<'static, str>,
    /// SHA-256 of the request in plain form, hexadecimal.
    pub request_digest: String,
}

/// The answer of a calculation.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Answer<O> {
    /// Whether it may be used as asked.
    pub verdict: Verdict,
    /// What decided the verdict.
    pub verdict_reasons: Vec<VerdictReason>,
    /// The numbers.
    pub result: O,
    /// Every demand against its capacity.
    pub checks: Vec<Check>,
    /// Worth knowing.
    pub warnings: Vec<Warning>,
    /// To be shown to the reader.
    pub cautions: Vec<Caution>,
    /// Methods used.
    pub methods: Vec<MethodUse>,
    /// Published or customary values taken because the request left them out, in the order they were
    /// taken. Every other number of the request is the caller's.
    #[serde(default)]
    pub defaults: Vec<DefaultUsed>,
    /// What the answer rests on.
    pub provenance: Provenance,
    /// The working, in order, where `include` asked for `steps`.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub steps: Option<Vec<Step>>,
}

/// The verdict that follows from the checks, with what decided it.
///
/// Any failed check: reject, or continue where driving deeper can mend every one. Else any needed check not evaluated, or any reason to hold
/// back: provisional. Else accept; with no needed check at all: not asked.
pub(crate) fn verdict(
    checks: &[Check],
    hold_backs: &[VerdictReason],
) -> (Verdict, Vec<VerdictReason>) {
    let failed: Vec<_> = checks
        .iter()
        .filter(|c| c.status == CheckStatus::Fail)
        .map(reason)
        .collect();
    if !failed.is_empty() {
        let mut all = checks.iter().filter(|c| c.status == CheckStatus::Fail);
        let verdict = if all.all(|c| c.deeper_may_do) {
            Verdict::Continue
        } else {
            Verdict::Reject
        };
        return (verdict, failed);
    }
    let mut open: Vec<_> = checks
        .iter()
        .filter(|c| c.status == CheckStatus::NotEvaluated && c.needed)
        .map(reason)
        .collect();
    open.extend(hold_backs.iter().cloned());
    if !open.is_empty() {
        return (Verdict::Provisional, open);
    }
    // what is only worth a look accepts nothing
    if !checks.iter().any(|c| c.needed) {
        return (Verdict::NotAsked, Vec::new());
    }
    (Verdict::Accept, Vec::new())
}

fn reason(check: &Check) -> VerdictReason {
    let mut detail = match (check.status, check.utilisation_ratio) {
        (CheckStatus::Fail, Some(u)) => {
            format!("utilisation {}", crate::quantity::round9(u))
        }
        (CheckStatus::Fail, None) => "nothing is there to meet the demand".to_owned(),
        _ => "not evaluated".to_owned(),
    };
    if let Some(why) = &check.reason {
        detail.push_str(": ");
        detail.push_str(why);
    }
    VerdictReason {
        code: check.id.clone(),
        subject: check.subject.clone(),
        detail,
    }
}
