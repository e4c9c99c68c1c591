//! A pile in its ground, loaded in one direction, as numbers: its helices without names,
//! the stresses and the embedment they have. What they carry is in `solve.rs`.

use super::bearing::Seat;
use super::law::{Law, laws};
use super::methods::{HelixArea, WidthTerm};
use super::outcome::StressLimits;
use super::pile::AxialDirection;
use super::plates::{Plate, bearing_area};
use super::settings::{DENSE_LIMIT_RATIO, LOOSE_LIMIT_RATIO, Settings};
use super::zone::{credit_base, parts_between};
use crate::quantity::{Area, Length, Size, SoilStress, UnitWeight};
use crate::shaft::Shaft;
use crate::soil::{Strata, Strength};
use crate::source::DERIVED;
use crate::trace::Trace;

/// A helix as a number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Disc {
    pub diameter: Size,
    pub depth: Length,
    /// Area that bears.
    pub area: Area,
}

impl Disc {
    /// Depth over diameter.
    pub fn depth_ratio(&self) -> f64 {
        self.depth.si() / self.diameter.si()
    }
}

/// The ground for one direction of load, whatever the depth of the pile.
pub(crate) struct Ground<'a> {
    pub strata: &'a Strata,
    pub laws: Vec<Law>,
    pub shaft: &'a Shaft,
    pub direction: AxialDirection,
    pub settings: &'a Settings,
}

impl<'a> Ground<'a> {
    /// The ground with the factors of its layers; those the helices between two depths can
    /// reach are recorded.
    pub fn new(
        strata: &'a Strata,
        shaft: &'a Shaft,
        direction: AxialDirection,
        settings: &'a Settings,
        (shallowest, deepest): (Length, Length),
        largest: Size,
        trace: &mut Trace,
    ) -> Self {
        let reach = largest.si() * settings.bearing_zone_ratio;
        let between = match direction {
            AxialDirection::Compression => (shallowest.si(), deepest.si() + reach),
            AxialDirection::Tension => (shallowest.si() - reach, deepest.si()),
        };
        Self {
            strata,
            laws: laws(strata, direction, settings, between, trace),
            shaft,
            direction,
            settings,
        }
    }

    /// The helices as numbers, from the top down, areas recorded.
    pub fn discs(&self, plates: &[Plate], trace: &mut Trace) -> Vec<Disc> {
        let rule = self.settings.helix_area;
        let last = plates.len().saturating_sub(1);
        plates
            .iter()
            .enumerate()
            .map(|(i, plate)| {
                trace.about(|| format!("helix {} in {}", plate.label, self.direction.name()));
                Disc {
                    diameter: plate.diameter,
                    depth: plate.depth,
                    area: self.area(plate.diameter, i == last, rule, trace),
                }
            })
            .collect()
    }

    /// Critical depth ratios of the sands.
    pub fn critical_ratios(&self) -> impl Iterator<Item = f64> {
        self.laws.iter().filter_map(|law| match law {
            Law::Drained(d) => Some(d.breakout.critical),
            Law::Undrained { .. } | Law::None => None,
        })
    }

    fn area(&self, diameter: Size, lowest: bool, rule: HelixArea, trace: &mut Trace) -> Area {
        bearing_area(diameter, lowest, self.shaft, self.direction, rule, trace)
    }

    /// Embedment of a helix: depth below the lowest soil above it without credit.
    pub fn embedment(&self, disc: &Disc) -> Length {
        disc.depth - credit_base(self.strata, disc.depth, self.settings.no_credit_above)
    }

    /// Everything the laws of bearing need of a helix.
    pub fn seat(&self, disc: &Disc, trace: &mut Trace) -> Seat {
        let stress = trace.step(
            "s'_v",
            "sum of gamma dz, less water below the water table",
            self.strata.effective_stress(disc.depth),
            [("z", disc.depth.into())],
            &DERIVED,
        );
        self.seat_under(disc, stress)
    }

    /// The same for a plate under a known stress, nothing recorded.
    pub fn seat_under(&self, disc: &Disc, stress: SoilStress) -> Seat {
        let limited_stress = match self.settings.stress_limit_ratio() {
            Some(ratio) => stress.min(self.stress_at_ratio(disc.diameter, ratio)),
            None => stress,
        };
        let unit_weight = match self.settings.width_term {
            WidthTerm::Drop => UnitWeight::ZERO,
            WidthTerm::Include => {
                let diameter = Length::from(disc.diameter);
                let below = self.strata.effective_stress(disc.depth + diameter);
                UnitWeight::from_si((below.si() - stress.si()) / diameter.si())
            }
        };
        Seat {
            diameter: disc.diameter,
            depth_ratio: disc.depth_ratio(),
            embedment_ratio: self.embedment(disc).si() / disc.diameter.si(),
            stress,
            limited_stress,
            unit_weight,
        }
    }

    fn stress_at_ratio(&self, diameter: Size, ratio: f64) -> SoilStress {
        self.strata.effective_stress(Length::from(diameter) * ratio)
    }

    /// What limits on the effective stress would be, where they would bind.
    pub fn stress_limits(&self, disc: &Disc) -> Option<StressLimits> {
        let (top, bottom) = self.reach(disc, self.settings.bearing_zone_ratio);
        let mut zone = parts_between(self.strata, top, bottom, Length::ZERO);
        let touched = self.touching(disc);
        let sand = |i: usize| matches!(self.strata.layers[i].strength, Strength::Drained { .. });
        if !zone.any(|p| sand(p.layer)) && !touched.is_some_and(sand) {
            return None;
        }
        let at = |ratio: f64| {
            (disc.depth_ratio() > ratio).then(|| self.stress_at_ratio(disc.diameter, ratio))
        };
        let limits = StressLimits {
            loose: at(LOOSE_LIMIT_RATIO),
            dense: at(DENSE_LIMIT_RATIO),
        };
        limits.loose.is_some().then_some(limits)
    }

    /// Layer in touch with a helix on its load side.
    pub fn touching(&self, disc: &Disc) -> Option<usize> {
        let below = self.direction == AxialDirection::Compression;
        self.strata.layer_at(disc.depth, below)
    }

    /// Top and bottom of the soil within some diameters on the load side.
    pub fn reach(&self, disc: &Disc, ratio: f64) -> (Length, Length) {
        let reach = Length::from(disc.diameter) * ratio;
        match self.direction {
            AxialDirection::Compression => (disc.depth, disc.depth + reach),
            AxialDirection::Tension => ((disc.depth - reach).max(Length::ZERO), disc.depth),
        }
    }
}
