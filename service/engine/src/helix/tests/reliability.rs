//! The estimate of reliability: published rows, conditions of the statistics, sources of the
//! safety factor.

use serde_json::{Value as Json, json};

use super::examples::answer_to;
use super::*;
use crate::helix::reliability_equations::{Scatter, failure_probability, reliability_index};
use crate::helix::{
    PublishedRatio, PublishedStatistic, ReliabilityEstimate, ReliabilityOutcome, SafetyFrom,
    StatisticDirection,
};

fn estimate(a: &Answer<Outcome>) -> &ReliabilityOutcome {
    a.result.reliability.as_ref().expect("an estimate")
}

fn down(a: &Answer<Outcome>) -> &ReliabilityEstimate {
    estimate(a).compression.as_ref().expect("in compression")
}

fn up(a: &Answer<Outcome>) -> &ReliabilityEstimate {
    estimate(a).tension.as_ref().expect("in tension")
}

/// ST-01 (arithmetic of the formula): FS 2, b_S 1, V_S 0.15; b_R, V_R; beta, p_f; within 1 %.
#[test]
fn st_01_index_and_probability() {
    for (name, bias, cov, beta, p_f) in [
        ("st-01", 1.49, 0.395, 2.52, 0.005_87),
        ("st-01-default", 1.0, 0.4, 1.525, 0.0636),
        ("st-01-lesser-scatter", 1.0, 0.3, 2.008, 0.0223),
        ("st-01-arithmetic", 1.15, 0.14, 4.088, 2.2e-5),
    ] {
        let a = answer_to(name);
        let r = estimate(&a);
        assert_eq!((r.load_bias_factor, r.load_cov_ratio), (1.0, 0.15));
        near(r.statistic.bias_factor, bias, 1e-9);
        near(r.statistic.cov_ratio, cov, 1e-9);
        let e = down(&a);
        near(e.central_safety_factor, 2.0, 1e-9);
        assert_eq!(e.safety_from, SafetyFrom::DesignBasis);
        near(e.reliability_index_ratio, beta, 1.0);
        near(e.failure_probability_ratio, p_f, 1.0);
        assert!(warns(&a, "reliability_indicative") && used(&a, "helix_reliability"));
        assert!(r.tension.is_none());
    }
    // the remembered bias is never the default
    let a = answer_to("st-01-default");
    assert_eq!(estimate(&a).statistic.name, "default");
    assert!(!estimate(&a).statistic.from_request);
}

/// ST-02 (verified abstracts): the printed figures, and the ones that follow from them.
#[test]
fn st_02_published_statistics() {
    let a = answer_to("st-02");
    let list = &estimate(&a).published_statistics;
    let of = |name: &str| -> &PublishedStatistic {
        list.iter()
            .find(|s| s.name == name)
            .unwrap_or_else(|| panic!("{name}"))
    };
    let giampa = of("giampa_2016");
    assert_eq!(giampa.printed_mean_ratio, Some(1.15));
    assert_eq!(giampa.cov_ratio, Some(0.14));
    assert_eq!(giampa.given_as, PublishedRatio::CalculatedOverMeasured);
    near(giampa.bias_factor.unwrap(), 0.87, 0.1);
    let jmse = of("jmse_2020_finite_element");
    assert_eq!(jmse.printed_mean_ratio, Some(1.02));
    assert_eq!((jmse.cov_ratio, jmse.bias_factor), (Some(0.1), Some(1.02)));
    assert!(!jmse.selectable);
    for (name, lowest, highest) in [
        ("tang_phoon_2020_stiff_clay", 0.8, 1.0),
        ("tang_phoon_2020_dense_sand", 0.6, 0.8),
        ("fhwa_driven_piles", 0.12, 8.88),
    ] {
        let s = of(name);
        assert_eq!(s.lowest_ratio, Some(lowest), "{name}");
        assert_eq!(s.highest_ratio, Some(highest), "{name}");
        assert!(!s.selectable);
    }
    let driven = of("fhwa_driven_piles");
    assert_eq!(driven.printed_mean_ratio, Some(1.48));
    near(driven.bias_factor.unwrap(), 0.68, 1.0);
    // a bias stands where the ratio is of measured and calculated, and nowhere else
    for s in list {
        let of_resistances = s.given_as != PublishedRatio::UpliftOverCompression;
        assert_eq!(s.bias_factor.is_some(), of_resistances, "{}", s.name);
    }
    // used inverted: FS 2 with 0.87 and 0.14 gives 2.72, not the 4.09 of 1.15
    let statistic = &estimate(&a).statistic;
    assert_eq!(
        statistic.given_as,
        StatisticDirection::CalculatedOverMeasured
    );
    assert_eq!(statistic.printed_mean_ratio, 1.15);
    near(statistic.bias_factor, 1.0 / 1.15, 1e-9);
    near(up(&a).reliability_index_ratio, 2.72, 0.2);
    assert!(warns(&a, "statistic_of_another_method"));
}

