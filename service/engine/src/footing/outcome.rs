//! What `footing-bearing` answers.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::options::{FootingFactorUse, FootingLocalShear, FootingMethod, FootingPressureKind};
use crate::quantity::{Angle, Area, Force, Length, LineLoad, SoilStress, UnitWeight};
use crate::source::SourceNote;
use crate::text::{Label, Tags};

/// Bearing capacity of the footing, theory by theory, and tables of factors.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = FootingBearingOutcome))]
pub struct Outcome {
    /// Name of the footing, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub label: Option<Label>,
    /// Codes, as sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tags: Option<Tags>,
    /// Choices in force, defaults filled in.
    pub settings: FootingSettings,
    /// The base and the stresses about it, where a footing was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub base: Option<FootingBase>,
    /// Capacity by each theory, in the order asked.
    pub capacities: Vec<FootingCapacity>,
    /// The lowest of them, which is the one that is judged.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub lowest: Option<FootingLowest>,
    /// Factor of the design in force.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design_basis: Option<FootingBasisUsed>,
    /// The pressure the load makes, where one was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub demand_pressure: Option<SoilStress>,
    /// Bearing factors by friction angle, one table a method; empty where none was asked.
    pub factor_tables: Vec<FrictionFactorTable>,
    /// Bearing factor in clay by depth; empty where it was not asked.
    pub depth_table: Vec<DepthFactorRow>,
    /// What the capacities leave out.
    pub not_included: Vec<Cow<'static, str>>,
}

/// Choices in force.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FootingSettings {
    /// Shape factors.
    pub shape_factors: FootingFactorUse,
    /// Depth factors.
    pub depth_factors: FootingFactorUse,
    /// Reduction for local shear.
    pub local_shear: FootingLocalShear,
}

/// The base of the footing and the stresses about it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FootingBase {
    /// Width, side or diameter.
    pub width: Length,
    /// Area; left out for a strip.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub area: Option<Area>,
    /// Width over length: 0 for a strip, 1 for a square and a circle.
    pub width_to_length_ratio: f64,
    /// Depth over width.
    pub depth_ratio: f64,
    /// Whether the stresses are effective or total.
    pub stress_kind: FootingStressKind,
    /// Overburden at the level of the base, of that kind.
    pub overburden: SoilStress,
    /// Mean effective unit weight within one width below the base; drained soil only.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub unit_weight_below: Option<UnitWeight>,
}

/// Kind of stress in the capacities.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FootingStressKind {
    /// Effective, for a drained soil: pore pressure at the base is not in the gross figures.
    Effective,
    /// Total, for an undrained soil.
    Total,
}

/// Capacity by one theory.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FootingCapacity {
    /// The theory.
    pub method: FootingMethod,
    /// Friction angle in its factors, reduced for local shear if that was asked.
    pub friction_angle: Angle,
    /// Cohesion or undrained strength in it, reduced likewise.
    pub cohesion: SoilStress,
    /// c N_c s_c d_c.
    pub cohesion_term: FootingTerm,
    /// Overburden times N_q s_q d_q.
    pub overburden_term: FootingTerm,
    /// 0.5 gamma' B N_gamma s_gamma d_gamma.
    pub width_term: FootingTerm,
    /// N_gamma was read between two rows of a table.
    pub width_factor_interpolated: bool,
    /// Ultimate pressure on the base: the sum of the terms.
    pub ultimate_gross: SoilStress,
    /// The same less the overburden.
    pub ultimate_net: SoilStress,
    /// The ultimate pressures times the area, or per length of a strip.
    pub ultimate_load: FootingLoads,
    /// What may be used on the design basis.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub design: Option<FootingDesign>,
}

/// One term of the bearing capacity.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FootingTerm {
    /// Bearing factor: N_c, N_q or N_gamma.
    pub bearing_factor: f64,
    /// Shape factor.
    pub shape_factor: f64,
    /// Depth factor.
    pub depth_factor: f64,
    /// Shape and depth together: their product, or s + d - 1 in the theories of Hansen and
    /// Vesic at phi = 0.
    pub correction_factor: f64,
    /// The term.
    pub pressure: SoilStress,
}

/// Loads of a base: forces, or loads per length of a strip.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FootingLoads {
    /// Gross force; not for a strip.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub gross: Option<Force>,
    /// Net force; not for a strip.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub net: Option<Force>,
    /// Gross load per length of a strip.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub gross_line: Option<LineLoad>,
    /// Net load per length of a strip.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub net_line: Option<LineLoad>,
}

/// Pressure that may be used.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FootingDesign {
    /// Allowable pressure or factored resistance.
    pub kind: FootingDesignKind,
    /// For a gross load.
    pub gross: SoilStress,
    /// For a net load; 0 where the overburden alone uses it up.
    pub net: SoilStress,
    /// The same times the area, or per length of a strip.
    pub load: FootingLoads,
}

/// What a design pressure may be compared with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum FootingDesignKind {
    /// Ultimate over a safety factor; for unfactored loads.
    Allowable,
    /// Ultimate times a resistance factor; for factored loads.
    Factored,
}

/// The lowest of the theories asked.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FootingLowest {
    /// The theory; the first of equals.
    pub method: FootingMethod,
    /// Its ultimate gross pressure.
    pub ultimate_gross: SoilStress,
    /// Highest over lowest ultimate gross pressure of the theories asked.
    pub spread_ratio: f64,
}

/// Factor of the design in force.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FootingBasisUsed {
    /// Safety factor, in allowable-stress design.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub safety_factor: Option<f64>,
    /// Resistance factor, in limit-states design.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub resistance_factor: Option<f64>,
    /// The pressure it is applied to.
    pub applied_to: FootingPressureKind,
    /// Where the factor comes from.
    pub source: SourceNote,
}

/// Bearing factors of one theory by friction angle.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrictionFactorTable {
    /// The theory.
    pub method: FootingMethod,
    /// One row an angle, in the order asked.
    pub rows: Vec<FrictionFactorRow>,
}

/// Bearing factors at one friction angle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FrictionFactorRow {
    /// The angle asked.
    pub friction_angle: Angle,
    /// The angle used, reduced for local shear if that was asked.
    pub used_friction_angle: Angle,
    /// N_c.
    pub cohesion_factor: f64,
    /// N_q.
    pub overburden_factor: f64,
    /// N_gamma.
    pub width_factor: f64,
    /// N_gamma was read between two rows of a table.
    pub width_factor_interpolated: bool,
}

/// Bearing factor in clay at one depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DepthFactorRow {
    /// Depth over width.
    pub depth_ratio: f64,
    /// Shape factor.
    pub shape_factor: f64,
    /// Depth factor.
    pub depth_factor: f64,
    /// N_c with both in it.
    pub cohesion_factor: f64,
}
