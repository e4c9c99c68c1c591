//! What stands on the right of the section in words, each led to its depth: helices with
//! what they bear, the water table, the depth from which soil is credited.

use bearwell_engine::helix::{HelixBearing, NoCreditReason, PunchingLimit};

use super::frame::Frame;
use super::ground::water;
use super::reading::{PlateReading, Subject};
use crate::panel::PITCH;
use crate::spread::spread;
use crate::svg::{Style, Svg, fitted, width};
use crate::words;

/// Width in which the leaders run.
const LEAD: f64 = 5.0;
/// Gap below a note, mm.
const CLEAR: f64 = 0.9;
/// Most edges of water that are told; more are only drawn.
const WATERS: usize = 4;
/// How much a note tells; less where not all of them fit.
const DETAIL: [usize; 3] = [3, 2, 1];

/// A note to be led to a depth.
struct Note {
    /// Where it belongs, on paper.
    y: f64,
    /// Where its leader starts.
    x: f64,
    lines: Vec<String>,
}

/// Draws the notes.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) {
    let (from, to) = (frame.grade() - 1.0, frame.notes.bottom());
    let room = frame.notes.w - LEAD - 1.0;
    for detail in DETAIL {
        let notes = notes(s, frame, detail, room);
        let heights: Vec<f64> = notes
            .iter()
            .map(|n| n.lines.len() as f64 * PITCH + CLEAR)
            .collect();
        // the first line stands at the depth
        let wanted: Vec<f64> = notes.iter().map(|n| n.y - 0.55 * PITCH).collect();
        if let Some(tops) = spread(&wanted, &heights, from, to) {
            for (note, top) in notes.iter().zip(tops) {
                write(svg, frame, note, top);
            }
            return;
        }
    }
}

fn write(svg: &mut Svg, frame: &Frame, note: &Note, top: f64) {
    let end = frame.notes.x + LEAD;
    let at = top + 0.55 * PITCH;
    let way = [
        (note.x, note.y),
        (frame.notes.x, note.y),
        (end - 1.6, at),
        (end - 0.6, at),
    ];
    svg.polyline(&way, "stroke=\"#fff\" stroke-width=\"0.8\"");
    svg.polyline(&way, "stroke=\"#000\" stroke-width=\"0.18\"");
    for (i, line) in note.lines.iter().enumerate() {
        let y = top + (i as f64 + 0.86) * PITCH;
        svg.text(end, y, line, Style::PLAIN);
    }
}

/// All notes from the top down.
fn notes(s: Subject, frame: &Frame, detail: usize, room: f64) -> Vec<Note> {
    let mut all = Vec::new();
    let depth = |l| words::depth_told(l, s.system);
    let fit = |text: String| fitted(&text, room, Style::PLAIN);
    let edges = water(s);
    let only = edges.len() == 1;
    for edge in edges
        .iter()
        .take(WATERS)
        .filter(|e| frame.depths.shows(e.depth))
    {
        let told = match (only, edge.begins) {
            (true, _) => "water",
            (false, true) => "water from",
            (false, false) => "no water from",
        };
        all.push(Note {
            y: frame.depths.y(edge.depth),
            x: frame.section.right(),
            lines: vec![fit(format!("{told} {}", depth(edge.depth)))],
        });
    }
    if let Some(z) = s.no_credit_above().filter(|z| frame.depths.shows(*z)) {
        let mut lines = vec![fit(format!("no credit above {}", depth(z)))];
        if lines[0].ends_with('\u{2026}') {
            lines = vec!["no credit above".to_owned(), depth(z)];
        }
        all.push(Note {
            y: frame.depths.y(z),
            x: frame.section.right(),
            lines,
        });
    }
    for plate in s.plates() {
        all.push(Note {
            y: frame.depths.y(plate.depth),
            x: frame.axis + frame.depths.across(plate.diameter) / 2.0 + 0.2,
            lines: plate_lines(s, &plate, detail, room),
        });
    }
    all.sort_by(|a, b| a.y.total_cmp(&b.y));
    all
}

/// The lines of a helix: name, diameter and depth, and what it resists.
fn plate_lines(s: Subject, plate: &PlateReading, detail: usize, room: f64) -> Vec<String> {
    let size = format!(
        "{} at {}",
        words::size_told(plate.diameter, s.system),
        words::depth_told(plate.depth, s.system)
    );
    let fits = |text: &str| width(text, Style::PLAIN) <= room;
    let whole = format!("{}: {size}", plate.label);
    let mut lines = if fits(&whole) {
        vec![whole]
    } else if detail > 2 {
        vec![fitted(plate.label, room, Style::PLAIN), size]
    } else {
        let left = room - width(&format!(": {size}"), Style::PLAIN);
        vec![format!(
            "{}: {size}",
            fitted(plate.label, left, Style::PLAIN)
        )]
    };
    if detail > 2
        && let Some(weak) = plate.down.and_then(held)
    {
        let held = format!(
            "held at {}",
            words::stress_told(weak.bearing_limit, s.system)
        );
        let whole = format!("{held} by {}", weak.layer);
        if fits(&whole) {
            lines.push(whole);
        } else {
            lines.extend([held, format!("by {}", weak.layer)]);
        }
    }
    if detail > 1 {
        let told: Vec<String> = [("down", plate.down), ("up", plate.up)]
            .into_iter()
            .filter_map(|(way, helix)| Some(format!("{way} {}", resists(s, helix?))))
            .collect();
        let joined = told.join(", ");
        if fits(&joined) {
            lines.push(joined);
        } else if detail > 2 {
            lines.extend(told);
        } else {
            lines.push(fitted(&joined, room, Style::PLAIN));
        }
    }
    lines
        .into_iter()
        .map(|line| fitted(&line, room, Style::PLAIN))
        .collect()
}

/// The weaker soil that takes less than the helix could bear.
pub fn held(helix: &HelixBearing) -> Option<&PunchingLimit> {
    let weak = helix.punching.as_ref()?;
    (weak.bearing_limit < helix.bearing).then_some(weak)
}

/// What a helix resists in one direction, or why nothing.
fn resists(s: Subject, helix: &HelixBearing) -> String {
    match helix.no_credit {
        Some(NoCreditReason::FillOrOrganic) => "none: no credit".to_owned(),
        Some(NoCreditReason::AboveCreditDepth) => "none: too high".to_owned(),
        None => words::force_told(helix.resistance, s.system),
    }
}
