//! Moments, shears, torques and reactions from the movements of a network. Nothing is
//! assembled or factorised here.

use super::element::SpanLoad;
use super::loads::LineLoads;
use super::solve::{LineSolution, Solution};
use super::unknowns::{NodeRows, Terms, Unknowns};
use super::{Line, Network};

/// The movements: one row an unknown at its place, one column a case.
pub(super) struct Moved<'a> {
    unknowns: &'a Unknowns,
    place: &'a [usize],
    x: &'a [f64],
    m: usize,
}

impl<'a> Moved<'a> {
    pub fn of(unknowns: &'a Unknowns, place: &'a [usize], x: &'a [f64], m: usize) -> Self {
        Self {
            unknowns,
            place,
            x,
            m,
        }
    }

    fn at(&self, row: Option<usize>, case: usize) -> f64 {
        row.map_or(0.0, |r| self.x[r * self.m + case])
    }

    fn sum(&self, terms: &Terms, case: usize) -> f64 {
        let mut sum = 0.0;
        for (row, share) in terms.each() {
            sum += share * self.x[row * self.m + case];
        }
        sum
    }
}

pub(super) fn recover(
    network: &Network,
    rows: &[Vec<NodeRows>],
    moved: &Moved<'_>,
    loads: Vec<LineLoads>,
) -> Solution {
    let m = network.cases;
    let mut reaction = vec![0.0; network.supports.len() * m];
    let mut lines = Vec::with_capacity(loads.len());
    for (l, (line, load)) in network.lines.iter().zip(loads).enumerate() {
        let size = line.nodes.len() * m;
        let LineLoads {
            cut,
            spans: on_spans,
            before,
            after,
        } = load;
        let mut out = LineSolution {
            loads: cut,
            moment_left: vec![0.0; size],
            moment_right: vec![0.0; size],
            shear_left: vec![0.0; size],
            shear_right: vec![0.0; size],
            torque: torques(network, l, moved),
        };
        spans(line, &rows[l], &on_spans, moved, &mut out);
        for c in 0..m {
            let (force, moment) = before[c];
            out.shear_left[c] = -force;
            out.moment_left[c] = moment;
            let last = (line.nodes.len() - 1) * m + c;
            let (force, moment) = after[c];
            out.shear_right[last] = force;
            out.moment_right[last] = -moment;
            for (i, n) in line.nodes.iter().enumerate() {
                reaction[n.node * m + c] += out.share(i, c);
            }
        }
        lines.push(out);
    }
    let mut deflection = vec![0.0; network.supports.len() * m];
    for (node, u) in moved.unknowns.deflection.iter().enumerate() {
        let row = u.map(|u| moved.place[u]);
        for c in 0..m {
            deflection[node * m + c] = moved.at(row, c);
        }
    }
    Solution {
        cases: m,
        lines,
        reaction,
        deflection,
    }
}

fn spans(
    line: &Line,
    rows: &[NodeRows],
    loads: &[SpanLoad],
    moved: &Moved<'_>,
    out: &mut LineSolution,
) {
    let m = moved.m;
    for (i, rigidity) in line.rigidity.iter().enumerate() {
        let (one, other) = (&rows[i], &rows[i + 1]);
        let length = line.nodes[i + 1].at - line.nodes[i].at;
        let b = rigidity / length;
        for c in 0..m {
            let span = loads[i * m + c];
            let (t1, t2) = (moved.sum(&one.slope, c), moved.sum(&other.slope, c));
            let apart = moved.at(one.deflection, c) - moved.at(other.deflection, c);
            let sway = 6.0 * b * (apart / length);
            let start = b * (4.0 * t1 + 2.0 * t2) + sway - span.fixed_start;
            let end = -(b * (2.0 * t1 + 4.0 * t2) + sway - span.fixed_end);
            let shear = (end - start) / length + span.simple;
            out.moment_right[i * m + c] = start;
            out.moment_left[(i + 1) * m + c] = end;
            out.shear_right[i * m + c] = shear;
            out.shear_left[(i + 1) * m + c] = shear - span.total;
        }
    }
}

