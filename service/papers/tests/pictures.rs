//! Every example of `pile-layout` can be drawn and keeps the rules of a drawing, and the
//! committed pictures are what is drawn. `BEARWELL_BLESS=1` writes them anew.

mod common;

use std::path::{Path, PathBuf};

use bearwell_engine::contract::{Answer, Call, Paper, Work, run};
use bearwell_engine::layout::{Outcome, PileLayout, Request};
use bearwell_engine::quantity::System;
use bearwell_engine::trace::Trace;
use bearwell_papers::layout_svg;
use common::judge;

/// Examples whose pictures are committed.
const PICTURES: [(&str, Paper); 3] = [
    ("linnet", Paper::Letter),
    ("linnet-search", Paper::Letter),
    ("sizerin", Paper::A4),
];

fn openapi() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../openapi")
}

/// Names of the examples, in order.
fn names() -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(openapi().join("examples/pile-layout"))
        .expect("the examples")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|e| e == "json"))
        .filter_map(|path| Some(path.file_stem()?.to_str()?.to_owned()))
        .filter(|name| !name.ends_with(".answer"))
        .collect();
    names.sort();
    names
}

fn example(name: &str) -> (Call<Request>, Answer<Outcome>) {
    let path = openapi().join(format!("examples/pile-layout/{name}.json"));
    let text = std::fs::read_to_string(&path).expect("an example");
    let call: Call<Request> = serde_json::from_str(&text).expect("a request");
    let answer = run::<PileLayout>(&call, Work::new(Trace::off(), None))
        .unwrap_or_else(|refusal| panic!("{name} is refused: {refusal:?}"));
    (call, answer)
}

#[test]
fn every_example_makes_a_good_sheet() {
    let names = names();
    assert!(names.len() > PICTURES.len(), "{names:?}");
    for name in names {
        let (call, answer) = example(&name);
        for paper in [Paper::Letter, Paper::A4] {
            for system in [System::Si, System::UsCustomary] {
                let svg = layout_svg(&call.request, &answer, system, paper);
                judge(&name, &svg);
            }
        }
    }
}

#[test]
fn committed_pictures_are_what_is_drawn() {
    for (name, paper) in PICTURES {
        let (call, answer) = example(name);
        let svg = layout_svg(&call.request, &answer, call.options.system(), paper);
        let path = openapi().join(format!("pictures/{name}.svg"));
        if std::env::var_os("BEARWELL_BLESS").is_some() {
            std::fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            std::fs::write(&path, &svg).expect("the picture is written");
        }
        let committed = std::fs::read_to_string(&path).unwrap_or_default();
        assert!(committed == svg, "{name}.svg is not what is drawn");
    }
}
