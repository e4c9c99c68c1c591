//! The sheet of `pile-relocation`: one page on which an engineer can decide. The plan with what
//! became of its piles, what lies around the pile in question to a larger scale, a row for each
//! way out with its figures, and an empty field for the answer.

mod answer;
mod crop;
mod csv;
mod facts;
mod options;
mod pictures;
mod rows;
mod skeleton;
mod told;

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::quantity::System;
use bearwell_engine::relocation::{Outcome, Request};

use crate::page::{self, MARGIN};
use crate::svg::{Rect, Svg};
use crate::{foot, panel, words};
use options::Table;
use pictures::Pictures;

pub use csv::ways_out_csv;

/// Width of the reading column, mm.
const SIDE: f64 = 60.0;
/// Gap between drawings and reading column, mm.
const GAP: f64 = 4.0;
/// Least height of the drawings, mm.
const DRAWINGS: f64 = 82.0;
/// Gap below the table and below the drawings, mm.
const BELOW: f64 = 2.2;

/// Everything a sheet is drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// What was asked.
    pub request: &'a Request,
    /// What was answered.
    pub answer: &'a Answer<Outcome>,
    /// Units of the sheet.
    pub system: System,
}

/// Draws the request for decision as an SVG sheet in the given units, on the given paper.
///
/// Landscape sheet, in millimetres, one page. Ways out that find no room in the table are
/// counted there and stand in the answer. Black on white: piles, verdicts and stretches are told
/// apart by their form. Labels are escaped. The same answer gives the same bytes.
pub fn decision_svg(
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
    let title = format!("Request for decision, {}: {heading}", facts::about(s));
    let mut svg = Svg::new(sheet.w, sheet.h, &title);

    let foot = foot::lines(&answer.cautions, inner.w);
    let foot_height = panel::height(foot.len()) + 1.6;
    let field = Rect {
        y: inner.bottom() - foot_height - BELOW - answer::HEIGHT,
        h: answer::HEIGHT,
        ..inner
    };
    let rows = rows::rows(s);
    let most = field.y - inner.y - DRAWINGS - 2.0 * BELOW;
    let table = Table::of(&rows, &rows::currency(s), inner.w, most);
    let area = Rect {
        y: field.y - BELOW - table.height(),
        h: table.height(),
        ..inner
    };
    let above = Rect {
        h: area.y - BELOW - inner.y,
        ..inner
    };
    let drawings = Rect {
        w: above.w - SIDE - GAP,
        ..above
    };
    let scales = Pictures::of(s, drawings).draw(&mut svg, drawings);
    let side = Rect {
        x: inner.right() - SIDE,
        w: SIDE,
        ..above
    };
    facts::draw(&mut svg, s, &scales, page::sheet_name(paper), side);
    table.draw(&mut svg, area);
    answer::draw(&mut svg, field);
    let below = Rect {
        y: inner.bottom() - foot_height,
        h: foot_height,
        ..inner
    };
    foot::draw(&mut svg, &foot, below);
    svg.finish()
}
