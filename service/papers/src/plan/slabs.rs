//! Slabs that span to the beams: the lines that part what goes to each side, or an arrow the
//! way the strips lie, with name and loads.

use bearwell_engine::layout::{LoadKind, SpanningUsed, StructuralSlab};
use bearwell_engine::math;
use bearwell_engine::quantity::System;

use crate::page::View;
use crate::panel::Subject;
use crate::place::{Line, Room};
use crate::plan::ground::strokes;
use crate::plan::shape::{Shape, Spot, clipped, dashes};
use crate::plan::tags::{write_inside, write_led};
use crate::svg::{Rect, Svg};
use crate::words;

/// A slab on paper.
#[derive(Debug, Clone)]
pub struct Slab {
    shape: Shape,
    /// Lines that part it, or the arrow of its strips with its heads.
    lines: Vec<Line>,
    one_way: bool,
    texts: Vec<String>,
}

/// The slabs of an answer, on paper.
pub fn slabs(s: Subject, view: &View) -> Vec<Slab> {
    let sent = s.request.slabs.iter().flatten();
    let found = s.answer.result.slabs.iter().flatten();
    sent.zip(found)
        .map(|(sent, found)| {
            let shape = Shape {
                points: sent.corners.iter().map(|p| view.at(p)).collect(),
                closed: true,
            };
            let one_way = found.spanning == SpanningUsed::OneWay;
            let lines = if one_way {
                let angle = found.strips_from_east.map_or(0.0, |a| a.si());
                arrow(&shape, angle)
            } else {
                parting(&shape)
            };
            let mut texts = vec![format!("slab {}", found.label)];
            texts.extend(loads(sent, s.system));
            Slab {
                shape,
                lines,
                one_way,
                texts,
            }
        })
        .collect()
}

/// What acts on a slab, kind by kind.
fn loads(slab: &StructuralSlab, system: System) -> Vec<String> {
    let kinds: Vec<String> = slab
        .loads
        .iter()
        .map(|l| format!("{} {}", kind(l.kind), words::area_load_told(l.load, system)))
        .collect();
    if kinds.len() > 3 {
        let rest = format!("and {} more loads", kinds.len() - 2);
        return kinds.into_iter().take(2).chain([rest]).collect();
    }
    kinds
}

/// A kind of load as it is written.
fn kind(kind: LoadKind) -> &'static str {
    match kind {
        LoadKind::Dead => "dead",
        LoadKind::Live => "live",
        LoadKind::RoofLive => "roof live",
        LoadKind::Snow => "snow",
        LoadKind::Wind => "wind",
        LoadKind::Seismic => "seismic",
        LoadKind::Frost => "frost",
        LoadKind::Swell => "swell",
        LoadKind::Other => "other",
    }
}

/// An arrow with two heads through the middle of a slab.
fn arrow(shape: &Shape, angle: f64) -> Vec<Line> {
    const HEAD: f64 = 1.8;
    let middle = middle(shape);
    // y of the paper is down
    let d = (math::cos(angle), -math::sin(angle));
    let reach = |way: f64| {
        let mut far = 0.0_f64;
        while far < 400.0 && shape.holds((middle.0 + way * far * d.0, middle.1 + way * far * d.1)) {
            far += 0.5;
        }
        way * (0.75 * far).min(24.0)
    };
    let at = |t: f64, off: f64| {
        (
            middle.0 + t * d.0 - off * d.1,
            middle.1 + t * d.1 + off * d.0,
        )
    };
    let (back, ahead) = (reach(-1.0), reach(1.0));
    if ahead - back < 4.0 {
        return Vec::new();
    }
    let mut lines = vec![(at(back, 0.0), at(ahead, 0.0))];
    for (tip, way) in [(back, 1.0), (ahead, -1.0)] {
        for side in [-1.0, 1.0] {
            lines.push((at(tip, 0.0), at(tip + way * HEAD, side * 0.5 * HEAD)));
        }
    }
    lines
}

fn middle(shape: &Shape) -> Spot {
    let count = shape.points.len().max(1) as f64;
    let sum = shape
        .points
        .iter()
        .fold((0.0, 0.0), |s, p| (s.0 + p.0, s.1 + p.1));
    (sum.0 / count, sum.1 / count)
}

/// The lines inside a convex slab on which two sides are equally near and no other is nearer.
fn parting(shape: &Shape) -> Vec<Line> {
    let inside = middle(shape);
    // a x + b y - c is the distance of a place inside from a side
    let sides: Vec<(f64, f64, f64)> = shape
        .sides()
        .filter_map(|(p, q)| {
            let (dx, dy) = (q.0 - p.0, q.1 - p.1);
            let long = math::hypot(dx, dy);
            if long < 1e-6 {
                return None;
            }
            let (a, b) = (-dy / long, dx / long);
            let c = a * p.0 + b * p.1;
            let way = if a * inside.0 + b * inside.1 < c {
                -1.0
            } else {
                1.0
            };
            Some((way * a, way * b, way * c))
        })
        .collect();
    let whole: Vec<(Spot, bool)> = shape.points.iter().map(|p| (*p, false)).collect();
    let mut lines = Vec::new();
    for (i, s) in sides.iter().enumerate() {
        let mut cell = whole.clone();
        for (j, t) in sides.iter().enumerate() {
            if i == j {
                continue;
            }
            cell = half(&cell, (s.0 - t.0, s.1 - t.1, s.2 - t.2));
            // each line comes once: with the first of its two sides
            if j < i {
                cell.iter_mut().for_each(|(_, on)| *on = false);
            }
        }
        for (k, (p, on)) in cell.iter().enumerate() {
            let q = cell[(k + 1) % cell.len()].0;
            if *on && math::hypot(q.0 - p.0, q.1 - p.1) > 0.05 {
                lines.push((*p, q));
            }
        }
    }
    lines
}

