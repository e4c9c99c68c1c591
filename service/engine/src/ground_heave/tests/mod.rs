//! Tests of `ground-heave`: published and recomputed cases, look-ups, properties, faults, and
//! the example requests. Helpers that all of them use are here.

mod cases;
mod examples;
mod look_ups;
mod properties;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::{GroundHeave, Outcome, Request};
use crate::contract::{Answer, Calculation, Call, Refusal, Work, run};
use crate::trace::Trace;

/// A quantity on the wire.
pub fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// Reads, range-checks and runs a request; stages before physics must pass.
pub fn ask(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let call: Call<Request> = serde_json::from_value(request).expect("a request");
    let mut issues = Vec::new();
    GroundHeave::lengths(&call.request, &mut issues);
    assert!(issues.is_empty(), "{issues:?}");
    call.request.validate().expect("in range");
    run::<GroundHeave>(&call, Work::new(Trace::on(), None))
}

/// The answer of a request that must be answered.
pub fn answer(request: Json) -> Answer<Outcome> {
    ask(request).expect("an answer")
}

/// Whether a warning is there.
pub fn warned(answer: &Answer<Outcome>, code: &str) -> bool {
    answer.warnings.iter().any(|w| w.code == code)
}

/// `got` is `want` within a relative tolerance.
#[track_caller]
pub fn close(got: f64, want: f64, tolerance: f64) {
    assert!(
        (got - want).abs() <= tolerance * want.abs(),
        "{got} is not {want} within {tolerance}"
    );
}
