//! Which fields of a record are missing: every field by itself, the lists as published, and
//! what the log shows.

mod log;

use serde_json::{Value as Json, json};

use crate::contract::{CheckStatus, Issue, Refusal, Work};
use crate::quantity::Length;
use crate::record::completeness::{faults, judge, lengths};
use crate::record::fields::{member, name};
use crate::record::{ADVANCE, Completeness, DEPTH, LogRow, Request, RowStanding, SPEED, TORQUE};
use crate::trace::Trace;

const FT: f64 = 0.3048;

/// Every field, as it stands on the wire.
const ALL: [&str; 30] = [
    "plan_number",
    "equipment",
    "pile_dimensions",
    "specification_sheet",
    "helix_pitch",
    "tip_elevation",
    "final_depth",
    "final_torque",
    "torque_per_foot",
    "final_advance",
    "rotation_speed",
    "indicator_model",
    "calibration_record",
    "required_torque",
    "torque_basis",
    "field_welds",
    "continuous_inspection",
    "inspector",
    "operator",
    "date",
    "times",
    "position",
    "inclination",
    "cut_off",
    "sections",
    "bolts",
    "stop_reason",
    "deviations",
    "weather",
    "photographs",
];

fn q(value: f64, unit: &str) -> Json {
    json!({ "value": value, "unit": unit })
}

/// A pile of 10 + 12 in turned 5 ft deep, with everything that can be kept of it.
fn complete(profile: Json) -> Json {
    let rows: Vec<Json> = (1..=5)
        .map(|ft| json!([f64::from(ft), 2500.0 + 100.0 * f64::from(ft), 2.8, 12.0]))
        .collect();
    json!({
        "label": "E2",
        "pile": {
            "shaft": { "round": { "outside_diameter": q(2.875, "in") } },
            "helices": [
                { "diameter": q(10.0, "in"), "above_tip": q(0.5, "ft") },
                { "diameter": q(12.0, "in"), "above_tip": q(3.0, "ft") },
            ],
            "helix_pitch": q(3.0, "in"),
        },
        "log": {
            "columns": [
                { "name": "depth", "unit": "ft" },
                { "name": "torque", "unit": "ft_lbf" },
                { "name": "advance_per_turn", "unit": "in" },
                { "name": "rotation_speed", "unit": "rpm" },
            ],
            "rows": rows,
        },
        "target": { "stated": { "torque": q(2778.0, "ft_lbf"), "reference": "site test 1" } },
        "depths": {},
        "stop": "target_reached",
        "indicator": { "calibrated_on": "2026-03-02", "driven_on": "2026-05-11" },
        "position": {
            "along": q(1.0, "in"), "off_line": q(0.5, "in"), "inclination": q(0.5, "deg"),
        },
        "record_profile": profile,
        "documents": {
            "equipment": "drive head 4", "specification_sheet": "sheet 12",
            "tip_elevation": q(81.0, "ft"), "indicator_model": "indicator 7",
            "calibration_record": "certificate 31", "field_welds": "none",
            "continuous_inspection": true, "inspector": "inspector 2",
            "operator": "operator 1", "date": "2026-05-11", "times": "08:10 to 08:25",
            "cut_off_elevation": q(98.5, "ft"), "sections": "7 ft lead, serial 118",
            "bolts": "snug, then a third of a turn", "deviations": "none",
            "weather": "dry", "photographs": "118-1, 118-2",
        },
    })
}

fn own(fields: &[&str]) -> Json {
    json!({ "own": { "fields": fields, "reference": "specification 3.2" } })
}

/// The rows as they are handed over: everything counts.
fn rows(request: &Request) -> Vec<LogRow> {
    let pitch = request.pile.helix_pitch;
    let log = &request.log;
    let row = |at| {
        let advance: Option<crate::quantity::Size> = log.value(at, ADVANCE);
        let torque = log.value(at, TORQUE);
        LogRow {
            depth: log.value(at, DEPTH).expect("a depth"),
            torque,
            standing: match torque {
                Some(_) => RowStanding::Counts,
                None => RowStanding::NoTorque,
            },
            advance_ratio: advance.zip(pitch).map(|(a, p)| a / p),
            rotation_speed: log.value(at, SPEED),
        }
    };
    (0..log.len()).map(row).collect()
}

