//! The void form under a beam: free thickness against heave, and the wet concrete on it.

use super::codes::{checks, methods, refusals, warnings};
use super::constants::{CONCRETE_UNIT_WEIGHT, VOID_RESIDUAL};
use super::equations::{concrete_load, required_void, usable_void};
use super::outcome::{HeaveCause, VoidFormOutcome};
use super::void_request::{FrostVoidForm, HeaveSource, VoidResidual, WetConcrete};
use crate::contract::{Check, Issue, Work, utilisation};
use crate::quantity::{AreaLoad, Size, in_both_systems};
use crate::source::{CALLER, DERIVED, SourceNote, VOID_FORM_RESIDUAL_PRACTICE};

/// Crushed over nominal thickness is at most this, so that some of the form is free.
const RESIDUAL_MAX: f64 = 0.95;

/// The heave that counts, the larger of the causes sent; the first of equals.
fn heave(form: &FrostVoidForm) -> Option<(Size, HeaveCause)> {
    let sent = form.heave.as_ref()?;
    let movement =
        |source: &Option<HeaveSource>| source.as_ref().map(|HeaveSource::Given(g)| g.movement);
    match (movement(&sent.frost), movement(&sent.swell)) {
        (Some(frost), Some(swell)) if swell > frost => Some((swell, HeaveCause::Swell)),
        (Some(frost), _) => Some((frost, HeaveCause::Frost)),
        (None, Some(swell)) => Some((swell, HeaveCause::Swell)),
        (None, None) => None,
    }
}

/// Every fault of a void form.
pub fn faults(form: &FrostVoidForm) -> Vec<Issue> {
    let mut issues = Vec::new();
    if heave(form).is_none() {
        let pointer = if form.heave.is_some() {
            "/void_form/heave"
        } else {
            "/void_form"
        };
        issues.push(
            Issue::new(
                pointer,
                &refusals::VOID_FORM_WITHOUT_HEAVE,
                "send the predicted heave under `heave`, as `frost` or `swell`; 0 is accepted as a statement of yours",
            )
            .source(&CALLER),
        );
    }
    if let Some(VoidResidual::Tested(test)) = &form.residual {
        let most = form.nominal_thickness * RESIDUAL_MAX;
        if !utilisation(test.crushed_thickness.si(), most.si()).1 {
            issues.push(
                Issue::new(
                    "/void_form/residual/tested/crushed_thickness",
                    &refusals::CRUSHED_NOT_BELOW_NOMINAL,
                    format!(
                        "{} crushed of {} nominal; at most 0.95 of it",
                        in_both_systems(test.crushed_thickness.si(), "m"),
                        in_both_systems(form.nominal_thickness.si(), "m")
                    ),
                )
                .limit(in_both_systems(most.si(), "m")),
            );
        }
    }
    issues
}

/// Crushed over nominal thickness, with where it comes from.
fn residual(form: &FrostVoidForm, work: &mut Work) -> (f64, SourceNote) {
    match &form.residual {
        Some(VoidResidual::Share(share)) => (share.residual_ratio, (&CALLER).into()),
        Some(VoidResidual::Tested(test)) => (
            test.crushed_thickness / form.nominal_thickness,
            (&CALLER).into(),
        ),
        None => {
            work.warn(
                &warnings::VOID_FORM_RESIDUAL_UNTESTED,
                "0.40 of the thickness is taken to remain once crushed, a rule of thumb; send the tested crushed thickness",
            );
            (
                work.take(&VOID_RESIDUAL),
                (&VOID_FORM_RESIDUAL_PRACTICE).into(),
            )
        }
    }
}

/// Judges a void form that has no faults; `None` where no heave was sent.
pub fn judge(form: &FrostVoidForm, work: &mut Work) -> Option<VoidFormOutcome> {
    let (design_heave, heave_governed_by) = heave(form)?;
    work.method(&methods::VOID_FORM_RESIDUAL_THICKNESS);
    let (residual_ratio, residual_source) = residual(form, work);
    work.warn(
        &warnings::VOID_FORM_PRESSURE_NOT_COUNTED,
        "a form pushes on the beam with its crush strength while it is crushed; that load on beam and piles is not counted",
    );
    let margin = form.margin.unwrap_or(Size::ZERO);
    work.trace.about(|| "void form".to_owned());
    let usable = usable_void(form.nominal_thickness, residual_ratio, &mut work.trace);
    let required = required_void(design_heave, margin, residual_ratio, &mut work.trace);
    let needed = design_heave + margin;
    let check = Check::at_most(&checks::VOID_FORM_CLEARANCE, needed, usable, &DERIVED);
    let shortfall = if check.passed() {
        Size::ZERO
    } else {
        needed - usable
    };
    work.check(check);
    let concrete = form.wet_concrete.as_ref().map(|c| carries(c, work));
    work.trace.about(String::new);
    Some(VoidFormOutcome {
        nominal_thickness: form.nominal_thickness,
        residual_ratio,
        residual_source,
        usable_thickness: usable,
        design_heave,
        heave_governed_by,
        margin,
        shortfall,
        required_nominal_thickness: required,
        unbraced_length: form.nominal_thickness,
        concrete_load: concrete,
        rated_load: form.wet_concrete.and_then(|c| c.rated_load),
    })
}

/// Weight of the wet concrete against the form's rated load.
fn carries(concrete: &WetConcrete, work: &mut Work) -> AreaLoad {
    let unit_weight = concrete
        .unit_weight
        .unwrap_or_else(|| work.take(&CONCRETE_UNIT_WEIGHT));
    let load = concrete_load(unit_weight, concrete.depth, &mut work.trace);
    work.check(match concrete.rated_load {
        Some(rated) => Check::at_most(&checks::VOID_FORM_CONCRETE_LOAD, load, rated, &DERIVED),
        None => Check::not_evaluated(&checks::VOID_FORM_CONCRETE_LOAD, "no_rated_load", &DERIVED),
    });
    load
}
