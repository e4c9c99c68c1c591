//! The partition of a slab against hand figures and against fine numerical integration.

use proptest::prelude::*;

use super::shape::{Outline, of_points};
use super::strips::half_to_each_end;
use super::widths::{Width, nearest_edge};
use crate::layout::plan::Point;
use crate::math::{PI, cos, sin};

fn outline(points: &[(f64, f64)]) -> Outline {
    let points: Vec<Point> = points.iter().map(|(x, y)| Point { x: *x, y: *y }).collect();
    let mut issues = Vec::new();
    of_points(&points, 0, &mut issues).unwrap_or_else(|| panic!("{issues:?}"))
}

fn turned(points: &[(f64, f64)], angle: f64) -> Vec<(f64, f64)> {
    let (c, s) = (cos(angle), sin(angle));
    let turn = |(x, y): &(f64, f64)| (c * x - s * y + 40.0, s * x + c * y - 3.0);
    points.iter().map(turn).collect()
}

fn area(widths: &[Width]) -> f64 {
    let of = |w: &Width| 0.5 * (w.start + w.end) * (w.to - w.from);
    widths.iter().map(of).sum()
}

/// Integral of width times place.
fn first_moment(widths: &[Width]) -> f64 {
    let of = |w: &Width| {
        let l = w.to - w.from;
        0.5 * (w.start + w.end) * l * w.from + l * l * (w.start + 2.0 * w.end) / 6.0
    };
    widths.iter().map(of).sum()
}

fn total(all: &[Vec<Width>]) -> f64 {
    all.iter().map(|w| area(w)).sum()
}

fn near(got: f64, want: f64, relative: f64) {
    assert!(
        (got - want).abs() <= relative * want.abs().max(1e-9),
        "{got} instead of {want}"
    );
}

/// A square of 4 m: each side gets a triangle with its peak of 2 m in the middle.
#[test]
fn a_square_gives_four_triangles() {
    let square = outline(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]);
    let all = nearest_edge(&square);
    for own in &all {
        assert_eq!(own.len(), 2);
        assert_eq!((own[0].start, own[0].end), (0.0, 2.0));
        assert_eq!((own[1].start, own[1].end), (2.0, 0.0));
        near(own[0].to, 2.0, 1e-15);
    }
    near(total(&all), 16.0, 1e-15);
}

/// Averages over the length of a side: Ls/4 on the short sides and (Ls/4)(2 - m) on the long
/// ones, m = Ls/Ll; peaks Ls/2. The form by which a two-way slab is shared out.
#[test]
fn a_rectangle_has_the_textbook_averages() {
    for (short, long) in [(3.0, 4.0), (2.5, 7.0), (4.0, 4.5)] {
        let m = short / long;
        for angle in [0.0, 0.3, 2.0, -1.1] {
            let r = turned(
                &[(0.0, 0.0), (long, 0.0), (long, short), (0.0, short)],
                angle,
            );
            let o = outline(&r);
            let all = nearest_edge(&o);
            for (side, own) in o.sides.iter().zip(&all) {
                let average = area(own) / side.length;
                let peak = own.iter().fold(0.0f64, |p, w| p.max(w.start).max(w.end));
                near(peak, short / 2.0, 1e-12);
                if (side.length - short).abs() < 1e-9 {
                    near(average, short / 4.0, 1e-12);
                } else {
                    near(average, short / 4.0 * (2.0 - m), 1e-12);
                }
            }
            near(total(&all), short * long, 1e-12);
        }
    }
}

/// A right triangle of 3, 4 and 5 m: bisectors meet at the centre of the inscribed circle, r
/// = 1 m, so each side gets r x length / 2.
#[test]
fn a_triangle_is_shared_by_its_inscribed_circle() {
    let o = outline(&[(0.0, 0.0), (4.0, 0.0), (0.0, 3.0)]);
    for (side, own) in o.sides.iter().zip(nearest_edge(&o)) {
        near(area(&own), side.length / 2.0, 1e-14);
        let peak = own.iter().fold(0.0f64, |p, w| p.max(w.start).max(w.end));
        near(peak, 1.0, 1e-14);
    }
}

