//! The void form under a beam: free thickness against heave, and the wet concrete on it.
//! What it passes on while it is crushed is in `void_crush`.

use super::codes::{checks, methods, refusals, warnings};
use super::constants::{CONCRETE_UNIT_WEIGHT, VOID_RESIDUAL};
use super::equations::{concrete_load, required_void, usable_void};
use super::ground::Ground;
use super::request::Request;
use super::void_outcome::VoidFormOutcome;
use super::void_request::{FrostVoidForm, VoidResidual, WetConcrete};
use super::{void_crush, void_heave};
use crate::contract::{Check, Issue, Work, utilisation};
use crate::ground_heave::codes::warnings as heave_warnings;
use crate::quantity::{AreaLoad, Length, Size, in_both_systems};
use crate::source::{CALLER, DERIVED, SourceNote, VOID_FORM_RESIDUAL_PRACTICE};

/// Crushed over nominal thickness is at most this, so that some of the form is free.
const RESIDUAL_MAX: f64 = 0.95;

/// Depth of ground that freezes under the surface exposed to the cold.
pub fn frost_depth(ground: &Ground) -> Length {
    ground.base - ground.cold_surface
}

/// Faults in the lengths of lists.
pub fn lengths(form: &FrostVoidForm, issues: &mut Vec<Issue>) {
    if let Some(heave) = &form.heave {
        void_heave::lengths("/void_form/heave", heave, issues);
    }
}

/// Every fault of a void form.
pub fn faults(request: &Request, form: &FrostVoidForm, ground: &Ground) -> Vec<Issue> {
    let mut issues = Vec::new();
    let sent = form.heave.as_ref();
    match sent.filter(|h| h.frost.is_some() || h.swell.is_some()) {
        Some(heave) => issues.extend(void_heave::faults(
            "/void_form/heave",
            heave,
            frost_depth(ground),
        )),
        None => issues.push(
            Issue::new(
                if sent.is_some() {
                    "/void_form/heave"
                } else {
                    "/void_form"
                },
                &refusals::VOID_FORM_WITHOUT_HEAVE,
                "send the predicted heave under `heave`, as `frost` or `swell`; 0 is accepted as a statement of yours",
            )
            .source(&CALLER),
        ),
    }
    issues.extend(void_crush::faults(request, form));
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
pub fn judge(
    request: &Request,
    form: &FrostVoidForm,
    ground: &Ground,
    work: &mut Work,
) -> Option<VoidFormOutcome> {
    let predicted = void_heave::predict(form.heave.as_ref()?, frost_depth(ground), work)?;
    let heave = predicted.design.movement;
    work.method(&methods::VOID_FORM_RESIDUAL_THICKNESS);
    if predicted.swell.as_ref().is_some_and(|s| s.range.is_some()) {
        work.hold_back(
            &heave_warnings::SWELL_BY_INDEX_ONLY,
            "the void form was judged by the upper end of a screening; a swell test or a prediction of your own decides",
        );
    }
    let (residual_ratio, residual_source) = residual(form, work);
    let margin = form.margin.unwrap_or(Size::ZERO);
    work.trace.about(|| "void form".to_owned());
    let usable = usable_void(form.nominal_thickness, residual_ratio, &mut work.trace);
    let required = required_void(heave, margin, residual_ratio, &mut work.trace);
    let needed = heave + margin;
    let check = Check::at_most(&checks::VOID_FORM_CLEARANCE, needed, usable, &DERIVED);
    let shortfall = if check.passed() {
        Size::ZERO
    } else {
        needed - usable
    };
    work.check(check);
    let concrete = form.wet_concrete.as_ref().map(|c| carries(c, work));
    let crush = void_crush::judge(request, form, heave, concrete, work);
    if !utilisation(heave.si(), usable.si()).1 {
        work.warn(
            &warnings::VOID_FORM_CLOSES,
            "once the form is closed the beam takes what the ground can give, and no limit of that is known here",
        );
    }
    work.trace.about(String::new);
    Some(VoidFormOutcome {
        nominal_thickness: form.nominal_thickness,
        residual_ratio,
        residual_source,
        usable_thickness: usable,
        design_heave: heave,
        heave_governed_by: predicted.design.governed_by,
        heave_is_upper_end: predicted.design.is_upper_end.then_some(true),
        frost_heave: predicted.freezing,
        swell: predicted.swell,
        margin,
        shortfall,
        required_nominal_thickness: required,
        unbraced_length: form.nominal_thickness,
        concrete_load: concrete,
        rated_load: form.wet_concrete.and_then(|c| c.rated_load),
        crush,
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
