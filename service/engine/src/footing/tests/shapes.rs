//! Shapes against each other, and the places where a theory changes its form: D = B, 10
//! degrees, phi = 0, rows of a table.

use proptest::prelude::*;

use super::properties::{Case, DRAINED, case};
use super::*;
use crate::bearing::shape_depth::k_hansen;
use crate::bearing::terzaghi_width::{TERZAGHI_NGAMMA, ngamma_terzaghi};
use crate::footing::FootingMethod;
use crate::quantity::{Angle, AngleUnit};

fn shaped(case: &Case, shape: usize) -> Vec<crate::footing::FootingCapacity> {
    case.with(|c| c.shape = shape).capacities()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    /// A circle bears the pressure of a square but for Terzaghi's width term, which is 0.6 of
    /// the strip's against 0.8.
    #[test]
    fn circle_and_square(case in case()) {
        for (square, circle) in shaped(&case, 2).iter().zip(shaped(&case, 3)) {
            if square.method == FootingMethod::Terzaghi1943 {
                prop_assert_eq!(square.cohesion_term, circle.cohesion_term);
                prop_assert_eq!(square.overburden_term, circle.overburden_term);
                let (s, c) = (square.width_term.pressure.si(), circle.width_term.pressure.si());
                prop_assert!((c - 0.75 * s).abs() <= 1e-12 * s);
            } else {
                prop_assert_eq!(square.ultimate_gross, circle.ultimate_gross);
            }
            let area = circle.ultimate_load.gross.unwrap().si() / circle.ultimate_gross.si();
            let expected = crate::math::PI / 4.0 * case.width * case.width;
            prop_assert!((area - expected).abs() <= 1e-12 * expected);
        }
    }

    /// A strip is the limit of a long rectangle, a square that of a short one.
    #[test]
    fn strip_and_square_are_limits(case in case()) {
        let narrow = case.with(|c| {
            c.width = 0.2;
            c.length = 1000.0;
            c.depth = c.depth.min(1.0);
        });
        for (long, strip) in shaped(&narrow, 1).iter().zip(shaped(&narrow, 0)) {
            let (a, b) = (long.ultimate_gross.si(), strip.ultimate_gross.si());
            prop_assert!((a - b).abs() <= 1e-3 * b, "{a} {b}");
        }
        let short = case.with(|c| c.length = c.width);
        for (rectangle, square) in shaped(&short, 1).iter().zip(shaped(&short, 2)) {
            let (a, b) = (rectangle.ultimate_gross.si(), square.ultimate_gross.si());
            prop_assert!((a - b).abs() <= 1e-12 * b);
        }
    }

    /// Between two rows the tabled factor stays between them, grows, and lies below the
    /// straight line.
    #[test]
    fn tabled_factor_between_rows(phi in 0.0_f64..44.9, step in 0.001_f64..0.1) {
        let at = |deg: f64| ngamma_terzaghi(Angle::new(deg, AngleUnit::Deg), &mut Trace::off()).value;
        prop_assert!(at(phi + step) > at(phi));
        let rows = TERZAGHI_NGAMMA.value;
        let pair = rows.windows(2).find(|pair| phi < pair[1][0]).unwrap();
        let ([a, low], [b, high]) = (pair[0], pair[1]);
        let straight = low + (high - low) * (phi - a) / (b - a);
        prop_assert!(at(phi) <= straight * (1.0 + 1e-9) + 1e-12, "{} {straight}", at(phi));
        prop_assert!(at(phi) >= low - 1e-12);
    }
}

/// Own arithmetic: sqrt(100.4 x 297.5) = 172.825 half way from 40 to 45 degrees, where a
/// straight line would give 198.95.
#[test]
fn tabled_factor_half_way() {
    let mut trace = Trace::off();
    let half = ngamma_terzaghi(Angle::new(42.5, AngleUnit::Deg), &mut trace);
    near(half.value, 172.825, 0.001);
    assert!(half.interpolated);
    // below the first row with a value it is straight
    let low = ngamma_terzaghi(Angle::new(2.0, AngleUnit::Deg), &mut trace);
    near(low.value, 0.2, 1e-9);
}

/// The published measure of depth falls from 1 to pi/4 at D = B, also where D = B comes out
/// of two units.
#[test]
fn depth_measure_falls_at_one_width() {
    let k = |ratio| k_hansen(ratio, &mut Trace::off());
    near(k(0.999), 0.999, 1e-9);
    near(k(1.0), crate::math::PI / 4.0, 1e-9);
    near(k(1.0 - 1e-12), crate::math::PI / 4.0, 1e-9);
    near(k(1.557_407_724_654_902_3), 1.0, 1e-9);
    let at = |depth: f64, method: &str| {
        answer(json!({
            "methods": [method],
            "footing": { "shape": { "strip": { "width": q(3.0, "ft") } }, "depth": q(depth, "in") },
            "soil": { "strength": { "drained": { "friction_angle": q(30.0, "deg") } },
                      "unit_weight": q(18.0, "kN_per_m3") },
        }))
    };
    for method in ["hansen_1970", "vesic_1973"] {
        let (shallower, deeper) = (at(35.9, method), at(36.0, method));
        let gross = |a: &Answer<Outcome>| kpa(a.result.capacities[0].ultimate_gross);
        assert!(gross(&deeper) < gross(&shallower));
        assert!(warns(&shallower, "footing_depth_factor_falls"));
        assert!(warns(&deeper, "footing_depth_factor_falls"));
        assert!(!warns(&at(28.0, method), "footing_depth_factor_falls"));
        assert!(!warns(&at(57.0, method), "footing_depth_factor_falls"));
    }
    assert!(!warns(
        &at(36.0, "meyerhof_1963"),
        "footing_depth_factor_falls"
    ));
}

/// phi = 0 and a very small phi agree within 6 % in every theory: Hansen and Vesic add their
/// factors at phi = 0 and multiply them above (own arithmetic: 1.195 x 1.4 = 1.673 against
/// 1.6 for a square at D near B).
#[test]
fn small_friction_and_none() {
    let at = |phi: f64| {
        answer(json!({
            "methods": DRAINED,
            "footing": { "shape": { "square": { "width": q(1.0, "m") } }, "depth": q(0.99, "m") },
            "soil": { "strength": { "drained": {
                "friction_angle": q(phi, "deg"), "cohesion": q(50.0, "kPa") } },
                "unit_weight": q(18.0, "kN_per_m3") },
        }))
    };
    let (none, small) = (at(0.0), at(1e-4));
    for (a, b) in none.result.capacities.iter().zip(&small.result.capacities) {
        let (a, b) = (kpa(a.ultimate_gross), kpa(b.ultimate_gross));
        assert!(b >= a && b <= 1.06 * a, "{a} {b}");
    }
    assert!(warns(&small, "footing_low_friction"));
    assert!(!warns(&none, "footing_low_friction"));
}
