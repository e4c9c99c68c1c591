//! Tests of `frost-embedment`: published and recomputed cases, worked projects, properties,
//! faults, and the example requests. Helpers that all of them use are here.

mod cabin;
mod cases;
mod computed;
mod examples;
mod faults;
mod measures;
mod projects;
mod properties;
mod section;
mod swell_properties;
mod swelling;
mod tension;
mod void_heave;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::{FrostEmbedment, Outcome, Request};
use crate::contract::{Answer, Calculation, Call, Check, CheckStatus, Refusal, Work, run};
use crate::trace::Trace;

/// A quantity on the wire.
pub fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// Reads, range-checks and runs a request; stages before physics must pass.
pub fn ask(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let call: Call<Request> = serde_json::from_value(request).expect("a request");
    let mut issues = Vec::new();
    FrostEmbedment::lengths(&call.request, &mut issues);
    assert!(issues.is_empty(), "{issues:?}");
    call.request.validate().expect("in range");
    run::<FrostEmbedment>(&call, Work::new(Trace::on(), None))
}

/// The answer of a request that must be answered.
pub fn answer(request: Json) -> Answer<Outcome> {
    ask(request).expect("an answer")
}

/// The checks of one id.
pub fn checks<'a>(answer: &'a Answer<Outcome>, id: &str) -> Vec<&'a Check> {
    answer.checks.iter().filter(|c| c.id == id).collect()
}

/// Statuses of the checks of one id.
pub fn statuses(answer: &Answer<Outcome>, id: &str) -> Vec<CheckStatus> {
    checks(answer, id).iter().map(|c| c.status).collect()
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

/// A round shaft with helices, each a diameter and a depth in metres, under a frost depth
/// in metres; the beam is clear of the ground.
pub fn pile(outside_mm: f64, helices: &[(f64, f64)], frost_m: f64) -> Json {
    let helices: Vec<_> = helices
        .iter()
        .map(|(d, z)| json!({ "diameter": q(*d, "m"), "depth": q(*z, "m") }))
        .collect();
    json!({
        "pile": {
            "shaft": { "round": { "outside_diameter": q(outside_mm, "mm") } },
            "helices": helices
        },
        "frost": { "official_depth": q(frost_m, "m") },
        "beam": { "above_ground": {} }
    })
}

/// An example of this noun as JSON.
pub fn example(name: &str) -> Json {
    serde_json::from_str(&crate::examples::request::<FrostEmbedment>(name)).expect("JSON")
}

/// The same request with one member set.
pub fn with(mut request: Json, member: &str, value: Json) -> Json {
    request[member] = value;
    request
}
