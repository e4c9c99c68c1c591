//! Tables as CSV (RFC 4180): how a header, a number and a text are written. Which columns
//! and rows a table has is said where it is made.

use bearwell_engine::answer_table::AnswerTable;
use bearwell_engine::quantity::{Role, Shown, System};

/// The media type of a table.
pub const CSV: &str = "text/csv";

/// A table under way.
///
/// Columns first, then rows with a field for each. The first line is the header: a column of
/// numbers reads `name [unit]` (`[1]` for a pure number), a column of text its name alone.
/// Lines end in CR LF. Numbers are those of the JSON answer: in the units asked for, rounded
/// to nine digits, with a point and without an exponent. Text is quoted where it must be; one
/// that a spreadsheet would take for a formula gets an apostrophe before it.
///
/// ```
/// use bearwell_engine::quantity::{MomentUnit, System, Torque};
/// use bearwell_papers::csv::{Csv, Field};
///
/// let mut csv = Csv::new(System::UsCustomary);
/// csv.text_column("row");
/// csv.column("torque", Torque::ROLE);
/// csv.row([Field::text("target"), Field::of(Torque::new(2780.0, MomentUnit::FtLbf))]);
/// csv.row([Field::text("=limit"), Field::Empty]);
/// assert_eq!(csv.finish(), "row,torque [ft_lbf]\r\ntarget,2780\r\n'=limit,\r\n");
/// ```
#[derive(Debug)]
pub struct Csv {
    system: System,
    columns: Vec<Column>,
    text: String,
}

#[derive(Debug)]
struct Column {
    head: String,
    /// Unit of its numbers; none in a column of text.
    unit: Option<String>,
}

/// One field of a row.
#[derive(Debug, Clone, PartialEq)]
pub enum Field {
    /// A number, with the quantity it is of.
    Number(Shown),
    /// A text, the caller's or our own.
    Text(String),
    /// A number as the answer writes it, with all its decimals, under a unit of its own.
    Decimals(String),
    /// Nothing is there.
    Empty,
}

impl Field {
    /// A text.
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }

    /// A number of a quantity.
    pub fn of(number: impl Into<Shown>) -> Self {
        Self::Number(number.into())
    }

    /// A number where there is one.
    pub fn maybe(number: Option<impl Into<Shown>>) -> Self {
        number.map_or(Self::Empty, Self::of)
    }
}

impl Csv {
    /// An empty table in the given units.
    pub const fn new(system: System) -> Self {
        Self {
            system,
            columns: Vec::new(),
            text: String::new(),
        }
    }

    /// Adds a column of numbers of one quantity; [`bearwell_engine::quantity::RATIO`] for pure
    /// numbers.
    pub fn column(&mut self, name: &str, role: &Role) {
        self.number_column(name, role.unit(self.system).name);
    }

    /// Adds a column of numbers that the answer has written in a unit of its own.
    pub fn decimals_column(&mut self, name: &str, unit: &str) {
        self.number_column(name, unit);
    }

    /// Adds a column of text.
    pub fn text_column(&mut self, name: &str) {
        self.columns.push(Column {
            head: name.to_owned(),
            unit: None,
        });
    }

    fn number_column(&mut self, name: &str, unit: &str) {
        self.columns.push(Column {
            head: format!("{name} [{unit}]"),
            unit: Some(unit.to_owned()),
        });
    }

    /// Adds a row: a field for each column, in their order. A number in another unit than its
    /// column, and one that is not finite, is left empty; no answer holds such a number.
    pub fn row(&mut self, fields: impl IntoIterator<Item = Field>) {
        let mut fields = fields.into_iter();
        let written: Vec<String> = self
            .columns
            .iter()
            .map(|column| self.written(column, fields.next().unwrap_or(Field::Empty)))
            .collect();
        debug_assert!(fields.next().is_none(), "more fields than columns");
        self.line(&written);
    }

