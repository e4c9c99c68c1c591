//! `pile-layout` from request to outcome: reads the plan, finds every fault, analyses,
//! judges. The search itself is in `search`.

use std::borrow::Cow;

use super::PileLayout;
use super::analysis::Solved;
use super::basis::{
    AllowableStressCombinations, LayoutBasis, LimitStatesCombinations, OwnCombinations,
};
use super::bench;
use super::codes::{methods, refusals};
use super::combine::{Loading, loading};
use super::frame::Frame;
use super::judge::judge;
use super::lengths::plan_lengths;
use super::lift_off;
use super::options;
use super::outcome::{Outcome, SearchReport};
use super::outline::Form;
use super::pattern;
use super::plan::{Place, Plan};
use super::report::Analysis;
use super::request::{
    BeamTorsion, CapacityLevel, PilePlacement, ReactionDetail, Request, SearchObjective,
    TensionConnection,
};
use super::search;
use super::site::{self, Pile};
use super::slab;
use super::staking;
use super::strength;
use super::support;
use super::types::{self, Spacing, Stretch, Terrain};
use crate::beam::Fault;
use crate::catalogue::refusals::BASIS_MIXED;
use crate::contract::{Calculation, Issue, Refusal, Work, list_length, none_of};
use crate::limits::{COMBINATIONS, PILES};
use crate::quantity::round9;

/// Reactions that are listed without being asked for.
const REACTIONS_LISTED: usize = 2_000;
/// Most reactions that are listed.
const REACTIONS_MAX: usize = 20_000;
/// Relative closure that every answer meets.
const CLOSURE: f64 = 1e-9;

impl Calculation for PileLayout {
    fn lengths(request: &Request, issues: &mut Vec<Issue>) {
        lengths(request, issues);
    }

    fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
        bench::open(request, work, |bench, work| {
            bench
                .answered(work)
                .map_err(|refusal| bench.as_sent(refusal))
        })
    }
}

fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    plan_lengths(request, issues);
    support::lengths(request, issues);
    pattern::lengths(request, issues);
    types::lengths(request, issues);
    match &request.piles {
        PilePlacement::Given(g) => {
            let pointer = "/piles/given/positions";
            list_length(issues, pointer, g.positions.len(), 1, PILES);
        }
        PilePlacement::Search(s) => {
            let forced = s.forced.as_ref().map_or(0, Vec::len);
            list_length(issues, "/piles/search/forced", forced, 0, PILES);
        }
    }
    if let Some(s) = &request.staking {
        staking::lengths(s, issues);
    }
    let service = request.service_combinations.as_ref();
    let service = service.map(|own| (own, "/service_combinations/list"));
    for (own, pointer) in own_combinations(&request.design_basis)
        .into_iter()
        .chain(service)
    {
        list_length(issues, pointer, own.list.len(), 1, COMBINATIONS);
        for (i, c) in own.list.iter().enumerate() {
            let pointer = format!("{pointer}/{i}/factors");
            list_length(issues, pointer, c.factors.len(), 1, COMBINATIONS);
        }
    }
}

fn own_combinations(basis: &LayoutBasis) -> Option<(&OwnCombinations, &'static str)> {
    match basis {
        LayoutBasis::AllowableStress(l) => match &l.combinations {
            AllowableStressCombinations::Own(own) => {
                Some((own, "/design_basis/allowable_stress/combinations/own/list"))
            }
            AllowableStressCombinations::Published(_) => None,
        },
        LayoutBasis::LimitStates(l) => match &l.combinations {
            LimitStatesCombinations::Own(own) => {
                Some((own, "/design_basis/limit_states/combinations/own/list"))
            }
            LimitStatesCombinations::Published(_) => None,
        },
    }
}

/// What a search tells: its report, and what would have to give.
type Told = (Option<SearchReport>, Option<search::Unmet>);

/// Whoever looks at an analysis before it is let go.
pub(super) type Seen<'a> = &'a mut dyn FnMut(&Analysis<'_>);

/// What the row of a pile holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Rows {
    /// All that is asked for.
    Whole,
    /// Neither its reactions in every combination nor its shares of beams.
    Judged,
}

