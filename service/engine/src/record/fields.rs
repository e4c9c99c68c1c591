//! Where each field of a record is looked for, and whether it is there. What the log can show
//! is taken from the log. Which list asks for which field is in `completeness.rs`.

use super::documents::{RecordDocuments, RecordField};
use super::history::PileStop;
use super::outcome::{LogRow, RowStanding};
use super::request::{Request, TorqueTarget};
use crate::contract::utilisation;
use crate::quantity::{Length, LengthUnit};
use crate::source::{NYC_1814_12_RECORD, Sourced};
use crate::torque::TorqueFactorChoice;

/// Distance between rows of a log that counts as a torque for each foot of depth.
pub static EACH_FOOT: Sourced<Length> = Sourced::new(
    "torque_for_each_foot",
    Length::new(1.0, LengthUnit::Ft),
    &NYC_1814_12_RECORD,
);

/// How much of a field is there.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Found {
    There,
    Missing,
    /// Missing, with what is missing of it.
    InPart(String),
}

impl Found {
    fn part(told: impl Into<String>) -> Self {
        Self::InPart(told.into())
    }

    fn when(there: bool) -> Self {
        if there { Self::There } else { Self::Missing }
    }
}

use RecordField as F;

/// Name of a field as it stands on the wire.
pub(super) fn name(field: RecordField) -> &'static str {
    match field {
        F::PlanNumber => "plan_number",
        F::Equipment => "equipment",
        F::PileDimensions => "pile_dimensions",
        F::SpecificationSheet => "specification_sheet",
        F::HelixPitch => "helix_pitch",
        F::TipElevation => "tip_elevation",
        F::FinalDepth => "final_depth",
        F::FinalTorque => "final_torque",
        F::TorquePerFoot => "torque_per_foot",
        F::FinalAdvance => "final_advance",
        F::RotationSpeed => "rotation_speed",
        F::IndicatorModel => "indicator_model",
        F::CalibrationRecord => "calibration_record",
        F::RequiredTorque => "required_torque",
        F::TorqueBasis => "torque_basis",
        F::FieldWelds => "field_welds",
        F::ContinuousInspection => "continuous_inspection",
        F::Inspector => "inspector",
        F::Operator => "operator",
        F::Date => "date",
        F::Times => "times",
        F::Position => "position",
        F::Inclination => "inclination",
        F::CutOff => "cut_off",
        F::Sections => "sections",
        F::Bolts => "bolts",
        F::StopReason => "stop_reason",
        F::Deviations => "deviations",
        F::Weather => "weather",
        F::Photographs => "photographs",
    }
}

/// Member of the request that carries a field.
pub(super) fn member(field: RecordField) -> &'static str {
    match field {
        F::PlanNumber => "label",
        F::Equipment => "documents.equipment",
        F::PileDimensions => "pile.shaft",
        F::SpecificationSheet => "documents.specification_sheet",
        F::HelixPitch => "pile.helix_pitch",
        F::TipElevation => "documents.tip_elevation",
        F::FinalDepth => "log, column `depth`",
        F::FinalTorque | F::TorquePerFoot => "log, column `torque` or `inlet_pressure`",
        F::FinalAdvance => "log, column `advance_per_turn` or `turns`",
        F::RotationSpeed => "log, column `rotation_speed`",
        F::IndicatorModel => "documents.indicator_model",
        F::CalibrationRecord => "documents.calibration_record and indicator.calibrated_on",
        F::RequiredTorque => "target",
        F::TorqueBasis => "target.stated.reference or torque_factor.own",
        F::FieldWelds => "documents.field_welds",
        F::ContinuousInspection => "documents.continuous_inspection",
        F::Inspector => "documents.inspector",
        F::Operator => "documents.operator",
        F::Date => "documents.date or indicator.driven_on",
        F::Times => "documents.times",
        F::Position => "position.along and position.off_line",
        F::Inclination => "position.inclination",
        F::CutOff => "documents.cut_off_elevation",
        F::Sections => "documents.sections",
        F::Bolts => "documents.bolts",
        F::StopReason => "stop",
        F::Deviations => "documents.deviations",
        F::Weather => "documents.weather",
        F::Photographs => "documents.photographs",
    }
}

