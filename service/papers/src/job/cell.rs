//! One pile in its cell: mark of its verdict and label, torque over depth with what it must
//! reach and be clear of, its helices where they stand. Or why there is nothing to draw.

use bearwell_engine::quantity::Length;
use bearwell_engine::record::RowStanding;

use super::scales::Scales;
use super::{Drawn, Subject};
use crate::panel::PITCH;
use crate::record::steps::dash;
use crate::record::torque::aside;
use crate::svg::{Rect, Style, Svg, fitted, mm, wrapped};
use crate::{marks, words};

/// Line of the readings that count.
pub const COUNTS: &str = "stroke=\"#000\" stroke-width=\"0.4\" stroke-linejoin=\"round\"";
/// Line of what the pile must reach.
pub const REQUIRED: &str = "stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"2 0.7\"";
/// Line of what the shaft may take.
pub const LIMIT: &str = "stroke=\"#000\" stroke-width=\"0.7\"";
/// Line of the least depth of the tip.
pub const LEAST_TIP: &str = "stroke=\"#000\" stroke-width=\"0.45\"";
/// A helix at the right edge.
pub const HELIX: &str = "stroke=\"#000\" stroke-width=\"0.7\"";
/// Length of the stroke of a helix, mm.
pub const HELIX_LENGTH: f64 = 2.2;
/// Width of the bar of a zone, mm.
pub const BAR: f64 = 1.7;
/// Width of a cell that has room for numbers below the label, mm.
const WIDE: f64 = 34.0;

/// A zone from grade down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Zone {
    /// Frozen ground.
    Frost,
    /// Fill.
    Fill,
}

impl Zone {
    /// Fills its bar: rungs for frost, slanting strokes for fill.
    pub fn fill(self, svg: &mut Svg, r: Rect) {
        let pitch = 1.1;
        let count = (r.h / pitch).floor() as usize;
        let mut d = String::new();
        for i in 0..count {
            let y = r.y + (i as f64 + 0.5) * r.h / count as f64;
            d += &match self {
                Zone::Frost => format!("M{} {}H{}", mm(r.x), mm(y), mm(r.right())),
                Zone::Fill => format!(
                    "M{} {}L{} {}",
                    mm(r.x),
                    mm(y + 0.5),
                    mm(r.right()),
                    mm(y - 0.5)
                ),
            };
        }
        if !d.is_empty() {
            svg.path(&d, "stroke=\"#000\" stroke-width=\"0.18\"");
        }
        svg.rect(r, "stroke=\"#000\" stroke-width=\"0.2\"");
    }

    fn depth(self, pile: &Drawn) -> Option<Length> {
        let depths = pile.request.depths;
        let depth = match self {
            Zone::Frost => depths.frost_depth,
            Zone::Fill => depths.fill_depth,
        };
        depth.filter(|d| *d > Length::ZERO)
    }
}

/// Both zones.
const ZONES: [Zone; 2] = [Zone::Frost, Zone::Fill];

/// Draws a cell.
pub fn draw(svg: &mut Svg, s: Subject, scales: &Scales, pile: &Drawn, cell: Rect) {
    marks::verdict(svg, pile.pile.verdict, (cell.x + 1.6, cell.y + 0.5 * PITCH));
    let room = cell.w - 3.8;
    let label = fitted(pile.pile.label.as_str(), room, Style::BOLD);
    svg.text(cell.x + 3.8, cell.y + 0.78 * PITCH, &label, Style::BOLD);
    let mut top = cell.y + PITCH + 0.4;
    if cell.w >= WIDE {
        if let Some(text) = numbers(s, pile) {
            let text = fitted(&text, cell.w, Style::PLAIN);
            svg.text(cell.x, top + 0.78 * PITCH, &text, Style::PLAIN);
        }
        top += PITCH + 0.4;
    }
    // the bars of zones stand beside the field, at one place in every cell
    let beside = BAR * zones_of(s).count() as f64;
    let r = Rect {
        x: cell.x + 0.2 + beside,
        y: top,
        w: cell.w - 0.4 - beside,
        h: cell.bottom() - top - 0.2,
    };
    if pile.outcome().is_some() {
        grid(svg, scales, r);
        zones(svg, s, scales, pile, r);
        limits(svg, scales, pile, r);
        readings(svg, scales, pile, r);
        helices(svg, scales, pile, r);
        svg.rect(r, "stroke=\"#000\" stroke-width=\"0.25\"");
    } else {
        empty(svg, pile, r);
    }
}

/// Tip and torque of a pile.
fn numbers(s: Subject, pile: &Drawn) -> Option<String> {
    let tip = words::depth_told(pile.pile.tip_depth?, s.system);
    let torque = |t| words::torque(t, s.system);
    let unit = words::torque_unit(s.system);
    Some(
        match (pile.pile.effective_torque, pile.pile.required_torque) {
            (Some(e), Some(r)) => format!("{tip}; {} of {} {unit}", torque(e), torque(r)),
            (Some(e), None) => format!("{tip}; {} {unit}", torque(e)),
            (None, _) => format!("{tip}; no torque counts"),
        },
    )
}

/// Lines at the steps of both scales.
pub fn grid(svg: &mut Svg, scales: &Scales, r: Rect) {
    let thin = "stroke=\"#000\" stroke-width=\"0.08\"";
    for i in 1..scales.torque.count {
        let x = r.x + r.w * f64::from(i) / f64::from(scales.torque.count);
        svg.line((x, r.y), (x, r.bottom()), thin);
    }
    for i in 1..scales.depth.count {
        let y = r.y + r.h * f64::from(i) / f64::from(scales.depth.count);
        svg.line((r.x, y), (r.right(), y), thin);
    }
}

