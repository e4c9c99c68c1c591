//! Where runs meet: at ends, where one ends on another, and where two cross.

use super::runs::overlap;
use super::{Mark, Meeting, Plan, Run, TOLERANCE, root};
use crate::contract::Issue;
use crate::layout::codes::refusals;

/// Most places where beams meet.
const MEETINGS_MAX: usize = 20_000;

/// A place that two runs have in common.
#[derive(Debug, Clone, Copy)]
struct Hit {
    on: [(usize, f64); 2],
}

/// Finds all meetings and marks them on the runs.
pub(super) fn find(plan: &mut Plan, issues: &mut Vec<Issue>) {
    let hits = hits(&plan.runs, &plan.called, issues);
    if hits.len() > MEETINGS_MAX {
        issues.push(
            Issue::new(
                "/beams",
                &refusals::PLAN_TOO_INTERLINKED,
                format!("{} places where beams meet", hits.len()),
            )
            .limit(MEETINGS_MAX.to_string()),
        );
        return;
    }
    let mut set: Vec<usize> = (0..hits.len()).collect();
    // hits that are one place on some run are one meeting
    let mut marks: Vec<Vec<(f64, usize)>> = vec![Vec::new(); plan.runs.len()];
    for (h, hit) in hits.iter().enumerate() {
        for (run, at) in hit.on {
            marks[run].push((at, h));
        }
    }
    for own in &mut marks {
        own.sort_by(|a, b| a.0.total_cmp(&b.0));
        for pair in own.windows(2) {
            if pair[1].0 - pair[0].0 <= TOLERANCE {
                let (a, b) = (root(&mut set, pair[0].1), root(&mut set, pair[1].1));
                set[a.max(b)] = a.min(b);
            }
        }
    }
    let mut index = vec![usize::MAX; hits.len()];
    for (run, own) in marks.iter().enumerate() {
        for (at, h) in own {
            let r = root(&mut set, *h);
            if index[r] == usize::MAX {
                index[r] = plan.meetings.len();
                plan.meetings.push(Meeting {
                    on: Vec::new(),
                    corner: false,
                });
            }
            let meeting = &mut plan.meetings[index[r]];
            if meeting.on.iter().all(|(other, _)| *other != run) {
                let at = snapped(*at, plan.runs[run].length);
                meeting.on.push((run, at));
                plan.runs[run].meetings.push(Mark {
                    at,
                    meeting: index[r],
                });
            }
        }
    }
    for meeting in &mut plan.meetings {
        let runs = &plan.runs;
        meeting.corner = meeting.on.len() == 2
            && meeting
                .on
                .iter()
                .all(|(run, at)| *at == 0.0 || *at == runs[*run].length);
    }
}

/// A place next to an end is the end.
fn snapped(at: f64, length: f64) -> f64 {
    if at <= TOLERANCE {
        0.0
    } else if at >= length - TOLERANCE {
        length
    } else {
        at
    }
}

fn hits(runs: &[Run], called: &[String], issues: &mut Vec<Issue>) -> Vec<Hit> {
    let boxes: Vec<[f64; 4]> = runs.iter().map(bounds).collect();
    let mut by_x: Vec<usize> = (0..runs.len()).collect();
    by_x.sort_by(|a, b| boxes[*a][0].total_cmp(&boxes[*b][0]).then(a.cmp(b)));
    let mut found = Vec::new();
    for (k, i) in by_x.iter().enumerate() {
        for j in &by_x[k + 1..] {
            if boxes[*j][0] > boxes[*i][1] {
                break;
            }
            if boxes[*j][2] <= boxes[*i][3] && boxes[*i][2] <= boxes[*j][3] {
                let (a, b) = ((*i).min(*j), (*i).max(*j));
                pair(runs, (a, b), called, &mut found, issues);
            }
        }
    }
    found.sort_by_key(|h: &Hit| (h.on[0].0, h.on[1].0));
    found
}

/// Bounds of a run, widened by the tolerance: x from, to, y from, to.
fn bounds(run: &Run) -> [f64; 4] {
    let (a, b) = (run.start, run.point(run.length));
    [
        a.x.min(b.x) - TOLERANCE,
        a.x.max(b.x) + TOLERANCE,
        a.y.min(b.y) - TOLERANCE,
        a.y.max(b.y) + TOLERANCE,
    ]
}

fn pair(
    runs: &[Run],
    (i, j): (usize, usize),
    called: &[String],
    found: &mut Vec<Hit>,
    issues: &mut Vec<Issue>,
) {
    let mut own: Vec<(f64, f64)> = Vec::new();
    for at in [0.0, runs[i].length] {
        if let Some(t) = foot(&runs[i], at, &runs[j]) {
            own.push((at, t));
        }
    }
    for at in [0.0, runs[j].length] {
        if let Some(s) = foot(&runs[j], at, &runs[i]) {
            own.push((s, at));
        }
    }
    if own.is_empty() {
        own.extend(crossing(&runs[i], &runs[j]));
    }
    let Some(first) = own.first().copied() else {
        return;
    };
    // an end on an end is found from both sides: keep one; two places are an overlap
    if own.iter().any(|o| (o.0 - first.0).abs() > 2.0 * TOLERANCE) {
        overlap(
            runs[i].beam_at(first.0),
            runs[j].beam_at(first.1),
            called,
            issues,
        );
        return;
    }
    found.push(Hit {
        on: [(i, first.0), (j, first.1)],
    });
}

/// Place on `other` of the end `at` of `run`, if it is there.
fn foot(run: &Run, at: f64, other: &Run) -> Option<f64> {
    let way = other.start.to(run.point(at));
    let along = way.dot(other.direction);
    let off = way.cross(other.direction).abs();
    (off <= TOLERANCE && along >= -TOLERANCE && along <= other.length + TOLERANCE)
        .then(|| snapped(along, other.length))
}

/// Places on both runs where they cross away from their ends.
fn crossing(a: &Run, b: &Run) -> Option<(f64, f64)> {
    let turn = a.direction.cross(b.direction);
    if turn == 0.0 {
        return None;
    }
    let way = a.start.to(b.start);
    let s = way.cross(b.direction) / turn;
    let t = way.cross(a.direction) / turn;
    (s > 0.0 && s < a.length && t > 0.0 && t < b.length).then_some((s, t))
}
