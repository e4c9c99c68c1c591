//! Several tests of one site: mean, scatter, lower value, and what is not counted.

use super::*;
use crate::math;
use crate::quantity::TorqueFactor;

/// The hyperbola up to 60 mm: Davisson 86.68 kN (LT-01); with 4.334 kN m that is 20 per m.
fn with(others: &[(&str, f64)], more: Json) -> Json {
    let displacements: Vec<f64> = (0..=240).map(|i| 0.25 * f64::from(i)).collect();
    let other = |(label, factor): &(&str, f64)| json!({ "label": label, "factor": q(*factor, "per_m"), "reference": "report" });
    let others: Vec<Json> = others.iter().map(other).collect();
    let mut all = json!({
        "label": "T1", "torque": { "final_torque": q(4.334, "kN_m") }, "other_tests": others,
    });
    for (key, value) in more.as_object().unwrap() {
        all[key] = value.clone();
    }
    request(&on_hyperbola(&displacements), all)
}

fn factors(answer: &Answer<Outcome>) -> &SiteTorqueFactors {
    answer
        .result
        .site_factors
        .as_ref()
        .expect("factors of the site")
}

/// P(T <= t) by Simpson's rule over the density, whose constant comes from the same integral:
/// nothing of how the table was made.
fn student(t: f64, freedom: f64) -> f64 {
    let density = |x: f64| math::pow(1.0 + x * x / freedom, -(freedom + 1.0) / 2.0);
    let simpson = |from: f64, to: f64, pieces: u32| {
        let h = (to - from) / f64::from(pieces);
        let inner = (1..pieces).map(|i| {
            let weight = if i % 2 == 1 { 4.0 } else { 2.0 };
            weight * density(from + h * f64::from(i))
        });
        h / 3.0 * (density(from) + inner.sum::<f64>() + density(to))
    };
    // the far tail by x = 1/y
    let tail = |from: f64| {
        let pieces = 20_000;
        let h = 1.0 / from / f64::from(pieces);
        let at = |y: f64| {
            if y == 0.0 {
                0.0
            } else {
                density(1.0 / y) / (y * y)
            }
        };
        let inner = (1..pieces).map(|i| {
            let weight = if i % 2 == 1 { 4.0 } else { 2.0 };
            weight * at(h * f64::from(i))
        });
        h / 3.0 * (inner.sum::<f64>() + at(1.0 / from))
    };
    let half = simpson(0.0, t, 20_000) + tail(t);
    0.5 + 0.5 * simpson(0.0, t, 20_000) / half
}

#[test]
fn the_quantiles_are_those_of_student() {
    for tests in 3..=21 {
        let t = scatter::quantile(tests).expect("in the table");
        let p = student(t, tests as f64 - 1.0);
        assert!((p - 0.95).abs() < 1e-8, "{tests}: {p}");
    }
    assert_eq!(scatter::quantile(2), None);
    assert_eq!(scatter::quantile(22), None);
}

#[test]
fn two_tests_have_a_scatter_and_no_lower_value() {
    let answer = answer(with(&[("T0", 24.0)], json!({})));
    let of = factors(&answer);
    assert_eq!((of.test_count, of.this_test_counted), (2, true));
    // 20 and 24 per m: mean 22, deviation sqrt(8)
    near(of.mean.si(), 22.0, 1e-4);
    near(of.standard_deviation.unwrap().si(), 8f64.sqrt(), 1e-3);
    near(of.variation_ratio.unwrap(), 8f64.sqrt() / 22.0, 1e-3);
    near(of.least.si(), 20.0, 3e-4);
    near(of.greatest.si(), 24.0, 1e-12);
    assert_eq!(of.lower, None);
    assert!(warns(&answer, "site_torque_factor_of_few_tests"));
    assert!(!warns(&answer, "site_torque_factor_of_one_test"));
    assert_eq!(of.other_tests[0].label.as_str(), "T0");
}