/// Torque of every span.
///
/// T = GJ (f2 - f1)/L; GJ torsional rigidity (N m2), f twist at the ends, L length (m).
/// Source: uniform torsion. Sign: positive where the end is tilted further to the left.
fn torques(network: &Network, l: usize, moved: &Moved<'_>) -> Vec<f64> {
    let unknowns = moved.unknowns;
    let Some(t) = network.torsion.as_ref().filter(|_| unknowns.twists(l)) else {
        return Vec::new();
    };
    let line = &network.lines[l];
    let mut out = Vec::with_capacity(line.rigidity.len() * moved.m);
    for (i, rigidity) in t.rigidity[l].iter().enumerate() {
        let twist = [i, i + 1].map(|n| unknowns.twist(l, line, n).placed(moved.place));
        let k = rigidity / (line.nodes[i + 1].at - line.nodes[i].at);
        out.extend((0..moved.m).map(|c| k * (moved.sum(&twist[1], c) - moved.sum(&twist[0], c))));
    }
    out
}

impl Solution {
    /// Puts the only case of another solution of the same lines in the place of a case.
    pub fn put(&mut self, case: usize, other: &Self) {
        let m = self.cases;
        let column = |to: &mut [f64], from: &[f64]| {
            for (row, v) in to.chunks_mut(m).zip(from) {
                row[case] = *v;
            }
        };
        column(&mut self.reaction, &other.reaction);
        column(&mut self.deflection, &other.deflection);
        for (to, from) in self.lines.iter_mut().zip(&other.lines) {
            column(&mut to.moment_left, &from.moment_left);
            column(&mut to.moment_right, &from.moment_right);
            column(&mut to.shear_left, &from.shear_left);
            column(&mut to.shear_right, &from.shear_right);
            column(&mut to.torque, &from.torque);
        }
    }
}

impl LineSolution {
    /// Upward force of the node on this line.
    ///
    /// R = V_right - V_left + P; shears beside the node (N), P force on the node (N).
    /// Source: equilibrium of the node.
    pub fn share(&self, node: usize, case: usize) -> f64 {
        let m = self.loads.cases;
        let at = node * m + case;
        self.shear_right[at] - self.shear_left[at]
            + self.loads.force_at(self.loads.node_station[node], case)
    }

    /// The parts of [`LineSolution::share`] on the node's left and right side; a force on
    /// the node itself counts half to each.
    pub fn share_by_side(&self, node: usize, case: usize) -> (f64, f64) {
        let m = self.loads.cases;
        let at = node * m + case;
        let half = 0.5 * self.loads.force_at(self.loads.node_station[node], case);
        (half - self.shear_left[at], self.shear_right[at] + half)
    }

    /// Shear left and right of a node, and the force on the node itself.
    pub fn beside(&self, node: usize, case: usize) -> (f64, f64, f64) {
        let at = node * self.loads.cases + case;
        let force = self.loads.force_at(self.loads.node_station[node], case);
        (self.shear_left[at], self.shear_right[at], force)
    }

    /// Bending moment beside a node, left and right.
    pub fn moments(&self, node: usize, case: usize) -> (f64, f64) {
        let at = node * self.loads.cases + case;
        (self.moment_left[at], self.moment_right[at])
    }

    /// Couple that the node exerts on this line, as other lines twist: it turns as `dw/dx`
    /// does; nothing but rounding without torsion.
    ///
    /// C = M_right - M_left - m; moments beside the node (N m), m couple sent on it (N m).
    /// Source: equilibrium of the node.
    pub fn couple(&self, node: usize, case: usize) -> f64 {
        let m = self.loads.cases;
        let at = node * m + case;
        let sent = self.loads.couple[self.loads.node_station[node] * m + case];
        self.moment_right[at] - self.moment_left[at] - sent
    }

    /// Whether the line can be twisted.
    pub fn twisted(&self) -> bool {
        !self.torque.is_empty()
    }

    /// Torque of the span after a node; nil where the line is not twisted.
    pub fn torque(&self, span: usize, case: usize) -> f64 {
        let at = span * self.loads.cases + case;
        self.torque.get(at).copied().unwrap_or(0.0)
    }
}