    fn written(&self, column: &Column, field: Field) -> String {
        match (field, &column.unit) {
            (Field::Empty, _) => String::new(),
            (Field::Text(text), _) => quoted(&harmless(&text)),
            (Field::Decimals(text), _) => {
                // nothing but a number goes past `harmless`
                let fits = text.parse::<f64>().is_ok_and(f64::is_finite)
                    && text
                        .bytes()
                        .all(|b| b.is_ascii_digit() || b == b'.' || b == b'-');
                debug_assert!(fits, "{text:?} under {}", column.head);
                if fits { text } else { String::new() }
            }
            (Field::Number(shown), unit) => {
                let (value, its_unit) = shown.printed(self.system);
                let fits = unit.as_deref() == Some(its_unit);
                debug_assert!(fits, "{its_unit} under {}", column.head);
                if fits { number(value) } else { String::new() }
            }
        }
    }

    fn line(&mut self, fields: &[String]) {
        if fields.len() == 1 && fields[0].is_empty() {
            // an empty line is no row
            self.text.push_str("\"\"");
        }
        self.text.push_str(&fields.join(","));
        self.text.push_str("\r\n");
    }

    /// The finished table.
    pub fn finish(mut self) -> String {
        let rows = std::mem::take(&mut self.text);
        let heads: Vec<String> = self
            .columns
            .iter()
            .map(|column| quoted(&harmless(&column.head)))
            .collect();
        self.line(&heads);
        self.text.push_str(&rows);
        self.text
    }

    /// A table of an answer as it stands there.
    pub fn of_table(table: &AnswerTable, system: System) -> String {
        let mut csv = Self::new(system);
        for column in &table.columns {
            csv.number_column(&column.name, column.unit.printed(system));
        }
        for row in &table.rows {
            let fields: Vec<String> = row.iter().map(|c| number(c.printed(system))).collect();
            csv.line(&fields);
        }
        csv.finish()
    }
}

/// A number with a point and without an exponent.
fn number(value: f64) -> String {
    if value.is_finite() {
        format!("{value}")
    } else {
        String::new()
    }
}

