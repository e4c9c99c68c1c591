//! The sheet of `frost-embedment`: one section to scale with pile, beam and void form, the
//! depths that count, and each force as an arrow over the depths between which it acts. The
//! reading of the answer is beside.

mod detail;
mod facts;
mod forces;
mod frame;
mod ground;
mod legend;
mod levels;
mod notes;
mod pile;
mod reading;
mod tables;

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::frost::{Outcome, Request};
use bearwell_engine::quantity::System;

use crate::page::{self, MARGIN};
use crate::svg::{Rect, Svg};
use crate::{foot, panel, ruler, words};
use frame::Frame;
use reading::Subject;

/// Width of the reading column, mm.
const SIDE: f64 = 66.0;
/// Gap between drawing and reading column, mm.
const GAP: f64 = 3.0;

/// Draws the section of an answer as an SVG sheet in the given units, on the given paper.
///
/// Landscape sheet, in millimetres. Depths are to a scale of a common rule, widths of pile
/// and beam to the same scale or to a whole multiple of it that the sheet states. Black on
/// white: frost lines, zones and forces are told apart by their form. Labels are escaped. The
/// same answer gives the same bytes.
pub fn frost_svg(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    paper: Paper,
) -> String {
    let sheet = page::sheet(paper);
    let inner = sheet.grown(-MARGIN);
    let profile = reading::profile(request);
    let s = Subject {
        request,
        answer,
        system,
        profile: profile.as_ref(),
    };
    let (heading, _) = words::verdict(answer.verdict);
    let title = format!("Frost embedment of {}: {heading}", request.pile.name());
    let mut svg = Svg::new(sheet.w, sheet.h, &title);

    let foot = foot::lines(&answer.cautions, inner.w);
    let foot_height = panel::height(foot.len()) + 1.6;
    let above = Rect {
        h: inner.h - foot_height,
        ..inner
    };
    let drawing = Rect {
        w: above.w - SIDE - GAP,
        h: above.h - legend::HEIGHT - 1.6,
        ..above
    };
    let frame = Frame::new(s, drawing);
    ground::draw(&mut svg, s, &frame);
    pile::draw(&mut svg, s, &frame);
    notes::draw(&mut svg, s, &frame);
    let depths = &frame.depths;
    ruler::draw(&mut svg, frame.ruled, depths.factor, depths.end, system);
    let floor = detail::draw(&mut svg, s, &frame);
    forces::draw(&mut svg, s, &frame, floor);
    let strip = Rect {
        y: above.bottom() - legend::HEIGHT,
        h: legend::HEIGHT,
        w: drawing.w,
        ..above
    };
    legend::draw(&mut svg, s, &frame, strip);
    let side = Rect {
        x: inner.right() - SIDE,
        w: SIDE,
        h: above.h - 1.0,
        ..above
    };
    facts::draw(&mut svg, s, &depths.told(page::sheet_name(paper)), side);
    let below = Rect {
        y: above.bottom(),
        h: foot_height,
        ..inner
    };
    foot::draw(&mut svg, &foot, below);
    svg.finish()
}
