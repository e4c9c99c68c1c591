//! The depth at which a log meets a torque. Which readings count, and means over them, are in
//! `record`.

use super::logs::{ForecastReadings, LOG_DEPTH, LOG_TORQUE};
use crate::quantity::{Length, Torque};
use crate::record::spikes::{Reading, counted, standings};
use crate::record::window::Counted;

/// What a log says of a torque, depths in m.
#[derive(Debug, Clone, PartialEq)]
pub enum Crossing {
    /// Met from this depth on.
    Met(f64),
    /// Not met down to this depth.
    NotMet(f64),
    /// Nothing.
    Silent(String),
}

/// The readings of a log, base SI.
pub fn readings(rows: &ForecastReadings) -> Vec<Reading> {
    let reading = |row| {
        let depth: Length = rows.value(row, LOG_DEPTH)?;
        let torque: Torque = rows.value(row, LOG_TORQUE)?;
        Some(Reading {
            row,
            depth: depth.si(),
            torque: torque.si(),
        })
    };
    (0..rows.len()).filter_map(reading).collect()
}

/// Share of a length that is the last bits of another unit.
const EDGE: f64 = 1e-9;

/// Where a log meets a torque: the least depth from which on the mean over the averaging length
/// is at least the torque down to the last reading that counts.
///
/// The mean over the length that ends at a depth is a straight line in that depth between the
/// readings and the depths one averaging length below them, so the depth is found exactly.
pub fn crossing(readings: &[Reading], torque: f64, length: f64, obstruction: bool) -> Crossing {
    let counted = counted(readings, &standings(readings, length));
    // the first reading stands for what is above it, of which nothing is known
    let start = counted.first().map_or(0.0, |r| r.depth);
    let counted = Counted {
        readings: counted,
        start,
    };
    let Some(end) = counted
        .end()
        .filter(|_| counted.length() >= length * (1.0 - EDGE))
    else {
        return Crossing::Silent(format!(
            "the readings that count stand for {}, less than the averaging length",
            Length::ROLE.in_both_systems(counted.length())
        ));
    };
    let first = f64::min(start + length, end);
    let below = counted.readings.iter().map(|r| r.depth);
    let mut stops: Vec<f64> = below
        .clone()
        .chain(below.map(|depth| depth + length))
        .filter(|depth| *depth > first && *depth < end)
        .collect();
    stops.extend([first, end]);
    stops.sort_by(f64::total_cmp);
    let mean = |depth: f64| counted.window(depth, length).map_or(0.0, |w| w.mean);
    let mut met: Option<(f64, f64)> = None;
    for depth in stops.into_iter().rev() {
        let here = mean(depth);
        if here < torque {
            return match met {
                None => Crossing::NotMet(depth),
                Some((deeper, there)) => {
                    let share = (torque - here) / (there - here);
                    let at = depth + share * (deeper - depth);
                    if obstruction {
                        Crossing::NotMet(at)
                    } else {
                        Crossing::Met(at)
                    }
                }
            };
        }
        met = Some((depth, here));
    }
    if obstruction {
        Crossing::Silent("the torque of the obstruction is all there is".to_owned())
    } else if start <= length * (1.0 + EDGE) {
        Crossing::Met(first)
    } else {
        Crossing::Silent(format!(
            "it has its torque where it begins, at {}",
            Length::ROLE.in_both_systems(start)
        ))
    }
}
