//! A straight run held at the places where it meets others: the forces that hold it, what
//! its piles carry, and how both change when those places move. Knows one run at a time;
//! exact, by the same beam element as the analysis of the whole plan.

use super::loads::SpanTerms;
use super::stack::Line;

/// A pivot below this share of its diagonal is no resistance.
const PIVOT_MIN: f64 = 1e-11;

/// A place of the run that moves with others.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Joint {
    pub meeting: usize,
    pub at: f64,
}

/// A run on a layout, held at its joints.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Held {
    /// Meetings that move, in order along the run.
    pub on: Vec<usize>,
    /// Upward force that holds each of them in place, by combination.
    pub hold: Vec<f64>,
    /// What that force loses for a unit of movement downwards of each.
    pub stiffness: Vec<f64>,
    /// Places of the piles that do not stand at a moving meeting.
    pub piles: Vec<usize>,
    /// Their reactions while the joints are held, by combination.
    pub own: Vec<f64>,
    /// What their reactions gain for a unit of movement downwards of each joint.
    pub influence: Vec<f64>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Kind {
    Fixed,
    Spring(f64),
    Joint(usize),
    Loose,
}

#[derive(Debug, Clone, Copy)]
struct Node {
    at: f64,
    kind: Kind,
    /// Unknown movement and unknown rotation.
    sink: Option<usize>,
    turn: usize,
}

impl Held {
    /// Holds a run; none where it can move even so.
    pub fn of(
        line: &Line,
        chosen: &[usize],
        joints: &[Joint],
        spring: Option<f64>,
    ) -> Option<Self> {
        let moves = |i: usize| {
            line.places.meeting[i].is_some_and(|m| joints.iter().any(|j| j.meeting == m))
        };
        let piles: Vec<usize> = chosen.iter().copied().filter(|i| !moves(*i)).collect();
        let nodes = nodes(line, &piles, joints, spring);
        let system = System::of(line, &nodes, joints.len())?;
        Some(system.read(line, &nodes, joints, piles))
    }
}

fn nodes(line: &Line, piles: &[usize], joints: &[Joint], spring: Option<f64>) -> Vec<Node> {
    let node = |at: f64, kind: Kind| Node {
        at,
        kind,
        sink: None,
        turn: 0,
    };
    let mut out: Vec<Node> = joints
        .iter()
        .enumerate()
        .map(|(j, joint)| node(joint.at, Kind::Joint(j)))
        .collect();
    out.extend(
        piles
            .iter()
            .map(|i| node(line.places.at[*i], spring.map_or(Kind::Fixed, Kind::Spring))),
    );
    for pair in line.rigidity.windows(2) {
        let at = pair[0].0;
        let inside = out.iter().any(|n| n.at < at) && out.iter().any(|n| n.at > at);
        if pair[0].1 != pair[1].1 && inside && out.iter().all(|n| n.at != at) {
            out.push(node(at, Kind::Loose));
        }
    }
    out.sort_by(|a, b| a.at.total_cmp(&b.at));
    let mut next = 0;
    for n in &mut out {
        if matches!(n.kind, Kind::Spring(_) | Kind::Loose) {
            n.sink = Some(next);
            next += 1;
        }
        n.turn = next;
        next += 1;
    }
    out
}

/// The equations of a run, solved: columns are combinations, then a unit of movement of
/// each joint.
struct System {
    columns: usize,
    /// Movements and rotations, one row a node.
    sink: Vec<f64>,
    turn: Vec<f64>,
    /// Vertical load on every node, with what its spans bring when clamped.
    load: Vec<f64>,
    /// Stiffness of every span.
    spans: Vec<[[f64; 4]; 4]>,
}

