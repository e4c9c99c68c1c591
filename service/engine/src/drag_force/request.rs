//! What `drag-force` is asked of a pile: its shaft and its depths. What is asked of the ground
//! is in `asked`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::asked::DragAsked;
use crate::quantity::{Length, LengthUnit};
use crate::shaft::Shaft;
use crate::text::{Label, Tags};

/// Ground that settles round the shaft of one pile and drags it down.
///
/// All depths count down from final grade. The shaft touches soil from `head_depth`, or from
/// grade where the head stands above it, down to `toe_depth`. Drag is a check of the steel
/// only: it is never added to the load that soil and helices must carry, and is never combined
/// with live load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = DragForceRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of the pile; `pile` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Cross-section of the shaft; its perimeter is pi d of a round one and 4 a of a square
    /// one. Needed with friction by layers.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub shaft: Option<Shaft>,
    /// Depth of the pile's head below final grade, negative where it stands above; -5 to 10 m,
    /// 0 when left out. The shaft touches soil from max(`head_depth`, 0) down.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(-5.0, LengthUnit::M), max = Length::new(10.0, LengthUnit::M)))]
    pub head_depth: Option<Length>,
    /// Depth of the toe below final grade, where all of the toe's resistance is taken to act:
    /// the deepest helix of a helical pile; 0.1 to 100 m. Friction on the shaft counts down to
    /// here.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub toe_depth: Length,
    /// The helices that bear, to be checked against the settling depth; 1 to 8.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 8))]
    pub helices: Option<Vec<DragHelix>>,
    /// The load, the ground, and what the steel bears.
    #[validate(nested)]
    pub drag: DragAsked,
}

/// A helix that bears.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DragHelix {
    /// Name of the helix; `1`, `2`, ... in the order sent when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Depth of the plate below final grade, at or above the toe; 0.1 to 100 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub depth: Length,
}
