//! Checks of how a test was run against what test standards ask: steps and their time, largest
//! load, distance of the reaction, rate of movement. The steps are found in `steps.rs`.

use super::codes::{checks, methods, refusals, warnings};
use super::conduct::{ConductCheck, LoadTestConduct};
use super::curve::Curve;
use super::judge;
use super::outcome::{FailureLoad, FailureLoadKind};
use super::points::{ELAPSED, LoadTestPoints};
use super::request::*;
use super::steps::{Step, at_end, readings, steps};
use crate::catalogue::CheckDef;
use crate::contract::{Check, CheckStatus, Issue, SubjectKind, Work};
use crate::quantity::{Duration, DurationUnit, Force, Length, LengthUnit, Size};
use crate::source::{
    ASTM_QUICK_STEPS, ASTM_TWICE_DESIGN, Reference, Sourced, UFC_REACTION_DISTANCE,
    UFC_SETTLEMENT_RATE,
};
use crate::trace::Trace;

/// Largest step of a quick test over the failure load foreseen.
pub static STEP_SHARE: Sourced<f64> = Sourced::new("load_test_step_ratio", 0.05, &ASTM_QUICK_STEPS);
/// Least time of a step of a quick test.
pub static STEP_LEAST: Sourced<Duration> = Sourced::new(
    "load_test_step_time_least",
    Duration::new(4.0, DurationUnit::Min),
    &ASTM_QUICK_STEPS,
);
/// Greatest time of a step of a quick test.
pub static STEP_MOST: Sourced<Duration> = Sourced::new(
    "load_test_step_time_most",
    Duration::new(15.0, DurationUnit::Min),
    &ASTM_QUICK_STEPS,
);
/// Largest load of a test over the service load.
pub static LOAD_SHARE: Sourced<f64> =
    Sourced::new("load_test_largest_load_ratio", 2.0, &ASTM_TWICE_DESIGN);
/// Clear distance of the reaction over the widest part of the pile.
pub static REACTION_WIDTHS: Sourced<f64> =
    Sourced::new("load_test_reaction_widths", 5.0, &UFC_REACTION_DISTANCE);
/// Least clear distance of the reaction.
pub static REACTION_LEAST: Sourced<Length> = Sourced::new(
    "load_test_reaction_least",
    Length::new(8.0, LengthUnit::Ft),
    &UFC_REACTION_DISTANCE,
);
/// Movement in an hour at the end of a hold.
pub static HOURLY: Sourced<Size> = Sourced::new(
    "load_test_hourly_movement",
    Size::new(0.01, LengthUnit::In),
    &UFC_SETTLEMENT_RATE,
);

/// Clear distance that the reaction of a test needs.
///
/// a = max(5 w, 8 ft)
///
/// w widest part of the pile, its largest helix, m. Source: UFC 3-220-20, transcribed; its two
/// tellings differ, the greater distance is taken. Positive.
pub fn reaction_distance(widest: Size, trace: &mut Trace) -> Length {
    let widths = Length::from_si(REACTION_WIDTHS.value * widest.si());
    trace.step(
        "a",
        "max(5 w, 8 ft)",
        widths.max(REACTION_LEAST.value),
        [("w", widest.into())],
        &UFC_REACTION_DISTANCE,
    )
}

/// Movement that is accepted over some time at the end of a hold.
///
/// s = v t
///
/// v = 0.01 in/h; t time between the readings, s, above nil. Source: UFC 3-220-20, transcribed,
/// proof tests. Positive.
pub fn accepted_movement(time: Duration, trace: &mut Trace) -> Size {
    let hours = time / Duration::new(1.0, DurationUnit::H);
    trace.step(
        "s",
        "v t, v = 0.01 in/h",
        HOURLY.value * hours,
        [("t", time.into())],
        &UFC_SETTLEMENT_RATE,
    )
}

