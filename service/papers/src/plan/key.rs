//! What the marks, lines and fills of a plan mean; only what is on the sheet.

use bearwell_engine::contract::SubjectKind;
use bearwell_engine::layout::{KeepOutShape, SpanningUsed};

use crate::figure::{Notes, failed};
use crate::panel::{PITCH, Subject};
use crate::plan::ground::zone_mark;
use crate::plan::kinds::{Kinds, uplift};
use crate::plan::moves::{self, Moves};
use crate::plan::openings;
use crate::plan::piles::pulled;
use crate::plan::shape::Spot;
use crate::svg::{Rect, Style, Svg, fitted, mm, width};
use crate::{marks, words};

/// Width of a sample with its gap, mm.
const SAMPLE: f64 = 6.4;
/// Gap between columns, mm.
const GAP: f64 = 4.0;
/// Most entries beside the scale bar.
const BESIDE: usize = 4;
/// Most rows of the band below the strip.
const ROWS: usize = 7;

/// Draws a sample around a place.
type Sample = Box<dyn Fn(&mut Svg, Spot)>;

/// One entry.
pub struct Entry {
    sample: Option<Sample>,
    text: String,
}

fn entry(text: impl Into<String>, sample: impl Fn(&mut Svg, Spot) + 'static) -> Entry {
    Entry {
        sample: Some(Box::new(sample)),
        text: text.into(),
    }
}

/// A sample that is a line across.
fn across(pen: &'static str) -> impl Fn(&mut Svg, Spot) {
    move |svg, (x, y)| svg.line((x - 2.6, y), (x + 2.6, y), pen)
}

/// The entries of a sheet: those that stand beside the scale bar, and further ones.
pub fn entries(s: Subject, notes: Notes) -> (Vec<Entry>, Vec<Entry>) {
    let mut beside = usual(s, notes);
    let mut all = beside.split_off(beside.len().min(BESIDE));
    let piles = &s.answer.result.piles;
    let kinds = Kinds::of(s);
    for kind in kinds.all() {
        let form = kind.form;
        let text = if kinds.all().len() > 1 {
            format!("[{}] {}", kind.number, kind.about)
        } else {
            kind.about.clone()
        };
        all.push(entry(text, move |svg, at| {
            form.draw(svg, at, 0.95, Some(0.0))
        }));
    }
    if !kinds.all().is_empty() && piles.iter().any(|p| p.pile_type.is_none()) {
        all.push(Entry {
            sample: None,
            text: "[-] pile without a type".to_owned(),
        });
    }
    if piles.iter().any(pulled) {
        all.push(entry("ring: pulled up in some combination", |svg, at| {
            marks::dial(svg, at, 0.9, Some(0.0));
            uplift(svg, at, 0.9);
        }));
    }
    all.extend(beams(s));
    all.extend(grounds(s));
    all.extend(slabs(s));
    (beside, all)
}

/// Piles, beams and what stands at a pile.
fn usual(s: Subject, notes: Notes) -> Vec<Entry> {
    let piles = &s.answer.result.piles;
    let over = failed(s.answer, SubjectKind::Pile);
    let judged = piles.iter().any(|p| p.utilisation_ratio.is_some()) || !over.is_empty();
    let unit = words::force_unit(s.system);
    let mut all = Vec::new();
    all.push(if judged {
        entry("pile; dark: its utilisation", |svg, at| {
            marks::dial(svg, at, 1.3, Some(0.7));
        })
    } else {
        entry("pile, not judged", |svg, at| {
            marks::dial(svg, at, 1.3, None)
        })
    });
    if !over.is_empty() {
        all.push(entry("pile over a limit", |svg, at| {
            marks::over_limit(svg, at, 1.0);
        }));
    }
    let beams = &s.answer.result.beams;
    let known = beams.iter().filter(|b| b.edges.is_some()).count();
    let heavy = !failed(s.answer, SubjectKind::Beam).is_empty();
    if known < beams.len() || known == 0 {
        let text = match (heavy, known) {
            (true, _) => "beam; heavy line: over a limit",
            (false, 0) => "beam (width not to scale)",
            _ => "beam whose width was not sent",
        };
        all.push(entry(text, marks::beam_sample));
    }
    if known > 0 {
        let text = if heavy {
            "beam to scale; heavy: over a limit"
        } else {
            "beam, width to scale"
        };
        all.push(entry(text, |svg, (x, y)| {
            let d = format!("M{} {}h5.2v2.2h-5.2Z", mm(x - 2.6), mm(y - 1.1));
            svg.path(&d, "fill=\"#e4e4e4\" stroke=\"#000\" stroke-width=\"0.2\"");
            let pen = "stroke=\"#000\" stroke-width=\"0.2\" stroke-dasharray=\"1.8 0.6 0.5 0.6\"";
            svg.line((x - 2.6, y), (x + 2.6, y), pen);
        }));
    }
    if notes == Notes::Loads {
        let up = if piles.iter().any(pulled) { ", up" } else { "" };
        let used = if judged { ", (utilisation)" } else { "" };
        all.push(Entry {
            sample: None,
            text: format!("at a pile: {unit} down{up}{used}"),
        });
    }
    all
}