/// A request without faults, as far as they show before the analysis.
pub(super) struct Prepared {
    pub loading: Loading,
    pub frame: Frame,
    pub beam_labels: Vec<String>,
    /// Piles that are given.
    pub piles: Vec<Pile>,
    /// Points that are forced.
    forced: Vec<Place>,
    pub terrain: Terrain,
    pub spacing: Spacing,
    /// Stretches where no pile may stand.
    stretches: Vec<Stretch>,
    /// Why no pile may stand at each meeting.
    barred: Vec<Option<String>>,
    slabs: Vec<slab::Laid>,
    /// A stiffness that was found.
    pub support: Option<support::Found>,
}

impl Prepared {
    pub fn of(form: &Form<'_>, mut issues: Vec<Issue>, work: &mut Work) -> Result<Self, Refusal> {
        let request = form.request.as_ref();
        let names = request.beams.iter().map(|b| b.label.as_ref());
        let beam_labels = site::labels(names, "B", "/beams", &mut issues);
        levels(request, &mut issues);
        rigidity(request, &mut issues);
        options::together(request, &mut issues);
        let strengths = strength::strengths(request, &beam_labels, work, &mut issues);
        if let PilePlacement::Search(_) = &request.piles {
            options::given_only(request, &mut issues);
            search::limits(request, &mut issues);
        }
        if let Some(s) = &request.staking {
            staking::faults(s, &mut issues);
        }
        let loading = loading(request, work, &mut issues);
        pattern::faults(request, &loading, work, &mut issues);
        let sound = form.issues.is_empty();
        let plan = sound.then(|| Plan::build(&request.beams, &form.called(), &mut issues));
        let Some(plan) = plan.flatten() else {
            types::without_plan(request, work, &mut issues);
            return Err(Refusal::of(issues));
        };
        work.go_on()?;
        let terrain = Terrain::read(request, plan.corner, &mut issues);
        let spacing = Spacing::of(request, terrain.offers.as_ref(), work, &mut issues);
        let (mut piles, mut forced) = (Vec::new(), Vec::new());
        let (mut stretches, mut barred) = (Vec::new(), Vec::new());
        match &request.piles {
            PilePlacement::Given(given) => {
                piles = site::given(request, given, &plan, &terrain, &mut issues);
                if piles.len() == given.positions.len() {
                    supported(&plan, &piles, &mut issues);
                    if let Some(s) = &request.staking {
                        staking::strangers(s, &piles, &mut issues);
                    }
                }
            }
            PilePlacement::Search(s) => {
                stretches = types::stretches(s, &plan, &beam_labels, &mut issues);
                barred = search::barred_meetings(&plan, &terrain, &stretches);
                forced = search::forced(s, &plan, &terrain, &stretches, &barred, &mut issues);
            }
        }
        let slabs = slab::lay(request, &plan, &loading, &beam_labels, work, &mut issues);
        let mut frame = Frame::of(
            request,
            plan,
            &loading,
            (&beam_labels, &slabs),
            &mut work.trace,
            &mut issues,
        );
        frame.take_strengths(request, strengths);
        none_of(issues)?;
        Ok(Self {
            loading,
            frame,
            beam_labels,
            piles,
            forced,
            terrain,
            spacing,
            stretches,
            barred,
            slabs,
            support: None,
        })
    }

