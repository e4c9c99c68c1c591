//! Faults of form lines, all at once and pointed at what was sent; and what is within the
//! 3 mm that make one point.

use serde_json::{Value, json};

use super::close;
use super::outline::{at, faults, line, m, pairs, plan, solved};

fn outline(points: &[(f64, f64)]) -> Value {
    let points: Vec<Value> = points.iter().map(|p| at(*p)).collect();
    json!({"points": points, "beam_width": {"value": 400, "unit": "mm"},
           "line_loads": [line("dead", 10.0)]})
}

const BOX: [(f64, f64); 5] = [(0.0, 0.0), (8.0, 0.0), (8.0, 6.0), (0.0, 6.0), (0.0, 0.0)];
const CORNERS: [(f64, f64); 4] = [(0.2, 0.2), (7.8, 0.2), (7.8, 5.8), (0.2, 5.8)];

fn only(o: Value) -> Vec<(String, String)> {
    faults(&plan(json!([]), json!([o]), &CORNERS))
}

#[test]
fn faults_of_a_form_line() {
    let bow = outline(&[(0.0, 0.0), (8.0, 6.0), (8.0, 0.0), (0.0, 6.0), (0.0, 0.0)]);
    assert_eq!(
        only(bow),
        pairs(&[("/outlines/0/points/2", "outline_crosses_itself")])
    );
    let twice = outline(&[(0.0, 0.0), (8.0, 0.0), (8.0, 0.002), (8.0, 6.0), (0.0, 0.0)]);
    assert_eq!(
        only(twice),
        pairs(&[
            ("/outlines/0/points/2", "outline_crosses_itself"),
            ("/outlines/0/points/2", "outline_side_zero_length"),
        ])
    );
    assert_eq!(
        only(outline(&BOX[..4])),
        pairs(&[("/outlines/0", "outline_inside_unclear")])
    );
    let mut ring = outline(&BOX);
    ring["inside"] = json!("left");
    assert_eq!(
        only(ring),
        pairs(&[("/outlines/0/inside", "outline_inside_unclear")])
    );
    let mut sides = outline(&BOX);
    sides["pile_inset"] = json!({"value": 400, "unit": "mm"});
    sides["sides"] = json!([{"side": 2}, {"side": 5}, {"side": 2},
        {"side": 3, "pile_inset": {"value": 0.5, "unit": "m"}}]);
    assert_eq!(
        only(sides),
        pairs(&[
            ("/outlines/0/pile_inset", "outline_inset_outside"),
            ("/outlines/0/sides/1/side", "outline_side_unknown"),
            ("/outlines/0/sides/2/side", "outline_side_twice"),
            ("/outlines/0/sides/3/pile_inset", "outline_inset_outside"),
        ])
    );
    // a bay 0.6 m wide for beams of 0.4 m: the centre line has 0.2 m, the inner face -0.2 m
    let bay = outline(&[
        (0.0, 0.0),
        (3.0, 0.0),
        (3.0, -0.5),
        (3.6, -0.5),
        (3.6, 0.0),
        (8.0, 0.0),
        (8.0, 6.0),
        (0.0, 6.0),
        (0.0, 0.0),
    ]);
    assert_eq!(
        only(bay),
        pairs(&[("/outlines/0/points/2", "outline_side_vanishes")])
    );
    let sharp = outline(&[(0.0, 0.0), (40.0, -2.0), (40.0, 2.0), (0.0, 0.0)]);
    assert_eq!(
        only(sharp),
        pairs(&[("/outlines/0/points/0", "outline_corner_too_sharp")])
    );
    let mut step = outline(&[
        (0.0, 0.0),
        (4.0, 0.0),
        (8.0, 0.0),
        (8.0, 6.0),
        (0.0, 6.0),
        (0.0, 0.0),
    ]);
    step["sides"] = json!([{"side": 2, "beam_width": {"value": 500, "unit": "mm"}}]);
    assert_eq!(
        only(step),
        pairs(&[("/outlines/0/points/1", "outline_sides_step")])
    );
    let neck = outline(&[
        (0.0, 0.0),
        (5.0, 0.0),
        (5.0, 2.7),
        (8.0, 2.7),
        (8.0, 0.0),
        (13.0, 0.0),
        (13.0, 6.0),
        (8.0, 6.0),
        (8.0, 3.3),
        (5.0, 3.3),
        (5.0, 6.0),
        (0.0, 6.0),
        (0.0, 0.0),
    ]);
    let found = only(neck);
    assert!(!found.is_empty());
    assert!(
        found.iter().all(|f| f.1 == "outline_too_narrow"),
        "{found:?}"
    );
}

