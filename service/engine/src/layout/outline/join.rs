//! Ends of beams that stand on a form line or in the width of its beams, moved along their
//! own axis onto the centre line. Only where the caller asks for it.

use super::Strip;
use super::derive::plan_point;
use super::measure::moved_along;
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::outcome::WhichEnd;
use crate::layout::plan::{Point, TOLERANCE, point_distance};
use crate::layout::request::{GradeBeam, PlanPoint};
use crate::quantity::in_both_systems;

/// A beam that is nearer to parallel with the one it should meet than this (as a sine, 10
/// degrees) does not meet it near its end.
const FLAT: f64 = 0.173_6;

/// Ends that move by less than this are where they should be.
const SAME: f64 = 1e-9;

/// Where an end goes.
#[derive(Debug, Clone, Copy)]
struct Hit {
    beam: usize,
    to: Point,
    longer: f64,
}

/// An end that was moved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::layout) struct Joined {
    pub beam: usize,
    pub end: WhichEnd,
    pub onto: usize,
    pub from: PlanPoint,
    pub to: PlanPoint,
    pub longer: f64,
}

/// What was found for one end.
enum Found {
    /// It stands in no beam; the distance to the nearest.
    Apart(f64),
    /// It stands in the width of this beam, whose centre line it does not reach along its axis.
    Misses(usize),
    Hit(Hit),
}

/// A beam whose ends are to be joined, with the outline it belongs to itself.
pub(super) struct Asked {
    pub beam: usize,
    pub first: bool,
    pub last: bool,
    pub of_outline: Option<usize>,
}

/// Joins the ends; gives back by how much each beam grew at its first and last end.
pub(super) fn join(
    beams: &mut [GradeBeam],
    asked: &[Asked],
    strips: &[Strip],
    issues: &mut Vec<Issue>,
) -> (Vec<Joined>, Vec<(usize, f64, f64)>) {
    let (mut ends, mut grown) = (Vec::new(), Vec::new());
    for a in asked {
        let others: Vec<&Strip> = strips
            .iter()
            .filter(|s| a.of_outline != Some(s.outline))
            .collect();
        let path = format!("/beams/{}", a.beam);
        let points: Vec<Point> = beams[a.beam].points.iter().map(Point::of).collect();
        let n = points.len() - 1;
        if points.windows(2).any(|p| p[0].distance(p[1]) <= TOLERANCE) {
            continue;
        }
        let mut by = [0.0, 0.0];
        let (mut stands, mut nearest) = (false, f64::INFINITY);
        for (slot, (wanted, end, before)) in
            [(a.first, 0, 1), (a.last, n, n - 1)].iter().enumerate()
        {
            if !wanted {
                continue;
            }
            match find(points[*end], points[*before], &others) {
                Found::Apart(distance) => nearest = nearest.min(distance),
                Found::Misses(onto) => {
                    stands = true;
                    issues.push(Issue::new(
                        format!("{path}/points/{end}"),
                        &refusals::JOIN_MISSES,
                        format!(
                            "the end stands in the width of {}, but the axis of the beam does not meet its centre line there, or meets it at less than 10 degrees",
                            label(&beams[onto])
                        ),
                    ));
                }
                Found::Hit(hit) => {
                    stands = true;
                    by[slot] = hit.longer;
                    if hit.longer.abs() > SAME {
                        ends.push(Joined {
                            beam: a.beam,
                            end: if slot == 0 {
                                WhichEnd::First
                            } else {
                                WhichEnd::Last
                            },
                            onto: hit.beam,
                            from: beams[a.beam].points[*end],
                            to: plan_point(hit.to),
                            longer: hit.longer,
                        });
                        beams[a.beam].points[*end] = plan_point(hit.to);
                    }
                }
            }
        }
        if !stands {
            issues.push(Issue::new(
                format!("{path}/joins_outline"),
                &refusals::JOIN_NOTHING,
                if nearest.is_finite() {
                    format!(
                        "the nearer end is {} from the nearest beam of an outline",
                        in_both_systems(nearest, "m")
                    )
                } else {
                    "there is no other outline".to_owned()
                },
            ));
            continue;
        }
        shortened(&path, &points, by, issues);
        let length = points.windows(2).map(|p| p[0].distance(p[1])).sum::<f64>() + by[0] + by[1];
        moved_along(&path, &mut beams[a.beam], by[0], length, issues);
        grown.push((a.beam, by[0], by[1]));
    }
    (ends, grown)
}

