//! The JSON of the writer against that of `serde_json`.

use std::collections::BTreeMap;

use proptest::prelude::*;
use serde::Serialize;
use serde_json::Value;

use super::{In, Presentation};

/// As it stands: plain SI, every bit.
fn plain<T: Serialize>(value: &T) -> Result<String, serde_json::Error> {
    In(Presentation::Digest, value).text()
}

fn any_value() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        any::<String>().prop_map(Value::from),
        "[ -~\\t\\n\\x00-\\x1f]{0,40}".prop_map(Value::from),
    ];
    leaf.prop_recursive(4, 60, 6, |inner| {
        prop_oneof![
            proptest::collection::vec(inner.clone(), 0..6).prop_map(Value::from),
            proptest::collection::btree_map(any::<String>(), inner, 0..6)
                .prop_map(|map| map.into_iter().collect()),
        ]
    })
}

proptest! {
    #[test]
    fn any_value_is_written_as_by_serde_json(value in any_value()) {
        prop_assert_eq!(plain(&value).unwrap(), serde_json::to_string(&value).unwrap());
    }
}

#[derive(Serialize)]
struct Unit;

#[derive(Serialize)]
struct Pair(u8, i16);

#[derive(Serialize)]
struct Wrapped(f32);

#[derive(Serialize)]
enum Choice {
    Plain,
    One(char),
    Two(u16, Option<i8>),
    Named { first: u32, second: Vec<Choice> },
}

#[derive(Serialize)]
struct All<'a> {
    unit: Unit,
    pair: Pair,
    wrapped: Wrapped,
    tuple: (bool, (), i32),
    choices: [Choice; 5],
    #[serde(skip_serializing_if = "Option::is_none")]
    left_out: Option<u8>,
    empty: Vec<u8>,
    map: BTreeMap<&'a str, u64>,
    chars: [char; 2],
}

#[test]
fn every_shape_is_written_as_by_serde_json() {
    let all = All {
        unit: Unit,
        pair: Pair(7, -300),
        wrapped: Wrapped(0.5),
        tuple: (true, (), -9),
        choices: [
            Choice::Plain,
            Choice::One('"'),
            Choice::Two(65_535, None),
            Choice::Two(1, Some(-128)),
            Choice::Named {
                first: 0,
                second: vec![Choice::Plain, Choice::One('\u{1}')],
            },
        ],
        left_out: None,
        empty: Vec::new(),
        map: [("a", 1), ("quoted \"b\"", u64::MAX)].into(),
        chars: ['\\', 'é'],
    };
    assert_eq!(plain(&all).unwrap(), serde_json::to_string(&all).unwrap());
}

#[test]
fn the_name_of_a_member_is_a_text() {
    let map: BTreeMap<u8, u8> = [(1, 2)].into();
    assert!(plain(&map).is_err());
}
