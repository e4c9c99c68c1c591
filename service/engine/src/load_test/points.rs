//! The table of points of a load test: its columns with their ranges. The curve through
//! them is in `curve.rs`.

use crate::limits::LOAD_TEST_POINTS;
use crate::quantity::{Duration, DurationUnit, Force, ForceUnit, LengthUnit, Size};
use crate::table::{Column, Columns, Table};

/// Columns of the points of a load test.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadTestColumns;

/// Place of the load among the columns.
pub const LOAD: usize = 0;
/// Place of the displacement among the columns.
pub const DISPLACEMENT: usize = 1;
/// Place of the time among the columns.
pub const ELAPSED: usize = 2;

impl Columns for LoadTestColumns {
    const NAME: &'static str = "LoadTestPoints";
    const ABOUT: &'static str = "Points of a static load test in the order they were read. The displacement never goes back while the load holds or grows; at most one unloading may follow at the end.";
    const ALL: &'static [Column] = &[
        Column::required::<Force>(
            "load",
            "load at the head, in the direction of the test; 0 to 20 MN.",
            0.0,
            Force::new(20_000.0, ForceUnit::KN).si(),
        ),
        Column::required::<Size>(
            "displacement",
            "movement of the head in that direction since the test began; 0 to 2 m.",
            0.0,
            Size::new(2.0, LengthUnit::M).si(),
        ),
        Column::optional::<Duration>(
            "elapsed",
            "time since the test began, which never goes back; 0 to 60 days. Only for the checks of the steps and of the rate of movement.",
            0.0,
            Duration::new(60.0, DurationUnit::Day).si(),
        ),
    ];
    const LEAST_ROWS: usize = 3;
    const MOST_ROWS: usize = LOAD_TEST_POINTS;
}

/// Points of a load test.
pub type LoadTestPoints = Table<LoadTestColumns>;
