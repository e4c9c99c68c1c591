//! Random load tests on both papers in both unit systems: no sheet ever breaks the rules of a
//! drawing, and the table of criteria reads back.

mod common;

use bearwell_engine::contract::{Answer, Call, Paper, Work, run};
use bearwell_engine::load_test::{LoadTest, Outcome, Request};
use bearwell_engine::quantity::System;
use bearwell_engine::trace::Trace;
use bearwell_papers::{load_test_csv, load_test_svg};
use common::judge;
use common::strokes::judge_strokes;
use proptest::prelude::*;
use serde_json::{Value, json};

/// What a curve is made of: load and movement of each step, and how the test ends.
#[derive(Debug, Clone)]
struct Case {
    steps: Vec<(f64, f64)>,
    scale: (f64, f64),
    end: u8,
    label: String,
    helices: Vec<f64>,
    length: f64,
    criterion: &'static str,
    torque: Option<f64>,
    demand: Option<f64>,
    tension: bool,
}

fn label() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-zA-Z0-9 ]{1,20}",
        "[<>&\"'/a-z!=-]{1,64}",
        "[WM\u{6f22}\u{5b57}\u{1f600}]{1,64}",
    ]
}

fn case() -> impl Strategy<Value = Case> {
    let steps = prop::collection::vec((0.0..1.0_f64, 0.0..1.0_f64), 4..60);
    // from a model pile to the largest loads and movements
    let scale = (0.0..4.0_f64, -1.0..2.2_f64);
    let criterion = prop::sample::select(vec![
        "davisson",
        "helix_5_percent_gross",
        "helix_8_percent_net",
        "helix_10_percent_net",
        "butler_hoy",
        "de_beer",
        "brinch_hansen_80",
        "least_named_by_code",
    ]);
    (
        (steps, scale, 0..4_u8, label()),
        prop::collection::vec(200.0..900.0_f64, 1..4),
        1.0..30.0_f64,
        criterion,
        prop::option::of(1.0..50.0_f64),
        prop::option::of(0.05..1.5_f64),
        any::<bool>(),
    )
        .prop_map(
            |(curve, helices, length, criterion, torque, demand, tension)| {
                let (steps, scale, end, label) = curve;
                Case {
                    steps,
                    scale,
                    end,
                    label,
                    helices,
                    length,
                    criterion,
                    torque,
                    demand,
                    tension,
                }
            },
        )
}

fn q(value: f64, unit: &str) -> Value {
    json!({ "value": value, "unit": unit })
}

impl Case {
    fn answered(&self) -> (Request, Answer<Outcome>) {
        let pow = |x| bearwell_engine::math::pow(10.0, x);
        let n = self.steps.len() as f64;
        let (load, movement) = (pow(self.scale.0) / n, pow(self.scale.1) / n);
        let mut rows = vec![(0.0, 0.0)];
        let (mut q_now, mut s_now) = (0.0, 0.0);
        for (i, (up, on)) in self.steps.iter().enumerate() {
            // the further on, the softer
            let softer = 1.0 + 9.0 * i as f64 / n;
            q_now += load * (0.05 + up) / softer;
            s_now += movement * (0.05 + on) * softer;
            rows.push((q_now, s_now));
        }
        match self.end {
            1 => rows.extend([(0.5 * q_now, 0.98 * s_now), (0.0, 0.9 * s_now)]),
            2 => rows.extend([(0.8 * q_now, 1.3 * s_now), (0.7 * q_now, 1.8 * s_now)]),
            3 => rows.extend((1..20).map(|i| (q_now, s_now + movement * f64::from(i)))),
            _ => {}
        }
        let rows: Vec<Value> = rows.iter().map(|(q, s)| json!([q, s])).collect();
        let helices: Vec<Value> = (self.helices.iter())
            .map(|d| json!({ "diameter": q(*d, "mm") }))
            .collect();
        let direction = if self.tension {
            "tension"
        } else {
            "compression"
        };
        let mut request = json!({
            "label": self.label, "direction": direction, "procedure": "quick",
            "points": { "columns": [{ "name": "load", "unit": "kN" },
                { "name": "displacement", "unit": "mm" }], "rows": rows },
            "shaft": { "round": { "outside_diameter": q(88.9, "mm"), "wall_thickness": q(5.5, "mm") } },
            "loaded_length": q(self.length, "m"), "helices": helices,
            "failure_criterion": self.criterion,
        });
        if let Some(torque) = self.torque {
            request["torque"] =
                json!({ "final_torque": q(torque, "kN_m"), "gauge_accuracy_ratio": 0.1 });
            request["other_tests"] = json!([
                { "label": "T1", "factor": q(20.0, "per_m"), "reference": self.label },
                { "label": "T2", "factor": q(25.0, "per_m"), "reference": "report" }]);
        }
        if let Some(share) = self.demand {
            request["demand"] = json!({ "level": "allowable" });
            request["demand"][direction] = q(share * q_now, "kN");
            request["design_basis"] = json!({ "allowable_stress": {} });
            request["conduct"] = json!({ "reaction_distance": q(2.0, "m"),
                "anticipated_failure": q(f64::max(1.0, q_now), "kN") });
        }
        let call: Call<Request> = serde_json::from_value(request).expect("a request");
        let answer = run::<LoadTest>(&call, Work::new(Trace::off(), None)).expect("an answer");
        (call.request, answer)
    }
}

