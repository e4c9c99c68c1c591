//! The card for the cab: steps of the target and on to the shaft limit, with the pressures
//! of each gear. Torque and pressure themselves are in `hydraulics.rs`.

use super::card::{CabCard, CabCardOutcome, CabGear, CabMark, CabTargetOf};
use super::codes::{methods, refusals, warnings};
use super::drive_outcome::PressureOfTorque;
use super::equipment::{DriveGear, DriveHead};
use super::hydraulics::{back_pressure, pressure_for, torque_of, volume_in_gear};
use super::request::Request;
use super::rounding::{Whole, round_pressure, round_torque};
use crate::answer_table::{AnswerColumn, AnswerTable, Cell};
use crate::contract::{Issue, Refusal, Work, utilisation};
use crate::limits::CAB_CARD_STEPS;
use crate::quantity::{Displacement, Pressure, RATIO, Shown, Torque, round9};
use crate::source::{BEARWELL_CHOICE, Sourced};
use crate::trace::Trace;

/// Steps of the card as a part of the target.
pub static STEP: Sourced<f64> = Sourced::new("cab_card_step", 0.1, &BEARWELL_CHOICE);

/// Whether something is sent that can be the target.
pub(super) fn faults(request: &Request, issues: &mut Vec<Issue>) {
    let loaded = request.demand.is_some_and(|d| {
        [d.compression, d.tension]
            .into_iter()
            .flatten()
            .any(|load| load.si() > 0.0)
    });
    let aimed = request
        .drive
        .and_then(|d| d.target_torque)
        .is_some_and(|t| t > Torque::ZERO);
    if request.cab_card.is_some() && !loaded && !aimed {
        issues.push(no_target());
    }
}

fn no_target() -> Issue {
    Issue::new(
        "/cab_card",
        &refusals::CARD_WITHOUT_TARGET,
        "neither `demand` nor `drive.target_torque` gives a torque above nil",
    )
}

/// A gear with the volume of one turn and what the working pressures reach in it.
struct Gear {
    gear: DriveGear,
    volume: Displacement,
    available: Option<Torque>,
}

/// The card, where it was asked for.
pub(super) fn card(
    request: &Request,
    required: Option<Torque>,
    rating: Option<Torque>,
    work: &mut Work,
) -> Result<Option<CabCardOutcome>, Refusal> {
    let Some(asked) = &request.cab_card else {
        return Ok(None);
    };
    work.method(&methods::CAB_CARD);
    let (target, target_of) = target(request, required).ok_or_else(no_target)?;
    let step = asked.step_ratio.unwrap_or_else(|| work.take(&STEP));
    let parts = parts(asked, step, target, rating)?;
    let gears = gears(request.drive.as_ref());
    let drive = request.drive.as_ref();
    let mark = |torque, way| mark(torque, way, drive, &gears);
    let out = CabCardOutcome {
        target: mark(target, Whole::Up),
        target_of,
        shaft_limit: rating.map(|rating| mark(rating, Whole::Down)),
        table: table(&parts, drive, &gears),
    };
    warn(&out, drive, request.demand.is_some(), work);
    Ok(Some(out))
}

/// The greater of the required torque and the target torque.
fn target(request: &Request, required: Option<Torque>) -> Option<(Torque, CabTargetOf)> {
    let sent = request.drive.and_then(|d| d.target_torque);
    let required = required.map(|t| (t, CabTargetOf::Required));
    let sent = sent.map(|t| (t, CabTargetOf::TargetTorque));
    let greater = match (required, sent) {
        (Some(r), Some(s)) if s.0 > r.0 => s,
        (Some(r), _) => r,
        (None, s) => s?,
    };
    (greater.0 > Torque::ZERO).then_some(greater)
}

/// Part of the target and torque of each row.
fn parts(
    asked: &CabCard,
    step: f64,
    target: Torque,
    rating: Option<Torque>,
) -> Result<Vec<(f64, Torque)>, Refusal> {
    let end = rating.unwrap_or(target);
    if end / (target * step) > CAB_CARD_STEPS as f64 {
        let pointer = asked
            .step_ratio
            .map_or("/cab_card", |_| "/cab_card/step_ratio");
        let detail = format!(
            "{} a step, and the shaft limit is {}",
            Torque::ROLE.in_both_systems((target * step).si()),
            Torque::ROLE.in_both_systems(end.si())
        );
        return Err(Issue::new(pointer, &refusals::CARD_TOO_LONG, detail)
            .limit(format!("{CAB_CARD_STEPS} steps"))
            .into());
    }
    let within = |torque: Torque, end: Torque| utilisation(torque.si(), end.si()).1;
    let mut rows = Vec::new();
    let mut put = |part: f64, torque: Torque| {
        let double = rows
            .last()
            .is_some_and(|last: &(f64, Torque)| round9(last.1 / torque) >= 1.0);
        if !double {
            rows.push((part, torque));
        }
    };
    let mut row = 1;
    let mut target_put = false;
    loop {
        let part = round9(f64::from(row) * step);
        let torque = target * part;
        // a step that does not meet the target leaves it a row of its own
        if part >= 1.0 && !target_put {
            target_put = true;
            if within(target, end) {
                put(1.0, target);
            }
        }
        if !within(torque, end) {
            break;
        }
        put(part, torque);
        row += 1;
    }
    put(end / target, end);
    Ok(rows)
}

