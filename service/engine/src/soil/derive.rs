//! From the way a strength was sent to the strength that is used: which relation runs, on
//! which stresses, and what the answer tells of it. Undrained strengths are in
//! `derive_undrained.rs`, friction angles in `derive_drained.rs`.

use std::borrow::Cow;

use super::codes::{methods, refusals, warnings};
use super::correlations::cone::{BEHAVIOUR_LIMITS, behaviour_index, total_resistance};
use super::correlations::penetration::{ENERGY_RATIO, RawCorrections, n60};
use super::cpt::ConeReading;
use super::derived::{DerivedCone, DerivedPenetration, DerivedStrength};
use super::profile::{Layer, Soil, SoilProfile};
use super::spt::SptForm;
use super::strata::Strength;
use super::strength::{Drained, Undrained};
use super::stress::Stresses;
use crate::catalogue::MethodDef;
use crate::contract::{Issue, SubjectKind, Work};
use crate::quantity::{Length, SoilStress};
use crate::source::{Reference, SourceNote};

/// One layer on the way to its strength.
pub(super) struct Derivation<'a> {
    layer: &'a Layer,
    pub(super) label: String,
    /// Pointer of the layer.
    here: String,
    stresses: &'a Stresses,
}

/// The strength of a layer, and how it was found where it was not sent.
#[derive(Debug)]
pub(super) struct Found {
    pub strength: Strength,
    pub derived: Option<DerivedStrength>,
}

impl Found {
    pub fn sent(strength: Strength) -> Self {
        Self {
            strength,
            derived: None,
        }
    }
}

/// What was found, or every fault of the test.
pub(super) type Finding = Result<Found, Vec<Issue>>;

/// Kinds of soil as the index of a cone sees them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Behaviour {
    Sand,
    Clay,
}

/// A depth with its stresses.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spot {
    pub depth: Length,
    pub effective: SoilStress,
    pub pore: SoilStress,
}

impl Spot {
    pub fn total(&self) -> SoilStress {
        self.effective + self.pore
    }
}

/// What a raw count is corrected by, as sent.
pub(super) struct SentCorrections {
    pub energy: Option<f64>,
    pub borehole: Option<f64>,
    pub rod: Option<f64>,
    pub sampler: Option<f64>,
}

impl<'a> Derivation<'a> {
    /// Layer `i` of a profile; `at` is the pointer of the profile.
    pub fn new(profile: &'a SoilProfile, i: usize, stresses: &'a Stresses, at: &str) -> Self {
        Self {
            layer: &profile.layers[i],
            label: profile.label(i),
            here: format!("{at}/layers/{i}"),
            stresses,
        }
    }

    /// The strength of the layer. Methods, steps and warnings go to `work`.
    pub fn strength(&self, work: &mut Work) -> Finding {
        let at = |kind: &str| format!("{}/soil/{kind}", self.here);
        match &self.layer.soil {
            Soil::Clay(u) => self.undrained(u, &at("clay"), work),
            Soil::Silt(u) => self.undrained(u, &at("silt"), work),
            Soil::Sand(d) => self.drained(d, &at("sand"), work),
            Soil::Gravel(d) => self.drained(d, &at("gravel"), work),
            Soil::Fill(fill) => match &fill.engineered {
                None => Ok(Found::sent(Strength::NoCredit)),
                Some(fill) => {
                    self.warn(
                        &warnings::ENGINEERED_FILL_ON_RECORD,
                        format!(
                            "layer {} counts as engineered fill on the record `{}`",
                            self.label, fill.record
                        ),
                        work,
                    );
                    let at = |kind: &str| at(&format!("fill/engineered/{kind}"));
                    let drained =
                        |d: &Drained, kind, work: &mut _| self.drained(d, &at(kind), work);
                    match (&fill.clay, &fill.sand, &fill.gravel) {
                        (Some(u), ..) => self.undrained(u, &at("clay"), work),
                        (_, Some(d), _) => drained(d, "sand", work),
                        (.., Some(d)) => drained(d, "gravel", work),
                        (None, None, None) => Ok(Found::sent(Strength::NoCredit)),
                    }
                }
            },
            Soil::Organic(_) | Soil::Frozen(_) => Ok(Found::sent(Strength::NoCredit)),
            Soil::Rock(_) => Ok(Found::sent(Strength::Rock)),
        }
    }

