//! The column beside the drawings: what happened, what it changes, whether anything works.

use bearwell_engine::contract::Verdict;
use bearwell_engine::relocation::{MovedPile, RelocatedPile, WaysOutReport};

use super::{Subject, told};
use crate::column::{self, Item, Lead};
use crate::svg::{Rect, Svg};
use crate::{panel, words};

/// Most piles whose change is told.
const PILES: usize = 3;
/// Most events that are told.
const EVENTS: usize = 6;
/// Least change that is told, as a part.
const CHANGE: f64 = 0.005;

/// What the sheet is about.
pub fn about(s: Subject) -> String {
    let pile = match &s.answer.result.ways_out {
        Some(report) => Some(report.pile.as_str()),
        None => s.request.events.iter().rev().find_map(told::pile_of),
    };
    pile.map_or("the plan".to_owned(), |label| format!("pile {label}"))
}

/// Draws the column from top to bottom.
pub fn draw(svg: &mut Svg, s: Subject, missing: &[String], paper: &str, area: Rect) {
    let y = panel::verdict(svg, "Request for decision", s.answer.verdict, area) + 1.4;
    let rest = Rect {
        y,
        h: area.bottom() - y,
        ..area
    };
    column::draw(svg, &items(s, missing, paper), rest);
}

fn items(s: Subject, missing: &[String], paper: &str) -> Vec<Item> {
    let result = &s.answer.result;
    let mut all = vec![Item::heading("What happened")];
    all.extend(events(s).into_iter().map(Item::plain));
    let changed: Vec<String> = result
        .moved
        .iter()
        .flat_map(|m| moment(s, m))
        .chain(changes(s))
        .collect();
    if !changed.is_empty() {
        all.push(Item::heading("What it changes"));
        all.extend(changed.into_iter().map(Item::plain));
    }
    if let Some(report) = &result.ways_out {
        all.push(Item::heading("Ways out"));
        all.extend(found(report));
    }
    all.extend(told::bars(result.reinforcement.len()).map(Item::plain));
    all.extend(panel::warned(&s.answer.warnings).map(Item::plain));
    all.push(Item::plain(format!(
        "Loads: {}.",
        words::basis(&result.layout.design_basis)
    )));
    all.extend(missing.iter().map(Item::plain));
    let provenance = panel::provenance(&s.answer.provenance);
    all.push(Item::plain(format!("{paper}, landscape. {provenance}")));
    all
}

/// The events, the last ones first where there are many.
fn events(s: Subject) -> Vec<String> {
    let events = &s.request.events;
    let mut told: Vec<String> = events
        .iter()
        .rev()
        .take(EVENTS)
        .map(|event| {
            let why = told::why(event).map_or(String::new(), |w| format!(" ({w})"));
            format!("{}{why}.", told::event(event, s.system))
        })
        .collect();
    told.reverse();
    if events.len() > EVENTS {
        let before = words::count(events.len() - EVENTS);
        told.insert(0, format!("{before} earlier events; the last ones:"));
    }
    told
}

/// The moment of a pile off its line, and its clear distance to the form.
fn moment(s: Subject, pile: &MovedPile) -> Vec<String> {
    let mut all = Vec::new();
    if let Some(e) = &pile.eccentricity {
        let by_tributary = e.by_tributary.map_or(String::new(), |m| {
            format!(" (tributary {})", told::moment(m, s.system))
        });
        all.push(format!(
            "{} off its line: {}{by_tributary} about the axis of {}.",
            pile.label,
            told::moment(e.by_reaction, s.system),
            pile.beam
        ));
    }
    if let Some(clear) = pile.plate_to_form {
        all.push(format!(
            "{}: plate {} from the form.",
            pile.label,
            words::size_told(clear, s.system)
        ));
    }
    all
}

/// The piles whose load changes most, by both models.
fn changes(s: Subject) -> Vec<String> {
    let size = |p: &RelocatedPile| p.compression.change_ratio.map_or(0.0, f64::abs);
    let mut piles: Vec<&RelocatedPile> = s
        .answer
        .result
        .piles
        .iter()
        .filter(|p| size(p) >= CHANGE)
        .collect();
    piles.sort_by(|a, b| size(b).total_cmp(&size(a)));
    let told = piles.into_iter().take(PILES).filter_map(|p| {
        let unit = format!(" {}", words::force_unit(s.system));
        let continuous = told::forces(&p.compression, &unit, s.system)?;
        let tributary = p
            .tributary
            .as_ref()
            .and_then(|t| told::forces(t, "", s.system))
            .map_or(String::new(), |t| format!(", tributary {t}"));
        Some(format!("{}: {continuous}{tributary}.", p.label))
    });
    told.collect()
}

/// How many ways out there are, and what would have to give where there is none.
fn found(report: &WaysOutReport) -> Vec<Item> {
    let feasible = report.feasible_count as usize;
    let looked = if report.complete {
        "every place within the limits was looked at"
    } else {
        "the search ended at its limit before every place was looked at"
    };
    let text = match feasible {
        0 => format!("Nothing works for {}; {looked}.", report.pile),
        1 => format!("One for {} with nothing failing; {looked}.", report.pile),
        n => format!(
            "{} for {} with nothing failing; {looked}.",
            words::count(n),
            report.pile
        ),
    };
    let lead = if feasible == 0 {
        Lead::Fail
    } else {
        Lead::Verdict(Verdict::Accept)
    };
    let mut all = vec![Item {
        lead,
        ..Item::plain(text)
    }];
    if feasible == 0 && report.relax.as_ref().is_some_and(|r| !r.is_empty()) {
        all.push(Item::plain(
            "Limits that could give way: last in the table.",
        ));
    }
    all
}
