//! What `installation-record` is asked: the pile, its log, what it must reach and within which
//! limits. What the office keeps of the pile is in `documents.rs`; no equation is here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::documents::{RecordDocuments, RecordProfile};
use super::ground::GroundKnown;
use super::history::{PileHistory, PileStop, Retorque};
use super::limits::{RecordDepths, RecordLimits};
use super::log::InstallationLog;
use super::proofs::{RecordPosition, TorqueIndicator};
use super::relocation::RecordRelocation;
use crate::basis::AxialDemand;
use crate::choice::validate_choice;
use crate::quantity::{Length, LengthUnit, MomentUnit, Size, Torque};
use crate::shaft::Shaft;
use crate::text::{Label, Tags, reference_text};
use crate::torque::{DriveHead, TorqueBasis, TorqueFactorChoice};

/// The installation of one pile, judged from its log: may it stay, must it go deeper, or is it
/// for the engineer.
///
/// A torque alone is never acceptance. Torque, depth, advance in a turn, position and the
/// calibration of the indicator are all needed; what is not sent is `not_evaluated` and leaves
/// the verdict at `provisional`. `continue` says that driving deeper within the limits can
/// mend everything that fails.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = InstallationRecordRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Number of the pile on the filed plan; echoed and used as the subject of checks.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// The pile.
    #[validate(nested)]
    pub pile: RecordedPile,
    /// The log; 1 to 400 rows.
    #[validate(nested)]
    pub log: InstallationLog,
    /// What was written beside rows of the log; up to 400. Echoed, never interpreted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(max_items = 400))]
    pub notes: Option<Vec<LogNote>>,
    /// Hydraulic drive head; needed where the log holds pressures.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub drive: Option<DriveHead>,
    /// Torque the pile must reach. Left out, torque is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub target: Option<TorqueTarget>,
    /// Where the torque factor comes from. Needed with a target `from_demand`; otherwise with it
    /// the capacity that the torque stands for is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub torque_factor: Option<TorqueFactorChoice>,
    /// Which torque counts at the end; `lower_of_two_windows` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub effective_torque: Option<EffectiveTorque>,
    /// Depths that the pile must reach or stay above.
    #[validate(nested)]
    pub depths: RecordDepths,
    /// Limits of torque, advance and speed; each but the torque limit of the shaft has a
    /// default.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub limits: Option<RecordLimits>,
    /// What was in the hole or happened to the pile before this log.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub history: Option<PileHistory>,
    /// Why turning stopped, as the operator says; left out, it is taken from the log alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stop: Option<PileStop>,
    /// Torque when the pile was turned again after a wait.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub retorque: Option<Retorque>,
    /// The device that the torque was read on. Left out, its calibration is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub indicator: Option<TorqueIndicator>,
    /// Where the head came to stand. Left out, position and plumb are not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub position: Option<RecordPosition>,
    /// What is known of the ground. Left out, nothing is: the verdict is at best `provisional`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub ground: Option<GroundKnown>,
    /// Whose list of fields the record is held against. Left out, completeness is not judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub record_profile: Option<RecordProfile>,
    /// What the record holds beside pile and log.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub documents: Option<RecordDocuments>,
    /// Asks what the layout must be told of this pile, and for a request of `pile-relocation`
    /// that tells it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub relocation: Option<RecordRelocation>,
}

/// The pile as it was turned in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RecordedPile {
    /// Shaft above the helices. Needed unless the torque factor is the caller's own or none is
    /// asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub shaft: Option<Shaft>,
    /// Helices, in any order, at distinct places; 1 to 8.
    #[validate(nested)]
    #[cfg_attr(feature = "openapi", schema(min_items = 1, max_items = 8))]
    pub helices: Vec<RecordedHelix>,
    /// Pitch of the helices; 20 to 500 mm. Left out, advance is not evaluated.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::new(20.0, LengthUnit::Mm), max = Size::new(500.0, LengthUnit::Mm)))]
    pub helix_pitch: Option<Size>,
}

/// A helix of the pile.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RecordedHelix {
    /// Outside diameter of the plate; 100 to 1,500 mm.
    #[validate(range(min = Size::new(100.0, LengthUnit::Mm), max = Size::new(1500.0, LengthUnit::Mm)))]
    pub diameter: Size,
    /// Height of the plate above the tip; 0 to 20 m.
    #[validate(range(min = Length::ZERO, max = Length::new(20.0, LengthUnit::M)))]
    pub above_tip: Length,
}

/// A note beside a row of the log.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LogNote {
    /// The row, counted from 0.
    #[validate(range(max = 399))]
    #[cfg_attr(feature = "openapi", schema(maximum = 399))]
    pub row: usize,
    /// The text, 1 to 200 characters.
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub text: String,
}

/// Torque the pile must reach.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TorqueTarget {
    /// As the engineer states it.
    Stated(StatedTorque),
    /// From the load on the pile, by the torque factor and the design basis.
    FromDemand(TorqueFromDemand),
}

validate_choice!(TorqueTarget { Stated = "stated", FromDemand = "from_demand" });

/// A torque the engineer states.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct StatedTorque {
    /// The torque; 0.01 to 1,000 kN m.
    #[validate(range(min = Torque::new(0.01, MomentUnit::KNM), max = Torque::new(1000.0, MomentUnit::KNM)))]
    pub torque: Torque,
    /// Whether the pile must bear tension; `false` when left out. Then the rules of tension are
    /// judged too.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension: Option<bool>,
    /// Where the torque comes from: report, drawing, site test; 1 to 200 characters. Some
    /// lists of records ask for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(custom(function = "reference_text"))]
    #[cfg_attr(feature = "openapi", schema(min_length = 1, max_length = 200))]
    pub reference: Option<String>,
}

/// A torque that follows from the load.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TorqueFromDemand {
    /// Load on the pile.
    #[validate(nested)]
    pub demand: AxialDemand,
    /// Format and factors.
    #[validate(nested)]
    pub design_basis: TorqueBasis,
}

/// Which torque counts at the end of a log. Readings that are spikes are left out of all of
/// them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum EffectiveTorque {
    /// The lower of the means over the longer of 3 ft and 3 diameters of the largest helix, and
    /// over these 3 diameters.
    LowerOfTwoWindows,
    /// Mean over 3 diameters of the largest helix.
    #[serde(rename = "mean_over_3_diameters")]
    MeanOver3Diameters,
    /// Mean over 3 ft.
    #[serde(rename = "mean_over_3_ft")]
    MeanOver3Ft,
    /// Plain mean of the last three readings.
    LastThreeReadings,
    /// Least reading over the longer of 3 ft and 3 diameters.
    LeastInWindow,
    /// The last reading.
    FinalReading,
}

impl Request {
    /// Name of the pile.
    pub fn name(&self) -> &str {
        self.label.as_ref().map_or("pile", Label::as_str)
    }
}
