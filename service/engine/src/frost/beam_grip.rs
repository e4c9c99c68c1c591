//! Grip of frozen and of swelling soil on the sides of the grade beam, and what is said
//! where the caller says nothing of the beam.

use super::adhesion::Adhesion;
use super::beam_request::{BeamInSoil, BeamSides, FrostBeam};
use super::codes::{methods, warnings};
use super::constants::BOND_CONCRETE;
use super::equations::beam_adfreeze;
use super::ground::Ground;
use super::request::Request;
use super::swell_equations::beam_swell;
use super::swell_outcome::SwellBeamGrip;
use super::uplift_outcome::BeamGrip;
use crate::contract::Work;
use crate::quantity::{Length, SoilStress};
use crate::source::{CALLER, SourceNote};

/// The grip on the beam of a request; `None` where there is no beam in soil.
///
/// The side freezes from final grade down to the base of frost or its underside,
/// whichever is higher; a crawl space that is dug out is not credited.
pub fn of(request: &Request, ground: &Ground, work: &mut Work) -> Option<BeamGrip> {
    match &request.beam {
        None => {
            work.warn(
                &warnings::BEAM_SIDES_NOT_STATED,
                "no `beam` was sent: where its sides stand in freezing soil their grip adds to the uplift on the pile and is not counted here",
            );
            None
        }
        Some(FrostBeam::AboveGround(_)) => None,
        Some(FrostBeam::InSoil(beam)) => Some(grip(beam, ground, work)),
    }
}

fn grip(beam: &BeamInSoil, ground: &Ground, work: &mut Work) -> BeamGrip {
    work.method(&methods::BEAM_SIDE_ADFREEZE);
    let (bond_stress, bond_source) = bond(beam, work);
    let frozen_depth = beam.underside_depth.min(ground.base);
    let side_count = beam.side_count.unwrap_or(2);
    work.trace.about(|| "beam sides".to_owned());
    let force = beam_adfreeze(
        bond_stress,
        side_count,
        frozen_depth,
        beam.tributary_length,
        &mut work.trace,
    );
    work.trace.about(String::new);
    BeamGrip {
        frozen_depth,
        bond_stress,
        bond_source,
        side_count,
        force,
    }
}

/// The grip of swelling soil on the beam of a request; `None` where no beam stands in soil.
///
/// The adhesion is the caller's for the sides, or that on the shaft; the measures that free
/// the sides from frost free them from swelling too.
pub fn of_swelling(
    request: &Request,
    active: Length,
    shaft: &Adhesion,
    work: &mut Work,
) -> Option<SwellBeamGrip> {
    let beam = match &request.beam {
        Some(FrostBeam::InSoil(beam)) => beam,
        Some(FrostBeam::AboveGround(_)) => return None,
        None => {
            work.warn(
                &warnings::BEAM_SIDES_NOT_STATED,
                "no `beam` was sent: where its sides stand in swelling soil their grip adds to the uplift on the pile and is not counted here",
            );
            return None;
        }
    };
    work.method(&methods::BEAM_SIDE_SWELL);
    let own = own_stress(beam, |bonded| bonded.swell_adhesion);
    let (adhesion, adhesion_source) = match own {
        Some(stress) => (stress, (&CALLER).into()),
        None => (shaft.stress, shaft.source.clone()),
    };
    let active_depth = beam.underside_depth.min(active);
    let side_count = beam.side_count.unwrap_or(2);
    work.trace.about(|| "beam sides, swelling".to_owned());
    let force = beam_swell(
        adhesion,
        side_count,
        active_depth,
        beam.tributary_length,
        &mut work.trace,
    );
    work.trace.about(String::new);
    Some(SwellBeamGrip {
        active_depth,
        adhesion,
        adhesion_source,
        side_count,
        force,
    })
}

/// What the caller says of the stress on the sides: nil where they are free.
fn own_stress(
    beam: &BeamInSoil,
    sent: impl Fn(&super::BondedSides) -> Option<SoilStress>,
) -> Option<SoilStress> {
    match &beam.sides {
        Some(BeamSides::BondBreak(_) | BeamSides::NonSusceptibleBackfill(_)) => {
            Some(SoilStress::ZERO)
        }
        Some(BeamSides::Bonded(bonded)) => sent(bonded),
        None => None,
    }
}

fn bond(beam: &BeamInSoil, work: &mut Work) -> (SoilStress, SourceNote) {
    match own_stress(beam, |bonded| bonded.bond_stress) {
        Some(stress) => (stress, (&CALLER).into()),
        None => (work.take(&BOND_CONCRETE), BOND_CONCRETE.reference.into()),
    }
}
