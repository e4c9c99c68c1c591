//! Figures a practitioner checks by hand, over HTTP and at the printed digits: the plan
//! of the two invented houses, torque, bearing and frost. Exact bytes are in `examples`.

use bearwell_tests::Door;
use serde_json::{Value, json};

pub(crate) fn example(noun: &str, name: &str) -> Value {
    let path = bearwell_tests::openapi().join(format!("examples/{noun}/{name}.json"));
    serde_json::from_slice(&std::fs::read(path).expect("an example")).expect("JSON")
}

pub(crate) async fn ask(door: &Door, noun: &str, request: &Value) -> Value {
    let reply = door.post(&format!("/v1/{noun}"), request.to_string()).await;
    let text = String::from_utf8_lossy(&reply.bytes).into_owned();
    assert_eq!(reply.status, 200, "{text}");
    reply.json()
}

pub(crate) fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("no number: {value}"))
}

#[track_caller]
pub(crate) fn near(value: &Value, expected: f64, within: f64) {
    let got = number(value);
    assert!((got - expected).abs() <= within, "{got}, not {expected}");
}

fn pile<'a>(answer: &'a Value, label: &str) -> &'a Value {
    let piles = answer["result"]["piles"].as_array().expect("piles");
    let found = piles.iter().find(|p| p["label"] == label);
    found.unwrap_or_else(|| panic!("no pile {label}"))
}

pub(crate) fn check<'a>(answer: &'a Value, id: &str) -> &'a Value {
    let checks = answer["checks"].as_array().expect("checks");
    let found = checks
        .iter()
        .find(|c| c["id"] == id && c["governing"] == true);
    found.unwrap_or_else(|| panic!("no check {id}"))
}

/// What beam `beam` gives to the pile in the combination that governs it.
fn share(pile: &Value, beam: &str) -> Value {
    let shares = pile["by_beam"].as_array().expect("shares");
    let found = shares.iter().find(|s| s["beam"] == beam);
    found.expect("a share")["reaction"]["value"].clone()
}

/// Sum over the piles of the rigid reactions in one combination.
fn reaction_sum(answer: &Value, combination: &str) -> f64 {
    let piles = answer["result"]["piles"].as_array().expect("piles");
    let of = |p: &Value| {
        let list = p["reactions"].as_array().expect("reactions").clone();
        let one = list.into_iter().find(|r| r["combination"] == combination);
        number(&one.expect("the combination")["rigid"]["value"])
    };
    piles.iter().map(of).sum()
}

/// Equal spans of 7.2 ft under 1,574.75 plf: 15/38, 43/38 and 37/38 of w l (five-span
/// table, Civil Engineering Formulas table 2.1, verified).
#[tokio::test]
async fn line_a_of_the_us_house_on_rigid_supports() {
    let door = Door::open();
    let answer = ask(&door, "pile-layout", &example("pile-layout", "linnet")).await;
    let wl = 1574.75 * 7.2;
    for (label, fraction, printed) in [
        ("A1", 15.0 / 38.0, 4476.0),
        ("A2", 43.0 / 38.0, 12_830.0),
        ("A3", 37.0 / 38.0, 11_040.0),
        ("A4", 37.0 / 38.0, 11_040.0),
        ("A5", 43.0 / 38.0, 12_830.0),
        ("A6", 15.0 / 38.0, 4476.0),
    ] {
        let on_line = share(pile(&answer, label), "A");
        near(&on_line, wl * fraction, 1e-4);
        near(&on_line, printed, 0.5);
    }
    near(&pile(&answer, "A2")["tributary"]["value"], 11_338.0, 0.5);
    near(
        &pile(&answer, "B1")["compression"]["demand"]["value"],
        10_862.0,
        0.5,
    );
    near(
        &pile(&answer, "E1")["compression"]["demand"]["value"],
        10_593.0,
        0.5,
    );
    near(&pile(&answer, "A2")["utilisation_ratio"], 1.026, 5e-4);
    assert_eq!(answer["verdict"], "reject");
    let warnings = answer["warnings"].as_array().expect("warnings");
    let differs = warnings.iter().find(|w| w["code"] == "tributary_differs");
    let detail = differs.expect("the warning")["detail"].to_string();
    assert!(detail.contains("A2 (-11.6 %)"), "{detail}");
}

