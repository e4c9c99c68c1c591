//! Writes SVG text: elements, escaping and the width of text. Knows paper millimetres
//! and nothing of what is drawn.

use std::fmt::Write;

/// Smallest text on a sheet. Its capitals are 2 mm high in the usual sans-serif fonts
/// (height of capitals 0.716 to 0.729 of the size).
pub const SMALL: f64 = 2.8;
/// Headings.
pub const HEADING: f64 = 3.6;
/// Distance of lines of text, in text sizes.
pub const LINE: f64 = 1.32;

/// A rectangle on the paper.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub w: f64,
    /// Height.
    pub h: f64,
}

impl Rect {
    /// Right edge.
    pub fn right(&self) -> f64 {
        self.x + self.w
    }
    /// Lower edge.
    pub fn bottom(&self) -> f64 {
        self.y + self.h
    }
    /// Whether two rectangles share more than an edge.
    pub fn overlaps(&self, other: &Rect) -> bool {
        self.x < other.right()
            && other.x < self.right()
            && self.y < other.bottom()
            && other.y < self.bottom()
    }
    /// Whether `other` lies inside.
    pub fn holds(&self, other: &Rect) -> bool {
        self.x <= other.x
            && self.y <= other.y
            && other.right() <= self.right()
            && other.bottom() <= self.bottom()
    }
    /// Larger on all sides by `by`.
    pub fn grown(&self, by: f64) -> Rect {
        Rect {
            x: self.x - by,
            y: self.y - by,
            w: self.w + 2.0 * by,
            h: self.h + 2.0 * by,
        }
    }
}

/// Which end of a text its `x` is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The left end.
    Start,
    /// The middle.
    Middle,
    /// The right end.
    End,
}

/// How a text looks.
#[derive(Debug, Clone, Copy)]
pub struct Style {
    /// Text size, mm.
    pub size: f64,
    /// Heavy strokes.
    pub bold: bool,
    /// Which end `x` is.
    pub anchor: Anchor,
}

impl Style {
    /// Small plain text from its left end.
    pub const PLAIN: Style = Style {
        size: SMALL,
        bold: false,
        anchor: Anchor::Start,
    };
    /// Small heavy text from its left end.
    pub const BOLD: Style = Style {
        bold: true,
        ..Style::PLAIN
    };
    /// The same from another end.
    pub const fn at(self, anchor: Anchor) -> Style {
        Style { anchor, ..self }
    }
    /// The same in another size.
    pub const fn sized(self, size: f64) -> Style {
        Style { size, ..self }
    }
}

/// A drawing under way.
#[derive(Debug)]
pub struct Svg {
    text: String,
}

impl Svg {
    /// An empty sheet of `width` by `height` mm, all white.
    pub fn new(width: f64, height: f64, title: &str) -> Self {
        let (w, h) = (mm(width), mm(height));
        let mut text = String::with_capacity(1 << 15);
        let _ = write!(
            text,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" \
             viewBox=\"0 0 {w} {h}\" font-family=\"Helvetica, Arial, 'Liberation Sans', \
             'DejaVu Sans', sans-serif\" fill=\"none\" stroke-linecap=\"butt\">\n\
             <title>{}</title>\n\
             <rect width=\"{w}\" height=\"{h}\" fill=\"#fff\"/>\n",
            escape(title)
        );
        Self { text }
    }

    /// Opens a group; `attributes` is our own text, never the caller's.
    pub fn open(&mut self, attributes: &str) {
        let _ = writeln!(self.text, "<g {attributes}>");
    }

    /// Closes a group.
    pub fn close(&mut self) {
        self.text.push_str("</g>\n");
    }

    /// A straight line.
    pub fn line(&mut self, from: (f64, f64), to: (f64, f64), attributes: &str) {
        let _ = writeln!(
            self.text,
            "<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\" {attributes}/>",
            mm(from.0),
            mm(from.1),
            mm(to.0),
            mm(to.1)
        );
    }

    /// A line through several points.
    pub fn polyline(&mut self, points: &[(f64, f64)], attributes: &str) {
        self.text.push_str("<polyline points=\"");
        for (i, (x, y)) in points.iter().enumerate() {
            let gap = if i == 0 { "" } else { " " };
            let _ = write!(self.text, "{gap}{},{}", mm(*x), mm(*y));
        }
        let _ = writeln!(self.text, "\" {attributes}/>");
    }

    /// A rectangle.
    pub fn rect(&mut self, r: Rect, attributes: &str) {
        let _ = writeln!(
            self.text,
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" {attributes}/>",
            mm(r.x),
            mm(r.y),
            mm(r.w),
            mm(r.h)
        );
    }

    /// A circle.
    pub fn circle(&mut self, at: (f64, f64), radius: f64, attributes: &str) {
        let _ = writeln!(
            self.text,
            "<circle cx=\"{}\" cy=\"{}\" r=\"{}\" {attributes}/>",
            mm(at.0),
            mm(at.1),
            mm(radius)
        );
    }

