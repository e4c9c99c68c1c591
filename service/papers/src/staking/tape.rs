//! Distances for the tape as one table: along string lines, across frames, from the ends of
//! the base to the corners.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::layout::{Outcome, PlanPoint, Request, StringLine, TapeDistance};
use bearwell_engine::quantity::{Length, System};

use crate::csv::{Csv, Field};

/// Writes the taped distances as CSV in the given units, a row for each: `running` from the
/// start of a string line, `gap` from the pile before, `length` of the line, `diagonal`,
/// `base` and `tie`. A point without a pile is told by its place. Without staking only the
/// header.
pub fn tape_csv(_: &Request, answer: &Answer<Outcome>, system: System, _: Paper) -> String {
    let mut table = Table::new(system);
    let Some(staking) = &answer.result.staking else {
        return table.csv.finish();
    };
    for line in &staking.string_lines {
        table.line(line);
    }
    for frame in &staking.frames {
        for diagonal in &frame.diagonals {
            table.distance("diagonal", &frame.beams.join(" "), diagonal);
        }
    }
    if let Some(ties) = &staking.corner_ties {
        table.distance("base", "", &ties.base);
        let base = &ties.base;
        for tie in &ties.ties {
            let to = (tie.pile.as_deref(), &tie.at);
            let start = (base.from_pile.as_deref(), &base.from);
            let end = (base.to_pile.as_deref(), &base.to);
            table.row("tie", "", start, to, tie.from_start, &tie.from_start_text);
            table.row("tie", "", end, to, tie.from_end, &tie.from_end_text);
        }
    }
    table.csv.finish()
}

/// A point: the pile that stands there, and its place.
type End<'a> = (Option<&'a str>, &'a PlanPoint);

struct Table {
    csv: Csv,
    system: System,
}

impl Table {
    fn new(system: System) -> Self {
        let mut csv = Csv::new(system);
        for name in ["kind", "beams", "from", "to"] {
            csv.text_column(name);
        }
        csv.column("distance", Length::ROLE);
        csv.text_column("distance_text");
        Self { csv, system }
    }

    fn line(&mut self, line: &StringLine) {
        let beams = line.beams.join(" ");
        let start = (line.from.pile.as_deref(), &line.from.at);
        let end = (line.to.pile.as_deref(), &line.to.at);
        let mut before = None;
        for pile in &line.piles {
            let to = (Some(pile.label.as_str()), &line.from.at);
            self.row(
                "running",
                &beams,
                start,
                to,
                pile.from_start,
                &pile.from_start_text,
            );
            if let (Some(gap), Some(text)) = (pile.from_previous, &pile.from_previous_text) {
                let from = (before, &line.from.at);
                self.row("gap", &beams, from, to, gap, text);
            }
            before = Some(pile.label.as_str());
        }
        self.row("length", &beams, start, end, line.length, &line.length_text);
    }

    fn distance(&mut self, kind: &str, beams: &str, d: &TapeDistance) {
        let from = (d.from_pile.as_deref(), &d.from);
        let to = (d.to_pile.as_deref(), &d.to);
        self.row(kind, beams, from, to, d.distance, &d.distance_text);
    }

    fn row(&mut self, kind: &str, beams: &str, from: End, to: End, length: Length, text: &str) {
        self.csv.row([
            Field::text(kind),
            Field::text(beams),
            Field::text(self.told(from)),
            Field::text(self.told(to)),
            Field::of(length),
            Field::text(text),
        ]);
    }

    /// A pile by its label, another point by its place on the plan.
    fn told(&self, (pile, at): End) -> String {
        let unit = Length::ROLE.unit(self.system);
        match pile {
            Some(label) => label.to_owned(),
            None => format!(
                "({}, {}) {}",
                unit.printed(at.x.si()),
                unit.printed(at.y.si()),
                unit.name
            ),
        }
    }
}
