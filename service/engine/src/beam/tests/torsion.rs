//! Grillages with torsion: closed forms, statics, rotated plans, and a dense solver in
//! global axes that shares nothing with the stiffness method beside it.

use super::dense::dense;
use super::{close, line, uniform};
use crate::beam::{Fault, Line, LineNode, Load, Network, Shape, Solution, Support, Torsion, solve};

/// Numbers from a fixed seed, even in 0 to 1.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }
    fn between(&mut self, a: f64, b: f64) -> f64 {
        a + (b - a) * self.roll()
    }
}

/// Lines through points of the plan, by indices of the points; EI and GJ of every line.
pub(super) struct Frame {
    pub points: Vec<(f64, f64)>,
    pub supports: Vec<Support>,
    pub lines: Vec<Vec<usize>>,
    pub rigidity: Vec<(f64, f64)>,
    pub loads: Vec<Vec<Shape>>,
}

impl Frame {
    fn length(&self, l: usize) -> f64 {
        let (a, b) = (self.lines[l][0], *self.lines[l].last().unwrap());
        distance(self.points[a], self.points[b])
    }

    pub fn direction(&self, l: usize) -> (f64, f64) {
        let (a, b) = (self.lines[l][0], *self.lines[l].last().unwrap());
        let (p, q, d) = (self.points[a], self.points[b], self.length(l));
        ((q.0 - p.0) / d, (q.1 - p.1) / d)
    }

    fn network(&self, torsion: bool) -> Network {
        let all = 0..self.lines.len();
        let line = |l: usize| Line {
            length: self.length(l),
            nodes: self.lines[l]
                .iter()
                .map(|n| LineNode {
                    node: *n,
                    at: distance(self.points[self.lines[l][0]], self.points[*n]),
                })
                .collect(),
            rigidity: vec![self.rigidity[l].0; self.lines[l].len() - 1],
            loads: self.loads[l]
                .iter()
                .map(|shape| Load {
                    case: 0,
                    shape: *shape,
                })
                .collect(),
        };
        Network {
            supports: self.supports.clone(),
            lines: all.clone().map(line).collect(),
            cases: 1,
            torsion: torsion.then(|| Torsion {
                direction: all.clone().map(|l| self.direction(l)).collect(),
                rigidity: all
                    .map(|l| vec![self.rigidity[l].1; self.lines[l].len() - 1])
                    .collect(),
            }),
        }
    }

    /// The plan turned by an angle, in radians.
    fn turned(&self, angle: f64) -> Vec<(f64, f64)> {
        let (s, c) = (crate::math::sin(angle), crate::math::cos(angle));
        let all = self.points.iter();
        all.map(|p| (c * p.0 - s * p.1, s * p.0 + c * p.1))
            .collect()
    }
}

pub(super) fn distance(a: (f64, f64), b: (f64, f64)) -> f64 {
    ((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1)).sqrt()
}

/// A skewed mesh of lines in two directions with piles at its corners and some other
/// points, forces anywhere and even loads.
fn mesh(dice: &mut Dice) -> Frame {
    let (nx, ny) = (
        2 + (dice.roll() * 3.0) as usize,
        2 + (dice.roll() * 3.0) as usize,
    );
    let steps = |n: usize, dice: &mut Dice| {
        let mut out = vec![0.0];
        for i in 1..n {
            out.push(out[i - 1] + dice.between(1.0, 4.0));
        }
        out
    };
    let (xs, ys) = (steps(nx, dice), steps(ny, dice));
    let skew = dice.between(-0.8, 0.8);
    let mut points = Vec::new();
    for y in &ys {
        points.extend(xs.iter().map(|x| (x + skew * y, *y)));
    }
    let corners = [0, nx - 1, nx * (ny - 1), nx * ny - 1];
    let mut supports = Vec::new();
    for i in 0..points.len() {
        let held = corners.contains(&i) || dice.roll() < 0.3;
        supports.push(match (held, dice.roll() < 0.5) {
            (false, _) => Support::Free,
            (true, true) => Support::Rigid,
            (true, false) => Support::Spring(dice.between(1e6, 3e7)),
        });
    }
    let mut lines: Vec<Vec<usize>> = (0..ny)
        .map(|j| (0..nx).map(|i| j * nx + i).collect())
        .collect();
    lines.extend((0..nx).map(|i| (0..ny).map(|j| j * nx + i).collect()));
    let rigidity = lines
        .iter()
        .map(|_| (dice.between(1e7, 9e7), dice.between(1e5, 4e7)))
        .collect();
    let mut out = Frame {
        points,
        supports,
        loads: vec![Vec::new(); lines.len()],
        lines,
        rigidity,
    };
    for l in 0..out.lines.len() {
        let length = out.length(l);
        out.loads[l].push(uniform(length, dice.between(1e3, 2e4)));
        for _ in 0..2 {
            out.loads[l].push(Shape::Point {
                at: dice.between(0.0, length),
                force: dice.between(-2e4, 6e4),
            });
        }
    }
    out
}

