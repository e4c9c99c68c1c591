//! What each source calls aggressive, beside its source. No equations.

use crate::quantity::{Content, ContentUnit, Resistivity, ResistivityUnit};
use crate::source::{
    AASHTO_AGGRESSIVE, AC358_CORROSION, GEC11_USE_LIMITS, GEC12_AGGRESSIVE, MICROPILE_AGGRESSIVE,
    Sourced,
};

/// Limits of one source; nothing where it has none.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thresholds {
    /// Aggressive below this resistivity.
    pub resistivity: Resistivity,
    /// Below this resistivity sulfates and chlorides are to be tested.
    pub test_below: Option<Resistivity>,
    /// Aggressive below this pH.
    pub ph_below: f64,
    /// Aggressive above this pH.
    pub ph_above: Option<f64>,
    /// Aggressive in soil of high organic content from the lower to the upper pH.
    pub ph_if_organic: Option<[f64; 2]>,
    /// Aggressive above these sulfates.
    pub sulfates: Content,
    /// Aggressive above these chlorides.
    pub chlorides: Option<Content>,
    /// Aggressive above this organic matter.
    pub organics: Option<Content>,
    /// Whether high organic content is aggressive.
    pub organic_soil: bool,
    /// Whether landfill and mine waste are aggressive.
    pub waste: bool,
    /// Whether mine and industrial drainage is aggressive.
    pub drainage: bool,
    /// Whether these are limits of use, not of aggressive soil.
    pub of_use: bool,
}

const fn ohm_cm(value: f64) -> Resistivity {
    Resistivity::new(value, ResistivityUnit::OhmCm)
}

const fn ppm(value: f64) -> Content {
    Content::new(value, ContentUnit::Ppm)
}

/// What both sources on piles have in common.
const PILES: Thresholds = Thresholds {
    resistivity: ohm_cm(2000.0),
    test_below: None,
    ph_below: 4.5,
    ph_above: None,
    ph_if_organic: None,
    sulfates: ppm(200.0),
    chlorides: Some(ppm(100.0)),
    organics: None,
    organic_soil: false,
    waste: false,
    drainage: false,
    of_use: false,
};

/// Acceptance criteria.
pub static AC358: Sourced<Thresholds> = Sourced::new(
    "corrosion_limits_ac358",
    Thresholds {
        resistivity: ohm_cm(1000.0),
        ph_below: 5.5,
        sulfates: ppm(1000.0),
        chlorides: None,
        organic_soil: true,
        waste: true,
        ..PILES
    },
    &AC358_CORROSION,
);
/// AASHTO.
pub static AASHTO: Sourced<Thresholds> = Sourced::new(
    "corrosion_limits_aashto",
    Thresholds {
        ph_below: 5.5,
        ph_if_organic: Some([5.5, 8.5]),
        sulfates: ppm(1000.0),
        chlorides: Some(ppm(500.0)),
        drainage: true,
        ..PILES
    },
    &AASHTO_AGGRESSIVE,
);
/// Driven piles.
pub static GEC12: Sourced<Thresholds> = Sourced::new(
    "corrosion_limits_driven_piles",
    Thresholds {
        test_below: Some(ohm_cm(5000.0)),
        ..PILES
    },
    &GEC12_AGGRESSIVE,
);
/// Micropiles.
pub static MICROPILE: Sourced<Thresholds> =
    Sourced::new("corrosion_limits_micropiles", PILES, &MICROPILE_AGGRESSIVE);
/// Limits of use of the rates of zinc and steel.
pub static GEC11: Sourced<Thresholds> = Sourced::new(
    "corrosion_limits_of_use",
    Thresholds {
        resistivity: ohm_cm(3000.0),
        ph_below: 5.0,
        ph_above: Some(10.0),
        organics: Some(Content::new(1.0, ContentUnit::Percent)),
        of_use: true,
        ..PILES
    },
    &GEC11_USE_LIMITS,
);
