//! What is wrong with a request, one entry a fault, and the refusal that holds them.
//! Knows nothing of HTTP.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use crate::catalogue::RefusalDef;
use crate::source::{Reference, SourceNote};

/// One fault in a request.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Issue {
    /// JSON pointer (RFC 6901) to the member at fault, or to the parent of a missing one.
    pub pointer: String,
    /// Stable code, listed on the `/problems` page.
    pub code: Cow<'static, str>,
    /// What is wrong with it, in words.
    pub detail: String,
    /// The limit that was crossed.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub limit: Option<String>,
    /// Where the limit comes from.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub source: Option<SourceNote>,
}

impl Issue {
    /// A fault at a place in the request.
    pub fn new(
        pointer: impl Into<String>,
        code: &'static RefusalDef,
        detail: impl Into<String>,
    ) -> Self {
        Self {
            pointer: pointer.into(),
            code: code.id.into(),
            detail: detail.into(),
            limit: None,
            source: None,
        }
    }

    /// The limit that was crossed, in words or numbers.
    pub fn limit(mut self, limit: impl Into<String>) -> Self {
        self.limit = Some(limit.into());
        self
    }

    /// Where the limit comes from.
    pub fn source(mut self, source: &'static Reference) -> Self {
        self.source = Some(source.into());
        self
    }
}

/// Why no answer can be given: every physical or logical fault found.
#[derive(Debug, Clone, PartialEq)]
pub struct Refusal {
    /// Sorted by pointer, then code; never empty.
    pub issues: Vec<Issue>,
    /// The work was stopped from outside (deadline or dropped connection).
    pub interrupted: bool,
}

impl Refusal {
    /// A refusal for all the faults found.
    pub fn of(mut issues: Vec<Issue>) -> Self {
        sort(&mut issues);
        Self {
            issues,
            interrupted: false,
        }
    }

    /// The work was told to stop.
    pub fn interrupted() -> Self {
        Self {
            issues: Vec::new(),
            interrupted: true,
        }
    }
}

impl From<Issue> for Refusal {
    fn from(issue: Issue) -> Self {
        Self::of(vec![issue])
    }
}

/// Sorts by pointer, then code, and drops exact repeats.
pub fn sort(issues: &mut Vec<Issue>) {
    issues.sort_by(|a, b| (&a.pointer, &a.code).cmp(&(&b.pointer, &b.code)));
    issues.dedup();
}

/// `Ok` when nothing was found wrong.
pub fn none_of(issues: Vec<Issue>) -> Result<(), Refusal> {
    if issues.is_empty() {
        Ok(())
    } else {
        Err(Refusal::of(issues))
    }
}
