//! What of a record the log itself shows: a torque for each foot, the final torque, speed and
//! advance where they count.

use super::*;

fn log_rows(rows: Json) -> Json {
    let mut request = complete(own(&[
        "torque_per_foot",
        "final_torque",
        "final_advance",
        "rotation_speed",
    ]));
    request["log"]["rows"] = rows;
    request
}

#[test]
fn a_torque_for_each_foot_is_looked_for_from_the_ground_to_the_tip() {
    let gap = |request: &Json| detail(request);
    let full = |ft: f64| json!([ft, 2600.0, 2.8, 12.0]);
    let at = |depths: &[f64]| log_rows(depths.iter().map(|d| full(*d)).collect());
    assert_eq!(missing(&at(&[1.0, 2.0, 3.0, 3.5])), Vec::<&str>::new());
    // begins too deep, a row is missing
    assert!(gap(&at(&[1.1, 2.0, 3.0])).contains("between 0 m (0 ft) and"));
    let told = gap(&at(&[1.0, 2.0, 3.5, 4.5, 6.0]));
    assert!(
        told.contains("(2 ft) and") && told.contains("(3.5 ft)"),
        "{told}"
    );
    // backing out and going down again leaves no gap; a foot of 0.3048 m does not either
    assert_eq!(missing(&at(&[1.0, 2.0, 1.2, 2.1, 3.0])), Vec::<&str>::new());
    // a torque that was not read
    let blank = json!([3.0, null, 2.8, 12.0]);
    let told = gap(&log_rows(json!([full(1.0), full(2.0), blank, full(4.0)])));
    assert!(
        told.contains("(2 ft) and") && told.contains("(4 ft)"),
        "{told}"
    );
    // in a pre-drilled hole there is none to read
    let drilled = with(
        at(&[4.0, 5.0]),
        "/history",
        json!({ "pre_drilled_depth": q(3.0, "ft") }),
    );
    assert_eq!(missing(&drilled), Vec::<&str>::new());
}

#[test]
fn the_final_torque_is_that_of_the_last_row_in_fresh_ground() {
    let full = |ft: f64| json!([ft, 2600.0, 2.8, 12.0]);
    let open = json!([2.5, null, 2.8, 12.0]);
    let request = log_rows(json!([full(1.0), full(2.0), open]));
    assert!(detail(&request).contains("no torque at the last row, 0.762 m"));
    let stone = with(complete(own(&ALL)), "/stop", json!("obstruction"));
    assert!(detail(&stone).contains("obstruction"));
    let (found, _) = judged_rows(&complete(own(&ALL)), Some(0.0), |rows| {
        rows[4].standing = RowStanding::NotFresh;
    });
    assert_eq!(found.missing.len(), 1);
    assert_eq!(name(found.missing[0].field), "final_torque");
}

#[test]
fn speed_and_advance_are_looked_for_where_they_count() {
    let row = |ft: f64, advance: Json, speed: Json| json!([ft, 2600.0, advance, speed]);
    let with_gaps = |gaps: [(bool, bool); 5]| {
        let rows = gaps.iter().zip(1..).map(|((advance, speed), ft)| {
            let or = |there: &bool, value: f64| if *there { json!(value) } else { Json::Null };
            row(f64::from(ft), or(advance, 2.8), or(speed, 12.0))
        });
        log_rows(rows.collect())
    };
    let t = (true, true);
    // the window begins at 2 ft: the rows at 3, 4, 5 ft count
    assert!(missing(&with_gaps([(false, false), (false, false), t, t, t])).is_empty());
    let slow = with_gaps([t, t, (true, false), t, t]);
    assert!(
        detail(&slow).contains("no speed at 0.9144 m (3 ft)"),
        "{}",
        detail(&slow)
    );
    // no window: the last row alone
    let (found, _) = judged_rows(&slow, None, |_| {});
    assert!(found.complete);
    let (found, _) = judged_rows(&with_gaps([t, t, t, t, (true, false)]), None, |_| {});
    assert_eq!(found.missing.len(), 1);
    // the advance is that at the final torque
    assert!(detail(&with_gaps([t, t, t, t, (false, true)])).contains("(5 ft)"));
}
