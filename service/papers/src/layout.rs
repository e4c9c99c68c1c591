//! The sheets of `pile-layout`: the plan to scale on the left, the reading of the answer on
//! the right, scale bar, orientation and key below the plan, cautions along the foot.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::layout::{Outcome, Request};
use bearwell_engine::quantity::System;

use crate::figure::Notes;
use crate::page::{self, MARGIN};
use crate::panel::{self, Subject};
use crate::plan::key::{self, Columns};
use crate::svg::{Rect, Svg};
use crate::{figure, strip, table, words};

/// Least width of the reading column, mm.
const SIDE: f64 = 70.0;
/// Gap between plan and reading column, mm.
const GAP: f64 = 4.0;
/// Height of scale bar, orientation and legend, mm.
const STRIP: f64 = 15.5;

/// Least width of the plan with a part of the key beside the scale bar, mm.
const STRIP_LEAST: f64 = 182.0;

/// Draws the plan of an answer as an SVG sheet in the given units, on the given paper.
///
/// Landscape sheet, in millimetres, to a scale of a common rule; black on white, every mark
/// told apart by its shape. Labels are escaped. The same answer gives the same bytes.
pub fn layout_svg(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    paper: Paper,
) -> String {
    draw(request, answer, system, paper, Notes::Loads)
}

/// Draws the same plan with the numbers of the piles alone, without their loads.
pub fn layout_numbers_svg(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    paper: Paper,
) -> String {
    draw(request, answer, system, paper, Notes::Numbers)
}

/// Width of the reading column: many piles ask for a wider table, and have it in three parts
/// where the plan does not become smaller for it.
fn reading_width(s: Subject, notes: Notes, inner: Rect, h: f64) -> f64 {
    let two = table::wanted(s, notes, 2).max(SIDE);
    let three = table::wanted(s, notes, 3);
    let scale = |reading: f64| {
        let w = inner.w - reading - GAP;
        figure::scale(s, Rect { w, h, ..inner }).denominator
    };
    if three > two && scale(three) <= scale(two) {
        three
    } else {
        two
    }
}

fn draw(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    paper: Paper,
    notes: Notes,
) -> String {
    let sheet = page::sheet(paper);
    let inner = sheet.grown(-MARGIN);
    let (heading, _) = words::verdict(answer.verdict);
    let title = format!("Pile layout, {} piles: {heading}", answer.result.pile_count);
    let mut svg = Svg::new(sheet.w, sheet.h, &title);

    let cautions = panel::caution_lines(answer, inner.w);
    let foot = if cautions.is_empty() {
        0.0
    } else {
        panel::height(cautions.len()) + 2.0
    };
    let above = inner.h - foot;
    let subject = Subject {
        request,
        answer,
        system,
    };
    let (mut first, mut further) = key::entries(subject, notes);
    let reading = reading_width(subject, notes, inner, above - STRIP);
    let wide = inner.w - reading - GAP;
    if wide < STRIP_LEAST {
        // no room beside the scale bar
        first.append(&mut further);
        further = std::mem::take(&mut first);
    }
    let columns = (!further.is_empty()).then(|| Columns::of(&further, wide));
    let band = columns.as_ref().map_or(0.0, Columns::height);
    let frame = Rect {
        w: wide,
        h: above - STRIP - band,
        ..inner
    };
    let mut figure = figure::draw(&mut svg, subject, notes, frame);
    let below = Rect {
        y: frame.bottom() + 1.0,
        h: STRIP - 2.0,
        ..frame
    };
    strip::draw(&mut svg, subject, &figure, &first, below);
    if let Some(columns) = columns {
        figure.unexplained_count = columns.left_out;
        let area = Rect {
            y: below.bottom() + 0.8,
            h: band,
            ..frame
        };
        columns.draw(&mut svg, &further, area);
    }
    let side = Rect {
        x: inner.right() - reading,
        w: reading,
        h: above - 1.0,
        ..inner
    };
    panel::side(&mut svg, subject, &figure, page::sheet_name(paper), side);
    if !cautions.is_empty() {
        let area = Rect {
            y: inner.bottom() - foot,
            h: foot,
            ..inner
        };
        panel::cautions(&mut svg, &cautions, area);
    }
    svg.finish()
}
