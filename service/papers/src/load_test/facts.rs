//! The answer of a load test in sentences: what was tested, the failure load, what it gives,
//! the torque factors, what was noted of the run.

use bearwell_engine::contract::{CheckStatus, Subject as About};
use bearwell_engine::load_test::{
    FailureLoadKind, LoadTestBasisOutcome, LoadTestDirection, LoadTestProcedure, SiteTorqueFactor,
    SiteTorqueFactors,
};
use bearwell_engine::shaft::Shaft;

use super::reading::{Subject, name};
use crate::panel;
use crate::words;

/// All of it in lines of the given width.
pub fn lines(s: Subject, unlabelled: &[char], room: f64) -> Vec<String> {
    let outcome = s.outcome();
    let mut texts = vec![pile(s)];
    texts.extend(panel::reasons(&s.answer.verdict_reasons));
    texts.push(failure(s));
    texts.extend(design(s));
    texts.extend(outcome.torque_factor.as_ref().map(|f| factor(s, f)));
    texts.extend(outcome.site_factors.as_ref().map(|f| site(s, f)));
    texts.extend(run(s));
    if !unlabelled.is_empty() {
        let letters: Vec<String> = unlabelled.iter().map(char::to_string).collect();
        texts.push(format!(
            "On the chart without a label, for want of room: {}.",
            letters.join(", ")
        ));
    }
    texts.extend(panel::warned(&s.answer.warnings));
    texts.push(panel::provenance(&s.answer.provenance));
    texts
        .iter()
        .flat_map(|text| panel::short(text, room))
        .collect()
}

fn pile(s: Subject) -> String {
    let (form, size) = match &s.request.shaft {
        Shaft::Round(r) => ("round", r.outside_diameter),
        Shaft::Square(q) => ("square", q.side),
    };
    let direction = match s.request.direction {
        LoadTestDirection::Compression => "compression",
        LoadTestDirection::Tension => "tension",
    };
    let procedure = match s.request.procedure {
        LoadTestProcedure::Quick => "quick",
        LoadTestProcedure::Maintained => "maintained",
    };
    let label = s.request.label.as_ref().map_or("", |l| l.as_str());
    let gap = if label.is_empty() { "" } else { " " };
    format!(
        "Pile{gap}{label}: {form} shaft {}; {procedure} test in {direction}, {} points.",
        words::size_told(size, s.system),
        s.outcome().curve.point_count
    )
}

fn failure(s: Subject) -> String {
    let failure = &s.outcome().failure;
    let load = words::force_told(failure.load, s.system);
    let at = words::size_told(failure.displacement, s.system);
    match (failure.kind, failure.criterion) {
        (FailureLoadKind::Criterion, Some(criterion)) => {
            format!("Failure load {load} at {at}, by {}.", name(criterion))
        }
        (FailureLoadKind::LowerBound, _) => {
            format!("Largest load {load} at {at}: a lower bound of the failure load.")
        }
        (FailureLoadKind::NotDetermined, _) => {
            format!("Largest load {load} at {at}; the failure load is not determined.")
        }
        _ => format!("Failure load {load} at {at}, the peak of the curve."),
    }
}

fn design(s: Subject) -> Option<String> {
    let outcome = s.outcome();
    let design = words::force_told(outcome.failure.design?, s.system);
    let LoadTestBasisOutcome {
        safety_factor,
        resistance_factor,
        ..
    } = outcome.design_basis.as_ref()?;
    let factor = match (safety_factor, resistance_factor) {
        (Some(f), _) => format!("allowable, safety factor {}", words::trimmed(*f, 3)),
        (_, Some(f)) => format!("factored, resistance factor {}", words::trimmed(*f, 3)),
        _ => return None,
    };
    let asked = s.request.demand.and_then(|d| match s.request.direction {
        LoadTestDirection::Compression => d.compression,
        LoadTestDirection::Tension => d.tension,
    });
    let asked = asked.map_or(String::new(), |load| {
        format!("; {} to carry", words::force_told(load, s.system))
    });
    Some(format!("Capacity {design} ({factor}){asked}."))
}

fn factor(s: Subject, f: &SiteTorqueFactor) -> String {
    let of = |k| words::torque_factor(k, s.system);
    let band = f.factor_low.zip(f.factor_high);
    let band = band.map_or(String::new(), |(low, high)| {
        format!(" ({} to {})", of(low), of(high))
    });
    let least = if f.lower_bound { "at least " } else { "" };
    format!(
        "Torque factor {least}{}{band} {}, of {} {}.",
        of(f.factor),
        words::torque_factor_unit(s.system),
        words::torque(f.final_torque, s.system),
        words::torque_unit(s.system)
    )
}

fn site(s: Subject, f: &SiteTorqueFactors) -> String {
    let of = |k| words::torque_factor(k, s.system);
    let plural = if f.test_count == 1 { "" } else { "s" };
    let mut text = format!(
        "Site, {} test{plural}: mean {}, {} to {}",
        f.test_count,
        of(f.mean),
        of(f.least),
        of(f.greatest)
    );
    if let Some(ratio) = f.variation_ratio {
        text += &format!(", variation {} %", words::trimmed(100.0 * ratio, 1));
    }
    if let Some(lower) = &f.lower {
        text += &format!(", lower mean {}", of(lower.factor));
    }
    text + "."
}

/// Checks of the run that do not pass.
fn run(s: Subject) -> Vec<String> {
    let noted = s.answer.checks.iter();
    let noted = noted.filter(|c| matches!(c.status, CheckStatus::Warn));
    noted
        .map(|c| {
            let about = c.subject.as_ref().map_or("", |a: &About| a.label.as_str());
            let gap = if about.is_empty() { "" } else { " " };
            let id = c.id.strip_prefix("load_test_").unwrap_or(&c.id);
            let why = c.reason.as_deref().unwrap_or("beyond its limit");
            format!("Noted{gap}{about}, {}: {why}.", id.replace('_', " "))
        })
        .collect()
}
