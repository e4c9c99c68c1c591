//! Requests for decision keep the rules of a drawing, from a beam with three piles to a large
//! plan with more ways out than a page holds, and say what the answer says.

mod common;

use bearwell_engine::contract::{Call, Paper, Work, run};
use bearwell_engine::quantity::{In, Presentation, System};
use bearwell_engine::relocation::{PileRelocation, Request};
use bearwell_engine::trace::Trace;
use bearwell_papers::ways_out_csv;
use common::decision::{Decision, Way, governing};
use common::strokes::judge_strokes;
use common::{Plan, Sheet, at, judge};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use serde_json::{Value, json};

const PAPERS: [Paper; 2] = [Paper::Letter, Paper::A4];
const SYSTEMS: [System; 2] = [System::Si, System::UsCustomary];

fn judged(name: &str, decision: &Decision, system: System, paper: Paper) -> Sheet {
    let svg = decision.sheet(system, paper);
    let sheet = judge(name, &svg);
    judge_strokes(name, &svg, &sheet);
    sheet
}

fn has(sheet: &Sheet, part: &str) -> bool {
    sheet.texts.iter().any(|t| t.text.contains(part))
}

/// A house of 36 by 26 ft on 6 + 6 + 4 piles, without C4.
fn house() -> Decision {
    let row = |name: &str, y: f64| {
        (0..6)
            .map(move |i| {
                (
                    format!("{name}{}", i + 1),
                    7.2 * f64::from(i),
                    y,
                    9_000.0,
                    0.0,
                )
            })
            .collect::<Vec<_>>()
    };
    let mut piles = row("A", 0.0);
    piles.extend(row("C", 26.0).into_iter().filter(|p| p.0 != "C4"));
    for (name, x) in [("W", 0.0), ("E", 36.0)] {
        piles.extend((1..3).map(|i| (format!("{name}{i}"), x, 8.67 * f64::from(i), 8_000.0, 0.0)));
    }
    Decision {
        plan: Plan {
            beams: vec![
                ("C".into(), vec![(0.0, 26.0), (36.0, 26.0)]),
                ("A".into(), vec![(0.0, 0.0), (36.0, 0.0)]),
                ("W".into(), vec![(0.0, 0.0), (0.0, 26.0)]),
                ("E".into(), vec![(36.0, 0.0), (36.0, 26.0)]),
            ],
            piles,
            capacity: Some(12_500.0),
            cautions: 5,
            width: Some(1.33),
            ..Plan::default()
        },
        events: vec![
            json!({"stopped_short": {"pile": "C4", "depth": {"value": 5, "unit": "ft"},
                                              "why": "boulder"}}),
        ],
        lost: vec![("C4".into(), 21.6, 26.0)],
        options: vec![
            shift("shift_along", "accept", Some(400.0)),
            Way {
                kind: "straddling_pair",
                events: vec![
                    json!({"added": {"pile": {"label": "C4a", "at": at(20.0, 26.0)}}}),
                    json!({"added": {"pile": {"label": "C4b", "at": at(23.0, 26.0)}}}),
                ],
                ..shift("straddling_pair", "provisional", Some(2_650.0))
            },
            Way {
                failed: vec![governing("pile_compression", "C3", Some(1.41))],
                ..shift("leave_out", "reject", Some(0.0))
            },
        ],
        obstruction: Some(json!({"label": "boulder", "shape": {"circle": {
            "centre": at(21.6, 26.0), "radius": {"value": 1.5, "unit": "ft"}}},
            "clearance": {"value": 0.5, "unit": "ft"}})),
        ..Decision::default()
    }
}

fn shift(kind: &'static str, verdict: &'static str, cost: Option<f64>) -> Way {
    Way {
        kind,
        verdict,
        events: vec![
            json!({"moved": {"pile": "C4", "along": {"value": 2.25, "unit": "ft"}, "beam": "C"}}),
        ],
        stretches: vec![(17.2, 19.5), (23.7, 25.1)],
        failed: Vec::new(),
        cost: cost.map(|value| (value, "USD".to_owned())),
    }
}

