//! The pile moved up and down as a whole: its solution with the lowest helix at any depth,
//! and the depths at which something changes.

use super::ground::{Disc, Ground};
use super::methods::{BearingZoneRule, ShapeDepthFactors};
use super::pile::AxialDirection;
use super::plates::Plate;
use super::punching::WEAK_LAYER_REACH;
use super::resistance::largest;
use super::settings::Settings;
use super::solve::{Silent, Solution, solve};
use super::zone::zone_faults;
use crate::contract::Issue;
use crate::quantity::{Length, LengthUnit};
use crate::shaft::Shaft;
use crate::soil::{Strata, Stratum, Strength};
use crate::trace::Trace;

/// Least depth of a helix.
pub(crate) const LEAST_HELIX_DEPTH: Length = Length::new(0.1, LengthUnit::M);

/// A pile that can be moved up and down.
pub(crate) struct Movable<'a> {
    strata: &'a Strata,
    settings: &'a Settings,
    plates: Vec<Plate<'a>>,
    /// Height of each helix above the lowest, from the top down.
    above: Vec<Length>,
    sides: Vec<(Ground<'a>, Vec<Disc>)>,
}

/// The pile with its lowest helix at a depth.
#[derive(Debug, Clone, Copy, Default)]
pub(crate) struct AtDepth {
    pub compression: Option<Solution>,
    pub tension: Option<Solution>,
}

impl<'a> Movable<'a> {
    /// A pile with its helices from the top down, for the directions given.
    pub fn new(
        strata: &'a Strata,
        shaft: &'a Shaft,
        plates: Vec<Plate<'a>>,
        directions: impl Iterator<Item = AxialDirection>,
        settings: &'a Settings,
    ) -> Self {
        let lowest = plates.last().map_or(Length::ZERO, |p| p.depth);
        let mut off = Trace::off();
        let everywhere = (Length::ZERO, strata.depth());
        let sides = directions
            .map(|direction| {
                let ground = Ground::new(
                    strata,
                    shaft,
                    direction,
                    settings,
                    everywhere,
                    largest(&plates),
                    &mut off,
                );
                let discs = ground.discs(&plates, &mut off);
                (ground, discs)
            })
            .collect();
        Self {
            strata,
            settings,
            above: plates.iter().map(|p| lowest - p.depth).collect(),
            plates,
            sides,
        }
    }

    /// The solution with the lowest helix at a depth. The depth must be without faults.
    pub fn at(&mut self, depth: Length) -> AtDepth {
        let mut found = AtDepth::default();
        for (ground, discs) in &mut self.sides {
            for (disc, above) in discs.iter_mut().zip(&self.above) {
                disc.depth = depth - *above;
            }
            let solution = solve(ground, discs, &mut Trace::off(), &mut Silent);
            match ground.direction {
                AxialDirection::Compression => found.compression = Some(solution),
                AxialDirection::Tension => found.tension = Some(solution),
            }
        }
        found
    }

    /// Height of the top helix above the lowest.
    pub fn span(&self) -> Length {
        self.above.first().copied().unwrap_or(Length::ZERO)
    }

    /// Diameter of the largest helix.
    pub fn largest(&self) -> Length {
        Length::from(largest(&self.plates))
    }

    /// Depth to which the soil is known.
    pub fn ground_depth(&self) -> Length {
        self.strata.depth()
    }

    /// Where theory does not reach with the lowest helix at a depth.
    pub fn faults(&self, depth: Length) -> Vec<Issue> {
        let moved = |(plate, above): (&Plate<'a>, &Length)| Plate {
            depth: depth - *above,
            ..plate.clone()
        };
        let plates: Vec<_> = self.plates.iter().zip(&self.above).map(moved).collect();
        let of = |(ground, _): &(Ground, Vec<Disc>)| {
            zone_faults(self.strata, &plates, ground.direction, self.settings, "")
        };
        self.sides.iter().flat_map(of).collect()
    }

    /// Where theory does not reach with the lowest helix anywhere between two depths. Rock and
    /// the end of the profile are met at the last of them if at all; hazardous ground can lie
    /// between.
    pub fn faults_between(&self, from: Length, to: Length) -> Vec<Issue> {
        let hazards = self.strata.layers.iter().filter(|l| !l.hazards.is_empty());
        let amid = hazards.map(|l| (l.top + l.bottom) / 2.0);
        let passed = amid.filter(|z| (from.si()..to.si()).contains(&z.si()));
        [to, from]
            .into_iter()
            .chain(passed)
            .map(|depth| self.faults(depth))
            .find(|faults| !faults.is_empty())
            .unwrap_or_default()
    }

