//! Stories of the layout of piles over HTTP: setting out, two rows of piles, what a search claims
//! when its work ends, and calls beside a long search. Exact bytes are in `examples`.

use std::time::Duration;

use bearwell::app::Settings;
use bearwell::service::Service;
use bearwell_tests::Door;
use serde_json::{Value, json};

use crate::figures::{ask, example, near, number};

const NOUN: &str = "pile-layout";

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value[name].as_array().expect("a list")
}

/// A tape text as feet: `44'-4 7/8"`.
fn feet(text: &Value) -> f64 {
    let text = text.as_str().expect("a text");
    let (whole, inches) = text.split_once("'-").expect("feet");
    let inches = inches.strip_suffix('"').expect("inches");
    let mut parts = inches.split(' ');
    let mut sum = whole.parse::<f64>().expect("feet") * 12.0;
    sum += parts
        .next()
        .expect("inches")
        .parse::<f64>()
        .expect("a number");
    if let Some(fraction) = parts.next() {
        let (over, under) = fraction.split_once('/').expect("a fraction");
        let (over, under): (u32, u32) = (
            over.parse().expect("a number"),
            under.parse().expect("a number"),
        );
        assert!(over < under && over % 2 == 1, "{text} is not reduced");
        assert!([2, 4, 8, 16].contains(&under), "{text} is no sixteenth");
        sum += f64::from(over) / f64::from(under);
    }
    sum / 12.0
}

/// Two control points, the plan turned by 31.5 degrees: every stake of the 24 solves back to its place
/// on the plan within 1/16 in, and the diagonals of 36 ft by 26 ft read 44'-4 7/8" (44.407 ft).
#[tokio::test]
async fn stakes_solve_back_to_the_plan() {
    let door = Door::open();
    let answer = ask(&door, NOUN, &example(NOUN, "linnet-staking")).await;
    let staking = &answer["result"]["staking"];
    near(&staking["grid"]["rotation"]["value"], 31.5, 0.01);
    let text = |v: &Value| {
        v.as_str()
            .expect("a text")
            .parse::<f64>()
            .expect("a number")
    };
    let anchor = &staking["grid"]["anchor"];
    let (sin, cos) = number(&staking["grid"]["rotation"]["value"])
        .to_radians()
        .sin_cos();
    let points = list(staking, "points");
    assert_eq!(points.len(), 24);
    for p in points {
        let east = text(&p["site"]["easting_text"]) - text(&anchor["site"]["easting_text"]);
        let north = text(&p["site"]["northing_text"]) - text(&anchor["site"]["northing_text"]);
        let x = number(&anchor["plan"]["x"]["value"]) + cos * east + sin * north;
        let y = number(&anchor["plan"]["y"]["value"]) - sin * east + cos * north;
        let sixteenth = 1.0 / 16.0 / 12.0;
        near(&p["at"]["x"]["value"], x, sixteenth);
        near(&p["at"]["y"]["value"], y, sixteenth);
        near(
            &p["at"]["x"]["value"],
            feet(&p["x_text"]),
            0.5 * sixteenth + 1e-9,
        );
        near(
            &p["at"]["y"]["value"],
            feet(&p["y_text"]),
            0.5 * sixteenth + 1e-9,
        );
    }
    let house = &list(staking, "frames")[0];
    assert_eq!(house["rectangle"], true);
    for diagonal in list(house, "diagonals") {
        near(&diagonal["distance"]["value"], 44.407, 5e-4);
        assert_eq!(diagonal["distance_text"], "44'-4 7/8\"");
    }
}

/// Rows 14 in apart and helices of 12 in: 36 in centre to centre needs a stagger of 33.2 in
/// (the square root of 36^2 - 14^2 is 33.166).
#[tokio::test]
async fn two_rows_need_a_stagger() {
    let door = Door::open();
    let plan = example(NOUN, "two-rows");
    let spaced = |answer: &Value| {
        let checks = list(answer, "checks").iter();
        let of: Vec<bool> = checks
            .filter(|c| c["id"] == "pile_spacing")
            .map(|c| c["status"] == "pass")
            .collect();
        assert!(!of.is_empty());
        of.into_iter().all(|pass| pass)
    };
    let answer = ask(&door, NOUN, &plan).await;
    assert!(spaced(&answer));
    // an eighth of an inch less does not do
    let closer = example(NOUN, "two-rows-too-near");
    assert!(!spaced(&ask(&door, NOUN, &closer).await));
}