/// The first and the last part of a beam must still be there.
fn shortened(path: &str, points: &[Point], by: [f64; 2], issues: &mut Vec<Issue>) {
    let n = points.len() - 1;
    let first = points[0].distance(points[1]) + by[0] + if n == 1 { by[1] } else { 0.0 };
    let last = points[n - 1].distance(points[n]) + by[1];
    for (left, end) in [(first, 0), (last, n)] {
        if left <= TOLERANCE && (n > 1 || end == 0) {
            issues.push(
                Issue::new(
                    format!("{path}/points/{end}"),
                    &refusals::JOIN_MISSES,
                    format!("{} of this part would be left", in_both_systems(left, "m")),
                )
                .limit(format!("more than {}", in_both_systems(TOLERANCE, "m"))),
            );
        }
    }
}

fn label(beam: &GradeBeam) -> String {
    let text = beam.label.as_ref().map_or("a beam", |l| l.as_str());
    format!("`{text}`")
}

/// The nearest centre line along the axis, among the beams in whose width the end stands.
fn find(end: Point, before: Point, strips: &[&Strip]) -> Found {
    let way = before.to(end);
    let length = way.length();
    let axis = Point {
        x: way.x / length,
        y: way.y / length,
    };
    let mut nearest = f64::INFINITY;
    let mut misses = None;
    let mut best: Option<Hit> = None;
    for strip in strips {
        let distance = strip.distance(end);
        nearest = nearest.min(distance);
        if distance > TOLERANCE {
            continue;
        }
        match meet(end, axis, strip) {
            Some(hit) if best.is_none_or(|b| hit.longer.abs() < b.longer.abs()) => best = Some(hit),
            Some(_) => {}
            None => misses = misses.or(Some(strip.beam)),
        }
    }
    match (best, misses) {
        (Some(hit), _) => Found::Hit(hit),
        (None, Some(onto)) => Found::Misses(onto),
        (None, None) => Found::Apart(nearest),
    }
}

/// Where the axis meets the centre line of a strip.
///
/// t = ((p - e) x d)/(u x d); e end, u axis, p and d begin and direction of the centre line (m).
/// In line with it, where the centre line begins as seen along the axis. Source: geometry.
fn meet(end: Point, axis: Point, strip: &Strip) -> Option<Hit> {
    let (p, q) = strip.centre;
    let hit = |to: Point, longer: f64| Hit {
        beam: strip.beam,
        to,
        longer,
    };
    let length = p.distance(q);
    let along = Point {
        x: p.to(q).x / length,
        y: p.to(q).y / length,
    };
    let turn = axis.cross(along);
    let off = |at: Point| axis.cross(end.to(at)).abs();
    if off(p) <= TOLERANCE && off(q) <= TOLERANCE {
        let near = if axis.dot(along) > 0.0 { p } else { q };
        let longer = axis.dot(end.to(near));
        return Some(hit(near, longer));
    }
    if point_distance(end, p, q) <= SAME {
        return Some(hit(end, 0.0));
    }
    if turn.abs() < FLAT {
        return None;
    }
    let longer = end.to(p).cross(along) / turn;
    let to = end.along(axis, longer);
    let place = p.to(to).dot(along);
    (place >= -TOLERANCE && place <= length + TOLERANCE).then(|| hit(to, longer))
}

impl Strip {
    /// Distance of a point from the beam, between form line and inner face; 0 within.
    fn distance(&self, p: Point) -> f64 {
        let corners = [self.form.0, self.form.1, self.inner.1, self.inner.0];
        let sides = [0, 1, 2, 3].map(|i| (corners[i], corners[(i + 1) % 4]));
        let turns = sides.map(|(a, b)| a.to(b).cross(a.to(p)));
        if turns.iter().all(|t| *t >= 0.0) || turns.iter().all(|t| *t <= 0.0) {
            return 0.0;
        }
        sides
            .iter()
            .map(|(a, b)| point_distance(p, *a, *b))
            .fold(f64::INFINITY, f64::min)
    }
}
