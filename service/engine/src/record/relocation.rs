//! What a record hands on to the layout where its pile cannot stay as it is. Only types: which
//! verdict tells the layout what is in `onward.rs`.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::layout;
use crate::quantity::Again;
use crate::relocation;
use crate::text::Label;

/// Asks for what the layout must be told of this pile.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct RecordRelocation {
    /// Label of the pile in the layout; the `label` of this record when left out. One of them is
    /// needed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub pile: Option<Label>,
    /// The layout that the pile belongs to, as `pile-layout` takes it with `piles.given`. With
    /// it the answer holds a whole request for `pile-relocation`; without it the event alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub layout: Option<Box<layout::Request>>,
}

/// What the layout must be told of this pile.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RecordRelocationOutcome {
    /// Label of the pile in the layout.
    pub pile: Label,
    /// What the layout may count on.
    pub counts: PileCounts,
    /// Why, in words.
    pub detail: String,
    /// Codes of what keeps the capacity by torque from being counted on; empty where nothing
    /// does, and where the layout has nothing to be told.
    pub withheld_for: Vec<Cow<'static, str>>,
    /// The event for `pile-relocation`; only where the pile is rejected.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    #[cfg_attr(feature = "openapi", schema(value_type = Option<relocation::RelocationEvent>))]
    pub event: Option<Again<relocation::RelocationEvent>>,
}

/// What a layout may count on, by the verdict of the record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum PileCounts {
    /// Accepted: the pile is what the layout took it for. No event.
    AsDesigned,
    /// Provisional, or nothing was asked: what is missing comes first. No event.
    OnceProven,
    /// It may be driven deeper: that comes first. No event.
    OnceDeeper,
    /// Rejected because its torque is short and for nothing else: it carries what its torque
    /// stands for.
    ByTorque,
    /// Rejected: nothing of it may be counted on.
    Nothing,
}
