//! Criteria against their closed forms on a hyperbola whose points hold the solution, to a
//! part in 1e9, and how far off they are when the points do not.

use super::LoadTestCriterion::*;
use super::*;

const EXACT: f64 = 1e-9;

/// 0 to the end in equal steps with these between them, sorted.
fn displacements(end: f64, steps: usize, more: &[f64]) -> Vec<f64> {
    let mut all: Vec<f64> = (0..=steps).map(|i| end * i as f64 / steps as f64).collect();
    all.extend(more);
    all.sort_by(f64::total_cmp);
    all
}

/// Where the hyperbola meets s = x + c Q: b s2 + (a - b x - c) s - a x = 0.
fn on_line(x: f64, c: f64) -> f64 {
    let middle = A - B * x - c;
    ((middle * middle + 4.0 * B * A * x).sqrt() - middle) / (2.0 * B)
}

/// Compliance of the shaft of LT-01: L / (A E), A = pi (73 - 5.51) 5.51 mm2, in mm/kN.
fn compliance() -> f64 {
    6000.0 / (crate::math::PI * (73.0 - 5.51) * 5.51 * 200.0)
}

#[test]
fn lines_are_met_where_algebra_says() {
    let c = compliance();
    // 3.8 mm + D/120; shares of the one helix of 304.8 mm; net ones beside the elastic line
    let lines = [
        (DavissonShaft, 3.8 + 73.0 / 120.0, c),
        (DavissonHelix, 3.8 + 304.8 / 120.0, c),
        (Helix5PercentGross, 0.05 * 304.8, 0.0),
        (Helix8PercentNet, 0.08 * 304.8, c),
        (Helix10PercentNet, 0.10 * 304.8, c),
        (Helix10PercentGross, 0.10 * 304.8, 0.0),
    ];
    let met: Vec<f64> = lines.iter().map(|(_, x, c)| on_line(*x, *c)).collect();
    let all = displacements(60.0, 20, &met);
    let answer = answer(request(&on_hyperbola(&all), json!({})));
    for ((name, x, _), s) in lines.iter().zip(met) {
        let (load, at) = found(&answer, *name);
        near(at, s, EXACT);
        near(load, hyperbola(s), EXACT);
        near(
            criterion(&answer, *name).offset.unwrap().si() * 1e3,
            *x,
            EXACT,
        );
    }
}

#[test]
fn brinch_hansen_and_chin_are_those_of_the_hyperbola() {
    // Q(s/4) = 0.8 Q(s) at 11 a/b, Q(s/2) = 0.9 Q(s) at 8 a/b; loads 11/(12 b) and 8/(9 b)
    let (s80, s90) = (11.0 * A / B, 8.0 * A / B);
    let all = displacements(150.0, 30, &[s80, s80 / 4.0, s90, s90 / 2.0]);
    let answer = answer(request(&on_hyperbola(&all), json!({})));
    let (load, s) = found(&answer, BrinchHansen80);
    near(s, s80, EXACT);
    near(load, 11.0 / (12.0 * B), EXACT);
    let (load, s) = found(&answer, BrinchHansen90);
    near(s, s90, EXACT);
    near(load, 8.0 / (9.0 * B), EXACT);
    let chin = criterion(&answer, Chin);
    near(chin.load.unwrap().si() / 1e3, 1.0 / B, EXACT);
    near(chin.fits[0].determination_ratio, 1.0, EXACT);
    assert_eq!(chin.kind, CriterionKind::Extrapolated);
    assert_eq!(chin.displacement, None);
}

#[test]
fn butler_and_hoy_meet_where_the_tangents_do() {
    // slope m = 0.05 in per 2,000 lbf, in mm/kN; the hyperbola has it at Q_t = (1 - sqrt(a/m))/b
    let m = 0.05 * 25.4 / (2.0 * 4.448_221_615_260_5);
    let q_t = (1.0 - (A / m).sqrt()) / B;
    let s_t = A * q_t / (1.0 - B * q_t);
    let expected = (m * q_t - s_t) / (m - A);
    // a point so near to the origin that its chord is the first tangent
    let all = displacements(30.0, 12, &[1e-9, s_t]);
    let rows = on_hyperbola(&all);
    let answer = answer(request(&rows, json!({})));
    let (load, s) = found(&answer, ButlerHoy);
    near(load, expected, EXACT);
    // the displacement is that of the curve, not that of the construction
    let at = rows.iter().position(|r| r.0 >= load).unwrap();
    let (before, after) = (rows[at - 1], rows[at]);
    let between = before.1 + (load - before.0) / (after.0 - before.0) * (after.1 - before.1);
    near(s, between, EXACT);
}

#[test]
fn de_beer_finds_the_break_of_two_power_laws() {
    // Q = 10 s^0.9 up to s = 8 mm, from there with the power 0.2
    let curve = |s: f64| match s <= 8.0 {
        true => 10.0 * crate::math::pow(s, 0.9),
        false => 10.0 * crate::math::pow(8.0, 0.9) * crate::math::pow(s / 8.0, 0.2),
    };
    let stops = [0.5, 1.0, 2.0, 4.0, 6.0, 12.0, 20.0, 30.0, 50.0];
    let rows: Vec<_> = stops.iter().map(|s| (curve(*s), *s)).collect();
    let answer = answer(request(&rows, json!({})));
    let (load, s) = found(&answer, DeBeer);
    near(load, curve(8.0), EXACT);
    // the break lies between two points, so the measured curve is softer there
    assert!(s > 8.0 && s < 12.0, "{s}");
    let fits = &criterion(&answer, DeBeer).fits;
    assert_eq!((fits[0].point_count, fits[1].point_count), (5, 4));
    near(fits[0].log_slope_ratio.unwrap(), 0.9, EXACT);
    near(fits[1].log_slope_ratio.unwrap(), 0.2, EXACT);
    near(fits[1].determination_ratio, 1.0, EXACT);
}

/// Straight lines between points of a smooth curve: half the step, a quarter of the error.
#[test]
fn the_error_of_sampling_falls_with_the_square_of_the_step() {
    let exact = hyperbola(on_line(3.8 + 73.0 / 120.0, compliance()));
    let worst = |step: f64| {
        let offs = (1..20).map(|i| {
            // shifted grids, so that no chance point on the solution flatters
            let shift = step * f64::from(i) / 20.0;
            let mut all = vec![0.0];
            all.extend((0..30).map(|k| shift + step * f64::from(k)));
            let answer = answer(request(&on_hyperbola(&all), json!({})));
            (found(&answer, DavissonShaft).0 / exact - 1.0).abs()
        });
        offs.fold(0.0, f64::max)
    };
    let (coarse, fine) = (worst(1.0), worst(0.5));
    assert!(coarse < 3e-3, "{coarse}");
    assert!((3.0..5.0).contains(&(coarse / fine)), "{coarse} {fine}");
}
