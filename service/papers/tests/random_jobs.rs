//! Random jobs, from one pile to sixty, with labels of any characters: no sheet ever breaks
//! the rules of a drawing, also where logs cannot be judged.

mod common;

use std::cell::Cell;

use bearwell_engine::contract::Paper;
use bearwell_engine::quantity::System;
use common::job::{asked, job, sheet};
use common::judge;
use common::random_log::{case, text};
use common::record::Log;
use common::strokes::judge_strokes;
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use serde_json::json;

#[test]
fn no_sheet_breaks_the_rules() {
    let config = ProptestConfig {
        cases: 48,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let counts = prop_oneof![1..4_usize, 1..=60_usize, Just(60)];
    // logs of up to 60 rows; a label of its own for each pile
    let jobs = counts.prop_flat_map(|n| {
        (
            prop::collection::vec(case(), n.min(8)),
            prop::collection::vec(text(), n),
            prop::option::of(0.0..1.0_f64),
        )
    });
    let (answered, empty) = (Cell::new(0), Cell::new(0));
    let outcome = TestRunner::new(config).run(&jobs, |(logs, labels, share)| {
        let piles: Vec<Log> = labels
            .iter()
            .enumerate()
            .map(|(i, label)| {
                let mut log = logs[i % logs.len()].clone();
                log.rows.truncate(60);
                let label: String = format!("{i}{label}").chars().take(64).collect();
                Log {
                    label,
                    profile: None,
                    ..log
                }
            })
            .collect();
        let mut request = job(&piles);
        if let Some(share) = share {
            request["lot"] = json!({"proof_test_ratio": share});
        }
        // refused where no pile at all can be judged
        let Ok(drawn) = asked(request) else {
            return Ok(());
        };
        answered.set(answered.get() + 1);
        empty.set(empty.get() + drawn.1.result.counts.not_evaluated_count);
        for (system, paper) in [
            (System::Si, Paper::A4),
            (System::UsCustomary, Paper::Letter),
        ] {
            let svg = sheet(&drawn, system, paper);
            let read = judge("random job", &svg);
            judge_strokes("random job", &svg, &read);
        }
        Ok(())
    });
    outcome.unwrap_or_else(|error| panic!("{error}"));
    assert!(answered.get() > 20, "{} answered", answered.get());
    assert!(empty.get() > 20, "{} empty cells", empty.get());
}
