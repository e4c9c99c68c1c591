//! Long lists of numbers as a caller has them: named columns, each with its unit, and rows.
//! What the columns of a table may be is said where it is used; its place in the API
//! document is in `schema.rs`. No engineering here.

#[cfg(feature = "openapi")]
mod schema;
#[cfg(test)]
mod tests;

use std::collections::BTreeMap;

use serde::de::Error as _;
use serde::ser::SerializeStruct;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use serde_json::json;
use validator::{Validate, ValidationError, ValidationErrors, ValidationErrorsKind};

use crate::contract::{Documented, Issue, list_length};
use crate::quantity::{Quantity, RATIO, Role};

/// One column that a table can have.
#[derive(Debug)]
pub struct Column {
    /// Name on the wire.
    pub name: &'static str,
    /// What its numbers are.
    pub role: &'static Role,
    /// What it holds, with its range; the text of the API document.
    pub about: &'static str,
    /// Must be there, with a number in every row. Another column may be left out, and may
    /// hold `null` where nothing was read.
    pub required: bool,
    /// Least value, base SI.
    pub least: f64,
    /// Greatest value, base SI.
    pub most: f64,
    #[cfg(feature = "openapi")]
    schemas: fn(&mut schema::Named),
}

impl Column {
    /// A column that must be there.
    pub const fn required<Q: Quantity + Documented>(
        name: &'static str,
        about: &'static str,
        least: f64,
        most: f64,
    ) -> Self {
        Self {
            name,
            role: Q::ROLE,
            about,
            required: true,
            least,
            most,
            #[cfg(feature = "openapi")]
            schemas: Q::schemas,
        }
    }

    /// A column of pure numbers that may be left out.
    pub const fn numbers(name: &'static str, about: &'static str, least: f64, most: f64) -> Self {
        Self {
            name,
            role: RATIO,
            about,
            required: false,
            least,
            most,
            #[cfg(feature = "openapi")]
            schemas: |_| {},
        }
    }

    /// A column that may be left out.
    pub const fn optional<Q: Quantity + Documented>(
        name: &'static str,
        about: &'static str,
        least: f64,
        most: f64,
    ) -> Self {
        Self {
            required: false,
            ..Self::required::<Q>(name, about, least, most)
        }
    }
}

/// What one use of a table holds.
pub trait Columns: 'static {
    /// Name of its schema.
    const NAME: &'static str;
    /// What the rows are; the text of the API document.
    const ABOUT: &'static str;
    /// Its columns. A caller may send them in any order.
    const ALL: &'static [Column];
    /// Fewest rows.
    const LEAST_ROWS: usize;
    /// Most rows.
    const MOST_ROWS: usize;
}

/// Rows of numbers under the columns of `C`, held in base SI and in the order of
/// [`Columns::ALL`].
///
/// Read from `{"columns": [{"name", "unit"}, ...], "rows": [[...], ...]}`; each row has a
/// number for each column that was sent. The plain form has base units and the order of
/// `ALL`, so that unit and order of columns do not change the digest of a request. A request
/// holds it under an alias without a parameter, or the derive of its schema trips over `C`.
#[derive(Debug, Clone, PartialEq)]
pub struct Table<C> {
    /// For each column as sent, its place in `ALL`.
    sent: Vec<usize>,
    /// Cells row by row, each row as wide as `ALL`.
    cells: Vec<Option<f64>>,
    columns: std::marker::PhantomData<C>,
}

impl<C: Columns> Table<C> {
    /// A table with these columns of `ALL`, in the order of the numbers in each row, in base
    /// SI. `None` where the columns or a row do not fit.
    pub fn new(sent: Vec<usize>, rows: &[Vec<Option<f64>>]) -> Option<Self> {
        let fits = |row: &Vec<Option<f64>>| row.len() == sent.len();
        let twice = |(i, at): (usize, &usize)| sent[..i].contains(at);
        let absent = |at: usize| C::ALL[at].required && !sent.contains(&at);
        if sent.iter().any(|&at| at >= C::ALL.len())
            || sent.iter().enumerate().any(twice)
            || (0..C::ALL.len()).any(absent)
            || !rows.iter().all(fits)
        {
            return None;
        }
        let mut cells = vec![None; rows.len() * C::ALL.len()];
        for (row, line) in rows.iter().zip(cells.chunks_mut(C::ALL.len())) {
            for (at, cell) in sent.iter().zip(row) {
                if cell.is_none() && C::ALL[*at].required {
                    return None;
                }
                line[*at] = *cell;
            }
        }
        Some(Self {
            sent,
            cells,
            columns: std::marker::PhantomData,
        })
    }

    /// How many rows.
    pub fn len(&self) -> usize {
        self.cells.len() / C::ALL.len()
    }

    /// Whether there is no row.
    pub fn is_empty(&self) -> bool {
        self.cells.is_empty()
    }

    /// Whether the column was sent.
    pub fn has(&self, column: usize) -> bool {
        self.sent.contains(&column)
    }

    /// The value at a row and a column of `ALL`; none where it was not read.
    pub fn value<Q: Quantity>(&self, row: usize, column: usize) -> Option<Q> {
        debug_assert_eq!(Q::ROLE.mark, C::ALL[column].role.mark);
        let cell = self.cells.get(row * C::ALL.len() + column).copied();
        cell.flatten().map(Q::from_si)
    }

