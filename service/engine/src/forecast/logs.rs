//! The table of readings of a log that a forecast stands on: its columns with their ranges.
//! Where the torque is met is in `crossing.rs`.

use crate::limits::LOG_ROWS;
use crate::quantity::{Length, MomentUnit, Torque};
use crate::table::{Column, Columns, Table};

/// Columns of the readings of a log.
#[derive(Debug, Clone, PartialEq)]
pub struct ForecastLogColumns;

/// Place of the depth among the columns.
pub const LOG_DEPTH: usize = 0;
/// Place of the torque among the columns.
pub const LOG_TORQUE: usize = 1;

impl Columns for ForecastLogColumns {
    const NAME: &'static str = "ForecastReadings";
    const ABOUT: &'static str = "Readings of the torque on the way down, each deeper than the one before. Each stands for the depth since the one before.";
    const ALL: &'static [Column] = &[
        Column::required::<Length>(
            "depth",
            "depth of the tip below final grade; 0 to 100 m.",
            0.0,
            100.0,
        ),
        Column::required::<Torque>(
            "torque",
            "torque on the pile; 0 to 1,000 kN m.",
            0.0,
            Torque::new(1000.0, MomentUnit::KNM).si(),
        ),
    ];
    const LEAST_ROWS: usize = 2;
    const MOST_ROWS: usize = LOG_ROWS;
}

/// Readings of a log.
pub type ForecastReadings = Table<ForecastLogColumns>;
