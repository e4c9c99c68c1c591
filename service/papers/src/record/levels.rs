//! Depths that the pile must reach, be clear of or stay above: lines across the drawing, and
//! bars from grade down for the zones whose base they are.

use bearwell_engine::quantity::Length;
use bearwell_engine::record::codes::checks;
use bearwell_engine::soil::SoilKind;

use super::reading::Subject;
use crate::hatch::hatch;
use crate::svg::{Rect, Svg, mm};
use crate::words;

/// Width of the bar of a zone, mm.
pub const BAR: f64 = 3.4;
/// Gap before a bar, mm.
pub const BAR_GAP: f64 = 0.7;

/// A kind of depth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Final grade.
    Grade,
    /// Base of frozen ground.
    Frost,
    /// The same with its margin: where the top helix must be below.
    FrostMargin,
    /// Base of fill.
    Fill,
    /// Base of the zone of swelling and shrinking.
    Active,
    /// Base of a hole that was drilled or dug.
    PreDrilled,
    /// Greatest depth of a tip before.
    Disturbed,
    /// Least depth of the tip.
    LeastTip,
    /// Greatest depth of the tip.
    GreatestTip,
    /// The tip as it stands.
    Tip,
}

/// Zones that are drawn as bars.
pub const ZONES: [Level; 5] = [
    Level::Frost,
    Level::Fill,
    Level::Active,
    Level::PreDrilled,
    Level::Disturbed,
];

impl Level {
    /// How it is called.
    pub const fn told(self) -> &'static str {
        match self {
            Level::Grade => "final grade",
            Level::Frost => "frost",
            Level::FrostMargin => "helix clear of frost",
            Level::Fill => "fill",
            Level::Active => "active zone",
            Level::PreDrilled => "pre-drilled",
            Level::Disturbed => "disturbed before",
            Level::LeastTip => "least tip depth",
            Level::GreatestTip => "greatest tip depth",
            Level::Tip => "tip",
        }
    }

    /// Stroke of its line.
    pub const fn stroke(self) -> &'static str {
        match self {
            Level::LeastTip => "stroke=\"#000\" stroke-width=\"0.6\"",
            Level::GreatestTip => {
                "stroke=\"#000\" stroke-width=\"0.45\" stroke-dasharray=\"5 0.8 1.2 0.8\""
            }
            Level::Tip => "stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"1.8 0.8\"",
            Level::FrostMargin => {
                "stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"0.5 0.7\""
            }
            _ => "stroke=\"#000\" stroke-width=\"0.2\"",
        }
    }

    /// Fills the bar of a zone.
    pub fn fill(self, svg: &mut Svg, r: Rect) {
        match self {
            Level::Frost => hatch(svg, SoilKind::Frozen, r),
            Level::Fill => hatch(svg, SoilKind::Fill, r),
            Level::Active => waves(svg, r),
            Level::Disturbed => rungs(svg, r),
            _ => {}
        }
        svg.rect(r, "stroke=\"#000\" stroke-width=\"0.25\"");
    }
}

/// Waves down a bar: ground that swells and shrinks.
fn waves(svg: &mut Svg, r: Rect) {
    let count = (r.h / 1.5).floor().max(1.0);
    let step = r.h / count;
    let mut d = String::new();
    for i in 0..count as usize {
        let y = r.y + i as f64 * step;
        let (left, right) = (r.x + 0.15 * r.w, r.x + 0.85 * r.w);
        let (from, to) = if i % 2 == 0 {
            (left, right)
        } else {
            (right, left)
        };
        if i == 0 {
            d += &format!("M{} {}", mm(from), mm(y));
        }
        d += &format!("L{} {}", mm(to), mm(y + step));
    }
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
}

/// Rungs across a bar: a hole that a pile went through before.
fn rungs(svg: &mut Svg, r: Rect) {
    let count = (r.h / 1.8).floor().max(1.0) as usize;
    let mut d = String::new();
    for i in 0..count {
        let y = r.y + (i as f64 + 0.5) * r.h / count as f64;
        d += &format!("M{} {}H{}", mm(r.x), mm(y), mm(r.right()));
    }
    svg.path(&d, "stroke=\"#000\" stroke-width=\"0.2\"");
}

/// The levels of an answer, from the top down; those at grade are left out.
pub fn levels(s: Subject) -> Vec<(Level, Length)> {
    let depths = s.request.depths;
    let history = s.request.history.unwrap_or_default();
    let frost = depths.frost_depth.filter(|d| *d > Length::ZERO);
    // with its margin as the answer held it
    let clear = frost.and_then(|frost| {
        let least = s.check(checks::FROST.id)?.demand.as_ref()?.value();
        (least > frost.si()).then(|| Length::from_si(least))
    });
    let mut all: Vec<(Level, Length)> = [
        (Level::Frost, frost),
        (Level::FrostMargin, clear),
        (Level::Fill, depths.fill_depth),
        (Level::Active, depths.active_depth),
        (Level::PreDrilled, history.pre_drilled_depth),
        (Level::Disturbed, history.disturbed_depth),
        (Level::LeastTip, depths.minimum_tip_depth),
        (Level::GreatestTip, depths.maximum_tip_depth),
        (Level::Tip, Some(s.outcome().tip_depth)),
    ]
    .into_iter()
    .filter_map(|(level, depth)| Some((level, depth.filter(|d| *d > Length::ZERO)?)))
    .collect();
    all.sort_by(|a, b| a.1.si().total_cmp(&b.1.si()).then(a.0.cmp(&b.0)));
    all
}

/// A level in words with its depth.
pub fn told(s: Subject, level: Level, depth: Length) -> String {
    let name = match level {
        Level::LeastTip => "least tip",
        Level::GreatestTip => "greatest tip",
        other => other.told(),
    };
    format!("{name} {}", words::depth_told(depth, s.system))
}
