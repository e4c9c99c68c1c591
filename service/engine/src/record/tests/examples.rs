//! Every example request under `openapi/examples/installation-record`: what must be answered
//! comes to its verdict, what must be refused stops where it should.

use super::*;
use crate::contract::Verdict::{Accept, Continue, Provisional, Reject};
use crate::examples::{refused_as, requests, through};

#[test]
fn every_example_comes_to_its_verdict() {
    let expected = [
        ("effective-final-reading", Accept),
        ("effective-last-three-readings", Accept),
        ("effective-least-in-window", Provisional),
        ("effective-lower-of-two-windows", Accept),
        ("effective-mean-over-3-diameters", Accept),
        ("effective-mean-over-3-ft", Accept),
        ("in-1", Accept),
        ("in-1-4-5-turns", Accept),
        ("in-1-5-turns", Continue),
        ("linnet", Accept),
        ("linnet-at-greatest-depth", Reject),
        ("linnet-backed-out", Accept),
        ("linnet-by-pressure", Accept),
        ("linnet-by-pressure-pair", Accept),
        ("linnet-c4-event-alone", Reject),
        ("linnet-c4-for-the-layout", Reject),
        ("linnet-calibration-out-of-date", Provisional),
        ("linnet-crust-over-soft", Continue),
        ("linnet-e2-without-rpm", Provisional),
        ("linnet-e3-short-of-torque", Reject),
        ("linnet-gauge-band", Provisional),
        ("linnet-keep-driving", Continue),
        ("linnet-limits-of-the-caller", Accept),
        ("linnet-no-report", Provisional),
        ("linnet-off-line", Reject),
        ("linnet-one-stone", Reject),
        ("linnet-over-torque", Reject),
        ("linnet-pre-drilled", Accept),
        ("linnet-report-elsewhere", Accept),
        ("linnet-retorque", Accept),
        ("linnet-reused-and-inspected", Accept),
        ("linnet-reused-pile", Provisional),
        ("linnet-rows-missing", Provisional),
        ("linnet-spin-out", Reject),
        ("linnet-stone-passed", Accept),
        ("linnet-stopped-on-debris", Reject),
        ("linnet-thin-crust", Provisional),
        ("linnet-turned-back", Continue),
        ("nothing-but-a-log", Provisional),
        ("porch-pile-in-tension", Provisional),
        ("record-complete", Accept),
        ("record-ibc-1705-9", Accept),
        ("record-installer-minimum", Provisional),
        ("record-own-list", Accept),
        ("relaxation-in-wet-sand", Provisional),
        ("sizerin", Provisional),
        ("sizerin-rock-at-2-m", Reject),
        ("stated-torque-without-factor", Accept),
        ("tension-factor-in-doubt", Provisional),
    ];
    let mut found = Vec::new();
    for (name, text) in requests::<InstallationRecord>("") {
        let (call, answer) = through::<InstallationRecord>(&text, Trace::off())
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        assert_eq!(answer.result.rows.len(), call.request.log.len(), "{name}");
        let done = answer.verdict == Accept;
        assert_eq!(answer.result.next_steps.is_empty(), done, "{name}");
        found.push((
            name,
            answer.verdict,
            format!("{:?}", answer.verdict_reasons),
        ));
    }
    let wrong: Vec<_> = found
        .iter()
        .filter(|(name, verdict, _)| !expected.contains(&(name.as_str(), *verdict)))
        .collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert_eq!(found.len(), expected.len());
}

/// IN-1: 85 % of a pitch of 3 in is 2.55 in a turn. Where the final torque is taken, 4 turns a
/// foot are 3 in and 4.5 are 2.667, which pass; 5 are 2.4, which fail.
#[test]
fn in_1_advance_at_final_torque() {
    for (name, advance, status) in [
        ("in-1", 3.0, CheckStatus::Pass),
        ("in-1-4-5-turns", 12.0 / 4.5, CheckStatus::Pass),
        ("in-1-5-turns", 2.4, CheckStatus::Fail),
    ] {
        let text = crate::examples::request::<InstallationRecord>(name);
        let (_, answer) = through::<InstallationRecord>(&text, Trace::off()).unwrap();
        let check = answer.checks.iter().find(|c| c.id == "record_advance");
        let check = check.expect("a check of the advance");
        assert_eq!(check.status, status, "{name}");
        let inches = |shown: &Option<crate::quantity::Shown>| {
            shown.as_ref().expect("a value").value() / 0.0254
        };
        assert!((inches(&check.demand) - 2.55).abs() < 1e-9, "{name}");
        assert!((inches(&check.capacity) - advance).abs() < 1e-9, "{name}");
    }
}

