//! What stands beside and below the plan in words: verdict, facts and cautions; the parts
//! that other sheets share too. The table of piles is in `table.rs`, scale bar and legend
//! are in `strip.rs`.

use bearwell_engine::contract::{Answer, Provenance, Verdict, VerdictReason, Warning};
use bearwell_engine::layout::{LayoutCombination, Outcome, Request};
use bearwell_engine::quantity::System;

use crate::figure::{Figure, Notes};
use crate::plan::claims::claims;
use crate::svg::{Anchor, HEADING, LINE, Rect, SMALL, Style, Svg, fitted, wrapped};
use crate::{marks, table, words};

/// Distance of lines of small text.
pub const PITCH: f64 = LINE * SMALL;
/// Most lines of cautions; a sheet is mostly for the plan.
const CAUTION_LINES: usize = 8;

/// Everything a sheet is drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// What was asked.
    pub request: &'a Request,
    /// What was answered.
    pub answer: &'a Answer<Outcome>,
    /// Units of the sheet.
    pub system: System,
}

/// The cautions in lines of the given width.
pub fn caution_lines(answer: &Answer<Outcome>, room: f64) -> Vec<String> {
    if answer.cautions.is_empty() {
        return Vec::new();
    }
    let texts: Vec<_> = answer.cautions.iter().map(|c| c.text.as_ref()).collect();
    let mut lines = wrapped(
        &format!("Cautions. {}", texts.join(" ")),
        room,
        Style::PLAIN,
    );
    if lines.len() > CAUTION_LINES {
        lines.truncate(CAUTION_LINES - 1);
        lines.push("Further cautions are in the answer.".to_owned());
    }
    lines
}

/// Height that lines of small text take.
pub fn height(lines: usize) -> f64 {
    lines as f64 * PITCH
}

/// Draws the cautions under a rule.
pub fn cautions(svg: &mut Svg, lines: &[String], area: Rect) {
    svg.line(
        (area.x, area.y),
        (area.right(), area.y),
        "stroke=\"#000\" stroke-width=\"0.35\"",
    );
    for (i, line) in lines.iter().enumerate() {
        let y = area.y + 1.0 + (i as f64 + 0.76) * PITCH;
        svg.text(area.x, y, line, Style::PLAIN);
    }
}

/// Draws verdict, facts and the table of piles from top to bottom.
pub fn side(svg: &mut Svg, subject: Subject, figure: &Figure, paper: &str, area: Rect) {
    let mut y = verdict(svg, "Pile layout", subject.answer.verdict, area);
    y += 1.2;
    for line in facts(subject, figure, paper, area.w) {
        y += PITCH;
        svg.text(area.x, y, &line, Style::PLAIN);
    }
    y += 2.4;
    let rest = Rect {
        y,
        h: area.bottom() - y,
        ..area
    };
    table::draw(svg, subject, figure, rest);
}

/// The verdict, framed so that it reads without colour; returns the lower edge.
pub fn verdict(svg: &mut Svg, about: &str, verdict: Verdict, area: Rect) -> f64 {
    let (heading, sentence) = words::verdict(verdict);
    svg.text(area.x, area.y + 3.4, about, Style::BOLD.sized(HEADING));
    let frame = Rect {
        x: area.x + 0.5,
        y: area.y + 5.2,
        w: area.w - 1.0,
        h: 13.2,
    };
    let look = match verdict {
        Verdict::Reject => "stroke-width=\"1\"",
        Verdict::Accept => "stroke-width=\"0.35\"",
        _ => "stroke-width=\"0.5\" stroke-dasharray=\"2 1\"",
    };
    svg.rect(frame, &format!("stroke=\"#000\" {look}"));
    if verdict == Verdict::Reject {
        for x in [frame.x + 5.0, frame.right() - 5.0] {
            marks::over_limit(svg, (x, frame.y + 5.0), 1.8);
        }
    }
    let middle = frame.x + frame.w / 2.0;
    let style = Style::BOLD.at(Anchor::Middle);
    svg.text(middle, frame.y + 7.0, heading, style.sized(5.6));
    svg.text(
        middle,
        frame.y + 11.4,
        sentence,
        Style::PLAIN.at(Anchor::Middle),
    );
    frame.bottom()
}

/// The field for the engineer of record.
pub fn seal(svg: &mut Svg, r: Rect) {
    svg.rect(r, "stroke=\"#000\" stroke-width=\"0.25\"");
    svg.text(
        r.x + 1.2,
        r.y + 3.4,
        "Engineer of record: review, seal, date",
        Style::PLAIN,
    );
}

