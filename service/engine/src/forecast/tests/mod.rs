//! Tests of `length-forecast`: closed forms, calibration on simulated jobs, logs, properties,
//! example requests. Each expected number carries its origin.

mod calibration;
mod closed_forms;
mod crossings;
mod examples;
mod jobs;
mod properties;

use serde_json::{Value as Json, json};
use validator::Validate;

use super::field::{Place, correlation};
use super::hyper::{SCATTER_LOG_SD, SCATTER_MEDIAN, Texture, textures};
use super::matrix::dot;
use super::normal::quantile;
use super::*;
use crate::contract::{Answer, Call, Refusal, Work, run};
use crate::math::exp;
use crate::random::Random;
use crate::trace::Trace;

/// A standard normal number.
fn normal(random: &mut Random) -> f64 {
    quantile(random.uniform())
}

/// A ground drawn from what is assumed of it beforehand.
fn ground(random: &mut Random, places: bool) -> (Texture, f64) {
    let all = textures(places);
    let z = loop {
        let z = normal(random);
        if z.abs() <= 3.0 {
            break z;
        }
    };
    let scatter = SCATTER_MEDIAN.value * exp(SCATTER_LOG_SD.value * z);
    (all[random.below(all.len())], scatter)
}

/// Depths of piles in a ground, m.
fn depths(
    random: &mut Random,
    places: &[Place],
    texture: &Texture,
    scatter: f64,
    mean: f64,
) -> Vec<f64> {
    let mut rows: Vec<Vec<f64>> = Vec::new();
    for i in 0..places.len() {
        let mut row: Vec<f64> = Vec::new();
        for (j, known) in rows.iter().enumerate() {
            let rest = correlation(texture, places[i], places[j]) - dot(&row, &known[..j]);
            row.push(rest / known[j]);
        }
        row.push((1.0 - dot(&row, &row)).sqrt());
        rows.push(row);
    }
    let own: Vec<f64> = places.iter().map(|_| normal(random)).collect();
    rows.iter()
        .map(|row| mean + scatter * dot(row, &own))
        .collect()
}

/// `{value, unit}`.
fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// A request: places and depths of the logs that met 2,778 ft lbf, places and least depths of
/// the piles to come; all in ft.
fn request(met: &[((f64, f64), f64)], planned: &[((f64, f64), f64)]) -> Json {
    let at = |p: &(f64, f64)| json!({ "x": q(p.0, "ft"), "y": q(p.1, "ft") });
    let installed = met.iter().enumerate().map(|(i, (p, depth))| {
        json!({ "label": format!("L{i}"), "position": at(p),
            "record": { "met": { "depth": q(*depth, "ft") } } })
    });
    let planned = planned.iter().enumerate().map(|(i, (p, least))| {
        json!({ "label": format!("P{i}"), "position": at(p), "minimum_depth": q(*least, "ft") })
    });
    json!({
        "required_torque": q(2778.0, "ft_lbf"),
        "planned": planned.collect::<Vec<_>>(),
        "installed": installed.collect::<Vec<_>>(),
        "prior": "none",
    })
}

/// Logs and piles of a small house.
fn house() -> Json {
    request(
        &[
            ((0.0, 0.0), 18.5),
            ((14.4, 0.0), 19.0),
            ((36.0, 0.0), 21.5),
            ((0.0, 26.0), 17.0),
            ((21.6, 26.0), 20.5),
        ],
        &[
            ((7.2, 0.0), 17.0),
            ((28.8, 0.0), 17.0),
            ((36.0, 26.0), 17.0),
            ((18.0, 13.0), 17.0),
        ],
    )
}

/// The same without places.
fn placeless(mut request: Json) -> Json {
    for list in ["planned", "installed"] {
        for pile in request[list].as_array_mut().unwrap() {
            pile.as_object_mut().unwrap().remove("position");
        }
    }
    request
}

fn refusable(request: Json) -> Result<Answer<Outcome>, Refusal> {
    let request: Request = serde_json::from_value(request).expect("a request");
    request.validate().expect("within ranges");
    run::<LengthForecast>(&Call::from(request), Work::new(Trace::on(), None))
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

fn warns(answer: &Answer<Outcome>, code: &str) -> bool {
    answer.warnings.iter().any(|w| w.code == code)
}

/// Difference at most `tolerance`.
#[track_caller]
fn near(got: f64, expected: f64, tolerance: f64) {
    assert!(
        (got - expected).abs() <= tolerance,
        "{got} against {expected} within {tolerance}"
    );
}