/// The capacity by torque of the pile in debris, its helices and what can be done: the figures
/// a practitioner checks.
#[test]
fn the_steps_offered_carry_their_numbers() {
    let text = crate::examples::request::<InstallationRecord>("linnet-keep-driving");
    let (_, answer) = through::<InstallationRecord>(&text, Trace::off()).unwrap();
    let steps = &answer.result.next_steps;
    let deeper = steps.iter().find(|s| s.step == NextStepKind::DriveDeeper);
    let deeper = deeper.expect("a step down");
    let by = deeper
        .deeper_by
        .expect("a length")
        .get(crate::quantity::LengthUnit::Ft);
    assert!((by - 3.0).abs() < 1e-9, "{by}");
    let text = crate::examples::request::<InstallationRecord>("linnet-at-greatest-depth");
    let (_, answer) = through::<InstallationRecord>(&text, Trace::off()).unwrap();
    let larger = answer
        .result
        .next_steps
        .iter()
        .find(|s| s.step == NextStepKind::LargerHelix);
    let area = larger.and_then(|s| s.helix_area).expect("an area");
    // 1.2406 ft2 net x 2,777.8 / 2,250
    let now = std::f64::consts::PI / 4.0 * (100.0 + 144.0 - 2.0 * 2.875 * 2.875) / 144.0;
    let needed = now * 2_777.777_777_8 / 2250.0;
    assert!((area.get(crate::quantity::AreaUnit::Ft2) / needed - 1.0).abs() < 1e-6);
}

#[test]
fn every_refused_example_is_refused_where_it_should() {
    refused_as::<InstallationRecord>(&[
        ("demand-without-factor", "physics", "missing_member"),
        ("depths-crossed", "physics", "record_depths_crossed"),
        ("down-without-a-turn", "physics", "log_no_turns"),
        ("empty-log", "lengths", "list_too_short"),
        ("factored-load-on-allowable", "physics", "basis_mixed"),
        ("field-twice", "physics", "record_field_twice"),
        (
            "gear-that-is-not-there",
            "physics",
            "log_gear_unknown log_gear_unknown",
        ),
        ("list-of-no-fields", "lengths", "list_too_short"),
        ("no-depth-column", "shape", "missing"),
        ("no-helix", "lengths", "list_too_short"),
        ("no-torque-at-all", "physics", "log_no_torque"),
        ("not-a-date", "values", "date"),
        ("note-without-row", "physics", "log_note_without_row"),
        ("pressure-below-no-load", "physics", "log_pressure_negative"),
        ("pressures-without-drive", "physics", "missing_member"),
        ("profile-with-a-gap", "physics", "layer"),
        (
            "relocation-in-a-search",
            "physics",
            "relocation_piles_not_given",
        ),
        (
            "relocation-of-an-unknown-pile",
            "physics",
            "record_depths_crossed relocation_unknown_pile",
        ),
        ("relocation-on-another-basis", "physics", "basis_mixed"),
        ("relocation-without-a-pile", "physics", "missing_member"),
        ("relocation-without-beams", "lengths", "list_too_short"),
        ("return-pressure-alone", "physics", "log_inlet_missing"),
        ("row-out-of-range", "values", "range"),
        ("row-too-short", "shape", "row 3"),
        (
            "shaft-not-listed",
            "physics",
            "shaft_outside_torque_factor_range",
        ),
        ("text-for-a-number", "shape", "invalid type"),
        ("torque-and-pressure", "physics", "log_torque_twice"),
        ("turns-and-advance", "physics", "log_advance_twice"),
        ("two-helices-at-one-place", "physics", "record_helix_twice"),
        ("wall-too-thick", "physics", "shaft_wall_too_thick"),
    ]);
}

/// A misplaced member is told at its place in this request, not in that of the torque
/// calculation.
#[test]
fn faults_of_the_torque_side_stand_at_their_place() {
    let refusal = refused(&with(
        linnet(&GOOD),
        json!({ "target": { "from_demand": { "demand": { "level": "factored" } } } }),
    ));
    assert_eq!(
        refusal.issues[0].pointer,
        "/target/from_demand/demand/level"
    );
    let refusal = refused(&with(
        linnet(&GOOD),
        json!({ "pile": { "shaft": { "round": { "outside_diameter": q(5.5, "in") } } } }),
    ));
    assert_eq!(
        refusal.issues[0].pointer,
        "/pile/shaft/round/outside_diameter"
    );
}
