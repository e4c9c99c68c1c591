//! What is asked of ground that settles, without the pile: load, friction, toe, settling depth,
//! strength of the steel, screening figures.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::friction_request::DragFrictionSource;
use crate::choice::validate_choice;
use crate::quantity::{Force, ForceUnit, Length, LengthUnit, Size};
use crate::text::Label;

/// Drag of settling ground on a shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragAsked {
    /// Permanent load Q on the pile, unfactored; 0 to 20 MN. Live load is left out: it and drag
    /// do not act together.
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub permanent_load: Force,
    /// Friction between soil and shaft.
    #[validate(nested)]
    pub friction: DragFrictionSource,
    /// Resistance at the toe. Needed for the neutral plane from the balance of forces.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub toe: Option<DragToe>,
    /// How deep the ground settles, and why. With it every helix that bears is checked.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub settling: Option<SettlingGround>,
    /// Which drag force the steel is judged by. Left out: `fill_base` where `settling` is sent,
    /// else `neutral_plane`. Where both can be found both are shown.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<DragMethod>,
    /// What the steel bears. Left out, the steel is not judged and the verdict is
    /// `provisional`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub structural: Option<DragStructural>,
    /// Figures of the site to hold against the usual triggers for a look at drag.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub screening: Option<DragScreening>,
}

/// Which drag force the steel is judged by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DragMethod {
    /// The depth at which the load from above and the resistance from below are equal.
    NeutralPlane,
    /// The neutral plane is taken at the base of the settling ground.
    FillBase,
}

impl DragAsked {
    /// The method in force.
    pub fn method(&self) -> DragMethod {
        self.method.unwrap_or(match self.settling {
            Some(_) => DragMethod::FillBase,
            None => DragMethod::NeutralPlane,
        })
    }
}

/// Resistance at the toe.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragToe {
    /// Ultimate resistance of the toe, of all helices together for a helical pile.
    #[validate(nested)]
    pub resistance: DragToeResistance,
    /// Part of it that is mobilised; 0 to 1, 1 when left out, which gives the deepest neutral
    /// plane and the largest drag force.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub mobilised_ratio: Option<f64>,
}

/// Where the resistance of the toe comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum DragToeResistance {
    /// The caller's own, such as the ultimate compression of `helix-capacity`.
    Given(GivenToe),
}

validate_choice!(DragToeResistance { Given = "given" });

/// Resistance of the toe as sent.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GivenToe {
    /// Ultimate, unfactored; 0 to 20 MN.
    #[validate(range(min = Force::ZERO, max = Force::new(20_000.0, ForceUnit::KN)))]
    pub ultimate: Force,
    /// Where it comes from.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub reference: Option<Label>,
}

/// Ground that settles.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SettlingGround {
    /// Depth of the base of the settling ground below final grade, above the toe; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub depth: Length,
    /// Why it settles.
    #[validate(nested)]
    pub cause: SettlingCause,
}

/// Why ground settles.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SettlingCause {
    /// Fill that settles under its own weight, or loads what is below it.
    Fill(SettlingFill),
    /// Soil that collapses when it is wetted.
    CollapseOnWetting(SettlingCollapse),
    /// The water table is drawn down.
    Drawdown(SettlingDrawdown),
}

validate_choice!(SettlingCause {
    Fill = "fill", CollapseOnWetting = "collapse_on_wetting", Drawdown = "drawdown"
});

/// Fill that settles.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SettlingFill {}

/// Ground that settles because water is drawn down.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SettlingDrawdown {}

/// Soil that collapses when it is wetted.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SettlingCollapse {
    /// Collapse potential by an oedometer test, as a part of the thickness: 0.05 for 5 %; 0 to
    /// 0.5. With it the class and the settlement are given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 0.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.5))]
    pub collapse_potential_ratio: Option<f64>,
    /// Thickness that collapses; 0.01 to 100 m, the settling depth when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.01, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub collapsing_thickness: Option<Length>,
}

/// What the steel of the pile bears in compression, above the neutral plane where drag acts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum DragStructural {
    /// Factored permanent load and drag against the factored resistance of the steel.
    LimitStates(DragLimitStates),
    /// Permanent load and drag against the allowable strength of the steel.
    AllowableStress(DragAllowableStress),
}

validate_choice!(DragStructural { LimitStates = "limit_states", AllowableStress = "allowable_stress" });

/// Steel by limit states.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragLimitStates {
    /// Nominal axial resistance Pn of the shaft with its couplings, unfactored; 1 N to 50 MN.
    #[validate(range(min = Force::new(1.0, ForceUnit::N), max = Force::new(50_000.0, ForceUnit::KN)))]
    pub nominal_resistance: Force,
    /// Resistance factor phi of the steel; 0.1 to 1. The caller's: it depends on the section
    /// and the code.
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub resistance_factor: f64,
    /// Load factor on the permanent load; 1 to 2, 1.25 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub permanent_load_factor: Option<f64>,
    /// Load factor on the drag force; 1 to 2, 1.10 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 2.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 2))]
    pub drag_load_factor: Option<f64>,
}

/// Steel by allowable stress.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragAllowableStress {
    /// Allowable axial strength of the shaft with its couplings; 1 N to 50 MN.
    #[validate(range(min = Force::new(1.0, ForceUnit::N), max = Force::new(50_000.0, ForceUnit::KN)))]
    pub allowable_strength: Force,
}

/// Figures of the site to hold against the usual triggers; those that are sent are looked at.
/// They decide nothing.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragScreening {
    /// Settlement of the ground surface in all; 0 to 10 m. Trigger 4 in.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = Size::new(10.0, LengthUnit::M)))]
    pub ground_settlement: Option<Size>,
    /// Settlement of the ground after the pile is loaded; 0 to 10 m. Trigger 0.4 in.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = Size::new(10.0, LengthUnit::M)))]
    pub settlement_after_construction: Option<Size>,
    /// Height of the fill placed; 0 to 100 m. Trigger 6 ft.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub fill_height: Option<Length>,
    /// Thickness of compressible ground; 0 to 100 m. Trigger 30 ft.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub compressible_thickness: Option<Length>,
    /// By how much the water table is drawn down; 0 to 100 m. Trigger 12 ft.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub water_drawdown: Option<Length>,
}
