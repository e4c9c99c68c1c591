//! Checks of the torque at the end of a log and of how it came about. Depths are in
//! `judge_depth.rs`, device and position in `judge_proofs.rs`.

use super::codes::{checks, warnings};
use super::found::{Found, least_torque_ratio};
use super::history::PileStop;
use super::outcome::{RecordRequired, RowStanding};
use super::rows::EDGE;
use super::window::Window;
use crate::catalogue::CheckDef;
use crate::contract::{Check, Work, utilisation};
use crate::quantity::{Length, LengthUnit, RotationalSpeed, Size, Torque, in_both_systems, round9};
use crate::source::{
    AC358_TENSION_EMBEDMENT, AC358_TORQUE_AVERAGING, BEARWELL_CHOICE, IBC_1810_4_11, NYC_1814_12,
    RETORQUE_PRACTICE, Sourced, TORQUE_AT_OBSTRUCTION,
};
use crate::torque::codes::warnings::{ADVANCE_ABOVE_PITCH, SITE_FACTOR_BAND};
use crate::torque::conditions::{HIGH_ADVANCE, LEAST_ADVANCE, least_depth_in_tension};
use crate::torque::speed::HIGH_SPEED;

/// Last reading over the mean of the window below which the torque is falling.
pub static FALL: Sourced<f64> = Sourced::new("torque_fall_ratio", 0.85, &BEARWELL_CHOICE);
/// Greatest distance of readings in the window.
pub static ROW_SPACING: Sourced<Length> = Sourced::new(
    "log_row_spacing",
    Length::new(2.0, LengthUnit::Ft),
    &BEARWELL_CHOICE,
);

/// All of them, in the order in which an inspector asks.
pub(super) fn judge(found: &Found, work: &mut Work) {
    obstruction(found, work);
    shaft_torque(found, work);
    readings(found, work);
    required(found, work);
    advance(found, work);
    speed(found, work);
    retorque(found, work);
}

fn obstruction(found: &Found, work: &mut Work) {
    if found.request.stop == Some(PileStop::Obstruction) {
        // an obstruction met, none allowed
        let check = Check::at_most(&checks::OBSTRUCTION, 1.0, 0.0, &TORQUE_AT_OBSTRUCTION)
            .reason("what it stands on is a question of rock or of a load test, not of torque");
        found.put(check, work);
    }
    if found.request.stop == Some(PileStop::SpinOut) {
        let check = Check::at_most(&checks::SPUN_OUT, 1.0, 0.0, &NYC_1814_12)
            .reason("it turned without going down: the ground around the helices is disturbed");
        found.put(check, work);
    }
}

fn shaft_torque(found: &Found, work: &mut Work) {
    let Some(limit) = found.request.limits.and_then(|l| l.shaft_torque) else {
        let why = "no torque limit of the shaft was sent";
        return found.open(&checks::SHAFT_TORQUE, why, &IBC_1810_4_11, work);
    };
    let Some((row, read)) = found.log.greatest_torque() else {
        return;
    };
    let torque = found.strain();
    let check = Check::at_most(&checks::SHAFT_TORQUE, torque, limit, &IBC_1810_4_11);
    let passed = check.passed();
    let check = if passed {
        check
    } else {
        let place = if torque.si() > read {
            "turning it again after the wait".to_owned()
        } else {
            format!("row {row}")
        };
        check.reason(format!(
            "{place}; shaft, couplings and bolts need an inspection"
        ))
    };
    found.put(check, work);
    if !passed {
        work.warn(&warnings::INSPECT_AFTER, "over the torque limit");
    }
    hold_for_band(
        found,
        &checks::SHAFT_TORQUE,
        torque,
        passed,
        |t| utilisation(t.si(), limit.si()).1,
        work,
    );
}

/// Puts down a check of a torque that was read against one that is needed, which driving deeper
/// can mend, and holds the verdict back where it turns within the accuracy of the indicator.
fn put_reading(
    found: &Found,
    def: &'static CheckDef,
    (needed, read): (Torque, Torque),
    check: Check,
    work: &mut Work,
) -> bool {
    let passed = check.passed();
    found.put_deeper(check, work);
    let enough = |t: Torque| utilisation(needed.si(), t.si()).1;
    hold_for_band(found, def, read, passed, enough, work);
    passed
}

