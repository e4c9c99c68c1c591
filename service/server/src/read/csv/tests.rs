//! CSV bodies: the JSON each stands for. The table has a column of text; over HTTP the
//! calculations are asked. Faults are in `fault_tests.rs`.

use std::sync::OnceLock;

use bearwell_engine::contract::Call;
use bearwell_engine::quantity::{Length, Torque};
use bearwell_engine::table::{Column, Columns, Table};
use proptest::prelude::*;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;
use validator::Validate;

use super::*;
use crate::read::{Shape, parse};
use crate::schemas::{collect, collect_shared};
use crate::service::Service;
use crate::table::CSV;
use crate::{command, examples};

#[derive(Debug, Clone, PartialEq)]
struct LogColumns;

impl Columns for LogColumns {
    const NAME: &'static str = "CsvLog";
    const ABOUT: &'static str = "A log.";
    const ALL: &'static [Column] = &[
        Column::required::<Length>("depth", "0 to 100 m.", 0.0, 100.0),
        Column::optional::<Torque>("torque", "0 to 1 kN m.", 0.0, 1000.0),
    ];
    const LEAST_ROWS: usize = 1;
    const MOST_ROWS: usize = 6;
}

type CsvLog = Table<LogColumns>;

/// A note.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate, ToSchema)]
#[schema(as = CsvNote)]
#[serde(deny_unknown_fields)]
struct Noted {
    /// Row, from 0.
    row: u32,
    /// Text.
    text: String,
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate, ToSchema)]
#[schema(as = CsvRequest)]
#[serde(deny_unknown_fields)]
pub struct Asked {
    /// Name.
    #[serde(skip_serializing_if = "Option::is_none")]
    pile: Option<String>,
    /// The log.
    #[validate(nested)]
    log: CsvLog,
    /// Notes.
    #[serde(skip_serializing_if = "Option::is_none")]
    notes: Option<Vec<Noted>>,
}

const RULES: CsvBody = CsvBody {
    table: "log",
    notes: Some("notes"),
};

pub const GOOD: &str = "# {\"pile\": \"A2\",\n#  \"output_units\": \"si\"}\n\
    torque [ft_lbf], depth [ft], note\n100, 1,\n,2.50,\"stone, \"\"hard\"\"\"\n350,3.5,\n";

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

fn root() -> &'static Value {
    schemas().get("CsvRequest").unwrap()
}

fn sheet(text: &[u8]) -> Result<Sheet, Problem> {
    Sheet::read(text, RULES, schemas(), root())
}

pub fn read(text: &[u8]) -> Result<Call<Asked>, Problem> {
    let sheet = sheet(text)?;
    let shape = Shape {
        schemas: schemas(),
        root: root(),
        nesting: NESTING,
    };
    parse(sheet.json(), shape).map_err(|problem| sheet.explain(problem))
}

fn json_of(text: &str) -> String {
    sheet(text.as_bytes()).unwrap().json
}

#[test]
fn it_stands_for_a_request_in_json() {
    assert_eq!(
        json_of(GOOD),
        "{\"log\":{\"columns\":[{\"name\":\"torque\",\"unit\":\"ft_lbf\"},{\"name\":\"depth\",\"unit\":\"ft\"}],\
         \"rows\":[[100,1],[null,2.50],[350,3.5]]},\
         \"notes\":[{\"row\":1,\"text\":\"stone, \\\"hard\\\"\"}],\
         \"pile\": \"A2\",\n   \"output_units\": \"si\"}"
    );
    assert!(read(GOOD.as_bytes()).is_ok());
    // digits stay as they are written
    let digits = "depth [m]\n0.30000000000000004441\n1E-2\n-0\n";
    assert!(json_of(digits).contains("[[0.30000000000000004441],[1E-2],[-0]]"));
}