impl System {
    fn of(line: &Line, nodes: &[Node], joints: usize) -> Option<Self> {
        let n = line.loads.count;
        let columns = n + joints;
        let unknowns = nodes.last().map_or(0, |l| l.turn + 1);
        let spans: Vec<[[f64; 4]; 4]> = nodes
            .windows(2)
            .map(|p| stiffness(line.rigidity_after(p[0].at), p[1].at - p[0].at))
            .collect();
        let mut load = vec![0.0; nodes.len() * columns];
        let mut couple = vec![0.0; nodes.len() * columns];
        loads(line, nodes, columns, &mut load, &mut couple);
        let mut band = vec![[0.0; 4]; unknowns];
        let mut right = vec![0.0; unknowns * columns];
        for (i, node) in nodes.iter().enumerate() {
            for c in 0..columns {
                if let Some(u) = node.sink {
                    right[u * columns + c] += load[i * columns + c];
                }
                right[node.turn * columns + c] += couple[i * columns + c];
            }
            if let (Some(u), Kind::Spring(k)) = (node.sink, node.kind) {
                band[u][0] += k;
            }
        }
        for (pair, k) in nodes.windows(2).zip(&spans) {
            let at = [
                pair[0].sink,
                Some(pair[0].turn),
                pair[1].sink,
                Some(pair[1].turn),
            ];
            let held = [pair[0].kind, pair[1].kind];
            for (row, u) in at.iter().enumerate() {
                let Some(u) = u else { continue };
                for (column, v) in at.iter().enumerate() {
                    match v {
                        Some(v) if v <= u => band[*u][u - v] += k[row][column],
                        Some(_) => {}
                        None => {
                            if let Kind::Joint(j) = held[column / 2] {
                                right[u * columns + n + j] -= k[row][column];
                            }
                        }
                    }
                }
            }
        }
        solve(&mut band, &mut right, columns)?;
        let mut sink = vec![0.0; nodes.len() * columns];
        let mut turn = vec![0.0; nodes.len() * columns];
        for (i, node) in nodes.iter().enumerate() {
            for c in 0..columns {
                turn[i * columns + c] = right[node.turn * columns + c];
                if let Some(u) = node.sink {
                    sink[i * columns + c] = right[u * columns + c];
                }
            }
            if let Kind::Joint(j) = node.kind {
                sink[i * columns + n + j] = 1.0;
            }
        }
        Some(Self {
            columns,
            sink,
            turn,
            load,
            spans,
        })
    }

    /// Upward force of whatever holds a node.
    ///
    /// R = F - K u at the node; F load with what clamped spans bring (N), K stiffness of
    /// its spans, u movements and rotations. Source: equilibrium of the node.
    fn reaction(&self, i: usize, c: usize) -> f64 {
        let m = self.columns;
        let mut r = self.load[i * m + c];
        let mut take = |span: usize, row: usize| {
            let k = &self.spans[span][row];
            let (a, b) = (span * m + c, (span + 1) * m + c);
            r -= k[0] * self.sink[a]
                + k[1] * self.turn[a]
                + k[2] * self.sink[b]
                + k[3] * self.turn[b];
        };
        if i > 0 {
            take(i - 1, 2);
        }
        if i < self.spans.len() {
            take(i, 0);
        }
        r
    }

    fn read(&self, line: &Line, nodes: &[Node], joints: &[Joint], piles: Vec<usize>) -> Held {
        let n = line.loads.count;
        let k = joints.len();
        let mut held = Held {
            on: joints.iter().map(|j| j.meeting).collect(),
            hold: vec![0.0; k * n],
            stiffness: vec![0.0; k * k],
            own: vec![0.0; piles.len() * n],
            influence: vec![0.0; piles.len() * k],
            piles,
        };
        let mut pile = 0;
        for (i, node) in nodes.iter().enumerate() {
            match node.kind {
                Kind::Joint(j) => {
                    for c in 0..n {
                        held.hold[j * n + c] = self.reaction(i, c);
                    }
                    for other in 0..k {
                        held.stiffness[j * k + other] = -self.reaction(i, n + other);
                    }
                }
                Kind::Fixed | Kind::Spring(_) => {
                    let value = |c: usize| match node.kind {
                        Kind::Spring(s) => s * self.sink[i * self.columns + c],
                        _ => self.reaction(i, c),
                    };
                    for c in 0..n {
                        held.own[pile * n + c] = value(c);
                    }
                    for j in 0..k {
                        held.influence[pile * k + j] = value(n + j);
                    }
                    pile += 1;
                }
                Kind::Loose => {}
            }
        }
        held
    }
}

