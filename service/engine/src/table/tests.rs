//! Tables: order and unit of columns, what is refused, ranges, the plain form.

use proptest::prelude::*;
use serde_json::{Value, json};

use super::*;
use crate::quantity::{ForceUnit, Length, LengthUnit, Torque};

#[derive(Debug, Clone, PartialEq)]
struct LogColumns;

const DEPTH: usize = 0;
const TORQUE: usize = 1;

impl Columns for LogColumns {
    const NAME: &'static str = "TableOfTest";
    const ABOUT: &'static str = "A table of the tests.";
    const ALL: &'static [Column] = &[
        Column::required::<Length>("depth", "0 to 100 m.", 0.0, 100.0),
        Column::optional::<Torque>("torque", "0 to 1 kN m.", 0.0, 1000.0),
    ];
    const LEAST_ROWS: usize = 1;
    const MOST_ROWS: usize = 3;
}

fn read(json: Value) -> Result<Table<LogColumns>, String> {
    serde_json::from_value(json).map_err(|e| e.to_string())
}

fn table(columns: Value, rows: Value) -> Value {
    json!({ "columns": columns, "rows": rows })
}

fn depth(unit: &str) -> Value {
    json!({ "name": "depth", "unit": unit })
}

fn torque(unit: &str) -> Value {
    json!({ "name": "torque", "unit": unit })
}

#[test]
fn units_are_per_column_and_columns_in_any_order() {
    let t = read(table(
        json!([torque("ft_lbf"), depth("ft")]),
        json!([[350, 1], [null, 2]]),
    ))
    .unwrap();
    assert_eq!(t.len(), 2);
    assert_eq!(
        t.value::<Length>(0, DEPTH),
        Some(Length::new(1.0, LengthUnit::Ft))
    );
    // 350 ft lbf = 350 x 4.4482216152605 N x 0.3048 m, both exact
    let expected = 350.0 * 4.448_221_615_260_5 * 0.3048;
    let got = t.value::<Torque>(0, TORQUE).unwrap().si();
    assert!((got / expected - 1.0).abs() < 1e-15, "{got}");
    assert_eq!(t.value::<Torque>(1, TORQUE), None);
    assert_eq!(t.value::<Length>(2, DEPTH), None);
    // pointers count the columns as they were sent
    assert_eq!(t.cell_pointer(1, DEPTH), "/rows/1/1");
    assert_eq!(t.cell_pointer(1, TORQUE), "/rows/1/0");
}

#[test]
fn a_column_may_be_left_out() {
    let t = read(table(json!([depth("m")]), json!([[1], [2.5]]))).unwrap();
    assert!(t.has(DEPTH) && !t.has(TORQUE) && !t.is_empty());
    assert_eq!(t.value::<Torque>(0, TORQUE), None);
    assert_eq!(t.cell_pointer(1, TORQUE), "/rows/1");
    let plain = serde_json::to_value(&t).unwrap();
    assert_eq!(plain, table(json!([depth("m")]), json!([[1.0], [2.5]])));
}

#[test]
fn what_is_no_table_is_refused() {
    let d = || depth("m");
    for (columns, rows, said) in [
        (
            json!([d(), { "name": "dpeth", "unit": "m" }]),
            json!([[1, 2]]),
            "unknown variant `dpeth`",
        ),
        (
            json!([d(), d()]),
            json!([[1, 2]]),
            "duplicate column `depth`",
        ),
        (json!([torque("N_m")]), json!([[1]]), "missing"),
        (json!([depth("kN")]), json!([[1]]), "unknown unit `kN`"),
        (json!([depth("feet")]), json!([[1]]), "write `ft`"),
        (
            json!([d()]),
            json!([[1], [1, 2]]),
            "row 1 has 2 numbers, not 1",
        ),
        (json!([d()]), json!([[]]), "row 0 has 0 numbers, not 1"),
        (json!([d()]), json!([[null]]), "missing"),
        (json!([d()]), json!([["1"]]), "invalid type: string"),
        (json!([d()]), json!([[[1]]]), "invalid type: sequence"),
        (json!([d()]), json!([3]), "invalid type: integer"),
        (
            json!([{ "name": "depth" }]),
            json!([[1]]),
            "missing field `unit`",
        ),
        (
            json!([{ "name": "depth", "unit": "m", "label": "x" }]),
            json!([[1]]),
            "unknown field `label`",
        ),
    ] {
        let error = read(table(columns, rows)).unwrap_err();
        assert!(error.contains(said), "{error}");
    }
    let error = read(json!({ "columns": [d()] })).unwrap_err();
    assert!(error.contains("missing field `rows`"), "{error}");
    let error = read(json!({ "columns": [d()], "rows": [], "unit": "m" })).unwrap_err();
    assert!(error.contains("unknown field `unit`"), "{error}");
}

