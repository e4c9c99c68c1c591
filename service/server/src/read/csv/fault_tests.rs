//! Faults of CSV bodies: place, code and words of each, told in the lines of the file.

use super::tests::{GOOD, read};
use super::*;

/// Place, code and words of each fault.
fn faults(text: &[u8]) -> (u16, Vec<(String, String, String)>) {
    let shown = String::from_utf8_lossy(text);
    let problem = read(text).expect_err(&shown);
    let all = problem.errors.into_iter();
    let all = all.map(|i| (i.pointer, i.code.into_owned(), i.detail));
    (problem.status, all.collect())
}

/// The request with some of it changed, and its faults.
#[track_caller]
fn changed(from: &str, to: &str, wanted: &[(&str, &str, &str)]) {
    assert!(GOOD.contains(from), "{from}");
    let (status, found) = faults(GOOD.replacen(from, to, 1).as_bytes());
    assert_eq!(status, 422, "{from} -> {to}");
    same(&found, wanted);
}

#[track_caller]
fn same(found: &[(String, String, String)], wanted: &[(&str, &str, &str)]) {
    let found: Vec<_> = found
        .iter()
        .map(|(p, c, d)| (p.as_str(), c.as_str(), d.as_str()))
        .collect();
    assert_eq!(found, wanted);
}

#[test]
fn a_fault_of_a_cell_has_line_and_column() {
    for (cell, why) in [
        (
            "1,5",
            "write decimals with a point and nothing between thousands",
        ),
        (
            "1 500",
            "write decimals with a point and nothing between thousands",
        ),
        (
            "1.",
            "write it as JSON does: digits on both sides of the point, no plus and no zero before it",
        ),
        (
            ".5",
            "write it as JSON does: digits on both sides of the point, no plus and no zero before it",
        ),
        (
            "+3",
            "write it as JSON does: digits on both sides of the point, no plus and no zero before it",
        ),
        (
            "03",
            "write it as JSON does: digits on both sides of the point, no plus and no zero before it",
        ),
        ("350 ft_lbf", "its unit stands in the header"),
        ("null", "leave the field empty where nothing was read"),
        ("NaN", "leave the field empty where nothing was read"),
        ("-", "leave the field empty where nothing was read"),
        ("# end", "lines with `#` stand before the header only"),
        ("[1]", "leave the field empty where nothing was read"),
    ] {
        let detail = format!("line 6, column torque: a number is expected, not `{cell}`; {why}");
        changed(
            "350",
            &format!("\"{cell}\""),
            &[("/log/rows/2/0", "wrong_type", &detail)],
        );
    }
    changed(
        "350",
        "1e999",
        &[(
            "/log/rows/2/0",
            "number_out_of_range",
            "line 6, column torque: `1e999` does not fit a double",
        )],
    );
    changed(
        "3.5",
        "",
        &[(
            "/log/rows/2/1",
            "wrong_type",
            "line 6, column depth: a number is expected, the field is empty",
        )],
    );
}

#[test]
fn lines_count_from_the_top_of_the_file() {
    // a note over three lines before the fault, lines that end in CR LF
    let text = "#{}\r\nnote,depth [m]\r\n\"a\r\nb\r\nc\",1\r\n,x\r\n";
    let (_, found) = faults(text.as_bytes());
    assert_eq!(found[0].0, "/log/rows/1/0");
    assert!(
        found[0].2.starts_with("line 6, column depth: "),
        "{found:?}"
    );
}

#[test]
fn a_row_of_another_length_is_told_once() {
    for (to, code, fields) in [
        ("350,3.5", "list_too_short", 2),
        ("350", "list_too_short", 1),
        ("x", "list_too_short", 1),
        ("350,3.5,,", "list_too_long", 4),
        ("350,3.5,a,b,c", "list_too_long", 5),
    ] {
        let detail = format!("line 6: {fields} fields under 3 columns");
        let (_, found) = faults(GOOD.replacen("350,3.5,", to, 1).as_bytes());
        assert!(
            found.contains(&("/log/rows/2".to_owned(), code.to_owned(), detail)),
            "{found:?}"
        );
    }
    // the text stands first, last, or alone: never is a row taken for a whole one
    for text in [
        "note,depth [m]\n1\n",
        "depth [m],note\n1\n",
        "depth [m],note\n1,2,3\n",
    ] {
        let (_, found) = faults(text.as_bytes());
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(found[0].0, "/log/rows/0");
    }
    let (_, found) = faults(b"note\nx,1\n");
    assert!(
        found
            .iter()
            .any(|f| f.0 == "/log/rows/0" && f.1 == "list_too_long"),
        "{found:?}"
    );
}

