//! Shear and moment within a piece of a line, and their extremes: moments where the shear is
//! nil, found exactly and never sampled.

use super::abreast::{Ends, Known, Pieces};

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

/// Shear under an even load.
pub(super) fn even_shear(shear: f64, load: f64, x: f64) -> f64 {
    shear - load * x
}

/// Moment under an even load.
pub(super) fn even_moment(moment: f64, shear: f64, load: f64, x: f64) -> f64 {
    moment + shear * x - 0.5 * load * x * x
}

impl Piece {
    /// Shear at a distance into the piece.
    ///
    /// V(x) = V0 - q0 x - (q1 - q0) x2/(2 l). Source: dV/dx = -q.
    pub fn shear_at(&self, x: f64) -> f64 {
        let even = even_shear(self.shear, self.start, x);
        if self.end == self.start {
            return even;
        }
        let l = self.to - self.from;
        even - (self.end - self.start) * x * x / (2.0 * l)
    }

    /// Moment at a distance into the piece.
    ///
    /// M(x) = M0 + V0 x - q0 x2/2 - (q1 - q0) x3/(6 l). Source: dM/dx = V.
    pub fn moment_at(&self, x: f64) -> f64 {
        let even = even_moment(self.moment, self.shear, self.start, x);
        if self.end == self.start {
            return even;
        }
        let l = self.to - self.from;
        even - (self.end - self.start) * x * x * x / (6.0 * l)
    }

    /// Shear and moment where it ends.
    pub fn at_end(&self) -> (f64, f64) {
        let l = self.to - self.from;
        (self.shear_at(l), self.moment_at(l))
    }

    /// Distances into the piece, strictly inside it, where the shear is nil.
    pub fn zero_shear(&self) -> [Option<f64>; 2] {
        let l = self.to - self.from;
        let inside = |x: f64| (x > 0.0 && x < l).then_some(x);
        let (b, c) = (self.start, -self.shear);
        let a = match self.end == self.start {
            true => 0.0,
            false => (self.end - self.start) / (2.0 * l),
        };
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
        if self.start * self.end >= 0.0 {
            return None;
        }
        let l = self.to - self.from;
        let x = l * (self.start / (self.start - self.end));
        (x > 0.0 && x < l).then_some(x)
    }

    fn alone(&self) -> Pieces<1> {
        Pieces {
            from: self.from,
            to: self.to,
            shear: [self.shear],
            moment: [self.moment],
            start: [self.start],
            end: [self.end],
        }
    }

    /// Widens the extremes by those of this piece, of which the shear and the moment at its end
    /// are known; how they are then.
    pub fn widen<'a>(
        &self,
        (shear, moment): (f64, f64),
        found: &'a mut Option<Extremes>,
    ) -> &'a Extremes {
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
        let mut known = Known::<1>::nothing(1);
        known.note(0, extremes);
        let ends = Ends {
            shear: [shear],
            moment: [moment],
        };
        if self.alone().within(&ends, &known) {
            return extremes;
        }
        let (highest, lowest) = (&mut extremes.highest_moment, &mut extremes.lowest_moment);
        let mut bend = |value: f64, at: f64| {
            if value > highest.value {
                *highest = Spot { value, at };
            }
            if value < lowest.value {
                *lowest = Spot { value, at };
            }
        };
        bend(first.value, first.at);
        for x in self.zero_shear().into_iter().flatten() {
            bend(self.moment_at(x), self.from + x);
        }
        bend(moment, self.to);
        let greatest = &mut extremes.shear;
        let mut cut = |value: f64, at: f64| {
            if value.abs() > greatest.value.abs() {
                *greatest = Spot { value, at };
            }
        };
        cut(self.shear, self.from);
        if let Some(x) = self.zero_load() {
            cut(self.shear_at(x), self.from + x);
        }
        cut(shear, self.to);
        extremes
    }
}
