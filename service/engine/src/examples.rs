//! The example requests on disk and the stages a request passes through, for the tests of
//! all calculations. What is expected of an example stands with its calculation.

use std::fs;
use std::path::Path;

use validator::Validate;

use crate::contract::{Answer, Calculation, Call, Noun, Refusal, Work, run};
use crate::quantity::{In, Presentation, System};
use crate::trace::Trace;

/// Name and text of every request under `openapi/examples/<noun>/<below>`, sorted.
pub(crate) fn requests<N: Noun>(below: &str) -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../openapi/examples")
        .join(N::NAME)
        .join(below);
    let mut found: Vec<_> = fs::read_dir(&folder)
        .unwrap_or_else(|e| panic!("{}: {e}", folder.display()))
        .map(|entry| entry.expect("an entry").path())
        .filter_map(|path| {
            let name = path
                .file_name()?
                .to_str()?
                .strip_suffix(".json")?
                .to_owned();
            let generated = name.ends_with(".answer") || name.ends_with(".problem");
            (!generated).then(|| (name, fs::read_to_string(&path).expect("a text")))
        })
        .collect();
    found.sort();
    assert!(found.len() > 10, "{} holds too few", folder.display());
    found
}

/// The text of one example that is answered.
pub(crate) fn request<N: Noun>(name: &str) -> String {
    let mut all = requests::<N>("").into_iter();
    let found = all.find(|(n, _)| n == name);
    found.unwrap_or_else(|| panic!("no example {name}")).1
}

/// A request and its answer.
pub(crate) type Answered<C> = (Call<<C as Noun>::Request>, Answer<<C as Noun>::Outcome>);

/// Runs a request through every stage; where it is stopped, the stage (`shape`, `lengths`,
/// `values`, `physics`) and what was found there. An answer is held to what all answers keep.
pub(crate) fn through<C: Calculation>(
    text: &str,
    trace: Trace,
) -> Result<Answered<C>, (&'static str, String)> {
    let call: Call<C::Request> =
        serde_json::from_str(text).map_err(|e| ("shape", e.to_string()))?;
    let mut issues = Vec::new();
    C::lengths(&call.request, &mut issues);
    if !issues.is_empty() {
        return Err(("lengths", codes(&Refusal::of(issues))));
    }
    let ranges = call.request.validate();
    ranges.map_err(|e| ("values", format!("{e:?}")))?;
    match run::<C>(&call, Work::new(trace, None)) {
        Ok(answer) => {
            for system in [System::Si, System::UsCustomary] {
                let form = Presentation::Printed(system);
                let printed = In(form, &answer).text().expect("it prints");
                assert!(!printed.contains("null"), "{printed}");
            }
            assert!(!answer.methods.is_empty() && !answer.cautions.is_empty());
            // the plain forms read back as the same answer and request: what a client relies on
            let plain = serde_json::to_string(&answer.result).expect("it prints");
            let back: C::Outcome = serde_json::from_str(&plain).expect("an outcome");
            assert_eq!(serde_json::to_string(&back).expect("it prints"), plain);
            let sent = serde_json::to_string(&call).expect("it prints");
            let back: Call<C::Request> = serde_json::from_str(&sent).expect("a request");
            assert_eq!(serde_json::to_string(&back).expect("it prints"), sent);
            Ok((call, answer))
        }
        Err(refusal) => Err(("physics", codes(&refusal))),
    }
}

/// The codes of a refusal, in order.
pub(crate) fn codes(refusal: &Refusal) -> String {
    let codes: Vec<_> = refusal.issues.iter().map(|i| i.code.as_ref()).collect();
    codes.join(" ")
}

/// Each refused example stops at its stage, and what is found there holds its mark. The
/// list is that of the folder, in order.
pub(crate) fn refused_as<C: Calculation>(expected: &[(&str, &str, &str)]) {
    let files = requests::<C>("refused");
    let names: Vec<_> = files.iter().map(|(name, _)| name.as_str()).collect();
    let listed: Vec<_> = expected.iter().map(|e| e.0).collect();
    assert_eq!(names, listed, "each refused example has its line");
    for ((name, text), (_, stage, mark)) in files.iter().zip(expected) {
        match through::<C>(text, Trace::off()) {
            Ok(_) => panic!("{name} is answered"),
            Err((at, found)) => {
                assert_eq!(at, *stage, "{name}: {found}");
                assert!(found.contains(mark), "{name}: {found}");
            }
        }
    }
}
