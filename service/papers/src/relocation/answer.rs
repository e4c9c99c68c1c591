//! The field in which the engineer answers: which row, by whom, when. Nothing of it is filled
//! in here.

use crate::panel::PITCH;
use crate::svg::{Rect, Style, Svg, width};

/// Height of the field, mm.
pub const HEIGHT: f64 = 19.0;

/// Draws the field.
pub fn draw(svg: &mut Svg, area: Rect) {
    svg.rect(area, "stroke=\"#000\" stroke-width=\"0.5\"");
    let left = area.x + 1.6;
    let base = area.y + 1.2 + 0.76 * PITCH;
    svg.text(
        left,
        base,
        "Decision of the engineer of record",
        Style::BOLD,
    );
    let after = left + width("Decision of the engineer of record", Style::BOLD) + 3.0;
    svg.text(after, base, "one box above, or in own words:", Style::PLAIN);
    let from = after + width("one box above, or in own words:", Style::PLAIN) + 2.0;
    line(svg, from, area.right() - 1.6, base + 0.6);
    line(svg, left, area.right() - 1.6, base + 6.6);
    let base = area.bottom() - 2.2;
    let names = ["Name", "Licence", "Signature, seal", "Date"];
    let shares = [0.29, 0.2, 0.33, 0.18];
    let mut x = left;
    for (name, share) in names.iter().zip(shares) {
        let w = share * (area.w - 3.2);
        svg.text(x, base, name, Style::PLAIN);
        line(
            svg,
            x + width(name, Style::PLAIN) + 1.2,
            x + w - 2.0,
            base + 0.6,
        );
        x += w;
    }
}

/// A line to write on.
fn line(svg: &mut Svg, from: f64, to: f64, y: f64) {
    svg.line((from, y), (to, y), "stroke=\"#000\" stroke-width=\"0.2\"");
}
