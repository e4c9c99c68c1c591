//! Requests whose long table comes as CSV: the bytes of the JSON request, and its faults at the
//! same places.

use bearwell::command::calc_as;
use bearwell::service::Service;
use bearwell_tests::{Door, answered, openapi, refused};
use serde_json::{Value, json};

const PATH: &str = "/v1/load-test";

/// The request of an example without its table, and the table.
fn parts(request: &[u8]) -> Option<(Value, Value)> {
    let mut request: Value = serde_json::from_slice(request).ok()?;
    let table = request.as_object_mut()?.remove("points")?;
    Some((request, table))
}

/// A request as CSV; `order` says which column of the table stands where.
fn csv(request: &Value, table: &Value, order: &[usize]) -> String {
    let text = |cell: &Value| match cell {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        other => other.to_string(),
    };
    let head = |column: &Value| format!("{} [{}]", text(&column["name"]), text(&column["unit"]));
    let line = |cells: Vec<String>| {
        // a row of another length keeps its length
        let whole = cells.len() == order.len();
        let cells = if whole {
            order.iter().map(|at| cells[*at].clone()).collect()
        } else {
            cells
        };
        cells.join(",") + "\n"
    };
    let list = |value: &Value| value.as_array().unwrap().clone();
    let mut out = String::new();
    for part in serde_json::to_string_pretty(request).unwrap().lines() {
        out += &format!("# {part}\n");
    }
    out += &line(list(&table["columns"]).iter().map(head).collect());
    for row in list(&table["rows"]) {
        out += &line(list(&row).iter().map(text).collect());
    }
    out
}

fn linnet() -> (Value, Value) {
    let found = answered()
        .into_iter()
        .find(|e| e.noun == "load-test" && e.name == "linnet");
    parts(&found.unwrap().request).unwrap()
}

#[tokio::test]
async fn the_example_has_the_bytes_of_json_by_every_door() {
    let door = Door::open();
    let folder = openapi().join("examples/load-test");
    let json = std::fs::read(folder.join("linnet.json")).unwrap();
    let csv = std::fs::read(folder.join("linnet.csv")).unwrap();
    let wanted = door.post(PATH, json).await;
    assert_eq!(wanted.status, 200);
    let got = door.csv(PATH, csv.clone()).await;
    assert!(got.bytes == wanted.bytes, "{}", got.json());
    assert_eq!(
        got.header("content-digest"),
        wanted.header("content-digest")
    );
    let service = Service::standard();
    let entry = service.entry("load-test").unwrap();
    let line = calc_as(service, entry, "text/csv", &csv, "*/*", None);
    assert!(line.is_ok_and(|bytes| bytes == wanted.bytes));
}

#[tokio::test]
async fn units_order_and_line_ends_change_no_byte() {
    let door = Door::open();
    let (mut request, table) = linnet();
    for system in ["si", "us_customary"] {
        request["output_units"] = system.into();
        let mut json = request.clone();
        json["points"] = table.clone();
        let wanted = door.post(PATH, json.to_string()).await;
        let plain = csv(&request, &table, &[0, 1]);
        for body in [
            plain.clone(),
            csv(&request, &table, &[1, 0]),
            plain.replace('\n', "\r\n"),
            format!("\u{feff}{plain}\n\n"),
            plain.replace("0.597", "\" 0.597 \""),
        ] {
            let got = door.csv(PATH, body.clone()).await;
            assert!(
                got.bytes == wanted.bytes,
                "{system}: {body}\n{}",
                got.json()
            );
        }
        let digest = wanted.json()["provenance"]["request_digest"].clone();
        assert_eq!(digest.as_str().map(str::len), Some(64));
    }
}

