//! Segments to straight runs: which segments continue each other, the direction and the
//! order of runs, and where every beam lies on them. Does not look for meetings.

use std::collections::BTreeMap;

use super::segments::Segment;
use super::{BeamPart, Plan, Point, Run, RunPart, TOLERANCE};
use crate::contract::Issue;
use crate::layout::codes::refusals;

/// A turn by more than this (as a sine) is a corner, however short its sides.
const TURN_MAX: f64 = 0.01;

/// A run that is nearer to due north than this slope counts as running north.
const NORTH: f64 = 1e-6;

/// One end of a segment: its index and 0 or 1.
type End = (usize, usize);

/// Joins segments to runs.
pub(super) fn of(
    corner: Point,
    segments: &[Segment],
    called: &[String],
    issues: &mut Vec<Issue>,
) -> Plan {
    let next = continuations(segments, called, issues);
    let mut chains = Vec::new();
    let mut used = vec![false; segments.len()];
    for seed in 0..segments.len() {
        if !used[seed] {
            let chain = chain_of(seed, &next, &mut used);
            split_bent(segments, chain, &mut chains);
        }
    }
    let mut drafts: Vec<Draft> = chains.iter().map(|c| Draft::of(segments, c)).collect();
    drafts.sort_by(|a, b| {
        let far = |d: &Draft| d.start.along(d.direction, d.length);
        a.start.order(b.start).then(far(a).order(far(b)))
    });
    finish(corner, segments, called, &drafts)
}

/// For every end of every segment, the end that goes straight on from there.
fn continuations(
    segments: &[Segment],
    called: &[String],
    issues: &mut Vec<Issue>,
) -> Vec<[Option<End>; 2]> {
    let mut at: BTreeMap<usize, Vec<End>> = BTreeMap::new();
    for (i, s) in segments.iter().enumerate() {
        at.entry(s.ends[0]).or_default().push((i, 0));
        at.entry(s.ends[1]).or_default().push((i, 1));
    }
    let mut next = vec![[None; 2]; segments.len()];
    for ends in at.values() {
        let mut pairs = Vec::new();
        for (k, e) in ends.iter().enumerate() {
            for f in &ends[k + 1..] {
                let (u, v) = (outward(segments, *e), outward(segments, *f));
                let turn = u.cross(v).abs() / (u.length() * v.length());
                let chord = u.to(v).length();
                let offset = u.cross(v).abs() / chord.max(TOLERANCE);
                if u.dot(v) > 0.0 {
                    if turn * u.length().min(v.length()) <= TOLERANCE {
                        overlap(segments[e.0].beam, segments[f.0].beam, called, issues);
                    }
                } else if turn <= TURN_MAX && offset <= TOLERANCE {
                    pairs.push((turn, *e, *f));
                }
            }
        }
        pairs.sort_by(|a, b| a.0.total_cmp(&b.0));
        for (_, e, f) in pairs {
            if next[e.0][e.1].is_none() && next[f.0][f.1].is_none() {
                next[e.0][e.1] = Some(f);
                next[f.0][f.1] = Some(e);
            }
        }
    }
    next
}

/// From the shared point of an end along its segment.
fn outward(segments: &[Segment], end: End) -> Point {
    let s = &segments[end.0];
    if end.1 == 0 { s.a.to(s.b) } else { s.b.to(s.a) }
}

pub(super) fn overlap(one: usize, other: usize, called: &[String], issues: &mut Vec<Issue>) {
    let (low, high) = (one.min(other), one.max(other));
    issues.push(Issue::new(
        format!("/beams/{high}"),
        &refusals::BEAMS_OVERLAP,
        format!("lies on beam {} over a length", called[low]),
    ));
}

/// The whole chain that a segment belongs to, each with whether it is taken forwards.
fn chain_of(seed: usize, next: &[[Option<End>; 2]], used: &mut [bool]) -> Vec<(usize, bool)> {
    // back to the chain's beginning; a chain never closes, because it hardly turns
    let mut first = (seed, true);
    loop {
        let (s, forwards) = first;
        match next[s][usize::from(!forwards)] {
            Some((t, end)) if t != seed => first = (t, end == 1),
            _ => break,
        }
    }
    let mut chain = Vec::new();
    let mut here = Some(first);
    while let Some((s, forwards)) = here {
        if used[s] {
            break;
        }
        used[s] = true;
        chain.push((s, forwards));
        here = next[s][usize::from(forwards)].map(|(t, end)| (t, end == 0));
    }
    chain
}

