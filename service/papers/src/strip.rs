//! What stands under the plan: scale bar, orientation, the first part of the key and the
//! field for the seal. What the key says is in `plan`.

use bearwell_engine::quantity::System;

use crate::figure::Figure;
use crate::panel::{PITCH, Subject};
use crate::plan::key::{self, Entry};
use crate::svg::{Anchor, Rect, Style, Svg, mm, width};
use crate::{page, words};

/// Draws scale bar, orientation and entries of the key side by side.
pub fn draw(svg: &mut Svg, s: Subject, figure: &Figure, entries: &[Entry], area: Rect) {
    let after_bar = scale_bar(svg, s.system, figure, area);
    let after_north = orientation(svg, s.system, (after_bar + 6.0, area.y), area.h);
    let seal = Rect {
        x: area.right() - SEAL,
        w: SEAL,
        ..area
    };
    let left = after_north + 4.0;
    let room = Rect {
        x: left,
        w: seal.x - 2.0 - left,
        ..area
    };
    key::column(svg, entries, room);
    svg.rect(seal, "stroke=\"#000\" stroke-width=\"0.25\"");
    for (i, text) in ["Engineer of record:", "review, seal, date"]
        .iter()
        .enumerate()
    {
        let y = seal.y + 3.2 + i as f64 * PITCH;
        svg.text(seal.x + 1.2, y, text, Style::PLAIN);
    }
}

/// Width of the field for the engineer of record, mm.
const SEAL: f64 = 40.0;

/// A bar of four fields, each a round length; returns its right edge.
fn scale_bar(svg: &mut Svg, system: System, figure: &Figure, area: Rect) -> f64 {
    let per_unit = figure.factor * words::length_factor(system);
    let mut step = page::round_step(6.0 / per_unit);
    if 4.0 * step * per_unit > 46.0 {
        step /= 2.0;
    }
    let decimals = [1.0, 0.1, 0.01]
        .iter()
        .position(|d| step >= *d)
        .unwrap_or(3);
    let (x, y) = (area.x + 2.0, area.y + 5.4);
    let w = step * per_unit;
    for i in 0..4 {
        let fill = if i % 2 == 0 { "#000" } else { "#fff" };
        svg.rect(
            Rect {
                x: x + f64::from(i) * w,
                y,
                w,
                h: 1.6,
            },
            &format!("fill=\"{fill}\" stroke=\"#000\" stroke-width=\"0.25\""),
        );
    }
    let style = Style::PLAIN.at(Anchor::Middle);
    svg.text(x, y - 1.4, "0", style);
    svg.text(
        x + 2.0 * w,
        y - 1.4,
        &words::grouped(2.0 * step, decimals),
        style,
    );
    let end = format!(
        "{} {}",
        words::grouped(4.0 * step, decimals),
        words::length_unit(system)
    );
    svg.text(x + 4.0 * w, y - 1.4, &end, style);
    svg.text(area.x, y + 5.4, &figure.scale.name, Style::PLAIN);
    let bar = x + 4.0 * w + width(&end, style) / 2.0;
    bar.max(area.x + width(&figure.scale.name, Style::PLAIN))
}

/// The plan's own axes; returns the right edge.
fn orientation(svg: &mut Svg, system: System, (x, y): (f64, f64), h: f64) -> f64 {
    let unit = words::length_unit(system);
    let (ox, oy) = (x + 1.2, y + h - 2.6);
    let line = "stroke=\"#000\" stroke-width=\"0.3\"";
    svg.line((ox, oy), (ox, y + 2.4), line);
    svg.line((ox, oy), (ox + 7.0, oy), line);
    // north is the full head, east the open one
    svg.path(
        &format!("M{} {}l-1.1 2.6h2.2Z", mm(ox), mm(y + 0.6)),
        "fill=\"#000\"",
    );
    svg.path(
        &format!("M{} {}l-2 -0.9v1.8Z", mm(ox + 8.4), mm(oy)),
        "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.25\"",
    );
    let texts = [
        (ox + 2.4, y + 3.4, format!("N of the plan, y ({unit})")),
        (ox + 9.6, oy + 1.0, format!("E, x ({unit})")),
    ];
    let mut right = x;
    for (tx, ty, text) in texts {
        svg.text(tx, ty, &text, Style::PLAIN);
        right = f64::max(right, tx + width(&text, Style::PLAIN));
    }
    right
}
