//! What the underside of a beam in soil rests on: a void form, or the ground, which must not
//! heave against it. The void form itself is judged in `void_form`.

use super::beam_request::{BeamInSoil, FrostBeam};
use super::codes::{checks, methods, refusals, warnings};
use super::ground::{Ground, reaches};
use super::outcome::{BeamSupport, BeamUnderside};
use super::request::Request;
use super::swell_equations::underside_swell;
use super::{void_form, void_heave};
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Check, Issue, SubjectKind, Work, utilisation};
use crate::ground_heave::HeaveCause;
use crate::quantity::{Force, Length, Size};
use crate::source::DOMASCHUK_1982;

/// Pointer of the predicted heave.
const HEAVE: &str = "/beam/in_soil/predicted_heave";

fn in_soil(request: &Request) -> Option<&BeamInSoil> {
    match &request.beam {
        Some(FrostBeam::InSoil(beam)) => Some(beam),
        _ => None,
    }
}

/// Faults in the lengths of lists.
pub fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(heave) = in_soil(request).and_then(|beam| beam.predicted_heave.as_ref()) {
        void_heave::lengths(HEAVE, heave, issues);
    }
}

/// A heave must name its cause, and stands either here or at the void form.
pub fn faults(request: &Request, ground: &Ground) -> Vec<Issue> {
    let mut issues = widths(request);
    let Some(heave) = in_soil(request).and_then(|beam| beam.predicted_heave.as_ref()) else {
        return issues;
    };
    if heave.frost.is_none() && heave.swell.is_none() {
        issues.push(Issue::new(
            HEAVE,
            &MISSING_MEMBER,
            "send the predicted heave as `frost` or `swell`; 0 is accepted as a statement of yours",
        ));
    }
    if request.void_form.is_some() {
        issues.push(Issue::new(
            HEAVE,
            &refusals::HEAVE_STATED_TWICE,
            "a void form was sent: its heave stands in `void_form`",
        ));
    }
    issues.extend(void_heave::faults(
        HEAVE,
        heave,
        void_form::frost_depth(ground),
    ));
    issues
}

/// One beam has one width.
fn widths(request: &Request) -> Vec<Issue> {
    let form = request.void_form.as_ref().and_then(|f| f.crush.as_ref());
    let widths = in_soil(request)
        .and_then(|beam| beam.width)
        .zip(form.and_then(|crush| crush.beam_width));
    let Some((beam, form)) = widths else {
        return Vec::new();
    };
    let same = |a: Length, b: Length| utilisation(a.si(), b.si()).1;
    if same(beam, form) && same(form, beam) {
        return Vec::new();
    }
    let shown = |length: Length| Length::ROLE.in_both_systems(length.si());
    let detail = format!("{} here, {} of `beam`", shown(form), shown(beam));
    let at = "/void_form/crush/beam_width";
    vec![Issue::new(at, &refusals::BEAM_WIDTHS_DIFFER, detail).limit(shown(beam))]
}

/// Judges the underside of a beam in soil; `None` where there is no such beam.
pub fn judge(request: &Request, ground: &Ground, work: &mut Work) -> Option<BeamUnderside> {
    let beam = in_soil(request)?;
    if request.void_form.is_some() {
        return Some(BeamUnderside {
            rests_on: BeamSupport::VoidForm,
            predicted_heave: None,
            heave_governed_by: None,
            swell_force: None,
        });
    }
    let mut underside = BeamUnderside {
        rests_on: BeamSupport::Ground,
        predicted_heave: None,
        heave_governed_by: None,
        swell_force: None,
    };
    let Some(sent) = &beam.predicted_heave else {
        let moving = ground
            .base
            .max(request.active_depth.unwrap_or(Length::ZERO));
        if !reaches(moving, beam.underside_depth) {
            work.hold_back(
                &warnings::BEAM_UNDERSIDE_NOT_STATED,
                "the beam stands in ground that freezes or swells and neither a void form nor `predicted_heave` was sent: heave under it is not judged",
            );
        }
        return Some(underside);
    };
    let predicted = void_heave::predict(sent, void_form::frost_depth(ground), work)?;
    let (heave, cause) = (predicted.design.movement, predicted.design.governed_by);
    work.method(&methods::BEAM_UNDERSIDE_CONTACT);
    underside.predicted_heave = Some(heave);
    underside.heave_governed_by = Some(cause);
    if heave > Size::ZERO && cause == HeaveCause::Swell {
        underside.swell_force = swell_force(request, beam, work);
    }
    let mut check = Check::at_most(
        &checks::BEAM_UNDERSIDE_FREE,
        heave,
        Size::ZERO,
        &DOMASCHUK_1982,
    )
    .subject(SubjectKind::Beam, request.pile.name());
    if !check.passed() {
        check = check.reason(match cause {
            HeaveCause::Frost => "the beam lies on ground that heaves by frost; 1,900 to 2,500 kPa were measured under a plate without a limit being reached (Domaschuk 1982), so no force is given: put a void form under it",
            HeaveCause::Swell => "the beam lies on ground that swells against it up to its swell pressure: put a void form under it",
        });
    }
    work.check(check);
    Some(underside)
}

/// Swell pressure on the underside, where pressure and width are known.
fn swell_force(request: &Request, beam: &BeamInSoil, work: &mut Work) -> Option<Force> {
    let adhesion = request.swelling.as_ref()?.adhesion.as_ref()?;
    let (pressure, width) = (adhesion.swell_pressure()?, beam.width?);
    work.trace.about(|| "beam underside".to_owned());
    let force = underside_swell(pressure, width, beam.tributary_length, &mut work.trace);
    work.trace.about(String::new);
    Some(force)
}