/// Loads on the nodes: forces on them, what clamped spans bring, and what lies beyond the
/// first and the last.
///
/// m1 = (2 T_l - T_r)/(3 L), m2 = (T_l - 2 T_r)/(3 L), V1 = W - R + (m1 + m2)/L with T_l,
/// T_r the load terms of the three-moment equation, W the load and R its reaction at the
/// right end as a simple beam. Source: slopes of the simple beam put back to nil.
fn loads(line: &Line, nodes: &[Node], columns: usize, load: &mut [f64], couple: &mut [f64]) {
    let n = line.loads.count;
    let mut terms = SpanTerms::default();
    for (i, pair) in nodes.windows(2).enumerate() {
        let length = pair[1].at - pair[0].at;
        line.loads.span(pair[0].at, pair[1].at, false, &mut terms);
        for c in 0..n {
            let (l, r) = (terms.at_left[c], terms.at_right[c]);
            let (first, second) = (
                (2.0 * l - r) / (3.0 * length),
                (l - 2.0 * r) / (3.0 * length),
            );
            let start = terms.total[c] - terms.right[c] + (first + second) / length;
            load[i * columns + c] += start;
            load[(i + 1) * columns + c] += terms.total[c] - start;
            couple[i * columns + c] += first;
            couple[(i + 1) * columns + c] += second;
        }
    }
    for (i, node) in nodes.iter().enumerate() {
        for c in 0..n {
            load[i * columns + c] += line.loads.on(node.at, c);
        }
    }
    let (Some(first), Some(last)) = (nodes.first(), nodes.last()) else {
        return;
    };
    let end = (nodes.len() - 1) * columns;
    for c in 0..n {
        let (force, moment) = line.loads.beyond(first.at, false, c);
        load[c] += force;
        couple[c] += moment;
        let (force, moment) = line.loads.beyond(last.at, true, c);
        load[end + c] += force;
        couple[end + c] -= moment;
    }
}

/// Stiffness of a span in `[w1, t1, w2, t2]`, as in the beam.
fn stiffness(rigidity: f64, length: f64) -> [[f64; 4]; 4] {
    let b = rigidity / length;
    let s = 6.0 * b / length;
    let f = 2.0 * s / length;
    [
        [f, s, -f, s],
        [s, 4.0 * b, -s, 2.0 * b],
        [-f, -s, f, -s],
        [s, 2.0 * b, -s, 4.0 * b],
    ]
}

/// L D L' of a band of three below the diagonal; none where there is no resistance.
fn solve(band: &mut [[f64; 4]], right: &mut [f64], columns: usize) -> Option<()> {
    let n = band.len();
    for i in 0..n {
        let diagonal = band[i][0];
        for d in (1..=3.min(i)).rev() {
            let j = i - d;
            let mut v = band[i][d];
            for e in d + 1..=3.min(i) {
                if e - d <= 3 {
                    v -= band[i][e] * band[j][e - d] * band[i - e][0];
                }
            }
            band[i][d] = v / band[j][0];
            // kept as L; the sums above use it with D
        }
        let mut pivot = diagonal;
        for d in 1..=3.min(i) {
            pivot -= band[i][d] * band[i][d] * band[i - d][0];
        }
        if pivot.is_nan() || pivot <= PIVOT_MIN * diagonal {
            return None;
        }
        band[i][0] = pivot;
        for d in 1..=3.min(i) {
            for c in 0..columns {
                right[i * columns + c] -= band[i][d] * right[(i - d) * columns + c];
            }
        }
    }
    for i in (0..n).rev() {
        for c in 0..columns {
            right[i * columns + c] /= band[i][0];
        }
        for d in 1..=3 {
            if i + d < n {
                for c in 0..columns {
                    right[i * columns + c] -= band[i + d][d] * right[(i + d) * columns + c];
                }
            }
        }
    }
    Some(())
}

/// Movement of every joint from what its runs need to hold it, or none where the beams
/// can move without resistance. `matrix` is full and symmetric, `right` has one column a
/// combination; it becomes the movements.
pub(super) fn settle(matrix: &mut [f64], right: &mut [f64], size: usize) -> Option<()> {
    let columns = right.len().checked_div(size)?;
    for i in 0..size {
        let diagonal = matrix[i * size + i];
        for j in 0..i {
            let mut v = matrix[i * size + j];
            for k in 0..j {
                v -= matrix[i * size + k] * matrix[j * size + k] * matrix[k * size + k];
            }
            matrix[i * size + j] = v / matrix[j * size + j];
        }
        let mut pivot = diagonal;
        for k in 0..i {
            let l = matrix[i * size + k];
            pivot -= l * l * matrix[k * size + k];
        }
        if pivot.is_nan() || pivot <= PIVOT_MIN * diagonal {
            return None;
        }
        matrix[i * size + i] = pivot;
        for k in 0..i {
            for c in 0..columns {
                right[i * columns + c] -= matrix[i * size + k] * right[k * columns + c];
            }
        }
    }
    for i in (0..size).rev() {
        for c in 0..columns {
            right[i * columns + c] /= matrix[i * size + i];
            for k in i + 1..size {
                right[i * columns + c] -= matrix[k * size + i] * right[k * columns + c];
            }
        }
    }
    Some(())
}
