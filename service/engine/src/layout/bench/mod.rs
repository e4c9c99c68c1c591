//! A plan opened up for calculations that move its piles: places along beams, the analysis on
//! other piles without reading the plan anew, and what an analysis shows at single places.
//! Nothing is judged here that `pile-layout` does not judge.

mod corners;
mod places;
mod probes;

pub(crate) use places::Along;
pub(crate) use probes::{Probe, Probed};

use super::calc::{Prepared, Rows, rigidity, supported};
use super::codes::methods;
use super::outcome::Outcome;
use super::outline::{self, Form};
use super::report::Analysis;
use super::request::{
    BeamTorsion, GivenPile, GivenPiles, GradeBeam, KeepOut, PilePlacement, PlanPoint, Request,
};
use super::site;
use super::strength;
use super::support;
use super::types::Barrier;
use crate::catalogue::cautions;
use crate::contract::{Issue, Refusal, Work, none_of};

/// A plan that was read.
pub(crate) struct Bench<'a> {
    form: Form<'a>,
    prepared: Prepared,
}

/// Something that piles keep away from.
pub(crate) struct Obstacle(Barrier);

/// Reads a plan and does something with it; a plan with faults is refused.
pub(crate) fn open<R>(
    request: &Request,
    work: &mut Work,
    go: impl FnOnce(&mut Bench<'_>, &mut Work) -> Result<R, Refusal>,
) -> Result<R, Refusal> {
    for caution in [
        &cautions::ENGINEER_OF_RECORD,
        &cautions::LOCAL_CODE,
        &cautions::LOCATE_UTILITIES,
        &cautions::SOIL_PROFILE,
        &cautions::NOT_COVERED,
    ] {
        work.caution(caution);
    }
    work.method(&methods::CONTINUOUS_BEAM);
    if request.beam_torsion == Some(BeamTorsion::Included) {
        work.method(&methods::TORSION_OF_BEAMS);
    }
    work.method(&methods::TRIBUTARY_LENGTHS);
    let mut issues = Vec::new();
    let supported = support::resolved(request, work, &mut issues);
    let request = supported.as_ref().map_or(request, |s| &s.0);
    let form = outline::read(request, work);
    issues.extend(form.issues.iter().cloned());
    match Prepared::of(&form, issues, work) {
        Ok(mut prepared) => {
            prepared.support = supported.as_ref().and_then(|s| s.1.clone());
            go(&mut Bench { form, prepared }, work)
        }
        Err(refusal) => Err(form.as_sent(refusal)),
    }
}

impl Bench<'_> {
    /// The whole answer. Faults point into the plan as it is analysed, see `as_sent`.
    pub fn answered(&self, work: &mut Work) -> Result<Outcome, Refusal> {
        let (form, seen) = (&self.form, &mut |_: &Analysis<'_>| {});
        self.prepared.answered(form, Rows::Whole, work, seen)
    }

    /// The answer as far as anything is judged by it: piles without their reactions in every
    /// combination and without shares of beams.
    pub fn tried(&self, work: &mut Work) -> Result<Outcome, Refusal> {
        let (form, seen) = (&self.form, &mut |_: &Analysis<'_>| {});
        self.prepared.answered(form, Rows::Judged, work, seen)
    }

    /// [`Bench::tried`], and the moments at some places.
    pub fn tried_with(
        &self,
        probes: &[Probe],
        work: &mut Work,
    ) -> Result<(Outcome, Vec<Probed>), Refusal> {
        self.with(probes, Rows::Judged, work)
    }

    /// Faults with pointers into the request as it was sent.
    pub fn as_sent(&self, refusal: Refusal) -> Refusal {
        self.form.as_sent(refusal)
    }

    /// The whole answer, and the moments at some places.
    pub fn answered_with(
        &self,
        probes: &[Probe],
        work: &mut Work,
    ) -> Result<(Outcome, Vec<Probed>), Refusal> {
        self.with(probes, Rows::Whole, work)
    }

    fn with(
        &self,
        probes: &[Probe],
        rows: Rows,
        work: &mut Work,
    ) -> Result<(Outcome, Vec<Probed>), Refusal> {
        let mut found = Vec::new();
        let mut look = |analysis: &Analysis<'_>| found = probes::moments(analysis, probes);
        let outcome = self.prepared.answered(&self.form, rows, work, &mut look)?;
        Ok((outcome, found))
    }

    /// Puts other piles onto the plan; all else stays. Faults that these piles bring are told as
    /// those of a fresh request would be; where each has its place they stand on the plan all the
    /// same.
    pub fn put(&mut self, positions: &[GivenPile]) -> Result<(), Refusal> {
        if let PilePlacement::Given(given) = &mut self.form.request.to_mut().piles {
            given.positions.clear();
            given.positions.extend_from_slice(positions);
        }
        let request = self.form.request.as_ref();
        let mut issues = Vec::new();
        rigidity(request, &mut issues);
        if let Some(given) = self.given() {
            let (plan, terrain) = (&self.prepared.frame.plan, &self.prepared.terrain);
            let piles = site::given(request, given, plan, terrain, &mut issues);
            if piles.len() == given.positions.len() {
                supported(plan, &piles, &mut issues);
                self.prepared.piles = piles;
            }
        }
        none_of(issues)
    }

    /// Gives a beam other strengths than were sent; not for one with a section.
    pub fn strengthen(&mut self, beam: usize, by: &GradeBeam) {
        let own = &mut self.form.request.to_mut().beams[beam];
        own.moment_capacity = by.moment_capacity;
        own.shear_capacity = by.shear_capacity;
        own.torsion_capacity = by.torsion_capacity;
        if own.section.is_none() {
            self.prepared.frame.strength[beam] = strength::given(own);
        }
    }

    /// The given piles as they are now.
    pub fn given(&self) -> Option<&GivenPiles> {
        match &self.form.request.piles {
            PilePlacement::Given(given) => Some(given),
            PilePlacement::Search(_) => None,
        }
    }

    /// The beams, those of outlines after those sent.
    pub fn beams(&self) -> &[GradeBeam] {
        &self.form.request.beams
    }

    /// Their labels.
    pub fn beam_labels(&self) -> &[String] {
        &self.prepared.beam_labels
    }

    /// Labels of the piles.
    pub fn pile_labels(&self) -> impl Iterator<Item = &str> {
        self.prepared.piles.iter().map(|p| p.label.as_str())
    }

    /// Whether bending and shear strength of a beam are known.
    pub fn strength_known(&self, beam: usize) -> bool {
        let own = &self.prepared.frame.strength[beam];
        own.moment.is_some() && own.shear.is_some()
    }

    /// What a pile carries in compression and tension, N; of a type that is not told, what the
    /// type that carries most does. None without capacities.
    pub fn capacity(&self, pile: usize) -> (Option<f64>, Option<f64>) {
        let own = &self.prepared.piles[pile];
        let terrain = &self.prepared.terrain;
        let point = self.prepared.frame.plan.point_of(&own.place);
        let here = terrain.capacities(&terrain.here(point));
        let of = |get: fn(&super::types::Capacity) -> f64| match own.offer {
            Some(rank) => here.get(rank).map(get),
            None => here.iter().map(get).reduce(f64::max),
        };
        (
            own.compression.or(of(|c| c.compression)),
            own.tension.or(of(|c| c.tension)),
        )
    }

    /// Reads something that piles keep away from, which stands at a pointer of the request.
    pub fn obstacle(&self, sent: &KeepOut, pointer: &str, issues: &mut Vec<Issue>) -> Obstacle {
        let corner = self.prepared.frame.plan.corner;
        Obstacle(Barrier::of(sent, pointer, corner, issues))
    }

    /// The things that piles of the plan keep away from.
    pub fn obstacles(&self) -> Vec<Obstacle> {
        let all = self.prepared.terrain.barriers.iter();
        all.map(|b| Obstacle(b.clone())).collect()
    }

    /// Distance of a point to an obstacle, what it has to be, and its name.
    pub fn distance(&self, obstacle: &Obstacle, at: &PlanPoint) -> (f64, f64, String) {
        let barrier = &obstacle.0;
        let point = self.inside(at);
        (barrier.distance(point), barrier.clearance, barrier.name())
    }

    /// Whether the centre of a pile may stand at a point beside an obstacle.
    pub fn clear_of(&self, obstacle: &Obstacle, at: &PlanPoint) -> bool {
        obstacle.0.allows(obstacle.0.distance(self.inside(at)))
    }
}
