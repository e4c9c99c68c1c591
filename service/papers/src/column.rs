//! A column of sentences with marks before them, told as fully as there is room.

use bearwell_engine::contract::Verdict;

use crate::marks;
use crate::panel::PITCH;
use crate::svg::{Anchor, Rect, Style, Svg, fitted, mm, wrapped};

/// Room for a mark before a sentence, mm.
const INDENT: f64 = 4.2;
/// Gap above a heading, in lines.
const ABOVE: f64 = 0.35;
/// Most lines of a sentence, from full to short.
const FULL: [usize; 5] = [6, 4, 3, 2, 1];

/// What stands before a sentence.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lead {
    /// Nothing.
    None,
    /// It is a heading.
    Heading,
    /// Its number.
    Number(usize),
    /// Something fails.
    Fail,
    /// Something could not be judged.
    Open,
    /// Something is worth a look.
    Warn,
    /// The mark of a verdict.
    Verdict(Verdict),
}

/// A sentence of the column.
#[derive(Debug, Clone)]
pub struct Item {
    /// What stands before it.
    pub lead: Lead,
    /// The sentence.
    pub text: String,
}

impl Item {
    /// One without a mark.
    pub fn plain(text: impl Into<String>) -> Self {
        Self {
            lead: Lead::None,
            text: text.into(),
        }
    }

    /// A heading.
    pub fn heading(text: &str) -> Self {
        Self {
            lead: Lead::Heading,
            text: text.to_owned(),
        }
    }

    fn indent(&self) -> f64 {
        match self.lead {
            Lead::None | Lead::Heading => 0.0,
            _ => INDENT,
        }
    }

    fn lines(&self, room: f64, most: usize) -> Vec<String> {
        let (room, style) = (room - self.indent(), self.style());
        let mut lines = wrapped(&self.text, room, style);
        if lines.len() > most {
            lines.truncate(most);
            if let Some(last) = lines.last_mut() {
                *last = fitted(&format!("{last} \u{2026}"), room, style);
            }
        }
        lines
    }

    fn style(&self) -> Style {
        match self.lead {
            Lead::Heading => Style::BOLD,
            _ => Style::PLAIN,
        }
    }
}

/// Draws the sentences from top to bottom; where not all fit, long ones are cut first, then
/// the last ones left out. Returns the lower edge.
pub fn draw(svg: &mut Svg, items: &[Item], area: Rect) -> f64 {
    let room = area.h / PITCH;
    let told = |most: usize| -> Vec<(&Item, Vec<String>)> {
        let all = items.iter().map(|item| (item, item.lines(area.w, most)));
        all.collect()
    };
    let tall = |told: &[(&Item, Vec<String>)]| -> f64 {
        told.iter().map(|(item, lines)| height(item, lines)).sum()
    };
    let most = FULL
        .into_iter()
        .find(|most| tall(&told(*most)) <= room)
        .unwrap_or(1);
    let mut told = told(most);
    let whole = tall(&told) <= room;
    while !whole && !told.is_empty() && tall(&told) > room - 1.0 {
        told.pop();
    }
    // no heading over nothing
    while !whole && told.last().is_some_and(|(i, _)| i.lead == Lead::Heading) {
        told.pop();
    }
    let mut y = area.y;
    for (item, lines) in &told {
        if item.lead == Lead::Heading {
            y += ABOVE * PITCH;
        }
        lead(svg, item.lead, (area.x, y));
        for line in lines {
            let x = area.x + item.indent();
            svg.text(x, y + 0.78 * PITCH, line, item.style());
            y += PITCH;
        }
    }
    if !whole {
        let text = fitted("More is in the answer.", area.w, Style::PLAIN);
        svg.text(area.x, y + 0.78 * PITCH, &text, Style::PLAIN);
        y += PITCH;
    }
    y
}

/// Height of a sentence, in lines.
fn height(item: &Item, lines: &[String]) -> f64 {
    let above = match item.lead {
        Lead::Heading => ABOVE,
        _ => 0.0,
    };
    above + lines.len() as f64
}

/// Draws what stands before a sentence whose first line begins at `y`.
pub fn lead(svg: &mut Svg, lead: Lead, (x, y): (f64, f64)) {
    let (middle, at) = (x + 1.6, y + 0.5 * PITCH);
    match lead {
        Lead::None | Lead::Heading => {}
        Lead::Number(n) => {
            let style = Style::BOLD.at(Anchor::Middle);
            svg.text(middle, y + 0.78 * PITCH, &n.to_string(), style);
        }
        Lead::Fail => marks::over_limit(svg, (middle, at), 0.95),
        Lead::Open => svg.rect(
            Rect {
                x: middle - 1.0,
                y: at - 1.0,
                w: 2.0,
                h: 2.0,
            },
            "stroke=\"#000\" stroke-width=\"0.3\" stroke-dasharray=\"0.7 0.5\"",
        ),
        Lead::Verdict(verdict) => marks::verdict(svg, Some(verdict), (middle, at)),
        Lead::Warn => {
            let d = format!(
                "M{} {}L{} {}H{}Z",
                mm(middle),
                mm(at - 1.2),
                mm(middle + 1.2),
                mm(at + 0.9),
                mm(middle - 1.2)
            );
            svg.path(&d, "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.3\"");
        }
    }
}
