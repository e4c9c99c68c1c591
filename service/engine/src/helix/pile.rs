//! The pile as this folder needs it: a shaft with helices at depths. What any of them
//! carries is not here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Length, LengthUnit, Size};
use crate::shaft::Shaft;
use crate::text::{Label, Tags};

/// A shaft with its helices.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HelixPile {
    /// Name of the pile; `pile` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Cross-section of the shaft at the helices.
    #[validate(nested)]
    pub shaft: Shaft,
    /// The helices, in any order, at distinct depths; 1 to 8.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 8))]
    pub helices: Vec<HelixPlate>,
}

/// One helix.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HelixPlate {
    /// Name of the helix; `1`, `2`, ... from the top when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Outside diameter of the plate, larger than the shaft (the diagonal of a square one); 100
    /// to 1,500 mm.
    #[validate(range(min = Size::new(100.0, LengthUnit::Mm), max = Size::new(1500.0, LengthUnit::Mm)))]
    pub diameter: Size,
    /// Vertical depth of the plate below final grade, also where the pile is inclined;
    /// 0.1 to 100 m and inside the soil profile.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub depth: Length,
}

/// Direction of the load on the pile.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum AxialDirection {
    /// The pile is pushed down.
    Compression,
    /// The pile is pulled up.
    Tension,
}

impl AxialDirection {
    /// Name on the wire.
    pub const fn name(self) -> &'static str {
        match self {
            AxialDirection::Compression => "compression",
            AxialDirection::Tension => "tension",
        }
    }
}

impl HelixPile {
    /// Name of the pile.
    pub fn name(&self) -> &str {
        self.label.as_ref().map_or("pile", Label::as_str)
    }
}
