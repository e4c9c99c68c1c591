//! What a void form passes on to beam and pile while it is crushed, and whether its crush
//! pressure goes with the concrete it carries.

use super::beam_request::FrostBeam;
use super::codes::{checks, methods, refusals, warnings};
use super::ground::Ground;
use super::request::Request;
use super::void_equations::{crush_line_load, crush_tension};
use super::void_form;
use super::void_outcome::{CrushStatement, FormCrushOutcome};
use super::void_request::{CrushPressure, FormCrush, FrostVoidForm};
use crate::contract::{Check, Issue, Work, utilisation};
use crate::quantity::{AreaLoad, Force, Length, Size};
use crate::source::DERIVED;

/// The crush pressure with its kind.
fn stated(crush: &FormCrush) -> (AreaLoad, CrushStatement) {
    match &crush.pressure {
        CrushPressure::Given(given) => (given.pressure, CrushStatement::Given),
        CrushPressure::Tested(test) => (test.pressure, CrushStatement::Tested),
        CrushPressure::Softened(left) => (left.pressure, CrushStatement::Softened),
    }
}

/// The crush pressure of the form as it is placed; `None` where only that of the softened form
/// is known.
fn as_placed(crush: &FormCrush) -> Option<AreaLoad> {
    let (pressure, kind) = stated(crush);
    (kind != CrushStatement::Softened).then_some(pressure)
}

/// Length of beam that the pile carries, as the beam says.
fn of_beam(request: &Request) -> Option<Length> {
    match &request.beam {
        Some(FrostBeam::InSoil(beam)) => Some(beam.tributary_length),
        _ => None,
    }
}

/// Every contradiction of a crush pressure with what else was sent.
pub fn faults(request: &Request, form: &FrostVoidForm) -> Vec<Issue> {
    let mut issues = Vec::new();
    let Some(crush) = &form.crush else {
        return issues;
    };
    let rated = form.wet_concrete.and_then(|c| c.rated_load);
    if let (Some(pressure), Some(rated)) = (as_placed(crush), rated)
        && !utilisation(rated.si(), pressure.si()).1
    {
        let shown = |load: AreaLoad| AreaLoad::ROLE.in_both_systems(load.si());
        issues.push(
            Issue::new(
                "/void_form/wet_concrete/rated_load",
                &refusals::RATED_LOAD_ABOVE_CRUSH,
                format!("rated for {}, crushed at {}", shown(rated), shown(pressure)),
            )
            .limit(shown(pressure)),
        );
    }
    if let (Some(sent), Some(beam)) = (crush.tributary_length, of_beam(request)) {
        let same = |a: Length, b: Length| utilisation(a.si(), b.si()).1;
        if !(same(sent, beam) && same(beam, sent)) {
            let shown = |length: Length| Length::ROLE.in_both_systems(length.si());
            issues.push(
                Issue::new(
                    "/void_form/crush/tributary_length",
                    &refusals::TRIBUTARY_LENGTHS_DIFFER,
                    format!("{} here, {} of `beam`", shown(sent), shown(beam)),
                )
                .limit(shown(beam)),
            );
        }
    }
    issues
}

/// Judges what the form passes on; `None` where no crush pressure was sent.
pub fn judge(
    request: &Request,
    form: &FrostVoidForm,
    heave: Size,
    concrete: Option<AreaLoad>,
    work: &mut Work,
) -> Option<FormCrushOutcome> {
    let Some(crush) = &form.crush else {
        let missing = if heave > Size::ZERO {
            "; send `crush` with its pressure and `beam_width`, and the tributary length"
        } else {
            ""
        };
        not_counted(
            format!(
                "a form pushes on the beam with its crush strength while it is crushed; that load on beam and piles is not counted{missing}"
            ),
            work,
        );
        return None;
    };
    work.method(&methods::VOID_FORM_CRUSH);
    if let (Some(pressure), Some(load)) = (as_placed(crush), concrete) {
        work.check(Check::at_most(
            &checks::VOID_FORM_CRUSH_STRENGTH,
            load,
            pressure,
            &DERIVED,
        ));
    }
    let found = passes_on(crush, of_beam(request), heave, work);
    let missing = match (&found.line_load, &found.pile_tension) {
        (None, _) => Some("`beam_width`"),
        (_, None) => Some("`tributary_length`"),
        _ => None,
    };
    if let Some(name) = missing.filter(|_| found.transmitted_pressure > AreaLoad::ZERO) {
        not_counted(
            format!("the crush pressure is not counted on the pile; send {name} under `crush`"),
            work,
        );
    }
    Some(found)
}

fn not_counted(detail: String, work: &mut Work) {
    work.warn(&warnings::VOID_FORM_PRESSURE_NOT_COUNTED, detail);
}

/// Pressure, load along the beam and tension on the pile; nil where nothing heaves.
fn passes_on(
    crush: &FormCrush,
    of_beam: Option<Length>,
    heave: Size,
    work: &mut Work,
) -> FormCrushOutcome {
    let (crush_pressure, stated_as) = stated(crush);
    let transmitted = if heave > Size::ZERO {
        crush_pressure
    } else {
        AreaLoad::ZERO
    };
    let trace = &mut work.trace;
    let line_load = crush
        .beam_width
        .map(|width| crush_line_load(transmitted, width, trace));
    let tributary = crush.tributary_length.or(of_beam);
    let pile_tension = line_load
        .zip(tributary)
        .map(|(load, length)| crush_tension(load, length, trace));
    FormCrushOutcome {
        crush_pressure,
        stated_as,
        transmitted_pressure: transmitted,
        line_load,
        pile_tension,
    }
}

/// Tension that the void form of a request puts on the pile in service, unfactored; nil where
/// there is none or it is not known, of which the answer warns. The request has no faults.
pub fn tension_on_pile(request: &Request, ground: &Ground) -> Force {
    let silent = &mut Work::default();
    let form = request.void_form.as_ref();
    form.and_then(|form| void_form::judge(request, form, ground, silent))
        .and_then(|found| found.crush?.pile_tension)
        .unwrap_or(Force::ZERO)
}