#[test]
fn a_fault_of_the_header_has_its_column() {
    changed(
        "torque [",
        "tourqe [",
        &[(
            "/log/columns/0/name",
            "unknown_choice",
            "line 3, column tourqe: `tourqe` is not a choice; did you mean `torque`?",
        )],
    );
    changed(
        "torque [ft_lbf]",
        "torque (ft_lbf)",
        &[(
            "/log/columns/0/name",
            "unknown_choice",
            "line 3, column torque (ft_lbf): `torque (ft_lbf)` is not a choice; known: `depth`, `torque`; \
             text stands in `note`; a unit stands in square brackets behind the name",
        )],
    );
    changed(
        "torque [ft_lbf]",
        "",
        &[(
            "/log/columns/0/name",
            "unknown_choice",
            "line 3, column 1: the column has no name",
        )],
    );
    changed(
        "torque [ft_lbf]",
        "torque",
        &[(
            "/log/columns/0",
            "missing_member",
            "line 3, column torque: the unit is missing; write `torque [kN_m]`, with one of `N_m`, `kN_m`, `in_lbf`, `ft_lbf`, `kip_ft`, `kip_in`",
        )],
    );
    changed(
        "torque [ft_lbf]",
        "depth [m]",
        &[
            (
                "/log/columns/1/name",
                "duplicate_member",
                "line 3, column depth: the column `depth` stands twice",
            ),
            (
                "/log/rows/1/0",
                "wrong_type",
                "line 5, column depth: a number is expected, the field is empty",
            ),
        ],
    );
    changed(
        "note",
        "note [1]",
        &[(
            "/log/columns/2/name",
            "unknown_choice",
            "line 3, column note: `note` holds text and takes no unit",
        )],
    );
    changed(
        "depth [ft], note\n100, 1,",
        "note, note\n100, 1,",
        &[
            (
                "/log",
                "missing_member",
                "line 3: the column `depth` is required",
            ),
            (
                "/notes",
                "duplicate_member",
                "line 3, column note: the column `note` stands twice",
            ),
        ],
    );
    // also where no note is written
    let (_, found) = faults(b"note,depth [m],note\n,1,\n");
    same(
        &found,
        &[(
            "/notes",
            "duplicate_member",
            "line 1, column note: the column `note` stands twice",
        )],
    );
    let (_, found) = faults(GOOD.replacen("ft_lbf", "lb", 1).as_bytes());
    assert_eq!(
        (&*found[0].0, &*found[0].1),
        ("/log/columns/0/unit", "unknown_unit")
    );
    assert!(
        found[0]
            .2
            .starts_with("line 3, column torque: unknown unit `lb`"),
        "{found:?}"
    );
    let (_, found) = faults(format!("depth [m]{}\n", ",x".repeat(MOST_COLUMNS)).as_bytes());
    same(
        &found,
        &[(
            "/log/columns",
            "list_too_long",
            "line 1: 101 columns, at most 100 are looked at",
        )],
    );
}

#[test]
fn a_member_stands_in_one_place() {
    changed(
        "\"pile\": \"A2\"",
        "\"log\": {\"columns\": 1}",
        &[(
            "/log",
            "csv_member_twice",
            "`log` stands in the lines with `#` and as columns below them",
        )],
    );
    // also where no note is written, and where the name is written otherwise
    let text = "#{\"note\\u0073\": []}\ndepth [m],note\n1,\n";
    let (_, found) = faults(text.as_bytes());
    same(
        &found,
        &[(
            "/notes",
            "csv_member_twice",
            "`notes` stands in the lines with `#` and as columns below them",
        )],
    );
}

#[test]
fn faults_of_both_parts_come_together() {
    let text = "#{\"pile\": 2, \"pil\": 1}\ndepth,note\n1,a\nx,\n";
    let (_, found) = faults(text.as_bytes());
    let places: Vec<_> = found.iter().map(|f| (&*f.0, &*f.1)).collect();
    assert_eq!(
        places,
        [
            ("/log/columns/0", "missing_member"),
            ("/log/rows/1/0", "wrong_type"),
            ("/pil", "unknown_member"),
            ("/pile", "wrong_type"),
        ]
    );
}

