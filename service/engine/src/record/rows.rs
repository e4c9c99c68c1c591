//! The log as it is worked with: torque and advance of each row, which torque counts. What is
//! asked of them is in `rules`.

use super::codes::refusals;
use super::log::*;
use super::outcome::RowStanding;
use super::request::Request;
use super::spikes::{Reading, Standing, counted, standings};
use super::window::{Counted, Windows};
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::Issue;
use crate::quantity::{Length, Pressure, RotationalSpeed, Size, Torque, in_both_systems, round9};
use crate::torque::hydraulics::{motor_torque, pressure_difference, volume_in_gear};
use crate::torque::{DriveGear, DriveHead, LinePressures};
use crate::trace::Trace;

/// A row of the log, base SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Row {
    /// Depth of the tip, m.
    pub depth: f64,
    /// Torque, N m.
    pub torque: Option<f64>,
    /// Advance in one turn, m.
    pub advance: Option<f64>,
    /// Speed of rotation, rad/s.
    pub speed: Option<f64>,
    /// How it stands.
    pub standing: RowStanding,
}

/// The log of a pile.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Log {
    /// Every row.
    pub rows: Vec<Row>,
    /// Readings in fresh ground, spikes included.
    pub fresh: Vec<Reading>,
    /// The readings that count.
    pub counted: Counted,
    /// Lengths that are averaged over.
    pub windows: Windows,
    /// Depth of the tip at the end, m.
    pub tip: f64,
    /// Greatest depth the tip reached, m.
    pub deepest: f64,
    /// Rows in which the tip went back up.
    pub backed_out: Vec<usize>,
}

impl Log {
    /// The last torque that was read, with its row.
    pub fn final_torque(&self) -> Option<(usize, f64)> {
        let last = self.rows.iter().enumerate().rev();
        last.filter_map(|(row, r)| Some((row, r.torque?))).next()
    }

    /// The greatest torque that was read, with its row.
    pub fn greatest_torque(&self) -> Option<(usize, f64)> {
        let mut found: Option<(usize, f64)> = None;
        for (row, torque) in self
            .rows
            .iter()
            .enumerate()
            .filter_map(|(i, r)| Some((i, r.torque?)))
        {
            if found.is_none_or(|(_, most)| torque > most) {
                found = Some((row, torque));
            }
        }
        found
    }

    /// Penetration over which a rise at the end that is not confirmed has held, m, and its
    /// readings.
    pub fn rise_at_end(&self) -> Option<(f64, usize)> {
        let last = self.fresh.last()?;
        let standing = |r: &&Reading| self.rows[r.row].standing;
        let rise = self
            .fresh
            .iter()
            .filter(|r| standing(r) == RowStanding::Unconfirmed);
        let count = rise.count();
        let before = self.counted.end().unwrap_or(self.counted.start);
        (count > 0).then_some((last.depth - before, count))
    }

    /// Greatest distance between readings that count from a depth on, m.
    pub fn widest_gap(&self, from: f64) -> f64 {
        let mut before = self.counted.start;
        let mut widest = 0.0_f64;
        for reading in &self.counted.readings {
            // what stands on the edge of the window is not in it, whatever the units
            if reading.depth > from + EDGE {
                widest = widest.max(reading.depth - before);
            }
            before = reading.depth;
        }
        widest
    }
}

/// What is no length between two depths, m.
pub(super) const EDGE: f64 = 1e-9;

/// Length up to which the first reading of a log stands for the ground above it; a log that
/// begins deeper says nothing of that ground, m.
pub const FIRST_READING: f64 = 0.65;

