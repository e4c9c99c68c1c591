//! What the lines and marks of the chart mean; only those that are on it.

use bearwell_engine::load_test::{CodeStanding, FailureLoadKind};

use super::plot;
use super::reading::{Subject, name, net};
use crate::key::{self, Key};
use crate::panel::PITCH;
use crate::svg::{Rect, Svg};
use crate::words;

/// Rows of the key.
const ROWS: usize = 3;

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
    entries.len().min(ROWS) as f64 * PITCH + 1.2
}

/// Draws them in columns.
pub fn draw(svg: &mut Svg, entries: &[(Sample, String)], area: Rect) {
    let keys: Vec<Key> = (entries.iter())
        .map(|(sample, text)| Key {
            text: text.clone(),
            sample: Box::new(|svg, room| draw_sample(svg, *sample, room)),
        })
        .collect();
    key::draw(svg, &keys, ROWS, area);
}

fn draw_sample(svg: &mut Svg, sample: Sample, room: Rect) {
    let (x, y) = (room.x, room.y + room.h / 2.0);
    let middle = (x + room.w / 2.0, y);
    let mut line = |look: &str| svg.line((x, y), (room.right(), y), look);
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
        Sample::Ring => plot::ring(svg, middle, room.h / 2.0),
    }
}
