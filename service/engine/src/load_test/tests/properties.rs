//! Properties: units and order of columns, scale, later points, noise, and a separate search
//! along the curve.

use proptest::prelude::*;

use super::LoadTestCriterion::*;
use super::*;
use crate::contract::request_digest;
use crate::math;

const KIP: f64 = 4.448_221_615_260_5;

/// A curve that softens: steps of displacement in mm grow while those of load in kN shrink.
fn softening() -> impl Strategy<Value = Vec<(f64, f64)>> {
    let steps = prop::collection::vec((0.2f64..1.0, 1.05f64..1.6), 8..30);
    (steps, 5.0f64..30.0, 0.05f64..0.15).prop_map(|(steps, first, start)| {
        let (mut load, mut s) = (0.0, 0.0);
        let (mut more, mut compliance) = (first, start);
        let mut rows = vec![(0.0, 0.0)];
        for (shrink, soften) in steps {
            load += more;
            s += more * compliance;
            rows.push((load, s));
            more *= 0.6 + 0.4 * shrink;
            compliance *= soften;
        }
        rows.retain(|r| r.1 < 1500.0);
        rows
    })
}

/// Loads by name, base SI.
fn loads(answer: &Answer<Outcome>) -> Vec<(LoadTestCriterion, Option<f64>)> {
    let all = answer.result.criteria.iter();
    all.map(|c| (c.criterion, c.load.map(|q| q.si()))).collect()
}

/// Load at a displacement by straight lines, a separate way.
fn load_at(rows: &[(f64, f64)], s: f64) -> f64 {
    let after = rows
        .iter()
        .position(|r| r.1 >= s)
        .unwrap_or(rows.len() - 1)
        .max(1);
    let (a, b) = (rows[after - 1], rows[after]);
    a.0 + (b.0 - a.0) * (s - a.1) / (b.1 - a.1)
}