/// Faults that show on the beams of a side are pointed at what was sent for it, and with
/// faults of the outline beside them.
#[test]
fn faults_of_sides_point_at_the_outline() {
    let mut o = outline(&BOX);
    o["line_loads"] = json!([line("frost", 5.0)]);
    o["sides"] = json!([
        {"side": 2, "label": "E", "line_loads": [line("swell", 1.0)]},
        {"side": 3, "label": "E"},
        {"side": 4, "line_loads": [{"kind": "dead", "load": {"value": 1, "unit": "kN_per_m"},
                                    "from": m(5.0), "to": m(5.0)}]},
    ]);
    assert_eq!(
        only(o.clone()),
        pairs(&[
            ("/outlines/0/line_loads/0/kind", "load_kind_not_combined"),
            (
                "/outlines/0/sides/0/line_loads/0/kind",
                "load_kind_not_combined"
            ),
            ("/outlines/0/sides/1/label", "duplicate_label"),
        ])
    );
    o["line_loads"] = json!([line("dead", 5.0)]);
    o["sides"][0] = json!({"side": 2});
    assert_eq!(
        only(o.clone()),
        pairs(&[("/outlines/0/sides/2/line_loads/0", "line_load_off_beam")])
    );
    o["sides"] = json!([]);
    o["flexural_rigidity"] = json!({"value": 1000, "unit": "kN_m2"});
    let wall = json!({"points": [at((0.2, 3.0)), at((7.8, 3.0))]});
    assert_eq!(
        faults(&plan(json!([wall.clone()]), json!([o]), &CORNERS)),
        pairs(&[("/beams/0", "rigidity_needed")])
    );
    // an outline that stands on nothing, and a beam on top of a side
    let mut garage = outline(&BOX);
    let moved: Vec<Value> = BOX.iter().map(|p| at((p.0 + 20.0, p.1))).collect();
    garage["points"] = json!(moved);
    let two = plan(json!([]), json!([outline(&BOX), garage]), &CORNERS);
    assert_eq!(faults(&two), pairs(&[("/outlines/1", "beam_unsupported")]));
    let top = json!({"points": [at((1.0, 0.2)), at((5.0, 0.2))]});
    let found = faults(&plan(json!([top]), json!([outline(&BOX)]), &CORNERS));
    assert_eq!(found, pairs(&[("/outlines/0", "beams_overlap")]));
}

#[test]
fn faults_of_joined_ends() {
    let join =
        |a: (f64, f64), b: (f64, f64)| json!({"points": [at(a), at(b)], "joins_outline": true});
    let list = json!([
        // far from any wall; and stands in the south wall, but runs along it
        join((2.0, 2.0), (5.0, 2.0)),
        join((3.0, 0.3), (5.0, 0.31)),
        join((0.39, 4.0), (7.0, 4.0)),
    ]);
    assert_eq!(
        faults(&plan(list, json!([outline(&BOX)]), &CORNERS)),
        pairs(&[
            ("/beams/0/joins_outline", "join_nothing"),
            ("/beams/1/points/0", "join_misses"),
            ("/beams/1/points/1", "join_misses"),
        ])
    );
    // a load that begins before the shortened beam does: drawn from the form line, 0.2 m less
    let mut short = join((0.0, 3.0), (7.8, 3.0));
    short["line_loads"] = json!([{"kind": "dead", "load": {"value": 1, "unit": "kN_per_m"},
        "from": m(0.1), "to": m(3.0)}]);
    assert_eq!(
        faults(&plan(json!([short]), json!([outline(&BOX)]), &CORNERS)),
        pairs(&[("/beams/0/line_loads/0/from", "line_load_off_beam")])
    );
    let none = plan(
        json!([join((0.0, 0.0), (4.0, 0.0))]),
        json!([]),
        &[(0.0, 0.0), (4.0, 0.0)],
    );
    assert_eq!(
        faults(&none),
        pairs(&[("/beams/0/joins_outline", "join_nothing")])
    );
}