/// Faults of the times and of what is asked.
pub(super) fn faults(request: &Request, issues: &mut Vec<Issue>) {
    times(&request.points, issues);
    let Some(conduct) = &request.conduct else {
        return;
    };
    let quick = request.procedure == LoadTestProcedure::Quick;
    let asked = conduct.checks.iter().flatten();
    for (at, check) in asked.clone().enumerate() {
        let pointer = format!("/conduct/checks/{at}");
        if asked.clone().take(at).any(|c| c == check) {
            issues.push(Issue::new(
                pointer,
                &refusals::CHECK_TWICE,
                "it is in the list already",
            ));
        } else if !quick && matches!(check, ConductCheck::StepSize | ConductCheck::StepTime) {
            issues.push(Issue::new(
                pointer,
                &refusals::OTHER_PROCEDURE,
                "the steps of a quick test, and this one was maintained",
            ));
        }
    }
    if !quick && conduct.anticipated_failure.is_some() {
        issues.push(Issue::new(
            "/conduct/anticipated_failure",
            &refusals::OTHER_PROCEDURE,
            "for the steps of a quick test, and this one was maintained",
        ));
    }
}

/// The time never goes back over the rows where it was read.
fn times(rows: &LoadTestPoints, issues: &mut Vec<Issue>) {
    let mut before = Duration::ZERO;
    for row in 0..rows.len() {
        let Some(here): Option<Duration> = rows.value(row, ELAPSED) else {
            continue;
        };
        if here < before {
            let told = |d: Duration| Duration::ROLE.in_both_systems(d.si());
            let pointer = format!("/points{}", rows.cell_pointer(row, ELAPSED));
            let told = format!("{} after {}", told(here), told(before));
            issues.push(Issue::new(pointer, &refusals::TIME_GOES_BACK, told));
            return;
        }
        before = here;
    }
}

/// What the checks are made of.
struct Run<'a> {
    request: &'a Request,
    conduct: LoadTestConduct,
    curve: &'a Curve,
    failure: &'a FailureLoad,
    steps: Vec<Step>,
}

/// The checks of how the test was run, where they can be made or were asked for.
pub(super) fn check(request: &Request, curve: &Curve, failure: &FailureLoad, work: &mut Work) {
    let timed = request.points.has(ELAPSED);
    if request.conduct.is_none() && !timed {
        return;
    }
    work.method(&methods::CONDUCT);
    let run = Run {
        request,
        conduct: request.conduct.clone().unwrap_or_default(),
        curve,
        failure,
        steps: steps(&readings(&request.points, curve.row_count)),
    };
    if request.procedure == LoadTestProcedure::Quick {
        run.step_size(work);
        run.step_time(work);
    }
    run.largest_load(work);
    run.reaction(work);
    run.settlement(work);
}

