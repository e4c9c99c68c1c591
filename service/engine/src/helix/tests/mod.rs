//! Tests of `helix-capacity`: published cases, everyday figures, properties, example
//! requests. Each expected number carries its origin.

mod bases;
mod behaviour;
mod cases_factors;
mod cases_piles;
mod depths;
mod design;
mod eurocode;
mod examples;
mod examples_refused;
mod examples_soil;
mod figures;
mod groups;
mod groups_properties;
mod independent;
mod metamorphic;
mod movements;
mod properties;
mod refusals;
mod reliability;
mod rule;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::{AxialResistance, GoverningMode, HelixBearing, HelixCapacity, Outcome, Request};
use crate::contract::{Answer, Call, Refusal, Work, run};
use crate::trace::Trace;

/// Answer to a request in JSON, steps recorded.
#[track_caller]
fn answer(request: Json) -> Answer<Outcome> {
    refusable(request).expect("an answer")
}

#[track_caller]
fn refusable(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let request: Request = serde_json::from_value(request).expect("a request");
    request.validate().expect("within ranges");
    run::<HelixCapacity>(&Call::from(request), Work::new(Trace::on(), None))
}

/// `{value, unit}`.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

fn round(size: f64, unit: &str) -> Json {
    json!({ "round": { "outside_diameter": q(size, unit) } })
}

/// Helices by diameter and depth, metres.
fn helices(list: &[(f64, f64)]) -> Json {
    list.iter()
        .map(|(d, z)| json!({ "diameter": q(*d, "m"), "depth": q(*z, "m") }))
        .collect()
}

/// A pile with a round shaft, metres.
fn pile(shaft: f64, list: &[(f64, f64)]) -> Json {
    json!({ "shaft": round(shaft, "m"), "helices": helices(list) })
}

fn clay(su_kpa: f64) -> Json {
    json!({ "clay": { "undrained_strength": q(su_kpa, "kPa") } })
}

fn sand(degrees: f64) -> Json {
    json!({ "sand": { "friction_angle": q(degrees, "deg") } })
}

fn fill() -> Json {
    json!({ "fill": {} })
}

/// Layers from the top by bottom depth (m), unit weight (kN/m3) and soil; no water.
fn soil(layers: &[(f64, f64, Json)]) -> Json {
    let mut top = 0.0;
    let list: Vec<Json> = layers
        .iter()
        .map(|(bottom, weight, soil)| {
            let layer = json!({
                "top": q(top, "m"), "bottom": q(*bottom, "m"),
                "unit_weight": q(*weight, "kN_per_m3"), "soil": soil,
            });
            top = *bottom;
            layer
        })
        .collect();
    json!({ "layers": list })
}

/// Relative difference at most `percent` per cent.
#[track_caller]
fn near(got: f64, expected: f64, percent: f64) {
    assert!(
        (got - expected).abs() <= expected.abs() * percent / 100.0,
        "{got} against {expected} within {percent} %"
    );
}

fn compression(a: &Answer<Outcome>) -> &AxialResistance {
    a.result.compression.as_ref().expect("compression")
}

fn tension(a: &Answer<Outcome>) -> &AxialResistance {
    a.result.tension.as_ref().expect("tension")
}

fn helix(r: &AxialResistance, i: usize) -> &HelixBearing {
    &r.individual_bearing.helices[i]
}

fn warns(a: &Answer<Outcome>, code: &str) -> bool {
    a.warnings.iter().any(|w| w.code == code)
}

fn used(a: &Answer<Outcome>, method: &str) -> bool {
    a.methods.iter().any(|m| m.id == method)
}

fn codes(refusal: &Refusal) -> Vec<(&str, &str)> {
    refusal
        .issues
        .iter()
        .map(|i| (i.pointer.as_str(), i.code.as_ref()))
        .collect()
}
