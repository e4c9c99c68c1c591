//! Strengths found from tests, stress history or an index, as an answer shows them.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::spt::SptForm;
use crate::quantity::{Angle, Length, SoilStress};
use crate::source::SourceNote;

/// Strength of a layer that was not sent but found, with everything it rests on.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DerivedStrength {
    /// Label of the layer.
    pub layer: String,
    /// The method that gives the strength, as in `methods`.
    pub correlation: Cow<'static, str>,
    /// Depth at which the stresses are taken.
    pub depth: Length,
    /// Vertical total stress there.
    pub total_stress: SoilStress,
    /// Vertical effective stress there.
    pub effective_stress: SoilStress,
    /// Undrained strength found, in clay and silt.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub undrained_strength: Option<SoilStress>,
    /// Friction angle found and used, in sand and gravel.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub friction_angle: Option<Angle>,
    /// The angle before it was held at 45 degrees, where it was.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub friction_angle_before_limit: Option<Angle>,
    /// How a blow count was treated.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub penetration: Option<DerivedPenetration>,
    /// How the readings of a cone were treated.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cone: Option<DerivedCone>,
    /// Ratios between effective stress and strength.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub stress_history: Option<DerivedStressHistory>,
    /// How a relative density was treated.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub density: Option<DerivedDensity>,
    /// How far the true strength may lie off, and on what that rests.
    pub scatter: Cow<'static, str>,
    /// Where the relation comes from.
    pub source: SourceNote,
}

/// A blow count on its way to a strength.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DerivedPenetration {
    /// As sent.
    pub blow_count: f64,
    /// What had been done to it.
    pub form: SptForm,
    /// Energy ratio in force, of a raw count.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub energy_ratio: Option<f64>,
    /// Borehole correction in force, of a raw count.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub borehole_factor: Option<f64>,
    /// Rod correction in force, of a raw count.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub rod_factor: Option<f64>,
    /// Sampler correction in force, of a raw count.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub sampler_factor: Option<f64>,
    /// N_60; not known where (N_1)_60 was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub n60_count: Option<f64>,
    /// N_60 corrected for silty sand below water, where asked.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub silty_sand_count: Option<f64>,
    /// Overburden correction C_N, where the relation takes (N_1)_60 and it was not sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub overburden_factor: Option<f64>,
    /// (N_1)_60, where the relation takes it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub n1_60_count: Option<f64>,
    /// The count the relation was used with: the last of the above, at most the end of its
    /// range.
    pub used_count: f64,
    /// Plasticity index, in clay and silt.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub plasticity_index_ratio: Option<f64>,
    /// alpha' by plasticity index, in clay and silt.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub strength_factor: Option<f64>,
}

/// Readings of a cone on their way to a strength.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DerivedCone {
    /// q_c, where sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cone_resistance: Option<SoilStress>,
    /// u_2, where sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub pore_pressure: Option<SoilStress>,
    /// Net area ratio, where sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub area_ratio: Option<f64>,
    /// q_t.
    pub total_resistance: SoilStress,
    /// f_s, where sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub sleeve_friction: Option<SoilStress>,
    /// N_kt in force, in clay and silt.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub cone_factor: Option<f64>,
    /// The normalised resistance the relation takes, in sand: (q_t/p_a)/sqrt(s'_v/p_a) or
    /// q_t/s'_v.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub normalised_resistance_ratio: Option<f64>,
    /// Soil behaviour type index I_c, where f_s was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub behaviour_index_ratio: Option<f64>,
}

/// Ratios between effective stress and undrained strength.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DerivedStressHistory {
    /// Plasticity index, where sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub plasticity_index_ratio: Option<f64>,
    /// Strength over effective stress of the normally consolidated soil, in force.
    pub strength_ratio: f64,
    /// Overconsolidation ratio.
    pub overconsolidation_ratio: f64,
    /// Exponent m in force.
    pub exponent_factor: f64,
}

/// A relative density on its way to a friction angle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DerivedDensity {
    /// Relative density.
    pub relative_density_ratio: f64,
    /// Friction angle at constant volume.
    pub critical_friction_angle: Angle,
    /// Mean effective stress at failure in force.
    pub mean_stress: SoilStress,
    /// Relative dilatancy index I_R in force, 0 to 4.
    pub dilatancy_ratio: f64,
}
