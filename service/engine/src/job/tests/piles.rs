//! Each pile of a job is judged as `installation-record` judges it, and the verdict of the job
//! follows.

use super::*;
use crate::record::{self, InstallationRecord};

fn alone(pile: &Json) -> Answer<record::Outcome> {
    let call: Call<record::Request> = serde_json::from_value(pile.clone()).expect("a pile");
    run::<InstallationRecord>(&call, Work::new(Trace::off(), None)).expect("an answer")
}

#[test]
fn a_pile_of_a_job_is_judged_as_alone() {
    for name in ["linnet", "sixty-piles", "sizerin", "one-operator-spins"] {
        let text = crate::examples::request::<InstallationJob>(name);
        let request: Json = serde_json::from_str(&text).expect("JSON");
        let answer = answer(&request);
        let piles = request["piles"].as_array().expect("piles");
        assert_eq!(answer.result.piles.len(), piles.len());
        for (sent, told) in piles.iter().zip(&answer.result.piles) {
            let alone = alone(sent);
            assert_eq!(told.verdict, Some(alone.verdict), "{}", told.label);
            assert_eq!(told.reasons, alone.verdict_reasons, "{}", told.label);
            assert_eq!(told.warnings, alone.warnings, "{}", told.label);
            assert_eq!(told.next_step_count, alone.result.next_steps.len());
            assert_eq!(
                told.first_step,
                alone.result.next_steps.first().map(|s| s.step)
            );
            assert_eq!(told.record.as_ref(), Some(&alone.result), "{}", told.label);
            for caution in &alone.cautions {
                assert!(answer.cautions.contains(caution), "{}", caution.code);
            }
            for method in &alone.methods {
                assert!(answer.methods.contains(method), "{}", method.id);
            }
        }
    }
}

#[test]
fn the_verdict_follows_the_worst_pile() {
    use Verdict::*;
    let shallow = |label| pile_to(label, 2500.0, 9);
    let none = json!({ "proof_test_ratio": 0.0 });
    let good = || pile("A1", 2500.0);
    for (other, expected, status) in [
        (pile("A2", 2500.0), Accept, CheckStatus::Pass),
        (out_of_date("A2"), Provisional, CheckStatus::NotEvaluated),
        (broken("A2"), Provisional, CheckStatus::NotEvaluated),
        (shallow("A2"), Continue, CheckStatus::Fail),
        (out_of_place("A2"), Reject, CheckStatus::Fail),
    ] {
        let answer = answer(&job(vec![good(), other.clone()], none.clone()));
        assert_eq!(answer.verdict, expected, "{other}");
        let of_pile: Vec<_> = answer
            .checks
            .iter()
            .filter(|c| c.id == "job_pile")
            .collect();
        assert_eq!(of_pile[0].status, CheckStatus::Pass);
        assert_eq!(of_pile[1].status, status, "{other}");
        let subject = of_pile[1].subject.as_ref().map(|s| s.label.as_str());
        assert_eq!(subject, Some("A2"));
    }
    // one that can be mended by depth does not hide one that cannot
    let answer = answer(&job(vec![shallow("A1"), out_of_place("A2")], none));
    assert_eq!(answer.verdict, Reject);
}

#[test]
fn a_log_that_cannot_be_judged_loses_no_other() {
    let piles = vec![pile("A1", 2500.0), broken("A2"), pile_to("A3", 2500.0, 20)];
    let answer = answer(&job(piles, json!({ "proof_test_ratio": 0.0 })));
    let counts = answer.result.counts;
    assert_eq!(
        (
            counts.pile_count,
            counts.accept_count,
            counts.not_evaluated_count
        ),
        (3, 2, 1)
    );
    let lost = &answer.result.piles[1];
    assert_eq!(lost.verdict, None);
    assert_eq!(lost.record, None);
    assert_eq!(lost.issues.len(), 1);
    assert_eq!(lost.issues[0].pointer, "/piles/1/depths/maximum_tip_depth");
    assert_eq!(lost.issues[0].code, "record_depths_crossed");
    let reason = check_of(&answer, "A2").reason.clone().unwrap_or_default();
    assert!(reason.contains("record_depths_crossed"), "{reason}");
    // 15 and 20 ft
    let depths = &answer.result.depths;
    let ft = |l: crate::quantity::Length| l.get(crate::quantity::LengthUnit::Ft);
    assert_eq!(depths.pile_count, 2);
    assert!((ft(depths.total) - 35.0).abs() < 1e-9 && (ft(depths.mean) - 17.5).abs() < 1e-9);
    assert_eq!(
        (depths.least_pile.as_str(), depths.greatest_pile.as_str()),
        ("A1", "A3")
    );
    assert!((ft(depths.least) - 15.0).abs() < 1e-9 && (ft(depths.greatest) - 20.0).abs() < 1e-9);
}

