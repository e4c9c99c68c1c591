//! Plans by their outside form line: the same as by centre lines, whichever way they lie and
//! are sent; loads in all, edges, joined ends.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::{answer, answered, close};
use crate::contract::{Answer, Call};
use crate::layout::{Outcome, Request, WhichEnd};

pub(super) fn m(v: f64) -> Value {
    json!({"value": v, "unit": "m"})
}

pub(super) fn at(p: (f64, f64)) -> Value {
    json!({"x": m(p.0), "y": m(p.1)})
}

pub(super) fn line(kind: &str, q: f64) -> Value {
    json!({"kind": kind, "load": {"value": q, "unit": "kN_per_m"}})
}

/// A plan with beams, outlines and piles, published combinations.
pub(super) fn plan(beams: Value, outlines: Value, piles: &[(f64, f64)]) -> Value {
    let piles: Vec<Value> = piles.iter().map(|p| json!({"at": at(*p)})).collect();
    json!({
        "design_basis": {"allowable_stress": {"combinations": {"published": {"edition": "asce_7_16"}}}},
        "beams": beams,
        "outlines": outlines,
        "piles": {"given": {"positions": piles}},
    })
}

fn call(value: &Value) -> Call<Request> {
    serde_json::from_value(value.clone()).unwrap()
}

pub(super) fn solved(value: &Value) -> Answer<Outcome> {
    let a = answer(&call(value)).unwrap_or_else(|e| panic!("{e:?}"));
    assert!(a.result.statics_residual_ratio <= 1e-9);
    a
}

pub(super) fn faults(value: &Value) -> Vec<(String, String)> {
    let refusal = answer(&call(value)).unwrap_err();
    let issues = refusal.issues.iter();
    issues
        .map(|i| (i.pointer.clone(), i.code.to_string()))
        .collect()
}

pub(super) fn pairs(list: &[(&str, &str)]) -> Vec<(String, String)> {
    let each = list.iter();
    each.map(|(p, c)| ((*p).to_owned(), (*c).to_owned()))
        .collect()
}

/// Reactions in kN.
fn reactions(a: &Answer<Outcome>) -> Vec<f64> {
    let piles = a.result.piles.iter();
    piles.map(|p| p.rigid.max.si() / 1e3).collect()
}

/// The form line of an L, 10.4 m by 8.4 m with a notch of 4 m by 3 m; centre lines 0.2 m in.
const L_FORM: [(f64, f64); 7] = [
    (-0.2, -0.2),
    (10.2, -0.2),
    (10.2, 5.2),
    (6.2, 5.2),
    (6.2, 8.2),
    (-0.2, 8.2),
    (-0.2, -0.2),
];

/// Its centre lines: 10 m by 8 m.
const L_CENTRE: [(f64, f64); 7] = [
    (0.0, 0.0),
    (10.0, 0.0),
    (10.0, 5.0),
    (6.0, 5.0),
    (6.0, 8.0),
    (0.0, 8.0),
    (0.0, 0.0),
];

const L_PILES: [(f64, f64); 14] = [
    (0.0, 0.0),
    (3.5, 0.0),
    (6.5, 0.0),
    (10.0, 0.0),
    (10.0, 2.5),
    (10.0, 5.0),
    (8.0, 5.0),
    (6.0, 5.0),
    (6.0, 8.0),
    (3.0, 8.0),
    (0.0, 8.0),
    (0.0, 5.5),
    (0.0, 2.5),
    (3.0, 2.5),
];

/// An interior beam from wall to wall, as drawn.
fn inner() -> Value {
    json!({"label": "I", "points": [at((0.15, 2.5)), at((9.8, 2.5))], "joins_outline": true,
           "line_loads": [line("dead", 4.0), line("live", 6.0)]})
}

fn l_outline(points: &[(f64, f64)]) -> Value {
    let points: Vec<Value> = points.iter().map(|p| at(*p)).collect();
    json!({"label": "L", "points": points,
           "beam_width": {"value": 400, "unit": "mm"},
           "line_loads": [line("dead", 12.0), line("snow", 5.0)]})
}

