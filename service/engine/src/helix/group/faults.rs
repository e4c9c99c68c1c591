//! What is wrong with a group: its plan, its block and the load on it.

use super::plan::Centres;
use super::request::{GroupPlan, UpliftBlock};
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, list_length};
use crate::helix::basis_faults::{directions, level};
use crate::helix::codes::refusals;
use crate::helix::plates::{SAME_DEPTH_M, told};
use crate::helix::request::{AxialDirections, Request};
use crate::limits;
use crate::quantity::{Length, Size};
use crate::soil::{Strata, Strength};
use crate::source::{BEARWELL_CHOICE, BLOCK_LEANING};

/// Faults in the length of the list of piles.
pub(in crate::helix) fn group_lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(group) = &request.group
        && let GroupPlan::Positions(list) = &group.plan
    {
        let at = "/group/plan/positions/piles";
        list_length(issues, at, list.piles.len(), 2, limits::GROUP_PILES);
    }
}

/// Every fault of the group; those of its block only in a whole profile.
pub(in crate::helix) fn group_faults(request: &Request, strata: Option<&Strata>) -> Vec<Issue> {
    let Some(group) = &request.group else {
        return Vec::new();
    };
    let mut issues = plan_faults(&group.plan);
    if issues.is_empty() {
        issues.extend(overlap(request, &group.plan));
    }
    let pulled = request.directions.unwrap_or_default() != AxialDirections::Compression;
    if let Some(strata) = strata
        && group.uplift_block == Some(UpliftBlock::LeaningSides)
        && pulled
    {
        issues.extend(leaning_faults(request, strata));
    }
    if let Some(demand) = &group.demand {
        let at = "/group/demand";
        if request.design_basis.is_none() {
            let detail = "`design_basis` is needed: the load on the group is judged on it";
            issues.push(Issue::new("", &MISSING_MEMBER, detail));
        }
        level(request.design_basis.as_ref(), demand.level, at, &mut issues);
        let sent = [demand.compression.is_some(), demand.tension.is_some()];
        directions(request, at, sent, &mut issues);
    }
    issues
}

fn plan_faults(plan: &GroupPlan) -> Vec<Issue> {
    const AT: &str = "/group/plan/array";
    let GroupPlan::Array(array) = plan else {
        return Vec::new();
    };
    let mut issues = Vec::new();
    if array.row_count * array.column_count < 2 {
        let detail = "one row of one pile is no group";
        issues.push(Issue::new(AT, &refusals::GROUP_OF_ONE, detail).limit("2 piles"));
    }
    for (count, spacing, name) in [
        (array.row_count, array.row_spacing, "row_spacing"),
        (array.column_count, array.column_spacing, "column_spacing"),
    ] {
        if count > 1 && spacing.is_none() {
            issues.push(Issue::new(
                AT,
                &MISSING_MEMBER,
                format!("`{name}` is needed"),
            ));
        }
    }
    issues
}

/// Helices of two piles in the same place.
fn overlap(request: &Request, plan: &GroupPlan) -> Option<Issue> {
    let largest = request.pile.helices.iter().map(|h| h.diameter);
    let largest = largest.fold(Size::ZERO, Size::max);
    let spacing = Centres::of(plan)?.least_spacing;
    let apart = spacing.si() >= largest.si() * (1.0 - 1e-9);
    (!apart).then(|| {
        Issue::new(
            "/group/plan",
            &refusals::GROUP_HELICES_OVERLAP,
            format!(
                "two piles are {} apart, centre to centre",
                Length::ROLE.in_both_systems(spacing.si())
            ),
        )
        .limit(Size::ROLE.in_both_systems(largest.si()))
        .source(&BEARWELL_CHOICE)
    })
}

/// Soil other than sand and gravel above the lowest helix, where the sides are to lean.
fn leaning_faults(request: &Request, strata: &Strata) -> Vec<Issue> {
    let depths = request.pile.helices.iter().map(|h| h.depth);
    let base = depths.fold(Length::ZERO, Length::max);
    strata
        .layers
        .iter()
        .filter(|l| l.top.si() < base.si() - SAME_DEPTH_M)
        .filter(|l| !matches!(l.strength, Strength::Drained { .. }))
        .map(|l| {
            Issue::new(
                "/group/uplift_block",
                &refusals::LEANING_SIDES_IN_OTHER_SOIL,
                format!(
                    "layer {} from {} is not sand or gravel",
                    l.label,
                    told(l.top)
                ),
            )
            .source(&BLOCK_LEANING)
        })
        .collect()
}
