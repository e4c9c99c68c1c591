//! What stands under the section: the bar of widths of the pile, and what hatches and lines
//! mean; only those that are on the sheet.

use bearwell_engine::helix::{AxialDirection, GoverningMode};
use bearwell_engine::soil::SoilKind;

use super::curve::{self, HELD};
use super::frame::Frame;
use super::levels::{BAND, needed_stroke};
use super::notes::held;
use super::pile::{CYLINDER, SPREAD, ZONE_DOWN, ZONE_UP};
use super::reading::{DIRECTIONS, PlateReading, Subject, line, told};
use crate::hatch::hatch;
use crate::key::{self, Key};
use crate::page;
use crate::panel::PITCH;
use crate::svg::{Anchor, Rect, Style, Svg, fitted};
use crate::words;

/// Rows of the legend.
const ROWS: usize = 5;
/// Width of the part with the bar.
const BAR: f64 = 44.0;

/// One entry of the legend.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Entry {
    /// A kind of ground.
    Ground(SoilKind),
    /// Soil that bears.
    Zone(AxialDirection),
    /// The cylinder that governs.
    Cylinder,
    /// Spread to weaker soil.
    Spread,
    /// A curve, or the marks of the pile as sent.
    Curve(AxialDirection),
    /// The curve with the bearing held.
    Held,
    /// What a load needs.
    Needed(AxialDirection),
    /// Depths that pass.
    Band,
    /// A helix without credit.
    Idle,
}

/// What is on the sheet.
pub fn entries(s: Subject) -> Vec<Entry> {
    let mut kinds: Vec<SoilKind> = s
        .request
        .soil
        .layers
        .iter()
        .map(|l| l.soil.kind())
        .collect();
    kinds.sort();
    kinds.dedup();
    let mut all: Vec<Entry> = kinds.into_iter().map(Entry::Ground).collect();
    for r in s.resistances() {
        let mut helices = r.individual_bearing.helices.iter();
        if helices.any(|h| h.no_credit.is_none() && !h.zone.is_empty()) {
            all.push(Entry::Zone(r.direction));
        }
    }
    let cylinder = |m| m == GoverningMode::CylindricalShear;
    if s.resistances().any(|r| cylinder(r.governing_mode)) {
        all.push(Entry::Cylinder);
    }
    let weaker = |p: &PlateReading| p.down.and_then(held).is_some();
    if s.plates().iter().any(weaker) {
        all.push(Entry::Spread);
    }
    if s.plates().iter().any(|p| p.idle()) {
        all.push(Entry::Idle);
    }
    all.extend(s.resistances().map(|r| Entry::Curve(r.direction)));
    if let Some(points) = s.points()
        && line(points, "compression_punching").is_some_and(|held| {
            let ultimate = line(points, "compression_ultimate").unwrap_or_default();
            held.iter()
                .zip(&ultimate)
                .any(|(h, u)| h.1 < u.1 * (1.0 - 1e-9))
        })
    {
        all.push(Entry::Held);
    }
    all.extend(
        DIRECTIONS
            .into_iter()
            .filter(|d| s.needed(*d).is_some())
            .map(Entry::Needed),
    );
    let passes = s.outcome().minimum_depth.as_ref();
    if passes.is_some_and(|f| !f.passing.is_empty()) {
        all.push(Entry::Band);
    }
    all
}

/// Height of the strip.
pub fn height(_: &[Entry]) -> f64 {
    ROWS as f64 * PITCH + 1.0
}

impl Entry {
    fn text(self, s: Subject) -> String {
        let both = s.resistances().count() > 1;
        let side = |d| match (both, d) {
            (false, _) => "",
            (true, AxialDirection::Compression) => " (left)",
            (true, AxialDirection::Tension) => " (right)",
        };
        match self {
            Entry::Ground(kind) => kind.told().to_owned(),
            Entry::Zone(d) => format!("soil that bears {}{}", told(d), side(d)),
            Entry::Cylinder => "cylinder that governs".to_owned(),
            Entry::Spread => "spread to weaker soil".to_owned(),
            Entry::Idle => "helix without credit".to_owned(),
            Entry::Curve(d) => format!("ultimate, {}", told(d)),
            Entry::Held => "down, held by weaker soil".to_owned(),
            Entry::Needed(d) => format!("needed, {}", told(d)),
            Entry::Band => "depths that pass".to_owned(),
        }
    }

