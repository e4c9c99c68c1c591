//! Every load of a request, and the load cases they make. Forms no combinations.

use super::codes::refusals;
use super::combine::Case;
use super::request::{LoadKind, Request, SlabLoad};
use crate::contract::Issue;

/// Most load cases (kinds and cases).
pub(super) const CASES_MAX: usize = 64;

/// Every load with its pointer.
pub(super) fn every_load(
    request: &Request,
) -> impl Iterator<Item = (String, LoadKind, Option<&str>)> {
    let lines = request.beams.iter().enumerate().flat_map(|(b, beam)| {
        beam.line_loads
            .iter()
            .flatten()
            .enumerate()
            .map(move |(i, l)| {
                let case = l.case.as_ref().map(|c| c.as_str());
                (format!("/beams/{b}/line_loads/{i}"), l.kind, case)
            })
    });
    let points = request
        .point_loads
        .iter()
        .flatten()
        .enumerate()
        .map(|(i, l)| {
            let case = l.case.as_ref().map(|c| c.as_str());
            (format!("/point_loads/{i}"), l.kind, case)
        });
    let moments = request
        .point_moments
        .iter()
        .flatten()
        .enumerate()
        .map(|(i, m)| {
            let case = m.case.as_ref().map(|c| c.as_str());
            (format!("/point_moments/{i}"), m.kind, case)
        });
    lines
        .chain(points)
        .chain(moments)
        .chain(slab_loads(request).map(|(s, i, l)| {
            let case = l.case.as_ref().map(|c| c.as_str());
            (format!("/slabs/{s}/loads/{i}"), l.kind, case)
        }))
}

/// Loads of all slabs, by slab and place in its list.
fn slab_loads(request: &Request) -> impl Iterator<Item = (usize, usize, &SlabLoad)> {
    let slabs = request.slabs.iter().flatten().enumerate();
    slabs.flat_map(|(s, slab)| slab.loads.iter().enumerate().map(move |(i, l)| (s, i, l)))
}

/// Kinds and cases of the loads that were sent, in order.
pub(super) fn cases_of(request: &Request, issues: &mut Vec<Issue>) -> Vec<Case> {
    let mut cases: Vec<Case> = Vec::new();
    let mut note = |kind: LoadKind, name: Option<&str>| {
        if !cases
            .iter()
            .any(|c| c.kind == kind && c.name.as_deref() == name)
        {
            cases.push(Case {
                kind,
                name: name.map(str::to_owned),
            });
        }
        cases.len() <= CASES_MAX
    };
    let lines = request
        .beams
        .iter()
        .flat_map(|b| b.line_loads.iter().flatten());
    let fits = lines
        .map(|l| (l.kind, &l.case))
        .chain(
            request
                .point_loads
                .iter()
                .flatten()
                .map(|l| (l.kind, &l.case)),
        )
        .chain(
            request
                .point_moments
                .iter()
                .flatten()
                .map(|m| (m.kind, &m.case)),
        )
        .chain(slab_loads(request).map(|(_, _, l)| (l.kind, &l.case)))
        .all(|(kind, case)| note(kind, case.as_ref().map(|c| c.as_str())));
    if !fits {
        issues.push(
            Issue::new(
                "",
                &refusals::TOO_MANY_LOAD_CASES,
                format!("more than {CASES_MAX} kinds and cases"),
            )
            .limit(CASES_MAX.to_string()),
        );
        cases.truncate(CASES_MAX);
    }
    cases.sort();
    cases
}
