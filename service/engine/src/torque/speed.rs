//! How fast the drive head turns the pile, and how fast the pile goes down. What torque it
//! gives is in `hydraulics.rs`.

use super::codes::{methods, warnings};
use super::drive_outcome::PileSpeed;
use super::equipment::{DriveGear, DriveHead};
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Work, utilisation};
use crate::quantity::{
    Displacement, Flow, PenetrationRate, RotationUnit, RotationalSpeed, Size, round9,
};
use crate::source::{HYDRAULIC_MOTOR, Sourced, TURNING_SPEED};
use crate::trace::Trace;

/// Turning speed above which the answer warns.
pub static HIGH_SPEED: Sourced<RotationalSpeed> = Sourced::new(
    "high_turning_speed",
    RotationalSpeed::new(30.0, RotationUnit::Rpm),
    &TURNING_SPEED,
);

/// Turning speed of the pile.
///
/// n = Q eta_v / V
///
/// n turns of the pile, 1/s; Q flow into the motor, m3/s; eta_v volumetric efficiency, 0 to 1;
/// V volume for one turn of the pile, m3. In US units rpm = 231 gpm eta_v / V[in3]. Source:
/// volume of one turn. Positive.
pub fn turning_speed(
    flow: Flow,
    volumetric_efficiency: f64,
    volume: Displacement,
    trace: &mut Trace,
) -> RotationalSpeed {
    trace.step(
        "n",
        "Q eta_v / V",
        RotationalSpeed::from_si(flow.si() * volumetric_efficiency / volume.si()),
        [
            ("Q", flow.into()),
            ("eta_v", volumetric_efficiency.into()),
            ("V", volume.into()),
        ],
        &HYDRAULIC_MOTOR,
    )
}

/// Speed at which a pile goes down that advances its whole pitch in a turn.
///
/// v = n p
///
/// n turning speed, 1/s; p helix pitch, m. Source: definition of the pitch. Positive.
pub fn penetration_rate(speed: RotationalSpeed, pitch: Size, trace: &mut Trace) -> PenetrationRate {
    trace.step(
        "v",
        "n p",
        PenetrationRate::from_si(speed.si() * pitch.si()),
        [("n", speed.into()), ("p", pitch.into())],
        &crate::source::DERIVED,
    )
}

/// Members of the drive head that go together.
pub(super) fn faults(drive: &DriveHead, issues: &mut Vec<Issue>) {
    let mut needed = |what: &str| {
        issues.push(Issue::new("/drive", &MISSING_MEMBER, what));
    };
    match (drive.flow, drive.volumetric_efficiency_ratio) {
        (Some(_), None) => needed("`volumetric_efficiency_ratio` is needed with `flow`"),
        (None, Some(_)) => needed("`flow` is needed with `volumetric_efficiency_ratio`"),
        _ => {}
    }
    if drive.helix_pitch.is_some() && drive.flow.is_none() {
        needed("`flow` is needed with `helix_pitch`");
    }
}

/// The speed in one gear, where a flow is stated.
pub(super) fn of_gear(
    drive: &DriveHead,
    gear: DriveGear,
    volume: Displacement,
    work: &mut Work,
) -> Option<PileSpeed> {
    let (flow, efficiency) = drive.flow.zip(drive.volumetric_efficiency_ratio)?;
    work.method(&methods::SPEED);
    let rotational_speed = turning_speed(flow, efficiency, volume, &mut work.trace);
    let limit = work.take(&HIGH_SPEED);
    if !utilisation(rotational_speed.si(), limit.si()).1 {
        let name = match (gear, drive.fast_displacement) {
            (_, None) => "",
            (DriveGear::Slow, _) => " in the slow gear",
            (DriveGear::Fast, _) => " in the fast gear",
        };
        let rpm = |speed: RotationalSpeed| round9(speed.get(RotationUnit::Rpm));
        work.warn(
            &warnings::TURNS_FAST,
            format!(
                "{} rpm{name}, above {} rpm",
                rpm(rotational_speed),
                rpm(limit)
            ),
        );
    }
    Some(PileSpeed {
        rotational_speed,
        penetration_rate: drive
            .helix_pitch
            .map(|pitch| penetration_rate(rotational_speed, pitch, &mut work.trace)),
    })
}
