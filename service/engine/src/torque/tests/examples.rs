//! Every example request under `openapi/examples/torque-capacity`: those that must be
//! answered are, those that must be refused are refused where they should be.

use std::fs;
use std::path::PathBuf;

use validator::Validate;

use crate::contract::{Call, CheckStatus, Verdict, Work, run};
use crate::quantity::{In, Presentation, System};
use crate::torque::{Request, TorqueCapacity};
use crate::trace::Trace;

fn folder(below: &str) -> Vec<(String, String)> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("../../openapi/examples/torque-capacity")
        .join(below);
    let mut files: Vec<_> = fs::read_dir(&path)
        .unwrap_or_else(|e| panic!("{}: {e}", path.display()))
        .map(|entry| entry.unwrap().path())
        .filter(|p| {
            let name = p.file_name().unwrap().to_string_lossy().into_owned();
            name.ends_with(".json")
                && !name.ends_with(".answer.json")
                && !name.ends_with(".problem.json")
        })
        .map(|p| {
            let name = p.file_stem().unwrap().to_string_lossy().into_owned();
            (name, fs::read_to_string(&p).unwrap())
        })
        .collect();
    files.sort();
    assert!(
        files.len() > 10,
        "{} holds too few examples",
        path.display()
    );
    files
}

#[test]
fn every_example_is_answered_and_printed() {
    for (name, text) in folder("") {
        let call: Call<Request> =
            serde_json::from_str(&text).unwrap_or_else(|e| panic!("{name}: {e}"));
        call.request
            .validate()
            .unwrap_or_else(|e| panic!("{name}: {e}"));
        let trace = if call.options.steps() {
            Trace::on()
        } else {
            Trace::off()
        };
        let answer = run::<TorqueCapacity>(&call, Work::new(trace, None))
            .unwrap_or_else(|e| panic!("{name}: {e:?}"));
        for system in [System::Si, System::UsCustomary] {
            let printed =
                serde_json::to_string(&In(Presentation::Printed(system), &answer)).unwrap();
            assert!(!printed.contains("null"), "{name}: {printed}");
        }
        let judged = call.request.demand.is_some()
            || call.request.torsion.is_some_and(|t| t.rating.is_some())
                && call.request.installed.is_some();
        assert_eq!(answer.verdict != Verdict::NotAsked, judged, "{name}");
        assert_eq!(!answer.checks.is_empty(), judged, "{name}");
        assert!(
            !answer.methods.is_empty() && !answer.cautions.is_empty(),
            "{name}"
        );
        // the plain form reads back as the same answer: what a client relies on
        let plain = serde_json::to_string(&answer.result).unwrap();
        let back: crate::torque::Outcome = serde_json::from_str(&plain).unwrap();
        assert_eq!(serde_json::to_string(&back).unwrap(), plain, "{name}");
        if std::env::var_os("SHOW").is_some() {
            let system = call.options.system();
            let text = In(Presentation::Printed(system), &answer);
            println!(
                "== {name}\n{}",
                serde_json::to_string_pretty(&text).unwrap()
            );
        }
    }
}

#[test]
fn the_named_examples_come_to_their_verdicts() {
    let verdict = |wanted: &str| {
        let (_, text) = folder("").into_iter().find(|(n, _)| n == wanted).unwrap();
        let call: Call<Request> = serde_json::from_str(&text).unwrap();
        run::<TorqueCapacity>(&call, Work::default())
            .unwrap()
            .verdict
    };
    for (name, expected) in [
        ("linnet", Verdict::Accept),
        ("linnet-installed", Verdict::Accept),
        ("sizerin", Verdict::Accept),
        ("sizerin-tension-in-doubt", Verdict::Provisional),
        ("sizerin-static-test", Verdict::Accept),
        ("gauge-band", Verdict::Provisional),
        ("motor-planning", Verdict::Reject),
        ("over-torque", Verdict::Reject),
        ("shallow-top-helix", Verdict::Provisional),
        ("square-rounded-corners", Verdict::Provisional),
        ("cd-01", Verdict::Accept),
        ("cd-02", Verdict::Accept),
        ("cd-03", Verdict::Accept),
        ("tq-03", Verdict::NotAsked),
    ] {
        assert_eq!(verdict(name), expected, "{name}");
    }
}

