//! The rules of the lot: proof tests, candidates, depths against tested ones, what a failed
//! pile asks of the others.

use super::*;

fn good(count: usize) -> Vec<Json> {
    let one = |i: usize| pile(&format!("A{i}"), 2500.0);
    (1..=count).map(one).collect()
}

#[test]
fn the_share_is_rounded_up_and_missing_tests_leave_it_provisional() {
    // 5 % of 60 is 3, of 61 would be 4; of 24 it is 1.2, so 2
    for (count, share, required) in [
        (20, 0.05, 1.0),
        (24, 0.05, 2.0),
        (60, 0.05, 3.0),
        (60, 0.02, 2.0),
        (3, 1.0, 3.0),
        (3, 0.0, 0.0),
    ] {
        let lot = json!({ "proof_test_ratio": share });
        let answer = answer(&job(good(count), lot));
        let check = check(&answer, "job_proof_tests");
        assert_eq!(numbers(check), (required, 0.0), "{share} of {count}");
        let open = required > 0.0;
        assert_eq!(check.status == CheckStatus::NotEvaluated, open);
        assert_eq!(answer.verdict == Verdict::Provisional, open);
        assert_eq!(answer.result.lot.candidates.len() as f64, required);
    }
    // two tests of one pile are one pile tested
    let tension = json!({ "pile": "A1", "direction": "tension", "result": "passed" });
    let tests = json!([test("A1", "passed"), tension, test("A2", "passed")]);
    let lot = |ratio: f64| json!({ "proof_test_ratio": ratio, "load_tests": tests });
    let done = answer(&job(good(10), lot(0.2)));
    assert_eq!(numbers(check(&done, "job_proof_tests")), (2.0, 2.0));
    assert_eq!(done.verdict, Verdict::Accept);
    assert!(done.result.lot.candidates.is_empty());
    let short = answer(&job(good(10), lot(0.21)));
    assert_eq!(numbers(check(&short, "job_proof_tests")), (3.0, 2.0));
    assert_eq!(short.verdict, Verdict::Provisional);
}

#[test]
fn without_a_share_no_test_is_asked_for_and_the_answer_says_so() {
    let code = "job_no_proof_tests_asked";
    for lot in [json!({}), json!({ "load_tests": [test("A1", "passed")] })] {
        let answer = answer(&job(good(3), lot));
        assert_eq!(answer.verdict, Verdict::Accept);
        assert!(answer.result.lot.proof_tests.is_none());
        assert!(warned(&answer, code).is_some());
    }
    let none = answer(&job(good(3), json!({ "proof_test_ratio": 0.0 })));
    assert_eq!(warned(&none, code), None);
    assert_eq!(
        answer(&json!({ "piles": good(2) })).verdict,
        Verdict::Accept
    );
}

#[test]
fn candidates_are_those_with_the_least_margin_and_every_doubtful_torque() {
    let piles = vec![
        pile("A1", 2500.0),
        pile("A2", 2100.0),
        pile("A3", 2400.0),
        // 2,400 again: keeps the order of the job
        pile("A4", 2400.0),
        // the one with the most margin, out of date
        set(
            out_of_date("A5"),
            "/log/rows",
            pile("x", 4000.0)["log"]["rows"].clone(),
        ),
        // neither of these stays as it is
        weak("A6"),
        pile_to("A7", 2500.0, 9),
        broken("A8"),
        // the least margin of all, but tested
        pile("A9", 2001.0),
    ];
    let lot =
        |ratio: f64| json!({ "proof_test_ratio": ratio, "load_tests": [test("A9", "passed")] });
    let chosen = |ratio| {
        let answer = answer(&job(piles.clone(), lot(ratio)));
        let found = answer.result.lot.candidates;
        found.iter().map(|c| c.pile.0.clone()).collect::<Vec<_>>()
    };
    // of 9 piles: 1, 3 (two missing), 5 (four missing)
    assert_eq!(chosen(0.1), ["A5"]);
    assert_eq!(chosen(0.3), ["A2", "A3", "A5"]);
    assert_eq!(chosen(0.5), ["A2", "A3", "A4", "A1", "A5"]);
    let answer = answer(&job(piles.clone(), lot(0.3)));
    let found = &answer.result.lot.candidates;
    assert!(found[2].provisional_by_torque && !found[0].provisional_by_torque);
    let ratio = found[0].torque_utilisation_ratio.expect("a ratio");
    assert!((ratio - 2000.0 / 2100.0).abs() < 1e-9);
}

