//! Reading of tables: place and code of every fault, and that the walk finds one wherever
//! serde refuses.

use std::sync::OnceLock;

use bearwell_engine::contract::Call;
use bearwell_engine::quantity::{Length, Torque};
use bearwell_engine::table::{Column, Columns, Table};
use proptest::prelude::*;
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use utoipa::ToSchema;
use validator::Validate;

use super::*;
use crate::schemas::{collect, collect_shared};

#[derive(Debug, Clone, PartialEq)]
struct LogColumns;

impl Columns for LogColumns {
    const NAME: &'static str = "ProbeLog";
    const ABOUT: &'static str = "A log.";
    const ALL: &'static [Column] = &[
        Column::required::<Length>("depth", "0 to 100 m.", 0.0, 100.0),
        Column::optional::<Torque>("torque", "0 to 1 kN m.", 0.0, 1000.0),
    ];
    const LEAST_ROWS: usize = 1;
    const MOST_ROWS: usize = 4;
}

type ProbeLog = Table<LogColumns>;

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate, ToSchema)]
#[schema(as = ProbeTableRequest)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// The log.
    #[validate(nested)]
    log: ProbeLog,
}

const GOOD: &str = r#"{"log": {"columns": [{"name": "torque", "unit": "ft_lbf"}, {"name": "depth", "unit": "ft"}],
    "rows": [[100, 1], [null, 2], [350, 3.5]]}}"#;

fn schemas() -> &'static Schemas {
    static ONCE: OnceLock<Schemas> = OnceLock::new();
    ONCE.get_or_init(|| {
        let mut named = Vec::new();
        let name = collect::<Asked>(&mut named);
        collect_shared(&mut named);
        let mut schemas = Schemas::default();
        schemas.add(named);
        schemas.share(&name);
        schemas
    })
}

fn shape() -> Shape<'static> {
    Shape {
        schemas: schemas(),
        root: schemas().get("ProbeTableRequest").unwrap(),
        nesting: NESTING,
    }
}

/// Place and code of each fault of the shape.
fn faults(text: &str) -> Vec<(String, String)> {
    let problem = parse::<Call<Asked>>(text.as_bytes(), shape()).expect_err(text);
    assert_eq!(problem.status, 422);
    let found = problem.errors.into_iter();
    found.map(|i| (i.pointer, i.code.into_owned())).collect()
}

#[test]
fn each_fault_has_its_place() {
    assert!(parse::<Call<Asked>>(GOOD.as_bytes(), shape()).is_ok());
    for (from, to, places) in [
        (
            "\"depth\"",
            "\"dpeth\"",
            vec![
                ("/log", "missing_member"),
                ("/log/columns/1/name", "unknown_choice"),
            ],
        ),
        (
            "\"torque\"",
            "\"depth\"",
            vec![
                ("/log/columns/0/unit", "unknown_unit"),
                ("/log/columns/1/name", "duplicate_member"),
                ("/log/rows/1/0", "wrong_type"),
            ],
        ),
        (
            "\"ft_lbf\"",
            "\"lb\"",
            vec![("/log/columns/0/unit", "unknown_unit")],
        ),
        (
            "\"ft\"",
            "\"kN\"",
            vec![("/log/columns/1/unit", "unknown_unit")],
        ),
        (
            "\"unit\": \"ft\"",
            "\"unti\": \"ft\"",
            vec![
                ("/log/columns/1", "missing_member"),
                ("/log/columns/1/unti", "unknown_member"),
            ],
        ),
        ("[100, 1]", "[100]", vec![("/log/rows/0", "list_too_short")]),
        (
            "[100, 1]",
            "[100, 1, 2]",
            vec![("/log/rows/0", "list_too_long")],
        ),
        (
            "[100, 1]",
            "[100, null]",
            vec![("/log/rows/0/1", "wrong_type")],
        ),
        (
            "[100, 1]",
            "[\"100\", 1]",
            vec![("/log/rows/0/0", "wrong_type")],
        ),
        (
            "[100, 1]",
            "[1e999, 1]",
            vec![("/log/rows/0/0", "number_out_of_range")],
        ),
        ("[100, 1]", "7", vec![("/log/rows/0", "wrong_type")]),
        (
            "\"rows\"",
            "\"row\"",
            vec![("/log", "missing_member"), ("/log/row", "unknown_member")],
        ),
        (
            ", {\"name\": \"depth\", \"unit\": \"ft\"}",
            "",
            vec![
                ("/log", "missing_member"),
                ("/log/rows/0", "list_too_long"),
                ("/log/rows/1", "list_too_long"),
                ("/log/rows/2", "list_too_long"),
            ],
        ),
    ] {
        assert!(GOOD.contains(from), "{from}");
        let found = faults(&GOOD.replacen(from, to, 1));
        let want: Vec<_> = places
            .iter()
            .map(|(p, c)| ((*p).to_owned(), (*c).to_owned()))
            .collect();
        assert_eq!(found, want, "{from} -> {to}");
    }
}