fn check_of<'a>(answer: &'a Answer<Outcome>, label: &str) -> &'a Check {
    let of =
        |c: &&Check| c.id == "job_pile" && c.subject.as_ref().is_some_and(|s| s.label == label);
    answer.checks.iter().find(of).expect("a check of the pile")
}

#[test]
fn where_none_can_be_judged_all_faults_are_told() {
    let refusal = ran(
        &job(vec![broken("A1"), broken("A2")], json!({})),
        Trace::off(),
    );
    let issues = refusal.expect_err("it is refused").issues;
    let pointers: Vec<_> = issues.iter().map(|i| i.pointer.as_str()).collect();
    let expected = [
        "/piles/0/depths/maximum_tip_depth",
        "/piles/1/depths/maximum_tip_depth",
    ];
    assert_eq!(pointers, expected);
}

/// Which pile stands where in the list changes no verdict of a pile, no count and no depth.
#[test]
fn the_order_of_the_piles_changes_no_verdict() {
    let text = crate::examples::request::<InstallationJob>("linnet");
    let mut request: Json = serde_json::from_str(&text).expect("JSON");
    let forwards = answer(&request);
    request["piles"].as_array_mut().expect("piles").reverse();
    let backwards = answer(&request);
    assert_eq!(forwards.verdict, backwards.verdict);
    assert_eq!(forwards.result.counts, backwards.result.counts);
    for pile in &forwards.result.piles {
        let other = backwards
            .result
            .piles
            .iter()
            .find(|p| p.label == pile.label);
        assert_eq!(Some(pile), other);
    }
}

#[test]
fn steps_stand_under_the_names_of_the_piles() {
    let request = job(vec![pile("A1", 2500.0), pile("A2", 2600.0)], json!({}));
    let steps = ran(&request, Trace::on())
        .expect("an answer")
        .steps
        .expect("steps");
    let of = |label: &str| {
        let part = format!("pile {label}");
        let own =
            |s: &&crate::trace::Step| s.subject.as_ref().is_some_and(|s| s.starts_with(&part));
        steps
            .iter()
            .filter(own)
            .filter(|s| s.symbol == "T_eff")
            .count()
    };
    assert_eq!((of("A1"), of("A2")), (1, 1));
    assert!(answer(&request).steps.is_none());
}

/// Load over capacity: 52 kN in tension governs over 58.2 kN in compression by the factors
/// 0.3 and 0.4 of limit states: u = max(58.2 / 0.4, 52 / 0.3) / (K_t T).
#[test]
fn the_greater_use_of_capacity_of_both_directions() {
    let text = crate::examples::request::<InstallationJob>("sizerin");
    let request: Json = serde_json::from_str(&text).expect("JSON");
    let answer = answer(&request);
    let pile = answer
        .result
        .piles
        .iter()
        .find(|p| p.label.as_str() == "P13")
        .expect("P13");
    let torque = pile.effective_torque.expect("a torque").si();
    let factor = pile
        .record
        .as_ref()
        .and_then(|r| r.torque_factor.as_ref())
        .expect("a factor");
    let per_m = factor
        .compression
        .as_ref()
        .expect("in compression")
        .factor
        .si();
    let expected = (58.2e3 / 0.4_f64).max(52.0e3 / 0.3) / (per_m * torque);
    let used = pile.capacity_utilisation_ratio.expect("a ratio");
    assert!((used - expected).abs() < 1e-9, "{used} {expected}");
    assert!((used - pile.torque_utilisation_ratio.expect("a ratio")).abs() < 1e-9);
    // on rock the capacity is indicative only
    let rock = answer
        .result
        .piles
        .iter()
        .find(|p| p.label.as_str() == "P12")
        .expect("P12");
    assert_eq!(rock.capacity_utilisation_ratio, None);
    assert!(
        rock.record
            .as_ref()
            .and_then(|r| r.capacity.as_ref())
            .is_some_and(|c| c.indicative_only)
    );
}
