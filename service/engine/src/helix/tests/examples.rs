//! Every example request under `openapi/examples/helix-capacity`: those that must be
//! answered are, those that must be refused are refused where they should be.

use super::{compression, helix, near, tension, warns};
use crate::contract::{Answer, Verdict, Work, run};
use crate::examples::{refused_as, request, requests, through};
use crate::helix::{HelixCapacity, Outcome};
use crate::quantity::{ForceUnit, StressUnit};
use crate::trace::Trace;

pub(super) fn answer_to(wanted: &str) -> Answer<Outcome> {
    let text = request::<HelixCapacity>(wanted);
    through::<HelixCapacity>(&text, Trace::on()).unwrap().1
}

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in requests::<HelixCapacity>("") {
        let (call, _) = through::<HelixCapacity>(&text, Trace::off())
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let trace = if call.options.steps() {
            Trace::on()
        } else {
            Trace::off()
        };
        let answer = run::<HelixCapacity>(&call, Work::new(trace, None))
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let judged = call.request.is_judged();
        assert_eq!(answer.verdict != Verdict::NotAsked, judged, "{name}");
        assert_eq!(!answer.checks.is_empty(), judged, "{name}");
        assert!(
            !answer.methods.is_empty() && !answer.cautions.is_empty(),
            "{name}"
        );
        assert_eq!(answer.steps.is_some(), call.options.steps(), "{name}");
        // the plain form reads back as the same answer: what a client relies on
        let plain = serde_json::to_string(&answer.result).unwrap();
        let back: Outcome = serde_json::from_str(&plain).unwrap();
        assert_eq!(back, answer.result, "{name}");
    }
}

#[test]
fn the_named_examples_come_to_their_verdicts() {
    for (name, expected) in [
        ("linnet", Verdict::Accept),
        ("linnet-uplift", Verdict::Accept),
        ("linnet-upper-helix-in-fill", Verdict::Reject),
        ("sizerin", Verdict::Reject),
        ("sizerin-larger-helices", Verdict::Accept),
        ("sizerin-static-test", Verdict::Accept),
        ("hb-04", Verdict::Accept),
        ("hb-05", Verdict::Accept),
        ("up-09", Verdict::Reject),
        ("cd-01", Verdict::Accept),
        ("cd-02", Verdict::Reject),
        ("cd-02-helical-clause", Verdict::Accept),
        ("cd-06", Verdict::Accept),
        ("shallow-uplift-fails", Verdict::Reject),
        ("weak-layer-below", Verdict::Accept),
        ("hb-02", Verdict::NotAsked),
    ] {
        assert_eq!(answer_to(name).verdict, expected, "{name}");
    }
}

/// Numbers of the cases the examples are named after; origins beside the tests of the cases.
#[test]
fn the_examples_named_after_cases_give_their_numbers() {
    // factor of the first soil under the (last) helix
    for (name, factor, percent) in [
        ("bf-01", 22.5, 1.0),
        ("bf-03", 18.4, 1.5),
        ("bf-04", 18.4, 1.5),
        ("bf-05", 29.44, 0.3),
        ("bf-07", 33.29609, 0.001),
        ("bf-08", 3.875274, 0.001),
        ("uc-02", 10.0444, 0.01),
        ("uc-03", 9.0, 0.01),
    ] {
        let a = answer_to(name);
        near(
            helix(compression(&a), 0).zone[0].bearing_factor,
            factor,
            percent,
        );
    }
    let uc = answer_to("uc-01");
    for (i, nc) in [(0, 7.2), (1, 9.0)] {
        near(helix(compression(&uc), i).zone[0].bearing_factor, nc, 0.01);
    }
    for (name, fq) in [
        ("up-02", 39.5),
        ("up-06", 7.9846),
        ("up-07", 15.97),
        ("up-05", 3.5433),
    ] {
        near(
            helix(tension(&answer_to(name)), 0).zone[0].bearing_factor,
            fq,
            0.5,
        );
    }
    for (name, kn) in [("up-05", 14.043), ("up-06", 9.0564), ("up-07", 90.794)] {
        near(
            tension(&answer_to(name)).ultimate.get(ForceUnit::KN),
            kn,
            0.1,
        );
    }
    let up3 = answer_to("up-03");
    let cylinder = tension(&up3).cylindrical_shear.as_ref().unwrap();
    near(
        cylinder.gaps[0].parts[0].lateral_stress_ratio.unwrap(),
        0.9,
        0.3,
    );
    let up4 = answer_to("up-04");
    near(
        tension(&up4).embedment.as_ref().unwrap().critical_ratio,
        5.175,
        0.1,
    );
    let hb2 = answer_to("hb-02");
    near(compression(&hb2).ultimate.get(ForceUnit::KN), 96.869, 0.05);
    let hb5 = answer_to("hb-05");
    near(compression(&hb5).ultimate.get(ForceUnit::KN), 112.096, 0.05);
    let hb7 = answer_to("hb-07");
    near(
        helix(compression(&hb7), 0).bearing.get(StressUnit::KPa) / 9.0,
        53.333,
        0.01,
    );
    let cd1 = answer_to("cd-01");
    near(
        compression(&cd1)
            .design
            .as_ref()
            .unwrap()
            .capacity
            .get(ForceUnit::KN),
        89.0,
        0.01,
    );
    // AL-01: psi is 1 at 5 m, where s'_v = 10 z = 50 kPa = s_u
    let al = answer_to("al-01");
    let steps = al.steps.as_ref().unwrap();
    let at_one = steps
        .iter()
        .filter(|s| s.symbol == "alpha")
        .any(|s| (s.shown.value() - 0.5).abs() < 0.01);
    assert!(at_one);
    let sb = answer_to("sb-02");
    let d_q = sb
        .steps
        .as_ref()
        .unwrap()
        .iter()
        .find(|s| s.symbol == "d_q")
        .unwrap();
    // own arithmetic: 1 + 0.1 tan 62 deg x 0.375
    near(d_q.shown.value(), 1.070_527, 1e-3);
}

