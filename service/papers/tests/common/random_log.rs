//! Random logs: labels of any characters, every part of a request there or not, answers that
//! no log would give.
#![allow(dead_code)]

use proptest::prelude::*;
use serde_json::{Value, json};

use super::record::{Log, Row};
use super::section::{clay, layer, sand, silt};

const STANDINGS: [&str; 5] = ["counts", "spike", "unconfirmed", "not_fresh", "no_torque"];
const VERDICTS: [&str; 4] = ["accept", "provisional", "reject", "continue"];
const STEPS: [&str; 10] = [
    "inspect_shaft",
    "drive_deeper",
    "restore_advance",
    "wait_and_retorque",
    "pre_drill",
    "extract_and_move",
    "larger_helix",
    "load_test",
    "complete_record",
    "ask_engineer",
];
const CHECKS: [&str; 6] = [
    "record_torque",
    "record_plateau",
    "record_shaft_torque",
    "record_advance",
    "record_tip_depth",
    "record_calibration",
];
const STOPS: [&str; 5] = [
    "target_reached",
    "obstruction",
    "drive_stalled",
    "spin_out",
    "still_turning",
];

/// Texts as callers send them: plain, markup, wide and strange characters.
pub fn text() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-zA-Z0-9 ]{1,20}",
        "[<>&\"'/a-z!\\[\\]-]{1,64}",
        "[WM\u{6f22}\u{5b57}\u{1f600}]{1,64}",
        "\\PC{1,64}",
    ]
    .prop_filter("a text has a character", |l| !l.is_empty())
}

/// Rows whose depths mostly grow, over a depth of a foot to 300 ft.
fn rows() -> impl Strategy<Value = Vec<Row>> {
    let row = (
        0.0..1.0_f64,
        prop::option::weighted(0.9, prop_oneof![4 => 0.0..1.0_f64, 1 => 1.0..6.0_f64]),
        prop::sample::select(STANDINGS.to_vec()),
        prop::option::of(0.0..3.0_f64),
        0..30_u32,
    );
    let count = prop_oneof![1..40_usize, 1..=400_usize];
    let all = count.prop_flat_map(move |n| prop::collection::vec(row.clone(), n));
    (all, 0.0..2.5_f64, 1.0..5.0_f64).prop_map(|(rows, depth, torque)| {
        let depth = bearwell_engine::math::pow(10.0, depth);
        let torque = bearwell_engine::math::pow(10.0, torque);
        let down: f64 = rows.iter().map(|r| r.0).sum::<f64>().max(1e-6);
        let mut at = 0.0;
        rows.into_iter()
            .map(|(step, share, standing, advance, back)| {
                at += step / down * depth;
                if back == 0 {
                    at *= 0.8;
                }
                let torque = share.map(|s| s * torque);
                let standing = match torque {
                    None => "no_torque",
                    Some(_) if standing == "no_torque" => "counts",
                    Some(_) => standing,
                };
                (at, torque, standing, advance)
            })
            .collect()
    })
}

fn soil() -> impl Strategy<Value = Value> {
    prop_oneof![
        (10.0..300.0_f64).prop_map(clay),
        (10.0..300.0_f64).prop_map(silt),
        (25.0..40.0_f64).prop_map(sand),
        Just(json!({"fill": {}})),
        Just(json!({"organic": {}})),
        Just(json!({"rock": {}})),
    ]
}

/// Up to 60 layers that reach to 1 to 100 m.
fn profile() -> impl Strategy<Value = Value> {
    let layers = prop::collection::vec((0.05..1.0_f64, soil(), text()), 1..=60);
    (layers, 1.0..95.0_f64).prop_map(|(layers, depth)| {
        let total: f64 = layers.iter().map(|l| l.0).sum();
        let mut top = 0.0;
        let all = layers.into_iter().map(|(thick, soil, label)| {
            let bottom = top + thick / total * depth;
            let one = layer(&label, top, bottom, soil);
            top = bottom;
            one
        });
        json!({"layers": all.collect::<Vec<_>>()})
    })
}

