//! What must hold for any request.

use super::*;
use crate::math::{PI, cos, sin};
use crate::quantity::Length;

/// Every length of the piles of an answer, by pile.
fn told(answer: &Answer<Outcome>) -> Vec<[f64; 5]> {
    let of = |p: &PileForecast| {
        let all = [
            p.median,
            p.band_80.from,
            p.band_80.to,
            p.band_90.to,
            p.at_confidence,
        ];
        all.map(Length::si)
    };
    answer.result.piles.iter().map(of).collect()
}

#[track_caller]
fn same(a: &[[f64; 5]], b: &[[f64; 5]], tolerance: f64) {
    assert_eq!(a.len(), b.len());
    for (a, b) in a.iter().zip(b) {
        for (a, b) in a.iter().zip(b) {
            near(*a, *b, tolerance);
        }
    }
}

/// Every `ft` of a request as `m`, and `ft_lbf` as `N_m`.
fn metric(value: &Json) -> Json {
    match value {
        Json::Object(map) => {
            let unit = map.get("unit").and_then(Json::as_str);
            let factor = match unit {
                Some("ft") => Some((0.3048, "m")),
                Some("ft_lbf") => Some((0.3048 * 4.448_221_615_260_5, "N_m")),
                _ => None,
            };
            if let (Some((factor, unit)), Some(number)) = (factor, map.get("value")) {
                return q(number.as_f64().unwrap() * factor, unit);
            }
            map.iter().map(|(k, v)| (k.clone(), metric(v))).collect()
        }
        Json::Array(list) => list.iter().map(metric).collect(),
        other => other.clone(),
    }
}

fn pieces() -> Json {
    json!({ "lead_length": q(10.0, "ft"), "stick_up": q(1.0, "ft"),
        "extensions": [{ "length": q(5.0, "ft") }, { "length": q(7.0, "ft") }] })
}

#[test]
fn units_do_not_change_the_forecast() {
    let mut request = house();
    request["pieces"] = pieces();
    let (feet, metres) = (answer(request.clone()), answer(metric(&request)));
    same(&told(&feet), &told(&metres), 1e-9);
    assert_eq!(feet.result.extensions.unwrap().len(), 2);
    near(
        feet.result.total_depth.p90_by_model.si(),
        metres.result.total_depth.p90_by_model.si(),
        1e-8,
    );
}

#[test]
fn the_order_of_piles_does_not_change_the_forecast() {
    let straight = answer(house());
    let mut turned = house();
    turned["planned"].as_array_mut().unwrap().reverse();
    turned["installed"].as_array_mut().unwrap().reverse();
    let turned = answer(turned);
    let mut back = told(&turned);
    back.reverse();
    same(&told(&straight), &back, 1e-9);
    near(
        straight.result.total_depth.p90_by_model.si(),
        turned.result.total_depth.p90_by_model.si(),
        1e-8,
    );
}

#[test]
fn the_place_and_turn_of_the_grid_do_not_change_the_forecast() {
    let straight = answer(house());
    let mut moved = house();
    let angle = 31.5 * PI / 180.0;
    let (sin, cos) = (sin(angle), cos(angle));
    for list in ["planned", "installed"] {
        for pile in moved[list].as_array_mut().unwrap() {
            let at = |axis: &str| pile["position"][axis]["value"].as_f64().unwrap();
            let (x, y) = (at("x"), at("y"));
            let (x, y) = (x * cos - y * sin + 1200.0, x * sin + y * cos - 300.0);
            pile["position"] = json!({ "x": q(x, "ft"), "y": q(y, "ft") });
        }
    }
    same(&told(&straight), &told(&answer(moved)), 1e-9);
}

/// On average over grounds: 10 logs give narrower bands than the first 4 of them, and a pile
/// 60 m away has a wider band than one among the logs.
#[test]
fn more_logs_narrow_and_distance_widens() {
    let mut random = Random(5);
    let (mut few, mut many, mut close, mut far) = (0.0, 0.0, 0.0, 0.0);
    for _ in 0..25 {
        let (texture, scatter) = ground(&mut random, true);
        let places: Vec<(f64, f64)> = (0..10)
            .map(|_| (random.between(0.0, 40.0), random.between(0.0, 26.0)))
            .collect();
        let metres: Vec<Place> = places
            .iter()
            .map(|p| Some((p.0 * 0.3048, p.1 * 0.3048)))
            .collect();
        let y = depths(&mut random, &metres, &texture, scatter, 12.0);
        let logs: Vec<_> = places
            .iter()
            .zip(&y)
            .map(|(p, y)| (*p, (y / 0.3048).max(1.0)))
            .collect();
        let planned = [((20.0, 13.0), 0.0), ((220.0, 13.0), 0.0)];
        let width = |logs: &[((f64, f64), f64)]| {
            let piles = answer(request(logs, &planned)).result.piles;
            [0, 1].map(|i| (piles[i].band_80.to.si() - piles[i].band_80.from.si()) / scatter)
        };
        let (four, ten) = (width(&logs[..4]), width(&logs));
        few += four[0];
        many += ten[0];
        close += ten[0];
        far += ten[1];
    }
    assert!(many < 0.95 * few, "{many} {few}");
    assert!(far > 1.05 * close, "{far} {close}");
}

