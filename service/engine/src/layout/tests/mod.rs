//! Tests of the layout: figures of the worked plans, published cases, properties, and the
//! example requests.

mod bracing;
mod brute;
mod brute_plans;
mod deflection;
mod examples;
mod form_faults;
mod geometry;
mod given;
mod grid;
mod ground;
mod houses;
mod lift_off;
mod loads;
mod openings;
mod outline;
mod patterns;
mod pile_table;
mod properties;
mod scale;
mod search;
mod slabs;
mod staking;
mod staking_faces;
mod strength;
mod structure;
mod supports;
mod terrain;
mod wishes;

use crate::contract::{Answer, Call, Refusal, Work, run};
use crate::layout::{Outcome, PileLayout, Request};
use crate::trace::Trace;

/// One pound-force, N (exact).
pub(super) const LBF: f64 = 4.448_221_615_260_5;
/// One foot, m (exact).
pub(super) const FT: f64 = 0.3048;

/// Folder of the example requests.
pub(super) fn folder() -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../openapi/examples/pile-layout")
}

/// An example request by name.
pub(super) fn example(name: &str) -> Call<Request> {
    let text = std::fs::read_to_string(folder().join(format!("{name}.json"))).unwrap();
    serde_json::from_str(&text).unwrap_or_else(|e| panic!("{name}: {e}"))
}

/// Runs a request.
pub(super) fn answer(call: &Call<Request>) -> Result<Answer<Outcome>, Refusal> {
    let trace = if call.options.steps() {
        Trace::on()
    } else {
        Trace::off()
    };
    run::<PileLayout>(call, Work::new(trace, None))
}

/// Runs an example that answers.
pub(super) fn answered(name: &str) -> Answer<Outcome> {
    answer(&example(name)).unwrap_or_else(|e| panic!("{name}: {e:?}"))
}

/// Relative comparison.
pub(super) fn close(got: f64, want: f64, relative: f64) {
    assert!(
        (got - want).abs() <= relative * want.abs().max(1e-6),
        "{got} instead of {want}"
    );
}
