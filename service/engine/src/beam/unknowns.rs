//! Where the unknowns of a network are: deflections of the nodes that can move, slopes of
//! the lines at their nodes, or, with torsion, the tilt of every node. No stiffness here.

use super::sparse::Tied;
use super::{Line, Network, Support};

/// Unknowns with their shares in a slope or a twist; the first `count` count.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Terms {
    list: [(usize, f64); 2],
    count: usize,
}

impl Terms {
    fn one(unknown: usize) -> Self {
        Self {
            list: [(unknown, 1.0), (0, 0.0)],
            count: 1,
        }
    }

    fn two(first: (usize, f64), second: (usize, f64)) -> Self {
        let mut out = Self::default();
        for term in [first, second] {
            if term.1 != 0.0 {
                out.list[out.count] = term;
                out.count += 1;
            }
        }
        out
    }

    pub fn each(&self) -> &[(usize, f64)] {
        &self.list[..self.count]
    }

    /// The same shares in the rows where the unknowns have their place.
    pub fn placed(mut self, place: &[usize]) -> Self {
        for (unknown, _) in &mut self.list[..self.count] {
            *unknown = place[*unknown];
        }
        self
    }
}

/// Rows of the matrix in which a node of a line is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct NodeRows {
    /// That of its deflection; none where it does not move.
    pub deflection: Option<usize>,
    /// Those of the line's slope.
    pub slope: Terms,
}

impl NodeRows {
    /// All of them.
    pub fn each(&self) -> impl Iterator<Item = usize> {
        let slope = self.slope.each().iter().map(|(row, _)| *row);
        self.deflection.into_iter().chain(slope)
    }
}

/// The tilt of a node in two directions at right angles: the direction of the first line on
/// it, and the one to the left of that.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Tilt {
    ahead: usize,
    aside: usize,
    along: (f64, f64),
}

/// All unknowns of a network.
pub(super) struct Unknowns {
    pub deflection: Vec<Option<usize>>,
    /// Slopes of the lines that stand alone in torsion, node by node.
    slopes: Vec<usize>,
    /// Where those of each line begin.
    rotation: Vec<Option<usize>>,
    tilt: Vec<Option<Tilt>>,
    directions: Vec<(f64, f64)>,
    /// A line each unknown belongs to.
    pub owner: Vec<usize>,
}

impl Unknowns {
    /// Numbers the unknowns, node by node along each line: what a span ties together is near
    /// each other. Nothing can twist a line that meets no other one, so it keeps its slopes
    /// alone even with torsion.
    pub fn of(network: &Network) -> Self {
        let twists = twisting(network);
        let mut slopes = Vec::new();
        let mut rotation = Vec::with_capacity(network.lines.len());
        let mut owner = Vec::new();
        let mut tilt: Vec<Option<Tilt>> = vec![None; network.supports.len()];
        let mut deflection = vec![None; network.supports.len()];
        let directions = network
            .torsion
            .as_ref()
            .map_or_else(Vec::new, |t| t.direction.clone());
        for (l, line) in network.lines.iter().enumerate() {
            rotation.push((!twists[l]).then_some(slopes.len()));
            for n in &line.nodes {
                if network.supports[n.node] != Support::Rigid && deflection[n.node].is_none() {
                    deflection[n.node] = Some(owner.len());
                    owner.push(l);
                }
                if !twists[l] {
                    slopes.push(owner.len());
                    owner.push(l);
                } else if tilt[n.node].is_none() {
                    tilt[n.node] = Some(Tilt {
                        ahead: owner.len(),
                        aside: owner.len() + 1,
                        along: directions[l],
                    });
                    owner.extend([l, l]);
                }
            }
        }
        Self {
            deflection,
            slopes,
            rotation,
            tilt,
            directions,
            owner,
        }
    }

    /// Whether the line can be twisted.
    pub fn twists(&self, l: usize) -> bool {
        self.rotation[l].is_none()
    }

    /// Slope of a line at one of its nodes.
    ///
    /// t = c g1 + s g2; g tilt of the node ahead and aside, c and s cosine and sine of the
    /// angle between the line and the tilt's own direction. Source: geometry.
    pub fn slope(&self, l: usize, line: &Line, i: usize) -> Terms {
        if let Some(first) = self.rotation[l] {
            return Terms::one(self.slopes[first + i]);
        }
        match self.turned(l, line, i) {
            Some((tilt, c, s)) => Terms::two((tilt.ahead, c), (tilt.aside, s)),
            None => Terms::default(),
        }
    }

    /// Rows of the nodes of all lines; `place` is the row of every unknown.
    pub fn all_rows(&self, network: &Network, place: &[usize]) -> Vec<Vec<NodeRows>> {
        let of_line = |(l, line): (usize, &Line)| {
            let each = line.nodes.iter().enumerate();
            let rows = each.map(|(i, n)| NodeRows {
                deflection: self.deflection[n.node].map(|u| place[u]),
                slope: self.slope(l, line, i).placed(place),
            });
            rows.collect()
        };
        network.lines.iter().enumerate().map(of_line).collect()
    }

    /// Twist of a line at one of its nodes: the tilt to its left.
    ///
    /// f = c g2 - s g1, as in [`Unknowns::slope`]. Source: geometry.
    pub fn twist(&self, l: usize, line: &Line, i: usize) -> Terms {
        match self.turned(l, line, i) {
            Some((tilt, c, s)) => Terms::two((tilt.ahead, -s), (tilt.aside, c)),
            None => Terms::default(),
        }
    }

    fn turned(&self, l: usize, line: &Line, i: usize) -> Option<(Tilt, f64, f64)> {
        let tilt = self.tilt[line.nodes[i].node]?;
        let (d, b) = (*self.directions.get(l)?, tilt.along);
        if d == b {
            return Some((tilt, 1.0, 0.0));
        }
        Some((tilt, d.0 * b.0 + d.1 * b.1, d.1 * b.0 - d.0 * b.1))
    }

    /// Unknowns that are tied together by a span.
    pub fn tied(&self, l: usize, line: &Line, i: usize) -> Tied {
        let mut group: Tied = ([0; 6], 0);
        let mut add = |u: usize| {
            if !group.0[..group.1].contains(&u) {
                group.0[group.1] = u;
                group.1 += 1;
            }
        };
        for end in [i, i + 1] {
            if let Some(u) = self.deflection[line.nodes[end].node] {
                add(u);
            }
            let (slope, twist) = (self.slope(l, line, end), self.twist(l, line, end));
            for (u, _) in slope.each().iter().chain(twist.each()) {
                add(*u);
            }
        }
        group
    }
}

/// Lines that meet another one, where torsion counts.
fn twisting(network: &Network) -> Vec<bool> {
    let mut on = vec![0usize; network.supports.len()];
    if network.torsion.is_some() {
        for n in network.lines.iter().flat_map(|l| &l.nodes) {
            on[n.node] += 1;
        }
    }
    network
        .lines
        .iter()
        .map(|l| l.nodes.iter().any(|n| on[n.node] > 1))
        .collect()
}
