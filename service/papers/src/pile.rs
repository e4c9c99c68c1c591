//! The pieces of a pile on a section: shaft, plates, and how many times wider than deep they
//! are drawn. What bears around them is drawn by the sheets.

use crate::svg::{Svg, mm};

/// Thickness of a drawn plate, mm.
const PLATE: f64 = 0.7;
/// Widest drawn helix, mm.
pub const WIDEST: f64 = 22.0;
/// A widest helix of this width needs no larger scale.
const WIDE_ENOUGH: f64 = 14.0;
/// Multiples of the scale of depths at which the pile may be drawn.
const TIMES: [u32; 15] = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50];

/// A shaft on paper.
#[derive(Debug, Clone, Copy)]
pub struct Upright {
    /// Its axis.
    pub axis: f64,
    /// Half of its width.
    pub half: f64,
    /// Its upper end.
    pub top: f64,
    /// Whether it goes on above that.
    pub cut: bool,
    /// Where its point begins.
    pub lowest: f64,
    /// Where its point ends.
    pub tip: f64,
    /// A square one has an edge in its middle.
    pub square: bool,
}

/// Draws a shaft.
pub fn shaft(svg: &mut Svg, u: &Upright) {
    let half = u.half.max(0.25);
    let (left, right) = (u.axis - half, u.axis + half);
    let d = format!(
        "M{} {}V{}L{} {}V{}Z",
        mm(left),
        mm(u.top),
        mm(u.lowest + 0.5 * (u.tip - u.lowest)),
        mm(right),
        mm(u.tip),
        mm(u.top)
    );
    svg.path(
        &d,
        "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.3\" stroke-linejoin=\"round\"",
    );
    if u.square {
        svg.line(
            (u.axis, u.top),
            (u.axis, u.lowest + 0.6 * (u.tip - u.lowest)),
            "stroke=\"#000\" stroke-width=\"0.15\"",
        );
    }
    if u.cut {
        cut(svg, u, half);
    }
}

/// The sign that a shaft goes on.
fn cut(svg: &mut Svg, u: &Upright, half: f64) {
    let cut = format!(
        "M{} {}l{} -0.9l{} 1.8l{} -0.9",
        mm(u.axis - half - 1.0),
        mm(u.top),
        mm(half + 0.6),
        mm(0.8),
        mm(half + 0.6)
    );
    svg.path(&cut, "stroke=\"#fff\" stroke-width=\"0.9\"");
    svg.path(&cut, "stroke=\"#000\" stroke-width=\"0.3\"");
}

/// Draws a plate: black, or open where it is `counted` for nothing.
pub fn plate(svg: &mut Svg, (x, y): (f64, f64), half: f64, counted: bool) {
    let rise = (0.06 * half).min(0.7);
    let d = format!(
        "M{} {}L{} {}v{}L{} {}Z",
        mm(x - half),
        mm(y + rise - PLATE / 2.0),
        mm(x + half),
        mm(y - rise - PLATE / 2.0),
        mm(PLATE),
        mm(x - half),
        mm(y + rise + PLATE / 2.0)
    );
    let fill = if counted { "#000" } else { "#fff" };
    svg.path(
        &d,
        &format!("fill=\"{fill}\" stroke=\"#000\" stroke-width=\"0.25\" stroke-linejoin=\"round\""),
    );
}

/// The multiple that makes the widest helix wide enough and keeps all inside a section of
/// `room` (mm); `widest` and `reach` as wide as the scale of depths makes them.
pub fn times(widest: f64, reach: f64, room: f64) -> u32 {
    let mut chosen = 1;
    for n in TIMES {
        let fits = widest * f64::from(n) <= WIDEST && reach * f64::from(n) <= room;
        if widest * f64::from(chosen) >= WIDE_ENOUGH || !fits {
            break;
        }
        chosen = n;
    }
    chosen
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pile_is_drawn_wide_enough_and_no_wider_than_the_section() {
        assert_eq!(times(15.0, 15.0, 40.0), 1);
        assert_eq!(times(4.8, 4.8, 40.0), 3);
        assert_eq!(times(0.4, 0.4, 40.0), 40);
        assert_eq!(times(8.0, 39.0, 40.0), 1);
        assert_eq!(times(0.01, 0.01, 40.0), 50);
    }
}