/// With a stated depth a pile far from all logs is drawn towards the mean of the ground, and a
/// pile beside a deep log follows that log.
#[test]
fn near_piles_follow_their_neighbours() {
    let logs: Vec<_> = (0..8)
        .map(|i| {
            let x = f64::from(i) * 6.0;
            (
                (x, 0.0),
                if i < 4 {
                    15.0 + 0.1 * x
                } else {
                    24.0 + 0.1 * x
                },
            )
        })
        .collect();
    let planned = [((0.0, 3.0), 0.0), ((42.0, 3.0), 0.0), ((21.0, 300.0), 0.0)];
    let piles = answer(request(&logs, &planned)).result.piles;
    let median = |i: usize| piles[i].median.si() / 0.3048;
    assert!(median(0) < 18.5, "{}", median(0));
    assert!(median(1) > 25.0, "{}", median(1));
    let mean = logs.iter().map(|l| l.1).sum::<f64>() / 8.0;
    near(median(2), mean, 1.5);
}

/// A log that ended at 25 ft pushes the others deeper; its own pile ends deeper than 25 ft.
#[test]
fn a_log_that_ended_early_pushes_deeper() {
    let before = answer(house());
    let mut more = house();
    more["installed"].as_array_mut().unwrap().push(json!({
        "label": "P3", "position": { "x": q(18.0, "ft"), "y": q(13.0, "ft") },
        "record": { "not_met": { "depth": q(25.0, "ft") } } }));
    let after = answer(more);
    for (a, b) in after.result.piles.iter().zip(&before.result.piles) {
        assert!(a.median > b.median, "{}", a.label);
    }
    let own = &after.result.piles[3];
    near(own.driven_depth.unwrap().si(), 25.0 * 0.3048, 1e-12);
    assert!(own.band_90.from.si() > 25.0 * 0.3048);
    assert_eq!(before.result.piles[3].driven_depth, None);
}

#[test]
fn bands_are_nested_and_the_least_depth_governs() {
    let mut request = house();
    request["planned"][0]["minimum_depth"] = q(21.0, "ft");
    request["planned"][1]["minimum_depth"] = q(60.0, "ft");
    let piles = answer(request).result.piles;
    for p in &piles {
        let order = [
            p.minimum_depth,
            p.band_90.from,
            p.band_80.from,
            p.band_50.from,
            p.median,
            p.band_50.to,
            p.band_80.to,
            p.band_90.to,
        ];
        assert!(order.windows(2).all(|w| w[0] <= w[1]), "{}", p.label);
    }
    assert_eq!(piles[0].band_50.from.si(), 21.0 * 0.3048);
    assert!(piles[0].minimum_governs_ratio > 0.5 && piles[0].minimum_governs_ratio < 1.0);
    assert_eq!(piles[1].band_90.to.si(), 60.0 * 0.3048);
    near(piles[1].minimum_governs_ratio, 1.0, 1e-5);
}

/// Two torques: the piles of the greater go deeper, and totals stand between their bounds.
#[test]
fn two_torques_are_two_forecasts() {
    let rising = |first: f64| {
        let rows: Vec<Json> = (1..=30)
            .map(|d| {
                let depth = f64::from(d);
                json!([depth, 400.0 + (depth - first).max(0.0) * 300.0])
            })
            .collect();
        json!({ "log": { "readings": { "columns": [
            { "name": "depth", "unit": "ft" }, { "name": "torque", "unit": "ft_lbf" }],
            "rows": rows } } })
    };
    let mut request = placeless(house());
    for (i, pile) in request["installed"]
        .as_array_mut()
        .unwrap()
        .iter_mut()
        .enumerate()
    {
        pile["record"] = rising(6.0 + i as f64);
    }
    request["planned"][0]["required_torque"] = q(4000.0, "ft_lbf");
    request["planned"][0]["minimum_depth"] = q(5.0, "ft");
    let answer = answer(request);
    let torques = &answer.result.torques;
    assert_eq!(torques.len(), 2);
    assert!(torques[1].average_depth > torques[0].average_depth);
    assert!(answer.result.piles[0].median > answer.result.piles[1].median);
    // 400 + 300 (d - 6) averaged over 3 ft of steps is 400 + 300 (d - 7): 2,778 at 14.93 ft
    let first = torques[0].logs[0].depth.unwrap().si() / 0.3048;
    near(first, 7.0 + 2378.0 / 300.0, 1e-9);
    let total = answer.result.total_depth;
    assert!(total.p90_independent < total.p90_by_model);
    assert!(total.p90_by_model < total.p90_fully_correlated);
}