fn apart(a: &[f64], b: &[f64], (tolerance, floor): (f64, f64), what: &str) {
    // loads are of some kN on some m: what is far below is rounding
    let scale = b.iter().map(|v| v.abs()).fold(floor, f64::max);
    assert_eq!(a.len(), b.len());
    for (x, y) in a.iter().zip(b) {
        assert!(
            (x - y).abs() <= tolerance * scale,
            "{what}: {x} {y} of {scale}"
        );
    }
}

#[test]
fn random_grillages_agree_with_a_dense_solver() {
    let mut dice = Dice(11);
    let mut twisted = 0.0f64;
    for _ in 0..60 {
        let frame = mesh(&mut dice);
        let (got, want) = (solve(&frame.network(true)).unwrap(), dense(&frame));
        apart(&got.reaction, &want.reaction, (1e-9, 1e3), "reaction");
        apart(&got.deflection, &want.deflection, (1e-9, 0.0), "deflection");
        let (mut moments, mut torques) = (Vec::new(), Vec::new());
        for (l, line) in got.lines.iter().enumerate() {
            for i in 0..frame.lines[l].len() - 1 {
                moments.extend([line.moments(i, 0).1, line.moments(i + 1, 0).0]);
                torques.push(line.torque(i, 0));
            }
        }
        let spans = want.spans.iter().flatten();
        let wanted: Vec<f64> = spans.clone().flat_map(|s| [s[0], s[1]]).collect();
        apart(&moments, &wanted, (1e-9, 1e3), "moment");
        let scale = wanted.iter().map(|v| v.abs()).fold(0.0, f64::max);
        let wanted: Vec<f64> = spans.map(|s| s[2]).collect();
        for (x, y) in torques.iter().zip(&wanted) {
            assert!((x - y).abs() <= 1e-9 * scale, "torque {x} {y}");
        }
        let most = torques.iter().map(|v| v.abs()).fold(0.0, f64::max);
        twisted = twisted.max(most / scale);
    }
    // torsion takes a good share somewhere, or nothing was compared
    assert!(twisted > 0.1, "{twisted}");
}

/// Forces and moments about both axes of the plan.
#[test]
fn random_grillages_are_in_equilibrium() {
    let mut dice = Dice(12);
    for _ in 0..40 {
        let frame = mesh(&mut dice);
        let s = solve(&frame.network(true)).unwrap();
        let (mut sum, mut size) = ([0.0f64; 3], [1.0f64; 3]);
        let mut add = |f: f64, p: (f64, f64)| {
            for (i, arm) in [1.0, p.0, p.1].into_iter().enumerate() {
                sum[i] += f * arm;
                size[i] += (f * arm).abs();
            }
        };
        for (p, r) in frame.points.iter().zip(&s.reaction) {
            add(*r, *p);
        }
        for (l, loads) in frame.loads.iter().enumerate() {
            let (d, a) = (frame.direction(l), frame.points[frame.lines[l][0]]);
            let at = |x: f64| (a.0 + d.0 * x, a.1 + d.1 * x);
            for load in loads {
                match *load {
                    Shape::Spread { to, start, .. } => add(-start * to, at(0.5 * to)),
                    Shape::Point { at: x, force } => add(-force, at(x)),
                    Shape::Couple { .. } => unreachable!(),
                }
            }
        }
        for i in 0..3 {
            assert!(
                sum[i].abs() <= 1e-9 * size[i],
                "{i}: {} of {}",
                sum[i],
                size[i]
            );
        }
    }
}

/// The plan turned by any angle, and mirrored: the same forces.
#[test]
fn a_turned_or_mirrored_plan_carries_the_same() {
    let mut dice = Dice(13);
    for _ in 0..20 {
        let mut frame = mesh(&mut dice);
        let own = solve(&frame.network(true)).unwrap();
        let original = frame.points.clone();
        let mut others = vec![original.iter().map(|p| (-p.0, p.1)).collect::<Vec<_>>()];
        for _ in 0..3 {
            others.push(frame.turned(dice.between(0.0, 6.3)));
        }
        for (i, points) in others.into_iter().enumerate() {
            frame.points = points;
            let other = solve(&frame.network(true)).unwrap();
            apart(&other.reaction, &own.reaction, (1e-9, 1e3), "reaction");
            for (a, b) in other.lines.iter().zip(&own.lines) {
                apart(&a.moment_left, &b.moment_left, (1e-8, 1e3), "moment");
                for (x, y) in a.torque.iter().zip(&b.torque) {
                    // a mirror turns torques round
                    let want = if i == 0 { -y } else { *y };
                    let scale = own.reaction[0].abs().max(1e4);
                    assert!((x - want).abs() <= 1e-8 * scale, "torque {x} {want}");
                }
            }
        }
    }
}

#[test]
fn a_straight_line_alone_is_not_twisted() {
    let supports: Vec<_> = [0.5, 3.0, 7.0, 9.0].map(|x| (x, Support::Rigid)).to_vec();
    let mut network = line(9.5, &supports, 4e7, vec![uniform(9.5, 8e3)]);
    let without = solve(&network).unwrap();
    network.torsion = Some(Torsion {
        direction: vec![(0.6, 0.8)],
        rigidity: vec![vec![1e7; 3]],
    });
    assert_eq!(solve(&network).unwrap(), without);
}

