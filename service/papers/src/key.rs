//! The legend of a sheet: samples of marks and lines with their texts, in columns. What is on
//! a sheet and how it looks is said by the sheet.

use bearwell_engine::soil::SoilKind;

use crate::hatch::hatch;
use crate::panel::PITCH;
use crate::svg::{Rect, Style, Svg, fitted, width};

/// Width of a sample with its gap, mm.
const SAMPLE: f64 = 8.6;
/// Gap between columns, mm.
pub const GAP: f64 = 3.0;

/// Draws a sample into a rectangle.
pub type Sample<'a> = Box<dyn Fn(&mut Svg, Rect) + 'a>;

/// One entry.
pub struct Key<'a> {
    /// What it means.
    pub text: String,
    /// Draws a sample of it.
    pub sample: Sample<'a>,
}

/// An entry.
pub fn key<'a>(text: &str, sample: Sample<'a>) -> Key<'a> {
    Key {
        text: text.to_owned(),
        sample,
    }
}

/// The sample of a line.
pub fn line(stroke: &'static str) -> Sample<'static> {
    Box::new(move |svg, r| {
        let y = r.y + r.h / 2.0;
        svg.line((r.x, y), (r.right(), y), stroke);
    })
}

/// The sample of a kind of ground.
pub fn ground(kind: SoilKind) -> Sample<'static> {
    Box::new(move |svg, r| {
        hatch(svg, kind, r);
        svg.rect(r, "stroke=\"#000\" stroke-width=\"0.2\"");
    })
}

/// Draws the entries in columns of `rows`; texts are cut where all of them do not fit.
pub fn draw(svg: &mut Svg, keys: &[Key], rows: usize, area: Rect) {
    let mut x = area.x;
    let columns: Vec<&[Key]> = keys.chunks(rows).collect();
    let style = Style::PLAIN;
    let texts = |column: &[Key]| -> f64 {
        column
            .iter()
            .map(|k| width(&k.text, style))
            .fold(0.0, f64::max)
    };
    let wanted: f64 = columns.iter().map(|c| texts(c)).sum();
    let fixed = columns.len() as f64 * (SAMPLE + GAP) - GAP;
    let share = ((area.right() - x - fixed) / wanted.max(1e-9)).min(1.0);
    for column in columns {
        let room = texts(column) * share;
        for (row, key) in column.iter().enumerate() {
            let top = area.y + 0.6 + row as f64 * PITCH;
            let sample = Rect {
                x,
                y: top,
                w: SAMPLE - 1.4,
                h: PITCH - 0.7,
            };
            (key.sample)(svg, sample);
            let text = fitted(&key.text, room + 0.01, style);
            svg.text(x + SAMPLE, top + 0.72 * PITCH, &text, style);
        }
        x += SAMPLE + room + GAP;
    }
}
