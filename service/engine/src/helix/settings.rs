//! The choice of methods with every default filled in, and the combinations that do not
//! go together.

use super::codes::{methods, refusals};
use super::methods::*;
use super::uplift::SAND_TENSION_FACTOR;
use crate::contract::{Issue, Work};
use crate::quantity::{Length, LengthUnit};
use crate::shaft::Shaft;
use crate::source::{ALPHA_EXCLUSIONS, BEARING_ZONE, CLAY_UPLIFT, Sourced, TERZAGHI_1943};

/// Depth of the bearing zone in helix diameters.
pub static BEARING_ZONE_RATIO: Sourced<f64> =
    Sourced::new("bearing_zone_ratio", 2.0, &BEARING_ZONE);

/// Depth above which shaft adhesion is not counted.
pub static ADHESION_IGNORED_DEPTH: Sourced<Length> = Sourced::new(
    "adhesion_ignored_depth",
    Length::new(1.5, LengthUnit::M),
    &ALPHA_EXCLUSIONS,
);

/// Methods in force.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Settings {
    pub undrained_bearing: UndrainedBearing,
    pub drained_bearing: DrainedBearing,
    pub shape_depth_factors: ShapeDepthFactors,
    pub width_term: WidthTerm,
    pub local_shear: LocalShear,
    pub stress_limit: StressLimit,
    pub bearing_zone_ratio: f64,
    pub bearing_zone_rule: BearingZoneRule,
    pub helix_area: HelixArea,
    /// Share of the compression bearing in deep sand; none for the breakout cap alone.
    pub sand_tension_factor: Option<f64>,
    pub clay_tension_factor: f64,
    pub clay_critical_embedment: ClayCriticalEmbedment,
    pub cylinder_lateral_stress: CylinderLateralStress,
    pub no_credit_above: Length,
    /// Depth above which adhesion is not counted; none where it is not counted at all.
    pub adhesion_ignored_depth: Option<Length>,
}

impl Settings {
    /// What was sent, with the defaults for the rest.
    pub fn of(m: &HelixMethods) -> Self {
        Self {
            undrained_bearing: m
                .undrained_bearing
                .unwrap_or(UndrainedBearing::Skempton1951),
            drained_bearing: m.drained_bearing.unwrap_or(DrainedBearing::Vesic1973),
            shape_depth_factors: m.shape_depth_factors.unwrap_or(ShapeDepthFactors::None),
            width_term: m.width_term.unwrap_or(WidthTerm::Drop),
            local_shear: m.local_shear.unwrap_or(LocalShear::None),
            stress_limit: m.stress_limit.unwrap_or(StressLimit::None),
            bearing_zone_ratio: m.bearing_zone_ratio.unwrap_or(BEARING_ZONE_RATIO.value),
            bearing_zone_rule: m
                .bearing_zone_rule
                .unwrap_or(BearingZoneRule::ThicknessMean),
            helix_area: m.helix_area.unwrap_or(HelixArea::Net),
            sand_tension_factor: match m.uplift_sand {
                Some(UpliftSand::NqTension(t)) => {
                    Some(t.tension_factor.unwrap_or(SAND_TENSION_FACTOR.value))
                }
                Some(UpliftSand::DasBreakout) | None => None,
            },
            clay_tension_factor: m.clay_tension_factor.unwrap_or(1.0),
            clay_critical_embedment: m
                .clay_critical_embedment
                .unwrap_or(ClayCriticalEmbedment::Das1980),
            cylinder_lateral_stress: m
                .cylinder_lateral_stress
                .unwrap_or(CylinderLateralStress::MitschClemence1985),
            no_credit_above: m.no_credit_above.unwrap_or(Length::ZERO),
            adhesion_ignored_depth: match m.shaft_adhesion {
                Some(ShaftAdhesion::Alpha(a)) => {
                    Some(a.ignored_depth.unwrap_or(ADHESION_IGNORED_DEPTH.value))
                }
                Some(ShaftAdhesion::None) | None => None,
            },
        }
    }

