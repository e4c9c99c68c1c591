//! Words on the left of a section, each led to its depth: they are moved apart where they
//! would collide, and those of thin layers give way.

use crate::panel::PITCH;
use crate::spread::spread;
use crate::svg::{Rect, Style, Svg, fitted, width};
use crate::{marks, words};

/// Gap below a note, mm.
const CLEAR: f64 = 0.5;

/// A note to be led to a depth.
#[derive(Debug, Clone)]
pub struct Note {
    /// Where it belongs, on paper.
    pub y: f64,
    /// Where its leader ends.
    pub x: f64,
    /// What it says.
    pub lines: Vec<(String, Style)>,
    /// For a layer, its thickness on paper: thin ones give way.
    pub layer: Option<f64>,
    /// Off the drawing, below it (1) or above it (-1): an arrow in place of a leader.
    pub off: Option<f64>,
}

impl Note {
    fn height(&self) -> f64 {
        self.lines.len() as f64 * PITCH + CLEAR
    }
}

/// Where notes stand.
#[derive(Debug, Clone, Copy)]
pub struct Lane {
    /// The lane of the words.
    pub words: Rect,
    /// Width in which leaders run from the words to their depths, mm.
    pub fan: f64,
    /// Final grade on paper.
    pub grade: f64,
    /// Lower edge of everything.
    pub bottom: f64,
}

/// Draws the notes, which are in order of their depths, under a heading.
pub fn draw(svg: &mut Svg, lane: &Lane, head: &str, notes: Vec<Note>) {
    let (from, to) = (lane.grade - 4.4, lane.bottom);
    let head_base = lane.grade - 6.4;
    svg.text(lane.words.x, head_base, head, Style::BOLD);
    let (notes, left_out) = fitting(notes, to - from);
    let heights: Vec<f64> = notes.iter().map(Note::height).collect();
    let wanted: Vec<f64> = notes.iter().map(|n| n.y - 0.55 * PITCH).collect();
    let Some(tops) = spread(&wanted, &heights, from, to) else {
        return;
    };
    for (note, top) in notes.iter().zip(tops) {
        write(svg, lane, note, top);
    }
    if left_out > 0 {
        let text = format!("{} layers only drawn", words::count(left_out));
        let x = lane.words.x;
        let text = fitted(&text, lane.words.w, Style::PLAIN);
        svg.text(x, head_base - PITCH, &text, Style::PLAIN);
    }
}

/// The notes that fit: second lines of layers go first, then the thinnest layers.
fn fitting(mut notes: Vec<Note>, room: f64) -> (Vec<Note>, usize) {
    let mut left_out = 0;
    loop {
        let total: f64 = notes.iter().map(Note::height).sum();
        if total <= room {
            return (notes, left_out);
        }
        let thinnest = |long: bool| {
            let mut found: Option<(usize, f64)> = None;
            for (i, note) in notes.iter().enumerate() {
                let Some(thick) = note.layer else { continue };
                if (!long || note.lines.len() > 1) && found.is_none_or(|(_, t)| thick < t) {
                    found = Some((i, thick));
                }
            }
            found.map(|(i, _)| i)
        };
        if let Some(i) = thinnest(true) {
            notes[i].lines.truncate(1);
        } else if let Some(i) = thinnest(false) {
            notes.remove(i);
            left_out += 1;
        } else {
            // levels and helices alone always fit; eight helices and ten levels are few
            return (notes, left_out);
        }
    }
}

fn write(svg: &mut Svg, lane: &Lane, note: &Note, top: f64) {
    let at = top + 0.55 * PITCH;
    let first = note.lines.first();
    let long = first.map_or(0.0, |(text, style)| width(text, *style));
    let start = lane.words.x + long + 0.8;
    if let Some(way) = note.off {
        marks::upright_arrow(svg, (start + 0.8, at), way);
    } else {
        let end = lane.words.right();
        let way = [
            (start.min(end), at),
            (end, at),
            (end + lane.fan - 0.6, note.y),
            (note.x, note.y),
        ];
        svg.polyline(&way, "stroke=\"#fff\" stroke-width=\"0.8\"");
        svg.polyline(&way, "stroke=\"#000\" stroke-width=\"0.18\"");
    }
    for (i, (text, style)) in note.lines.iter().enumerate() {
        let y = top + (i as f64 + 0.82) * PITCH;
        svg.text(lane.words.x, y, text, *style);
    }
}