#[test]
fn a_cell_out_of_its_range_is_told_in_its_own_units() {
    let text = GOOD.replacen("350", "-350", 1);
    let call: Call<Asked> = parse(text.as_bytes(), shape()).unwrap();
    let found = ranges::ranges(&call.request, schemas(), shape().root);
    assert_eq!(found.len(), 1);
    let (pointer, code) = (&*found[0].pointer, &*found[0].code);
    assert_eq!((pointer, code), ("/log/rows/2/0", "below_minimum"));
    // -350 ft lbf in kN m: 0.35 x 1.3558179483
    assert_eq!(
        found[0].detail,
        "-0.474536282 kN_m (-350 ft_lbf) is below 0 kN_m (0 ft_lbf)"
    );
}

#[test]
fn the_schema_takes_what_is_read_and_nothing_else() {
    let root = json!({
        "$ref": "#/components/schemas/ProbeTableRequest",
        "components": { "schemas": schemas().all() },
    });
    let validator = jsonschema::validator_for(&root).unwrap();
    assert!(validator.is_valid(&serde_json::from_str(GOOD).unwrap()));
    for (from, to) in [
        ("\"depth\"", "\"dpeth\""),
        ("\"torque\"", "\"depth\""),
        ("\"ft_lbf\"", "\"lb\""),
        ("\"ft\"", "\"kN\""),
        (", {\"name\": \"depth\", \"unit\": \"ft\"}", ""),
        ("[100, 1]", "[\"100\", 1]"),
        ("[100, 1]", "[100, 1, 2]"),
    ] {
        let text = GOOD.replacen(from, to, 1);
        let value: Value = serde_json::from_str(&text).unwrap();
        assert!(!validator.is_valid(&value), "{text}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Whenever serde refuses a table, the walk finds a fault in it.
    #[test]
    fn the_walk_finds_what_serde_refuses(
        heads in prop::collection::vec((
            prop::sample::select(vec!["\"depth\"", "\"torque\"", "\"depht\"", "3", "null"]),
            prop::sample::select(vec!["\"ft\"", "\"m\"", "\"N_m\"", "\"lb\"", "[]"]),
        ), 0..4),
        rows in prop::collection::vec(
            prop::collection::vec(prop::sample::select(vec!["1", "2.5", "null", "\"3\"", "[]"]), 0..4),
            0..4,
        ),
    ) {
        let heads: Vec<_> = heads.iter().map(|(n, u)| format!("{{\"name\": {n}, \"unit\": {u}}}")).collect();
        let rows: Vec<_> = rows.iter().map(|cells| format!("[{}]", cells.join(", "))).collect();
        let text = format!(
            "{{\"log\": {{\"columns\": [{}], \"rows\": [{}]}}}}",
            heads.join(", "),
            rows.join(", ")
        );
        let refused = serde_json::from_str::<Call<Asked>>(&text).is_err();
        let found = explain(&text, shape()).unwrap();
        prop_assert_eq!(refused, !found.is_empty(), "{}\n{:?}", text, found);
        prop_assert!(found.iter().all(|i| i.pointer.starts_with("/log")));
    }
}