#[test]
fn three_tests_have_a_lower_value_of_their_mean() {
    let answer = answer(with(&[("A", 22.0), ("B", 24.0)], json!({})));
    let of = factors(&answer);
    // 20, 22, 24: mean 22, deviation 2; 22 - 2.919986 x 2 / sqrt(3) = 18.6283
    near(of.mean.si(), 22.0, 1e-4);
    near(of.standard_deviation.unwrap().si(), 2.0, 1e-3);
    let lower = of.lower.as_ref().unwrap();
    near(lower.factor.si(), 18.6283, 2e-4);
    assert_eq!(lower.confidence_ratio, 0.95);
    assert_eq!(lower.method, LowerMeanMethod::StudentTOneSided);
    assert!(!warns(&answer, "site_torque_factor_of_few_tests"));
    assert!(!warns(&answer, "site_torque_factors_scatter"));
    // the same tests in another order are the same site
    let turned = super::answer(with(&[("B", 24.0), ("A", 22.0)], json!({})));
    near(factors(&turned).mean.si(), of.mean.si(), 1e-12);
}

#[test]
fn scatter_is_told_and_a_lower_value_below_nil_is_none() {
    // 20, 20 and 34 per m: deviation 8.08, coefficient of variation 0.328
    let wide = answer(with(&[("A", 20.0), ("B", 34.0)], json!({})));
    assert!(warns(&wide, "site_torque_factors_scatter"));
    assert!(factors(&wide).lower.is_some());
    // 20, 1 and 60: mean 27, deviation 30.1
    let wild = answer(with(&[("A", 1.0), ("B", 60.0)], json!({})));
    assert!(warns(&wild, "site_torque_factor_without_lower_value"));
    assert_eq!(factors(&wild).lower, None);
}

#[test]
fn a_lower_bound_is_not_counted() {
    // nothing of the first 3 mm meets Davisson
    let mut short = with(&[("A", 22.0), ("B", 24.0)], json!({}));
    let rows = short["points"]["rows"].as_array().unwrap()[..12].to_vec();
    short["points"]["rows"] = json!(rows);
    let bound = answer(short.clone());
    assert!(bound.result.torque_factor.as_ref().unwrap().lower_bound);
    let of = factors(&bound);
    assert_eq!((of.test_count, of.this_test_counted), (2, false));
    near(of.mean.si(), 23.0, 1e-12);
    assert!(warns(&bound, "site_torque_factor_not_counted"));
    short["failure_criterion"] = json!("butler_hoy");
    let open = answer(short);
    assert_eq!(open.result.torque_factor, None);
    assert!(!factors(&open).this_test_counted);
}

#[test]
fn faults_of_the_other_tests() {
    let place = |p: &str, c: &str| (p.to_owned(), c.to_owned());
    let twice = with(&[("A", 22.0), ("A", 24.0), ("T1", 23.0)], json!({}));
    let found = refused(twice);
    assert_eq!(
        found,
        [
            place("/other_tests/1/label", "duplicate_label"),
            place("/other_tests/2/label", "duplicate_label")
        ]
    );
    let mut without = with(&[("A", 22.0)], json!({}));
    without.as_object_mut().unwrap().remove("torque");
    assert_eq!(refused(without), [place("", "missing_member")]);
}

/// Of many sites drawn at random from a normal distribution with a scatter of 15 %, the lower
/// value is below the true mean in 95 of a hundred: the name of the method is what it does.
#[test]
fn the_lower_value_is_below_the_true_mean_in_its_share_of_sites() {
    let mut state = 7_u64;
    let mut uniform = || {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((state >> 11) as f64 + 0.5) / (1_u64 << 53) as f64
    };
    let mut normal = || {
        let radius = (-2.0 * math::ln(uniform())).sqrt();
        radius * math::cos(2.0 * math::PI * uniform())
    };
    let mut off = Trace::off();
    for tests in [3_usize, 5, 12] {
        let below = (0..20_000).filter(|_| {
            let all: Vec<TorqueFactor> = (0..tests)
                .map(|_| TorqueFactor::from_si(25.0 * (1.0 + 0.15 * normal())))
                .collect();
            let mean = scatter::mean(&all, &mut off);
            let deviation = scatter::standard_deviation(&all, mean, &mut off);
            let t = scatter::quantile(tests).unwrap();
            scatter::lower_mean(mean, deviation, tests, t, &mut off).si() < 25.0
        });
        let share = below.count() as f64 / 20_000.0;
        // four standard errors of a share of 0.95 in 20,000
        assert!((share - 0.95).abs() < 0.0062, "{tests}: {share}");
    }
}