/// The log worked out; it must be without faults.
pub(super) fn read(request: &Request) -> Log {
    let table = &request.log;
    let mut rows: Vec<Row> = Vec::with_capacity(table.len());
    let history = request.history.unwrap_or_default();
    let before = [history.pre_drilled_depth, history.disturbed_depth];
    let start = before
        .into_iter()
        .flatten()
        .fold(0.0, |a: f64, d| a.max(d.si()));
    let (mut deepest, mut backed_out, mut fresh) = (start, Vec::new(), Vec::new());
    for at in 0..table.len() {
        let depth = table.value::<Length>(at, DEPTH).map_or(0.0, Length::si);
        let torque = torque(request, at, &mut Vec::new()).map(Torque::si);
        let previous = rows.last().map(|r: &Row| r.depth);
        if previous.is_some_and(|p| round9(depth) < round9(p)) {
            backed_out.push(at);
        }
        let standing = match torque {
            None => RowStanding::NoTorque,
            Some(_) if round9(depth) <= round9(deepest) => RowStanding::NotFresh,
            Some(_) => RowStanding::Counts,
        };
        if let (Some(torque), RowStanding::Counts) = (torque, standing) {
            fresh.push(Reading {
                row: at,
                depth,
                torque,
            });
        }
        deepest = deepest.max(depth);
        rows.push(Row {
            depth,
            torque,
            advance: advance(request, at, previous, depth),
            speed: table
                .value::<RotationalSpeed>(at, SPEED)
                .map(RotationalSpeed::si),
            standing,
        });
    }
    let windows = Windows::of(largest_helix(request), &mut Trace::off());
    let standing = standings(&fresh, windows.longer);
    for (reading, standing) in fresh.iter().zip(&standing) {
        rows[reading.row].standing = match standing {
            Standing::Counts => RowStanding::Counts,
            Standing::Spike => RowStanding::Spike,
            Standing::Unconfirmed => RowStanding::Unconfirmed,
        };
    }
    let mut readings = counted(&fresh, &standing);
    // where a log begins in the middle, its first reading only says where the second begins
    let start = match readings.first() {
        Some(first) if first.depth - start > FIRST_READING => readings.remove(0).depth,
        _ => start,
    };
    Log {
        tip: rows.last().map_or(0.0, |r| r.depth),
        deepest,
        rows,
        fresh,
        counted: Counted { readings, start },
        windows,
        backed_out,
    }
}

/// Diameter of the largest helix.
pub(super) fn largest_helix(request: &Request) -> Size {
    let all = request.pile.helices.iter().map(|h| h.diameter);
    all.fold(Size::ZERO, Size::max)
}

fn advance(request: &Request, at: usize, previous: Option<f64>, depth: f64) -> Option<f64> {
    let table = &request.log;
    if let Some(advance) = table.value::<Size>(at, ADVANCE) {
        return Some(advance.si());
    }
    let turns = table.number(at, TURNS)?;
    let down = depth - previous?;
    (turns > 0.0 && down >= 0.0).then(|| down / turns)
}

/// Torque of a row; faults of its pressures are added.
fn torque(request: &Request, at: usize, issues: &mut Vec<Issue>) -> Option<Torque> {
    let table = &request.log;
    let cell = |column| format!("/log{}", table.cell_pointer(at, column));
    let indicated = table.value::<Torque>(at, TORQUE);
    let Some(inlet) = table.value::<Pressure>(at, INLET_PRESSURE) else {
        for column in [RETURN_PRESSURE, GEAR] {
            let stands = if column == GEAR {
                table.number(at, GEAR).is_some()
            } else {
                table.value::<Pressure>(at, column).is_some()
            };
            if stands {
                let detail = "`inlet_pressure` is needed in this row";
                issues.push(Issue::new(cell(column), &refusals::INLET_MISSING, detail));
            }
        }
        return indicated;
    };
    if indicated.is_some() {
        let detail = "leave out the torque or the pressures of this row";
        issues.push(Issue::new(
            cell(INLET_PRESSURE),
            &refusals::TORQUE_TWICE,
            detail,
        ));
        return None;
    }
    let drive = request.drive.as_ref()?;
    let volume = match gear(table.number(at, GEAR)) {
        Some(gear) => volume_in_gear(drive, gear, &mut Trace::off()),
        None => None,
    };
    let Some(volume) = volume else {
        let detail = "gear 1 is `displacement`, gear 2 is `fast_displacement` of the drive head";
        issues.push(Issue::new(cell(GEAR), &refusals::GEAR_UNKNOWN, detail).limit("1 or 2"));
        return None;
    };
    let difference = pressure_difference(
        &line(drive, inlet, table.value(at, RETURN_PRESSURE)),
        &mut Trace::off(),
    );
    if difference.si() < -1e-9 * inlet.si() {
        let detail = format!(
            "inlet less return line less no load is {}",
            Pressure::ROLE.in_both_systems(difference.si())
        );
        issues.push(
            Issue::new(cell(INLET_PRESSURE), &refusals::PRESSURE_NEGATIVE, detail)
                .limit("at least 0"),
        );
        return None;
    }
    let efficiency = drive.mechanical_efficiency_ratio;
    let difference = difference.max(Pressure::ZERO);
    Some(motor_torque(
        difference,
        volume,
        efficiency,
        &mut Trace::off(),
    ))
}

