//! What is asked about the void form under a beam or slab. The ways to a heave are those of
//! `ground-heave`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::ground_heave::{GivenHeave, IceSegregation, PoreFreezing, SwellSource};
use crate::quantity::{AreaLoad, Length, LengthUnit, Size, StressUnit, UnitWeight, UnitWeightUnit};
use crate::text::Label;

/// A void form under the beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FrostVoidForm {
    /// Thickness of the form as placed; 10 to 1,000 mm.
    #[validate(range(min = Size::new(10.0, LengthUnit::Mm), max = Size::new(1000.0, LengthUnit::Mm)))]
    pub nominal_thickness: Size,
    /// Predicted heave of the ground under the form. Never assumed: without it the request
    /// is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub heave: Option<HeavePrediction>,
    /// What is left of the form once crushed; 0.40 of its thickness when left out, which is
    /// a rule of thumb.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub residual: Option<VoidResidual>,
    /// Clearance that must be left over the heave; 0 to 300 mm, 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = Size::new(300.0, LengthUnit::Mm)))]
    pub margin: Option<Size>,
    /// The concrete that the form carries until it sets. Left out, that is not looked at.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub wet_concrete: Option<WetConcrete>,
    /// The pressure at which the form is crushed, which it passes on to the beam. Never taken
    /// as nil: left out, the answer warns that it is not counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub crush: Option<FormCrush>,
}

/// What a form passes on while it is crushed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FormCrush {
    /// The pressure at which it is crushed.
    #[validate(nested)]
    pub pressure: CrushPressure,
    /// Width of the beam on the form; 0.05 to 5 m. Left out, the load along the beam is not
    /// known.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.05, LengthUnit::M), max = Length::new(5.0, LengthUnit::M)))]
    pub beam_width: Option<Length>,
    /// Length of beam that this pile carries; 0.1 to 30 m. That of `beam` when left out, and
    /// the same where both are sent; without either the tension on the pile is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(30.0, LengthUnit::M)))]
    pub tributary_length: Option<Length>,
}

/// The pressure at which a form is crushed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CrushPressure {
    /// The caller's own.
    Given(GivenCrush),
    /// From a test of the form.
    Tested(TestedCrush),
    /// What is left of it once the form has softened or rotted, by the caller's statement;
    /// only so may it be nil.
    Softened(SoftenedCrush),
}

validate_choice!(CrushPressure { Given = "given", Tested = "tested", Softened = "softened" });

/// A crush pressure without a test.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenCrush {
    /// Highest pressure until the form is crushed; 0.5 to 1,000 kPa.
    #[validate(range(min = AreaLoad::new(0.5, StressUnit::KPa), max = AreaLoad::new(1000.0, StressUnit::KPa)))]
    pub pressure: AreaLoad,
    /// Where it comes from.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub reference: Option<Label>,
}

/// A crush pressure from a test.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TestedCrush {
    /// Highest pressure until the form is crushed; 0.5 to 1,000 kPa.
    #[validate(range(min = AreaLoad::new(0.5, StressUnit::KPa), max = AreaLoad::new(1000.0, StressUnit::KPa)))]
    pub pressure: AreaLoad,
    /// The test it comes from.
    #[validate(nested)]
    pub reference: Label,
}

/// A crush pressure once the form has softened.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SoftenedCrush {
    /// Pressure that is left when the ground heaves; 0 to 1,000 kPa.
    #[validate(range(min = AreaLoad::ZERO, max = AreaLoad::new(1000.0, StressUnit::KPa)))]
    pub pressure: AreaLoad,
    /// What the statement rests on, such as a form that is wetted before it is built on.
    #[validate(nested)]
    pub reference: Label,
}

/// Predicted heave, by cause. The larger counts, not the sum: frost and swelling are not
/// taken to peak together.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HeavePrediction {
    /// By freezing.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub frost: Option<HeaveSource>,
    /// By swelling soil. The upper end of a range counts.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub swell: Option<SwellSource>,
}

/// Where a heave by freezing comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum HeaveSource {
    /// The caller's own.
    Given(GivenHeave),
    /// From the water in the ground, over the frost depth that this calculation uses.
    Calculated(CalculatedFreezing),
}

validate_choice!(HeaveSource { Given = "given", Calculated = "calculated" });

/// Heave by freezing from its parts; at least one of them is sent.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CalculatedFreezing {
    /// The water that is in the pores.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub in_situ: Option<PoreFreezing>,
    /// The water that is drawn to the front and makes lenses of ice.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub segregation: Option<IceSegregation>,
}

/// What is left of a form once crushed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum VoidResidual {
    /// As a share of its thickness.
    Share(ResidualShare),
    /// As tested, for this thickness.
    Tested(TestedResidual),
}

validate_choice!(VoidResidual { Share = "share", Tested = "tested" });

/// Residual as a share.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ResidualShare {
    /// Crushed over nominal thickness; 0 (a form that rots away) to 0.95.
    #[validate(range(min = 0.0, max = 0.95))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.95))]
    pub residual_ratio: f64,
}

/// Residual as tested.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TestedResidual {
    /// Thickness of the form once crushed, less than nominal; 0 to 950 mm.
    #[validate(range(min = Size::ZERO, max = Size::new(950.0, LengthUnit::Mm)))]
    pub crushed_thickness: Size,
    /// The test it comes from.
    #[validate(nested)]
    pub reference: Label,
}

/// Concrete that a form carries until it sets.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct WetConcrete {
    /// Depth of concrete over the form; 0.05 to 5 m.
    #[validate(range(min = Length::new(0.05, LengthUnit::M), max = Length::new(5.0, LengthUnit::M)))]
    pub depth: Length,
    /// Unit weight of wet concrete with its bars; 14 to 30 kN/m3, 150 lbf/ft3 when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = UnitWeight::new(14.0, UnitWeightUnit::KNPerM3), max = UnitWeight::new(30.0, UnitWeightUnit::KNPerM3)))]
    pub unit_weight: Option<UnitWeight>,
    /// Load the form is rated for by its maker; 0.5 to 1,000 kPa. Left out, the check is
    /// not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = AreaLoad::new(0.5, StressUnit::KPa), max = AreaLoad::new(1000.0, StressUnit::KPa)))]
    pub rated_load: Option<AreaLoad>,
}
