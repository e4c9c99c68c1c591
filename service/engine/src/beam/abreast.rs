//! The same part of a line in several combinations at once, and a quick look whether it can widen
//! the extremes that are known.

use super::extreme::{Extremes, Piece, even_moment, even_shear};

/// Combinations that are looked at at once.
pub const ABREAST: usize = 4;

/// A part of a line without a jump in several combinations; see [`Piece`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pieces<const N: usize> {
    /// Where it begins, m.
    pub from: f64,
    /// Where it ends, m.
    pub to: f64,
    /// Shears where it begins, N.
    pub shear: [f64; N],
    /// Moments where it begins, N m.
    pub moment: [f64; N],
    /// Loads where it begins, N/m.
    pub start: [f64; N],
    /// Loads where it ends, N/m.
    pub end: [f64; N],
}

/// Shears (N) and moments (N m) where pieces end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ends<const N: usize> {
    /// The shears.
    pub shear: [f64; N],
    /// The moments.
    pub moment: [f64; N],
}

/// Extremes in several combinations.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Known<const N: usize> {
    highest: [f64; N],
    lowest: [f64; N],
    shear: [f64; N],
}

impl<const N: usize> Pieces<N> {
    /// The piece in one of the combinations.
    pub fn piece(&self, i: usize) -> Piece {
        Piece {
            from: self.from,
            to: self.to,
            shear: self.shear[i],
            moment: self.moment[i],
            start: self.start[i],
            end: self.end[i],
        }
    }

    /// Shears and moments where it ends; those of [`Piece::at_end`] to the last bit.
    pub fn ends(&self) -> Ends<N> {
        let l = self.to - self.from;
        let mut ends = Ends {
            shear: std::array::from_fn(|i| even_shear(self.shear[i], self.start[i], l)),
            moment: std::array::from_fn(|i| {
                even_moment(self.moment[i], self.shear[i], self.start[i], l)
            }),
        };
        if self.start != self.end {
            for i in 0..N {
                (ends.shear[i], ends.moment[i]) = self.piece(i).at_end();
            }
        }
        ends
    }

    /// Whether nothing of these pieces can lie beyond the extremes; true is certain, false is not.
    ///
    /// Under a load of one sign the moment lies on one side of its chord, by at most q l2/8; q the
    /// greater load (N/m), l length (m). Source: M'' = -q.
    pub fn within(&self, ends: &Ends<N>, known: &Known<N>) -> bool {
        let l = self.to - self.from;
        let mut all = true;
        // without a branch, several at once
        for i in 0..N {
            let (one, other) = (self.moment[i], ends.moment[i]);
            let (highest, lowest, most_shear) = (known.highest[i], known.lowest[i], known.shear[i]);
            // ends are compared as they are; what lies between has a margin for rounding
            let at_ends = (self.shear[i].abs() <= most_shear)
                & (ends.shear[i].abs() <= most_shear)
                & (one <= highest)
                & (other <= highest)
                & (one >= lowest)
                & (other >= lowest);
            let (start, end) = (self.start[i], self.end[i]);
            let greater = if start.abs() > end.abs() {
                start.abs()
            } else {
                end.abs()
            };
            let most = 0.125 * greater * l * l;
            let rise = most + 1e-9 * (most + one.abs() + other.abs());
            let below = (one + rise <= highest) & (other + rise <= highest);
            let above = (one - rise >= lowest) & (other - rise >= lowest);
            let down = start + end > 0.0;
            let between = (most == 0.0) | (down & below) | (!down & above);
            all &= at_ends & between & (start * end >= 0.0);
        }
        all
    }
}

impl<const N: usize> Known<N> {
    /// Nothing is known of the first `count` combinations, and nothing is asked of the others.
    pub fn nothing(count: usize) -> Self {
        let of = |i: usize| {
            if i < count {
                f64::NEG_INFINITY
            } else {
                f64::INFINITY
            }
        };
        Self {
            highest: std::array::from_fn(of),
            lowest: std::array::from_fn(|i| -of(i)),
            shear: std::array::from_fn(of),
        }
    }

    /// Notes the extremes in one of the combinations.
    pub fn note(&mut self, i: usize, extremes: &Extremes) {
        self.highest[i] = extremes.highest_moment.value;
        self.lowest[i] = extremes.lowest_moment.value;
        self.shear[i] = extremes.shear.value.abs();
    }
}
