//! Tests of `installation-job`: piles by themselves and together, the rules of the lot, what
//! many logs show, example requests.

mod examples;
mod lot;
mod patterns;
mod piles;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::*;
use crate::contract::{Answer, Calculation, Call, Check, CheckStatus, Refusal, Verdict, Work, run};
use crate::trace::Trace;

/// `{value, unit}`.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// A pile of 8 in, a torque a foot down to 15 ft: soft to 9 ft, then `end` over the last 6 ft.
fn pile(label: &str, end: f64) -> Json {
    pile_to(label, end, 15)
}

fn pile_to(label: &str, end: f64, tip: usize) -> Json {
    let torque = |ft: usize| if ft + 6 <= tip { 500.0 } else { end };
    let rows: Vec<Json> = (1..=tip)
        .map(|ft| json!([ft, torque(ft), 2.8, 12]))
        .collect();
    json!({
        "label": label,
        "pile": {
            "helices": [{ "diameter": q(8.0, "in"), "above_tip": q(0.5, "ft") }],
            "helix_pitch": q(3.0, "in"),
        },
        "log": {
            "columns": [
                { "name": "depth", "unit": "ft" },
                { "name": "torque", "unit": "ft_lbf" },
                { "name": "advance_per_turn", "unit": "in" },
                { "name": "rotation_speed", "unit": "rpm" },
            ],
            "rows": rows,
        },
        "target": { "stated": { "torque": q(2000.0, "ft_lbf") } },
        "depths": {
            "minimum_tip_depth": q(10.0, "ft"), "maximum_tip_depth": q(40.0, "ft"),
            "frost_depth": q(0.0, "ft"),
        },
        "limits": { "shaft_torque": q(5500.0, "ft_lbf") },
        "indicator": { "calibrated_on": "2026-03-02", "driven_on": "2026-09-14" },
        "position": { "along": q(0.0, "in"), "off_line": q(0.0, "in"), "inclination": q(0.0, "deg") },
        "ground": { "report": { "reference": "report 1" } },
    })
}

/// One that is weak and can go no deeper.
fn weak(label: &str) -> Json {
    set(
        pile(label, 1500.0),
        "/depths/maximum_tip_depth",
        q(15.0, "ft"),
    )
}

/// One that is good but out of its place.
fn out_of_place(label: &str) -> Json {
    set(pile(label, 2500.0), "/position/along", q(4.0, "in"))
}

/// One on an obstruction.
fn on_stone(label: &str) -> Json {
    let stone = pile_to(label, 2500.0, 8);
    set(stone, "/stop", json!("obstruction"))
}

/// One whose indicator was out of date.
fn out_of_date(label: &str) -> Json {
    set(
        pile(label, 2500.0),
        "/indicator/calibrated_on",
        json!("2025-01-02"),
    )
}

/// One whose log cannot be judged.
fn broken(label: &str) -> Json {
    set(
        pile(label, 2500.0),
        "/depths/maximum_tip_depth",
        q(5.0, "ft"),
    )
}

fn set(mut into: Json, pointer: &str, value: Json) -> Json {
    let (parent, name) = pointer.rsplit_once('/').expect("a pointer");
    into.pointer_mut(parent).expect("a parent")[name] = value;
    into
}

fn job(piles: Vec<Json>, lot: Json) -> Json {
    json!({ "piles": piles, "lot": lot })
}

fn test(pile: &str, result: &str) -> Json {
    json!({ "pile": pile, "direction": "compression", "result": result })
}

fn ran(request: &Json, trace: Trace) -> Result<Answer<Outcome>, Refusal> {
    let call: Call<Request> = serde_json::from_value(request.clone()).expect("a request");
    let mut issues = Vec::new();
    InstallationJob::lengths(&call.request, &mut issues);
    assert!(issues.is_empty(), "{issues:?}");
    call.request.validate().expect("within its ranges");
    run::<InstallationJob>(&call, Work::new(trace, None))
}

fn answer(request: &Json) -> Answer<Outcome> {
    ran(request, Trace::off()).expect("an answer")
}

fn check<'a>(answer: &'a Answer<Outcome>, id: &str) -> &'a Check {
    let mut all = answer.checks.iter().filter(|c| c.id == id);
    all.next().unwrap_or_else(|| panic!("no check {id}"))
}

/// Demand and capacity of a check.
fn numbers(check: &Check) -> (f64, f64) {
    let value = |shown: &Option<crate::quantity::Shown>| shown.as_ref().map_or(-1.0, |s| s.value());
    (value(&check.demand), value(&check.capacity))
}

fn labels<'a>(all: impl IntoIterator<Item = &'a crate::text::Label>) -> Vec<&'a str> {
    all.into_iter().map(|l| l.as_str()).collect()
}

fn warned<'a>(answer: &'a Answer<Outcome>, code: &str) -> Option<&'a str> {
    let mut all = answer.warnings.iter().filter(|w| w.code == code);
    all.next().map(|w| w.detail.as_str())
}
