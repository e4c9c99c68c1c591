//! Torque of a hydraulic drive head from its pressures, and the pressure for a torque.
//! Whether a torque may be correlated is not decided here.

use super::codes::{methods, refusals, warnings};
use super::drive_outcome::{DriveOutcome, FastGearOutcome, PressureOfTorque};
use super::equipment::{DriveGear, DriveHead, LinePressures};
use super::speed;
use crate::contract::{Issue, Work};
use crate::math::PI;
use crate::quantity::{Displacement, Pressure, StressUnit, Torque, round9};
use crate::source::HYDRAULIC_MOTOR;
use crate::trace::Trace;

/// Pressure difference that turns the pile.
///
/// dp = p_in - p_return - p_no_load
///
/// All in Pa; p_no_load the difference that turns the drive head in the air at the same
/// speed. Source: definition. Positive, or nothing turns.
pub fn pressure_difference(pressures: &LinePressures, trace: &mut Trace) -> Pressure {
    let back = pressures.return_line.unwrap_or(Pressure::ZERO);
    let idle = pressures.no_load.unwrap_or(Pressure::ZERO);
    trace.step(
        "dp",
        "p_in - p_return - p_no_load",
        pressures.inlet - back - idle,
        [
            ("p_in", pressures.inlet.into()),
            ("p_return", back.into()),
            ("p_no_load", idle.into()),
        ],
        &HYDRAULIC_MOTOR,
    )
}

/// Torque of a positive-displacement motor with a gear.
///
/// T = dp V eta / (2 pi)
///
/// T torque on the pile, N m; dp pressure difference, Pa; V volume for one turn of the pile
/// (displacement x gear ratio), m3; eta mechanical efficiency, 0 to 1. In US units T[ft-lbf] =
/// dp[psi] V[in3] eta / (24 pi). Source: work of one turn. Positive.
pub fn motor_torque(
    difference: Pressure,
    volume: Displacement,
    efficiency: f64,
    trace: &mut Trace,
) -> Torque {
    trace.step(
        "T",
        "dp V eta / (2 pi)",
        Torque::from_si(difference.si() * volume.si() * efficiency / (2.0 * PI)),
        [
            ("dp", difference.into()),
            ("V", volume.into()),
            ("eta", efficiency.into()),
        ],
        &HYDRAULIC_MOTOR,
    )
}

/// Pressure difference for a torque.
///
/// dp = 2 pi T / (V eta)
///
/// Inverse of [`motor_torque`], same symbols. Positive.
pub fn motor_pressure(
    torque: Torque,
    volume: Displacement,
    efficiency: f64,
    trace: &mut Trace,
) -> Pressure {
    trace.step(
        "dp",
        "2 pi T / (V eta)",
        Pressure::from_si(2.0 * PI * torque.si() / (volume.si() * efficiency)),
        [
            ("T", torque.into()),
            ("V", volume.into()),
            ("eta", efficiency.into()),
        ],
        &HYDRAULIC_MOTOR,
    )
}

/// Volume for one turn of the pile; of a two-speed motor in its slow gear.
///
/// V = V_m i
///
/// V_m displacement of the motor, m3 a turn; i gear ratio, 1 where the displacement includes
/// the gear or none is stated. Source: definition. Positive.
pub fn volume_per_pile_turn(drive: &DriveHead, trace: &mut Trace) -> Displacement {
    geared(drive.displacement, drive, trace)
}

/// Volume for one turn of the pile in one gear, by [`volume_per_pile_turn`]; none for the
/// fast gear of a motor that has one speed only.
pub fn volume_in_gear(
    drive: &DriveHead,
    gear: DriveGear,
    trace: &mut Trace,
) -> Option<Displacement> {
    let of_motor = match gear {
        DriveGear::Slow => drive.displacement,
        DriveGear::Fast => drive.fast_displacement?,
    };
    Some(geared(of_motor, drive, trace))
}

fn geared(of_motor: Displacement, drive: &DriveHead, trace: &mut Trace) -> Displacement {
    let gear = drive.gear_ratio.unwrap_or(1.0);
    trace.step(
        "V",
        "V_m i",
        of_motor * gear,
        [("V_m", of_motor.into()), ("i", gear.into())],
        &HYDRAULIC_MOTOR,
    )
}

/// Faults of the drive head that need more than one member to be seen.
pub(crate) fn faults(drive: &DriveHead, issues: &mut Vec<Issue>) {
    if drive.displacement_includes_gear == Some(true) && drive.gear_ratio.is_some() {
        issues.push(Issue::new(
            "/drive/gear_ratio",
            &refusals::GEAR_COUNTED_TWICE,
            "leave out `gear_ratio`, or say that the displacement does not include the gear",
        ));
    }
    speed::faults(drive, issues);
    if let Some(fast) = drive.fast_displacement
        && round9(fast / drive.displacement) >= 1.0
    {
        let shown = |volume: Displacement| Displacement::ROLE.in_both_systems(volume.si());
        issues.push(
            Issue::new(
                "/drive/fast_displacement",
                &refusals::FAST_GEAR_NOT_SMALLER,
                format!("{} in the fast gear", shown(fast)),
            )
            .limit(format!(
                "below {}, `displacement`",
                shown(drive.displacement)
            ))
            .source(&HYDRAULIC_MOTOR),
        );
    }
    if let Some(pressures) = &drive.working_pressures {
        no_difference(pressures, "/drive/working_pressures", issues);
    }
}

