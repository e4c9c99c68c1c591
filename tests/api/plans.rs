//! Plans for `pile-layout` at the ends of what it accepts, each refused for one reason.
//! Built here rather than kept as examples because they are large or monotonous.

use serde_json::{Value, json};

fn m(value: f64) -> Value {
    json!({ "value": value, "unit": "m" })
}

fn at(x: f64, y: f64) -> Value {
    json!({ "x": m(x), "y": m(y) })
}

fn beam(label: &str, from: (f64, f64), to: (f64, f64)) -> Value {
    json!({
        "label": label,
        "points": [at(from.0, from.1), at(to.0, to.1)],
        "line_loads": [{ "kind": "other", "load": { "value": 10, "unit": "kN_per_m" } }],
    })
}

fn combination(name: &str, factors: Value) -> Value {
    json!({ "name": name, "factors": factors })
}

fn own(list: &[Value]) -> Value {
    json!({ "allowable_stress": { "combinations": { "own": { "list": list } } } })
}

fn given(positions: &[(f64, f64)]) -> Value {
    let positions = positions.iter().enumerate();
    let positions: Vec<Value> = positions
        .map(|(i, (x, y))| json!({ "label": (i + 1).to_string(), "at": at(*x, *y) }))
        .collect();
    json!({ "given": { "positions": positions } })
}

fn search(max_spacing: f64, min_spacing: f64, snap: f64) -> Value {
    json!({ "search": {
        "max_spacing": m(max_spacing),
        "min_spacing": m(min_spacing),
        "snap": m(snap),
    } })
}

fn capacity() -> Value {
    json!({
        "level": "allowable",
        "compression": { "value": 1000, "unit": "kN" },
        "tension": { "value": 0, "unit": "kN" },
    })
}

/// One beam of 6 m on piles at its ends.
fn plain() -> Value {
    json!({
        "design_basis": own(&[combination("all", json!([{ "kind": "other", "factor": 1 }]))]),
        "beams": [beam("A", (0.0, 0.0), (6.0, 0.0))],
        "piles": given(&[(0.0, 0.0), (6.0, 0.0)]),
    })
}

fn with(changes: &[(&str, Value)]) -> Value {
    let mut plan = plain();
    for (name, value) in changes {
        plan[*name] = value.clone();
    }
    plan
}

fn forced_elsewhere() -> Value {
    let mut piles = search(3.0, 1.0, 0.1);
    piles["search"]["forced"] = json!([at(3.0, 1.0)]);
    with(&[("pile_capacity", capacity()), ("piles", piles)])
}

fn one_spring() -> Value {
    let mut plan = plain();
    plan["beams"][0]["flexural_rigidity"] = json!({ "value": 1e4, "unit": "kN_m2" });
    plan["piles"]["given"]["positions"][0]["stiffness"] =
        json!({ "value": 1e4, "unit": "kN_per_m" });
    plan
}

fn nothing_acts() -> Value {
    let dead = combination("dead", json!([{ "kind": "dead", "factor": 1 }]));
    with(&[("design_basis", own(&[dead]))])
}

/// Wind from so many sides.
fn wind(cases: usize) -> Value {
    let load = |case: usize| {
        json!({
            "kind": "wind",
            "case": format!("w{case}"),
            "load": { "value": 1, "unit": "kN_per_m" },
        })
    };
    let mut beam = beam("A", (0.0, 0.0), (6.0, 0.0));
    beam["line_loads"] = (0..cases).map(load).collect();
    json!([beam])
}

fn combinations_by_cases() -> Value {
    let list: Vec<Value> = (1..=40)
        .map(|i| {
            combination(
                &format!("c{i}"),
                json!([{ "kind": "wind", "factor": i as f64 / 10.0 }]),
            )
        })
        .collect();
    with(&[("design_basis", own(&list)), ("beams", wind(2))])
}

fn cases() -> Value {
    let all = combination(
        "all",
        json!([{ "kind": "wind", "case": "w0", "factor": 1 }]),
    );
    with(&[("design_basis", own(&[all])), ("beams", wind(70))])
}

fn places() -> Value {
    with(&[
        ("beams", json!([beam("A", (0.0, 0.0), (1000.0, 0.0))])),
        ("pile_capacity", capacity()),
        ("piles", search(3.0, 1.0, 0.001)),
    ])
}

fn row(beams: usize, length: f64) -> Value {
    let one = |i: usize| {
        beam(
            &format!("B{i}"),
            (0.0, 10.0 * i as f64),
            (length, 10.0 * i as f64),
        )
    };
    (0..beams).map(one).collect()
}

fn piles() -> Value {
    with(&[
        ("beams", row(2000, 15.0)),
        ("pile_capacity", capacity()),
        ("piles", search(3.0, 2.0, 1.0)),
        ("reaction_detail", json!("governing")),
    ])
}

fn reactions() -> Value {
    let list: Vec<Value> = (1..=60)
        .map(|i| {
            combination(
                &format!("c{i}"),
                json!([{ "kind": "other", "factor": i as f64 / 10.0 }]),
            )
        })
        .collect();
    let positions: Vec<(f64, f64)> = (0..400).map(|i| (i as f64, 0.0)).collect();
    with(&[
        ("design_basis", own(&list)),
        ("beams", json!([beam("A", (0.0, 0.0), (399.0, 0.0))])),
        ("piles", given(&positions)),
        ("reaction_detail", json!("all")),
    ])
}

/// Beams both ways with piles at their ends only: every crossing ties two of them.
fn grillage(each_way: usize) -> Value {
    let far = each_way as f64 + 1.0;
    let mut beams = Vec::new();
    let mut ends = Vec::new();
    for i in 1..=each_way {
        let at = i as f64;
        beams.push(beam(&format!("X{i}"), (0.0, at), (far, at)));
        beams.push(beam(&format!("Y{i}"), (at, 0.0), (at, far)));
        ends.extend([(0.0, at), (far, at), (at, 0.0), (at, far)]);
    }
    with(&[("beams", json!(beams)), ("piles", given(&ends))])
}

/// A very short and very stiff beam on two soft piles.
fn ill_conditioned() -> Value {
    let mut plan = plain();
    plan["beams"] = json!([beam("A", (0.0, 0.0), (0.13, 0.0))]);
    plan["beams"][0]["flexural_rigidity"] = json!({ "value": 4.1e8, "unit": "kN_m2" });
    plan["piles"] = given(&[(0.0, 0.0), (0.13, 0.0)]);
    for (i, stiffness) in [1100.0, 15.0].into_iter().enumerate() {
        plan["piles"]["given"]["positions"][i]["stiffness"] =
            json!({ "value": stiffness, "unit": "kN_per_m" });
    }
    plan
}

/// Every plan with the code it is refused for.
pub fn all() -> Vec<(&'static str, Value)> {
    vec![
        ("forced_point_off_beam", forced_elsewhere()),
        ("stiffness_needed", one_spring()),
        ("no_load", nothing_acts()),
        ("too_many_combinations", combinations_by_cases()),
        ("too_many_load_cases", cases()),
        ("too_many_places", places()),
        ("too_many_piles", piles()),
        ("too_many_reactions", reactions()),
        ("plan_too_interlinked", grillage(300)),
        ("statics_not_closed", ill_conditioned()),
    ]
}
