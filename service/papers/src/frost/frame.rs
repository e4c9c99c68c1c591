//! How the drawing is divided into lanes, and its two scales: depths, and widths of the pile.

use bearwell_engine::frost::FrostBeam;
use bearwell_engine::quantity::{Length, Size};

use super::levels;
use super::reading::{Acting, Subject};
use crate::depths::Depths;
use crate::page;
use crate::pile::{self, WIDEST};
use crate::svg::Rect;
use crate::zones::{self, Zone, ZoneBar};

/// Room above the building for the dead load, mm.
const ABOVE: f64 = 10.0;
/// Least height of what stands above grade, mm.
const RISE: f64 = 7.0;
/// Height of a beam that is only a sign of one, mm.
pub const SIGN: f64 = 3.2;
/// Room below the section, mm.
const BELOW: f64 = 1.6;
/// Width of the lane of words, mm.
const WORDS: f64 = 41.0;
/// Width in which leaders run from the words to their depths, mm.
pub const FAN: f64 = 4.0;
/// Least and greatest width of the section.
const SECTION: [f64; 2] = [36.0, 68.0];
/// Room beside the widest thing in the section, mm.
const CLEAR: f64 = 6.0;
/// Width of the lane of depths.
const RULER: f64 = 12.5;
/// Widest distance of two arrows, mm.
const PITCH_MOST: f64 = 5.0;
/// Gap between the last arrow and the words, mm.
const LEAD: f64 = 4.0;
/// Width of the lane of forces in words, mm; a narrow section gives it no more.
const TOLD: f64 = 47.0;
/// How many times the depth of the tip is shown at most: a level far below it is only told.
const REACH: f64 = 2.5;
/// How much of the depth shown may stand above grade.
const ABOVE_SHARE: f64 = 0.2;
/// A beam wider than this many of the largest helix is cut at the sides.
const WIDE_BEAM: f64 = 1.6;

/// The lanes of the drawing and its scales.
#[derive(Debug)]
pub struct Frame {
    /// Levels and helices in words.
    pub words: Rect,
    /// The section.
    pub section: Rect,
    /// Bars of zones, in order.
    pub bars: Vec<ZoneBar>,
    /// Left edge of the field beside the bar of depths.
    pub ruled: Rect,
    /// The arrows from left to right, with their places.
    pub arrows: Vec<(Acting, f64)>,
    /// The forces in words.
    pub told: Rect,
    /// Its scales.
    pub depths: Depths,
    /// Where the pile stands.
    pub axis: f64,
    /// Where pile and beam are cut, or the higher of their upper edges.
    pub roof: f64,
    /// Upper edge of what stands above grade.
    pub crown: f64,
    /// Upper edge of everything.
    pub top: f64,
}

