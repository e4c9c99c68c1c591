//! The loads of one run in every combination, and what they do to a span: total, simple
//! reaction and the load terms of the three-moment equation.

use crate::beam::{Line, LineCases};
use crate::layout::combine::Combination;
use crate::layout::frame::Frame;

/// A force this near to a support is on it, m.
const SAME: f64 = 1e-9;

/// Loads of a run; one row a piece or station, one column a combination.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct RunLoads {
    pub count: usize,
    stations: Vec<f64>,
    start: Vec<f64>,
    end: Vec<f64>,
    force: Vec<f64>,
    /// Total load in each combination.
    pub total: Vec<f64>,
    /// Whether any load acts downwards, and whether any acts upwards, in each combination.
    pub acts: Vec<(bool, bool)>,
    /// One load from end to end that does not vary.
    pub even: bool,
}

/// What the loads on a span do; one entry a combination.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct SpanTerms {
    /// Total load inside the span.
    pub total: Vec<f64>,
    /// Reaction at the right end as a simple beam.
    pub right: Vec<f64>,
    /// Load term for the support at the left end.
    pub at_left: Vec<f64>,
    /// Load term for the support at the right end.
    pub at_right: Vec<f64>,
}

/// Points and weights of the three-point rule on 0 to 1, exact to the fifth degree.
const GAUSS: [(f64, f64); 3] = [
    (0.112_701_665_379_258_3, 5.0 / 18.0),
    (0.5, 8.0 / 18.0),
    (0.887_298_334_620_741_7, 5.0 / 18.0),
];

impl RunLoads {
    /// Combines the loads of a run.
    pub fn of(frame: &Frame, run: usize, combinations: &[Combination]) -> Self {
        let cut = LineCases::new(
            &Line {
                length: frame.plan.runs[run].length,
                nodes: Vec::new(),
                rigidity: Vec::new(),
                loads: frame.loads[run].clone(),
            },
            frame.cases,
        );
        let count = combinations.len();
        let rows = cut.stations.len();
        let (mut start, mut end, mut force) = (Vec::new(), Vec::new(), Vec::new());
        let sum = |f: &dyn Fn(usize) -> f64, c: &Combination| -> f64 {
            c.factors.iter().enumerate().map(|(k, g)| g * f(k)).sum()
        };
        for s in 0..rows {
            for c in combinations {
                force.push(sum(&|k| cut.force_at(s, k), c));
                if s + 1 < rows {
                    start.push(sum(&|k| cut.piece(s, k).0, c));
                    end.push(sum(&|k| cut.piece(s, k).1, c));
                }
            }
        }
        let total = combinations
            .iter()
            .map(|c| sum(&|k| cut.resultant(k).0, c))
            .collect();
        let acts = (0..count)
            .map(|c| {
                let own = [&start, &end, &force]
                    .into_iter()
                    .flat_map(|list| list.iter().skip(c).step_by(count));
                own.fold((false, false), |(down, up), v| {
                    (down || *v > 0.0, up || *v < 0.0)
                })
            })
            .collect();
        Self {
            count,
            even: rows == 2 && start == end,
            acts,
            stations: cut.stations,
            start,
            end,
            force,
            total,
        }
    }

    /// Where the load changes, in ascending order.
    pub fn stations(&self) -> &[f64] {
        &self.stations
    }

    /// Every number that the loads consist of.
    pub fn each(&self, put: &mut impl FnMut(f64)) {
        let all = [&self.stations, &self.start, &self.end, &self.force];
        for list in all {
            list.iter().for_each(|v| put(*v));
        }
    }

    /// Force on a place itself, in a combination.
    pub fn on(&self, at: f64, combination: usize) -> f64 {
        let s = self.stations.partition_point(|x| *x < at - SAME);
        if s < self.stations.len() && self.stations[s] <= at + SAME {
            self.force[s * self.count + combination]
        } else {
            0.0
        }
    }