/// A beam whose corner leaves no inner edge.
#[test]
fn a_beam_too_wide_for_its_corners() {
    let mut beam = json!({"points": [at((0.0, 0.0)), at((4.0, 0.0)), at((4.0, 0.5)), at((8.0, 0.5))],
        "width": {"value": 400, "unit": "mm"}, "line_loads": [line("dead", 1.0)]});
    let piles = [(0.0, 0.0), (4.0, 0.0), (4.0, 0.5), (8.0, 0.5)];
    let a = solved(&plan(json!([beam.clone()]), json!([]), &piles));
    // mitred: the left edge turns at (3.8, 0.2) and (3.8, 0.7)
    let left = &a.result.beams[0].edges.as_ref().unwrap()[0].left;
    let want = [(0.0, 0.2), (3.8, 0.2), (3.8, 0.7), (8.0, 0.7)];
    for (p, w) in left.iter().zip(want) {
        close(p.x.si(), w.0, 1e-12);
        close(p.y.si(), w.1, 1e-12);
    }
    // a step back: both corners take from the same edge
    beam["points"] = json!([
        at((0.0, 0.0)),
        at((4.0, 0.0)),
        at((4.0, 0.5)),
        at((0.0, 0.5))
    ]);
    beam["width"] = json!({"value": 510, "unit": "mm"});
    let back = [(0.0, 0.0), (4.0, 0.0), (4.0, 0.5), (0.0, 0.5)];
    assert_eq!(
        faults(&plan(json!([beam]), json!([]), &back)),
        pairs(&[("/beams/0/width", "beam_too_wide")])
    );
}

/// Ends 2.9 mm apart are one point, 3.1 mm apart are two.
#[test]
fn three_millimetres_make_one_point() {
    let wall = |a: (f64, f64), b: (f64, f64)| json!({"points": [at(a), at(b)], "line_loads": [line("dead", 10.0)]});
    let piles = [(0.0, 0.0), (8.0, 0.0), (4.0, 4.0)];
    let gap = |g: f64| {
        plan(
            json!([wall((0.0, 0.0), (8.0, 0.0)), wall((4.0, g), (4.0, 4.0))]),
            json!([]),
            &piles,
        )
    };
    // the stem brings half of 10 x 4 kN to the middle of the header: 40 + 10 kN at its piles
    let a = solved(&gap(0.0029));
    for (p, want) in a.result.piles.iter().zip([50e3, 50e3, 20e3]) {
        close(p.rigid.max.si(), want, 1e-3);
    }
    assert_eq!(
        faults(&gap(0.0031)),
        pairs(&[("/beams/1", "beam_mechanism")])
    );
    // a point of one beam on a straight line, and points of two beams within 2 mm
    let piles = [(0.0, 0.0), (4.0, 0.0), (8.0, 0.0)];
    let split = plan(
        json!([wall((0.0, 0.0), (3.0, 0.0)), wall((3.002, 0.0), (8.0, 0.0))]),
        json!([]),
        &piles,
    );
    for (p, want) in solved(&split).result.piles.iter().zip([15e3, 50e3, 15e3]) {
        close(p.rigid.max.si(), want, 1e-3);
    }
}
