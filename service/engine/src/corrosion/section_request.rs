//! The sections that lose steel, as they are sent: form, coating, strength.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{Coat, LengthUnit, Size, SteelStress, StressUnit};
use crate::text::{Label, Tags};

/// A section of steel in the ground.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrodedSection {
    /// Name of the section; `1`, `2`, ... when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Its form before any loss. Whether the wall is the nominal one or the design wall is the
    /// caller's to decide.
    #[validate(nested)]
    pub form: CorrodedForm,
    /// What is on the steel; bare when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub coating: Option<SteelCoating>,
    /// Strength of the steel; with it what the section bears in tension after the loss. Not for
    /// a plate without a width.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub strength: Option<CorrodedStrength>,
}

/// Form of a section.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CorrodedForm {
    /// A round tube: its outer face always, its inner face unless it is sealed.
    RoundTube(CorrodedTube),
    /// A solid round bar or a wire, all round.
    RoundBar(CorrodedRoundBar),
    /// A solid square bar, all round.
    SquareBar(CorrodedSquareBar),
    /// A plate such as that of a helix, on both faces; its edges are told beside it.
    Plate(CorrodedPlate),
}

validate_choice!(CorrodedForm {
    RoundTube = "round_tube", RoundBar = "round_bar", SquareBar = "square_bar", Plate = "plate"
});

/// A round tube.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrodedTube {
    /// Outside diameter; 20 to 600 mm.
    #[validate(range(min = Size::new(20.0, LengthUnit::Mm), max = Size::new(600.0, LengthUnit::Mm)))]
    pub outside_diameter: Size,
    /// Wall thickness, at most half of it; 1 to 60 mm.
    #[validate(range(min = Size::new(1.0, LengthUnit::Mm), max = Size::new(60.0, LengthUnit::Mm)))]
    pub wall_thickness: Size,
    /// Whether the inside is sealed against water and air; `false` when left out, and the inner
    /// face then loses as much as the outer one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sealed_interior: Option<bool>,
}

/// A solid round bar or a wire.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrodedRoundBar {
    /// Diameter; 1 to 300 mm.
    #[validate(range(min = Size::new(1.0, LengthUnit::Mm), max = Size::new(300.0, LengthUnit::Mm)))]
    pub diameter: Size,
}

/// A solid square bar.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrodedSquareBar {
    /// Side, rounded corners not taken off; 5 to 300 mm.
    #[validate(range(min = Size::new(5.0, LengthUnit::Mm), max = Size::new(300.0, LengthUnit::Mm)))]
    pub side: Size,
}

/// A plate.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrodedPlate {
    /// Thickness; 1 to 100 mm.
    #[validate(range(min = Size::new(1.0, LengthUnit::Mm), max = Size::new(100.0, LengthUnit::Mm)))]
    pub thickness: Size,
    /// Width of a strip; 5 to 3,000 mm. Loss at its edges is not taken off. Left out, no area is
    /// given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::new(5.0, LengthUnit::Mm), max = Size::new(3000.0, LengthUnit::Mm)))]
    pub width: Option<Size>,
}

/// What is on the steel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SteelCoating {
    /// Nothing.
    Bare(BareSteel),
    /// Zinc of a known thickness on each face.
    Zinc(ZincCoat),
    /// Hot-dip zinc of the least average thickness that ASTM A123 asks for.
    ZincAstmA123(ZincByStandard),
    /// Powder; bare for every method but `acceptance_criteria`.
    Powder(PowderCoat),
}

validate_choice!(SteelCoating {
    Bare = "bare", Zinc = "zinc", ZincAstmA123 = "zinc_astm_a123", Powder = "powder"
});

/// No coating.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct BareSteel {}

/// A powder coating.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PowderCoat {}

/// Zinc of a known thickness.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ZincCoat {
    /// Thickness on each face; 5 to 500 um.
    #[validate(range(min = Coat::new(5.0, LengthUnit::Um), max = Coat::new(500.0, LengthUnit::Um)))]
    pub thickness: Coat,
    /// Where it comes from.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub reference: Option<Label>,
}

/// Zinc by the standard.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ZincByStandard {
    /// Row of its table. By the form when left out: tube `pipe_and_tubing`, bar `strip_and_bar`,
    /// plate `plate`. The thickness of the steel is wall, diameter, side or thickness.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub product: Option<ZincProduct>,
}

/// Products of the standard for zinc.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum ZincProduct {
    /// Structural shapes.
    StructuralShape,
    /// Strip and bar.
    StripAndBar,
    /// Plate.
    Plate,
    /// Pipe and tubing.
    PipeAndTubing,
}

/// Strength of the steel.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrodedStrength {
    /// Yield strength; 100 to 1,500 MPa.
    #[validate(range(min = SteelStress::new(100.0, StressUnit::MPa), max = SteelStress::new(1500.0, StressUnit::MPa)))]
    pub yield_strength: SteelStress,
    /// Resistance factor; 0.1 to 1. With it the factored strength is given too.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.1, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.1, maximum = 1))]
    pub resistance_factor: Option<f64>,
}
