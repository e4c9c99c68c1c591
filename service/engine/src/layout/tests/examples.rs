//! Every example request is read, checked, run and printed; every refused one fails.

use validator::Validate;

use super::{answer, folder};
use crate::contract::{Calculation, Call};
use crate::layout::{PileLayout, Request};
use crate::quantity::{In, Presentation};

fn texts(refused: bool) -> Vec<(String, String)> {
    let at = if refused {
        folder().join("refused")
    } else {
        folder()
    };
    let mut out: Vec<_> = std::fs::read_dir(at)
        .unwrap()
        .map(|e| e.unwrap().path())
        .filter(|p| {
            let name = p.file_name().unwrap().to_string_lossy().into_owned();
            name.ends_with(".json")
                && !name.ends_with(".answer.json")
                && !name.ends_with(".problem.json")
        })
        .map(|p| {
            let name = p.file_stem().unwrap().to_string_lossy().into_owned();
            (name, std::fs::read_to_string(&p).unwrap())
        })
        .collect();
    out.sort();
    assert!(out.len() > 10);
    out
}

/// Codes of the stage at which a request fails; none where it answers.
fn faults(text: &str) -> Vec<String> {
    let call: Call<Request> = match serde_json::from_str(text) {
        Ok(call) => call,
        Err(e) => return vec![format!("shape: {e}")],
    };
    let mut issues = Vec::new();
    PileLayout::lengths(&call.request, &mut issues);
    if !issues.is_empty() {
        return issues.iter().map(|i| i.code.to_string()).collect();
    }
    if let Err(e) = call.request.validate() {
        return vec![format!("range: {e}")];
    }
    match answer(&call) {
        Err(refusal) => refusal.issues.iter().map(|i| i.code.to_string()).collect(),
        Ok(a) => {
            let form = Presentation::Printed(call.options.system());
            serde_json::to_string(&In(form, &a)).unwrap();
            Vec::new()
        }
    }
}

#[test]
fn every_example_answers() {
    for (name, text) in texts(false) {
        assert_eq!(faults(&text), Vec::<String>::new(), "{name}");
    }
}

#[test]
fn every_refused_example_is_refused_for_its_reason() {
    let want = [
        ("absurd-load", "range: "),
        (
            "bare-lb",
            "shape: unknown unit `lb`: a pound is a mass here",
        ),
        ("beam-crosses-itself", "beam_crosses_itself"),
        ("beam-zero-length", "beam_segment_zero_length"),
        ("beams-overlap", "beams_overlap"),
        ("combinations-muddled", "factor_twice"),
        ("duplicate-labels", "duplicate_label"),
        ("empty-beams", "list_too_short"),
        ("forced-points-too-close", "spacing_cannot_be_met"),
        ("kind-not-combined", "load_kind_not_combined"),
        ("load-off-the-beam", "line_load_off_beam"),
        ("mechanism", "beam_mechanism"),
        ("mixed-basis", "basis_mixed"),
        ("negative-spacing", "range: "),
        ("number-1e400", "shape: number out of range"),
        ("pile-off-the-beam", "pile_off_beam"),
        ("piles-at-one-place", "piles_coincide"),
        ("search-without-capacity", "capacity_needed"),
        ("spacing-cannot-be-met", "spacing_cannot_be_met"),
        ("spacing-crossed", "spacing_cannot_be_met"),
        ("springs-without-rigidity", "rigidity_needed"),
        ("two-choices", "shape: "),
        ("unknown-case", "unknown_case"),
        ("unknown-member", "shape: unknown field `line_load`"),
        ("unsupported-beam", "beam_unsupported"),
        ("wrong-unit", "shape: unknown unit `kPa`"),
    ];
    let texts = texts(true);
    let names: Vec<&str> = texts.iter().map(|t| t.0.as_str()).collect();
    assert_eq!(names, want.map(|w| w.0));
    for ((name, text), (_, code)) in texts.iter().zip(want) {
        let found = faults(text);
        assert!(
            found.iter().any(|f| f.starts_with(code)),
            "{name}: {found:?}"
        );
    }
}
