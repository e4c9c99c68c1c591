//! serde's own refusal as an issue: the place from `serde_path_to_error`, the code from
//! the beginning of the text. The fallback where walking the schemas finds nothing.

use bearwell_engine::catalogue::{RefusalDef, refusals};
use bearwell_engine::contract::Issue;
use serde::Deserialize;
use serde_path_to_error::{Path, Segment};

use super::pointer::Pointer;
use super::strict::{NOT_ONE, Strict};

/// What serde says is wrong with `text` as a `T`; `None` when nothing is.
pub fn located<'a, T: Deserialize<'a>>(text: &'a str) -> Option<Issue> {
    let mut json = serde_json::Deserializer::from_str(text);
    let error = serde_path_to_error::deserialize::<_, T>(Strict(&mut json)).err()?;
    Some(issue(&pointer(error.path()), &error.inner().to_string()))
}

fn pointer(path: &Path) -> Vec<String> {
    path.iter()
        .filter_map(|segment| match segment {
            Segment::Seq { index } => Some(index.to_string()),
            Segment::Map { key } => Some(key.clone()),
            Segment::Enum { variant } => Some(variant.clone()),
            Segment::Unknown => None,
        })
        .collect()
}

fn issue(path: &[String], text: &str) -> Issue {
    let (mut code, about) = code(text);
    let element = path
        .last()
        .is_some_and(|last| last.parse::<usize>().is_ok());
    if element && text.starts_with("invalid type: null") {
        code = &refusals::WRONG_TYPE;
    }
    let mut parts: Vec<&str> = path.iter().map(String::as_str).collect();
    let named = code == &refusals::UNKNOWN_MEMBER || code == &refusals::DUPLICATE_MEMBER;
    if named && parts.last().copied() != about {
        // a member that is taken off the top of a request is not in serde's path
        parts.extend(about);
    } else if code == &refusals::MISSING_MEMBER && text.starts_with("invalid type: null") {
        parts.pop();
    }
    let pointer = join(&parts);
    let detail = match text.rfind(" at line ") {
        Some(end) => &text[..end],
        None => text,
    };
    Issue::new(pointer, code, detail)
}

fn join(parts: &[&str]) -> String {
    let Some((last, before)) = parts.split_last() else {
        return String::new();
    };
    let mut place = Pointer::default();
    fn descend(place: &mut Pointer, before: &[&str], last: &str) -> String {
        match before.split_first() {
            Some((first, rest)) => place.inside(first, |place| descend(place, rest, last)),
            None => place.to(last),
        }
    }
    descend(&mut place, before, last)
}

/// The code for a text of serde, and the name it quotes.
fn code(text: &str) -> (&'static RefusalDef, Option<&str>) {
    const STARTS: &[(&str, &RefusalDef)] = &[
        ("unknown field", &refusals::UNKNOWN_MEMBER),
        ("missing field", &refusals::MISSING_MEMBER),
        ("duplicate field", &refusals::DUPLICATE_MEMBER),
        ("unknown variant", &refusals::UNKNOWN_CHOICE),
        ("unknown unit", &refusals::UNKNOWN_UNIT),
        ("number out of range", &refusals::NUMBER_OUT_OF_RANGE),
        ("invalid type: null", &refusals::MISSING_MEMBER),
        (NOT_ONE, &refusals::ONE_CHOICE_ONLY),
    ];
    let found = STARTS.iter().find(|(start, _)| text.starts_with(start));
    let quoted = text.split('`').nth(1);
    match found {
        Some((_, code)) => (code, quoted),
        None => (&refusals::WRONG_TYPE, quoted),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::probe::{GOOD, Request};
    use bearwell_engine::contract::Call;

    fn found(from: &str, to: &str) -> (String, String) {
        assert!(GOOD.contains(from), "{from}");
        let text = GOOD.replacen(from, to, 1);
        let issue = located::<Call<Request>>(&text).expect(to);
        (issue.pointer, issue.code.into_owned())
    }

    /// Pins the texts of serde, serde_json and the place found by serde_path_to_error.
    #[test]
    fn texts_become_codes() {
        for (from, to, pointer, code) in [
            ("\"quiet\"", "\"quite\"", "/quite", "unknown_member"),
            (
                "\"grade\": \"fine\"",
                "\"grade\": \"fin\"",
                "/grade",
                "unknown_choice",
            ),
            ("\"pushed\"", "\"pulled\"", "/method", "unknown_choice"),
            (
                "\"depth\"",
                "\"dpeth\"",
                "/plates/1/dpeth",
                "unknown_member",
            ),
            (
                "\"value\": 10, ",
                "",
                "/plates/0/diameter",
                "missing_member",
            ),
            (
                "\"value\": 10",
                "\"value\": null",
                "/plates/0/diameter",
                "missing_member",
            ),
            (
                "\"value\": 10",
                "\"value\": \"10\"",
                "/plates/0/diameter/value",
                "wrong_type",
            ),
            (
                "\"value\": 10",
                "\"value\": 1e400",
                "/plates/0/diameter/value",
                "number_out_of_range",
            ),
            (
                "\"kip\"",
                "\"lb\"",
                "/method/pushed/force/unit",
                "unknown_unit",
            ),
            (
                "\"quiet\": false",
                "\"quiet\": false, \"quiet\": true",
                "/quiet",
                "duplicate_member",
            ),
            (
                "{\"code\": \"1\"}",
                "{\"code\": \"1\", \"code\": \"2\"}",
                "/tags/code",
                "duplicate_member",
            ),
            (
                "{\"value\": 10, \"unit\": \"in\"}",
                "[10, \"in\"]",
                "/plates/0/diameter",
                "wrong_type",
            ),
            (
                "\"repeat_count\": 3",
                "\"repeat_count\": 3.5",
                "/repeat_count",
                "wrong_type",
            ),
            (
                "\"output_units\": \"si\"",
                "\"output_units\": \"metric\"",
                "/output_units",
                "unknown_choice",
            ),
        ] {
            assert_eq!(found(from, to), (pointer.into(), code.into()), "{to}");
        }
    }
}
