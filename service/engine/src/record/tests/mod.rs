//! Tests of the installation record: readings, each rule alone, properties, figures, examples.

mod completeness;
mod examples;
mod figures;
mod onward;
mod properties;
mod readings;
mod rules;
mod second_look;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::*;
use crate::contract::{Answer, Calculation, Call, Check, CheckStatus, Refusal, Verdict, Work, run};
use crate::trace::Trace;

/// `{value, unit}`.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// Torques in ft lbf, one a foot from the first foot on, each with 2.8 in of advance.
fn log(torques: &[f64]) -> Json {
    let rows = torques.iter().enumerate();
    let rows: Vec<Json> = rows.map(|(i, t)| json!([i + 1, t, 2.8, 12])).collect();
    log_of(rows)
}

/// Rows of depth in ft, torque in ft lbf, advance in in, speed in rpm.
fn log_of(rows: Vec<Json>) -> Json {
    json!({
        "columns": [
            { "name": "depth", "unit": "ft" },
            { "name": "torque", "unit": "ft_lbf" },
            { "name": "advance_per_turn", "unit": "in" },
            { "name": "rotation_speed", "unit": "rpm" },
        ],
        "rows": rows,
    })
}

/// A trace that ends well: 20 ft, the torque asked for held over the last four.
const GOOD: [f64; 20] = [
    500.0, 650.0, 800.0, 900.0, 700.0, 600.0, 650.0, 700.0, 750.0, 800.0, 900.0, 1150.0, 1500.0,
    1900.0, 2250.0, 2700.0, 2850.0, 2900.0, 2950.0, 3000.0,
];

/// A pile of the plan Linnet with everything that acceptance needs.
fn linnet(torques: &[f64]) -> Json {
    json!({
        "label": "A2",
        "pile": {
            "shaft": { "round": { "outside_diameter": q(2.875, "in"), "wall_thickness": q(0.203, "in") } },
            "helices": [
                { "diameter": q(10.0, "in"), "above_tip": q(3.0, "ft") },
                { "diameter": q(12.0, "in"), "above_tip": q(0.5, "ft") },
            ],
            "helix_pitch": q(3.0, "in"),
        },
        "log": log(torques),
        "target": { "from_demand": {
            "demand": { "level": "allowable", "compression": q(12.5, "kip") },
            "design_basis": { "allowable_stress": {} },
        } },
        "torque_factor": { "listed_shaft": {} },
        "depths": {
            "minimum_tip_depth": q(17.0, "ft"), "maximum_tip_depth": q(28.0, "ft"),
            "frost_depth": q(48.0, "in"), "fill_depth": q(4.5, "ft"),
        },
        "limits": { "shaft_torque": q(5500.0, "ft_lbf") },
        "indicator": { "calibrated_on": "2026-03-02", "driven_on": "2026-09-14" },
        "position": { "along": q(0.5, "in"), "off_line": q(0.75, "in"), "inclination": q(0.4, "deg") },
        "ground": { "report": { "reference": "soil report of lot 31" } },
    })
}

/// The same with members replaced; `null` takes one away.
fn with(mut request: Json, more: Json) -> Json {
    merge(&mut request, more);
    request
}

fn merge(into: &mut Json, more: Json) {
    match (into, more) {
        (Json::Object(into), Json::Object(more)) => {
            for (key, value) in more {
                if value.is_null() {
                    into.remove(&key);
                } else {
                    merge(into.entry(key).or_insert(Json::Null), value);
                }
            }
        }
        (into, more) => *into = more,
    }
}

fn call(request: &Json) -> Call<Request> {
    let call: Call<Request> = serde_json::from_value(request.clone()).expect("a request");
    let mut issues = Vec::new();
    InstallationRecord::lengths(&call.request, &mut issues);
    assert!(issues.is_empty(), "{issues:?}");
    call.request.validate().expect("within its ranges");
    call
}

fn answer(request: &Json) -> Answer<Outcome> {
    run::<InstallationRecord>(&call(request), Work::new(Trace::off(), None)).expect("an answer")
}

fn refused(request: &Json) -> Refusal {
    let refused = run::<InstallationRecord>(&call(request), Work::new(Trace::off(), None));
    refused.expect_err("it is refused")
}

fn check<'a>(answer: &'a Answer<Outcome>, id: &str) -> Option<&'a Check> {
    answer.checks.iter().find(|c| c.id == id)
}

/// Codes of the checks in a state.
fn codes(answer: &Answer<Outcome>, status: CheckStatus) -> Vec<&str> {
    let of = answer.checks.iter().filter(|c| c.status == status);
    of.map(|c| &*c.id).collect()
}

fn failed(answer: &Answer<Outcome>) -> Vec<&str> {
    codes(answer, CheckStatus::Fail)
}