    fn search<'a>(
        &'a self,
        request: &'a Request,
        limits: &'a super::request::PileSearch,
    ) -> search::Task<'a> {
        search::Task {
            request,
            limits,
            frame: &self.frame,
            combinations: &self.loading.combinations,
            service: self.loading.service.as_deref(),
            beam_labels: &self.beam_labels,
            forced: &self.forced,
            terrain: &self.terrain,
            stretches: &self.stretches,
            barred: &self.barred,
            min_spacing: self.spacing.all().unwrap_or(0.0),
            absent: pattern::cases(request, &self.loading),
        }
    }

    /// The answer; `seen` is shown the analysis before it is let go.
    pub fn answered(
        &self,
        form: &Form<'_>,
        rows: Rows,
        work: &mut Work,
        seen: Seen<'_>,
    ) -> Result<Outcome, Refusal> {
        let request = form.request.as_ref();
        let mut least_cost = None;
        let (mut piles, mut found) = match &request.piles {
            PilePlacement::Given(_) => (Cow::Borrowed(self.piles.as_slice()), Told::default()),
            PilePlacement::Search(s) => {
                work.method(&methods::FEWEST_PILES);
                if s.objective == Some(SearchObjective::LeastCost) {
                    work.method(&methods::LEAST_COST);
                }
                let found = search::fewest(&self.search(request, s), work)?;
                least_cost = found.least_cost;
                (Cow::Owned(found.piles), (Some(found.report), found.unmet))
            }
        };
        if request.pile_types.is_some() {
            work.method(&methods::PILE_TYPES);
            work.go_on()?;
            let combinations = &self.loading.combinations;
            types::assign(&self.terrain, &self.frame, combinations, piles.to_mut())
                .map_err(|fault| Refusal::of(fault_issues(&self.frame, fault)))?;
        }
        if let Some((report, least)) = found.0.as_mut().zip(least_cost) {
            search::claim_cost(report, least, &self.terrain, &piles, work);
        }
        self.answer(form, (&piles, rows), found, (work, seen))
    }

    fn answer(
        &self,
        form: &Form<'_>,
        (piles, rows): (&[Pile], Rows),
        (report, unmet): Told,
        (work, seen): (&mut Work, Seen<'_>),
    ) -> Result<Outcome, Refusal> {
        let request = form.request.as_ref();
        let rows = match request.reaction_detail {
            Some(ReactionDetail::Table) => Rows::Judged,
            _ => rows,
        };
        let all_reactions = self.listed(request, piles.len())? && rows == Rows::Whole;
        let lifts = request.tension_connection == Some(TensionConnection::LiftsOff);
        let own = lifts.then(|| lift_off::expanded(&self.frame, &self.loading));
        let (frame, loading) = match &own {
            Some((frame, loading)) => (frame, loading),
            None => (&self.frame, &self.loading),
        };
        let mut solved = solve(frame, piles, work)?;
        let lifted = if lifts {
            work.method(&methods::PILES_THAT_PUSH);
            Some(lift_off::release(frame, loading, piles, &mut solved, work)?)
        } else {
            None
        };
        let analysis = Analysis {
            request,
            form,
            frame,
            loading,
            sent: (&self.frame, &self.loading),
            beam_labels: &self.beam_labels,
            piles,
            solved: &solved,
            all_reactions,
            shares: rows == Rows::Whole,
            terrain: &self.terrain,
            spacing: self.spacing,
        };
        let mut outcome = analysis.outcome(&mut work.trace);
        if outcome.statics_residual_ratio > CLOSURE {
            return Err(Issue::new(
                "/beams",
                &refusals::STATICS_NOT_CLOSED,
                format!(
                    "relative residual {}",
                    round9(outcome.statics_residual_ratio)
                ),
            )
            .limit(CLOSURE.to_string())
            .into());
        }
        outcome.lift_off = lifted;
        let (labels, trace) = (&self.beam_labels, &mut work.trace);
        outcome.slabs = slab::rows(request, &self.slabs, &self.loading, labels, trace);
        pattern::apply(&analysis, &mut outcome, work)?;
        if let Some(found) = &self.support {
            support::band(found, &analysis, &mut outcome, work)?;
        }
        strength::report(&analysis, &mut outcome);
        judge(&analysis, &outcome, work);
        outcome.search = report;
        if let (Some(report), Some(unmet)) = (&mut outcome.search, unmet) {
            report.infeasible = Some(search::infeasible(unmet, &work.checks));
        }
        let (plan, labels) = (&self.frame.plan, &self.beam_labels);
        outcome.staking = staking::set_out(request, plan, labels, piles, &outcome, work)?;
        seen(&analysis);
        if request.reaction_detail == Some(ReactionDetail::Table) {
            outcome.tabulate();
        }
        Ok(outcome)
    }

    fn listed(&self, request: &Request, piles: usize) -> Result<bool, Refusal> {
        let count = piles * self.loading.combinations.len();
        match request.reaction_detail {
            Some(ReactionDetail::Governing | ReactionDetail::Table) => Ok(false),
            None => Ok(count <= REACTIONS_LISTED),
            Some(ReactionDetail::All) if count <= REACTIONS_MAX => Ok(true),
            Some(ReactionDetail::All) => Err(Issue::new(
                "/reaction_detail",
                &refusals::TOO_MANY_REACTIONS,
                format!("{count} reactions"),
            )
            .limit(REACTIONS_MAX.to_string())
            .into()),
        }
    }
}

