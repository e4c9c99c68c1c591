//! Which rows are the curve, and what each criterion says of a curve it does not hold for.

use super::CriterionReason::*;
use super::LoadTestCriterion::*;
use super::*;

/// Loads up to 150 kN, then plunging.
const PLUNGING: [(f64, f64); 12] = [
    (0.0, 0.0),
    (25.0, 0.5),
    (50.0, 1.2),
    (75.0, 2.0),
    (100.0, 3.0),
    (125.0, 4.5),
    (140.0, 6.5),
    (147.0, 9.0),
    (150.0, 14.0),
    (150.0, 20.0),
    (150.0, 30.0),
    (150.0, 45.0),
];

fn curve_of(rows: &[(f64, f64)]) -> Answer<Outcome> {
    answer(request(rows, json!({})))
}

/// The rows with more behind them.
fn then(rows: &[(f64, f64)], more: &[(f64, f64)]) -> Vec<(f64, f64)> {
    [rows, more].concat()
}

#[test]
fn unloading_is_kept_apart_and_changes_nothing() {
    let loaded = curve_of(&PLUNGING);
    let unloaded = curve_of(&then(&PLUNGING, &[(80.0, 43.6), (30.0, 42.4), (0.0, 41.5)]));
    assert_eq!(loaded.result.criteria, unloaded.result.criteria);
    let curve = &unloaded.result.curve;
    assert_eq!((curve.point_count, curve.later_row_count), (12, 3));
    near(
        curve.permanent_displacement.unwrap().si() * 1e3,
        41.5,
        1e-12,
    );
    assert_eq!(loaded.result.curve.permanent_displacement, None);
    assert!(!curve.peak_passed);
    near(curve.displacement_at_largest_load.si() * 1e3, 14.0, 1e-12);
    near(curve.largest_displacement.si() * 1e3, 45.0, 1e-12);
    // 25 of 150 kN
    near(curve.largest_step_ratio, 1.0 / 6.0, 1e-12);
}

#[test]
fn a_small_dip_is_part_of_the_curve_and_told() {
    // 150 to 144 kN is a dip of 4 %, 150 to 141 kN one of 6 %
    let dipped = curve_of(&then(&PLUNGING[..9], &[(144.0, 18.0), (150.5, 24.0)]));
    assert!(warns(&dipped, "load_test_load_dips"));
    assert_eq!(dipped.result.curve.later_row_count, 0);
    let text = &dipped
        .warnings
        .iter()
        .find(|w| w.code == "load_test_load_dips")
        .unwrap()
        .detail;
    assert!(text.contains("1 rows, at most 4 %"), "{text}");
    // a dip that deep and up again is another loading
    let again = then(&PLUNGING[..9], &[(141.0, 18.0), (150.5, 24.0)]);
    let place = (
        "/points/rows/10/0".to_owned(),
        "load_test_not_monotone".to_owned(),
    );
    assert_eq!(refused(request(&again, json!({}))), [place]);
}

#[test]
fn a_load_that_falls_for_good_is_a_peak() {
    let peak = curve_of(&then(
        &PLUNGING[..7],
        &[(120.0, 10.0), (100.0, 15.0), (0.0, 13.0)],
    ));
    let curve = &peak.result.curve;
    assert!(curve.peak_passed);
    assert_eq!((curve.point_count, curve.later_row_count), (7, 3));
    assert_eq!(reason(&peak, DavissonHelix), PeakPassedBefore);
    assert_eq!(peak.result.failure.kind, FailureLoadKind::Peak);
    assert_eq!(peak.result.failure.criterion, None);
    near(peak.result.failure.load.si(), 140e3, 1e-12);
    assert!(warns(&peak, "load_test_peak_passed"));
    // the last of the creep while the jack is let down is no peak
    let crept = curve_of(&then(&PLUNGING[..7], &[(120.0, 6.6), (0.0, 5.0)]));
    assert!(!crept.result.curve.peak_passed);
    assert_eq!(crept.result.failure.kind, FailureLoadKind::LowerBound);
}

