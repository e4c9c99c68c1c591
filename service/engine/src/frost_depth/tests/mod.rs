//! Tests of `frost-depth`: reference cases, properties over random grounds, the solver beside
//! closed forms, faults, example requests. Each expected number carries its origin.

mod cases;
mod examples;
mod faults;
mod properties;
mod solver;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::*;
use crate::contract::{Answer, Calculation, Call, Refusal, Work, run};
use crate::quantity::{HeatCapacityUnit, HeatUnit, Length, LengthUnit};
use crate::trace::Trace;

/// A quantity on the wire.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// Reads, range-checks and runs a request; stages before physics must pass.
fn ask(request: &Json) -> Result<Answer<Outcome>, Refusal> {
    let call: Call<Request> = serde_json::from_value(request.clone()).expect("a request");
    let mut issues = Vec::new();
    FrostPenetration::lengths(&call.request, &mut issues);
    assert!(issues.is_empty(), "{issues:?}");
    call.request.validate().expect("in range");
    run::<FrostPenetration>(&call, Work::new(Trace::on(), None))
}

/// The computed frost of a request that must be answered.
fn frost(request: &Json) -> ComputedFrost {
    let answer = ask(request).unwrap_or_else(|e| panic!("{e:?} {request}"));
    answer.result.frost.expect("frost")
}

/// Depth in metres.
fn depth(request: &Json) -> f64 {
    frost(request).depth.si()
}

/// Depth by one method, m.
fn by(frost: &ComputedFrost, method: FrostDepthMethod) -> Option<f64> {
    let line = frost.depths.iter().find(|line| line.method == method);
    line.and_then(|line| line.depth).map(Length::si)
}

/// A winter in degree-days Celsius, degrees and days.
fn winter(index: f64, mean: f64, days: f64) -> Json {
    json!({
        "freezing_index": { "given": {
            "definition": "design_3_in_30", "value": q(index, "C_day"), "reference": "test"
        } },
        "mean_annual_temperature": q(mean, "degC"), "season_length": q(days, "day"),
    })
}

/// Ground by its properties in W/m K, MJ/m3 K, MJ/m3; a thickness in metres but for the last.
fn given(thickness: Option<f64>, k: (f64, f64), capacity: f64, latent: f64) -> Json {
    let mut layer = json!({ "material": { "given": {
        "frozen_conductivity": q(k.0, "W_per_m_K"), "unfrozen_conductivity": q(k.1, "W_per_m_K"),
        "heat_capacity": q(capacity, "MJ_per_m3_K"), "latent_heat": q(latent, "MJ_per_m3"),
        "reference": "test",
    } } });
    if let Some(thickness) = thickness {
        layer["thickness"] = q(thickness, "m");
    }
    layer
}

/// A board of insulation, m and W/m K.
fn board(thickness: f64, conductivity: f64) -> Json {
    json!({
        "thickness": q(thickness, "m"),
        "material": { "insulation": { "conductivity": q(conductivity, "W_per_m_K") } },
    })
}

/// A request.
fn request(winter: Json, layers: Vec<Json>) -> Json {
    json!({ "winter": winter, "layers": layers })
}

/// Relative difference at most `tolerance`.
#[track_caller]
fn near(got: f64, expected: f64, tolerance: f64) {
    assert!(
        (got - expected).abs() <= expected.abs() * tolerance,
        "{got} against {expected} within {tolerance}"
    );
}

/// The service answers under these names, and the document shows them.
#[cfg(feature = "openapi")]
#[test]
fn the_document_has_the_names_of_the_wire() {
    use utoipa::{PartialSchema, ToSchema};
    let mut schemas = vec![("FrostDepthRequest".to_owned(), Request::schema())];
    Request::schemas(&mut schemas);
    Outcome::schemas(&mut schemas);
    let text = serde_json::to_string(&schemas).unwrap();
    for name in [
        "design_3_in_30",
        "return_100",
        "c_0_17",
        "wind_scoured_beam",
    ] {
        assert!(text.contains(&format!("\"{name}\"")), "{name}");
    }
    assert_eq!(Request::name(), "FrostDepthRequest");
    assert_eq!(Outcome::name(), "FrostDepthOutcome");
}

/// Depth by the modified Berggren equation alone, and alpha; none where the request is refused.
fn berggren_only(request: &Request) -> Option<(f64, f64)> {
    let work = &mut Work::default();
    if !super::faults::faults(request, "").is_empty() {
        return None;
    }
    let sent = request.winter.as_ref()?;
    let winter = super::winter::of(sent, None, work);
    let layers = ground::layers(request.layers.as_ref()?, None, work);
    let method = FrostDepthMethod::ModifiedBerggren;
    let found = methods::depth(method, &ground::slabs(&layers), &winter, "", work);
    let (depth, _) = found.ok()?.ok()?;
    Some((depth.si(), winter.alpha))
}
