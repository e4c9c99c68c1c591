//! The shaft of a pile: its shape and size. Strength of steel is not here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::math::PI;
use crate::quantity::{Area, LengthUnit, Size};

/// Cross-section of the shaft.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Shaft {
    /// A round pipe or bar.
    Round(RoundShaft),
    /// A solid square bar.
    Square(SquareShaft),
}

validate_choice!(Shaft { Round = "round", Square = "square" });

/// A round pipe or bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RoundShaft {
    /// Outside diameter; 20 to 600 mm.
    #[validate(range(min = Size::new(20.0, LengthUnit::Mm), max = Size::new(600.0, LengthUnit::Mm)))]
    pub outside_diameter: Size,
    /// Wall thickness; 1 to 60 mm. Left out, the shaft is taken as given by its outside
    /// only and anything that needs the steel area is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::new(1.0, LengthUnit::Mm), max = Size::new(60.0, LengthUnit::Mm)))]
    pub wall_thickness: Option<Size>,
}

/// A solid square bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SquareShaft {
    /// Side; 20 to 300 mm.
    #[validate(range(min = Size::new(20.0, LengthUnit::Mm), max = Size::new(300.0, LengthUnit::Mm)))]
    pub side: Size,
    /// Diagonal between opposite corners as measured; rounded corners make it shorter
    /// than side x sqrt 2, which is used when it is left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::new(20.0, LengthUnit::Mm), max = Size::new(430.0, LengthUnit::Mm)))]
    pub diagonal: Option<Size>,
}

impl Shaft {
    /// Area the shaft takes out of a helix. A = pi d2/4 (round), a2 (square).
    pub fn gross_area(&self) -> Area {
        Area::from_si(match self {
            Shaft::Round(r) => PI * r.outside_diameter.si() * r.outside_diameter.si() / 4.0,
            Shaft::Square(s) => s.side.si() * s.side.si(),
        })
    }

    /// Area of the steel, where the wall of a round shaft is known: pi t (d - t), or a2 of a
    /// solid square, rounded corners not taken off.
    pub fn steel_area(&self) -> Option<Area> {
        match self {
            Shaft::Round(r) => r.wall_thickness.map(|wall| {
                let t = wall.si();
                Area::from_si(PI * t * (r.outside_diameter.si() - t))
            }),
            Shaft::Square(s) => Some(Area::from_si(s.side.si() * s.side.si())),
        }
    }

    /// Perimeter in contact with the soil. p = pi d (round), 4a (square).
    pub fn perimeter(&self) -> Size {
        match self {
            Shaft::Round(r) => r.outside_diameter * PI,
            Shaft::Square(s) => s.side * 4.0,
        }
    }

    /// Width across the shaft: outside diameter, or side.
    pub fn width(&self) -> Size {
        match self {
            Shaft::Round(r) => r.outside_diameter,
            Shaft::Square(s) => s.side,
        }
    }

    /// Effective diameter for torque: outside diameter, or diagonal between corners.
    pub fn effective_diameter(&self) -> Size {
        match self {
            Shaft::Round(r) => r.outside_diameter,
            Shaft::Square(s) => s.diagonal.unwrap_or(s.side * std::f64::consts::SQRT_2),
        }
    }
}
