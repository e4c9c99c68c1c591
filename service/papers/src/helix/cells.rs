//! The layers in words, each in a cell of its own on the left of the section; boundaries
//! fan out to the cells where layers are thin. Layers for which there is no cell share one.

use bearwell_engine::quantity::{System, UnitWeight};
use bearwell_engine::soil::{Layer, Strength};

use super::frame::{FAN, Frame};
use super::reading::Subject;
use crate::panel::PITCH;
use crate::spread::spread;
use crate::svg::{Style, Svg, fitted, width};
use crate::words;

/// Clear height of a cell beside its lines, mm.
const CLEAR: f64 = 0.5;
/// Most lines in a cell.
const MOST_LINES: usize = 3;

/// Layers that share one cell, or one layer.
#[derive(Debug, Clone, Copy)]
struct Cell {
    first: usize,
    last: usize,
    /// On paper, where the layers are.
    top: f64,
    bottom: f64,
    lines: usize,
}

impl Cell {
    fn height(&self) -> f64 {
        self.lines as f64 * PITCH + CLEAR
    }
}

/// Draws the cells; layers that share one are numbered from the top. Returns the layers without one of their own.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame) -> Vec<usize> {
    let area = frame.cells;
    let cells = cells(s, frame);
    let wanted: Vec<f64> = cells.iter().map(|c| c.top).collect();
    let heights: Vec<f64> = cells.iter().map(Cell::height).collect();
    // the cells were made to fit
    let tops = spread(&wanted, &heights, area.y, area.bottom()).unwrap_or_default();
    let thin = "stroke=\"#000\" stroke-width=\"0.18\"";
    for (cell, top) in cells.iter().zip(&tops) {
        svg.polyline(
            &[
                (area.x, *top),
                (area.right(), *top),
                (area.right() + FAN, cell.top),
            ],
            thin,
        );
        let texts = texts(s, cell, area.w - 1.0);
        for (i, (text, style)) in texts.iter().enumerate() {
            let y = top + 0.45 * CLEAR + (i as f64 + 0.78) * PITCH;
            svg.text(area.x, y, text, *style);
        }
    }
    if let (Some(cell), Some(top)) = (cells.last(), tops.last()) {
        let bottom = (top + cell.height()).max(cell.bottom).min(area.bottom());
        svg.polyline(
            &[
                (area.x, bottom),
                (area.right(), bottom),
                (area.right() + FAN, cell.bottom),
            ],
            thin,
        );
    }
    let head = format!("layers, weights in {}", words::unit_weight_unit(s.system));
    svg.text(area.x, area.y - 1.6, &head, Style::BOLD);
    let shared = cells.iter().filter(|c| c.last > c.first);
    shared.flat_map(|c| c.first..=c.last).collect()
}

/// Cells with as many lines as there is room for: one for each layer first, then more for
/// the thickest ones first.
fn cells(s: Subject, frame: &Frame) -> Vec<Cell> {
    let mut cells: Vec<Cell> = s
        .request
        .soil
        .layers
        .iter()
        .enumerate()
        .filter(|(_, l)| l.top.si() < frame.depths.end - 1e-9)
        .map(|(i, layer)| Cell {
            first: i,
            last: i,
            top: frame.depths.y(layer.top),
            bottom: frame.depths.at(layer.bottom.si().min(frame.depths.end)),
            lines: 1,
        })
        .collect();
    let room = frame.cells.h;
    let most = (room / (PITCH + CLEAR)).floor().max(1.0) as usize;
    while cells.len() > most {
        merge_thinnest(&mut cells);
    }
    let mut order: Vec<usize> = (0..cells.len()).collect();
    order.sort_by(|a, b| {
        let thick = |i: &usize| cells[*i].bottom - cells[*i].top;
        thick(b).total_cmp(&thick(a))
    });
    let mut left = room - cells.iter().map(Cell::height).sum::<f64>();
    for lines in 2..=MOST_LINES {
        for i in &order {
            let cell = &mut cells[*i];
            let single = cell.first == cell.last;
            if single && cell.lines + 1 == lines && left >= PITCH + 1e-9 {
                cell.lines = lines;
                left -= PITCH;
            }
        }
    }
    cells
}

/// Lets the two neighbours that are thinnest together share a cell.
fn merge_thinnest(cells: &mut Vec<Cell>) {
    let mut best: Option<(usize, f64)> = None;
    for (i, pair) in cells.windows(2).enumerate() {
        let height = pair[1].bottom - pair[0].top;
        if best.is_none_or(|(_, h)| height < h - 1e-9) {
            best = Some((i, height));
        }
    }
    if let Some((i, _)) = best {
        let below = cells.remove(i + 1);
        cells[i].last = below.last;
        cells[i].bottom = below.bottom;
    }
}

