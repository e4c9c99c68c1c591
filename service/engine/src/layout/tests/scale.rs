//! A plan of 500 beams of 20 piles: still right, and work that grows with its size.

use serde_json::{Value, json};

use super::{answer, close};
use crate::contract::Call;
use crate::layout::Request;

/// Rows of beams of 38 m with piles every 2 m, joined by nothing.
fn rows(count: usize, search: bool) -> Call<Request> {
    let m = |v: f64| json!({"value": v, "unit": "m"});
    let at = |x: f64, y: f64| json!({"x": m(x), "y": m(y)});
    let beams: Vec<Value> = (0..count)
        .map(|i| {
            let y = 3.0 * i as f64;
            json!({
                "label": format!("R{i:03}_"),
                "points": [at(0.0, y), at(38.0, y)],
                "line_loads": [
                    {"kind": "dead", "load": {"value": 12.0 + 0.01 * i as f64, "unit": "kN_per_m"}},
                    {"kind": "live", "load": {"value": 7, "unit": "kN_per_m"}},
                    {"kind": "snow", "load": {"value": 5, "unit": "kN_per_m"}},
                    {"kind": "wind", "case": "up", "load": {"value": -6, "unit": "kN_per_m"}},
                    {"kind": "wind", "case": "down", "load": {"value": 3, "unit": "kN_per_m"}},
                ],
            })
        })
        .collect();
    let piles = if search {
        json!({"search": {"max_spacing": m(2.4), "min_spacing": m(0.9), "snap": m(0.1)}})
    } else {
        let positions: Vec<Value> = (0..count)
            .flat_map(|i| (0..20).map(move |k| (2.0 * f64::from(k), 3.0 * i as f64)))
            .map(|(x, y)| json!({"at": at(x, y)}))
            .collect();
        json!({"given": {"positions": positions, "max_spacing": m(2.4), "min_spacing": m(0.9)}})
    };
    serde_json::from_value(json!({
        "design_basis": {"allowable_stress": {"combinations": {"published": {"edition": "asce_7_16"}}}},
        "beams": beams,
        "pile_capacity": {"level": "allowable", "compression": {"value": 75, "unit": "kN"},
            "tension": {"value": 20, "unit": "kN"}},
        "piles": piles,
    }))
    .unwrap()
}

#[test]
fn five_hundred_beams_of_twenty_piles() {
    let a = answer(&rows(500, false)).unwrap();
    assert_eq!(a.result.pile_count, 10_000);
    assert!(a.result.statics_residual_ratio <= 1e-9);
    // too many reactions to list: the governing ones only
    assert!(a.result.piles[0].reactions.is_none());
    // the second pile of many equal spans carries 1.134 w l (43/38 = 1.132 with 5 spans)
    let w = 12.0 + 0.75 * 7.0 + 0.75 * 5.0 + 0.45 * 3.0;
    close(
        a.result.piles[1].rigid.max.si(),
        1.134 * 2.0 * w * 1e3,
        1e-3,
    );
}

/// 38 m in spans of at most 2.4 m: 16 spans, 17 piles a row, and loads allow it.
#[test]
fn a_search_over_many_beams_stays_within_its_work() {
    let a = answer(&rows(40, true)).unwrap();
    let report = a.result.search.as_ref().unwrap();
    assert_eq!(a.result.pile_count, 40 * 17);
    assert!(report.feasible && report.proven_minimal);
    assert!(report.work_count <= report.work_limit_count + 1_000_000);
}

/// Thousands of crossings without a pile are refused before they cost anything.
#[test]
fn a_mesh_without_piles_is_refused() {
    let m = |v: f64| json!({"value": v, "unit": "m"});
    let at = |x: f64, y: f64| json!({"x": m(x), "y": m(y)});
    let mut call = rows(1, false);
    let n = 150;
    let beams: Vec<Value> = (0..n)
        .flat_map(|i| {
            let s = f64::from(i);
            let end = f64::from(n) + 1.0;
            [
                json!({"points": [at(0.0, s + 1.0), at(end, s + 1.0)]}),
                json!({"points": [at(s + 1.0, 0.0), at(s + 1.0, end)]}),
            ]
        })
        .collect();
    call.request.beams = serde_json::from_value(json!(beams)).unwrap();
    let refusal = answer(&call).unwrap_err();
    assert!(
        refusal
            .issues
            .iter()
            .any(|i| i.code == "plan_too_interlinked")
    );
}
