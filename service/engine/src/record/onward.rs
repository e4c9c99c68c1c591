//! From the verdict of a record to what the layout is told of its pile. What then becomes of
//! the layout is calculated in `relocation`, never here.

use std::borrow::Cow;

use super::codes::{checks, methods, warnings};
use super::outcome::RecordCapacity;
use super::relocation::{PileCounts, RecordRelocation, RecordRelocationOutcome};
use super::request::{Request, TorqueTarget};
use crate::catalogue::CheckDef;
use crate::catalogue::refusals::{BASIS_MIXED, MISSING_MEMBER};
use crate::contract::{Calculation, CheckStatus, Issue, Verdict, Work, verdict_so_far};
use crate::layout::{self, LayoutBasis};
use crate::quantity::{Again, Force, Length};
use crate::relocation::{self, PileStoppedShort, RelocationEvent, ResidualCapacity, WaysOut};
use crate::text::{Label, TEXT_MAX};
use crate::torque::TorqueBasis;

/// Where the layout stands in this request.
const LAYOUT: &str = "/relocation/layout";

/// Lists of the layout that are too short or too long.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    let Some(layout) = layout_of(request) else {
        return;
    };
    let mut of_layout = Vec::new();
    layout::PileLayout::lengths(layout, &mut of_layout);
    issues.extend(of_layout.into_iter().map(|issue| Issue {
        pointer: format!("{LAYOUT}{}", issue.pointer),
        ..issue
    }));
}

fn layout_of(request: &Request) -> Option<&layout::Request> {
    request.relocation.as_ref()?.layout.as_deref()
}

/// Label of the pile in the layout.
fn pile_of<'a>(request: &'a Request, asked: &'a RecordRelocation) -> Option<&'a Label> {
    asked.pile.as_ref().or(request.label.as_ref())
}

/// Faults of what is asked for; those of the layout at their place here.
pub(super) fn faults(request: &Request, issues: &mut Vec<Issue>) {
    let Some(asked) = &request.relocation else {
        return;
    };
    let Some(pile) = pile_of(request, asked) else {
        let told = "`pile` or the `label` of this record is needed: the layout knows its piles by their labels";
        issues.push(Issue::new("/relocation", &MISSING_MEMBER, told));
        return;
    };
    let Some(layout) = &asked.layout else {
        return;
    };
    let of_record = match &request.target {
        Some(TorqueTarget::FromDemand(from)) => Some(from.design_basis),
        _ => None,
    };
    let mixed = match (of_record, &layout.design_basis) {
        (Some(TorqueBasis::AllowableStress(_)), LayoutBasis::LimitStates(_)) => Some(
            "the torque of this record stands for allowable capacities, the layout wants factored resistances",
        ),
        (Some(TorqueBasis::LimitStates(_)), LayoutBasis::AllowableStress(_)) => Some(
            "the torque of this record stands for factored resistances, the layout wants allowable capacities",
        ),
        _ => None,
    };
    if let Some(told) = mixed {
        let at = format!("{LAYOUT}/design_basis");
        issues.push(Issue::new(at, &BASIS_MIXED, told));
    }
    // as if nothing of the pile could be counted on: what is wrong then is wrong with the layout
    let trial = onward(
        layout,
        stopped(pile, None, None, "stopped short".to_owned()),
    );
    let named = asked.pile.is_some();
    let found = relocation::faults_of(&trial);
    issues.extend(found.into_iter().map(|issue| moved(issue, named)));
}

/// A fault of the request for `pile-relocation` at its place in this one.
fn moved(issue: Issue, named: bool) -> Issue {
    let pointer = if issue.pointer.starts_with("/layout") {
        format!("/relocation{}", issue.pointer)
    } else if issue.pointer.starts_with("/events/0") && named {
        "/relocation/pile".to_owned()
    } else if issue.pointer.starts_with("/events/0") {
        "/label".to_owned()
    } else {
        LAYOUT.to_owned()
    };
    Issue { pointer, ..issue }
}

/// What the layout is told, and with the layout the request that tells it.
pub(super) fn tell(
    request: &Request,
    tip: Length,
    capacity: Option<&RecordCapacity>,
    work: &mut Work,
) -> (
    Option<RecordRelocationOutcome>,
    Option<Again<relocation::Request>>,
) {
    let Some((asked, pile)) = request
        .relocation
        .as_ref()
        .and_then(|asked| Some((asked, pile_of(request, asked)?)))
    else {
        return (None, None);
    };
    work.method(&methods::ONWARD);
    let judged = Judged::of(capacity, work);
    let event = judged.verdict == Verdict::Reject;
    let event = event.then(|| stopped(pile, judged.residual, deep(tip), judged.why()));
    let next = event
        .clone()
        .zip(asked.layout.as_deref())
        .map(|(event, layout)| Again(onward(layout, event)));
    let told = RecordRelocationOutcome {
        pile: pile.clone(),
        counts: judged.counts(),
        detail: judged.detail(),
        withheld_for: judged.withheld_for,
        event: event.map(Again),
    };
    (Some(told), next)
}

/// The request that tells the layout of the pile.
fn onward(layout: &layout::Request, event: RelocationEvent) -> relocation::Request {
    relocation::Request {
        layout: layout.clone(),
        events: vec![event],
        mislocation: None,
        eccentricity: None,
        head: None,
        ways_out: Some(WaysOut::default()),
    }
}