#[tokio::test]
async fn every_example_is_answered_or_refused_alike() {
    let door = Door::open();
    let mut seen = (0, 0);
    let of_noun = |e: &bearwell_tests::Example| e.noun == "load-test";
    for example in answered().into_iter().filter(of_noun) {
        let (request, table) = parts(&example.request).unwrap();
        let wanted = door.post(PATH, example.request.clone()).await;
        let got = door.csv(PATH, csv(&request, &table, &[0, 1])).await;
        assert!(got.bytes == wanted.bytes, "{}", example.title());
        seen.0 += 1;
    }
    // a number in quotation marks is a text in JSON and a number in CSV
    let other = "cell-no-number";
    for example in refused()
        .into_iter()
        .filter(|e| of_noun(e) && e.name != other)
    {
        let Some((request, table)) = parts(&example.request) else {
            continue;
        };
        let order: Vec<usize> = (0..table["columns"].as_array().unwrap().len()).collect();
        let wanted = door.post(PATH, example.request.clone()).await.json();
        let file = csv(&request, &table, &order);
        let got = door.csv(PATH, file.clone()).await.json();
        for member in ["type", "title", "status", "stage"] {
            assert_eq!(got[member], wanted[member], "{}", example.title());
        }
        let errors = |problem: &Value| problem["errors"].as_array().unwrap().clone();
        let places = |problem: &Value| -> Vec<Value> {
            let place = |e: &Value| json!([e["pointer"], e["code"], e["limit"], e["source"]]);
            errors(problem).iter().map(place).collect()
        };
        assert_eq!(places(&got), places(&wanted), "{}", example.title());
        // what stands in a row or under a column is told with its line
        let lines: Vec<&str> = file.lines().collect();
        for error in errors(&got) {
            let pointer = error["pointer"].as_str().unwrap();
            let detail = error["detail"].as_str().unwrap();
            let parts: Vec<&str> = pointer.split('/').skip(1).collect();
            if let ["points", "rows", row, ..] = parts[..] {
                let header = lines.iter().position(|l| !l.starts_with('#')).unwrap() + 1;
                let line = header + 1 + row.parse::<usize>().unwrap();
                assert!(
                    detail.starts_with(&format!("line {line}")),
                    "{}: {error}",
                    example.title()
                );
            }
        }
        seen.1 += 1;
    }
    assert!(seen.0 > 10 && seen.1 > 20, "{seen:?}");
}

/// The example with some of it changed: status, then place, code and words of each fault.
const FAULTS: &[(&str, &str, u16, &str, &str, &str)] = &[
    (
        "\n9,0.053",
        "\n9;0.053",
        422,
        "/points/rows/6",
        "list_too_short",
        "line 24: 1 fields under 2 columns",
    ),
    (
        "\n9,0.053",
        "\n9,0,053",
        422,
        "/points/rows/6",
        "list_too_long",
        "line 24: 3 fields under 2 columns",
    ),
    (
        "\n9,0.053",
        "\n9,\"0,053\"",
        422,
        "/points/rows/6/1",
        "wrong_type",
        "line 24, column displacement: a number is expected, not `0,053`; write decimals with a point and nothing between thousands",
    ),
    (
        "\n9,0.053",
        "\n,0.053",
        422,
        "/points/rows/6/0",
        "wrong_type",
        "line 24, column load: a number is expected, the field is empty",
    ),
    (
        "\n9,0.053",
        "\n-9,0.053",
        422,
        "/points/rows/6/0",
        "below_minimum",
        "line 24, column load: -40.0339945 kN (-9000 lbf) is below 0 kN (0 lbf)",
    ),
    (
        "load [kip]",
        "load",
        422,
        "/points/columns/0",
        "missing_member",
        "line 17, column load: the unit is missing; write `load [kN]`, with one of",
    ),
    (
        "load [kip]",
        "load [lb]",
        422,
        "/points/columns/0/unit",
        "unknown_unit",
        "line 17, column load: unknown unit `lb`",
    ),
    (
        "load [kip]",
        "Load [kip]",
        422,
        "/points/columns/0/name",
        "unknown_choice",
        "line 17, column Load: `Load` is not a choice; did you mean `load`?",
    ),
    (
        "load [kip]",
        "displacement [in]",
        422,
        "/points",
        "missing_member",
        "line 17: the column `load` is required",
    ),
    (
        "load [kip]",
        "displacement [in]",
        422,
        "/points/columns/1/name",
        "duplicate_member",
        "line 17, column displacement: the column `displacement` stands twice",
    ),
    (
        "\"label\": \"W2\"",
        "\"points\": null",
        422,
        "/points",
        "csv_member_twice",
        "`points` stands in the lines with `#` and as columns below them",
    ),
    (
        "\"label\": \"W2\"",
        "\"lable\": \"W2\"",
        422,
        "/lable",
        "unknown_member",
        "`lable` is not known here; did you mean `label`?",
    ),
    (
        "\"label\": \"W2\"",
        "\"label\" \"W2\"",
        400,
        "",
        "not_json",
        "the lines with `#` are together no JSON: expected `:` at line 2 column 13",
    ),
    (
        "\n9,0.053",
        "\n9,\"0.053",
        400,
        "",
        "not_csv",
        "line 24: a quotation mark is opened and never closed",
    ),
    (
        "load [kip],displacement [in]",
        "load [kip];displacement [in]",
        400,
        "",
        "csv_separator",
        "line 17: the header is one field with semicolons in it",
    ),
    (
        "load [kip],displacement [in]\n",
        "",
        400,
        "",
        "not_csv",
        "line 17: a header is expected, and numbers stand there",
    ),
    (
        "\n9,0.053",
        "\n\n9,0.053",
        400,
        "",
        "not_csv",
        "line 24: a blank line before a record",
    ),
    // the physics of it: the head goes back while the load grows
    (
        "\n9,0.053",
        "\n9,0.043",
        422,
        "/points/rows/6/1",
        "load_test_not_monotone",
        "line 24, column displacement: 1.0922 mm (0.043 in) after 1.1176 mm (0.044 in)",
    ),
];