#[test]
fn a_test_that_ends_early_proves_its_largest_load_and_nothing_is_extrapolated() {
    let short = curve_of(&PLUNGING[..6]);
    for name in [
        DavissonShaft,
        DavissonHelix,
        Helix5PercentGross,
        Helix8PercentNet,
    ] {
        assert_eq!(reason(&short, name), NotCarriedFarEnough);
    }
    for name in [
        Helix10PercentNet,
        Helix10PercentGross,
        BrinchHansen80,
        BrinchHansen90,
    ] {
        assert_eq!(reason(&short, name), NotCarriedFarEnough);
    }
    assert_eq!(reason(&short, ButlerHoy), NotCarriedFarEnough);
    assert_eq!(short.result.failure.kind, FailureLoadKind::LowerBound);
    near(short.result.failure.load.si(), 125e3, 1e-12);
    assert!(warns(&short, "load_test_not_to_failure"));
    // no load of a measured criterion is above the largest, however the curve ends
    for end in 4..PLUNGING.len() {
        let answer = curve_of(&PLUNGING[..=end]);
        let largest = answer.result.curve.largest_load;
        for c in &answer.result.criteria {
            let measured = c.kind == CriterionKind::Measured;
            assert!(!measured || c.load.is_none_or(|q| q <= largest), "{c:?}");
        }
    }
}

#[test]
fn what_is_told_of_a_criterion_that_is_not_reached() {
    let short = curve_of(&PLUNGING[..6]);
    // 3.8 mm + 304.8/120 mm + 125 kN x 0.025679 mm/kN = 9.5499 mm (LT-04: 2.5679 mm at 100 kN)
    let text = criterion(&short, DavissonHelix).detail.clone().unwrap();
    assert!(text.starts_with("9.549"), "{text}");
    assert!(text.contains("4.5 mm (0.1772 in) was reached"), "{text}");
    // half of 4.5 mm is 2.25 mm: 75 + 25 x 0.25 = 81.25 kN, 65 % of 125
    let text = criterion(&short, BrinchHansen90).detail.clone().unwrap();
    assert!(
        text.contains("at 50 % of the largest displacement the load is 65 %"),
        "{text}"
    );
}

#[test]
fn too_few_points_for_a_fit() {
    let few = curve_of(&PLUNGING[..5]);
    assert_eq!(reason(&few, DeBeer), TooFewPoints);
    // 50, 75 and 100 kN are at least half of the largest load
    assert_eq!(reason(&few, Chin), TooFewPoints);
    let text = criterion(&few, Chin).detail.clone().unwrap();
    assert_eq!(text, "3 points to fit, 4 needed");
}

#[test]
fn a_straight_curve_has_no_break_and_no_hyperbola() {
    let rows: Vec<_> = (0..=10)
        .map(|i| (10.0 * f64::from(i), f64::from(i)))
        .collect();
    let straight = curve_of(&rows);
    assert_eq!(reason(&straight, DeBeer), NoBreak);
    // displacement over load is the same everywhere: no load it tends to, or an absurd one
    assert!([PoorFit, NotCarriedFarEnough].contains(&reason(&straight, Chin)));
    assert_eq!(reason(&straight, BrinchHansen80), NotCarriedFarEnough);
    // 0.1 mm/kN is stiffer than 0.1428 mm/kN everywhere
    assert_eq!(reason(&straight, ButlerHoy), NotCarriedFarEnough);
    // and 0.2 mm/kN softer
    let rows: Vec<_> = rows.iter().map(|(load, s)| (*load, 2.0 * s)).collect();
    assert_eq!(reason(&curve_of(&rows), ButlerHoy), TooSoftFromTheStart);
}

#[test]
fn a_hyperbola_is_not_followed_to_more_than_twice_the_test() {
    // 250 kN is what it tends to: twice the load at s = a / b = 12.5 mm
    let until = |end: f64| {
        let all: Vec<f64> = (0..=10).map(|i| end * f64::from(i) / 10.0).collect();
        curve_of(&on_hyperbola(&all))
    };
    assert_eq!(reason(&until(12.4), Chin), NotCarriedFarEnough);
    near(found(&until(12.6), Chin).0, 250.0, 1e-9);
}

