//! Openings: figures by hand, what is kept, and gaps in the beam.

use serde_json::{Value, json};

use super::close;
use super::outline::{at, faults, line, m, pairs, plan, solved};

/// A beam of 10 m on piles at its ends, with an even load and one opening.
fn beam(openings: Value, loads: Value) -> Value {
    json!({"label": "A", "points": [at((0.0, 0.0)), at((10.0, 0.0))],
           "width": {"value": 400, "unit": "mm"},
           "line_loads": loads, "openings": openings})
}

fn opening(from: f64, to: f64, kind: &str) -> Value {
    json!({"from": m(from), "to": m(to), "kind": kind})
}

const ENDS: [(f64, f64); 2] = [(0.0, 0.0), (10.0, 0.0)];

/// A door of 2 m at the middle of a simple beam: the reactions stay, and the moment under it
/// becomes 125 - 10 x 2^2/8 = 120 kN m, as the header takes its own.
#[test]
fn a_door_in_a_wall() {
    let a = solved(&plan(
        json!([beam(
            json!([opening(4.0, 6.0, "load_free")]),
            json!([line("dead", 10.0)])
        )]),
        json!([]),
        &ENDS,
    ));
    for p in &a.result.piles {
        close(p.rigid.max.si(), 50e3, 1e-12);
    }
    close(a.result.combinations[0].total_load.si(), 100e3, 1e-12);
    close(a.result.beams[0].sagging.moment.si(), 120e3, 1e-12);
}

/// A load that varies goes to the jambs as a simple beam brings it: force and moment are kept,
/// so that the simple beam below has the reactions it had. 0 to 12 kN/m over 10 m: 20 and 40 kN.
#[test]
fn a_varying_load_over_a_window() {
    let varying = json!([{"kind": "dead", "load": {"value": 0, "unit": "kN_per_m"},
                          "load_at_end": {"value": 12, "unit": "kN_per_m"}}]);
    for openings in [
        json!([]),
        json!([opening(1.0, 3.5, "load_free")]),
        json!([
            opening(6.0, 9.0, "load_free"),
            opening(1.0, 3.5, "load_free")
        ]),
        // to the very end
        json!([opening(7.0, 10.0, "load_free")]),
    ] {
        let a = solved(&plan(
            json!([beam(openings, varying.clone())]),
            json!([]),
            &ENDS,
        ));
        close(a.result.piles[0].rigid.max.si(), 20e3, 1e-12);
        close(a.result.piles[1].rigid.max.si(), 40e3, 1e-12);
    }
}

/// Only what the header carries is moved: with dead load named, live load goes on; the weight
/// of the beam goes on anyhow. Midspan moment: 120 kN m where moved, 125 where not.
#[test]
fn what_a_header_carries() {
    let mut door = opening(4.0, 6.0, "load_free");
    for (kinds, follows, want) in [
        (json!(null), false, 120e3),
        (json!(["dead"]), false, 120e3),
        (json!(["live", "snow"]), false, 125e3),
        (json!(null), true, 125e3),
        (json!(["dead"]), true, 125e3),
    ] {
        door["kinds"] = kinds;
        let mut load = line("dead", 10.0);
        load["follows_beam"] = json!(follows);
        let a = solved(&plan(
            json!([beam(json!([door]), json!([load]))]),
            json!([]),
            &ENDS,
        ));
        close(a.result.beams[0].sagging.moment.si(), want, 1e-12);
    }
}

