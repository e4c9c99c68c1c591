//! Beams against their strength, the detailing of their sections, and deflections against their
//! limits. The numbers come from the outcome.

use super::section_of;
use crate::catalogue::CheckDef;
use crate::concrete;
use crate::contract::{Check, SubjectKind, Work};
use crate::layout::codes::{checks, methods};
use crate::layout::judge::{on, worst_on};
use crate::layout::outcome::{Outcome, SupportModel};
use crate::layout::report::Analysis;
use crate::quantity::{Moment, Shown, Size};
use crate::source::{BEARWELL_CHOICE, CALLER, CURVATURE_INTEGRAL, Reference};

/// Why the strength of a section stays unjudged with service loads.
const OPEN: &str = "basis: the strength of the section is at the level of factored loads, the combinations are of service loads; send `strength_check`";

/// Checks moments and shears.
pub(in crate::layout) fn strengths(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    let both = analysis.solved.len() > 1;
    for (own, row) in analysis.frame.strength.iter().zip(&outcome.beams) {
        let mut judge = |def: &'static CheckDef,
                         (demand, capacity): (Shown, Shown),
                         combination: &str,
                         (supports, pattern): (SupportModel, Option<bool>),
                         source: &'static Reference| {
            let check = if own.factor.is_some() {
                Check::at_most(def, demand, capacity, source).combination(combination)
            } else {
                Check::not_evaluated(def, OPEN, source)
            };
            let check = check.subject(SubjectKind::Beam, row.label.as_str());
            let check = match own.factor {
                Some(_) => worst_on(check, both, supports, pattern),
                None => check,
            };
            work.check(match own.factor {
                Some(factor) if own.section.is_some() && factor != 1.0 => {
                    let times = format!("service loads times {factor}");
                    let reason = match &check.reason {
                        Some(more) => format!("{times}; {more}"),
                        None => times,
                    };
                    check.reason(reason)
                }
                _ => check,
            });
        };
        let factor = own.factor.unwrap_or(1.0);
        if let Some(c) = &own.moment {
            for (def, extreme, capacity) in [
                (&checks::BEAM_MOMENT_SAGGING, &row.sagging, c.sagging),
                (&checks::BEAM_MOMENT_HOGGING, &row.hogging, c.hogging),
            ] {
                judge(
                    def,
                    ((factor * extreme.moment).into(), capacity.into()),
                    &extreme.combination,
                    (extreme.supports, extreme.pattern_governs),
                    own.source.0,
                );
            }
        }
        if let Some(c) = own.shear {
            judge(
                &checks::BEAM_SHEAR,
                ((factor * row.shear.shear).into(), c.into()),
                &row.shear.combination,
                (row.shear.supports, row.shear.pattern_governs),
                own.source.1,
            );
        }
    }
}

/// Checks least steel, cover and stirrups of sections.
pub(in crate::layout) fn detailing(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    let beams = analysis.request.beams.iter().zip(&analysis.frame.strength);
    for ((beam, own), row) in beams.zip(&outcome.beams) {
        let (Some(section), Some(strength)) = (section_of(beam), &own.section) else {
            continue;
        };
        work.trace
            .about(|| format!("section of beam {}", row.label));
        let factored = own
            .factor
            .map(|f| -> (Moment, Moment) { (f * row.sagging.moment, f * row.hogging.moment) });
        concrete::judge(section, strength, factored, &row.label, work);
    }
    work.trace.about(String::new);
}

/// Checks deflections.
pub(in crate::layout) fn deflections(analysis: &Analysis<'_>, outcome: &Outcome, work: &mut Work) {
    let both = analysis.solved.len() > 1;
    for (beam, row) in analysis.request.beams.iter().zip(&outcome.beams) {
        if beam.deflection_limit.is_none() {
            continue;
        }
        work.method(&methods::DEFLECTION_BY_CURVATURE);
        let check = match &row.deflection {
            Some(d) => {
                let size = Size::from_si(d.deflection.si().abs());
                let check = Check::at_most(&checks::BEAM_DEFLECTION, size, d.limit, &CALLER);
                on(check.combination(d.combination.as_str()), both, d.supports)
            }
            None => {
                let why = if analysis.loading.service.is_none() {
                    "no_service_combinations: deflections are judged under service loads; send `service_combinations`"
                } else {
                    "no_chord: its straight run has fewer than two piles"
                };
                let source = if analysis.loading.service.is_none() {
                    &BEARWELL_CHOICE
                } else {
                    &CURVATURE_INTEGRAL
                };
                Check::not_evaluated(&checks::BEAM_DEFLECTION, why, source)
            }
        };
        work.check(check.subject(SubjectKind::Beam, row.label.as_str()));
    }
}
