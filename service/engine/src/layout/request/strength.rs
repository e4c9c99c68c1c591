//! What is asked of the beams beside their loads: their section, how factored strengths meet
//! service loads, and how far they may bend. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::concrete::ReinforcedRectangle;
use crate::quantity::{LengthUnit, Size};

const DEFLECTION_MIN: Size = Size::new(0.01, LengthUnit::Mm);
const DEFLECTION_MAX: Size = Size::new(1_000.0, LengthUnit::Mm);

/// The section of a beam, from which its strength and rigidity follow.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum BeamSection {
    /// A rectangle of reinforced concrete.
    ReinforcedRectangle(ReinforcedRectangle),
}

validate_choice!(BeamSection { ReinforcedRectangle = "reinforced_rectangle" });

/// How strengths at the level of factored loads are compared with service loads.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct StrengthCheck {
    /// The caller's overall load factor: moments and shears of the service combinations are
    /// multiplied by it before they meet the strength of a section; 1 to 3.
    #[validate(range(min = 1.0, max = 3.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1.0, maximum = 3.0))]
    pub load_factor: f64,
}

/// How far a beam may bend between its piles.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum DeflectionLimit {
    /// By a part of the span.
    SpanOver(SpanOver),
    /// By a length.
    Absolute(AbsoluteDeflection),
}

validate_choice!(DeflectionLimit { SpanOver = "span_over", Absolute = "absolute" });

/// A part of the span.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SpanOver {
    /// Span over the deflection that is allowed, such as 360; 10 to 10,000. The span of a free
    /// end counts as twice its length.
    #[validate(range(min = 10.0, max = 10_000.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 10.0, maximum = 10000.0))]
    pub span_to_deflection_ratio: f64,
}

/// A length.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct AbsoluteDeflection {
    /// The deflection that is allowed; 0.01 to 1,000 mm.
    #[validate(range(min = DEFLECTION_MIN, max = DEFLECTION_MAX))]
    pub deflection: Size,
}
