//! Every example of a calculation with a sheet can be drawn and keeps the rules of a
//! drawing, and the committed pictures are what is drawn. `BEARWELL_BLESS=1` writes them
//! anew.

mod common;

use std::path::{Path, PathBuf};

use bearwell_engine::contract::{Answer, Calculation, Call, Noun, Paper, Work, run};
use bearwell_engine::frost::FrostEmbedment;
use bearwell_engine::helix::HelixCapacity;
use bearwell_engine::job::InstallationJob;
use bearwell_engine::layout::PileLayout;
use bearwell_engine::load_test::LoadTest;
use bearwell_engine::quantity::System;
use bearwell_engine::record::InstallationRecord;
use bearwell_engine::relocation::PileRelocation;
use bearwell_engine::torque::TorqueCapacity;
use bearwell_engine::trace::Trace;
use bearwell_papers::{
    cab_card_svg, decision_svg, frost_svg, helix_svg, job_svg, layout_numbers_svg, layout_svg,
    load_test_svg, record_svg,
};
use common::judge;
use common::strokes::judge_strokes;

/// Examples of `pile-layout` whose pictures are committed.
const LAYOUTS: [(&str, Paper); 10] = [
    ("bayed-front", Paper::Letter),
    ("keep-outs", Paper::Letter),
    ("l-shaped-house", Paper::A4),
    ("linnet", Paper::Letter),
    ("linnet-search", Paper::Letter),
    ("pile-types-least-cost", Paper::Letter),
    ("sixty-pile-plan", Paper::Letter),
    ("sizerin", Paper::A4),
    ("slab-on-void-form", Paper::Letter),
    ("soil-zones", Paper::A4),
];
/// Examples of `pile-relocation` whose pictures are committed, as `decision-` and their name.
const DECISIONS: [(&str, Paper); 7] = [
    ("linnet", Paper::Letter),
    ("nothing-works", Paper::Letter),
    ("pipe-through-the-beam", Paper::A4),
    ("refused-and-redesigned", Paper::Letter),
    ("rock-at-the-corner", Paper::Letter),
    ("sizerin", Paper::A4),
    ("three-refused-in-a-row", Paper::Letter),
];
/// Examples of `helix-capacity` whose pictures are committed, as `helix-` and their name.
const HELICES: [(&str, Paper); 9] = [
    ("depth-curve-linnet", Paper::Letter),
    ("depth-curve-sizerin", Paper::A4),
    ("engineered-fill", Paper::A4),
    ("minimum-depth", Paper::Letter),
    ("perched-water", Paper::A4),
    ("sheet-fill-above-weak-below", Paper::A4),
    ("sheet-many-layers", Paper::A4),
    ("sheet-sixty-layers", Paper::Letter),
    ("sheet-tension-square-shaft", Paper::Letter),
];
/// Examples of `frost-embedment` whose pictures are committed, as `frost-` and their name.
const FROSTS: [(&str, Paper); 6] = [
    ("computed-frost-deeper", Paper::Letter),
    ("helix-in-frost", Paper::Letter),
    ("linnet", Paper::Letter),
    ("sizerin-corner", Paper::A4),
    ("swelling-uplift", Paper::Letter),
    ("void-too-thin", Paper::Letter),
];
/// Examples of `load-test` whose pictures are committed, as `load-test-` and their name.
const LOAD_TESTS: [(&str, Paper); 6] = [
    ("linnet", Paper::Letter),
    ("linnet-stopped-early", Paper::Letter),
    ("peak-passed", Paper::A4),
    ("plunging", Paper::A4),
    ("sizerin", Paper::A4),
    ("tension-wind", Paper::Letter),
];

/// Examples of `installation-record` whose pictures are committed, as `record-` and their name.
const RECORDS: [(&str, Paper); 3] = [
    ("linnet", Paper::Letter),
    ("linnet-keep-driving", Paper::Letter),
    ("linnet-stopped-on-debris", Paper::Letter),
];

/// Examples of `torque-capacity` whose cards for the cab are committed.
const CARDS: [(&str, Paper); 3] = [
    ("cab-card-differences", Paper::Letter),
    ("linnet-cab-card", Paper::Letter),
    ("sizerin-cab-card", Paper::A4),
];

/// Examples of `installation-job` whose pictures are committed, as `job-` and their name.
const JOBS: [(&str, Paper); 3] = [
    ("linnet", Paper::Letter),
    ("one-log-cannot-be-judged", Paper::Letter),
    ("sixty-piles", Paper::A4),
];

type Draw<C> = fn(&<C as Noun>::Request, &Answer<<C as Noun>::Outcome>, System, Paper) -> String;

fn openapi() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../openapi")
}

/// Names of the examples of a calculation, in order.
fn names(noun: &str) -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(openapi().join("examples").join(noun))
        .expect("the examples")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|e| e == "json"))
        .filter_map(|path| Some(path.file_stem()?.to_str()?.to_owned()))
        .filter(|name| !name.ends_with(".answer"))
        .collect();
    names.sort();
    names
}