/// The lines of a cell.
fn texts(s: Subject, cell: &Cell, room: f64) -> Vec<(String, Style)> {
    if cell.last == cell.first + 1 {
        // two share a line: their strengths at least
        let told = |i: usize| format!("{}: {}", i + 1, short_strength(s, i));
        let text = format!("{}, {}", told(cell.first), told(cell.last));
        if width(&text, Style::PLAIN) <= room {
            return vec![(text, Style::PLAIN)];
        }
    }
    if cell.last > cell.first {
        let text = format!(
            "layers {} to {}: in the list",
            cell.first + 1,
            cell.last + 1
        );
        return vec![(fitted(&text, room, Style::PLAIN), Style::PLAIN)];
    }
    let words = LayerWords::of(s, cell.first);
    let label = |room: f64| fitted(&words.label, room, Style::BOLD);
    let plain = |text: String| (fitted(&text, room, Style::PLAIN), Style::PLAIN);
    match cell.lines {
        1 => {
            let facts = words.short();
            let room = room - width(&facts, Style::PLAIN) - 1.2;
            if room < width("Wa\u{2026}", Style::BOLD) {
                return vec![plain(format!("{}: {facts}", words.label))];
            }
            // one text, so that no font makes label and facts collide
            let name = fitted(&words.label, room, Style::PLAIN);
            vec![plain(format!("{name}: {facts}"))]
        }
        2 => vec![(label(room), Style::BOLD), plain(words.short())],
        _ => vec![
            (label(room), Style::BOLD),
            plain(format!("{}, {}", words.kind, words.strength)),
            plain(words.weight.clone()),
        ],
    }
}

/// What is said of a layer.
#[derive(Debug)]
pub struct LayerWords {
    label: String,
    kind: &'static str,
    strength: String,
    weight: String,
    weight_short: String,
}

impl LayerWords {
    /// Of layer `i`.
    pub fn of(s: Subject, i: usize) -> Self {
        let soil = &s.request.soil;
        let layer = &soil.layers[i];
        let (weight, weight_short) = weights(layer, soil.water(), s.system);
        Self {
            label: soil.label(i),
            kind: layer.soil.kind().told(),
            strength: strength(s, i),
            weight,
            weight_short,
        }
    }

    /// Strength and weight in one line; the unit of the weight stands above.
    fn short(&self) -> String {
        format!("{}, {}", self.strength, self.weight_short)
    }

    /// All of it with the depths, for a list; the name takes the room that is left.
    pub fn listed(&self, s: Subject, i: usize, room: f64) -> String {
        let layer = &s.request.soil.layers[i];
        let text = format!(
            "{}: {} to {}, {}, {}, {}, {}",
            i + 1,
            words::depth(layer.top, s.system),
            words::depth(layer.bottom, s.system),
            self.kind,
            self.strength,
            self.weight_short,
            self.label
        );
        fitted(&text, room, Style::PLAIN)
    }
}

/// The strength that the calculation uses; a star where it was found, not sent.
fn strength(s: Subject, i: usize) -> String {
    let star = if s.found(i) { "*" } else { "" };
    match s.strata.layers.get(i).map(|l| l.strength) {
        Some(Strength::Undrained { su }) => {
            format!("su {}{star}", words::stress_told(su, s.system))
        }
        Some(Strength::Drained { phi, cohesion }) if cohesion.si() > 0.0 => format!(
            "{}{star}, c' {}",
            words::angle_told(phi),
            words::stress_told(cohesion, s.system)
        ),
        Some(Strength::Drained { phi, .. }) => format!("friction {}{star}", words::angle_told(phi)),
        Some(Strength::Rock) => "no helix theory".to_owned(),
        Some(Strength::NoCredit) | None => "no credit".to_owned(),
    }
}

/// The strength as a number with its unit, which tells stress from angle.
fn short_strength(s: Subject, i: usize) -> String {
    match s.strata.layers.get(i).map(|l| l.strength) {
        Some(Strength::Undrained { su }) => words::stress_told(su, s.system),
        Some(Strength::Drained { phi, .. }) => words::angle_told(phi),
        _ => strength(s, i),
    }
}

/// Unit weights, long and short.
fn weights(layer: &Layer, water: UnitWeight, system: System) -> (String, String) {
    let unit = words::unit_weight_unit(system);
    let (moist, wet) = layer.shown_weights(water);
    let moist = words::unit_weight(moist, system);
    match wet.map(|w| words::unit_weight(w, system)) {
        Some(wet) => (
            format!("{moist} {unit}, in water {wet}"),
            format!("{moist}/{wet}"),
        ),
        None => (format!("{moist} {unit}"), moist),
    }
}