    /// As a request could send it, nothing left out.
    pub fn echo(&self) -> HelixMethods {
        HelixMethods {
            undrained_bearing: Some(self.undrained_bearing),
            drained_bearing: Some(self.drained_bearing),
            shape_depth_factors: Some(self.shape_depth_factors),
            width_term: Some(self.width_term),
            local_shear: Some(self.local_shear),
            stress_limit: Some(self.stress_limit),
            bearing_zone_ratio: Some(self.bearing_zone_ratio),
            bearing_zone_rule: Some(self.bearing_zone_rule),
            helix_area: Some(self.helix_area),
            uplift_sand: Some(match self.sand_tension_factor {
                Some(share) => UpliftSand::NqTension(NqTension {
                    tension_factor: Some(share),
                }),
                None => UpliftSand::DasBreakout,
            }),
            clay_tension_factor: Some(self.clay_tension_factor),
            clay_critical_embedment: Some(self.clay_critical_embedment),
            cylinder_lateral_stress: Some(self.cylinder_lateral_stress),
            no_credit_above: Some(self.no_credit_above),
            shaft_adhesion: Some(match self.adhesion_ignored_depth {
                Some(depth) => ShaftAdhesion::Alpha(AlphaAdhesion {
                    ignored_depth: Some(depth),
                }),
                None => ShaftAdhesion::None,
            }),
        }
    }

    /// Helix diameters above the critical depth of the stress limit.
    pub fn stress_limit_ratio(&self) -> Option<f64> {
        match self.stress_limit {
            StressLimit::None => None,
            StressLimit::Usace1991Loose => Some(LOOSE_LIMIT_RATIO),
            StressLimit::Usace1991Dense => Some(DENSE_LIMIT_RATIO),
        }
    }

    /// Notes the methods for clay and silt that bear.
    pub fn note_undrained(&self, work: &mut Work) {
        work.method(match self.undrained_bearing {
            UndrainedBearing::Skempton1951 => &methods::UNDRAINED_SKEMPTON,
            UndrainedBearing::FixedNine => &methods::UNDRAINED_NINE,
            UndrainedBearing::CavityExpansion(_) => &methods::UNDRAINED_CAVITY,
        });
    }

    /// Notes the methods for sand that bears.
    pub fn note_drained(&self, work: &mut Work) {
        work.method(match self.drained_bearing {
            DrainedBearing::Vesic1973 => &methods::DRAINED_VESIC,
            DrainedBearing::Meyerhof1963 => &methods::DRAINED_MEYERHOF,
            DrainedBearing::Hansen1970 => &methods::DRAINED_HANSEN,
            DrainedBearing::Terzaghi1943 => &methods::DRAINED_TERZAGHI,
            DrainedBearing::Own(_) => &methods::DRAINED_OWN,
        });
        if self.local_shear == LocalShear::TwoThirds {
            work.method(&methods::LOCAL_SHEAR);
        }
        if self.stress_limit != StressLimit::None {
            work.method(&methods::STRESS_LIMIT);
        }
    }
}

/// Critical depth in loose sand, helix diameters.
pub(crate) const LOOSE_LIMIT_RATIO: f64 = 10.0;
/// Critical depth in dense sand, helix diameters.
pub(crate) const DENSE_LIMIT_RATIO: f64 = 20.0;
/// Deep bearing factor in clay in tension.
pub(crate) static DEEP_CLAY_TENSION: Sourced<f64> =
    Sourced::new("deep_clay_tension", 9.0, &CLAY_UPLIFT);

impl HelixMethods {
    /// Every combination of methods that does not go together; `at` is the pointer of the
    /// methods.
    pub fn faults(&self, shaft: &Shaft, at: &str) -> Vec<Issue> {
        let mut issues = Vec::new();
        let settings = Settings::of(self);
        if settings.width_term == WidthTerm::Include
            && matches!(
                settings.drained_bearing,
                DrainedBearing::Terzaghi1943 | DrainedBearing::Own(_)
            )
        {
            issues.push(
                Issue::new(
                    format!("{at}/width_term"),
                    &refusals::NO_CLOSED_WIDTH_FACTOR,
                    "`terzaghi_1943` and `own` have no closed N_gamma; drop the width term or take another method",
                )
                .source(&TERZAGHI_1943),
            );
        }
        if settings.adhesion_ignored_depth.is_some() && matches!(shaft, Shaft::Square(_)) {
            issues.push(
                Issue::new(
                    format!("{at}/shaft_adhesion/alpha"),
                    &refusals::ADHESION_ON_SQUARE_SHAFT,
                    "the soil around a square shaft is cut wider than the shaft",
                )
                .source(&ALPHA_EXCLUSIONS),
            );
        }
        issues
    }
}
