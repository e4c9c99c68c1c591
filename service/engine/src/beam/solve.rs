//! The direct stiffness method for a network: assembly, one factorisation, all load cases,
//! and from the movements the moments, shears and reactions. No combinations here.

use super::cases::LineCases;
use super::element::{SpanLoad, stiffness};
use super::skyline::{Singular, Skyline, Tied, order};
use super::{Line, Network, Support};

/// Most entries of the factor (128 MiB).
const ENTRIES_MAX: usize = 16 << 20;

/// Why a network cannot be solved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fault {
    /// This line can move without resistance.
    Mechanism {
        /// Index of the line.
        line: usize,
    },
    /// The factor would be too large.
    TooLarge,
}

/// Forces in one line, one row a node and one column a case.
#[derive(Debug, Clone, PartialEq)]
pub struct LineSolution {
    /// Its loads by piece.
    pub loads: LineCases,
    pub(super) moment_left: Vec<f64>,
    pub(super) moment_right: Vec<f64>,
    pub(super) shear_left: Vec<f64>,
    pub(super) shear_right: Vec<f64>,
}

/// Everything that follows from the load cases.
#[derive(Debug, Clone, PartialEq)]
pub struct Solution {
    /// Number of load cases.
    pub cases: usize,
    /// Forces, line by line.
    pub lines: Vec<LineSolution>,
    /// Upward force of every node on its lines, one row a node and one column a case;
    /// nothing but rounding where the node is free.
    pub reaction: Vec<f64>,
    /// Deflection of every node, downwards, laid out alike.
    pub deflection: Vec<f64>,
}

/// Where the unknowns are: rotations of every node on every line, deflections of the
/// nodes that can move.
struct Unknowns {
    deflection: Vec<Option<usize>>,
    rotation: Vec<usize>,
    /// A line each unknown belongs to.
    owner: Vec<usize>,
}

impl Unknowns {
    fn of(network: &Network) -> Self {
        let mut rotation = Vec::with_capacity(network.lines.len());
        let mut owner = Vec::new();
        for (l, line) in network.lines.iter().enumerate() {
            rotation.push(owner.len());
            owner.extend(std::iter::repeat_n(l, line.nodes.len()));
        }
        let mut deflection = vec![None; network.supports.len()];
        for (l, line) in network.lines.iter().enumerate() {
            for n in &line.nodes {
                if network.supports[n.node] != Support::Rigid && deflection[n.node].is_none() {
                    deflection[n.node] = Some(owner.len());
                    owner.push(l);
                }
            }
        }
        Self {
            deflection,
            rotation,
            owner,
        }
    }

    /// Unknowns of a span, in the order of the element.
    fn of_span(&self, l: usize, line: &Line, i: usize) -> [Option<usize>; 4] {
        [
            self.deflection[line.nodes[i].node],
            Some(self.rotation_at(l, i)),
            self.deflection[line.nodes[i + 1].node],
            Some(self.rotation_at(l, i + 1)),
        ]
    }

    fn rotation_at(&self, l: usize, i: usize) -> usize {
        self.rotation[l] + i
    }
}

/// Solves a network for all its load cases.
pub fn solve(network: &Network) -> Result<Solution, Fault> {
    let unknowns = Unknowns::of(network);
    let groups = tied(network, &unknowns);
    let n = unknowns.owner.len();
    let order = order(n, &groups);
    let profile = Skyline::profile(n, &groups, &order);
    if Skyline::size(&profile) > ENTRIES_MAX {
        return Err(Fault::TooLarge);
    }
    let loads: Vec<LineLoads> = network
        .lines
        .iter()
        .map(|line| LineLoads::new(line, network.cases))
        .collect();
    let mut matrix = Skyline::new(profile);
    assemble(network, &unknowns, &order.place, &mut matrix);
    let mut x = right_sides(network, &unknowns, &order.place, &loads);
    if let Err(Singular(row)) = matrix.factorise() {
        let unknown = order.place.iter().position(|p| *p == row).unwrap_or(0);
        return Err(Fault::Mechanism {
            line: unknowns.owner[unknown],
        });
    }
    matrix.solve(&mut x, network.cases);
    Ok(recover(network, &unknowns, &order.place, &x, loads))
}

