//! Slabs through the whole calculation: what goes to the beams, and where an edge must be.

use serde_json::{Value, json};

use super::{FT, LBF, answer, answered, close};
use crate::layout::{LayoutSlab, Request, SpanningUsed};

fn at(x: f64, y: f64) -> Value {
    json!({"x": {"value": x, "unit": "m"}, "y": {"value": y, "unit": "m"}})
}

/// A ring of four beams about a slab, turned, with piles at its corners and a beam across.
fn plan(corners: &[(f64, f64)], slabs: Vec<Value>, width: Option<f64>) -> Value {
    let n = corners.len();
    let mut beams: Vec<Value> = (0..n)
        .map(|i| {
            let (a, b) = (corners[i], corners[(i + 1) % n]);
            json!({"label": format!("{i}"), "points": [at(a.0, a.1), at(b.0, b.1)]})
        })
        .collect();
    if let Some(width) = width {
        for beam in &mut beams {
            beam["width"] = json!({"value": width, "unit": "m"});
        }
    }
    let piles: Vec<Value> = corners
        .iter()
        .map(|c| json!({"at": at(c.0, c.1)}))
        .collect();
    json!({
        "design_basis": {"allowable_stress": {"combinations": {"own": {"list": [
            {"name": "D", "factors": [{"kind": "dead", "factor": 1}]}]}}}},
        "beams": beams,
        "slabs": slabs,
        "piles": {"given": {"positions": piles}},
    })
}

fn slab(corners: &[(f64, f64)]) -> Value {
    let corners: Vec<Value> = corners.iter().map(|c| at(c.0, c.1)).collect();
    json!({"corners": corners, "loads": [{"kind": "dead", "load": {"value": 3.0, "unit": "kPa"}}]})
}

fn run(request: Value) -> crate::contract::Answer<crate::layout::Outcome> {
    let call = serde_json::from_value(request).unwrap();
    answer(&call).unwrap_or_else(|e| panic!("{e:?}"))
}

fn refused(request: Value) -> Vec<(String, String, String)> {
    let call: crate::contract::Call<Request> = serde_json::from_value(request).unwrap();
    let refusal = answer(&call).unwrap_err();
    let told =
        |i: &crate::contract::Issue| (i.pointer.clone(), i.code.to_string(), i.detail.clone());
    refusal.issues.iter().map(told).collect()
}

fn sums(slab: &LayoutSlab) {
    let area: f64 = slab.beams.iter().map(|b| b.area.si()).sum();
    close(area, slab.area.si(), 1e-12);
    for (i, load) in slab.loads.iter().enumerate() {
        let on_beams: f64 = slab.beams.iter().map(|b| b.loads[i].load.si()).sum();
        close(on_beams, load.load.si(), 1e-12);
        assert_eq!(slab.beams[0].loads[i].case, load.case);
    }
}

/// Garage 14 x 16 ft two way: triangles of 49 ft2 on the 14 ft sides, (224 - 98)/2 = 63 ft2
/// on the others; 224 ft2 at 125 psf in all. The workshop of 10 x 16 ft is two way by its
/// ratio of 1.6, the apron of 24 x 6 ft one way by 4.
#[test]
fn a_floor_of_four_slabs() {
    let a = answered("slab-on-void-form");
    let slabs = a.result.slabs.as_ref().unwrap();
    let ft2 = FT * FT;
    let on = |s: usize, beam: &str| {
        let found = slabs[s].beams.iter().find(|b| b.beam == beam).unwrap();
        found.area.si() / ft2
    };
    for s in slabs {
        sums(s);
    }
    let garage = &slabs[0];
    close(garage.area.si() / ft2, 224.0, 1e-12);
    close(garage.loads[0].load.si() / LBF, 224.0 * 75.0, 1e-12);
    close(garage.loads[1].load.si() / LBF, 224.0 * 50.0, 1e-12);
    close(on(0, "S"), 49.0, 1e-12);
    close(on(0, "N"), 49.0, 1e-12);
    close(on(0, "W"), 63.0, 1e-12);
    close(on(0, "M"), 63.0, 1e-12);
    assert_eq!(slabs[1].spanning, SpanningUsed::TwoWay);
    close(on(1, "S"), 25.0, 1e-12);
    close(on(1, "E"), 55.0, 1e-12);
    assert_eq!(slabs[2].spanning, SpanningUsed::OneWay);
    close(
        slabs[2].strips_from_east.unwrap().si(),
        crate::math::PI / 2.0,
        1e-12,
    );
    close(on(2, "S"), 72.0, 1e-12);
    close(on(2, "P"), 72.0, 1e-12);
    assert_eq!(slabs[2].beams.len(), 2);
    // bay: sides 16, 8 sqrt 2, 8 sqrt 2: shares by length
    let root = 2f64.sqrt();
    close(on(3, "E"), 64.0 * 16.0 / (16.0 + 16.0 * root), 1e-12);
    close(on(3, "T"), 64.0 * 16.0 * root / (16.0 + 16.0 * root), 1e-12);
    // all of it comes down on the piles
    let lines = 450.0 * (24.0 * 3.0 + 22.0 * 2.0 + 16.0 + 16.0 * root);
    let areas = 224.0 + 160.0 + 144.0 + 64.0;
    let d = a
        .result
        .combinations
        .iter()
        .find(|c| c.name == "D")
        .unwrap();
    close(d.total_load.si() / LBF, lines + 75.0 * areas, 1e-12);
    let dl = a
        .result
        .combinations
        .iter()
        .find(|c| c.name == "D+L")
        .unwrap();
    close(dl.total_load.si() / LBF, lines + 125.0 * areas, 1e-12);
    close(dl.total_reaction.si(), dl.total_load.si(), 1e-12);
    assert!(a.result.statics_residual_ratio <= 1e-9);
    assert!(a.defaults.iter().any(|d| d.name == "one_way_slab_ratio"));
}

