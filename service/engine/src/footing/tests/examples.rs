//! Every example request under `openapi/examples/footing-bearing`: those that must be
//! answered are, those that must be refused are refused where they should be.

use super::*;
use crate::contract::Verdict;
use crate::examples::{refused_as, requests};

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in requests::<FootingBearing>("") {
        let (call, answer) = through::<FootingBearing>(&text, Trace::off())
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let judged = call.request.demand.is_some();
        assert_eq!(answer.verdict != Verdict::NotAsked, judged, "{name}");
        assert_eq!(!answer.checks.is_empty(), judged, "{name}");
    }
}

#[test]
fn the_named_examples_come_to_their_verdicts() {
    for (name, expected) in [
        ("linnet", Verdict::Reject),
        ("linnet-wider-strip", Verdict::Accept),
        ("sizerin", Verdict::Accept),
        ("reaction-crib", Verdict::Accept),
        ("theories-side-by-side", Verdict::Accept),
        ("sb-01", Verdict::NotAsked),
        ("bf-01", Verdict::NotAsked),
    ] {
        assert_eq!(example(name).verdict, expected, "{name}");
    }
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    // name, stage, a code of the fault or a part of the message
    refused_as::<FootingBearing>(&[
        ("angle-above-45", "physics", "above_maximum"),
        ("deeper-than-five-widths", "physics", "footing_too_deep"),
        ("demand-without-basis", "physics", "missing_member"),
        ("eccentric-load", "shape", "unknown field `eccentricity`"),
        ("empty-table", "physics", "missing_member"),
        ("factored-load-allowable", "physics", "basis_mixed"),
        ("footing-without-soil", "physics", "missing_member"),
        ("force-on-a-strip", "physics", "footing_load_of_other_shape"),
        ("friction-above-45", "values", "range"),
        (
            "length-below-width",
            "physics",
            "footing_length_below_width",
        ),
        ("lighter-than-water", "physics", "layer_lighter_than_water"),
        (
            "line-load-on-a-square",
            "physics",
            "footing_load_of_other_shape",
        ),
        ("method-twice", "physics", "footing_method_twice"),
        ("no-methods", "lengths", "list_too_short"),
        ("no-strength", "physics", "footing_without_strength"),
        ("nothing-asked", "physics", "footing_nothing_asked"),
        ("ratio-below-nil", "physics", "below_minimum"),
        ("saturated-lighter", "physics", "layer_saturated_lighter"),
        (
            "skempton-in-sand",
            "physics",
            "footing_method_undrained_only",
        ),
        (
            "table-without-method",
            "physics",
            "footing_table_without_method",
        ),
        ("two-layers", "shape", "unknown field `layers`"),
    ]);
}
