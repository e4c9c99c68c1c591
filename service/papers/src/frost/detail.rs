//! The void form enlarged: what stays free of it and what is left once it is crushed, beside
//! the heave and the clearance that must go into it.

use bearwell_engine::frost::VoidFormOutcome;
use bearwell_engine::quantity::Size;

use super::frame::Frame;
use super::pile::{self, FORM};
use super::reading::Subject;
use crate::hatch;
use crate::panel::PITCH;
use crate::svg::{Rect, Style, Svg, fitted};
use crate::words;

/// Height of the whole detail with its frame, mm.
const HEIGHT: f64 = 34.0;
/// Greatest width of the detail, mm.
const WIDTH: f64 = 54.0;
/// Width of a bar, mm.
const BAR: f64 = 6.0;
/// Height of the taller bar, mm.
const TALL: f64 = 23.5;
/// Clear edge inside the frame, mm.
const EDGE: f64 = 1.4;

/// Draws the detail at the foot of the lane of forces; returns its upper edge, which is that
/// of the lane's foot where there is no void form.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) -> f64 {
    let lane = frame.told;
    let Some(form) = &s.outcome().void_form else {
        return lane.bottom();
    };
    let area = Rect {
        y: lane.bottom() - HEIGHT,
        h: HEIGHT,
        w: lane.w.min(WIDTH),
        ..lane
    };
    svg.rect(area, "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.25\"");
    let inner = area.grown(-EDGE);
    svg.text(
        inner.x,
        inner.y + 0.78 * PITCH,
        &fitted("void form, enlarged", inner.w, Style::BOLD),
        Style::BOLD,
    );
    let top = inner.y + PITCH + 1.6;
    bars(svg, s, form, (inner.x, top));
    tell(svg, s, form, inner, top);
    area.y - 1.0
}

/// The form on the left, what must go into it on the right, both from the underside down.
fn bars(svg: &mut Svg, s: Subject, form: &VoidFormOutcome, (x, top): (f64, f64)) {
    let needed = form.design_heave.si() + form.margin.si();
    let factor = TALL / form.nominal_thickness.si().max(needed);
    let down = |size: Size| size.si() * factor;
    let whole = Rect {
        x,
        y: top,
        w: BAR,
        h: down(form.nominal_thickness),
    };
    let crushed = s.section().void_form.as_ref();
    let crushed = crushed.map_or(Size::ZERO, |f| f.crushed_thickness);
    pile::crushed_form(svg, whole, down(crushed));
    let margin = Rect {
        x: x + BAR + 1.2,
        h: down(form.margin),
        ..whole
    };
    let heave = Rect {
        y: margin.bottom(),
        h: down(form.design_heave),
        ..margin
    };
    if margin.h > 0.05 {
        svg.rect(margin, FORM);
    }
    heaving(svg, heave);
    // the free part of the form, carried over
    let free = top + down(form.usable_thickness);
    svg.line(
        (x, free),
        (heave.right() + 1.0, free),
        "stroke=\"#000\" stroke-width=\"0.5\"",
    );
    svg.line(
        (x - 0.6, top),
        (heave.right() + 1.0, top),
        "stroke=\"#000\" stroke-width=\"0.8\"",
    );
}

/// Ground that heaves: strokes upwards.
pub fn heaving(svg: &mut Svg, r: Rect) {
    if r.h > 0.05 {
        svg.rect(r, FORM);
        hatch::upright(svg, r);
    }
}

/// Each part in words, with a sample of its look.
fn tell(svg: &mut Svg, s: Subject, form: &VoidFormOutcome, inner: Rect, top: f64) {
    let size = |v| words::size_told(v, s.system);
    let x = inner.x + 2.0 * BAR + 3.6;
    let room = inner.right() - x;
    let crushed = s.section().void_form.as_ref();
    let crushed = crushed.map_or(Size::ZERO, |f| f.crushed_thickness);
    let verdict = if form.shortfall > Size::ZERO {
        (format!("short {}", size(form.shortfall)), Style::BOLD)
    } else {
        ("enough".to_owned(), Style::BOLD)
    };
    let mut lines = vec![
        (
            format!("placed {}", size(form.nominal_thickness)),
            Style::PLAIN,
        ),
        (
            format!("free {}", size(form.usable_thickness)),
            Style::PLAIN,
        ),
        (format!("crushed {}", size(crushed)), Style::PLAIN),
        (format!("heave {}", size(form.design_heave)), Style::PLAIN),
        (format!("margin {}", size(form.margin)), Style::PLAIN),
        verdict,
    ];
    if let Some(crush) = &form.crush {
        let pressure = words::area_load_told(crush.transmitted_pressure, s.system);
        lines.push((format!("presses {pressure}"), Style::PLAIN));
    }
    for (i, (text, style)) in lines.iter().enumerate() {
        let y = top + (i as f64 + 0.55) * PITCH;
        svg.text(x, y, &fitted(text, room, *style), *style);
    }
}