#[test]
fn what_is_no_csv_is_refused_with_its_lines() {
    let faults_of = |text: &[u8]| -> Vec<(String, String)> {
        let (status, found) = faults(text);
        assert_eq!(status, 400);
        assert!(found.iter().all(|f| f.0.is_empty()));
        found.into_iter().map(|f| (f.1, f.2)).collect()
    };
    for (text, line, why) in [
        ("", 1, "a header is expected, and the file ends"),
        ("# {}\n\n", 2, "a header is expected, and the file ends"),
        (
            "# {}\n1,2\n3,4\n",
            2,
            "a header is expected, and numbers stand there",
        ),
        ("depth [m]\n1\n\n2\n", 3, "a blank line before a record"),
        ("# {}\n\ndepth [m]\n1\n", 2, "a blank line before a record"),
        (
            "depth [m],note\n1,a\"b\n",
            2,
            "a quotation mark within a field that does not begin with one",
        ),
        (
            "depth [m],note\n1,\"a\"b\n",
            2,
            "text behind a quotation mark that closes",
        ),
        (
            "depth [m],note\n1,\"a\n2,b\n",
            2,
            "a quotation mark is opened and never closed",
        ),
        ("depth [m]\r1\r", 1, "a carriage return without a line feed"),
        (
            "\"# {\"\"pile\"\": 1}\",\ndepth [m],\n",
            1,
            "a line with `#` stands in quotation marks or behind blanks; send it as it was",
        ),
    ] {
        let wanted = [("not_csv".to_owned(), format!("line {line}: {why}"))];
        assert_eq!(faults_of(text.as_bytes()), wanted, "{text:?}");
    }
    let latin = faults_of(b"# {}\ndepth [m],note\n1,gro\xdf\n");
    assert_eq!(latin[0].1, "line 3: not UTF-8 after byte 25");
    let wide: Vec<u8> = "depth".encode_utf16().flat_map(u16::to_le_bytes).collect();
    assert_eq!(
        faults_of(&[&[0xff, 0xfe][..], &wide].concat())[0].0,
        "not_csv"
    );
    for (text, signs) in [
        ("depth [m];torque [N_m]\n1,5;2\n", "semicolons"),
        ("depth [m]\ttorque [N_m]\n1\t2\n", "tabs"),
    ] {
        let found = faults_of(text.as_bytes());
        assert_eq!(found[0].0, "csv_separator");
        assert!(
            found[0]
                .1
                .starts_with(&format!("line 1: the header is one field with {signs}"))
        );
    }
    let head = faults_of(b"# {\"pile\": 1\n# \"x\"}\ndepth [m]\n1\n");
    assert_eq!(head[0].0, "not_json");
    assert!(
        head[0]
            .1
            .ends_with("expected `,` or `}` at line 2 column 3"),
        "{head:?}"
    );
    // several at once, one a line
    let several = faults_of(b"# free text\ndepth [m],note\n1,a\"b\"c\n2,\"a\"b\n");
    let several: Vec<_> = several.iter().map(|f| &*f.0).collect();
    assert_eq!(several, ["not_csv", "not_csv", "not_json"]);
    let something_else = "a\"\n".repeat(10_000);
    assert_eq!(faults_of(something_else.as_bytes()).len(), 100);
}

#[test]
fn the_first_lines_are_one_object() {
    for head in ["[1]", "7", "null", "\"x\""] {
        let (status, found) = faults(format!("# {head}\ndepth [m]\n1\n").as_bytes());
        assert_eq!(status, 422);
        same(
            &found,
            &[(
                "",
                "wrong_type",
                "the lines with `#` hold another JSON value than an object",
            )],
        );
    }
    let deep = format!(
        "# {{\"pile\": {}{}}}\ndepth [m]\n1\n",
        "[".repeat(40),
        "]".repeat(40)
    );
    assert_eq!(faults(deep.as_bytes()).1[0].1, "nested_too_deep");
    let surrogate = "# {\"\\ud800\": 1}\ndepth [m]\n1\n";
    assert_eq!(faults(surrogate.as_bytes()).1[0].1, "not_json");
}
