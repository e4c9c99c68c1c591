//! Areas and lines of the plan: signed distances, whether an area is simple, whether two
//! lie over each other. Knows nothing of piles.

use crate::layout::plan::{Point, TOLERANCE};

/// A distance below this is none, m.
const NOTHING: f64 = 1e-9;

/// Distance of a point to a straight piece.
///
/// d = |p - a - t (b - a)|, t = (p - a).(b - a)/|b - a|2 held within 0 and 1. Source:
/// geometry.
pub(super) fn to_segment(p: Point, a: Point, b: Point) -> f64 {
    let way = a.to(b);
    let size = way.dot(way);
    if size == 0.0 {
        return a.distance(p);
    }
    let t = (a.to(p).dot(way) / size).clamp(0.0, 1.0);
    a.along(way, t).distance(p)
}

/// Distance of a point to a line of straight pieces.
pub(super) fn to_line(p: Point, points: &[Point]) -> f64 {
    points
        .windows(2)
        .map(|s| to_segment(p, s[0], s[1]))
        .fold(f64::INFINITY, f64::min)
}

/// The edges of an area.
pub(super) fn edges(corners: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    (0..corners.len()).map(|i| (corners[i], corners[(i + 1) % corners.len()]))
}

/// Distance of a point to the border of an area, negative inside.
pub(super) fn to_area(p: Point, corners: &[Point]) -> f64 {
    let mut inside = false;
    let mut distance = f64::INFINITY;
    for (a, b) in edges(corners) {
        distance = distance.min(to_segment(p, a, b));
        // each edge owns its lower end, so that a corner is crossed once
        if (a.y > p.y) != (b.y > p.y) {
            let x = a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x);
            inside ^= p.x < x;
        }
    }
    clean(if inside { -distance } else { distance })
}

/// A distance without its rounding.
pub(super) fn clean(distance: f64) -> f64 {
    if distance.abs() < NOTHING {
        0.0
    } else {
        distance
    }
}

/// What keeps corners from being a simple area; none where they are one.
pub(super) fn fault(corners: &[Point]) -> Option<String> {
    let n = corners.len();
    for (i, (a, b)) in edges(corners).enumerate() {
        if a.distance(b) <= TOLERANCE {
            return Some(format!("corners {i} and {} are one point", (i + 1) % n));
        }
    }
    let all: Vec<(Point, Point)> = edges(corners).collect();
    for i in 0..n {
        for j in i + 1..n {
            let (a, b) = all[i];
            let (c, d) = all[j];
            let next = j == i + 1 || (i == 0 && j + 1 == n);
            let touches = if next {
                // neighbours share a corner; they must not lie on each other
                let (far, edge) = if j == i + 1 { (d, (a, b)) } else { (c, (a, b)) };
                let other = if j == i + 1 { a } else { b };
                to_segment(far, edge.0, edge.1) <= TOLERANCE || to_segment(other, c, d) <= TOLERANCE
            } else {
                crosses(a, b, c, d)
                    || [(a, (c, d)), (b, (c, d)), (c, (a, b)), (d, (a, b))]
                        .iter()
                        .any(|(p, e)| to_segment(*p, e.0, e.1) <= TOLERANCE)
            };
            if touches {
                return Some(format!(
                    "the edges after corner {i} and after corner {j} cross or touch"
                ));
            }
        }
    }
    None
}

