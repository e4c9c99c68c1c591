//! Which readings count, and what is averaged over them.

use crate::quantity::{LengthUnit, Size};
use crate::record::spikes::{Reading, Standing, counted, standings};
use crate::record::window::{Counted, Windows, lower_of_two_windows};
use crate::trace::Trace;

const FT: f64 = 0.3048;

/// One reading a foot.
fn by_the_foot(torques: &[f64]) -> Vec<Reading> {
    let at = |(row, torque): (usize, &f64)| Reading {
        row,
        depth: (row + 1) as f64 * FT,
        torque: *torque,
    };
    torques.iter().enumerate().map(at).collect()
}

fn judged(torques: &[f64]) -> Vec<Standing> {
    standings(&by_the_foot(torques), 3.0 * FT)
}

#[test]
fn a_stone_is_a_spike_and_a_layer_is_not() {
    use Standing::{Counts, Spike, Unconfirmed};
    let steady = [900.0, 1000.0, 1100.0, 1200.0];
    assert_eq!(judged(&steady), vec![Counts; 4]);
    assert_eq!(
        judged(&[1000.0, 1000.0, 1501.0, 1000.0]),
        [Counts, Counts, Spike, Counts]
    );
    // on the limit it is none
    assert_eq!(judged(&[1000.0, 1000.0, 1500.0, 1000.0]), vec![Counts; 4]);
    // two rows lie 3 ft between their neighbours, three rows 4 ft, more than 1 m
    assert_eq!(
        judged(&[1000.0, 2000.0, 2000.0, 1000.0]),
        [Counts, Spike, Spike, Counts]
    );
    assert_eq!(
        judged(&[1000.0, 2000.0, 2000.0, 2000.0, 1000.0]),
        vec![Counts; 5]
    );
    // at the end it has to hold over 3 ft
    assert_eq!(
        judged(&[1500.0, 1500.0, 5500.0]),
        [Counts, Counts, Unconfirmed]
    );
    assert_eq!(
        judged(&[1500.0, 5500.0, 5500.0]),
        [Counts, Unconfirmed, Unconfirmed]
    );
    assert_eq!(judged(&[1500.0, 5500.0, 5500.0, 5500.0]), vec![Counts; 4]);
}

/// 1,500 / 1,500 / 5,500 averages 2,833 by arithmetic; the stone left out it is 1,500.
#[test]
fn the_mean_is_taken_by_depth_over_what_counts() {
    let readings = by_the_foot(&[1500.0, 1500.0, 5500.0]);
    let all = Counted {
        readings: readings.clone(),
        start: 0.0,
    };
    let mean = all.last_window(3.0 * FT).expect("a window").mean;
    assert!((mean - 8500.0 / 3.0).abs() < 1e-9);
    let standing = standings(&readings, 3.0 * FT);
    let left = Counted {
        readings: counted(&readings, &standing),
        start: 0.0,
    };
    assert_eq!(left.last_window(2.0 * FT).map(|w| w.mean), Some(1500.0));
    assert_eq!(left.last_window(3.0 * FT), None);
}

/// Two readings of different length: (1,000 x 1 ft + 2,000 x 2 ft) / 3 ft, and the part of a
/// window that only some of a reading lies in.
#[test]
fn a_reading_weighs_what_it_stands_for() {
    let at = |row, depth: f64, torque| Reading {
        row,
        depth: depth * FT,
        torque,
    };
    let log = Counted {
        readings: vec![at(0, 1.0, 1000.0), at(1, 3.0, 1300.0)],
        start: 0.0,
    };
    let mean = |to: f64, length: f64| log.window(to * FT, length * FT).map(|w| w.mean);
    assert!((mean(3.0, 3.0).unwrap_or_default() - 1200.0).abs() < 1e-9);
    assert!((mean(3.0, 2.5).unwrap_or_default() - (500.0 + 2600.0) / 2.5).abs() < 1e-9);
    assert!((mean(2.0, 2.0).unwrap_or_default() - 1150.0).abs() < 1e-9);
    assert_eq!(mean(3.0, 3.1), None);
    assert_eq!(mean(3.1, 1.0), None);
    assert!((log.held(1100.0) - 2.0 * FT).abs() < 1e-12);
    assert!((log.held(1000.0) - 3.0 * FT).abs() < 1e-12);
    assert_eq!(log.held(1301.0), 0.0);
}

#[test]
fn the_lower_of_both_windows_counts() {
    // 10 in: 3 D = 2.5 ft, below 3 ft
    let windows = Windows::of(Size::new(10.0, LengthUnit::In), &mut Trace::off());
    assert!((windows.diameters - 2.5 * FT).abs() < 1e-12);
    assert!((windows.longer - 3.0 * FT).abs() < 1e-12);
    let mean = |torques: &[f64]| {
        let log = Counted {
            readings: by_the_foot(torques),
            start: 0.0,
        };
        let found = lower_of_two_windows(&log, &windows, &mut Trace::off());
        found.map_or(0.0, |(torque, _)| torque.si())
    };
    // rising: the longer one is lower; falling: the shorter one
    assert!((mean(&[600.0, 700.0, 800.0]) - 700.0).abs() < 1e-9);
    assert!((mean(&[800.0, 700.0, 600.0]) - (400.0 + 700.0 + 600.0) / 2.5).abs() < 1e-9);
}