/// Rigid piles, and springs where every pile has a stiffness.
fn solve(frame: &Frame, piles: &[Pile], work: &mut Work) -> Result<Vec<Solved>, Refusal> {
    let places: Vec<Place> = piles.iter().map(|p| p.place).collect();
    let refuse = |fault| Refusal::of(fault_issues(frame, fault));
    let stiffness: Option<Vec<f64>> = piles.iter().map(Pile::spring).collect();
    if stiffness.is_some() {
        work.method(&methods::SPRING_SUPPORTS);
    }
    let out = Solved::each(frame, &places, stiffness.as_deref()).map_err(refuse)?;
    work.go_on()?;
    Ok(out)
}

/// What a fault of the network means for the request.
pub(super) fn fault_issues(frame: &Frame, fault: Fault) -> Vec<Issue> {
    match fault {
        Fault::TooLarge => vec![Issue::new(
            "/beams",
            &refusals::PLAN_TOO_INTERLINKED,
            "put piles where beams cross, or send parts of the plan",
        )],
        Fault::Mechanism { line } => frame.plan.runs[line]
            .beams()
            .into_iter()
            .map(|b| {
                Issue::new(
                    format!("/beams/{b}"),
                    &refusals::BEAM_MECHANISM,
                    "a straight run of it, or one it leans on, has fewer than two supports, or piles and beam are of such unlike stiffness that it turns freely as far as a double can tell",
                )
            })
            .collect(),
    }
}

fn levels(request: &Request, issues: &mut Vec<Issue>) {
    let single = request
        .pile_capacity
        .map(|c| (c.level, "/pile_capacity/level"));
    let types = request
        .pile_types
        .as_ref()
        .map(|t| (t.level, "/pile_types/level"));
    for (level, pointer) in [single, types].into_iter().flatten() {
        let detail = match (&request.design_basis, level) {
            (LayoutBasis::AllowableStress(_), CapacityLevel::Factored) => {
                "factored resistances beside `allowable_stress`"
            }
            (LayoutBasis::LimitStates(_), CapacityLevel::Allowable) => {
                "allowable capacities beside `limit_states`"
            }
            _ => continue,
        };
        issues.push(Issue::new(pointer, &BASIS_MIXED, detail));
    }
}

pub(super) fn rigidity(request: &Request, issues: &mut Vec<Issue>) {
    let springs = request.pile_stiffness.is_some()
        || matches!(&request.piles, PilePlacement::Given(g)
            if g.positions.iter().any(|p| p.stiffness.is_some() || p.founded_on_rock == Some(true)))
        || request
            .pile_types
            .iter()
            .flat_map(|t| &t.types)
            .any(|t| t.stiffness.is_some());
    let some = request.beams.iter().any(strength::rigidity_known);
    let torsion = request.beam_torsion == Some(BeamTorsion::Included);
    for (i, beam) in request.beams.iter().enumerate() {
        if torsion && beam.torsional_rigidity.is_none() {
            issues.push(Issue::new(
                format!("/beams/{i}"),
                &refusals::TORSIONAL_RIGIDITY_NEEDED,
                "`beam_torsion` is `included`",
            ));
        }
        let why = match (springs, some) {
            (true, _) => "piles have a stiffness",
            (false, _) if torsion => "`beam_torsion` is `included`",
            (false, true) => "other beams have one",
            (false, false) if beam.deflection_limit.is_some() => "it has a `deflection_limit`",
            (false, false) => continue,
        };
        if !strength::rigidity_known(beam) {
            issues.push(Issue::new(
                format!("/beams/{i}"),
                &refusals::RIGIDITY_NEEDED,
                why,
            ));
        }
    }
}

/// Every connected part of the plan needs a pile.
pub(super) fn supported(plan: &Plan, piles: &[Pile], issues: &mut Vec<Issue>) {
    let part = plan.connected();
    let mut held = vec![false; plan.runs.len()];
    for pile in piles {
        held[part[pile.place.run]] = true;
    }
    for (beam, parts) in plan.beam_parts.iter().enumerate() {
        if parts.iter().any(|p| !held[part[p.run]]) {
            issues.push(Issue::new(
                format!("/beams/{beam}"),
                &refusals::BEAM_UNSUPPORTED,
                "no pile stands on it or on a beam that is connected with it",
            ));
        }
    }
}
