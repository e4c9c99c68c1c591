//! What the answer says of a beam's bending between its piles. Types only; the strength of a
//! section is told by `concrete`.

use serde::{Deserialize, Serialize};

use compact_str::CompactString;

use super::SupportModel;
use crate::layout::request::PlanPoint;
use crate::quantity::{Length, Size};

/// The deflection of a beam that is nearest to its limit, over all spans, combinations and
/// support models.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct BeamDeflection {
    /// The deflection from the straight line through the heads of the piles of its span,
    /// positive downwards; of a free end from that line drawn on.
    pub deflection: Size,
    /// What is allowed there.
    pub limit: Size,
    /// The span that counts: between the piles, or twice the length of a free end.
    pub span: Length,
    /// Where it occurs.
    pub at: PlanPoint,
    /// The combination.
    #[cfg_attr(feature = "openapi", schema(value_type = String))]
    pub combination: CompactString,
    /// The support model.
    pub supports: SupportModel,
}
