//! What may be asked of the beams and their supports beyond bending on piles that hold:
//! torsion, piles that lift off, couples, limits of settlement. Types only.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::{LoadKind, MOMENT_MAX, PlanPoint};
use crate::quantity::{LengthUnit, Moment, MomentUnit, RigidityUnit, Size, TorsionalRigidity};
use crate::text::Label;

pub(super) const TWIST_MIN: TorsionalRigidity = TorsionalRigidity::new(0.001, RigidityUnit::KNM2);
pub(super) const TWIST_MAX: TorsionalRigidity = TorsionalRigidity::new(1e9, RigidityUnit::KNM2);
const COUPLE_MIN: Moment = Moment::new(-1e6, MomentUnit::KNM);
const SETTLEMENT_MIN: Size = Size::new(0.1, LengthUnit::Mm);
const SETTLEMENT_MAX: Size = Size::new(1_000.0, LengthUnit::Mm);

/// Whether beams are twisted where they meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum BeamTorsion {
    /// Beams that meet share their vertical movement only, as cracked concrete nearly does.
    Released,
    /// Beams that meet are joined stiffly: what bends one twists the other, by their
    /// torsional rigidities. Piles let the beams turn freely about every axis.
    Included,
}

/// What a pile does where the beam would pull on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum TensionConnection {
    /// It holds the beam down; the tension is reported and judged.
    Holds,
    /// The beam lifts off it, and the load goes to the other piles. Every combination is
    /// then solved for itself.
    LiftsOff,
}

/// Most settlement that is accepted.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct SettlementLimit {
    /// Of any pile; 0.1 to 1,000 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = SETTLEMENT_MIN, max = SETTLEMENT_MAX))]
    pub total: Option<Size>,
    /// Difference of two neighbouring piles along a beam, by their distance; 0.00001 to 0.1
    /// (1/500 is 0.002).
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.00001, max = 0.1))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.00001, maximum = 0.1))]
    pub differential_ratio: Option<f64>,
}

/// A couple at one point of a beam, as a load beside its centre line brings.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PlanPointMoment {
    /// Name of the couple.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Kind of load.
    pub kind: LoadKind,
    /// Loads of one kind with different cases never act together; one without a case acts
    /// whenever its kind does.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub case: Option<Label>,
    /// Label of the beam that it bends (`B1`, `B2`, ... where beams have none).
    #[validate(nested)]
    pub beam: Label,
    /// Where it acts; within 3 mm of that beam's centre line. At a corner of the beam it
    /// bends the part that ends there.
    #[validate(nested)]
    pub at: PlanPoint,
    /// The couple in the upright plane of the beam: positive where it presses the beam down
    /// ahead, seen from the beam's first point to its last. -1,000,000 to 1,000,000 kN m.
    #[validate(range(min = COUPLE_MIN, max = MOMENT_MAX))]
    pub moment: Moment,
}
