//! A line of straight sides moved sideways: corners by intersecting the moved sides, and
//! what can go wrong with that. Plain geometry; knows no request.

use crate::layout::plan::{Point, TOLERANCE, segment_distance};

/// A corner may move by at most this many times the greater distance of its two sides: a
/// corner sharper than 14 degrees, or a step in a line that goes straight on, moves farther.
pub(super) const REACH_MAX: f64 = 8.0;

/// Straight sides, one after the other; a ring does not repeat its first point.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Sides {
    pub points: Vec<Point>,
    pub ring: bool,
}

/// What stands against moving a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Fault {
    /// The corner at this point is too sharp.
    Sharp { point: usize },
    /// The line goes straight on at this point, but its two sides are moved by different
    /// distances.
    Step { point: usize },
    /// This side has no length left: this much is, along its direction.
    Vanishes { side: usize, left: f64 },
    /// These sides meet after they were moved.
    Meet { one: usize, other: usize },
}

impl Sides {
    /// Number of sides.
    pub fn count(&self) -> usize {
        if self.ring {
            self.points.len()
        } else {
            self.points.len() - 1
        }
    }

    /// Both ends of a side.
    pub fn ends(&self, side: usize) -> (Point, Point) {
        (
            self.points[side],
            self.points[(side + 1) % self.points.len()],
        )
    }

    /// Unit vector along a side.
    pub fn direction(&self, side: usize) -> Point {
        let (a, b) = self.ends(side);
        let way = a.to(b);
        let length = way.length();
        Point {
            x: way.x / length,
            y: way.y / length,
        }
    }

    /// Length of a side.
    pub fn length(&self, side: usize) -> f64 {
        let (a, b) = self.ends(side);
        a.distance(b)
    }

    /// Area within a ring, positive anticlockwise.
    ///
    /// A = sum(x_i y_j - x_j y_i)/2, j the point after i (m). Source: geometry.
    pub fn area(&self) -> f64 {
        signed_area(&self.points)
    }

    /// The same sides moved to the left, each by its own distance (negative: to the right).
    ///
    /// The moved sides are intersected: with t the turn at a corner and d1, d2 the distances
    /// of the sides before and after it, the corner moves by
    /// q = ((d1 - d2 cos t) n1 + (d2 - d1 cos t) n2)/sin2 t, n1 and n2 the normals to the left.
    /// Where both distances are d it is q = d (n1 + n2)/(1 + cos t), also on a straight line.
    /// Source: geometry.
    pub fn moved(&self, by: &[f64], faults: &mut Vec<Fault>) -> Self {
        let n = self.points.len();
        let points = (0..n)
            .map(|i| {
                let (before, after) = (self.side_before(i), self.side_after(i));
                let shift = match (before, after) {
                    (Some(a), Some(b)) => self.corner(i, (a, by[a]), (b, by[b]), faults),
                    (Some(s), None) | (None, Some(s)) => scaled(left_of(self.direction(s)), by[s]),
                    (None, None) => Point { x: 0.0, y: 0.0 },
                };
                self.points[i].along(shift, 1.0)
            })
            .collect();
        Self {
            points,
            ring: self.ring,
        }
    }

    fn side_before(&self, point: usize) -> Option<usize> {
        match point {
            0 => self.ring.then(|| self.points.len() - 1),
            i => Some(i - 1),
        }
    }

    fn side_after(&self, point: usize) -> Option<usize> {
        (self.ring || point + 1 < self.points.len()).then_some(point)
    }

    fn corner(
        &self,
        point: usize,
        (before, d1): (usize, f64),
        (after, d2): (usize, f64),
        faults: &mut Vec<Fault>,
    ) -> Point {
        let (u1, u2) = (self.direction(before), self.direction(after));
        let (n1, n2) = (left_of(u1), left_of(u2));
        let (cos, sin) = (u1.dot(u2), u1.cross(u2));
        let (a, b) = if d1 == d2 {
            (d1 / (1.0 + cos), d1 / (1.0 + cos))
        } else {
            let s = sin * sin;
            ((d1 - d2 * cos) / s, (d2 - d1 * cos) / s)
        };
        let shift = scaled(n1, a).along(n2, b);
        let reach = REACH_MAX * d1.abs().max(d2.abs());
        let length = shift.length();
        if length <= reach {
            return shift;
        }
        faults.push(if cos > 0.0 {
            Fault::Step { point }
        } else {
            Fault::Sharp { point }
        });
        Point { x: 0.0, y: 0.0 }
    }

    /// Sides that have no length left in `moved`, and sides of it that meet. Only where no
    /// corner was at fault.
    pub fn compare(&self, moved: &Self, faults: &mut Vec<Fault>) {
        let before = faults.len();
        for side in 0..self.count() {
            let (p, q) = moved.ends(side);
            let left = p.to(q).dot(self.direction(side));
            if left <= TOLERANCE {
                faults.push(Fault::Vanishes { side, left });
            }
        }
        if faults.len() > before {
            return;
        }
        for one in 0..self.count() {
            for other in one + 2..self.count() {
                if self.ring && one == 0 && other + 1 == self.count() {
                    continue;
                }
                let ((a, b), (c, d)) = (moved.ends(one), moved.ends(other));
                if segment_distance(a, b, c, d) <= TOLERANCE {
                    faults.push(Fault::Meet { one, other });
                }
            }
        }
    }
}

/// Area of a polygon, positive anticlockwise; about its first point, for large coordinates.
pub(super) fn signed_area(points: &[Point]) -> f64 {
    let first = points[0];
    let twice: f64 = points
        .windows(2)
        .map(|p| first.to(p[0]).cross(first.to(p[1])))
        .sum();
    0.5 * twice
}

/// The direction to the left.
pub(super) fn left_of(direction: Point) -> Point {
    Point {
        x: -direction.y,
        y: direction.x,
    }
}

pub(super) fn scaled(v: Point, by: f64) -> Point {
    Point {
        x: v.x * by,
        y: v.y * by,
    }
}