/// A text that no spreadsheet takes for a formula: with an apostrophe where its first
/// character, blanks aside, would start one.
fn harmless(text: &str) -> String {
    let first = text.chars().find(|c| !c.is_whitespace());
    let formula = matches!(
        first,
        Some('=' | '+' | '-' | '@' | '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}')
    );
    if formula || text.starts_with(['\t', '\r', '\n']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

/// A field in quotation marks where its characters or its edges need them; a semicolon and a
/// tab too, at which some programs part fields.
fn quoted(text: &str) -> String {
    let parts = text.contains([',', ';', '\t', '"', '\r', '\n']);
    if parts || text.trim() != text {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use bearwell_engine::answer_table::{AnswerColumn, Cell};
    use bearwell_engine::quantity::{
        In, Length, LengthUnit, MomentUnit, Presentation, Pressure, RATIO, StressUnit, Temperature,
        TemperatureUnit, Torque,
    };
    use proptest::prelude::*;

    use super::*;

    fn one(text: &str) -> String {
        let mut csv = Csv::new(System::Si);
        csv.text_column("a");
        csv.text_column("b");
        csv.row([Field::text(text), Field::text("x")]);
        csv.finish()
    }

    #[test]
    fn a_text_is_quoted_where_it_must_be_and_never_a_formula() {
        for (text, written) in [
            ("plain", "plain"),
            ("B2", "B2"),
            ("", ""),
            ("a,b", "\"a,b\""),
            ("a;b", "\"a;b\""),
            ("say \"x\"", "\"say \"\"x\"\"\""),
            (" edge", "\" edge\""),
            ("two\r\nlines", "\"two\r\nlines\""),
            ("=1+1", "'=1+1"),
            ("+1", "'+1"),
            ("-1", "'-1"),
            ("@x", "'@x"),
            (" =1", "' =1"),
            ("\u{ff1d}1", "'\u{ff1d}1"),
            ("\tx", "\"'\tx\""),
            ("=x,\"y\"", "\"'=x,\"\"y\"\"\""),
            ("2-1", "2-1"),
        ] {
            assert_eq!(one(text), format!("a,b\r\n{written},x\r\n"), "{text:?}");
        }
    }

    #[test]
    fn numbers_are_those_of_the_answer() {
        let torque = Torque::new(25_000.0 / 9.0, MomentUnit::FtLbf);
        for (system, text) in [
            (
                System::UsCustomary,
                "t [ft_lbf],1 [1],p [psi],d [degF]\r\n2777.77778,0.85,-1,32\r\n",
            ),
            (
                System::Si,
                "t [kN_m],1 [1],p [MPa],d [degC]\r\n3.76616097,0.85,-0.00689475729,0\r\n",
            ),
        ] {
            let mut csv = Csv::new(system);
            csv.column("t", Torque::ROLE);
            csv.column("1", RATIO);
            csv.column("p", Pressure::ROLE);
            csv.column("d", Temperature::ROLE);
            csv.row([
                Field::of(torque),
                Field::of(0.85),
                Field::of(Pressure::new(-1.0, StressUnit::Psi)),
                Field::of(Temperature::new(32.0, TemperatureUnit::DegF)),
            ]);
            assert_eq!(csv.finish(), text);
        }
    }

    #[test]
    fn decimals_stand_as_they_are_written() {
        let mut csv = Csv::new(System::Si);
        csv.decimals_column("northing", "ft_us_survey");
        csv.decimals_column("easting", "ft_us_survey");
        let field = |text: &str| Field::Decimals(text.to_owned());
        csv.row([field("-12.300"), field("2000000.000")]);
        csv.row([field("0.000"), Field::Empty]);
        let text =
            "northing [ft_us_survey],easting [ft_us_survey]\r\n-12.300,2000000.000\r\n0.000,\r\n";
        assert_eq!(csv.finish(), text);
    }

    #[test]
    fn what_is_not_there_is_empty() {
        let mut csv = Csv::new(System::Si);
        csv.column("depth", Length::ROLE);
        csv.row([Field::maybe(None::<Length>)]);
        csv.row([Field::of(Length::from_si(f64::NAN))]);
        csv.row([Field::Empty]);
        assert_eq!(csv.finish(), "depth [m]\r\n\"\"\r\n\"\"\r\n\"\"\r\n");
    }

    #[test]
    fn a_table_of_an_answer_keeps_its_units() {
        let table = AnswerTable {
            columns: vec![
                AnswerColumn::of("depth", Length::ROLE),
                AnswerColumn::of("part", RATIO),
            ],
            rows: vec![vec![
                Cell::of(Length::new(12.0, LengthUnit::In)),
                Cell::of(0.1),
            ]],
        };
        assert_eq!(
            Csv::of_table(&table, System::UsCustomary),
            "depth [ft],part [1]\r\n1,0.1\r\n"
        );
        // read back, as a client does, it is as it was printed
        let form = Presentation::Printed(System::Si);
        let read = In(form, &table).text().expect("it prints");
        let read: AnswerTable = serde_json::from_str(&read).expect("it reads");
        assert_eq!(
            Csv::of_table(&read, System::UsCustomary),
            "depth [m],part [1]\r\n0.3048,0.1\r\n"
        );
    }

    proptest! {
        /// What a strict reader gets back is the text itself, but for the apostrophe.
        #[test]
        fn any_text_reads_back(text in "(?s).{0,24}") {
            let written = one(&text);
            let line = written.strip_prefix("a,b\r\n").expect("the header");
            let field = line.strip_suffix(",x\r\n").expect("the other field");
            let back = match field.strip_prefix('"') {
                Some(rest) => rest.strip_suffix('"').expect("an end").replace("\"\"", "\""),
                None => {
                    prop_assert!(!field.contains([',', '"', '\r', '\n']));
                    field.to_owned()
                }
            };
            let marked = ["'", &text].concat();
            prop_assert!(back == text || back == marked);
            let start = back.chars().find(|c| !c.is_whitespace());
            prop_assert!(!matches!(start, Some('=' | '+' | '-' | '@')), "{back:?}");
        }

        /// A number reads back as the JSON answer prints it.
        #[test]
        fn any_number_is_that_of_json(value in prop::num::f64::NORMAL) {
            let torque = Torque::from_si(value);
            let mut csv = Csv::new(System::UsCustomary);
            csv.column("t", Torque::ROLE);
            csv.row([Field::of(torque)]);
            let text = csv.finish();
            let back: f64 = text.trim_end().rsplit_once('\n').expect("two lines").1.parse().unwrap();
            let form = Presentation::Printed(System::UsCustomary);
            let json: serde_json::Value = serde_json::from_str(&In(form, &torque).text().unwrap()).unwrap();
            prop_assert_eq!(back, json["value"].as_f64().unwrap());
        }
    }
}
