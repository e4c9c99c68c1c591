//! The drawings of the sheet: the plan as it stands with what became of its piles, and what lies
//! around the pile in question to a larger scale where that tells more.

use std::collections::BTreeMap;

use bearwell_engine::contract::Answer;
use bearwell_engine::layout::{self, KeepOutShape, LayoutBeam, PlanPoint};
use bearwell_engine::quantity::System;
use bearwell_engine::relocation::{FeasibleStretch, PileFate, RelocatedPile};

use super::crop::{self, Window};
use super::{Subject, facts, skeleton, told};
use crate::figure::{self, Figure, Labels, Notes};
use crate::page;
use crate::panel::{self, PITCH};
use crate::plan::beams::direction;
use crate::plan::key::{self, Columns, Entry};
use crate::plan::moves::{Moves, Stretch, Was};
use crate::plan::openings;
use crate::svg::{Rect, Style, Svg, fitted};

/// Gap between the two drawings, mm.
const BETWEEN: f64 = 4.0;
/// Share of the width for the plan where there are two drawings.
const PLAN: f64 = 0.45;
/// Room around what is in question, m.
const AROUND: f64 = 2.6;
/// How much larger than the whole plan its part must be drawn to tell more.
const LARGER: f64 = 1.5;
/// Room for labels around a plan with numbers alone, mm.
const NUMBERS: Labels = (16.0, 18.0);
/// The same around a part of it: its edges are free.
const PART: Labels = (4.0, 5.0);
/// Height of a caption, mm.
const CAPTION: f64 = PITCH + 0.8;

/// A drawing.
struct Picture {
    request: layout::Request,
    answer: Answer<layout::Outcome>,
    moves: Moves,
    notes: Notes,
    labels: Labels,
    caption: String,
}

impl Picture {
    fn subject(&self, system: System) -> panel::Subject<'_> {
        panel::Subject {
            request: &self.request,
            answer: &self.answer,
            system,
        }
    }

    /// Where it is drawn below its caption.
    fn frame(area: Rect) -> Rect {
        Rect {
            y: area.y + CAPTION,
            h: area.h - CAPTION,
            ..area
        }
    }

    /// One to how much it is drawn.
    fn denominator(&self, system: System, area: Rect) -> f64 {
        let frame = Self::frame(area);
        let subject = self.subject(system);
        figure::scale_with(subject, &self.moves, self.labels, frame).denominator
    }
}

/// The drawings of a sheet.
pub struct Pictures<'a> {
    s: Subject<'a>,
    plan: Picture,
    detail: Option<Picture>,
}

impl<'a> Pictures<'a> {
    /// Those of an answer, in so much room.
    pub fn of(s: Subject<'a>, area: Rect) -> Self {
        let result = &s.answer.result;
        let mut request = result.layout.0.clone();
        let sought = s.request.ways_out.as_ref();
        if let Some(obstruction) = sought.and_then(|w| w.obstruction.clone()) {
            request.keep_outs.get_or_insert_default().push(obstruction);
        }
        let outcome = match &result.result {
            Some(outcome) => outcome.clone(),
            None => skeleton::outcome(&request, &result.piles),
        };
        let moves = moves(s, &outcome);
        let loads = if result.result.is_some() {
            Notes::Loads
        } else {
            Notes::Numbers
        };
        let detail = window(s, &moves).map(|window| Picture {
            request: crop::request(&request),
            answer: answered(s, crop::outcome(&outcome, window)),
            moves: moves.clone(),
            notes: loads,
            labels: PART,
            caption: format!("Around {}", facts::about(s)),
        });
        let mut plan = Picture {
            request,
            answer: answered(s, outcome),
            moves,
            notes: loads,
            labels: figure::LABELS,
            caption: "The plan as it stands".to_owned(),
        };
        let whole = plan.denominator(s.system, area);
        let [_, right] = parts(area);
        let detail = detail.filter(|d| LARGER * d.denominator(s.system, right) <= whole);
        if detail.is_some() {
            plan.notes = Notes::Numbers;
            plan.labels = NUMBERS;
        }
        Self { s, plan, detail }
    }

    /// Draws them side by side with their key below; what found no room, in words.
    pub fn draw(&self, svg: &mut Svg, area: Rect) -> Vec<String> {
        let entries = self.entries();
        let columns = Columns::of(&entries, area.w);
        let above = Rect {
            h: area.h - columns.height(),
            ..area
        };
        let mut figures = Vec::new();
        match &self.detail {
            None => figures.push(self.one(svg, &self.plan, above)),
            Some(detail) => {
                let [left, right] = parts(above);
                figures.push(self.one(svg, &self.plan, left));
                figures.push(self.one(svg, detail, right));
            }
        }
        columns.draw(
            svg,
            &entries,
            Rect {
                y: above.bottom() + 0.6,
                h: columns.height(),
                ..area
            },
        );
        figures[0].unexplained_count = columns.left_out;
        let mut texts: Vec<String> = figures.iter().flat_map(panel::missing).collect();
        texts.dedup();
        texts
    }

    /// The key of both: what stands at a pile is told where it stands so.
    fn entries(&self) -> Vec<Entry> {
        let loads = self.detail.as_ref().unwrap_or(&self.plan);
        let subject = self.plan.subject(self.s.system);
        let (mut entries, further) = key::entries(subject, loads.notes);
        entries.extend(key::moves(&self.plan.moves));
        entries.extend(further);
        entries
    }

