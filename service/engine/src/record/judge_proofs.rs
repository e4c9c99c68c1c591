//! Checks of what the torque and the place of the pile rest on: calibration, position and
//! plumb, a pile that was used before.

use super::codes::{checks, warnings};
use super::found::Found;
use crate::catalogue::CheckDef;
use crate::contract::{Check, Work};
use crate::quantity::{Angle, AngleUnit, Duration, DurationUnit, LengthUnit, Size, round9};
use crate::source::{
    BEARWELL_CHOICE, CALIBRATION_PRACTICE, IBC_1810_3_1_3, PLUMB_PERMIT_NOTES, Sourced,
};

/// Days for which a calibration holds.
pub static CALIBRATION_DAYS: Sourced<u32> =
    Sourced::new("calibration_valid_days", 365, &CALIBRATION_PRACTICE);
/// Distance from the planned place that the design allows for.
pub static ALLOWED_DISTANCE: Sourced<Size> = Sourced::new(
    "allowed_mislocation",
    Size::new(3.0, LengthUnit::In),
    &IBC_1810_3_1_3,
);
/// Inclination that is allowed.
pub static ALLOWED_INCLINATION: Sourced<Angle> = Sourced::new(
    "allowed_inclination",
    Angle::new(1.0, AngleUnit::Deg),
    &PLUMB_PERMIT_NOTES,
);
/// Share of the allowed distance from which the answer warns.
pub static ALLOWANCE_USED: Sourced<f64> =
    Sourced::new("allowance_used_ratio", 0.5, &BEARWELL_CHOICE);

/// All of them.
pub(super) fn judge(found: &Found, work: &mut Work) {
    calibration(found, work);
    position(found, work);
    reused(found, work);
}

fn calibration(found: &Found, work: &mut Work) {
    let def = &checks::CALIBRATION;
    let open = |why: &str, work: &mut Work| found.open(def, why, &CALIBRATION_PRACTICE, work);
    let Some(indicator) = &found.request.indicator else {
        return open("no indicator was sent", work);
    };
    let (Some(calibrated), Some(driven)) = (&indicator.calibrated_on, &indicator.driven_on) else {
        return open(
            "no_date: `calibrated_on` and `driven_on` are both needed",
            work,
        );
    };
    let Some(age) = calibrated.days_until(driven) else {
        return open("a date is none", work);
    };
    if age < 0 {
        return open(
            "the indicator was calibrated after the pile was driven",
            work,
        );
    }
    let valid = indicator.valid_day_count.unwrap_or(CALIBRATION_DAYS.value);
    let days = |count: f64| Duration::new(count, DurationUnit::Day);
    let check = Check::at_most(
        def,
        days(age as f64),
        days(f64::from(valid)),
        &CALIBRATION_PRACTICE,
    );
    let check = check.unproven();
    let check = if check.passed() {
        check
    } else {
        let over = age - i64::from(valid);
        check.reason(format!(
            "out of date by {over} days when the pile was driven"
        ))
    };
    found.put(check, work);
}

fn position(found: &Found, work: &mut Work) {
    let position = found.request.position.unwrap_or_default();
    let allowed = position.allowed_distance.unwrap_or(ALLOWED_DISTANCE.value);
    distance(
        found,
        &checks::POSITION_ALONG,
        position.along,
        allowed,
        work,
    );
    distance(
        found,
        &checks::POSITION_OFF_LINE,
        position.off_line,
        allowed,
        work,
    );
    match position.inclination {
        Some(inclination) => {
            let allowed = position.allowed_inclination;
            let allowed = allowed.unwrap_or(ALLOWED_INCLINATION.value);
            let check = Check::at_most(
                &checks::INCLINATION,
                inclination,
                allowed,
                &PLUMB_PERMIT_NOTES,
            );
            found.put(check, work);
        }
        None => {
            let why = "no inclination was sent";
            found.open(&checks::INCLINATION, why, &PLUMB_PERMIT_NOTES, work);
        }
    }
}

fn distance(
    found: &Found,
    def: &'static CheckDef,
    sent: Option<Size>,
    allowed: Size,
    work: &mut Work,
) {
    let Some(distance) = sent else {
        return found.open(def, "no surveyed place was sent", &IBC_1810_3_1_3, work);
    };
    let check = Check::at_most(def, distance, allowed, &IBC_1810_3_1_3);
    let passed = check.passed();
    found.put(check, work);
    if passed && allowed > Size::ZERO && round9(distance / allowed) > ALLOWANCE_USED.value {
        let detail = format!(
            "`{}`: {} of {}",
            def.id,
            Size::ROLE.in_both_systems(distance.si()),
            Size::ROLE.in_both_systems(allowed.si())
        );
        work.warn(&warnings::DESIGN_ALLOWANCE_USED, detail);
    }
}

fn reused(found: &Found, work: &mut Work) {
    let history = found.request.history.unwrap_or_default();
    let what = match (history.extracted_before, history.over_torqued_before) {
        (_, Some(true)) => "went over its torque limit before",
        (Some(true), _) => "was installed and taken out before",
        _ => return,
    };
    if history.inspected_since != Some(true) {
        let why =
            format!("the pile {what}; shaft, couplings, bolts and plates were not inspected since");
        found.open(&checks::REUSED_PILE, &why, &BEARWELL_CHOICE, work);
    }
}
