//! Random lines: the stiffness method against the three-moment equation, springs against
//! rigid supports, extremes against samples.

use proptest::prelude::*;

use super::{line, support_moments, uniform};
use crate::beam::{
    ABREAST, Extremes, Factors, Known, Piece, Pieces, Shape, Spot, Support, solve, three_moment,
};

prop_compose! {
    fn random_line()(
        gaps in proptest::collection::vec(0.4f64..6.0, 1..9),
        over in (0.0f64..1.5, 0.0f64..1.5),
        spreads in proptest::collection::vec((0.0f64..1.0, 0.0f64..1.0, -20e3f64..40e3, -20e3f64..40e3), 0..4),
        points in proptest::collection::vec((0.0f64..1.0, -30e3f64..60e3), 0..4),
        base in 1e3f64..30e3,
    ) -> (f64, Vec<f64>, Vec<Shape>) {
        let mut supports = vec![over.0];
        for g in gaps {
            supports.push(supports[supports.len() - 1] + g);
        }
        let length = supports[supports.len() - 1] + over.1;
        let mut loads = vec![uniform(length, base)];
        for (a, b, start, end) in spreads {
            let (from, to) = (a.min(b) * length, a.max(b) * length);
            if to - from > 1e-3 {
                loads.push(Shape::Spread { from, to, start, end });
            }
        }
        loads.extend(points.into_iter().map(|(a, force)| Shape::Point { at: a * length, force }));
        (length, supports, loads)
    }
}