#[test]
fn every_refused_example_is_refused_where_it_should_be() {
    // name, stage, a code of the fault or a part of the message
    let expected = [
        ("absurd-torque", "values", "range"),
        ("bare-lb", "shape", "for a force write `lbf` or `kip`"),
        ("demand-without-basis", "physics", "missing_member"),
        ("demand-without-load", "physics", "missing_member"),
        (
            "diagonal-impossible",
            "physics",
            "shaft_diagonal_impossible",
        ),
        (
            "diameter-outside-range",
            "physics",
            "shaft_outside_torque_factor_range",
        ),
        (
            "duplicate-member",
            "shape",
            "duplicate field `torque_factor`",
        ),
        ("efficiency-above-one", "values", "range"),
        ("factor-missing", "physics", "missing_member"),
        ("gear-counted-twice", "physics", "gear_counted_twice"),
        (
            "livneh-on-round-shaft",
            "physics",
            "shaft_outside_torque_factor_range",
        ),
        ("mixed-basis", "physics", "basis_mixed"),
        ("mixed-basis-service-load", "physics", "basis_mixed"),
        ("negative-torque", "values", "range"),
        (
            "no-pressure-difference",
            "physics",
            "no_pressure_difference",
        ),
        ("nothing-asked", "physics", "torque_nothing_asked"),
        ("number-too-large", "shape", "number out of range"),
        ("obstruction", "physics", "torque_at_obstruction"),
        ("own-factor-blank-reference", "values", "text_length"),
        ("own-factor-other-direction", "physics", "missing_member"),
        (
            "own-factor-without-reference",
            "shape",
            "missing field `reference`",
        ),
        ("plateau-too-short", "physics", "torque_plateau_too_short"),
        ("pressure-without-drive", "physics", "missing_member"),
        ("several-faults", "physics", "basis_mixed"),
        ("shaft-missing", "physics", "missing_member"),
        ("shaft-not-listed", "physics", "shaft_not_listed"),
        (
            "shaft-outside-range",
            "physics",
            "shaft_outside_torque_factor_range",
        ),
        ("spin-out", "physics", "spin_out"),
        ("st-nyc-85", "physics", "spin_out"),
        ("tension-factor-twice", "physics", "tension_factor_twice"),
        (
            "tension-too-shallow",
            "physics",
            "tension_by_torque_too_shallow",
        ),
        ("torque-in-lbf", "shape", "unknown unit `lbf`"),
        ("two-choices", "shape", ""),
        ("unknown-member", "shape", "unknown field `torque_facter`"),
        ("wall-missing", "physics", "missing_member"),
        ("wall-too-thick", "physics", "shaft_wall_too_thick"),
    ];
    let files = folder("refused");
    let names: Vec<_> = files.iter().map(|(n, _)| n.as_str()).collect();
    assert_eq!(
        names,
        expected.map(|e| e.0),
        "each refused example has its line"
    );
    for ((name, text), (_, stage, mark)) in files.iter().zip(expected) {
        let (got, words) = match serde_json::from_str::<Call<Request>>(text) {
            Err(e) => ("shape", e.to_string()),
            Ok(call) => match call.request.validate() {
                Err(e) => ("values", format!("{e:?}")),
                Ok(()) => match run::<TorqueCapacity>(&call, Work::default()) {
                    Err(refusal) => ("physics", codes(&refusal)),
                    Ok(_) => ("answered", String::new()),
                },
            },
        };
        assert_eq!(got, stage, "{name}: {words}");
        assert!(words.contains(mark), "{name}: {words}");
    }
}

fn codes(refusal: &crate::contract::Refusal) -> String {
    let codes: Vec<_> = refusal.issues.iter().map(|i| i.code.as_ref()).collect();
    codes.join(" ")
}

#[test]
fn a_rating_without_a_demand_is_judged_too() {
    let answer = super::answer(serde_json::json!({
        "shaft": super::round(2.875), "torque_factor": { "listed_shaft": {} },
        "installed": { "reading": super::gauge(5500.0, "ft_lbf") },
        "torsion": { "rating": super::q(5500.0, "ft_lbf") },
    }));
    // on the limit passes
    assert_eq!(
        super::status(&answer, "installed_torque_limit"),
        CheckStatus::Pass
    );
    assert_eq!(answer.verdict, Verdict::Accept);
}