fn gears(drive: Option<&DriveHead>) -> Vec<Gear> {
    let Some(drive) = drive else {
        return Vec::new();
    };
    [DriveGear::Slow, DriveGear::Fast]
        .into_iter()
        .filter_map(|gear| {
            let off = &mut Work::default();
            Some(Gear {
                gear,
                volume: volume_in_gear(drive, gear, &mut Trace::off())?,
                available: drive
                    .working_pressures
                    .and_then(|p| torque_of(drive, gear, &p, off))
                    .map(|found| found.1),
            })
        })
        .collect()
}

fn mark(torque: Torque, way: Whole, drive: Option<&DriveHead>, gears: &[Gear]) -> CabMark {
    let of = |gear: &Gear| {
        let found = pressure_for(drive?, gear.volume, torque, &mut Trace::off());
        Some(CabGear {
            gear: gear.gear,
            differential_pressure: found.differential_pressure,
            inlet_pressure: found.inlet_pressure,
            cab: round_pressure(seen(&found), way),
            reached: gear
                .available
                .map(|available| utilisation(torque.si(), available.si()).1),
        })
    };
    CabMark {
        torque,
        cab: round_torque(torque, way),
        gears: gears.iter().filter_map(of).collect(),
    }
}

/// The pressure the operator watches.
fn seen(found: &PressureOfTorque) -> Pressure {
    found.inlet_pressure.unwrap_or(found.differential_pressure)
}

fn table(parts: &[(f64, Torque)], drive: Option<&DriveHead>, gears: &[Gear]) -> AnswerTable {
    let inlet = drive.is_some_and(|d| back_pressure(d).is_some());
    let mut columns = vec![
        AnswerColumn::of("part_of_target", RATIO),
        AnswerColumn::of("torque", Torque::ROLE),
    ];
    for gear in gears {
        let (difference, at_inlet) = match (gears.len(), gear.gear) {
            (1, _) => ("differential_pressure", "inlet_pressure"),
            (_, DriveGear::Slow) => ("slow_differential_pressure", "slow_inlet_pressure"),
            (_, DriveGear::Fast) => ("fast_differential_pressure", "fast_inlet_pressure"),
        };
        columns.push(AnswerColumn::of(difference, Pressure::ROLE));
        if inlet {
            columns.push(AnswerColumn::of(at_inlet, Pressure::ROLE));
        }
    }
    let row = |(part, torque): &(f64, Torque)| {
        let mut cells = vec![Cell::of(*part), Cell::of(*torque)];
        for (drive, gear) in drive.iter().flat_map(|d| gears.iter().map(move |g| (d, g))) {
            let found = pressure_for(drive, gear.volume, *torque, &mut Trace::off());
            cells.push(Cell::of(found.differential_pressure));
            cells.extend(found.inlet_pressure.map(Cell::of));
        }
        cells
    };
    AnswerTable {
        columns,
        rows: parts.iter().map(row).collect(),
    }
}

fn warn(card: &CabCardOutcome, drive: Option<&DriveHead>, judged: bool, work: &mut Work) {
    if drive.is_some_and(|d| back_pressure(d).is_none()) {
        work.warn(
            &warnings::CARD_DIFFERENCE_ONLY,
            "send `return_line` or `no_load` in `working_pressures`",
        );
    }
    let Some(limit) = &card.shaft_limit else {
        work.warn(
            &warnings::CARD_WITHOUT_LIMIT,
            "send `torsion.rating` to have it",
        );
        return;
    };
    let (up, down) = (&card.target.cab, &limit.cab);
    let crossed = |a: &Shown, b: &Shown| a.value() > b.value();
    let pressures = card.target.gears.iter().zip(&limit.gears);
    let crossing = crossed(&up.si, &down.si)
        || crossed(&up.us_customary, &down.us_customary)
        || pressures.into_iter().any(|(t, l)| {
            crossed(&t.cab.si, &l.cab.si) || crossed(&t.cab.us_customary, &l.cab.us_customary)
        });
    let shown = |torque: Torque| Torque::ROLE.in_both_systems(torque.si());
    let detail = format!(
        "target {}, limit {}",
        shown(card.target.torque),
        shown(limit.torque)
    );
    let above = !utilisation(card.target.torque.si(), limit.torque.si()).1;
    if above && judged {
        work.hold_back(&warnings::CARD_WITHOUT_ROOM, detail);
    } else if crossing {
        work.warn(&warnings::CARD_WITHOUT_ROOM, detail);
    }
}
