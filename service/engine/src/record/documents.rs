//! What the record of a pile holds beside pile and log, and whose list it is held against.
//! Which field of which list is where is in `completeness.rs`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::date::IsoDate;
use crate::quantity::{Length, LengthUnit};
use crate::text::reference_text;

/// Whose list of fields a record is held against.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum RecordProfile {
    /// International Building Code 1705.9.
    #[serde(rename = "ibc_1705_9")]
    Ibc17059(ListedProfile),
    /// New York City Building Code 1814.12.
    #[serde(rename = "nyc_1814_12")]
    Nyc181412(ListedProfile),
    /// What an installer needs to defend a pile later; common practice.
    InstallerMinimum(ListedProfile),
    /// The caller's own list.
    Own(OwnProfile),
}

validate_choice!(RecordProfile {
    Ibc17059 = "ibc_1705_9",
    Nyc181412 = "nyc_1814_12",
    InstallerMinimum = "installer_minimum",
    Own = "own"
});

/// A list as published, with what the engineer asks for besides.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ListedProfile {
    /// Fields that are asked for besides, each once; up to 40. One that the list holds anyway
    /// is asked for once.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(max_items = 40))]
    pub also: Option<Vec<RecordField>>,
}

/// The caller's own list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct OwnProfile {
    /// Its fields, each once; 1 to 40.
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 40))]
    pub fields: Vec<RecordField>,
    /// Where the list comes from, 1 to 200 characters.
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: String,
}

/// A field of a record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum RecordField {
    /// Number of the pile on the filed plan (`label`).
    PlanNumber,
    /// Make and model of the installation equipment.
    Equipment,
    /// Dimensions of the pile: shaft and helices.
    PileDimensions,
    /// Specification sheet of the pile.
    SpecificationSheet,
    /// Pitch of the helices.
    HelixPitch,
    /// Elevation of the tip.
    TipElevation,
    /// Final depth of the tip (the log).
    FinalDepth,
    /// Final installation torque, in the bearing zone (the log).
    FinalTorque,
    /// Torque for each foot of depth (the log).
    TorquePerFoot,
    /// Advance in a turn at the final torque (the log).
    FinalAdvance,
    /// Speed of rotation (the log).
    RotationSpeed,
    /// Make and model of the torque indicator.
    IndicatorModel,
    /// Calibration record of the torque indicator.
    CalibrationRecord,
    /// Least torque required.
    RequiredTorque,
    /// Tests or report that the required torque is based on.
    TorqueBasis,
    /// Field welds and their inspection, or that there were none.
    FieldWelds,
    /// Whether the inspector was there all the time.
    ContinuousInspection,
    /// Name or number of the inspector.
    Inspector,
    /// Name or number of the operator.
    Operator,
    /// Day of installation.
    Date,
    /// Times of begin and end.
    Times,
    /// Where the head came to stand.
    Position,
    /// Inclination.
    Inclination,
    /// Level of the cut-off.
    CutOff,
    /// Lead and extensions with their lengths and serial numbers.
    Sections,
    /// Coupling bolts and how they were tightened.
    Bolts,
    /// Why turning stopped.
    StopReason,
    /// Deviations from the plan and what was done about them, or that there were none.
    Deviations,
    /// Weather.
    Weather,
    /// Photographs.
    Photographs,
}

/// What the record holds beside pile and log. Texts are 1 to 200 characters, echoed by
/// nothing and never interpreted: only whether they are there is looked at.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RecordDocuments {
    /// Make and model of the installation equipment.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub equipment: Option<String>,
    /// Specification sheet of the pile.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub specification_sheet: Option<String>,
    /// Elevation of the tip in the datum of the job; -1,000 to 10,000 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(-1000.0, LengthUnit::M), max = Length::new(10_000.0, LengthUnit::M)))]
    pub tip_elevation: Option<Length>,
    /// Make and model of the torque indicator.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub indicator_model: Option<String>,
    /// Calibration record of the torque indicator.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub calibration_record: Option<String>,
    /// Field welds and their inspection; `none` where there were none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub field_welds: Option<String>,
    /// Whether the inspector was there all the time.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub continuous_inspection: Option<bool>,
    /// Name or number of the inspector.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub inspector: Option<String>,
    /// Name or number of the operator. `installation-job` tells by it which piles were turned
    /// in by one operator.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub operator: Option<String>,
    /// Day of installation; `indicator.driven_on` counts too.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub date: Option<IsoDate>,
    /// Times of begin and end.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub times: Option<String>,
    /// Level of the cut-off in the datum of the job; -1,000 to 10,000 m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::new(-1000.0, LengthUnit::M), max = Length::new(10_000.0, LengthUnit::M)))]
    pub cut_off_elevation: Option<Length>,
    /// Lead and extensions with their lengths and serial numbers.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub sections: Option<String>,
    /// Coupling bolts and how they were tightened.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub bolts: Option<String>,
    /// Deviations from the plan and what was done about them; `none` where there were none.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub deviations: Option<String>,
    /// Weather.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub weather: Option<String>,
    /// Photographs.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub photographs: Option<String>,
}
