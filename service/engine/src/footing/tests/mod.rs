//! Tests of `footing-bearing`: published cases, hand formulas, properties, example requests.
//! Each expected number carries its origin.

mod cases;
mod examples;
mod figures;
mod independent;
mod properties;
mod refusals;
mod shapes;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::{FootingBearing, Outcome, Request};
use crate::contract::{Answer, Call, Refusal, Work, run};
use crate::examples::{request, through};
use crate::quantity::{SoilStress, StressUnit};
use crate::trace::Trace;

/// Answer to a request in JSON, steps recorded.
fn answer(request: Json) -> Answer<Outcome> {
    refusable(request).expect("an answer")
}

fn refusable(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let request: Request = serde_json::from_value(request).expect("a request");
    request.validate().expect("within ranges");
    run::<FootingBearing>(&Call::from(request), Work::new(Trace::on(), None))
}

/// Answer to an example request on disk.
fn example(name: &str) -> Answer<Outcome> {
    let text = request::<FootingBearing>(name);
    through::<FootingBearing>(&text, Trace::on())
        .unwrap_or_else(|e| panic!("{name}: {e:?}"))
        .1
}

/// `{value, unit}`.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// Relative difference at most `percent` per cent.
#[track_caller]
fn near(got: f64, expected: f64, percent: f64) {
    assert!(
        (got - expected).abs() <= expected.abs() * percent / 100.0,
        "{got} against {expected} within {percent} %"
    );
}

fn kpa(stress: SoilStress) -> f64 {
    stress.get(StressUnit::KPa)
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

/// Names on the wire stand in the API document as they are read.
#[cfg(feature = "openapi")]
#[test]
fn the_document_has_the_names_of_the_wire() {
    use utoipa::{PartialSchema, ToSchema};
    let mut schemas = vec![("FootingBearingRequest".to_owned(), Request::schema())];
    Request::schemas(&mut schemas);
    Outcome::schemas(&mut schemas);
    let text = serde_json::to_string(&schemas).unwrap();
    for name in [
        "terzaghi_1943",
        "meyerhof_1963",
        "hansen_1970",
        "vesic_1973",
        "skempton_1951",
        "leave_out",
        "two_thirds",
        "line_load",
    ] {
        assert!(text.contains(&format!("\"{name}\"")), "{name}");
    }
    assert_eq!(Request::name(), "FootingBearingRequest");
    assert_eq!(Outcome::name(), "FootingBearingOutcome");
}