#[test]
fn what_does_not_matter_changes_nothing() {
    let json = json_of(GOOD);
    let bare = json_of("depth [m],torque [N_m]\n1,2\n");
    assert!(bare.ends_with("\"rows\":[[1,2]]}}"), "{bare}");
    for (from, to) in [
        ("# {", "\u{feff}# {"),
        ("torque [ft_lbf]", "torque[ft_lbf]"),
        ("torque [ft_lbf]", "\"torque [ ft_lbf ] \""),
        ("350,3.5,\n", "350,3.5,"),
        ("350,3.5,\n", "350,3.5,\n\n\r\n"),
        ("100, 1,", "\"100\",\t1 ,\"\""),
        ("100, 1,", "100,1,  "),
    ] {
        assert!(GOOD.contains(from), "{from}");
        assert_eq!(json_of(&GOOD.replacen(from, to, 1)), json, "{to:?}");
    }
    // line ends of the file, apart from blanks between members
    let ends = json_of(&GOOD.replace('\n', "\r\n"));
    assert_eq!(ends.replace("\r\n", "\n"), json);
    for none in ["", "#\n", "# \n#\n", "#{}\n", "# { }\n"] {
        assert_eq!(
            read(format!("{none}depth [m]\n1\n").as_bytes()).unwrap(),
            read(b"depth [m]\n1\n").unwrap(),
            "{none:?}"
        );
    }
}

#[test]
fn notes_are_taken_as_written() {
    let text = "note,depth [m]\n# hard,1\n\"two\nlines\",2\n,3\n\" \",4\n";
    let call = read(text.as_bytes()).unwrap();
    let notes = call.request.notes.unwrap();
    let notes: Vec<_> = notes.iter().map(|n| (n.row, n.text.as_str())).collect();
    assert_eq!(notes, [(0, "# hard"), (1, "two\nlines")]);
    // none: as if there were no such column
    assert_eq!(
        read(b"note,depth [m]\n,1\n").unwrap(),
        read(b"depth [m]\n1\n").unwrap()
    );
    // without the column they stand in the JSON, as in a request without CSV
    let call = read(b"#{\"notes\": [{\"row\": 0, \"text\": \"x\"}]}\ndepth [m]\n1\n").unwrap();
    assert_eq!(call.request.notes.map(|n| n.len()), Some(1));
}

#[test]
fn a_pure_number_needs_no_unit() {
    let told = json!([{ "name": "turns", "quantity": "Ratio" }, { "name": "depth", "quantity": "Length" }]);
    let all = heads(["turns", "turns [1]", "depth"].into_iter(), RULES, &told);
    assert_eq!(all[0].json(), json!({ "name": "turns", "unit": "1" }));
    assert_eq!(all[1].json(), json!({ "name": "turns", "unit": "1" }));
    assert_eq!(all[2].json(), json!({ "name": "depth" }));
}

