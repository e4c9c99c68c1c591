//! Random piles in ground that moves, with labels of any characters and every part of a
//! request there or not: no sheet ever breaks the rules of a drawing.

mod common;

use std::cell::Cell;

use bearwell_engine::contract::Paper;
use bearwell_engine::frost::Request;
use bearwell_engine::quantity::System;
use common::frost::{asked, case, judged};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

const CASES: u32 = 160;

#[test]
fn no_sheet_breaks_the_rules() {
    let config = ProptestConfig {
        cases: CASES,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let answered = Cell::new(0);
    let outcome = TestRunner::new(config).run(&case(), |case| {
        let request: Request = serde_json::from_value(case.request()).expect("a request");
        // depths that contradict each other are refused
        let Ok(answer) = asked(&request) else {
            return Ok(());
        };
        answered.set(answered.get() + 1);
        let pile = (request, answer);
        for (system, paper) in [
            (System::Si, Paper::A4),
            (System::UsCustomary, Paper::Letter),
        ] {
            judged("random", &pile, system, paper);
        }
        Ok(())
    });
    if let Err(error) = outcome {
        panic!("{error}");
    }
    assert!(
        answered.get() > CASES / 2,
        "only {} were answered",
        answered.get()
    );
}
