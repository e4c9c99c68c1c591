//! How a pile's resistance is computed: every choice of method, with its default. No
//! equations here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{Length, LengthUnit};

/// Choice of methods; every member may be left out.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HelixMethods {
    /// Bearing factor N_c of a helix in clay or silt; `skempton_1951` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub undrained_bearing: Option<UndrainedBearing>,
    /// Bearing factor N_q of a helix in sand; `vesic_1973` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub drained_bearing: Option<DrainedBearing>,
    /// Shape and depth factors of footings in sand in compression; `none` when left out, as is
    /// usual for helices. With `published` the answer warns.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shape_depth_factors: Option<ShapeDepthFactors>,
    /// Whether the width term 0.5 gamma' D N_gamma 0.6 is added in sand in compression, gamma'
    /// the mean over one diameter below the helix, to which the soil must be known; `drop`
    /// when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width_term: Option<WidthTerm>,
    /// Reduction of the friction angle in the bearing factors for loose soil that fails in
    /// local shear; `none` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub local_shear: Option<LocalShear>,
    /// Limit on the effective stress in the N_q term; `none` when left out. The answer
    /// tells what a limit would be either way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stress_limit: Option<StressLimit>,
    /// Depth of soil, in helix diameters, whose bearing is averaged on the load side of
    /// each helix: below it in compression, above it in tension; 0 to 3, 2 when left out.
    /// 0 takes the soil in touch with the helix alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 3.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 3))]
    pub bearing_zone_ratio: Option<f64>,
    /// How the soils within the zone are taken together; `thickness_mean` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bearing_zone_rule: Option<BearingZoneRule>,
    /// Area of a helix that bears; `net` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub helix_area: Option<HelixArea>,
    /// Uplift of a helix in sand; `das_breakout` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub uplift_sand: Option<UpliftSand>,
    /// Share of the deep bearing 9 s_u that a helix in clay or silt keeps in tension; 0.5
    /// to 1, 1 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.5, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 1))]
    pub clay_tension_factor: Option<f64>,
    /// Depth ratio at which uplift in clay is called deep; a label only, it moves no
    /// number; `das_1980` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clay_critical_embedment: Option<ClayCriticalEmbedment>,
    /// Lateral stress on the cylinder between helices in sand in tension;
    /// `mitsch_clemence_1985` when left out. In compression it is always at rest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cylinder_lateral_stress: Option<CylinderLateralStress>,
    /// Depth above which the soil is given no credit beside its weight, such as the depth
    /// of frost or of seasonal change; 0 to 30 m, 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub no_credit_above: Option<Length>,
    /// Adhesion of clay and silt to the shaft above the top helix; `none` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub shaft_adhesion: Option<ShaftAdhesion>,
}

/// Bearing factor in clay and silt.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum UndrainedBearing {
    /// N_c = 6 (1 + 0.2 z/D), at most 9.
    #[serde(rename = "skempton_1951")]
    Skempton1951,
    /// N_c = 9 at any depth.
    FixedNine,
    /// N_c from the expansion of a cavity, by the reduced rigidity index of the soil.
    CavityExpansion(CavityExpansion),
}

validate_choice!(UndrainedBearing { CavityExpansion = "cavity_expansion" } plain { Skempton1951, FixedNine });

/// Expansion of a cavity in clay.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CavityExpansion {
    /// Reduced rigidity index I_rr: shear modulus over undrained strength, reduced for
    /// volume change; 10 to 500.
    #[validate(range(min = 10.0, max = 500.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 10, maximum = 500))]
    pub reduced_rigidity_ratio: f64,
}

/// Bearing factor in sand.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub enum DrainedBearing {
    /// N_q of Prandtl and Reissner without depth factor; N_gamma of Vesic.
    #[serde(rename = "vesic_1973")]
    Vesic1973,
    /// N_q of Prandtl and Reissner with Meyerhof's depth factor, which is held at its value
    /// for a depth of one diameter; N_gamma of Meyerhof.
    #[serde(rename = "meyerhof_1963")]
    Meyerhof1963,
    /// N_q of Prandtl and Reissner without depth factor; N_gamma of Hansen.
    #[serde(rename = "hansen_1970")]
    Hansen1970,
    /// N_q of Terzaghi. Has no closed N_gamma, so it cannot go with the width term.
    #[serde(rename = "terzaghi_1943")]
    Terzaghi1943,
    /// N_q as sent, for all sand and gravel, in compression and in the deep bearing of
    /// tension. Has no N_gamma, so it cannot go with the width term; N_c of a cohesion is that
    /// of Prandtl.
    #[serde(rename = "own")]
    Own(OwnBearing),
}

