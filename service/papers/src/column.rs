//! A column of sentences with marks before them, told as fully as there is room.

use bearwell_engine::contract::Verdict;

use crate::marks;
use crate::panel::PITCH;
use crate::svg::{Anchor, Rect, Style, Svg, fitted, mm, wrapped};

/// Room for a mark before a sentence, mm.
const INDENT: f64 = 4.2;
/// Gap above a heading, in lines.
const ABOVE: f64 = 0.35;

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

    fn lines(&self, room: f64) -> Vec<String> {
        wrapped(&self.text, room - self.indent(), self.style())
    }

    /// Gap above it, in lines.
    fn above(&self) -> f64 {
        match self.lead {
            Lead::Heading => ABOVE,
            _ => 0.0,
        }
    }

    fn style(&self) -> Style {
        match self.lead {
            Lead::Heading => Style::BOLD,
            _ => Style::PLAIN,
        }
    }
}

/// How many lines of each sentence are told in `room` lines, and whether that is all of them:
/// where not every line fits, the first lines of all come first, then the second ones. Fewer
/// than there are sentences where not even the first lines fit.
fn shares(items: &[Item], lines: &[Vec<String>], room: f64) -> (Vec<usize>, bool) {
    let mut left = room - items.iter().map(Item::above).sum::<f64>();
    let all: usize = lines.iter().map(Vec::len).sum();
    if all as f64 <= left {
        return (lines.iter().map(Vec::len).collect(), true);
    }
    if items.len() as f64 > left {
        // a line at the end says that there is more
        left = room - 1.0;
        let mut shares = Vec::new();
        for item in items {
            left -= 1.0 + item.above();
            if left < 0.0 {
                break;
            }
            shares.push(1);
        }
        // no heading over nothing
        while shares
            .len()
            .checked_sub(1)
            .is_some_and(|i| items[i].lead == Lead::Heading)
        {
            shares.pop();
        }
        return (shares, false);
    }
    let mut shares = vec![1; items.len()];
    left -= items.len() as f64;
    for nth in 2.. {
        for (share, lines) in shares.iter_mut().zip(lines) {
            if lines.len() >= nth && left >= 1.0 {
                *share = nth;
                left -= 1.0;
            }
        }
        if left < 1.0 {
            break;
        }
    }
    (shares, true)
}

/// Draws the sentences from top to bottom; where not all fit, long ones are cut first, then
/// the last ones left out. Returns the lower edge.
pub fn draw(svg: &mut Svg, items: &[Item], area: Rect) -> f64 {
    let lines: Vec<Vec<String>> = items.iter().map(|i| i.lines(area.w)).collect();
    let (shares, whole) = shares(items, &lines, area.h / PITCH);
    let told: Vec<(&Item, Vec<String>)> = items
        .iter()
        .zip(lines)
        .zip(shares)
        .map(|((item, mut lines), share)| {
            if lines.len() > share {
                lines.truncate(share);
                let room = area.w - item.indent();
                if let Some(last) = lines.last_mut() {
                    *last = fitted(&format!("{last} \u{2026}"), room, item.style());
                }
            }
            (item, lines)
        })
        .collect();
    let mut y = area.y;
    for (item, lines) in &told {
        y += item.above() * PITCH;
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

#[cfg(test)]
mod tests {
    use super::*;

    fn told(lines: &[usize], room: f64) -> (Vec<usize>, bool) {
        let items: Vec<Item> = lines.iter().map(|_| Item::plain("a")).collect();
        let lines: Vec<Vec<String>> = lines.iter().map(|n| vec![String::new(); *n]).collect();
        shares(&items, &lines, room)
    }

    #[test]
    fn first_lines_come_first_and_no_room_is_wasted() {
        assert_eq!(told(&[3, 1, 2], 6.0), (vec![3, 1, 2], true));
        assert_eq!(told(&[3, 1, 2], 5.0), (vec![2, 1, 2], true));
        assert_eq!(told(&[3, 1, 2], 4.9), (vec![2, 1, 1], true));
        assert_eq!(told(&[3, 1, 2], 3.0), (vec![1, 1, 1], true));
        assert_eq!(told(&[3, 1, 2], 2.9), (vec![1], false));
        assert_eq!(told(&[3, 1, 2], 0.5), (vec![], false));
    }
}
