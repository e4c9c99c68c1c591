//! When a torque may be turned into a capacity at all: obstruction, spin-out, length of
//! steady torque, depth of the top helix. The correlation itself is in `correlation.rs`.

use super::codes::{methods, refusals, warnings};
use super::request::{InstalledTorque, Request, TorqueConditions, TorqueEmbedment};
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Work, utilisation};
use crate::quantity::{Length, LengthUnit, Size, in_both_systems, round9};
use crate::source::{
    AC358_AVERAGING_3_FT, AC358_COMPRESSION_EMBEDMENT, AC358_TENSION_EMBEDMENT,
    AC358_TORQUE_AVERAGING, BEARWELL_CHOICE, NYC_1814_12, Reference, Sourced,
    TORQUE_AT_OBSTRUCTION,
};
use crate::trace::Trace;

/// Least advance in one turn over helix pitch.
pub static LEAST_ADVANCE: Sourced<f64> = Sourced::new("least_advance_ratio", 0.85, &NYC_1814_12);
/// Advance over pitch above which the answer warns.
pub static HIGH_ADVANCE: Sourced<f64> = Sourced::new("high_advance_ratio", 1.15, &BEARWELL_CHOICE);
/// Diameters of the largest helix over which the torque is averaged.
pub static AVERAGING_DIAMETERS: Sourced<f64> =
    Sourced::new("averaging_diameters", 3.0, &AC358_TORQUE_AVERAGING);
/// Length over which the torque is averaged at least.
pub static AVERAGING_LEAST: Sourced<Length> = Sourced::new(
    "averaging_least_length",
    Length::new(3.0, LengthUnit::Ft),
    &AC358_AVERAGING_3_FT,
);
/// Diameters of the largest helix the top helix must be deep for tension by torque.
pub static TENSION_DIAMETERS: Sourced<f64> =
    Sourced::new("tension_depth_diameters", 12.0, &AC358_TENSION_EMBEDMENT);
/// Depth of the top helix below which compression by torque warns.
pub static COMPRESSION_DEPTH: Sourced<Length> = Sourced::new(
    "compression_depth",
    Length::new(5.0, LengthUnit::Ft),
    &AC358_COMPRESSION_EMBEDMENT,
);

/// Advance in one turn over helix pitch.
///
/// AR = a / p
///
/// a advance in one turn, m; p helix pitch, m. At least 0.85 when the final torque is taken:
/// New York City Building Code 1814.12, item 1.7. Positive.
pub fn advance_ratio(advance: Size, pitch: Size, trace: &mut Trace) -> f64 {
    trace.step(
        "AR",
        "a / p",
        advance / pitch,
        [("a", advance.into()), ("p", pitch.into())],
        &NYC_1814_12,
    )
}

/// Whether an advance is enough, on the limit passing.
pub fn advances(advance: Size, pitch: Size) -> bool {
    utilisation(LEAST_ADVANCE.value * pitch.si(), advance.si()).1
}

/// Length of penetration over which the final torque is averaged.
///
/// L_avg = max(3 ft, 3 D)
///
/// D diameter of the largest helix, m. Source: evaluation practice under AC358 (3 D seen
/// quoted, 3 ft from memory); the longer is asked for. Positive.
pub fn averaging_length(largest_helix: Size, trace: &mut Trace) -> Length {
    let diameters = Length::from(largest_helix) * AVERAGING_DIAMETERS.value;
    trace.step(
        "L_avg",
        "max(3 ft, 3 D)",
        AVERAGING_LEAST.value.max(diameters),
        [("D", largest_helix.into())],
        averaging_source(largest_helix),
    )
}

/// Least depth of the top helix for tension by torque.
///
/// H_min = 12 D
///
/// D diameter of the largest helix, m; H_min below ground, m. Source: evaluation practice
/// under AC358, seen quoted. Positive.
pub fn least_depth_in_tension(largest_helix: Size, trace: &mut Trace) -> Length {
    trace.step(
        "H_min",
        "12 D",
        Length::from(largest_helix) * TENSION_DIAMETERS.value,
        [("D", largest_helix.into())],
        &AC358_TENSION_EMBEDMENT,
    )
}

fn averaging_source(largest_helix: Size) -> &'static Reference {
    if Length::from(largest_helix) * AVERAGING_DIAMETERS.value > AVERAGING_LEAST.value {
        &AC358_TORQUE_AVERAGING
    } else {
        &AC358_AVERAGING_3_FT
    }
}

/// Why the installed torque may not be correlated.
pub(super) fn faults(request: &Request, issues: &mut Vec<Issue>) {
    let Some(conditions) = request.installed.as_ref().and_then(|i| i.conditions) else {
        return;
    };
    if conditions.stopped_by_obstruction == Some(true) {
        issues.push(
            Issue::new(
                "/installed/conditions/stopped_by_obstruction",
                &refusals::STOPPED_BY_OBSTRUCTION,
                "a torque against rock, a boulder or rubble is not correlated with capacity",
            )
            .source(&TORQUE_AT_OBSTRUCTION),
        );
    }
    advance_fault(&conditions, issues);
    plateau_fault(&conditions, request.embedment.as_ref(), issues);
}

