//! Tension resistance of the ground below frost or below the active zone: the caller's, or
//! by helix theory with the helices in moving ground left out.

use super::ground::{FrostHelix, reaches};
use super::request::Request;
use super::resistance_request::{FrostTension, TensionBy, TensionFromSoil};
use crate::catalogue::{WarningDef, cautions};
use crate::contract::{Issue, Refusal, SubjectKind, Work};
use crate::helix::{
    AxialDirection, AxialResistance, HelixMethods, axial_resistance, pile_faults, plate_faults,
};
use crate::quantity::{Force, Length};
use crate::soil::DerivedStrength;

/// Pointer of the pile in the request.
const PILE: &str = "/pile";

/// The ground that holds nothing, and how it is spoken of.
pub struct NoCredit<'a> {
    /// Depth of its base below final grade.
    pub above: Length,
    /// Helices from the top down.
    pub helices: &'a [FrostHelix],
    /// What is told of a helix in it where the resistance was sent.
    pub warning: &'static WarningDef,
    /// Its name in that text.
    pub name: &'static str,
}

/// A tension resistance.
pub struct Held {
    /// The force: ultimate, or at the level sent.
    pub force: Force,
    /// Whether it is ultimate.
    pub ultimate: bool,
    /// How it was found.
    pub by: TensionBy,
    /// What it rests on, where it was computed.
    pub resistance: Option<AxialResistance>,
    /// Strengths that were found rather than sent, where it was computed.
    pub derived: Vec<DerivedStrength>,
}

/// The resistances of a request with their pointers, where they were sent.
pub fn sent(request: &Request) -> Vec<(&'static str, &FrostTension)> {
    let uplift = request.uplift.as_ref().and_then(|u| u.resistance.as_ref());
    let swelling = request
        .swelling
        .as_ref()
        .and_then(|s| s.resistance.as_ref());
    [
        ("/uplift/resistance/tension", uplift),
        ("/swelling/resistance/tension", swelling),
    ]
    .into_iter()
    .filter_map(|(at, resistance)| resistance.map(|r| (at, &r.tension)))
    .collect()
}

/// Whether a tension resistance of a request comes from torque.
pub fn by_torque(request: &Request) -> bool {
    sent(request).iter().any(|(_, tension)| match tension {
        FrostTension::Given(given) => given.by == TensionBy::Torque,
        FrostTension::GivenDesign(given) => given.by == TensionBy::Torque,
        FrostTension::FromSoil(_) => false,
    })
}

/// List-length faults of the profiles.
pub fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    for (at, tension) in sent(request) {
        if let FrostTension::FromSoil(soil) = tension {
            soil.profile
                .lengths(&format!("{at}/from_soil/profile"), issues);
        }
    }
}

/// Faults of helices, shaft, profiles and methods together.
pub fn faults(request: &Request) -> Vec<Issue> {
    let pile = &request.pile;
    let mut issues = Vec::new();
    for (at, tension) in sent(request) {
        let FrostTension::FromSoil(soil) = tension else {
            continue;
        };
        issues.extend(soil.profile.faults(&format!("{at}/from_soil/profile")));
        issues.extend(pile_faults(&soil.profile, &pile.shaft, &pile.helices, PILE));
        if let Some(methods) = &soil.methods {
            issues.extend(methods.faults(&pile.shaft, &format!("{at}/from_soil/methods")));
        }
    }
    for issue in plate_faults(&pile.shaft, &pile.helices, PILE) {
        if !issues.contains(&issue) {
            issues.push(issue);
        }
    }
    issues
}

/// Tension resistance below ground that holds nothing.
pub fn held(
    request: &Request,
    tension: &FrostTension,
    no_credit: &NoCredit,
    work: &mut Work,
) -> Result<Held, Refusal> {
    match tension {
        FrostTension::Given(given) => {
            warn_of_uncounted(request, no_credit, work);
            Ok(as_sent(given.ultimate, true, given.by))
        }
        FrostTension::GivenDesign(given) => {
            warn_of_uncounted(request, no_credit, work);
            Ok(as_sent(given.resistance, false, given.by))
        }
        FrostTension::FromSoil(soil) => by_theory(request, soil, no_credit.above, work),
    }
}

fn as_sent(force: Force, ultimate: bool, by: TensionBy) -> Held {
    Held {
        force,
        ultimate,
        by,
        resistance: None,
        derived: Vec::new(),
    }
}

/// Helix theory in tension without credit for ground that moves: a helix at or above its
/// base carries nothing, as all soil it would lift is moving, and embedment counts from
/// there.
fn by_theory(
    request: &Request,
    soil: &TensionFromSoil,
    base: Length,
    work: &mut Work,
) -> Result<Held, Refusal> {
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
    Ok(Held {
        force: resistance.ultimate,
        ultimate: true,
        by: TensionBy::Analysis,
        resistance: Some(resistance),
        derived,
    })
}

/// A resistance that was sent must not count a helix in ground that moves.
fn warn_of_uncounted(request: &Request, no_credit: &NoCredit, work: &mut Work) {
    for helix in no_credit.helices {
        if !reaches(no_credit.above, helix.depth) {
            work.warn_about(
                no_credit.warning,
                SubjectKind::Helix,
                &helix.label,
                format!(
                    "helix {} of {} is in {}; the tension resistance sent must not count it",
                    helix.label,
                    request.pile.name(),
                    no_credit.name
                ),
            );
        }
    }
}