fn depths(
    names: &'static [(&'static str, f64)],
) -> impl Strategy<Value = Vec<(&'static str, f64)>> {
    let one = (any::<bool>(), 0.0..1.0_f64, any::<bool>());
    prop::collection::vec(one, names.len()).prop_map(move |all| {
        let named = names.iter().zip(all);
        named
            .filter(|(_, (there, _, _))| *there)
            // close together, or anywhere
            .map(|((name, most), (_, share, near))| {
                (
                    *name,
                    if near {
                        3.0 + 0.1 * share
                    } else {
                        share * most
                    },
                )
            })
            .collect()
    })
}

/// Logs with everything there or not.
pub fn case() -> impl Strategy<Value = Log> {
    let pile = (
        prop_oneof![Just(String::new()), text()],
        prop::collection::vec((4.0..50.0_f64, 0.0..60.0_f64), 1..=8),
        any::<bool>(),
        any::<bool>(),
    );
    let torque = || prop::option::of(1.0..100_000.0_f64);
    let counts = prop::option::of(0.0..1.2_f64);
    let torques = (
        torque(),
        torque(),
        torque(),
        counts,
        0.0..1.0_f64,
        0.0..1.0_f64,
    );
    let levels = (
        depths(&[
            ("minimum_tip_depth", 300.0),
            ("maximum_tip_depth", 300.0),
            ("frost_depth", 15.0),
            ("fill_depth", 90.0),
            ("active_depth", 90.0),
        ]),
        depths(&[("pre_drilled_depth", 300.0), ("disturbed_depth", 300.0)]),
        prop::option::of(0.0..30.0_f64),
        prop::option::of(profile()),
    );
    let number = prop::option::of((0.0..1e6_f64, 0.0..1e6_f64, Just("m")));
    let check = (
        prop::sample::select(CHECKS.to_vec()),
        prop::sample::select(vec!["pass", "fail", "warn", "not_evaluated"]),
        number,
        prop_oneof![Just(String::new()), text()],
    );
    let next = (
        prop::sample::select(STEPS.to_vec()),
        text(),
        prop::option::of(0.0..300.0_f64),
    );
    let said = (
        prop::collection::vec(check, 0..30),
        prop::collection::vec(next, 0..10),
        prop::option::of(prop::sample::select(STOPS.to_vec())),
        prop::sample::select(VERDICTS.to_vec()),
        (any::<bool>(), 0..13_usize, 0..12_usize, 0..6_usize),
        prop::collection::vec((0..400_usize, text()), 0..5),
    );
    (rows(), pile, torques, levels, said).prop_map(
        |(
            rows,
            (label, helices, square, no_shaft),
            (required, reduced, limit, counts, from, to),
            (depths, history, margin, profile),
            (checks, next, stop, verdict, (capacity, missing, cautions, warnings), notes),
        )| {
            let deepest = rows.iter().map(|r| r.0).fold(0.0, f64::max);
            let (from, to) = (from.min(to) * deepest, from.max(to) * deepest);
            let torques = rows.iter().filter_map(|r| r.1);
            let greatest = torques.fold(1.0, f64::max);
            let count = rows.len();
            let mut helices = helices;
            // no two at one place
            helices.sort_by(|a, b| a.1.total_cmp(&b.1));
            helices.dedup_by(|b, a| b.1 - a.1 < 0.2);
            Log {
                label,
                rows,
                helices,
                square,
                no_shaft,
                required,
                reduced: required.and(reduced),
                limit,
                effective: counts.map(|c| (c * greatest, from, to)),
                depths,
                history,
                margin,
                stop,
                profile,
                layers: Vec::new(),
                checks,
                next,
                capacity,
                missing,
                cautions,
                warnings,
                verdict,
                notes: notes
                    .into_iter()
                    .map(|(at, text)| (at % count, text))
                    .collect(),
            }
        },
    )
}