    fn one(&self, svg: &mut Svg, picture: &Picture, area: Rect) -> Figure {
        let figure = figure::draw_with(
            svg,
            picture.subject(self.s.system),
            picture.notes,
            &picture.moves,
            picture.labels,
            Picture::frame(area),
        );
        let text = format!("{}, {}", picture.caption, figure.scale.name);
        let text = fitted(&text, area.w, Style::BOLD);
        svg.text(area.x, area.y + 0.76 * PITCH, &text, Style::BOLD);
        figure
    }
}

/// The room of the plan and of the part of it, side by side.
fn parts(area: Rect) -> [Rect; 2] {
    let w = PLAN * (area.w - BETWEEN);
    let right = Rect {
        x: area.x + w + BETWEEN,
        w: area.w - BETWEEN - w,
        ..area
    };
    [Rect { w, ..area }, right]
}

/// The answer of a layout with the checks of this one.
fn answered(s: Subject, result: layout::Outcome) -> Answer<layout::Outcome> {
    let answer = s.answer;
    Answer {
        verdict: answer.verdict,
        verdict_reasons: answer.verdict_reasons.clone(),
        result,
        checks: answer.checks.clone(),
        warnings: answer.warnings.clone(),
        cautions: answer.cautions.clone(),
        methods: answer.methods.clone(),
        defaults: answer.defaults.clone(),
        provenance: answer.provenance.clone(),
        steps: None,
    }
}

/// Places that were left, places that are free, piles beside their line.
fn moves(s: Subject, outcome: &layout::Outcome) -> Moves {
    let result = &s.answer.result;
    let was = result.piles.iter().filter_map(left).collect();
    let report = result.ways_out.as_ref();
    let free = report.iter().flat_map(|r| &r.may_stand);
    let free = free.flat_map(|f| stretches(f, outcome)).collect();
    let beside = result.moved.iter().filter(|m| m.off_line.si() != 0.0);
    let beside: BTreeMap<String, PlanPoint> = beside.map(|m| (m.label.clone(), m.centre)).collect();
    Moves { was, free, beside }
}

/// The place that a pile left.
fn left(pile: &RelocatedPile) -> Option<Was> {
    let at = pile.at_before?;
    let note = match pile.fate {
        PileFate::Lost | PileFate::Omitted => format!("{} out", pile.label),
        PileFate::Moved if pile.at != pile.at_before => format!("{} was", pile.label),
        _ => return None,
    };
    Some(Was { at, note })
}

/// A stretch along a beam, in straight pieces.
fn stretches(free: &FeasibleStretch, outcome: &layout::Outcome) -> Vec<Stretch> {
    let beam = outcome.beams.iter().find(|b| b.label == free.beam);
    let ends = vec![free.from_point, free.to_point];
    let line = match beam {
        Some(b) if b.points.len() > 2 => openings::part(&b.points, free.from.si(), free.to.si()),
        _ => ends.clone(),
    };
    let line = if line.len() < 2 { ends } else { line };
    let half = beam.and_then(|b| b.width).map_or(0.0, |w| w.si() / 2.0);
    let pieces = line.windows(2).map(|pair| {
        let spot = |p: &PlanPoint| (p.x.si(), p.y.si());
        let (a, b) = (spot(&pair[0]), spot(&pair[1]));
        let along = if pair[0] == pair[1] {
            beam.map_or((1.0, 0.0), |beam| way(beam, a))
        } else {
            direction(a, b)
        };
        Stretch {
            from: pair[0],
            to: pair[1],
            along,
            half,
            name: String::new(),
        }
    });
    pieces.collect()
}

/// Way of a beam at a place on it.
fn way(beam: &LayoutBeam, at: (f64, f64)) -> (f64, f64) {
    let spot = |p: &PlanPoint| (p.x.si(), p.y.si());
    let off = |a: (f64, f64), b: (f64, f64)| {
        let d = direction(a, b);
        let across = (at.0 - a.0) * d.1 - (at.1 - a.1) * d.0;
        let along = (at.0 - a.0) * d.0 + (at.1 - a.1) * d.1;
        let long = (b.0 - a.0) * d.0 + (b.1 - a.1) * d.1;
        let beyond = (-along).max(along - long).max(0.0);
        (across * across + beyond * beyond, d)
    };
    let pieces = beam
        .points
        .windows(2)
        .map(|p| off(spot(&p[0]), spot(&p[1])));
    let nearest = pieces.min_by(|a, b| a.0.total_cmp(&b.0));
    nearest.map_or((1.0, 0.0), |(_, d)| d)
}

/// The part of the plan around what is in question; none where nothing is.
fn window(s: Subject, moves: &Moves) -> Option<Window> {
    let result = &s.answer.result;
    let about: Vec<&str> = match &result.ways_out {
        Some(report) => vec![&report.pile],
        None => s.request.events.iter().filter_map(told::pile_of).collect(),
    };
    let piles = result.piles.iter().filter(|p| about.contains(&&*p.label));
    let mut points: Vec<PlanPoint> = piles
        .flat_map(|p| [p.at_before, p.at])
        .flatten()
        .chain(moves.free.iter().flat_map(|f| [f.from, f.to]))
        .collect();
    points.extend(result.ways_out.as_ref().map(|r| r.drawn_at));
    let sought = s.request.ways_out.as_ref();
    if let Some(KeepOutShape::Circle(c)) = sought
        .and_then(|w| w.obstruction.as_ref())
        .map(|o| &o.shape)
    {
        points.push(c.centre);
    }
    let b = page::bounds(points.iter())?;
    Some([b[0] - AROUND, b[1] - AROUND, b[2] + AROUND, b[3] + AROUND])
}