fn judged_rows(
    request: &Json,
    window_from: Option<f64>,
    change: impl Fn(&mut Vec<LogRow>),
) -> (Completeness, Work) {
    let request: Request = serde_json::from_value(request.clone()).expect("a request");
    let mut work = Work::new(Trace::off(), None);
    let mut rows = rows(&request);
    change(&mut rows);
    let from = window_from.map(Length::from_si);
    let found = judge(&request, &rows, from, &mut work).expect("a list was asked for");
    (found, work)
}

fn judged(request: &Json) -> (Completeness, Work) {
    judged_rows(request, Some(2.0 * FT), |_| {})
}

fn missing(request: &Json) -> Vec<&'static str> {
    judged(request)
        .0
        .missing
        .iter()
        .map(|m| name(m.field))
        .collect()
}

fn detail(request: &Json) -> String {
    let (found, _) = judged(request);
    assert_eq!(found.missing.len(), 1, "{:?}", found.missing);
    found.missing[0].detail.clone().unwrap_or_default()
}

/// Takes a member away, or a column of the log.
fn without(mut request: Json, pointer: &str) -> Json {
    if let Some(column) = pointer.strip_prefix("/log/") {
        let columns = request["log"]["columns"].as_array_mut().expect("columns");
        let at = columns
            .iter()
            .position(|c| c["name"] == column)
            .expect("a column");
        columns.remove(at);
        for row in request["log"]["rows"].as_array_mut().expect("rows") {
            row.as_array_mut().expect("a row").remove(at);
        }
        return request;
    }
    let (parent, name) = pointer.rsplit_once('/').expect("a pointer");
    let object = request
        .pointer_mut(parent)
        .and_then(Json::as_object_mut)
        .expect("a parent");
    object.remove(name).expect("a member");
    request
}

fn with(mut request: Json, pointer: &str, value: Json) -> Json {
    let (parent, name) = pointer.rsplit_once('/').expect("a pointer");
    request.pointer_mut(parent).expect("a parent")[name] = value;
    request
}

#[test]
fn a_complete_record_misses_nothing_and_each_loss_is_told_alone() {
    let whole = complete(own(&ALL));
    let (found, work) = judged(&whole);
    assert!(
        found.complete && found.missing.is_empty(),
        "{:?}",
        found.missing
    );
    assert_eq!((found.required_count, found.present_count), (30, 30));
    assert_eq!(work.checks[0].status, CheckStatus::Pass);
    assert_eq!(work.checks[0].utilisation_ratio, Some(0.0));
    for (field, pointer) in [
        ("plan_number", "/label"),
        ("equipment", "/documents/equipment"),
        ("pile_dimensions", "/pile/shaft"),
        ("specification_sheet", "/documents/specification_sheet"),
        ("tip_elevation", "/documents/tip_elevation"),
        ("final_advance", "/log/advance_per_turn"),
        ("rotation_speed", "/log/rotation_speed"),
        ("indicator_model", "/documents/indicator_model"),
        ("calibration_record", "/documents/calibration_record"),
        ("calibration_record", "/indicator/calibrated_on"),
        ("torque_basis", "/target/stated/reference"),
        ("field_welds", "/documents/field_welds"),
        ("continuous_inspection", "/documents/continuous_inspection"),
        ("inspector", "/documents/inspector"),
        ("operator", "/documents/operator"),
        ("times", "/documents/times"),
        ("position", "/position/along"),
        ("position", "/position/off_line"),
        ("inclination", "/position/inclination"),
        ("cut_off", "/documents/cut_off_elevation"),
        ("sections", "/documents/sections"),
        ("bolts", "/documents/bolts"),
        ("stop_reason", "/stop"),
        ("deviations", "/documents/deviations"),
        ("weather", "/documents/weather"),
        ("photographs", "/documents/photographs"),
    ] {
        let request = without(whole.clone(), pointer);
        assert_eq!(missing(&request), [field], "{pointer}");
        let (found, work) = judged(&request);
        assert_eq!((found.required_count, found.present_count), (30, 29));
        assert!(!found.complete);
        let check = &work.checks[0];
        assert_eq!(check.status, CheckStatus::NotEvaluated, "{pointer}");
        assert_eq!(check.demand.as_ref().map(|d| d.value()), Some(1.0));
        let reason = check.reason.as_deref().unwrap_or_default();
        assert!(reason.contains(field), "{reason}");
    }
    // two that need the loss of another, which is not on the list here
    let few = |list: &[&str], pointer| missing(&without(complete(own(list)), pointer));
    assert_eq!(
        few(&["helix_pitch", "weather"], "/pile/helix_pitch"),
        ["helix_pitch"]
    );
    assert_eq!(
        few(&["required_torque", "weather"], "/target"),
        ["required_torque"]
    );
    // the day of installation stands in two places
    let one = without(whole, "/documents/date");
    assert_eq!(missing(&one), Vec::<&str>::new());
    assert_eq!(missing(&without(one, "/indicator/driven_on")), ["date"]);
}