    fn undrained(&self, u: &Undrained, at: &str, work: &mut Work) -> Finding {
        work.trace.about(|| format!("layer {}", self.label));
        if let Some(su) = u.undrained_strength {
            Ok(Found::sent(Strength::Undrained { su }))
        } else if let Some(spt) = &u.from_spt {
            self.undrained_from_spt(spt, &format!("{at}/from_spt"), work)
        } else if let Some(cpt) = &u.from_cpt {
            self.undrained_from_cpt(cpt, &format!("{at}/from_cpt"), work)
        } else if let Some(history) = &u.from_stress_history {
            self.undrained_from_history(history, &format!("{at}/from_stress_history"), work)
        } else if let Some(index) = &u.from_index {
            self.undrained_from_index(index, &format!("{at}/from_index"), work)
        } else {
            Ok(Found::sent(Strength::NoCredit))
        }
    }

    fn drained(&self, d: &Drained, at: &str, work: &mut Work) -> Finding {
        work.trace.about(|| format!("layer {}", self.label));
        let cohesion = d.cohesion.unwrap_or(SoilStress::ZERO);
        if let Some(phi) = d.friction_angle {
            Ok(Found::sent(Strength::Drained { phi, cohesion }))
        } else if let Some(spt) = &d.from_spt {
            self.friction_from_spt(spt, cohesion, &format!("{at}/from_spt"), work)
        } else if let Some(cpt) = &d.from_cpt {
            self.friction_from_cpt(cpt, cohesion, &format!("{at}/from_cpt"), work)
        } else if let Some(index) = &d.from_index {
            self.friction_from_index(index, cohesion, work)
        } else {
            Ok(Found::sent(Strength::NoCredit))
        }
    }

    /// The depth of a test, or the middle of the layer, with its stresses.
    pub fn spot(&self, depth: Option<Length>) -> Spot {
        let middle = self.layer.top + (self.layer.bottom - self.layer.top) / 2.0;
        let depth = depth.unwrap_or(middle);
        Spot {
            depth,
            effective: self.stresses.effective(depth.si()),
            pore: self.stresses.pore(depth.si()),
        }
    }

    /// The count at 60 % energy, and how it came to that.
    pub fn n60(
        &self,
        count: f64,
        form: SptForm,
        sent: &SentCorrections,
        work: &mut Work,
    ) -> (Option<f64>, DerivedPenetration) {
        let mut told = DerivedPenetration {
            blow_count: count,
            form,
            energy_ratio: None,
            borehole_factor: None,
            rod_factor: None,
            sampler_factor: None,
            n60_count: None,
            silty_sand_count: None,
            overburden_factor: None,
            n1_60_count: None,
            used_count: count,
            plasticity_index_ratio: None,
            strength_factor: None,
        };
        told.n60_count = match form {
            SptForm::N1_60 => None,
            SptForm::N60 => Some(count),
            SptForm::Raw => {
                let energy = sent.energy.unwrap_or_else(|| {
                    let assumed = work.take(&ENERGY_RATIO);
                    self.warn(
                        &warnings::SPT_ENERGY_UNKNOWN,
                        format!(
                            "layer {}: the raw blow count {count} came without energy ratio; {assumed} was taken",
                            self.label
                        ),
                        work,
                    );
                    assumed
                });
                let corrections = RawCorrections {
                    energy,
                    borehole: sent.borehole.unwrap_or(1.0),
                    rod: sent.rod.unwrap_or(1.0),
                    sampler: sent.sampler.unwrap_or(1.0),
                };
                told.energy_ratio = Some(corrections.energy);
                told.borehole_factor = Some(corrections.borehole);
                told.rod_factor = Some(corrections.rod);
                told.sampler_factor = Some(corrections.sampler);
                work.method(&methods::SPT_N60);
                Some(n60(count, &corrections, &mut work.trace))
            }
        };
        (told.n60_count, told)
    }