#[test]
fn depths_are_held_against_the_tested_pile_they_differ_from_least() {
    // tested at 12 and 20 ft; 15 ft differs by 3/12 from the one and by 5/20 from the other;
    // 25 ft by 5/20, 26 ft by 6/20, 10 ft by 2/12
    let piles = || {
        [12, 20, 15, 25, 26, 10]
            .iter()
            .zip(1..)
            .map(|(tip, i)| pile_to(&format!("A{i}"), 2500.0, *tip))
            .collect::<Vec<_>>()
    };
    let tests = json!([test("A1", "passed"), test("A2", "passed")]);
    let lot = json!({ "proof_test_ratio": 0.0, "load_tests": tests });
    let found = answer(&job(piles(), lot.clone()));
    let check_found = check(&found, "job_length_tolerance");
    assert_eq!(check_found.status, CheckStatus::Warn);
    let (demand, capacity) = numbers(check_found);
    assert!((demand - 0.3).abs() < 1e-9 && capacity == 0.25);
    let told = found
        .result
        .lot
        .length_tolerance
        .as_ref()
        .expect("tests were sent");
    assert_eq!(labels(told.outside.iter().map(|o| &o.pile)), ["A5"]);
    assert_eq!(told.outside[0].tested_pile.as_str(), "A2");
    assert!((told.outside[0].difference_ratio - 0.3).abs() < 1e-9);
    assert_eq!(told.source.id, "nyc_1814_12_site_tests");
    // it only advises
    assert_eq!(found.verdict, Verdict::Accept);
    let wide = set(lot.clone(), "/length_tolerance_ratio", json!(0.3));
    let found = answer(&job(piles(), wide));
    assert_eq!(
        check(&found, "job_length_tolerance").status,
        CheckStatus::Pass
    );
    let told = found.result.lot.length_tolerance.expect("tests were sent");
    assert!(told.outside.is_empty());
    assert_eq!(told.source.id, "caller");
    // a pile that does not stay has no length yet
    let mut shallow = piles();
    shallow.push(pile_to("A7", 2500.0, 9));
    let found = answer(&job(shallow, lot));
    let told = found.result.lot.length_tolerance.expect("tests were sent");
    assert_eq!(labels(told.outside.iter().map(|o| &o.pile)), ["A5"]);
    // nothing tested, nothing to hold it against
    let none = answer(&job(piles(), json!({ "proof_test_ratio": 0.0 })));
    assert!(none.result.lot.length_tolerance.is_none());
}

#[test]
fn a_failed_load_test_rejects_the_job_and_asks_its_neighbours() {
    let mut piles = good(7);
    piles[3] = weak("A4");
    let lot = |each: Json| {
        let tests = json!([test("A3", "failed"), test("A2", "passed")]);
        set(
            json!({ "proof_test_ratio": 0.0, "load_tests": tests }),
            "/failed_pile_retest_count",
            each,
        )
    };
    let found = answer(&job(piles.clone(), lot(Json::Null)));
    assert_eq!(found.verdict, Verdict::Reject);
    let tests: Vec<_> = found
        .checks
        .iter()
        .filter(|c| c.id == "job_load_test")
        .collect();
    let statuses: Vec<_> = tests.iter().map(|c| c.status).collect();
    // in the order of the job
    assert_eq!(statuses, [CheckStatus::Pass, CheckStatus::Fail]);
    let failures = &found.result.lot.failures;
    assert_eq!(labels(failures.iter().map(|f| &f.pile)), ["A3", "A4"]);
    assert_eq!(failures[0].by, LotFailureKind::LoadTest);
    assert!(failures[0].codes.is_empty() && failures[0].concerns_others);
    // A4 failed itself: A2 and then A1 and A5, both two away, the earlier first
    assert_eq!(labels(&failures[0].retest), ["A2", "A1"]);
    assert_eq!(failures[1].by, LotFailureKind::Log);
    assert!(failures[1].codes.contains(&"record_torque".into()));
    assert_eq!(labels(&failures[1].retest), ["A5", "A2"]);
    let told = found.result.lot.retests.as_ref().expect("retests");
    assert_eq!(
        (told.each_count, told.required_count, told.done_count),
        (2, 3, 1)
    );
    assert_eq!(labels(&told.open), ["A1", "A5"]);
    assert_eq!(told.source.id, "bearwell_choice");
    assert_eq!(
        check(&found, "job_retests").status,
        CheckStatus::NotEvaluated
    );
    let found = answer(&job(piles.clone(), lot(json!(3))));
    let told = found.result.lot.retests.expect("retests");
    assert_eq!(
        (told.required_count, told.source.id.as_ref()),
        (4, "caller")
    );
    assert_eq!(
        labels(&found.result.lot.failures[1].retest),
        ["A5", "A2", "A6"]
    );
    let none = answer(&job(piles, lot(json!(0))));
    assert!(none.result.lot.retests.is_none());
    assert!(none.checks.iter().all(|c| c.id != "job_retests"));
}

#[test]
fn a_pile_that_says_nothing_of_the_ground_asks_nothing_of_others() {
    let lot = json!({ "proof_test_ratio": 0.0 });
    for (failed, concerns) in [
        (weak("A2"), true),
        (out_of_place("A2"), false),
        (on_stone("A2"), false),
        // too weak, and on a stone: it never reached the ground of the others
        (set(weak("A2"), "/stop", json!("obstruction")), false),
    ] {
        let piles = vec![pile("A1", 2500.0), failed.clone(), pile("A3", 2500.0)];
        let answer = answer(&job(piles, lot.clone()));
        assert_eq!(answer.verdict, Verdict::Reject);
        let failure = &answer.result.lot.failures[0];
        assert_eq!(failure.concerns_others, concerns, "{failed}");
        assert_eq!(failure.retest.len(), if concerns { 2 } else { 0 });
        assert_eq!(answer.result.lot.retests.is_some(), concerns);
    }
}

#[test]
fn a_second_torque_answers_a_weak_log_but_not_a_failed_test() {
    let again = |torque: f64| json!({ "waited": q(3.0, "day"), "torque": q(torque, "ft_lbf") });
    let turned = |label, torque| set(pile(label, 2500.0), "/retorque", again(torque));
    let done = |middle: Json, tests: Json| {
        let piles = vec![turned("A1", 2600.0), middle, pile("A3", 2500.0)];
        let lot = json!({ "proof_test_ratio": 0.0, "load_tests": tests });
        let told = answer(&job(piles, lot))
            .result
            .lot
            .retests
            .expect("retests");
        (told.required_count, told.done_count)
    };
    assert_eq!(done(weak("A2"), json!([])), (2, 1));
    assert_eq!(
        done(pile("A2", 2500.0), json!([test("A2", "failed")])),
        (2, 0)
    );
}
