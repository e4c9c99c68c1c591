//! What is left of a section: loss on its faces, area, strength.

use super::coating::{OnSteel, coating_of};
use super::codes::{checks, warnings};
use super::equations::{
    factored_strength, flat_area, nominal_strength, round_area, share_of_face, thickness_left,
    tube_area,
};
use super::method;
use super::outcome::CorrodedOutcome;
use super::request::{CorrosionMethod, LossCounts, Request};
use super::section_request::{CorrodedForm, CorrodedSection};
use crate::contract::{Check, SubjectKind, Work};
use crate::quantity::{Coat, Size, SteelArea, in_both_systems};
use crate::source::DERIVED;
use crate::text::Label;
use crate::trace::Trace;

/// Name of a section.
pub(super) fn label_of(section: &CorrodedSection, at: usize) -> Label {
    match &section.label {
        Some(label) => label.clone(),
        None => Label((at + 1).to_string()),
    }
}

/// Faces across the thickness, diameter or side that lose steel.
fn faces(form: &CorrodedForm) -> u32 {
    match form {
        CorrodedForm::RoundTube(tube) if tube.sealed_interior == Some(true) => 1,
        _ => 2,
    }
}

/// Wall, diameter, side or thickness.
fn thickness(form: &CorrodedForm) -> Size {
    match form {
        CorrodedForm::RoundTube(tube) => tube.wall_thickness,
        CorrodedForm::RoundBar(bar) => bar.diameter,
        CorrodedForm::SquareBar(bar) => bar.side,
        CorrodedForm::Plate(plate) => plate.thickness,
    }
}

/// Area of a form whose wall, diameter, side or thickness is `left` and whose outside, of a
/// tube, is `outside`.
fn area(form: &CorrodedForm, outside: Size, left: Size, trace: &mut Trace) -> Option<SteelArea> {
    match form {
        CorrodedForm::RoundTube(_) => Some(tube_area(outside, left, trace)),
        CorrodedForm::RoundBar(_) => Some(round_area(left, trace)),
        CorrodedForm::SquareBar(_) => Some(flat_area(left, left, trace)),
        CorrodedForm::Plate(plate) => plate.width.map(|width| flat_area(width, left, trace)),
    }
}

/// What is left of a section after the life.
pub(super) fn after(
    request: &Request,
    section: &CorrodedSection,
    label: Label,
    by: &CorrosionMethod,
    work: &mut Work,
) -> CorrodedOutcome {
    let (on, zinc_source) = coating_of(section, work);
    work.trace.about(|| format!("section {label}"));
    let exposed = faces(&section.form);
    let each_face = |on: OnSteel, work: &mut Work| {
        let (lost, zinc) = method::loss(by, request.ground.as_ref(), request.life, on, work);
        let own = match method::told(by).counts {
            LossCounts::EachFace => lost,
            LossCounts::BothFacesTogether => share_of_face(lost, exposed, &mut work.trace),
        };
        (own, zinc)
    };
    let (own, zinc_life) = each_face(on, work);
    let in_all = own * f64::from(exposed);
    let before = thickness(&section.form);
    let left = thickness_left(before, in_all, &mut work.trace);
    let (outside, outside_after) = match &section.form {
        CorrodedForm::RoundTube(tube) => {
            let d = tube.outside_diameter;
            (d, Some(thickness_left(d, own * 2.0, &mut work.trace)))
        }
        _ => (before, None),
    };
    let area_before = area(&section.form, outside, before, &mut work.trace);
    let area_after = area(
        &section.form,
        outside_after.unwrap_or(outside),
        left,
        &mut work.trace,
    );
    let nominal = match (&section.strength, area_after) {
        (Some(steel), Some(area)) => Some(nominal_strength(
            steel.yield_strength,
            area,
            &mut work.trace,
        )),
        _ => None,
    };
    let phi = section.strength.and_then(|steel| steel.resistance_factor);
    let factored = match (phi, nominal) {
        (Some(phi), Some(nominal)) => Some(factored_strength(phi, nominal, &mut work.trace)),
        _ => None,
    };
    let credits_zinc = matches!(
        by,
        CorrosionMethod::Fhwa(_) | CorrosionMethod::AcceptanceCriteria(_)
    );
    let edge = match (&section.form, on) {
        (CorrodedForm::Plate(_), OnSteel::Zinc(_)) if credits_zinc => {
            work.trace.about(|| format!("section {label}, edge"));
            Some(each_face(OnSteel::Bare, work).0)
        }
        _ => None,
    };
    work.trace.about(String::new);
    judge(before, in_all, &label, work);
    warn(by, on, in_all, &label, work);
    CorrodedOutcome {
        label,
        tags: section.tags.clone(),
        zinc_thickness: match on {
            OnSteel::Zinc(zinc) => Some(zinc),
            OnSteel::Bare | OnSteel::Powder => None,
        },
        zinc_source,
        zinc_life,
        loss_each_face: own,
        loss_in_all: in_all,
        exposed_face_count: exposed,
        edge_loss: edge,
        thickness_before: before,
        thickness_after: left,
        outside_diameter_after: outside_after,
        area_before,
        area_after,
        remaining_ratio: match (area_before, area_after) {
            (Some(before), Some(after)) => after / before,
            _ => left / before,
        },
        nominal_strength: nominal,
        factored_strength: factored,
    }
}

/// Whether anything is left.
fn judge(before: Size, lost: Coat, label: &Label, work: &mut Work) {
    let def = &checks::CORROSION_SECTION_REMAINS;
    let check = Check::at_most(def, Size::from(lost), before, &DERIVED);
    work.check(check.subject(SubjectKind::Section, label.as_str()));
}

fn warn(by: &CorrosionMethod, on: OnSteel, lost: Coat, label: &Label, work: &mut Work) {
    let name = label.as_str();
    let no_zinc = matches!(
        by,
        CorrosionMethod::Eurocode(_) | CorrosionMethod::FlatRate(_) | CorrosionMethod::Given(_)
    );
    match on {
        OnSteel::Zinc(zinc) if no_zinc => work.warn_about(
            &warnings::CORROSION_ZINC_NOT_CREDITED,
            SubjectKind::Section,
            name,
            format!("{} of zinc", in_both_systems(zinc.si(), "m")),
        ),
        OnSteel::Powder if !matches!(by, CorrosionMethod::AcceptanceCriteria(_)) => work
            .warn_about(
                &warnings::CORROSION_POWDER_NOT_CREDITED,
                SubjectKind::Section,
                name,
                "counted as bare",
            ),
        _ => {}
    }
    if lost == Coat::ZERO {
        work.warn_about(
            &warnings::CORROSION_NO_LOSS,
            SubjectKind::Section,
            name,
            "no steel is lost over the life by this method",
        );
    }
}
