//! The reading column of a job: verdict, the key to the scales of all cells, the lot, the
//! piles that fail and what they ask of others.

use bearwell_engine::contract::Verdict;
use bearwell_engine::job::codes::checks::PILE;
use bearwell_engine::job::{LotFailure, LotFailureKind};
use bearwell_engine::text::Label;

use super::scales::Scales;
use super::{Drawn, Subject, cell};
use crate::column::{self, Item, Lead};
use crate::panel::PITCH;
use crate::record::facts::step_told;
use crate::svg::{Anchor, Rect, Style, Svg, width};
use crate::{checks, panel, words};

/// Size of the field of the key, mm.
const KEY: (f64, f64) = (26.0, 20.0);
/// Height of the field for the engineer of record, mm.
const SEAL: f64 = 12.0;

/// Draws the column from top to bottom.
pub fn draw(svg: &mut Svg, s: Subject, scales: &Scales, paper: &str, area: Rect) {
    let seal = Rect {
        y: area.bottom() - SEAL,
        h: SEAL,
        ..area
    };
    panel::seal(svg, seal);
    let y = panel::verdict(svg, "Installation of a job", s.answer.verdict, area) + 1.6;
    let y = key(svg, s, scales, Rect { y, ..area });
    let rest = Rect {
        y,
        h: seal.y - 1.6 - y,
        ..area
    };
    column::draw(svg, &items(s, paper), rest);
}

/// The scales of all cells, on a field without a pile; returns the lower edge.
fn key(svg: &mut Svg, s: Subject, scales: &Scales, area: Rect) -> f64 {
    let head = format!("Every cell: torque in {},", words::torque_unit(s.system));
    let more = format!("depth in {}", words::length_unit(s.system));
    for (i, text) in [head, more].iter().enumerate() {
        let y = area.y + (i as f64 + 0.78) * PITCH;
        svg.text(area.x, y, text, Style::BOLD);
    }
    let figures = (0..=scales.depth.count).map(|i| width(&scales.depth.figure(i), Style::PLAIN));
    let left = figures.fold(0.0, f64::max) + 1.2;
    let r = Rect {
        x: area.x + left,
        y: area.y + 3.0 * PITCH + 1.6,
        w: KEY.0,
        h: KEY.1,
    };
    cell::grid(svg, scales, r);
    svg.rect(r, "stroke=\"#000\" stroke-width=\"0.25\"");
    let depth = scales.depth;
    let down = r.h / f64::from(depth.count);
    let each = (PITCH / down).ceil().max(1.0) as u32;
    for i in (0..=depth.count).filter(|i| i % each == 0) {
        let y = r.y + f64::from(i) * down;
        let style = Style::PLAIN.at(Anchor::End);
        svg.text(r.x - 0.9, y + 1.0, &depth.figure(i), style);
    }
    let torque = scales.torque;
    let across = r.w / f64::from(torque.count);
    let widest = width(&torque.figure(torque.count), Style::PLAIN) + 1.6;
    let each = (widest / across).ceil().max(1.0) as u32;
    for i in (0..=torque.count).filter(|i| i % each == 0) {
        let x = r.x + f64::from(i) * across;
        let style = Style::PLAIN.at(Anchor::Middle);
        svg.text(x, r.y - 0.9, &torque.figure(i), style);
    }
    let steps = [
        format!("a line each {}", torque.figure(1)),
        format!("and {}", depth.figure(1)),
    ];
    let beside = r.right() + 2.0;
    // the last figure of the axis hangs over above
    for (i, text) in steps.iter().enumerate() {
        let text = crate::svg::fitted(text, area.right() - beside, Style::PLAIN);
        let y = r.y + 1.0 + (i as f64 + 0.78) * PITCH;
        svg.text(beside, y, &text, Style::PLAIN);
    }
    r.bottom() + 2.0
}