/// Corners on an ellipse at sorted angles: always convex.
fn convex() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let gaps = prop::collection::vec(0.25f64..1.0, 3..9);
    (gaps, 3.0f64..9.0, 3.0f64..9.0, 0.0f64..6.0).prop_map(|(gaps, a, b, turn)| {
        let sum: f64 = gaps.iter().sum();
        let mut angle = 0.0;
        let corners: Vec<(f64, f64)> = gaps
            .iter()
            .map(|g| {
                angle += g / sum * 2.0 * PI;
                (a * cos(angle), b * sin(angle))
            })
            .collect();
        turned(&corners, turn)
    })
}

/// By what share of the whole an area by the grid may be off.
const SLACK: f64 = 4e-3;

/// Squares of a fine grid, each given whole to where its middle goes: area and first moment
/// along every side. A thin slab has much edge for its area and gets smaller squares.
fn by_grid(o: &Outline, share: impl Fn(Point) -> Vec<(usize, f64, f64)>) -> Vec<(f64, f64)> {
    // at the edge half a square more or less
    let around: f64 = o.sides.iter().map(|s| s.length).sum();
    let size = 2.0 * SLACK * o.area / around;
    let span = |axis: fn(&Point) -> f64| {
        let all = o.sides.iter().map(|s| axis(&s.start));
        all.fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), v| {
            (lo.min(v), hi.max(v))
        })
    };
    let ((x0, x1), (y0, y1)) = (span(|p| p.x), span(|p| p.y));
    let (nx, ny) = (((x1 - x0) / size).ceil(), ((y1 - y0) / size).ceil());
    let (dx, dy) = ((x1 - x0) / nx, (y1 - y0) / ny);
    let mut out = vec![(0.0, 0.0); o.sides.len()];
    for i in 0..nx as usize {
        for j in 0..ny as usize {
            let p = Point {
                x: x0 + (i as f64 + 0.5) * dx,
                y: y0 + (j as f64 + 0.5) * dy,
            };
            if inside(o, p) {
                for (side, place, part) in share(p) {
                    out[side].0 += part * dx * dy;
                    out[side].1 += part * dx * dy * place;
                }
            }
        }
    }
    out
}

/// Even and odd crossings of a ray to the east.
fn inside(o: &Outline, p: Point) -> bool {
    let crossed = o.sides.iter().filter(|s| {
        let end = s.start.along(s.direction, s.length);
        let between = (s.start.y > p.y) != (end.y > p.y);
        between && p.x < s.start.x + (p.y - s.start.y) * (end.x - s.start.x) / (end.y - s.start.y)
    });
    crossed.count() % 2 == 1
}

/// Where the lines along a direction through a point meet the outline, on both sides of it.
fn ends(o: &Outline, p: Point, direction: Point) -> Vec<(usize, f64, f64)> {
    let mut best: [Option<(f64, usize, f64)>; 2] = [None, None];
    for (i, s) in o.sides.iter().enumerate() {
        let turn = s.direction.cross(direction);
        if turn.abs() < 1e-12 {
            continue;
        }
        let way = s.start.to(p);
        let place = way.cross(direction) / turn;
        let along = way.cross(s.direction) / turn;
        if (0.0..=s.length).contains(&place) {
            let slot = &mut best[usize::from(along < 0.0)];
            if slot.is_none_or(|b| along.abs() < b.0) {
                *slot = Some((along.abs(), i, place));
            }
        }
    }
    best.into_iter()
        .flatten()
        .map(|b| (b.1, b.2, 0.5))
        .collect()
}

