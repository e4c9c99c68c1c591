//! The reading column: verdict, the checks that fail or are open with their numbers, the next
//! steps, and what else the answer says.

use bearwell_engine::quantity::Size;
use bearwell_engine::record::{
    CapacityOfTorque, EffectiveTorque, EffectiveTorqueOutcome, NextStep, NextStepKind, PileStop,
};

use super::reading::Subject;
use crate::checks;
use crate::column::{self, Item, Lead};
use crate::svg::{Rect, Svg};
use crate::{panel, words};

/// Height of the field for the engineer of record, mm.
const SEAL: f64 = 12.0;

/// Draws the column from top to bottom.
pub fn draw(svg: &mut Svg, s: Subject, scales: &[String; 2], area: Rect) {
    let seal = Rect {
        y: area.bottom() - SEAL,
        h: SEAL,
        ..area
    };
    panel::seal(svg, seal);
    let y = panel::verdict(svg, "Installation record", s.answer.verdict, area) + 1.4;
    let rest = Rect {
        y,
        h: seal.y - 1.6 - y,
        ..area
    };
    column::draw(svg, &items(s, scales), rest);
}

fn items(s: Subject, scales: &[String; 2]) -> Vec<Item> {
    let mut all = vec![Item::plain(pile(s))];
    let open = checks::items(&s.answer.checks, "record_", s.system);
    if !open.is_empty() {
        all.push(Item::heading("Fails, or is open"));
        all.extend(open);
    }
    all.extend(held_back(s));
    let steps = &s.outcome().next_steps;
    if !steps.is_empty() {
        all.push(Item::heading("Next steps, the first one first"));
        let told = steps.iter().enumerate();
        all.extend(told.map(|(i, step)| Item {
            lead: Lead::Number(i + 1),
            ..Item::plain(next(s, step))
        }));
    }
    all.push(Item::heading("Read from the log"));
    all.extend(log(s).into_iter().map(Item::plain));
    all.extend(capacity(s).into_iter().map(Item::plain));
    all.extend(ground(s).map(Item::plain));
    all.extend(complete(s).map(Item::plain));
    all.extend(panel::warned(&s.answer.warnings).map(Item::plain));
    all.extend(scales.iter().map(Item::plain));
    all.push(Item::plain(panel::provenance(&s.answer.provenance)));
    all
}

/// Reasons of the verdict that are no checks.
fn held_back(s: Subject) -> Vec<Item> {
    let checks = &s.answer.checks;
    let reasons = s.answer.verdict_reasons.iter();
    reasons
        .filter(|r| checks.iter().all(|c| c.id != r.code))
        .map(|r| {
            let code = r.code.strip_prefix("record_").unwrap_or(&r.code);
            Item {
                lead: Lead::Open,
                ..Item::plain(format!("{}: {}", code, r.detail).replace('_', " "))
            }
        })
        .collect()
}

fn pile(s: Subject) -> String {
    let name = match &s.request.label {
        Some(label) => format!("Pile {label}"),
        None => "The pile".to_owned(),
    };
    let mut sizes: Vec<Size> = s.outcome().helices.iter().map(|h| h.diameter).collect();
    sizes.dedup();
    let helices = match (&sizes[..], s.outcome().helices.len()) {
        ([one], count) => format!("{count} x {}", words::size_told(*one, s.system)),
        (all, _) => {
            let all = all.iter().map(|d| words::size_told(*d, s.system));
            all.collect::<Vec<_>>().join(", ")
        }
    };
    let tip = words::depth_told(s.outcome().tip_depth, s.system);
    let stop = match s.request.stop {
        None => "",
        Some(PileStop::TargetReached) => ", stopped as reached",
        Some(PileStop::Obstruction) => ", stopped on an obstruction",
        Some(PileStop::DriveStalled) => ", the drive stalled",
        Some(PileStop::SpinOut) => ", spun out",
        Some(PileStop::StillTurning) => ", still turning",
    };
    format!("{name}: helices {helices}; tip at {tip}{stop}.")
}

/// What to do next, in words.
pub fn step_told(step: NextStepKind) -> &'static str {
    match step {
        NextStepKind::InspectShaft => "Stop and inspect",
        NextStepKind::DriveDeeper => "Drive deeper",
        NextStepKind::RestoreAdvance => "Restore the advance",
        NextStepKind::WaitAndRetorque => "Wait, turn again",
        NextStepKind::PreDrill => "Pre-drill",
        NextStepKind::ExtractAndMove => "Extract, dig or move",
        NextStepKind::LargerHelix => "A larger helix, or one more",
        NextStepKind::LoadTest => "Load test",
        NextStepKind::CompleteRecord => "Complete the record",
        NextStepKind::AskEngineer => "Ask the engineer of record",
    }
}

