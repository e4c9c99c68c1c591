//! The piles of a job as a table, a row for each.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::job::{JobPile, JobTestResult, Outcome, Request};
use bearwell_engine::quantity::{Length, RATIO, System, Torque};
use bearwell_engine::record::NextStepKind;

use crate::csv::{Csv, Field};
use crate::words;

/// Writes the piles of an answer as CSV in the given units: a row for each pile in the order of
/// the job, one whose log could not be judged with the codes of its faults and without numbers.
pub fn job_csv(_: &Request, answer: &Answer<Outcome>, system: System, _: Paper) -> String {
    let mut csv = Csv::new(system);
    csv.text_column("pile");
    csv.text_column("verdict");
    csv.column("tip_depth", Length::ROLE);
    csv.column("required_torque", Torque::ROLE);
    csv.column("effective_torque", Torque::ROLE);
    csv.column("torque_utilisation_ratio", RATIO);
    csv.column("capacity_utilisation_ratio", RATIO);
    for name in [
        "first_step",
        "record_complete",
        "load_tests",
        "reasons",
        "warnings",
    ] {
        csv.text_column(name);
    }
    for pile in &answer.result.piles {
        csv.row(fields(pile));
    }
    csv.finish()
}

fn fields(pile: &JobPile) -> [Field; 12] {
    let complete = pile
        .record_complete
        .map_or("", |c| if c { "yes" } else { "no" });
    let codes = match pile.verdict {
        Some(_) => distinct(pile.reasons.iter().map(|r| r.code.as_ref())),
        None => distinct(pile.issues.iter().map(|i| i.code.as_ref())),
    };
    [
        Field::text(pile.label.as_str()),
        Field::text(pile.verdict.map_or("not_evaluated", words::verdict_code)),
        Field::maybe(pile.tip_depth),
        Field::maybe(pile.required_torque),
        Field::maybe(pile.effective_torque),
        Field::maybe(pile.torque_utilisation_ratio),
        Field::maybe(pile.capacity_utilisation_ratio),
        Field::text(pile.first_step.map_or("", step_code)),
        Field::text(complete),
        Field::text(tests(pile)),
        Field::text(codes),
        Field::text(distinct(pile.warnings.iter().map(|w| w.code.as_ref()))),
    ]
}

/// Codes in one field, each once, in their order.
fn distinct<'a>(codes: impl Iterator<Item = &'a str>) -> String {
    let mut all: Vec<&str> = Vec::new();
    for code in codes {
        if !all.contains(&code) {
            all.push(code);
        }
    }
    all.join(" ")
}

/// What came out of the load tests: `failed` where one did.
fn tests(pile: &JobPile) -> &'static str {
    let failed = |t: &bearwell_engine::job::JobLoadTest| t.result == JobTestResult::Failed;
    match pile.load_tests.as_slice() {
        [] => "",
        all if all.iter().any(failed) => "failed",
        _ => "passed",
    }
}

/// A step as it stands in JSON.
fn step_code(step: NextStepKind) -> &'static str {
    match step {
        NextStepKind::InspectShaft => "inspect_shaft",
        NextStepKind::DriveDeeper => "drive_deeper",
        NextStepKind::RestoreAdvance => "restore_advance",
        NextStepKind::WaitAndRetorque => "wait_and_retorque",
        NextStepKind::PreDrill => "pre_drill",
        NextStepKind::ExtractAndMove => "extract_and_move",
        NextStepKind::LargerHelix => "larger_helix",
        NextStepKind::LoadTest => "load_test",
        NextStepKind::CompleteRecord => "complete_record",
        NextStepKind::AskEngineer => "ask_engineer",
    }
}

#[cfg(test)]
mod tests {
    use bearwell_engine::contract::{Call, Work, run};
    use bearwell_engine::job::InstallationJob;
    use bearwell_engine::quantity::{In, Presentation};
    use bearwell_engine::trace::Trace;
    use serde_json::Value;

