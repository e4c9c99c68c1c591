//! Setting out: piles in the site grid, along string lines and across corners. Positions come
//! from the analysis or the search; nothing is moved here.

mod corners;
mod faces;
mod fix;
mod lines;
mod transform;

use std::collections::BTreeMap;

use super::codes::{methods, refusals, warnings};
use super::outcome::{
    BeamEdges, LayoutBeam, LayoutPile, LineEnd, LineFaces, MeasuredTo, Outcome, Stake, StakingGrid,
    StakingOutcome,
};
use super::plan::{Place, Plan, Point, TOLERANCE};
use super::request::{GridFix, PlanPoint, Request, SiteGrid, Staking, TapeText};
use super::site::{Pile, along_runs};
use crate::catalogue::refusals::DUPLICATE_LABEL;
use crate::contract::{Issue, Refusal, Work, list_length, none_of};
use crate::limits::PILES;
use crate::quantity::{Length, Size};
use crate::trace::Trace;

/// Piles of which the working is shown.
const STEPS_MAX: usize = 200;

/// Faults in the lengths of its lists.
pub(super) fn lengths(staking: &Staking, issues: &mut Vec<Issue>) {
    let tops = staking.pile_tops.as_ref().map_or(0, Vec::len);
    list_length(issues, "/staking/pile_tops", tops, 0, PILES);
}

/// Faults that need no analysis.
pub(super) fn faults(staking: &Staking, issues: &mut Vec<Issue>) {
    let mut first: BTreeMap<&str, usize> = BTreeMap::new();
    for (i, top) in staking.pile_tops.iter().flatten().enumerate() {
        if let Some(other) = first.get(top.pile.as_str()) {
            issues.push(Issue::new(
                format!("/staking/pile_tops/{i}/pile"),
                &DUPLICATE_LABEL,
                format!("as number {other} of the list"),
            ));
        } else {
            first.insert(top.pile.as_str(), i);
        }
    }
    if let Some(grid) = &staking.grid {
        let tolerance = given_tolerance(grid).unwrap_or(fix::CONTROL_TOLERANCE.value);
        fix::of(grid, tolerance, &mut Trace::off(), issues);
    }
}

/// Elevations of piles that are not there. Which are there is known once they are placed.
pub(super) fn strangers(staking: &Staking, piles: &[Pile], issues: &mut Vec<Issue>) {
    let known: BTreeMap<&str, ()> = piles.iter().map(|p| (p.label.as_str(), ())).collect();
    for (i, top) in staking.pile_tops.iter().flatten().enumerate() {
        if !known.contains_key(top.pile.as_str()) {
            issues.push(Issue::new(
                format!("/staking/pile_tops/{i}/pile"),
                &refusals::PILE_TOP_UNKNOWN_PILE,
                format!("`{}` is none of the {} piles", top.pile, piles.len()),
            ));
        }
    }
}

fn given_tolerance(grid: &SiteGrid) -> Option<Size> {
    match &grid.fix {
        GridFix::ControlPoints(c) => c.tolerance,
        GridFix::Origin(_) => None,
    }
}

/// Sets the piles out, with what the outcome says of types and edges, where the request asks for it.
pub(super) fn set_out(
    request: &Request,
    plan: &Plan,
    beam_labels: &[String],
    piles: &[Pile],
    outcome: &Outcome,
    work: &mut Work,
) -> Result<Option<StakingOutcome>, Refusal> {
    let Some(staking) = &request.staking else {
        return Ok(None);
    };
    let mut issues = Vec::new();
    strangers(staking, piles, &mut issues);
    none_of(issues)?;
    work.method(&methods::STAKING);
    let grid = grid(staking, work)?;
    let places: Vec<Place> = piles.iter().map(|p| p.place).collect();
    let stakes = Stakes {
        plan,
        beam_labels,
        beams: &outcome.beams,
        piles,
        along: along_runs(plan, &places),
        grid: grid.as_ref(),
        tape: staking.tape,
    };
    short_baseline(&stakes, work);
    let points = stakes.points(staking, &outcome.piles, &mut work.trace);
    work.go_on()?;
    let string_lines = lines::lines(&stakes, staking.string_line_offset, work)?;
    let frames = corners::frames(&stakes, &mut work.trace);
    let corner_ties = corners::ties(&stakes);
    Ok(Some(StakingOutcome {
        measured_to: MeasuredTo::PileCentreOnBeamCentreLine,
        tape: staking.tape,
        points,
        string_lines,
        frames,
        corner_ties,
        grid,
    }))
}

fn grid(staking: &Staking, work: &mut Work) -> Result<Option<StakingGrid>, Refusal> {
    let Some(grid) = &staking.grid else {
        return Ok(None);
    };
    let tolerance = match (&grid.fix, given_tolerance(grid)) {
        (GridFix::ControlPoints(_), None) => work.take(&fix::CONTROL_TOLERANCE),
        (_, given) => given.unwrap_or_default(),
    };
    let mut issues = Vec::new();
    let found = fix::of(grid, tolerance, &mut work.trace, &mut issues);
    none_of(issues)?;
    Ok(found)
}