#[test]
fn a_pile_that_still_turns_has_nothing_final() {
    let request = with(complete(own(&ALL)), "/stop", json!("still_turning"));
    assert_eq!(
        missing(&request),
        [
            "final_depth",
            "final_torque",
            "final_advance",
            "stop_reason"
        ]
    );
}

#[test]
fn names_are_those_on_the_wire_and_every_field_has_its_member() {
    let request: Request = serde_json::from_value(complete(own(&ALL))).expect("a request");
    let Some(crate::record::RecordProfile::Own(list)) = request.record_profile else {
        panic!("the own list");
    };
    for (field, expected) in list.fields.iter().zip(ALL) {
        assert_eq!(name(*field), expected);
        assert_eq!(
            serde_json::to_value(field).expect("a name"),
            json!(expected)
        );
        assert!(!member(*field).is_empty());
    }
    let mut sorted = list.fields.clone();
    sorted.sort();
    sorted.dedup();
    assert_eq!(sorted.len(), 30);
}

/// The log of E2 has no speeds, and no calibration record came with it.
#[test]
fn a_log_without_speeds_and_calibration_record_by_new_york() {
    let e2 = complete(json!({ "nyc_1814_12": {} }));
    let e2 = without(e2, "/log/rotation_speed");
    let e2 = without(e2, "/documents/calibration_record");
    let (found, work) = judged(&e2);
    let told: Vec<_> = found
        .missing
        .iter()
        .map(|m| (name(m.field), m.clause.as_ref(), m.source.id.as_ref()))
        .collect();
    assert_eq!(
        told,
        [
            (
                "calibration_record",
                "1814.12, item 1.4",
                "nyc_1814_12_record"
            ),
            ("rotation_speed", "1814.12, item 1.5", "nyc_1814_12_record"),
        ]
    );
    assert_eq!(found.required_count, 12);
    assert_eq!(
        work.checks[0].reason.as_deref(),
        Some(
            "missing: `calibration_record` (1814.12, item 1.4), `rotation_speed` (1814.12, item 1.5)"
        )
    );
}

