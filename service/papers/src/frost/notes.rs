//! What stands on the left of the section in words, each led to its depth: grade, levels,
//! head, helices, and the layers of a profile.

use bearwell_engine::frost::FrostDepthSource;

use super::frame::{FAN, Frame};
use super::ground::LEFT;
use super::levels::{self, Level};
use super::pile::half_beam;
use super::reading::Subject;
use crate::notes::{self, Lane, Note};
use crate::svg::{Style, Svg, fitted};
use crate::words;

/// A leader nearer than this to a line would hide it, mm.
const NEAR: f64 = 0.8;

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
        bottom: frame.words.bottom(),
    };
    notes::draw(svg, &lane, head, all(s, frame));
}

/// All notes from the top down.
fn all(s: Subject, frame: &Frame) -> Vec<Note> {
    let room = frame.words.w - 1.6;
    let section = frame.section;
    let one = |text: String, style: Style| vec![(fitted(&text, room, style), style)];
    let plain = |y: f64, x: f64, text: String| Note {
        y,
        x,
        lines: one(text, Style::PLAIN),
        layer: None,
        off: None,
    };
    let mut all = vec![plain(
        frame.grade(),
        section.x - 1.0,
        "final grade".to_owned(),
    )];
    for (level, depth) in levels::levels(s) {
        let below = !frame.depths.shows(depth);
        let x = match level {
            Level::Underside => frame.axis - half_beam(s, frame),
            Level::ColdSurface => section.x + LEFT * section.w,
            _ => section.x,
        };
        let at = if below {
            frame.words.bottom()
        } else {
            frame.depths.y(depth)
        };
        let mut note = plain(at, x, levels::told(s, level, depth));
        note.off = below.then_some(1.0);
        if governs(s, level) {
            note.lines = one(levels::told(s, level, depth), Style::BOLD);
        }
        all.push(note);
    }
    all.push(head(s, frame, &plain));
    for helix in &s.section().pile.helices {
        let y = frame.depths.y(helix.depth);
        let x = match on_level(s, frame, y) {
            true => section.x,
            false => frame.axis - frame.depths.across(helix.diameter) / 2.0 - 0.2,
        };
        let text = format!(
            "helix {} at {}",
            words::size_told(helix.diameter, s.system),
            words::depth_told(helix.depth, s.system)
        );
        all.push(plain(y, x, text));
    }
    let layers = s.profile.map_or(&[][..], |p| &p.layers);
    for (i, layer) in layers.iter().enumerate() {
        let (top, bottom) = (layer.top.si(), layer.bottom.si().min(frame.depths.end));
        if top >= bottom {
            continue;
        }
        let label = s.profile.map_or(String::new(), |p| p.label(i));
        all.push(Note {
            y: frame.depths.at((top + bottom) / 2.0),
            x: section.x + 0.8,
            lines: vec![
                (fitted(&label, room, Style::BOLD), Style::BOLD),
                (layer.soil.kind().told().to_owned(), Style::PLAIN),
            ],
            layer: Some((bottom - top) * frame.depths.factor),
            off: None,
        });
    }
    all.sort_by(|a, b| a.y.total_cmp(&b.y));
    all
}

/// The head; above the drawing where it stands too high.
fn head(s: Subject, frame: &Frame, plain: &dyn Fn(f64, f64, String) -> Note) -> Note {
    let depth = s.section().pile.head_depth;
    let text = if depth.si() < 0.0 {
        format!("head {} above", words::depth_told(-depth, s.system))
    } else {
        format!("head {}", words::depth_told(depth, s.system))
    };
    let y = frame.depths.y(depth);
    let x = if (y - frame.grade()).abs() < NEAR {
        frame.section.x - 1.0
    } else if on_level(s, frame, y) {
        frame.section.x
    } else {
        frame.axis - frame.depths.across(s.section().pile.shaft_width) / 2.0 - 1.2
    };
    let mut note = plain(frame.below_roof(depth), x, text);
    note.off = (y < frame.roof - 0.01).then_some(-1.0);
    note
}

/// Whether a level is drawn as a line at that height.
fn on_level(s: Subject, frame: &Frame, y: f64) -> bool {
    let near = |depth| (frame.depths.y(depth) - y).abs() < NEAR;
    let mut levels = levels::levels(s).into_iter();
    levels.any(|(level, depth)| level.stroke().is_some() && near(depth))
}

/// Whether it is the one of two frost lines that is used.
fn governs(s: Subject, level: Level) -> bool {
    let frost = &s.outcome().frost;
    let used = match frost.governed_by {
        FrostDepthSource::Official => Level::Frost,
        FrostDepthSource::Computed => Level::ComputedFrost,
    };
    frost.computed_depth.is_some() && level == used
}