/// Whether a field is there. `rows` is the log as it was read, `window_from` the depth at
/// which the torque at the end begins to be averaged, where it could be.
pub(super) fn look(
    field: RecordField,
    request: &Request,
    rows: &[LogRow],
    window_from: Option<Length>,
) -> Found {
    let blank = RecordDocuments::default();
    let papers = request.documents.as_ref().unwrap_or(&blank);
    let text = |text: &Option<String>| Found::when(text.is_some());
    match field {
        F::PlanNumber => Found::when(request.label.is_some()),
        F::Equipment => text(&papers.equipment),
        F::PileDimensions if request.pile.shaft.is_none() => Found::part("the shaft"),
        F::PileDimensions => Found::There,
        F::SpecificationSheet => text(&papers.specification_sheet),
        F::HelixPitch => Found::when(request.pile.helix_pitch.is_some()),
        F::TipElevation => Found::when(papers.tip_elevation.is_some()),
        F::FinalDepth => final_depth(request),
        F::FinalTorque => final_torque(request, rows),
        F::TorquePerFoot => torque_per_foot(request, rows),
        F::FinalAdvance => final_advance(request, rows),
        F::RotationSpeed => rotation_speed(rows, window_from),
        F::IndicatorModel => text(&papers.indicator_model),
        F::CalibrationRecord => calibration(request, papers),
        F::RequiredTorque => Found::when(request.target.is_some()),
        F::TorqueBasis => torque_basis(request),
        F::FieldWelds => text(&papers.field_welds),
        F::ContinuousInspection => match papers.continuous_inspection {
            Some(true) => Found::There,
            Some(false) => Found::part("the inspector was not there all the time"),
            None => Found::Missing,
        },
        F::Inspector => text(&papers.inspector),
        F::Operator => text(&papers.operator),
        F::Date => {
            let driven = request
                .indicator
                .as_ref()
                .and_then(|i| i.driven_on.as_ref());
            Found::when(papers.date.is_some() || driven.is_some())
        }
        F::Times => text(&papers.times),
        F::Position => position(request),
        F::Inclination => Found::when(request.position.is_some_and(|p| p.inclination.is_some())),
        F::CutOff => Found::when(papers.cut_off_elevation.is_some()),
        F::Sections => text(&papers.sections),
        F::Bolts => text(&papers.bolts),
        F::StopReason if still_turning(request) => Found::part("the pile has not stopped"),
        F::StopReason => Found::when(request.stop.is_some()),
        F::Deviations => text(&papers.deviations),
        F::Weather => text(&papers.weather),
        F::Photographs => text(&papers.photographs),
    }
}

fn still_turning(request: &Request) -> bool {
    request.stop == Some(PileStop::StillTurning)
}

fn final_depth(request: &Request) -> Found {
    if still_turning(request) {
        return Found::part("the pile has not stopped");
    }
    Found::There
}

fn depth(depth: f64) -> String {
    Length::ROLE.in_both_systems(depth)
}

/// The torque at the last row, turned into ground that was not turned before.
fn final_torque(request: &Request, rows: &[LogRow]) -> Found {
    if still_turning(request) {
        return Found::part("the pile has not stopped");
    }
    if request.stop == Some(PileStop::Obstruction) {
        return Found::part("the last torque is that of an obstruction, not of a bearing zone");
    }
    let Some(last) = rows.last() else {
        return Found::Missing;
    };
    match last.torque {
        None => Found::part(format!(
            "no torque at the last row, {}",
            depth(last.depth.si())
        )),
        Some(_) if last.standing == RowStanding::NotFresh => Found::part(
            "the last torque was read in a hole that was there before, not in a bearing zone",
        ),
        Some(_) => Found::There,
    }
}