/// The printed reactions add up to the printed load in every combination, and to
/// 224,913 lb where each line carries its governing load.
#[tokio::test]
async fn the_reactions_carry_the_whole_load() {
    let door = Door::open();
    for name in ["linnet", "linnet-governing", "linnet-search", "sizerin"] {
        let answer = ask(&door, "pile-layout", &example("pile-layout", name)).await;
        assert!(number(&answer["result"]["statics_residual_ratio"]) <= 1e-9);
        let combinations = answer["result"]["combinations"].as_array().expect("them");
        assert!(!combinations.is_empty());
        for c in combinations {
            let load = number(&c["total_load"]["value"]);
            let sum = reaction_sum(&answer, c["name"].as_str().expect("a name"));
            assert!((sum / load - 1.0).abs() <= 1e-7, "{name}: {sum} {load}");
            if name == "linnet-governing" {
                assert!((sum - 224_913.0).abs() < 0.5, "{sum}");
            }
        }
    }
}

#[tokio::test]
async fn the_search_finds_six_piles_for_line_a_and_24_in_all() {
    let door = Door::open();
    let answer = ask(
        &door,
        "pile-layout",
        &example("pile-layout", "linnet-search"),
    )
    .await;
    assert_eq!(answer["verdict"], "accept");
    assert_eq!(answer["result"]["pile_count"], 24);
    let search = &answer["result"]["search"];
    assert_eq!(search["proven_minimal"], true);
    assert_eq!(search["lower_bound_count"], 24);
    let piles = answer["result"]["piles"].as_array().expect("piles");
    let on_a = piles.iter().filter(|p| p["at"]["y"]["value"] == 0);
    assert_eq!(on_a.count(), 6);
    for p in piles {
        assert!(number(&p["utilisation_ratio"]) <= 1.0);
        for axis in ["x", "y"] {
            let inches = number(&p["at"][axis]["value"]) * 12.0;
            assert!(
                (inches / 3.0 - (inches / 3.0).round()).abs() < 1e-6,
                "{inches} in"
            );
        }
    }
    // given back as positions, the same plan carries the same loads
    let mut again = example("pile-layout", "linnet-search");
    let positions: Vec<_> = piles
        .iter()
        .map(|p| json!({"label": p["label"], "at": p["at"]}))
        .collect();
    again["piles"] = json!({"given": {"positions": positions}});
    let given = ask(&door, "pile-layout", &again).await;
    for p in piles {
        let same = pile(&given, p["label"].as_str().expect("a label"));
        let found = number(&p["compression"]["demand"]["value"]);
        near(&same["compression"]["demand"]["value"], found, 1e-6 * found);
    }
}

/// The order of beams and piles does not matter; a mirrored plan has mirrored reactions.
#[tokio::test]
async fn order_and_mirroring_change_nothing() {
    let door = Door::open();
    let plan = example("pile-layout", "linnet");
    let answer = ask(&door, "pile-layout", &plan).await;
    let mut turned = plan.clone();
    turned["beams"].as_array_mut().expect("beams").reverse();
    let positions = turned["piles"]["given"]["positions"].as_array_mut();
    positions.expect("piles").reverse();
    let reversed = ask(&door, "pile-layout", &turned).await;
    let mut mirrored = plan.clone();
    let flip = |point: &mut Value| {
        let x = number(&point["x"]["value"]);
        point["x"]["value"] = json!(36.0 - x);
    };
    for beam in mirrored["beams"].as_array_mut().expect("beams") {
        beam["points"]
            .as_array_mut()
            .expect("points")
            .iter_mut()
            .for_each(flip);
    }
    for p in mirrored["piles"]["given"]["positions"]
        .as_array_mut()
        .expect("piles")
    {
        flip(&mut p["at"]);
    }
    let mirror = ask(&door, "pile-layout", &mirrored).await;
    for p in answer["result"]["piles"].as_array().expect("piles") {
        let label = p["label"].as_str().expect("a label");
        let load = number(&p["compression"]["demand"]["value"]);
        for other in [&reversed, &mirror] {
            near(
                &pile(other, label)["compression"]["demand"]["value"],
                load,
                1e-7 * load,
            );
        }
    }
}

/// 12.5 kip at a safety factor of 2: 2,778 ft-lbf (3.766 kN m) at 9 per foot and
/// 3,571.43 at 7 per foot.
#[tokio::test]
async fn required_torque() {
    let door = Door::open();
    let mut request = json!({
        "shaft": {"round": {"outside_diameter": {"value": 2.875, "unit": "in"}}},
        "torque_factor": {"listed_shaft": {}},
        "design_basis": {"allowable_stress": {"compression_safety_factor": 2}},
        "demand": {"level": "allowable", "compression": {"value": 12.5, "unit": "kip"}},
        "output_units": "us_customary"
    });
    let answer = ask(&door, "torque-capacity", &request).await;
    near(
        &answer["result"]["required"]["torque"]["value"],
        25_000.0 / 9.0,
        1e-5,
    );
    request["output_units"] = json!("si");
    let answer = ask(&door, "torque-capacity", &request).await;
    near(
        &answer["result"]["required"]["torque"]["value"],
        3.766,
        5e-4,
    );
    request["shaft"]["round"]["outside_diameter"]["value"] = json!(3.5);
    request["output_units"] = json!("us_customary");
    let answer = ask(&door, "torque-capacity", &request).await;
    near(
        &answer["result"]["required"]["torque"]["value"],
        3571.43,
        5e-3,
    );
}

