//! The foot of a sheet that tells the names of its cautions: what a sheet is not, and which
//! cautions of the answer go with it. Cautions in full are in `panel.rs`.

use bearwell_engine::contract::Caution;

use crate::panel;
use crate::svg::{Rect, Style, Svg, width, wrapped};

/// First words of the foot.
const NOT_DESIGN: &str = "Calculation, not design.";

/// What it is not, and which cautions go with the answer.
pub fn lines(cautions: &[Caution], room: f64) -> Vec<String> {
    let names: Vec<String> = cautions.iter().map(|c| c.code.replace('_', " ")).collect();
    let text = if names.is_empty() {
        NOT_DESIGN.to_owned()
    } else {
        format!(
            "{NOT_DESIGN} Cautions, their texts in the answer: {}.",
            names.join(", ")
        )
    };
    // the first words are heavy, so wider
    wrapped(&text, room - 6.0, Style::PLAIN)
}

/// Draws the lines under a rule.
pub fn draw(svg: &mut Svg, lines: &[String], area: Rect) {
    svg.line(
        (area.x, area.y),
        (area.right(), area.y),
        "stroke=\"#000\" stroke-width=\"0.35\"",
    );
    for (i, line) in lines.iter().enumerate() {
        let y = area.y + 1.0 + (i as f64 + 0.76) * panel::PITCH;
        let rest = match line.strip_prefix(NOT_DESIGN) {
            Some(rest) => {
                svg.text(area.x, y, NOT_DESIGN, Style::BOLD);
                rest.trim_start()
            }
            None => line,
        };
        let x = if rest.len() < line.len() {
            area.x + width(NOT_DESIGN, Style::BOLD) + 1.0
        } else {
            area.x
        };
        if !rest.is_empty() {
            svg.text(x, y, rest, Style::PLAIN);
        }
    }
}