/// Rows with a torque at most 1 ft apart from the ground, or the base of a pre-drilled hole,
/// to the greatest depth.
fn torque_per_foot(request: &Request, rows: &[LogRow]) -> Found {
    let pre_drilled = request.history.and_then(|h| h.pre_drilled_depth);
    let from = pre_drilled.map_or(0.0, |d| d.si());
    let far = |from: f64, to: f64| !utilisation(to - from, EACH_FOOT.value.si()).1;
    let gap = |from, to| {
        let told = format!("no torque between {} and {}", depth(from), depth(to));
        Found::part(told)
    };
    let mut reached = from;
    for row in rows.iter().filter(|row| row.torque.is_some()) {
        let at = row.depth.si();
        if far(reached, at) {
            return gap(reached, at);
        }
        reached = reached.max(at);
    }
    let end = rows.iter().map(|row| row.depth.si()).fold(from, f64::max);
    if far(reached, end) {
        return gap(reached, end);
    }
    Found::There
}

/// The last row with a torque.
fn last_torque(rows: &[LogRow]) -> Option<&LogRow> {
    rows.iter().rev().find(|row| row.torque.is_some())
}

fn final_advance(request: &Request, rows: &[LogRow]) -> Found {
    if still_turning(request) {
        return Found::part("the pile has not stopped");
    }
    match last_torque(rows) {
        Some(row) if row.advance_ratio.is_some() => Found::There,
        Some(_) if request.pile.helix_pitch.is_none() => {
            Found::part("`pile.helix_pitch`, which the advance in a turn is measured by")
        }
        Some(row) => Found::part(format!(
            "no advance at the final torque, {}",
            depth(row.depth.si())
        )),
        None => Found::Missing,
    }
}

/// The speed at every torque that the torque at the end is averaged over; at the last one
/// where there is no average.
fn rotation_speed(rows: &[LogRow], window_from: Option<Length>) -> Found {
    if rows.iter().all(|row| row.rotation_speed.is_none()) {
        return Found::Missing;
    }
    let counts = |row: &&LogRow| match window_from {
        Some(from) => row.torque.is_some() && row.depth.si() > from.si() + 1e-9,
        None => last_torque(rows).is_some_and(|last| std::ptr::eq(last, *row)),
    };
    match rows
        .iter()
        .filter(counts)
        .find(|row| row.rotation_speed.is_none())
    {
        Some(row) => Found::part(format!("no speed at {}", depth(row.depth.si()))),
        None => Found::There,
    }
}

fn calibration(request: &Request, papers: &RecordDocuments) -> Found {
    let calibrated = request
        .indicator
        .as_ref()
        .and_then(|i| i.calibrated_on.as_ref());
    match (&papers.calibration_record, calibrated) {
        (Some(_), Some(_)) => Found::There,
        (Some(_), None) => Found::part("the day of calibration, `indicator.calibrated_on`"),
        (None, Some(_)) => Found::part("the record itself, `documents.calibration_record`"),
        (None, None) => Found::Missing,
    }
}

/// What the required torque rests on: a reference beside it, or tests behind the factor.
fn torque_basis(request: &Request) -> Found {
    let stated = match &request.target {
        Some(TorqueTarget::Stated(stated)) => stated.reference.is_some(),
        Some(TorqueTarget::FromDemand(_)) => {
            if request.torque_factor.is_none() {
                false
            } else if matches!(request.torque_factor, Some(TorqueFactorChoice::Own(_))) {
                true
            } else {
                return Found::part("a published torque factor is no test on the site");
            }
        }
        None => false,
    };
    Found::when(stated)
}

fn position(request: &Request) -> Found {
    let Some(position) = request.position else {
        return Found::Missing;
    };
    match (position.along, position.off_line) {
        (Some(_), Some(_)) => Found::There,
        (None, None) => Found::Missing,
        (None, Some(_)) => Found::part("`position.along`"),
        (Some(_), None) => Found::part("`position.off_line`"),
    }
}