#[test]
fn of_a_table_of_a_wild_length_no_cell_is_looked_at() {
    let text = format!("depth [m],note\n{}", "x,y,z\n".repeat(100_000));
    let call = read(text.as_bytes()).unwrap();
    assert_eq!(call.request.log.len(), LogColumns::MOST_ROWS + 1);
    assert_eq!(call.request.notes, None);
    // wide and long at once is still little JSON
    let wide = format!(
        "depth [m]{}\n{}",
        ",x".repeat(MOST_COLUMNS - 1),
        "1\n".repeat(50_000)
    );
    assert!(json_of(&wide).len() < 10_000);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, failure_persistence: None, ..ProptestConfig::default() })]

    /// Any table as CSV is the same request as the JSON of it, with columns in any order.
    #[test]
    fn any_table_comes_through(
        rows in prop::collection::vec((any::<f64>(), prop::option::of(-1e9..1e9), ".{0,6}"), 0..8),
        order in prop::sample::select(vec![[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]]),
        crlf: bool,
    ) {
        let rows: Vec<_> = rows.into_iter().filter(|row| row.0.is_finite()).collect();
        let heads = ["depth [ft]", "torque [kN_m]", "note"];
        let end = if crlf { "\r\n" } else { "\n" };
        let mut text = String::new();
        let line = |fields: [String; 3], text: &mut String| {
            *text += &order.map(|at| fields[at].clone()).join(",");
            *text += end;
        };
        line(heads.map(str::to_owned), &mut text);
        for (depth, torque, note) in &rows {
            let torque = torque.map(|t| json!(t).to_string()).unwrap_or_default();
            let note = format!("\"{}\"", note.replace('"', "\"\""));
            line([json!(depth).to_string(), torque, note], &mut text);
        }
        let notes: Vec<Value> = rows.iter().enumerate()
            .filter(|(_, row)| !blank(&row.2).is_empty())
            .map(|(at, row)| json!({ "row": at, "text": row.2 })).collect();
        let request = json!({
            "log": {
                "columns": [{ "name": "depth", "unit": "ft" }, { "name": "torque", "unit": "kN_m" }],
                "rows": rows.iter().map(|row| json!([row.0, row.1])).collect::<Vec<_>>(),
            },
            "notes": if notes.is_empty() { Value::Null } else { notes.into() },
        });
        let wanted: Asked = serde_json::from_value(request).unwrap();
        let Ok(call) = read(text.as_bytes()) else { panic!("{text}") };
        if rows.len() <= LogColumns::MOST_ROWS {
            prop_assert_eq!(&serde_json::to_string(&call.request).unwrap(), &serde_json::to_string(&wanted).unwrap());
        } else {
            prop_assert_eq!(call.request.log.len(), LogColumns::MOST_ROWS + 1);
        }
    }

    /// A load test in CSV is answered or refused like the one in JSON; the answer holds the
    /// digest of the request.
    #[test]
    fn a_load_test_is_the_same_request(
        steps in prop::collection::vec((0.0..20.0, 0.0..0.2), 3..30),
        swapped: bool,
        us: bool,
    ) {
        let service = Service::standard();
        let entry = service.entry("load-test").unwrap();
        let mut request: Value = serde_json::from_slice(examples::request("load-test", "linnet").unwrap()).unwrap();
        request["output_units"] = if us { "us_customary" } else { "si" }.into();
        request["include"] = Value::Null;
        let rows: Vec<[f64; 2]> = steps.iter().scan([0.0, 0.0], |sum: &mut [f64; 2], step| {
            *sum = [sum[0] + step.0, sum[1] + step.1];
            Some(*sum)
        }).collect();
        let columns = [("load", "kip"), ("displacement", "in")];
        request["points"] = json!({
            "columns": columns.map(|(name, unit)| json!({ "name": name, "unit": unit })),
            "rows": rows,
        });
        let wanted = command::calc(service, entry, request.to_string().as_bytes(), "*/*", None);
        request.as_object_mut().unwrap().remove("points");
        let order = if swapped { [1, 0] } else { [0, 1] };
        let heads = columns.map(|(name, unit)| format!("{name} [{unit}]"));
        let mut text = format!("#{request}\n{}\n", order.map(|at| heads[at].clone()).join(","));
        for row in &rows {
            text += &format!("{}\n", order.map(|at| json!(row[at]).to_string()).join(","));
        }
        let got = command::calc_as(service, entry, CSV, text.as_bytes(), "*/*", None);
        match (wanted, got) {
            (Ok(wanted), Ok(got)) => prop_assert!(wanted == got),
            (Err(wanted), Err(got)) => {
                let codes = |p: &Problem| -> Vec<_> { p.errors.iter().map(|i| i.code.clone()).collect() };
                prop_assert_eq!(codes(&wanted), codes(&got));
            }
            (wanted, got) => prop_assert!(false, "{:?} {:?}", wanted.is_ok(), got.is_ok()),
        }
    }

    /// No file breaks the reader, and what is refused has a fault.
    #[test]
    fn anything_is_read_or_refused(text in "(#[{}\"a:1 ]{0,6}\n)?[dephtnoqrub\\[\\]m, ]{0,20}\n([0-9x.,\"\r\n; ]{0,8}\n){0,4}") {
        if let Err(problem) = read(text.as_bytes()) {
            prop_assert!(problem.status < 500);
            prop_assert!(!problem.errors.is_empty());
        }
    }
}