fn compare(o: &Outline, all: &[Vec<Width>], grid: &[(f64, f64)]) {
    let slack = SLACK * o.area;
    for (i, (own, (area_by_grid, moment_by_grid))) in all.iter().zip(grid).enumerate() {
        let length = o.sides[i].length;
        assert!(
            (area(own) - area_by_grid).abs() <= slack,
            "side {i}: {} instead of {area_by_grid}",
            area(own)
        );
        assert!(
            (first_moment(own) - moment_by_grid).abs() <= slack * length,
            "side {i}: {} instead of {moment_by_grid}",
            first_moment(own)
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_convex_slab_agrees_with_a_fine_grid(corners in convex()) {
        let o = outline(&corners);
        prop_assert!(o.convex);
        let all = nearest_edge(&o);
        near(total(&all), o.area, 1e-12);
        let grid = by_grid(&o, |p| {
            let distance = |s: &super::shape::Side| s.start.to(p).dot(s.inward());
            let nearest = (0..o.sides.len())
                .min_by(|a, b| distance(&o.sides[*a]).total_cmp(&distance(&o.sides[*b])))
                .unwrap();
            let side = &o.sides[nearest];
            vec![(nearest, side.start.to(p).dot(side.direction), 1.0)]
        });
        compare(&o, &all, &grid);
    }

    #[test]
    fn strips_agree_with_a_fine_grid(corners in convex(), angle in 0.0f64..3.2) {
        let o = outline(&corners);
        let direction = Point { x: cos(angle), y: sin(angle) };
        let all = half_to_each_end(&o, direction);
        near(total(&all), o.area, 1e-12);
        compare(&o, &all, &by_grid(&o, |p| ends(&o, p, direction)));
    }

    /// Turning a slab turns what goes to its sides with it.
    #[test]
    fn turning_makes_no_difference(corners in convex(), angle in 0.0f64..6.3) {
        let (a, b) = (outline(&corners), outline(&turned(&corners, angle)));
        for (x, y) in nearest_edge(&a).iter().zip(nearest_edge(&b)) {
            near(area(x), area(&y), 1e-9);
            near(first_moment(x), first_moment(&y), 1e-9);
        }
    }
}

/// An L of 6 x 6 m less 3 x 3 m with strips to the north: where it is 6 m deep 3 m go to each
/// end, where it is 3 m deep 1.5 m; the side at the re-entrant corner gets its own.
#[test]
fn strips_of_an_l() {
    let corners = [
        (0.0, 0.0),
        (6.0, 0.0),
        (6.0, 3.0),
        (3.0, 3.0),
        (3.0, 6.0),
        (0.0, 6.0),
    ];
    let o = outline(&corners);
    assert!(!o.convex);
    let all = half_to_each_end(&o, Point { x: 0.0, y: 1.0 });
    let areas: Vec<f64> = all.iter().map(|w| area(w)).collect();
    for (got, want) in areas.iter().zip([13.5, 0.0, 4.5, 0.0, 9.0, 0.0]) {
        near(*got, want, 1e-14);
    }
    near(
        first_moment(&all[0]),
        3.0 * 3.0 * 1.5 + 1.5 * 3.0 * 4.5,
        1e-14,
    );
    for angle in [0.2, 0.7, 1.3, 2.9] {
        let direction = Point {
            x: cos(angle),
            y: sin(angle),
        };
        let all = half_to_each_end(&o, direction);
        near(total(&all), o.area, 1e-12);
        compare(&o, &all, &by_grid(&o, |p| ends(&o, p, direction)));
    }
}

#[test]
fn the_smallest_rectangle() {
    let box_of = |short: f64, angle: f64| {
        turned(&[(0.0, 0.0), (4.0, 0.0), (4.0, short), (0.0, short)], angle)
    };
    for angle in [0.0, 0.4, 1.9] {
        let (ratio, direction) = outline(&box_of(2.0, angle)).smallest_rectangle();
        near(ratio, 2.0, 1e-12);
        // its short side is turned with it
        near(
            (direction.x * -sin(angle) + direction.y * cos(angle)).abs(),
            1.0,
            1e-12,
        );
        near(
            outline(&box_of(4.0, angle)).smallest_rectangle().0,
            1.0,
            1e-12,
        );
    }
}

#[test]
fn corners_that_make_no_slab() {
    let codes = |points: &[(f64, f64)]| {
        let points: Vec<Point> = points.iter().map(|(x, y)| Point { x: *x, y: *y }).collect();
        let mut issues = Vec::new();
        assert!(of_points(&points, 0, &mut issues).is_none());
        issues
            .iter()
            .map(|i| i.code.to_string())
            .collect::<Vec<_>>()
    };
    let bow = [(0.0, 0.0), (4.0, 4.0), (4.0, 0.0), (0.0, 4.0)];
    assert_eq!(codes(&bow), ["slab_crosses_itself"]);
    let spike = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (4.0, 1.0), (0.0, 1.0)];
    assert_eq!(codes(&spike)[0], "slab_crosses_itself");
    assert_eq!(
        codes(&[(0.0, 0.0), (4.0, 0.0), (8.0, 0.0)]),
        ["slab_without_area"]
    );
    assert_eq!(
        codes(&[(0.0, 0.0), (4.0, 0.0), (4.0, 0.002), (0.0, 3.0)]),
        ["slab_corners_coincide"]
    );
}
