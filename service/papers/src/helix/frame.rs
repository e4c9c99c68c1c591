//! How the drawing is divided into lanes, and the two scales of the section: depths, and
//! widths of the pile.

use super::reading::Subject;
use crate::depths::Depths;
use crate::page;
use crate::pile::{self, WIDEST};
use crate::svg::Rect;

/// Room above grade for the head of the pile and the headings of the lanes, mm.
const ABOVE: f64 = 15.5;
/// Room below the section for what it ends with and what a load needs, mm.
const BELOW: f64 = 8.4;
/// Width of the lane with the layers in words.
const CELLS: f64 = 45.0;
/// Width in which boundaries fan out from the section to the words.
pub const FAN: f64 = 4.0;
/// Width of the lane of depths.
const RULER: f64 = 11.5;
/// Room on the right of the curve for half of the last figure of its axis.
pub const OVER: f64 = 3.5;
/// Shares of the rest: section, notes, curve.
const SHARES: [f64; 3] = [0.315, 0.285, 0.4];
/// Room beside the widest thing in the section, mm.
const CLEAR: f64 = 2.0;
/// The lanes of the drawing and its scales.
#[derive(Debug)]
pub struct Frame {
    /// All of it.
    pub area: Rect,
    /// The layers in words.
    pub cells: Rect,
    /// The section.
    pub section: Rect,
    /// Helices, water and other depths in words.
    pub notes: Rect,
    /// The field of the curve.
    pub curve: Rect,
    /// Its scales.
    pub depths: Depths,
    /// Where the pile stands.
    pub axis: f64,
    /// Depth at which the profile ends, m.
    pub profile: f64,
}

impl Frame {
    /// The lanes of a drawing in `area`.
    pub fn new(s: Subject, area: Rect) -> Self {
        let rest = area.w - CELLS - FAN - RULER;
        let [section_w, notes_w, curve_w] = SHARES.map(|share| share * rest);
        let height = area.h - ABOVE - BELOW;
        let grade = area.y + ABOVE;
        let profile = s.request.soil.depth().si();
        let (widest, reach) = widths(s);
        let across = widest.max(reach * WIDEST / (section_w - CLEAR));
        let (shown, cut) = depths(s, profile);
        let scale = page::depth_scale((across, shown), (WIDEST, height), s.system);
        let factor = 1000.0 / scale.denominator;
        // a profile that goes on is shown as far as there is paper
        let end = if cut {
            profile.min(height / factor)
        } else {
            shown
        };
        let lane = |x: f64, w: f64| Rect {
            x,
            y: grade,
            w,
            h: end * factor,
        };
        let section = lane(area.x + CELLS + FAN, section_w);
        Self {
            area,
            cells: Rect {
                h: area.bottom() - grade,
                ..lane(area.x, CELLS)
            },
            notes: Rect {
                h: area.bottom() - grade,
                ..lane(section.right(), notes_w)
            },
            curve: lane(area.right() - curve_w, curve_w - OVER),
            axis: section.x + section.w / 2.0,
            section,
            depths: Depths {
                grade,
                times: pile::times(widest * factor, reach * factor, section_w - CLEAR),
                scale,
                factor,
                end,
            },
            profile,
        }
    }

    /// Final grade on paper.
    pub fn grade(&self) -> f64 {
        self.section.y
    }

    /// Whether the profile goes on below the drawing.
    pub fn goes_on(&self) -> bool {
        self.profile > self.depths.end + 1e-9
    }

    /// The scales in words.
    pub fn told(&self, paper: &str) -> String {
        let depths = format!("Depths {} on {paper}, landscape;", self.depths.scale.name);
        match self.depths.times {
            1 => format!("{depths} the pile to the same scale."),
            n => format!(
                "{depths} widths of the pile {n} times that, 1:{}.",
                self.depths.widths()
            ),
        }
    }
}

/// The widest helix and the widest thing drawn around the pile, m.
fn widths(s: Subject) -> (f64, f64) {
    let mut widest = s.request.pile.shaft.width().si();
    for plate in s.plates() {
        widest = widest.max(plate.diameter.si());
    }
    let spreads = s
        .plates()
        .into_iter()
        .filter_map(|p| Some(p.down?.punching.as_ref()?.spread_diameter.si()));
    (widest, spreads.fold(widest, f64::max))
}

/// Depth to show, m, and whether the profile goes on below it.
fn depths(s: Subject, profile: f64) -> (f64, bool) {
    let outcome = s.outcome();
    let mut least = s.lowest().si();
    for plate in s.plates() {
        if let Some(down) = plate.down {
            let zone = down.zone.iter().map(|z| z.bottom.si());
            let weak = down.punching.as_ref();
            let weak = weak.map(|p| down.depth.si() + p.distance.si());
            least = zone.chain(weak).fold(least, f64::max);
        }
    }
    if let Some(depth) = s.no_credit_above() {
        least = least.max(depth.si());
    }
    if let Some(curve) = &outcome.depth_curve {
        least = least.max(curve.to.si());
    }
    if let Some(found) = &outcome.minimum_depth {
        least = least.max(found.depth.unwrap_or(found.at.depth).si());
    }
    // below that, a little more ground, or all of it where little is left
    let least = (1.1 * least).min(profile.max(least));
    if profile <= 1.5 * least {
        (profile.max(least), false)
    } else {
        (least, true)
    }
}
