//! The table of an installation log: its columns with their ranges. What a row says once
//! torque and advance are worked out is in `rows.rs`.

use crate::limits::LOG_ROWS;
use crate::quantity::{
    Force, ForceUnit, Length, LengthUnit, MomentUnit, Pressure, RotationUnit, RotationalSpeed,
    Size, StressUnit, Torque,
};
use crate::table::{Column, Columns, Table};

/// Columns of an installation log.
#[derive(Debug, Clone, PartialEq)]
pub struct LogColumns;

/// Place of the depth of the tip among the columns.
pub const DEPTH: usize = 0;
/// Place of the torque among the columns.
pub const TORQUE: usize = 1;
/// Place of the inlet pressure among the columns.
pub const INLET_PRESSURE: usize = 2;
/// Place of the return-line pressure among the columns.
pub const RETURN_PRESSURE: usize = 3;
/// Place of the gear among the columns.
pub const GEAR: usize = 4;
/// Place of the turns since the row before among the columns.
pub const TURNS: usize = 5;
/// Place of the advance in one turn among the columns.
pub const ADVANCE: usize = 6;
/// Place of the speed of rotation among the columns.
pub const SPEED: usize = 7;
/// Place of the crowd among the columns.
pub const CROWD: usize = 8;

impl Columns for LogColumns {
    const NAME: &'static str = "InstallationLog";
    const ABOUT: &'static str = "Rows of an installation log in the order they were read, the tip going down. Where the tip goes back up the pile was backed out; torque counts again only below the greatest depth reached before.";
    const ALL: &'static [Column] = &[
        Column::required::<Length>(
            "depth",
            "depth of the tip below final grade, vertical; 0 to 100 m.",
            0.0,
            100.0,
        ),
        Column::optional::<Torque>(
            "torque",
            "torque on the pile, as an indicator shows it; 0 to 1,000 kN m. A row has either this or pressures.",
            0.0,
            Torque::new(1000.0, MomentUnit::KNM).si(),
        ),
        Column::optional::<Pressure>(
            "inlet_pressure",
            "pressure at the inlet of the drive head; 0 to 100 MPa. Needs `drive`.",
            0.0,
            Pressure::new(100.0, StressUnit::MPa).si(),
        ),
        Column::optional::<Pressure>(
            "return_pressure",
            "pressure in the return line; 0 to 100 MPa; that of `drive.working_pressures` where it is left out.",
            0.0,
            Pressure::new(100.0, StressUnit::MPa).si(),
        ),
        Column::numbers(
            "gear",
            "gear of a two-speed drive head: 1 the slow one (`displacement`), 2 the fast one (`fast_displacement`); 1 when left out. Only with pressures.",
            1.0,
            2.0,
        ),
        Column::numbers(
            "turns",
            "turns of the pile since the row before; 0 to 10,000. Those of the first row, and of rows in which the tip goes up, give no advance. A row has either this or `advance_per_turn`.",
            0.0,
            10_000.0,
        ),
        Column::optional::<Size>(
            "advance_per_turn",
            "advance in one turn as measured at this row; 0 to 1 m.",
            0.0,
            Size::new(1.0, LengthUnit::M).si(),
        ),
        Column::optional::<RotationalSpeed>(
            "rotation_speed",
            "speed of rotation; 0 to 200 rpm.",
            0.0,
            RotationalSpeed::new(200.0, RotationUnit::Rpm).si(),
        ),
        Column::optional::<Force>(
            "crowd",
            "force that pushes the pile down beside its turning; 0 to 1 MN. Kept for the record, not judged.",
            0.0,
            Force::new(1000.0, ForceUnit::KN).si(),
        ),
    ];
    const LEAST_ROWS: usize = 1;
    const MOST_ROWS: usize = LOG_ROWS;
}

/// An installation log.
pub type InstallationLog = Table<LogColumns>;