/// Zones that any pile of the job has.
pub fn zones_of(s: Subject) -> impl Iterator<Item = Zone> {
    ZONES
        .into_iter()
        .filter(move |zone| s.piles.iter().any(|p| zone.depth(p).is_some()))
}

/// Bars of frost and fill left of the field, with a line across it at the base of each.
fn zones(svg: &mut Svg, s: Subject, scales: &Scales, pile: &Drawn, r: Rect) {
    let left = r.x - BAR * zones_of(s).count() as f64;
    for (i, zone) in zones_of(s).enumerate() {
        let Some(depth) = zone.depth(pile) else {
            continue;
        };
        let y = scales.y(r, depth.si());
        let bar = Rect {
            x: left + BAR * i as f64,
            y: r.y,
            w: BAR,
            h: y - r.y,
        };
        zone.fill(svg, bar);
        let fine = "stroke=\"#000\" stroke-width=\"0.15\" stroke-dasharray=\"0.9 0.6\"";
        svg.line((bar.right(), y), (r.right(), y), fine);
    }
}

/// What the pile must reach and may take.
fn limits(svg: &mut Svg, scales: &Scales, pile: &Drawn, r: Rect) {
    let limit = pile.request.limits.and_then(|l| l.shaft_torque);
    for (torque, stroke) in [(pile.pile.required_torque, REQUIRED), (limit, LIMIT)] {
        let shown = torque.filter(|t| scales.torque.share(t.si()) <= 1.0 + 1e-9);
        if let Some(torque) = shown {
            let x = scales.x(r, torque.si());
            svg.line((x, r.y), (x, r.bottom()), stroke);
        }
    }
    let least = pile.request.depths.minimum_tip_depth;
    if let Some(least) = least.filter(|d| scales.depth.share(d.si()) <= 1.0 + 1e-9) {
        let y = scales.y(r, least.si());
        svg.line((r.x, y), (r.right(), y), LEAST_TIP);
    }
}

/// The readings, and the window of the torque that counts.
fn readings(svg: &mut Svg, scales: &Scales, pile: &Drawn, r: Rect) {
    let on = |points: &[(f64, f64)]| -> Vec<(f64, f64)> {
        points.iter().map(|p| scales.at(r, *p)).collect()
    };
    if let Some(e) = pile.outcome().and_then(|o| o.effective.as_ref()) {
        let (x, top) = scales.at(r, (e.torque.si(), e.window_from.si()));
        let bottom = scales.y(r, e.window_to.si());
        window(svg, (x, top), bottom);
    }
    for (i, step) in pile.steps.iter().enumerate() {
        if step.standing != RowStanding::Counts {
            svg.polyline(&on(&aside(&pile.steps, i, step)), dash(step.standing));
        }
    }
    let counts = |s: &&crate::record::steps::Step| s.standing == RowStanding::Counts;
    let mut way: Vec<(f64, f64)> = Vec::new();
    for step in pile.steps.iter().filter(counts) {
        way.push((step.torque, step.counts_from));
        way.push((step.torque, step.to));
    }
    if !way.is_empty() {
        svg.polyline(&on(&way), COUNTS);
    }
    if let Some(last) = pile.steps.last() {
        let at = scales.at(r, (last.torque, last.to));
        crate::record::steps::mark(svg, last.standing, at, 0.7);
    }
}

/// The window of the torque that counts: an open bar.
pub fn window(svg: &mut Svg, (x, top): (f64, f64), bottom: f64) {
    let bar = Rect {
        x: x - 0.6,
        y: top,
        w: 1.2,
        h: (bottom - top).max(0.2),
    };
    svg.rect(
        bar,
        "fill=\"#d8d8d8\" stroke=\"#000\" stroke-width=\"0.15\"",
    );
}

/// Helices as strokes on the right edge.
fn helices(svg: &mut Svg, scales: &Scales, pile: &Drawn, r: Rect) {
    for helix in pile.outcome().into_iter().flat_map(|o| &o.helices) {
        if helix.depth >= Length::ZERO {
            let y = scales.y(r, helix.depth.si());
            svg.line((r.right() - HELIX_LENGTH, y), (r.right(), y), HELIX);
        }
    }
}

/// A pile without a log that could be judged: a broken frame with the reason.
fn empty(svg: &mut Svg, pile: &Drawn, r: Rect) {
    svg.rect(
        r,
        "stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"1.6 1\"",
    );
    let mut texts: Vec<String> = pile
        .pile
        .issues
        .iter()
        .map(|issue| {
            let code = issue.code.replace('_', " ");
            // a narrow cell has room for the code alone
            match r.w >= WIDE {
                true => format!("{code}: {}", issue.detail),
                false => code,
            }
        })
        .collect();
    texts.dedup();
    let head = std::iter::once("not judged:");
    let most = ((r.h - 1.6) / PITCH).floor().max(1.0) as usize;
    let lines = head
        .chain(texts.iter().map(String::as_str))
        .flat_map(|text| wrapped(text, r.w - 1.6, Style::PLAIN));
    let mut lines: Vec<String> = lines.take(most + 1).collect();
    if lines.len() > most {
        lines.truncate(most - 1);
        lines.push("\u{2026}".to_owned());
    }
    for (i, line) in lines.iter().enumerate() {
        let y = r.y + 0.8 + (i as f64 + 0.78) * PITCH;
        svg.text(r.x + 0.8, y, line, Style::PLAIN);
    }
}
