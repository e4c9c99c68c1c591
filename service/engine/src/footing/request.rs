//! What `footing-bearing` is asked: the footing with its soil, or a table of factors. The
//! choices stand in `options.rs`, the soil in `soil.rs`; no equation is here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::options::{
    FootingBasis, FootingDemand, FootingFactorUse, FootingLocalShear, FootingMethod,
};
use super::soil::FootingSoil;
use crate::choice::validate_choice;
use crate::quantity::{Angle, Length, LengthUnit};
use crate::text::{Label, Tags};

/// Bearing capacity of one footing, pad or crib under a vertical, central load, by one or
/// more theories; or the bearing factors of the theories by friction angle and depth; or
/// both. An eccentric or inclined load, a slope, a tilted base and layers are not covered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = FootingBearingRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of the footing; echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Theories to use, each once; 1 to 5. Left out: `skempton_1951` where the soil is
    /// undrained and for the table by depth, else `vesic_1973`. `skempton_1951` is refused
    /// for a drained soil.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 5))]
    pub methods: Option<Vec<FootingMethod>>,
    /// Shape factors; `include` when left out. Left out of the calculation, every shape
    /// bears as a strip does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shape_factors: Option<FootingFactorUse>,
    /// Depth factors; `include` when left out. They count the strength of the soil above the
    /// base: leave them out where that is fill, backfill or may be dug away.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub depth_factors: Option<FootingFactorUse>,
    /// Reduction of the strength for local shear; `none` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub local_shear: Option<FootingLocalShear>,
    /// The footing; goes with `soil`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub footing: Option<Footing>,
    /// The soil under and beside it; goes with `footing`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub soil: Option<FootingSoil>,
    /// Format and factor of the design. Needed with `demand`; without it only ultimate
    /// capacities are given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub design_basis: Option<FootingBasis>,
    /// Load the footing must carry. Without it nothing is judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub demand: Option<FootingDemand>,
    /// Table of the bearing factors.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub factor_table: Option<FactorTable>,
}

/// The footing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct Footing {
    /// Shape of its base.
    #[validate(nested)]
    pub shape: FootingShape,
    /// Depth of the base below the lowest ground beside it; 0 to 20 m, and at most 5 widths
    /// except for `skempton_1951`.
    #[validate(range(min = Length::ZERO, max = Length::new(20.0, LengthUnit::M)))]
    pub depth: Length,
}

/// Shape of a footing's base.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum FootingShape {
    /// A long strip; its loads are per length.
    Strip(FootingStrip),
    /// A rectangle.
    Rectangle(FootingRectangle),
    /// A square.
    Square(FootingSquare),
    /// A circle.
    Circle(FootingCircle),
}

validate_choice!(FootingShape {
    Strip = "strip", Rectangle = "rectangle", Square = "square", Circle = "circle"
});

/// A long strip.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingStrip {
    /// Width; 0.1 to 20 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(20.0, LengthUnit::M)))]
    pub width: Length,
}

/// A rectangle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingRectangle {
    /// Width, the shorter side; 0.1 to 20 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(20.0, LengthUnit::M)))]
    pub width: Length,
    /// Length, the longer side; 0.1 to 1,000 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(1000.0, LengthUnit::M)))]
    pub length: Length,
}

/// A square.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingSquare {
    /// Side; 0.1 to 20 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(20.0, LengthUnit::M)))]
    pub width: Length,
}

/// A circle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FootingCircle {
    /// Diameter; 0.1 to 20 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(20.0, LengthUnit::M)))]
    pub diameter: Length,
}

/// Which bearing factors are tabulated; at least one list.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct FactorTable {
    /// Friction angles, each 0 to 45 degrees; 1 to 100 of them. Gives N_c, N_q and N_gamma of
    /// every method but `skempton_1951`, after the reduction for local shear if it is asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 100))]
    pub friction_angles: Option<Vec<Angle>>,
    /// Depths over width, each 0 to 50; 1 to 100 of them. Gives N_c of `skempton_1951` with
    /// its shape and depth factors in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 100))]
    pub depth_ratios: Option<Vec<f64>>,
    /// Width over length in the table by depth: 0 a strip, 1 a square or circle; 1 when left
    /// out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 1))]
    pub width_to_length_ratio: Option<f64>,
}
