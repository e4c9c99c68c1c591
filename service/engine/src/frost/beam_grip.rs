//! Frost grip on the sides of the grade beam, and what is said where the caller says
//! nothing of the beam.

use super::codes::{methods, warnings};
use super::constants::BOND_CONCRETE;
use super::equations::beam_adfreeze;
use super::ground::Ground;
use super::outcome::BeamGrip;
use super::request::{BeamInSoil, BeamSides, FrostBeam, Request};
use crate::contract::Work;
use crate::quantity::SoilStress;
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

fn bond(beam: &BeamInSoil, work: &mut Work) -> (SoilStress, SourceNote) {
    let own = match &beam.sides {
        Some(BeamSides::BondBreak(_) | BeamSides::NonSusceptibleBackfill(_)) => {
            Some(SoilStress::ZERO)
        }
        Some(BeamSides::Bonded(bonded)) => bonded.bond_stress,
        None => None,
    };
    match own {
        Some(stress) => (stress, (&CALLER).into()),
        None => (work.take(&BOND_CONCRETE), BOND_CONCRETE.reference.into()),
    }
}
