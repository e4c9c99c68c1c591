//! What stands on the left of the section in words, each led to its depth: levels, helices,
//! and the layers of a profile. Layers that find no room are only drawn.

use bearwell_engine::record::LayerTorque;
use bearwell_engine::soil::Layer;

use super::frame::{FAN, Frame};
use super::levels::{self, Level};
use super::reading::Subject;
use crate::panel::PITCH;
use crate::spread::spread;
use crate::svg::{Style, Svg, fitted, width};
use crate::{marks, words};

/// Gap below a note, mm.
const CLEAR: f64 = 0.5;

/// A note to be led to a depth.
#[derive(Debug, Clone)]
struct Note {
    /// Where it belongs, on paper.
    y: f64,
    /// Where its leader ends.
    x: f64,
    lines: Vec<(String, Style)>,
    /// For a layer, its thickness on paper: thin ones give way.
    layer: Option<f64>,
    /// Off the drawing, below it (1) or above it (-1): an arrow in place of a leader.
    off: Option<f64>,
}

impl Note {
    fn height(&self) -> f64 {
        self.lines.len() as f64 * PITCH + CLEAR
    }
}

/// Draws the notes.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let (from, to) = (frame.grade() - 4.4, frame.bottom);
    let head = if s.profile.is_some() {
        "ground, levels, helices"
    } else {
        "levels, helices"
    };
    let head_base = frame.grade() - 6.4;
    svg.text(frame.words.x, head_base, head, Style::BOLD);
    let (notes, left_out) = fitting(notes(s, frame), to - from);
    let heights: Vec<f64> = notes.iter().map(Note::height).collect();
    let wanted: Vec<f64> = notes.iter().map(|n| n.y - 0.55 * PITCH).collect();
    let Some(tops) = spread(&wanted, &heights, from, to) else {
        return;
    };
    for (note, top) in notes.iter().zip(tops) {
        write(svg, frame, note, top);
    }
    if left_out > 0 {
        let text = format!("{} layers only drawn", words::count(left_out));
        let x = frame.words.x;
        let text = fitted(&text, frame.words.w, Style::PLAIN);
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

fn write(svg: &mut Svg, frame: &Frame, note: &Note, top: f64) {
    let at = top + 0.55 * PITCH;
    let first = note.lines.first();
    let long = first.map_or(0.0, |(text, style)| width(text, *style));
    let start = frame.words.x + long + 0.8;
    if let Some(way) = note.off {
        marks::upright_arrow(svg, (start + 0.8, at), way);
    } else {
        let end = frame.words.right();
        let way = [
            (start.min(end), at),
            (end, at),
            (end + FAN - 0.6, note.y),
            (note.x, note.y),
        ];
        svg.polyline(&way, "stroke=\"#fff\" stroke-width=\"0.8\"");
        svg.polyline(&way, "stroke=\"#000\" stroke-width=\"0.18\"");
    }
    for (i, (text, style)) in note.lines.iter().enumerate() {
        let y = top + (i as f64 + 0.82) * PITCH;
        svg.text(frame.words.x, y, text, *style);
    }
}

/// All notes from the top down.
fn notes(s: Subject, frame: &Frame) -> Vec<Note> {
    let room = frame.words.w - 1.6;
    let section = frame.section;
    let one = |text: String, style: Style| vec![(fitted(&text, room, style), style)];
    let mut all = vec![Note {
        y: frame.grade(),
        x: section.x - 1.0,
        lines: one(Level::Grade.told().to_owned(), Style::PLAIN),
        layer: None,
        off: None,
    }];
    for (level, depth) in levels::levels(s) {
        let below = !frame.shows(depth);
        let text = levels::told(s, level, depth);
        all.push(Note {
            y: if below { frame.bottom } else { frame.y(depth) },
            x: section.x,
            lines: one(text, Style::PLAIN),
            layer: None,
            off: below.then_some(1.0),
        });
    }
    for helix in &s.outcome().helices {
        let y = frame.y(helix.depth);
        let above = y < frame.grade() - 3.4;
        all.push(Note {
            y: y.max(frame.grade() - 3.4),
            x: if above {
                section.x
            } else {
                frame.axis - frame.across(helix.diameter) / 2.0 - 0.2
            },
            lines: one(
                format!(
                    "helix {} at {}",
                    words::size_told(helix.diameter, s.system),
                    words::depth_told(helix.depth, s.system)
                ),
                Style::PLAIN,
            ),
            layer: None,
            off: above.then_some(-1.0),
        });
    }
    let layers = s.profile.map_or(&[][..], |p| &p.layers);
    for (i, layer) in layers.iter().enumerate() {
        let (top, bottom) = (layer.top.si(), layer.bottom.si().min(frame.end));
        if top >= bottom {
            continue;
        }
        all.push(Note {
            y: frame.at((top + bottom) / 2.0),
            x: section.x + 0.8,
            lines: layer_lines(s, i, layer, room),
            layer: Some((bottom - top) * frame.depth_factor),
            off: None,
        });
    }
    all.sort_by(|a, b| a.y.total_cmp(&b.y));
    all
}

/// Name and kind of a layer, and the torque in it.
fn layer_lines(s: Subject, i: usize, layer: &Layer, room: f64) -> Vec<(String, Style)> {
    let kind = layer.soil.kind().told();
    let label = s.profile.map_or(String::new(), |p| p.label(i));
    let name = fitted(&label, room, Style::BOLD);
    let found = s.outcome().ground.as_ref().and_then(|ground| {
        let mut all = ground.layers.iter();
        // two layers may carry one label
        all.find(|l| l.label == label && (l.top - layer.top).si().abs() < 1e-6)
    });
    let mean = found.and_then(|l: &LayerTorque| l.mean_torque);
    let second = match mean {
        Some(mean) => format!(
            "{kind}, mean {} {}",
            words::torque(mean, s.system),
            words::torque_unit(s.system)
        ),
        None => kind.to_owned(),
    };
    vec![
        (name, Style::BOLD),
        (fitted(&second, room, Style::PLAIN), Style::PLAIN),
    ]
}
