//! Builds the examples into the program, in the order of their names.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs};

fn main() {
    let root =
        PathBuf::from(env::var("CARGO_MANIFEST_DIR").unwrap()).join("../../openapi/examples");
    println!("cargo:rerun-if-changed={}", root.display());
    let mut out = String::from(
        "/// Every example, by calculation and name.\npub static EXAMPLES: &[Example] = &[\n",
    );
    for noun in sorted(&root) {
        let name = noun.file_name().unwrap().to_string_lossy().into_owned();
        list(&noun, &name, false, &mut out);
        list(&noun.join("refused"), &name, true, &mut out);
    }
    out.push_str("];\n");
    let target = PathBuf::from(env::var("OUT_DIR").unwrap()).join("examples.rs");
    fs::write(target, out).unwrap();
}

fn list(folder: &Path, noun: &str, refused: bool, out: &mut String) {
    println!("cargo:rerun-if-changed={}", folder.display());
    let ending = if refused { "problem" } else { "answer" };
    for file in sorted(folder) {
        let file_name = file.file_name().unwrap().to_string_lossy().into_owned();
        let Some(name) = file_name.strip_suffix(".json") else {
            continue;
        };
        if name.ends_with(".answer") || name.ends_with(".problem") {
            continue;
        }
        let golden = built_in(&folder.join(format!("{name}.{ending}.json")));
        let csv = built_in(&folder.join(format!("{name}.csv")));
        println!("cargo:rerun-if-changed={}", file.display());
        writeln!(
            out,
            "Example {{ noun: {noun:?}, name: {name:?}, refused: {refused}, request: include_bytes!({file:?}), csv: {csv}, golden: {golden} }},"
        )
        .unwrap();
    }
}

/// The bytes of a file that may be there.
fn built_in(file: &Path) -> String {
    if !file.exists() {
        return "None".to_owned();
    }
    println!("cargo:rerun-if-changed={}", file.display());
    format!("Some(include_bytes!({file:?}))")
}

fn sorted(folder: &Path) -> Vec<PathBuf> {
    let mut all: Vec<PathBuf> = match fs::read_dir(folder) {
        Ok(entries) => entries.map(|entry| entry.unwrap().path()).collect(),
        Err(_) => Vec::new(),
    };
    all.sort();
    all
}
