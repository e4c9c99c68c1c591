//! How aggressive the ground is, as it is sent: a class, or tests of the soil.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::quantity::{Content, ContentUnit, Resistivity, ResistivityUnit};
use crate::text::Label;

/// How aggressive the ground is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum CorrosionSoil {
    /// The class, as the caller's engineer states it.
    Stated(StatedCorrosionClass),
    /// Tests of the soil.
    Tests(CorrosionTests),
}

validate_choice!(CorrosionSoil { Stated = "stated", Tests = "tests" });

/// How aggressive soil is to steel.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CorrosionClass {
    /// Inside the electrochemical limits of published rates.
    Mild,
    /// Not aggressive, but outside those limits or not tested for all of them.
    TestMore,
    /// Aggressive: the engineer gives the rate.
    Aggressive,
}

/// A class that is stated.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct StatedCorrosionClass {
    /// The class.
    pub class: CorrosionClass,
    /// Who states it, and where.
    #[validate(nested)]
    pub reference: Label,
}

/// Tests of the soil; the worst sample along the pile. At least one of the five figures or a
/// statement that is true.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct CorrosionTests {
    /// Least resistivity, saturated; 0.01 to 100,000 ohm m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Resistivity::new(0.01, ResistivityUnit::OhmM), max = Resistivity::new(100_000.0, ResistivityUnit::OhmM)))]
    pub resistivity: Option<Resistivity>,
    /// pH; 0 to 14.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 14.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 14))]
    pub ph: Option<f64>,
    /// Sulfates in the dry soil; 0 to 10 %.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Content::ZERO, max = Content::new(10.0, ContentUnit::Percent)))]
    pub sulfates: Option<Content>,
    /// Chlorides in the dry soil; 0 to 10 %.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Content::ZERO, max = Content::new(10.0, ContentUnit::Percent)))]
    pub chlorides: Option<Content>,
    /// Organic matter in the dry soil; 0 to 100 %.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Content::ZERO, max = Content::new(100.0, ContentUnit::Percent)))]
    pub organics: Option<Content>,
    /// Whether the soil is of high organic content (peat, muck); `false` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub organic_soil: Option<bool>,
    /// Whether there is landfill or mine waste; `false` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub landfill_or_mine_waste: Option<bool>,
    /// Whether mines or industry drain into the ground; `false` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mine_or_industrial_drainage: Option<bool>,
    /// The report of the tests.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub reference: Option<Label>,
}

impl CorrosionTests {
    /// Whether nothing is known by them.
    pub fn is_empty(&self) -> bool {
        let stated = [
            self.organic_soil,
            self.landfill_or_mine_waste,
            self.mine_or_industrial_drainage,
        ];
        self.resistivity.is_none()
            && self.ph.is_none()
            && self.sulfates.is_none()
            && self.chlorides.is_none()
            && self.organics.is_none()
            && !stated.contains(&Some(true))
    }
}
