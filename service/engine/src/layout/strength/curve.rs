//! The deflection curve of a stretch of beam from its moments: exact integrals piece by piece,
//! and its extremes where the slope is nil, found and never sampled. Knows no plan.

use crate::beam::Piece;

/// A piece of beam with its flexural rigidity, N m2.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stretch {
    pub piece: Piece,
    pub rigidity: f64,
}

/// Integrals of M/(E I) from where a curve begins.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct Integrals {
    /// Of the curvature.
    slope: f64,
    /// Of that again.
    sag: f64,
}

/// A curve over consecutive pieces. Deflections are positive downwards, from a straight line
/// through its beginning.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Curve<'a> {
    pieces: &'a [Stretch],
    at: Vec<Integrals>,
    /// Slope at the beginning.
    pub slope: f64,
}

impl Stretch {
    /// The piece as it is seen from its other end.
    pub fn turned(&self) -> Self {
        let p = &self.piece;
        let l = p.to - p.from;
        Self {
            piece: Piece {
                from: -p.to,
                to: -p.from,
                shear: -p.shear_at(l),
                moment: p.moment_at(l),
                start: p.end,
                end: p.start,
            },
            rigidity: self.rigidity,
        }
    }

    /// Integrals of M/(E I) at a distance into the piece.
    ///
    /// K1 = k1 + (M0 x + V0 x2/2 - q0 x3/6 - (q1 - q0) x4/(24 l))/(E I),
    /// K0 = k0 + k1 x + (M0 x2/2 + V0 x3/6 - q0 x4/24 - (q1 - q0) x5/(120 l))/(E I); M0, V0, q0
    /// moment, shear and load where the piece of length l begins, q1 load where it ends; E I
    /// flexural rigidity (N m2), above nil. Source: integration of M(x). Sign: M positive with
    /// tension at the bottom.
    fn integrals(&self, before: Integrals, x: f64) -> Integrals {
        let p = &self.piece;
        let rise = (p.end - p.start) / (p.to - p.from);
        let x2 = x * x;
        let (x3, x4) = (x2 * x, x2 * x2);
        let slope = p.moment * x + p.shear * x2 / 2.0 - p.start * x3 / 6.0 - rise * x4 / 24.0;
        let sag =
            p.moment * x2 / 2.0 + p.shear * x3 / 6.0 - p.start * x4 / 24.0 - rise * x4 * x / 120.0;
        Integrals {
            slope: before.slope + slope / self.rigidity,
            sag: before.sag + before.slope * x + sag / self.rigidity,
        }
    }

    /// Places in the piece between which the moment keeps its sign, ends included.
    fn bends(&self) -> Vec<f64> {
        let p = &self.piece;
        let l = p.to - p.from;
        let mut marks: Vec<f64> = p.zero_shear().into_iter().flatten().collect();
        marks.extend([0.0, l]);
        marks.sort_by(f64::total_cmp);
        let zeros: Vec<f64> = marks
            .windows(2)
            .filter_map(|m| crossing(m[0], m[1], |x| p.moment_at(x)))
            .collect();
        marks.extend(zeros);
        marks.sort_by(f64::total_cmp);
        marks
    }
}

impl<'a> Curve<'a> {
    /// The curve that begins with this slope.
    pub fn with_slope(pieces: &'a [Stretch], slope: f64) -> Self {
        let mut at = vec![Integrals::default()];
        let mut now = Integrals::default();
        for s in pieces {
            now = s.integrals(now, s.piece.to - s.piece.from);
            at.push(now);
        }
        Self { pieces, at, slope }
    }

    /// The curve whose two ends lie on the line: that of a span from its chord.
    ///
    /// t = K0(L)/L; K0(L) double integral of M/(E I) over the span of length L (m). Source: both
    /// ends of the span on the chord.
    pub fn from_chord(pieces: &'a [Stretch]) -> Self {
        let mut curve = Self::with_slope(pieces, 0.0);
        let end = curve.at[pieces.len()];
        curve.slope = end.sag / curve.length();
        curve
    }

    /// Length of all pieces.
    pub fn length(&self) -> f64 {
        match (self.pieces.first(), self.pieces.last()) {
            (Some(a), Some(b)) => b.piece.to - a.piece.from,
            _ => 0.0,
        }
    }

    /// Slope at the end.
    pub fn end_slope(&self) -> f64 {
        self.slope - self.at[self.pieces.len()].slope
    }

    /// Calls `each` with stretch, place and deflection wherever the curve may be extreme: where its
    /// slope is nil, and at the ends of pieces.
    pub fn extremes(&self, mut each: impl FnMut(&Stretch, f64, f64)) {
        let Some(first) = self.pieces.first() else {
            return;
        };
        let origin = first.piece.from;
        for (s, before) in self.pieces.iter().zip(&self.at) {
            let from = s.piece.from;
            let slope = |x: f64| self.slope - s.integrals(*before, x).slope;
            let value = |x: f64| self.slope * (from - origin + x) - s.integrals(*before, x).sag;
            let marks = s.bends();
            for pair in marks.windows(2) {
                if let Some(x) = crossing(pair[0], pair[1], slope) {
                    each(s, from + x, value(x));
                }
            }
            for x in [0.0, s.piece.to - from] {
                each(s, from + x, value(x));
            }
        }
    }
}

/// Where a function that only rises or only falls changes its sign strictly inside, by halving
/// down to the last bit.
fn crossing(mut low: f64, mut high: f64, of: impl Fn(f64) -> f64) -> Option<f64> {
    let at_low = of(low);
    let at_high = of(high);
    if !((at_low < 0.0 && at_high > 0.0) || (at_low > 0.0 && at_high < 0.0)) {
        return None;
    }
    loop {
        let middle = low + 0.5 * (high - low);
        if middle <= low || middle >= high {
            return Some(middle);
        }
        if (of(middle) < 0.0) == (at_low < 0.0) {
            low = middle;
        } else {
            high = middle;
        }
    }
}
