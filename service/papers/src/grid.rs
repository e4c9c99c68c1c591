//! A table of figures: labels on the left, columns of figures with a heading of two lines, as
//! many rows as there is room for.

use crate::panel::PITCH;
use crate::svg::{self, Anchor, Rect, Style, Svg, fitted};

/// Gap between columns, mm.
const GAP: f64 = 1.6;
/// Least room for labels that may be cut, mm.
pub const LABEL_LEAST: f64 = 17.0;

/// A column of figures, from the head down.
#[derive(Debug, Clone)]
pub struct Column {
    /// Its name.
    pub head: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// A figure for each row; an empty one is not written.
    pub cells: Vec<String>,
}

impl Column {
    fn width(&self) -> f64 {
        let plain = self
            .cells
            .iter()
            .map(|c| svg::width(c, Style::PLAIN))
            .fold(svg::width(self.unit, Style::PLAIN), f64::max);
        plain.max(svg::width(self.head, Style::BOLD)) + GAP
    }
}

/// A row of a table.
#[derive(Debug, Clone)]
pub struct Row {
    /// Its label.
    pub label: String,
    /// Whether it is heavy.
    pub heavy: bool,
    /// Whether a rule is drawn above it.
    pub ruled: bool,
}

impl Row {
    /// One without anything about it.
    pub fn plain(label: impl Into<String>) -> Self {
        Self {
            label: label.into(),
            heavy: false,
            ruled: false,
        }
    }

    fn style(&self) -> Style {
        if self.heavy {
            Style::BOLD
        } else {
            Style::PLAIN
        }
    }
}

/// A table.
#[derive(Debug, Clone)]
pub struct Table {
    /// Heading of the labels.
    pub about: &'static str,
    /// Its rows from the top.
    pub rows: Vec<Row>,
    /// Its columns from the left.
    pub columns: Vec<Column>,
}

/// Least width of columns.
pub fn width(columns: &[Column]) -> f64 {
    columns.iter().map(Column::width).sum()
}

/// Width of the longest label.
pub fn labels(rows: &[Row]) -> f64 {
    let widths = rows.iter().map(|r| svg::width(&r.label, r.style()));
    widths.fold(0.0, f64::max)
}

/// Draws as many rows as there is room for, with `least` mm for the labels; returns the lower
/// edge, the upper one where nothing was drawn.
pub fn draw(svg: &mut Svg, table: &Table, least: f64, area: Rect) -> f64 {
    let Table {
        about,
        rows,
        columns,
    } = table;
    let room = ((area.h - 2.0 * PITCH - 1.6) / PITCH).floor();
    let spare = area.w - least - width(columns);
    if room < 2.0 || rows.is_empty() || spare < 0.0 {
        return area.y;
    }
    let spread = (spare / columns.len() as f64 / 2.0).clamp(0.0, 3.0);
    let widths: Vec<f64> = columns.iter().map(|c| c.width() + spread).collect();
    let label_room = area.w - widths.iter().sum::<f64>();
    head(svg, about, columns, &widths, area);
    let mut y = area.y + 2.0 * PITCH + 1.2;
    let whole = rows.len() as f64 <= room;
    let shown = if whole { rows.len() } else { room as usize - 1 };
    for (i, row) in rows.iter().take(shown).enumerate() {
        if row.ruled {
            svg.line(
                (area.x, y + 0.5),
                (area.right(), y + 0.5),
                "stroke=\"#000\" stroke-width=\"0.15\"",
            );
        }
        y += PITCH;
        let base = y - 0.12 * PITCH;
        let style = row.style();
        svg.text(area.x, base, &fitted(&row.label, label_room, style), style);
        let mut x = area.right() - widths.iter().sum::<f64>();
        for (column, w) in columns.iter().zip(&widths) {
            x += w;
            if let Some(cell) = column.cells.get(i).filter(|c| !c.is_empty()) {
                svg.text(x, base, cell, Style::PLAIN.at(Anchor::End));
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

/// The heading of the table and its rule.
fn head(svg: &mut Svg, about: &str, columns: &[Column], widths: &[f64], area: Rect) {
    let end = Style::BOLD.at(Anchor::End);
    svg.text(area.x, area.y + 0.76 * PITCH, about, Style::BOLD);
    let mut x = area.right() - widths.iter().sum::<f64>();
    for (column, w) in columns.iter().zip(widths) {
        x += w;
        if !column.head.is_empty() {
            svg.text(x, area.y + 0.76 * PITCH, column.head, end);
        }
        if !column.unit.is_empty() {
            svg.text(
                x,
                area.y + 1.76 * PITCH,
                column.unit,
                Style::PLAIN.at(Anchor::End),
            );
        }
    }
    let y = area.y + 2.0 * PITCH + 0.6;
    svg.line(
        (area.x, y),
        (area.right(), y),
        "stroke=\"#000\" stroke-width=\"0.35\"",
    );
}
