//! What marks and lines of the cells mean, with the counts of the verdicts.

use bearwell_engine::contract::Verdict;
use bearwell_engine::record::RowStanding;

use super::Subject;
use super::cell::{self, BAR, Zone};
use crate::key::{self, Key, Sample};
use crate::panel::PITCH;
use crate::record::steps;
use crate::svg::{Rect, Svg};
use crate::{marks, words};

/// Rows of the legend.
const ROWS: usize = 4;
/// Height of the legend, mm.
pub const HEIGHT: f64 = ROWS as f64 * PITCH + 1.0;

/// Draws the legend.
pub fn draw(svg: &mut Svg, s: Subject, area: Rect) {
    key::draw(svg, &keys(s), ROWS, area);
}

fn line(stroke: &'static str) -> Sample<'static> {
    Box::new(move |svg, r| {
        let y = r.y + r.h / 2.0;
        svg.line((r.x, y), (r.right(), y), stroke);
    })
}

fn upright(stroke: &'static str) -> Sample<'static> {
    Box::new(move |svg, r| {
        let x = r.x + r.w / 2.0;
        svg.line((x, r.y), (x, r.bottom()), stroke);
    })
}

fn zone(zone: Zone) -> Sample<'static> {
    Box::new(move |svg, r| {
        let x = r.x + (r.w - BAR) / 2.0;
        zone.fill(svg, Rect { x, w: BAR, ..r });
    })
}

fn keys(s: Subject) -> Vec<Key<'static>> {
    let counts = &s.answer.result.counts;
    let verdicts = [
        (Some(Verdict::Accept), "accept", counts.accept_count),
        (
            Some(Verdict::Provisional),
            "provisional",
            counts.provisional_count,
        ),
        (Some(Verdict::Continue), "continue", counts.continue_count),
        (Some(Verdict::Reject), "reject", counts.reject_count),
        (None, "not judged", counts.not_evaluated_count),
    ];
    let mut all: Vec<Key> = verdicts
        .into_iter()
        .map(|(verdict, told, count)| Key {
            text: format!("{told}: {}", words::count(count)),
            sample: Box::new(move |svg, r| {
                marks::verdict(svg, verdict, (r.x + r.w / 2.0, r.y + r.h / 2.0));
            }),
        })
        .collect();
    let mut add = |text: &str, sample: Sample<'static>| {
        all.push(Key {
            text: text.to_owned(),
            sample,
        });
    };
    add("readings that count", line(cell::COUNTS));
    for standing in [
        RowStanding::Spike,
        RowStanding::Unconfirmed,
        RowStanding::NotFresh,
    ] {
        let mut steps = s.piles.iter().flat_map(|p| &p.steps);
        if steps.any(|step| step.standing == standing) {
            add(steps::told(standing), line(steps::dash(standing)));
        }
    }
    add(
        "torque that counts",
        Box::new(|svg, r| {
            cell::window(svg, (r.x + r.w / 2.0, r.y), r.bottom());
        }),
    );
    add("required torque", upright(cell::REQUIRED));
    add("limit of the shaft", upright(cell::LIMIT));
    add("least tip depth", line(cell::LEAST_TIP));
    for of in cell::zones_of(s) {
        let told = match of {
            Zone::Frost => "frost",
            Zone::Fill => "fill",
        };
        add(told, zone(of));
    }
    add(
        "helix as it stands",
        Box::new(|svg, r| {
            let (x, y) = (r.x + r.w / 2.0, r.y + r.h / 2.0);
            let half = cell::HELIX_LENGTH / 2.0;
            svg.line((x - half, y), (x + half, y), cell::HELIX);
        }),
    );
    all
}
