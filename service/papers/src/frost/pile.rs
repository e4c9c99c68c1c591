//! The pile in the section, to scale, with the beam and the void form over it, and a sleeve
//! round it.

use bearwell_engine::frost::FrostBeam;
use bearwell_engine::quantity::{Length, Size};
use bearwell_engine::shaft::Shaft;

use super::frame::{Frame, SIGN};
use super::reading::Subject;
use crate::pile::{self, Upright};
use crate::svg::{Rect, Svg, mm};
use crate::{hatch, marks};

/// Half of the width of a beam that was not sent, as part of that of the largest helix.
const UNKNOWN: f64 = 0.45;
/// How far a head reaches beyond the shaft, mm.
const CAP: f64 = 1.1;

/// Look of concrete.
pub const CONCRETE: &str = "fill=\"#ededed\" stroke=\"#000\" stroke-width=\"0.4\"";
/// Look of a beam whose place is not known.
pub const UNPLACED: &str =
    "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"1.4 0.7\"";
/// Line of a sleeve.
pub const SLEEVE: &str = "stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"1.2 0.5\"";
/// Outline of a void form.
pub const FORM: &str = "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.25\"";

/// Draws beam, void form and pile.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    beam(svg, s, frame);
    void_form(svg, s, frame);
    sleeve(svg, s, frame);
    shaft(svg, s, frame);
    for helix in &s.section().pile.helices {
        let at = (frame.axis, frame.depths.y(helix.depth));
        let half = frame.depths.across(helix.diameter) / 2.0;
        pile::plate(svg, at, half, true);
        if s.fails(helix.label.as_str()) {
            let mark = (at.0 + half + 2.4, at.1);
            svg.circle(mark, 2.0, "fill=\"#fff\"");
            marks::over_limit(svg, mark, 1.15);
        }
    }
}

/// Half of the width of the beam on paper.
pub fn half_beam(s: Subject, frame: &Frame) -> f64 {
    match s.section().beam.as_ref().and_then(|b| b.width) {
        Some(width) => frame.half(width),
        None => UNKNOWN * frame.depths.across(s.largest_helix()),
    }
}

fn beam(svg: &mut Svg, s: Subject, frame: &Frame) {
    let half = half_beam(s, frame);
    let across = |y: f64, h: f64| Rect {
        x: frame.axis - half,
        y,
        w: 2.0 * half,
        h,
    };
    if let Some(beam) = &s.section().beam {
        let top = beam.top_depth.map_or(frame.roof, |d| frame.below_roof(d));
        let bottom = frame.depths.y(beam.underside_depth);
        svg.rect(across(top, bottom - top), CONCRETE);
        let cut = beam
            .top_depth
            .is_none_or(|d| frame.depths.y(d) < frame.roof - 0.01);
        if cut {
            let (left, right) = (frame.axis - half - 0.8, frame.axis + half + 0.8);
            let d = format!(
                "M{} {}L{} {}l1 -1l1 2l1 -1H{}",
                mm(left),
                mm(top),
                mm(frame.axis - 1.5),
                mm(top),
                mm(right)
            );
            svg.path(&d, "stroke=\"#fff\" stroke-width=\"1\"");
            svg.path(&d, "stroke=\"#000\" stroke-width=\"0.3\"");
        }
    } else if matches!(s.request.beam, Some(FrostBeam::AboveGround(_))) {
        let head = frame.below_roof(s.section().pile.head_depth);
        let bottom = head.min(frame.grade() - 1.6);
        svg.rect(across(bottom - SIGN, SIGN), UNPLACED);
    }
}

/// The void form to scale, its crushed part hatched.
fn void_form(svg: &mut Svg, s: Subject, frame: &Frame) {
    let Some(form) = &s.section().void_form else {
        return;
    };
    let Some(top) = form.top_depth else {
        return;
    };
    let half = half_beam(s, frame);
    let down = |size: Size| frame.depths.at(top.si() + size.si()) - frame.depths.y(top);
    let whole = Rect {
        x: frame.axis - half,
        y: frame.depths.y(top),
        w: 2.0 * half,
        h: down(form.nominal_thickness),
    };
    crushed_form(svg, whole, down(form.crushed_thickness));
}

/// A void form of which the lower `crushed` mm are left once it is crushed.
pub fn crushed_form(svg: &mut Svg, whole: Rect, crushed: f64) {
    svg.rect(whole, FORM);
    let left = Rect {
        y: whole.bottom() - crushed,
        h: crushed,
        ..whole
    };
    hatch::slanted(svg, left);
    if crushed > 0.05 {
        svg.rect(left, "stroke=\"#000\" stroke-width=\"0.25\"");
    }
}

/// The sleeve on both sides of the shaft, from where the shaft meets the ground.
fn sleeve(svg: &mut Svg, s: Subject, frame: &Frame) {
    let section = s.section();
    let Some(bottom) = section.sleeve_bottom_depth else {
        return;
    };
    let underside = section
        .beam
        .as_ref()
        .map_or(Length::ZERO, |b| b.underside_depth);
    let top = section.cold_surface_depth.max(underside);
    let out = frame.depths.across(section.pile.shaft_width) / 2.0 + 1.0;
    let end = frame.depths.at(bottom.si().min(frame.depths.end));
    for x in [frame.axis - out, frame.axis + out] {
        let ends = ((x, frame.depths.y(top).min(end)), (x, end));
        svg.line(ends.0, ends.1, "stroke=\"#fff\" stroke-width=\"0.9\"");
        svg.line(ends.0, ends.1, SLEEVE);
    }
}

fn shaft(svg: &mut Svg, s: Subject, frame: &Frame) {
    let pile = &s.section().pile;
    let lowest = pile.helices.iter().map(|h| h.depth);
    let lowest = frame.depths.y(lowest.fold(Length::ZERO, Length::max));
    let half = frame.depths.across(pile.shaft_width) / 2.0;
    let top = frame.below_roof(pile.head_depth);
    let upright = Upright {
        axis: frame.axis,
        half,
        top,
        cut: frame.depths.y(pile.head_depth) < frame.roof - 0.01,
        lowest: lowest.max(frame.depths.y(pile.tip_depth) - 2.0),
        tip: frame.depths.y(pile.tip_depth),
        square: matches!(s.request.pile.shaft, Shaft::Square(_)),
    };
    pile::shaft(svg, &upright);
    if !upright.cut {
        let (left, right) = (frame.axis - half - CAP, frame.axis + half + CAP);
        svg.line(
            (left, top),
            (right, top),
            "stroke=\"#000\" stroke-width=\"0.8\"",
        );
    }
}
