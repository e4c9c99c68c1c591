//! The corners of a slab as a polygon that runs anticlockwise, its sides and its area, and
//! what is wrong with it.

use super::super::codes::refusals;
use super::super::plan::{Plan, Point, TOLERANCE, doubles_back, segment_distance};
use super::super::request::StructuralSlab;
use crate::contract::Issue;
use crate::quantity::in_both_systems;

/// A slab in plan.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Outline {
    /// Sides in anticlockwise order.
    pub sides: Vec<Side>,
    /// m2.
    pub area: f64,
    pub convex: bool,
}

/// A straight side between two corners.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Side {
    pub start: Point,
    /// Unit vector along it; the slab is to its left.
    pub direction: Point,
    pub length: f64,
    /// The corners of the request that it joins.
    pub corners: (usize, usize),
}

impl Side {
    /// Unit vector into the slab.
    pub fn inward(&self) -> Point {
        Point {
            x: -self.direction.y,
            y: self.direction.x,
        }
    }
}

/// The outline of a slab, or its faults.
pub(super) fn outline(
    slab: &StructuralSlab,
    index: usize,
    plan: &Plan,
    issues: &mut Vec<Issue>,
) -> Option<Outline> {
    let given: Vec<Point> = slab
        .corners
        .iter()
        .map(|p| Point {
            x: p.x.si() - plan.corner.x,
            y: p.y.si() - plan.corner.y,
        })
        .collect();
    of_points(&given, index, issues)
}

/// The outline of a slab by its corners, or its faults.
pub(super) fn of_points(given: &[Point], index: usize, issues: &mut Vec<Issue>) -> Option<Outline> {
    let before = issues.len();
    faults(given, index, issues);
    if issues.len() > before {
        return None;
    }
    let mut kept: Vec<usize> = (0..given.len()).filter(|i| is_corner(given, *i)).collect();
    let mut area = area_of(given, &kept);
    if kept.len() < 3 || area.abs() <= TOLERANCE * TOLERANCE {
        issues.push(
            Issue::new(
                format!("/slabs/{index}/corners"),
                &refusals::SLAB_WITHOUT_AREA,
                "its corners are on one line",
            )
            .limit(format!(
                "more than {} wide",
                in_both_systems(TOLERANCE, "m")
            )),
        );
        return None;
    }
    if area < 0.0 {
        kept.reverse();
        area = -area;
    }
    let n = kept.len();
    let sides: Vec<Side> = (0..n)
        .map(|k| {
            let (i, j) = (kept[k], kept[(k + 1) % n]);
            let way = given[i].to(given[j]);
            let length = way.length();
            Side {
                start: given[i],
                direction: Point {
                    x: way.x / length,
                    y: way.y / length,
                },
                length,
                corners: (i, j),
            }
        })
        .collect();
    let convex = (0..n).all(|k| sides[k].direction.cross(sides[(k + 1) % n].direction) > 0.0);
    Some(Outline {
        sides,
        area,
        convex,
    })
}

/// Area of a polygon, positive where it runs anticlockwise.
fn area_of(points: &[Point], kept: &[usize]) -> f64 {
    let Some(first) = kept.first() else {
        return 0.0;
    };
    let from = |i: usize| points[*first].to(points[kept[i]]);
    (1..kept.len().saturating_sub(1))
        .map(|i| 0.5 * from(i).cross(from(i + 1)))
        .sum()
}

/// Whether a corner is one: off the straight line through its neighbours.
fn is_corner(points: &[Point], i: usize) -> bool {
    let n = points.len();
    let (a, b) = (points[(i + n - 1) % n], points[(i + 1) % n]);
    let way = a.to(b);
    way.length() <= TOLERANCE
        || way.cross(a.to(points[i])).abs() > TOLERANCE * way.length()
        || way.dot(a.to(points[i])) < 0.0
        || way.dot(points[i].to(b)) < 0.0
}

fn faults(points: &[Point], index: usize, issues: &mut Vec<Issue>) {
    let n = points.len();
    let before = issues.len();
    for i in 0..n {
        let last = (i + n - 1) % n;
        let distance = points[last].distance(points[i]);
        if distance <= TOLERANCE {
            issues.push(
                Issue::new(
                    format!("/slabs/{index}/corners/{i}"),
                    &refusals::SLAB_CORNERS_COINCIDE,
                    format!(
                        "{} from corner {last} of the list; the first corner is not repeated at the end",
                        in_both_systems(distance, "m")
                    ),
                )
                .limit(format!("more than {}", in_both_systems(TOLERANCE, "m"))),
            );
        }
    }
    if issues.len() > before {
        return;
    }
    for i in 0..n {
        for j in i + 1..n {
            let (a, b) = (points[i], points[(i + 1) % n]);
            let (c, d) = (points[j], points[(j + 1) % n]);
            let touches = if j == i + 1 {
                doubles_back(a, b, d)
            } else if i == 0 && j == n - 1 {
                doubles_back(c, a, b)
            } else {
                segment_distance(a, b, c, d) <= TOLERANCE
            };
            // three corners on one line double back too: that is a slab without area
            if touches && n > 3 {
                issues.push(Issue::new(
                    format!("/slabs/{index}/corners/{j}"),
                    &refusals::SLAB_CROSSES_ITSELF,
                    format!(
                        "the edge from corner {j} to {} meets the one from {i} to {}",
                        (j + 1) % n,
                        i + 1
                    ),
                ));
            }
        }
    }
}

impl Outline {
    /// Length over width of the smallest rectangle about the slab with a side along one of
    /// its own, and the direction of its short side.
    pub fn smallest_rectangle(&self) -> (f64, Point) {
        let mut best: Option<(f64, f64, Point)> = None;
        for side in &self.sides {
            let span = |axis: Point| {
                let all = self.sides.iter().map(|s| s.start.dot(axis));
                let (lo, hi) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), v| {
                    (lo.min(v), hi.max(v))
                });
                hi - lo
            };
            let (along, across) = (span(side.direction), span(side.inward()));
            let area = along * across;
            if best.is_none_or(|b| area < b.0 * (1.0 - 1e-9)) {
                let (ratio, short) = if along >= across {
                    (along / across, side.inward())
                } else {
                    (across / along, side.direction)
                };
                best = Some((area, ratio, short));
            }
        }
        best.map_or((1.0, Point { x: 1.0, y: 0.0 }), |b| (b.1, b.2))
    }
}
