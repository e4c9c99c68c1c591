//! The edges of beams in plan: to the left and right of the centre line, mitred at the
//! corners of one beam, cut where openings leave no beam.

use super::derive::plan_point;
use super::offset::{Fault, Sides, left_of};
use super::openings::{gaps, places, point_at};
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::outcome::BeamEdges;
use crate::layout::plan::{Point, TOLERANCE};
use crate::layout::request::GradeBeam;
use crate::quantity::{Size, in_both_systems};

/// Both edges with a point for every point of the centre line.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pair {
    pub left: Vec<Point>,
    pub right: Vec<Point>,
}

/// The edges of a beam that is sent by its centre line.
pub(super) fn of_beam(b: usize, beam: &GradeBeam, issues: &mut Vec<Issue>) -> Option<Pair> {
    let width = beam.width?.si();
    let points: Vec<Point> = beam.points.iter().map(Point::of).collect();
    if points.windows(2).any(|p| p[0].distance(p[1]) <= TOLERANCE) {
        return None;
    }
    let last = points.len() - 1;
    let ring = last > 2 && points[0].distance(points[last]) <= TOLERANCE;
    let line = Sides {
        points: if ring {
            points[..last].to_vec()
        } else {
            points
        },
        ring,
    };
    let mut faults = Vec::new();
    let made = [0.5, -0.5].map(|half| {
        let moved = line.moved(&vec![half * width; line.count()], &mut faults);
        for side in 0..line.count() {
            let (p, q) = moved.ends(side);
            let left = p.to(q).dot(line.direction(side));
            if left <= TOLERANCE {
                faults.push(Fault::Vanishes { side, left });
            }
        }
        moved
    });
    for fault in &faults {
        let at = match *fault {
            Fault::Vanishes { side, left } => format!(
                "the part from point {side} to {} would have {} left on one edge",
                side + 1,
                in_both_systems(left, "m")
            ),
            Fault::Sharp { point } | Fault::Step { point } => {
                format!("the corner at point {point} is too sharp")
            }
            Fault::Meet { .. } => continue,
        };
        issues.push(Issue::new(
            format!("/beams/{b}/width"),
            &refusals::BEAM_TOO_WIDE,
            format!("{} wide: {at}", Size::ROLE.in_both_systems(width)),
        ));
    }
    if !faults.is_empty() {
        return None;
    }
    let [left, right] = made.map(|m| {
        let mut points = m.points;
        if m.ring {
            points.push(points[0]);
        }
        points
    });
    Some(Pair { left, right })
}

/// The edges part by part, where openings interrupt the beam.
pub(super) fn parts(beam: &GradeBeam, pair: &Pair) -> Vec<BeamEdges> {
    let points: Vec<Point> = beam.points.iter().map(Point::of).collect();
    let along = places(&points);
    let length = along[along.len() - 1];
    let mut out = Vec::new();
    let mut from = 0.0;
    let ends = gaps(beam).into_iter().chain([(length, length)]);
    for (to, next) in ends {
        let whole = (from == 0.0, to == length);
        out.push(BeamEdges {
            left: cut(&points, &along, &pair.left, (from, to), whole),
            right: cut(&points, &along, &pair.right, (from, to), whole),
        });
        from = next;
    }
    out
}

/// One edge from one place to another; square to the beam where it is cut.
fn cut(
    points: &[Point],
    along: &[f64],
    edge: &[Point],
    (from, to): (f64, f64),
    (first, last): (bool, bool),
) -> Vec<crate::layout::PlanPoint> {
    let square = |at: f64| {
        let i = along
            .partition_point(|p| *p <= at)
            .clamp(1, points.len() - 1);
        let way = points[i - 1].to(points[i]);
        let normal = left_of(way);
        let off = points[i].to(edge[i]).dot(normal) / normal.dot(normal);
        plan_point(point_at(points, at).along(normal, off))
    };
    let mut out = Vec::new();
    if !first {
        out.push(square(from));
    }
    for (p, at) in edge.iter().zip(along) {
        let inside = (*at > from || (first && *at == from)) && (*at < to || (last && *at == to));
        if inside {
            out.push(plan_point(*p));
        }
    }
    if !last {
        out.push(square(to));
    }
    out
}