fn next(s: Subject, step: &NextStep) -> String {
    let what = step_told(step.step);
    let torque = |t| {
        format!(
            "torque {} {}",
            words::torque(t, s.system),
            words::torque_unit(s.system)
        )
    };
    let numbers: Vec<String> = [
        step.to_tip_depth
            .map(|d| format!("tip to {}", words::depth_told(d, s.system))),
        step.deeper_by
            .map(|d| format!("{} deeper", words::depth_told(d, s.system))),
        step.torque.map(torque),
        step.helix_area
            .map(|a| format!("helix area {}", words::area_told(a, s.system))),
        step.added_helix_diameter
            .map(|d| format!("one of {} more", words::size_told(d, s.system))),
    ]
    .into_iter()
    .flatten()
    .collect();
    let numbers = match numbers.is_empty() {
        true => String::new(),
        false => format!(" ({})", numbers.join(", ")),
    };
    format!("{what}{numbers}: {}", step.needs.replace('_', " "))
}

/// A definition of the torque that counts, in words.
pub fn definition(definition: EffectiveTorque) -> &'static str {
    match definition {
        EffectiveTorque::LowerOfTwoWindows => "lower of the means over max(3 ft, 3 D) and 3 D",
        EffectiveTorque::MeanOver3Diameters => "mean over 3 D",
        EffectiveTorque::MeanOver3Ft => "mean over 3 ft",
        EffectiveTorque::LastThreeReadings => "mean of the last three readings",
        EffectiveTorque::LeastInWindow => "least in the window",
        EffectiveTorque::FinalReading => "last reading",
    }
}

fn log(s: Subject) -> Vec<String> {
    let unit = words::torque_unit(s.system);
    let torque = |t| words::torque(t, s.system);
    let outcome = s.outcome();
    let mut texts = vec![match &outcome.effective {
        Some(e) => counts(s, e),
        None => "No torque counts at the end.".to_owned(),
    }];
    if let (Some(last), Some(greatest)) = (outcome.final_torque, outcome.greatest_torque) {
        texts.push(format!(
            "Last {} {unit}, greatest {}.",
            torque(last),
            torque(greatest)
        ));
    }
    if let Some(a) = &outcome.advance {
        let least = a.least_ratio_in_window;
        let least = least.map_or(String::new(), |l| {
            format!(", least in the window {}", words::trimmed(l, 3))
        });
        texts.push(format!(
            "Advance in the last turn {}, {} of the pitch{least}.",
            words::size_told(a.at_final_torque, s.system),
            words::trimmed(a.final_ratio, 3)
        ));
    }
    if let Some(again) = &s.request.retorque {
        texts.push(format!("After a wait {} {unit}.", torque(again.torque)));
    }
    texts
}

fn counts(s: Subject, e: &EffectiveTorqueOutcome) -> String {
    let torque = |t| words::torque(t, s.system);
    let band = match (e.torque_low, e.torque_high) {
        (Some(low), Some(high)) => format!(" (gauge {} to {})", torque(low), torque(high)),
        _ => String::new(),
    };
    format!(
        "Counts: {} {}{band}, {}; {} to {}, {} readings from {} to {}.",
        torque(e.torque),
        words::torque_unit(s.system),
        definition(e.definition),
        words::depth(e.window_from, s.system),
        words::depth_told(e.window_to, s.system),
        e.reading_count,
        torque(e.least),
        torque(e.greatest)
    )
}

fn capacity(s: Subject) -> Vec<String> {
    let Some(capacity) = &s.outcome().capacity else {
        return Vec::new();
    };
    let force = |f| words::force_told(f, s.system);
    let of = |c: &CapacityOfTorque| {
        let parts = [
            ("down", c.compression_ultimate, c.compression_design),
            ("up", c.tension_ultimate, c.tension_design),
        ];
        let told: Vec<String> = parts
            .into_iter()
            .filter_map(|(way, ultimate, design)| {
                let design = design.map_or(String::new(), |d| format!(", usable {}", force(d)));
                Some(format!("{way} ultimate {}{design}", force(ultimate?)))
            })
            .collect();
        told.join("; ")
    };
    let mut texts: Vec<String> = [
        ("that counts", &capacity.by_effective_torque),
        ("read last", &capacity.by_final_torque),
    ]
    .into_iter()
    .filter_map(|(which, c)| Some(format!("By the torque {which}: {}.", of(c.as_ref()?))))
    .collect();
    if capacity.indicative_only {
        texts.insert(
            0,
            "Capacity by torque is INDICATIVE ONLY and must not be used:".to_owned(),
        );
    }
    texts
}

fn ground(s: Subject) -> Option<String> {
    let ground = s.outcome().ground.as_ref()?;
    let torque = |t| words::torque(t, s.system);
    match (&ground.expected_torque, &ground.not_expected) {
        (Some(e), _) => Some(format!(
            "Ground gives {} {} ({} to {}).",
            torque(e.expected),
            words::torque_unit(s.system),
            torque(e.low),
            torque(e.high)
        )),
        (None, Some(why)) => Some(format!("No torque to expect: {why}")),
        (None, None) => None,
    }
}

fn complete(s: Subject) -> Option<String> {
    let found = s.outcome().completeness.as_ref()?;
    Some(match found.missing.len() {
        0 => format!("Record complete: {} fields.", found.required_count),
        count => {
            let names = found.missing.iter();
            let names = names.map(|m| m.member.replace('_', " "));
            format!(
                "Record: {count} of {} fields missing: {}.",
                found.required_count,
                names.collect::<Vec<_>>().join(", ")
            )
        }
    })
}
