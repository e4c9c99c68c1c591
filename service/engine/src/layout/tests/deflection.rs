//! Deflections between piles against closed forms, and what must hold for any of them.

use serde_json::{Value, json};

use super::{answer, close};
use crate::contract::{Answer, Call, Check, CheckStatus};
use crate::layout::{BeamDeflection, Outcome, Request, SupportModel};

/// Flexural rigidity of all beams here, N m2.
const EI: f64 = 4.0e7;

fn m(v: f64) -> Value {
    json!({"value": v, "unit": "m"})
}

fn at(x: f64, y: f64) -> Value {
    json!({"x": m(x), "y": m(y)})
}

fn evenly(q: f64) -> Value {
    json!([{"kind": "dead", "load": {"value": q, "unit": "N_per_m"}}])
}

/// One straight beam with piles at these places.
fn strip(length: f64, piles: &[f64], loads: Value) -> Value {
    let positions: Vec<Value> = piles.iter().map(|x| json!({"at": at(*x, 0.0)})).collect();
    json!({
        "design_basis": {"allowable_stress": {"combinations": {"own": {"list": [
            {"name": "D", "factors": [{"kind": "dead", "factor": 1.0}]}]}}}},
        "beams": [{
            "label": "A",
            "points": [at(0.0, 0.0), at(length, 0.0)],
            "flexural_rigidity": {"value": EI, "unit": "N_m2"},
            "deflection_limit": {"span_over": {"span_to_deflection_ratio": 360.0}},
            "line_loads": loads,
        }],
        "piles": {"given": {"positions": positions}},
    })
}

fn with_force(mut request: Value, x: f64, force: f64) -> Value {
    request["beams"][0]["line_loads"] = json!([]);
    request["point_loads"] =
        json!([{"kind": "dead", "at": at(x, 0.0), "load": {"value": force, "unit": "N"}}]);
    request
}

fn run(request: Value) -> Answer<Outcome> {
    let call: Call<Request> = serde_json::from_value(request).unwrap();
    answer(&call).unwrap()
}

fn worst(request: Value) -> BeamDeflection {
    run(request).result.beams[0].deflection.clone().unwrap()
}

fn judged(a: &Answer<Outcome>) -> Vec<&Check> {
    a.checks
        .iter()
        .filter(|c| c.id == "beam_deflection")
        .collect()
}

#[test]
fn a_simple_span_under_an_even_load() {
    // 5 w L4/(384 E I) in the middle
    let (w, l) = (12_000.0, 6.0_f64);
    let d = worst(strip(l, &[0.0, l], evenly(w)));
    close(
        d.deflection.si(),
        5.0 * w * l * l * l * l / (384.0 * EI),
        1e-13,
    );
    close(d.at.x.si(), 3.0, 1e-9);
    close(d.limit.si(), l / 360.0, 1e-13);
    close(d.span.si(), l, 1e-13);
    assert_eq!(d.combination, "D");
}

#[test]
fn a_simple_span_under_a_force() {
    // P L3/(48 E I) in the middle; at a from one end, b from the other, a > b:
    // P b (L2 - b2)^1.5/(9 sqrt(3) L E I) at sqrt((L2 - b2)/3)
    let (p, l) = (30_000.0, 6.0_f64);
    let d = worst(with_force(strip(l, &[0.0, l], json!([])), 3.0, p));
    close(d.deflection.si(), p * l * l * l / (48.0 * EI), 1e-13);
    let b = 2.0_f64;
    let d = worst(with_force(strip(l, &[0.0, l], json!([])), 4.0, p));
    let root = (l * l - b * b).sqrt();
    let want = p * b * root * root * root / (9.0 * 3.0_f64.sqrt() * l * EI);
    close(d.deflection.si(), want, 1e-12);
    close(d.at.x.si(), root / 3.0_f64.sqrt(), 1e-9);
}

#[test]
fn a_simple_span_under_a_rising_load() {
    // q x (7 L4 - 10 L2 x2 + 3 x4)/(360 L E I), greatest at x = L sqrt(1 - sqrt(8/15))
    let (q, l) = (18_000.0, 5.0_f64);
    let loads = json!([{"kind": "dead", "load": {"value": 0, "unit": "N_per_m"},
        "load_at_end": {"value": q, "unit": "N_per_m"}}]);
    let d = worst(strip(l, &[0.0, l], loads));
    let x = l * (1.0 - (8.0_f64 / 15.0).sqrt()).sqrt();
    let (l2, x2) = (l * l, x * x);
    let want = q * x * (7.0 * l2 * l2 - 10.0 * l2 * x2 + 3.0 * x2 * x2) / (360.0 * l * EI);
    close(d.deflection.si(), want, 1e-12);
    close(d.at.x.si(), x, 1e-9);
}

