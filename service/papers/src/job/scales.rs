//! The two scales that all cells share: torque to the right and depth downwards, each from
//! nil in a few round steps.

use super::Subject;
use crate::record::steps::Step;
use crate::svg::Rect;
use crate::{page, words};

/// How many times the greatest reading, or depth, a line is shown at most.
const REACH: f64 = 4.0;
/// Steps that an axis has about.
const STEPS: f64 = 4.5;

/// An axis from nil in round steps.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// A step, in the reader's unit.
    pub step: f64,
    /// Steps.
    pub count: u32,
    /// Base SI in one unit of the reader.
    factor: f64,
}

impl Span {
    fn new(most: f64, factor: f64) -> Self {
        let most = most / factor;
        let step = page::round_step(most / STEPS);
        Self {
            step,
            count: ((most / step - 1e-9).ceil().max(1.0)) as u32,
            factor,
        }
    }

    /// A value (base SI) as a share of the axis.
    pub fn share(&self, si: f64) -> f64 {
        si / self.factor / self.step / f64::from(self.count)
    }

    /// The figure of a step.
    pub fn figure(&self, i: u32) -> String {
        words::trimmed(f64::from(i) * self.step, 3)
    }
}

/// Both scales.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scales {
    /// Torque, to the right.
    pub torque: Span,
    /// Depth, downwards.
    pub depth: Span,
}

impl Scales {
    /// Scales that hold every reading, and the lines that are not far beyond all of them.
    pub fn of(s: Subject) -> Self {
        let steps = || s.piles.iter().flat_map(|p| &p.steps);
        let counts = s.piles.iter().filter_map(|p| p.pile.effective_torque);
        let read = steps()
            .map(|step: &Step| step.torque)
            .chain(counts.map(|t| t.si()))
            .fold(0.0, f64::max);
        let lines = s.piles.iter().flat_map(|p| {
            let limit = p.request.limits.and_then(|l| l.shaft_torque);
            [p.pile.required_torque, limit].into_iter().flatten()
        });
        let torque = lines
            .map(|t| t.si())
            .filter(|t| read == 0.0 || *t <= REACH * read)
            .fold(read, f64::max);
        let rows = s
            .piles
            .iter()
            .filter_map(|p| p.outcome())
            .flat_map(|o| &o.rows);
        let reached = rows.map(|r| r.depth.si()).fold(0.0, f64::max);
        let levels = s.piles.iter().flat_map(|p| {
            let d = p.request.depths;
            [d.minimum_tip_depth, d.frost_depth, d.fill_depth]
        });
        let depth = levels
            .flatten()
            .map(|d| d.si())
            .filter(|d| *d <= REACH * reached)
            .fold(reached, f64::max);
        Self {
            torque: Span::new(1.02 * torque, words::torque_unit_factor(s.system)),
            depth: Span::new(1.02 * depth, words::length_factor(s.system)),
        }
    }

    /// A pair of torque and depth (base SI) in a field.
    pub fn at(&self, r: Rect, (torque, depth): (f64, f64)) -> (f64, f64) {
        (self.x(r, torque), self.y(r, depth))
    }

    /// A torque in a field; at its edge where it lies beyond.
    pub fn x(&self, r: Rect, torque: f64) -> f64 {
        r.x + self.torque.share(torque).clamp(0.0, 1.0) * r.w
    }

    /// A depth in a field.
    pub fn y(&self, r: Rect, depth: f64) -> f64 {
        r.y + self.depth.share(depth).clamp(0.0, 1.0) * r.h
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_axis_holds_its_span_in_a_few_round_steps() {
        for most in [0.0, 0.3, 1.0, 18.9, 100.0, 5500.0, 737_562.0] {
            let span = Span::new(most, 1.0);
            assert!(span.share(most) <= 1.0 + 1e-9, "{span:?}");
            assert!((1..=9).contains(&span.count), "{span:?}");
            assert!(most < 0.01 || span.share(most) > 0.5, "{span:?}");
        }
    }
}
