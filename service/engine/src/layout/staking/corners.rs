//! Distances across corners for the tape: diagonals of what four straight runs enclose, and
//! the ties of every corner to the ends of the longest run.

use std::collections::{BTreeMap, BTreeSet};

use super::Stakes;
use super::transform::distance;
use crate::layout::outcome::{CornerFrame, CornerTie, CornerTies, LineEnd, TapeDistance};
use crate::layout::plan::{Point, TOLERANCE};
use crate::quantity::Length;
use crate::trace::Trace;

/// Most frames that are listed.
const FRAMES_MAX: usize = 100;
/// Most corners that are tied.
const TIES_MAX: usize = 400;

/// A run that ends on another one at each end: the two, and where on them.
struct Bridge {
    run: usize,
    at: f64,
}

/// Frames, the largest first.
pub(super) fn frames(stakes: &Stakes<'_>, trace: &mut Trace) -> Vec<CornerFrame> {
    let mut bridges: BTreeMap<(usize, usize), Vec<Bridge>> = BTreeMap::new();
    let ends = ends_on(stakes);
    for (run, [starts, stops]) in ends.iter().enumerate() {
        for (c, at) in starts {
            for (d, _) in stops {
                let bridge = Bridge { run, at: *at };
                bridges.entry((*c, *d)).or_default().push(bridge);
            }
        }
    }
    let mut seen = BTreeSet::new();
    let mut found: Vec<([usize; 2], [Point; 4])> = Vec::new();
    for mut group in bridges.into_values() {
        group.sort_by(|a, b| a.at.total_cmp(&b.at).then(a.run.cmp(&b.run)));
        let (Some(first), Some(last)) = (group.first(), group.last()) else {
            continue;
        };
        let [a, b] = [first.run, last.run].map(|r| &stakes.plan.runs[r]);
        let around = [a.start, a.point(a.length), b.point(b.length), b.start];
        let sides_open = (0..4).all(|i| around[i].distance(around[(i + 1) % 4]) > TOLERANCE);
        if first.run != last.run && sides_open && seen.insert(key(&around)) {
            found.push(([first.run, last.run], around));
        }
    }
    let size = |c: &[Point; 4]| c[0].distance(c[2]).max(c[1].distance(c[3]));
    found.sort_by(|a, b| size(&b.1).total_cmp(&size(&a.1)).then(a.0.cmp(&b.0)));
    found.truncate(FRAMES_MAX);
    found
        .iter()
        .map(|(runs, around)| frame(stakes, runs, around, trace))
        .collect()
}

/// For each end of each run the other runs on which it ends, with the place there.
fn ends_on(stakes: &Stakes<'_>) -> Vec<[Vec<(usize, f64)>; 2]> {
    let plan = stakes.plan;
    let at_end = |run: usize, at: f64| -> Vec<(usize, f64)> {
        let marks = plan.runs[run].meetings.iter().filter(|m| m.at == at);
        let on = marks.flat_map(|m| plan.meetings[m.meeting].on.iter());
        on.filter(|(other, _)| *other != run).copied().collect()
    };
    let all = 0..plan.runs.len();
    all.map(|r| [at_end(r, 0.0), at_end(r, plan.runs[r].length)])
        .collect()
}

/// The same for the same four corners, wherever one begins; whole millimetres.
fn key(around: &[Point; 4]) -> Vec<(i64, i64)> {
    let whole = |v: f64| (v * 1e3).round() as i64;
    let mut all: Vec<_> = around.iter().map(|p| (whole(p.x), whole(p.y))).collect();
    all.sort_unstable();
    all
}

fn frame(
    stakes: &Stakes<'_>,
    runs: &[usize; 2],
    around: &[Point; 4],
    trace: &mut Trace,
) -> CornerFrame {
    let middle = |a: Point, b: Point| Point {
        x: 0.5 * (a.x + b.x),
        y: 0.5 * (a.y + b.y),
    };
    let [p, q, r, s] = *around;
    let halved = middle(p, r).distance(middle(q, s)) <= TOLERANCE;
    let equal = (p.distance(r) - q.distance(s)).abs() <= TOLERANCE;
    CornerFrame {
        beams: runs.iter().flat_map(|r| stakes.beams_of(*r)).collect(),
        rectangle: halved && equal,
        diagonals: [(p, r), (q, s)]
            .map(|(a, b)| taped(stakes, &stakes.corner(a), &stakes.corner(b), trace))
            .into(),
    }
}

fn taped(stakes: &Stakes<'_>, from: &LineEnd, to: &LineEnd, trace: &mut Trace) -> TapeDistance {
    trace.about(|| match (&from.pile, &to.pile) {
        (Some(a), Some(b)) => format!("from pile {a} to pile {b}"),
        _ => "corner to corner".to_owned(),
    });
    let length = distance(to.at.x - from.at.x, to.at.y - from.at.y, trace);
    trace.about(String::new);
    TapeDistance {
        from: from.at,
        from_pile: from.pile.clone(),
        to: to.at,
        to_pile: to.pile.clone(),
        distance: length,
        distance_text: stakes.taped(length),
    }
}

/// Ties of all corners to the ends of the longest run.
pub(super) fn ties(stakes: &Stakes<'_>) -> Option<CornerTies> {
    let runs = &stakes.plan.runs;
    let mut longest = runs.first()?;
    for run in runs {
        if run.length > longest.length + TOLERANCE {
            longest = run;
        }
    }
    let (start, end) = (longest.start, longest.point(longest.length));
    let mut corners: Vec<Point> = Vec::new();
    let mut seen = BTreeSet::new();
    for run in runs {
        let near = [0.0, run.length];
        for at in near {
            let mark = run.meetings.iter().find(|m| m.at == at);
            if mark.is_none_or(|m| seen.insert(m.meeting)) {
                corners.push(run.point(at));
            }
        }
    }
    corners.retain(|c| start.to(*c).cross(longest.direction).abs() > TOLERANCE);
    if corners.is_empty() || corners.len() > TIES_MAX {
        return None;
    }
    let measured = |from: Point, to: Point| Length::from_si(from.distance(to));
    let base = taped(
        stakes,
        &stakes.corner(start),
        &stakes.corner(end),
        &mut Trace::off(),
    );
    let ties = corners.into_iter().map(|c| {
        let place = stakes.corner(c);
        let (from_start, from_end) = (measured(start, c), measured(end, c));
        CornerTie {
            at: place.at,
            pile: place.pile,
            from_start,
            from_start_text: stakes.taped(from_start),
            from_end,
            from_end_text: stakes.taped(from_end),
        }
    });
    Some(CornerTies {
        base,
        ties: ties.collect(),
    })
}
