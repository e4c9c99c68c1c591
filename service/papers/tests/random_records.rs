//! Random logs, with labels of any characters and every part of a request there or not: no
//! sheet ever breaks the rules of a drawing. Half of them are answered by the engine, half
//! carry answers that no log would give.

mod common;

use std::cell::Cell;

use bearwell_engine::contract::{Call, Paper, Work, run};
use bearwell_engine::quantity::System;
use bearwell_engine::record::{InstallationRecord, Request};
use bearwell_engine::trace::Trace;
use bearwell_papers::{record_csv, record_svg};
use common::judge;
use common::random_log::case;
use common::strokes::judge_strokes;
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

fn good(name: &str, svg: &str) {
    let read = judge(name, svg);
    judge_strokes(name, svg, &read);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_sheet_breaks_the_rules(log in case()) {
        for (system, paper) in [(System::Si, Paper::A4), (System::UsCustomary, Paper::Letter)] {
            good("random", &log.sheet(system, paper));
        }
    }
}

#[test]
fn no_answer_of_the_engine_breaks_them() {
    let config = ProptestConfig {
        cases: 64,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let answered = Cell::new(0);
    let outcome = TestRunner::new(config).run(&case(), |log| {
        let request: Request = serde_json::from_value(log.request_json()).expect("a request");
        let call = Call::from(request.clone());
        // a log without a torque, or with depths that cross, is refused
        let Ok(answer) = run::<InstallationRecord>(&call, Work::new(Trace::off(), None)) else {
            return Ok(());
        };
        answered.set(answered.get() + 1);
        for (system, paper) in [
            (System::Si, Paper::Letter),
            (System::UsCustomary, Paper::A4),
        ] {
            good("answered", &record_svg(&request, &answer, system, paper));
            let csv = record_csv(&request, &answer, system, paper);
            prop_assert!(csv.starts_with("row [1],depth ["));
            prop_assert_eq!(csv.matches("\r\n").count(), 1 + answer.result.rows.len());
        }
        Ok(())
    });
    outcome.unwrap_or_else(|error| panic!("{error}"));
    assert!(answered.get() > 20, "{} answered", answered.get());
}