    /// A count held at the end of the range of its relation.
    pub fn held_count(&self, count: f64, limit: f64, work: &mut Work) -> f64 {
        if count > limit * (1.0 + 1e-12) {
            self.warn(
                &warnings::BLOW_COUNT_HELD,
                format!(
                    "layer {}: the blow count of {count:.1} is used as {limit}",
                    self.label
                ),
                work,
            );
        }
        count.min(limit)
    }

    /// The readings of a cone: its total resistance and what its index tells.
    pub fn cone(
        &self,
        reading: &ConeReading,
        spot: &Spot,
        kind: Behaviour,
        at: &str,
        work: &mut Work,
    ) -> Result<DerivedCone, Vec<Issue>> {
        let parts = (
            reading.cone_resistance,
            reading.pore_pressure,
            reading.area_ratio,
        );
        let total = match (reading.total_resistance, parts) {
            (Some(total), _) => total,
            (None, (Some(qc), Some(u2), Some(a))) => total_resistance(qc, u2, a, &mut work.trace),
            // not whole, which `strength_faults` tells
            (None, _) => SoilStress::ZERO,
        };
        if total <= spot.total() {
            let told = |s: SoilStress| SoilStress::ROLE.in_both_systems(s.si());
            return Err(vec![
                Issue::new(
                    format!("{at}/reading"),
                    &refusals::CONE_BELOW_OVERBURDEN,
                    format!("q_t is {}", told(total)),
                )
                .limit(format!("above {}", told(spot.total()))),
            ]);
        }
        let behaviour = reading
            .sleeve_friction
            .map(|sleeve| self.behaviour(total, sleeve, spot, kind, work));
        Ok(DerivedCone {
            cone_resistance: reading.cone_resistance,
            pore_pressure: reading.pore_pressure,
            area_ratio: reading.area_ratio,
            total_resistance: total,
            sleeve_friction: reading.sleeve_friction,
            cone_factor: None,
            normalised_resistance_ratio: None,
            behaviour_index_ratio: behaviour,
        })
    }

    /// The behaviour index, with a warning where it contradicts the kind of soil sent.
    fn behaviour(
        &self,
        total: SoilStress,
        sleeve: SoilStress,
        spot: &Spot,
        kind: Behaviour,
        work: &mut Work,
    ) -> f64 {
        work.method(&methods::BEHAVIOUR_INDEX);
        let index = behaviour_index(total, sleeve, spot.total(), spot.effective, &mut work.trace);
        let (sand, clay) = work.take_table(&BEHAVIOUR_LIMITS);
        let told = match kind {
            Behaviour::Sand if index > clay => Some("clay-like; sand or gravel"),
            Behaviour::Clay if index < sand => Some("sand-like; clay or silt"),
            _ => None,
        };
        if let Some(told) = told {
            self.warn(
                &warnings::BEHAVIOUR_INDEX_DIFFERS,
                format!(
                    "layer {}: an index of {index:.2} is {told} was sent",
                    self.label
                ),
                work,
            );
        }
        index
    }

    /// An entry of the answer, still without the strength.
    pub fn entry(
        &self,
        method: &'static MethodDef,
        spot: &Spot,
        scatter: &'static str,
        source: &'static Reference,
    ) -> DerivedStrength {
        DerivedStrength {
            layer: self.label.clone(),
            correlation: method.id.into(),
            depth: spot.depth,
            total_stress: spot.total(),
            effective_stress: spot.effective,
            undrained_strength: None,
            friction_angle: None,
            friction_angle_before_limit: None,
            penetration: None,
            cone: None,
            stress_history: None,
            density: None,
            scatter: Cow::Borrowed(scatter),
            source: SourceNote::from(source),
        }
    }

    /// Notes the method and warns of its scatter.
    pub fn note(&self, method: &'static MethodDef, found: &str, work: &mut Work) {
        work.method(method);
        self.warn(
            &warnings::STRENGTH_FROM_CORRELATION,
            format!(
                "layer {}: {found} by `{}`; see its scatter in `derived_strengths`",
                self.label, method.id
            ),
            work,
        );
    }

    pub fn warn(
        &self,
        code: &'static crate::catalogue::WarningDef,
        detail: String,
        work: &mut Work,
    ) {
        work.warn_about(code, SubjectKind::Layer, self.label.clone(), detail);
    }
}
