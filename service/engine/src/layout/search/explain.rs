//! Why no piles lead along a run within the limits: the stretch, the limit, by how much.

use super::Task;
use super::places::Places;
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::plan::Run;
use crate::layout::types::Along;
use crate::quantity::{in_both_systems, round9};

fn long(v: f64) -> String {
    in_both_systems(round9(v), "m")
}

/// Names the stretch between fixed places that no spacing fits, or the end that no pile is
/// near enough to, and by how much.
pub(super) fn explain(places: &Places, task: &Task<'_>, run: &Run, issues: &mut Vec<Issue>) {
    let before = issues.len();
    let p = places;
    if p.at.is_empty() {
        issues.push(end(p, task, run, false));
        return;
    }
    if p.first == 0 {
        issues.push(end(p, task, run, false));
    }
    if p.last >= p.at.len() {
        issues.push(end(p, task, run, true));
    }
    let mut anchors: Vec<usize> = (0..p.at.len()).filter(|i| p.forced[*i]).collect();
    if p.first > 0 && anchors.first().is_none_or(|a| *a >= p.first) {
        anchors.insert(0, p.first - 1);
    }
    if anchors.last().is_none_or(|a| *a < p.last) && p.last < p.at.len() {
        anchors.push(p.last);
    }
    for pair in anchors.windows(2) {
        if !joined(p, pair[0], pair[1]) {
            issues.push(cannot(p, task, run, pair[0], pair[1]));
        }
    }
    if issues.len() == before {
        issues.push(cannot(p, task, run, 0, p.at.len() - 1));
    }
}

/// Whether piles within the spacing limits lead from one place to another.
fn joined(p: &Places, a: usize, b: usize) -> bool {
    let mut on = vec![false; b + 1];
    on[a] = true;
    for i in a..b {
        if on[i] {
            let (from, to) = p.next[i];
            for slot in &mut on[from.min(b + 1)..to.min(b + 1)] {
                *slot = true;
            }
        }
    }
    on[b]
}

/// The end of a run that no pile is near enough to.
fn end(p: &Places, task: &Task<'_>, run: &Run, far: bool) -> Issue {
    let at = if far { run.length } else { 0.0 };
    let nearest = if far { p.at.last() } else { p.at.first() };
    let plan = &task.frame.plan;
    let point = plan.outside(run.point(at));
    // a beam that ends on one that goes on rests on it
    let rests = super::bare::rests(task, p.run, at, &|m| task.barred[m].is_some());
    let member = if rests { "max_spacing" } else { "max_overhang" };
    let bars = bars(
        p.run,
        task,
        run,
        at,
        nearest.copied().unwrap_or(run.length - at),
    );
    let wanted = match nearest {
        Some(x) => format!(
            "the nearest place for a pile is {} from it: `{member}` of at least that is needed",
            long((at - x).abs())
        ),
        None => "no place is left on the run".to_owned(),
    };
    let has = match task.limits.max_overhang {
        _ if rests => long(task.limits.max_spacing.si()),
        Some(o) => long(o.si()),
        None => "a pile at the end (no `max_overhang`)".to_owned(),
    };
    // a member that was not sent cannot be pointed at
    let pointer = match task.limits.max_overhang {
        None if !rests => "/piles/search".to_owned(),
        _ => format!("/piles/search/{member}"),
    };
    Issue::new(
        pointer,
        &refusals::BEAM_END_BARRED,
        format!(
            "beam {} ends at ({}, {}) m where {bars}; {wanted}",
            task.beam_labels[run.beam_at(at)],
            round9(point.x),
            round9(point.y),
        ),
    )
    .limit(has)
}

/// What bars the places between two on a run, in words.
fn bars(index: usize, task: &Task<'_>, run: &Run, a: f64, b: f64) -> String {
    let (from, to) = (a.min(b), a.max(b));
    let mut along = Along::new(task.terrain, index, run, task.stretches);
    let mut names: Vec<String> = Vec::new();
    let snap = task.limits.snap.si();
    let first = (from / snap - 1e-9).ceil().max(0.0) as usize;
    let last = (to / snap + 1e-9).floor() as usize;
    let grid = (first..=last).map(|k| snap * k as f64);
    for x in std::iter::once(from).chain(grid).chain([to]) {
        let name = match along.barrier(x) {
            Some(k) => Some(format!("keep-out {}", task.terrain.barriers[k].name())),
            None => along
                .stretch(x)
                .map(|s| format!("forbidden stretch {} of the list", s.index)),
        };
        if let Some(name) = name
            && !names.contains(&name)
        {
            names.push(name);
        }
    }
    if names.is_empty() {
        "no pile may stand".to_owned()
    } else {
        format!("{} lets no pile stand", names.join(" and "))
    }
}

fn cannot(p: &Places, task: &Task<'_>, run: &Run, a: usize, b: usize) -> Issue {
    let (min, max) = (task.min_spacing, task.limits.max_spacing.si());
    let gap = (a..b).find(|i| round9((p.at[i + 1] - p.at[*i]) / max) > 1.0);
    let (from, to) = match gap {
        Some(i) => (p.at[i], p.at[i + 1]),
        None => (p.at[a], p.at[b]),
    };
    let d = to - from;
    let plan = &task.frame.plan;
    let (start, stop) = (plan.outside(run.point(from)), plan.outside(run.point(to)));
    let count = (d / max).ceil().max(1.0);
    let (what, member) = if gap.is_some() && p.uneven {
        let bars = bars(p.run, task, run, from, to);
        (
            format!(
                "{bars} between them, {} above the greatest spacing",
                long(d - max)
            ),
            "max_spacing",
        )
    } else if d < min {
        (
            format!("is {} below the least spacing", long(min - d)),
            "min_spacing",
        )
    } else if d / count < min {
        let one_less = (count - 1.0).max(1.0);
        (
            format!(
                "{count} spans are {} each, {} below the least spacing; {one_less} are {} each, {} above the greatest",
                long(d / count),
                long(min - d / count),
                long(d / one_less),
                long(d / one_less - max)
            ),
            "max_spacing",
        )
    } else if p.uneven {
        let bars = bars(p.run, task, run, from, to);
        (
            format!("{bars}, and the places that are left make no {count} spans or more"),
            "max_spacing",
        )
    } else {
        (
            format!("no multiples of the staking increment make {count} spans or more"),
            "snap",
        )
    };
    Issue::new(
        format!("/piles/search/{member}"),
        &refusals::SPACING_CANNOT_BE_MET,
        format!(
            "from ({}, {}) to ({}, {}) m the distance is {}: {what}",
            round9(start.x),
            round9(start.y),
            round9(stop.x),
            round9(stop.y),
            long(d)
        ),
    )
    .limit(format!("{} to {}", long(min), long(max)))
}