/// What became of piles.
pub fn moves(moves: &Moves) -> Vec<Entry> {
    let mut all = Vec::new();
    if !moves.was.is_empty() {
        all.push(entry("where a pile was", |svg, at| {
            svg.circle(at, 1.3, moves::RING);
        }));
    }
    if !moves.free.is_empty() {
        all.push(entry("a pile may stand here", |svg, (x, y)| {
            across(moves::PEN)(svg, (x, y));
            for end in [-2.6, 2.6] {
                svg.line((x + end, y - 0.9), (x + end, y + 0.9), moves::PEN);
            }
        }));
    }
    all
}

/// Form lines and openings.
fn beams(s: Subject) -> Vec<Entry> {
    let mut all = Vec::new();
    if s.answer.result.outlines.iter().flatten().next().is_some() {
        let pen = "stroke=\"#000\" stroke-width=\"0.55\"";
        all.push(entry("outside form line", across(pen)));
    }
    let openings = openings::by_beam(s.request, &s.answer.result);
    let kinds: Vec<bool> = openings.values().flatten().map(|o| o.no_beam).collect();
    if kinds.contains(&false) {
        all.push(entry("opening above the beam", |svg, (x, y)| {
            let d = format!("M{} {}h4.4v1.2h-4.4Z", mm(x - 2.2), mm(y - 0.6));
            svg.path(&d, "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.15\"");
        }));
    }
    if kinds.contains(&true) {
        let pen = "stroke=\"#000\" stroke-width=\"0.2\" stroke-dasharray=\"0.3 1.2\"";
        all.push(entry("no beam here", across(pen)));
    }
    all
}

/// What piles keep away from, and zones.
fn grounds(s: Subject) -> Vec<Entry> {
    let mut all = Vec::new();
    let keep_outs: Vec<_> = s.request.keep_outs.iter().flatten().collect();
    let any = |is: fn(&KeepOutShape) -> bool| keep_outs.iter().any(|k| is(&k.shape));
    if any(|k| matches!(k, KeepOutShape::Polygon(_) | KeepOutShape::Circle(_))) {
        all.push(entry("no piles", |svg, (x, y)| {
            let d = format!("M{} {}h5v2.2h-5Z", mm(x - 2.5), mm(y - 1.1));
            svg.path(&d, "stroke=\"#000\" stroke-width=\"0.3\"");
            let mut d = String::new();
            for i in 0..3 {
                d += &format!(
                    "M{} {}l2.2 -2.2",
                    mm(x - 2.3 + 1.2 * f64::from(i)),
                    mm(y + 1.1)
                );
            }
            svg.path(&d, "stroke=\"#000\" stroke-width=\"0.15\"");
        }));
    }
    if any(|k| matches!(k, KeepOutShape::Line(_))) {
        all.push(entry("line that piles keep off", |svg, (x, y)| {
            across("stroke=\"#000\" stroke-width=\"0.4\"")(svg, (x, y));
            let d = format!(
                "M{a} {b}l1.6 1.6M{a} {c}l1.6 -1.6",
                a = mm(x - 0.8),
                b = mm(y - 0.8),
                c = mm(y + 0.8)
            );
            svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
        }));
    }
    if any(|k| matches!(k, KeepOutShape::Boundary(_) | KeepOutShape::Lot(_))) {
        all.push(entry("boundary; ticks: no piles there", |svg, (x, y)| {
            across("stroke=\"#000\" stroke-width=\"0.4\"")(svg, (x, y + 0.5));
            let mut d = String::new();
            for i in 0..3 {
                d += &format!(
                    "M{} {}l1.2 -1.2",
                    mm(x - 2.2 + 1.7 * f64::from(i)),
                    mm(y + 0.5)
                );
            }
            svg.path(&d, "stroke=\"#000\" stroke-width=\"0.15\"");
        }));
    }
    if keep_outs.iter().any(|k| k.clearance.si() > 0.0) {
        let pen = "stroke=\"#000\" stroke-width=\"0.2\" stroke-dasharray=\"1.1 0.9\"";
        all.push(entry("clearance to a pile's centre", across(pen)));
    }
    for (i, zone) in s.request.soil_zones.iter().flatten().enumerate() {
        let text = match &zone.capacities[..] {
            [one] => format!(
                "{}: {} {} down, {} up",
                zone.label.as_str(),
                words::force(one.compression, s.system),
                words::force_unit(s.system),
                words::force(one.tension, s.system)
            ),
            _ => format!("{}: other capacities", zone.label.as_str()),
        };
        all.push(entry(text, move |svg, (x, y)| {
            let mut d = String::new();
            for dx in [-1.5, 1.5] {
                for [a, b, c, e] in zone_mark(i) {
                    d += &format!(
                        "M{} {}L{} {}",
                        mm(x + dx + a),
                        mm(y + b),
                        mm(x + dx + c),
                        mm(y + e)
                    );
                }
            }
            svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
        }));
    }
    all
}

