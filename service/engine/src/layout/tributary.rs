//! Reactions by tributary lengths, for comparison with the continuous beam: each span as
//! a simple beam, an overhang to its last pile. A beam that ends on another without a
//! pile there hands its end load on.

use super::frame::{Frame, resultant};
use super::plan::Place;
use crate::beam::{Load, Shape};

/// Where the load of a run's bearing point goes.
#[derive(Debug, Clone, Copy, PartialEq)]
enum To {
    Pile(usize),
    Run(usize, f64),
}

/// Load of every pile and case (one row a pile); none where beams rest on each other in
/// a way that has no tributary answer.
pub(super) fn shares(frame: &Frame, piles: &[Place]) -> Option<Vec<f64>> {
    let bearings = bearings(frame, piles);
    let m = frame.cases;
    let mut loads = frame.loads.clone();
    let mut out = vec![0.0; piles.len() * m];
    for run in in_turn(&bearings)? {
        let own = &bearings[run];
        if own.is_empty() {
            return None;
        }
        let places: Vec<f64> = own.iter().map(|b| b.0).collect();
        let mut carried = vec![0.0; own.len() * m];
        for load in std::mem::take(&mut loads[run]) {
            share(&places, &load, m, &mut carried);
        }
        for (i, (_, to)) in own.iter().enumerate() {
            for case in 0..m {
                let force = carried[i * m + case];
                match to {
                    To::Pile(p) => out[p * m + case] += force,
                    To::Run(r, at) => loads[*r].push(Load {
                        case,
                        shape: Shape::Point { at: *at, force },
                    }),
                }
            }
        }
    }
    Some(out)
}

/// Bearing points of every run, in ascending order.
fn bearings(frame: &Frame, piles: &[Place]) -> Vec<Vec<(f64, To)>> {
    let plan = &frame.plan;
    let mut out: Vec<Vec<(f64, To)>> = vec![Vec::new(); plan.runs.len()];
    let mut has_pile = vec![false; plan.meetings.len()];
    // a pile where runs meet serves all of them
    for (p, pile) in piles.iter().enumerate() {
        match pile.meeting {
            Some(m) => {
                has_pile[m] = true;
                for (run, at) in &plan.meetings[m].on {
                    out[*run].push((*at, To::Pile(p)));
                }
            }
            None => out[pile.run].push((pile.at, To::Pile(p))),
        }
    }
    for (meeting, _) in plan.meetings.iter().zip(&has_pile).filter(|m| !m.1) {
        let ends = |(run, at): &(usize, f64)| *at == 0.0 || *at == plan.runs[*run].length;
        if let Some((through, place)) = meeting.on.iter().find(|o| !ends(o)) {
            for (run, at) in meeting.on.iter().filter(|o| ends(o)) {
                out[*run].push((*at, To::Run(*through, *place)));
            }
        }
    }
    for own in &mut out {
        own.sort_by(|a, b| a.0.total_cmp(&b.0));
    }
    out
}

/// Runs in an order in which each comes after those that hand their load on to it.
fn in_turn(bearings: &[Vec<(f64, To)>]) -> Option<Vec<usize>> {
    let mut waits = vec![0usize; bearings.len()];
    for (_, to) in bearings.iter().flatten() {
        if let To::Run(r, _) = to {
            waits[*r] += 1;
        }
    }
    let mut turn: Vec<usize> = (0..bearings.len()).filter(|r| waits[*r] == 0).collect();
    let mut next = 0;
    while next < turn.len() {
        for (_, to) in &bearings[turn[next]] {
            if let To::Run(r, _) = to {
                waits[*r] -= 1;
                if waits[*r] == 0 {
                    turn.push(*r);
                }
            }
        }
        next += 1;
    }
    (turn.len() == bearings.len()).then_some(turn)
}

/// Shares one load among bearing points.
///
/// On a span of length L a force F at a distance x from the left point gives F (1 - x/L)
/// to it and F x/L to the right one; beyond the last point all of it goes there. Source:
/// simple beam; half spans where the load is uniform.
fn share(places: &[f64], load: &Load, m: usize, carried: &mut [f64]) {
    let last = places.len() - 1;
    let mut put = |force: f64, moment: f64, first: bool, span: Option<usize>| match span {
        Some(i) => {
            let right = (moment - force * places[i]) / (places[i + 1] - places[i]);
            carried[i * m + load.case] += force - right;
            carried[(i + 1) * m + load.case] += right;
        }
        None => {
            let end = if first { 0 } else { last };
            carried[end * m + load.case] += force;
        }
    };
    match load.shape {
        Shape::Couple { .. } => {}
        Shape::Point { at, force } => {
            let i = places.partition_point(|p| *p < at);
            let on = i < places.len() && places[i] == at;
            let span = if i == 0 || (i > last && !on) {
                None
            } else {
                Some(i - 1)
            };
            put(force, force * at, i == 0, span);
        }
        Shape::Spread {
            from,
            to,
            start,
            end,
        } => {
            let q = |x: f64| start + (end - start) * (x - from) / (to - from);
            let mut a = from;
            let mut i = places.partition_point(|p| *p <= a);
            while a < to {
                // from span to span; the first place beyond
                while i <= last && places[i] <= a {
                    i += 1;
                }
                let b = if i <= last { places[i].min(to) } else { to };
                let part = Shape::Spread {
                    from: a,
                    to: b,
                    start: q(a),
                    end: q(b),
                };
                let (force, moment) = resultant(&part);
                let span = (i > 0 && i <= last).then(|| i - 1);
                put(force, moment, i == 0, span);
                a = b;
            }
        }
    }
}