fn in_sand(degrees: f64, depth: f64, more: Json) -> Json {
    let mut request = json!({
        "soil": soil(&[(8.0, 19.0, sand(degrees))]), "pile": pile(0.073, &[(0.3, depth)]),
        "design_basis": { "allowable_stress": {} },
        "reliability": { "statistic": { "published": { "name": "giampa_2016" } } },
    });
    for (name, value) in more.as_object().unwrap() {
        request[name] = value.clone();
    }
    request
}

#[test]
fn a_published_statistic_is_refused_where_it_does_not_apply() {
    let stops = |request: Json| {
        let refused = refusable(request).unwrap_err();
        assert_eq!(
            codes(&refused),
            [(
                "/reliability/statistic/published/name",
                "statistic_does_not_apply"
            )]
        );
        refused.issues[0].detail.clone()
    };
    let none = json!({});
    assert!(stops(in_sand(39.0, 1.0, none.clone())).contains("40 degrees"));
    assert!(stops(in_sand(42.0, 4.0, none.clone())).contains("shallow"));
    assert!(stops(in_sand(42.0, 1.0, json!({ "directions": "compression" }))).contains("pulled"));
    // in both directions it is given to the one it holds for
    let a = refusable(in_sand(42.0, 1.0, none)).unwrap();
    assert!(estimate(&a).compression.is_none() && estimate(&a).tension.is_some());
    assert!(warns(&a, "reliability_not_estimated"));
    // a mode that does not govern
    let wrong = |name: &str, spacing: f64| {
        json!({
            "soil": soil(&[(12.0, 18.0, clay(50.0))]),
            "pile": pile(0.0889, &[(0.35, 5.0), (0.35, 5.0 + spacing)]),
            "directions": "tension", "design_basis": { "allowable_stress": {} },
            "reliability": { "statistic": { "published": { "name": name } } },
        })
    };
    let (bearing, cylinder) = (
        "hoyt_clemence_1989_individual_bearing",
        "hoyt_clemence_1989_cylindrical_shear",
    );
    assert!(stops(wrong(bearing, 0.4)).contains("does not govern"));
    assert!(stops(wrong(cylinder, 2.0)).contains("does not govern"));
    for (name, spacing, mean) in [(bearing, 2.0, 1.56), (cylinder, 0.4, 1.5)] {
        let a = answer(wrong(name, spacing));
        assert_eq!(estimate(&a).statistic.bias_factor, mean);
        let remembered = a.warnings.iter().any(|w| w.detail.starts_with(name));
        assert!(remembered, "{name} is from memory");
    }
}