#[test]
fn every_sheet_keeps_the_rules() {
    let mut long = house();
    long.options = (0..30)
        .map(|i| shift("shift_along", "accept", Some(1e6 + f64::from(i))))
        .collect();
    let mut nothing = house();
    nothing.options.clear();
    nothing.relax = vec!["pile_compression".into(), "max_along".into()];
    let mut fallen = house();
    fallen.fallen = true;
    let mut off = house();
    off.lost.clear();
    off.events = vec![
        json!({"moved": {"pile": "A3", "along": {"value": 9, "unit": "in"},
                                       "off_line": {"value": 3, "unit": "in"}}}),
    ];
    off.moved = vec![(2, (13.65, 0.0), 0.25)];
    for (name, decision) in [
        ("a boulder", house()),
        ("more than a page holds", long),
        ("nothing works", nothing),
        ("beams no longer stand", fallen),
        ("along and off", off),
    ] {
        for system in SYSTEMS {
            for paper in PAPERS {
                judged(name, &decision, system, paper);
            }
        }
    }
}

/// Every row has its letter, its numbers and an empty box; what was not told is counted.
#[test]
fn the_table_says_what_the_answer_says() {
    let sheet = judged("house", &house(), System::UsCustomary, Paper::Letter);
    for part in [
        "was", "now", "A", "B", "C", "0.954", "0.613", "2,650.00", "USD", "answer",
    ] {
        assert!(sheet.texts.iter().any(|t| t.text == part), "{part}");
    }
    for part in [
        "Two piles in its stead",
        "C 17.20 to 19.50",
        "pile compression C3 1.410",
        "C4 stopped short",
        "boulder",
        "Decision of the engineer",
    ] {
        assert!(has(&sheet, part), "{part}");
    }
    let mut long = house();
    long.options = (0..30)
        .map(|_| shift("shift_along", "accept", None))
        .collect();
    let sheet = judged("long", &long, System::Si, Paper::A4);
    // rows by their boxes' letters, at the left edge of the table
    let told = sheet
        .texts
        .iter()
        .filter(|t| t.left < 10.0 && t.text.len() == 1)
        .count();
    let rest = sheet
        .texts
        .iter()
        .find(|t| t.text.contains("further ways out"))
        .expect("the rest");
    assert!(
        rest.text.contains(&format!("and {} ", 30 - told)),
        "{} {told}",
        rest.text
    );
    assert!(told >= 5, "{told}");
}

