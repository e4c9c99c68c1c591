//! Questions beside the one depth of the pile as sent: a curve over depth, the least depth
//! that meets every rule, the lightest of several sets of helices, the torque to expect.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{Length, LengthUnit, Mass, MassUnit, Size};
use crate::shaft::Shaft;
use crate::text::{Label, Tags};
use crate::torque::TorqueFactorChoice;

/// Capacities of the pile, its helices as far apart as sent, with its lowest helix at equal
/// steps of depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DepthCurve {
    /// First depth of the lowest helix; 0.1 to 100 m. The top helix must be at least 0.1 m
    /// deep there.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub from: Length,
    /// Last depth of the lowest helix, below `from`; up to 100 m. The soil must be known as
    /// far as the pile needs it there, and no hazardous ground may be met on the way.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub to: Length,
    /// How many depths, both ends included; 2 to 500.
    #[validate(range(min = 2, max = 500))]
    #[cfg_attr(feature = "openapi", schema(minimum = 2, maximum = 500))]
    pub depth_count: u32,
    /// Whether the answer lists every depth; `false` when left out, which answers a summary.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub points: Option<bool>,
}

/// The least depth of the lowest helix at which the pile meets its demand and every rule
/// together. Needs `demand`.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct MinimumDepth {
    /// Depth of the lowest helix from which to search; up to 100 m. Left out: where the top
    /// helix is 0.1 m deep.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub from: Option<Length>,
    /// Depth of the lowest helix down to which to search; up to 100 m. Left out: as deep as
    /// the soil is known and neither rock nor hazardous ground is met.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(100.0, LengthUnit::M)))]
    pub to: Option<Length>,
    /// Rules of embedment.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub embedment: Option<EmbedmentRules>,
}

/// Rules of embedment that the pile must meet.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = HelixEmbedmentRules))]
#[serde(deny_unknown_fields)]
pub struct EmbedmentRules {
    /// Least depth of the top helix, such as the depth of frost, of seasonal change or of
    /// fill with its margin; 0 to 100 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub top_helix_depth: Option<Length>,
    /// Least depth of the top helix in diameters of the largest helix; 0 to 30. Left out: 5
    /// where the demand has tension, 0 where it has none. Capacity in tension by torque
    /// asks for 12.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 30.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 30))]
    pub top_helix_ratio: Option<f64>,
    /// Least depth of the lowest helix, as specified by the designer; 0 to 100 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub lowest_helix_depth: Option<Length>,
}

/// Sets of helices, of which the lightest that works is asked for. Each is taken to its own
/// least depth; needs `minimum_depth` and `demand`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HelixSets {
    /// The sets; 1 to 40.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 40))]
    pub sets: Vec<HelixSet>,
    /// Height of the head of the pile above final grade, which its steel reaches; -30 to
    /// 10 m, 0 when left out. Negative where the head is below grade.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(-30.0, LengthUnit::M), max = Length::new(10.0, LengthUnit::M)))]
    pub head_height: Option<Length>,
    /// Length of the shaft below the lowest helix; 0 to 3 m, 0 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(3.0, LengthUnit::M)))]
    pub tip_length: Option<Length>,
}

/// One set of helices on its shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct HelixSet {
    /// Its name, different from the others.
    #[validate(nested)]
    pub label: Label,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Its shaft; that of `pile` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub shaft: Option<Shaft>,
    /// Its helices, in any order; 1 to 8.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 8))]
    pub helices: Vec<SetHelix>,
    /// Thickness of the plates; 4 to 60 mm. With the wall of a round shaft it gives the
    /// mass of the steel.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::new(4.0, LengthUnit::Mm), max = Size::new(60.0, LengthUnit::Mm)))]
    pub plate_thickness: Option<Size>,
    /// Mass of the shaft per metre of length, where it is known better than from its
    /// section; 1 to 500 kg for each metre.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Mass::new(1.0, MassUnit::Kg), max = Mass::new(500.0, MassUnit::Kg)))]
    pub shaft_mass_per_metre: Option<Mass>,
    /// Mass of all helix plates together, where it is known better than from
    /// `plate_thickness`; 0.1 to 2,000 kg.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Mass::new(0.1, MassUnit::Kg), max = Mass::new(2000.0, MassUnit::Kg)))]
    pub plate_mass: Option<Mass>,
}

/// One helix of a set.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SetHelix {
    /// Outside diameter of the plate, larger than the shaft; 100 to 1,500 mm.
    #[validate(range(min = Size::new(100.0, LengthUnit::Mm), max = Size::new(1500.0, LengthUnit::Mm)))]
    pub diameter: Size,
    /// Height above the lowest helix, which has 0; 0 to 30 m.
    #[validate(range(min = Length::ZERO, max = Length::new(30.0, LengthUnit::M)))]
    pub above_lowest: Length,
}

/// The installation torque that goes with the capacity of the soil.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ExpectedTorque {
    /// Torque factor; that of the acceptance criteria for the shaft when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub torque_factor: Option<TorqueFactorChoice>,
    /// Half width of the band around the expected torque, as a share of it; 0 to 0.9, 0.4
    /// when left out: the scatter of measured over computed capacities by torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 0.9))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.9))]
    pub band_ratio: Option<f64>,
}
