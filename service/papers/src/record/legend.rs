//! What marks, lines and bars of the sheet mean; only those that are on it.

use bearwell_engine::record::RowStanding;
use bearwell_engine::soil::SoilKind;

use super::advance;
use super::frame::Frame;
use super::levels;
use super::reading::Subject;
use super::steps::{self, MARK};
use super::torque::{WINDOW, effective_mark};
use crate::key::{self, Key, Sample, key, line};
use crate::panel::PITCH;
use crate::svg::{Rect, Svg};

/// Rows of the legend.
const ROWS: usize = 4;
/// Height of the legend, mm.
pub const HEIGHT: f64 = ROWS as f64 * PITCH + 1.0;

/// Draws the legend.
pub fn draw(svg: &mut Svg, s: Subject, frame: &Frame, area: Rect) {
    key::draw(svg, &keys(s, frame), ROWS, area);
}

fn keys(s: Subject, frame: &Frame) -> Vec<Key<'static>> {
    let mut all = Vec::new();
    for standing in [
        RowStanding::Counts,
        RowStanding::Spike,
        RowStanding::Unconfirmed,
        RowStanding::NotFresh,
    ] {
        if s.steps.iter().any(|step| step.standing == standing) {
            let sample: Sample = Box::new(move |svg, r| {
                let (x, y) = (r.x + r.w / 2.0, r.y + r.h / 2.0);
                svg.line((r.x, y), (r.right(), y), steps::dash(standing));
                steps::mark(svg, standing, (x, y), MARK);
            });
            all.push(key(steps::told(standing), sample));
        }
    }
    if s.outcome().effective.is_some() {
        let sample: Sample = Box::new(|svg, r| {
            svg.rect(r, WINDOW);
            effective_mark(svg, r.x + r.w / 2.0, r.y, r.bottom());
        });
        all.push(key("torque that counts, its window", sample));
    }
    for (torque, _) in s.torque_lines() {
        all.push(key(torque.told(), line(torque.stroke())));
    }
    for (level, depth) in levels::levels(s) {
        // the bar of a zone is seen also where its base is not
        let zone = level.zone();
        if !frame.depths.shows(depth) && zone.is_none() {
            continue;
        }
        let sample: Sample = match zone {
            Some(zone) => Box::new(move |svg, r| zone.sample(svg, r)),
            None => line(level.stroke()),
        };
        all.push(key(level.told(), sample));
    }
    let mut kinds: Vec<SoilKind> = s
        .profile
        .into_iter()
        .flat_map(|p| &p.layers)
        .map(|l| l.soil.kind())
        .collect();
    kinds.sort();
    kinds.dedup();
    for kind in kinds {
        all.push(key(kind.told(), key::ground(kind)));
    }
    if s.advances() {
        for (enough, text) in [(true, "advance in a turn"), (false, "too little of it")] {
            let sample: Sample = Box::new(move |svg, r| {
                advance::mark(svg, (r.x + r.w / 2.0, r.y + r.h / 2.0), enough);
            });
            all.push(key(text, sample));
        }
    }
    all
}