#[test]
fn warnings_say_what_is_thin() {
    let answer_of =
        |met: &[((f64, f64), f64)], planned: &[((f64, f64), f64)]| answer(request(met, planned));
    let ring = [
        ((0.0, 0.0), 18.0),
        ((20.0, 0.0), 18.5),
        ((0.0, 20.0), 19.0),
        ((20.0, 20.0), 18.2),
        ((10.0, -5.0), 18.8),
        ((10.0, 25.0), 18.4),
    ];
    let inside = answer_of(&ring, &[((10.0, 10.0), 0.0)]);
    for code in [
        "forecast_few_logs",
        "forecast_beyond_logs",
        "forecast_logs_on_one_side",
    ] {
        assert!(!warns(&inside, code), "{code}");
    }
    let outside = answer_of(&ring[..5], &[((90.0, 10.0), 0.0)]);
    for code in [
        "forecast_few_logs",
        "forecast_beyond_logs",
        "forecast_logs_on_one_side",
    ] {
        assert!(warns(&outside, code), "{code}");
    }
    let mut mixed = house();
    mixed["planned"][0]
        .as_object_mut()
        .unwrap()
        .remove("position");
    let mixed = answer(mixed);
    assert!(warns(&mixed, "forecast_positions_missing") && !mixed.result.uses_positions);
    let mut stated = house();
    stated["prior"] = json!({ "stated": { "expected_depth": q(40.0, "ft"),
        "standard_deviation": q(2.0, "ft"), "basis": "a boring" } });
    assert!(warns(
        &answer(stated.clone()),
        "forecast_prior_contradicted"
    ));
    stated["prior"]["stated"]["expected_depth"] = q(19.0, "ft");
    assert!(!warns(&answer(stated), "forecast_prior_contradicted"));
}

/// The largest request: 500 piles, 60 logs, 15 of them ended early.
#[test]
fn the_largest_job_is_forecast() {
    let at = |i: usize| ((i % 25) as f64 * 8.0, (i / 25) as f64 * 8.0);
    let met: Vec<_> = (0..45)
        .map(|i| (at(i * 11), 18.0 + (i % 7) as f64))
        .collect();
    let planned: Vec<_> = (0..500)
        .map(|i| ((at(i).0 + 3.0, at(i).1 + 3.0), 17.0))
        .collect();
    let mut request = request(&met, &planned);
    for i in 0..15 {
        let (x, y) = at(i * 30 + 5);
        request["installed"].as_array_mut().unwrap().push(json!({
            "label": format!("E{i}"), "position": { "x": q(x, "ft"), "y": q(y, "ft") },
            "record": { "not_met": { "depth": q(20.0, "ft") } } }));
    }
    let answer = answer(request);
    assert_eq!(answer.result.piles.len(), 500);
    assert_eq!(answer.result.torques[0].not_met_count, 15);
    let total = answer.result.total_depth;
    assert!(total.p90_by_model < total.p90_fully_correlated);
}

/// Faults are told together.
#[test]
fn all_faults_at_once() {
    let mut request = house();
    request.as_object_mut().unwrap().remove("required_torque");
    request["planned"][1]["label"] = json!("P0");
    request["pieces"] = json!({ "lead_length": q(1.0, "ft"), "stick_up": q(1.0, "ft"),
        "extensions": [{ "length": q(5.0, "ft") }, { "length": q(60.0, "in") }] });
    let found = refused(request);
    for expected in [
        ("/planned/1/label", "duplicate_label"),
        ("/planned/0", "missing_member"),
        ("/installed/4/record/met", "missing_member"),
        ("/pieces/lead_length", "forecast_lead_too_short"),
        ("/pieces/extensions/1/length", "forecast_extension_twice"),
    ] {
        let expected = (expected.0.to_owned(), expected.1.to_owned());
        assert!(found.contains(&expected), "{expected:?} {found:?}");
    }
}