/// Whether two pieces cross inside both.
fn crosses(a: Point, b: Point, c: Point, d: Point) -> bool {
    let side = |p: Point, q: Point, r: Point| p.to(q).cross(p.to(r));
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// A point that two simple areas have in common inside both, further than the tolerance
/// from their borders; none where they only touch.
///
/// Each border is cut where it meets the other; a piece whose middle lies inside the other
/// area shows an overlap, and if no piece does, only areas with one and the same border
/// overlap.
pub(super) fn overlap(a: &[Point], b: &[Point]) -> Option<Point> {
    within(a, b).or_else(|| within(b, a)).or_else(|| {
        let p = inner(a)?;
        (to_area(p, b) < -TOLERANCE).then_some(p)
    })
}

/// A middle of a piece of the border of `a` that lies inside `b`.
fn within(a: &[Point], b: &[Point]) -> Option<Point> {
    for (p, q) in edges(a) {
        let way = p.to(q);
        let size = way.dot(way);
        let mut cuts = vec![0.0, 1.0];
        for (c, d) in edges(b) {
            let other = c.to(d);
            let turn = way.cross(other);
            let along = p.to(c).cross(way) / turn;
            if turn != 0.0 && (0.0..=1.0).contains(&along) {
                cuts.push(p.to(c).cross(other) / turn);
            }
            if to_segment(c, p, q) <= 2.0 * TOLERANCE {
                cuts.push(p.to(c).dot(way) / size);
            }
        }
        cuts.retain(|t| (0.0..=1.0).contains(t));
        cuts.sort_by(f64::total_cmp);
        for t in cuts.windows(2) {
            let middle = p.along(way, 0.5 * (t[0] + t[1]));
            if to_area(middle, b) < -TOLERANCE {
                return Some(middle);
            }
        }
    }
    None
}

/// A point well inside an area: on a level between two corners, in the middle of the
/// widest stretch inside.
fn inner(corners: &[Point]) -> Option<Point> {
    let mut levels: Vec<f64> = corners.iter().map(|c| c.y).collect();
    levels.sort_by(f64::total_cmp);
    let mut best: Option<(f64, Point)> = None;
    for pair in levels.windows(2) {
        let y = 0.5 * (pair[0] + pair[1]);
        let mut hits: Vec<f64> = edges(corners)
            .filter(|(a, b)| (a.y > y) != (b.y > y))
            .map(|(a, b)| a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x))
            .collect();
        hits.sort_by(f64::total_cmp);
        for h in hits.chunks_exact(2) {
            let p = Point {
                x: 0.5 * (h[0] + h[1]),
                y,
            };
            let room = -to_area(p, corners);
            if best.is_none_or(|b| room > b.0) {
                best = Some((room, p));
            }
        }
    }
    best.map(|b| b.1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn area(points: &[(f64, f64)]) -> Vec<Point> {
        points.iter().map(|(x, y)| Point { x: *x, y: *y }).collect()
    }

    fn p(x: f64, y: f64) -> Point {
        Point { x, y }
    }

    #[test]
    fn distances_are_exact() {
        let l = area(&[
            (0.0, 0.0),
            (4.0, 0.0),
            (4.0, 1.0),
            (1.0, 1.0),
            (1.0, 3.0),
            (0.0, 3.0),
        ]);
        assert_eq!(to_area(p(2.0, 3.0), &l), 1.0);
        assert_eq!(to_area(p(4.0, 4.0), &l), 3.0);
        assert_eq!(to_area(p(7.0, 5.0), &l), 5.0);
        assert_eq!(to_area(p(2.0, 0.75), &l), -0.25);
        assert_eq!(to_area(p(0.5, 3.0), &l), 0.0);
        assert_eq!(to_area(p(-1.0, 1.0), &l), 1.0);
        // level with corners
        assert_eq!(to_area(p(0.5, 1.0), &l), -0.5);
        assert_eq!(
            to_line(p(1.0, 2.0), &area(&[(0.0, 0.0), (4.0, 0.0), (4.0, 9.0)])),
            2.0
        );
    }

    #[test]
    fn areas_that_are_none_are_found() {
        assert!(fault(&area(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0)])).is_none());
        let bow = [(0.0, 0.0), (4.0, 3.0), (4.0, 0.0), (0.0, 3.0)];
        assert!(fault(&area(&bow)).is_some());
        assert!(fault(&area(&[(0.0, 0.0), (4.0, 0.0), (2.0, 0.001)])).is_some());
        assert!(fault(&area(&[(0.0, 0.0), (0.0, 0.002), (4.0, 3.0)])).is_some());
        let spike = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (2.0, 0.0), (0.0, 3.0)];
        assert!(fault(&area(&spike)).is_some());
    }

    #[test]
    fn areas_over_each_other_are_found_and_neighbours_are_not() {
        let square =
            |x: f64, y: f64, s: f64| area(&[(x, y), (x + s, y), (x + s, y + s), (x, y + s)]);
        let unit = square(0.0, 0.0, 1.0);
        assert!(overlap(&unit, &square(1.0, 0.0, 1.0)).is_none());
        assert!(overlap(&unit, &square(1.0, 1.0, 1.0)).is_none());
        assert!(overlap(&unit, &square(5.0, 0.0, 1.0)).is_none());
        assert!(overlap(&unit, &unit).is_some());
        assert!(overlap(&unit, &square(0.25, 0.25, 0.5)).is_some());
        assert!(overlap(&square(0.25, 0.25, 0.5), &unit).is_some());
        assert!(overlap(&unit, &square(0.5, 0.0, 1.0)).is_some());
        // a cross of two bars: no corner of one lies in the other
        let wide = area(&[(-1.0, 0.4), (2.0, 0.4), (2.0, 0.6), (-1.0, 0.6)]);
        assert!(overlap(&unit, &wide).is_some());
        // a ring around a hole that the other fills
        let u = area(&[
            (0.0, 0.0),
            (3.0, 0.0),
            (3.0, 3.0),
            (2.0, 3.0),
            (2.0, 1.0),
            (1.0, 1.0),
            (1.0, 3.0),
            (0.0, 3.0),
        ]);
        assert!(overlap(&u, &area(&[(1.0, 1.0), (2.0, 1.0), (2.0, 3.0), (1.0, 3.0)])).is_none());
    }
}