impl Run<'_> {
    fn asked(&self, check: ConductCheck) -> bool {
        let asked = self.conduct.checks.iter().flatten();
        asked.into_iter().any(|c| *c == check)
    }

    fn put(&self, check: Check, work: &mut Work) {
        work.check(match &self.request.label {
            Some(label) => check.subject(SubjectKind::Pile, label.as_str()),
            None => check,
        });
    }

    /// Not evaluated, where it was asked for.
    fn open(
        &self,
        (asked, def): (ConductCheck, &'static CheckDef),
        why: &str,
        source: &'static Reference,
        work: &mut Work,
    ) {
        if self.asked(asked) {
            self.put(Check::not_evaluated(def, why, source), work);
        }
    }

    fn step_size(&self, work: &mut Work) {
        let about = (ConductCheck::StepSize, &checks::STEP_SIZE);
        let Some(foreseen) = self.conduct.anticipated_failure else {
            let why = "`anticipated_failure` was not sent";
            return self.open(about, why, &ASTM_QUICK_STEPS, work);
        };
        let limit = foreseen * work.take(&STEP_SHARE);
        let largest = self.steps.iter().fold(0.0, |most: f64, s| most.max(s.rise));
        let told = format!("the largest of {} steps of load", self.steps.len());
        let largest = Force::from_si(largest);
        let check = Check::at_most(about.1, largest, limit, &ASTM_QUICK_STEPS);
        self.put(check.reason(told).advisory(), work);
    }

    fn step_time(&self, work: &mut Work) {
        let times = self.steps.iter().filter_map(|s| s.time);
        let known = times.clone().count();
        let (Some(least), Some(most)) = (
            times.clone().reduce(f64::min),
            times.clone().reduce(f64::max),
        ) else {
            let why = if self.request.points.has(ELAPSED) {
                "the column `elapsed` has no times at the ends of two steps"
            } else {
                "the points have no column `elapsed`"
            };
            for def in [&checks::STEP_TIME_LEAST, &checks::STEP_TIME_MOST] {
                self.open((ConductCheck::StepTime, def), why, &ASTM_QUICK_STEPS, work);
            }
            return;
        };
        let minutes = |s: f64| crate::quantity::round9((s / 6.0).round() / 10.0);
        let told = |which: &str, s: f64| {
            let all = self.steps.len();
            format!(
                "the {which} of {known} steps with times, of {all}: {} min",
                minutes(s)
            )
        };
        let (from, to) = (work.take(&STEP_LEAST), work.take(&STEP_MOST));
        let (short, long) = (Duration::from_si(least), Duration::from_si(most));
        let def = &checks::STEP_TIME_LEAST;
        let check = Check::at_least(def, from, short, &ASTM_QUICK_STEPS);
        self.put(check.reason(told("shortest", least)).advisory(), work);
        let check = Check::at_most(&checks::STEP_TIME_MOST, long, to, &ASTM_QUICK_STEPS);
        self.put(check.reason(told("longest", most)).advisory(), work);
    }

    fn largest_load(&self, work: &mut Work) {
        let about = (ConductCheck::LargestLoad, &checks::LARGEST_LOAD);
        let asked = self.asked(about.0);
        let service = judge::service_load(self.request).filter(|_| asked);
        let Some(design) = self.conduct.design_load.or(service) else {
            let why = "neither `design_load` nor a service load in `demand` was sent";
            return self.open(about, why, &ASTM_TWICE_DESIGN, work);
        };
        let needed = design * work.take(&LOAD_SHARE);
        let largest = Force::from_si(self.curve.peak().load);
        let check = Check::at_least(about.1, needed, largest, &ASTM_TWICE_DESIGN);
        let told = match self.failure.kind {
            FailureLoadKind::LowerBound => "the test ended before its criterion was met",
            FailureLoadKind::NotDetermined => "the failure load is not determined",
            _ => "the test reached its failure load",
        };
        self.put(check.reason(told).advisory(), work);
    }

    fn reaction(&self, work: &mut Work) {
        let about = (ConductCheck::ReactionDistance, &checks::REACTION_DISTANCE);
        let Some(clear) = self.conduct.reaction_distance else {
            let why = "`reaction_distance` was not sent";
            return self.open(about, why, &UFC_REACTION_DISTANCE, work);
        };
        let diameters = self.request.helices.iter().map(|h| h.diameter);
        let widest = diameters.fold(Size::ZERO, Size::max);
        let needed = reaction_distance(widest, &mut work.trace);
        let check = Check::at_least(about.1, needed, clear, &UFC_REACTION_DISTANCE);
        let told = "five times the largest helix and 8 ft, the greater";
        let check = check.reason(told).advisory();
        let close = check.status == CheckStatus::Warn;
        self.put(check, work);
        if close && self.request.demand.is_some() {
            let told = |l: Length| Length::ROLE.in_both_systems(l.si());
            let told = format!("{} clear, {} needed", told(clear), told(needed));
            work.hold_back(&warnings::REACTION_CLOSE, told);
        }
    }

    fn settlement(&self, work: &mut Work) {
        let about = (ConductCheck::SettlementRate, &checks::SETTLEMENT_RATE);
        let maintained = self.request.procedure == LoadTestProcedure::Maintained;
        if !maintained && !self.asked(about.0) {
            return;
        }
        let Some((moved, time)) = self.steps.last().and_then(at_end) else {
            let why = "two readings with `elapsed` at the largest load are needed";
            return self.open(about, why, &UFC_SETTLEMENT_RATE, work);
        };
        let time = Duration::from_si(time);
        work.take(&HOURLY);
        let accepted = accepted_movement(time, &mut work.trace);
        let moved = Size::from_si(moved);
        let check = Check::at_most(about.1, moved, accepted, &UFC_SETTLEMENT_RATE);
        let proof = self.failure.kind == FailureLoadKind::LowerBound;
        let told = if proof {
            "the test ended before its criterion was met, so the pile has to come to rest"
        } else {
            "the pile was loaded to failure, where it need not come to rest"
        };
        let check = check.reason(told);
        let counts = proof && (self.request.demand.is_some() || self.asked(about.0));
        self.put(if counts { check } else { check.advisory() }, work);
    }
}
