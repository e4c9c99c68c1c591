//! Final grade that differs from existing grade: the profile as it lies after a cut or a
//! fill. Its faults are in `faults.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::profile::{Fill, Layer, PorePressure, Soil, SoilProfile};
use crate::choice::validate_choice;
use crate::quantity::{Length, LengthUnit, SoilStress, UnitWeight, UnitWeightUnit};
use crate::text::Label;

/// What is done to existing grade.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum GradeChange {
    /// Soil is taken away.
    Cut(GradeCut),
    /// Soil is brought in.
    Raise(GradeRaise),
}

validate_choice!(GradeChange { Cut = "cut", Raise = "raise" });

/// Soil taken away, down to final grade.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GradeCut {
    /// Depth of final grade below existing grade; 0 to 30 m, above the water.
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub depth: Length,
}

/// Fill brought in, up to final grade. It carries nothing; to count it as engineered, send the
/// profile from final grade with the fill as its first layer.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GradeRaise {
    /// Height of final grade above existing grade; 0 to 30 m.
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub height: Length,
    /// Unit weight of the fill; 8 to 26 kN/m3.
    #[validate(range(min = UnitWeight::new(8.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(26.0, UnitWeightUnit::KNPerM3)))]
    pub unit_weight: UnitWeight,
}

/// Parts of a layer thinner than this are not left by a cut, m.
const LEAST_LAYER_M: f64 = 2e-6;

impl SoilProfile {
    /// How far final grade lies above existing grade; negative after a cut.
    fn raise(&self) -> Length {
        match &self.grade_change {
            None => Length::ZERO,
            Some(GradeChange::Cut(cut)) => -cut.depth,
            Some(GradeChange::Raise(raise)) => raise.height,
        }
    }

    /// Depth to which the profile reaches below final grade.
    pub fn final_depth(&self) -> Length {
        self.depth() + self.raise()
    }

    /// The profile with everything from final grade, and for each of its layers the place of
    /// the layer it was; none for new fill. The change must be without faults.
    pub fn at_final_grade(&self) -> (SoilProfile, Vec<Option<usize>>) {
        let raise = self.raise();
        let mut layers = Vec::new();
        let mut places = Vec::new();
        if let Some(GradeChange::Raise(new)) = &self.grade_change
            && new.height.si() > LEAST_LAYER_M
        {
            layers.push(new_fill(*new));
            places.push(None);
        }
        for (i, layer) in self.layers.iter().enumerate() {
            let bottom = layer.bottom + raise;
            if self.grade_change.is_some() && bottom.si() <= LEAST_LAYER_M {
                continue;
            }
            layers.push(Layer {
                label: Some(Label(self.label(i))),
                top: (layer.top + raise).max(Length::ZERO),
                bottom,
                ..layer.clone()
            });
            places.push(Some(i));
        }
        let graded = SoilProfile {
            layers,
            water_depth: self.water_depth.map(|w| (w + raise).max(Length::ZERO)),
            pore_pressures: self.pore_pressures.as_ref().map(|p| moved(p, raise)),
            water_unit_weight: self.water_unit_weight,
            grade_change: None,
        };
        (graded, places)
    }
}

/// Pore pressures from final grade. What a cut takes away is left out; at final grade itself
/// there is no pressure.
fn moved(points: &[PorePressure], raise: Length) -> Vec<PorePressure> {
    let from_grade = points.iter().map(|p| PorePressure {
        depth: p.depth + raise,
        ..*p
    });
    let mut left: Vec<_> = from_grade.filter(|p| p.depth >= Length::ZERO).collect();
    let surface = PorePressure {
        depth: Length::ZERO,
        pressure: SoilStress::ZERO,
    };
    let dropped = left.len() < points.len();
    match left.first_mut() {
        Some(first) if first.depth == Length::ZERO => first.pressure = SoilStress::ZERO,
        _ if dropped => left.insert(0, surface),
        _ => {}
    }
    left
}

fn new_fill(raise: GradeRaise) -> Layer {
    Layer {
        label: Some(Label("new fill".to_owned())),
        tags: None,
        top: Length::ZERO,
        bottom: raise.height,
        unit_weight: Some(raise.unit_weight),
        dry_unit_weight: None,
        water_content_ratio: None,
        saturated_unit_weight: None,
        specific_gravity_ratio: None,
        hazards: None,
        soil: Soil::Fill(Fill::default()),
    }
}