fn items(s: Subject, paper: &str) -> Vec<Item> {
    let result = &s.answer.result;
    let counts = &result.counts;
    let name = match &result.label {
        Some(label) => format!("Job {label}: "),
        None => String::new(),
    };
    let mut all = vec![Item::plain(format!(
        "{name}{} pile{}, {} judged.",
        words::count(counts.pile_count),
        if counts.pile_count == 1 { "" } else { "s" },
        words::count(result.depths.pile_count)
    ))];
    // piles have their marks in the cells
    let others: Vec<_> = s
        .answer
        .checks
        .iter()
        .filter(|c| c.id != PILE.id)
        .cloned()
        .collect();
    let open = checks::items(&others, "job_", s.system);
    if !open.is_empty() {
        all.push(Item::heading("The lot"));
        all.extend(open);
    }
    all.extend(result.lot.failures.iter().filter_map(failure));
    all.extend(lot(s));
    let steps: Vec<Item> = s.piles.iter().filter_map(next).collect();
    if !steps.is_empty() {
        all.push(Item::heading("Next for the piles"));
        all.extend(steps);
    }
    all.push(Item::heading("Depths of the tips"));
    let depths = &result.depths;
    let told = |l| words::depth_told(l, s.system);
    all.push(Item::plain(format!(
        "{} ({}) to {} ({}), mean {}, sum {}.",
        told(depths.least),
        depths.least_pile,
        told(depths.greatest),
        depths.greatest_pile,
        told(depths.mean),
        told(depths.total)
    )));
    all.extend(panel::warned(&s.answer.warnings).map(Item::plain));
    all.push(Item::plain(format!("{paper}, landscape.")));
    all.push(Item::plain(panel::provenance(&s.answer.provenance)));
    all
}

/// What a pile that failed asks of others; what is next for itself is told with the others.
fn failure(failure: &LotFailure) -> Option<Item> {
    let by_test = failure.by == LotFailureKind::LoadTest;
    if !by_test && failure.retest.is_empty() {
        return None;
    }
    let how = if by_test {
        "failed its load test"
    } else {
        "failed by its log"
    };
    let asks = match failure.retest.is_empty() {
        true => String::new(),
        false => format!("; test or turn again {}", list(&failure.retest)),
    };
    Some(Item {
        lead: Lead::Fail,
        ..Item::plain(format!("{} {how}{asks}.", failure.pile))
    })
}

fn lot(s: Subject) -> Vec<Item> {
    let lot = &s.answer.result.lot;
    let mut texts = Vec::new();
    if let Some(tests) = &lot.proof_tests {
        texts.push(format!(
            "Proof tests: {} of {} done.",
            tests.done_count, tests.required_count
        ));
    }
    if !lot.candidates.is_empty() {
        let piles: Vec<Label> = lot.candidates.iter().map(|c| c.pile.clone()).collect();
        texts.push(format!("To test first: {}.", list(&piles)));
    }
    if let Some(lengths) = &lot.length_tolerance
        && !lengths.outside.is_empty()
    {
        let piles: Vec<Label> = lengths.outside.iter().map(|o| o.pile.clone()).collect();
        texts.push(format!(
            "Depth off the tested ones by more than {} %: {}.",
            words::trimmed(100.0 * lengths.tolerance_ratio, 1),
            list(&piles)
        ));
    }
    if let Some(retests) = &lot.retests {
        texts.push(format!(
            "Asked for by piles that failed: {} of {} done{}.",
            retests.done_count,
            retests.required_count,
            match retests.open.is_empty() {
                true => String::new(),
                false => format!(", open {}", list(&retests.open)),
            }
        ));
    }
    texts.into_iter().map(Item::plain).collect()
}

/// What is next for a pile that is not accepted.
fn next(pile: &Drawn) -> Option<Item> {
    let verdict = pile.pile.verdict?;
    if matches!(verdict, Verdict::Accept | Verdict::NotAsked) {
        return None;
    }
    let step = step_told(pile.pile.first_step?);
    let reasons = pile.pile.reasons.iter().map(|r| short(&r.code));
    let reasons: Vec<String> = reasons.collect();
    Some(Item {
        lead: Lead::Verdict(verdict),
        ..Item::plain(format!(
            "{}: {step} ({}).",
            pile.pile.label,
            reasons.join(", ")
        ))
    })
}

fn short(code: &str) -> String {
    code.strip_prefix("record_")
        .unwrap_or(code)
        .replace('_', " ")
}

fn list(labels: &[Label]) -> String {
    labels
        .iter()
        .map(Label::as_str)
        .collect::<Vec<_>>()
        .join(", ")
}