#[test]
fn no_random_sheet_breaks_the_rules() {
    let config = ProptestConfig {
        cases: 48,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let label = || {
        prop_oneof![
            3 => "[a-zA-Z0-9 ]{1,12}",
            1 => "[<>&\"'/a-z!-]{1,64}",
            1 => "[WM\u{6f22}\u{1f600}]{1,64}",
        ]
    };
    let cases = (
        (-1e5..1e5_f64, -1e5..1e5_f64, 4.0..120.0_f64, 0.1..1.6_f64),
        prop::collection::vec((label(), 0.0..20_000.0_f64), 2..40),
        prop::collection::vec((label(), 0.0..1.0_f64, 0.0..1.0_f64, any::<bool>()), 0..12),
        prop::collection::vec((label(), 0.0..1.0_f64), 0..4),
        (
            prop::option::of(0.5..2.0_f64),
            any::<bool>(),
            any::<bool>(),
            label(),
        ),
    );
    let outcome = TestRunner::new(config).run(
        &cases,
        |((x, y, long, slope), piles, ways, lost, (width, fallen, moved, beam))| {
            let step = long / piles.len() as f64;
            let place = |s: f64| (x + s, y + slope * s);
            let decision = Decision {
                plan: Plan {
                    beams: vec![(beam, vec![place(0.0), place(long)])],
                    piles: piles
                        .iter()
                        .enumerate()
                        .map(|(i, (label, load))| {
                            let (x, y) = place(i as f64 * step);
                            let label: String = format!("{i}{label}").chars().take(64).collect();
                            (label, x, y, *load, 0.0)
                        })
                        .collect(),
                    capacity: Some(12_500.0),
                    cautions: 6,
                    width,
                    ..Plan::default()
                },
                lost: lost
                    .into_iter()
                    .map(|(label, s)| {
                        let (x, y) = place(s * long);
                        (label, x, y)
                    })
                    .collect(),
                moved: if moved {
                    vec![(1, place(0.3 * step), 0.25)]
                } else {
                    Vec::new()
                },
                options: ways
                    .into_iter()
                    .map(|(label, from, to, fails)| Way {
                        kind: if fails { "extra_pile" } else { "shift_off" },
                        verdict: if fails { "reject" } else { "accept" },
                        events: vec![json!({"omitted": {"pile": label, "why": label}})],
                        stretches: vec![(from.min(to) * long, from.max(to) * long)],
                        failed: if fails {
                            vec![governing("pile_span", &label, None)]
                        } else {
                            Vec::new()
                        },
                        cost: fails.then_some((1e9 * from, label)),
                    })
                    .collect(),
                fallen,
                ..Decision::default()
            };
            let system = if moved {
                System::Si
            } else {
                System::UsCustomary
            };
            let paper = if fallen { Paper::A4 } else { Paper::Letter };
            judged("random", &decision, system, paper);
            Ok(())
        },
    );
    outcome.unwrap_or_else(|e| panic!("{e}"));
}

/// Every number and word of a row is that of the JSON answer, every way out has its row.
#[test]
fn the_rows_are_the_answer() {
    for name in ["rock-at-the-corner", "stronger-beam", "nothing-works"] {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../openapi/examples");
        let path = format!("{folder}/pile-relocation/{name}.json");
        let text = std::fs::read_to_string(&path).expect("an example");
        let call: Call<Request> = serde_json::from_str(&text).expect("a request");
        let work = Work::new(Trace::off(), None);
        let answer = run::<PileRelocation>(&call, work).expect("an answer");
        for system in SYSTEMS {
            let csv = ways_out_csv(&call.request, &answer, system, Paper::A4);
            let mut rows = csv.split_terminator("\r\n").map(fields);
            let heads = rows.next().expect("a header");
            let movement = match system {
                System::Si => "movement [m]",
                System::UsCustomary => "movement [ft]",
            };
            assert_eq!(heads[14], movement);
            let form = Presentation::Printed(system);
            let json: serde_json::Value =
                serde_json::from_str(&In(form, &answer.result).text().expect("it prints"))
                    .expect("it prints");
            let options = json["ways_out"]["options"].as_array().expect("options");
            assert!(!options.is_empty(), "{name}");
            let rows: Vec<Vec<String>> = rows.collect();
            assert_eq!(rows.len(), options.len(), "{name}");
            for (row, option) in rows.iter().zip(options) {
                assert_eq!(row.len(), heads.len(), "{row:?}");
                for (at, member) in [
                    (0, "/rank"),
                    (6, "/pile_utilisation_ratio"),
                    (7, "/beam_utilisation_ratio"),
                    (8, "/utilisation_ratio"),
                    (11, "/extra_pile_count"),
                    (12, "/larger_pile_count"),
                    (13, "/change_count"),
                    (14, "/movement/value"),
                    (15, "/cost/value"),
                ] {
                    let number = option.pointer(member).and_then(Value::as_f64);
                    assert_eq!(row[at].parse().ok(), number, "{member}: {row:?}");
                }
                for (at, member) in [(2, "kind"), (3, "verdict")] {
                    assert_eq!(row[at], option[member].as_str().expect("a word"));
                }
                for check in option["failed"].as_array().expect("checks") {
                    assert!(row[9].contains(check["check"].as_str().expect("a name")));
                }
            }
        }
    }
}

/// The fields of a line; none of these holds a quotation mark.
fn fields(line: &str) -> Vec<String> {
    let mut all = vec![String::new()];
    let mut quoted = false;
    for c in line.chars() {
        match c {
            '"' => quoted = !quoted,
            ',' if !quoted => all.push(String::new()),
            c => all.last_mut().expect("a field").push(c),
        }
    }
    all
}
