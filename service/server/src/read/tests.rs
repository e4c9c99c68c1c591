//! Reading of bodies: every fault of a stage at once, and agreement of the walk along
//! the schemas with serde itself.

use std::sync::OnceLock;

use bearwell_engine::contract::Call;
use proptest::prelude::*;
use serde_json::Value;

use super::*;
use crate::probe::{GOOD, Probe, Request};
use crate::schemas::collect;

fn schemas() -> &'static Schemas {
    static ONCE: OnceLock<Schemas> = OnceLock::new();
    ONCE.get_or_init(|| {
        let mut named = Vec::new();
        let name = collect::<Request>(&mut named);
        crate::schemas::collect_shared(&mut named);
        let mut schemas = Schemas::default();
        schemas.add(named);
        schemas.share(&name);
        schemas
    })
}

fn read(text: &str) -> Result<Call<Request>, Problem> {
    request::<Probe>(text.as_bytes(), schemas(), |_| None)
}

fn swapped(changes: &[(&str, &str)]) -> String {
    changes.iter().fold(GOOD.to_owned(), |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replacen(from, to, 1)
    })
}

/// Stage, then place and code of each fault.
fn faults(text: &str) -> (u16, Vec<(String, String)>) {
    let problem = read(text).expect_err(text);
    let found = problem.errors.into_iter();
    (
        problem.status,
        found.map(|i| (i.pointer, i.code.into_owned())).collect(),
    )
}

fn listed(pairs: &[(&str, &str)]) -> Vec<(String, String)> {
    let owned = |(p, c): &(&str, &str)| ((*p).to_owned(), (*c).to_owned());
    pairs.iter().map(owned).collect()
}

#[test]
fn a_good_request_is_read() {
    let call = read(GOOD).unwrap();
    assert!(call.options.steps());
    assert_eq!(call.request.plates.len(), 2);
}

#[test]
fn all_faults_of_the_shape_come_at_once() {
    let text = swapped(&[
        ("\"label\"", "\"lable\""),
        ("\"value\": 10, ", ""),
        ("\"mm\"", "\"lb\""),
        ("\"depth\"", "\"dpeth\""),
        ("\"value\": 12.5", "\"value\": 1e400"),
        ("\"fine\"", "\"fin\""),
        ("\"repeat_count\": 3", "\"repeat_count\": -3"),
        ("\"quiet\": false", "\"quiet\": \"no\", \"quiet\": 1"),
        ("\"si\"", "\"metric\""),
    ]);
    let want = listed(&[
        ("/grade", "unknown_choice"),
        ("/lable", "unknown_member"),
        ("/method/pushed/force/value", "number_out_of_range"),
        ("/output_units", "unknown_choice"),
        ("/plates/0/diameter", "missing_member"),
        ("/plates/1/diameter/unit", "unknown_unit"),
        ("/plates/1/dpeth", "unknown_member"),
        ("/quiet", "duplicate_member"),
        ("/quiet", "wrong_type"),
        ("/repeat_count", "below_minimum"),
    ]);
    assert_eq!(faults(&text), (422, want));
}

#[test]
fn a_name_is_suggested_and_a_unit_explained() {
    let text = swapped(&[("\"label\"", "\"lable\""), ("\"kip\"", "\"lb\"")]);
    let problem = read(&text).unwrap_err();
    assert!(problem.errors[0].detail.contains("did you mean `label`?"));
    assert!(problem.errors[1].detail.contains("`lbf` or `kip`"));
}