    /// The terms of the span from `a` to `b`; `sizes` takes every load by its size.
    pub fn span(&self, a: f64, b: f64, sizes: bool, out: &mut SpanTerms) {
        let n = self.count;
        out.clear(n);
        let length = b - a;
        let shape = |v: f64| if sizes { v.abs() } else { v };
        let first = self.stations.partition_point(|x| *x <= a + SAME) - 1;
        for s in first..self.stations.len() - 1 {
            let (from, to) = (self.stations[s], self.stations[s + 1]);
            if from >= b - SAME {
                break;
            }
            if from > a + SAME {
                for c in 0..n {
                    let p = shape(self.force[s * n + c]);
                    if p != 0.0 {
                        out.force(c, p, from - a, length);
                    }
                }
            }
            let whole = from <= a + SAME && to >= b - SAME;
            for c in 0..n {
                let (q0, q1) = (shape(self.start[s * n + c]), shape(self.end[s * n + c]));
                if whole && q0 == q1 {
                    out.uniform(c, q0, length);
                } else if q0 != 0.0 || q1 != 0.0 {
                    let (x0, x1) = (from.max(a), to.min(b));
                    for (t, weight) in GAUSS {
                        let x = x0 + t * (x1 - x0);
                        let q = q0 + (q1 - q0) * (x - from) / (to - from);
                        out.force(c, q * weight * (x1 - x0), x - a, length);
                    }
                }
            }
        }
    }

    /// Load and moment (as a bending moment there) of what lies beyond a place, before or
    /// after it.
    pub fn beyond(&self, at: f64, after: bool, combination: usize) -> (f64, f64) {
        let n = self.count;
        let (mut load, mut moment) = (0.0, 0.0);
        let outside = |x: f64| if after { x > at + SAME } else { x < at - SAME };
        for s in 0..self.stations.len() {
            let x = self.stations[s];
            if outside(x) {
                let p = self.force[s * n + combination];
                load += p;
                moment -= p * (x - at).abs();
            }
            if s + 1 == self.stations.len() {
                break;
            }
            let to = self.stations[s + 1];
            let (x0, x1) = if after {
                (x.max(at), to)
            } else {
                (x, to.min(at))
            };
            if x1 <= x0 {
                continue;
            }
            let (q0, q1) = (
                self.start[s * n + combination],
                self.end[s * n + combination],
            );
            for (t, weight) in GAUSS {
                let y = x0 + t * (x1 - x0);
                let p = (q0 + (q1 - q0) * (y - x) / (to - x)) * weight * (x1 - x0);
                load += p;
                moment -= p * (y - at).abs();
            }
        }
        (load, moment)
    }

    /// Pieces between two places in a combination: from, to, load at either end, and the
    /// force where the piece begins.
    pub fn pieces(
        &self,
        a: f64,
        b: f64,
        combination: usize,
        mut visit: impl FnMut(f64, f64, f64, f64, f64),
    ) {
        let n = self.count;
        let first = self.stations.partition_point(|x| *x <= a + SAME).max(1) - 1;
        for s in first..self.stations.len() - 1 {
            let (from, to) = (self.stations[s], self.stations[s + 1]);
            if from >= b - SAME {
                break;
            }
            let (x0, x1) = (from.max(a), to.min(b));
            let (q0, q1) = (
                self.start[s * n + combination],
                self.end[s * n + combination],
            );
            let q = |x: f64| {
                if q0 == q1 {
                    q0
                } else {
                    q0 + (q1 - q0) * (x - from) / (to - from)
                }
            };
            let force = if from > a + SAME {
                self.force[s * n + combination]
            } else {
                0.0
            };
            visit(x0, x1, q(x0), q(x1), force);
        }
    }
}

impl SpanTerms {
    fn clear(&mut self, n: usize) {
        for v in [
            &mut self.total,
            &mut self.right,
            &mut self.at_left,
            &mut self.at_right,
        ] {
            v.clear();
            v.resize(n, 0.0);
        }
    }

    /// Takes over other terms.
    pub fn copy(&mut self, other: &Self) {
        for (to, from) in [
            (&mut self.total, &other.total),
            (&mut self.right, &other.right),
            (&mut self.at_left, &other.at_left),
            (&mut self.at_right, &other.at_right),
        ] {
            to.clear();
            to.extend_from_slice(from);
        }
    }

    /// Adds a force at `x` from the left.
    ///
    /// right = P x/L; at_right = P x (L2 - x2)/L, at_left = P y (L2 - y2)/L, y = L - x.
    /// Source: simple beam; load terms of the three-moment equation.
    fn force(&mut self, c: usize, p: f64, x: f64, length: f64) {
        let y = length - x;
        self.total[c] += p;
        self.right[c] += p * x / length;
        self.at_right[c] += p * x * (length * length - x * x) / length;
        self.at_left[c] += p * y * (length * length - y * y) / length;
    }

    /// Adds a load over the whole span: q L, q L/2, q L3/4.
    fn uniform(&mut self, c: usize, q: f64, length: f64) {
        let w = q * length;
        let term = 0.25 * w * length * length;
        self.total[c] += w;
        self.right[c] += 0.5 * w;
        self.at_right[c] += term;
        self.at_left[c] += term;
    }
}
