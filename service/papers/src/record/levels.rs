//! Depths that the pile must reach, be clear of or stay above: lines across the drawing, and
//! bars from grade down for the zones whose base they are.

use bearwell_engine::quantity::Length;
use bearwell_engine::record::codes::checks;

use super::reading::Subject;
use crate::words;
use crate::zones::Zone;

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

impl Level {
    /// How it is called.
    pub const fn told(self) -> &'static str {
        match self {
            Level::Grade => "final grade",
            Level::FrostMargin => "helix clear of frost",
            Level::Frost => Zone::Frost.told(),
            Level::Fill => Zone::Fill.told(),
            Level::Active => Zone::Active.told(),
            Level::PreDrilled => Zone::PreDrilled.told(),
            Level::Disturbed => Zone::Disturbed.told(),
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

    /// The zone whose base it is.
    pub const fn zone(self) -> Option<Zone> {
        match self {
            Level::Frost => Some(Zone::Frost),
            Level::Fill => Some(Zone::Fill),
            Level::Active => Some(Zone::Active),
            Level::PreDrilled => Some(Zone::PreDrilled),
            Level::Disturbed => Some(Zone::Disturbed),
            _ => None,
        }
    }
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
