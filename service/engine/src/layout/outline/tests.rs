//! Moving a line sideways: what holds for every ring, and figures by hand.

use proptest::prelude::*;

use super::offset::{Fault, Sides};
use crate::layout::plan::{Point, TOLERANCE};

fn ring(points: &[(f64, f64)]) -> Sides {
    Sides {
        points: points.iter().map(|(x, y)| Point { x: *x, y: *y }).collect(),
        ring: true,
    }
}

fn moved(line: &Sides, by: &[f64]) -> Result<Sides, Vec<Fault>> {
    let mut faults = Vec::new();
    let out = line.moved(by, &mut faults);
    if faults.is_empty() {
        line.compare(&out, &mut faults);
    }
    if faults.is_empty() {
        Ok(out)
    } else {
        Err(faults)
    }
}

fn near(a: Point, b: Point) -> bool {
    a.distance(b) < 1e-9
}

/// An anticlockwise ring around the origin, re-entrant corners among its corners.
fn any_ring() -> impl Strategy<Value = Sides> {
    proptest::collection::vec((4.0f64..9.0, 0.2f64..0.8), 4..9).prop_map(|spokes| {
        let step = std::f64::consts::TAU / spokes.len() as f64;
        let points = spokes.iter().enumerate().map(|(i, (radius, share))| {
            let angle = step * (i as f64 + share);
            Point {
                x: radius * crate::math::cos(angle),
                y: radius * crate::math::sin(angle),
            }
        });
        Sides {
            points: points.collect(),
            ring: true,
        }
    })
}

fn turned(line: &Sides, angle: f64, mirror: f64) -> Sides {
    let (c, s) = (crate::math::cos(angle), crate::math::sin(angle));
    let points = line.points.iter().map(|p| Point {
        x: mirror * (c * p.x - s * p.y),
        y: s * p.x + c * p.y,
    });
    Sides {
        points: points.collect(),
        ring: line.ring,
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, ..ProptestConfig::default() })]

    /// Moved back out, the ring is what it was, and the strip between has the area
    /// P d - d2 sum(tan(t/2)), t the turns: P the length of the form line.
    #[test]
    fn moved_back_it_is_the_same(line in any_ring(), d in 0.05f64..0.6) {
        let n = line.count();
        let Ok(inner) = moved(&line, &vec![d; n]) else { return Ok(()); };
        let back = moved(&inner, &vec![-d; n]).unwrap();
        for (p, q) in line.points.iter().zip(&back.points) {
            prop_assert!(near(*p, *q), "{p:?} {q:?}");
        }
        let perimeter: f64 = (0..n).map(|i| line.length(i)).sum();
        let turns: f64 = (0..n)
            .map(|i| {
                let (u, v) = (line.direction(i), line.direction((i + 1) % n));
                crate::math::tan(0.5 * crate::math::atan2(u.cross(v), u.dot(v)))
            })
            .sum();
        let strip = line.area() - inner.area();
        prop_assert!((strip - (perimeter * d - d * d * turns)).abs() < 1e-9 * perimeter);
    }

    /// Each corner has the distance of each of its sides from that side.
    #[test]
    fn every_side_has_its_own_distance(
        line in any_ring(),
        d in proptest::collection::vec(0.05f64..0.4, 9),
    ) {
        let n = line.count();
        let Ok(inner) = moved(&line, &d[..n]) else { return Ok(()); };
        for (i, by) in d[..n].iter().enumerate() {
            let (a, _) = line.ends(i);
            let (p, q) = inner.ends(i);
            for at in [p, q] {
                let off = line.direction(i).cross(a.to(at));
                prop_assert!((off - by).abs() < 1e-9, "{off} {by}");
            }
        }
    }

    /// Turned, mirrored (then the inside is on the other side) and run the other way round.
    #[test]
    fn place_and_direction_make_no_difference(line in any_ring(), d in 0.05f64..0.6, a in -3.0f64..3.0) {
        let n = line.count();
        let plain = moved(&line, &vec![d; n]);
        for mirror in [1.0, -1.0] {
            let other = moved(&turned(&line, a, mirror), &vec![mirror * d; n]);
            match (&plain, other) {
                (Ok(p), Ok(q)) => {
                    for (x, y) in turned(p, a, mirror).points.iter().zip(&q.points) {
                        prop_assert!(near(*x, *y), "{x:?} {y:?}");
                    }
                }
                (Err(p), Err(q)) => prop_assert_eq!(p.len(), q.len()),
                (p, q) => prop_assert!(false, "{p:?} {q:?}"),
            }
        }
        let mut reversed = line.clone();
        reversed.points.reverse();
        prop_assert_eq!(reversed.area() < 0.0, line.area() > 0.0);
        match (plain, moved(&reversed, &vec![-d; n])) {
            (Ok(p), Ok(q)) => {
                for (x, y) in p.points.iter().zip(q.points.iter().rev()) {
                    prop_assert!(near(*x, *y), "{x:?} {y:?}");
                }
            }
            (Err(p), Err(q)) => prop_assert_eq!(p.len(), q.len()),
            (p, q) => prop_assert!(false, "{p:?} {q:?}"),
        }
    }
}

