//! Texts and names as a DXF of the plainest kind takes them: ASCII, nothing that a reader
//! would take for a code.

/// A text on one line. What is not ASCII is written by its number (`\U+00E9`); a percent sign,
/// a caret and a backslash begin codes in a drawing and are written so that they stand for
/// themselves.
pub fn line(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\\' | '%' | '^' => numbered(&mut out, c),
            ' '..='~' => out.push(c),
            c if c.is_control() => out.push(' '),
            c => numbered(&mut out, c),
        }
    }
    out
}

/// A character by its number; one above the first plane as its two halves.
fn numbered(out: &mut String, c: char) {
    let mut halves = [0; 2];
    for half in c.encode_utf16(&mut halves) {
        out.push_str(&format!("\\U+{half:04X}"));
    }
}

/// A name of a layer: capitals, digits, `_` and `-`; what is left of a label may be empty.
pub fn name(label: &str) -> String {
    let plain = |c: char| match c {
        'a'..='z' => c.to_ascii_uppercase(),
        'A'..='Z' | '0'..='9' | '-' => c,
        _ => '_',
    };
    label.chars().map(plain).collect()
}

/// A number with a point and without an exponent.
pub fn number(value: f64) -> String {
    let text = format!("{value}");
    if text.contains('.') {
        text
    } else {
        format!("{text}.0")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_ascii_and_holds_no_code() {
        for (text, written) in [
            ("A1", "A1"),
            ("caf\u{e9}", "caf\\U+00E9"),
            ("50%%d", "50\\U+0025\\U+0025d"),
            ("a^Ib", "a\\U+005EIb"),
            ("\\U+00E9", "\\U+005CU+00E9"),
            ("two\r\nlines", "two  lines"),
            ("\u{1f332}", "\\U+D83C\\U+DF32"),
        ] {
            assert_eq!(line(text), written, "{text:?}");
        }
    }

    #[test]
    fn names_and_numbers_are_plain() {
        assert_eq!(name("2.875 in, deep/\u{e9}"), "2_875_IN__DEEP__");
        assert_eq!(number(36.0), "36.0");
        assert_eq!(number(-0.5), "-0.5");
        assert_eq!(number(1e-7), "0.0000001");
        assert_eq!(number(2e6), "2000000.0");
    }
}
