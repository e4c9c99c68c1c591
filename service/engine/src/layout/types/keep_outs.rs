//! Things that piles keep away from, with the distance of a point to them.

use super::area::{clean, fault, to_area, to_line};
use crate::contract::{Issue, utilisation};
use crate::layout::codes::refusals;
use crate::layout::plan::{Point, TOLERANCE};
use crate::layout::request::{BoundarySide, KeepOut, KeepOutShape, PlanPoint, Request};

/// Something that piles keep away from.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::layout) struct Barrier {
    pub label: String,
    pub why: Option<String>,
    pub clearance: f64,
    shape: Shape,
}

#[derive(Debug, Clone, PartialEq)]
enum Shape {
    Area(Vec<Point>),
    Lot(Vec<Point>),
    Circle(Point, f64),
    Line(Vec<Point>),
    /// A point on it and the unit vector to the side of the piles.
    Boundary(Point, Point),
}

impl Barrier {
    /// Reads one that stands at a pointer of the request; a fault of its shape goes to `issues`.
    pub fn of(k: &KeepOut, pointer: &str, corner: Point, issues: &mut Vec<Issue>) -> Self {
        let inside = |p: &PlanPoint| super::inside(corner, p);
        let all = |points: &[PlanPoint]| points.iter().map(inside).collect::<Vec<_>>();
        let (member, wrong, shape) = match &k.shape {
            KeepOutShape::Polygon(a) | KeepOutShape::Lot(a) => {
                let corners = all(&a.corners);
                let lot = matches!(k.shape, KeepOutShape::Lot(_));
                let member = if lot { "lot" } else { "polygon" };
                let wrong = fault(&corners);
                let shape = if lot {
                    Shape::Lot(corners)
                } else {
                    Shape::Area(corners)
                };
                (format!("{member}/corners"), wrong, shape)
            }
            KeepOutShape::Circle(c) => (
                "circle".to_owned(),
                None,
                Shape::Circle(inside(&c.centre), c.radius.si()),
            ),
            KeepOutShape::Line(l) => {
                let points = all(&l.points);
                let short = points
                    .windows(2)
                    .position(|s| s[0].distance(s[1]) <= TOLERANCE);
                let wrong = short.map(|j| format!("points {j} and {} are one point", j + 1));
                ("line/points".to_owned(), wrong, Shape::Line(points))
            }
            KeepOutShape::Boundary(b) => {
                let (from, to) = (inside(&b.from), inside(&b.to));
                let way = from.to(to);
                let length = way.length();
                let wrong = (length <= TOLERANCE).then(|| "its two points are one".to_owned());
                let left = Point {
                    x: -way.y / length,
                    y: way.x / length,
                };
                let side = match b.piles_on {
                    BoundarySide::Left => left,
                    BoundarySide::Right => Point {
                        x: -left.x,
                        y: -left.y,
                    },
                };
                ("boundary".to_owned(), wrong, Shape::Boundary(from, side))
            }
        };
        if let Some(detail) = wrong {
            issues.push(Issue::new(
                format!("{pointer}/shape/{member}"),
                &refusals::AREA_NOT_SIMPLE,
                detail,
            ));
        }
        Self {
            label: k.label.as_str().to_owned(),
            why: k.why.as_ref().map(|w| w.as_str().to_owned()),
            clearance: k.clearance.si(),
            shape,
        }
    }

    /// Distance of a point to it, negative where no pile may be at all.
    pub fn distance(&self, p: Point) -> f64 {
        match &self.shape {
            Shape::Area(corners) => to_area(p, corners),
            Shape::Lot(corners) => -to_area(p, corners),
            Shape::Circle(centre, radius) => clean(centre.distance(p) - radius),
            Shape::Line(points) => clean(to_line(p, points)),
            Shape::Boundary(on, side) => clean(on.to(p).dot(*side)),
        }
    }

    /// Whether a pile may stand at that distance.
    pub fn allows(&self, distance: f64) -> bool {
        utilisation(self.clearance, distance).1
    }

    /// Name and reason.
    pub fn name(&self) -> String {
        match &self.why {
            Some(why) => format!("{} ({why})", self.label),
            None => self.label.clone(),
        }
    }
}

/// Reads the keep-outs; faults of their shapes go to `issues`.
pub(super) fn read(request: &Request, corner: Point, issues: &mut Vec<Issue>) -> Vec<Barrier> {
    let all = request.keep_outs.iter().flatten().enumerate();
    all.map(|(i, k)| Barrier::of(k, &format!("/keep_outs/{i}"), corner, issues))
        .collect()
}
