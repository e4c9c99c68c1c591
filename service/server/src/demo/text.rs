//! Plain text for a terminal: headings, wrapped paragraphs, quantities with their unit.

use std::io::{self, Write};

use bearwell_engine::quantity::{Shown, System};

/// Columns of a line.
const WIDTH: usize = 78;

/// A heading over a rule.
pub fn heading(out: &mut impl Write, text: &str) -> io::Result<()> {
    writeln!(out, "\n{text}\n{}", "=".repeat(text.chars().count()))
}

/// A smaller heading.
pub fn section(out: &mut impl Write, text: &str) -> io::Result<()> {
    writeln!(out, "\n{text}")
}

/// A wrapped paragraph behind an indent.
pub fn paragraph(out: &mut impl Write, indent: &str, text: &str) -> io::Result<()> {
    wrapped(out, indent, indent, text)
}

/// A wrapped entry of a list.
pub fn item(out: &mut impl Write, text: &str) -> io::Result<()> {
    wrapped(out, "  - ", "    ", text)
}

fn wrapped(out: &mut impl Write, first: &str, rest: &str, text: &str) -> io::Result<()> {
    let mut line = first.to_owned();
    let mut empty = true;
    for word in text.split_whitespace() {
        if !empty && line.chars().count() + 1 + word.chars().count() > WIDTH {
            writeln!(out, "{line}")?;
            line = rest.to_owned();
            empty = true;
        }
        if !empty {
            line.push(' ');
        }
        line.push_str(word);
        empty = false;
    }
    writeln!(out, "{line}")
}

/// A quantity as the service prints it, cut for reading.
pub fn show(quantity: impl Into<Shown>, system: System) -> String {
    let (value, unit) = printed(quantity, system);
    let number = grouped(value, decimals(&unit));
    if unit == "1" {
        number
    } else {
        format!("{number} {unit}")
    }
}

/// The same without its unit.
pub fn bare(quantity: impl Into<Shown>, system: System) -> String {
    let (value, unit) = printed(quantity, system);
    grouped(value, decimals(&unit))
}

/// Decimals that are worth reading.
fn decimals(unit: &str) -> usize {
    match unit {
        "lbf" | "ft_lbf" | "psf" | "psi" | "plf" | "mm" => 0,
        "kN" | "kPa" | "in" => 1,
        "1" => 3,
        "ft2" | "m2" => 4,
        _ => 2,
    }
}

/// At most so many characters of a text, cut at a space.
pub fn cut(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let mut kept = String::new();
    for word in text.split_whitespace() {
        if kept.chars().count() + 1 + word.chars().count() > most {
            break;
        }
        if !kept.is_empty() {
            kept.push(' ');
        }
        kept.push_str(word);
    }
    kept + " ..."
}

/// Value and unit as the service prints them.
fn printed(quantity: impl Into<Shown>, system: System) -> (f64, String) {
    let shown: Shown = quantity.into();
    let (value, unit) = shown.printed(system);
    (value, unit.into())
}

/// Thousands set apart.
fn grouped(value: f64, decimals: usize) -> String {
    let plain = format!("{value:.decimals$}");
    let (sign, digits) = match plain.strip_prefix('-') {
        Some(rest) => ("-", rest),
        None => ("", plain.as_str()),
    };
    let (whole, part) = match digits.split_once('.') {
        Some((whole, part)) => (whole, format!(".{part}")),
        None => (digits, String::new()),
    };
    let mut out = String::from(sign);
    for (i, c) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i) % 3 == 0 {
            out.push(',');
        }
        out.push(c);
    }
    out + &part
}

#[cfg(test)]
mod tests {
    use super::*;
    use bearwell_engine::quantity::{Force, ForceUnit};

    #[test]
    fn quantities_read_as_they_are_printed() {
        let f = Force::new(12_830.4, ForceUnit::Lbf);
        assert_eq!(show(f, System::UsCustomary), "12,830 lbf");
        assert_eq!(show(f, System::Si), "57.1 kN");
        assert_eq!(show(0.907, System::Si), "0.907");
        assert_eq!(grouped(-1234.5, 1), "-1,234.5");
        assert_eq!(cut("one two three", 8), "one two ...");
        assert_eq!(cut("one two", 8), "one two");
    }

    #[test]
    fn lines_are_wrapped() {
        let mut out = Vec::new();
        item(&mut out, &"word ".repeat(40)).expect("memory takes it");
        let text = String::from_utf8(out).expect("text");
        assert!(text.lines().count() > 2);
        assert!(text.lines().all(|l| l.chars().count() <= WIDTH));
        assert!(text.lines().skip(1).all(|l| l.starts_with("    word")));
    }
}