/// Drawn by the form line and by centre lines: the same, to rounding; either way round.
#[test]
fn a_form_line_is_its_centre_lines() {
    let by_form = solved(&plan(
        json!([inner()]),
        json!([l_outline(&L_FORM)]),
        &L_PILES,
    ));
    let walls: Vec<Value> = L_CENTRE
        .windows(2)
        .map(|w| {
            json!({"points": [at(w[0]), at(w[1])],
                   "line_loads": [line("dead", 12.0), line("snow", 5.0)]})
        })
        .chain([json!({"points": [at((0.0, 2.5)), at((10.0, 2.5))],
            "line_loads": [line("dead", 4.0), line("live", 6.0)]})])
        .collect();
    let by_centre = solved(&plan(json!(walls), json!([]), &L_PILES));
    for (a, b) in reactions(&by_form).iter().zip(reactions(&by_centre)) {
        close(*a, b, 1e-9);
    }
    let mut back = L_FORM;
    back.reverse();
    let reversed = solved(&plan(json!([inner()]), json!([l_outline(&back)]), &L_PILES));
    for (a, b) in reactions(&reversed).iter().zip(reactions(&by_centre)) {
        close(*a, b, 1e-9);
    }
    let labels: Vec<&str> = by_form
        .result
        .beams
        .iter()
        .map(|b| b.label.as_str())
        .collect();
    assert_eq!(labels, ["I", "L-1", "L-2", "L-3", "L-4", "L-5", "L-6"]);
    // ends: drawn within the wall and on its inner face, joined 0.15 m and 0.2 m farther
    let joined = by_form.result.joined_ends.as_ref().unwrap();
    let want = [(WhichEnd::First, "L-6", 0.15), (WhichEnd::Last, "L-2", 0.2)];
    assert_eq!(joined.len(), 2);
    for (j, (end, onto, by)) in joined.iter().zip(want) {
        assert_eq!((j.beam.as_str(), j.end, j.onto.as_str()), ("I", end, onto));
        close(j.longer_by.si(), by, 1e-9);
    }
    // and the answer about the form line: 10.4 x 8.4 less 4 x 3; strip 37.6 x 0.4 - 4 x 0.4 x 0.4
    let o = &by_form.result.outlines.as_ref().unwrap()[0];
    close(o.form_area.unwrap().si(), 75.36, 1e-9);
    close(o.form_length.si(), 37.6, 1e-9);
    close(o.centre_length.si(), 36.0, 1e-9);
    close(o.beam_area.si(), 37.6 * 0.4 - 4.0 * 0.16, 1e-9);
    close(o.sides[0].centre_from.si(), 0.2, 1e-9);
    // side 4 begins at the re-entrant corner
    close(o.sides[3].centre_from.si(), -0.2, 1e-9);
}

/// Linnet as it is drawn, against Linnet by centre lines.
#[test]
fn linnet_by_its_form_line() {
    let by_form = answered("linnet-form-line");
    let by_centre = answered("linnet");
    let named = |a: &Answer<Outcome>, label: &str| {
        let pile = a.result.piles.iter().find(|p| p.label == label);
        pile.unwrap_or_else(|| panic!("{label}")).rigid.clone()
    };
    assert_eq!(by_form.result.pile_count, 24);
    for pile in &by_centre.result.piles {
        let form = named(&by_form, &pile.label);
        close(form.max.si(), pile.rigid.max.si(), 1e-9);
        close(form.min.si(), pile.rigid.min.si(), 1e-9);
    }
    close(
        by_form.result.max_utilisation_ratio.unwrap(),
        by_centre.result.max_utilisation_ratio.unwrap(),
        1e-9,
    );
}

/// The load of a side is its load times its length: of the centre line, or of the form line.
#[test]
fn loads_of_an_outline_in_all() {
    for (per, length) in [("centre_line", 36.0), ("form_line", 37.6)] {
        let mut outline = l_outline(&L_FORM);
        outline["line_loads_per"] = json!(per);
        let a = solved(&plan(json!([]), json!([outline]), &L_PILES[..13]));
        let dead = a
            .result
            .combinations
            .iter()
            .find(|c| c.name == "D")
            .unwrap();
        close(dead.total_load.si(), 12e3 * length, 1e-12);
    }
    // left out it is the centre line
    let a = solved(&plan(
        json!([]),
        json!([l_outline(&L_FORM)]),
        &L_PILES[..13],
    ));
    close(a.result.combinations[0].total_load.si(), 12e3 * 36.0, 1e-12);
}