/// A garage door without a beam: two beams that know nothing of each other. The header brings
/// half of 10 x 4 kN to each jamb; the weight of the beam stops there.
#[test]
fn a_garage_door_cuts_the_beam() {
    let mut door = opening(3.0, 7.0, "no_beam");
    door["kinds"] = json!(["live"]);
    let mut weight = line("dead", 5.0);
    weight["follows_beam"] = json!(true);
    let loads = json!([weight, line("live", 10.0)]);
    let piles = [(0.0, 0.0), (3.0, 0.0), (7.0, 0.0), (10.0, 0.0)];
    let a = solved(&plan(
        json!([beam(json!([door]), loads)]),
        json!([]),
        &piles,
    ));
    // D + L by hand: 3 m x 15/2 = 22.5 kN; and 20 kN of the header on the jamb's pile
    for (p, want) in a.result.piles.iter().zip([22.5e3, 42.5e3, 42.5e3, 22.5e3]) {
        close(p.rigid.max.si(), want, 1e-12);
    }
    close(a.result.combinations[0].total_load.si(), 30e3, 1e-12);
    let row = &a.result.beams[0];
    close(row.length.si(), 10.0, 1e-12);
    close(row.sagging.moment.si(), 15e3 * 9.0 / 8.0, 1e-12);
    // no span leads over the opening
    close(
        a.result
            .spacing
            .longest_span
            .as_ref()
            .unwrap()
            .distance
            .si(),
        3.0,
        1e-12,
    );
    // edges in two parts, 0.2 m to either side
    let edges = row.edges.as_ref().unwrap();
    assert_eq!(edges.len(), 2);
    for (part, (from, to)) in edges.iter().zip([(0.0, 3.0), (7.0, 10.0)]) {
        for (edge, y) in [(&part.left, 0.2), (&part.right, -0.2)] {
            assert_eq!(edge.len(), 2);
            close(edge[0].x.si(), from, 1e-12);
            close(edge[1].x.si(), to, 1e-12);
            close(edge[0].y.si(), y, 1e-12);
        }
    }
}

/// The same beam sent from its other end gives the same.
#[test]
fn the_direction_of_a_beam_with_openings() {
    let loads = json!([line("dead", 10.0), line("snow", 4.0)]);
    let piles = [(0.0, 0.0), (3.0, 0.0), (5.5, 0.0), (10.0, 0.0)];
    let forth = json!([opening(1.0, 2.5, "load_free")]);
    let back = json!([opening(7.5, 9.0, "load_free")]);
    let a = solved(&plan(
        json!([beam(forth, loads.clone())]),
        json!([]),
        &piles,
    ));
    let mut turned = beam(back, loads);
    turned["points"].as_array_mut().unwrap().reverse();
    let b = solved(&plan(json!([turned]), json!([]), &piles));
    for (p, q) in a.result.piles.iter().zip(&b.result.piles) {
        close(p.rigid.max.si(), q.rigid.max.si(), 1e-12);
    }
}

/// The side of an outline with a door, measured along the form line as builders do.
#[test]
fn a_door_in_a_side() {
    let points = [(0.0, 0.0), (8.0, 0.0), (8.0, 6.0), (0.0, 6.0), (0.0, 0.0)].map(at);
    let outline = json!({"points": points, "beam_width": {"value": 400, "unit": "mm"},
        "line_loads": [line("dead", 10.0)],
        "sides": [{"side": 1, "measured_along": "form_line",
                   "openings": [opening(3.0, 5.0, "load_free")]}]});
    let corners = [(0.2, 0.2), (7.8, 0.2), (7.8, 5.8), (0.2, 5.8)];
    let a = solved(&plan(json!([]), json!([outline]), &corners));
    // 7.6 m: 10 x 7.6^2/8 = 72.2, less 10 x 2^2/8 = 5 under the door
    let beam = a.result.beams.iter().find(|b| b.label == "F1-1").unwrap();
    close(beam.sagging.moment.si(), 67.2e3, 1e-9);
}