    use super::*;

    fn answered(name: &str) -> (Request, Answer<Outcome>) {
        let path = format!(
            "{}/../../openapi/examples/installation-job/{name}.json",
            env!("CARGO_MANIFEST_DIR")
        );
        let text = std::fs::read_to_string(&path).expect("an example");
        let call: Call<Request> = serde_json::from_str(&text).expect("a request");
        let answer = run::<InstallationJob>(&call, Work::new(Trace::off(), None));
        (call.request, answer.expect("an answer"))
    }

    /// Every number of the table is that of the JSON answer, every pile has its row.
    #[test]
    fn the_table_is_the_answer() {
        for name in [
            "linnet",
            "sizerin",
            "failed-load-test",
            "one-log-cannot-be-judged",
        ] {
            for system in [System::Si, System::UsCustomary] {
                let (request, answer) = answered(name);
                let csv = job_csv(&request, &answer, system, Paper::A4);
                let mut lines = csv.split_terminator("\r\n");
                let heads: Vec<&str> = lines.next().expect("a header").split(',').collect();
                let (depth, torque) = match system {
                    System::Si => ("tip_depth [m]", "required_torque [kN_m]"),
                    System::UsCustomary => ("tip_depth [ft]", "required_torque [ft_lbf]"),
                };
                assert_eq!(&heads[..4], ["pile", "verdict", depth, torque]);
                let form = Presentation::Printed(system);
                let json: serde_json::Value =
                    serde_json::from_str(&In(form, &answer.result).text().expect("it prints"))
                        .expect("it prints");
                let piles = json["piles"].as_array().expect("piles");
                let rows: Vec<Vec<&str>> = lines.map(|l| l.split(',').collect()).collect();
                assert_eq!(rows.len(), piles.len());
                for (row, pile) in rows.iter().zip(piles) {
                    assert_eq!(row.len(), heads.len(), "{row:?}");
                    assert_eq!(row[0], pile["label"]);
                    assert_eq!(row[1], pile["verdict"].as_str().unwrap_or("not_evaluated"));
                    for (at, member) in [
                        (2, "/tip_depth/value"),
                        (3, "/required_torque/value"),
                        (4, "/effective_torque/value"),
                        (5, "/torque_utilisation_ratio"),
                        (6, "/capacity_utilisation_ratio"),
                    ] {
                        let number = pile.pointer(member).and_then(Value::as_f64);
                        assert_eq!(row[at].parse().ok(), number, "{member}: {row:?}");
                    }
                    assert_eq!(row[7], pile["first_step"].as_str().unwrap_or_default());
                    let codes: Vec<&str> = row[10].split(' ').filter(|c| !c.is_empty()).collect();
                    let list = if pile["verdict"].is_null() {
                        "issues"
                    } else {
                        "reasons"
                    };
                    for entry in pile[list].as_array().expect("a list") {
                        assert!(codes.contains(&entry["code"].as_str().expect("a code")));
                    }
                }
            }
        }
    }

    #[test]
    fn tests_and_faults_have_their_words() {
        let row = |name: &str, at: usize| {
            let (request, answer) = answered(name);
            let csv = job_csv(&request, &answer, System::Si, Paper::A4);
            let line = csv.split_terminator("\r\n").nth(at).expect("a line");
            line.split(',').map(str::to_owned).collect::<Vec<_>>()
        };
        // A3 failed in compression and passed in tension
        assert_eq!(row("failed-load-test", 3)[9], "failed");
        assert_eq!(row("failed-load-test", 2)[9], "passed");
        let lost = row("one-log-cannot-be-judged", 2);
        assert_eq!(lost[1], "not_evaluated");
        assert_eq!(lost[10], "missing_member log_torque_twice");
        assert_eq!(row("linnet", 11)[8], "no");
        assert_eq!(row("linnet", 12)[8], "yes");
    }
}
