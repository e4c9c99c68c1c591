//! Plans of every form: corners, junctions, crossings, rings, joints; and their faults.

use serde_json::{Value, json};

use super::{answer, close};
use crate::contract::Call;
use crate::layout::Request;

/// A plan in metres with one dead load of 10 kN/m on every beam.
fn plan(beams: &[&[(f64, f64)]], piles: &[(f64, f64)]) -> Value {
    let at = |p: &(f64, f64)| json!({"x": {"value": p.0, "unit": "m"}, "y": {"value": p.1, "unit": "m"}});
    let beams: Vec<Value> = beams
        .iter()
        .map(|points| {
            json!({
                "points": points.iter().map(at).collect::<Vec<_>>(),
                "line_loads": [{"kind": "dead", "load": {"value": 10, "unit": "kN_per_m"}}],
            })
        })
        .collect();
    let piles: Vec<Value> = piles.iter().map(|p| json!({"at": at(p)})).collect();
    json!({
        "design_basis": {"allowable_stress": {"combinations": {"published": {"edition": "asce_7_16"}}}},
        "beams": beams,
        "piles": {"given": {"positions": piles}},
    })
}

fn call(value: Value) -> Call<Request> {
    serde_json::from_value(value).unwrap()
}

/// Reactions in kN.
fn reactions(value: Value) -> Vec<f64> {
    let a = answer(&call(value)).unwrap();
    assert!(
        a.result.statics_residual_ratio <= 1e-12,
        "{}",
        a.result.statics_residual_ratio
    );
    a.result
        .piles
        .iter()
        .map(|p| p.rigid.max.si() / 1e3)
        .collect()
}

fn faults(value: Value) -> Vec<(String, String)> {
    let refusal = answer(&call(value)).unwrap_err();
    refusal
        .issues
        .iter()
        .map(|i| (i.pointer.clone(), i.code.to_string()))
        .collect()
}

fn all_close(got: &[f64], want: &[f64]) {
    assert_eq!(got.len(), want.len());
    for (g, w) in got.iter().zip(want) {
        close(*g, *w, 1e-9);
    }
}

/// A wall in two beams, with a point in between, or turned round: the same line. Two
/// equal spans of 4 m: 3/8, 10/8, 3/8 of 40 kN.
#[test]
fn collinear_beams_are_continuous() {
    let piles = [(0.0, 0.0), (4.0, 0.0), (8.0, 0.0)];
    let want = [15.0, 50.0, 15.0];
    all_close(
        &reactions(plan(&[&[(0.0, 0.0), (8.0, 0.0)]], &piles)),
        &want,
    );
    all_close(
        &reactions(plan(&[&[(0.0, 0.0), (3.0, 0.0), (8.0, 0.0)]], &piles)),
        &want,
    );
    all_close(
        &reactions(plan(
            &[&[(5.5, 0.0), (8.0, 0.0)], &[(5.5, 0.0), (0.0, 0.0)]],
            &piles,
        )),
        &want,
    );
    // a vertex 2 mm off the straight line is no corner; the length changes by 1e-7
    let off = reactions(plan(&[&[(0.0, 0.0), (3.0, 0.002), (8.0, 0.0)]], &piles));
    for (g, w) in off.iter().zip(want) {
        close(*g, w, 1e-6);
    }
}

/// At a corner nothing but the pile is shared: two simple beams of 4 m.
#[test]
fn a_corner_passes_no_bending() {
    let piles = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0)];
    let bent = plan(&[&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0)]], &piles);
    all_close(&reactions(bent), &[20.0, 40.0, 20.0]);
}

