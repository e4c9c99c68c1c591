//! What many logs show together: each pattern, and the one that just is none.

use super::*;

fn lot() -> Json {
    json!({ "proof_test_ratio": 0.0 })
}

#[test]
fn piles_stopped_short_next_to_each_other() {
    let code = "job_stopped_short_together";
    let good = |label| pile(label, 2500.0);
    let found = answer(&job(
        vec![good("A1"), on_stone("A2"), on_stone("A3"), good("A4")],
        lot(),
    ));
    assert_eq!(warned(&found, code), Some("A2, A3"));
    let found = answer(&job(
        vec![on_stone("A1"), good("A2"), on_stone("A3"), good("A4")],
        lot(),
    ));
    assert_eq!(warned(&found, code), None);
}

#[test]
fn one_calibration_for_many() {
    let code = "job_calibration_of_many";
    let good = |label| pile(label, 2500.0);
    // no date at all is another matter
    let undated = |label| {
        let mut pile = good(label);
        pile["indicator"]
            .as_object_mut()
            .expect("an object")
            .remove("calibrated_on");
        pile
    };
    let found = answer(&job(
        vec![out_of_date("A1"), good("A2"), out_of_date("A3")],
        lot(),
    ));
    assert_eq!(warned(&found, code), Some("2 of 3 piles: A1, A3"));
    let found = answer(&job(
        vec![out_of_date("A1"), undated("A2"), undated("A3")],
        lot(),
    ));
    assert_eq!(warned(&found, code), None);
}

#[test]
fn an_operator_is_told_by_the_piles_where_all_of_his_and_none_of_others_spin() {
    let code = "job_operator_spins";
    let by = |label: &str, operator: &str, advance: f64| {
        let mut pile = pile(label, 2500.0);
        for row in pile["log"]["rows"].as_array_mut().expect("rows") {
            row[2] = json!(advance);
        }
        set(pile, "/documents", json!({ "operator": operator }))
    };
    let good = 2.8;
    // 85 % of 3 in is 2.55
    let bad = 2.5;
    let found = |last: f64, other: f64| {
        answer(&job(
            vec![
                by("A1", "op 1", good),
                by("A2", "op 1", other),
                by("A3", "op 2", bad),
                by("A4", "op 2", last),
            ],
            lot(),
        ))
    };
    let told = found(bad, good);
    assert_eq!(
        warned(&told, code),
        Some("A3, A4; 2 piles of others do not")
    );
    let written = serde_json::to_string(&told).expect("it prints");
    assert!(
        !written.contains("op 2"),
        "the name of an operator is not told"
    );
    assert_eq!(warned(&found(good, good), code), None);
    assert_eq!(warned(&found(bad, bad), code), None);
    // where nobody else turned, nothing is said of anyone
    let alone = vec![
        by("A1", "op 2", bad),
        by("A2", "op 2", bad),
        pile("A3", 2500.0),
    ];
    assert_eq!(warned(&answer(&job(alone, lot())), code), None);
}