    /// The pure number at a row and a column of `ALL`; none where it was not read.
    pub fn number(&self, row: usize, column: usize) -> Option<f64> {
        debug_assert_eq!(RATIO.mark, C::ALL[column].role.mark);
        let cell = self.cells.get(row * C::ALL.len() + column).copied();
        cell.flatten()
    }

    /// Pointer to a row, below that of the table.
    pub fn row_pointer(row: usize) -> String {
        format!("/rows/{row}")
    }

    /// Pointer to a cell as it was sent, below that of the table; to the row where its
    /// column was not sent.
    pub fn cell_pointer(&self, row: usize, column: usize) -> String {
        match self.sent.iter().position(|&at| at == column) {
            Some(at) => format!("/rows/{row}/{at}"),
            None => Self::row_pointer(row),
        }
    }

    /// Adds an issue when there are too few or too many rows.
    pub fn lengths(&self, pointer: &str, issues: &mut Vec<Issue>) {
        let rows = format!("{pointer}/rows");
        list_length(issues, rows, self.len(), C::LEAST_ROWS, C::MOST_ROWS);
    }

    /// The places in `ALL` that were sent, in the order of `ALL`.
    fn present(&self) -> Vec<usize> {
        (0..C::ALL.len()).filter(|&at| self.has(at)).collect()
    }
}

#[derive(Serialize)]
struct Head {
    name: &'static str,
    unit: &'static str,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename = "column")]
struct HeadWire {
    name: String,
    unit: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename = "table")]
struct Wire {
    columns: Vec<HeadWire>,
    rows: Vec<Vec<Option<f64>>>,
}

impl<C: Columns> Serialize for Table<C> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let present = self.present();
        let head = |at: &usize| Head {
            name: C::ALL[*at].name,
            unit: C::ALL[*at].role.base.name,
        };
        let heads: Vec<Head> = present.iter().map(head).collect();
        let of_row = |row: &[Option<f64>]| present.iter().map(|at| row[*at]).collect();
        let rows: Vec<Vec<Option<f64>>> = self.cells.chunks(C::ALL.len()).map(of_row).collect();
        let mut out = s.serialize_struct("Table", 2)?;
        out.serialize_field("columns", &heads)?;
        out.serialize_field("rows", &rows)?;
        out.end()
    }
}

impl<'de, C: Columns> Deserialize<'de> for Table<C> {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let mut wire = Wire::deserialize(d)?;
        let mut sent = Vec::new();
        let mut units = Vec::new();
        for head in &wire.columns {
            let at = C::ALL.iter().position(|c| c.name == head.name);
            let at = at.ok_or_else(|| D::Error::custom(unknown_column::<C>(&head.name)))?;
            if sent.contains(&at) {
                let told = format!("duplicate column `{}`", head.name);
                return Err(D::Error::custom(told));
            }
            let role = C::ALL[at].role;
            let unit = role.units.iter().find(|u| u.name == head.unit);
            units.push(unit.ok_or_else(|| D::Error::custom(role.unknown_unit(&head.unit)))?);
            sent.push(at);
        }
        for (at, row) in wire.rows.iter_mut().enumerate() {
            if row.len() != sent.len() {
                let told = format!("row {at} has {} numbers, not {}", row.len(), sent.len());
                return Err(D::Error::custom(told));
            }
            for (cell, unit) in row.iter_mut().zip(&units) {
                *cell = cell.map(|value| value * unit.factor + unit.offset);
            }
        }
        let told = "a column that is needed, or a number in it, is missing";
        Self::new(sent, &wire.rows).ok_or_else(|| D::Error::custom(told))
    }
}

fn unknown_column<C: Columns>(got: &str) -> String {
    let known: Vec<String> = C::ALL.iter().map(|c| format!("`{}`", c.name)).collect();
    format!(
        "unknown variant `{got}`, expected one of {}",
        known.join(", ")
    )
}

impl<C: Columns> Validate for Table<C> {
    /// The range of each cell; a fault is filed under row and column as sent.
    fn validate(&self) -> Result<(), ValidationErrors> {
        let mut rows = BTreeMap::new();
        for (row, line) in self.cells.chunks(C::ALL.len()).enumerate() {
            let mut faults = ValidationErrors::new();
            for (at, column) in self.sent.iter().enumerate() {
                if let Some(fault) = line[*column].and_then(|v| out_of_range(&C::ALL[*column], v)) {
                    let fault = ValidationErrorsKind::Field(vec![fault]);
                    faults.errors_mut().insert(at.to_string().into(), fault);
                }
            }
            if !faults.is_empty() {
                rows.insert(row, Box::new(faults));
            }
        }
        if rows.is_empty() {
            return Ok(());
        }
        let mut all = ValidationErrors::new();
        let rows = ValidationErrorsKind::List(rows);
        all.errors_mut().insert("rows".into(), rows);
        Err(all)
    }
}

fn out_of_range(column: &Column, value: f64) -> Option<ValidationError> {
    if (column.least..=column.most).contains(&value) {
        return None;
    }
    let mut error = ValidationError::new("range");
    let of = |value: f64| json!({ "value": value, "unit": column.role.base.name });
    error.add_param("min".into(), &of(column.least));
    error.add_param("max".into(), &of(column.most));
    error.add_param("value".into(), &of(value));
    error.add_param("role".into(), &column.role.name);
    Some(error)
}