/// Where a function that starts below nil first comes up to it, by steps and halving.
fn first_root(end: f64, f: impl Fn(f64) -> f64) -> Option<f64> {
    let steps = 20_000;
    let at = |i: i32| end * f64::from(i) / f64::from(steps);
    let up = (1..=steps).find(|i| f(at(*i)) >= 0.0 && (*i == 1 || f(at(*i - 1)) < 0.0))?;
    let (mut low, mut high) = (at(up - 1), at(up));
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if f(middle) < 0.0 {
            low = middle
        } else {
            high = middle
        }
    }
    Some(high)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    #[test]
    fn units_change_nothing(rows in softening()) {
        let si = answer(request(&rows, json!({})));
        let mut us = request(&[], json!({
            "shaft": { "round": { "outside_diameter": q(73.0 / 25.4, "in"), "wall_thickness": q(5.51 / 25.4, "in") } },
            "loaded_length": q(6.0 / 0.3048, "ft"), "helices": [{ "diameter": q(12.0, "in") }],
        }));
        // the columns the other way round as well
        let swapped: Vec<Json> = rows.iter().map(|(load, s)| json!([s / 25.4, load / KIP])).collect();
        us["points"] = json!({
            "columns": [{ "name": "displacement", "unit": "in" }, { "name": "load", "unit": "kip" }],
            "rows": swapped,
        });
        let us = answer(us);
        for ((name, a), (_, b)) in loads(&si).into_iter().zip(loads(&us)) {
            prop_assert_eq!(a.is_some(), b.is_some(), "{:?}", name);
            if let (Some(a), Some(b)) = (a, b) {
                prop_assert!((a / b - 1.0).abs() < 1e-8, "{name:?}: {a} {b}");
            }
        }
    }

    #[test]
    fn the_order_of_columns_is_not_part_of_the_request(rows in softening()) {
        let one = request(&rows, json!({}));
        let mut other = one.clone();
        let turned: Vec<Json> = rows.iter().map(|(load, s)| json!([s, load])).collect();
        other["points"]["columns"] = json!([{ "name": "displacement", "unit": "mm" }, { "name": "load", "unit": "kN" }]);
        other["points"]["rows"] = json!(turned);
        let digest = |json| request_digest(&serde_json::from_value::<Request>(json).unwrap());
        prop_assert_eq!(digest(one.clone()), digest(other));
        let mut moved = one.clone();
        moved["points"]["rows"][1][0] = json!(rows[1].0 + 1e-6);
        prop_assert_ne!(digest(one), digest(moved));
    }

    /// Twice the loads on twice the steel: twice the failure load at the same displacement.
    /// Butler and Hoy alone has a slope of its own in it.
    #[test]
    fn loads_scale_with_the_steel(rows in softening(), by in 0.3f64..1.2) {
        let scaled: Vec<_> = rows.iter().map(|(load, s)| (load * by, *s)).collect();
        let one = answer(request(&rows, json!({})));
        let other = answer(request(&scaled, json!({ "elastic_modulus": q(200e3 * by, "MPa") })));
        for (a, b) in one.result.criteria.iter().zip(&other.result.criteria) {
            if a.criterion == ButlerHoy {
                continue;
            }
            prop_assert_eq!(a.status, b.status, "{:?}", a.criterion);
            if let (Some(p), Some(q)) = (a.load, b.load) {
                prop_assert!((q.si() / p.si() / by - 1.0).abs() < 1e-8, "{a:?} {b:?}");
            }
            if let (Some(s), Some(t)) = (a.displacement, b.displacement) {
                prop_assert!((t.si() / s.si() - 1.0).abs() < 1e-7, "{a:?} {b:?}");
            }
        }
    }

    /// Points after the one a line is met at change nothing; a larger diameter is met later,
    /// and a line beside the elastic one later than the same without it.
    #[test]
    fn lines_are_met_in_their_order(rows in softening()) {
        let whole = answer(request(&rows, json!({})));
        let load = |name| criterion(&whole, name).load;
        for (early, late) in [
            (DavissonShaft, DavissonHelix),
            (Helix5PercentGross, Helix10PercentGross),
            (Helix8PercentNet, Helix10PercentNet),
            (Helix10PercentGross, Helix10PercentNet),
        ] {
            if let Some(late) = load(late) {
                prop_assert!(load(early).is_some_and(|q| q <= late));
            }
        }
        let Some(met) = load(DavissonShaft) else {
            return Ok(());
        };
        let cut = rows.iter().position(|r| r.0 * 1e3 >= met.si()).unwrap().max(3);
        let short = answer(request(&rows[..=cut], json!({})));
        prop_assert_eq!(criterion(&short, DavissonShaft).load, Some(met));
    }

    #[test]
    fn a_separate_search_finds_the_same(rows in softening()) {
        let found = answer(request(&rows, json!({})));
        let end = rows[rows.len() - 1].1;
        let compliance = 6000.0 / (math::PI * (73.0 - 5.51) * 5.51 * 200.0);
        let mut expected = vec![];
        for (name, x, c) in [
            (DavissonShaft, 3.8 + 73.0 / 120.0, compliance),
            (Helix8PercentNet, 0.08 * 304.8, compliance),
            (Helix10PercentGross, 30.48, 0.0),
        ] {
            expected.push((name, first_root(end, |s| s - x - c * load_at(&rows, s))));
        }
        for (name, a, b) in [(BrinchHansen80, 0.25, 0.8), (BrinchHansen90, 0.5, 0.9)] {
            expected.push((name, first_root(end, |s| {
                if s == 0.0 { -1.0 } else { load_at(&rows, a * s) - b * load_at(&rows, s) - 1e-12 }
            })));
        }
        for (name, s) in expected {
            let got = criterion(&found, name);
            prop_assert_eq!(got.load.is_some(), s.is_some(), "{:?} {:?} of {}", got, s, end);
            if let (Some(got), Some(s)) = (got.displacement, s) {
                prop_assert!((got.si() * 1e3 / s - 1.0).abs() < 1e-6, "{name:?} {got:?} {s}");
            }
        }
    }

    /// Readings off by up to 1 % in displacement move no load by more than a few per cent.
    #[test]
    fn noise_moves_the_loads_little(noise in prop::collection::vec(-0.01f64..0.01, 60)) {
        let clean: Vec<f64> = (0..60).map(|i| 150.0 * math::pow(f64::from(i) / 59.0, 1.7)).collect();
        let mut rows: Vec<(f64, f64)> = vec![];
        for (s, off) in clean.iter().zip(noise) {
            let read = s * (1.0 + off);
            let last = rows.last().map_or(0.0, |r| r.1);
            rows.push((hyperbola(*s), read.max(last)));
        }
        let answer = answer(request(&rows, json!({})));
        // Davisson: LT-01; Brinch Hansen and Chin: LT-03, closed form
        for (name, expected, within) in [
            (DavissonShaft, 86.68, 0.02),
            (DavissonHelix, 104.874, 0.02),
            (BrinchHansen90, 222.222, 0.03),
            (Chin, 250.0, 0.02),
        ] {
            let (load, _) = found(&answer, name);
            prop_assert!((load / expected - 1.0).abs() < within, "{name:?} {load}");
        }
    }
}
