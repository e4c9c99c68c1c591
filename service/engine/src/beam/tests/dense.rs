//! A dense solver of grillages in global axes, for comparison. It shares nothing with the
//! stiffness method beside it.

use super::torsion::{Frame, distance};
use crate::beam::{Shape, Support};

/// Reactions, deflections, and by line the moments at both ends of every span with its
/// torque, from full matrices: w and the two rotations about x and y at every point, local
/// stiffness turned into global axes, Gauss elimination with row exchange.
pub(super) struct Dense {
    pub reaction: Vec<f64>,
    pub deflection: Vec<f64>,
    pub spans: Vec<Vec<[f64; 3]>>,
}

/// Local stiffness over (w, rotation about the member, rotation across it) at both ends.
fn local(ei: f64, gj: f64, l: f64) -> [[f64; 6]; 6] {
    let (a, b, c, d) = (
        12.0 * ei / (l * l * l),
        6.0 * ei / (l * l),
        4.0 * ei / l,
        2.0 * ei / l,
    );
    let t = gj / l;
    [
        [a, 0.0, b, -a, 0.0, b],
        [0.0, t, 0.0, 0.0, -t, 0.0],
        [b, 0.0, c, -b, 0.0, d],
        [-a, 0.0, -b, a, 0.0, -b],
        [0.0, -t, 0.0, 0.0, t, 0.0],
        [b, 0.0, d, -b, 0.0, c],
    ]
}

/// Textbook fixed-end loads (w down, rotation as dw/ds) of forces and an even load.
fn fixed_ends(loads: &[Shape], from: f64, to: f64) -> [f64; 6] {
    let l = to - from;
    let mut out = [0.0; 6];
    for load in loads {
        match *load {
            Shape::Spread { start: q, .. } => {
                for (i, v) in [
                    (0, 0.5 * q * l),
                    (2, q * l * l / 12.0),
                    (3, 0.5 * q * l),
                    (5, -q * l * l / 12.0),
                ] {
                    out[i] += v;
                }
            }
            Shape::Point { at, force } if at >= from && at < to => {
                let (a, b) = (at - from, to - at);
                out[0] += force * b * b * (3.0 * a + b) / (l * l * l);
                out[2] += force * a * b * b / (l * l);
                out[3] += force * a * a * (a + 3.0 * b) / (l * l * l);
                out[5] -= force * a * a * b / (l * l);
            }
            _ => {}
        }
    }
    out
}

pub(super) fn dense(frame: &Frame) -> Dense {
    let n = frame.points.len();
    let size = 3 * n;
    let mut k = vec![vec![0.0; size + 1]; size];
    let mut members = Vec::new();
    for (l, nodes) in frame.lines.iter().enumerate() {
        let (c, s) = frame.direction(l);
        let (ei, gj) = frame.rigidity[l];
        for pair in nodes.windows(2) {
            let at = |p: usize| distance(frame.points[nodes[0]], frame.points[p]);
            let (from, to) = (at(pair[0]), at(pair[1]));
            // w stays; with w down and rotations as slopes in x and y, the slope along the
            // member is c gx + s gy and the one across it -s gx + c gy
            let mut turn = [[0.0; 6]; 6];
            for e in [0, 3] {
                turn[e][e] = 1.0;
                (turn[e + 2][e + 1], turn[e + 2][e + 2]) = (c, s);
                (turn[e + 1][e + 1], turn[e + 1][e + 2]) = (-s, c);
            }
            let own = local(ei, gj, to - from);
            let fixed = fixed_ends(&frame.loads[l], from, to);
            let dof: Vec<usize> = pair
                .iter()
                .flat_map(|p| [3 * p, 3 * p + 1, 3 * p + 2])
                .collect();
            for i in 0..6 {
                for j in 0..6 {
                    let mut v = 0.0;
                    for (p, row) in own.iter().enumerate() {
                        for (q, x) in row.iter().enumerate() {
                            v += turn[p][i] * x * turn[q][j];
                        }
                    }
                    k[dof[i]][dof[j]] += v;
                }
                let load: f64 = (0..6).map(|p| turn[p][i] * fixed[p]).sum();
                k[dof[i]][size] += load;
            }
            members.push((l, own, turn, fixed, dof));
        }
    }
    for (p, support) in frame.supports.iter().enumerate() {
        match support {
            Support::Free => {}
            Support::Spring(v) => k[3 * p][3 * p] += v,
            Support::Rigid => {
                for (j, v) in k[3 * p].iter_mut().enumerate() {
                    *v = f64::from(u8::from(j == 3 * p));
                }
            }
        }
    }
    let u = gauss(k);
    let mut out = Dense {
        reaction: vec![0.0; n],
        deflection: (0..n).map(|p| u[3 * p]).collect(),
        spans: vec![Vec::new(); frame.lines.len()],
    };
    for (l, own, turn, fixed, dof) in members {
        let mut v = [0.0; 6];
        for (p, row) in turn.iter().enumerate() {
            v[p] = row.iter().zip(&dof).map(|(t, d)| t * u[*d]).sum();
        }
        let f: Vec<f64> = (0..6)
            .map(|i| (0..6).map(|j| own[i][j] * v[j]).sum::<f64>() - fixed[i])
            .collect();
        out.reaction[dof[0] / 3] -= f[0];
        out.reaction[dof[3] / 3] -= f[3];
        out.spans[l].push([f[2], -f[5], f[4]]);
    }
    out
}

/// Solves rows of `[A | b]`.
fn gauss(mut rows: Vec<Vec<f64>>) -> Vec<f64> {
    let n = rows.len();
    for i in 0..n {
        let best = (i..n)
            .max_by(|a, b| rows[*a][i].abs().total_cmp(&rows[*b][i].abs()))
            .unwrap();
        rows.swap(i, best);
        let head = rows[i].clone();
        for row in rows.iter_mut().skip(i + 1) {
            let f = row[i] / head[i];
            if f != 0.0 {
                for (x, h) in row.iter_mut().zip(&head).skip(i) {
                    *x -= f * h;
                }
            }
        }
    }
    let mut x = vec![0.0; n];
    for i in (0..n).rev() {
        let known: f64 = (i + 1..n).map(|j| rows[i][j] * x[j]).sum();
        x[i] = (rows[i][n] - known) / rows[i][i];
    }
    x
}
