//! Vertical stresses in a profile: pore pressure from the water as sent, total and
//! effective stress from the weights, as straight lines between depths; and where the
//! ground would lift.

use super::codes::refusals;
use super::profile::SoilProfile;
use crate::contract::Issue;
use crate::quantity::{Length, SoilStress};
use crate::source::DERIVED;
use crate::trace::Trace;

/// Pore pressure with depth.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct PoreWater {
    /// Depth (m) and pressure (Pa), downwards; zero above the first. Empty without water.
    knots: Vec<(f64, f64)>,
    /// Growth below the last, N/m3.
    growth: f64,
}

impl PoreWater {
    pub(super) fn of(profile: &SoilProfile) -> Self {
        let knots = match (&profile.pore_pressures, profile.water_depth) {
            (Some(points), _) => points
                .iter()
                .map(|p| (p.depth.si(), p.pressure.si()))
                .collect(),
            (None, Some(depth)) => vec![(depth.si(), 0.0)],
            (None, None) => Vec::new(),
        };
        Self {
            knots,
            growth: profile.water().si(),
        }
    }

    /// Growth of the pressure just below a depth, N/m3.
    fn growth_below(&self, z: f64) -> f64 {
        let next = self.knots.iter().position(|k| k.0 > z);
        match next {
            Some(0) => 0.0,
            Some(i) => {
                let (a, b) = (self.knots[i - 1], self.knots[i]);
                (b.1 - a.1) / (b.0 - a.0)
            }
            None if self.knots.is_empty() => 0.0,
            None => self.growth,
        }
    }

    fn pressure(&self, z: f64) -> f64 {
        match self.knots.iter().rposition(|k| k.0 <= z) {
            Some(i) => self.knots[i].1 + self.growth_below(self.knots[i].0) * (z - self.knots[i].0),
            None => 0.0,
        }
    }

    /// Depths between two, at which the growth changes.
    fn cuts(&self, top: f64, bottom: f64) -> impl Iterator<Item = f64> + '_ {
        let inside = move |k: &&(f64, f64)| k.0 > top && k.0 < bottom;
        self.knots.iter().filter(inside).map(|k| k.0)
    }

    /// Whether there is pressure anywhere between two depths.
    pub(super) fn wets(&self, top: f64, bottom: f64) -> bool {
        self.pressure(top) > 0.0
            || self.pressure(bottom) > 0.0
            || self.cuts(top, bottom).any(|z| self.pressure(z) > 0.0)
    }
}

/// Depths between which both stresses are straight lines.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Segment {
    top: f64,
    bottom: f64,
    /// Effective stress at the top, Pa.
    stress: f64,
    /// Growth of the effective stress with depth, N/m3.
    gradient: f64,
    /// Pore pressure at the top, Pa.
    pore: f64,
    /// Growth of the pore pressure with depth, N/m3.
    pore_gradient: f64,
}

impl Segment {
    fn effective(&self, z: f64) -> f64 {
        self.stress + self.gradient * (z - self.top)
    }

    fn pore(&self, z: f64) -> f64 {
        self.pore + self.pore_gradient * (z - self.top)
    }
}

/// Vertical stresses with depth.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Stresses {
    segments: Vec<Segment>,
}

impl Stresses {
    /// Stresses of a profile whose layers and weights are whole.
    pub(super) fn of(profile: &SoilProfile) -> Self {
        let off = &mut Trace::off();
        let water = PoreWater::of(profile);
        let mut segments = Vec::with_capacity(profile.layers.len() + water.knots.len());
        let mut stress = 0.0;
        for layer in &profile.layers {
            let (top, bottom) = (layer.top.si(), layer.bottom.si());
            let dry = layer.moist(off).map_or(0.0, |g| g.si());
            let wet = layer
                .saturated(profile.water(), off)
                .map_or(dry, |g| g.si());
            let mut from = top;
            for to in water.cuts(top, bottom).chain([bottom]) {
                let pore_gradient = water.growth_below(from);
                let weight = if water.wets(from, to) { wet } else { dry };
                let segment = Segment {
                    top: from,
                    bottom: to,
                    stress,
                    gradient: weight - pore_gradient,
                    pore: water.pressure(from),
                    pore_gradient,
                };
                stress += segment.gradient * (to - from);
                segments.push(segment);
                from = to;
            }
        }
        Self { segments }
    }

