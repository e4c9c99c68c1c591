//! What the lines and marks of the chart mean; only those that are on it.

use bearwell_engine::load_test::{CodeStanding, FailureLoadKind};

use super::plot;
use super::reading::{Subject, name, net};
use crate::panel::PITCH;
use crate::svg::{Rect, Style, Svg, fitted};
use crate::words;

/// Columns of the key.
const COLUMNS: usize = 2;
/// Width of a sample, mm.
const SAMPLE: f64 = 9.0;

/// What is shown beside a text of the key.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Sample {
    /// First loading.
    Loading,
    /// What was read after it.
    Later,
    /// Elastic line.
    Elastic,
    /// Line of the criterion in force.
    Offset,
    /// Mark of a criterion.
    Mark(CodeStanding),
    /// Ring around the failure load.
    Ring,
}

/// Samples with their texts.
pub fn entries(s: Subject) -> Vec<(Sample, String)> {
    let outcome = s.outcome();
    let mut all = vec![(Sample::Loading, "first loading, as read".to_owned())];
    if outcome.curve.later_row_count > 0 {
        let text = if outcome.curve.peak_passed {
            "read after the load fell"
        } else {
            "unloading"
        };
        all.push((Sample::Later, text.to_owned()));
    }
    all.push((Sample::Elastic, "elastic line, P L / (A E)".to_owned()));
    if let Some(line) = s.lined()
        && let Some(offset) = line.offset
    {
        let beside = if net(line.criterion) {
            "P L / (A E) + "
        } else {
            ""
        };
        let offset = words::size_told(offset, s.system);
        let text = format!("{}: {beside}{offset}", name(line.criterion));
        all.push((Sample::Offset, text));
    }
    for (standing, text) in [
        (CodeStanding::NamedByCode, "criterion named by the IBC"),
        (CodeStanding::NeedsApproval, "criterion that needs approval"),
    ] {
        let points = outcome.criteria.iter().filter(|c| c.displacement.is_some());
        if points.into_iter().any(|c| c.code_standing == standing) {
            all.push((Sample::Mark(standing), text.to_owned()));
        }
    }
    let text = match outcome.failure.kind {
        FailureLoadKind::Criterion | FailureLoadKind::Peak => "failure load",
        _ => "largest load",
    };
    all.push((Sample::Ring, text.to_owned()));
    all
}

/// Height that they take.
pub fn height(entries: &[(Sample, String)]) -> f64 {
    entries.len().div_ceil(COLUMNS) as f64 * (PITCH + 0.6) + 0.6
}

/// Draws them row by row.
pub fn draw(svg: &mut Svg, entries: &[(Sample, String)], area: Rect) {
    let room = area.w / COLUMNS as f64;
    for (i, (sample, text)) in entries.iter().enumerate() {
        let x = area.x + (i % COLUMNS) as f64 * room;
        let y = area.y + 0.6 + ((i / COLUMNS) as f64 + 0.5) * (PITCH + 0.6);
        draw_sample(svg, *sample, (x, y));
        let text = fitted(text, room - SAMPLE - 3.0, Style::PLAIN);
        svg.text(x + SAMPLE + 1.5, y + 1.0, &text, Style::PLAIN);
    }
}

fn draw_sample(svg: &mut Svg, sample: Sample, (x, y): (f64, f64)) {
    let middle = (x + SAMPLE / 2.0, y);
    let mut line = |look: &str| svg.line((x, y), (x + SAMPLE, y), look);
    match sample {
        Sample::Loading => {
            line(plot::LOADING);
            plot::dot(svg, middle);
        }
        Sample::Later => {
            line(plot::LATER);
            plot::cross(svg, middle);
        }
        Sample::Elastic => line(plot::ELASTIC),
        Sample::Offset => line(plot::OFFSET),
        Sample::Mark(standing) => plot::mark(svg, standing, middle),
        Sample::Ring => plot::ring(svg, middle),
    }
}
