//! The table of `installation-record`: a line for each row of the log as it was judged.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::quantity::{Length, RATIO, RotationalSpeed, System, Torque};
use bearwell_engine::record::{Outcome, Request, RowStanding};

use crate::csv::{Csv, Field};

/// The rows of a log as they were judged, as CSV in the given units: depth, torque, how the
/// row stands, advance in a turn over pitch, speed, and what was written beside it.
pub fn record_csv(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    _paper: Paper,
) -> String {
    let mut csv = Csv::new(system);
    csv.column("row", RATIO);
    csv.column("depth", Length::ROLE);
    csv.column("torque", Torque::ROLE);
    csv.text_column("standing");
    csv.column("advance_ratio", RATIO);
    csv.column("rotation_speed", RotationalSpeed::ROLE);
    csv.text_column("note");
    for (at, row) in answer.result.rows.iter().enumerate() {
        let notes: Vec<&str> = request
            .notes
            .iter()
            .flatten()
            .filter(|note| note.row == at)
            .map(|note| note.text.as_str())
            .collect();
        let note = match notes.is_empty() {
            true => Field::Empty,
            false => Field::text(notes.join("; ")),
        };
        csv.row([
            Field::of(at as f64),
            Field::of(row.depth),
            Field::maybe(row.torque),
            Field::text(code(row.standing)),
            Field::maybe(row.advance_ratio),
            Field::maybe(row.rotation_speed),
            note,
        ]);
    }
    csv.finish()
}

/// As in the JSON answer.
fn code(standing: RowStanding) -> &'static str {
    match standing {
        RowStanding::Counts => "counts",
        RowStanding::Spike => "spike",
        RowStanding::Unconfirmed => "unconfirmed",
        RowStanding::NotFresh => "not_fresh",
        RowStanding::NoTorque => "no_torque",
    }
}