/// A ring of four walls, 4 m by 6 m, with piles at its corners.
#[test]
fn a_ring_closes() {
    let corners = [(0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (0.0, 4.0)];
    let ring = [corners[0], corners[1], corners[2], corners[3], corners[0]];
    all_close(&reactions(plan(&[&ring], &corners)), &[50.0; 4]);
}

/// A stem ends on the middle of a header without a pile there: half its load goes to the
/// header's piles. By hand: stem 4 m gives 20 kN each end; header 6 m has 30 + 10 kN.
#[test]
fn a_stem_leans_on_its_header() {
    let piles = [(0.0, 0.0), (6.0, 0.0), (3.0, 4.0)];
    let t = plan(
        &[&[(0.0, 0.0), (6.0, 0.0)], &[(3.0, 0.0), (3.0, 4.0)]],
        &piles,
    );
    let a = answer(&call(t.clone())).unwrap();
    all_close(&reactions(t), &[40.0, 40.0, 20.0]);
    // and by tributary lengths likewise
    let tributary: Vec<f64> = a
        .result
        .piles
        .iter()
        .map(|p| p.tributary.unwrap().si() / 1e3)
        .collect();
    all_close(&tributary, &[40.0, 40.0, 20.0]);
    // moment under the stem: 10 x 6^2/8 + 20 x 6/4 = 75 kN m
    close(a.result.beams[0].sagging.moment.si() / 1e3, 75.0, 1e-9);
}

/// Equal beams that cross at their middles without a pile there carry their own loads.
#[test]
fn equal_crossing_beams_share_nothing() {
    let piles = [(0.0, 3.0), (6.0, 3.0), (3.0, 0.0), (3.0, 6.0)];
    let cross = plan(
        &[&[(0.0, 3.0), (6.0, 3.0)], &[(3.0, 0.0), (3.0, 6.0)]],
        &piles,
    );
    all_close(&reactions(cross), &[30.0; 4]);
}

/// An inclined wall: the same as a level one, wherever it lies.
#[test]
fn angle_and_place_make_no_difference() {
    let (c, s) = (0.6, 0.8);
    let at = |l: f64| (1.0e6 + c * l, -4.0e5 + s * l);
    let piles = [at(0.0), at(4.0), at(8.0)];
    let got = reactions(plan(&[&[at(0.0), at(8.0)]], &piles));
    for (g, w) in got.iter().zip([15.0, 50.0, 15.0]) {
        close(*g, w, 1e-8);
    }
}

/// Load over a part, and one that varies: from the simple beam. Triangle of 12 kN/m over
/// 6 m: 12 and 24 kN.
#[test]
fn partial_and_varying_loads() {
    let mut v = plan(&[&[(0.0, 0.0), (6.0, 0.0)]], &[(0.0, 0.0), (6.0, 0.0)]);
    v["beams"][0]["line_loads"] = json!([
        {"kind": "dead", "load": {"value": 0, "unit": "kN_per_m"},
         "load_at_end": {"value": 12, "unit": "kN_per_m"}},
    ]);
    all_close(&reactions(v.clone()), &[12.0, 24.0]);
    v["beams"][0]["points"].as_array_mut().unwrap().reverse();
    all_close(&reactions(v.clone()), &[24.0, 12.0]);
    v["beams"][0]["line_loads"] = json!([
        {"kind": "dead", "load": {"value": 9, "unit": "kN_per_m"},
         "from": {"value": 4, "unit": "m"}, "to": {"value": 6, "unit": "m"}},
    ]);
    // beam reversed: the load lies at x = 0 to 2 m
    all_close(&reactions(v), &[15.0, 3.0]);
}

#[test]
fn all_faults_are_found_at_once() {
    let mut v = plan(
        &[&[(0.0, 0.0), (8.0, 0.0)], &[(0.0, 5.0), (8.0, 5.0)]],
        &[(0.0, 0.0), (8.0, 0.1), (8.0, 0.0), (8.001, 0.0)],
    );
    v["beams"][0]["line_loads"][0]["to"] = json!({"value": 8.1, "unit": "m"});
    v["beams"][1]["line_loads"][0]["from"] = json!({"value": 8, "unit": "m"});
    v["point_loads"] = json!([{"kind": "dead", "at": {"x": {"value": 1, "unit": "m"},
        "y": {"value": 1, "unit": "m"}}, "load": {"value": 1, "unit": "kN"}}]);
    v["pile_capacity"] = json!({"level": "factored", "compression": {"value": 1, "unit": "kN"},
        "tension": {"value": 0, "unit": "kN"}});
    let found = faults(v);
    let want = [
        ("/beams/0/line_loads/0", "line_load_off_beam"),
        ("/beams/1/line_loads/0", "line_load_off_beam"),
        ("/pile_capacity/level", "basis_mixed"),
        ("/piles/given/positions/1/at", "pile_off_beam"),
        ("/point_loads/0/at", "point_load_off_beam"),
    ];
    assert_eq!(found, want.map(|(p, c)| (p.to_owned(), c.to_owned())));
}

#[test]
fn faults_of_geometry() {
    let ok = [(0.0, 0.0), (8.0, 0.0)];
    // crossing itself, doubling back, touching itself
    for bad in [
        vec![(0.0, 0.0), (8.0, 0.0), (8.0, 4.0), (4.0, 4.0), (4.0, -2.0)],
        vec![(0.0, 0.0), (8.0, 0.0), (3.0, 0.0)],
        vec![(0.0, 0.0), (8.0, 0.0), (8.0, 4.0), (4.0, 0.0)],
    ] {
        let found = faults(plan(&[&bad], &ok));
        assert!(
            found.iter().all(|f| f.1 == "beam_crosses_itself"),
            "{found:?}"
        );
    }
    // lying on each other: along, inside, from one point
    for other in [
        [(2.0, 0.0), (6.0, 0.0)],
        [(6.0, 0.0), (12.0, 0.0)],
        [(0.0, 0.0), (3.0, 0.0)],
    ] {
        let found = faults(plan(&[&ok, &other], &ok));
        assert!(found.iter().all(|f| f.1 == "beams_overlap"), "{found:?}");
    }
    // a part without a pile, and one that can tip
    let apart = plan(&[&ok, &[(0.0, 5.0), (8.0, 5.0)]], &ok);
    assert_eq!(
        faults(apart),
        [("/beams/1".to_owned(), "beam_unsupported".to_owned())]
    );
    let tips = plan(
        &[&ok, &[(0.0, 5.0), (8.0, 5.0)]],
        &[ok[0], ok[1], (3.0, 5.0)],
    );
    assert_eq!(
        faults(tips),
        [("/beams/1".to_owned(), "beam_mechanism".to_owned())]
    );
}
