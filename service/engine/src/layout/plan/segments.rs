//! Points of the request to segments: own corner, faults of a single beam, and one
//! point for all that are nearer than the tolerance. Knows one beam at a time.

use super::{Point, TOLERANCE, root};
use crate::catalogue::RefusalDef;
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::outline::{gaps, places, point_at};
use crate::layout::request::GradeBeam;
use crate::quantity::in_both_systems;

/// A straight piece of a beam between two of its points.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Segment {
    pub beam: usize,
    pub a: Point,
    pub b: Point,
    /// The shared point at each end.
    pub ends: [usize; 2],
    /// Length of the opening without a beam before it.
    pub gap: f64,
}

/// A piece of a beam between openings without a beam.
struct Piece {
    beam: usize,
    points: Vec<Point>,
    /// Length of the opening before it.
    gap: f64,
}

/// Segments of all beams, beam by beam.
pub(super) fn of(beams: &[GradeBeam], issues: &mut Vec<Issue>) -> (Point, Vec<Segment>) {
    let given = || beams.iter().flat_map(|b| b.points.iter());
    let corner = Point {
        x: given().map(|p| p.x.si()).fold(f64::INFINITY, f64::min),
        y: given().map(|p| p.y.si()).fold(f64::INFINITY, f64::min),
    };
    let points: Vec<Vec<Point>> = beams
        .iter()
        .map(|beam| {
            beam.points
                .iter()
                .map(|p| Point {
                    x: p.x.si() - corner.x,
                    y: p.y.si() - corner.y,
                })
                .collect()
        })
        .collect();
    for (b, own) in points.iter().enumerate() {
        let codes = (
            &refusals::BEAM_SEGMENT_ZERO_LENGTH,
            &refusals::BEAM_CROSSES_ITSELF,
        );
        line_faults(&format!("/beams/{b}/points"), own, codes, issues);
    }
    let mut pieces = Vec::with_capacity(points.len());
    for (b, own) in points.into_iter().enumerate() {
        cut(b, &beams[b], own, &mut pieces);
    }
    (corner, share(&pieces))
}

/// The pieces of a beam that openings leave.
fn cut(b: usize, beam: &GradeBeam, points: Vec<Point>, out: &mut Vec<Piece>) {
    let gaps = gaps(beam);
    if gaps.is_empty() {
        out.push(Piece {
            beam: b,
            points,
            gap: 0.0,
        });
        return;
    }
    let along = places(&points);
    let length = along[along.len() - 1];
    let (mut from, mut gap) = (0.0, 0.0);
    for (to, next) in gaps.into_iter().chain([(length, length)]) {
        let mut own = vec![point_at(&points, from)];
        let inside = |at: f64| at > from + TOLERANCE && at < to - TOLERANCE;
        own.extend(
            points
                .iter()
                .zip(&along)
                .filter(|(_, at)| inside(**at))
                .map(|(p, _)| *p),
        );
        own.push(point_at(&points, to));
        out.push(Piece {
            beam: b,
            points: own,
            gap,
        });
        (from, gap) = (next, next - to);
    }
}

/// Faults of a line by itself: parts without length (the first code), and parts that meet
/// other parts of it (the second).
pub(in crate::layout) fn line_faults(
    path: &str,
    points: &[Point],
    (zero, crosses): (&'static RefusalDef, &'static RefusalDef),
    issues: &mut Vec<Issue>,
) {
    for (i, pair) in points.windows(2).enumerate() {
        let length = pair[0].distance(pair[1]);
        if length <= TOLERANCE {
            issues.push(
                Issue::new(
                    format!("{path}/{}", i + 1),
                    zero,
                    format!("{} from the point before it", in_both_systems(length, "m")),
                )
                .limit(format!("more than {}", in_both_systems(TOLERANCE, "m"))),
            );
        }
    }
    let n = points.len() - 1;
    let ring = points[0].distance(points[n]) <= TOLERANCE;
    for i in 0..n {
        for j in i + 1..n {
            let (a, b, c, d) = (points[i], points[i + 1], points[j], points[j + 1]);
            let touches = if j == i + 1 {
                doubles_back(a, b, d)
            } else if i == 0 && j == n - 1 && ring {
                n > 2 && doubles_back(b, a, c)
            } else {
                segment_distance(a, b, c, d) <= TOLERANCE
            };
            if touches {
                issues.push(Issue::new(
                    format!("{path}/{j}"),
                    crosses,
                    format!(
                        "the part from point {j} to {} meets the one from {i} to {}",
                        j + 1,
                        i + 1
                    ),
                ));
            }
        }
    }
}

/// Whether the way from `a` over `b` to `d` turns back onto itself.
pub(in crate::layout) fn doubles_back(a: Point, b: Point, d: Point) -> bool {
    let (back, on) = (b.to(a), b.to(d));
    let reach = back.length().min(on.length());
    back.dot(on) > 0.0 && back.cross(on).abs() * reach <= TOLERANCE * back.length() * on.length()
}

/// Least distance between two segments.
pub(in crate::layout) fn segment_distance(a: Point, b: Point, c: Point, d: Point) -> f64 {
    let side = |p: Point, q: Point, r: Point| p.to(q).cross(p.to(r));
    let apart = (side(a, b, c) > 0.0) == (side(a, b, d) > 0.0)
        || (side(c, d, a) > 0.0) == (side(c, d, b) > 0.0);
    if !apart {
        return 0.0;
    }
    [
        point_distance(a, c, d),
        point_distance(b, c, d),
        point_distance(c, a, b),
        point_distance(d, a, b),
    ]
    .into_iter()
    .fold(f64::INFINITY, f64::min)
}

/// Least distance of a point from a segment.
pub(in crate::layout) fn point_distance(p: Point, a: Point, b: Point) -> f64 {
    let way = a.to(b);
    let share = (a.to(p).dot(way) / way.dot(way)).clamp(0.0, 1.0);
    p.distance(a.along(way, share))
}

/// Gives points nearer than the tolerance one place, whatever beam they belong to: the
/// first of them by x and y.
fn share(pieces: &[Piece]) -> Vec<Segment> {
    let all: Vec<Point> = pieces
        .iter()
        .flat_map(|p| p.points.iter().copied())
        .collect();
    let mut by_x: Vec<usize> = (0..all.len()).collect();
    by_x.sort_by(|i, j| all[*i].order(all[*j]));
    let mut set: Vec<usize> = (0..all.len()).collect();
    for (k, i) in by_x.iter().enumerate() {
        for j in &by_x[k + 1..] {
            if all[*j].x - all[*i].x > TOLERANCE {
                break;
            }
            if all[*i].distance(all[*j]) <= TOLERANCE {
                let (a, b) = (root(&mut set, *i), root(&mut set, *j));
                set[a.max(b)] = a.min(b);
            }
        }
    }
    let mut place: Vec<Option<Point>> = vec![None; all.len()];
    for i in &by_x {
        place[root(&mut set, *i)].get_or_insert(all[*i]);
    }
    let mut segments = Vec::new();
    let mut next = 0;
    for piece in pieces {
        let shared: Vec<(usize, Point)> = (next..next + piece.points.len())
            .map(|i| {
                let r = root(&mut set, i);
                (r, place[r].unwrap_or(all[i]))
            })
            .collect();
        next += piece.points.len();
        for (i, pair) in shared.windows(2).enumerate() {
            segments.push(Segment {
                beam: piece.beam,
                a: pair[0].1,
                b: pair[1].1,
                ends: [pair[0].0, pair[1].0],
                gap: if i == 0 { piece.gap } else { 0.0 },
            });
        }
    }
    segments
}
