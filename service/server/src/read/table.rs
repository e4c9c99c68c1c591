//! Faults in the shape of a table: what hangs together among its columns and rows. Runs after
//! its members were walked one by one; what `x-table` tells is in the engine.

use bearwell_engine::catalogue::refusals;
use bearwell_engine::quantity::{RATIO, ROLES};
use serde_json::Value;

use super::pointer::Pointer;
use super::tree::Node;
use super::walk::Walker;

impl Walker<'_> {
    /// Faults of a table whose columns are `told`.
    pub(super) fn table(&mut self, members: &[(String, Node)], told: &Value, place: &mut Pointer) {
        let told = told.as_array().map(Vec::as_slice).unwrap_or_default();
        let list = |name: &str| match members.iter().find(|(given, _)| given == name) {
            Some((_, Node::List(items))) => Some(items.as_slice()),
            _ => None,
        };
        let Some(columns) = list("columns") else {
            return;
        };
        let names: Vec<Option<&str>> = columns.iter().map(|c| text(c, "name")).collect();
        let known: Vec<Option<&Value>> = names.iter().map(|name| found(told, *name)).collect();
        place.inside("columns", |place| {
            for (at, column) in columns.iter().enumerate() {
                place.inside(at, |place| {
                    let before = &names[..at];
                    self.column(before, names[at], known[at], text(column, "unit"), place);
                });
            }
        });
        for column in told.iter().filter(|c| c["required"] == true) {
            let name = column["name"].as_str().unwrap_or_default();
            if !names.contains(&Some(name)) {
                let detail = format!("the column `{name}` is required");
                self.fault(place.to_string(), &refusals::MISSING_MEMBER, detail);
            }
        }
        let Some(rows) = list("rows") else {
            return;
        };
        place.inside("rows", |place| {
            for (at, row) in rows.iter().enumerate() {
                if let Node::List(cells) = row {
                    place.inside(at, |place| self.row(cells, &known, place));
                }
            }
        });
    }

    fn column(
        &mut self,
        before: &[Option<&str>],
        name: Option<&str>,
        told: Option<&Value>,
        unit: Option<&str>,
        place: &Pointer,
    ) {
        // a name that is not known is a fault of its own
        let (Some(name), Some(told)) = (name, told) else {
            return;
        };
        if before.contains(&Some(name)) {
            let detail = format!("the column `{name}` stands twice");
            self.fault(place.to("name"), &refusals::DUPLICATE_MEMBER, detail);
        }
        let role = ROLES.iter().find(|role| told["quantity"] == role.name);
        let role = role.copied().unwrap_or(RATIO);
        if let Some(unit) = unit
            && role.units.iter().all(|known| known.name != unit)
        {
            let detail = role.unknown_unit(unit);
            self.fault(place.to("unit"), &refusals::UNKNOWN_UNIT, detail);
        }
    }

    fn row(&mut self, cells: &[Node], known: &[Option<&Value>], place: &mut Pointer) {
        if cells.len() != known.len() {
            let code = if cells.len() < known.len() {
                &refusals::LIST_TOO_SHORT
            } else {
                &refusals::LIST_TOO_LONG
            };
            let detail = format!("{} numbers for {} columns", cells.len(), known.len());
            self.fault(place.to_string(), code, detail);
        }
        for (at, (cell, told)) in cells.iter().zip(known).enumerate() {
            // where no column may be empty, the walk of the members has said so
            if *cell == Node::Null && told.is_some_and(|c| c["required"] == true) {
                self.no_number(place.to(at));
            }
        }
    }

    fn no_number(&mut self, pointer: String) {
        let detail = "a number is expected, not null".to_owned();
        self.fault(pointer, &refusals::WRONG_TYPE, detail);
    }
}

fn text<'a>(column: &'a Node, member: &str) -> Option<&'a str> {
    let Node::Object(members) = column else {
        return None;
    };
    match members.iter().find(|(name, _)| name == member) {
        Some((_, Node::Text(text))) => Some(text),
        _ => None,
    }
}

fn found<'a>(told: &'a [Value], name: Option<&str>) -> Option<&'a Value> {
    told.iter()
        .find(|column| column["name"].as_str() == name && name.is_some())
}