impl Frame {
    /// The lanes of a drawing in `area`.
    pub fn new(s: Subject, area: Rect) -> Self {
        let end = end(s);
        let rise = rise(s, end);
        // a beam whose place is not known stands over the head
        let sign = match s.request.beam {
            Some(FrostBeam::AboveGround(_)) => SIGN,
            _ => 0.0,
        };
        let height = area.h - ABOVE - sign - RISE - BELOW;
        let widest = s.largest_helix().si();
        let scale = page::depth_scale((widest, end + rise), (WIDEST, height), s.system);
        let factor = 1000.0 / scale.denominator;
        let above = (rise * factor).max(RISE);
        let grade = area.y + ABOVE + sign + above;
        let lane = |x: f64, w: f64| Rect {
            x,
            y: grade,
            w,
            h: end * factor,
        };
        let left = area.x + WORDS + FAN;
        let forces = arrows(s);
        let bars = |edge: f64| {
            let bars = zones::bars(zones_of(s), edge);
            let right = bars.last().map_or(edge, |b| b.right);
            (bars, right + RULER)
        };
        // what the words of the forces do not need goes to the section
        let lead = PITCH_MOST * forces.len() as f64 + LEAD;
        let spare = area.right() - TOLD - lead - bars(left).1;
        let section = lane(left, spare.clamp(SECTION[0], SECTION[1]));
        let (bars, ruled) = bars(section.right());
        let room = area.right() - TOLD - LEAD - ruled;
        let pitch = (room / forces.len().max(1) as f64).clamp(1.0, PITCH_MOST);
        let arrows: Vec<(Acting, f64)> = forces
            .into_iter()
            .enumerate()
            .map(|(i, force)| (force, ruled + (i as f64 + 1.0) * pitch - 0.5))
            .collect();
        let edge = arrows.last().map_or(ruled, |a| a.1) + LEAD;
        let ruled = lane(ruled, area.right() - ruled);
        let reach = beam_width(s).map_or(widest, |w| w.min(WIDE_BEAM * widest));
        let reach = reach.max(widest);
        Self {
            words: Rect {
                h: area.bottom() - grade,
                ..lane(area.x, WORDS)
            },
            told: Rect {
                h: area.bottom() - grade,
                ..lane(edge, area.right() - edge)
            },
            axis: section.x + section.w / 2.0,
            section,
            bars,
            ruled,
            arrows,
            depths: Depths {
                grade,
                times: pile::times(widest * factor, reach * factor, SECTION[0] - CLEAR),
                scale,
                factor,
                end,
            },
            roof: grade - above,
            crown: grade - above - sign,
            top: area.y,
        }
    }

    /// Final grade on paper.
    pub fn grade(&self) -> f64 {
        self.depths.grade
    }

    /// A depth on paper, at the roof where it is higher.
    pub fn below_roof(&self, depth: Length) -> f64 {
        self.depths.y(depth).max(self.roof)
    }

    /// A width on paper, within the section.
    pub fn half(&self, width: Length) -> f64 {
        let half = self.depths.across(Size::from_si(width.si())) / 2.0;
        half.min(self.section.w / 2.0 - 1.0)
    }
}

/// Width of the beam, m, where it was sent.
fn beam_width(s: Subject) -> Option<f64> {
    Some(s.section().beam.as_ref()?.width?.si())
}

/// Zones with a bar: that of frost is in the section itself where no ground is drawn there.
fn zones_of(s: Subject) -> Vec<(Zone, Length, Length)> {
    let section = s.section();
    let surface = section.cold_surface_depth;
    let frost = s.profile.map(|_| s.outcome().frost.base_depth);
    let all = [
        (Zone::Frost, surface, frost),
        (Zone::Fill, Length::ZERO, section.fill_depth),
        (Zone::Active, Length::ZERO, section.active_depth),
        (Zone::Collapse, Length::ZERO, section.collapse_depth),
    ];
    all.into_iter()
        .filter_map(|(zone, top, base)| Some((zone, top, base.filter(|b| *b > top)?)))
        .collect()
}

/// The forces that have an arrow beside the section, the deepest first so that leaders do not
/// cross. What acts on the head stands over the pile.
fn arrows(s: Subject) -> Vec<Acting> {
    let mut forces = s.forces();
    forces.retain(|f| !f.on_head());
    forces.sort_by(|a, b| b.bottom.si().total_cmp(&a.bottom.si()));
    forces
}

/// Depth to show, m: the pile, the void form, and every level that is not far below them.
fn end(s: Subject) -> f64 {
    let section = s.section();
    let form = section.void_form.as_ref();
    let form = form.and_then(|f| Some(f.top_depth?.si() + f.nominal_thickness.si()));
    let least = section.pile.tip_depth.si().max(form.unwrap_or(0.0));
    let levels = levels::levels(s);
    let depths = levels.iter().map(|l| l.1.si());
    1.05 * depths.filter(|d| *d <= REACH * least).fold(least, f64::max)
}

/// Height to show above grade, m.
fn rise(s: Subject, end: f64) -> f64 {
    let section = s.section();
    let mut top = section.pile.head_depth.si();
    if let Some(depth) = section.beam.as_ref().and_then(|b| b.top_depth) {
        top = top.min(depth.si());
    }
    (-top).clamp(0.0, ABOVE_SHARE * end)
}