/// An L of 10 m by 8 m with a notch of 4 m by 3 m, and 0.2 m: by hand.
#[test]
fn an_l_shape_by_hand() {
    let l = ring(&[
        (0.0, 0.0),
        (10.0, 0.0),
        (10.0, 5.0),
        (6.0, 5.0),
        (6.0, 8.0),
        (0.0, 8.0),
    ]);
    let inner = moved(&l, &[0.2; 6]).unwrap();
    let want = [
        (0.2, 0.2),
        (9.8, 0.2),
        (9.8, 4.8),
        (5.8, 4.8),
        (5.8, 7.8),
        (0.2, 7.8),
    ];
    for (p, w) in inner.points.iter().zip(want) {
        assert!(near(*p, Point { x: w.0, y: w.1 }), "{p:?}");
    }
    // beside the re-entrant corner one end of a side gains what the other loses
    assert!((inner.length(2) - 4.0).abs() < 1e-12 && (inner.length(3) - 3.0).abs() < 1e-12);
    // the way round: 36 m less 2 x 0.2 m for each of 5 corners, more by as much at the re-entrant
    let round: f64 = (0..6).map(|i| inner.length(i)).sum();
    assert!((round - (36.0 - 4.0 * 0.4)).abs() < 1e-12, "{round}");
}

/// A point on a straight side moves square to it; with different distances there is a step.
#[test]
fn a_point_on_a_straight_side() {
    let line = ring(&[(0.0, 0.0), (4.0, 0.0), (9.0, 0.0), (9.0, 6.0), (0.0, 6.0)]);
    let inner = moved(&line, &[0.3; 5]).unwrap();
    assert!(near(inner.points[1], Point { x: 4.0, y: 0.3 }));
    let step = moved(&line, &[0.3, 0.2, 0.3, 0.3, 0.3]);
    assert_eq!(step, Err(vec![Fault::Step { point: 1 }]));
}

/// A spike of 10 degrees is refused, one of 20 degrees is not: the limit is
/// 2 asin(1/8) = 14.36 degrees.
#[test]
fn sharp_corners() {
    let spike = |half: f64| {
        let t = crate::math::tan(half.to_radians());
        ring(&[(0.0, 0.0), (40.0, -40.0 * t), (40.0, 40.0 * t)])
    };
    assert_eq!(
        moved(&spike(5.0), &[0.1; 3]),
        Err(vec![Fault::Sharp { point: 0 }])
    );
    let inner = moved(&spike(10.0), &[0.1; 3]).unwrap();
    let reach = 0.1 / crate::math::sin(10f64.to_radians());
    assert!(near(inner.points[0], Point { x: reach, y: 0.0 }));
}

/// A bay 1 m wide and 0.5 m deep stands 0.49 m of inset and not 0.51 m: 1 - 2 x 0.51 = -0.02.
#[test]
fn a_narrow_bay_vanishes() {
    let bay = ring(&[
        (0.0, 0.0),
        (4.0, 0.0),
        (4.0, -0.5),
        (5.0, -0.5),
        (5.0, 0.0),
        (9.0, 0.0),
        (9.0, 7.0),
        (0.0, 7.0),
    ]);
    assert!(moved(&bay, &[0.49; 8]).is_ok());
    let faults = moved(&bay, &[0.51; 8]).unwrap_err();
    let [Fault::Vanishes { side: 2, left }] = faults[..] else {
        panic!("{faults:?}");
    };
    // the front of the bay; its flanks only move along
    assert!((left + 0.02).abs() < 1e-12);
}

/// Two rooms with a neck of 0.8 m: at 0.41 m its walls change sides, no wall vanishes.
#[test]
fn a_neck_is_too_narrow() {
    let rooms = ring(&[
        (0.0, 0.0),
        (5.0, 0.0),
        (5.0, 2.6),
        (8.0, 2.6),
        (8.0, 0.0),
        (13.0, 0.0),
        (13.0, 6.0),
        (8.0, 6.0),
        (8.0, 3.4),
        (5.0, 3.4),
        (5.0, 6.0),
        (0.0, 6.0),
    ]);
    assert!(moved(&rooms, &[0.39; 12]).is_ok());
    let faults = moved(&rooms, &[0.41; 12]).unwrap_err();
    assert!(!faults.is_empty());
    for f in faults {
        assert!(matches!(f, Fault::Meet { .. }), "{f:?}");
    }
    assert!(moved(&rooms, &[0.4 - 0.5 * TOLERANCE + 1e-9; 12]).is_err());
}
