//! The reading column: verdict, facts, every criterion with its load and displacement or why
//! it has none, and the field for the engineer of record.

use bearwell_engine::load_test::CriterionOutcome;

use super::facts;
use super::plot::letter;
use super::reading::{Subject, name, reason};
use crate::panel::{self, PITCH};
use crate::svg::{Anchor, Rect, Style, Svg, fitted};
use crate::words;

/// Height of the field for the engineer of record, mm.
const SEAL: f64 = 12.0;
/// Width of the column of numbers, mm.
const NUMBER: f64 = 5.0;
/// Width of the column of displacements, mm.
const DISPLACEMENT: f64 = 16.0;

/// Draws the column from top to bottom; `unlabelled` are criteria without a label on the
/// chart.
pub fn draw(svg: &mut Svg, s: Subject, unlabelled: &[char], area: Rect) {
    let seal = Rect {
        y: area.bottom() - SEAL,
        h: SEAL,
        ..area
    };
    panel::seal(svg, seal);
    let top = panel::verdict(svg, "Load test", s.answer.verdict, area) + 1.2;
    let table = table_height(s) + 2.4;
    let room = ((seal.y - 1.6 - table - top) / PITCH).floor().max(1.0) as usize;
    let mut lines = facts::lines(s, unlabelled, area.w);
    if lines.len() > room {
        lines.truncate(room - 1);
        lines.push("More is in the answer.".to_owned());
    }
    let mut y = top;
    for line in &lines {
        y += PITCH;
        svg.text(area.x, y, line, Style::PLAIN);
    }
    draw_table(svg, s, Rect { y: y + 2.4, ..area });
}

fn rows(c: &CriterionOutcome) -> usize {
    1 + usize::from(c.reason.is_some())
}

fn table_height(s: Subject) -> f64 {
    let rows: usize = s.outcome().criteria.iter().map(rows).sum();
    (rows + 1) as f64 * PITCH + 1.2
}

fn draw_table(svg: &mut Svg, s: Subject, area: Rect) {
    let right = area.right();
    let middle = right - DISPLACEMENT;
    let (bold, plain) = (Style::BOLD, Style::PLAIN);
    let mut y = area.y + 0.76 * PITCH;
    svg.text(area.x, y, "Criterion", bold);
    let end = |style: Style| style.at(Anchor::End);
    svg.text(middle, y, words::force_unit(s.system), end(bold));
    svg.text(right, y, words::size_unit(s.system), end(bold));
    let rule = y + 0.3 * PITCH;
    let look = "stroke=\"#000\" stroke-width=\"0.25\"";
    svg.line((area.x, rule), (right, rule), look);
    y += 0.4;
    let governing = s.outcome().failure.criterion;
    for (i, c) in s.outcome().criteria.iter().enumerate() {
        y += PITCH;
        let style = if governing == Some(c.criterion) {
            bold
        } else {
            plain
        };
        svg.text(area.x, y, &letter(i).to_string(), style);
        svg.text(area.x + NUMBER, y, name(c.criterion), style);
        if let Some(load) = c.load {
            svg.text(middle, y, &words::force(load, s.system), end(style));
        }
        if let Some(displacement) = c.displacement {
            let told = words::size_in_column(displacement, s.system);
            svg.text(right, y, &told, end(style));
        }
        if let Some(why) = c.reason {
            y += PITCH;
            let told = fitted(reason(why), area.w - NUMBER, plain);
            svg.text(area.x + NUMBER, y, &told, plain);
        }
    }
}
