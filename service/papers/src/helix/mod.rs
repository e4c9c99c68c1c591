//! The sheet of `helix-capacity`: one section of the ground to scale with the pile in it,
//! the layers in words on its left, helices and water on its right, and the capacity over
//! the depth of the lowest helix on the same depths. The reading of the answer is beside.

mod cells;
mod curve;
mod facts;
mod frame;
mod ground;
mod legend;
mod levels;
mod notes;
mod pile;
mod reading;
mod side;
mod table;

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::helix::{Outcome, Request};
use bearwell_engine::quantity::System;

use crate::page::{self, MARGIN};
use crate::svg::{Rect, Svg};
use crate::{foot, panel, words};
use frame::Frame;
use reading::Subject;

/// Width of the reading column, mm.
const SIDE: f64 = 66.0;
/// Gap between section and reading column, mm.
const GAP: f64 = 3.0;

/// Draws the section of an answer as an SVG sheet in the given units, on the given paper.
///
/// Landscape sheet, in millimetres. Depths are to a scale of a common rule, widths of the
/// pile to the same scale or to a whole multiple of it that the sheet states. Black on
/// white: kinds of ground, lines and marks are told apart by their form. Labels are
/// escaped. The same answer gives the same bytes.
pub fn helix_svg(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    paper: Paper,
) -> String {
    let sheet = page::sheet(paper);
    let inner = sheet.grown(-MARGIN);
    // a section shows the ground from final grade
    let (soil, places) = request.soil.at_final_grade();
    let found = reading::found(request, answer, &places);
    let graded = Request {
        soil,
        ..request.clone()
    };
    let s = Subject {
        request: &graded,
        answer,
        system,
        strata: &request.soil.strata(),
        found: &found,
        grade_change: request.soil.grade_change,
    };
    let (heading, _) = words::verdict(answer.verdict);
    let title = format!("Helix capacity of {}: {heading}", request.pile.name());
    let mut svg = Svg::new(sheet.w, sheet.h, &title);

    let foot = foot::lines(&answer.cautions, inner.w);
    let foot_height = panel::height(foot.len()) + 1.6;
    let above = Rect {
        h: inner.h - foot_height,
        ..inner
    };
    let legend = legend::entries(s);
    let strip = legend::height(&legend);
    let frame = Frame::new(
        s,
        Rect {
            w: above.w - SIDE - GAP,
            h: above.h - strip - 2.0,
            ..above
        },
    );
    let unlabelled = section(&mut svg, s, &frame);
    legend::draw(
        &mut svg,
        s,
        &frame,
        &legend,
        Rect {
            y: above.bottom() - strip,
            h: strip,
            w: frame.area.w,
            ..above
        },
    );
    let side = Rect {
        x: inner.right() - SIDE,
        w: SIDE,
        h: above.h - 1.0,
        ..above
    };
    let scales = frame.told(page::sheet_name(paper));
    side::draw(&mut svg, s, &scales, &unlabelled, side);
    foot::draw(
        &mut svg,
        &foot,
        Rect {
            y: above.bottom(),
            h: foot_height,
            ..inner
        },
    );
    svg.finish()
}

/// The section with all that stands beside it; returns the layers without a text of their
/// own.
fn section(svg: &mut Svg, s: Subject, frame: &Frame) -> Vec<usize> {
    let unlabelled = cells::draw(svg, s, frame);
    ground::draw(svg, s, frame);
    pile::draw(svg, s, frame);
    notes::draw(svg, s, frame);
    curve::draw(svg, s, frame);
    unlabelled
}
