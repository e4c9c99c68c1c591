//! Every example request under `openapi/examples/torque-capacity`: those that must be
//! answered are, those that must be refused are refused where they should be.

use crate::contract::{CheckStatus, Verdict};
use crate::examples::{refused_as, request, requests, through};
use crate::torque::TorqueCapacity;
use crate::trace::Trace;

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in requests::<TorqueCapacity>("") {
        let (call, answer) = through::<TorqueCapacity>(&text, Trace::off())
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let judged = call.request.demand.is_some()
            || call.request.torsion.is_some_and(|t| t.rating.is_some())
                && call.request.installed.is_some();
        assert_eq!(answer.verdict != Verdict::NotAsked, judged, "{name}");
        assert_eq!(!answer.checks.is_empty(), judged, "{name}");
    }
}

#[test]
fn the_named_examples_come_to_their_verdicts() {
    let verdict = |wanted: &str| {
        let text = request::<TorqueCapacity>(wanted);
        let (_, answer) = through::<TorqueCapacity>(&text, Trace::off()).unwrap();
        answer.verdict
    };
    for (name, expected) in [
        ("linnet", Verdict::Accept),
        ("linnet-installed", Verdict::Accept),
        ("linnet-two-speed-motor", Verdict::Accept),
        ("reading-in-slow-gear", Verdict::Provisional),
        ("reading-in-fast-gear", Verdict::Reject),
        ("sizerin", Verdict::Accept),
        ("sizerin-tension-in-doubt", Verdict::Provisional),
        ("sizerin-static-test", Verdict::Accept),
        ("sizerin-tension-reduced", Verdict::Reject),
        ("linnet-tension-same", Verdict::Accept),
        ("linnet-site-tests", Verdict::Accept),
        ("linnet-site-tests-band", Verdict::Provisional),
        ("linnet-cab-card", Verdict::Accept),
        ("sizerin-cab-card", Verdict::Provisional),
        ("cab-card-differences", Verdict::Accept),
        ("cab-card-torque-only", Verdict::Provisional),
        ("linnet-compare-factors", Verdict::Accept),
        ("gauge-band", Verdict::Provisional),
        ("motor-planning", Verdict::Reject),
        ("over-torque", Verdict::Reject),
        ("shallow-top-helix", Verdict::Provisional),
        ("square-rounded-corners", Verdict::Provisional),
        ("cd-01", Verdict::Accept),
        ("cd-02", Verdict::Accept),
        ("cd-03", Verdict::Accept),
        ("tq-03", Verdict::NotAsked),
    ] {
        assert_eq!(verdict(name), expected, "{name}");
    }
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    // name, stage, a code of the fault or a part of the message
    let expected = [
        ("absurd-torque", "values", "range"),
        ("bare-lb", "shape", "for a force write `lbf` or `kip`"),
        ("cab-card-too-long", "physics", "cab_card_too_long"),
        (
            "cab-card-without-target",
            "physics",
            "cab_card_without_target",
        ),
        ("compare-without-shaft", "physics", "missing_member"),
        ("demand-without-basis", "physics", "missing_member"),
        ("demand-without-load", "physics", "missing_member"),
        (
            "diagonal-impossible",
            "physics",
            "shaft_diagonal_impossible",
        ),
        (
            "diameter-outside-range",
            "physics",
            "shaft_outside_torque_factor_range",
        ),
        (
            "duplicate-member",
            "shape",
            "duplicate field `torque_factor`",
        ),
        ("efficiency-above-one", "values", "range"),
        ("factor-missing", "physics", "missing_member"),
        ("fast-gear-not-smaller", "physics", "fast_gear_not_smaller"),
        ("flow-without-efficiency", "physics", "missing_member"),
        ("gear-counted-twice", "physics", "gear_counted_twice"),
        ("gear-not-named", "physics", "missing_member"),
        (
            "livneh-on-round-shaft",
            "physics",
            "shaft_outside_torque_factor_range",
        ),
        ("mixed-basis", "physics", "basis_mixed"),
        ("mixed-basis-service-load", "physics", "basis_mixed"),
        ("negative-torque", "values", "range"),
        (
            "no-pressure-difference",
            "physics",
            "no_pressure_difference",
        ),
        ("nothing-asked", "physics", "torque_nothing_asked"),
        ("number-too-large", "shape", "number out of range"),
        ("obstruction", "physics", "torque_at_obstruction"),
        ("own-factor-blank-reference", "values", "text_length"),
        ("own-factor-other-direction", "physics", "missing_member"),
        (
            "own-factor-without-reference",
            "shape",
            "missing field `reference`",
        ),
        ("plateau-too-short", "physics", "torque_plateau_too_short"),
        ("pressure-without-drive", "physics", "missing_member"),
        ("several-faults", "physics", "basis_mixed"),
        ("shaft-missing", "physics", "missing_member"),
        ("shaft-not-listed", "physics", "shaft_not_listed"),
        (
            "shaft-outside-range",
            "physics",
            "shaft_outside_torque_factor_range",
        ),
        (
            "site-band-reversed",
            "physics",
            "site_factor_band_reversed site_factor_band_reversed",
        ),
        ("site-tests-none", "values", "range"),
        ("site-tests-other-direction", "physics", "missing_member"),
        ("spin-out", "physics", "spin_out"),
        ("st-nyc-85", "physics", "spin_out"),
        ("tension-factor-twice", "physics", "tension_factor_twice"),
        (
            "tension-factor-with-livneh",
            "physics",
            "tension_factor_given",
        ),
        ("tension-factor-with-own", "physics", "tension_factor_given"),
        (
            "tension-too-shallow",
            "physics",
            "tension_by_torque_too_shallow",
        ),
        ("torque-in-lbf", "shape", "unknown unit `lbf`"),
        ("two-choices", "shape", ""),
        ("unknown-member", "shape", "unknown field `torque_facter`"),
        ("wall-missing", "physics", "missing_member"),
        ("wall-too-thick", "physics", "shaft_wall_too_thick"),
    ];
    refused_as::<TorqueCapacity>(&expected);
}

#[test]
fn a_rating_without_a_demand_is_judged_too() {
    let answer = super::answer(serde_json::json!({
        "shaft": super::round(2.875), "torque_factor": { "listed_shaft": {} },
        "installed": { "reading": super::gauge(5500.0, "ft_lbf") },
        "torsion": { "rating": super::q(5500.0, "ft_lbf") },
    }));
    // on the limit passes
    assert_eq!(
        super::status(&answer, "installed_torque_limit"),
        CheckStatus::Pass
    );
    assert_eq!(answer.verdict, Verdict::Accept);
}
