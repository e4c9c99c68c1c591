//! What the rules look at: the log, the torque at its end, the helices where they stand, and
//! whether the pile can be turned deeper at all.

use super::history::PileStop;
use super::outcome::{EffectiveTorqueOutcome, HelixPlace, RecordRequired, TorqueByDefinition};
use super::request::{EffectiveTorque, Request};
use super::rows::{EDGE, Log, largest_helix};
use super::window::{Window, lower_of_two_windows};
use crate::catalogue::CheckDef;
use crate::contract::{Check, SubjectKind, Work, utilisation};
use crate::quantity::{Length, Size, Torque, round9};
use crate::source::{
    AC358_AVERAGING_3_FT, AC358_TORQUE_AVERAGING, BEARWELL_CHOICE, IBC_1705_9_FINAL_TORQUE,
    Reference, Sourced,
};
use crate::trace::Trace;

/// Share of the torque limit of the shaft from which a pile counts as being at it.
pub static AT_LIMIT: Sourced<f64> = Sourced::new("torque_at_limit_ratio", 0.95, &BEARWELL_CHOICE);
/// Advance over pitch below which a pile does not go down any more.
pub static NO_ADVANCE: Sourced<f64> = Sourced::new("no_advance_ratio", 0.1, &BEARWELL_CHOICE);
/// Least reading in the window over the required torque.
pub static LEAST_TORQUE: Sourced<f64> = Sourced::new("least_torque_ratio", 0.8, &BEARWELL_CHOICE);

/// Everything the rules look at.
pub(super) struct Found<'a> {
    pub request: &'a Request,
    pub log: &'a Log,
    pub required: Option<&'a RecordRequired>,
    pub effective: Option<EffectiveTorqueOutcome>,
    /// The longer window at the end.
    pub window: Option<Window>,
    /// Top one first.
    pub helices: Vec<HelixPlace>,
    pub largest_helix: Size,
    /// Advance over pitch at the last row.
    pub final_advance: Option<f64>,
    /// Why the pile cannot be turned deeper as it is.
    pub stuck: Option<String>,
}

impl<'a> Found<'a> {
    pub fn new(
        request: &'a Request,
        log: &'a Log,
        required: Option<&'a RecordRequired>,
        work: &mut Work,
    ) -> Self {
        let mut found = Self {
            request,
            log,
            required,
            effective: effective(request, log, required, work),
            window: log.counted.last_window(log.windows.longer),
            helices: places(request, log),
            largest_helix: largest_helix(request),
            final_advance: final_advance(request, log),
            stuck: None,
        };
        found.stuck = found.why_stuck();
        found
    }

    /// The top helix.
    pub fn top_helix(&self) -> Length {
        self.helices.first().map_or(Length::ZERO, |h| h.depth)
    }

    /// Puts a check down under the pile's name.
    pub fn put(&self, check: Check, work: &mut Work) {
        work.check(check.subject(SubjectKind::Pile, self.request.name()));
    }

    /// Puts a check down that driving deeper can mend, where the pile can be driven deeper.
    pub fn put_deeper(&self, check: Check, work: &mut Work) {
        let check = match &self.stuck {
            None => check.deeper_may_do(),
            Some(_) => check,
        };
        self.put(check, work);
    }

    /// Puts down that a check could not be judged.
    pub fn open(
        &self,
        def: &'static CheckDef,
        why: &str,
        source: &'static Reference,
        work: &mut Work,
    ) {
        self.put(Check::not_evaluated(def, why, source), work);
    }

    /// Greatest torque that went into the pile, turning it again after a wait included.
    pub fn strain(&self) -> Torque {
        let read = self.log.greatest_torque().map_or(0.0, |(_, t)| t);
        let again = self.request.retorque.map_or(Torque::ZERO, |r| r.torque);
        Torque::from_si(read).max(again)
    }

    /// Depth of the tip.
    pub fn tip(&self) -> Length {
        Length::from_si(self.log.tip)
    }

    /// Where the window at the end begins, m; the whole log where it is shorter.
    pub fn window_from(&self) -> f64 {
        self.window.map_or(self.log.counted.start, |w| w.from)
    }