fn advance_fault(conditions: &TorqueConditions, issues: &mut Vec<Issue>) {
    let missing = |name: &str, other: &str| {
        Issue::new(
            "/installed/conditions",
            &MISSING_MEMBER,
            format!("`{name}` is needed with `{other}`"),
        )
    };
    match (conditions.advance_per_turn, conditions.helix_pitch) {
        (None, None) => {}
        (Some(_), None) => issues.push(missing("helix_pitch", "advance_per_turn")),
        (None, Some(_)) => issues.push(missing("advance_per_turn", "helix_pitch")),
        (Some(advance), Some(pitch)) if !advances(advance, pitch) => issues.push(
            Issue::new(
                "/installed/conditions/advance_per_turn",
                &refusals::SPIN_OUT,
                format!(
                    "advance {} mm a turn is {} of the pitch",
                    round9(advance.get(LengthUnit::Mm)),
                    round9(advance / pitch)
                ),
            )
            .limit(format!(
                "at least {} mm a turn, {} of the pitch",
                round9(pitch.get(LengthUnit::Mm) * LEAST_ADVANCE.value),
                LEAST_ADVANCE.value
            ))
            .source(&NYC_1814_12),
        ),
        _ => {}
    }
}

fn plateau_fault(
    conditions: &TorqueConditions,
    embedment: Option<&TorqueEmbedment>,
    issues: &mut Vec<Issue>,
) {
    let Some(steady) = conditions.steady_length else {
        return;
    };
    let Some(embedment) = embedment else {
        issues.push(Issue::new(
            "",
            &MISSING_MEMBER,
            "`embedment` is needed: `steady_length` is compared with helix diameters",
        ));
        return;
    };
    let helix = embedment.largest_helix_diameter;
    let needed = averaging_length(helix, &mut Trace::off());
    if !utilisation(needed.si(), steady.si()).1 {
        issues.push(
            Issue::new(
                "/installed/conditions/steady_length",
                &refusals::PLATEAU_TOO_SHORT,
                format!("steady over {}", in_both_systems(steady.si(), "m")),
            )
            .limit(format!("at least {}", in_both_systems(needed.si(), "m")))
            .source(averaging_source(helix)),
        );
    }
}

/// Why tension by torque is withheld, if it is.
pub(super) fn too_shallow_for_tension(embedment: &TorqueEmbedment) -> Option<Issue> {
    let needed = least_depth_in_tension(embedment.largest_helix_diameter, &mut Trace::off());
    if utilisation(needed.si(), embedment.top_helix_depth.si()).1 {
        return None;
    }
    let issue = Issue::new(
        "/embedment/top_helix_depth",
        &refusals::TENSION_TOO_SHALLOW,
        format!(
            "top helix at {}",
            in_both_systems(embedment.top_helix_depth.si(), "m")
        ),
    );
    Some(
        issue
            .limit(format!(
                "at least {}, 12 diameters of the largest helix",
                in_both_systems(needed.si(), "m")
            ))
            .source(&AC358_TENSION_EMBEDMENT),
    )
}

/// What the conditions say beside refusing: numbers and warnings.
pub(super) fn judge(
    installed: &InstalledTorque,
    embedment: Option<&TorqueEmbedment>,
    work: &mut Work,
) -> (Option<f64>, Option<Length>) {
    work.method(&methods::CONDITIONS);
    let conditions = installed.conditions.unwrap_or(TorqueConditions {
        stopped_by_obstruction: None,
        advance_per_turn: None,
        helix_pitch: None,
        steady_length: None,
    });
    warn_of_silence(&conditions, work);
    let ratio = match (conditions.advance_per_turn, conditions.helix_pitch) {
        (Some(advance), Some(pitch)) => Some(advance_ratio(advance, pitch, &mut work.trace)),
        _ => None,
    };
    if let Some(ratio) = ratio
        && round9(ratio) > HIGH_ADVANCE.value
    {
        work.warn(
            &warnings::ADVANCE_ABOVE_PITCH,
            format!("{} of the pitch in a turn", round9(ratio)),
        );
    }
    let length = embedment.map(|e| {
        if averaging_source(e.largest_helix_diameter) == &AC358_AVERAGING_3_FT {
            work.take(&AVERAGING_LEAST);
        }
        averaging_length(e.largest_helix_diameter, &mut work.trace)
    });
    (ratio, length)
}

fn warn_of_silence(conditions: &TorqueConditions, work: &mut Work) {
    let silent: Vec<_> = [
        ("obstruction", conditions.stopped_by_obstruction.is_none()),
        ("advance per turn", conditions.advance_per_turn.is_none()),
        (
            "length of steady torque",
            conditions.steady_length.is_none(),
        ),
    ]
    .into_iter()
    .filter_map(|(name, missing)| missing.then_some(name))
    .collect();
    if !silent.is_empty() {
        work.warn(
            &warnings::CONDITIONS_NOT_STATED,
            format!("not stated: {}", silent.join(", ")),
        );
    }
}
