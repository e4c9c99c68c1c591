//! Where the stiffness of a pile comes from when the caller has no number for it. Types
//! only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::helix::{HelixMethods, HelixPile};
use crate::quantity::{Force, ForceUnit, Length, LengthUnit, Size, SteelStress, StressUnit};
use crate::soil::SoilProfile;

const LOAD_MIN: Force = Force::new(0.01, ForceUnit::KN);
const LOAD_MAX: Force = Force::new(10_000.0, ForceUnit::KN);
const MOVEMENT_MIN: Size = Size::new(0.01, LengthUnit::Mm);
const MOVEMENT_MAX: Size = Size::new(500.0, LengthUnit::Mm);

/// Where the stiffness of a pile comes from. It stands wherever `pile_stiffness` would: for
/// every pile and pile type that has no stiffness of its own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
// one stands in a request, so its size does not matter
#[allow(clippy::large_enum_variant)]
pub enum PileSupport {
    /// Estimated from the ground, the shaft and the helices, as `head_movement` of
    /// `helix-capacity` does.
    FromSoil(SupportFromSoil),
    /// A load and the movement of the head that was measured under it.
    FromTest(SupportFromTest),
}

validate_choice!(PileSupport { FromSoil = "from_soil", FromTest = "from_test" });

/// A pile in its ground: load over movement of its head in compression.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SupportFromSoil {
    /// The ground.
    #[validate(nested)]
    pub soil: SoilProfile,
    /// The pile; the wall of a round shaft is needed.
    #[validate(nested)]
    pub pile: HelixPile,
    /// Choice of methods; the defaults when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub methods: Option<HelixMethods>,
    /// Service load at which load over movement is taken, at most the ultimate resistance of
    /// the ground; 0.01 to 10,000 kN. Left out: the allowable capacity in compression of
    /// `pile_capacity`, and half of the ultimate resistance where that is factored or not
    /// sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = LOAD_MIN, max = LOAD_MAX))]
    pub working_load: Option<Force>,
    /// Height of the head of the pile above final grade; -30 to 10 m, 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(-30.0, LengthUnit::M), max = Length::new(10.0, LengthUnit::M)))]
    pub head_height: Option<Length>,
    /// Elastic modulus of the shaft; 50 to 250 GPa, 200 GPa when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SteelStress::new(50_000.0, StressUnit::MPa), max = SteelStress::new(250_000.0, StressUnit::MPa)))]
    pub elastic_modulus: Option<SteelStress>,
    /// Failure ratio of the hyperbola of a helix; 0 to 0.95, 0.75 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 0.95))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.95))]
    pub failure_ratio: Option<f64>,
    /// Movement of a helix at its ultimate over its diameter, in sand and gravel; 0.02 to
    /// 0.3, 0.1 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.02, max = 0.3))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.02, maximum = 0.3))]
    pub coarse_movement_ratio: Option<f64>,
    /// The same in clay and silt; 0.02 to 0.3, 0.05 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.02, max = 0.3))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.02, maximum = 0.3))]
    pub fine_movement_ratio: Option<f64>,
}

/// Load over movement of a pile that was tested.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SupportFromTest {
    /// Load on the head, near the service load; 0.01 to 10,000 kN.
    #[validate(range(min = LOAD_MIN, max = LOAD_MAX))]
    pub load: Force,
    /// Movement of the head under it; 0.01 to 500 mm.
    #[validate(range(min = MOVEMENT_MIN, max = MOVEMENT_MAX))]
    pub movement: Size,
}