fn m(value: f64) -> Value {
    json!({ "value": value, "unit": "m" })
}

/// Strips whose every layout takes longer to try than the work limit allows.
fn endless(strips: usize) -> Value {
    let beams: Vec<Value> = (0..strips)
        .map(|i| {
            let y = 5.0 * i as f64;
            let load = |kind: &str, load: f64, from: f64, to: f64| {
                json!({
                    "kind": kind,
                    "load": { "value": load, "unit": "kN_per_m" },
                    "from": m(from),
                    "to": m(to),
                })
            };
            json!({
                "label": format!("S{i}_"),
                "points": [{ "x": m(0.0), "y": m(y) }, { "x": m(60.0), "y": m(y) }],
                "line_loads": [
                    load("dead", 14.0 + 0.3 * i as f64, 0.0, 60.0),
                    load("live", 9.0, 7.0, 33.0),
                    load("snow", 6.0, 20.0, 60.0),
                ],
            })
        })
        .collect();
    json!({
        "design_basis": { "allowable_stress": { "combinations": { "published": { "edition": "asce_7_16" } } } },
        "beams": beams,
        "pile_capacity": {
            "level": "allowable",
            "compression": { "value": 60, "unit": "kN" },
            "tension": { "value": 0, "unit": "kN" },
        },
        "piles": { "search": { "max_spacing": m(3.6), "min_spacing": m(0.9), "snap": m(0.02) } },
        "reaction_detail": "governing",
    })
}

/// Beyond the work limit the answer says what is proven and what is not, the same bytes whether other
/// work runs beside it or not.
#[tokio::test]
async fn a_search_beyond_its_work_limit_claims_no_more_than_it_proved() {
    let door = Door::open_with(
        Settings {
            deadline: Duration::from_secs(300),
            ..Settings::default()
        },
        Service::standard(),
    );
    let body = endless(3).to_string();
    let alone = door.post("/v1/pile-layout", body.clone()).await;
    assert_eq!(
        alone.status,
        200,
        "{}",
        String::from_utf8_lossy(&alone.bytes)
    );
    let answer = alone.json();
    let search = &answer["result"]["search"];
    assert_eq!(search["feasible"], true);
    assert_eq!(search["proven_minimal"], false);
    let count = number(&answer["result"]["pile_count"]);
    let bound = number(&search["lower_bound_count"]);
    assert!(
        bound < count && bound >= 3.0 * 60.0 / 3.6,
        "{bound} of {count}"
    );
    near(&search["gap_count"], count - bound, 0.0);
    assert!(list(search, "how").iter().any(|h| h["by"] == "work_limit"));
    let told = list(&answer, "warnings").iter();
    assert!(told.into_iter().any(|w| w["code"] == "search_not_proven"));

    let other = endless(1).to_string();
    let (again, beside) = tokio::join!(
        door.post("/v1/pile-layout", body),
        door.post("/v1/pile-layout", other)
    );
    assert_eq!(beside.status, 200);
    assert_eq!(again.bytes, alone.bytes);
}

/// The deadline ends a search with a problem, never with half an answer; what is quick is answered
/// while it runs, and the pool is free afterwards.
#[tokio::test]
async fn a_deadline_ends_a_search() {
    let door = Door::open_with(
        Settings {
            calculations: 1,
            deadline: Duration::from_millis(400),
            ..Settings::default()
        },
        Service::standard(),
    );
    let torque = example("torque-capacity", "linnet").to_string();
    let long = tokio::spawn(bearwell_tests::send(
        door.json("/v1/pile-layout", endless(40).to_string()),
    ));
    tokio::time::sleep(Duration::from_millis(100)).await;
    let quick = door.post("/v1/torque-capacity", torque).await;
    assert_eq!(quick.status, 200);
    let ended = long.await.expect("a reply");
    assert_eq!(ended.status, 503);
    assert_eq!(ended.header("retry-after"), Some("1"));
    let problem = ended.json();
    let kind = problem["type"].as_str().expect("a type");
    assert!(kind.ends_with("/deadline_exceeded"), "{kind}");
}