/// The part of a convex polygon on the side of a line where `a x + b y <= c`; the second of
/// each pair tells whether the side that begins there lies on that line.
fn half(polygon: &[(Spot, bool)], (a, b, c): (f64, f64, f64)) -> Vec<(Spot, bool)> {
    let over = |p: Spot| a * p.0 + b * p.1 - c;
    let mut out = Vec::new();
    for (i, (p, on_line)) in polygon.iter().enumerate() {
        let (q, _) = polygon[(i + 1) % polygon.len()];
        let (here, there) = (over(*p), over(q));
        let cut = || {
            let t = here / (here - there);
            (p.0 + t * (q.0 - p.0), p.1 + t * (q.1 - p.1))
        };
        match (here <= 0.0, there <= 0.0) {
            (true, true) => out.push((*p, *on_line)),
            (true, false) => {
                out.push((*p, *on_line));
                out.push((cut(), true));
            }
            (false, true) => out.push((cut(), *on_line)),
            (false, false) => {}
        }
    }
    out
}

/// Writes names and loads where there is room; how many slabs have none.
pub fn tell(svg: &mut Svg, room: &mut Room, field: Rect, slabs: &[Slab]) -> usize {
    let mut untold = 0;
    for slab in slabs {
        let texts: Vec<&str> = slab.texts.iter().map(String::as_str).collect();
        let loads = texts[1..].join(", ");
        let line = format!("{}: {loads}", texts[0]);
        let told = write_inside(svg, room, field, &slab.shape, &texts)
            || write_inside(svg, room, field, &slab.shape, &[texts[0], &loads])
            || write_inside(svg, room, field, &slab.shape, &[&line])
            || write_led(svg, room, field, &slab.shape, &texts);
        untold += usize::from(!told);
    }
    untold
}

/// Draws lines and arrows around all that stands on the plan.
pub fn draw(svg: &mut Svg, room: &Room, field: Rect, slabs: &[Slab]) {
    for slab in slabs {
        let lines: Vec<Line> = slab
            .lines
            .iter()
            .filter_map(|l| clipped(field, *l))
            .collect();
        if slab.one_way {
            strokes(svg, room, &lines, "stroke=\"#000\" stroke-width=\"0.25\"");
        } else {
            let dotted: Vec<Line> = lines.iter().flat_map(|l| dashes(*l, 0.5, 1.0)).collect();
            strokes(svg, room, &dotted, "stroke=\"#000\" stroke-width=\"0.2\"");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rectangle_is_parted_at_45_degrees() {
        let shape = Shape {
            points: vec![(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)],
            closed: true,
        };
        let mut lines: Vec<[i64; 4]> = parting(&shape)
            .into_iter()
            .map(|(a, b)| {
                let (a, b) = if a <= b { (a, b) } else { (b, a) };
                [a.0, a.1, b.0, b.1].map(|v| v.round() as i64)
            })
            .collect();
        lines.sort_unstable();
        assert_eq!(
            lines,
            [
                [0, 0, 10, 10],
                [0, 20, 10, 10],
                [10, 10, 20, 10],
                [20, 10, 30, 0],
                [20, 10, 30, 20]
            ]
        );
    }

    #[test]
    fn a_square_is_parted_by_its_diagonals() {
        let shape = Shape {
            points: vec![(0.0, 0.0), (20.0, 0.0), (20.0, 20.0), (0.0, 20.0)],
            closed: true,
        };
        let long: f64 = parting(&shape)
            .iter()
            .map(|(a, b)| math::hypot(b.0 - a.0, b.1 - a.1))
            .sum();
        assert!((long - 2.0 * 20.0 * 2.0_f64.sqrt()).abs() < 0.2, "{long}");
    }

    #[test]
    fn an_arrow_lies_in_its_slab() {
        let shape = Shape {
            points: vec![(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 20.0)],
            closed: true,
        };
        for angle in [0.0, 0.7, -1.2, 1.57] {
            let lines = arrow(&shape, angle);
            assert_eq!(lines.len(), 5);
            assert!(
                lines
                    .iter()
                    .all(|(a, b)| shape.holds(*a) && shape.holds(*b))
            );
        }
    }

    #[test]
    fn half_of_a_square_has_one_side_on_the_line() {
        let square = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)].map(|p| (p, false));
        let part = half(&square, (1.0, 1.0, 2.0));
        assert_eq!(part.iter().filter(|(_, on)| *on).count(), 1);
        assert!(part.iter().all(|((x, y), _)| x + y <= 2.0 + 1e-9));
        assert!(half(&square, (1.0, 0.0, -1.0)).is_empty());
    }
}