/// A ring with a bay, begun at another corner and run the other way round, with its sides
/// numbered and its door measured accordingly: the same piles carry the same.
#[test]
fn a_ring_sent_otherwise() {
    let ring = [
        (0.0, 0.0),
        (3.0, 0.0),
        (4.0, -1.0),
        (6.0, -1.0),
        (7.0, 0.0),
        (10.0, 0.0),
        (10.0, 7.0),
        (0.0, 7.0),
    ];
    let n = ring.len();
    // corners of the bay lie 0.2 tan(22.5) m beside those of the form line
    let k = 0.2 * crate::math::tan(22.5f64.to_radians());
    let piles = [
        (3.0 + k, 0.2),
        (4.0 + k, -0.8),
        (6.0 - k, -0.8),
        (7.0 - k, 0.2),
        (0.2, 0.2),
        (9.8, 0.2),
        (9.8, 6.8),
        (0.2, 6.8),
        (0.2, 3.5),
        (9.8, 3.5),
        (3.0, 6.8),
        (5.0, 6.8),
        (5.0, -0.8),
        (1.5, 0.2),
        (8.5, 0.2),
    ];
    // door in the north wall, window in the bay; sides by their first corner
    let sent = |start: usize, back: bool| {
        let corner = |i: usize| {
            ring[if back {
                (start + n - i % n) % n
            } else {
                (start + i) % n
            }]
        };
        let points: Vec<Value> = (0..=n).map(|i| at(corner(i))).collect();
        let side = |first: usize| {
            let i = if back {
                (start + n - (first + 1) % n) % n
            } else {
                (first + n - start) % n
            };
            i + 1
        };
        let along = |from: f64, to: f64, length: f64| {
            let (a, b) = if back {
                (length - to, length - from)
            } else {
                (from, to)
            };
            json!([opening(a, b, "load_free")])
        };
        let outline = json!({"points": points, "beam_width": {"value": 400, "unit": "mm"},
        "line_loads": [line("dead", 10.0), line("snow", 6.0)],
        "sides": [
            {"side": side(6), "measured_along": "form_line", "openings": along(1.0, 3.5, 10.0)},
            {"side": side(2), "measured_along": "form_line", "openings": along(0.5, 1.2, 2.0)},
        ]});
        let a = solved(&plan(json!([]), json!([outline]), &piles));
        a.result
            .piles
            .iter()
            .map(|p| p.rigid.max.si())
            .collect::<Vec<f64>>()
    };
    let plain = sent(0, false);
    for (start, back) in [(3, false), (7, false), (0, true), (5, true)] {
        for (got, want) in sent(start, back).iter().zip(&plain) {
            close(*got, *want, 1e-8);
        }
    }
}

#[test]
fn faults_of_openings() {
    let loads = json!([line("dead", 10.0)]);
    let list = json!([
        opening(4.0, 4.0, "load_free"),
        opening(9.0, 10.5, "load_free"),
        opening(0.0, 1.0, "no_beam"),
        opening(6.0, 8.0, "load_free"),
        opening(7.0, 8.5, "load_free"),
    ]);
    let off = "opening_off_beam";
    assert_eq!(
        faults(&plan(json!([beam(list, loads.clone())]), json!([]), &ENDS)),
        pairs(&[
            ("/beams/0/openings/0", off),
            ("/beams/0/openings/1", off),
            ("/beams/0/openings/2", off),
            ("/beams/0/openings/4", "openings_overlap"),
        ])
    );
    let gap = json!([opening(3.0, 7.0, "no_beam")]);
    assert_eq!(
        faults(&plan(json!([beam(gap, loads.clone())]), json!([]), &ENDS)),
        pairs(&[("/beams/0/line_loads/0", "load_over_no_beam")])
    );
    // over a corner, and a part that nothing holds
    let mut bent = beam(json!([opening(9.0, 11.0, "load_free")]), loads);
    bent["points"] = json!([at((0.0, 0.0)), at((10.0, 0.0)), at((10.0, 5.0))]);
    assert_eq!(
        faults(&plan(json!([bent]), json!([]), &ENDS)),
        pairs(&[("/beams/0/openings/0", off)])
    );
    let mut cut = beam(json!([opening(6.0, 7.0, "no_beam")]), json!([]));
    cut["line_loads"] = json!([{"kind": "dead", "load": {"value": 1, "unit": "kN_per_m"},
        "from": m(0.0), "to": m(6.0)}]);
    assert_eq!(
        faults(&plan(json!([cut]), json!([]), &[(0.0, 0.0), (6.0, 0.0)])),
        pairs(&[("/beams/0", "beam_unsupported")])
    );
}