/// Adds a fault where return line and no load leave nothing of the inlet pressure.
pub(super) fn no_difference(
    pressures: &LinePressures,
    pointer: &'static str,
    issues: &mut Vec<Issue>,
) {
    let difference = pressure_difference(pressures, &mut Trace::off());
    // what is left of equal pressures in mixed units counts as nothing
    if difference <= pressures.inlet * 1e-9 {
        issues.push(
            Issue::new(
                pointer,
                &refusals::NO_PRESSURE_DIFFERENCE,
                format!(
                    "inlet less return line less no load is {} MPa ({} psi)",
                    round9(difference.get(StressUnit::MPa)),
                    round9(difference.get(StressUnit::Psi))
                ),
            )
            .limit("above 0")
            .source(&HYDRAULIC_MOTOR),
        );
    }
}

/// Difference and torque of a set of pressures, read in a gear the motor has.
pub(super) fn torque_of(
    drive: &DriveHead,
    gear: DriveGear,
    pressures: &LinePressures,
    work: &mut Work,
) -> Option<(Pressure, Torque)> {
    if pressures.return_line.is_none() && pressures.no_load.is_none() {
        work.warn(
            &warnings::BACK_PRESSURE_NOT_DEDUCTED,
            "the whole inlet pressure is counted as turning the pile",
        );
    }
    let volume = volume_in_gear(drive, gear, &mut work.trace)?;
    let difference = pressure_difference(pressures, &mut work.trace);
    let efficiency = drive.mechanical_efficiency_ratio;
    let torque = motor_torque(difference, volume, efficiency, &mut work.trace);
    Some((difference, torque))
}

/// What the return line and the turning of the drive head itself take of the inlet pressure,
/// where either was sent.
pub(super) fn back_pressure(drive: &DriveHead) -> Option<Pressure> {
    let pressures = drive
        .working_pressures
        .filter(|p| p.return_line.is_some() || p.no_load.is_some())?;
    let sent = |part: Option<Pressure>| part.unwrap_or(Pressure::ZERO);
    Some(sent(pressures.return_line) + sent(pressures.no_load))
}

/// A torque with its pressures in a gear of this volume.
pub(super) fn pressure_for(
    drive: &DriveHead,
    volume: Displacement,
    torque: Torque,
    trace: &mut Trace,
) -> PressureOfTorque {
    let efficiency = drive.mechanical_efficiency_ratio;
    let differential_pressure = motor_pressure(torque, volume, efficiency, trace);
    PressureOfTorque {
        torque,
        differential_pressure,
        inlet_pressure: back_pressure(drive).map(|back| differential_pressure + back),
    }
}

/// Everything the drive head is asked, in each of its gears.
pub(super) fn evaluate(
    drive: &DriveHead,
    required: Option<Torque>,
    rating: Option<Torque>,
    work: &mut Work,
) -> Option<DriveOutcome> {
    work.method(&methods::HYDRAULIC);
    if drive.mechanical_efficiency_ratio >= 1.0 {
        work.warn(
            &warnings::EFFICIENCY_OF_ONE,
            "otherwise the torque is overstated, usually by 5 to 15 %",
        );
    }
    let two = drive.fast_displacement.is_some();
    let slow_name = if two {
        "drive head, slow gear"
    } else {
        "drive head"
    };
    work.trace.about(|| slow_name.to_owned());
    let slow = in_gear(drive, DriveGear::Slow, (required, rating), work)?;
    work.trace.about(|| "drive head, fast gear".to_owned());
    let fast = in_gear(drive, DriveGear::Fast, (required, rating), work);
    work.trace.about(String::new);
    Some(DriveOutcome {
        displacement_per_pile_turn: slow.displacement_per_pile_turn,
        available: slow.available,
        for_required: slow.for_required,
        for_target: slow.for_target,
        at_rating: slow.at_rating,
        speed: slow.speed,
        fast,
    })
}

fn in_gear(
    drive: &DriveHead,
    gear: DriveGear,
    (required, rating): (Option<Torque>, Option<Torque>),
    work: &mut Work,
) -> Option<FastGearOutcome> {
    let volume = volume_in_gear(drive, gear, &mut Trace::off())?;
    let available = drive.working_pressures.and_then(|pressures| {
        let (differential_pressure, torque) = torque_of(drive, gear, &pressures, work)?;
        Some(PressureOfTorque {
            torque,
            differential_pressure,
            inlet_pressure: Some(pressures.inlet),
        })
    });
    let mut of = |torque: Torque| pressure_for(drive, volume, torque, &mut work.trace);
    Some(FastGearOutcome {
        displacement_per_pile_turn: volume,
        available,
        for_required: required.map(&mut of),
        for_target: drive.target_torque.map(&mut of),
        at_rating: rating.map(&mut of),
        speed: speed::of_gear(drive, gear, volume, work),
    })
}