#[test]
fn the_safety_factor_comes_from_the_load_before_the_basis() {
    let ask = |more: Json| {
        let mut request = json!({
            "soil": soil(&[(12.0, 18.0, clay(150.0))]),
            "pile": pile(0.0889, &[(0.3556, 5.0), (0.3048, 6.1)]), "reliability": {},
        });
        for (name, value) in more.as_object().unwrap() {
            request[name] = value.clone();
        }
        request
    };
    // P_u 215.819 kN, see CD-05
    let demand = json!({ "level": "allowable", "compression": q(100.0, "kN") });
    let a = answer(ask(
        json!({ "design_basis": { "allowable_stress": {} }, "demand": demand }),
    ));
    near(down(&a).central_safety_factor, 2.158_193_83, 1e-6);
    assert_eq!(down(&a).safety_from, SafetyFrom::UnfactoredLoad);
    // no load pulls: the factor of the basis, 3 by the general clause
    near(up(&a).central_safety_factor, 3.0, 1e-9);
    assert_eq!(up(&a).safety_from, SafetyFrom::DesignBasis);
    // a load of its own comes before the demand, and without a basis
    let own = json!({ "unfactored_load": { "compression": q(50.0, "kN") } });
    let a = answer(ask(json!({ "reliability": own })));
    near(down(&a).central_safety_factor, 4.316_387_66, 1e-6);
    assert!(estimate(&a).tension.is_none());
    assert!(warns(&a, "reliability_not_estimated"));
    let factored = answer_to("reliability-of-factored-design");
    // by hand 139.03 / 42
    near(down(&factored).central_safety_factor, 3.310, 0.05);
    // a factored demand is none
    for basis in [
        json!({ "limit_states": {} }),
        json!({ "eurocode_7": { "approach": "da2", "pile_kind": "bored" } }),
        json!({ "australian_standard_2159": {
            "average_risk_rating_factor": 2, "redundancy": "low" } }),
        json!({ "own_factors": { "level": "factored", "reference": "report",
            "compression": { "multiplier": { "resistance_factor": 0.4 } } } }),
    ] {
        let demand = json!({ "level": "factored", "compression": q(10.0, "kN") });
        let request = ask(json!({ "design_basis": basis, "demand": demand }));
        let refused = refusable(request).unwrap_err();
        assert_eq!(
            codes(&refused),
            [("/reliability", "reliability_needs_load")]
        );
    }
    let without = refusable(ask(json!({}))).unwrap_err();
    assert_eq!(
        codes(&without),
        [("/reliability", "reliability_needs_load")]
    );
}

#[test]
fn a_pile_that_nothing_holds_is_given_no_estimate() {
    let a = answer(json!({
        "soil": soil(&[(12.0, 18.0, fill())]), "pile": pile(0.0889, &[(0.3, 5.0)]),
        "design_basis": { "allowable_stress": {} }, "reliability": {},
    }));
    assert!(estimate(&a).compression.is_none() && estimate(&a).tension.is_none());
    assert!(warns(&a, "reliability_not_estimated"));
}

/// Abramowitz and Stegun, table 26.1, and its tail by the asymptotic series.
#[test]
fn the_normal_distribution_is_the_tabulated_one() {
    for (beta, p) in [
        (0.0, 0.5),
        (-1.5, 0.933_192_798_731_142),
        (1.0, 0.158_655_253_931_457),
        (2.0, 0.022_750_131_948_179),
        (3.0, 0.001_349_898_031_630),
        (5.0, 2.866_515_718_8e-7),
        (8.0, 6.220_960_574e-16),
    ] {
        near(failure_probability(beta, &mut Trace::off()), p, 1e-8);
    }
    assert_eq!(failure_probability(100.0, &mut Trace::off()), 0.0);
}

/// By hand in another form: mean and variance of the logarithms.
#[test]
fn the_index_is_that_of_the_two_lognormals() {
    let s = Scatter {
        resistance_bias: 1.2,
        resistance_cov: 0.5,
        load_bias: 0.9,
        load_cov: 0.3,
    };
    let variance = |v: f64| crate::math::ln(1.0 + v * v);
    let mean = |m: f64, v: f64| crate::math::ln(m) - 0.5 * variance(v);
    let (r, l) = (mean(1.2 * 2.5, 0.5), mean(0.9, 0.3));
    let beta = (r - l) / (variance(0.5) + variance(0.3)).sqrt();
    near(reliability_index(2.5, s, &mut Trace::off()), beta, 1e-10);
}
