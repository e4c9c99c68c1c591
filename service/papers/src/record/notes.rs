//! What stands on the left of the section in words, each led to its depth: levels, helices,
//! and the layers of a profile. Layers that find no room are only drawn.

use bearwell_engine::record::LayerTorque;
use bearwell_engine::soil::Layer;

use super::frame::{FAN, Frame};
use super::levels::{self, Level};
use super::reading::Subject;
use crate::notes::{self, Lane, Note};
use crate::svg::{Style, Svg, fitted};
use crate::words;

/// Draws the notes.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let head = if s.profile.is_some() {
        "ground, levels, helices"
    } else {
        "levels, helices"
    };
    let lane = Lane {
        words: frame.words,
        fan: FAN,
        grade: frame.grade(),
        bottom: frame.bottom,
    };
    notes::draw(svg, &lane, head, notes(s, frame));
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
        let below = !frame.depths.shows(depth);
        let text = levels::told(s, level, depth);
        all.push(Note {
            y: if below {
                frame.bottom
            } else {
                frame.depths.y(depth)
            },
            x: section.x,
            lines: one(text, Style::PLAIN),
            layer: None,
            off: below.then_some(1.0),
        });
    }
    for helix in &s.outcome().helices {
        let y = frame.depths.y(helix.depth);
        let above = y < frame.grade() - 3.4;
        all.push(Note {
            y: y.max(frame.grade() - 3.4),
            x: if above {
                section.x
            } else {
                frame.axis - frame.depths.across(helix.diameter) / 2.0 - 0.2
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
        let (top, bottom) = (layer.top.si(), layer.bottom.si().min(frame.depths.end));
        if top >= bottom {
            continue;
        }
        all.push(Note {
            y: frame.depths.at((top + bottom) / 2.0),
            x: section.x + 0.8,
            lines: layer_lines(s, i, layer, room),
            layer: Some((bottom - top) * frame.depths.factor),
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
