//! The strokes of a sheet as a stranger reads them: all of them on the page, none through
//! a text.
#![allow(dead_code)]

use super::Sheet;

/// A straight piece of a stroke, or of an outline.
type Piece = ((f64, f64), (f64, f64));

/// Judges every stroke of a sheet whose texts were read; `name` is for the report.
pub fn judge_strokes(name: &str, svg: &str, sheet: &Sheet) {
    let doc = roxmltree::Document::parse(svg).expect("well-formed XML");
    let mut texts = sheet.texts.iter();
    // pieces that no white rectangle has covered yet
    let mut pieces: Vec<Piece> = Vec::new();
    let mut written: Vec<([f64; 4], &str)> = Vec::new();
    for node in doc.descendants().filter(|n| n.is_element()) {
        if node.tag_name().name() == "text" {
            let text = texts.next().expect("a text that was read");
            let b = [
                text.left + 0.2,
                text.top + 0.08 * text.size,
                text.right - 0.2,
                text.bottom - 0.24 * text.size,
            ];
            for piece in &pieces {
                assert!(
                    !crosses(b, *piece),
                    "{name}: {piece:?} runs through {text:?}"
                );
            }
            written.push((b, &text.text));
            continue;
        }
        let new = pieces_of(node);
        for (from, to) in &new {
            for (x, y) in [from, to] {
                assert!(
                    (0.0..=sheet.width).contains(x) && (0.0..=sheet.height).contains(y),
                    "{name}: {x} {y} of {node:?} is off the page"
                );
            }
        }
        let stroked = node.attribute("stroke").is_some_and(|s| s != "#fff");
        let filled = node.attribute("fill").is_some_and(|f| f == "#000");
        if node.tag_name().name() == "rect" && whitens(node) {
            let covered = box_of(node);
            pieces.retain(|p| !within(covered, *p));
            pieces = pieces.iter().flat_map(|p| outside(covered, *p)).collect();
        }
        if stroked || filled {
            for piece in &new {
                for (b, text) in &written {
                    assert!(
                        !crosses(*b, *piece),
                        "{name}: {piece:?} of {node:?} is drawn over {text}"
                    );
                }
            }
            pieces.extend(new);
        }
    }
}

fn number(node: roxmltree::Node, name: &str) -> f64 {
    let text = node
        .attribute(name)
        .unwrap_or_else(|| panic!("{name} of {node:?}"));
    text.trim_end_matches("mm").parse().expect("a number")
}

fn whitens(node: roxmltree::Node) -> bool {
    node.attribute("fill") == Some("#fff") && node.attribute("fill-opacity").is_none()
}

fn box_of(node: roxmltree::Node) -> [f64; 4] {
    let at = |name| node.attribute(name).map_or(0.0, |_| number(node, name));
    let (x, y) = (at("x"), at("y"));
    [x, y, x + number(node, "width"), y + number(node, "height")]
}

fn within(b: [f64; 4], (from, to): Piece) -> bool {
    [from, to]
        .iter()
        .all(|(x, y)| b[0] <= *x && *x <= b[2] && b[1] <= *y && *y <= b[3])
}

/// Shares of a piece at which it enters and leaves a box; none where it passes by.
fn clip(b: [f64; 4], (from, to): Piece) -> Option<(f64, f64)> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (along, room) in [
        (-dx, from.0 - b[0]),
        (dx, b[2] - from.0),
        (-dy, from.1 - b[1]),
        (dy, b[3] - from.1),
    ] {
        if along == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if along < 0.0 {
            enter = enter.max(room / along);
        } else {
            leave = leave.min(room / along);
        }
    }
    (enter <= leave).then_some((enter, leave))
}

fn crosses(b: [f64; 4], piece: Piece) -> bool {
    clip(b, piece).is_some()
}

/// What is left of a piece outside of a box.
fn outside(b: [f64; 4], piece: Piece) -> Vec<Piece> {
    let Some((enter, leave)) = clip(b, piece) else {
        return vec![piece];
    };
    let (from, to) = piece;
    let at = |t: f64| (from.0 + t * (to.0 - from.0), from.1 + t * (to.1 - from.1));
    let mut rest = Vec::new();
    if enter > 1e-6 {
        rest.push((from, at(enter - 1e-6)));
    }
    if leave < 1.0 - 1e-6 {
        rest.push((at(leave + 1e-6), to));
    }
    rest
}

fn pieces_of(node: roxmltree::Node) -> Vec<Piece> {
    match node.tag_name().name() {
        "line" => vec![(
            (number(node, "x1"), number(node, "y1")),
            (number(node, "x2"), number(node, "y2")),
        )],
        "polyline" => {
            let points: Vec<(f64, f64)> = node
                .attribute("points")
                .expect("points")
                .split(' ')
                .map(|pair| {
                    let (x, y) = pair.split_once(',').expect("x,y");
                    (x.parse().expect("x"), y.parse().expect("y"))
                })
                .collect();
            points.windows(2).map(|p| (p[0], p[1])).collect()
        }
        "rect" => {
            let [l, t, r, b] = box_of(node);
            let corners = [(l, t), (r, t), (r, b), (l, b), (l, t)];
            corners.windows(2).map(|p| (p[0], p[1])).collect()
        }
        "circle" => {
            let (x, y, r) = (number(node, "cx"), number(node, "cy"), number(node, "r"));
            vec![((x - r, y), (x + r, y)), ((x, y - r), (x, y + r))]
        }
        "path" => path(node.attribute("d").expect("d")),
        _ => Vec::new(),
    }
}

/// Straight pieces of a path; of an arc its chord.
fn path(d: &str) -> Vec<Piece> {
    let mut out = Vec::new();
    let (mut at, mut start) = ((0.0, 0.0), (0.0, 0.0));
    let mut rest = d;
    while let Some(command) = rest.chars().next() {
        rest = &rest[1..];
        let end = rest
            .find(|c: char| c.is_ascii_alphabetic())
            .unwrap_or(rest.len());
        let numbers = numbers(&rest[..end]);
        rest = &rest[end..];
        let n = |i: usize| *numbers.get(i).unwrap_or_else(|| panic!("{command} in {d}"));
        let to = match command {
            'M' | 'L' => (n(0), n(1)),
            'l' | 'm' => (at.0 + n(0), at.1 + n(1)),
            'H' => (n(0), at.1),
            'h' => (at.0 + n(0), at.1),
            'V' => (at.0, n(0)),
            'v' => (at.0, at.1 + n(0)),
            'A' => (n(5), n(6)),
            'Z' => start,
            other => panic!("{other} in {d}"),
        };
        if matches!(command, 'M' | 'm') {
            start = to;
        } else {
            out.push((at, to));
        }
        at = to;
    }
    out
}

/// Numbers of a path, a minus sign also without a gap before it.
fn numbers(text: &str) -> Vec<f64> {
    text.replace('-', " -")
        .split([' ', ','])
        .filter(|n| !n.is_empty())
        .map(|n| n.parse().expect("a number"))
        .collect()
}
