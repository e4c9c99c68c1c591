//! The sheet of `load-test`: load against displacement to scale, with the elastic line, the
//! line of the criterion in force and a point for each criterion; beside it the answer in
//! words and every criterion with its load, or why it has none.

mod csv;
mod facts;
mod key;
mod plot;
mod reading;
mod side;

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::load_test::{Outcome, Request};
use bearwell_engine::quantity::System;

pub use csv::load_test_csv;

use crate::page::{self, MARGIN};
use crate::svg::{Rect, Svg};
use crate::{foot, panel, words};
use reading::Subject;

/// Width of the reading column, mm.
const SIDE: f64 = 76.0;
/// Gap between chart and reading column, mm.
const GAP: f64 = 4.0;

/// Draws the load-displacement curve of an answer as an SVG sheet in the given units, on the
/// given paper.
///
/// Landscape sheet, in millimetres; the axes have round ticks in the reader's units. Black on
/// white: lines and marks are told apart by their form. Labels are escaped. The same answer
/// gives the same bytes.
pub fn load_test_svg(
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
    let (heading, _) = words::verdict(answer.verdict);
    let of = request
        .label
        .as_ref()
        .map_or(String::new(), |l| format!(" of {l}"));
    let mut svg = Svg::new(sheet.w, sheet.h, &format!("Load test{of}: {heading}"));

    let told = foot::lines(&answer.cautions, inner.w);
    let foot_height = panel::height(told.len()) + 1.6;
    let above = Rect {
        h: inner.h - foot_height,
        ..inner
    };
    let entries = key::entries(s);
    let strip = key::height(&entries);
    let left = Rect {
        w: above.w - SIDE - GAP,
        h: above.h - strip - 2.0,
        ..above
    };
    let unlabelled = plot::draw(&mut svg, s, left);
    let below = Rect {
        y: above.bottom() - strip,
        h: strip,
        ..left
    };
    key::draw(&mut svg, &entries, below);
    let beside = Rect {
        x: inner.right() - SIDE,
        w: SIDE,
        h: above.h - 1.0,
        ..above
    };
    side::draw(&mut svg, s, &unlabelled, beside);
    let area = Rect {
        y: above.bottom(),
        h: foot_height,
        ..inner
    };
    foot::draw(&mut svg, &told, area);
    svg.finish()
}
