//! Readings that no ground stands behind: a torque that rises above what is before and
//! behind it and does not hold. Averages over what is left are in `window.rs`.

use crate::quantity::{Length, LengthUnit, round9};
use crate::source::{BEARWELL_CHOICE, Sourced};

/// A torque on the way down, base SI. It stands for the penetration since the reading before.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Row of the log it comes from.
    pub row: usize,
    /// Depth of the tip, m; grows from reading to reading.
    pub depth: f64,
    /// Torque, N m.
    pub torque: f64,
}

/// Times the readings on both sides that a torque must exceed to be a spike.
pub static SPIKE_RATIO: Sourced<f64> = Sourced::new("log_spike_ratio", 1.5, &BEARWELL_CHOICE);
/// Least distance between the readings on both sides of several high readings that is taken
/// for a layer and not for a spike; the averaging length where that is longer.
pub static LAYER_LENGTH: Sourced<Length> = Sourced::new(
    "log_layer_length",
    Length::new(1.0, LengthUnit::M),
    &BEARWELL_CHOICE,
);

/// What part of a log holds back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Counts.
    Counts,
    /// A rise that fell again: a stone or a thin crust. It does not count.
    Spike,
    /// A rise at the end of the log that has not yet held over the averaging length. It does
    /// not count until it has.
    Unconfirmed,
}

/// How each reading stands.
///
/// A group of readings next to each other is a spike when each of them is above 1.5 times the
/// greater of the readings before and behind it and these two are at most `max(averaging
/// length, 1 m)` apart; a single reading always. At the end of the log, where nothing is behind
/// it, it is unconfirmed as long as it has held over less than the averaging length. What was
/// added to a log as a spike thus never helps it: without the spike it is judged as before.
/// Source: a choice of this service; a mean alone accepts a stone.
pub fn standings(readings: &[Reading], averaging_length: f64) -> Vec<Standing> {
    let extent = averaging_length.max(LAYER_LENGTH.value.si()) * (1.0 + 1e-9);
    let mut out = vec![Standing::Counts; readings.len()];
    for first in 1..readings.len() {
        let before = readings[first - 1];
        let mut least = f64::INFINITY;
        for last in first..readings.len() - 1 {
            least = least.min(readings[last].torque);
            let (behind, length) = (readings[last + 1], readings[last + 1].depth - before.depth);
            if !above(least, before.torque) {
                break;
            }
            if above(least, behind.torque) && (length <= extent || first == last) {
                out[first..=last].fill(Standing::Spike);
            }
            if length > extent {
                break;
            }
        }
    }
    rise_at_end(readings, averaging_length, &mut out);
    out
}

/// Marks a rise at the end that has not held; a spike in it is as if it had not been read.
fn rise_at_end(readings: &[Reading], averaging_length: f64, out: &mut [Standing]) {
    let held = averaging_length * (1.0 - 1e-9);
    let left: Vec<usize> = (0..readings.len())
        .filter(|at| out[*at] == Standing::Counts)
        .collect();
    let Some(last) = left.last() else {
        return;
    };
    for first in 1..left.len() {
        let before = readings[left[first - 1]];
        let run = &left[first..];
        let rises = run
            .iter()
            .all(|at| above(readings[*at].torque, before.torque));
        let length = readings[*last].depth - before.depth;
        if rises && (run.len() == 1 || length < held) {
            for at in run {
                out[*at] = Standing::Unconfirmed;
            }
            return;
        }
    }
}

/// Whether a torque is that of a spike beside another; what is printed decides, so that units
/// do not.
fn above(torque: f64, beside: f64) -> bool {
    round9(torque) > round9(SPIKE_RATIO.value * beside)
}

/// The readings that count, in order.
pub fn counted(readings: &[Reading], standings: &[Standing]) -> Vec<Reading> {
    readings
        .iter()
        .zip(standings)
        .filter(|(_, standing)| **standing == Standing::Counts)
        .map(|(reading, _)| *reading)
        .collect()
}
