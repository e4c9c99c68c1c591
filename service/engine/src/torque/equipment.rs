//! Request types of the machine and the steel: hydraulic drive head, line pressures,
//! torsion of the shaft. No equation is here.

use serde::{Deserialize, Serialize};
use validator::Validate;

use crate::quantity::{
    Displacement, DisplacementUnit, Flow, FlowUnit, LengthUnit, MomentUnit, Pressure, Size,
    SteelStress, StressUnit, Torque,
};

/// Hydraulic drive head that turns the pile. Torque = pressure difference x displacement x
/// gear ratio x mechanical efficiency / (2 pi).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct DriveHead {
    /// Volume the motor displaces in one turn; 1 to 200,000 cm3 per turn. Of a two-speed
    /// motor, that of the slow gear, which gives the greater torque.
    #[validate(range(min = Displacement::new(1.0, DisplacementUnit::Cm3PerRev), max = Displacement::new(200_000.0, DisplacementUnit::Cm3PerRev)))]
    pub displacement: Displacement,
    /// Volume a two-speed motor displaces in one turn in its fast gear; 1 to 200,000 cm3 per
    /// turn, smaller than `displacement`. Gear ratio and efficiencies are those of both.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Displacement::new(1.0, DisplacementUnit::Cm3PerRev), max = Displacement::new(200_000.0, DisplacementUnit::Cm3PerRev)))]
    pub fast_displacement: Option<Displacement>,
    /// Turns of the motor for one turn of the pile; 1 to 200; 1 when left out. Not together
    /// with `displacement_includes_gear`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 1.0, max = 200.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 200))]
    pub gear_ratio: Option<f64>,
    /// Whether `displacement`, and `fast_displacement`, is the total of the drive head per turn
    /// of the pile, gear included; `false` when left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub displacement_includes_gear: Option<bool>,
    /// Mechanical efficiency of motor and gear; 0.5 to 1, usually 0.85 to 0.95. There is no
    /// default: 1 is right only where the displacement was found from a torque calibration of
    /// this drive head, and is answered with a warning.
    #[validate(range(min = 0.5, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 1))]
    pub mechanical_efficiency_ratio: f64,
    /// Highest working pressures. With them the available torque is given and, with a
    /// `demand`, judged against the required torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub working_pressures: Option<LinePressures>,
    /// Oil flow into the motor; 0.1 to 5,000 L/min. With it the turning speed of the pile is
    /// given in each gear; needs `volumetric_efficiency_ratio`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Flow::new(0.1, FlowUnit::LPerMin), max = Flow::new(5000.0, FlowUnit::LPerMin)))]
    pub flow: Option<Flow>,
    /// Part of the flow that turns the motor and does not leak past it; 0.5 to 1, usually 0.9 to
    /// 0.98. Goes with `flow`; there is no default.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.5, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 1))]
    pub volumetric_efficiency_ratio: Option<f64>,
    /// Pitch of the helices; 20 to 500 mm. With `flow` it gives the speed at which the pile goes
    /// down, one pitch a turn.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Size::new(20.0, LengthUnit::Mm), max = Size::new(500.0, LengthUnit::Mm)))]
    pub helix_pitch: Option<Size>,
    /// A torque for which the pressure is asked; 0 to 1,000 kN m.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Torque::ZERO, max = Torque::new(1000.0, MomentUnit::KNM)))]
    pub target_torque: Option<Torque>,
}

/// Gear of a two-speed motor.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum DriveGear {
    /// The slow one with the greater torque, of `displacement`; the only one of other motors.
    Slow,
    /// The fast one, of `fast_displacement`.
    Fast,
}

/// Pressures at the drive head. What turns the pile is inlet less return line less no load.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct LinePressures {
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
}

/// Torque the shaft bears during installation.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ShaftTorsion {
    /// Greatest installation torque the supplier's evaluation report or test allows for
    /// shaft, coupling and bolts together; 10 N m to 1,000 kN m. This is the limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = Torque::new(10.0, MomentUnit::NM), max = Torque::new(1000.0, MomentUnit::KNM)))]
    pub rating: Option<Torque>,
    /// Steel of the shaft, for an estimate of the bare section. Couplings and bolt holes are
    /// not in it, so it advises only and never stands in for `rating`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(nested)]
    pub section: Option<ShaftTorsionSection>,
}

/// Steel of the shaft. A round shaft needs its `wall_thickness`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, Validate)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(deny_unknown_fields)]
pub struct ShaftTorsionSection {
    /// Yield strength of the shaft; 150 to 1,000 MPa.
    #[validate(range(min = SteelStress::new(150.0, StressUnit::MPa), max = SteelStress::new(1000.0, StressUnit::MPa)))]
    pub yield_strength: SteelStress,
    /// Design wall over nominal wall of a round shaft; 0.5 to 1; 0.93 when left out
    /// (electric-resistance-welded tube and pipe). Send 1 for a certified or measured wall.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[validate(range(min = 0.5, max = 1.0))]
    #[cfg_attr(feature = "openapi", schema(minimum = 0.5, maximum = 1))]
    pub design_wall_ratio: Option<f64>,
}