proptest! {
    /// The stiffness method against the three-moment equation, written separately.
    #[test]
    fn agrees_with_the_three_moment_equation((length, supports, loads) in random_line()) {
        let held: Vec<_> = supports.iter().map(|x| (*x, Support::Rigid)).collect();
        let s = solve(&line(length, &held, 4.2e7, loads.clone())).unwrap();
        let (reactions, moments) = three_moment::rigid_line(length, &supports, &loads);
        let scale: f64 = reactions.iter().map(|r| r.abs()).fold(1.0, f64::max);
        for (a, b) in s.reaction.iter().zip(&reactions) {
            prop_assert!((a - b).abs() <= 1e-9 * scale, "{a} {b}");
        }
        let own = support_moments(&s);
        let scale: f64 = moments.iter().map(|m| m.abs()).fold(1.0, f64::max);
        for (i, (a, b)) in own.iter().zip(&moments).enumerate() {
            prop_assert!((a - b).abs() <= 1e-9 * scale, "{i}: {a} {b}");
        }
    }

    /// Springs that hardly give are rigid supports; the total is carried by any springs.
    #[test]
    fn stiff_springs_are_rigid((length, supports, loads) in random_line(), k in 4.0f64..8.0) {
        let rigid: Vec<_> = supports.iter().map(|x| (*x, Support::Rigid)).collect();
        let stiff: Vec<_> = supports.iter().map(|x| (*x, Support::Spring(1e16))).collect();
        let soft: Vec<_> =
            supports.iter().map(|x| (*x, Support::Spring(crate::math::pow(10.0, k)))).collect();
        let a = solve(&line(length, &rigid, 4.2e7, loads.clone())).unwrap();
        let b = solve(&line(length, &stiff, 4.2e7, loads.clone())).unwrap();
        let c = solve(&line(length, &soft, 4.2e7, loads)).unwrap();
        let scale: f64 = a.reaction.iter().map(|r| r.abs()).fold(1.0, f64::max);
        for (x, y) in a.reaction.iter().zip(&b.reaction) {
            prop_assert!((x - y).abs() <= 1e-4 * scale, "{x} {y}");
        }
        let (ta, tc): (f64, f64) = (a.reaction.iter().sum(), c.reaction.iter().sum());
        prop_assert!((ta - tc).abs() <= 1e-9 * scale);
        for (node, x) in c.deflection.iter().enumerate() {
            prop_assert!((x * crate::math::pow(10.0, k) - c.reaction[node]).abs() <= 1e-7 * scale);
        }
    }

    /// Many combinations at once give what each gives alone, to the last bit.
    #[test]
    fn together_as_alone(
        (length, supports, loads) in random_line(),
        factors in proptest::collection::vec([-2.0f64..2.0, 0.0f64..2.0, -1.0f64..1.0], 0..7),
    ) {
        let held: Vec<_> = supports.iter().map(|x| (*x, Support::Rigid)).collect();
        let mut network = line(length, &held, 4.2e7, loads);
        network.cases = 3;
        for (i, load) in network.lines[0].loads.iter_mut().enumerate() {
            load.case = i % 3;
        }
        let s = solve(&network).unwrap();
        let (own, line) = (&s.lines[0], &network.lines[0]);
        let mut together = vec![Vec::new(); factors.len()];
        let all = Factors::new(factors.iter().map(|f| f.as_slice()), 3);
        own.walk_together(line, &all, |these, pieces, ends| {
            for (i, c) in these.enumerate() {
                together[c].push((pieces.piece(i), (ends.shear[i], ends.moment[i])));
            }
        });
        for (f, found) in factors.iter().zip(together) {
            let mut alone = Vec::new();
            own.walk(line, f, |piece| alone.push((piece, piece.at_end())));
            prop_assert_eq!(found, alone);
        }
    }

    /// Pieces that are taken to be within known extremes have no value beyond them, and several
    /// are within where each of them is.
    #[test]
    fn what_is_within_has_nothing_beyond(
        lanes in proptest::collection::vec(
            (-4.0f64..4.0, -1.0f64..1.0, 0.0f64..8.0, 0.0f64..8.0, 0u8..4),
            ABREAST,
        ),
        known in proptest::collection::vec((-0.5f64..3.0, -3.0f64..0.5, 0.0f64..12.0), ABREAST),
        count in 0..=ABREAST,
        long in 0.1f64..2.0,
    ) {
        let of = |get: &dyn Fn(usize) -> f64| std::array::from_fn::<f64, ABREAST, _>(get);
        let sign = |i: usize| if lanes[i].4 == 0 { -1.0 } else { 1.0 };
        let pieces = Pieces {
            from: 1.0,
            to: 1.0 + long,
            shear: of(&|i| lanes[i].0),
            moment: of(&|i| lanes[i].1),
            start: of(&|i| sign(i) * lanes[i].2),
            end: of(&|i| if lanes[i].4 > 1 { sign(i) * lanes[i].2 } else { lanes[i].3 }),
        };
        let ends = pieces.ends();
        let spot = |value| Spot { value, at: 0.0 };
        let mut all = Known::nothing(count);
        let mut each = true;
        for (i, (highest, lowest, most)) in known.into_iter().enumerate().take(count) {
            let e = Extremes {
                highest_moment: spot(highest),
                lowest_moment: spot(lowest),
                shear: spot(most),
            };
            let piece = pieces.piece(i);
            prop_assert_eq!(piece.at_end(), (ends.shear[i], ends.moment[i]));
            all.note(i, &e);
            let mut own = Some(e);
            let within = *piece.widen(piece.at_end(), &mut own) == e;
            each &= within;
            let mut samples = (0..=50).map(|k| long * f64::from(k) / 50.0);
            let inside = samples.all(|x| {
                let (v, m) = (piece.shear_at(x), piece.moment_at(x));
                v.abs() <= most && lowest <= m && m <= highest
            });
            prop_assert!(inside || !within, "{:?}", piece);
        }
        if pieces.within(&ends, &all) {
            prop_assert!(each);
        }
        prop_assert!(count == 0 || !pieces.within(&ends, &Known::nothing(count)));
        let one_sign = (0..ABREAST).all(|i| pieces.start[i] * pieces.end[i] >= 0.0);
        prop_assert_eq!(pieces.within(&ends, &Known::nothing(0)), one_sign);
    }

    /// The extreme is no lower than any of a thousand samples, and not above a near one.
    #[test]
    fn extremes_bound_every_sample((length, supports, loads) in random_line()) {
        let held: Vec<_> = supports.iter().map(|x| (*x, Support::Rigid)).collect();
        let network = line(length, &held, 4.2e7, loads);
        let s = solve(&network).unwrap();
        let e = s.lines[0].extremes(&network.lines[0], &[1.0]).unwrap();
        let (mut hi, mut lo) = (f64::MIN, f64::MAX);
        s.lines[0].walk(&network.lines[0], &[1.0], |p| {
            for i in 0..=100 {
                let m = p.moment_at((p.to - p.from) * f64::from(i) / 100.0);
                hi = hi.max(m);
                lo = lo.min(m);
            }
        });
        let scale = hi.abs().max(lo.abs()).max(1.0);
        prop_assert!(e.highest_moment.value >= hi - 1e-9 * scale);
        prop_assert!(e.lowest_moment.value <= lo + 1e-9 * scale);
        prop_assert!(e.highest_moment.value <= hi + 1e-3 * scale);
        prop_assert!(e.lowest_moment.value >= lo - 1e-3 * scale);
    }
}

/// Load that changes its sign within a piece: the shear is extreme where the load is nil. With 4 N/m
/// down at the start and up at the end of 2 m and no shear at the start V = -4 x + 2 x2, nil at
/// both ends and -2 N in the middle (dV/dx = -q).
#[test]
fn shear_is_extreme_where_the_load_changes_its_sign() {
    let piece = Piece {
        from: 1.0,
        to: 3.0,
        shear: 0.0,
        moment: 0.0,
        start: 4.0,
        end: -4.0,
    };
    let mut found = None;
    piece.widen(piece.at_end(), &mut found);
    let shear = found.unwrap().shear;
    assert_eq!((shear.value, shear.at), (-2.0, 2.0));
    assert_eq!(piece.zero_load(), Some(1.0));
    let down = Piece { end: 1.0, ..piece };
    assert_eq!(down.zero_load(), None);
}