/// Slabs.
fn slabs(s: Subject) -> Vec<Entry> {
    let found: Vec<SpanningUsed> = s
        .answer
        .result
        .slabs
        .iter()
        .flatten()
        .map(|slab| slab.spanning)
        .collect();
    let mut all = Vec::new();
    if found.contains(&SpanningUsed::TwoWay) {
        let pen = "stroke=\"#000\" stroke-width=\"0.2\" stroke-dasharray=\"0.5 1\"";
        all.push(entry("slab: parts by beam", across(pen)));
    }
    if found.contains(&SpanningUsed::OneWay) {
        all.push(entry("slab spans this way", |svg, (x, y)| {
            across("stroke=\"#000\" stroke-width=\"0.25\"")(svg, (x, y));
            let d = format!(
                "M{a} {b}L{c} {y}L{a} {e}M{f} {b}L{g} {y}L{f} {e}",
                a = mm(x - 1.4),
                b = mm(y - 0.6),
                c = mm(x - 2.6),
                e = mm(y + 0.6),
                f = mm(x + 1.4),
                g = mm(x + 2.6),
                y = mm(y)
            );
            svg.path(&d, "stroke=\"#000\" stroke-width=\"0.25\"");
        }));
    }
    all
}

/// Draws entries one below the other, as closely as the strip below a plan has them.
pub fn column(svg: &mut Svg, entries: &[Entry], area: Rect) {
    for (i, entry) in entries.iter().enumerate() {
        let y = area.y + (i as f64 + 0.8) * (PITCH - 0.2);
        one(svg, entry, (area.x, y), area.w);
    }
}

fn one(svg: &mut Svg, entry: &Entry, (x, base): Spot, room: f64) {
    let at = match &entry.sample {
        Some(sample) => {
            sample(svg, (x + 2.6, base - 1.0));
            x + SAMPLE
        }
        None => x,
    };
    let text = fitted(&entry.text, room - (at - x), Style::PLAIN);
    svg.text(at, base, &text, Style::PLAIN);
}

/// How a list of entries stands in columns.
#[derive(Debug, Clone, PartialEq)]
pub struct Columns {
    rows: usize,
    widths: Vec<f64>,
    /// Entries that find no place.
    pub left_out: usize,
}

impl Columns {
    /// As few rows as the width allows.
    pub fn of(entries: &[Entry], room: f64) -> Self {
        let wide = |e: &Entry| SAMPLE + width(&e.text, Style::PLAIN) + 0.1;
        for rows in 1..=ROWS {
            let widths: Vec<f64> = entries
                .chunks(rows)
                .map(|c| c.iter().map(wide).fold(0.0, f64::max))
                .collect();
            let gaps = widths.len().saturating_sub(1) as f64 * GAP;
            if widths.iter().sum::<f64>() + gaps <= room {
                let left_out = 0;
                return Self {
                    rows,
                    widths,
                    left_out,
                };
            }
        }
        // long names: three columns, cut to their width
        let widths = vec![(room - 2.0 * GAP) / 3.0; 3];
        Self {
            rows: ROWS,
            widths,
            left_out: entries.len().saturating_sub(3 * ROWS),
        }
    }

    /// Height on the sheet, mm.
    pub fn height(&self) -> f64 {
        self.rows as f64 * PITCH + 1.4
    }

    /// Draws the entries.
    pub fn draw(&self, svg: &mut Svg, entries: &[Entry], area: Rect) {
        let mut x = area.x;
        for (column, w) in entries.chunks(self.rows).zip(&self.widths) {
            for (i, entry) in column.iter().enumerate() {
                one(svg, entry, (x, area.y + (i as f64 + 0.8) * PITCH), *w);
            }
            x += w + GAP;
        }
    }
}