#[test]
fn the_lists_ask_for_what_they_say_and_for_more() {
    let bare = |profile: Json| {
        let mut request = complete(profile);
        for member in [
            "label",
            "target",
            "stop",
            "indicator",
            "position",
            "documents",
        ] {
            request.as_object_mut().expect("an object").remove(member);
        }
        without(without(request, "/pile/shaft"), "/pile/helix_pitch")
    };
    let told = |profile: Json| {
        let (found, _) = judged(&bare(profile));
        let one = |m: &crate::record::MissingField| {
            (name(m.field), m.clause.to_string(), m.source.id.to_string())
        };
        found.missing.iter().map(one).collect::<Vec<_>>()
    };
    let ibc = told(json!({ "ibc_1705_9": { "also": ["weather", "equipment"] } }));
    let names: Vec<_> = ibc.iter().map(|m| m.0).collect();
    let expected = [
        "continuous_inspection",
        "equipment",
        "pile_dimensions",
        "tip_elevation",
        "weather",
    ];
    assert_eq!(names, expected);
    assert_eq!(
        ibc[4].1,
        "1705.9, other data the design professional requires"
    );
    assert!(ibc.iter().all(|m| m.2 == "ibc_1705_9"));
    let nyc = told(json!({ "nyc_1814_12": { "also": ["weather"] } }));
    let items: Vec<_> = nyc
        .iter()
        .map(|m| (m.0, m.1.trim_start_matches("1814.12, item ")))
        .collect();
    assert_eq!(
        items,
        [
            ("pile_dimensions", "1.1"),
            ("specification_sheet", "1.1"),
            ("equipment", "1.2"),
            ("indicator_model", "1.3"),
            ("calibration_record", "1.4"),
            ("required_torque", "1.6"),
            ("torque_basis", "1.6"),
            ("final_advance", "1.7"),
            ("field_welds", "2"),
            ("weather", "asked for beside the list"),
        ]
    );
    assert_eq!(nyc[9].2, "caller");
    let own_practice = told(json!({ "installer_minimum": {} }));
    assert!(own_practice.iter().all(|m| m.2 == "record_practice"));
    // all 16 but the depth and the torques, which the log shows
    assert_eq!(own_practice.len(), 13);
    assert_eq!(told(own(&["weather"]))[0].1, "specification 3.2");
}

#[test]
fn a_published_factor_is_no_test_on_the_site() {
    let mut request = complete(own(&["torque_basis"]));
    request["target"] = json!({ "from_demand": {
        "demand": { "level": "allowable", "compression": q(12.5, "kip") },
        "design_basis": { "allowable_stress": {} },
    }});
    request["torque_factor"] = json!({ "listed_shaft": {} });
    assert!(detail(&request).contains("no test on the site"));
    request["torque_factor"] =
        json!({ "own": { "compression": q(8.4, "per_ft"), "reference": "load test 1" } });
    assert!(missing(&request).is_empty());
    let not_there = with(
        complete(own(&["continuous_inspection"])),
        "/documents/continuous_inspection",
        json!(false),
    );
    assert!(detail(&not_there).contains("not there all the time"));
}

#[test]
fn lists_that_are_no_lists_are_refused() {
    let found = |profile: Json, look: fn(&Request, &mut Vec<Issue>)| {
        let request: Request = serde_json::from_value(complete(profile)).expect("a request");
        let mut issues = Vec::new();
        look(&request, &mut issues);
        let refusal = Refusal::of(issues);
        let told = |i: &Issue| format!("{} {}", i.pointer, i.code);
        refusal.issues.iter().map(told).collect::<Vec<_>>()
    };
    let many = vec!["weather"; 41];
    assert_eq!(
        found(own(&[]), lengths),
        ["/record_profile/own/fields list_too_short"]
    );
    assert_eq!(
        found(own(&many), lengths),
        ["/record_profile/own/fields list_too_long"]
    );
    let also = |tag: &str, fields: &[&str]| json!({ tag: { "also": fields } });
    for tag in ["ibc_1705_9", "nyc_1814_12", "installer_minimum"] {
        let pointer = format!("/record_profile/{tag}/also");
        assert_eq!(
            found(also(tag, &many), lengths),
            [format!("{pointer} list_too_long")]
        );
        assert!(found(also(tag, &[]), lengths).is_empty());
        let twice = found(also(tag, &["bolts", "times", "bolts"]), faults);
        assert_eq!(twice, [format!("{pointer}/2 record_field_twice")]);
    }
    let twice = found(own(&["times", "times"]), faults);
    assert_eq!(twice, ["/record_profile/own/fields/1 record_field_twice"]);
    assert!(found(own(&ALL), faults).is_empty() && found(own(&ALL), lengths).is_empty());
}
