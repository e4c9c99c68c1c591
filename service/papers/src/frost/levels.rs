//! Depths that are lines across the section: base of frost, of fill and of other zones, the
//! beam's underside, what the top helix needs, and the tip.

use bearwell_engine::frost::EmbedmentRuleId;
use bearwell_engine::quantity::Length;

use super::reading::Subject;
use crate::words;
use crate::zones::Zone;

/// A kind of depth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// The surface that is exposed to the cold.
    ColdSurface,
    /// Base of frost by the jurisdiction's depth.
    Frost,
    /// Base of frost by the computed depth.
    ComputedFrost,
    /// Base of fill.
    Fill,
    /// Base of the zone of swelling and shrinking.
    Active,
    /// Base of soil that collapses.
    Collapse,
    /// Underside of the beam.
    Underside,
    /// Lower end of the sleeve.
    Sleeve,
    /// What the top helix needs.
    Needed,
    /// The tip.
    Tip,
}

impl Level {
    /// Stroke of its line across the section.
    pub const fn stroke(self) -> Option<&'static str> {
        Some(match self {
            Level::Frost => "stroke=\"#000\" stroke-width=\"0.7\"",
            Level::ComputedFrost => {
                "stroke=\"#000\" stroke-width=\"0.7\" stroke-dasharray=\"3 0.8 0.8 0.8\""
            }
            Level::Fill | Level::Active | Level::Collapse => "stroke=\"#000\" stroke-width=\"0.2\"",
            Level::Needed => "stroke=\"#000\" stroke-width=\"0.45\" stroke-dasharray=\"1 0.7\"",
            Level::Tip => "stroke=\"#000\" stroke-width=\"0.25\" stroke-dasharray=\"1.8 0.8\"",
            Level::ColdSurface | Level::Underside | Level::Sleeve => return None,
        })
    }

    /// The zone whose base it is.
    pub const fn zone(self) -> Option<Zone> {
        match self {
            Level::Fill => Some(Zone::Fill),
            Level::Active => Some(Zone::Active),
            Level::Collapse => Some(Zone::Collapse),
            _ => None,
        }
    }

    /// How it is called in the key.
    pub const fn told(self) -> &'static str {
        match self {
            Level::ColdSurface => "surface open to cold",
            Level::Frost => "frost line, official",
            Level::ComputedFrost => "frost line, computed",
            Level::Fill => Zone::Fill.told(),
            Level::Active => Zone::Active.told(),
            Level::Collapse => Zone::Collapse.told(),
            Level::Underside => "beam underside",
            Level::Sleeve => "sleeve",
            Level::Needed => "top helix at or below",
            Level::Tip => "tip",
        }
    }
}

/// The levels of an answer, from the top down.
pub fn levels(s: Subject) -> Vec<(Level, Length)> {
    let section = s.section();
    let cold = section.cold_surface_depth;
    let mut all: Vec<(Level, Length)> = [
        (Level::ColdSurface, Some(cold).filter(|d| *d > Length::ZERO)),
        (Level::Frost, Some(section.official_frost_base_depth)),
        (Level::ComputedFrost, section.computed_frost_base_depth),
        (Level::Fill, section.fill_depth),
        (Level::Active, section.active_depth),
        (Level::Collapse, section.collapse_depth),
        (
            Level::Underside,
            section.beam.as_ref().map(|b| b.underside_depth),
        ),
        (Level::Sleeve, section.sleeve_bottom_depth),
        (
            Level::Needed,
            Some(s.outcome().embedment.required_top_helix_depth),
        ),
        (Level::Tip, Some(section.pile.tip_depth)),
    ]
    .into_iter()
    .filter_map(|(level, depth)| Some((level, depth?)))
    .collect();
    all.sort_by(|a, b| a.1.si().total_cmp(&b.1.si()).then(a.0.cmp(&b.0)));
    all
}

/// A level in words with its depth.
pub fn told(s: Subject, level: Level, depth: Length) -> String {
    let name = match level {
        Level::ColdSurface => "open to cold",
        Level::Frost => "frost, official",
        Level::ComputedFrost => "frost, computed",
        Level::Collapse => "collapsing to",
        Level::Active => "active to",
        Level::Fill => "fill to",
        Level::Sleeve => "sleeve to",
        Level::Needed => "top helix from",
        other => other.told(),
    };
    format!("{name} {}", words::depth_told(depth, s.system))
}

/// A rule in words.
pub fn rule(rule: EmbedmentRuleId) -> &'static str {
    match rule {
        EmbedmentRuleId::FrostMargin => "frost, margin",
        EmbedmentRuleId::Diameters => "diameters",
        EmbedmentRuleId::TorqueDiameters => "diameters, torque",
        EmbedmentRuleId::Fill => "fill",
        EmbedmentRuleId::ActiveZone => "active zone",
        EmbedmentRuleId::CollapsingSoil => "collapsing soil",
    }
}