/// Warns where piles lie farther from the middle of the control points than these from each
/// other: an error of direction grows on the way there.
fn short_baseline(stakes: &Stakes<'_>, work: &mut Work) {
    let Some(grid) = stakes.grid else {
        return;
    };
    let Some(control) = &grid.control else {
        return;
    };
    let middle = &grid.anchor.plan;
    let far = |p: &Pile| {
        let at = stakes.outside(stakes.plan.point_of(&p.place));
        let (dx, dy) = (at.x - middle.x, at.y - middle.y);
        (dx.si() * dx.si() + dy.si() * dy.si()).sqrt()
    };
    let mut farthest: Option<(f64, &Pile)> = None;
    for pile in stakes.piles {
        let d = far(pile);
        if farthest.is_none_or(|f| d > f.0) {
            farthest = Some((d, pile));
        }
    }
    if let Some((d, pile)) = farthest
        && d > control.plan_distance.si() + TOLERANCE
    {
        let told = |v: f64| Length::ROLE.in_both_systems(v);
        work.warn(
            &warnings::CONTROL_BASELINE_SHORT,
            format!(
                "the control points are {} apart, pile {} is {} from their middle",
                told(control.plan_distance.si()),
                pile.label,
                told(d)
            ),
        );
    }
}

/// What all parts of the staking look at.
struct Stakes<'a> {
    plan: &'a Plan,
    beam_labels: &'a [String],
    beams: &'a [LayoutBeam],
    piles: &'a [Pile],
    /// Piles along each run, by place.
    along: Vec<Vec<(f64, usize)>>,
    grid: Option<&'a StakingGrid>,
    tape: TapeText,
}

impl Stakes<'_> {
    fn taped(&self, length: Length) -> String {
        lines::taped(length, self.tape)
    }

    fn outside(&self, point: Point) -> PlanPoint {
        let p = self.plan.outside(point);
        PlanPoint {
            x: Length::from_si(p.x),
            y: Length::from_si(p.y),
        }
    }

    fn beams_of(&self, run: usize) -> Vec<String> {
        let beams = self.plan.runs[run].beams().into_iter();
        beams.map(|b| self.beam_labels[b].clone()).collect()
    }

    /// The faces along a run, where every beam of it has edges.
    fn faces(&self, run: usize) -> Option<LineFaces> {
        let r = &self.plan.runs[run];
        let all: Option<Vec<&[BeamEdges]>> = r
            .beams()
            .into_iter()
            .map(|b| self.beams.get(b)?.edges.as_deref())
            .collect();
        let line = faces::Line {
            start: self.plan.outside(r.start),
            direction: r.direction,
            length: r.length,
        };
        faces::faces(line, all?.into_iter().flatten())
    }

    /// A place on the plan without a pile.
    fn place(&self, point: Point) -> LineEnd {
        let at = self.outside(point);
        LineEnd {
            at,
            pile: None,
            site: self.grid.map(|g| g.site_of(&at)),
        }
    }

    /// A place on a run with the pile that stands there.
    fn end(&self, run: usize, at: f64) -> LineEnd {
        let own = self.along[run].iter();
        let mut near = own.filter(|(place, _)| (place - at).abs() <= TOLERANCE);
        LineEnd {
            pile: near.next().map(|(_, p)| self.piles[*p].label.clone()),
            ..self.place(self.plan.runs[run].point(at))
        }
    }

    /// An end of some run with the pile that stands there.
    fn corner(&self, point: Point) -> LineEnd {
        let ends = |r: usize| {
            let run = &self.plan.runs[r];
            [0.0, run.length].map(|at| (r, at, run.point(at)))
        };
        let mut all = (0..self.plan.runs.len()).flat_map(ends);
        match all.find(|(_, _, p)| p.distance(point) <= TOLERANCE) {
            Some((run, at, _)) => self.end(run, at),
            None => self.place(point),
        }
    }

    fn points(&self, staking: &Staking, rows: &[LayoutPile], trace: &mut Trace) -> Vec<Stake> {
        let tops = staking.pile_tops.iter().flatten();
        let tops: BTreeMap<&str, Length> = tops.map(|t| (t.pile.as_str(), t.elevation)).collect();
        let mut off = Trace::off();
        let mut out = Vec::with_capacity(self.piles.len());
        for (i, pile) in self.piles.iter().enumerate() {
            let at = self.outside(self.plan.point_of(&pile.place));
            let shown = if i < STEPS_MAX { &mut *trace } else { &mut off };
            shown.about(|| format!("stake of pile {}", pile.label));
            let own = tops.get(pile.label.as_str()).copied();
            let elevation = own.or(staking.pile_top);
            out.push(Stake {
                label: pile.label.clone(),
                tags: pile.tags.clone(),
                description: match rows.get(i).and_then(|r| r.pile_type.as_deref()) {
                    Some(kind) => format!("pile {kind}"),
                    None => "pile".to_owned(),
                },
                at,
                x_text: self.taped(at.x),
                y_text: self.taped(at.y),
                site: self.grid.map(|g| g.shown(&at, shown)),
                elevation,
                elevation_text: elevation
                    .zip(self.grid)
                    .map(|(e, g)| transform::text(e, g.unit)),
            });
        }
        trace.about(String::new);
        out
    }
}
