//! Widths of a slab that go to each of its sides when every point goes to the nearest one.

use super::shape::{Outline, Side};

/// A width that varies evenly along a part of a side, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Width {
    pub from: f64,
    pub to: f64,
    pub start: f64,
    pub end: f64,
}

impl Width {
    /// The width at a place along the side.
    pub fn at(&self, s: f64) -> f64 {
        self.start + (self.end - self.start) * (s - self.from) / (self.to - self.from)
    }
}

/// A straight line `a + b s` over the side.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Reach {
    a: f64,
    b: f64,
}

impl Reach {
    fn at(self, s: f64) -> f64 {
        self.a + self.b * s
    }
}

/// Widths of a convex slab that go to each side.
///
/// At s along side i the strip square to it reaches to h = min over the other sides j of
/// d_j(s)/(1 - n_i.n_j); d_j distance of the foot from the line of side j (m), n inward unit
/// normals: there the point is as far from side j as from side i. Range: convex slabs, in
/// which the nearest side is that with the nearest line. Source: geometry.
pub(super) fn nearest_edge(outline: &Outline) -> Vec<Vec<Width>> {
    (0..outline.sides.len())
        .map(|i| of_side(&outline.sides, i))
        .collect()
}

fn of_side(sides: &[Side], i: usize) -> Vec<Width> {
    let own = &sides[i];
    let mut pieces: Vec<(f64, f64, Reach)> = Vec::new();
    for (_, other) in sides.iter().enumerate().filter(|(j, _)| *j != i) {
        let n = other.inward();
        let apart = 1.0 - own.inward().dot(n);
        let reach = Reach {
            a: other.start.to(own.start).dot(n) / apart,
            b: own.direction.dot(n) / apart,
        };
        if pieces.is_empty() {
            pieces.push((0.0, own.length, reach));
        } else {
            pieces = pieces.into_iter().flat_map(|p| lower(p, reach)).collect();
        }
    }
    let mut out: Vec<Width> = Vec::new();
    let mut last: Option<Reach> = None;
    for (from, to, reach) in pieces {
        let end = reach.at(to).max(0.0);
        match out.last_mut() {
            Some(width) if last == Some(reach) => (width.to, width.end) = (to, end),
            _ => out.push(Width {
                from,
                to,
                start: reach.at(from).max(0.0),
                end,
            }),
        }
        last = Some(reach);
    }
    out
}

/// The lower of a piece and a further line: one piece or two.
fn lower((from, to, reach): (f64, f64, Reach), other: Reach) -> Vec<(f64, f64, Reach)> {
    let (before, after) = (other.at(from) - reach.at(from), other.at(to) - reach.at(to));
    if before >= 0.0 && after >= 0.0 {
        return vec![(from, to, reach)];
    }
    if before <= 0.0 && after <= 0.0 {
        return vec![(from, to, other)];
    }
    let turn = from + (to - from) * before / (before - after);
    let (first, second) = if before < 0.0 {
        (other, reach)
    } else {
        (reach, other)
    };
    if turn <= from {
        return vec![(from, to, second)];
    }
    if turn >= to {
        return vec![(from, to, first)];
    }
    vec![(from, turn, first), (turn, to, second)]
}