#[tokio::test]
async fn each_fault_has_its_line() {
    let door = Door::open();
    let file = openapi().join("examples/load-test/linnet.csv");
    let good = std::fs::read_to_string(file).unwrap();
    for (from, to, status, pointer, code, words) in FAULTS {
        assert!(good.contains(from), "{from}");
        let reply = door.csv(PATH, good.replacen(from, to, 1)).await;
        assert_eq!(reply.status, *status, "{to:?}: {}", reply.json());
        let problem = reply.json();
        let mut errors = problem["errors"].as_array().unwrap().iter();
        assert!(
            errors.any(|e| e["pointer"] == *pointer
                && e["code"] == *code
                && e["detail"].as_str().unwrap().starts_with(words)),
            "{to:?}: {problem}"
        );
    }
    let latin = good.replace("W2", "W\u{e9}").into_bytes();
    let at = latin.iter().position(|byte| *byte == 0xc3).unwrap();
    let latin = [&latin[..at], &[0xe9], &latin[at + 2..]].concat();
    let problem = door.csv(PATH, latin).await.json();
    assert_eq!(problem["type"], "/problems/malformed_csv");
    let wanted = format!("line 2: not UTF-8 after byte {at}");
    assert_eq!(problem["detail"], wanted);
    let long = good.clone() + &"0,1.309\n".repeat(400);
    let problem = door.csv(PATH, long).await.json();
    assert_eq!(problem["errors"][0]["pointer"], "/points/rows");
    assert_eq!(problem["errors"][0]["code"], "list_too_long");
    assert_eq!(problem["errors"][0]["limit"], "400");
    assert_eq!(
        problem["errors"][0]["detail"],
        "429 given, at most 400 accepted"
    );
}

#[tokio::test]
async fn csv_is_read_where_it_is_offered() {
    let door = Door::open();
    let file = openapi().join("examples/load-test/linnet.csv");
    let good = std::fs::read(file).unwrap();
    for path in ["/v1/torque-capacity", "/v1/load-test/batch"] {
        let reply = door.csv(path, good.clone()).await;
        assert_eq!(reply.status, 415, "{path}");
        let detail = reply.json()["detail"].clone();
        assert!(
            !detail
                .as_str()
                .unwrap()
                .contains("here: application/json, text/csv")
        );
    }
    let post = |given: &str, body: Vec<u8>| {
        let request = door.request(reqwest::Method::POST, PATH);
        bearwell_tests::send(request.header("content-type", given).body(body))
    };
    for given in [
        "Text/CSV",
        "text/csv; charset=utf-8",
        "text/csv; header=present",
    ] {
        assert_eq!(post(given, good.clone()).await.status, 200, "{given}");
    }
    for given in ["text/csv; charset=latin1", "text/plain"] {
        let reply = post(given, good.clone()).await;
        assert_eq!(reply.status, 415, "{given}");
        let wanted = format!("`{given}` is not read; read here: application/json, text/csv");
        assert_eq!(reply.json()["detail"], wanted);
    }
    let large = [good, b"\n".repeat(2 << 20)].concat();
    assert_eq!(post("text/csv", large).await.status, 413);
}
