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
        ("area-crosses-itself", "physics", "area_not_simple"),
        (
            "bare-lb",
            "shape",
            "unknown unit `lb`: a pound is a mass here",
        ),
        ("beam-crosses-itself", "physics", "beam_crosses_itself"),
        ("beam-end-barred", "physics", "beam_end_barred"),
        ("beam-too-wide", "physics", "beam_too_wide"),
        ("beam-zero-length", "physics", "beam_segment_zero_length"),
        ("beams-overlap", "physics", "beams_overlap"),
        ("capacity-twice", "physics", "capacity_twice"),
        ("combinations-muddled", "physics", "factor_twice"),
        ("costs-needed", "physics", "costs_needed"),
        ("deflection-without-rigidity", "physics", "rigidity_needed"),
        ("duplicate-labels", "physics", "duplicate_label"),
        ("empty-beams", "lengths", "list_too_short"),
        ("ends-not-joined", "physics", "join_nothing join_misses"),
        (
            "forbidden-stretch-off-beam",
            "physics",
            "forbidden_stretch_off_beam",
        ),
        ("forced-point-barred", "physics", "forced_point_barred"),
        (
            "forced-points-too-close",
            "physics",
            "spacing_cannot_be_met",
        ),
        ("junction-barred", "physics", "beam_end_barred"),
        ("kind-not-combined", "physics", "load_kind_not_combined"),
        ("load-off-the-beam", "physics", "line_load_off_beam"),
        ("load-over-no-beam", "physics", "load_over_no_beam"),
        ("mechanism", "physics", "beam_mechanism"),
        ("min-spacing-needed", "physics", "min_spacing_needed"),
        ("mixed-basis", "physics", "basis_mixed"),
        ("moment-off-the-beam", "physics", "moment_off_beam"),
        ("negative-spacing", "values", ""),
        ("number-1e400", "shape", "number out of range"),
        ("openings-muddled", "physics", "openings_overlap"),
        (
            "options-not-together",
            "physics",
            "not_together not_together not_together",
        ),
        ("outline-bay-too-narrow", "physics", "outline_side_vanishes"),
        (
            "outline-corners",
            "physics",
            "outline_corner_too_sharp outline_sides_step",
        ),
        (
            "outline-crosses-itself",
            "physics",
            "outline_side_zero_length",
        ),
        (
            "outline-inside-unclear",
            "physics",
            "outline_inside_unclear",
        ),
        ("outline-neck-too-narrow", "physics", "outline_too_narrow"),
        (
            "outline-sides-muddled",
            "physics",
            "outline_inset_outside outline_side_unknown outline_side_twice",
        ),
        ("pattern-of-dead-load", "physics", "pattern_of_dead_load"),
        ("pattern-too-large", "physics", "pattern_too_large"),
        (
            "pattern-with-open-types",
            "physics",
            "pattern_with_open_types",
        ),
        ("pattern-without-kinds", "lengths", "list_too_short"),
        ("pile-off-the-beam", "physics", "pile_off_beam"),
        ("piles-at-one-place", "physics", "piles_coincide"),
        (
            "piles-that-cannot-pull",
            "physics",
            "lift_off_no_equilibrium",
        ),
        ("pipe-too-wide", "physics", "spacing_cannot_be_met"),
        ("search-of-given-piles-only", "physics", "given_piles_only"),
        ("search-without-capacity", "physics", "capacity_needed"),
        ("section-beside-strength", "physics", "strength_given_twice"),
        ("section-outside", "physics", "section_outside_code"),
        (
            "section-over-reinforced",
            "physics",
            "section_over_reinforced",
        ),
        ("slab-corners", "physics", "slab_crosses_itself"),
        (
            "slab-edge-without-beam",
            "physics",
            "slab_edge_without_beam",
        ),
        ("slab-not-convex", "physics", "slab_not_convex"),
        ("slab-strips-unclear", "physics", "slab_strips_unclear"),
        ("slab-without-loads", "lengths", "list_too_short"),
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
        ("stiffness-given-twice", "physics", "stiffness_given_twice"),
        ("stiffness-on-rock", "physics", "stiffness_on_rock"),
        ("strength-check-of-factored-loads", "physics", "basis_mixed"),
        (
            "strength-check-without-section",
            "physics",
            "strength_check_without_section",
        ),
        (
            "support-carries-nothing",
            "physics",
            "support_carries_nothing",
        ),
        ("support-faults", "physics", "rigidity_needed"),
        (
            "support-load-above-ultimate",
            "physics",
            "support_load_above_ultimate",
        ),
        (
            "support-of-soft-test",
            "physics",
            "support_stiffness_out_of_range",
        ),
        (
            "torsion-without-rigidity",
            "physics",
            "torsional_rigidity_needed",
        ),
        ("two-choices", "shape", ""),
        ("unknown-case", "physics", "unknown_case"),
        ("unknown-member", "shape", "unknown field `line_load`"),
        ("unknown-pile-type", "physics", "unknown_pile_type"),
        ("unsupported-beam", "physics", "beam_unsupported"),
        ("wrong-unit", "shape", "unknown unit `kPa`"),
        (
            "zone-capacities-differ",
            "physics",
            "zone_capacities_differ",
        ),
        ("zones-overlap", "physics", "zones_overlap"),
    ];
    refused_as::<PileLayout>(&want);
}
