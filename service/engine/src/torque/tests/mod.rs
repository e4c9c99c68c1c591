//! Tests of `torque-capacity`: published cases, everyday figures, properties, example
//! requests. Each expected number carries its origin.

mod alternatives;
mod cab_card;
mod cases;
mod drive;
mod examples;
mod figures;
mod properties;
mod refusals;
mod site_factors;
mod steel_cases;
mod verdicts;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::{Outcome, Request, TorqueCapacity};
use crate::contract::{Answer, Call, Refusal, Work, run};
use crate::trace::Trace;

/// Answer to a request in JSON, steps recorded.
fn answer(request: Json) -> Answer<Outcome> {
    refusable(request).expect("an answer")
}

fn refusable(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let request: Request = serde_json::from_value(request).expect("a request");
    request.validate().expect("within ranges");
    run::<TorqueCapacity>(&Call::from(request), Work::new(Trace::on(), None))
}

/// `{value, unit}`.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

fn round(inches: f64) -> Json {
    json!({ "round": { "outside_diameter": q(inches, "in") } })
}

fn square(inches: f64) -> Json {
    json!({ "square": { "side": q(inches, "in") } })
}

fn gauge(torque: f64, unit: &str) -> Json {
    json!({ "gauge": { "torque": q(torque, unit) } })
}

/// Relative difference at most `percent` per cent.
#[track_caller]
fn near(got: f64, expected: f64, percent: f64) {
    assert!(
        (got - expected).abs() <= expected.abs() * percent / 100.0,
        "{got} against {expected} within {percent} %"
    );
}

fn status(answer: &Answer<Outcome>, id: &str) -> crate::contract::CheckStatus {
    answer
        .checks
        .iter()
        .find(|c| c.id == id)
        .unwrap_or_else(|| panic!("no check `{id}`"))
        .status
}

fn warns(answer: &Answer<Outcome>, code: &str) -> bool {
    answer.warnings.iter().any(|w| w.code == code)
}

/// Value of the last step with this symbol.
fn step(answer: &Answer<Outcome>, symbol: &str) -> f64 {
    let steps = answer.steps.as_ref().expect("steps");
    let found = steps.iter().rev().find(|s| s.symbol == symbol);
    found
        .unwrap_or_else(|| panic!("no step `{symbol}`"))
        .shown
        .value()
}

/// A planned pile for 12.5 kip on a listed shaft, with more members.
fn planned(shaft: Json, more: Json) -> Answer<Outcome> {
    let mut request = json!({
        "shaft": shaft, "torque_factor": { "listed_shaft": {} },
        "demand": { "level": "allowable", "compression": q(12.5, "kip") },
        "design_basis": { "allowable_stress": { "compression_safety_factor": 2.0 } },
    });
    for (key, value) in more.as_object().unwrap() {
        request[key] = value.clone();
    }
    answer(request)
}

/// Names on the wire stand in the API document as they are read.
#[cfg(feature = "openapi")]
#[test]
fn the_document_has_the_names_of_the_wire() {
    use utoipa::{PartialSchema, ToSchema};
    let mut schemas = vec![("TorqueCapacityRequest".to_owned(), Request::schema())];
    Request::schemas(&mut schemas);
    Outcome::schemas(&mut schemas);
    let text = serde_json::to_string(&schemas).unwrap();
    for name in [
        "listed_shaft",
        "livneh_2008",
        "hoyt_clemence_1989",
        "perko_2009",
        "new_york_city",
    ] {
        assert!(text.contains(&format!("\"{name}\"")), "{name}");
    }
    assert_eq!(Request::name(), "TorqueCapacityRequest");
    assert_eq!(Outcome::name(), "TorqueCapacityOutcome");
}