/// Loads of a slab are line loads: triangles and trapezoids sent by hand give the same
/// moments and reactions.
#[test]
fn the_same_as_line_loads_by_hand() {
    let corners = [(0.0, 0.0), (5.0, 0.0), (5.0, 4.0), (0.0, 4.0)];
    let with = run(plan(&corners, vec![slab(&corners)], None));
    let mut by_hand = plan(&corners, Vec::new(), None);
    let load = |from: f64, to: f64, a: f64, b: f64| {
        json!({"kind": "dead",
            "load": {"value": a, "unit": "kN_per_m"}, "load_at_end": {"value": b, "unit": "kN_per_m"},
            "from": {"value": from, "unit": "m"}, "to": {"value": to, "unit": "m"}})
    };
    for (i, long) in [(0, true), (1, false), (2, true), (3, false)] {
        by_hand["beams"][i]["line_loads"] = if long {
            json!([
                load(0.0, 2.0, 0.0, 6.0),
                load(2.0, 3.0, 6.0, 6.0),
                load(3.0, 5.0, 6.0, 0.0)
            ])
        } else {
            json!([load(0.0, 2.0, 0.0, 6.0), load(2.0, 4.0, 6.0, 0.0)])
        };
    }
    let by_hand = run(by_hand);
    for (a, b) in with.result.piles.iter().zip(&by_hand.result.piles) {
        close(a.rigid.max.si(), b.rigid.max.si(), 1e-12);
    }
    for (a, b) in with.result.beams.iter().zip(&by_hand.result.beams) {
        close(a.sagging.moment.si(), b.sagging.moment.si(), 1e-12);
        close(a.shear.shear.si(), b.shear.shear.si(), 1e-12);
    }
    // triangle on a span of 4 m: W L/6 = 12 x 4/6 = 8 kN m
    close(with.result.beams[1].sagging.moment.si(), 8_000.0, 1e-12);
}

/// The order and the sense of the corners, the order of beams and their sense, and a turn of
/// the whole plan make no difference to the piles.
#[test]
fn neither_order_nor_direction_matters() {
    let corners = [(0.0, 0.0), (6.0, 0.5), (7.0, 4.0), (2.5, 6.0), (-1.0, 3.0)];
    let first = run(plan(&corners, vec![slab(&corners)], None));
    let mut back: Vec<(f64, f64)> = corners.to_vec();
    back.reverse();
    back.rotate_left(2);
    let again = run(plan(&corners, vec![slab(&back)], None));
    let (c, s) = (crate::math::cos(0.7), crate::math::sin(0.7));
    let turned: Vec<(f64, f64)> = corners
        .iter()
        .map(|(x, y)| (c * x - s * y + 1_000.0, s * x + c * y - 500.0))
        .collect();
    let turned = run(plan(&turned, vec![slab(&turned)], None));
    let mut other = plan(&corners, vec![slab(&corners)], None);
    for beam in other["beams"].as_array_mut().unwrap() {
        beam["points"].as_array_mut().unwrap().reverse();
    }
    let other = run(other);
    for (i, p) in first.result.piles.iter().enumerate() {
        close(
            again.result.piles[i].rigid.max.si(),
            p.rigid.max.si(),
            1e-12,
        );
        close(
            turned.result.piles[i].rigid.max.si(),
            p.rigid.max.si(),
            1e-9,
        );
        close(
            other.result.piles[i].rigid.max.si(),
            p.rigid.max.si(),
            1e-12,
        );
    }
    sums(&first.result.slabs.unwrap()[0]);
    sums(&turned.result.slabs.unwrap()[0]);
}