    /// A path; `d` is our own text.
    pub fn path(&mut self, d: &str, attributes: &str) {
        let _ = writeln!(self.text, "<path d=\"{d}\" {attributes}/>");
    }

    /// A text with its base line at `y`.
    pub fn text(&mut self, x: f64, y: f64, text: &str, style: Style) {
        let weight = if style.bold {
            " font-weight=\"bold\""
        } else {
            ""
        };
        let anchor = match style.anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let _ = writeln!(
            self.text,
            "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{weight}{anchor} fill=\"#000\">{}</text>",
            mm(x),
            mm(y),
            mm(style.size),
            escape(text)
        );
    }

    /// The finished sheet.
    pub fn finish(mut self) -> String {
        self.text.push_str("</svg>\n");
        self.text
    }
}

/// A length on paper, in hundredths of a millimetre, without needless zeros.
pub fn mm(v: f64) -> String {
    // `as` saturates; nothing drawn is anywhere near
    let hundredths = (v * 100.0).round() as i64;
    let sign = if hundredths < 0 { "-" } else { "" };
    let (whole, part) = (hundredths.abs() / 100, hundredths.abs() % 100);
    match (part, part % 10) {
        (0, _) => format!("{sign}{whole}"),
        (_, 0) => format!("{sign}{whole}.{}", part / 10),
        _ => format!("{sign}{whole}.{part:02}"),
    }
}

/// Text for element content and attributes. Characters that XML cannot carry and those
/// that turn or hide the text around them become the replacement character.
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c if c.is_control() || misleads(c) => out.push('\u{fffd}'),
            c => out.push(c),
        }
    }
    out
}

/// Bidirectional controls, zero-width and line-breaking characters, and non-characters.
fn misleads(c: char) -> bool {
    matches!(c,
        '\u{061c}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}'
        | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{fdd0}'..='\u{fdef}')
        || (c as u32) & 0xfffe == 0xfffe
}

/// Width of a text, mm: an upper estimate from the widest of the usual fonts.
pub fn width(text: &str, style: Style) -> f64 {
    let ems: f64 = text.chars().map(advance).sum();
    let heavier = if style.bold { 1.13 } else { 1.0 };
    ems * style.size * heavier
}

/// Advance of one character, in text sizes.
fn advance(c: char) -> f64 {
    match c {
        ' ' | '.' | ',' | 'i' | 'j' | 'l' | 'I' | 'J' | '\'' => 0.32,
        'f' | 't' | 'r' | '-' | '(' | ')' | '[' | ']' | '/' | ':' | ';' | '|' | '!' => 0.41,
        'm' | 'w' | 'M' | 'W' | '%' | '@' => 0.99,
        '+' | '=' | '<' | '>' | '&' | '#' | '~' | '^' => 0.84,
        'C' | 'D' | 'G' | 'H' | 'N' | 'O' | 'Q' | 'U' => 0.79,
        'A'..='Z' => 0.70,
        c if c.is_ascii() => 0.64,
        _ => 1.0,
    }
}

/// At most `limit` mm of the text, with an ellipsis where it was cut.
pub fn fitted(text: &str, limit: f64, style: Style) -> String {
    if width(text, style) <= limit {
        return text.to_owned();
    }
    let mut kept = String::new();
    for c in text.chars() {
        kept.push(c);
        if width(&kept, style) + width("\u{2026}", style) > limit {
            kept.pop();
            break;
        }
    }
    kept.push('\u{2026}');
    kept
}

/// The text in lines of at most `limit` mm, broken at spaces; a longer word is cut.
pub fn wrapped(text: &str, limit: f64, style: Style) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        let word = fitted(word, limit, style);
        let joined = if line.is_empty() {
            word.clone()
        } else {
            format!("{line} {word}")
        };
        if width(&joined, style) <= limit {
            line = joined;
        } else {
            lines.push(std::mem::replace(&mut line, word));
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_short_and_exact_to_a_hundredth() {
        for (v, text) in [
            (0.0, "0"),
            (-0.001, "0"),
            (1.5, "1.5"),
            (-1.25, "-1.25"),
            (2.049, "2.05"),
            (-0.304, "-0.3"),
            (279.4, "279.4"),
        ] {
            assert_eq!(mm(v), text);
        }
    }

    #[test]
    fn hostile_text_is_made_harmless() {
        assert_eq!(
            escape("</text><script>alert('x')&\"\u{0}\u{202e}\u{ffff}é"),
            "&lt;/text&gt;&lt;script&gt;alert(&#39;x&#39;)&amp;&quot;\u{fffd}\u{fffd}\u{fffd}é"
        );
    }

    #[test]
    fn wrapped_and_fitted_text_keeps_to_its_limit() {
        let text = "a Wordthatisverymuchlongerthanthelineallows and some more of it";
        let lines = wrapped(text, 20.0, Style::PLAIN);
        assert!(lines.len() > 2);
        for line in &lines {
            assert!(width(line, Style::PLAIN) <= 20.0, "{line}");
        }
        assert!(lines.iter().any(|l| l.ends_with('\u{2026}')));
        assert_eq!(fitted("A1", 20.0, Style::PLAIN), "A1");
    }
}
