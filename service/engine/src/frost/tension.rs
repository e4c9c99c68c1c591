//! Ultimate tension resistance of the ground below frost: the caller's, or by helix theory
//! with the helices in frozen ground left out.

use super::codes::warnings;
use super::ground::Ground;
use super::request::Request;
use super::uplift_request::{FrostTension, TensionBy, TensionFromSoil};
use crate::catalogue::cautions;
use crate::contract::{Issue, Refusal, SubjectKind, Work};
use crate::helix::{
    AxialDirection, AxialResistance, HelixMethods, axial_resistance, pile_faults, plate_faults,
};
use crate::quantity::{Force, Length};
use crate::soil::DerivedStrength;

/// Pointer of a profile in the request.
const PROFILE: &str = "/uplift/resistance/tension/from_soil/profile";
/// Pointer of a choice of methods in the request.
const METHODS: &str = "/uplift/resistance/tension/from_soil/methods";
/// Pointer of the pile in the request.
const PILE: &str = "/pile";

/// An ultimate tension resistance.
pub struct Ultimate {
    /// The force.
    pub force: Force,
    /// How it was found.
    pub by: TensionBy,
    /// What it rests on, where it was computed.
    pub resistance: Option<AxialResistance>,
    /// Strengths that were found rather than sent, where it was computed.
    pub derived: Vec<DerivedStrength>,
}

fn tension_of(request: &Request) -> Option<&FrostTension> {
    let uplift = request.uplift.as_ref()?;
    uplift.resistance.as_ref().map(|r| &r.tension)
}

/// List-length faults of the profile.
pub fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(FrostTension::FromSoil(soil)) = tension_of(request) {
        soil.profile.lengths(PROFILE, issues);
    }
}

/// Faults of helices, shaft, profile and methods together.
pub fn faults(request: &Request) -> Vec<Issue> {
    let pile = &request.pile;
    let Some(FrostTension::FromSoil(soil)) = tension_of(request) else {
        return plate_faults(&pile.shaft, &pile.helices, PILE);
    };
    let mut issues = soil.profile.faults(PROFILE);
    issues.extend(pile_faults(&soil.profile, &pile.shaft, &pile.helices, PILE));
    if let Some(methods) = &soil.methods {
        issues.extend(methods.faults(&pile.shaft, METHODS));
    }
    issues
}

/// Ultimate tension resistance below frost.
pub fn ultimate(
    request: &Request,
    tension: &FrostTension,
    ground: &Ground,
    work: &mut Work,
) -> Result<Ultimate, Refusal> {
    match tension {
        FrostTension::Given(given) => {
            warn_of_frozen(request, ground, work);
            Ok(Ultimate {
                force: given.ultimate,
                by: given.by,
                resistance: None,
                derived: Vec::new(),
            })
        }
        FrostTension::FromSoil(soil) => by_theory(request, soil, ground.base, work),
    }
}

/// Helix theory in tension without credit for the ground that freezes: a helix at or above
/// the base of frost carries nothing, as all soil it would lift is frozen, and embedment
/// counts from there.
fn by_theory(
    request: &Request,
    soil: &TensionFromSoil,
    base: Length,
    work: &mut Work,
) -> Result<Ultimate, Refusal> {
    let own = soil.methods.unwrap_or_default();
    let options = HelixMethods {
        no_credit_above: Some(own.no_credit_above.unwrap_or(Length::ZERO).max(base)),
        ..own
    };
    work.caution(&cautions::SOIL_PROFILE);
    let derived = soil.profile.derived_strengths(work);
    let resistance = axial_resistance(
        &soil.profile.strata(),
        &request.pile.shaft,
        &request.pile.helices,
        AxialDirection::Tension,
        &options,
        PILE,
        work,
    )?;
    Ok(Ultimate {
        force: resistance.ultimate,
        by: TensionBy::Analysis,
        resistance: Some(resistance),
        derived,
    })
}

/// A resistance that was sent must not count a helix in ground that freezes.
fn warn_of_frozen(request: &Request, ground: &Ground, work: &mut Work) {
    for helix in &ground.helices {
        if !ground.below_frost(helix.depth) {
            work.warn_about(
                &warnings::GIVEN_TENSION_WITH_FROZEN_HELIX,
                SubjectKind::Helix,
                &helix.label,
                format!(
                    "helix {} of {} is in ground that freezes; the tension resistance sent must not count it",
                    helix.label,
                    request.pile.name()
                ),
            );
        }
    }
}
