//! The table of piles: label, place, loads and utilisation, as many rows as there is room.

use bearwell_engine::layout::LayoutPile;
use bearwell_engine::quantity::System;

use crate::figure::Figure;
use crate::panel::{PITCH, Subject};
use crate::svg::{Anchor, Rect, Style, Svg, fitted, width};
use crate::words;

/// One column of the table.
struct Column {
    head: &'static str,
    unit: &'static str,
    cell: fn(&LayoutPile, System) -> String,
}

fn columns(s: Subject) -> Vec<Column> {
    let (length, force) = (words::length_unit(s.system), words::force_unit(s.system));
    let mut all = vec![
        Column {
            head: "east",
            unit: length,
            cell: |p, u| words::length(p.at.x, u),
        },
        Column {
            head: "north",
            unit: length,
            cell: |p, u| words::length(p.at.y, u),
        },
        Column {
            head: "down",
            unit: force,
            cell: |p, u| words::force(p.compression.demand, u),
        },
    ];
    let piles = &s.answer.result.piles;
    if piles.iter().any(|p| p.tension.demand.si() > 0.0) {
        all.push(Column {
            head: "up",
            unit: force,
            cell: |p, u| words::force(p.tension.demand, u),
        });
    }
    if piles.iter().any(|p| p.utilisation_ratio.is_some()) {
        all.push(Column {
            head: "used",
            unit: "",
            cell: |p, _| p.utilisation_ratio.map_or("-".into(), words::utilisation),
        });
    }
    all
}

/// Gap between columns, mm.
const GAP: f64 = 1.8;
/// Least room for the label of a pile, mm.
const LABEL_LEAST: f64 = 8.0;

/// The piles with place and load; the most utilised ones where not all find room.
pub fn draw(svg: &mut Svg, s: Subject, figure: &Figure, area: Rect) {
    let mut columns = columns(s);
    let mut order: Vec<&LayoutPile> = s.answer.result.piles.iter().collect();
    // a heading of two lines, and a rule
    let room = ((area.h - 2.0 * PITCH - 1.6) / PITCH).floor();
    if room < 2.0 || order.is_empty() {
        return;
    }
    let left_out = order.len().saturating_sub(room as usize);
    if left_out > 0 {
        let rank = |p: &LayoutPile| {
            let over = figure.failed.contains(&p.label);
            (over, p.utilisation_ratio.unwrap_or(0.0))
        };
        order.sort_by(|a, b| {
            let (a, b) = (rank(a), rank(b));
            b.0.cmp(&a.0).then(b.1.total_cmp(&a.1))
        });
        order.truncate(room as usize - 1);
    }
    let measure = |columns: &[Column]| -> Vec<f64> {
        let style = Style::PLAIN;
        let cells = |c: &Column| {
            let longest = order.iter().map(|p| width(&(c.cell)(p, s.system), style));
            longest
                .chain([width(c.head, Style::BOLD), width(c.unit, style)])
                .fold(0.0, f64::max)
        };
        columns.iter().map(|c| cells(c) + GAP).collect()
    };
    let mut widths = measure(&columns);
    if widths.iter().sum::<f64>() + LABEL_LEAST > area.w {
        // far from the origin coordinates are too long for the table; they are in the answer
        columns.drain(..2);
        widths = measure(&columns);
    }
    // what is left over goes between the columns
    let left_over = area.w - LABEL_LEAST - widths.iter().sum::<f64>();
    let spread = (left_over / columns.len() as f64 / 2.0).clamp(0.0, 4.0);
    widths.iter_mut().for_each(|w| *w += spread);
    let label_room = (area.w - widths.iter().sum::<f64>()).max(LABEL_LEAST);
    head(svg, &columns, &widths, area);
    let mut y = area.y + 2.0 * PITCH + 1.2;
    for pile in &order {
        y += PITCH;
        let base = y - 0.24 * PITCH;
        let style = if figure.failed.contains(&pile.label) {
            Style::BOLD
        } else {
            Style::PLAIN
        };
        svg.text(area.x, base, &fitted(&pile.label, label_room, style), style);
        let mut x = area.right() - widths.iter().sum::<f64>();
        for (column, w) in columns.iter().zip(&widths) {
            x += w;
            let text = (column.cell)(pile, s.system);
            svg.text(x, base, &text, Style::PLAIN.at(Anchor::End));
        }
    }
    if left_out > 0 {
        let rest = s.answer.result.piles.len() - order.len();
        svg.text(
            area.x,
            y + 0.76 * PITCH,
            &format!("and {} further piles in the answer", words::count(rest)),
            Style::PLAIN,
        );
    }
}

/// The heading of the table and its rule.
fn head(svg: &mut Svg, columns: &[Column], widths: &[f64], area: Rect) {
    let end = Style::BOLD.at(Anchor::End);
    svg.text(area.x, area.y + 0.76 * PITCH, "pile", Style::BOLD);
    let mut x = area.right() - widths.iter().sum::<f64>();
    for (column, w) in columns.iter().zip(widths) {
        x += w;
        svg.text(x, area.y + 0.76 * PITCH, column.head, end);
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