    /// Vertical effective stress.
    ///
    /// s'_v = sum of (gamma - du/dz) dz from the surface; gamma unit weight, saturated where u
    /// is above zero (N/m3), u pore pressure (Pa), z depth (m). Range: within the profile.
    /// Source: definition. Sign: compression positive.
    pub(super) fn effective(&self, z: f64) -> SoilStress {
        SoilStress::from_si(self.at(z).effective(z))
    }

    /// Pore pressure.
    ///
    /// u as sent, straight between depths; Pa. Range: within the profile. Source: the request.
    /// Sign: above that of the air.
    pub(super) fn pore(&self, z: f64) -> SoilStress {
        SoilStress::from_si(self.at(z).pore(z))
    }

    /// Mean effective stress between two depths: exact by trapezia.
    pub(super) fn mean_effective(&self, top: f64, bottom: f64) -> SoilStress {
        let mut area = 0.0;
        for s in self.segments.iter().skip_while(|s| s.bottom <= top) {
            if s.top >= bottom {
                break;
            }
            let (a, b) = (s.top.max(top), s.bottom.min(bottom));
            area += (s.effective(a) + s.effective(b)) / 2.0 * (b - a);
        }
        SoilStress::from_si(area / (bottom - top))
    }

    /// Depths at which the growth of a stress changes, m.
    pub(super) fn breaks(&self) -> impl Iterator<Item = f64> + '_ {
        self.segments.iter().map(|s| s.top)
    }

    fn at(&self, z: f64) -> &Segment {
        let found = self.segments.iter().find(|s| z <= s.bottom);
        // a whole profile has at least one layer, so at least one segment
        found.unwrap_or(&self.segments[self.segments.len() - 1])
    }

    /// The first depth below the surface at which the effective stress is not above zero.
    fn lifted_at(&self) -> Option<f64> {
        let lifted = |s: &&Segment| s.effective(s.bottom) <= 0.0;
        self.segments.iter().find(lifted).map(|s| {
            if s.gradient < 0.0 {
                s.top - s.stress / s.gradient
            } else {
                s.bottom
            }
        })
    }
}

impl SoilProfile {
    /// Faults of the water as sent; `at` is the pointer of the profile.
    pub(super) fn water_faults(&self, at: &str) -> Vec<Issue> {
        let mut issues = Vec::new();
        let Some(points) = &self.pore_pressures else {
            return issues;
        };
        if self.water_depth.is_some() {
            issues.push(Issue::new(
                format!("{at}/pore_pressures"),
                &refusals::WATER_GIVEN_TWICE,
                "`water_depth` is sent too",
            ));
        }
        if let Some(first) = points.first()
            && first.pressure.si() > 0.0
        {
            issues.push(
                Issue::new(
                    format!("{at}/pore_pressures/0/pressure"),
                    &refusals::PORE_PRESSURE_STARTS_ABOVE_ZERO,
                    format!(
                        "{} at {}; send the depth of zero pressure first",
                        SoilStress::ROLE.in_both_systems(first.pressure.si()),
                        told(first.depth)
                    ),
                )
                .limit(SoilStress::ROLE.in_both_systems(0.0)),
            );
        }
        for (i, pair) in points.windows(2).enumerate() {
            if pair[1].depth <= pair[0].depth {
                issues.push(Issue::new(
                    format!("{at}/pore_pressures/{}/depth", i + 1),
                    &refusals::PORE_PRESSURES_NOT_DOWNWARD,
                    format!("{} follows {}", told(pair[1].depth), told(pair[0].depth)),
                ));
            }
        }
        issues
    }

    /// Ground that would lift; the profile must otherwise be whole.
    pub(super) fn lift_fault(&self, stresses: &Stresses, at: &str) -> Option<Issue> {
        let z = stresses.lifted_at()?;
        let member = if self.pore_pressures.is_some() {
            "pore_pressures"
        } else {
            "layers"
        };
        let depth = Length::from_si(z);
        let pore = SoilStress::ROLE.in_both_systems(stresses.pore(z).si());
        Some(
            Issue::new(
                format!("{at}/{member}"),
                &refusals::EFFECTIVE_STRESS_NOT_POSITIVE,
                format!(
                    "at {} the pore pressure of {pore} carries all of the weight above",
                    told(depth)
                ),
            )
            .limit("vertical effective stress above zero")
            .source(&DERIVED),
        )
    }
}

fn told(depth: Length) -> String {
    Length::ROLE.in_both_systems(depth.si())
}