/// A side with a name, a width, an inset and loads of its own; the others keep theirs.
#[test]
fn a_side_of_its_own() {
    let mut outline = l_outline(&L_FORM);
    outline["sides"] = json!([
        {"side": 1, "label": "South", "beam_width": {"value": 600, "unit": "mm"},
         "line_loads": [{"kind": "dead", "load": {"value": 20, "unit": "kN_per_m"},
                         "from": m(0.2), "to": m(10.2)}],
         "measured_along": "form_line"},
    ]);
    // its inset is half its own width, 0.3 m: the centre line lies at y = 0.1
    let piles: Vec<(f64, f64)> = L_PILES[..13]
        .iter()
        .map(|p| (p.0, if p.1 == 0.0 { 0.1 } else { p.1 }))
        .collect();
    let a = solved(&plan(json!([]), json!([outline]), &piles));
    let south = a.result.beams.iter().find(|b| b.label == "South").unwrap();
    close(south.points[0].y.si(), 0.1, 1e-9);
    close(south.width.unwrap().si(), 0.6, 1e-12);
    close(south.length.si(), 10.0, 1e-9);
    // 0.2 to 10.2 m of the form line is the whole centre line
    let want = 20e3 * 10.0 + 12e3 * (4.9 + 4.0 + 3.0 + 6.0 + 7.9);
    close(a.result.combinations[0].total_load.si(), want, 1e-9);
    // edges: 0.3 m to either side, to the corners of the form line and of the inner faces
    let edges = &south.edges.as_ref().unwrap()[0];
    let points = |list: &[crate::layout::PlanPoint]| -> Vec<(f64, f64)> {
        list.iter().map(|p| (p.x.si(), p.y.si())).collect()
    };
    let want = [
        (points(&edges.left), [(0.2, 0.4), (9.8, 0.4)]),
        (points(&edges.right), [(-0.2, -0.2), (10.2, -0.2)]),
    ];
    for (got, want) in want {
        for (g, w) in got.iter().zip(want) {
            close(g.0, w.0, 1e-9);
            close(g.1, w.1, 1e-9);
        }
    }
}

/// A porch as an open line whose ends stand on the house: they go on to its centre line.
#[test]
fn an_open_line_joins_the_house() {
    let house = l_outline(&L_FORM);
    let porch = json!({"label": "P", "inside": "left", "joins_outline": true,
        "points": [at((10.2, 0.8)), at((13.2, 0.8)), at((13.2, 4.2)), at((10.2, 4.2))],
        "beam_width": {"value": 400, "unit": "mm"},
        "line_loads": [line("dead", 3.0)]});
    let mut piles = L_PILES[..13].to_vec();
    piles.extend([(13.0, 1.0), (13.0, 4.0)]);
    let a = solved(&plan(json!([]), json!([house, porch]), &piles));
    let p1 = a.result.beams.iter().find(|b| b.label == "P-1").unwrap();
    close(p1.points[0].x.si(), 10.0, 1e-9);
    close(p1.points[1].x.si(), 13.0, 1e-9);
    close(p1.length.si(), 3.0, 1e-9);
    // 36 m of wall and 3 + 3 + 3 m of porch
    close(
        a.result.combinations[0].total_load.si(),
        12e3 * 36.0 + 3e3 * 9.0,
        1e-9,
    );
    assert_eq!(a.result.joined_ends.as_ref().unwrap().len(), 2);
    // its edges went along
    let edges = &p1.edges.as_ref().unwrap()[0];
    close(edges.left[0].x.si(), 10.0, 1e-9);
    close(edges.right[0].y.si(), 0.8, 1e-9);
}

/// A beam in line with a wall beyond a re-entrant corner is cut off, or goes on, to where the
/// centre line of that wall begins, and is continuous with it; one that ends there stays.
#[test]
fn a_beam_in_line_with_a_wall() {
    for (x, longer) in [
        (6.2, Some(("L-3", -0.2))),
        (5.85, Some(("L-4", 0.15))),
        (6.0, None),
    ] {
        let beam = json!({"label": "K", "points": [at((0.0, 5.0)), at((x, 5.0))],
            "joins_outline": true, "line_loads": [line("dead", 4.0)]});
        let a = solved(&plan(
            json!([beam]),
            json!([l_outline(&L_FORM)]),
            &L_PILES[..13],
        ));
        let k = &a.result.beams[0];
        close(k.length.si(), 6.0, 1e-9);
        close(k.points[1].x.si(), 6.0, 1e-9);
        let joined = a.result.joined_ends.as_ref().unwrap();
        match longer {
            None => assert!(joined.is_empty()),
            Some((onto, by)) => {
                assert_eq!((joined.len(), joined[0].onto.as_str()), (1, onto));
                close(joined[0].longer_by.si(), by, 1e-9);
            }
        }
        // one run of 10 m: there is hogging at (6, 5) in a wall that has it nowhere else
        assert!(k.hogging.moment.si() > 1e3);
    }
}

