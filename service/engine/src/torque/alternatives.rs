//! The published torque factors side by side: each that holds for the shaft with what
//! follows from it, and why the others do not. Which one is used is in `factor_choice.rs`.

use super::compared::{FactorAlternative, FactorAlternativeSide, PublishedTorqueFactor};
use super::correlation::{capacity_by_torque, torque_for_capacity};
use super::factor_choice::choose;
use super::options::{NoFactorOptions, TorqueFactorChoice};
use super::outcome::{TorqueDirection, TorqueFactorUsed};
use super::settle::Settled;
use crate::contract::{Issue, Work};
use crate::quantity::{Force, Torque};
use crate::trace::Trace;

const ALL: [(PublishedTorqueFactor, TorqueFactorChoice, &str); 5] = [
    (
        PublishedTorqueFactor::ListedShaft,
        TorqueFactorChoice::ListedShaft(NoFactorOptions {}),
        "compared, listed shaft",
    ),
    (
        PublishedTorqueFactor::EffectiveDiameter,
        TorqueFactorChoice::EffectiveDiameter(NoFactorOptions {}),
        "compared, effective diameter",
    ),
    (
        PublishedTorqueFactor::Livneh2008,
        TorqueFactorChoice::Livneh2008(NoFactorOptions {}),
        "compared, Livneh and El Naggar 2008",
    ),
    (
        PublishedTorqueFactor::HoytClemence1989,
        TorqueFactorChoice::HoytClemence1989(NoFactorOptions {}),
        "compared, Hoyt and Clemence 1989",
    ),
    (
        PublishedTorqueFactor::Perko2009,
        TorqueFactorChoice::Perko2009(NoFactorOptions {}),
        "compared, Perko 2009",
    ),
];

/// What a direction asks of a factor: a torque for an ultimate capacity, a capacity of a
/// torque.
#[derive(Clone, Copy)]
struct Asked {
    ultimate: Option<Force>,
    installed: Option<Torque>,
}

/// Every published factor, where they were asked for.
pub(super) fn compare(
    settled: &Settled,
    installed: Option<Torque>,
    work: &mut Work,
) -> Option<Vec<FactorAlternative>> {
    let shaft = settled.request.shaft.as_ref()?;
    if settled.request.compare_factors != Some(true) {
        return None;
    }
    let demand = settled.request.demand;
    let withheld = settled.tension_withheld.is_some();
    let asked = |direction: TorqueDirection, load: Option<Force>, given: bool| Asked {
        ultimate: load
            .zip(settled.factors)
            .filter(|_| given)
            .map(|(load, f)| f.of(direction).ultimate(load, &mut Trace::off())),
        installed: installed.filter(|_| given),
    };
    let load =
        |pick: fn(&crate::basis::AxialDemand) -> Option<Force>| demand.as_ref().and_then(pick);
    let down = asked(TorqueDirection::Compression, load(|d| d.compression), true);
    let up = asked(TorqueDirection::Tension, load(|d| d.tension), !withheld);
    let all = ALL.map(|(choice, how, about)| {
        // its own workbench: what the factor not used would warn of is told by its source
        let mut bench = Work::new(std::mem::take(&mut work.trace), None);
        bench.trace.about(|| about.to_owned());
        let mut issues = Vec::new();
        let found = choose(&how, None, Some(shaft), &mut bench, &mut issues);
        let mut side = |used: Option<&TorqueFactorUsed>, asked: Asked| {
            used.map(|used| of_side(used, asked, &mut bench.trace))
        };
        let alternative = FactorAlternative {
            choice,
            reason: issues.first().map(told),
            compression: side(found.as_ref().and_then(|f| f.compression.as_ref()), down),
            tension: side(found.as_ref().and_then(|f| f.tension.as_ref()), up),
            tension_reduced: side(found.as_ref().and_then(|f| f.tension_reduced.as_ref()), up),
        };
        work.trace = bench.trace;
        for method in bench.methods {
            if !work.methods.contains(&method) {
                work.methods.push(method);
            }
        }
        alternative
    });
    work.trace.about(String::new);
    Some(all.into())
}

fn of_side(used: &TorqueFactorUsed, asked: Asked, trace: &mut Trace) -> FactorAlternativeSide {
    FactorAlternativeSide {
        factor: used.factor,
        required_torque: asked
            .ultimate
            .map(|ultimate| torque_for_capacity(ultimate, used.factor, trace)),
        ultimate: asked
            .installed
            .map(|torque| capacity_by_torque(used.factor, torque, trace)),
        source: used.source.clone(),
    }
}

/// Why a factor does not hold, without the advice that goes with a refusal.
fn told(issue: &Issue) -> String {
    let what = issue.detail.split(';').next().unwrap_or_default();
    match &issue.limit {
        Some(limit) => format!("{what}; it holds for {limit}"),
        None => what.to_owned(),
    }
}
