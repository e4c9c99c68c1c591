//! The questions of a request, put to the pile that can be moved: their faults, then their
//! answers. The questions themselves are in files of their own.

use super::curve::{curve, range_faults};
use super::depths::Movable;
use super::evaluate::wanted;
use super::expected_torque::TorqueLaw;
use super::findings::{
    DepthCurveFindings, ExpectedTorqueFindings, HelixSetsFindings, MinimumDepthFindings,
};
use super::minimum::{minimum_depth, search_range};
use super::outcome::AxialResistance;
use super::pile::AxialDirection;
use super::plates::from_the_top;
use super::request::Request;
use super::rule::DesignRule;
use super::rules::DepthRules;
use super::sets::{Trial, candidates, lightest};
use super::settings::Settings;
use crate::catalogue::refusals::MISSING_MEMBER;
use crate::contract::{Issue, Refusal, Work};
use crate::limits;
use crate::soil::Strata;

/// What was found.
#[derive(Default)]
pub(super) struct Answers {
    pub depth_curve: Option<DepthCurveFindings>,
    pub minimum_depth: Option<MinimumDepthFindings>,
    pub helix_sets: Option<HelixSetsFindings>,
    pub expected_torque: Option<ExpectedTorqueFindings>,
}

/// Whether anything is asked beside the one depth.
fn nothing_asked(request: &Request) -> bool {
    request.depth_curve.is_none()
        && request.minimum_depth.is_none()
        && request.helix_sets.is_none()
        && request.expected_torque.is_none()
}

/// Faults of list lengths.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    use crate::contract::list_length;
    if let Some(asked) = &request.helix_sets {
        let sets = "/helix_sets/sets";
        list_length(issues, sets, asked.sets.len(), 1, limits::HELIX_SETS);
        for (i, set) in asked.sets.iter().enumerate() {
            let at = format!("{sets}/{i}/helices");
            list_length(issues, at, set.helices.len(), 1, limits::HELICES);
        }
    }
}

fn directions(request: &Request) -> Vec<AxialDirection> {
    wanted(request.directions.unwrap_or_default()).collect()
}

fn movable<'a>(request: &'a Request, strata: &'a Strata, settings: &'a Settings) -> Movable<'a> {
    Movable::new(
        strata,
        &request.pile.shaft,
        from_the_top(&request.pile.helices),
        directions(request).into_iter(),
        settings,
    )
}

/// Faults of the questions in a whole profile with a pile that is possible.
pub(super) fn faults(request: &Request, strata: &Strata, settings: &Settings) -> Vec<Issue> {
    let mut issues = Vec::new();
    if nothing_asked(request) {
        return issues;
    }
    let pile = movable(request, strata, settings);
    if let Some(asked) = &request.depth_curve {
        range_faults(&pile, asked.from, asked.to, "/depth_curve", &mut issues);
    }
    let mut needs = |asked: bool, there: bool, at: &str, what: &str| {
        if asked && !there {
            issues.push(Issue::new(
                at,
                &MISSING_MEMBER,
                format!("`{what}` is needed"),
            ));
        }
    };
    let asked = request.minimum_depth.is_some();
    needs(asked, request.is_judged(), "/minimum_depth", "demand");
    let sets = request.helix_sets.is_some();
    needs(sets, asked, "/helix_sets", "minimum_depth");
    if let Some(asked) = &request.minimum_depth {
        search_range(asked, &pile, "/minimum_depth", &mut issues);
    }
    if let (Some(sets), Some(asked)) = (&request.helix_sets, &request.minimum_depth) {
        let before = issues.len();
        let found = candidates(sets, &request.pile.shaft, &mut issues);
        if issues.len() == before {
            for (i, candidate) in found.iter().enumerate() {
                let plates = from_the_top(&candidate.helices);
                let directions = directions(request).into_iter();
                let pile = Movable::new(strata, candidate.shaft, plates, directions, settings);
                let at = format!("/helix_sets/sets/{i}");
                search_range(asked, &pile, &at, &mut issues);
            }
        }
    }
    torque_law(request, &mut Work::default(), &mut issues);
    issues
}

fn torque_law(request: &Request, work: &mut Work, issues: &mut Vec<Issue>) -> Option<TorqueLaw> {
    let asked = request.expected_torque.as_ref()?;
    let direction = directions(request).into_iter().next()?;
    TorqueLaw::new(asked, &request.pile.shaft, direction, work, issues)
}

/// The answers of a request without faults; `resistances` are those of the pile as sent.
pub(super) fn answers(
    request: &Request,
    strata: &Strata,
    settings: &Settings,
    resistances: [Option<&AxialResistance>; 2],
    work: &mut Work,
) -> Result<Answers, Refusal> {
    let mut answers = Answers::default();
    if nothing_asked(request) {
        return Ok(answers);
    }
    let torque = torque_law(request, work, &mut Vec::new());
    if let Some(law) = &torque
        && let Some(first) = resistances.into_iter().flatten().next()
    {
        answers.expected_torque = Some(law.findings(first.ultimate, work));
    }
    let rules = design_rules(request);
    let mut pile = movable(request, strata, settings);
    if let Some(asked) = &request.depth_curve {
        answers.depth_curve = Some(curve(asked, &mut pile, &rules, torque.as_ref(), work)?);
    }
    let Some(asked) = &request.minimum_depth else {
        return Ok(answers);
    };
    let rules = DepthRules::new(request, &rules);
    if let Some(range) = search_range(asked, &pile, "/minimum_depth", &mut Vec::new()) {
        let found = minimum_depth(range, &mut pile, &rules, torque.as_ref(), work)?;
        answers.minimum_depth = Some(found);
    }
    if let Some(sets) = &request.helix_sets {
        let found = candidates(sets, &request.pile.shaft, &mut Vec::new());
        let trial = Trial {
            strata,
            settings,
            directions: &directions(request),
            rules: &rules,
            search: asked,
        };
        answers.helix_sets = Some(lightest(sets, &found, &trial, work)?);
    }
    Ok(answers)
}

/// The rules of the design basis, what they warn of having been told with the pile as sent.
fn design_rules(request: &Request) -> Vec<(AxialDirection, DesignRule)> {
    let Some(basis) = &request.design_basis else {
        return Vec::new();
    };
    let demand = request.demand.as_ref();
    let rule = |direction| {
        let rule = DesignRule::new(basis, direction, demand, &mut Work::default())?;
        Some((direction, rule))
    };
    directions(request).into_iter().filter_map(rule).collect()
}
