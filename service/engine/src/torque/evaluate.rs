//! The course of the calculation: the numbers in order, once `settle.rs` has found
//! nothing wrong. Verdicts are in `judge.rs`, equations in the files of their subject.

use super::alternatives;
use super::cab_card;
use super::codes::{methods, warnings};
use super::conditions::{self, COMPRESSION_DEPTH};
use super::correlation::{capacity_by_torque, least_ultimate, sent, torque_for_capacity};
use super::equipment::DriveGear;
use super::hydraulics;
use super::judge;
use super::options::{CompressionUltimates, TorqueBasis};
use super::outcome::*;
use super::request::{Request, TorqueReading};
use super::rounding::{Whole, round_torque};
use super::safety::Factors;
use super::settle::{Settled, settle};
use super::site_factor;
use super::torsion;
use crate::basis::AxialDemand;
use crate::catalogue::cautions;
use crate::contract::{Refusal, Work, utilisation};
use crate::quantity::{Force, Torque, TorqueFactor, in_both_systems};
use crate::trace::Trace;

/// The calculation.
pub(super) fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
    let settled = settle(request, work)?;
    cautions_of(request, work);
    warn_of_depth(&settled, work);
    let installed = installed(&settled, work);
    let required = required(&settled, work);
    let required_torque = required.as_ref().map(|r| r.torque);
    let rating = request.torsion.and_then(|t| t.rating);
    let section = match (request.torsion.and_then(|t| t.section), &request.shaft) {
        (Some(steel), Some(shaft)) => Some(torsion::section(&steel, shaft, work)),
        _ => None,
    };
    torsion::compare(rating, section.as_ref(), work);
    let drive = request
        .drive
        .and_then(|d| hydraulics::evaluate(&d, required_torque, rating, work));
    let cab_card = cab_card::card(request, required_torque, rating, work)?;
    let installed_torque = installed.as_ref().map(|i| i.torque);
    let factor_alternatives = alternatives::compare(&settled, installed_torque, work);
    let limit = rating.or(section.as_ref().map(|s| s.estimate));
    let torsion = request.torsion.map(|_| ShaftTorsionOutcome {
        rating,
        section,
        installed_headroom: limit.zip(installed.as_ref()).map(|(l, i)| l - i.torque),
        required_headroom: limit.zip(required_torque).map(|(l, t)| l - t),
    });
    let outcome = Outcome {
        label: request.label.clone(),
        tags: request.tags.clone(),
        torque_factor: settled.factor.clone(),
        design_basis: settled.factors.map(|f| f.outcome()),
        installed,
        required,
        drive,
        torsion,
        factor_alternatives,
        cab_card,
    };
    judge::judge(&settled, &outcome, work);
    Ok(outcome)
}

fn cautions_of(request: &Request, work: &mut Work) {
    work.caution(&cautions::ENGINEER_OF_RECORD);
    work.caution(&cautions::LOCAL_CODE);
    work.caution(&cautions::LOCATE_UTILITIES);
    if request.torque_factor.is_some() || request.compare_factors == Some(true) {
        work.caution(&cautions::TORQUE_IS_EMPIRICAL);
        work.caution(&cautions::NOT_COVERED);
    }
    if request.installed.is_some() || request.drive.is_some() {
        work.caution(&cautions::GAUGE);
    }
    if request.drive.is_some() {
        work.caution(&cautions::SITE_SAFETY);
    }
    work.caution(&cautions::PRODUCT_STRENGTH);
}

fn warn_of_depth(settled: &Settled, work: &mut Work) {
    let request = settled.request;
    let demand = request.demand;
    let asked = |load: fn(&AxialDemand) -> Option<Force>| match &demand {
        Some(demand) => load(demand).is_some(),
        None => request.installed.is_some(),
    };
    let Some(factor) = &settled.factor else {
        return;
    };
    let tension = asked(|d| d.tension) && factor.tension.is_some();
    match (&request.embedment, &settled.tension_withheld) {
        (None, _) if tension => work.warn(
            &warnings::TENSION_DEPTH_NOT_STATED,
            "send `embedment` to have it judged",
        ),
        (Some(_), Some(issue)) if tension => {
            let limit = issue.limit.clone().unwrap_or_default();
            work.warn(
                &warnings::TENSION_WITHHELD,
                format!("{}, {limit}", issue.detail),
            );
        }
        _ => {}
    }
    if let Some(embedment) = &request.embedment
        && asked(|d| d.compression)
        && !utilisation(
            work.take(&COMPRESSION_DEPTH).si(),
            embedment.top_helix_depth.si(),
        )
        .1
    {
        work.warn(
            &warnings::TOP_HELIX_SHALLOW,
            format!(
                "top helix at {}",
                in_both_systems(embedment.top_helix_depth.si(), "m")
            ),
        );
    }
}

/// An installed torque with its band.
struct Reading {
    torque: Torque,
    band: Option<(Torque, Torque)>,
}