#[test]
fn the_examples_with_something_to_tell_tell_it() {
    for (name, code) in [
        ("linnet-upper-helix-in-fill", "helix_without_credit"),
        ("weak-layer-below", "weak_layer_near_helix"),
        ("steep-friction", "friction_angle_above_40"),
        ("close-helices", "helices_close"),
        ("sizerin-static-test", "factor_rests_on_test"),
        ("cd-02", "uplift_clauses_disagree"),
        ("up-07", "default_from_memory"),
    ] {
        assert!(warns(&answer_to(name), code), "{name}: {code}");
    }
    assert!(!warns(
        &answer_to("linnet-uplift"),
        "uplift_clauses_disagree"
    ));
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    // name, stage, a code of the fault or a part of the message
    let expected = [
        ("absurd-diameter", "values", "diameter"),
        ("absurd-strength", "values", "undrained_strength"),
        (
            "adhesion-on-square-shaft",
            "physics",
            "adhesion_on_square_shaft",
        ),
        ("as-2159-allowable-demand", "physics", "basis_mixed"),
        (
            "as-2159-rating-above-five",
            "values",
            "average_risk_rating_factor",
        ),
        ("bare-lb", "shape", "for a force write `lbf` or `kip`"),
        ("blank-label", "values", "text_length"),
        ("cone-below-overburden", "physics", "cone_below_overburden"),
        (
            "cone-resistance-not-one",
            "physics",
            "cone_resistance_not_one",
        ),
        ("demand-not-computed", "physics", "demand_not_computed"),
        ("demand-without-basis", "physics", "missing_member"),
        ("demand-without-level", "shape", "missing field `level`"),
        ("demand-without-load", "physics", "missing_member"),
        (
            "derived-strength-outside",
            "physics",
            "derived_strength_outside",
        ),
        ("dry-weight-impossible", "physics", "dry_weight_impossible"),
        ("dry-weight-unpaired", "physics", "dry_weight_unpaired"),
        ("duplicate-member", "shape", "duplicate field `pile`"),
        (
            "engineered-fill-not-one",
            "physics",
            "engineered_fill_not_one",
        ),
        (
            "eurocode-actions-and-demand",
            "physics",
            "actions_and_demand",
        ),
        ("eurocode-actions-needed", "physics", "actions_needed"),
        (
            "eurocode-actions-not-computed",
            "physics",
            "demand_not_computed",
        ),
        ("eurocode-actions-without-load", "physics", "missing_member"),
        ("eurocode-allowable-demand", "physics", "basis_mixed"),
        (
            "eurocode-combination-not-in-approach",
            "physics",
            "combination_not_in_approach",
        ),
        ("eurocode-empty-profile", "physics", "missing_member"),
        (
            "eurocode-least-depth-with-tests",
            "physics",
            "resistances_of_one_depth",
        ),
        ("eurocode-many-profiles", "lengths", "list_too_long"),
        ("eurocode-tension-without-test", "physics", "missing_member"),
        ("eurocode-without-tests", "lengths", "list_too_short"),
        ("friction-above-range", "values", "friction_angle"),
        (
            "ground-would-lift",
            "physics",
            "effective_stress_not_positive",
        ),
        ("group-demand-without-basis", "physics", "missing_member"),
        ("group-helices-overlap", "physics", "group_helices_overlap"),
        ("group-mixed-basis", "physics", "basis_mixed"),
        ("group-of-one", "physics", "group_of_one"),
        ("group-of-one-position", "lengths", "list_too_short"),
        ("group-too-many-rows", "values", "row_count"),
        ("group-without-spacing", "physics", "missing_member"),
        ("head-below-helix", "physics", "head_below_helix"),
        ("head-movement-without-wall", "physics", "missing_member"),
        ("helices-coincide", "physics", "helices_coincide"),
        ("helix-below-profile", "physics", "helix_below_profile"),
        ("helix-in-hazard", "physics", "helix_in_hazard"),
        ("helix-in-rock", "physics", "helix_in_rock"),
        (
            "helix-not-wider-than-shaft",
            "physics",
            "helix_not_wider_than_shaft",
        ),
        ("layer-gap", "physics", "layer_gap"),
        ("layer-overlap", "physics", "layer_overlap"),
        ("layer-upside-down", "physics", "layer_inverted"),
        ("layer-without-soil", "shape", "missing field `soil`"),
        ("layers-empty", "lengths", "list_too_short"),
        ("layers-missing", "shape", "missing field `layers`"),
        (
            "leaning-sides-in-clay",
            "physics",
            "leaning_sides_in_other_soil",
        ),
        ("lighter-than-water", "physics", "layer_lighter_than_water"),
        ("mixed-basis", "physics", "basis_mixed"),
        ("mixed-basis-unfactored-load", "physics", "basis_mixed"),
        ("movement-limit-without-load", "physics", "missing_member"),
        ("negative-demand", "values", "compression"),
        ("negative-depth", "values", "depth"),
        ("negative-strength", "values", "undrained_strength"),
        ("nine-helices", "lengths", "list_too_long"),
        (
            "no-group-uplift-factor",
            "physics",
            "no_group_uplift_factor",
        ),
        ("no-helices", "lengths", "list_too_short"),
        ("not-a-number", "shape", "invalid type: string"),
        ("null-depth", "shape", "invalid type: null"),
        ("number-too-large", "shape", "number out of range"),
        ("own-factors-direction-missing", "physics", "missing_member"),
        ("own-factors-empty", "physics", "missing_member"),
        ("own-factors-other-level", "physics", "basis_mixed"),
        ("own-factors-without-reference", "values", "text_length"),
        (
            "plasticity-index-missing",
            "physics",
            "plasticity_index_needed",
        ),
        (
            "plasticity-index-outside",
            "physics",
            "plasticity_index_outside",
        ),
        (
            "pore-pressure-starts-above-zero",
            "physics",
            "pore_pressure_starts_above_zero",
        ),
        ("pore-pressures-empty", "lengths", "list_too_short"),
        (
            "pore-pressures-not-downward",
            "physics",
            "pore_pressures_not_downward",
        ),
        ("profile-ends-in-zone", "physics", "profile_ends_in_zone"),
        (
            "reliability-load-not-computed",
            "physics",
            "demand_not_computed",
        ),
        (
            "reliability-needs-load",
            "physics",
            "reliability_needs_load",
        ),
        ("rock-above-helix", "physics", "helix_in_rock"),
        ("rock-in-zone", "physics", "helix_in_rock"),
        (
            "safety-factor-below-one",
            "values",
            "compression_safety_factor",
        ),
        ("same-label-twice", "physics", "duplicate_label"),
        ("saturated-lighter", "physics", "layer_saturated_lighter"),
        (
            "saturated-too-heavy",
            "physics",
            "layer_saturated_too_heavy",
        ),
        (
            "saturated-weight-twice",
            "physics",
            "saturated_weight_twice",
        ),
        (
            "saturated-weight-unknown",
            "physics",
            "saturated_weight_unknown",
        ),
        (
            "several-faults",
            "physics",
            "basis_mixed helix_below_profile helix_not_wider_than_shaft layer_gap",
        ),
        ("sixty-one-layers", "lengths", "list_too_long"),
        ("soil-missing", "shape", "missing field `soil`"),
        (
            "spt-corrected-twice",
            "physics",
            "spt_member_unused spt_member_unused",
        ),
        ("spt-form-unfit", "physics", "spt_form_unfit"),
        ("spt-in-gravel", "physics", "correlation_not_for_gravel"),
        ("spt-silty-above-water", "physics", "spt_silty_above_water"),
        (
            "statistic-does-not-apply",
            "physics",
            "statistic_does_not_apply",
        ),
        ("strength-missing", "physics", "strength_not_one"),
        ("strength-twice", "physics", "strength_not_one"),
        ("tension-factor-twice", "physics", "tension_factor_twice"),
        (
            "terzaghi-with-width-term",
            "physics",
            "no_closed_width_factor",
        ),
        ("test-outside-layer", "physics", "test_outside_layer"),
        ("two-bases", "shape", ""),
        ("two-soils-in-one-layer", "shape", ""),
        ("unit-weight-missing", "physics", "unit_weight_not_one"),
        ("unknown-member", "shape", "unknown field `dept`"),
        ("unknown-method", "shape", "unknown variant `vesic`"),
        ("water-given-twice", "physics", "water_given_twice"),
        ("wrong-unit", "shape", "unknown unit `kPa`"),
        ("zone-too-deep", "values", "bearing_zone_ratio"),
    ];
    refused_as::<HelixCapacity>(&expected);
}