/// Holds the verdict back where it turns within the accuracy of the indicator.
fn hold_for_band(
    found: &Found,
    def: &'static CheckDef,
    torque: Torque,
    passed: bool,
    passes: impl Fn(Torque) -> bool,
    work: &mut Work,
) {
    let accuracy = found
        .request
        .indicator
        .as_ref()
        .and_then(|i| i.accuracy_ratio);
    let Some(accuracy) = accuracy else {
        return;
    };
    let (low, high) = (torque * (1.0 - accuracy), torque * (1.0 + accuracy));
    if passes(low) != passed || passes(high) != passed {
        let shown = |t: Torque| Torque::ROLE.in_both_systems(t.si());
        let detail = format!(
            "`{}`: torque from {} to {}",
            def.id,
            shown(low),
            shown(high)
        );
        work.hold_back(&warnings::GAUGE_BAND, detail);
    }
}

fn readings(found: &Found, work: &mut Work) {
    let log = found.log;
    let averaging = Length::from_si(log.windows.longer);
    let spikes: Vec<String> = log
        .rows
        .iter()
        .enumerate()
        .filter(|(_, r)| r.standing == RowStanding::Spike)
        .map(|(row, _)| row.to_string())
        .collect();
    if !spikes.is_empty() {
        work.warn(
            &warnings::SPIKES_LEFT_OUT,
            format!("rows {}", spikes.join(", ")),
        );
    }
    if let Some(first) = log.backed_out.first() {
        work.warn(&warnings::BACKED_OUT, format!("from row {first} on"));
        work.warn(
            &warnings::INSPECT_AFTER,
            format!("turned back at row {first}"),
        );
    }
    if let Some((held, reading_count)) = log.rise_at_end() {
        let check = Check::at_least(
            &checks::RISE_HELD,
            averaging,
            Length::from_si(held),
            &TORQUE_AT_OBSTRUCTION,
        );
        let check = if check.passed() && reading_count == 1 {
            // a single reading is no layer, however far it is from the one before
            Check::at_least(&checks::RISE_HELD, 2.0, 1.0, &TORQUE_AT_OBSTRUCTION)
                .reason("the rise is one reading")
        } else {
            check
        };
        found.put_deeper(check, work);
    }
    let fresh = Length::from_si(log.counted.length());
    let check = Check::at_least(&checks::PLATEAU, averaging, fresh, &AC358_TORQUE_AVERAGING);
    let enough = check.passed();
    found.put_deeper(check, work);
    if !enough {
        return;
    }
    let allowed = found.request.limits.and_then(|l| l.row_spacing);
    let allowed = allowed.unwrap_or(ROW_SPACING.value);
    // what was turned in after the last reading is a gap too
    let silent = log.fresh.last().map_or(0.0, |r| log.tip - r.depth);
    let gap = Length::from_si(log.widest_gap(found.window_from()).max(silent));
    let check = Check::at_most(&checks::ROW_SPACING, gap, allowed, &BEARWELL_CHOICE).unproven();
    let check = if check.passed() {
        check
    } else {
        check.reason("rows are missing in the window")
    };
    found.put(check, work);
}

fn required(found: &Found, work: &mut Work) {
    let Some(required) = found.required else {
        let why = "no `target` was sent";
        return found.open(&checks::TORQUE, why, &IBC_1810_4_11, work);
    };
    match (&found.effective, found.window) {
        (Some(effective), Some(window)) => {
            reached(found, required, effective.torque, work);
            window_rules(found, required.torque, &window, work);
        }
        _ => {
            let why = "the readings do not reach over the averaging length";
            found.open(&checks::TORQUE, why, &AC358_TORQUE_AVERAGING, work);
        }
    }
    if required.tension {
        tension(found, required.torque, work);
    }
}

/// The torque that counts, with what leaves it in doubt.
fn reached(found: &Found, required: &RecordRequired, torque: Torque, work: &mut Work) {
    let def = &checks::TORQUE;
    let check = Check::at_least(def, required.torque, torque, &IBC_1810_4_11);
    if !put_reading(found, def, (required.torque, torque), check, work) {
        return;
    }
    let doubts = [
        (
            required.by_reduced_factor,
            "the reduced factor",
            &warnings::TENSION_FACTOR_IN_DOUBT,
        ),
        (
            required.by_least_site_factor,
            "the least factor of the tests",
            &SITE_FACTOR_BAND,
        ),
    ];
    for (needed, by, def) in doubts {
        if let Some(needed) = needed
            && !utilisation(needed.si(), torque.si()).1
        {
            let shown = |t: Torque| Torque::ROLE.in_both_systems(t.si());
            let detail = format!("{} by {by}, {} reached", shown(needed), shown(torque));
            work.hold_back(def, detail);
        }
    }
}