fn installed(settled: &Settled, work: &mut Work) -> Option<InstalledTorqueOutcome> {
    let request = settled.request;
    let installed = request.installed?;
    let factor = settled.factor.as_ref()?;
    work.method(&methods::CORRELATION);
    work.trace.about(|| "installed torque".to_owned());
    let (differential_pressure, torque) = match (installed.reading, &request.drive) {
        (TorqueReading::Gauge(gauge), _) => (None, gauge.torque),
        (TorqueReading::Pressure(read), Some(drive)) => {
            let gear = read.gear.unwrap_or(DriveGear::Slow);
            let (difference, torque) = hydraulics::torque_of(drive, gear, &read.pressures(), work)?;
            (Some(difference), torque)
        }
        // refused before
        (TorqueReading::Pressure(_), None) => return None,
    };
    let (advance_ratio, averaging_length) =
        conditions::judge(&installed, request.embedment.as_ref(), work);
    let band = installed
        .gauge_accuracy_ratio
        .map(|a| (torque * (1.0 - a), torque * (1.0 + a)));
    let reading = Reading { torque, band };
    let others = match &request.design_basis {
        Some(TorqueBasis::AllowableStress(a)) => a.other_ultimates,
        _ => None,
    };
    fn given(withheld: bool, used: &Option<TorqueFactorUsed>) -> Option<&TorqueFactorUsed> {
        used.as_ref().filter(|_| !withheld)
    }
    let withheld = settled.tension_withheld.is_some();
    let down = TorqueDirection::Compression;
    let up = TorqueDirection::Tension;
    let mut by = |used: Option<&TorqueFactorUsed>, direction, others| {
        Some(capacity(
            used?,
            direction,
            &reading,
            others,
            settled.factors,
            work,
        ))
    };
    Some(InstalledTorqueOutcome {
        compression: by(factor.compression.as_ref(), down, others),
        tension: by(given(withheld, &factor.tension), up, None),
        tension_reduced: by(given(withheld, &factor.tension_reduced), up, None),
        torque,
        torque_low: band.map(|b| b.0),
        torque_high: band.map(|b| b.1),
        differential_pressure,
        advance_ratio,
        averaging_length,
    })
}

fn capacity(
    used: &TorqueFactorUsed,
    direction: TorqueDirection,
    reading: &Reading,
    others: Option<CompressionUltimates>,
    factors: Option<Factors>,
    work: &mut Work,
) -> CapacityByTorque {
    let name = name_of(direction);
    work.trace.about(|| format!("installed torque, {name}"));
    let others = others.as_ref().map(sent).unwrap_or_default();
    let at = |factor: TorqueFactor, torque: Torque, trace: &mut Trace| {
        let by_torque = capacity_by_torque(factor, torque, trace);
        let mut items = vec![(UltimateBy::TorqueCorrelation, by_torque)];
        items.extend(others.iter().copied());
        let (item, ultimate) = least_ultimate(&items, trace);
        let design = factors.map(|f| f.of(direction).design(ultimate, trace));
        (by_torque, item, ultimate, design)
    };
    let (by_torque, governed_by, ultimate, design) =
        at(used.factor, reading.torque, &mut work.trace);
    work.trace.about(String::new);
    let off = |factor: TorqueFactor, torque: Torque| at(factor, torque, &mut Trace::off()).3;
    let (torque_low, torque_high) = reading.band.unwrap_or((reading.torque, reading.torque));
    let factors_between = site_factor::band(used);
    let mut considered = vec![UltimateBy::TorqueCorrelation];
    considered.extend(others.iter().map(|(item, _)| *item));
    CapacityByTorque {
        by_torque,
        ultimate,
        governed_by,
        considered,
        design,
        design_low: reading.band.and_then(|b| off(used.factor, b.0)),
        design_high: reading.band.and_then(|b| off(used.factor, b.1)),
        design_least: factors_between.and_then(|b| off(b.0, torque_low)),
        design_greatest: factors_between.and_then(|b| off(b.1, torque_high)),
    }
}

fn required(settled: &Settled, work: &mut Work) -> Option<RequiredTorqueOutcome> {
    let demand = settled.request.demand?;
    let factor = settled.factor.as_ref()?;
    let factors = settled.factors?;
    work.method(&methods::CORRELATION);
    let mut of = |load: Option<Force>, used: &Option<TorqueFactorUsed>, direction| {
        let (load, used) = (load?, used.as_ref()?);
        let name = name_of(direction);
        work.trace.about(|| format!("required torque, {name}"));
        let ultimate = factors.of(direction).ultimate(load, &mut work.trace);
        let torque = torque_for_capacity(ultimate, used.factor, &mut work.trace);
        work.trace.about(String::new);
        let by = |factor| torque_for_capacity(ultimate, factor, &mut Trace::off());
        let between = site_factor::band(used);
        Some(RequiredTorque {
            demand: load,
            ultimate,
            torque,
            torque_least: between.map(|b| by(b.1)),
            torque_greatest: between.map(|b| by(b.0)),
        })
    };
    let up = demand
        .tension
        .filter(|_| settled.tension_withheld.is_none());
    let compression = of(
        demand.compression,
        &factor.compression,
        TorqueDirection::Compression,
    );
    let tension = of(up, &factor.tension, TorqueDirection::Tension);
    let tension_reduced = of(up, &factor.tension_reduced, TorqueDirection::Tension);
    let (governing, torque) = match (&compression, &tension) {
        (Some(c), Some(t)) if t.torque > c.torque => (TorqueDirection::Tension, t.torque),
        (Some(c), _) => (TorqueDirection::Compression, c.torque),
        (None, Some(t)) => (TorqueDirection::Tension, t.torque),
        (None, None) => return None,
    };
    Some(RequiredTorqueOutcome {
        torque,
        governing,
        cab: round_torque(torque, Whole::Up),
        compression,
        tension,
        tension_reduced,
    })
}

fn name_of(direction: TorqueDirection) -> &'static str {
    match direction {
        TorqueDirection::Compression => "compression",
        TorqueDirection::Tension => "tension",
    }
}
