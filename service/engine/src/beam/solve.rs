//! The direct stiffness method for a network: assembly, one factorisation, all load cases.
//! Forces from movements are in `recover`; no combinations here.

use super::Network;
use super::cases::LineCases;
use super::element::stiffness;
use super::loads::LineLoads;
use super::recover::recover;
use super::sparse::{Factor, Sparse, Stopped, Tied, order};
use super::unknowns::{Terms, Unknowns};
use super::{Line, Support};

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
    /// Torque of every span, one row a span; empty where the line is not twisted.
    pub(super) torque: Vec<f64>,
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

/// The loads of the lines of a network, by piece and by span. They are the same whatever holds
/// its nodes.
#[derive(Debug, Clone)]
pub struct Loads(Vec<LineLoads>);

impl Loads {
    /// Of all lines.
    pub fn of(network: &Network) -> Self {
        let each = network.lines.iter();
        Self(each.map(|l| LineLoads::new(l, network.cases)).collect())
    }
}

/// Solves a network for all its load cases.
pub fn solve(network: &Network) -> Result<Solution, Fault> {
    solve_under(network, Loads::of(network))
}

/// [`solve`] with the loads of its lines as they were found before.
pub fn solve_under(network: &Network, Loads(loads): Loads) -> Result<Solution, Fault> {
    let unknowns = Unknowns::of(network);
    let groups = tied(network, &unknowns);
    let place = order(unknowns.owner.len(), &groups);
    let mut matrix = Sparse::new(&groups, &place);
    assemble(network, &unknowns, &place, &mut matrix);
    let factor = Factor::of(&matrix).map_err(|stopped| match stopped {
        Stopped::TooLarge => Fault::TooLarge,
        Stopped::Singular(row) => {
            let unknown = place.iter().position(|p| *p == row).unwrap_or(0);
            Fault::Mechanism {
                line: unknowns.owner[unknown],
            }
        }
    })?;
    let mut x = right_sides(network, &unknowns, &place, &loads);
    factor.solve(&mut x, network.cases);
    Ok(recover(network, &unknowns, &place, &x, loads))
}

fn tied(network: &Network, unknowns: &Unknowns) -> Vec<Tied> {
    let mut out = Vec::new();
    for (l, line) in network.lines.iter().enumerate() {
        out.extend((0..line.rigidity.len()).map(|i| unknowns.tied(l, line, i)));
    }
    out
}

/// Movements of an element with their shares in the unknowns: (row of the element,
/// unknown, share).
struct Rows {
    list: [(usize, usize, f64); 6],
    count: usize,
}

impl Rows {
    fn new() -> Self {
        Self {
            list: [(0, 0, 0.0); 6],
            count: 0,
        }
    }

    fn push(&mut self, row: usize, terms: &Terms) {
        for (unknown, share) in terms.each() {
            self.put(row, *unknown, *share);
        }
    }

    fn put(&mut self, row: usize, unknown: usize, share: f64) {
        self.list[self.count] = (row, unknown, share);
        self.count += 1;
    }

    /// Adds the element's stiffness to the matrix.
    fn add(&self, k: impl Fn(usize, usize) -> f64, place: &[usize], matrix: &mut Sparse) {
        let list = &self.list[..self.count];
        for (a, (row, u, f)) in list.iter().enumerate() {
            for (column, v, g) in &list[..=a] {
                matrix.add(place[*u], place[*v], f * g * k(*row, *column));
            }
        }
    }
}

fn bending_rows(unknowns: &Unknowns, l: usize, line: &Line, i: usize) -> Rows {
    let mut rows = Rows::new();
    for (end, n) in [i, i + 1].into_iter().enumerate() {
        if let Some(u) = unknowns.deflection[line.nodes[n].node] {
            rows.put(2 * end, u, 1.0);
        }
        rows.push(2 * end + 1, &unknowns.slope(l, line, n));
    }
    rows
}

fn assemble(network: &Network, unknowns: &Unknowns, place: &[usize], matrix: &mut Sparse) {
    for (l, line) in network.lines.iter().enumerate() {
        for (i, rigidity) in line.rigidity.iter().enumerate() {
            let length = line.nodes[i + 1].at - line.nodes[i].at;
            let k = stiffness(*rigidity, length);
            bending_rows(unknowns, l, line, i).add(|r, c| k[r][c], place, matrix);
            if let Some(t) = network.torsion.as_ref().filter(|_| unknowns.twists(l)) {
                let k = t.rigidity[l][i] / length;
                let mut rows = Rows::new();
                rows.push(0, &unknowns.twist(l, line, i));
                rows.push(1, &unknowns.twist(l, line, i + 1));
                rows.add(|r, c| if r == c { k } else { -k }, place, matrix);
            }
        }
    }
    for (support, u) in network.supports.iter().zip(&unknowns.deflection) {
        if let (Support::Spring(k), Some(u)) = (support, u) {
            matrix.add(place[*u], place[*u], *k);
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
    for (l, (line, load)) in network.lines.iter().zip(loads).enumerate() {
        let last = line.nodes.len() - 1;
        let mut sink = Sink {
            force: line
                .nodes
                .iter()
                .map(|n| unknowns.deflection[n.node].map(|u| place[u] * m))
                .collect(),
            couple: (0..line.nodes.len())
                .map(|i| unknowns.slope(l, line, i))
                .collect(),
            place,
            x: &mut x,
            m,
        };
        for c in 0..m {
            for i in 0..line.nodes.len() {
                let at = load.cut.node_station[i] * m + c;
                sink.force(i, c, load.cut.force[at]);
                sink.couple(i, c, load.cut.couple[at]);
            }
            for (i, (force, moment)) in [(0, load.before[c]), (last, load.after[c])] {
                sink.force(i, c, force);
                sink.couple(i, c, moment);
            }
            for i in 0..line.rigidity.len() {
                let span = load.spans[i * m + c];
                let length = line.nodes[i + 1].at - line.nodes[i].at;
                let shear = span.simple + (span.fixed_start + span.fixed_end) / length;
                sink.force(i, c, shear);
                sink.couple(i, c, span.fixed_start);
                sink.force(i + 1, c, span.total - shear);
                sink.couple(i + 1, c, span.fixed_end);
            }
        }
    }
    x
}

/// Loads on the nodes of one line.
struct Sink<'a> {
    force: Vec<Option<usize>>,
    couple: Vec<Terms>,
    place: &'a [usize],
    x: &'a mut [f64],
    m: usize,
}

impl Sink<'_> {
    fn force(&mut self, node: usize, case: usize, value: f64) {
        if let Some(row) = self.force[node] {
            self.x[row + case] += value;
        }
    }

    fn couple(&mut self, node: usize, case: usize, value: f64) {
        for (unknown, share) in self.couple[node].each() {
            self.x[self.place[*unknown] * self.m + case] += share * value;
        }
    }
}
