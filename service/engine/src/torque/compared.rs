//! What `torque-capacity` answers of the published torque factors side by side. Only types:
//! they are found in `alternatives.rs`.

use serde::{Deserialize, Serialize};

use crate::quantity::{Force, Torque, TorqueFactor};
use crate::source::SourceNote;

/// A published torque factor beside the others: what it gives for this shaft, or why it does
/// not hold for it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FactorAlternative {
    /// Its name, as in `torque_factor`.
    pub choice: PublishedTorqueFactor,
    /// Why it does not hold; left out where it does.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub reason: Option<String>,
    /// In compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub compression: Option<FactorAlternativeSide>,
    /// In tension.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension: Option<FactorAlternativeSide>,
    /// In tension, reduced by 24/33. Stands where the factor in tension is the one in
    /// compression.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub tension_reduced: Option<FactorAlternativeSide>,
}

/// The published torque factors.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PublishedTorqueFactor {
    /// Acceptance criteria AC358, listed shafts.
    ListedShaft,
    /// Acceptance criteria AC358, other shafts.
    EffectiveDiameter,
    /// Livneh and El Naggar.
    #[serde(rename = "livneh_2008")]
    Livneh2008,
    /// Hoyt and Clemence.
    #[serde(rename = "hoyt_clemence_1989")]
    HoytClemence1989,
    /// Perko.
    #[serde(rename = "perko_2009")]
    Perko2009,
}

/// A published torque factor in one direction with what follows from it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FactorAlternativeSide {
    /// Ultimate capacity over torque.
    pub factor: TorqueFactor,
    /// Torque the load needs by it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub required_torque: Option<Torque>,
    /// Ultimate capacity the installed torque stands for by it.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub ultimate: Option<Force>,
    /// Where it comes from.
    pub source: SourceNote,
}
