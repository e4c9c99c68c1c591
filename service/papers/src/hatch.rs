//! Hatches of the kinds of ground, told apart in black and white by the form of their
//! marks. To add a kind: one arm in [`look`].

use bearwell_engine::soil::SoilKind;

use crate::svg::{Rect, Svg, mm};

/// Rows of one mark, every other row shifted by half a step.
struct Look {
    /// Distance of marks along a row, mm.
    step: f64,
    /// Distance of rows.
    pitch: f64,
    /// Half the width and half the height of a mark.
    half: (f64, f64),
    /// Strokes of a mark around (0, 0): from, to; a stroke without length is a dot.
    strokes: &'static [[f64; 4]],
    /// Radius of a ring in place of strokes.
    ring: Option<f64>,
    /// A line along the top of every row.
    ruled: bool,
    /// Width of the strokes.
    pen: f64,
}

const PLAIN: Look = Look {
    step: 4.0,
    pitch: 2.6,
    half: (0.7, 0.7),
    strokes: &[],
    ring: None,
    ruled: false,
    pen: 0.16,
};

/// The hatch of a kind.
fn look(kind: SoilKind) -> Look {
    match kind {
        // long dashes
        SoilKind::Clay => Look {
            step: 4.6,
            pitch: 1.6,
            half: (1.6, 0.1),
            strokes: &[[-1.6, 0.0, 1.6, 0.0]],
            ..PLAIN
        },
        // upright ticks
        SoilKind::Silt => Look {
            step: 2.4,
            pitch: 2.2,
            half: (0.1, 0.7),
            strokes: &[[0.0, -0.7, 0.0, 0.7]],
            ..PLAIN
        },
        // dots
        SoilKind::Sand => Look {
            step: 2.1,
            pitch: 1.5,
            half: (0.2, 0.2),
            strokes: &[[0.0, 0.0, 0.0, 0.0]],
            pen: 0.4,
            ..PLAIN
        },
        // rings
        SoilKind::Gravel => Look {
            step: 3.0,
            pitch: 2.3,
            half: (0.75, 0.75),
            ring: Some(0.75),
            ..PLAIN
        },
        // crosses
        SoilKind::Fill => Look {
            step: 3.6,
            pitch: 2.4,
            half: (0.65, 0.65),
            strokes: CROSS,
            ..PLAIN
        },
        // crosses between lifts
        SoilKind::EngineeredFill => Look {
            step: 3.6,
            pitch: 2.8,
            half: (0.65, 0.65),
            strokes: CROSS,
            ruled: true,
            ..PLAIN
        },
        // tufts
        SoilKind::Organic => Look {
            step: 4.4,
            pitch: 2.8,
            half: (1.1, 0.75),
            strokes: &[
                [-1.1, 0.7, 1.1, 0.7],
                [0.0, 0.7, 0.0, -0.75],
                [0.0, 0.7, -0.75, -0.45],
                [0.0, 0.7, 0.75, -0.45],
            ],
            ..PLAIN
        },
        // beds with slanting joints
        SoilKind::Rock => Look {
            step: 5.6,
            pitch: 2.4,
            half: (0.6, 1.1),
            strokes: &[[-0.5, 1.1, 0.5, -1.1]],
            ruled: true,
            ..PLAIN
        },
        // stars
        SoilKind::Frozen => Look {
            step: 3.8,
            pitch: 2.8,
            half: (0.8, 0.8),
            strokes: &[
                [0.0, -0.8, 0.0, 0.8],
                [-0.7, -0.4, 0.7, 0.4],
                [-0.7, 0.4, 0.7, -0.4],
            ],
            ..PLAIN
        },
    }
}

const CROSS: &[[f64; 4]] = &[[-0.6, -0.6, 0.6, 0.6], [-0.6, 0.6, 0.6, -0.6]];
/// Least height that takes a hatch, mm.
const LEAST: f64 = 0.4;

