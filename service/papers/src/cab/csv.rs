//! The card for the cab as a table: its steps, and target and limit as the operator reads
//! them.

use bearwell_engine::answer_table::AnswerTable;
use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::quantity::{Pressure, RATIO, System, Torque};
use bearwell_engine::torque::{CabGear, CabMark, Outcome, Request};

use super::reading::{pressure_in, rows, torque_in};
use crate::csv::{Csv, Field};

/// Writes the card of an answer as CSV in the given units: a row for each step, marked by
/// `kind`, then the target rounded up and the limit rounded down. Without a card only the
/// header.
pub fn cab_card_csv(_: &Request, answer: &Answer<Outcome>, system: System, _: Paper) -> String {
    let mut csv = Csv::new(system);
    csv.text_column("pile");
    csv.text_column("kind");
    csv.column("part_of_target", RATIO);
    csv.column("torque", Torque::ROLE);
    let outcome = &answer.result;
    let Some(card) = &outcome.cab_card else {
        return csv.finish();
    };
    for column in &card.table.columns[2..] {
        csv.column(&column.name, Pressure::ROLE);
    }
    let pile = outcome.label.as_ref().map_or("", |l| l.as_str());
    for row in rows(card) {
        let kind = match (row.target, row.limit) {
            (true, true) => "target_and_shaft_limit",
            (true, false) => "target",
            (false, true) => "shaft_limit",
            (false, false) => "step",
        };
        let mut fields = vec![
            Field::text(pile),
            Field::text(kind),
            Field::of(row.part),
            Field::of(row.torque),
        ];
        fields.extend(row.pressures.into_iter().map(Field::of));
        csv.row(fields);
    }
    let mut mark = |kind: &str, mark: &CabMark| {
        let mut fields = vec![Field::text(pile), Field::text(kind), Field::Empty];
        fields.push(Field::of(torque_in(&mark.cab, system).clone()));
        for gear in &mark.gears {
            fields.extend(rounded(gear, &card.table, mark.gears.len(), system));
        }
        csv.row(fields);
    };
    mark("target_rounded_up", &card.target);
    if let Some(limit) = &card.shaft_limit {
        mark("shaft_limit_rounded_down", limit);
    }
    csv.finish()
}

/// The rounded pressure in the column it is of: that of the inlet where it is known.
fn rounded(gear: &CabGear, table: &AnswerTable, gears: usize, system: System) -> Vec<Field> {
    let pressure = Field::of(pressure_in(&gear.cab, system).clone());
    // two columns, or four, where the inlet pressure is known
    if table.columns.len() - 2 > gears {
        vec![Field::Empty, pressure]
    } else {
        vec![pressure]
    }
}
