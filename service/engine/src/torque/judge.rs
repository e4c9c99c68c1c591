//! Checks and what holds a verdict back: capacity against load, torque against rating
//! and section, drive head against required torque. No number is made here.

use super::bands;
use super::codes::{checks, warnings};
use super::correlation::sent;
use super::options::TorqueBasis;
use super::outcome::*;
use super::settle::Settled;
use crate::catalogue::CheckDef;
use crate::contract::{Check, SubjectKind, Work, utilisation};
use crate::quantity::{Force, Torque, in_both_systems};
use crate::source::{
    AC358_TENSION_EMBEDMENT, AISC_360_SHEAR_YIELD, HYDRAULIC_MOTOR, IBC_1810_3_3_1_9, IBC_1810_4_11,
};

const SECTION_ONLY: &str = "section only; coupling and bolt holes are not covered";

/// All checks, in the order of the question.
pub(super) fn judge(settled: &Settled, outcome: &Outcome, work: &mut Work) {
    capacities(settled, outcome, work);
    other_ultimates(settled, outcome, work);
    limits(settled, outcome, work);
    drive(settled, outcome, work);
}

/// Puts a check down under the pile's label.
fn put(settled: &Settled, check: Check, work: &mut Work) {
    work.check(match &settled.request.label {
        Some(label) => check.subject(SubjectKind::Pile, label.as_str()),
        None => check,
    });
}

fn capacities(settled: &Settled, outcome: &Outcome, work: &mut Work) {
    let (Some(demand), Some(factors)) = (settled.request.demand, settled.factors) else {
        return;
    };
    if let (Some(issue), Some(_)) = (&settled.tension_withheld, demand.tension) {
        let check = Check::not_evaluated(
            &checks::TENSION,
            format!("{}: {}", issue.code, issue.detail),
            &AC358_TENSION_EMBEDMENT,
        );
        put(settled, check, work);
    }
    let Some(installed) = &outcome.installed else {
        return;
    };
    let sides = [
        (
            &checks::COMPRESSION,
            TorqueDirection::Compression,
            demand.compression,
            &installed.compression,
        ),
        (
            &checks::TENSION,
            TorqueDirection::Tension,
            demand.tension,
            &installed.tension,
        ),
    ];
    for (def, direction, load, capacity) in sides {
        let (Some(load), Some(capacity)) = (load, capacity) else {
            continue;
        };
        let Some(design) = capacity.design else {
            continue;
        };
        let check = Check::at_most(def, load, design, factors.of(direction).source());
        let passed = check.passed();
        put(settled, check, work);
        hold_for_band(load, capacity, passed, def, work);
        bands::hold_capacity(load, capacity, passed, def, work);
    }
    if let (Some(load), Some(used), Some(reduced)) = (
        demand.tension,
        &installed.tension,
        &installed.tension_reduced,
    ) && let (Some(design), Some(lower)) = (used.design, reduced.design)
        && fits(load, design)
        && !fits(load, lower)
    {
        work.hold_back(
            &warnings::TENSION_FACTOR_IN_DOUBT,
            format!(
                "capacity in tension {} by the factor used, {} by the reduced one",
                in_both_systems(design.si(), "N"),
                in_both_systems(lower.si(), "N")
            ),
        );
    }
}

fn fits(load: Force, capacity: Force) -> bool {
    utilisation(load.si(), capacity.si()).1
}

fn hold_for_band(
    load: Force,
    capacity: &CapacityByTorque,
    passed: bool,
    def: &'static CheckDef,
    work: &mut Work,
) {
    let (Some(low), Some(high)) = (capacity.design_low, capacity.design_high) else {
        return;
    };
    if passed != fits(load, low) || passed != fits(load, high) {
        work.hold_back(
            &warnings::GAUGE_BAND,
            format!(
                "`{}`: capacity from {} to {}",
                def.id,
                in_both_systems(low.si(), "N"),
                in_both_systems(high.si(), "N")
            ),
        );
    }
}

fn other_ultimates(settled: &Settled, outcome: &Outcome, work: &mut Work) {
    let Some(TorqueBasis::AllowableStress(basis)) = &settled.request.design_basis else {
        return;
    };
    let least = basis
        .other_ultimates
        .as_ref()
        .map(sent)
        .unwrap_or_default()
        .into_iter()
        .map(|(_, force)| force)
        .reduce(Force::min);
    let needed = outcome.required.as_ref().and_then(|r| r.compression);
    if let (Some(least), Some(needed)) = (least, needed) {
        let check = Check::at_least(
            &checks::OTHER_ULTIMATES,
            needed.ultimate,
            least,
            &IBC_1810_3_3_1_9,
        );
        put(settled, check, work);
    }
}