/// Fills a rectangle with the hatch of a kind; thin ones take one row of smaller marks.
pub fn hatch(svg: &mut Svg, kind: SoilKind, r: Rect) {
    if r.h < LEAST {
        return;
    }
    let look = look(kind);
    let rows = (r.h / look.pitch).floor().max(1.0);
    let pitch = r.h / rows;
    let size = (r.h / (2.0 * look.half.1 + 0.3)).min(1.0);
    let mut d = String::new();
    for row in 0..rows as usize {
        let y = r.y + (row as f64 + 0.5) * pitch;
        // a single row is ruled through its middle
        if look.ruled && (row > 0 || rows < 2.0) {
            let top = if rows < 2.0 { y } else { y - 0.5 * pitch };
            d += &format!("M{} {}H{}", mm(r.x), mm(top), mm(r.right()));
        }
        let shift = if row % 2 == 0 { 0.5 } else { 1.0 };
        let mut x = r.x + shift * look.step;
        while x + look.half.0 <= r.right() {
            if x - look.half.0 >= r.x {
                mark(&mut d, &look, (x, y), size);
            }
            x += look.step;
        }
    }
    if !d.is_empty() {
        let pen = look.pen * size.max(0.5);
        svg.path(
            &d,
            &format!(
                "stroke=\"#000\" stroke-width=\"{}\" stroke-linecap=\"round\"",
                mm(pen)
            ),
        );
    }
}

fn mark(d: &mut String, look: &Look, (x, y): (f64, f64), size: f64) {
    for [x1, y1, x2, y2] in look.strokes {
        let from = (mm(x + x1), mm(y + size * y1));
        let to = (mm(x + x2), mm(y + size * y2));
        *d += &format!("M{} {}L{} {}", from.0, from.1, to.0, to.1);
    }
    if let Some(r) = look.ring {
        let r = size * r;
        let (left, right, radius) = (mm(x - r), mm(x + r), mm(r));
        let y = mm(y);
        *d += &format!(
            "M{left} {y}A{radius} {radius} 0 1 1 {right} {y}A{radius} {radius} 0 1 1 {left} {y}"
        );
    }
}

/// Upright strokes with points: ground that rises.
pub fn upright(svg: &mut Svg, r: Rect) {
    let count = (r.w / 1.8).floor().max(1.0);
    let step = r.w / count;
    let tip = (0.3 * r.h).min(0.8);
    let mut d = String::new();
    for i in 0..count as usize {
        let x = r.x + (i as f64 + 0.5) * step;
        let (top, bottom) = (r.y + 0.12 * r.h, r.bottom() - 0.12 * r.h);
        d += &format!("M{} {}V{}", mm(x), mm(bottom), mm(top));
        d += &format!("M{} {}L{} {}", mm(x - 0.5), mm(top + tip), mm(x), mm(top));
        d += &format!("L{} {}", mm(x + 0.5), mm(top + tip));
    }
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
}

/// Slanted lines from edge to edge: what is left of something crushed.
pub fn slanted(svg: &mut Svg, r: Rect) {
    if r.h < 0.05 {
        return;
    }
    let mut d = String::new();
    let mut start = r.x - r.h;
    while start < r.right() {
        // from the lower left to the upper right, as far as the rectangle goes
        let (from, to) = (start.max(r.x), (start + r.h).min(r.right()));
        if to - from > 0.05 {
            let up = |x: f64| r.bottom() - (x - start);
            d += &format!("M{} {}L{} {}", mm(from), mm(up(from)), mm(to), mm(up(to)));
        }
        start += 1.1;
    }
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.18\"");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_kind_has_its_own_marks_also_in_a_thin_layer() {
        for height in [0.5, 1.0, 2.0, 30.0] {
            let mut seen: Vec<String> = Vec::new();
            for kind in SoilKind::ALL {
                let mut svg = Svg::new(50.0, 50.0, "");
                let blank = svg_len(&svg);
                let r = Rect {
                    x: 5.0,
                    y: 5.0,
                    w: 8.0,
                    h: height,
                };
                hatch(&mut svg, kind, r);
                assert!(svg_len(&svg) > blank, "{kind:?} at {height}");
                let text = svg.finish();
                assert!(!seen.contains(&text), "{kind:?} at {height}");
                seen.push(text);
            }
        }
    }

    fn svg_len(svg: &Svg) -> usize {
        format!("{svg:?}").len()
    }
}