/// What a reader wants to know first, in lines of the given width.
fn facts(s: Subject, figure: &Figure, paper: &str, room: f64) -> Vec<String> {
    let mut texts = reasons(&s.answer.verdict_reasons);
    texts.extend(loads(s));
    texts.extend(piles(s));
    texts.extend(missing(figure));
    texts.push(format!(
        "Scale {} on {paper}, landscape.",
        figure.scale.name
    ));
    texts.push(provenance(&s.answer.provenance));
    texts.iter().flat_map(|text| short(text, room)).collect()
}

/// A text in at most three lines of the given width.
pub fn short(text: &str, room: f64) -> Vec<String> {
    let style = Style::PLAIN;
    let mut lines = wrapped(text, room, style);
    if lines.len() > 3 {
        lines.truncate(3);
        lines[2] = fitted(&format!("{} \u{2026}", lines[2]), room, style);
    }
    lines
}

/// What the answer rests on.
pub fn provenance(provenance: &Provenance) -> String {
    let digest = &provenance.request_digest;
    format!(
        "Basis {}; request {}.",
        provenance.calculation_basis,
        digest.get(..12).unwrap_or(digest)
    )
}

/// What decided the verdict, the first two.
pub fn reasons(all: &[VerdictReason]) -> Vec<String> {
    let mut texts: Vec<String> = all
        .iter()
        .take(2)
        .map(|r| {
            let about = r.subject.as_ref().map_or("", |s| s.label.as_str());
            let code = r.code.replace('_', " ");
            format!("{code} {about}: {}", r.detail)
        })
        .collect();
    if all.len() > 2 {
        texts.push(format!(
            "and {} more reasons in the answer.",
            words::count(all.len() - 2)
        ));
    }
    texts
}

/// Basis, load and warnings.
fn loads(s: Subject) -> Vec<String> {
    let unit = words::force_unit(s.system);
    let mut texts = vec![format!("Loads: {}.", words::basis(&s.request.design_basis))];
    let mut heaviest = None;
    for c in &s.answer.result.combinations {
        if heaviest.is_none_or(|h: &LayoutCombination| c.total_load > h.total_load) {
            heaviest = Some(c);
        }
    }
    if let Some(c) = heaviest {
        texts.push(format!(
            "Heaviest: {} {unit} in {}.",
            words::force(c.total_load, s.system),
            c.name
        ));
    }
    if let Some(capacity) = &s.request.pile_capacity {
        texts.push(format!(
            "A pile carries ({}): {} {unit} down, {} {unit} up.",
            words::level(capacity.level),
            words::force(capacity.compression, s.system),
            words::force(capacity.tension, s.system)
        ));
    }
    texts.extend(warned(&s.answer.warnings));
    texts
}

/// How many warnings there are, and of what.
pub fn warned(warnings: &[Warning]) -> Option<String> {
    let mut codes: Vec<String> = warnings.iter().map(|w| w.code.replace('_', " ")).collect();
    codes.sort();
    codes.dedup();
    (!codes.is_empty()).then(|| format!("Warnings, {}: {}.", warnings.len(), codes.join(", ")))
}

/// What is claimed of the piles, utilisation and the longest span.
fn piles(s: Subject) -> Vec<String> {
    let outcome = &s.answer.result;
    let mut texts = claims(s);
    if let Some(u) = outcome.max_utilisation_ratio {
        let at = outcome
            .piles
            .iter()
            .find(|p| p.utilisation_ratio == Some(u))
            .map_or(String::new(), |p| format!(" at {}", p.label));
        texts.push(format!(
            "Highest utilisation {}{at}.",
            words::utilisation(u)
        ));
    }
    if let Some(span) = &outcome.spacing.longest_span {
        texts.push(format!(
            "Longest span {} {}, {} to {}.",
            words::length(span.distance, s.system),
            words::length_unit(s.system),
            span.from,
            span.to
        ));
    }
    texts
}

/// What is not on the sheet.
pub fn missing(figure: &Figure) -> Vec<String> {
    let mut texts = Vec::new();
    if figure.notes == Notes::Loads && !figure.short.is_empty() {
        texts.push(format!(
            "{} piles are drawn without loads for want of room.",
            words::count(figure.short.len())
        ));
    }
    let mut tell = |count: usize, what: &str| {
        if count > 0 {
            texts.push(format!("{what}: {}.", words::count(count)));
        }
    };
    tell(
        figure.nameless_count,
        "Pile marks without a number for want of room",
    );
    tell(
        figure.untold_count,
        "Names of areas left out for want of room",
    );
    tell(
        figure.outside_count,
        "Zones and things to keep off outside of the sheet",
    );
    tell(
        figure.unexplained_count,
        "Entries left out of the key for want of room",
    );
    texts
}
