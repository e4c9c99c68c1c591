//! The ways out as a table, a row for each.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::quantity::{Length, RATIO, System};
use bearwell_engine::relocation::{GoverningCheck, Outcome, Request, WayOut, WayOutKind};

use super::{rows, told};
use crate::csv::{Csv, Field};
use crate::words;

/// Writes the ways out of an answer as CSV in the given units, best first; the header alone
/// where none were sought or found. A limit that would have to give way has no row.
pub fn ways_out_csv(_: &Request, answer: &Answer<Outcome>, system: System, _: Paper) -> String {
    let mut csv = Csv::new(system);
    csv.column("rank", RATIO);
    for name in ["option", "kind", "verdict", "what", "free"] {
        csv.text_column(name);
    }
    csv.column("pile_utilisation_ratio", RATIO);
    csv.column("beam_utilisation_ratio", RATIO);
    csv.column("utilisation_ratio", RATIO);
    for name in ["failed", "open"] {
        csv.text_column(name);
    }
    for name in ["extra_pile_count", "larger_pile_count", "change_count"] {
        csv.column(name, RATIO);
    }
    csv.column("movement", Length::ROLE);
    csv.column("cost", RATIO);
    csv.text_column("currency");
    let report = answer.result.ways_out.as_ref();
    let options = report.iter().flat_map(|r| &r.options);
    for (i, way) in options.enumerate() {
        csv.row(fields(i, way, system));
    }
    csv.finish()
}

fn fields(index: usize, way: &WayOut, system: System) -> [Field; 17] {
    let events: Vec<String> = way.events.iter().map(|e| told::event(e, system)).collect();
    let places = told::stretches(&way.stretches, system);
    let beside = way.offsets.as_ref().and_then(|o| told::offsets(o, system));
    let free: Vec<String> = [places, beside].into_iter().flatten().collect();
    let cost = way.cost.as_ref();
    let count = |n: u32| Field::of(f64::from(n));
    [
        count(way.rank),
        Field::text(rows::letter(index)),
        Field::text(kind(way.kind)),
        Field::text(words::verdict_code(way.verdict)),
        Field::text(events.join("; ")),
        Field::text(free.join("; ")),
        Field::maybe(way.pile_utilisation_ratio),
        Field::maybe(way.beam_utilisation_ratio),
        Field::maybe(way.utilisation_ratio),
        Field::text(codes(&way.failed)),
        Field::text(codes(&way.open)),
        count(way.extra_pile_count),
        count(way.larger_pile_count),
        count(way.change_count),
        Field::of(way.movement),
        Field::maybe(cost.map(|c| c.value)),
        Field::text(cost.and_then(|c| c.currency.clone()).unwrap_or_default()),
    ]
}

/// Checks with what they are about, each once.
fn codes(checks: &[GoverningCheck]) -> String {
    let mut all: Vec<String> = Vec::new();
    for check in checks {
        let about = check.subject.as_ref().map(|s| format!(" {}", s.label));
        let text = format!("{}{}", check.check, about.unwrap_or_default());
        if !all.contains(&text) {
            all.push(text);
        }
    }
    all.join("; ")
}

/// The name of a kind, as the answer writes it.
fn kind(kind: WayOutKind) -> &'static str {
    match kind {
        WayOutKind::LeaveOut => "leave_out",
        WayOutKind::ShiftAlong => "shift_along",
        WayOutKind::ShiftOff => "shift_off",
        WayOutKind::StraddlingPair => "straddling_pair",
        WayOutKind::LargerPiles => "larger_piles",
        WayOutKind::ExtraPile => "extra_pile",
        WayOutKind::StrongerBeam => "stronger_beam",
    }
}