#[test]
fn alternatives_are_exactly_one() {
    for (method, code) in [
        ("{}", "one_choice_only"),
        (
            r#"{"by_hand": {}, "pushed": {"force": {"value": 1, "unit": "kN"}}}"#,
            "one_choice_only",
        ),
        (r#"{"by_foot": {}}"#, "unknown_choice"),
        (r#"{"by_hand": null}"#, "missing_member"),
        (r#""by_hand""#, "wrong_type"),
        ("3", "wrong_type"),
    ] {
        let text = swapped(&[(
            r#"{"pushed": {"force": {"value": 12.5, "unit": "kip"}}}"#,
            method,
        )]);
        assert_eq!(
            faults(&text),
            (422, listed(&[("/method", code)])),
            "{method}"
        );
    }
    let text = swapped(&[(
        r#""method": {"pushed": {"force": {"value": 12.5, "unit": "kip"}}},"#,
        "\"method\": null,",
    )]);
    assert_eq!(faults(&text), (422, listed(&[("", "missing_member")])));
}

#[test]
fn a_choice_without_content_is_a_text() {
    let text = swapped(&[("\"si\"", "{\"si\": null}"), ("\"fine\"", "{\"fine\": {}}")]);
    let want = [("/grade", "wrong_type"), ("/output_units", "wrong_type")];
    assert_eq!(faults(&text), (422, listed(&want)));
}

#[test]
fn what_is_not_json_is_400() {
    for text in [
        "",
        "{",
        "nul",
        "{\"a\": 1,}",
        "{} {}",
        "{\"label\": \"\\ud800\"}",
        "NaN",
        "{\"a\": Infinity}",
    ] {
        assert_eq!(faults(text), (400, listed(&[("", "not_json")])), "{text}");
    }
    let problem = request::<Probe>(b"{\"label\": \"\xff\"}", schemas(), |_| None).unwrap_err();
    assert_eq!(problem.status, 400);
}

#[test]
fn json_that_is_no_request_is_422() {
    for text in ["[]", "3", "null", "\"x\""] {
        assert_eq!(faults(text), (422, listed(&[("", "wrong_type")])), "{text}");
    }
    let deep = format!("{}{}", "[".repeat(1000), "]".repeat(1000));
    assert_eq!(faults(&deep), (422, listed(&[("", "nested_too_deep")])));
    let braces = format!("{{\"label\": \"{}\"}}", "[{".repeat(40));
    assert_ne!(faults(&braces).1[0].1, "nested_too_deep");
}

#[test]
fn a_struct_is_not_read_from_a_list() {
    let text = swapped(&[(r#"{"value": 10, "unit": "in"}"#, r#"[10, "in"]"#)]);
    assert_eq!(
        faults(&text),
        (422, listed(&[("/plates/0/diameter", "wrong_type")]))
    );
    let text = swapped(&[(r#""code": "1""#, r#""code": "1", "code": "2""#)]);
    assert_eq!(
        faults(&text),
        (422, listed(&[("/tags/code", "duplicate_member")]))
    );
}

#[test]
fn lengths_come_before_ranges_and_ranges_all_at_once() {
    let text = swapped(&[(
        "\"plates\": [",
        "\"plates\": [{\"diameter\": {\"value\": 1, \"unit\": \"mm\"}}, {\"diameter\": {\"value\": 1, \"unit\": \"mm\"}},",
    )]);
    assert_eq!(
        faults(&text),
        (422, listed(&[("/plates", "list_too_long")]))
    );

    let text = swapped(&[
        ("\"label\": \"p\"", "\"label\": \"\""),
        ("\"value\": 10", "\"value\": 1"),
        ("\"value\": 2,", "\"value\": 200,"),
        ("\"value\": 12.5", "\"value\": -1"),
        ("\"scale_factor\": 2", "\"scale_factor\": 20"),
        ("\"output_units\": \"si\"", "\"require_basis\": \"1999.1\""),
    ]);
    let problem = read(&text).unwrap_err();
    let found: Vec<_> = problem
        .errors
        .iter()
        .map(|i| (&*i.pointer, &*i.code, i.limit.as_deref().unwrap_or("-")))
        .collect();
    assert_eq!(
        found,
        [
            ("/label", "text_length", "-"),
            ("/method/pushed/force", "below_minimum", "1 kN (224.8 lbf)"),
            ("/plates/0/diameter", "below_minimum", "100 mm (3.937 in)"),
            ("/plates/1/depth", "above_maximum", "30 m (98.43 ft)"),
            ("/require_basis", "basis_differs", CALCULATION_BASIS),
            ("/scale_factor", "above_maximum", "10"),
        ]
    );
    assert_eq!(
        problem.errors[2].detail,
        "25.4 mm (1 in) is below 100 mm (3.937 in)"
    );
}

/// Replaces one value somewhere in the request, or removes, renames or doubles a member.
fn spoil(value: &Value, path: &mut impl Iterator<Item = usize>, with: &str) -> String {
    let step = path.next().unwrap_or(0);
    match value {
        Value::Object(members) if step > 0 && !members.is_empty() => {
            let at = step % members.len();
            let parts = members
                .iter()
                .enumerate()
                .map(|(i, (name, inner))| match i == at {
                    true => match with {
                        "remove" if !matches!(inner, Value::Object(_) | Value::Array(_)) => {
                            String::new()
                        }
                        "double" => format!("\"{name}\": {inner}, \"{name}\": {inner}"),
                        "rename" => format!("\"{name}x\": {inner}"),
                        with => format!("\"{name}\": {}", spoil(inner, path, with)),
                    },
                    false => format!("\"{name}\": {inner}"),
                });
            let parts: Vec<_> = parts.filter(|p| !p.is_empty()).collect();
            format!("{{{}}}", parts.join(", "))
        }
        Value::Array(items) if step > 0 && !items.is_empty() => {
            let at = step % items.len();
            let parts: Vec<_> = (items.iter().enumerate())
                .map(|(i, inner)| {
                    if i == at {
                        spoil(inner, path, with)
                    } else {
                        inner.to_string()
                    }
                })
                .collect();
            format!("[{}]", parts.join(", "))
        }
        _ => match with {
            "remove" | "double" | "rename" => "{\"x\": 1}".to_owned(),
            with => with.to_owned(),
        },
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 3000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whenever serde refuses a body that is JSON, the walk finds a fault at the place
    /// where serde found one. (Codes can differ: serde has one text for several faults.)
    #[test]
    fn the_walk_agrees_with_serde(
        path in prop::collection::vec(0usize..8, 6),
        with in prop::sample::select(vec![
            "null", "3", "-1", "3.5", "1e400", "\"text\"", "[]", "{}", "true", "[1]", "{\"a\": 1}",
            "{\"a\": 1, \"b\": 2}", "99999999999999999999", "remove", "double", "rename",
        ]),
    ) {
        let good: Value = serde_json::from_str(GOOD).unwrap();
        let text = spoil(&good, &mut path.into_iter(), with);
        let name = <Request as utoipa::ToSchema>::name();
        let shape = Shape { schemas: schemas(), root: schemas().get(&name).unwrap(), nesting: NESTING };
        let Some(said) = located::located::<Call<Request>>(&text) else {
            return Ok(());
        };
        let found = explain(&text, shape).unwrap();
        let parent = said.pointer.rsplit_once('/').map_or("", |(parent, _)| parent);
        let agrees = |i: &Issue| {
            i.pointer == said.pointer || (i.code == "missing_member" && i.pointer == parent)
        };
        prop_assert!(found.iter().any(agrees), "{text}\nserde: {said:?}\nwalk: {found:?}");
    }
}
