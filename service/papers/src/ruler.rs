//! The chequered bar of depths on the left edge of a field, with figures.

use bearwell_engine::quantity::System;

use crate::svg::{Anchor, Rect, Style, Svg};
use crate::{page, words};

/// Width of the bar, mm.
const BAR: f64 = 1.5;

/// Draws the bar along the left edge of `r`, whose top is depth 0: `factor` mm of paper for a
/// metre, down to `end` (m).
pub fn draw(svg: &mut Svg, r: Rect, factor: f64, end: f64, system: System) {
    let unit = words::length_factor(system);
    let per_unit = factor * unit;
    let step = page::round_step(7.0 / per_unit);
    let count = (end / unit / step + 1e-9).floor() as u32;
    let decimals = usize::from(step < 1.0) + usize::from(step < 0.1);
    for i in 0..=count {
        let y = r.y + f64::from(i) * step * per_unit;
        let bottom = (y + step * per_unit).min(r.bottom());
        if bottom > y + 0.01 {
            let fill = if i % 2 == 0 { "#000" } else { "#fff" };
            svg.rect(
                Rect {
                    x: r.x - BAR,
                    y,
                    w: BAR,
                    h: bottom - y,
                },
                &format!("fill=\"{fill}\" stroke=\"#000\" stroke-width=\"0.2\""),
            );
        }
        let text = words::grouped(f64::from(i) * step, decimals);
        let style = Style::PLAIN.at(Anchor::End);
        svg.text(r.x - BAR - 0.9, y + 1.0, &text, style);
    }
    svg.text(
        r.x - BAR - 0.9,
        r.y - 6.0,
        words::length_unit(system),
        Style::BOLD.at(Anchor::End),
    );
}
