//! Every example request is read, checked, run and printed; every refused one fails.

use crate::examples::{refused_as, requests, through};
use crate::layout::PileLayout;
use crate::trace::Trace;

#[test]
fn every_example_answers() {
    for (name, text) in requests::<PileLayout>("") {
        let answered = through::<PileLayout>(&text, Trace::on());
        assert!(answered.is_ok(), "{name}: {:?}", answered.err());
    }
}

#[test]
fn every_refused_example_is_refused_for_its_reason() {
    let want = [
        ("absurd-load", "values", ""),
        (
            "bare-lb",
            "shape",
            "unknown unit `lb`: a pound is a mass here",
        ),
        ("beam-crosses-itself", "physics", "beam_crosses_itself"),
        ("beam-zero-length", "physics", "beam_segment_zero_length"),
        ("beams-overlap", "physics", "beams_overlap"),
        ("combinations-muddled", "physics", "factor_twice"),
        ("duplicate-labels", "physics", "duplicate_label"),
        ("empty-beams", "lengths", "list_too_short"),
        (
            "forced-points-too-close",
            "physics",
            "spacing_cannot_be_met",
        ),
        ("kind-not-combined", "physics", "load_kind_not_combined"),
        ("load-off-the-beam", "physics", "line_load_off_beam"),
        ("mechanism", "physics", "beam_mechanism"),
        ("mixed-basis", "physics", "basis_mixed"),
        ("negative-spacing", "values", ""),
        ("number-1e400", "shape", "number out of range"),
        ("pile-off-the-beam", "physics", "pile_off_beam"),
        ("piles-at-one-place", "physics", "piles_coincide"),
        ("search-without-capacity", "physics", "capacity_needed"),
        ("spacing-cannot-be-met", "physics", "spacing_cannot_be_met"),
        ("spacing-crossed", "physics", "spacing_cannot_be_met"),
        ("springs-without-rigidity", "physics", "rigidity_needed"),
        ("staking-check-point-off", "physics", "control_check_off"),
        (
            "staking-control-points-coincide",
            "physics",
            "control_points_coincide control_points_coincide",
        ),
        (
            "staking-distances-disagree",
            "physics",
            "control_distances_disagree",
        ),
        (
            "staking-unknown-pile",
            "physics",
            "duplicate_label pile_top_unknown_pile",
        ),
        ("two-choices", "shape", ""),
        ("unknown-case", "physics", "unknown_case"),
        ("unknown-member", "shape", "unknown field `line_load`"),
        ("unsupported-beam", "physics", "beam_unsupported"),
        ("wrong-unit", "shape", "unknown unit `kPa`"),
    ];
    refused_as::<PileLayout>(&want);
}