/// Places along a joined beam count from the point that was sent.
#[test]
fn places_along_a_joined_beam() {
    let mut beam = inner();
    beam["line_loads"] = json!([{"kind": "dead", "load": {"value": 8, "unit": "kN_per_m"},
        "from": m(1.1), "to": m(3.1)}]);
    let a = solved(&plan(json!([beam]), json!([l_outline(&L_FORM)]), &L_PILES));
    // the load lies from x = 1.25 to 3.25 m, whose centre is 0.75 m beside the pile at 3 m
    let mut direct = inner();
    direct["points"] = json!([at((0.0, 2.5)), at((10.0, 2.5))]);
    direct["joins_outline"] = json!(false);
    direct["line_loads"] = json!([{"kind": "dead", "load": {"value": 8, "unit": "kN_per_m"},
        "from": m(1.25), "to": m(3.25)}]);
    let b = solved(&plan(
        json!([direct]),
        json!([l_outline(&L_FORM)]),
        &L_PILES,
    ));
    for (x, y) in reactions(&a).iter().zip(reactions(&b)) {
        close(*x, y, 1e-9);
    }
    assert!(b.result.joined_ends.is_none());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, ..ProptestConfig::default() })]

    /// The house turned by any angle and mirrored, on springs.
    #[test]
    fn a_turned_house_has_the_same_reactions(angle in -3.2f64..3.2, mirror in proptest::bool::ANY) {
        let (c, s) = (crate::math::cos(angle), crate::math::sin(angle));
        let turn = |p: (f64, f64)| {
            let x = if mirror { -p.0 } else { p.0 };
            (3.0 + c * x - s * p.1, -7.0 + s * x + c * p.1)
        };
        let build = |turn: &dyn Fn((f64, f64)) -> (f64, f64)| {
            let form: Vec<(f64, f64)> = L_FORM.iter().map(|p| turn(*p)).collect();
            let piles: Vec<(f64, f64)> = L_PILES.iter().map(|p| turn(*p)).collect();
            let mut beam = inner();
            beam["points"] = json!([at(turn((0.15, 2.5))), at(turn((9.8, 2.5)))]);
            let mut outline = l_outline(&form);
            let stiff = json!({"value": 40_000, "unit": "kN_m2"});
            beam["flexural_rigidity"] = stiff.clone();
            outline["flexural_rigidity"] = stiff;
            let mut v = plan(json!([beam]), json!([outline]), &piles);
            v["pile_stiffness"] = json!({"value": 12_000, "unit": "kN_per_m"});
            solved(&v)
        };
        let (a, b) = (build(&|p| p), build(&turn));
        for (p, q) in a.result.piles.iter().zip(&b.result.piles) {
            for (x, y) in [
                (p.rigid.max.si(), q.rigid.max.si()),
                (p.spring.as_ref().unwrap().max.si(), q.spring.as_ref().unwrap().max.si()),
            ] {
                prop_assert!((x - y).abs() < 1e-7 * 1e5, "{x} {y}");
            }
        }
    }
}

/// What a side says of its strength takes the place of what the outline says, one way of
/// saying it instead of the other too; and every property reaches the beams.
#[test]
fn strength_of_a_side() {
    let kn = |v: f64| json!({"value": v, "unit": "kN"});
    let mut outline = l_outline(&L_FORM);
    outline["shear_capacity"] = kn(90.0);
    outline["moment_capacity"] = json!({"sagging": {"value": 60, "unit": "kN_m"},
                                        "hogging": {"value": 50, "unit": "kN_m"}});
    outline["sides"] = json!([{"side": 1, "label": "S", "shear_capacity": kn(120.0)}]);
    let a = solved(&plan(json!([]), json!([outline]), &L_PILES[..13]));
    let capacity = |check: &str, beam: &str| {
        let found = a
            .checks
            .iter()
            .find(|c| c.id == check && c.subject.as_ref().is_some_and(|s| s.label == beam));
        found.unwrap().capacity.as_ref().unwrap().value()
    };
    close(capacity("beam_shear", "S"), 120e3, 1e-12);
    close(capacity("beam_shear", "L-2"), 90e3, 1e-12);
    close(capacity("beam_moment_sagging", "S"), 60e3, 1e-12);
    close(capacity("beam_moment_hogging", "L-6"), 50e3, 1e-12);
}
