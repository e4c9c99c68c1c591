//! What `length-forecast` is asked: the piles to come, the piles in the ground, what was
//! expected before, the pieces there are. No equation is here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::logs::ForecastReadings;
use crate::choice::validate_choice;
use crate::layout::PlanPoint;
use crate::quantity::{Length, LengthUnit, MomentUnit, Torque};
use crate::text::{Label, Tags, reference_text};

const DEEPEST: Length = Length::new(100.0, LengthUnit::M);
const TORQUE_MIN: Torque = Torque::new(0.01, MomentUnit::KNM);
const TORQUE_MAX: Torque = Torque::new(1000.0, MomentUnit::KNM);

/// The first piles of a job are in the ground; how deep will the others go? Each pile goes on
/// until its torque is met, and at least to its least depth. The depth at which the torque is
/// met varies from pile to pile, more alike for near ones where places in plan are given; the
/// forecast is what the logs leave open of it. A log that ended before its torque was met
/// counts too: that pile goes deeper than its log. At least three logs must have met the
/// torque. Without places the piles in the ground are taken for a fair sample of those to come:
/// where they were all driven at one side of a sloping ground, send places.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = LengthForecastRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of the job; echoed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Torque that each pile must meet, unless it has its own; 0.01 to 1,000 kN m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TORQUE_MIN, max = TORQUE_MAX))]
    pub required_torque: Option<Torque>,
    /// Length of penetration that the torque is averaged over, 0.3 to 5 m; 3 ft when left out.
    /// Where three diameters of the largest helix are more, send that.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(0.3, LengthUnit::M), max = Length::new(5.0, LengthUnit::M)))]
    pub averaging_length: Option<Length>,
    /// Probability with which depths and pieces shall suffice, 0.5 to 0.99; 0.9 when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.5, max = 0.99))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 0.99))]
    pub confidence_ratio: Option<f64>,
    /// Piles to come, 1 to 500. A pile that is being driven stands here and, under the same
    /// label, in `installed`: its forecast knows how deep it is already.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 500))]
    pub planned: Vec<PlannedPile>,
    /// Piles in the ground, at most 60. At least three must have met each required torque.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 60))]
    pub installed: Vec<InstalledPile>,
    /// What was expected before the first pile, for one required torque only.
    #[validate(nested)]
    pub prior: ForecastPrior,
    /// The pieces a pile is made of. With them the extensions are counted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pieces: Option<ForecastPieces>,
}

/// A pile to come.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PlannedPile {
    /// Its name, one of a kind among the piles to come.
    #[validate(nested)]
    pub label: Label,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Its place in plan. Used where every pile of the request has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub position: Option<PlanPoint>,
    /// Least depth of its tip below final grade, whatever the torque; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = DEEPEST))]
    pub minimum_depth: Length,
    /// Torque it must meet, where that is its own; 0.01 to 1,000 kN m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TORQUE_MIN, max = TORQUE_MAX))]
    pub required_torque: Option<Torque>,
}

/// A pile in the ground, or on its way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct InstalledPile {
    /// Its name, one of a kind among the piles in the ground.
    #[validate(nested)]
    pub label: Label,
    /// Its place in plan. Used where every pile of the request has one; that of a pile being
    /// driven is this one.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub position: Option<PlanPoint>,
    /// What is known of it.
    #[validate(nested)]
    pub record: ForecastRecord,
}

/// What is known of a pile in the ground.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ForecastRecord {
    /// Its log, from which the depth is read for every torque asked for.
    Log(LoggedPile),
    /// The depth at which its torque was met, as read elsewhere.
    Met(TorqueMet),
    /// A depth down to which its torque was not met.
    NotMet(TorqueNotMet),
}

validate_choice!(ForecastRecord { Log = "log", Met = "met", NotMet = "not_met" });

/// The log of a pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LoggedPile {
    /// Its readings; 2 to 400 rows.
    #[validate(nested)]
    pub readings: ForecastReadings,
    /// The pile was stopped by an obstruction: the torque at its end is that of the
    /// obstruction, and nothing is known below.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stopped_by_obstruction: Option<bool>,
}

/// A torque that was met.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TorqueMet {
    /// Depth of the tip below final grade from which on it was met; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = DEEPEST))]
    pub depth: Length,
    /// The torque; that of the request when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TORQUE_MIN, max = TORQUE_MAX))]
    pub required_torque: Option<Torque>,
}

/// A torque that was not met.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TorqueNotMet {
    /// Depth of the tip below final grade that was reached without it; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = DEEPEST))]
    pub depth: Length,
    /// The torque; that of the request when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = TORQUE_MIN, max = TORQUE_MAX))]
    pub required_torque: Option<Torque>,
}

/// What was expected before the first pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum ForecastPrior {
    /// Nothing: the mean depth comes from the logs alone.
    None,
    /// A forecast from the soil, such as the depth of the expected torque.
    Stated(StatedDepth),
}

validate_choice!(ForecastPrior { Stated = "stated" } plain { None });

/// A forecast of the mean depth from the soil.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct StatedDepth {
    /// Expected mean depth at which the torque is met; 0.1 to 100 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = DEEPEST))]
    pub expected_depth: Length,
    /// Standard deviation of that mean: by how much all piles together may go deeper or less
    /// deep, not how much they differ from each other; 0.05 to 30 m. It is not taken at its
    /// word: with a probability of 0.4 it is three or nine times that.
    #[validate(range(min = Length::new(0.05, LengthUnit::M), max = Length::new(30.0, LengthUnit::M)))]
    pub standard_deviation: Length,
    /// What it stands on; 1 to 200 characters.
    #[validate(custom(function = reference_text))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub basis: String,
}

/// The pieces a pile is made of.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ForecastPieces {
    /// Length of the lead, 0.3 to 30 m.
    #[validate(range(min = Length::new(0.3, LengthUnit::M), max = Length::new(30.0, LengthUnit::M)))]
    pub lead_length: Length,
    /// Extensions of which there may be any number on a pile, 1 to 4 lengths.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 4))]
    pub extensions: Vec<ForecastExtension>,
    /// Length of pile that stays above final grade, or that is cut off; 0 to 10 m.
    #[validate(range(min = Length::ZERO, max = Length::new(10.0, LengthUnit::M)))]
    pub stick_up: Length,
}

/// A kind of extension.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ForecastExtension {
    /// Its name; echoed and used in checks.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Length it adds to a pile, 0.1 to 15 m.
    #[validate(range(min = Length::new(0.1, LengthUnit::M), max = Length::new(15.0, LengthUnit::M)))]
    pub length: Length,
    /// How many there are, 0 to 100,000. With it the number is judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0, max = 100_000))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 100_000))]
    pub available_count: Option<u32>,
}
