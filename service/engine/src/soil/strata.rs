//! A profile made ready for calculation: one strength per layer, and the vertical stresses
//! as straight lines between depths. The profile as sent, and its faults, are in
//! `profile.rs` and `faults.rs`.

use super::codes::methods;
use super::derive::{Derivation, Found};
use super::derived::DerivedStrength;
use super::faults::SAME_DEPTH_M;
use super::profile::{GroundHazard, Layer, SoilProfile};
use super::stress::Stresses;
use crate::contract::Work;
use crate::quantity::{Angle, Length, SoilStress};

/// A whole profile, ready for calculation.
#[derive(Debug, Clone, PartialEq)]
pub struct Strata {
    /// Layers from the surface down, without gap.
    pub layers: Vec<Stratum>,
    stresses: Stresses,
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
    /// What is known of it that helix theory does not cover.
    pub hazards: Vec<GroundHazard>,
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
    /// Fill, organic and frozen soil: its weight counts and nothing else.
    NoCredit,
    /// Rock; no helix theory.
    Rock,
}

impl SoilProfile {
    /// The profile ready for calculation; it must be whole (`SoilProfile::faults` empty).
    /// Says nothing of how strengths were found; `derived_strengths` does.
    pub fn strata(&self) -> Strata {
        let stresses = Stresses::of(self);
        if self.grade_change.is_none() {
            let layers = self.layers.iter().enumerate();
            let layers = layers.map(|(i, l)| self.stratum(i, l, &stresses)).collect();
            return Strata { layers, stresses };
        }
        let (graded, places) = self.at_final_grade();
        let layers = graded.layers.iter().zip(places);
        let layers = layers.map(|(layer, place)| match place {
            // a test was made under the stresses of existing grade
            Some(i) => Stratum {
                top: layer.top,
                bottom: layer.bottom,
                ..self.stratum(i, &self.layers[i], &stresses)
            },
            None => Stratum {
                label: layer.label.as_ref().map_or(String::new(), |l| l.0.clone()),
                top: layer.top,
                bottom: layer.bottom,
                strength: Strength::NoCredit,
                hazards: Vec::new(),
            },
        });
        Strata {
            layers: layers.collect(),
            stresses: Stresses::of(&graded),
        }
    }

    fn stratum(&self, i: usize, layer: &Layer, stresses: &Stresses) -> Stratum {
        let found = Derivation::new(self, i, stresses, "").strength(&mut Work::default());
        Stratum {
            label: self.label(i),
            top: layer.top,
            bottom: layer.bottom,
            strength: found.map_or(Strength::NoCredit, |found| found.strength),
            hazards: layer.hazards.clone().unwrap_or_default(),
        }
    }

    /// The strengths of the layers that were found rather than sent, from the top down, with
    /// the steps, methods and warnings of finding them; also notes how weights and water were
    /// read where they were not sent plainly. The profile must be whole
    /// (`SoilProfile::faults` empty).
    pub fn derived_strengths(&self, work: &mut Work) -> Vec<DerivedStrength> {
        if self.grade_change.is_some() {
            work.method(&methods::GRADE_CHANGE);
        }
        if self.pore_pressures.is_some() {
            work.method(&methods::PORE_PRESSURE_PROFILE);
        }
        for (i, layer) in self.layers.iter().enumerate() {
            if layer.dry_unit_weight.is_some() {
                work.method(&methods::UNIT_WEIGHT_FROM_PHASES);
                work.trace.about(|| format!("layer {}", self.label(i)));
                layer.moist(&mut work.trace);
                layer.saturated(self.water(), &mut work.trace);
            }
        }
        let stresses = Stresses::of(self);
        let mut all = Vec::new();
        for i in 0..self.layers.len() {
            let derivation = Derivation::new(self, i, &stresses, "");
            if let Ok(Found {
                derived: Some(entry),
                ..
            }) = derivation.strength(work)
            {
                all.push(entry);
            }
        }
        work.trace.about(String::new);
        all
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

    /// Vertical effective stress at a depth; deeper than the profile it is that at its base.
    pub fn effective_stress(&self, depth: Length) -> SoilStress {
        self.stresses.effective(self.within(depth))
    }

    /// Pore pressure at a depth; deeper than the profile it is that at its base.
    pub fn pore_pressure(&self, depth: Length) -> SoilStress {
        self.stresses.pore(self.within(depth))
    }

    /// Vertical total stress at a depth.
    ///
    /// s_v = s'_v + u; s'_v vertical effective stress and u pore pressure (Pa). Range: within
    /// the profile (deeper is held at its base). Source: definition. Sign: compression positive.
    pub fn total_stress(&self, depth: Length) -> SoilStress {
        self.effective_stress(depth) + self.pore_pressure(depth)
    }

    /// Mean vertical effective stress between two depths, Pa: exact by trapezia.
    pub fn mean_effective_stress(&self, top: Length, bottom: Length) -> SoilStress {
        self.stresses.mean_effective(top.si(), bottom.si())
    }

    /// Depths at which the growth of a stress changes, m.
    pub fn stress_breaks(&self) -> impl Iterator<Item = f64> + '_ {
        self.stresses.breaks()
    }

    fn within(&self, depth: Length) -> f64 {
        depth.si().min(self.depth().si())
    }
}
