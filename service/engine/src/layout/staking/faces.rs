//! How far the faces of the beams lie from a string line: who measures from a wall or from the
//! form line, and not from the centre of the beam, takes these off. Edges come with the beams.

use crate::layout::outcome::{BeamEdges, LineFaces};
use crate::layout::plan::{Point, TOLERANCE};
use crate::layout::request::PlanPoint;
use crate::quantity::Size;

/// A straight line in the caller's axes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line {
    pub start: Point,
    pub direction: Point,
    pub length: f64,
}

/// Distances of both faces, where those of all parts along the line are the same.
pub(super) fn faces<'a>(
    line: Line,
    edges: impl Iterator<Item = &'a BeamEdges>,
) -> Option<LineFaces> {
    let mut found: Option<[f64; 2]> = None;
    for part in edges {
        for (l, r) in part.left.windows(2).zip(part.right.windows(2)) {
            let [l, r] = [l, r].map(|edge| beside(line, point(&edge[0]), point(&edge[1])));
            let (Some(l), Some(r)) = (l, r) else {
                continue;
            };
            let [high, low] = [l.max(r), l.min(r)];
            if high < -TOLERANCE || low > TOLERANCE {
                // another leg of the same beam
                continue;
            }
            match found {
                Some([h, w]) if (h - high).abs() > TOLERANCE || (w - low).abs() > TOLERANCE => {
                    return None;
                }
                _ => found = Some([high, low]),
            }
        }
    }
    found.map(|[high, low]| LineFaces {
        left: Size::from_si(high),
        right: Size::from_si(-low),
    })
}

/// How far to the left of the line a part of an edge lies that runs along it.
fn beside(line: Line, a: Point, b: Point) -> Option<f64> {
    let side = |p: Point| line.direction.cross(line.start.to(p));
    let along = |p: Point| line.direction.dot(line.start.to(p));
    let (from, to) = (along(a).min(along(b)), along(a).max(along(b)));
    let beside = to > TOLERANCE && from < line.length - TOLERANCE;
    let parallel = (side(a) - side(b)).abs() <= TOLERANCE && to - from > TOLERANCE;
    (beside && parallel).then(|| 0.5 * (side(a) + side(b)))
}

fn point(p: &PlanPoint) -> Point {
    Point {
        x: p.x.si(),
        y: p.y.si(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Length;

    fn edges(left: &[(f64, f64)], right: &[(f64, f64)]) -> BeamEdges {
        let points = |all: &[(f64, f64)]| {
            let all = all.iter();
            all.map(|(x, y)| PlanPoint {
                x: Length::from_si(*x),
                y: Length::from_si(*y),
            })
            .collect()
        };
        BeamEdges {
            left: points(left),
            right: points(right),
        }
    }

    fn east(x: f64, y: f64, length: f64) -> Line {
        Line {
            start: Point { x, y },
            direction: Point { x: 1.0, y: 0.0 },
            length,
        }
    }

    /// An L of two legs, 0.3 m to the left and 0.1 m to the right of its centre line.
    fn angle() -> BeamEdges {
        edges(
            &[(0.0, 0.3), (4.7, 0.3), (4.7, 3.0)],
            &[(0.0, -0.1), (5.1, -0.1), (5.1, 3.0)],
        )
    }

    #[test]
    fn each_leg_has_its_faces() {
        let found = faces(east(0.0, 0.0, 5.0), [angle()].iter()).expect("faces");
        assert!((found.left.si() - 0.3).abs() < 1e-12);
        assert!((found.right.si() - 0.1).abs() < 1e-12);
        let north = Line {
            start: Point { x: 5.0, y: 0.0 },
            direction: Point { x: 0.0, y: 1.0 },
            length: 3.0,
        };
        let found = faces(north, [angle()].iter()).expect("faces");
        assert!((found.left.si() - 0.3).abs() < 1e-12);
        assert!((found.right.si() - 0.1).abs() < 1e-12);
    }

    #[test]
    fn another_leg_of_the_same_beam_is_not_taken_for_this_one() {
        let round = edges(
            &[(0.0, 0.2), (4.8, 0.2), (4.8, 2.8), (0.0, 2.8)],
            &[(0.0, -0.2), (5.2, -0.2), (5.2, 3.2), (0.0, 3.2)],
        );
        for y in [0.0, 3.0] {
            let found = faces(east(0.0, y, 5.0), [round.clone()].iter()).expect("faces");
            assert!((found.left.si() - 0.2).abs() < 1e-12, "{y}");
            assert!((found.right.si() - 0.2).abs() < 1e-12, "{y}");
        }
    }

    #[test]
    fn a_beam_sent_the_other_way_has_its_faces_by_the_line() {
        let back = edges(&[(5.0, -0.1), (0.0, -0.1)], &[(5.0, 0.3), (0.0, 0.3)]);
        let found = faces(east(0.0, 0.0, 5.0), [back].iter()).expect("faces");
        assert!((found.left.si() - 0.3).abs() < 1e-12);
        assert!((found.right.si() - 0.1).abs() < 1e-12);
    }

    #[test]
    fn where_beams_differ_or_have_no_width_nothing_is_said() {
        let wide = edges(&[(5.0, 0.4), (9.0, 0.4)], &[(5.0, -0.1), (9.0, -0.1)]);
        let narrow = edges(&[(0.0, 0.3), (5.0, 0.3)], &[(0.0, -0.1), (5.0, -0.1)]);
        let line = east(0.0, 0.0, 9.0);
        assert!(faces(line, [narrow.clone(), wide].iter()).is_none());
        assert!(faces(line, std::iter::empty()).is_none());
        assert!(faces(line, [narrow].iter()).is_some());
    }
}
