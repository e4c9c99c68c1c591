//! The stiffness of a pile from its ground and its shaft, or from a test, where the caller
//! has no number for it. The movement of the head itself is found by `helix-capacity`.

mod band;
mod equations;
mod estimate;

pub(super) use band::band;

use super::codes::{refusals, warnings};
use super::outcome::{StiffnessSource, SupportEstimate, SupportLoadSource};
use super::request::{PileSupport, Request, STIFFNESS_MAX, STIFFNESS_MIN};
use crate::contract::{Issue, Work};
use crate::quantity::{Force, Size, SpringStiffness, SpringUnit};
use crate::source::{PILE_STIFFNESS_PRACTICE, Sourced};
use estimate::estimate;

/// Stiffness of a light pile below which it is unusual.
static USUAL_FROM: Sourced<SpringStiffness> = Sourced::new(
    "usual_pile_stiffness_from",
    SpringStiffness::new(30.0, SpringUnit::KipPerIn),
    &PILE_STIFFNESS_PRACTICE,
);
/// Stiffness of a light pile above which it is unusual.
static USUAL_TO: Sourced<SpringStiffness> = Sourced::new(
    "usual_pile_stiffness_to",
    SpringStiffness::new(150.0, SpringUnit::KipPerIn),
    &PILE_STIFFNESS_PRACTICE,
);

/// A stiffness that was found.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Found {
    pub source: StiffnessSource,
    pub stiffness: SpringStiffness,
    pub load: Force,
    pub load_from: SupportLoadSource,
    pub movement: Size,
    pub estimate: Option<Parts>,
}

/// The parts of an estimate.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Parts {
    pub ultimate: Force,
    pub shaft: SpringStiffness,
    pub helix: SpringStiffness,
    /// With helices that move further, and less far.
    pub soft: SpringStiffness,
    pub stiff: SpringStiffness,
}

/// Faults in the lengths of lists.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some(PileSupport::FromSoil(asked)) = &request.pile_support {
        estimate::lengths(asked, issues);
    }
}

/// The request with the stiffness found put in, and what was found; none where nothing is to
/// be found. Where it cannot be found the faults are in `issues`, and the request still has
/// some stiffness, so that what else it lacks is told too.
pub(super) fn resolved(
    request: &Request,
    work: &mut Work,
    issues: &mut Vec<Issue>,
) -> Option<(Request, Option<Found>)> {
    let asked = request.pile_support.as_ref()?;
    if request.pile_stiffness.is_some() {
        issues.push(Issue::new(
            "/pile_support",
            &refusals::STIFFNESS_GIVEN_TWICE,
            "beside `pile_stiffness`",
        ));
    }
    let found = match asked {
        PileSupport::FromSoil(soil) => estimate(soil, request.pile_capacity.as_ref(), work, issues),
        PileSupport::FromTest(test) => Some(Found {
            source: StiffnessSource::Measured,
            stiffness: equations::secant(test.load, test.movement, &mut work.trace),
            load: test.load,
            load_from: SupportLoadSource::Request,
            movement: test.movement,
            estimate: None,
        }),
    };
    let found = found.filter(|f| in_range(f, asked, issues));
    if let Some(f) = &found {
        usual(f, work);
    }
    let mut own = request.clone();
    own.pile_stiffness = Some(found.as_ref().map_or(STIFFNESS_MIN, |f| f.stiffness));
    Some((own, found))
}

fn in_range(found: &Found, asked: &PileSupport, issues: &mut Vec<Issue>) -> bool {
    let within = |k: SpringStiffness| k >= STIFFNESS_MIN && k <= STIFFNESS_MAX;
    let ends = found.estimate.as_ref().map(|e| [e.soft, e.stiff]);
    let bad = [found.stiffness]
        .into_iter()
        .chain(ends.into_iter().flatten())
        .find(|k| !within(*k));
    let Some(k) = bad else {
        return true;
    };
    let told = |k: SpringStiffness| SpringStiffness::ROLE.in_both_systems(k.si());
    let pointer = match asked {
        PileSupport::FromSoil(_) => "/pile_support/from_soil",
        PileSupport::FromTest(_) => "/pile_support/from_test",
    };
    issues.push(
        Issue::new(
            pointer,
            &refusals::SUPPORT_STIFFNESS_OUT_OF_RANGE,
            format!("it comes to {}", told(k)),
        )
        .limit(format!(
            "{} to {}",
            told(STIFFNESS_MIN),
            told(STIFFNESS_MAX)
        )),
    );
    false
}

fn usual(found: &Found, work: &mut Work) {
    let (from, to) = (work.take(&USUAL_FROM), work.take(&USUAL_TO));
    if found.stiffness < from || found.stiffness > to {
        let told = |k: SpringStiffness| SpringStiffness::ROLE.in_both_systems(k.si());
        work.warn(
            &warnings::PILE_STIFFNESS_UNUSUAL,
            format!(
                "{}; piles of this size usually have {} to {}",
                told(found.stiffness),
                told(from),
                told(to)
            ),
        );
    }
}

impl Found {
    /// The estimate as the caller reads it, with the plan on both ends of the band.
    pub fn estimate_row(
        &self,
        soft: super::outcome::SupportBound,
        stiff: super::outcome::SupportBound,
    ) -> Option<SupportEstimate> {
        let parts = self.estimate.as_ref()?;
        Some(SupportEstimate {
            ultimate: parts.ultimate,
            shaft_stiffness: parts.shaft,
            helix_stiffness: parts.helix,
            soft,
            stiff,
        })
    }
}
