//! Jobs to draw, answered by the engine.
#![allow(dead_code)]

use bearwell_engine::contract::{Answer, Call, Paper, Refusal, Work, run};
use bearwell_engine::job::{InstallationJob, Outcome, Request};
use bearwell_engine::quantity::System;
use bearwell_engine::trace::Trace;
use bearwell_papers::job_svg;
use serde_json::{Value, json};

use super::record::{Log, Row};

/// A request with its answer.
pub type Drawn = (Request, Answer<Outcome>);

/// The answer of the engine.
pub fn asked(request: Value) -> Result<Drawn, Refusal> {
    let request: Request = serde_json::from_value(request).expect("a request");
    let call = Call::from(request.clone());
    let answer = run::<InstallationJob>(&call, Work::new(Trace::off(), None))?;
    Ok((request, answer))
}

/// A job of these logs.
pub fn job(logs: &[Log]) -> Value {
    let piles: Vec<Value> = logs.iter().map(|log| proven(log.request_json())).collect();
    json!({"label": "Linnet", "piles": piles})
}

/// A pile of which everything is known that a verdict needs.
fn proven(mut request: Value) -> Value {
    let mm = |v: f64| json!({"value": v, "unit": "mm"});
    request["indicator"] = json!({"accuracy_ratio": 0.02, "calibrated_on": "2026-03-02",
                                  "driven_on": "2026-05-11"});
    request["position"] = json!({"along": mm(20.0), "off_line": mm(10.0),
                                 "inclination": {"value": 0.5, "unit": "deg"}});
    if request.get("ground").is_none() {
        request["ground"] = json!({"report": {"reference": "soil report of lot 31"}});
    }
    request
}

/// The sheet of a job.
pub fn sheet((request, answer): &Drawn, system: System, paper: Paper) -> String {
    job_svg(request, answer, system, paper)
}

/// Pile `i` of a job: most reach their torque, every seventh stops on debris, every eleventh
/// passes a stone, every thirteenth is on its way, every seventeenth has no torque.
pub fn pile(i: usize) -> Log {
    let deep = 17 + (i * 5) % 6;
    let row = |ft: usize| -> Row {
        let wobble = ((i * 37 + ft * 53) % 17) as f64;
        let torque = match ft {
            0..=4 => 350.0 + 20.0 * wobble,
            5..=10 => 650.0 + 30.0 * wobble,
            _ => 1400.0 + 260.0 * (ft - 10) as f64 + 8.0 * wobble,
        };
        (ft as f64, Some(torque), "counts", Some(0.93))
    };
    let mut log = Log {
        label: format!(
            "{}{}",
            ["A", "B", "C", "E", "M", "W"][i / 10 % 6],
            i % 10 + 1
        ),
        rows: (1..=deep).map(row).collect(),
        ..Log::by_the_foot("", &[])
    };
    if i % 7 == 3 {
        log.rows.truncate(5);
        log.rows[4].1 = Some(5500.0);
        log.stop = Some("obstruction");
    } else if i % 11 == 5 {
        log.rows[7].1 = Some(4300.0);
    } else if i % 13 == 6 {
        log.rows.truncate(12);
        log.stop = Some("still_turning");
    } else if i % 17 == 8 {
        log.rows.iter_mut().for_each(|r| r.1 = None);
    }
    log
}