fn example<C: Calculation>(name: &str) -> (Call<C::Request>, Answer<C::Outcome>) {
    let path = openapi().join(format!("examples/{}/{name}.json", C::NAME));
    let text = std::fs::read_to_string(&path).expect("an example");
    let call: Call<C::Request> = serde_json::from_str(&text).expect("a request");
    let answer = run::<C>(&call, Work::new(Trace::off(), None))
        .unwrap_or_else(|refusal| panic!("{name} is refused: {refusal:?}"));
    (call, answer)
}

/// Draws every example on both papers in both systems.
fn all_sheets<C: Calculation>(draw: Draw<C>, judge: fn(&str, &str), more_than: usize) {
    let names = names(C::NAME);
    assert!(names.len() > more_than, "{names:?}");
    for name in names {
        let (call, answer) = example::<C>(&name);
        for paper in [Paper::Letter, Paper::A4] {
            for system in [System::Si, System::UsCustomary] {
                judge(&name, &draw(&call.request, &answer, system, paper));
            }
        }
    }
}

fn committed<C: Calculation>(draw: Draw<C>, prefix: &str, pictures: &[(&str, Paper)]) {
    for (name, paper) in pictures {
        let (call, answer) = example::<C>(name);
        let svg = draw(&call.request, &answer, call.options.system(), *paper);
        let path = openapi().join(format!("pictures/{prefix}{name}.svg"));
        if std::env::var_os("BEARWELL_BLESS").is_some() {
            std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            std::fs::write(&path, &svg).expect("the picture is written");
        }
        let committed = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(committed == svg, "{prefix}{name}.svg is not what is drawn");
    }
}

#[test]
fn every_layout_makes_a_good_sheet() {
    let judge = |name: &str, svg: &str| {
        let sheet = judge(name, svg);
        judge_strokes(name, svg, &sheet);
    };
    all_sheets::<PileLayout>(layout_svg, judge, LAYOUTS.len());
    all_sheets::<PileLayout>(layout_numbers_svg, judge, LAYOUTS.len());
}

#[test]
fn every_relocation_makes_a_good_sheet() {
    let judge = |name: &str, svg: &str| {
        let sheet = judge(name, svg);
        judge_strokes(name, svg, &sheet);
    };
    all_sheets::<PileRelocation>(decision_svg, judge, DECISIONS.len());
}

#[test]
fn every_helix_capacity_makes_a_good_sheet() {
    let judge = |name: &str, svg: &str| {
        let sheet = judge(name, svg);
        judge_strokes(name, svg, &sheet);
    };
    all_sheets::<HelixCapacity>(helix_svg, judge, HELICES.len());
}

#[test]
fn every_frost_embedment_makes_a_good_sheet() {
    let judge = |name: &str, svg: &str| {
        let sheet = judge(name, svg);
        judge_strokes(name, svg, &sheet);
    };
    all_sheets::<FrostEmbedment>(frost_svg, judge, FROSTS.len());
}

#[test]
fn every_torque_capacity_makes_a_good_card() {
    let judge = |name: &str, svg: &str| {
        let sheet = judge(name, svg);
        judge_strokes(name, svg, &sheet);
    };
    all_sheets::<TorqueCapacity>(cab_card_svg, judge, CARDS.len());
}

#[test]
fn every_load_test_makes_a_good_sheet() {
    let judge = |name: &str, svg: &str| {
        let sheet = judge(name, svg);
        judge_strokes(name, svg, &sheet);
    };
    all_sheets::<LoadTest>(load_test_svg, judge, LOAD_TESTS.len());
}

#[test]
fn every_installation_record_makes_a_good_sheet() {
    let judge = |name: &str, svg: &str| {
        let sheet = judge(name, svg);
        judge_strokes(name, svg, &sheet);
    };
    all_sheets::<InstallationRecord>(record_svg, judge, RECORDS.len());
}

#[test]
fn every_installation_job_makes_a_good_sheet() {
    let judge = |name: &str, svg: &str| {
        let sheet = judge(name, svg);
        judge_strokes(name, svg, &sheet);
    };
    all_sheets::<InstallationJob>(job_svg, judge, JOBS.len());
}

#[test]
fn committed_pictures_are_what_is_drawn() {
    committed::<PileLayout>(layout_svg, "", &LAYOUTS);
    committed::<PileRelocation>(decision_svg, "decision-", &DECISIONS);
    committed::<HelixCapacity>(helix_svg, "helix-", &HELICES);
    committed::<FrostEmbedment>(frost_svg, "frost-", &FROSTS);
    committed::<InstallationRecord>(record_svg, "record-", &RECORDS);
    committed::<TorqueCapacity>(cab_card_svg, "", &CARDS);
    committed::<InstallationJob>(job_svg, "job-", &JOBS);
    committed::<LoadTest>(load_test_svg, "load-test-", &LOAD_TESTS);
}