/// Cuts a chain at the point farthest from its chord until every part is straight.
fn split_bent(segments: &[Segment], chain: Vec<(usize, bool)>, out: &mut Vec<Vec<(usize, bool)>>) {
    let mut open = vec![chain];
    while let Some(chain) = open.pop() {
        match bend(segments, &chain) {
            Some(at) => {
                open.push(chain[at..].to_vec());
                open.push(chain[..at].to_vec());
            }
            None => out.push(chain),
        }
    }
}

/// The point of a chain that is farthest from its chord, if that is no longer straight.
fn bend(segments: &[Segment], chain: &[(usize, bool)]) -> Option<usize> {
    let first = enter(segments, chain[0]);
    let chord = first.to(leave(segments, chain[chain.len() - 1]));
    let mut worst = (None, TOLERANCE);
    for (i, c) in chain.iter().enumerate().skip(1) {
        let off = first.to(enter(segments, *c)).cross(chord).abs() / chord.length();
        if off > worst.1 {
            worst = (Some(i), off);
        }
    }
    worst.0
}

fn enter(segments: &[Segment], (s, forwards): (usize, bool)) -> Point {
    if forwards {
        segments[s].a
    } else {
        segments[s].b
    }
}

fn leave(segments: &[Segment], (s, forwards): (usize, bool)) -> Point {
    if forwards {
        segments[s].b
    } else {
        segments[s].a
    }
}

/// A run before its place in the order is known.
struct Draft {
    start: Point,
    direction: Point,
    length: f64,
    chain: Vec<(usize, bool)>,
}

impl Draft {
    fn of(segments: &[Segment], chain: &[(usize, bool)]) -> Self {
        let mut chain = chain.to_vec();
        let ends = |chain: &[(usize, bool)]| {
            (
                enter(segments, chain[0]),
                leave(segments, chain[chain.len() - 1]),
            )
        };
        let (first, last) = ends(&chain);
        let way = first.to(last);
        let east = if way.x.abs() > NORTH * way.y.abs() {
            way.x > 0.0
        } else {
            way.y > 0.0
        };
        if !east {
            chain.reverse();
            for c in &mut chain {
                c.1 = !c.1;
            }
        }
        let (start, end) = ends(&chain);
        let way = start.to(end);
        let length = way.length();
        Self {
            start,
            direction: Point {
                x: way.x / length,
                y: way.y / length,
            },
            length,
            chain,
        }
    }

    fn place(&self, p: Point) -> f64 {
        self.start.to(p).dot(self.direction)
    }
}

fn finish(corner: Point, segments: &[Segment], called: &[String], drafts: &[Draft]) -> Plan {
    let beam_count = called.len();
    let mut on_run = vec![(0, 0.0, 0.0); segments.len()];
    let mut runs = Vec::with_capacity(drafts.len());
    for (r, draft) in drafts.iter().enumerate() {
        let mut parts: Vec<RunPart> = Vec::new();
        let mut from = 0.0;
        for (i, c) in draft.chain.iter().enumerate() {
            let to = if i + 1 == draft.chain.len() {
                draft.length
            } else {
                draft.place(leave(segments, *c))
            };
            on_run[c.0] = if c.1 { (r, from, to) } else { (r, to, from) };
            let beam = segments[c.0].beam;
            match parts.last_mut() {
                Some(p) if p.beam == beam => p.to = to,
                _ => parts.push(RunPart { beam, from, to }),
            }
            from = to;
        }
        runs.push(Run {
            start: draft.start,
            direction: draft.direction,
            length: draft.length,
            parts,
            meetings: Vec::new(),
        });
    }
    let mut beam_length = vec![0.0; beam_count];
    let mut beam_parts = vec![Vec::new(); beam_count];
    for (s, (run, run_from, run_to)) in segments.iter().zip(on_run) {
        let from = beam_length[s.beam] + s.gap;
        let to = from + s.a.distance(s.b);
        beam_length[s.beam] = to;
        beam_parts[s.beam].push(BeamPart {
            from,
            to,
            run,
            run_from,
            run_to,
        });
    }
    Plan {
        corner,
        runs,
        meetings: Vec::new(),
        beam_length,
        beam_parts,
        called: called.to_vec(),
    }
}
