//! The nearest known name to one that was misspelt. Knows nothing of requests.

/// The known name within 1 + len/4 edits of `got`, the nearest first, then in the order
/// given.
pub fn nearest<'a>(got: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let allowed = 1 + got.chars().count() / 4;
    let mut best: Option<(usize, &str)> = None;
    for name in known {
        let edits = edits(got, name);
        if edits <= allowed && best.is_none_or(|(least, _)| edits < least) {
            best = Some((edits, name));
        }
    }
    best.map(|(_, name)| name)
}

/// Insertions, deletions and replacements that turn one text into the other.
fn edits(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, ca) in a.chars().enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, cb) in b.iter().enumerate() {
            let replaced = diagonal + usize::from(ca != *cb);
            diagonal = row[j + 1];
            row[j + 1] = replaced.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[b.len()]
}

/// `, did you mean ...` or the whole list, ready to stand behind a sentence.
pub fn hint(got: &str, known: &[&str]) -> String {
    let got: String = got.chars().take(64).collect();
    match nearest(&got, known.iter().copied()) {
        Some(name) => format!("did you mean `{name}`?"),
        None if known.is_empty() => "none is taken here".to_owned(),
        None => {
            let list: Vec<_> = known.iter().map(|name| format!("`{name}`")).collect();
            format!("known: {}", list.join(", "))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn edits_are_counted() {
        assert_eq!(edits("", "abc"), 3);
        assert_eq!(edits("kitten", "sitting"), 3);
        assert_eq!(edits("dpeth", "depth"), 2);
        assert_eq!(edits("depth", "depth"), 0);
    }

    #[test]
    fn only_a_near_name_is_suggested() {
        let known = ["value", "unit"];
        assert_eq!(nearest("unti", known), Some("unit"));
        assert_eq!(nearest("note", known), None);
        assert_eq!(nearest("vallue", known), Some("value"));
        assert_eq!(hint("note", &known), "known: `value`, `unit`");
    }
}
