//! How a test was run: its steps, their time, the largest load, the reaction, the rate of
//! movement. Each check alone, on its limit and just beyond.

use super::*;
use crate::contract::{Check, CheckStatus, Verdict};

/// Points in kN, mm and minutes; none where no time was read.
fn timed(rows: &[(f64, f64, Option<f64>)]) -> Json {
    let rows: Vec<Json> = rows.iter().map(|(q, s, t)| json!([q, s, t])).collect();
    json!({
        "columns": [
            { "name": "load", "unit": "kN" }, { "name": "displacement", "unit": "mm" },
            { "name": "elapsed", "unit": "min" },
        ],
        "rows": rows,
    })
}

/// Ten steps of 10 kN, each read once, `minutes` apart; 3 mm at the end.
fn quick(minutes: f64) -> Vec<(f64, f64, Option<f64>)> {
    let of = |i: u32| {
        let i = f64::from(i);
        (10.0 * i, 0.03 * i * i, Some(minutes * i))
    };
    (0..=10).map(of).collect()
}

/// Two steps of 50 kN, each held for two hours with a reading every half hour; at the end of
/// the second it moves `last` mm in the last hour.
fn maintained(last: f64) -> Vec<(f64, f64, Option<f64>)> {
    let mut rows = vec![(0.0, 0.0, Some(0.0)), (25.0, 0.4, Some(30.0))];
    for (load, from, at) in [(50.0, 1.0, 60.0), (100.0, 2.5, 180.0)] {
        for i in 0..=4 {
            let after = match i {
                0 => 0.0,
                1 => 0.2,
                2 => 0.3,
                3 => 0.3 + 0.6 * last,
                _ => 0.3 + last,
            };
            rows.push((load, from + after, Some(at + 5.0 + 30.0 * f64::from(i))));
        }
    }
    rows
}

fn run_of(rows: &[(f64, f64, Option<f64>)], more: Json) -> Json {
    let mut all = request(&[(1.0, 1.0)], more);
    all["points"] = timed(rows);
    all
}

fn of<'a>(answer: &'a Answer<Outcome>, id: &str) -> Option<&'a Check> {
    answer.checks.iter().find(|c| c.id == id)
}

#[track_caller]
fn status(answer: &Answer<Outcome>, id: &str) -> CheckStatus {
    of(answer, id).unwrap_or_else(|| panic!("no {id}")).status
}

const ALL: [&str; 6] = [
    "load_test_step_size",
    "load_test_step_time_least",
    "load_test_step_time_most",
    "load_test_largest_load",
    "load_test_reaction_distance",
    "load_test_settlement_rate",
];

#[test]
fn without_data_nothing_is_checked_and_nothing_is_said() {
    let rows: Vec<_> = quick(5.0).iter().map(|r| (r.0, r.1)).collect();
    for conduct in [json!({}), json!({ "conduct": {} })] {
        let answer = answer(request(&rows, conduct));
        assert!(answer.checks.is_empty());
        assert_eq!(answer.verdict, Verdict::NotAsked);
    }
}

#[test]
fn what_is_asked_and_lacks_data_is_open() {
    let rows: Vec<_> = quick(5.0).iter().map(|r| (r.0, r.1)).collect();
    let checks = [
        "step_size",
        "step_time",
        "largest_load",
        "reaction_distance",
        "settlement_rate",
    ];
    let all = answer(request(&rows, json!({ "conduct": { "checks": checks } })));
    assert_eq!(all.verdict, Verdict::Provisional);
    for id in ALL {
        assert_eq!(status(&all, id), CheckStatus::NotEvaluated);
        let reason = of(&all, id).unwrap().reason.as_deref().unwrap();
        assert!(reason.contains('`'), "{id} names what is missing: {reason}");
    }
    // one alone, and only that one
    let one = answer(request(
        &rows,
        json!({ "conduct": { "checks": ["reaction_distance"] } }),
    ));
    assert_eq!(one.checks.len(), 1);
    assert_eq!(one.verdict, Verdict::Provisional);
}

