//! The table of what can be decided on: a row for the layout as designed, one for how it stands
//! now, one for each way out, and an empty box beside each. What the rows say is in `rows.rs`.

use bearwell_engine::contract::Verdict;

use crate::marks;
use crate::panel::PITCH;
use crate::svg::{Anchor, Rect, Style, Svg, fitted, width, wrapped};

/// Column of the letter and the mark, mm.
const LETTER: f64 = 16.0;
/// Column of the box, mm.
const BOX: f64 = 13.0;
/// Gap between columns, mm.
const GAP: f64 = 2.4;
/// Height of the heading, mm.
const HEAD: f64 = 2.0 * PITCH + 1.2;
/// Gap between rows, mm.
const BETWEEN: f64 = 1.3;
/// Most lines of a row.
const LINES: usize = 4;

/// A row of the table.
#[derive(Debug, Clone)]
pub struct Row {
    /// Its letter, or what it is.
    pub letter: String,
    /// Verdict on the layout then.
    pub verdict: Option<Verdict>,
    /// What is done.
    pub what: String,
    /// Greatest utilisation of the piles.
    pub piles: String,
    /// Greatest utilisation of the beams.
    pub beams: String,
    /// What fails or is open, with the clause.
    pub fails: String,
    /// What it costs.
    pub cost: String,
    /// Whether the engineer can choose it.
    pub choice: bool,
}

/// The table, measured for a width.
#[derive(Debug)]
pub struct Table<'a> {
    rows: &'a [Row],
    /// Words of each row in lines: what is done, what fails.
    lines: Vec<[Vec<String>; 2]>,
    widths: [f64; 5],
    /// Rows that found no room.
    left_out: usize,
    /// Words of the heading over the costs.
    currency: String,
}

impl<'a> Table<'a> {
    /// As many lines and rows as a height allows.
    pub fn of(rows: &'a [Row], currency: &str, wide: f64, height: f64) -> Self {
        let plain = |pick: fn(&Row) -> &str, head: &str| {
            let cells = rows.iter().map(|r| width(pick(r), Style::PLAIN));
            cells.fold(width(head, Style::BOLD), f64::max)
        };
        let piles = plain(|r| &r.piles, "piles");
        let beams = plain(|r| &r.beams, "beams");
        let cost = plain(|r| &r.cost, "cost").max(width(currency, Style::PLAIN));
        let fixed = LETTER + piles + beams + cost + BOX + 5.0 * GAP;
        let rest = (wide - fixed).max(40.0);
        let widths = [0.54 * rest, piles, beams, 0.46 * rest, cost];
        let mut table = Self {
            rows,
            lines: Vec::new(),
            widths,
            left_out: 0,
            currency: currency.to_owned(),
        };
        for most in (1..=LINES).rev() {
            table.lines = rows.iter().map(|r| lines(r, &widths, most)).collect();
            if table.height() <= height {
                return table;
            }
        }
        while table.height() > height && table.lines.len() > 1 {
            table.lines.pop();
            table.left_out += 1;
        }
        table
    }

    /// Height on the sheet, mm.
    pub fn height(&self) -> f64 {
        let rows: f64 = self.lines.iter().map(row_height).sum();
        let rest = if self.left_out > 0 { PITCH } else { 0.0 };
        HEAD + rows + rest
    }

    /// Left edges of the columns: what, piles, beams, fails, cost, box.
    fn edges(&self, area: Rect) -> [f64; 6] {
        let mut x = area.x + LETTER;
        let mut edges = [x; 6];
        for (edge, w) in edges[1..].iter_mut().zip(self.widths) {
            x += w + GAP;
            *edge = x;
        }
        edges
    }

    /// Draws it.
    pub fn draw(&self, svg: &mut Svg, area: Rect) {
        let edges = self.edges(area);
        self.head(svg, &edges, area);
        let mut y = area.y + HEAD;
        for (row, lines) in self.rows.iter().zip(&self.lines) {
            let h = row_height(lines);
            self.row(svg, row, lines, &edges, y);
            y += h;
            svg.line(
                (area.x, y - 0.35),
                (area.right(), y - 0.35),
                "stroke=\"#000\" stroke-width=\"0.12\"",
            );
        }
        if self.left_out > 0 {
            let more = format!("and {} further ways out in the answer", self.left_out);
            svg.text(area.x, y + 0.76 * PITCH, &more, Style::PLAIN);
        }
    }

