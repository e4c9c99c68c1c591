//! Every example request under `openapi/examples/installation-job`: those that must be answered
//! are, with their verdicts; those that must be refused are refused where they should be.

use super::*;
use crate::examples::{refused_as, request as example, requests, through};

fn shown(name: &str) -> Answer<Outcome> {
    let text = example::<InstallationJob>(name);
    through::<InstallationJob>(&text, Trace::off())
        .unwrap_or_else(|e| panic!("{name}: {e:?}"))
        .1
}

#[test]
fn every_example_is_answered_and_comes_to_its_verdict() {
    use Verdict::*;
    let expected = [
        ("failed-load-test", Reject),
        ("keep-driving", Continue),
        ("linnet", Reject),
        ("no-lot-rules", Accept),
        ("one-calibration-for-all", Provisional),
        ("one-log-cannot-be-judged", Provisional),
        ("one-operator-spins", Continue),
        ("own-rules-of-the-lot", Reject),
        ("sixty-piles", Accept),
        ("sizerin", Reject),
        ("stopped-short-together", Reject),
        ("two-piles", Accept),
        ("weak-pile-retested", Reject),
    ];
    let mut found = Vec::new();
    for (name, text) in requests::<InstallationJob>("") {
        let (call, answer) = through::<InstallationJob>(&text, Trace::off())
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        let counts = answer.result.counts;
        let sum = counts.accept_count
            + counts.provisional_count
            + counts.continue_count
            + counts.reject_count
            + counts.not_evaluated_count;
        assert_eq!(
            (sum, counts.pile_count),
            (call.request.piles.len(), sum),
            "{name}"
        );
        found.push((name, answer.verdict));
    }
    let found: Vec<_> = found.iter().map(|(n, v)| (n.as_str(), *v)).collect();
    assert_eq!(found, expected);
}

/// The events of the plan: C4 on debris, A3 moved, E2 without speeds and calibration record, the
/// indicator of W2 out of date by 12 days; all others accepted.
#[test]
fn the_house_linnet() {
    let answer = shown("linnet");
    let counts = answer.result.counts;
    assert_eq!(
        (
            counts.accept_count,
            counts.provisional_count,
            counts.reject_count
        ),
        (20, 2, 2)
    );
    let pile = |label: &str| {
        let mut all = answer.result.piles.iter();
        all.find(|p| p.label.as_str() == label).expect("a pile")
    };
    let reasons = |label: &str| -> Vec<&str> {
        pile(label)
            .reasons
            .iter()
            .map(|r| r.code.as_ref())
            .collect()
    };
    assert!(reasons("C4").contains(&"record_obstruction"));
    assert!(reasons("C4").contains(&"record_refusal_short"));
    assert_eq!(reasons("A3"), ["record_position_along"]);
    assert_eq!(reasons("E2"), ["record_calibration", "record_complete"]);
    let missing = |label: &str| {
        let record = pile(label).record.as_ref().expect("a record");
        let list = record.completeness.as_ref().expect("a list was asked for");
        let one = |m: &crate::record::MissingField| {
            (serde_json::to_value(m.field).unwrap(), m.clause.to_string())
        };
        list.missing.iter().map(one).collect::<Vec<_>>()
    };
    assert_eq!(
        missing("E2"),
        [
            (json!("calibration_record"), "1814.12, item 1.4".to_owned()),
            (json!("rotation_speed"), "1814.12, item 1.5".to_owned()),
        ]
    );
    assert_eq!(missing("B2"), []);
    assert_eq!(reasons("W2"), ["record_calibration"]);
    let why = &pile("W2").reasons[0].detail;
    assert!(why.contains("out of date by 12 days"), "{why}");
    // neither debris nor a moved pile says anything of the clay below
    assert_eq!(answer.result.lot.failures.len(), 2);
    assert!(
        answer
            .result
            .lot
            .failures
            .iter()
            .all(|f| !f.concerns_others)
    );
    // 5 % of 24 is 2, W1 is one; E2 and W2 are doubtful by their torque
    let proof = answer.result.lot.proof_tests.as_ref().expect("a share");
    assert_eq!((proof.required_count, proof.done_count), (2, 1));
    let candidates = labels(answer.result.lot.candidates.iter().map(|c| &c.pile));
    assert!(
        candidates.contains(&"E2") && candidates.contains(&"W2"),
        "{candidates:?}"
    );
    assert_eq!(candidates.len(), 3);
}

#[test]
fn sixty_piles_of_forty_rows_in_one_call() {
    let answer = shown("sixty-piles");
    assert_eq!(answer.result.counts.accept_count, 60);
    let rows: usize = answer
        .result
        .piles
        .iter()
        .filter_map(|p| p.record.as_ref())
        .map(|r| r.rows.len())
        .sum();
    assert_eq!(rows, 60 * 40);
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    refused_as::<InstallationJob>(&[
        ("duplicate-label", "physics", "duplicate_label"),
        ("empty-log", "lengths", "list_too_short"),
        (
            "no-log-can-be-judged",
            "physics",
            "log_no_torque log_no_torque",
        ),
        ("no-piles", "lengths", "list_too_short"),
        ("pile-without-label", "physics", "missing_member"),
        ("row-out-of-range", "values", "range"),
        ("row-too-short", "shape", "row 1 has 1 numbers, not 2"),
        (
            "several-faults",
            "physics",
            "job_test_of_unknown_pile job_test_twice duplicate_label missing_member",
        ),
        ("share-above-one", "values", "range"),
        ("sixty-one-piles", "lengths", "list_too_long"),
        (
            "test-of-unknown-pile",
            "physics",
            "job_test_of_unknown_pile",
        ),
        ("test-twice", "physics", "job_test_twice"),
        (
            "tolerance-without-tests",
            "physics",
            "job_tolerance_without_tests",
        ),
        ("unknown-member", "shape", "unknown field `lots`"),
    ]);
}