/// Steps of 10 kN are 5 % of 200 kN (D1143 from memory).
#[test]
fn steps_are_a_twentieth_of_the_failure_load_foreseen() {
    for (foreseen, expected) in [(200.0, CheckStatus::Pass), (199.9, CheckStatus::Warn)] {
        let conduct = json!({ "conduct": { "anticipated_failure": q(foreseen, "kN") } });
        let answer = answer(run_of(&quick(5.0), conduct));
        assert_eq!(status(&answer, "load_test_step_size"), expected);
        assert!(warns(&answer, "default_from_memory"));
        // worth a look, no more
        assert_eq!(answer.verdict, Verdict::NotAsked);
    }
    // readings at one step are one step: a pump kept up within 1 % begins no new one
    let mut rows = quick(5.0);
    rows.insert(6, (50.9, 0.8, Some(27.0)));
    let conduct = json!({ "conduct": { "anticipated_failure": q(200.0, "kN") } });
    let kept = answer(run_of(&rows, conduct));
    let told = of(&kept, "load_test_step_size").unwrap().reason.clone();
    assert!(told.unwrap().contains("of 10 steps"));
}

/// 4 to 15 min each (D1143 from memory).
#[test]
fn steps_take_four_to_fifteen_minutes() {
    use CheckStatus::{Pass, Warn};
    for (minutes, least, most) in [
        (4.0, Pass, Pass),
        (3.9, Warn, Pass),
        (15.0, Pass, Pass),
        (15.1, Pass, Warn),
    ] {
        let answer = answer(run_of(&quick(minutes), json!({})));
        assert_eq!(
            status(&answer, "load_test_step_time_least"),
            least,
            "{minutes}"
        );
        assert_eq!(
            status(&answer, "load_test_step_time_most"),
            most,
            "{minutes}"
        );
    }
    // a time that was not read leaves two steps without one
    let mut rows = quick(5.0);
    rows[5].2 = None;
    let holes = answer(run_of(&rows, json!({})));
    let told = of(&holes, "load_test_step_time_most")
        .unwrap()
        .reason
        .clone();
    assert!(
        told.unwrap()
            .contains("longest of 8 steps with times, of 10: 5 min")
    );
    // a maintained test has no such steps
    let slow = run_of(&quick(5.0), json!({ "procedure": "maintained" }));
    assert!(of(&answer(slow), "load_test_step_time_most").is_none());
}

/// To 200 % of the design load (from memory).
#[test]
fn a_test_is_carried_to_twice_the_service_load() {
    for (design, expected) in [(50.0, CheckStatus::Pass), (50.1, CheckStatus::Warn)] {
        let conduct = json!({ "conduct": { "design_load": q(design, "kN") } });
        let answer = answer(run_of(&quick(5.0), conduct));
        assert_eq!(status(&answer, "load_test_largest_load"), expected);
    }
    // the service load of the demand stands in where the check is asked for
    let demand = json!({
        "demand": { "level": "allowable", "compression": q(49.0, "kN") },
        "design_basis": { "allowable_stress": {} },
        "conduct": { "checks": ["largest_load"] },
    });
    let asked = answer(run_of(&quick(5.0), demand.clone()));
    assert_eq!(status(&asked, "load_test_largest_load"), CheckStatus::Pass);
    let mut silent = demand;
    silent["conduct"] = json!({});
    assert!(
        of(
            &answer(run_of(&quick(5.0), silent)),
            "load_test_largest_load"
        )
        .is_none()
    );
}

/// Five times 304.8 mm is 5 ft, so 8 ft counts; five times 600 mm is 3 m.
#[test]
fn the_reaction_keeps_its_distance() {
    use CheckStatus::{Pass, Warn};
    for (helix, clear, expected) in [
        (304.8, 2.4384, Pass),
        (304.8, 2.43, Warn),
        (600.0, 3.0, Pass),
        (600.0, 2.99, Warn),
    ] {
        let more = json!({
            "helices": [{ "diameter": q(304.8, "mm") }, { "diameter": q(helix, "mm") }],
            "conduct": { "reaction_distance": q(clear, "m") },
        });
        let answer = answer(run_of(&quick(5.0), more));
        assert_eq!(status(&answer, "load_test_reaction_distance"), expected);
        // without a load to be carried nothing is held back
        assert_eq!(answer.verdict, Verdict::NotAsked);
    }
    let judged = |clear: f64| {
        let more = json!({
            "demand": { "level": "allowable", "compression": q(40.0, "kN") },
            "design_basis": { "allowable_stress": {} },
            "conduct": { "reaction_distance": q(clear, "m") },
        });
        answer(run_of(&quick(5.0), more))
    };
    assert_eq!(judged(2.5).verdict, Verdict::Accept);
    let close = judged(1.5);
    assert_eq!(close.verdict, Verdict::Provisional);
    assert!(warns(&close, "load_test_reaction_close"));
}