#[test]
fn a_propped_span() {
    // two equal spans: each is held like a propped cantilever, w x (L3 - 3 L x2 + 2 x3)/(48 E I),
    // greatest at x = L (1 + sqrt(33))/16
    let (w, l) = (15_000.0, 4.0_f64);
    let d = worst(strip(2.0 * l, &[0.0, l, 2.0 * l], evenly(w)));
    let x = l * (1.0 + 33.0_f64.sqrt()) / 16.0;
    let want = w * x * (l * l * l - 3.0 * l * x * x + 2.0 * x * x * x) / (48.0 * EI);
    close(d.deflection.si(), want, 1e-12);
    let from_end = d.at.x.si().min(2.0 * l - d.at.x.si());
    close(from_end, x, 1e-9);
}

#[test]
fn a_free_end_at_either_side() {
    // P at the tip of an overhang a beyond a span L: P a2 (L + a)/(3 E I) there, and the span
    // rises by P a L2/(9 sqrt(3) E I)
    let (p, l, a) = (20_000.0, 4.0_f64, 1.5_f64);
    let tip = p * a * a * (l + a) / (3.0 * EI);
    for (piles, x) in [([0.0, l], l + a), ([a, l + a], 0.0)] {
        let d = worst(with_force(strip(l + a, &piles, json!([])), x, p));
        close(d.deflection.si(), tip, 1e-12);
        close(d.span.si(), 2.0 * a, 1e-13);
        close(d.at.x.si(), x, 1e-9);
    }
    // with one limit for both, a short free end leaves the lead to the span that rises
    let a = 0.2;
    let mut request = with_force(strip(l + a, &[0.0, l], json!([])), l + a, p);
    request["beams"][0]["deflection_limit"] = json!({"absolute": {"deflection": m(0.005)}});
    let d = worst(request);
    let rise = -p * a * l * l / (9.0 * 3.0_f64.sqrt() * EI);
    close(d.deflection.si(), rise, 1e-12);
    close(d.at.x.si(), l / 3.0_f64.sqrt(), 1e-9);
    close(d.span.si(), l, 1e-13);
}

#[test]
fn rigidity_that_changes_within_a_span() {
    // half of the span twice as stiff; greatest deflection by summing M/(E I) in a million steps
    let (w, l) = (10_000.0, 8.0_f64);
    let mut request = strip(3.0, &[0.0, l], evenly(w));
    let mut other = request["beams"][0].clone();
    other["label"] = json!("B");
    other["points"] = json!([at(3.0, 0.0), at(l, 0.0)]);
    other["flexural_rigidity"] = json!({"value": 2.0 * EI, "unit": "N_m2"});
    request["beams"].as_array_mut().unwrap().push(other);
    let a = run(request);
    let n = 1_000_000;
    let h = l / n as f64;
    let curvature = |x: f64| {
        let moment = 0.5 * w * x * (l - x);
        moment / if x < 3.0 { EI } else { 2.0 * EI }
    };
    let (mut slope, mut sag) = (0.0, vec![0.0]);
    for i in 0..n {
        let k = curvature((i as f64 + 0.5) * h);
        sag.push(sag[i] + (slope + 0.5 * k * h) * h);
        slope += k * h;
    }
    let chord = sag[n] / n as f64;
    let (mut best, mut place) = (0.0_f64, 0);
    for (i, s) in sag.iter().enumerate() {
        let d = chord * i as f64 - s;
        if d > best {
            (best, place) = (d, i);
        }
    }
    let found = [0, 1].map(|b: usize| a.result.beams[b].deflection.clone().unwrap());
    let deepest = found
        .iter()
        .max_by(|a, b| a.deflection.si().total_cmp(&b.deflection.si()))
        .unwrap();
    close(deepest.deflection.si(), best, 1e-8);
    close(deepest.at.x.si(), place as f64 * h, 1e-4);
}

#[test]
fn piles_that_settle_do_not_bend_a_single_span_further() {
    let (w, l) = (12_000.0, 6.0);
    let mut request = strip(l, &[0.0, l], evenly(w));
    let rigid = worst(request.clone());
    for (i, k) in [3.0e6, 9.0e7].into_iter().enumerate() {
        request["piles"]["given"]["positions"][i]["stiffness"] =
            json!({"value": k, "unit": "N_per_m"});
    }
    let a = run(request.clone());
    assert_eq!(
        a.result.supports,
        [SupportModel::Rigid, SupportModel::Spring]
    );
    let spring = a.result.beams[0].deflection.clone().unwrap();
    close(spring.deflection.si(), rigid.deflection.si(), 1e-9);
    // in two spans the middle pile that yields more than its neighbours counts
    let mut request = strip(2.0 * l, &[0.0, l, 2.0 * l], evenly(w));
    for i in 0..3 {
        request["piles"]["given"]["positions"][i]["stiffness"] =
            json!({"value": 2.0e6, "unit": "N_per_m"});
    }
    let d = worst(request);
    assert_eq!(d.supports, SupportModel::Spring);
}

