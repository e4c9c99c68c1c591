//! The direct stiffness method for a network: assembly, one factorisation, all load cases.
//! Forces from movements are in `recover`; no combinations here.

use super::band::{Band, BandFactor, WIDTH};
use super::cases::LineCases;
use super::element::stiffness;
use super::loads::LineLoads;
use super::recover::{Moved, recover};
use super::sparse::{Factor, Sparse, Stopped, Tied, order};
use super::unknowns::{NodeRows, Terms, Unknowns};
use super::{Network, Support};

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
    let numbered: Vec<usize> = (0..unknowns.owner.len()).collect();
    let rows = unknowns.all_rows(network, &numbered);
    let narrow = network.torsion.is_none() && rows.iter().all(|line| narrow(line));
    let (place, rows, factor) = if narrow {
        let mut matrix = Band::new(numbered.len());
        let at = (numbered.as_slice(), rows.as_slice());
        assemble(network, &unknowns, at, |r, c, v| matrix.add(r, c, v));
        let factor = matrix.factor().map(Factored::Band);
        (numbered, rows, factor)
    } else {
        let groups = tied(network, &unknowns);
        let place = order(numbered.len(), &groups);
        let rows = unknowns.all_rows(network, &place);
        let mut matrix = Sparse::new(&groups, &place);
        assemble(network, &unknowns, (&place, &rows), |r, c, v| {
            matrix.add(r, c, v)
        });
        let factor = Factor::of(&matrix).map(Factored::Sparse);
        (place, rows, factor)
    };
    let factor = factor.map_err(|stopped| match stopped {
        Stopped::TooLarge => Fault::TooLarge,
        Stopped::Singular(row) => {
            let unknown = place.iter().position(|p| *p == row).unwrap_or(0);
            Fault::Mechanism {
                line: unknowns.owner[unknown],
            }
        }
    })?;
    let mut x = right_sides(network, place.len(), &rows, &loads);
    match &factor {
        Factored::Band(factor) => factor.solve(&mut x, network.cases),
        Factored::Sparse(factor) => factor.solve(&mut x, network.cases),
    }
    let moved = Moved::of(&unknowns, &place, &x, network.cases);
    Ok(recover(network, &rows, &moved, loads))
}

enum Factored {
    /// That of lines that only run beside each other.
    Band(BandFactor),
    Sparse(Factor),
}

/// Whether the spans of a line tie together no rows that are far apart.
fn narrow(line: &[NodeRows]) -> bool {
    line.windows(2).all(|span| {
        let all = || span.iter().flat_map(NodeRows::each);
        let (first, last) = (all().min().unwrap_or(0), all().max().unwrap_or(0));
        last - first <= WIDTH
    })
}

fn tied(network: &Network, unknowns: &Unknowns) -> Vec<Tied> {
    let mut out = Vec::new();
    for (l, line) in network.lines.iter().enumerate() {
        out.extend((0..line.rigidity.len()).map(|i| unknowns.tied(l, line, i)));
    }
    out
}

/// Movements of an element with their shares in the rows of the matrix: (movement, row, share).
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

    fn push(&mut self, movement: usize, terms: &Terms) {
        for (row, share) in terms.each() {
            self.put(movement, *row, *share);
        }
    }

    fn put(&mut self, movement: usize, row: usize, share: f64) {
        self.list[self.count] = (movement, row, share);
        self.count += 1;
    }

    /// Adds the element's stiffness, entry by entry.
    fn add(&self, k: impl Fn(usize, usize) -> f64, mut entry: impl FnMut(usize, usize, f64)) {
        let list = &self.list[..self.count];
        for (a, (one, row, f)) in list.iter().enumerate() {
            for (other, column, g) in &list[..=a] {
                entry(*row, *column, f * g * k(*one, *other));
            }
        }
    }
}

fn bending_rows(ends: &[NodeRows]) -> Rows {
    let mut rows = Rows::new();
    for (end, node) in ends.iter().enumerate() {
        if let Some(row) = node.deflection {
            rows.put(2 * end, row, 1.0);
        }
        rows.push(2 * end + 1, &node.slope);
    }
    rows
}

fn assemble(
    network: &Network,
    unknowns: &Unknowns,
    (place, rows): (&[usize], &[Vec<NodeRows>]),
    mut entry: impl FnMut(usize, usize, f64),
) {
    for (l, line) in network.lines.iter().enumerate() {
        for (i, rigidity) in line.rigidity.iter().enumerate() {
            let length = line.nodes[i + 1].at - line.nodes[i].at;
            let k = stiffness(*rigidity, length);
            bending_rows(&rows[l][i..=i + 1]).add(|r, c| k[r][c], &mut entry);
            if let Some(t) = network.torsion.as_ref().filter(|_| unknowns.twists(l)) {
                let k = t.rigidity[l][i] / length;
                let mut rows = Rows::new();
                rows.push(0, &unknowns.twist(l, line, i).placed(place));
                rows.push(1, &unknowns.twist(l, line, i + 1).placed(place));
                rows.add(|r, c| if r == c { k } else { -k }, &mut entry);
            }
        }
    }
    for (support, u) in network.supports.iter().zip(&unknowns.deflection) {
        if let (Support::Spring(k), Some(u)) = (support, u) {
            entry(place[*u], place[*u], *k);
        }
    }
}

/// One row an unknown, one column a case.
fn right_sides(
    network: &Network,
    unknowns: usize,
    rows: &[Vec<NodeRows>],
    loads: &[LineLoads],
) -> Vec<f64> {
    let m = network.cases;
    let mut x = vec![0.0; unknowns * m];
    for ((line, rows), load) in network.lines.iter().zip(rows).zip(loads) {
        let last = line.nodes.len() - 1;
        let mut act = |node: usize, case: usize, force: f64, couple: f64| {
            let rows = &rows[node];
            if let Some(row) = rows.deflection {
                x[row * m + case] += force;
            }
            for (row, share) in rows.slope.each() {
                x[row * m + case] += share * couple;
            }
        };
        for c in 0..m {
            for (i, station) in load.cut.node_station.iter().enumerate() {
                let at = station * m + c;
                act(i, c, load.cut.force[at], load.cut.couple[at]);
            }
            for (i, (force, moment)) in [(0, load.before[c]), (last, load.after[c])] {
                act(i, c, force, moment);
            }
            for (i, ends) in line.nodes.windows(2).enumerate() {
                let span = &load.spans[i * m + c];
                let length = ends[1].at - ends[0].at;
                let shear = span.simple + (span.fixed_start + span.fixed_end) / length;
                act(i, c, shear, span.fixed_start);
                act(i + 1, c, span.total - shear, span.fixed_end);
            }
        }
    }
    x
}
