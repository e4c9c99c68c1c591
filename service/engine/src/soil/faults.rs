//! Every fault a profile can have, in two looks: what can be seen in the request itself,
//! and, where that is whole, what its stresses and tests come to.

use super::codes::refusals;
use super::derive::Derivation;
use super::grade::GradeChange;
use super::profile::SoilProfile;
use super::stress::{PoreWater, Stresses};
use crate::contract::{Issue, Work, list_length};
use crate::limits;
use crate::quantity::{Length, SoilStress};

/// Two depths closer than this are the same place (rounding of unit conversions).
pub(super) const SAME_DEPTH_M: f64 = 1e-6;

impl SoilProfile {
    /// List-length faults; `at` is the pointer of the profile.
    pub fn lengths(&self, at: &str, issues: &mut Vec<Issue>) {
        list_length(
            issues,
            format!("{at}/layers"),
            self.layers.len(),
            1,
            limits::LAYERS,
        );
        if let Some(points) = &self.pore_pressures {
            let pointer = format!("{at}/pore_pressures");
            list_length(issues, pointer, points.len(), 1, limits::PORE_PRESSURES);
        }
        for (i, layer) in self.layers.iter().enumerate() {
            if let Some(hazards) = &layer.hazards {
                let pointer = format!("{at}/layers/{i}/hazards");
                list_length(issues, pointer, hazards.len(), 0, limits::LAYER_HAZARDS);
            }
        }
    }

    /// A cut that takes everything away, or goes below the water.
    fn cut_fault(&self, stresses: &Stresses, at: &str) -> Option<Issue> {
        let Some(GradeChange::Cut(cut)) = &self.grade_change else {
            return None;
        };
        let told = |depth: Length| Length::ROLE.in_both_systems(depth.si());
        let pointer = format!("{at}/grade_change/cut/depth");
        if cut.depth.si() >= self.depth().si() - SAME_DEPTH_M {
            let detail = format!(
                "a cut of {} in soil known to {}",
                told(cut.depth),
                told(self.depth())
            );
            return Some(Issue::new(pointer, &refusals::CUT_BELOW_PROFILE, detail));
        }
        let pressure = stresses.pore(cut.depth.si());
        // water at rest at final grade itself is at the surface, not above it
        (pressure.si() > 1.0).then(|| {
            let pressure = SoilStress::ROLE.in_both_systems(pressure.si());
            let detail = format!("at final grade the pore pressure is {pressure}");
            Issue::new(pointer, &refusals::CUT_BELOW_WATER, detail)
        })
    }

    /// Every fault of the profile; `at` is its pointer. What a test comes to is looked at
    /// once the profile is otherwise whole.
    pub fn faults(&self, at: &str) -> Vec<Issue> {
        let mut issues = self.layering_faults(at);
        issues.extend(self.water_faults(at));
        let water = PoreWater::of(self);
        for (i, layer) in self.layers.iter().enumerate() {
            let here = format!("{at}/layers/{i}");
            let wet = water.wets(layer.top.si(), layer.bottom.si());
            issues.extend(layer.weight_faults(self.water(), wet, &here));
            issues.extend(layer.strength_faults(&here));
        }
        if !issues.is_empty() {
            return issues;
        }
        let stresses = Stresses::of(self);
        if let Some(lifted) = self.lift_fault(&stresses, at) {
            return vec![lifted];
        }
        if let Some(cut) = self.cut_fault(&stresses, at) {
            return vec![cut];
        }
        if self.grade_change.is_some() {
            let (graded, _) = self.at_final_grade();
            if let Some(lifted) = graded.lift_fault(&Stresses::of(&graded), at) {
                return vec![lifted];
            }
        }
        let mut scratch = Work::default();
        for i in 0..self.layers.len() {
            let derivation = Derivation::new(self, i, &stresses, at);
            if let Err(found) = derivation.strength(&mut scratch) {
                issues.extend(found);
            }
        }
        issues
    }

    /// Layers upside down, gaps and overlaps.
    fn layering_faults(&self, at: &str) -> Vec<Issue> {
        let depth = |m: f64| Length::ROLE.in_both_systems(m);
        let mut issues = Vec::new();
        let mut expected = 0.0;
        for (i, layer) in self.layers.iter().enumerate() {
            let here = format!("{at}/layers/{i}");
            let (top, bottom) = (layer.top.si(), layer.bottom.si());
            if bottom - top <= SAME_DEPTH_M {
                issues.push(Issue::new(
                    format!("{here}/bottom"),
                    &refusals::LAYER_INVERTED,
                    format!(
                        "layer {} goes from {} to {}; its bottom must be below its top",
                        self.label(i),
                        depth(top),
                        depth(bottom)
                    ),
                ));
            }
            if top - expected > SAME_DEPTH_M {
                issues.push(Issue::new(
                    format!("{here}/top"),
                    &refusals::LAYER_GAP,
                    format!(
                        "no soil is given from {} to {}",
                        depth(expected),
                        depth(top)
                    ),
                ));
            } else if expected - top > SAME_DEPTH_M {
                issues.push(Issue::new(
                    format!("{here}/top"),
                    &refusals::LAYER_OVERLAP,
                    format!(
                        "the layer above goes down to {}, this one begins at {}",
                        depth(expected),
                        depth(top)
                    ),
                ));
            }
            expected = bottom;
        }
        issues
    }
}
