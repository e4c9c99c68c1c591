//! The sheet of `installation-record`: torque and advance over depth, the pile beside them at
//! the depth it reached, and what its helices must be clear of. The reading of the answer is
//! beside.

mod advance;
pub mod facts;
mod frame;
mod ground;
mod legend;
pub mod levels;
mod notes;
pub mod reading;
pub mod steps;
mod table;
pub mod torque;

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::quantity::System;
use bearwell_engine::record::{GroundKnown, Outcome, Request};

use crate::page::{self, MARGIN};
use crate::svg::{Rect, Svg};
use crate::{foot, panel, ruler, words};
use frame::Frame;
use reading::Subject;

pub use table::record_csv;

/// Width of the reading column, mm.
const SIDE: f64 = 66.0;
/// Gap between drawing and reading column, mm.
const GAP: f64 = 3.0;

/// Draws the log of an answer as an SVG sheet in the given units, on the given paper.
///
/// Landscape sheet, in millimetres. Depths are to a scale of a common rule, widths of the
/// pile to the same scale or to a whole multiple of it that the sheet states. Black on
/// white: readings, levels and kinds of ground are told apart by their form. Labels are
/// escaped. The same answer gives the same bytes.
pub fn record_svg(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    paper: Paper,
) -> String {
    let sheet = page::sheet(paper);
    let inner = sheet.grown(-MARGIN);
    let profile = match &request.ground {
        Some(GroundKnown::Profile(profile)) => Some(profile.at_final_grade().0),
        _ => None,
    };
    let s = Subject {
        request,
        answer,
        system,
        profile: profile.as_ref(),
        steps: &steps::steps(request, &answer.result),
    };
    let (heading, _) = words::verdict(answer.verdict);
    let title = format!("Installation record of {}: {heading}", request.name());
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
    notes::draw(&mut svg, s, &frame);
    ruler::draw(
        &mut svg,
        frame.field,
        frame.depths.factor,
        frame.depths.end,
        system,
    );
    torque::draw(&mut svg, s, &frame);
    advance::draw(&mut svg, s, &frame);
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
    facts::draw(
        &mut svg,
        s,
        &frame.depths.told(page::sheet_name(paper)),
        side,
    );
    let below = Rect {
        y: above.bottom(),
        h: foot_height,
        ..inner
    };
    foot::draw(&mut svg, &foot, below);
    svg.finish()
}
