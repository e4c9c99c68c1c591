//! The sheets of the card for the cab of the rig: torque against pressure on one scale, with
//! target and limit in large figures beside it; the same as a table.

mod csv;
mod facts;
mod reading;
mod scale;

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::quantity::System;
use bearwell_engine::torque::{Outcome, Request};

pub use csv::cab_card_csv;

use crate::page::{self, MARGIN};
use crate::svg::{Anchor, Rect, Style, Svg, fitted, width};
use crate::{foot, panel, words};

/// Height of the heading, mm.
const HEAD: f64 = 13.0;
/// Width of the figures beside the scale of two gears, mm.
const SIDE: f64 = 94.0;
/// The same beside one gear, or none.
const WIDE_SIDE: f64 = 130.0;
/// Gap between scale and figures, mm.
const GAP: f64 = 5.0;

/// Everything the sheet is drawn from.
#[derive(Debug, Clone, Copy)]
struct Subject<'a> {
    request: &'a Request,
    answer: &'a Answer<Outcome>,
    system: System,
}

/// Draws the card for the cab of an answer as an SVG sheet in the given units, on the given
/// paper.
///
/// Landscape sheet, in millimetres: a scale of torque with the pressure of each gear beside it,
/// and large figures to be read from the seat. Black on white: the target is an arrow with a
/// heavy frame, the limit an eight-sided frame under hatching, told apart by their form alone.
/// Labels are escaped. The same answer gives the same bytes.
pub fn cab_card_svg(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    paper: Paper,
) -> String {
    let sheet = page::sheet(paper);
    let inner = sheet.grown(-MARGIN);
    let s = Subject {
        request,
        answer,
        system,
    };
    let label = answer.result.label.as_ref().map(|l| l.as_str());
    let title = match label {
        Some(label) => format!("Card for the cab, pile {label}"),
        None => "Card for the cab".to_owned(),
    };
    let mut svg = Svg::new(sheet.w, sheet.h, &title);
    let lines = foot::lines(&answer.cautions, inner.w);
    let foot_height = panel::height(lines.len()) + 1.6;
    head(&mut svg, s, &title, inner);
    let body = Rect {
        y: inner.y + HEAD,
        h: inner.h - HEAD - foot_height - 2.0,
        ..inner
    };
    match &answer.result.cab_card {
        Some(card) => {
            let wide = if card.target.gears.len() > 1 {
                SIDE
            } else {
                WIDE_SIDE
            };
            let area = Rect {
                w: body.w - wide - GAP,
                ..body
            };
            scale::draw(&mut svg, s, card, area);
            let side = Rect {
                x: body.right() - wide,
                w: wide,
                ..body
            };
            facts::draw(&mut svg, s, card, side);
        }
        None => svg.text(
            body.x,
            body.y + 8.0,
            "No card was asked for: send `cab_card`.",
            Style::PLAIN.sized(5.0),
        ),
    }
    let area = Rect {
        y: inner.bottom() - foot_height,
        h: foot_height,
        ..inner
    };
    foot::draw(&mut svg, &lines, area);
    svg.finish()
}

/// Title and verdict over a rule.
fn head(svg: &mut Svg, s: Subject, title: &str, inner: Rect) {
    let (heading, _) = words::verdict(s.answer.verdict);
    let verdict = Style::BOLD.sized(5.0).at(Anchor::End);
    let large = Style::BOLD.sized(6.5);
    let y = inner.y + 6.6;
    let room = inner.w - width(heading, verdict) - 6.0;
    svg.text(inner.x, y, &fitted(title, room, large), large);
    svg.text(inner.right(), y, heading, verdict);
    let rule = inner.y + 9.4;
    svg.line(
        (inner.x, rule),
        (inner.right(), rule),
        "stroke=\"#000\" stroke-width=\"0.5\"",
    );
}
