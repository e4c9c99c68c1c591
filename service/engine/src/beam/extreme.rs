//! Shear and moment along a line in one combination of load cases, piece by piece, and
//! their extremes: moments where the shear is nil, found exactly and never sampled.

use super::{Line, LineSolution};

/// A part of a line without a jump, under an evenly varying load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// Where it begins, m.
    pub from: f64,
    /// Where it ends, m.
    pub to: f64,
    /// Shear where it begins, N.
    pub shear: f64,
    /// Moment where it begins, N m.
    pub moment: f64,
    /// Load where it begins, N/m.
    pub start: f64,
    /// Load where it ends, N/m.
    pub end: f64,
}

/// A value and its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// The value.
    pub value: f64,
    /// Place along the line, m.
    pub at: f64,
}

/// Extremes; where a value occurs several times, its first place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Extremes {
    /// Highest moment (tension at the bottom).
    pub highest_moment: Spot,
    /// Lowest moment (tension at the top).
    pub lowest_moment: Spot,
    /// Shear of the largest size.
    pub shear: Spot,
}

impl Piece {
    /// Shear at a distance into the piece.
    ///
    /// V(x) = V0 - q0 x - (q1 - q0) x2/(2 l). Source: dV/dx = -q.
    pub fn shear_at(&self, x: f64) -> f64 {
        let l = self.to - self.from;
        self.shear - self.start * x - (self.end - self.start) * x * x / (2.0 * l)
    }

    /// Moment at a distance into the piece.
    ///
    /// M(x) = M0 + V0 x - q0 x2/2 - (q1 - q0) x3/(6 l). Source: dM/dx = V.
    pub fn moment_at(&self, x: f64) -> f64 {
        let l = self.to - self.from;
        self.moment + self.shear * x
            - 0.5 * self.start * x * x
            - (self.end - self.start) * x * x * x / (6.0 * l)
    }

    /// Distances into the piece, strictly inside it, where the shear is nil.
    pub fn zero_shear(&self) -> [Option<f64>; 2] {
        let l = self.to - self.from;
        let inside = |x: f64| (x > 0.0 && x < l).then_some(x);
        let (a, b, c) = ((self.end - self.start) / (2.0 * l), self.start, -self.shear);
        if a == 0.0 {
            return [if b == 0.0 { None } else { inside(-c / b) }, None];
        }
        let root = b * b - 4.0 * a * c;
        if root < 0.0 {
            return [None, None];
        }
        let q = -0.5 * (b + root.sqrt().copysign(b));
        let (x1, x2) = (q / a, if q == 0.0 { 0.0 } else { c / q });
        [inside(x1), inside(x2)]
    }

    /// Distance into the piece, strictly inside it, where the load changes its sign and the shear
    /// is extreme.
    pub fn zero_load(&self) -> Option<f64> {
        let l = self.to - self.from;
        let x = l * (self.start / (self.start - self.end));
        (self.start * self.end < 0.0 && x > 0.0 && x < l).then_some(x)
    }

    /// Widens the extremes by those of this piece.
    pub fn widen(&self, found: &mut Option<Extremes>) {
        let l = self.to - self.from;
        let end = Spot {
            value: self.moment_at(l),
            at: self.to,
        };
        let first = Spot {
            value: self.moment,
            at: self.from,
        };
        let extremes = found.get_or_insert(Extremes {
            highest_moment: first,
            lowest_moment: first,
            shear: Spot {
                value: self.shear,
                at: self.from,
            },
        });
        let inner = self.zero_shear().into_iter().flatten().map(|x| Spot {
            value: self.moment_at(x),
            at: self.from + x,
        });
        for spot in [first].into_iter().chain(inner).chain([end]) {
            if spot.value > extremes.highest_moment.value {
                extremes.highest_moment = spot;
            }
            if spot.value < extremes.lowest_moment.value {
                extremes.lowest_moment = spot;
            }
        }
        let ends = [Some(0.0), self.zero_load(), Some(l)];
        for x in ends.into_iter().flatten() {
            let value = self.shear_at(x);
            if value.abs() > extremes.shear.value.abs() {
                let at = if x == l { self.to } else { self.from + x };
                extremes.shear = Spot { value, at };
            }
        }
    }
}

impl LineSolution {
    /// Walks along the line in the combination `factors` (one a case), piece by piece.
    pub fn walk(&self, line: &Line, factors: &[f64], visit: impl FnMut(Piece)) {
        let m = self.loads.cases;
        let sum = |values: &[f64], row: usize| -> f64 {
            values[row * m..(row + 1) * m]
                .iter()
                .zip(factors)
                .map(|(v, f)| v * f)
                .sum()
        };
        self.walk_by(line, sum, visit);
    }

    /// Walks along the line in one case.
    pub fn walk_case(&self, line: &Line, case: usize, visit: impl FnMut(Piece)) {
        let m = self.loads.cases;
        self.walk_by(line, |values, row| values[row * m + case], visit);
    }

    fn walk_by(
        &self,
        line: &Line,
        value: impl Fn(&[f64], usize) -> f64,
        mut visit: impl FnMut(Piece),
    ) {
        let cut = &self.loads;
        let (mut shear, mut moment) = (0.0, 0.0);
        let mut node = 0;
        for s in 0..cut.stations.len() - 1 {
            if node < line.nodes.len() && cut.node_station[node] == s {
                shear = value(&self.shear_right, node);
                moment = value(&self.moment_right, node);
                node += 1;
            } else {
                shear -= value(&cut.force, s);
                moment += value(&cut.couple, s);
            }
            let piece = Piece {
                from: cut.stations[s],
                to: cut.stations[s + 1],
                shear,
                moment,
                start: value(&cut.start, s),
                end: value(&cut.end, s),
            };
            visit(piece);
            let l = piece.to - piece.from;
            shear = piece.shear_at(l);
            moment = piece.moment_at(l);
        }
    }

    /// Extremes of the whole line in a combination.
    pub fn extremes(&self, line: &Line, factors: &[f64]) -> Option<Extremes> {
        let mut found = None;
        self.walk(line, factors, |piece| piece.widen(&mut found));
        found
    }
}