fn stopped(
    pile: &Label,
    residual: Option<ResidualCapacity>,
    depth: Option<Length>,
    why: String,
) -> RelocationEvent {
    RelocationEvent::StoppedShort(PileStoppedShort {
        pile: pile.clone(),
        residual,
        depth,
        why: Some(Label(why)),
    })
}

/// A depth below grade; nothing for a tip that never reached it.
fn deep(tip: Length) -> Option<Length> {
    (tip >= Length::ZERO).then_some(tip)
}

/// The record as far as the layout cares.
struct Judged {
    verdict: Verdict,
    failed: Vec<Cow<'static, str>>,
    withheld_for: Vec<Cow<'static, str>>,
    residual: Option<ResidualCapacity>,
}

impl Judged {
    fn of(capacity: Option<&RecordCapacity>, work: &mut Work) -> Self {
        let verdict = verdict_so_far(work);
        let mut failed: Vec<Cow<'static, str>> = Vec::new();
        let mut withheld_for: Vec<Cow<'static, str>> = Vec::new();
        let put = |list: &mut Vec<Cow<'static, str>>, code: &Cow<'static, str>| {
            if !list.contains(code) {
                list.push(code.clone());
            }
        };
        // a torque that is short is what the capacity says already
        let short = [checks::TORQUE.id, checks::TENSION_TOP_TORQUE.id];
        for check in &work.checks {
            match check.status {
                CheckStatus::Fail => {
                    put(&mut failed, &check.id);
                    if !short.contains(&&*check.id) {
                        put(&mut withheld_for, &check.id);
                    }
                }
                CheckStatus::NotEvaluated if check.needed => put(&mut withheld_for, &check.id),
                _ => {}
            }
        }
        // the band of the gauge is as wide for a pile that is accepted
        let held = work.hold_backs.iter().map(|h| &h.code);
        held.filter(|code| **code != warnings::GAUGE_BAND.id)
            .for_each(|code| put(&mut withheld_for, code));
        let against = capacity.iter().flat_map(|c| &c.withheld_for);
        against.for_each(|code| put(&mut withheld_for, code));
        let rejected = verdict == Verdict::Reject;
        if !rejected {
            withheld_for.clear();
        }
        let counts = rejected && withheld_for.is_empty();
        Self {
            verdict,
            failed,
            withheld_for,
            residual: capacity.filter(|_| counts).and_then(|c| residual(c, work)),
        }
    }

    fn counts(&self) -> PileCounts {
        match self.verdict {
            Verdict::Accept => PileCounts::AsDesigned,
            Verdict::Provisional | Verdict::NotAsked => PileCounts::OnceProven,
            Verdict::Continue => PileCounts::OnceDeeper,
            Verdict::Reject if self.residual.is_some() => PileCounts::ByTorque,
            Verdict::Reject => PileCounts::Nothing,
        }
    }

    fn detail(&self) -> String {
        match self.counts() {
            PileCounts::AsDesigned => {
                "accepted: the pile is what the layout took it for, and there is nothing to tell it".to_owned()
            }
            PileCounts::OnceProven => {
                "nothing fails and something is unproven: send what is missing first; the layout stands as long as nothing fails".to_owned()
            }
            PileCounts::OnceDeeper => {
                "what fails can still be met deeper: drive on first".to_owned()
            }
            PileCounts::ByTorque => match &self.residual {
                Some(r) => format!(
                    "rejected for {} alone: it carries what its torque stands for, {} in compression and {} in tension",
                    self.failed.join(", "),
                    Force::ROLE.in_both_systems(r.compression.si()),
                    Force::ROLE.in_both_systems(r.tension.si())
                ),
                None => String::new(),
            },
            PileCounts::Nothing if self.withheld_for.is_empty() => format!(
                "rejected for {}: without a torque factor and a design basis its torque stands for no capacity that the layout could count on",
                self.failed.join(", ")
            ),
            PileCounts::Nothing => format!(
                "rejected: nothing of it may be counted on, whatever its torque stands for, because of {}",
                self.withheld_for.join(", ")
            ),
        }
    }

    /// What the event says of its cause, as long as such a text may be.
    fn why(&self) -> String {
        let mut text = "record rejected".to_owned();
        for (i, code) in self.failed.iter().enumerate() {
            let next = format!("{}{code}", if i == 0 { ": " } else { ", " });
            let more = format!(" and {} more", self.failed.len() - i);
            let last = i + 1 == self.failed.len();
            let tail = if last { 0 } else { more.len() };
            if text.len() + next.len() + tail > TEXT_MAX {
                text += &more;
                break;
            }
            text += &next;
        }
        text
    }
}

/// What the pile still carries by the torque that counts; in tension only where the rules of
/// tension were judged and pass.
fn residual(capacity: &RecordCapacity, work: &Work) -> Option<ResidualCapacity> {
    let by_torque = capacity.by_effective_torque?;
    let compression = by_torque.compression_design?;
    let passes = |def: &CheckDef| {
        let mut those = work.checks.iter().filter(|c| c.id == def.id).peekable();
        those.peek().is_some() && those.all(|c| c.status == CheckStatus::Pass)
    };
    let holds = passes(&checks::TENSION_DEPTH) && passes(&checks::TENSION_TOP_TORQUE);
    let tension = by_torque.tension_design.filter(|_| holds);
    Some(ResidualCapacity {
        compression,
        tension: tension.unwrap_or(Force::ZERO),
        stiffness: None,
        founded_on_rock: None,
    })
}
