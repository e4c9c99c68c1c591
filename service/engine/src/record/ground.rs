//! What is known of the ground a pile was turned into. The profile itself is in `soil`.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::choice::validate_choice;
use crate::soil::SoilProfile;
use crate::text::reference_text;

/// What is known of the ground.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum GroundKnown {
    /// A profile: the log is compared with it.
    Profile(SoilProfile),
    /// A report that is not sent; depths and torque of the request rest on it.
    Report(GroundReport),
    /// No report exists. The torque is answered, the verdict is at best `provisional`.
    NoReport(NoGroundReport),
}

validate_choice!(GroundKnown { Profile = "profile", Report = "report", NoReport = "no_report" });

/// A geotechnical report that is not sent.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GroundReport {
    /// Its title or number, 1 to 200 characters; echoed, never interpreted.
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: String,
}

/// No report exists.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct NoGroundReport {}
