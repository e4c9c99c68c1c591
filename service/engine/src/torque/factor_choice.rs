//! Which torque factor is used: the choice of the request against the shafts each
//! published factor holds for. The values stand in `factor.rs`.

use super::codes::{methods, refusals, warnings};
use super::factor::*;
use super::options::{TensionFactor, TorqueFactorChoice};
use super::outcome::{TorqueFactorOutcome, TorqueFactorUsed};
use super::site_factor;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Work};
use crate::quantity::{LengthUnit, TorqueFactor, round9};
use crate::shaft::Shaft;
use crate::source::{
    AC358_KT_DIAMETER, AC358_KT_LISTED, BEARWELL_CHOICE, CALLER, HOYT_CLEMENCE_1989,
    LIVNEH_EL_NAGGAR_2008, PERKO_2009, Reference, SourceNote,
};

/// The factors of a choice, or why there are none.
pub(super) fn choose(
    choice: &TorqueFactorChoice,
    tension: Option<TensionFactor>,
    shaft: Option<&Shaft>,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Option<TorqueFactorOutcome> {
    let mut out = match (choice, shaft) {
        (TorqueFactorChoice::Own(own), _) => {
            work.method(&methods::FACTOR_OWN);
            let mut used = |factor| {
                let factor = work.trace.step("K_t", "as sent", factor, [], &CALLER);
                used(factor, "as sent", &CALLER)
            };
            TorqueFactorOutcome {
                compression: own.compression.map(&mut used),
                tension: own.tension.map(&mut used),
                own_reference: Some(own.reference.clone()),
                ..blank()
            }
        }
        (TorqueFactorChoice::SiteTests(tests), _) => site_factor::of(tests, work, issues),
        (_, None) => {
            issues.push(Issue::new(
                "",
                &MISSING_MEMBER,
                "`shaft` is needed: this torque factor depends on it",
            ));
            return None;
        }
        (TorqueFactorChoice::ListedShaft(_), Some(shaft)) => by_list(shaft, work, issues)?,
        (TorqueFactorChoice::EffectiveDiameter(_), Some(shaft)) => by_formula(shaft, work, issues)?,
        (TorqueFactorChoice::Livneh2008(_), Some(shaft)) => livneh(shaft, work, issues)?,
        (TorqueFactorChoice::HoytClemence1989(_), Some(shaft)) => hoyt(shaft, work, issues)?,
        (TorqueFactorChoice::Perko2009(_), Some(shaft)) => perko(shaft, work, issues)?,
    };
    if tension == Some(TensionFactor::Reduced) {
        // where there is none it was refused
        if let Some(reduced) = out.tension_reduced.take() {
            out.tension = Some(reduced);
        }
    }
    if let Some(shaft) = shaft {
        out.effective_diameter = Some(shaft.effective_diameter());
        compare_with_criteria(&mut out, shaft, work);
    }
    Some(out)
}

/// The factor of a shaft in one direction with its source, for other calculations; faults
/// are added at `/shaft` and below, or without a pointer.
pub(crate) fn factor_of_shaft(
    choice: &TorqueFactorChoice,
    shaft: &Shaft,
    tension: bool,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Option<(TorqueFactor, SourceNote)> {
    let all = choose(choice, None, Some(shaft), work, issues)?;
    let found = if tension {
        all.tension
    } else {
        all.compression
    };
    if found.is_none() {
        let direction = if tension { "tension" } else { "compression" };
        issues.push(Issue::new(
            "",
            &MISSING_MEMBER,
            format!("the torque factor has no value in {direction}"),
        ));
    }
    found.map(|used| (used.factor, used.source))
}

pub(super) fn blank() -> TorqueFactorOutcome {
    TorqueFactorOutcome {
        effective_diameter: None,
        compression: None,
        tension: None,
        tension_reduced: None,
        acceptance_criteria: None,
        own_reference: None,
        test_count: None,
    }
}

pub(super) fn used(
    factor: TorqueFactor,
    range: &'static str,
    source: &'static Reference,
) -> TorqueFactorUsed {
    TorqueFactorUsed {
        factor,
        factor_low: None,
        factor_high: None,
        range: range.into(),
        source: source.into(),
    }
}

/// The same factor both ways, with the reduced one for tension beside it.
fn both_ways(
    factor: TorqueFactor,
    range: &'static str,
    source: &'static Reference,
    work: &mut Work,
) -> TorqueFactorOutcome {
    work.method(&methods::TENSION_REDUCED);
    let reduced = reduced_in_tension(factor, &mut work.trace);
    TorqueFactorOutcome {
        compression: Some(used(factor, range, source)),
        tension: Some(used(factor, range, source)),
        tension_reduced: Some(used(reduced, range, &LIVNEH_EL_NAGGAR_2008)),
        ..blank()
    }
}

fn by_list(shaft: &Shaft, work: &mut Work, issues: &mut Vec<Issue>) -> Option<TorqueFactorOutcome> {
    let text = "square 1.5 and 1.75 in, round 2.875, 3.0 and 3.5 in, each within 0.5 mm";
    let Some(row) = find_listed(shaft) else {
        if within(&DIAMETER_WIDTHS.value, shaft) {
            issues.push(
                Issue::new(
                    pointer(shaft),
                    &refusals::SHAFT_NOT_LISTED,
                    "no listed shaft has this width; use `effective_diameter` or `own`",
                )
                .limit(text)
                .source(&AC358_KT_LISTED),
            );
        } else {
            issues.push(outside(
                shaft,
                DIAMETER_WIDTHS.value.text,
                &AC358_KT_DIAMETER,
            ));
        }
        return None;
    };
    work.method(&methods::FACTOR_LISTED);
    let factor = work.trace.step(
        "K_t",
        "listed for this shaft",
        row.factor,
        [("width", row.width.into())],
        &AC358_KT_LISTED,
    );
    Some(both_ways(factor, text, &AC358_KT_LISTED, work))
}

fn by_formula(
    shaft: &Shaft,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Option<TorqueFactorOutcome> {
    let widths = work.take_table(&DIAMETER_WIDTHS);
    if !within(&widths, shaft) {
        issues.push(outside(shaft, widths.text, &AC358_KT_DIAMETER));
        return None;
    }
    work.method(&methods::FACTOR_DIAMETER);
    let formula = factor_by_diameter(shaft.effective_diameter(), &mut work.trace);
    let Some(row) = find_listed(shaft) else {
        return Some(both_ways(formula, widths.text, &AC358_KT_DIAMETER, work));
    };
    work.warn(
        &warnings::LISTED_SHAFT_BY_FORMULA,
        format!(
            "formula {} per m, listed {} per m",
            round9(formula.si()),
            round9(row.factor.si())
        ),
    );
    let factor = work.trace.step(
        "K_t",
        "min(formula, listed)",
        formula.min(row.factor),
        [("formula", formula.into()), ("listed", row.factor.into())],
        &BEARWELL_CHOICE,
    );
    let source = if formula <= row.factor {
        &AC358_KT_DIAMETER
    } else {
        &AC358_KT_LISTED
    };
    Some(both_ways(factor, widths.text, source, work))
}

fn livneh(shaft: &Shaft, work: &mut Work, issues: &mut Vec<Issue>) -> Option<TorqueFactorOutcome> {
    let widths = work.take_table(&LIVNEH_WIDTHS);
    if !within(&widths, shaft) {
        issues.push(outside(shaft, widths.text, &LIVNEH_EL_NAGGAR_2008));
        return None;
    }
    work.method(&methods::FACTOR_LIVNEH);
    let (down, up) = (work.take(&LIVNEH_COMPRESSION), work.take(&LIVNEH_TENSION));
    let source = &LIVNEH_EL_NAGGAR_2008;
    let trace = &mut work.trace;
    trace.step("K_t", "published, compression", down, [], source);
    trace.step("K_t", "published, tension", up, [], source);
    Some(TorqueFactorOutcome {
        compression: Some(used(down, widths.text, &LIVNEH_EL_NAGGAR_2008)),
        tension: Some(used(up, widths.text, &LIVNEH_EL_NAGGAR_2008)),
        ..blank()
    })
}

/// The values came from tension tests, so they are not reduced for tension.
fn hoyt(shaft: &Shaft, work: &mut Work, issues: &mut Vec<Issue>) -> Option<TorqueFactorOutcome> {
    let (nominal_89, nominal_219) = HOYT_ROUND.value;
    let width = shaft.width();
    let small = HOYT_SMALL_WIDTHS.value;
    let row = match shaft {
        Shaft::Round(_) if same_width(width, nominal_89) => &HOYT_89,
        Shaft::Round(_) if same_width(width, nominal_219) => &HOYT_219,
        _ if within(&small, shaft) => &HOYT_SMALL,
        _ => {
            issues.push(outside(shaft, small.text, &HOYT_CLEMENCE_1989));
            return None;
        }
    };
    work.method(&methods::FACTOR_HOYT);
    let factor = work.take(row);
    work.trace.step(
        "K_t",
        "published for this shaft",
        factor,
        [("width", width.into())],
        &HOYT_CLEMENCE_1989,
    );
    Some(TorqueFactorOutcome {
        compression: Some(used(factor, small.text, &HOYT_CLEMENCE_1989)),
        tension: Some(used(factor, small.text, &HOYT_CLEMENCE_1989)),
        ..blank()
    })
}

fn perko(shaft: &Shaft, work: &mut Work, issues: &mut Vec<Issue>) -> Option<TorqueFactorOutcome> {
    let widths = work.take_table(&DIAMETER_WIDTHS);
    if !within(&widths, shaft) {
        issues.push(outside(shaft, widths.text, &AC358_KT_DIAMETER));
        return None;
    }
    work.method(&methods::FACTOR_PERKO);
    work.take(&PERKO_COEFFICIENT);
    work.take(&PERKO_EXPONENT);
    let factor = factor_by_regression(shaft.effective_diameter(), &mut work.trace);
    Some(both_ways(factor, widths.text, &PERKO_2009, work))
}

fn compare_with_criteria(out: &mut TorqueFactorOutcome, shaft: &Shaft, work: &mut Work) {
    let Some(criteria) = by_criteria(shaft) else {
        return;
    };
    out.acceptance_criteria = Some(criteria);
    let highest = [&out.compression, &out.tension]
        .into_iter()
        .flatten()
        .map(|u| u.factor)
        .fold(TorqueFactor::ZERO, TorqueFactor::max);
    if round9(highest / criteria) > 1.0 {
        work.warn(
            &warnings::FACTOR_ABOVE_CRITERIA,
            format!(
                "{} per m used, {} per m by the criteria",
                round9(highest.si()),
                round9(criteria.si())
            ),
        );
    }
}

fn pointer(shaft: &Shaft) -> &'static str {
    match shaft {
        Shaft::Round(_) => "/shaft/round/outside_diameter",
        Shaft::Square(_) => "/shaft/square/side",
    }
}

fn outside(shaft: &Shaft, limit: &'static str, source: &'static Reference) -> Issue {
    let shape = match shaft {
        Shaft::Round(_) => "round",
        Shaft::Square(_) => "square",
    };
    Issue::new(
        pointer(shaft),
        &refusals::SHAFT_OUTSIDE_RANGE,
        format!(
            "{shape} shaft of {} mm ({} in) is outside the range; send `own` with its reference",
            round9(shaft.width().get(LengthUnit::Mm)),
            round9(shaft.width().get(LengthUnit::In))
        ),
    )
    .limit(limit)
    .source(source)
}
