//! How the drawing is divided into lanes, and its two scales: depths, and widths of the pile.

use bearwell_engine::quantity::Length;

use super::levels;
use super::reading::Subject;
use crate::depths::Depths;
use crate::page;
use crate::panel::PITCH;
use crate::pile::{self, WIDEST};
use crate::svg::Rect;
use crate::zones::{self, ZoneBar};

/// Room above grade for the head of the pile and the headings of the lanes, mm.
const ABOVE: f64 = 15.5;
/// Width of the lane of words, mm.
const WORDS: f64 = 42.0;
/// Width in which leaders run from the words to their depths, mm.
pub const FAN: f64 = 4.0;
/// Width of the section.
const SECTION: f64 = 26.0;
/// Room beside the widest helix in the section, mm.
const CLEAR: f64 = 3.0;
/// Width of the lane of depths.
const RULER: f64 = 12.5;
/// Gap between the two fields.
const BETWEEN: f64 = 7.0;
/// Width of the field of advance.
const ADVANCE: f64 = 19.0;
/// Room on the right of a field for half of the last figure of its axis.
pub const OVER: f64 = 3.5;
/// How many times the depth reached is shown at most: a level far below it is only told.
const REACH: f64 = 4.0;
/// Least depth shown, m.
const LEAST: f64 = 1.5;

/// The lanes of the drawing and its scales.
#[derive(Debug)]
pub struct Frame {
    /// Ground, levels and helices in words.
    pub words: Rect,
    /// The section.
    pub section: Rect,
    /// Bars of zones, in order.
    pub zones: Vec<ZoneBar>,
    /// The field of torque.
    pub field: Rect,
    /// The field of advance.
    pub advance: Option<Rect>,
    /// Lower edge of everything.
    pub bottom: f64,
    /// Its scales.
    pub depths: Depths,
    /// Where the pile stands.
    pub axis: f64,
}

impl Frame {
    /// The lanes of a drawing in `area`.
    pub fn new(s: Subject, area: Rect) -> Self {
        let grade = area.y + ABOVE;
        let below = 1.4 + s.torque_lines().len().max(1) as f64 * PITCH + 0.6;
        let height = area.h - ABOVE - below;
        let end = end(s);
        let widest = s.largest_helix().si();
        let scale = page::depth_scale((widest, end), (WIDEST, height), s.system);
        let factor = 1000.0 / scale.denominator;
        let lane = |x: f64, w: f64| Rect {
            x,
            y: grade,
            w,
            h: end * factor,
        };
        let section = lane(area.x + WORDS + FAN, SECTION);
        let based = levels::levels(s).into_iter();
        let based = based.filter_map(|(level, base)| Some((level.zone()?, Length::ZERO, base)));
        let zones = zones::bars(based, section.right());
        let right = zones.last().map_or(section.right(), |b| b.right);
        let advance = s
            .advances()
            .then(|| lane(area.right() - OVER - ADVANCE, ADVANCE));
        let left = right + RULER;
        let until = match &advance {
            Some(lane) => lane.x - BETWEEN,
            None => area.right() - OVER,
        };
        Self {
            words: Rect {
                h: area.bottom() - grade,
                ..lane(area.x, WORDS)
            },
            field: lane(left, until - left),
            zones,
            advance,
            bottom: area.bottom(),
            axis: section.x + section.w / 2.0,
            section,
            depths: Depths {
                grade,
                times: pile::times(widest * factor, widest * factor, SECTION - CLEAR),
                scale,
                factor,
                end,
            },
        }
    }

    /// Final grade on paper.
    pub fn grade(&self) -> f64 {
        self.section.y
    }
}

/// Depth to show, m: the log, and every level that is not far below it.
fn end(s: Subject) -> f64 {
    let log = s.deepest().max(s.outcome().tip_depth).si();
    let most = (REACH * log).max(LEAST);
    let levels = levels::levels(s);
    let depths = levels.iter().map(|l| l.1.si()).filter(|d| *d <= most);
    let next = s.outcome().next_steps.iter();
    let next = next.filter_map(|n| n.to_tip_depth).map(Length::si);
    let shown = depths
        .chain(next.filter(|d| *d <= most))
        .fold(log.max(LEAST / 2.0), f64::max);
    1.04 * shown
}
