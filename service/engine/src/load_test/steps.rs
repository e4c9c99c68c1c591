//! The steps of load of a test: which rows belong to one, how large it is and how long it
//! lasted. What is asked of them is in `run.rs`.

use super::points::{DISPLACEMENT, ELAPSED, LOAD, LoadTestPoints};
use crate::quantity::{Duration, Force, Size};
use crate::source::{BEARWELL_CHOICE, Sourced};

/// Rise of load above the largest before it, over the largest of the test, from which a row
/// begins a new step; less is the pump being kept up.
pub static NEW_STEP: Sourced<f64> =
    Sourced::new("load_test_new_step_ratio", 0.01, &BEARWELL_CHOICE);
/// Time over which the rate at the end of a hold is read, where the hold is that long.
pub static RATE_SPAN: Sourced<Duration> = Sourced::new(
    "load_test_rate_span",
    Duration::new(1.0, crate::quantity::DurationUnit::H),
    &BEARWELL_CHOICE,
);

/// A reading of one row, base SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Load, N.
    pub load: f64,
    /// Displacement, m.
    pub displacement: f64,
    /// Time since the test began, s; none where it was not read.
    pub elapsed: Option<f64>,
}

/// The readings of the first `count` rows.
pub fn readings(rows: &LoadTestPoints, count: usize) -> Vec<Reading> {
    let of = |row: usize| {
        let load: Force = rows.value(row, LOAD)?;
        let displacement: Size = rows.value(row, DISPLACEMENT)?;
        let elapsed: Option<Duration> = rows.value(row, ELAPSED);
        Some(Reading {
            load: load.si(),
            displacement: displacement.si(),
            elapsed: elapsed.map(Duration::si),
        })
    };
    (0..count.min(rows.len())).filter_map(of).collect()
}

/// A step of the first loading.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Its readings in order.
    pub readings: Vec<Reading>,
    /// Its largest load, N.
    pub load: f64,
    /// Rise of load above the step before, N.
    pub rise: f64,
    /// Time from the last reading of the step before to its own last, s; none where one of
    /// them was not read.
    pub time: Option<f64>,
}

/// The steps of load of the first loading. Readings at zero load are its beginning, not a step;
/// without them it begins at no load and no time.
pub fn steps(all: &[Reading]) -> Vec<Step> {
    let largest = all.iter().fold(0.0, |most: f64, r| most.max(r.load));
    let (mut before, mut begun) = (0.0_f64, Some(0.0));
    let mut groups: Vec<Vec<Reading>> = Vec::new();
    for reading in all {
        let rises = reading.load > before + NEW_STEP.value * largest;
        before = before.max(reading.load);
        match groups.last_mut() {
            Some(group) if !rises => group.push(*reading),
            None if !rises => begun = reading.elapsed,
            _ => groups.push(vec![*reading]),
        }
    }
    let mut under = 0.0;
    let mut found = Vec::new();
    for readings in groups {
        let load = readings.iter().fold(under, |most: f64, r| most.max(r.load));
        let end = readings.last().and_then(|r| r.elapsed);
        found.push(Step {
            load,
            rise: load - under,
            time: end.zip(begun).map(|(end, begun)| end - begun),
            readings,
        });
        (under, begun) = (load, end);
    }
    found
}

/// Movement over the end of a hold: over the last hour, or over the whole hold where it is
/// shorter; movement, m, and time, s. None without two readings at different times.
pub fn at_end(hold: &Step) -> Option<(f64, f64)> {
    let timed = hold.readings.iter();
    let timed: Vec<(f64, f64)> = timed
        .filter_map(|r| Some((r.elapsed?, r.displacement)))
        .collect();
    let (end, there) = *timed.last()?;
    let long = |p: &&(f64, f64)| end - p.0 >= RATE_SPAN.value.si();
    let (from, here) = *timed.iter().rev().find(long).or(timed.first())?;
    (end > from).then_some((there - here, end - from))
}