/// An edge over several beams and over a corner that is none is shared out exactly; a slab
/// that ends 3 mm short is on its beams.
#[test]
fn an_edge_on_several_beams() {
    let mut request = plan(
        &[(0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (0.0, 4.0)],
        vec![slab(&[
            (0.002, 0.0),
            (2.9, 0.001),
            (6.0, 0.0),
            (6.0, 4.002),
            (0.0, 4.0),
        ])],
        None,
    );
    let beams = request["beams"].as_array_mut().unwrap();
    beams[0] = json!({"label": "left", "points": [at(0.0, 0.0), at(1.0, 0.0)]});
    beams.push(json!({"label": "middle", "points": [at(4.5, 0.0), at(1.0, 0.0)]}));
    beams.push(json!({"label": "right", "points": [at(4.5, 0.0), at(6.0, 0.0)]}));
    let a = run(request);
    let s = &a.result.slabs.as_ref().unwrap()[0];
    sums(s);
    let on = |beam: &str| s.beams.iter().find(|b| b.beam == beam).unwrap();
    // the trapezoid of 2 m cut at 1 and at 4.5 m, to the millimetres that the slab is off
    assert!((on("left").area.si() - 0.5).abs() < 0.01);
    assert!((on("middle").area.si() - (1.5 + 4.0 + 0.5 * (2.0 + 1.5) * 0.5)).abs() < 0.03);
    assert!((on("right").area.si() - 1.5 * 1.5 / 2.0).abs() < 0.01);
    close(on("middle").length.si(), 3.5, 1e-3);
    close(
        a.result.combinations[0].total_load.si(),
        3_000.0 * s.area.si(),
        1e-12,
    );
}

/// Corners at the inner faces of beams of 0.4 m are on the beams by their width, and not
/// without it; the load is moved onto the centre line.
#[test]
fn half_the_width_of_a_beam_is_near_enough() {
    let ring = [(0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (0.0, 4.0)];
    let inner = [(0.2, 0.2), (5.8, 0.2), (5.8, 3.8), (0.2, 3.8)];
    let outer = [(-0.2, -0.2), (6.2, -0.2), (6.2, 4.2), (-0.2, 4.2)];
    for (corners, area) in [(inner, 5.6 * 3.6), (outer, 6.4 * 4.4)] {
        let a = run(plan(&ring, vec![slab(&corners)], Some(0.4)));
        let s = &a.result.slabs.as_ref().unwrap()[0];
        close(s.area.si(), area, 1e-12);
        sums(s);
        close(
            a.result.combinations[0].total_load.si(),
            3_000.0 * area,
            1e-12,
        );
        let found = refused(plan(&ring, vec![slab(&corners)], Some(0.39)));
        assert_eq!(found.len(), 4);
        assert!(found.iter().all(|f| f.1 == "slab_edge_without_beam"));
    }
}

/// The fault names the edge and the bare part of it; a side along the strips needs no beam.
#[test]
fn an_edge_without_a_beam() {
    let ring = [(0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (0.0, 4.0)];
    let half = [(0.0, 0.0), (3.0, 0.0), (3.0, 4.0), (0.0, 4.0)];
    let found = refused(plan(&ring, vec![slab(&half)], None));
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].0, "/slabs/0/corners/1");
    assert!(
        found[0]
            .2
            .contains("from corner 1 to corner 2 is on no beam from 0 m"),
        "{}",
        found[0].2
    );
    let mut one_way = slab(&half);
    one_way["spanning"] = json!({"one_way": {"strips": {"square_to_beam": {"beam": "0"}}}});
    let a = run(plan(&ring, vec![one_way], None));
    let s = &a.result.slabs.as_ref().unwrap()[0];
    sums(s);
    assert_eq!(s.beams.len(), 2);
    close(s.beams[0].widest.si(), 2.0, 1e-12);
}

/// Every spanning by the caller's own choice: a hall with a re-entrant corner in strips
/// square to a beam, whose edges are at the inner faces, and strips at an angle.
#[test]
fn strips_by_choice() {
    let a = answered("slab-one-way");
    let slabs = a.result.slabs.as_ref().unwrap();
    for s in slabs {
        sums(s);
        assert_eq!(s.spanning, SpanningUsed::OneWay);
    }
    // 4 m of strips 4.6 m long and 3.6 m of strips 7.6 m
    close(slabs[0].area.si(), 4.0 * 4.6 + 3.6 * 7.6, 1e-12);
    let on = |s: usize, beam: &str| {
        let found = slabs[s].beams.iter().find(|b| b.beam == beam).unwrap();
        found.area.si()
    };
    close(on(0, "S"), 0.5 * (4.0 * 4.6 + 3.6 * 7.6), 1e-12);
    close(on(0, "N"), 0.5 * 4.0 * 4.6, 1e-12);
    close(on(0, "U"), 0.5 * 3.6 * 7.6, 1e-12);
    assert_eq!(slabs[0].loads.len(), 3);
    close(
        slabs[1].strips_from_east.unwrap().si(),
        crate::math::PI / 6.0,
        1e-12,
    );
    assert_eq!(slabs[1].beams.len(), 4);
    let steps = a.steps.as_ref().unwrap();
    assert!(steps.iter().any(|s| s.symbol == "A_b"));
}
