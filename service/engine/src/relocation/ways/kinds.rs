//! The kinds of way out, in the order in which they are tried: those of few candidates first. Here
//! those that do nothing or make beams stronger.

use super::bench::{Candidate, Seeker, Tried};
use super::{larger, pair, shift};
use crate::contract::{Check, Refusal};
use crate::layout::codes::checks as plan;
use crate::layout::{BeamMomentCapacity, GradeBeam};
use crate::quantity::{Force, Moment};
use crate::relocation::compare::of_beam;
use crate::relocation::outcome::WayOutKind;
use crate::relocation::request::{BeamStrengthened, RelocationEvent};
use crate::text::Label;

type Go = fn(&mut Seeker<'_, '_>, &mut Tried) -> Result<(), Refusal>;

/// Every kind with what tries it.
pub(super) const ALL: &[(WayOutKind, Go)] = &[
    (WayOutKind::LeaveOut, leave_out),
    (WayOutKind::StrongerBeam, stronger_beam),
    (WayOutKind::LargerPiles, larger::larger_piles),
    (WayOutKind::ShiftOff, shift::off),
    (WayOutKind::ShiftAlong, shift::along),
    (WayOutKind::ExtraPile, shift::extra),
    (WayOutKind::StraddlingPair, pair::straddling),
];

/// The pile as it is, and without it.
pub(super) fn as_is(seeker: &Seeker<'_, '_>) -> Vec<Candidate> {
    let mut out = vec![seeker.nothing()];
    if seeker.stands() {
        out.push(seeker.without());
    }
    out
}

fn leave_out(seeker: &mut Seeker<'_, '_>, tried: &mut Tried) -> Result<(), Refusal> {
    for candidate in as_is(seeker) {
        seeker.attempt(candidate, tried)?;
    }
    if tried.best.is_none() {
        tried.reason = Some("the beams do not stand without it".to_owned());
    }
    Ok(())
}

fn stronger_beam(seeker: &mut Seeker<'_, '_>, tried: &mut Tried) -> Result<(), Refusal> {
    for mut candidate in as_is(seeker) {
        let Some(judged) = seeker.judge(&candidate)? else {
            continue;
        };
        let weak: Vec<&Check> = judged.failed.iter().filter(|c| of_beam(c)).collect();
        if weak.is_empty() {
            tried.reason = Some("no beam whose strength is given fails without it".to_owned());
            continue;
        }
        let mut needed: Vec<(usize, GradeBeam)> = Vec::new();
        for check in weak {
            if let Err(why) = raise(seeker, check, &mut needed) {
                tried.reason = Some(why);
            }
        }
        for (beam, strong) in &needed {
            let was = &seeker.applied.beams()[*beam];
            candidate.events.push(event(seeker, *beam, was, strong));
        }
        candidate.stronger = needed;
        // what the beams hand on may ask for larger piles too
        if let Some(both) = larger::enlarged(seeker, candidate.clone())? {
            seeker.attempt(both, tried)?;
        }
        seeker.attempt(candidate, tried)?;
    }
    if tried.best.is_some() {
        tried.reason = None;
    } else if tried.reason.is_none() {
        tried.reason = Some("the beams do not stand without it".to_owned());
    }
    Ok(())
}

/// Raises the strength that a check misses.
fn raise(
    seeker: &Seeker<'_, '_>,
    check: &Check,
    needed: &mut Vec<(usize, GradeBeam)>,
) -> Result<(), String> {
    let label = check.subject.as_ref().map_or("", |s| s.label.as_str());
    let labels = seeker.bench.beam_labels();
    let beam = labels.iter().position(|l| l == label);
    let own = beam.and_then(|b| Some((b, seeker.applied.beams().get(b)?)));
    let (Some((b, own)), Some(demand)) = (own, &check.demand) else {
        return Err(format!(
            "beam {label} is the side of an outline; its strength is sent in `layout`"
        ));
    };
    if own.section.is_some() && check.id != plan::BEAM_TORSION.id {
        return Err(format!(
            "the strength of beam {label} is that of its `section`"
        ));
    }
    if !needed.iter().any(|(i, _)| *i == b) {
        needed.push((b, own.clone()));
    }
    let Some((_, strong)) = needed.iter_mut().find(|(i, _)| *i == b) else {
        return Ok(());
    };
    let value = demand.value();
    let moment = strong.moment_capacity.get_or_insert(BeamMomentCapacity {
        sagging: Moment::ZERO,
        hogging: Moment::ZERO,
    });
    if check.id == plan::BEAM_MOMENT_SAGGING.id {
        moment.sagging = Moment::from_si(value);
    } else if check.id == plan::BEAM_MOMENT_HOGGING.id {
        moment.hogging = Moment::from_si(value);
    }
    if own.moment_capacity.is_none() {
        strong.moment_capacity = None;
    }
    if check.id == plan::BEAM_SHEAR.id {
        strong.shear_capacity = Some(Force::from_si(value));
    } else if check.id == plan::BEAM_TORSION.id {
        strong.torsion_capacity = Some(Moment::from_si(value));
    }
    Ok(())
}

/// The event that makes a beam stronger: what is new only.
fn event(
    seeker: &Seeker<'_, '_>,
    beam: usize,
    was: &GradeBeam,
    strong: &GradeBeam,
) -> RelocationEvent {
    let label = seeker.bench.beam_labels()[beam].clone();
    RelocationEvent::Strengthened(BeamStrengthened {
        beam: Label(label),
        moment_capacity: strong
            .moment_capacity
            .filter(|_| strong.moment_capacity != was.moment_capacity),
        shear_capacity: strong
            .shear_capacity
            .filter(|_| strong.shear_capacity != was.shear_capacity),
        torsion_capacity: strong
            .torsion_capacity
            .filter(|_| strong.torsion_capacity != was.torsion_capacity),
        why: None,
    })
}