/// A strict reader of RFC 4180.
fn read(csv: &str) -> Vec<Vec<String>> {
    let mut rows = vec![vec![String::new()]];
    let (mut quoted, mut chars) = (false, csv.chars().peekable());
    while let Some(c) = chars.next() {
        let row = rows.last_mut().expect("a row");
        match c {
            '"' if quoted && chars.peek() == Some(&'"') => {
                chars.next();
                row.last_mut().expect("a field").push('"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => row.push(String::new()),
            '\r' if !quoted => {
                assert_eq!(chars.next(), Some('\n'));
                rows.push(vec![String::new()]);
            }
            c => row.last_mut().expect("a field").push(c),
        }
    }
    assert_eq!(rows.pop(), Some(vec![String::new()]), "the last line ends");
    rows
}

/// The table holds the loads, names, reasons and standing of the JSON answer.
fn same(request: &Request, answer: &Answer<Outcome>) {
    use bearwell_engine::quantity::{In, Presentation};
    for system in [System::Si, System::UsCustomary] {
        let csv = load_test_csv(request, answer, system, Paper::A4);
        let rows = read(&csv);
        let form = Presentation::Printed(system);
        let printed = In(form, &answer.result.criteria).text().expect("JSON");
        let printed: Vec<Value> = serde_json::from_str(&printed).expect("JSON");
        assert_eq!(rows.len(), printed.len() + 1);
        let at = |name: &str| {
            let heads = rows[0].iter();
            let found = heads
                .clone()
                .position(|h| h.split(" [").next() == Some(name));
            found.unwrap_or_else(|| panic!("{name} in {:?}", rows[0]))
        };
        for (row, c) in rows[1..].iter().zip(&printed) {
            assert_eq!(row.len(), rows[0].len());
            for member in [
                "load",
                "displacement",
                "torque_factor",
                "diameter",
                "offset",
            ] {
                let field = &row[at(member)];
                match c.get(member) {
                    Some(value) => {
                        assert_eq!(
                            field.parse::<f64>().ok(),
                            value["value"].as_f64(),
                            "{member}"
                        );
                        let unit = value["unit"].as_str().expect("a unit");
                        assert!(rows[0][at(member)].ends_with(&format!("[{unit}]")));
                    }
                    None => assert_eq!(field, ""),
                }
            }
            for member in [
                "criterion",
                "status",
                "kind",
                "code_standing",
                "reason",
                "detail",
            ] {
                let wire = c.get(member).map_or("", |v| v.as_str().expect("a text"));
                assert_eq!(row[at(member)], wire);
            }
            let taken = answer.result.failure.criterion.is_some()
                && serde_json::to_value(answer.result.failure.criterion).expect("JSON")
                    == c["criterion"];
            assert_eq!(row[at("taken_as_failure_load")] == "yes", taken);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn random_load_tests_keep_the_rules(case in case()) {
        let (request, answer) = case.answered();
        for paper in [Paper::Letter, Paper::A4] {
            for system in [System::Si, System::UsCustomary] {
                let svg = load_test_svg(&request, &answer, system, paper);
                let sheet = judge("random", &svg);
                judge_strokes("random", &svg, &sheet);
                prop_assert_eq!(&svg, &load_test_svg(&request, &answer, system, paper));
                // every criterion stands in the table by its letter
                for letter in 'A'..='K' {
                    prop_assert!(sheet.texts.iter().any(|t| t.text == letter.to_string()));
                }
            }
        }
        same(&request, &answer);
    }
}
