//! What is answered about the void form: free thickness against heave, wet concrete, and
//! what the form passes on to beam and pile while it is crushed.

use serde::{Deserialize, Serialize};

use crate::ground_heave::{FreezingHeave, HeaveCause, SwellHeave};
use crate::quantity::{AreaLoad, Force, LineLoad, Size};
use crate::source::SourceNote;

/// The void form.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct VoidFormOutcome {
    /// Thickness as placed.
    pub nominal_thickness: Size,
    /// Crushed over nominal thickness.
    pub residual_ratio: f64,
    /// Where that comes from.
    pub residual_source: SourceNote,
    /// Thickness that is free for movement.
    pub usable_thickness: Size,
    /// Heave that counts, the larger of the causes sent.
    pub design_heave: Size,
    /// Which cause that is; the first of equals.
    pub heave_governed_by: HeaveCause,
    /// Whether it is the upper end of a range; left out where it is not.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub heave_is_upper_end: Option<bool>,
    /// Heave by freezing with its parts, where it was calculated here.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub frost_heave: Option<FreezingHeave>,
    /// Swell, where it was calculated here or sent as a potential vertical rise.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub swell: Option<SwellHeave>,
    /// Clearance over the heave.
    pub margin: Size,
    /// By how much the usable thickness is short; 0 when it is not.
    pub shortfall: Size,
    /// Nominal thickness that would do, with the same residual ratio.
    pub required_nominal_thickness: Size,
    /// Length of pile that stands free in the void, to be counted in buckling.
    pub unbraced_length: Size,
    /// Weight of the wet concrete on the form, where it was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub concrete_load: Option<AreaLoad>,
    /// Load the form is rated for, as sent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rated_load: Option<AreaLoad>,
    /// What the form passes on while it is crushed, where its crush pressure was sent.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub crush: Option<FormCrushOutcome>,
}

/// What a form passes on while it is crushed. It holds as long as the form has thickness that
/// is free; where `void_form_clearance` fails the ground bears on the beam with more.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct FormCrushOutcome {
    /// Pressure at which the form is crushed, as sent.
    pub crush_pressure: AreaLoad,
    /// What kind of statement it is.
    pub stated_as: CrushStatement,
    /// Pressure on the underside of the beam, upwards; 0 where nothing heaves.
    pub transmitted_pressure: AreaLoad,
    /// The same as a load along the beam, upwards; left out without `beam_width`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line_load: Option<LineLoad>,
    /// Tension it puts on this pile, unfactored; left out without a tributary length too.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pile_tension: Option<Force>,
}

/// Kinds of statement of a crush pressure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum CrushStatement {
    /// Given without a test.
    Given,
    /// As tested.
    Tested,
    /// What is left once the form has softened.
    Softened,
}