#[test]
fn rows_are_counted_and_cells_have_ranges() {
    let t = read(table(json!([depth("m")]), json!([[1], [1], [1], [1]]))).unwrap();
    let mut issues = Vec::new();
    t.lengths("/log", &mut issues);
    assert_eq!(issues.len(), 1);
    assert_eq!(
        (&*issues[0].pointer, &*issues[0].code),
        ("/log/rows", "list_too_long")
    );

    let good = read(table(
        json!([torque("N_m"), depth("m")]),
        json!([[0, 100], [1000, 0]]),
    ));
    assert!(good.unwrap().validate().is_ok());
    let bad = read(table(
        json!([torque("N_m"), depth("m")]),
        json!([[0, 1], [-1, 101], [1, 1]]),
    ));
    let errors = bad.unwrap().validate().unwrap_err();
    let ValidationErrorsKind::List(rows) = &errors.errors()["rows"] else {
        panic!("{errors:?}");
    };
    assert_eq!(rows.keys().collect::<Vec<_>>(), [&1]);
    let mut cells: Vec<_> = rows[&1].errors().keys().map(|k| k.as_ref()).collect();
    cells.sort_unstable();
    assert_eq!(cells, ["0", "1"]);
}

proptest! {
    /// Unit and order of the columns change neither the values nor the plain form.
    #[test]
    fn the_plain_form_knows_no_units(values in prop::collection::vec((0.0f64..100.0, 0.0f64..1000.0), 1..20)) {
        let si: Vec<Value> = values.iter().map(|(d, t)| json!([d, t])).collect();
        let mm: Vec<Value> = values.iter().map(|(d, t)| json!([t / 1000.0, d * 1000.0])).collect();
        let a = read(table(json!([depth("m"), torque("N_m")]), json!(si))).unwrap();
        let b = read(table(json!([torque("kN_m"), depth("mm")]), json!(mm))).unwrap();
        for row in 0..values.len() {
            let (x, y) = (a.value::<Length>(row, DEPTH).unwrap(), b.value::<Length>(row, DEPTH).unwrap());
            prop_assert!((x.si() - y.si()).abs() <= 1e-15 * x.si().abs() + f64::MIN_POSITIVE);
        }
        let (a, b) = (serde_json::to_value(&a).unwrap(), serde_json::to_value(&b).unwrap());
        prop_assert_eq!(&a["columns"], &b["columns"]);
        // read back from its plain form a table is the same, bit for bit
        let back = read(a.clone()).unwrap();
        prop_assert_eq!(serde_json::to_value(&back).unwrap(), a);
    }
}

/// A whole number of kips is the same force to the bit whether in kip or in N.
#[test]
fn a_cell_reads_as_a_quantity_does() {
    #[derive(Debug, Clone, PartialEq)]
    struct Forces;
    impl Columns for Forces {
        const NAME: &'static str = "ForcesOfTest";
        const ABOUT: &'static str = "Forces of the tests.";
        const ALL: &'static [Column] = &[Column::required::<crate::quantity::Force>(
            "load", "Any.", -1e9, 1e9,
        )];
        const LEAST_ROWS: usize = 1;
        const MOST_ROWS: usize = 1;
    }
    let t: Table<Forces> = serde_json::from_value(table(
        json!([{ "name": "load", "unit": "kip" }]),
        json!([[12.5]]),
    ))
    .unwrap();
    let as_quantity = crate::quantity::Force::new(12.5, ForceUnit::Kip);
    assert_eq!(t.value(0, 0), Some(as_quantity));
}

#[cfg(feature = "openapi")]
#[test]
fn the_document_tells_columns_and_limits() {
    use utoipa::{PartialSchema, ToSchema};
    let schema = serde_json::to_value(Table::<LogColumns>::schema()).unwrap();
    assert_eq!(schema["additionalProperties"], false);
    assert_eq!(schema["required"], json!(["columns", "rows"]));
    assert_eq!(schema["properties"]["rows"]["maxItems"], 3);
    assert_eq!(
        schema["x-table"][1],
        json!({ "name": "torque", "quantity": "Torque", "required": false })
    );
    let names = &schema["properties"]["columns"]["items"]["properties"]["name"]["enum"];
    assert_eq!(*names, json!(["depth", "torque"]));
    let mut named = Vec::new();
    Table::<LogColumns>::schemas(&mut named);
    let names: Vec<_> = named.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(names, ["LengthUnit", "MomentUnit"]);
}
