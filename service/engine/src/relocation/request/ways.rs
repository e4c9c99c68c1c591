//! Within which limits a way out is sought, and what its parts cost. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::{CAPACITY_MIN, FORCE_MAX, OFF_MAX, STIFFNESS_MAX, STIFFNESS_MIN};
use crate::layout::KeepOut;
use crate::quantity::{Force, Length, LengthUnit, Size, SpringStiffness};
use crate::text::Label;

const STEP_MIN: Length = Length::new(0.001, LengthUnit::M);
const STEP_MAX: Length = Length::new(1.0, LengthUnit::M);
const REACH_MAX: Length = Length::new(100.0, LengthUnit::M);

/// Seeks ways out for one pile: a place along its beams, a place beside the line, two piles in
/// its stead, larger piles beside it, a further pile, a stronger beam without it. Each is
/// analysed and judged in full.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct WaysOut {
    /// The pile, by its label; that of the last event of a pile when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile: Option<Label>,
    /// What is in the way. No pile of a way out stands nearer to it than its clearance, measured
    /// at the pile's own centre; it is not added to the `keep_outs` of the plan.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub obstruction: Option<KeepOut>,
    /// Distance of the places that are tried along a beam, counted from where the pile was drawn;
    /// 1/4 in when left out. 1 mm to 1 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = STEP_MIN, max = STEP_MAX))]
    pub step: Option<Length>,
    /// Two piles in the stead of one are tried at this many steps; 12 when left out, 1 to 1,000.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1, max = 1000))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 1000))]
    pub pair_step_count: Option<u32>,
    /// Farthest place along a beam from where the pile was drawn; up to the next pile on either
    /// side when left out. 0 to 100 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = REACH_MAX))]
    pub max_along: Option<Length>,
    /// Farthest place beside the line; the allowance of `mislocation` when left out. 0 to 1 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = OFF_MAX))]
    pub max_off_line: Option<Size>,
    /// Piles that may stand in the stead of others; 1 to 20.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 20))]
    pub larger_piles: Option<Vec<LargerPile>>,
    /// What changes cost; left out, ways out have no cost.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub prices: Option<RelocationPrices>,
    /// How much is told of each way out; `summary` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub option_detail: Option<OptionDetail>,
}

/// How much is told of each way out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum OptionDetail {
    /// What it is, how far it is used, what it costs.
    Summary,
    /// With the whole plan, ready to be sent to `pile-layout`, and its whole result.
    Full,
}

/// A pile that may stand in the stead of another, at the level of `pile_capacity` or
/// `pile_types`.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LargerPile {
    /// Its name, no two alike.
    #[validate(nested)]
    pub label: Label,
    /// Capacity in compression; 0.01 to 10,000 kN.
    #[validate(range(min = CAPACITY_MIN, max = FORCE_MAX))]
    pub compression: Force,
    /// Capacity in tension; 0 to 10,000 kN.
    #[validate(range(min = Force::ZERO, max = FORCE_MAX))]
    pub tension: Force,
    /// Its stiffness, where it is another; 10 to 100,000,000 kN/m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = STIFFNESS_MIN, max = STIFFNESS_MAX))]
    pub stiffness: Option<SpringStiffness>,
    /// What it costs beyond the pile it stands for; `replaced_pile` when left out. 0 to
    /// 1,000,000,000.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1e9))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0, maximum = 1e9))]
    pub price: Option<f64>,
}

/// What changes cost, each 0 to 1,000,000,000 in `currency`. A way out has a cost where each of
/// its parts has a price.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RelocationPrices {
    /// Currency of all prices; echoed, never interpreted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub currency: Option<Label>,
    /// A pile more in the ground: one in the stead of a pile that is lost too.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1e9))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0, maximum = 1e9))]
    pub extra_pile: Option<f64>,
    /// A pile that stands elsewhere than it does now.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1e9))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0, maximum = 1e9))]
    pub moved_pile: Option<f64>,
    /// A larger pile without a price of its own.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1e9))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0, maximum = 1e9))]
    pub replaced_pile: Option<f64>,
    /// A beam that is made stronger, each time.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 1e9))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0, maximum = 1e9))]
    pub stronger_beam: Option<f64>,
    /// The same for the whole length of that beam; added to `stronger_beam`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub stronger_beam_length: Option<PricePerLength>,
}

/// A price for a length.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PricePerLength {
    /// The price; 0 to 1,000,000,000.
    #[validate(range(min = 0.0, max = 1e9))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.0, maximum = 1e9))]
    pub price: f64,
    /// The length it is for; 1 mm to 100 m.
    #[validate(range(min = STEP_MIN, max = REACH_MAX))]
    pub per: Length,
}