fn tied(network: &Network, unknowns: &Unknowns) -> Vec<Tied> {
    let mut out = Vec::new();
    for (l, line) in network.lines.iter().enumerate() {
        for i in 0..line.rigidity.len() {
            let mut group: Tied = ([0; 4], 0);
            for u in unknowns.of_span(l, line, i).into_iter().flatten() {
                group.0[group.1] = u;
                group.1 += 1;
            }
            out.push(group);
        }
    }
    out
}

fn assemble(network: &Network, unknowns: &Unknowns, place: &[usize], matrix: &mut Skyline) {
    for (l, line) in network.lines.iter().enumerate() {
        for (i, rigidity) in line.rigidity.iter().enumerate() {
            let k = stiffness(*rigidity, line.nodes[i + 1].at - line.nodes[i].at);
            let at = unknowns.of_span(l, line, i);
            for (row, u) in at.iter().enumerate() {
                for (column, v) in at.iter().enumerate().take(row + 1) {
                    if let (Some(u), Some(v)) = (u, v) {
                        matrix.add(place[*u], place[*v], k[row][column]);
                    }
                }
            }
        }
    }
    for (support, u) in network.supports.iter().zip(&unknowns.deflection) {
        if let (Support::Spring(k), Some(u)) = (support, u) {
            matrix.add(place[*u], place[*u], *k);
        }
    }
}

/// Loads of a line by piece, by span, and on its cantilevers.
struct LineLoads {
    cut: LineCases,
    /// One row a span, one column a case.
    spans: Vec<SpanLoad>,
    /// Load and moment at the first node of what lies before it.
    before: Vec<(f64, f64)>,
    /// Load and moment at the last node of what lies after it.
    after: Vec<(f64, f64)>,
}

impl LineLoads {
    fn new(line: &Line, cases: usize) -> Self {
        let cut = LineCases::new(line, cases);
        let mut spans = vec![SpanLoad::default(); line.rigidity.len() * cases];
        for (i, row) in spans.chunks_mut(cases.max(1)).enumerate() {
            span_loads(&cut, line, i, row);
        }
        let (first, last) = (
            cut.node_station.first().copied().unwrap_or(0),
            cut.node_station.last().copied().unwrap_or(0),
        );
        let end = cut.stations.len() - 1;
        let before = (0..cases)
            .map(|c| cut.resultant_between(0, first, true, false, c, cut.stations[first]))
            .collect();
        let after = (0..cases)
            .map(|c| cut.resultant_between(last, end, false, true, c, cut.stations[last]))
            .collect();
        Self {
            cut,
            spans,
            before,
            after,
        }
    }
}

fn span_loads(cut: &LineCases, line: &Line, i: usize, row: &mut [SpanLoad]) {
    let (a, b) = (line.nodes[i].at, line.nodes[i + 1].at);
    let length = b - a;
    let (first, last) = (cut.node_station[i], cut.node_station[i + 1]);
    for s in first..last {
        let x = cut.stations[s] - a;
        let l = cut.stations[s + 1] - cut.stations[s];
        for (c, span) in row.iter_mut().enumerate() {
            let at = s * cut.cases + c;
            if s > first {
                if cut.force[at] != 0.0 {
                    span.force(cut.force[at], x, length);
                }
                if cut.couple[at] != 0.0 {
                    span.couple(cut.couple[at], x, length);
                }
            }
            span.spread(cut.start[at], cut.end[at], x, l, length);
        }
    }
}

