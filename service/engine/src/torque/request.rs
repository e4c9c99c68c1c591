//! What `torque-capacity` is asked: the pile, the torque reached, the load to be
//! carried. Choice of factor and basis stand in `options.rs`, machine and shaft in
//! `equipment.rs`; no equation is here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use super::card::CabCard;
use super::equipment::{DriveGear, DriveHead, LinePressures, ShaftTorsion};
use super::options::{TensionFactor, TorqueBasis, TorqueFactorChoice};
use crate::basis::AxialDemand;
use crate::choice::validate_choice;
use crate::quantity::{Length, LengthUnit, MomentUnit, Pressure, Size, StressUnit, Torque};
use crate::shaft::Shaft;
use crate::text::{Label, Tags};

/// Torque and capacity of one pile, both ways. Any of these may be asked together, at
/// least one: the capacity that an installed torque stands for (`installed`); the torque
/// a load needs (`demand`); torque of a hydraulic drive head and pressure for a torque
/// (`drive`); the torque the shaft bears (`torsion`); or the torque factor of a shaft
/// alone (`shaft` with `torque_factor`).
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = TorqueCapacityRequest))]
#[serde(deny_unknown_fields)]
pub struct Request {
    /// Name of the pile; echoed and used as the subject of checks.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub label: Option<Label>,
    /// Codes to echo.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub tags: Option<Tags>,
    /// Shaft of the pile. Needed unless the torque factor is the caller's own or only the
    /// drive head is asked about.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub shaft: Option<Shaft>,
    /// Where the torque factor comes from. Needed with `installed` or `demand`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub torque_factor: Option<TorqueFactorChoice>,
    /// Torque factor in tension; `same_as_compression` when left out. Only with a published
    /// factor that is the same in both directions.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tension_factor: Option<TensionFactor>,
    /// Where the helices are. With it, the depth rule for tension by torque is judged and
    /// `steady_length` has a length to be compared with.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub embedment: Option<TorqueEmbedment>,
    /// Torque reached at the end of installation.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub installed: Option<InstalledTorque>,
    /// Load the pile must carry. Without it nothing is judged against a load.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub demand: Option<AxialDemand>,
    /// Format and factors of safety. Needed with `demand`; without it only ultimate
    /// capacities are given.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub design_basis: Option<TorqueBasis>,
    /// Hydraulic drive head that turns the pile.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub drive: Option<DriveHead>,
    /// Torque the shaft bears. With a `demand` and without a rating here the verdict is at
    /// best `provisional`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub torsion: Option<ShaftTorsion>,
    /// Whether every published torque factor is shown beside the one used; needs `shaft`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub compare_factors: Option<bool>,
    /// Asks for the card for the cab; needs a torque to aim at, by `demand` or
    /// `drive.target_torque`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub cab_card: Option<CabCard>,
}

/// Where the helices of the pile are.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TorqueEmbedment {
    /// Depth of the uppermost helix below final grade, vertical; 0 to 100 m.
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub top_helix_depth: Length,
    /// Diameter of the largest helix; 100 to 1,500 mm.
    #[validate(range(min = Size::new(100.0, LengthUnit::Mm), max = Size::new(1500.0, LengthUnit::Mm)))]
    pub largest_helix_diameter: Size,
}

/// Torque reached at the end of installation, with what is known of its quality.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct InstalledTorque {
    /// How the torque was read. It should be the mean over the last part of the
    /// penetration, not a last spike.
    #[validate(nested)]
    pub reading: TorqueReading,
    /// Accuracy of the reading as a part of it: 0.05 for plus or minus 5 %; 0 to 0.5. A
    /// verdict that would turn inside this band is `provisional`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.0, max = 0.5))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 0.5))]
    pub gauge_accuracy_ratio: Option<f64>,
    /// What the operator saw at the end. A torque that did not come from turning the helices
    /// steadily into the ground is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub conditions: Option<TorqueConditions>,
}

/// How the installed torque was read.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum TorqueReading {
    /// On a torque indicator.
    Gauge(GaugeReading),
    /// As pressures at the drive head; needs `drive`.
    Pressure(PressureReading),
}

validate_choice!(TorqueReading { Gauge = "gauge", Pressure = "pressure" });

/// A torque read as pressures at the drive head, while it turned the pile.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct PressureReading {
    /// Pressure at the inlet; 0 to 100 MPa.
    #[validate(range(min = Pressure::ZERO, max = Pressure::new(100.0, StressUnit::MPa)))]
    pub inlet: Pressure,
    /// Pressure in the return line; 0 to 100 MPa; nil when left out, with a warning if
    /// `no_load` is left out too.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Pressure::ZERO, max = Pressure::new(100.0, StressUnit::MPa)))]
    pub return_line: Option<Pressure>,
    /// Pressure difference that turns the drive head in the air at the same speed; 0 to
    /// 100 MPa; nil when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Pressure::ZERO, max = Pressure::new(100.0, StressUnit::MPa)))]
    pub no_load: Option<Pressure>,
    /// Gear in which they were read. Needed where the motor has two speeds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gear: Option<DriveGear>,
}

impl PressureReading {
    /// The pressures alone.
    pub fn pressures(&self) -> LinePressures {
        LinePressures {
            inlet: self.inlet,
            return_line: self.return_line,
            no_load: self.no_load,
        }
    }
}

/// A torque read on an indicator.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct GaugeReading {
    /// The torque; 0 to 1,000 kN m.
    #[validate(range(min = Torque::ZERO, max = Torque::new(1000.0, MomentUnit::KNM)))]
    pub torque: Torque,
}

/// What was seen while the final torque was taken. Each member is optional; what is not
/// stated is named in a warning, what is stated is judged.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct TorqueConditions {
    /// Whether the pile stopped on rock, a boulder, rubble or another obstruction. `true`
    /// is refused: such a torque says nothing of the ground.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stopped_by_obstruction: Option<bool>,
    /// Advance in one turn; 0 to 1 m. Below 85 % of `helix_pitch` the helices spin in the
    /// ground and the torque is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::ZERO, max = Size::new(1000.0, LengthUnit::Mm)))]
    pub advance_per_turn: Option<Size>,
    /// Pitch of the helices; 20 to 500 mm. Goes with `advance_per_turn`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::new(20.0, LengthUnit::Mm), max = Size::new(500.0, LengthUnit::Mm)))]
    pub helix_pitch: Option<Size>,
    /// Length of penetration over which the torque held and was averaged; 0 to 100 m. Shorter
    /// than 3 ft or than 3 diameters of the largest helix it is refused; needs `embedment`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Length::ZERO, max = Length::new(100.0, LengthUnit::M)))]
    pub steady_length: Option<Length>,
}