/// Least and last reading of the window.
fn window_rules(found: &Found, required: Torque, window: &Window, work: &mut Work) {
    let def = &checks::LEAST_TORQUE;
    let needed = required * least_torque_ratio(found.request);
    let least = Torque::from_si(window.least);
    let check = Check::at_least(def, needed, least, &BEARWELL_CHOICE);
    put_reading(found, def, (needed, least), check, work);
    if let Some(last) = found.log.counted.readings.last() {
        let mean = Torque::from_si(window.mean * FALL.value);
        let last = Torque::from_si(last.torque);
        let check = Check::at_least(&checks::FALLING, mean, last, &BEARWELL_CHOICE);
        found.put_deeper(check, work);
    }
}

/// The top helix has to stand in ground as good as the lower ones, and deep enough.
fn tension(found: &Found, required: Torque, work: &mut Work) {
    let least = least_depth_in_tension(found.largest_helix, &mut work.trace);
    let source = &AC358_TENSION_EMBEDMENT;
    let check = Check::at_least(&checks::TENSION_DEPTH, least, found.top_helix(), source);
    found.put_deeper(check, work);
    let def = &checks::TENSION_TOP_TORQUE;
    let at = found.top_helix().si();
    let Some(window) = found.log.counted.window(at, found.log.windows.longer) else {
        let why = "the readings do not reach over the averaging length above the top helix";
        return found.open(def, why, &BEARWELL_CHOICE, work);
    };
    let there = Torque::from_si(window.mean);
    let check = Check::at_least(def, required, there, &BEARWELL_CHOICE);
    put_reading(found, def, (required, there), check, work);
}

fn advance(found: &Found, work: &mut Work) {
    let Some(pitch) = found.request.pile.helix_pitch else {
        let why = "no pitch of the helices was sent";
        return found.open(&checks::ADVANCE, why, &NYC_1814_12, work);
    };
    let own = found.request.limits.and_then(|l| l.least_advance_ratio);
    let least = pitch * own.unwrap_or(LEAST_ADVANCE.value);
    match found.final_advance {
        Some(ratio) => {
            let check = Check::at_least(&checks::ADVANCE, least, pitch * ratio, &NYC_1814_12);
            found.put_deeper(check, work);
            if round9(ratio) > HIGH_ADVANCE.value {
                let detail = format!("{} of the pitch in a turn", round9(ratio));
                work.warn(&ADVANCE_ABOVE_PITCH, detail);
            }
        }
        None => {
            let why = "the last row has neither an advance in a turn nor turns from a row before";
            found.open(&checks::ADVANCE, why, &NYC_1814_12, work);
        }
    }
    if let Some(lowest) = least_advance_in_window(found) {
        let lowest = Size::from_si(lowest);
        let check = Check::at_least(&checks::ADVANCE_IN_WINDOW, least, lowest, &BEARWELL_CHOICE);
        found.put_deeper(check, work);
    }
}

/// Least advance in a turn among the rows of the window before the last one, m.
pub(super) fn least_advance_in_window(found: &Found) -> Option<f64> {
    let from = found.window_from();
    let (_, before) = found.log.rows.split_last()?;
    let rows = before.iter().filter(|r| r.depth > from + EDGE);
    rows.filter_map(|r| r.advance).reduce(f64::min)
}

fn speed(found: &Found, work: &mut Work) {
    let fastest = found
        .log
        .rows
        .iter()
        .filter_map(|r| r.speed)
        .reduce(f64::max);
    let own = found.request.limits.and_then(|l| l.rotation_speed);
    let usual = own.unwrap_or(HIGH_SPEED.value);
    if let Some(fastest) = fastest {
        let fastest = RotationalSpeed::from_si(fastest);
        let check = Check::at_most(&checks::SPEED, fastest, usual, HIGH_SPEED.reference);
        found.put(check.advisory(), work);
    }
}

fn retorque(found: &Found, work: &mut Work) {
    let (Some(again), Some(required)) = (found.request.retorque, found.required) else {
        return;
    };
    let def = &checks::RETORQUE;
    let check = Check::at_least(def, required.torque, again.torque, &RETORQUE_PRACTICE)
        .reason(format!("after {}", in_both_systems(again.waited.si(), "s")));
    put_reading(found, def, (required.torque, again.torque), check, work);
}