validate_choice!(DrainedBearing { Own = "own" } plain {
    Vesic1973, Meyerhof1963, Hansen1970, Terzaghi1943
});

/// The caller's own bearing factor.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnBearing {
    /// N_q; 1 to 200.
    #[validate(range(min = 1.0, max = 200.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 200))]
    pub bearing_factor: f64,
}

/// Shape and depth factors.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ShapeDepthFactors {
    /// None beside what the method itself says.
    None,
    /// Those of a circle that belong to `drained_bearing`, on N_q and on N_c of a cohesion:
    /// Vesic and Hansen with s and d of their own, Meyerhof with s and with d_c, Terzaghi with
    /// s_c = 1.3 alone, `own` with none. The width term keeps its 0.6. The depth factors of
    /// Vesic and Hansen fall where the depth passes one diameter, as published.
    Published,
}

/// Width term in sand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum WidthTerm {
    /// Left out, as is usual for a deep and narrow plate.
    Drop,
    /// Added in compression, with the N_gamma that belongs to the bearing factor.
    Include,
}

/// Reduction for local shear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum LocalShear {
    /// The friction angle as sent.
    None,
    /// Friction angle atan(2/3 tan phi) in the bearing factors, and two thirds of a cohesion.
    TwoThirds,
}

/// Limit on the effective stress in the N_q term.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum StressLimit {
    /// The stress at the helix.
    #[serde(rename = "none")]
    None,
    /// At most the stress at a depth of 10 helix diameters (loose sand).
    #[serde(rename = "usace_1991_loose")]
    Usace1991Loose,
    /// At most the stress at a depth of 20 helix diameters (dense sand).
    #[serde(rename = "usace_1991_dense")]
    Usace1991Dense,
}

/// How the soils within the zone are taken together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum BearingZoneRule {
    /// Bearing of each soil by its own law, averaged by thickness.
    ThicknessMean,
    /// Bearing of the weakest soil within the zone.
    Weakest,
}

/// Area of a helix that bears.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum HelixArea {
    /// Plate less shaft, for every helix.
    Net,
    /// Plate less shaft, but the whole plate for the lowest helix in compression; for a
    /// shaft whose tip is closed or plugged.
    BottomGross,
    /// The whole plate, for every helix.
    Gross,
}

/// Uplift of a helix in sand.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum UpliftSand {
    /// The lesser of N_q and the breakout factor F_q, which grows with depth up to a
    /// critical ratio; continuous.
    DasBreakout,
    /// From the critical depth ratio on, a share of the compression bearing; shallower, the
    /// breakout factor. Jumps at the critical ratio.
    NqTension(NqTension),
}

validate_choice!(UpliftSand { NqTension = "nq_tension" } plain { DasBreakout });

/// Deep uplift in sand as a share of the compression bearing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct NqTension {
    /// The share; 0.3 to 1, 0.7 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.3, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.3, maximum = 1))]
    pub tension_factor: Option<f64>,
}

/// Depth ratio at which uplift in clay is called deep.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ClayCriticalEmbedment {
    /// 0.107 s_u + 2.5 with s_u in kPa, at most 7.
    #[serde(rename = "das_1980")]
    Das1980,
    /// 4, from model screw piles in clay.
    FourDiameters,
}

/// Lateral stress on the cylinder in sand in tension.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CylinderLateralStress {
    /// K_u = 0.6 + m H/D up to the critical depth ratio.
    #[serde(rename = "mitsch_clemence_1985")]
    MitschClemence1985,
    /// K_0 = 1 - sin phi, as in compression.
    AtRest,
}

/// Adhesion on the shaft.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ShaftAdhesion {
    /// Not counted.
    None,
    /// alpha s_u on a round shaft; refused for a square one, which cuts a hole wider than
    /// itself.
    Alpha(AlphaAdhesion),
}

validate_choice!(ShaftAdhesion { Alpha = "alpha" } plain { None });

/// Adhesion as a share of the undrained strength.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AlphaAdhesion {
    /// Depth above which adhesion is not counted; 0 to 30 m, 1.5 m when left out. One
    /// diameter above the top helix is never counted either.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub ignored_depth: Option<Length>,
}
