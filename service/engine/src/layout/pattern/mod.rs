//! Loads that may be absent on single spans. The load cases of the kinds that may be absent
//! are cut at the piles; each part is solved by itself, and the worst sum of parts is
//! taken for every pile and for every point of the beams.
//!
//! A sum of parts is greatest where each part counts that adds to it and none that takes
//! from it: so the n parts give the extremes of all 2^n ways to load them.

mod apply;
mod beams;
mod parts;
mod piles;
mod solve;

pub(super) use apply::apply;
pub(super) use parts::parts;
pub(super) use solve::{Asked, Stopped, enveloped};

use super::codes::{refusals, warnings};
use super::combine::{Loading, code_of};
use super::request::{LoadKind, PilePlacement, Request};
use crate::contract::{Issue, Work, list_length};

/// Most parts that are solved by themselves.
pub(super) const PARTS_MAX: usize = 1_000;

/// Most kinds that may be absent: all but one.
const KINDS_MAX: usize = 8;

/// Kinds of load that may be absent; none where no load may.
pub(super) fn kinds(request: &Request) -> Option<Vec<LoadKind>> {
    let asked = request.pattern_load.as_ref()?;
    let mut kinds = asked.kinds.clone().unwrap_or_else(|| vec![LoadKind::Live]);
    kinds.sort_unstable();
    kinds.dedup();
    Some(kinds)
}

/// Load cases that may be absent; none where no load may.
pub(super) fn cases(request: &Request, loading: &Loading) -> Option<Vec<usize>> {
    let kinds = kinds(request)?;
    let all = loading.cases.iter().enumerate();
    Some(
        all.filter(|(_, c)| kinds.contains(&c.kind))
            .map(|(i, _)| i)
            .collect(),
    )
}

/// Faults in the lengths of lists.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    let asked = request.pattern_load.as_ref();
    if let Some(kinds) = asked.and_then(|a| a.kinds.as_ref()) {
        list_length(issues, "/pattern_load/kinds", kinds.len(), 1, KINDS_MAX);
    }
}

/// Faults of the question, and what is asked in vain.
pub(super) fn faults(
    request: &Request,
    loading: &Loading,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) {
    let Some(asked) = &request.pattern_load else {
        return;
    };
    for (i, kind) in asked.kinds.iter().flatten().enumerate() {
        if *kind == LoadKind::Dead {
            issues.push(Issue::new(
                format!("/pattern_load/kinds/{i}"),
                &refusals::PATTERN_OF_DEAD_LOAD,
                "`dead` load is always there",
            ));
        }
    }
    if types_are_open(request) {
        issues.push(Issue::new(
            "/pattern_load",
            &refusals::PATTERN_WITH_OPEN_TYPES,
            "send one type, or tell the type of every pile that is given",
        ));
    }
    for kind in kinds(request).into_iter().flatten() {
        if loading.cases.iter().all(|c| c.kind != kind) {
            work.warn(
                &warnings::PATTERN_WITHOUT_LOAD,
                format!("`{}`", code_of(kind)),
            );
        }
    }
}

/// Whether a pile takes its type, of several, by what it carries with all loads everywhere.
fn types_are_open(request: &Request) -> bool {
    let several = request
        .pile_types
        .as_ref()
        .is_some_and(|t| t.types.len() > 1);
    several
        && match &request.piles {
            PilePlacement::Search(_) => true,
            PilePlacement::Given(given) => given
                .positions
                .iter()
                .any(|p| p.pile_type.is_none() && (p.compression.is_none() || p.tension.is_none())),
        }
}