    fn why_stuck(&self) -> Option<String> {
        match self.request.stop {
            Some(PileStop::Obstruction) => return Some("stopped on an obstruction".into()),
            Some(PileStop::DriveStalled) => return Some("the drive head stalled".into()),
            Some(PileStop::SpinOut) => return Some("it turns without going down".into()),
            Some(PileStop::TargetReached | PileStop::StillTurning) | None => {}
        }
        let limit = self.request.limits.and_then(|l| l.shaft_torque);
        let last = self.log.final_torque().map(|(_, t)| t);
        let greatest = self.strain().si();
        if let (Some(limit), Some(last)) = (limit, last) {
            let shown = |torque| Torque::ROLE.in_both_systems(torque);
            if !utilisation(greatest, limit.si()).1 {
                return Some(format!(
                    "the torque went over the limit of the shaft, {}",
                    shown(limit.si())
                ));
            }
            if round9(last / limit.si()) >= AT_LIMIT.value {
                return Some(format!(
                    "the torque, {}, stands at the limit of the shaft, {}",
                    shown(last),
                    shown(limit.si())
                ));
            }
        }
        if let Some(ratio) = self.final_advance
            && round9(ratio) < NO_ADVANCE.value
        {
            return Some(format!(
                "it went down only {} of its pitch in the last turn",
                round9(ratio)
            ));
        }
        let most = self.request.depths.maximum_tip_depth?;
        utilisation(most.si(), self.log.tip).1.then(|| {
            format!(
                "the tip is at the greatest depth, {}",
                Length::ROLE.in_both_systems(most.si())
            )
        })
    }
}

fn places(request: &Request, log: &Log) -> Vec<HelixPlace> {
    let mut all: Vec<HelixPlace> = request
        .pile
        .helices
        .iter()
        .map(|helix| HelixPlace {
            diameter: helix.diameter,
            depth: Length::from_si(log.tip) - helix.above_tip,
        })
        .collect();
    all.sort_by(|a, b| a.depth.si().total_cmp(&b.depth.si()));
    all
}

fn final_advance(request: &Request, log: &Log) -> Option<f64> {
    let pitch = request.pile.helix_pitch?;
    Some(log.rows.last()?.advance? / pitch.si())
}

/// The torque at the end by the definition asked for, with all others beside it.
fn effective(
    request: &Request,
    log: &Log,
    required: Option<&RecordRequired>,
    work: &mut Work,
) -> Option<EffectiveTorqueOutcome> {
    use EffectiveTorque::*;
    let counted = &log.counted;
    let windows = &log.windows;
    let mean = |length: f64| counted.last_window(length).map(|w| Torque::from_si(w.mean));
    let window = counted.last_window(windows.longer);
    let off = &mut Trace::off();
    let mut of = |definition: EffectiveTorque| -> Option<(Torque, &'static Reference)> {
        match definition {
            LowerOfTwoWindows => lower_of_two_windows(counted, windows, off),
            MeanOver3Diameters => Some((mean(windows.diameters)?, &AC358_TORQUE_AVERAGING)),
            MeanOver3Ft => Some((
                mean(super::window::Windows::three_feet())?,
                &AC358_AVERAGING_3_FT,
            )),
            LastThreeReadings => {
                let mean = counted.last_readings()?;
                Some((Torque::from_si(mean), &BEARWELL_CHOICE))
            }
            LeastInWindow => Some((Torque::from_si(window?.least), &BEARWELL_CHOICE)),
            FinalReading => {
                let last = counted.readings.last()?;
                Some((Torque::from_si(last.torque), &IBC_1705_9_FINAL_TORQUE))
            }
        }
    };
    let all = [
        LowerOfTwoWindows,
        MeanOver3Diameters,
        MeanOver3Ft,
        LastThreeReadings,
        LeastInWindow,
        FinalReading,
    ];
    let by_definition = all
        .iter()
        .filter_map(|d| {
            let torque = of(*d)?.0;
            Some(TorqueByDefinition {
                definition: *d,
                torque,
            })
        })
        .collect();
    let definition = request.effective_torque.unwrap_or(LowerOfTwoWindows);
    let (torque, source) = of(definition)?;
    if definition == LowerOfTwoWindows {
        lower_of_two_windows(counted, windows, &mut work.trace);
    }
    let reading_window = match window {
        Some(window) => window,
        // a definition that needs no window, on a log that has none
        None => counted.last_window(counted.length())?,
    };
    let accuracy = request.indicator.as_ref().and_then(|i| i.accuracy_ratio);
    let least_ratio = least_torque_ratio(request);
    let held = |r: &RecordRequired| {
        let least = r.torque.si() * least_ratio * (1.0 - 1e-9);
        Length::from_si(counted.held(least))
    };
    Some(EffectiveTorqueOutcome {
        definition,
        torque,
        torque_low: accuracy.map(|a| torque * (1.0 - a)),
        torque_high: accuracy.map(|a| torque * (1.0 + a)),
        source: source.into(),
        by_definition,
        // what is left of a difference of equal depths is nothing
        window_from: Length::from_si(if reading_window.from.abs() < EDGE {
            0.0
        } else {
            reading_window.from
        }),
        window_to: Length::from_si(reading_window.to),
        least: Torque::from_si(reading_window.least),
        greatest: Torque::from_si(reading_window.greatest),
        reading_count: reading_window.count,
        held_length: required.map(held),
    })
}

/// Least reading in the window over the required torque, as asked or by default.
pub(super) fn least_torque_ratio(request: &Request) -> f64 {
    let sent = request.limits.and_then(|l| l.least_torque_ratio);
    sent.unwrap_or(LEAST_TORQUE.value)
}
