//! Reading a profile: is it whole, which layer is where, what is the vertical
//! effective stress.

use super::codes::refusals;
use super::profile::{Layer, SoilProfile};
use crate::contract::{Issue, list_length};
use crate::limits;
use crate::quantity::{Length, SoilStress, UnitWeight, UnitWeightUnit};
use crate::source::{DERIVED, Sourced};

/// Unit weight of water, 9.81 kN/m3: 1000 kg/m3 x 9.81 m/s2.
pub static WATER_UNIT_WEIGHT: Sourced<UnitWeight> = Sourced::new(
    "water_unit_weight",
    UnitWeight::new(9.81, UnitWeightUnit::KNPerM3),
    &DERIVED,
);

/// Two depths closer than this are the same place (rounding of unit conversions).
const SAME_DEPTH_M: f64 = 1e-6;

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
    }

    /// Every fault of the layering; `at` is the pointer of the profile.
    pub fn faults(&self, at: &str) -> Vec<Issue> {
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
            self.weight_faults(layer, &here, &mut issues);
        }
        issues
    }

    /// Faults of the unit weights of one layer; `here` is its pointer.
    fn weight_faults(&self, layer: &Layer, here: &str, issues: &mut Vec<Issue>) {
        let weight = |w: UnitWeight| UnitWeight::ROLE.in_both_systems(w.si());
        if let Some(saturated) = layer.saturated_unit_weight
            && saturated.si() < layer.unit_weight.si() * (1.0 - 1e-9)
        {
            issues.push(Issue::new(
                format!("{here}/saturated_unit_weight"),
                &refusals::LAYER_SATURATED_LIGHTER,
                format!(
                    "{} saturated, {} above water",
                    weight(saturated),
                    weight(layer.unit_weight)
                ),
            ));
        }
        // water fills pores only: gamma_sat - gamma is at most the unit weight of water, so
        // that a deeper water table never lowers an effective stress
        if let Some(saturated) = layer.saturated_unit_weight
            && saturated.si() > (layer.unit_weight.si() + self.water().si()) * (1.0 + 1e-9)
        {
            issues.push(Issue::new(
                format!("{here}/saturated_unit_weight"),
                &refusals::LAYER_SATURATED_TOO_HEAVY,
                format!(
                    "{} saturated is more than {} above water and {} of water",
                    weight(saturated),
                    weight(layer.unit_weight),
                    weight(self.water())
                ),
            ));
        }
        let wet = self.water_depth.is_some_and(|w| w < layer.bottom);
        if wet && layer.saturated().si() <= self.water().si() {
            let member = if layer.saturated_unit_weight.is_some() {
                "saturated_unit_weight"
            } else {
                "unit_weight"
            };
            issues.push(Issue::new(
                format!("{here}/{member}"),
                &refusals::LAYER_LIGHTER_THAN_WATER,
                format!(
                    "{} below the water table is not above {} of water",
                    weight(layer.saturated()),
                    weight(self.water())
                ),
            ));
        }
    }

    /// Name of layer `i`: its label, or `L1`, `L2`, ... from the top.
    pub fn label(&self, i: usize) -> String {
        match &self.layers[i].label {
            Some(label) => label.0.clone(),
            None => format!("L{}", i + 1),
        }
    }

    /// Depth to which the profile reaches.
    pub fn depth(&self) -> Length {
        self.layers.last().map_or(Length::ZERO, |l| l.bottom)
    }

    /// Unit weight of water in force.
    pub fn water(&self) -> UnitWeight {
        self.water_unit_weight.unwrap_or(WATER_UNIT_WEIGHT.value)
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
        let z = depth.si();
        let water = self.water_depth.map_or(f64::INFINITY, |w| w.si());
        let mut stress = 0.0;
        for layer in &self.layers {
            let top = layer.top.si();
            if top >= z {
                break;
            }
            let bottom = layer.bottom.si().min(z);
            let dry = (bottom.min(water) - top).max(0.0);
            let wet = (bottom - top) - dry;
            stress += layer.unit_weight.si() * dry;
            if wet > 0.0 {
                stress += (layer.saturated().si() - self.water().si()) * wet;
            }
        }
        SoilStress::from_si(stress)
    }
}

impl Layer {
    /// Unit weight below the water table.
    pub fn saturated(&self) -> UnitWeight {
        self.saturated_unit_weight.unwrap_or(self.unit_weight)
    }
}

#[cfg(test)]
mod tests {
    use super::super::profile::{Soil, Undrained};
    use super::*;
    use crate::quantity::{LengthUnit, StressUnit};

    fn layer(top: f64, bottom: f64, pcf: f64) -> Layer {
        Layer {
            label: None,
            tags: None,
            top: Length::new(top, LengthUnit::Ft),
            bottom: Length::new(bottom, LengthUnit::Ft),
            unit_weight: UnitWeight::new(pcf, UnitWeightUnit::Pcf),
            saturated_unit_weight: None,
            soil: Soil::Clay(Undrained {
                undrained_strength: SoilStress::new(50.0, StressUnit::KPa),
            }),
        }
    }

    /// By hand: 115 pcf, water at 3 ft, depth 10 ft: 713 psf against 1,150 (62.4 pcf).
    #[test]
    fn water_table_reduces_effective_stress() {
        let mut p = SoilProfile {
            layers: vec![layer(0.0, 4.0, 115.0), layer(4.0, 20.0, 115.0)],
            water_depth: None,
            water_unit_weight: Some(UnitWeight::new(62.4, UnitWeightUnit::Pcf)),
        };
        let at = |p: &SoilProfile| {
            p.effective_stress(Length::new(10.0, LengthUnit::Ft))
                .get(StressUnit::Psf)
        };
        assert!((at(&p) - 1150.0).abs() < 1e-9);
        p.water_depth = Some(Length::new(3.0, LengthUnit::Ft));
        assert!((at(&p) - 713.2).abs() < 1e-9);
        assert!((at(&p) / 1150.0 - 0.620).abs() < 5e-4);
    }

    #[test]
    fn every_fault_of_the_layering_is_found_at_once() {
        let p = SoilProfile {
            layers: vec![
                layer(1.0, 4.0, 115.0),
                layer(5.0, 8.0, 115.0),
                layer(7.0, 6.0, 115.0),
            ],
            water_depth: None,
            water_unit_weight: None,
        };
        let codes: Vec<_> = p.faults("").iter().map(|i| i.code.to_string()).collect();
        assert_eq!(
            codes,
            ["layer_gap", "layer_gap", "layer_inverted", "layer_overlap"]
        );
    }

    #[test]
    fn a_boundary_belongs_to_the_side_asked_for() {
        let p = SoilProfile {
            layers: vec![layer(0.0, 4.0, 115.0), layer(4.0, 20.0, 115.0)],
            water_depth: None,
            water_unit_weight: None,
        };
        let four = Length::new(4.0, LengthUnit::Ft);
        assert_eq!(p.layer_at(four, true), Some(1));
        assert_eq!(p.layer_at(four, false), Some(0));
        assert_eq!(p.layer_at(Length::new(21.0, LengthUnit::Ft), true), None);
        assert_eq!(p.layer_at(Length::new(20.0, LengthUnit::Ft), true), Some(1));
    }
}
