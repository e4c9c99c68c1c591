//! Where a log meets a torque.

use super::super::crossing::{Crossing, crossing};
use super::*;
use crate::record::spikes::Reading;

/// One reading a foot from the first depth on, depths in ft.
fn log(first: f64, torques: &[f64]) -> Vec<Reading> {
    let at = |(row, torque): (usize, &f64)| Reading {
        row,
        depth: first + row as f64,
        torque: *torque,
    };
    torques.iter().enumerate().map(at).collect()
}

fn met(first: f64, torques: &[f64], torque: f64) -> Crossing {
    crossing(&log(first, torques), torque, 3.0, false)
}

/// The mean over 3 ft rises along straight lines: 1,000 to 5 ft, then 1,400 a foot: at 8 ft it
/// is 1,400, at 6 ft 1,133.3, at 7 ft 1,266.7; 1,200 is met half way between 6 and 7 ft.
#[test]
fn the_depth_is_found_between_the_rows() {
    let rising = [
        1000.0, 1000.0, 1000.0, 1000.0, 1000.0, 1400.0, 1400.0, 1400.0,
    ];
    let Crossing::Met(depth) = met(1.0, &rising, 1200.0) else {
        panic!("met")
    };
    near(depth, 6.5, 1e-12);
    let Crossing::Met(depth) = met(1.0, &rising, 1400.0) else {
        panic!("on the limit it is met")
    };
    near(depth, 8.0, 1e-9);
    assert_eq!(met(1.0, &rising, 1401.0), Crossing::NotMet(8.0));
}

/// A crust that is left again does not count; what holds to the end does.
#[test]
fn what_does_not_hold_is_not_met() {
    let crust = [
        1000.0, 1400.0, 1400.0, 1400.0, 1400.0, 1000.0, 1000.0, 1000.0, 1000.0, 1400.0, 1400.0,
        1400.0, 1400.0,
    ];
    let Crossing::Met(depth) = met(1.0, &crust, 1300.0) else {
        panic!("met")
    };
    // below 9 ft the mean rises from 1,000 by 133.3 a foot
    near(depth, 9.0 + 300.0 / (400.0 / 3.0), 1e-9);
    assert_eq!(met(1.0, &crust[..9], 1300.0), Crossing::NotMet(9.0));
}

/// A stone is left out: 1,000 with one reading of 9,000 never has 1,500; at the end a rise must
/// have held before it counts, and the pile goes deeper than the last reading that does.
#[test]
fn a_stone_is_not_the_bearing_layer() {
    let stone = [
        1000.0, 1000.0, 1000.0, 1000.0, 9000.0, 1000.0, 1000.0, 1000.0,
    ];
    assert_eq!(met(1.0, &stone, 1500.0), Crossing::NotMet(8.0));
    assert_eq!(met(1.0, &stone[..5], 1500.0), Crossing::NotMet(4.0));
    // two more feet and the rise has held over 3 ft; the mean passes 1,500 in the first of them
    let held = [1000.0, 1000.0, 1000.0, 1000.0, 9000.0, 9000.0, 9000.0];
    let Crossing::Met(depth) = met(1.0, &held, 1500.0) else {
        panic!("met")
    };
    near(depth, 4.0 + 500.0 / (8000.0 / 3.0), 1e-9);
}

/// The torque of an obstruction is none of the ground: the pile goes deeper than where it was
/// felt.
#[test]
fn an_obstruction_says_only_that_the_pile_goes_deeper() {
    let held = [1000.0, 1000.0, 1000.0, 1000.0, 9000.0, 9000.0, 9000.0];
    let found = crossing(&log(1.0, &held), 1500.0, 3.0, true);
    let Crossing::NotMet(depth) = found else {
        panic!("{found:?}")
    };
    near(depth, 4.1875, 1e-9);
    let all = [9000.0; 6];
    let found = crossing(&log(1.0, &all), 1500.0, 3.0, true);
    assert!(matches!(found, Crossing::Silent(_)), "{found:?}");
}

/// A log that begins with its torque shows where it is met only when it begins near grade.
#[test]
fn a_log_that_begins_deep_is_silent() {
    assert_eq!(met(1.0, &[2000.0; 6], 1500.0), Crossing::Met(4.0));
    assert!(matches!(
        met(10.0, &[2000.0; 6], 1500.0),
        Crossing::Silent(_)
    ));
    assert!(matches!(
        met(10.0, &[1000.0; 3], 1500.0),
        Crossing::Silent(_)
    ));
    assert_eq!(met(10.0, &[1000.0; 6], 1500.0), Crossing::NotMet(15.0));
}

/// More torque is never met higher up, over random logs.
#[test]
fn more_torque_lies_deeper() {
    let mut random = Random(3);
    let mut met_count = 0;
    for _ in 0..300 {
        let mut level = 500.0;
        let torques: Vec<f64> = (0..25)
            .map(|_| {
                level += random.between(-50.0, 200.0);
                level * exp(0.2 * normal(&mut random))
            })
            .collect();
        let mut last = 0.0;
        for torque in [600.0, 1000.0, 1500.0, 2200.0, 4000.0] {
            match met(1.0, &torques, torque) {
                Crossing::Met(depth) => {
                    assert!(depth >= last - 1e-9, "{torques:?}");
                    met_count += 1;
                    last = depth;
                }
                Crossing::NotMet(depth) => {
                    assert!(depth >= last - 1e-9, "{torques:?}");
                    last = depth;
                }
                Crossing::Silent(_) => {}
            }
        }
    }
    assert!(met_count > 300, "{met_count}");
}
