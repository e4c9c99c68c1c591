//! What the answer claims of its piles, in sentences: how many, whether fewer or cheaper ones
//! are possible, what would have to give where no layout does.

use bearwell_engine::layout::{
    Infeasible, Outcome, PileCost, RelaxedLimit, SearchReport, SymmetryReason, SymmetryReport,
};
use bearwell_engine::quantity::{Shown, System};

use crate::panel::Subject;
use crate::words;

/// Most ways out, and most types, that are told.
const TOLD: usize = 2;

/// Count, proof, types, cost, symmetry, ways out.
pub fn claims(s: Subject) -> Vec<String> {
    let outcome = &s.answer.result;
    let mut texts = vec![count(outcome)];
    texts.extend(types(outcome));
    if let Some(search) = &outcome.search {
        texts.extend(search.symmetry.as_ref().map(symmetry));
        let bare = search.without_pile.as_ref().map_or(0, Vec::len);
        if bare > 0 {
            texts.push(format!(
                "Corners and junctions without a pile: {}.",
                words::count(bare)
            ));
        }
        if let Some(why) = &search.infeasible {
            texts.extend(ways_out(why, s.system));
        }
    }
    texts
}

/// How many piles, and what is proven of that.
fn count(outcome: &Outcome) -> String {
    let plural = if outcome.pile_count == 1 { "" } else { "s" };
    let count = format!("{} pile{plural}", words::count(outcome.pile_count as usize));
    match &outcome.search {
        None => format!("{count} at given places."),
        Some(search) => proof(&count, search),
    }
}

fn proof(count: &str, r: &SearchReport) -> String {
    if !r.feasible || r.infeasible.is_some() {
        return if r.infeasible.as_ref().is_some_and(|why| why.proven) {
            format!("{count}: the best found; it is proven that no layout keeps all limits.")
        } else {
            format!("{count}: the best found; none was found that keeps all limits.")
        };
    }
    match (&r.cost, r.proven_minimal) {
        (Some(c), true) => format!(
            "{count} for {}, proven to be the least cost.",
            money(&c.total_cost)
        ),
        (Some(c), false) => format!(
            "{count} for {}; less than {} is impossible, gap {}, least cost not proven.",
            money(&c.total_cost),
            money(&c.lower_bound_cost),
            money(&c.gap_cost)
        ),
        (None, true) => format!("{count}, proven to be the fewest."),
        (None, false) => format!(
            "{count}; fewer than {} are impossible, fewest not proven.",
            r.lower_bound_count
        ),
    }
}

/// A sum of money.
fn money(cost: &PileCost) -> String {
    let value = words::grouped(cost.value, 2);
    match &cost.currency {
        Some(currency) => format!("{value} {currency}"),
        None => value,
    }
}

/// How many there are of each type, and what they cost.
fn types(outcome: &Outcome) -> Option<String> {
    let used: Vec<_> = outcome
        .type_counts
        .iter()
        .flatten()
        .filter(|t| t.pile_count > 0)
        .collect();
    if used.is_empty() {
        return None;
    }
    let mut names: Vec<String> = used
        .iter()
        .take(2 * TOLD)
        .map(|t| format!("{} of {}", words::count(t.pile_count as usize), t.pile_type))
        .collect();
    if used.len() > 2 * TOLD {
        names.push(format!("{} further types", used.len() - 2 * TOLD));
    }
    let cost = outcome
        .total_cost
        .as_ref()
        .map_or(String::new(), |c| format!("; cost {}", money(c)));
    Some(format!("Types: {}{cost}.", names.join(", ")))
}

/// Whether the layout mirrors onto itself.
fn symmetry(report: &SymmetryReport) -> String {
    if report.symmetric {
        return "The layout is its own mirror image.".to_owned();
    }
    let why = match report.reason {
        SymmetryReason::PlanNotSymmetric => "the plan is not",
        SymmetryReason::NoneKeepsTheLimits => "none of that count keeps the limits",
        SymmetryReason::Infeasible => "no layout keeps the limits",
        SymmetryReason::NoneFound | SymmetryReason::AsFound | SymmetryReason::Preferred => {
            "none was found"
        }
    };
    format!("Not its own mirror image: {why}.")
}

/// What would have to give, the first ways.
fn ways_out(why: &Infeasible, system: System) -> Vec<String> {
    if why.relaxations.is_empty() {
        return vec!["No single limit was found that would do alone by giving way.".to_owned()];
    }
    let mut texts: Vec<String> = why
        .relaxations
        .iter()
        .take(TOLD)
        .map(|r| {
            format!(
                "Would do alone: {} {} instead of {}, {} piles.",
                limit(r.limit),
                shown(&r.to, system),
                shown(&r.from, system),
                r.pile_count
            )
        })
        .collect();
    if why.relaxations.len() > TOLD {
        let more = why.relaxations.len() - TOLD;
        texts.push(format!("and {more} further ways in the answer."));
    }
    texts
}

/// A number with its unit.
fn shown(value: &Shown, system: System) -> String {
    let (number, unit) = value.printed(system);
    let number = words::trimmed(number, 3);
    match unit {
        "1" => number,
        unit => format!("{number} {unit}"),
    }
}

/// A limit as it is written.
fn limit(limit: RelaxedLimit) -> &'static str {
    match limit {
        RelaxedLimit::PileCompression => "pile compression",
        RelaxedLimit::PileTension => "pile tension",
        RelaxedLimit::BeamStrength => "beam strength times",
        RelaxedLimit::MaxSpacing => "greatest spacing",
        RelaxedLimit::MinSpacing => "least spacing",
        RelaxedLimit::MaxOverhang => "greatest overhang",
    }
}