    fn head(&self, svg: &mut Svg, edges: &[f64; 6], area: Rect) {
        let base = area.y + 0.76 * PITCH;
        let end = |i: usize| edges[i] + self.widths[i];
        let left = Style::BOLD;
        let right = Style::BOLD.at(Anchor::End);
        let plain = Style::PLAIN.at(Anchor::End);
        svg.text(area.x, base, "what", left);
        svg.text(edges[0], base, "is done", left);
        svg.text(end(1), base, "piles", right);
        svg.text(end(2), base, "beams", right);
        svg.text(
            edges[3],
            base,
            "what fails or is open, and its source",
            left,
        );
        svg.text(end(4), base, "cost", right);
        svg.text(edges[5], base, "answer", left);
        svg.text(edges[3] - GAP, base + PITCH, "greatest utilisation", plain);
        if !self.currency.is_empty() {
            svg.text(end(4), base + PITCH, &self.currency, plain);
        }
        let y = area.y + HEAD - 0.7;
        svg.line(
            (area.x, y),
            (area.right(), y),
            "stroke=\"#000\" stroke-width=\"0.35\"",
        );
    }

    fn row(&self, svg: &mut Svg, row: &Row, lines: &[Vec<String>; 2], edges: &[f64; 6], y: f64) {
        let base = y + 0.76 * PITCH;
        let letter = fitted(&row.letter, LETTER - 6.0, Style::BOLD);
        svg.text(edges[0] - LETTER, base, &letter, Style::BOLD);
        if row.verdict.is_some() {
            marks::verdict(svg, row.verdict, (edges[0] - 3.2, base - 1.0));
        }
        for (column, texts) in [(0, &lines[0]), (3, &lines[1])] {
            for (i, text) in texts.iter().enumerate() {
                svg.text(edges[column], base + i as f64 * PITCH, text, Style::PLAIN);
            }
        }
        let end = Style::PLAIN.at(Anchor::End);
        for (column, text) in [(1, &row.piles), (2, &row.beams), (4, &row.cost)] {
            if !text.is_empty() {
                svg.text(edges[column] + self.widths[column], base, text, end);
            }
        }
        if row.choice {
            let field = Rect {
                x: edges[5],
                y: y + 0.3,
                w: BOX - 0.6,
                h: row_height(lines) - 1.6,
            };
            svg.rect(field, "stroke=\"#000\" stroke-width=\"0.3\"");
        }
    }
}

fn row_height(lines: &[Vec<String>; 2]) -> f64 {
    let most = lines.iter().map(Vec::len).max().unwrap_or(1).max(1);
    most as f64 * PITCH + BETWEEN
}

/// The words of a row in at most so many lines.
fn lines(row: &Row, widths: &[f64; 5], most: usize) -> [Vec<String>; 2] {
    [(&row.what, widths[0]), (&row.fails, widths[3])].map(|(text, room)| {
        let mut lines = wrapped(text, room, Style::PLAIN);
        if lines.len() > most {
            lines.truncate(most);
            let last = &mut lines[most - 1];
            *last = fitted(&format!("{last} \u{2026}"), room, Style::PLAIN);
        }
        lines
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(letter: &str, words: &str) -> Row {
        Row {
            letter: letter.to_owned(),
            verdict: Some(Verdict::Accept),
            what: words.to_owned(),
            piles: "0.954".to_owned(),
            beams: String::new(),
            fails: "nothing".to_owned(),
            cost: "1,250.00".to_owned(),
            choice: true,
        }
    }

    #[test]
    fn a_low_table_has_fewer_lines_then_fewer_rows() {
        let words = "two piles beside the obstruction instead of one, ".repeat(8);
        let rows: Vec<Row> = ["A", "B", "C"].map(|l| row(l, &words)).to_vec();
        let high = Table::of(&rows, "USD", 261.0, 200.0);
        assert_eq!(high.lines[0][0].len(), LINES);
        assert_eq!(high.left_out, 0);
        let low = Table::of(&rows, "USD", 261.0, high.height() - 1.0);
        assert_eq!(low.lines[0][0].len(), LINES - 1);
        assert!(low.lines[0][0][2].ends_with('\u{2026}'));
        let least = Table::of(&rows, "USD", 261.0, HEAD + 2.0 * (PITCH + BETWEEN) + PITCH);
        assert_eq!((least.lines.len(), least.left_out), (2, 1));
        for table in [high, low, least] {
            for text in table.lines.iter().flat_map(|l| &l[0]) {
                assert!(width(text, Style::PLAIN) <= table.widths[0]);
            }
        }
    }
}
