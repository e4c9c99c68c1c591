//! The reading column: verdict, facts, the table of helices, layers without a text of
//! their own, and the field for the engineer of record.

use super::cells::LayerWords;
use super::reading::Subject;
use super::{facts, table};
use crate::panel::{self, PITCH};
use crate::svg::{Rect, Style, Svg, wrapped};
use crate::words;

/// Height of the field for the engineer of record, mm.
const SEAL: f64 = 12.0;
/// Most lines of facts.
const FACTS: usize = 26;

/// Draws the column from top to bottom.
pub fn draw(svg: &mut Svg, s: Subject, scales: &str, unlabelled: &[usize], area: Rect) {
    let seal = Rect {
        y: area.bottom() - SEAL,
        h: SEAL,
        ..area
    };
    panel::seal(svg, seal);
    let mut y = panel::verdict(svg, "Helix capacity", s.answer.verdict, area) + 1.2;
    let mut lines = facts::lines(s, scales, area.w);
    if lines.len() > FACTS {
        lines.truncate(FACTS - 1);
        lines.push("More is in the answer.".to_owned());
    }
    for line in &lines {
        y += PITCH;
        svg.text(area.x, y, line, Style::PLAIN);
    }
    y += 2.4;
    let listed = listed(s, unlabelled, area.w);
    let rest = Rect {
        y,
        h: seal.y - 1.6 - y,
        ..area
    };
    y = table::draw(svg, s, rest);
    list(svg, listed, unlabelled.len(), y + 1.4, seal.y - 1.6, area);
}

/// The layers without a cell, one after the other.
fn listed(s: Subject, unlabelled: &[usize], room: f64) -> Vec<String> {
    let texts = unlabelled.iter();
    texts
        .map(|i| LayerWords::of(s, *i).listed(s, *i, room))
        .collect()
}

fn list(svg: &mut Svg, lines: Vec<String>, count: usize, from: f64, to: f64, area: Rect) {
    if lines.is_empty() {
        return;
    }
    let room = ((to - from) / PITCH).floor().max(0.0) as usize;
    if room == 0 {
        return;
    }
    let mut shown = lines;
    let whole = shown.len() < room;
    if !whole {
        shown.truncate(room.saturating_sub(2));
    }
    let mut y = from + 0.76 * PITCH;
    svg.text(area.x, y, "Layers that share a cell", Style::BOLD);
    for line in &shown {
        y += PITCH;
        svg.text(area.x, y, line, Style::PLAIN);
    }
    if !whole && room > 1 {
        let left = words::count(count - shown.len());
        let text = format!("and {left} further layers in the request");
        for line in wrapped(&text, area.w, Style::PLAIN).iter().take(1) {
            svg.text(area.x, y + PITCH, line, Style::PLAIN);
        }
    }
}
