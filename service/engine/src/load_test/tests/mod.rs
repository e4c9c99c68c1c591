//! Tests of `load-test`: reference cases, closed forms, properties, curves that go wrong,
//! verdicts, example requests. Each expected number carries its origin.

mod cases;
mod closed_form;
mod conduct;
mod curves;
mod examples;
mod noise;
mod properties;
mod several;
mod verdicts;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::*;
use crate::contract::{Answer, Call, Refusal, Work, run};
use crate::trace::Trace;

/// Compliance at the origin of the hyperbola Q = s / (a + b s) of cases LT-01 to LT-04, mm/kN.
const A: f64 = 0.05;
/// Inverse asymptote of that hyperbola, 1/kN.
const B: f64 = 0.004;

/// Load of the hyperbola, kN, at a displacement, mm.
fn hyperbola(s: f64) -> f64 {
    s / (A + B * s)
}

/// `{value, unit}`.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// Points in kN and mm.
fn points(rows: &[(f64, f64)]) -> Json {
    let rows: Vec<Json> = rows.iter().map(|(load, s)| json!([load, s])).collect();
    json!({
        "columns": [{ "name": "load", "unit": "kN" }, { "name": "displacement", "unit": "mm" }],
        "rows": rows,
    })
}

/// The hyperbola at these displacements.
fn on_hyperbola(displacements: &[f64]) -> Vec<(f64, f64)> {
    displacements.iter().map(|s| (hyperbola(*s), *s)).collect()
}

/// The pile of cases LT-01 to LT-04 with points in kN and mm and with more members.
fn request(rows: &[(f64, f64)], more: Json) -> Json {
    let mut request = json!({
        "direction": "compression", "procedure": "quick", "points": points(rows),
        "shaft": { "round": { "outside_diameter": q(73.0, "mm"), "wall_thickness": q(5.51, "mm") } },
        "loaded_length": q(6.0, "m"), "elastic_modulus": q(200_000.0, "MPa"),
        "helices": [{ "diameter": q(304.8, "mm") }], "davisson_diameter": "shaft",
    });
    for (key, value) in more.as_object().unwrap() {
        request[key] = value.clone();
    }
    request
}

fn refusable(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let request: Request = serde_json::from_value(request).expect("a request");
    request.validate().expect("within ranges");
    run::<LoadTest>(&Call::from(request), Work::new(Trace::on(), None))
}

fn answer(request: Json) -> Answer<Outcome> {
    refusable(request).expect("an answer")
}

/// Codes and places of a refusal.
fn refused(request: Json) -> Vec<(String, String)> {
    let refusal = refusable(request).expect_err("refused");
    let each = refusal.issues.into_iter();
    each.map(|i| (i.pointer, i.code.into_owned())).collect()
}

fn criterion(answer: &Answer<Outcome>, wanted: LoadTestCriterion) -> &CriterionOutcome {
    let all = &answer.result.criteria;
    all.iter().find(|c| c.criterion == wanted).expect("listed")
}

/// Load in kN and displacement in mm of a criterion that holds.
#[track_caller]
fn found(answer: &Answer<Outcome>, wanted: LoadTestCriterion) -> (f64, f64) {
    let c = criterion(answer, wanted);
    assert_eq!(c.status, CriterionStatus::Valid, "{c:?}");
    assert_eq!((&c.reason, &c.detail), (&None, &None));
    let load = c.load.expect("a load").si() / 1e3;
    (load, c.displacement.map_or(0.0, |s| s.si() * 1e3))
}

/// Why a criterion gives no load.
#[track_caller]
fn reason(answer: &Answer<Outcome>, wanted: LoadTestCriterion) -> CriterionReason {
    let c = criterion(answer, wanted);
    assert_eq!(c.status, CriterionStatus::NotValid, "{c:?}");
    assert!(
        c.load.is_none() && c.displacement.is_none() && c.detail.is_some(),
        "{c:?}"
    );
    c.reason.expect("a reason")
}

fn warns(answer: &Answer<Outcome>, code: &str) -> bool {
    answer.warnings.iter().any(|w| w.code == code)
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
    let mut schemas = vec![("LoadTestRequest".to_owned(), Request::schema())];
    Request::schemas(&mut schemas);
    Outcome::schemas(&mut schemas);
    let text = serde_json::to_string(&schemas).unwrap();
    for name in [
        "helix_8_percent_net",
        "brinch_hansen_90",
        "least_named_by_code",
        "x-table",
    ] {
        assert!(text.contains(&format!("\"{name}\"")), "{name}");
    }
    assert_eq!(Request::name(), "LoadTestRequest");
    assert_eq!(Outcome::name(), "LoadTestOutcome");
}

/// What a criterion is called in a text is what it is called on the wire.
#[test]
fn criteria_have_one_name() {
    let rows = on_hyperbola(&[0.0, 1.0, 2.0, 4.0, 8.0]);
    for c in &answer(request(&rows, json!({}))).result.criteria {
        let wire = serde_json::to_value(c.criterion).unwrap();
        assert_eq!(wire, criteria::name_of(c.criterion));
    }
}