fn right_sides(
    network: &Network,
    unknowns: &Unknowns,
    place: &[usize],
    loads: &[LineLoads],
) -> Vec<f64> {
    let m = network.cases;
    let mut x = vec![0.0; unknowns.owner.len() * m];
    let mut add = |unknown: Option<usize>, case: usize, value: f64| {
        if let Some(u) = unknown {
            x[place[u] * m + case] += value;
        }
    };
    for (l, (line, load)) in network.lines.iter().zip(loads).enumerate() {
        let last = line.nodes.len() - 1;
        for c in 0..m {
            for (i, n) in line.nodes.iter().enumerate() {
                let at = load.cut.node_station[i] * m + c;
                add(unknowns.deflection[n.node], c, load.cut.force[at]);
                add(Some(unknowns.rotation_at(l, i)), c, load.cut.couple[at]);
            }
            let (force, moment) = load.before[c];
            add(unknowns.deflection[line.nodes[0].node], c, force);
            add(Some(unknowns.rotation_at(l, 0)), c, moment);
            let (force, moment) = load.after[c];
            add(unknowns.deflection[line.nodes[last].node], c, force);
            add(Some(unknowns.rotation_at(l, last)), c, moment);
            for i in 0..line.rigidity.len() {
                let span = load.spans[i * m + c];
                let length = line.nodes[i + 1].at - line.nodes[i].at;
                let shear = span.simple + (span.fixed_start + span.fixed_end) / length;
                let at = unknowns.of_span(l, line, i);
                add(at[0], c, shear);
                add(at[1], c, span.fixed_start);
                add(at[2], c, span.total - shear);
                add(at[3], c, span.fixed_end);
            }
        }
    }
    x
}

fn recover(
    network: &Network,
    unknowns: &Unknowns,
    place: &[usize],
    x: &[f64],
    loads: Vec<LineLoads>,
) -> Solution {
    let m = network.cases;
    let value = |u: Option<usize>, c: usize| u.map_or(0.0, |u| x[place[u] * m + c]);
    let mut reaction = vec![0.0; network.supports.len() * m];
    let mut lines = Vec::with_capacity(loads.len());
    for (l, (line, load)) in network.lines.iter().zip(loads).enumerate() {
        let rows = line.nodes.len() * m;
        let mut out = LineSolution {
            loads: load.cut,
            moment_left: vec![0.0; rows],
            moment_right: vec![0.0; rows],
            shear_left: vec![0.0; rows],
            shear_right: vec![0.0; rows],
        };
        for c in 0..m {
            for (i, rigidity) in line.rigidity.iter().enumerate() {
                let at = unknowns.of_span(l, line, i);
                let length = line.nodes[i + 1].at - line.nodes[i].at;
                let span = load.spans[i * m + c];
                let b = rigidity / length;
                let (t1, t2) = (value(at[1], c), value(at[3], c));
                let sway = 6.0 * b * ((value(at[0], c) - value(at[2], c)) / length);
                let start = b * (4.0 * t1 + 2.0 * t2) + sway - span.fixed_start;
                let end = -(b * (2.0 * t1 + 4.0 * t2) + sway - span.fixed_end);
                let shear = (end - start) / length + span.simple;
                out.moment_right[i * m + c] = start;
                out.moment_left[(i + 1) * m + c] = end;
                out.shear_right[i * m + c] = shear;
                out.shear_left[(i + 1) * m + c] = shear - span.total;
            }
            let (force, moment) = load.before[c];
            out.shear_left[c] = -force;
            out.moment_left[c] = moment;
            let last = (line.nodes.len() - 1) * m + c;
            let (force, moment) = load.after[c];
            out.shear_right[last] = force;
            out.moment_right[last] = -moment;
            for (i, n) in line.nodes.iter().enumerate() {
                reaction[n.node * m + c] += out.share(i, c);
            }
        }
        lines.push(out);
    }
    let mut deflection = vec![0.0; network.supports.len() * m];
    for (node, u) in unknowns.deflection.iter().enumerate() {
        for c in 0..m {
            deflection[node * m + c] = value(*u, c);
        }
    }
    Solution {
        cases: m,
        lines,
        reaction,
        deflection,
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
}