/// 0.01 in/h (secondary) is 0.254 mm in the last hour of the hold.
#[test]
fn a_proof_test_comes_to_rest_at_its_largest_load() {
    let proof = |last: f64, more: Json| {
        let mut all = json!({
            "procedure": "maintained",
            "demand": { "level": "allowable", "compression": q(50.0, "kN") },
            "design_basis": { "allowable_stress": {} },
        });
        for (key, value) in more.as_object().unwrap() {
            all[key] = value.clone();
        }
        answer(run_of(&maintained(last), all))
    };
    let id = "load_test_settlement_rate";
    let rests = proof(0.25, json!({}));
    assert_eq!(rests.result.failure.kind, FailureLoadKind::LowerBound);
    assert_eq!(status(&rests, id), CheckStatus::Pass);
    near(
        of(&rests, id).unwrap().capacity.as_ref().unwrap().value(),
        0.254e-3,
        1e-12,
    );
    assert_eq!(rests.verdict, Verdict::Accept);
    let creeps = proof(0.26, json!({}));
    assert_eq!(status(&creeps, id), CheckStatus::Fail);
    assert_eq!(creeps.verdict, Verdict::Reject);
    // where nothing is to be carried it is worth a look, unless it was asked for
    let alone = |checks: Json| {
        let more = json!({ "procedure": "maintained", "conduct": checks });
        answer(run_of(&maintained(0.26), more))
    };
    assert_eq!(status(&alone(json!({})), id), CheckStatus::Warn);
    let asked = alone(json!({ "checks": ["settlement_rate"] }));
    assert_eq!(status(&asked, id), CheckStatus::Fail);
    // taken to failure, it need not rest: 1 % of 304.8 mm is passed far below the largest load
    let mut rows = maintained(0.2);
    rows.extend([(110.0, 8.0, Some(400.0)), (111.0, 40.0, Some(430.0))]);
    let failed = answer(run_of(&rows, json!({ "procedure": "maintained" })));
    assert_eq!(failed.result.failure.kind, FailureLoadKind::Criterion);
    assert_ne!(status(&failed, id), CheckStatus::Fail);
}

#[test]
fn faults_of_the_run_are_all_found_with_their_places() {
    let mut rows = quick(5.0);
    rows[4].2 = Some(3.0);
    let more = json!({
        "procedure": "maintained",
        "conduct": {
            "checks": ["step_time", "largest_load", "largest_load", "step_size"],
            "anticipated_failure": q(100.0, "kN"),
        },
    });
    let mut found = refused(run_of(&rows, more));
    found.sort();
    let expected = [
        ("/conduct/anticipated_failure", "load_test_other_procedure"),
        ("/conduct/checks/0", "load_test_other_procedure"),
        ("/conduct/checks/2", "load_test_check_twice"),
        ("/conduct/checks/3", "load_test_other_procedure"),
        ("/points/rows/4/2", "load_test_time_goes_back"),
    ];
    let expected: Vec<_> = expected
        .iter()
        .map(|(p, c)| ((*p).to_owned(), (*c).to_owned()))
        .collect();
    assert_eq!(found, expected);
}

/// The column of times moves no load and no displacement of the answer.
#[test]
fn times_change_no_number() {
    let rows: Vec<_> = quick(5.0).iter().map(|r| (r.0, r.1)).collect();
    let without = answer(request(&rows, json!({})));
    let with = answer(run_of(&quick(5.0), json!({})));
    assert_eq!(without.result, with.result);
}