/// 10 and 12 in on a 2.875 in shaft in clay of 2,500 psf: 1.241 ft2 net carries 27.9 kip,
/// the gross plates 29.9; the answer names which.
#[tokio::test]
async fn bearing_in_clay_net_and_gross() {
    let door = Door::open();
    let mut area_and_load = Vec::new();
    for name in ["linnet", "linnet-gross"] {
        let answer = ask(&door, "helix-capacity", &example("helix-capacity", name)).await;
        let bearing = &answer["result"]["compression"]["individual_bearing"];
        let helices = bearing["helices"].as_array().expect("helices");
        let area: f64 = helices.iter().map(|h| number(&h["area"]["value"])).sum();
        area_and_load.push((area, number(&bearing["total"]["value"])));
        let named = answer["result"]["methods"]["helix_area"].clone();
        let expected = if name == "linnet" { "net" } else { "gross" };
        assert_eq!(named, expected, "{}", answer["result"]["methods"]);
    }
    assert!((area_and_load[0].0 - 1.241).abs() < 5e-4);
    assert!((area_and_load[0].1 - 27_900.0).abs() < 50.0);
    assert!((area_and_load[1].1 - 29_900.0).abs() < 50.0);
}

/// A 2.875 in shaft gripped at 100 kPa over 30 and over 48 in: 3,930 and 6,288 lbf.
#[tokio::test]
async fn frost_grip_at_two_depths() {
    let door = Door::open();
    let mut request = json!({
        "pile": {
            "shaft": {"round": {"outside_diameter": {"value": 2.875, "unit": "in"}}},
            "helices": [{"diameter": {"value": 10, "unit": "in"}, "depth": {"value": 16, "unit": "ft"}}]
        },
        "frost": {"official_depth": {"value": 30, "unit": "in"}},
        "beam": {"above_ground": {}},
        "uplift": {"bond": {"fine": {}}},
        "output_units": "us_customary"
    });
    for (depth, force) in [(30.0_f64, 3930.0), (48.0, 6288.0)] {
        request["frost"]["official_depth"]["value"] = json!(depth);
        let answer = ask(&door, "frost-embedment", &request).await;
        let service = &answer["result"]["uplift"]["stages"][0];
        near(&service["design"]["shaft_force"]["value"], force, 0.5);
        // frost and 0.3 m, or 5 diameters of 10 in (4.17 ft), whichever is deeper
        let required = &answer["result"]["embedment"]["required_top_helix_depth"]["value"];
        let margin = 0.3 / 0.3048;
        let expected = (depth / 12.0 + margin).max(50.0 / 12.0);
        assert!((number(required) - expected).abs() < 1e-6, "{required}");
    }
}

/// The same plan sent in metric units gives the same answer.
#[tokio::test]
async fn units_of_the_request_do_not_matter() {
    fn metric(value: &mut Value) {
        let unit = value.get("unit").and_then(Value::as_str).map(str::to_owned);
        if let Some(unit) = unit {
            let (factor, name) = match unit.as_str() {
                "ft" => (0.3048, "m"),
                "in" => (25.4, "mm"),
                "plf" => (4.448_221_615_260_5 / 304.8, "kN_per_m"),
                "kip" => (4.448_221_615_260_5, "kN"),
                "lbf" => (4.448_221_615_260_5e-3, "kN"),
                other => panic!("unit {other} is not in this test"),
            };
            let v = number(&value["value"]) * factor;
            *value = json!({"value": v, "unit": name});
            return;
        }
        match value {
            Value::Object(members) => members.values_mut().for_each(metric),
            Value::Array(items) => items.iter_mut().for_each(metric),
            _ => {}
        }
    }
    let door = Door::open();
    let plan = example("pile-layout", "linnet");
    let mut converted = plan.clone();
    metric(&mut converted);
    let (a, b) = (
        ask(&door, "pile-layout", &plan).await,
        ask(&door, "pile-layout", &converted).await,
    );
    assert_eq!(a["verdict"], b["verdict"]);
    for p in a["result"]["piles"].as_array().expect("piles") {
        let load = number(&p["compression"]["demand"]["value"]);
        let label = p["label"].as_str().expect("a label");
        near(
            &pile(&b, label)["compression"]["demand"]["value"],
            load,
            1e-7 * load,
        );
    }
    near(
        &check(&b, "pile_compression")["utilisation_ratio"],
        1.026_405_47,
        1e-8,
    );
}