fn gear(number: Option<f64>) -> Option<DriveGear> {
    match number {
        None | Some(1.0) => Some(DriveGear::Slow),
        Some(2.0) => Some(DriveGear::Fast),
        Some(_) => None,
    }
}

/// Pressures of a row; what it does not have is that of the drive head.
fn line(drive: &DriveHead, inlet: Pressure, back: Option<Pressure>) -> LinePressures {
    let of_drive = drive.working_pressures;
    LinePressures {
        inlet,
        return_line: back.or(of_drive.and_then(|p| p.return_line)),
        no_load: of_drive.and_then(|p| p.no_load),
    }
}

/// Whether any row holds pressures.
pub(super) fn by_pressure(request: &Request) -> bool {
    let table = &request.log;
    (0..table.len()).any(|at| table.value::<Pressure>(at, INLET_PRESSURE).is_some())
}

/// What is wrong with the log.
pub(super) fn faults(request: &Request, issues: &mut Vec<Issue>) {
    let table = &request.log;
    if by_pressure(request) && request.drive.is_none() {
        let detail = "`drive` is needed: the log holds pressures";
        issues.push(Issue::new("", &MISSING_MEMBER, detail));
    }
    let mut any = false;
    let mut previous: Option<Length> = None;
    for at in 0..table.len() {
        let cell = |column| format!("/log{}", table.cell_pointer(at, column));
        torque(request, at, issues);
        any |= table.value::<Torque>(at, TORQUE).is_some()
            || table.value::<Pressure>(at, INLET_PRESSURE).is_some();
        let turns = table.number(at, TURNS);
        let depth = table.value::<Length>(at, DEPTH);
        if turns.is_some() && table.value::<Size>(at, ADVANCE).is_some() {
            let detail = "leave out the turns or the advance of this row";
            issues.push(Issue::new(cell(ADVANCE), &refusals::ADVANCE_TWICE, detail));
        }
        if let (Some(before), Some(depth), Some(turns)) = (previous, depth, turns)
            && turns == 0.0
            && depth > before
        {
            let down = in_both_systems((depth - before).si(), "m");
            let detail = format!("the tip went down {down} in no turn");
            issues.push(Issue::new(cell(TURNS), &refusals::NO_TURNS, detail).limit("above 0"));
        }
        previous = depth;
    }
    if !any {
        let detail = "send `torque` or `inlet_pressure` in at least one row";
        issues.push(Issue::new("/log", &refusals::NO_TORQUE, detail));
    }
    for (i, note) in request.notes.iter().flatten().enumerate() {
        if note.row >= table.len() {
            let detail = format!("row {} of {} rows", note.row, table.len());
            let pointer = format!("/notes/{i}/row");
            let limit = format!("0 to {}", table.len().saturating_sub(1));
            issues.push(Issue::new(pointer, &refusals::NOTE_WITHOUT_ROW, detail).limit(limit));
        }
    }
}