#[test]
fn the_limit_decides_and_on_it_passes() {
    let (w, l) = (12_000.0, 6.0_f64);
    let exact = 5.0 * w * l * l * l * l / (384.0 * EI);
    for (limit, want) in [
        (exact, CheckStatus::Pass),
        (0.999 * exact, CheckStatus::Fail),
    ] {
        let mut request = strip(l, &[0.0, l], evenly(w));
        request["beams"][0]["deflection_limit"] = json!({"absolute": {"deflection": m(limit)}});
        let a = run(request);
        let checks = judged(&a);
        assert_eq!(checks.len(), 1);
        assert_eq!(checks[0].status, want, "{limit}");
    }
}

#[test]
fn with_factored_loads_only_service_combinations_are_judged() {
    let (w, l) = (12_000.0, 6.0_f64);
    let mut request = strip(l, &[0.0, l], evenly(w));
    request["design_basis"] =
        json!({"limit_states": {"combinations": {"published": {"edition": "asce_7_16"}}}});
    let a = run(request.clone());
    assert_eq!(a.result.beams[0].deflection, None);
    let open = judged(&a);
    assert_eq!(open[0].status, CheckStatus::NotEvaluated);
    assert!(
        open[0]
            .reason
            .as_ref()
            .unwrap()
            .starts_with("no_service_combinations")
    );
    request["service_combinations"] = json!({"list": [
        {"name": "half", "factors": [{"kind": "dead", "factor": 0.5}]}]});
    let a = run(request);
    let d = a.result.beams[0].deflection.clone().unwrap();
    close(
        d.deflection.si(),
        2.5 * w * l * l * l * l / (384.0 * EI),
        1e-12,
    );
    assert_eq!(d.combination, "half");
    assert_eq!(judged(&a)[0].status, CheckStatus::Pass);
}

#[test]
fn a_run_with_one_pile_has_no_chord() {
    let mut request = strip(4.0, &[2.0, 4.0], evenly(5_000.0));
    request["beams"].as_array_mut().unwrap().push(json!({
        "label": "B",
        "points": [at(4.0, 0.0), at(4.0, 3.0)],
        "flexural_rigidity": {"value": EI, "unit": "N_m2"},
        "deflection_limit": {"absolute": {"deflection": {"value": 5, "unit": "mm"}}},
        "line_loads": evenly(5_000.0),
    }));
    request["beams"].as_array_mut().unwrap().push(json!({
        "label": "C",
        "points": [at(0.0, 3.0), at(8.0, 3.0)],
        "flexural_rigidity": {"value": EI, "unit": "N_m2"},
        "line_loads": evenly(5_000.0),
    }));
    for x in [1.0, 7.0] {
        let more = json!({"at": at(x, 3.0)});
        let positions = &mut request["piles"]["given"]["positions"];
        positions.as_array_mut().unwrap().push(more);
    }
    let a = run(request);
    let by_label = |label: &str| {
        let all = judged(&a);
        let check = all
            .into_iter()
            .find(|c| c.subject.as_ref().unwrap().label == label);
        check.map(|c| (c.status, c.reason.clone().unwrap_or_default()))
    };
    let (status, reason) = by_label("B").unwrap();
    assert_eq!(status, CheckStatus::NotEvaluated);
    assert!(reason.starts_with("no_chord"), "{reason}");
    assert!(by_label("A").is_some() && by_label("C").is_none());
}

#[test]
fn a_search_adds_piles_until_the_beam_is_stiff_enough() {
    let mut request = strip(12.0, &[0.0], evenly(12_000.0));
    request["pile_capacity"] = json!({"level": "allowable",
        "compression": {"value": 200, "unit": "kN"}, "tension": {"value": 0, "unit": "kN"}});
    request["piles"] = json!({"search": {"max_spacing": m(6.0), "min_spacing": m(1.0),
        "snap": m(0.25)}});
    let mut counts = Vec::new();
    for limit in [20.0, 1.5, 0.4] {
        request["beams"][0]["deflection_limit"] =
            json!({"absolute": {"deflection": {"value": limit, "unit": "mm"}}});
        let a = run(request.clone());
        let search = a.result.search.as_ref().unwrap();
        assert!(search.feasible, "{limit}");
        assert_eq!(judged(&a)[0].status, CheckStatus::Pass, "{limit}");
        assert!(search.lower_bound_count <= a.result.pile_count);
        counts.push(a.result.pile_count);
    }
    assert_eq!(counts[0], 3);
    assert!(counts[1] > counts[0] && counts[2] > counts[1], "{counts:?}");
}
