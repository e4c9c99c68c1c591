//! A profile made ready for calculation: one strength per layer, and the vertical stresses
//! as straight lines between depths. The profile as sent, and its faults, are in
//! `profile.rs` and `stress.rs`.

use super::profile::{Soil, SoilProfile};
use crate::quantity::{Angle, Length, SoilStress};

/// Two depths closer than this are the same place (rounding of unit conversions).
const SAME_DEPTH_M: f64 = 1e-6;

/// A whole profile, ready for calculation.
#[derive(Debug, Clone, PartialEq)]
pub struct Strata {
    /// Layers from the surface down, without gap.
    pub layers: Vec<Stratum>,
    segments: Vec<Segment>,
}

/// One layer with the strength that calculations use.
#[derive(Debug, Clone, PartialEq)]
pub struct Stratum {
    /// Its name.
    pub label: String,
    /// Depth of its top.
    pub top: Length,
    /// Depth of its bottom.
    pub bottom: Length,
    /// What it carries.
    pub strength: Strength,
}

/// What a layer carries.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Strength {
    /// Clay or silt, undrained.
    Undrained {
        /// Undrained shear strength.
        su: SoilStress,
    },
    /// Sand or gravel, drained.
    Drained {
        /// Effective friction angle.
        phi: Angle,
        /// Effective cohesion.
        cohesion: SoilStress,
    },
    /// Fill, organic soil: its weight counts and nothing else.
    NoCredit,
    /// Rock; no helix theory.
    Rock,
}

/// Depths between which the vertical effective stress is a straight line.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Segment {
    top: f64,
    bottom: f64,
    /// Effective stress at the top, Pa.
    stress: f64,
    /// Growth with depth, N/m3.
    gradient: f64,
}

impl SoilProfile {
    /// The profile ready for calculation; it must be whole (`SoilProfile::faults` empty).
    pub fn strata(&self) -> Strata {
        let layers = self.layers.iter().enumerate();
        Strata {
            layers: layers
                .map(|(i, layer)| Stratum {
                    label: self.label(i),
                    top: layer.top,
                    bottom: layer.bottom,
                    strength: match &layer.soil {
                        Soil::Clay(u) | Soil::Silt(u) => Strength::Undrained {
                            su: u.undrained_strength,
                        },
                        Soil::Sand(d) => Strength::Drained {
                            phi: d.friction_angle,
                            cohesion: SoilStress::ZERO,
                        },
                        Soil::Fill(_) | Soil::Organic(_) => Strength::NoCredit,
                        Soil::Rock(_) => Strength::Rock,
                    },
                })
                .collect(),
            segments: self.segments(),
        }
    }

    fn segments(&self) -> Vec<Segment> {
        let water = self.water_depth.map_or(f64::INFINITY, |w| w.si());
        let mut segments = Vec::with_capacity(self.layers.len() + 1);
        let mut stress = 0.0;
        for layer in &self.layers {
            let (top, bottom) = (layer.top.si(), layer.bottom.si());
            let cut = water.max(top).min(bottom);
            let dry = layer.unit_weight.si();
            let wet = layer.saturated().si() - self.water().si();
            for (from, to, gradient) in [(top, cut, dry), (cut, bottom, wet)] {
                if to > from {
                    segments.push(Segment {
                        top: from,
                        bottom: to,
                        stress,
                        gradient,
                    });
                    stress += gradient * (to - from);
                }
            }
        }
        segments
    }
}

impl Strata {
    /// Depth to which the profile reaches.
    pub fn depth(&self) -> Length {
        self.layers.last().map_or(Length::ZERO, |l| l.bottom)
    }

    /// Name of layer `i`.
    pub fn label(&self, i: usize) -> &str {
        &self.layers[i].label
    }

    /// Index of the layer at a depth; on a boundary the one below it (`below`) or above.
    /// `None` outside the profile.
    pub fn layer_at(&self, depth: Length, below: bool) -> Option<usize> {
        let z = depth.si();
        if z < 0.0 || z > self.depth().si() + SAME_DEPTH_M {
            return None;
        }
        let last = self.layers.len() - 1;
        let found = self.layers.iter().position(|l| {
            if below {
                z < l.bottom.si() - SAME_DEPTH_M
            } else {
                z <= l.bottom.si() + SAME_DEPTH_M
            }
        });
        Some(found.unwrap_or(last))
    }

    /// Vertical effective stress at a depth.
    ///
    /// s'_v = sum of gamma dz above the water table and (gamma_sat - gamma_w) dz below it;
    /// Pa from N/m3 and m. Range: depth within the profile (deeper is held at its base).
    /// Source: definition.
    pub fn effective_stress(&self, depth: Length) -> SoilStress {
        let z = depth.si().min(self.depth().si());
        SoilStress::from_si(self.segment_at(z).at(z))
    }

    /// Mean vertical effective stress between two depths, Pa: exact by trapezia.
    pub fn mean_effective_stress(&self, top: Length, bottom: Length) -> SoilStress {
        let (top, bottom) = (top.si(), bottom.si());
        let mut area = 0.0;
        for s in self.segments.iter().skip_while(|s| s.bottom <= top) {
            if s.top >= bottom {
                break;
            }
            let (a, b) = (s.top.max(top), s.bottom.min(bottom));
            area += (s.at(a) + s.at(b)) / 2.0 * (b - a);
        }
        SoilStress::from_si(area / (bottom - top))
    }

    /// Depths at which the growth of the effective stress changes, m.
    pub fn stress_breaks(&self) -> impl Iterator<Item = f64> + '_ {
        self.segments.iter().map(|s| s.top)
    }

    fn segment_at(&self, z: f64) -> &Segment {
        let found = self.segments.iter().find(|s| z <= s.bottom);
        // a whole profile has at least one layer, so at least one segment
        found.unwrap_or(&self.segments[self.segments.len() - 1])
    }
}

impl Segment {
    fn at(&self, z: f64) -> f64 {
        self.stress + self.gradient * (z - self.top)
    }
}
