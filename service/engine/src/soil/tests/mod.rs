//! Tests of the soil profile: published cases, stresses, faults, properties. Each expected
//! number carries its origin.

mod cases;
mod faults;
mod findings;
mod properties;
mod stresses;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::{DerivedStrength, SoilProfile};
use crate::contract::Work;
use crate::quantity::{Angle, AngleUnit, Length, LengthUnit, SoilStress, StressUnit};
use crate::trace::Trace;

/// `{value, unit}`.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// A profile in JSON, within its ranges.
#[track_caller]
fn profile(value: Json) -> SoilProfile {
    let profile: SoilProfile = serde_json::from_value(value).expect("a profile");
    profile.validate().expect("within ranges");
    profile
}

/// A profile without faults.
#[track_caller]
fn whole(value: Json) -> SoilProfile {
    let profile = profile(value);
    assert_eq!(profile.faults(""), Vec::new());
    profile
}

/// A layer between two depths (m) with its unit weight (kN/m3).
fn layer(top: f64, bottom: f64, weight: f64, soil: Json) -> Json {
    json!({
        "top": q(top, "m"), "bottom": q(bottom, "m"),
        "unit_weight": q(weight, "kN_per_m3"), "soil": soil,
    })
}

fn clay() -> Json {
    json!({ "clay": { "undrained_strength": q(50.0, "kPa") } })
}

/// One soil down to 12 m at 20 kN/m3, dry: s'_v is 20 kPa a metre.
fn uniform(soil: Json) -> Json {
    json!({ "layers": [layer(0.0, 12.0, 20.0, soil)] })
}

/// What is found for the layers, with what is told beside it.
#[track_caller]
fn found(value: Json) -> (Vec<DerivedStrength>, Work) {
    let mut work = Work::new(Trace::on(), None);
    let all = whole(value).derived_strengths(&mut work);
    (all, work)
}

/// The one strength that is found.
#[track_caller]
fn only(value: Json) -> DerivedStrength {
    let (mut all, _) = found(value);
    assert_eq!(all.len(), 1);
    all.remove(0)
}

fn kpa(stress: Option<SoilStress>) -> f64 {
    stress.expect("a stress").get(StressUnit::KPa)
}

fn deg(angle: Option<Angle>) -> f64 {
    angle.expect("an angle").get(AngleUnit::Deg)
}

fn m(depth: f64) -> Length {
    Length::new(depth, LengthUnit::M)
}

fn warns(work: &Work, code: &str) -> bool {
    work.warnings.iter().any(|w| w.code == code)
}

fn used(work: &Work, method: &str) -> bool {
    work.methods.iter().any(|used| used.id == method)
}

/// Relative difference at most `relative`.
#[track_caller]
fn near(got: f64, expected: f64, relative: f64) {
    assert!(
        (got - expected).abs() <= expected.abs() * relative,
        "{got} against {expected} within {relative}"
    );
}
