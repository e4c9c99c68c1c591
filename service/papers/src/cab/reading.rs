//! What the sheets of the card take from an answer: its rows by name, its rounded figures in
//! the units of the sheet.

use bearwell_engine::quantity::{Pressure, Shown, System, Torque, round9};
use bearwell_engine::torque::{CabCardOutcome, CabGear, CabPressure, CabTorque, DriveGear};

use crate::words;

/// A row of the card.
#[derive(Debug, Clone)]
pub struct Row {
    /// Its torque over the target.
    pub part: f64,
    /// Its torque.
    pub torque: Torque,
    /// Its pressures, in the order of the columns.
    pub pressures: Vec<Pressure>,
    /// It is the target.
    pub target: bool,
    /// It is the shaft limit.
    pub limit: bool,
}

/// The rows of a card, from the least torque to the greatest.
pub fn rows(card: &CabCardOutcome) -> Vec<Row> {
    let last = card.table.rows.len().saturating_sub(1);
    let read = |(at, cells): (usize, &Vec<bearwell_engine::answer_table::Cell>)| {
        let part = cells.first()?.value();
        Some(Row {
            part,
            torque: Torque::from_si(cells.get(1)?.value()),
            pressures: cells[2..]
                .iter()
                .map(|c| Pressure::from_si(c.value()))
                .collect(),
            target: round9(part) == 1.0,
            limit: at == last && card.shaft_limit.is_some(),
        })
    };
    card.table
        .rows
        .iter()
        .enumerate()
        .filter_map(read)
        .collect()
}

/// A torque for the operator in the units of the sheet.
pub fn torque_in(cab: &CabTorque, system: System) -> &Shown {
    match system {
        System::Si => &cab.si,
        System::UsCustomary => &cab.us_customary,
    }
}

/// A pressure for the operator in the units of the sheet.
pub fn pressure_in(cab: &CabPressure, system: System) -> &Shown {
    match system {
        System::Si => &cab.si,
        System::UsCustomary => &cab.us_customary,
    }
}

/// The other system of units.
pub fn other(system: System) -> System {
    match system {
        System::Si => System::UsCustomary,
        System::UsCustomary => System::Si,
    }
}

/// A torque as the operator reads it, without its unit.
pub fn torque_figure(cab: &CabTorque, system: System) -> String {
    words::grouped(torque_in(cab, system).value(), torque_decimals(system))
}

/// A pressure as the operator reads it, without its unit.
pub fn pressure_figure(cab: &CabPressure, system: System) -> String {
    words::grouped(pressure_in(cab, system).value(), pressure_decimals(system))
}

/// A torque of a step, to the nearest whole of the operator's rounding.
pub fn step_torque(torque: Torque, system: System) -> String {
    let unit = Torque::ROLE.unit(system);
    words::grouped(unit.printed(torque.si()), torque_decimals(system))
}

/// A pressure of a step.
pub fn step_pressure(pressure: Pressure, system: System) -> String {
    let unit = Pressure::ROLE.unit(system);
    words::grouped(unit.printed(pressure.si()), pressure_decimals(system))
}

/// Name of the unit of a pressure.
pub fn pressure_unit(system: System) -> &'static str {
    Pressure::ROLE.unit(system).name
}

const fn torque_decimals(system: System) -> usize {
    match system {
        System::Si => 2,
        System::UsCustomary => 0,
    }
}

const fn pressure_decimals(system: System) -> usize {
    match system {
        System::Si => 1,
        System::UsCustomary => 0,
    }
}

/// Name of a gear where there are two.
pub fn gear_name(gear: &CabGear, gears: usize) -> &'static str {
    match (gears, gear.gear) {
        (0 | 1, _) => "",
        (_, DriveGear::Slow) => "slow gear",
        (_, DriveGear::Fast) => "fast gear",
    }
}
