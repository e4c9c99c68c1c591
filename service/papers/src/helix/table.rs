//! The table of helices: bearing and resistance in each direction, and what they add up to.

use bearwell_engine::helix::{AxialDirection, AxialResistance, HelixBearing};

use super::reading::{PlateReading, Subject, told};
use crate::panel::PITCH;
use crate::svg::{Anchor, Rect, Style, Svg, fitted, width};
use crate::words;

/// Gap between columns, mm.
const GAP: f64 = 1.6;
/// Least room for labels, mm.
const LABEL_LEAST: f64 = 17.0;

/// A column of figures, from the head down.
struct Column {
    head: &'static str,
    unit: &'static str,
    cells: Vec<String>,
}

impl Column {
    fn width(&self) -> f64 {
        let plain = self
            .cells
            .iter()
            .map(|c| width(c, Style::PLAIN))
            .fold(width(self.unit, Style::PLAIN), f64::max);
        plain.max(width(self.head, Style::BOLD)) + GAP
    }
}

/// Draws as many rows as there is room for; returns the lower edge.
pub fn draw(svg: &mut Svg, s: Subject, area: Rect) -> f64 {
    let plates = s.plates();
    let room = ((area.h - 2.0 * PITCH - 1.6) / PITCH).floor();
    if room < 2.0 || plates.is_empty() {
        return area.y;
    }
    let sums = ["sum", "cylinder", "ultimate"];
    let mut labels: Vec<String> = plates.iter().map(|p| p.label.to_owned()).collect();
    labels.extend(sums.map(str::to_owned));
    let mut columns = columns(s, &plates);
    let taken = |columns: &[Column]| columns.iter().map(Column::width).sum::<f64>();
    if taken(&columns) + LABEL_LEAST > area.w {
        columns.retain(|c| c.unit == words::force_unit(s.system));
    }
    if taken(&columns) + LABEL_LEAST > area.w {
        return area.y;
    }
    let spare = area.w - LABEL_LEAST - taken(&columns);
    let spread = (spare / columns.len() as f64 / 2.0).clamp(0.0, 3.0);
    let widths: Vec<f64> = columns.iter().map(|c| c.width() + spread).collect();
    let label_room = area.w - widths.iter().sum::<f64>();
    head(svg, &columns, &widths, area);
    let mut y = area.y + 2.0 * PITCH + 1.2;
    let whole = labels.len() as f64 <= room;
    let shown = if whole {
        labels.len()
    } else {
        room as usize - 1
    };
    for (i, label) in labels.iter().take(shown).enumerate() {
        if i == plates.len() {
            svg.line(
                (area.x, y + 0.5),
                (area.right(), y + 0.5),
                "stroke=\"#000\" stroke-width=\"0.15\"",
            );
        }
        y += PITCH;
        let base = y - 0.12 * PITCH;
        let style = Style::PLAIN;
        svg.text(area.x, base, &fitted(label, label_room, style), style);
        let mut x = area.right() - widths.iter().sum::<f64>();
        for (column, w) in columns.iter().zip(&widths) {
            x += w;
            if !column.cells[i].is_empty() {
                svg.text(x, base, &column.cells[i], style.at(Anchor::End));
            }
        }
    }
    if !whole {
        y += PITCH;
        svg.text(
            area.x,
            y - 0.12 * PITCH,
            "and further rows in the answer",
            Style::PLAIN,
        );
    }
    y
}

/// Bearing and resistance of each direction, helices first, then the sums.
fn columns(s: Subject, plates: &[PlateReading]) -> Vec<Column> {
    let mut all = Vec::new();
    for r in s.resistances() {
        let of = |p: &PlateReading| -> Option<HelixBearing> {
            match r.direction {
                AxialDirection::Compression => p.down.cloned(),
                AxialDirection::Tension => p.up.cloned(),
            }
        };
        let helices: Vec<Option<HelixBearing>> = plates.iter().map(of).collect();
        let stress = helices.iter().map(|h| {
            h.as_ref()
                .map_or(String::new(), |h| words::stress(h.bearing, s.system))
        });
        all.push(Column {
            head: "bears",
            unit: words::stress_unit(s.system),
            cells: stress.chain([(); 3].map(|()| String::new())).collect(),
        });
        let force = helices.iter().map(|h| {
            h.as_ref()
                .map_or(String::new(), |h| words::force(h.resistance, s.system))
        });
        all.push(Column {
            head: told(r.direction),
            unit: words::force_unit(s.system),
            cells: force.chain(sums(s, r)).collect(),
        });
    }
    all
}

/// The sum of the helices, the cylinder, and the ultimate resistance.
fn sums(s: Subject, r: &AxialResistance) -> [String; 3] {
    let force = |f| words::force(f, s.system);
    let cylinder = r.cylindrical_shear.as_ref().map(|c| force(c.total));
    [
        force(r.individual_bearing.total),
        cylinder.unwrap_or_else(|| "-".to_owned()),
        force(r.ultimate),
    ]
}

/// The heading of the table and its rule.
fn head(svg: &mut Svg, columns: &[Column], widths: &[f64], area: Rect) {
    let end = Style::BOLD.at(Anchor::End);
    svg.text(area.x, area.y + 0.76 * PITCH, "helix", Style::BOLD);
    let mut x = area.right() - widths.iter().sum::<f64>();
    for (column, w) in columns.iter().zip(widths) {
        x += w;
        svg.text(x, area.y + 0.76 * PITCH, column.head, end);
        svg.text(
            x,
            area.y + 1.76 * PITCH,
            column.unit,
            Style::PLAIN.at(Anchor::End),
        );
    }
    let y = area.y + 2.0 * PITCH + 0.6;
    svg.line(
        (area.x, y),
        (area.right(), y),
        "stroke=\"#000\" stroke-width=\"0.35\"",
    );
}