    fn sample(self, svg: &mut Svg, s: Subject, r: Rect) {
        let y = r.y + r.h / 2.0;
        let ends = ((r.x, y), (r.right(), y));
        match self {
            Entry::Ground(kind) => {
                hatch(svg, kind, r);
                svg.rect(r, "stroke=\"#000\" stroke-width=\"0.2\"");
            }
            Entry::Zone(AxialDirection::Compression) => svg.rect(r, ZONE_DOWN),
            Entry::Zone(AxialDirection::Tension) => svg.rect(r, ZONE_UP),
            Entry::Cylinder => svg.line(ends.0, ends.1, CYLINDER),
            Entry::Spread => svg.line(ends.0, ends.1, SPREAD),
            Entry::Idle => svg.rect(
                Rect {
                    y: y - 0.4,
                    h: 0.8,
                    ..r
                },
                "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.25\"",
            ),
            Entry::Curve(d) => {
                if s.points().is_some() {
                    svg.line(ends.0, ends.1, curve::stroke(d));
                }
                curve::mark(svg, d, (r.x + r.w / 2.0, y), 0.9);
            }
            Entry::Held => svg.line(ends.0, ends.1, HELD),
            Entry::Needed(d) => {
                let x = r.x + r.w / 2.0;
                svg.line((x, r.y), (x, r.bottom()), needed_stroke(d));
            }
            Entry::Band => svg.rect(r, BAND),
        }
    }
}

/// Draws bar and legend side by side.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame, entries: &[Entry], area: Rect) {
    bar(svg, s, frame, area);
    let keys: Vec<Key> = entries
        .iter()
        .map(|entry| Key {
            text: entry.text(s),
            sample: Box::new(move |svg, r| entry.sample(svg, s, r)),
        })
        .collect();
    let beside = Rect {
        x: area.x + BAR + key::GAP,
        w: area.w - BAR - key::GAP,
        ..area
    };
    key::draw(svg, &keys, ROWS, beside);
}

/// A bar of two fields for the widths of the pile, and both scales.
fn bar(svg: &mut Svg, s: Subject, frame: &Frame, area: Rect) {
    let (unit, name) = (words::size_factor(s.system), words::size_unit(s.system));
    let per_unit = frame.depths.factor * f64::from(frame.depths.times) * unit;
    let mut step = page::round_step(7.0 / per_unit);
    if 2.0 * step * per_unit > 24.0 {
        step /= 2.0;
    }
    let w = step * per_unit;
    let (x, y) = (area.x + 1.4, area.y + 5.2);
    for i in 0..2 {
        let fill = if i == 0 { "#000" } else { "#fff" };
        svg.rect(
            Rect {
                x: x + f64::from(i) * w,
                y,
                w,
                h: 1.5,
            },
            &format!("fill=\"{fill}\" stroke=\"#000\" stroke-width=\"0.25\""),
        );
    }
    let style = Style::PLAIN.at(Anchor::Middle);
    svg.text(x, y - 1.3, "0", style);
    let end = format!("{} {name}", words::trimmed(2.0 * step, 3));
    svg.text(x + 2.0 * w - 1.2, y - 1.3, &end, Style::PLAIN);
    let across = match frame.depths.times {
        1 => "widths to the same scale".to_owned(),
        n => format!("widths of the pile x {n}"),
    };
    let depths = format!("depths {}", frame.depths.scale.name);
    for (i, text) in [depths, across].iter().enumerate() {
        svg.text(
            area.x,
            y + 1.6 + (i as f64 + 0.86) * PITCH,
            &fitted(text, BAR, Style::PLAIN),
            Style::PLAIN,
        );
    }
}