/// Two stems of length `a` along x at the ends of a cross beam of length `b` along y; piles
/// at the four ends; a force at the middle of the first stem.
fn two_stems(gj: f64, corners: Support) -> Frame {
    let (a, b, p) = (6.0, 4.0, 50e3);
    Frame {
        points: vec![(a, 0.0), (0.0, 0.0), (0.0, b), (a, b)],
        supports: vec![Support::Rigid, corners, corners, Support::Rigid],
        lines: vec![vec![0, 1], vec![1, 2], vec![2, 3]],
        rigidity: vec![(3e7, gj), (5e7, gj), (3e7, gj)],
        loads: vec![
            vec![Shape::Point {
                at: a / 2.0,
                force: p,
            }],
            vec![],
            vec![],
        ],
    }
}

/// The first stem is held at the cross beam by its twist in line with the bending of the
/// other stem: by consistent deformations M = (P a2/16EI) / (a/3EI + b/GJ + a/3EI); with a
/// rigid cross beam 3 P a/32, with a soft one nothing.
#[test]
fn two_stems_on_a_twisted_beam_by_the_closed_form() {
    let (a, b, p, ei) = (6.0, 4.0, 50e3, 3e7);
    for gj in [1e3, 1e6, 2e7, 1e9, 1e13] {
        let s = solve(&two_stems(gj, Support::Rigid).network(true)).unwrap();
        let m = (p * a * a / (16.0 * ei)) / (2.0 * a / (3.0 * ei) + b / gj);
        close(s.lines[0].moments(1, 0).0, -m, 1e-9);
        close(s.lines[1].torque(0, 0).abs(), m, 1e-9);
        close(s.lines[2].moments(0, 0).1, m, 1e-9);
        close(s.reaction[1], p / 2.0 + m / a, 1e-9);
        close(s.reaction[3], m / a, 1e-9);
        if gj == 1e13 {
            close(m, 3.0 * p * a / 32.0, 1e-5);
        }
    }
}

/// Only a pile at the middle of the cross beam and one at the end of each stem: without
/// torsion the cross beam turns about its pile; with torsion three piles carry by statics,
/// whatever the rigidities.
#[test]
fn torsion_holds_a_beam_on_a_single_pile() {
    let (b, p) = (4.0, 50e3);
    let mut frame = two_stems(1e6, Support::Free);
    frame.points.push((0.0, b / 2.0));
    frame.supports.push(Support::Rigid);
    frame.lines[1] = vec![1, 4, 2];
    assert!(matches!(
        solve(&frame.network(false)),
        Err(Fault::Mechanism { .. })
    ));
    for gj in [1e4, 1e6, 1e9] {
        frame.rigidity.iter_mut().for_each(|r| r.1 = gj);
        let s = solve(&frame.network(true)).unwrap();
        // moments about the axis of the cross beam, then about that of its pile along x
        close(s.reaction[0] + s.reaction[3], p / 2.0, 1e-9);
        close(s.reaction[0] - s.reaction[3], p, 1e-9);
        close(s.reaction[4], p / 2.0, 1e-9);
    }
}

/// A stem that hangs on a header over piles in one line: the header rolls over.
#[test]
fn a_stem_on_piles_in_one_line_tips() {
    let frame = Frame {
        points: vec![(0.0, 0.0), (3.0, 0.0), (6.0, 0.0), (3.0, 2.0)],
        supports: vec![
            Support::Rigid,
            Support::Rigid,
            Support::Rigid,
            Support::Free,
        ],
        lines: vec![vec![0, 1, 2], vec![1, 3]],
        rigidity: vec![(3e7, 1e6), (3e7, 1e6)],
        loads: vec![vec![], vec![uniform(2.0, 5e3)]],
    };
    assert!(matches!(
        solve(&frame.network(true)),
        Err(Fault::Mechanism { .. })
    ));
    // a pile under its end holds it, by statics
    let mut held = frame;
    held.supports[3] = Support::Rigid;
    let s = solve(&held.network(true)).unwrap();
    close(s.reaction[3], 5e3, 1e-9);
}

/// Beams without torsional rigidity to speak of are beams without torsion, where no more
/// than two meet in a node.
#[test]
fn no_torsional_rigidity_is_no_torsion() {
    let mut dice = Dice(14);
    for _ in 0..20 {
        let mut frame = mesh(&mut dice);
        frame.supports.iter_mut().for_each(|s| *s = Support::Rigid);
        frame.rigidity.iter_mut().for_each(|r| r.1 = r.0 * 1e-9);
        let with = solve(&frame.network(true)).unwrap();
        let without = solve(&frame.network(false)).unwrap();
        apart(&with.reaction, &without.reaction, (1e-6, 1e3), "reaction");
        let most = |s: &Solution| -> Vec<f64> {
            let lines = s.lines.iter();
            lines.flat_map(|l| l.moment_left.clone()).collect()
        };
        apart(&most(&with), &most(&without), (1e-6, 1e3), "moment");
    }
}