    /// Depths of the lowest helix between two others at which a helix, the soil it bears on
    /// or a layer it could punch into meets a change of the ground; in order.
    pub fn breaks(&self, from: Length, to: Length) -> Vec<Length> {
        let strata = self.strata;
        let ends = [self.settings.no_credit_above.si(), strata.depth().si()];
        let changes: Vec<f64> = strata.stress_breaks().chain(ends).collect();
        let mut found = Vec::new();
        let helices = || self.plates.iter().zip(&self.above);
        for (ground, _) in &self.sides {
            for (plate, above) in helices() {
                let diameter = plate.diameter.si();
                let zone = diameter * self.settings.bearing_zone_ratio;
                let reaches = match ground.direction {
                    AxialDirection::Compression => [0.0, zone, WEAK_LAYER_REACH.value * diameter],
                    AxialDirection::Tension => [0.0, -zone, 0.0],
                };
                // here the depth factors of footings change
                found.push(diameter + above.si());
                for change in &changes {
                    found.extend(reaches.map(|reach| change - reach + above.si()));
                }
                found.extend(self.critical(ground).map(|(base, ratio)| {
                    // from here on uplift in sand may follow another law
                    base + ratio * diameter + above.si()
                }));
            }
        }
        found.retain(|z| *z > from.si() && *z < to.si());
        found.sort_by(f64::total_cmp);
        found.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
        found.into_iter().map(Length::from_si).collect()
    }

    /// Depths from which embedment counts, each with the critical ratios of the sands.
    fn critical(&self, ground: &Ground<'a>) -> impl Iterator<Item = (f64, f64)> {
        let pulled = ground.direction == AxialDirection::Tension;
        let layers = self.strata.layers.iter();
        let dead = layers.filter(|l| l.strength == Strength::NoCredit);
        let mut bases: Vec<f64> = dead.map(|l| l.bottom.si()).collect();
        bases.push(self.settings.no_credit_above.si());
        let ratios: Vec<f64> = ground.critical_ratios().filter(|_| pulled).collect();
        bases
            .into_iter()
            .flat_map(move |base| ratios.clone().into_iter().map(move |ratio| (base, ratio)))
    }

    /// Depths of the lowest helix between two others at which the ultimate resistance can
    /// jump: at soil without credit and the depth of credit; with rules that are not
    /// continuous, at every change.
    pub fn jumps(&self, from: Length, to: Length) -> Vec<Length> {
        let s = self.settings;
        let anywhere = s.bearing_zone_rule == BearingZoneRule::Weakest
            || s.bearing_zone_ratio == 0.0
            || s.sand_tension_factor.is_some()
            || s.shape_depth_factors == ShapeDepthFactors::Published;
        let dead = |l: &Stratum| l.strength == Strength::NoCredit;
        let without = self.strata.layers.iter().any(dead) || s.no_credit_above > Length::ZERO;
        if !anywhere && !without {
            return Vec::new();
        }
        let mut found = self.breaks(from, to);
        if !anywhere {
            let near: Vec<f64> = self.dead_ends().collect();
            found.retain(|z| near.iter().any(|d| (z.si() - d).abs() < 1e-6));
        }
        found
    }

    /// Depths of the lowest helix at which a helix or its zone meets an end of soil without
    /// credit, or a helix the depth of credit.
    fn dead_ends(&self) -> impl Iterator<Item = f64> {
        let s = self.settings;
        let layers = self.strata.layers.iter();
        let dead = layers.filter(|l| l.strength == Strength::NoCredit);
        let mut ends: Vec<f64> = dead.flat_map(|l| [l.top.si(), l.bottom.si()]).collect();
        ends.push(s.no_credit_above.si());
        self.plates
            .iter()
            .zip(&self.above)
            .flat_map(move |(plate, above)| {
                let zone = plate.diameter.si() * s.bearing_zone_ratio;
                let above = above.si();
                let ends = ends.clone();
                ends.into_iter()
                    .flat_map(move |end| [end, end - zone, end + zone].map(|z| z + above))
            })
    }
}