/// Installed and required torque against rating and section.
fn limits(settled: &Settled, outcome: &Outcome, work: &mut Work) {
    let installed = outcome.installed.as_ref();
    let required = outcome.required.as_ref();
    let torsion = outcome.torsion.as_ref();
    let rating = torsion.and_then(|t| t.rating);
    match rating {
        Some(rating) => {
            if let Some(installed) = installed {
                against_rating(settled, installed, rating, work);
            }
            if let Some(required) = required {
                let check = Check::at_most(
                    &checks::REQUIRED_LIMIT,
                    required.torque,
                    rating,
                    &IBC_1810_4_11,
                );
                let passed = check.passed();
                put(settled, check, work);
                hold_for_reduced(required, rating, passed, &checks::REQUIRED_LIMIT, work);
                bands::hold_required(required, rating, passed, &checks::REQUIRED_LIMIT, work);
            }
        }
        None if settled.request.demand.is_some() => {
            let def = if installed.is_some() {
                &checks::INSTALLED_LIMIT
            } else {
                &checks::REQUIRED_LIMIT
            };
            let reason = "no torque rating of the shaft was sent";
            put(
                settled,
                Check::not_evaluated(def, reason, &IBC_1810_4_11),
                work,
            );
        }
        None => {}
    }
    let Some(section) = torsion.and_then(|t| t.section.as_ref()) else {
        return;
    };
    if settled.request.demand.is_none() {
        if let Some(installed) = installed
            && !utilisation(installed.torque.si(), section.estimate.si()).1
        {
            work.warn(&warnings::TORQUE_ABOVE_SECTION, SECTION_ONLY);
        }
        return;
    }
    let sides = [
        (&checks::INSTALLED_SECTION, installed.map(|i| i.torque)),
        (&checks::REQUIRED_SECTION, required.map(|r| r.torque)),
    ];
    for (def, torque) in sides {
        if let Some(torque) = torque {
            let check = Check::at_most(def, torque, section.estimate, &AISC_360_SHEAR_YIELD)
                .reason(SECTION_ONLY)
                .advisory();
            put(settled, check, work);
        }
    }
}

fn against_rating(
    settled: &Settled,
    installed: &InstalledTorqueOutcome,
    rating: Torque,
    work: &mut Work,
) {
    let check = Check::at_most(
        &checks::INSTALLED_LIMIT,
        installed.torque,
        rating,
        &IBC_1810_4_11,
    );
    let passed = check.passed();
    put(settled, check, work);
    let fits = |torque: Torque| utilisation(torque.si(), rating.si()).1;
    if let (Some(low), Some(high)) = (installed.torque_low, installed.torque_high)
        && (passed != fits(low) || passed != fits(high))
    {
        work.hold_back(
            &warnings::GAUGE_BAND,
            format!(
                "`{}`: torque from {} to {}",
                checks::INSTALLED_LIMIT.id,
                in_both_systems(low.si(), "N_m"),
                in_both_systems(high.si(), "N_m")
            ),
        );
    }
}

/// A required torque that fits by the factor used and not by the reduced one.
fn hold_for_reduced(
    required: &RequiredTorqueOutcome,
    limit: Torque,
    passed: bool,
    def: &'static CheckDef,
    work: &mut Work,
) {
    if let Some(reduced) = &required.tension_reduced
        && passed
        && !utilisation(reduced.torque.si(), limit.si()).1
    {
        work.hold_back(
            &warnings::TENSION_FACTOR_IN_DOUBT,
            format!(
                "`{}`: {} by the reduced factor in tension, {} at hand",
                def.id,
                in_both_systems(reduced.torque.si(), "N_m"),
                in_both_systems(limit.si(), "N_m")
            ),
        );
    }
}

fn drive(settled: &Settled, outcome: &Outcome, work: &mut Work) {
    let Some(available) = outcome.drive.and_then(|d| d.available) else {
        return;
    };
    if let Some(required) = &outcome.required {
        let check = Check::at_least(
            &checks::DRIVE,
            required.torque,
            available.torque,
            &HYDRAULIC_MOTOR,
        );
        let passed = check.passed();
        put(settled, check, work);
        hold_for_reduced(required, available.torque, passed, &checks::DRIVE, work);
        bands::hold_required(required, available.torque, passed, &checks::DRIVE, work);
    }
    if let Some(rating) = outcome.torsion.as_ref().and_then(|t| t.rating)
        && !utilisation(available.torque.si(), rating.si()).1
    {
        work.warn(
            &warnings::DRIVE_CAN_OVERTORQUE,
            format!(
                "{} available, rating {}",
                in_both_systems(available.torque.si(), "N_m"),
                in_both_systems(rating.si(), "N_m")
            ),
        );
    }
}