#[test]
fn points_off_the_hyperbola_are_a_poor_fit() {
    let rows = [
        (0.0, 0.0),
        (60.0, 1.0),
        (70.0, 6.0),
        (105.0, 7.0),
        (110.0, 8.0),
        (112.0, 8.5),
        (119.0, 9.0),
    ];
    let answer = curve_of(&rows);
    assert_eq!(reason(&answer, Chin), PoorFit);
    assert!(
        criterion(&answer, Chin)
            .detail
            .clone()
            .unwrap()
            .contains("0.95 needed")
    );
}

#[test]
fn a_plateau_is_an_exact_hyperbola_at_its_end() {
    let rows: Vec<_> = PLUNGING[8..].to_vec();
    let answer = curve_of(&then(&PLUNGING[..2], &rows));
    // s / Q = s / 150 on the plateau
    near(found(&answer, Chin).0, 150.0, 1e-9);
    // the upper line of De Beer is level, and level lines explain all of nothing
    let plateau = then(&PLUNGING[..4], &rows);
    let answer = curve_of(&plateau);
    let fits = &criterion(&answer, DeBeer).fits;
    assert_eq!(fits[1].determination_ratio, 1.0);
    assert!(fits[1].log_slope_ratio.unwrap().abs() < 1e-12);
}

#[test]
fn the_end_of_the_curve_is_part_of_it() {
    // 10 % of 304.8 mm gross at the very last point
    let rows = then(&PLUNGING[..9], &[(150.0, 30.48)]);
    let (load, s) = found(&curve_of(&rows), Helix10PercentGross);
    near(load, 150.0, 1e-9);
    near(s, 30.48, 1e-9);
    let short = then(&PLUNGING[..9], &[(150.0, 30.479)]);
    assert_eq!(
        reason(&curve_of(&short), Helix10PercentGross),
        NotCarriedFarEnough
    );
}

#[test]
fn load_without_movement_is_no_failure() {
    // a gauge that only reads from 40 kN on: a quarter of little takes all of the load there
    let stuck = then(&[(0.0, 0.0), (20.0, 0.0), (40.0, 0.0)], &PLUNGING[3..]);
    let answer = curve_of(&stuck);
    let (load, _) = found(&answer, BrinchHansen90);
    assert!(load > 140.0, "{load}");
    let (load, _) = found(&answer, BrinchHansen80);
    assert!(load > 140.0, "{load}");
}

#[test]
fn the_origin_is_where_every_curve_starts() {
    let with = curve_of(&PLUNGING);
    let without = curve_of(&PLUNGING[1..]);
    assert_eq!(with.result.criteria, without.result.criteria);
    assert!(!warns(&with, "load_test_origin_added") && warns(&without, "load_test_origin_added"));
    let repeated = then(&[(0.0, 0.0), (0.0, 0.0)], &PLUNGING[1..]);
    assert_eq!(with.result.criteria, curve_of(&repeated).result.criteria);
}

#[test]
fn every_fault_is_found_at_once() {
    let rows = [(0.0, 0.3), (100.0, 2.0), (120.0, 1.5), (150.0, 8.0)];
    let mut bad = request(
        &rows,
        json!({ "demand": { "level": "factored", "tension": q(20.0, "kN") },
        "design_basis": { "allowable_stress": {} } }),
    );
    bad["shaft"] = json!({ "round": { "outside_diameter": q(73.0, "mm") } });
    let found: Vec<_> = refused(bad).into_iter().collect();
    let expected = [
        ("/demand", "missing_member"),
        ("/demand/level", "basis_mixed"),
        ("/demand/tension", "load_test_other_direction"),
        ("/points/rows", "load_test_too_few_points"),
        ("/points/rows/0/1", "load_test_zero_not_set"),
        ("/points/rows/2/1", "load_test_not_monotone"),
        ("/shaft/round", "missing_member"),
    ];
    let expected = expected.map(|(p, c)| (p.to_owned(), c.to_owned()));
    assert_eq!(found, expected);
}
