//! Tests of `corrosion-loss`: published and recomputed cases, classes of soil, figures by hand,
//! examples. Helpers that all of them use are here.

mod cases;
mod classes;
mod examples;
mod figures;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::{CorrosionLoss, Outcome, Request};
use crate::contract::{Answer, Calculation, Call, Refusal, Work, run};
use crate::examples::{request as example_text, through};
use crate::trace::Trace;

/// A quantity on the wire.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// Reads, range-checks and runs a request; stages before physics must pass.
fn ask(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let call: Call<Request> = serde_json::from_value(request).expect("a request");
    let mut issues = Vec::new();
    CorrosionLoss::lengths(&call.request, &mut issues);
    assert!(issues.is_empty(), "{issues:?}");
    call.request.validate().expect("in range");
    run::<CorrosionLoss>(&call, Work::new(Trace::on(), None))
}

fn answer(request: Json) -> Answer<Outcome> {
    ask(request).expect("an answer")
}

/// Pointers and codes of a refusal.
fn faults(request: Json) -> Vec<(String, String)> {
    let issues = ask(request).expect_err("a refusal").issues.into_iter();
    issues.map(|i| (i.pointer, i.code.into_owned())).collect()
}

fn example(name: &str) -> Answer<Outcome> {
    let text = example_text::<CorrosionLoss>(name);
    through::<CorrosionLoss>(&text, Trace::on()).expect(name).1
}

fn warned(answer: &Answer<Outcome>, code: &str) -> bool {
    answer.warnings.iter().any(|w| w.code == code)
}

/// A plate of 10 mm over a life in mild soil.
fn plate(years: f64, more: Json) -> Json {
    let mut request = json!({
        "life": q(years, "year"),
        "soil": { "stated": { "class": "mild", "reference": "any" } },
        "sections": [{ "form": { "plate": { "thickness": q(10.0, "mm") } } }]
    });
    for (key, value) in more.as_object().expect("members") {
        request[key] = value.clone();
    }
    request
}

/// `got` is `want` within a relative tolerance.
#[track_caller]
fn close(got: f64, want: f64, tolerance: f64) {
    assert!(
        (got - want).abs() <= tolerance * want.abs(),
        "{got} is not {want} within {tolerance}"
    );
}

/// `got` rounded to the digits that were printed is `want`.
#[track_caller]
fn prints(got: f64, want: f64, unit: f64) {
    assert!(
        (got - want).abs() <= unit / 2.0 * (1.0 + 1e-9),
        "{got} does not print {want}"
    );
}
