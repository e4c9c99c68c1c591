//! How the drawing is divided into lanes, and its two scales: depths, and widths of the pile.

use bearwell_engine::quantity::{Length, Size};

use super::levels::{self, BAR, BAR_GAP, Level, ZONES};
use super::reading::Subject;
use crate::page::{self, Scale};
use crate::panel::PITCH;
use crate::pile::{self, WIDEST};
use crate::svg::Rect;
use crate::words;

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
    /// Zones with their bars, in order.
    pub zones: Vec<(Level, Length, f64)>,
    /// The field of torque.
    pub field: Rect,
    /// The field of advance.
    pub advance: Option<Rect>,
    /// Lower edge of everything.
    pub bottom: f64,
    /// Scale of depths.
    pub scale: Scale,
    /// Paper millimetres for one metre of depth.
    pub depth_factor: f64,
    /// How many times larger the pile is drawn across than down.
    pub times: u32,
    /// Where the pile stands.
    pub axis: f64,
    /// Depth at which the drawing ends, m.
    pub end: f64,
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
        let depth_factor = 1000.0 / scale.denominator;
        let lane = |x: f64, w: f64| Rect {
            x,
            y: grade,
            w,
            h: end * depth_factor,
        };
        let section = lane(area.x + WORDS + FAN, SECTION);
        let mut right = section.right();
        let mut zones = Vec::new();
        for (level, depth) in levels::levels(s) {
            if ZONES.contains(&level) {
                zones.push((level, depth, right + BAR_GAP));
                right += BAR_GAP + BAR;
            }
        }
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
            times: pile::times(
                widest * depth_factor,
                widest * depth_factor,
                SECTION - CLEAR,
            ),
            axis: section.x + section.w / 2.0,
            section,
            scale,
            depth_factor,
            end,
        }
    }

    /// Final grade on paper.
    pub fn grade(&self) -> f64 {
        self.section.y
    }

    /// A depth on paper.
    pub fn y(&self, depth: Length) -> f64 {
        self.at(depth.si())
    }

    /// A depth in metres on paper.
    pub fn at(&self, metres: f64) -> f64 {
        self.section.y + metres * self.depth_factor
    }

    /// Whether a depth is on the drawing.
    pub fn shows(&self, depth: Length) -> bool {
        depth.si() <= self.end + 1e-9
    }

    /// A width of the pile on paper.
    pub fn across(&self, size: Size) -> f64 {
        size.si() * self.depth_factor * f64::from(self.times)
    }

    /// The scales in words.
    pub fn told(&self, paper: &str) -> [String; 2] {
        let widths = match self.times {
            1 => "Widths of the pile to the same scale.".to_owned(),
            n => format!(
                "Widths of the pile {n} times that, 1:{}.",
                words::trimmed(self.scale.denominator / f64::from(n), 2)
            ),
        };
        [format!("Depths {} on {paper}.", self.scale.name), widths]
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
