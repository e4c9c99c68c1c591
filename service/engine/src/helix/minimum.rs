//! The least depth of the lowest helix at which every rule is met: a scan of the range with
//! every depth at which something changes, and bisection of the ends of what passes.

use std::borrow::Cow;

use super::codes::methods;
use super::curve::range_faults;
use super::depths::{LEAST_HELIX_DEPTH, Movable};
use super::expected_torque::TorqueLaw;
use super::findings::{AtDepthFindings, DepthRange, MinimumDepthFindings};
use super::questions::MinimumDepth;
use super::rules::DepthRules;
use crate::contract::{Issue, Refusal, Work};
use crate::quantity::Length;

/// Equal steps of the scan.
const SCAN_STEPS: u32 = 200;
/// Bisections of one end.
const BISECTIONS: u32 = 40;
/// Times an interval is halved whose ends fail by different rules.
const SPLITS: u32 = 12;
/// Ranges told.
const RANGES_TOLD: usize = 20;
/// What a depth is taken to, m.
const MILLIMETRE: f64 = 1e-3;

/// The range to search; faults are added at `at` and below.
pub(crate) fn search_range(
    asked: &MinimumDepth,
    pile: &Movable,
    at: &str,
    issues: &mut Vec<Issue>,
) -> Option<(Length, Length)> {
    let from = asked.from.unwrap_or(pile.span() + LEAST_HELIX_DEPTH);
    let to = match asked.to {
        Some(to) => to,
        None => match deepest(pile, from) {
            Ok(to) => to,
            Err(faults) => {
                let placed = |issue| Issue {
                    pointer: at.to_owned(),
                    ..issue
                };
                issues.extend(faults.into_iter().map(placed));
                return None;
            }
        },
    };
    let before = issues.len();
    range_faults(pile, from, to, at, issues);
    (issues.len() == before).then_some((from, to))
}

/// The deepest depth down to which there are no faults from one that has none.
fn deepest(pile: &Movable, from: Length) -> Result<Length, Vec<Issue>> {
    let faults = pile.faults(from);
    if !faults.is_empty() {
        return Err(faults);
    }
    let (mut good, mut bad) = (from, pile.ground_depth() + Length::from_si(MILLIMETRE));
    for _ in 0..BISECTIONS {
        let middle = (good + bad) / 2.0;
        if pile.faults_between(from, middle).is_empty() {
            good = middle;
        } else {
            bad = middle;
        }
    }
    // a depth in use is a whole millimetre
    let whole = Length::from_si((good.si() / MILLIMETRE + 1e-6).floor() * MILLIMETRE);
    Ok(if whole > from { whole } else { good })
}

/// The search of a range without faults.
pub(crate) fn minimum_depth(
    (from, to): (Length, Length),
    pile: &mut Movable,
    rules: &DepthRules,
    torque: Option<&TorqueLaw>,
    work: &mut Work,
) -> Result<MinimumDepthFindings, Refusal> {
    work.method(&methods::MINIMUM_DEPTH);
    let mut search = Search { pile, rules };
    let mut found = Found::default();
    let mut last: Option<Looked> = None;
    for depth in scan(search.pile, from, to) {
        work.go_on()?;
        let here = search.look(depth);
        if let Some(above) = last {
            search.between(above, here, SPLITS, &mut found);
        }
        search.add(last, here, &mut found);
        last = Some(here);
    }
    let Found {
        mut passing,
        nearest,
        ..
    } = found;
    let nearest = nearest.map_or(from, |(depth, _)| depth);
    let depth = passing.first().map(|range| range.from);
    passing.truncate(RANGES_TOLD);
    let at = depth.unwrap_or(nearest);
    Ok(MinimumDepthFindings {
        searched_from: from,
        searched_to: to,
        depth,
        governed_by: depth.map_or_else(Vec::new, |d| search.governing(d, from)),
        passing,
        at: search.findings(at, torque),
    })
}

/// What was found on the way down.
#[derive(Default)]
struct Found {
    passing: Vec<DepthRange>,
    /// Depth and utilisation nearest to passing.
    nearest: Option<(Length, f64)>,
}

impl Found {
    fn grow(&mut self, to: Length) {
        if let Some(range) = self.passing.last_mut() {
            range.to = to;
        }
    }
}

/// A depth that was looked at.
#[derive(Clone, Copy)]
struct Looked {
    depth: Length,
    worst: f64,
    /// Rules that fail there, one bit each.
    failing: u32,
}

impl Looked {
    fn passes(&self) -> bool {
        self.failing == 0
    }
}

/// The depths of the scan, in order, both ends included.
fn scan(pile: &Movable, from: Length, to: Length) -> Vec<Length> {
    let step = (to - from) / f64::from(SCAN_STEPS);
    let mut depths = pile.breaks(from, to);
    depths.extend((1..SCAN_STEPS).map(|k| from + step * f64::from(k)));
    depths.extend([from, to]);
    depths.sort_by(|a, b| a.si().total_cmp(&b.si()));
    depths
}

struct Search<'p, 'a, 'r> {
    pile: &'p mut Movable<'a>,
    rules: &'r DepthRules<'r>,
}

impl Search<'_, '_, '_> {
    fn look(&mut self, depth: Length) -> Looked {
        let at = self.pile.at(depth);
        let (worst, failing) = self.rules.worst(self.pile, depth, &at);
        Looked {
            depth,
            worst,
            failing,
        }
    }

    fn passes(&mut self, depth: Length) -> bool {
        self.look(depth).passes()
    }

    /// Looks between two depths that fail by different rules: one rule may come to be met
    /// before another ceases to be.
    fn between(&mut self, above: Looked, below: Looked, splits: u32, found: &mut Found) {
        let apart = above.failing & below.failing == 0;
        if above.passes() || below.passes() || !apart || splits == 0 {
            return;
        }
        let middle = self.look((above.depth + below.depth) / 2.0);
        self.between(above, middle, splits - 1, found);
        if middle.passes() {
            self.add(Some(above), middle, found);
            let to = self.end(below.depth, middle.depth, false);
            found.grow(to);
        }
        self.between(middle, below, splits - 1, found);
    }

    /// Takes a depth in, the one before it known.
    fn add(&mut self, last: Option<Looked>, here: Looked, found: &mut Found) {
        if found.nearest.is_none_or(|(_, worst)| here.worst < worst) {
            found.nearest = Some((here.depth, here.worst));
        }
        match (last.map(|l| (l.depth, l.passes())), here.passes()) {
            (Some((above, false)), true) => {
                let from = self.end(above, here.depth, true);
                found.passing.push(DepthRange {
                    from,
                    to: here.depth,
                });
            }
            (None, true) => found.passing.push(DepthRange {
                from: here.depth,
                to: here.depth,
            }),
            (Some((_, true)), true) => found.grow(here.depth),
            (Some((above, true)), false) => {
                let to = self.end(here.depth, above, false);
                found.grow(to);
            }
            (_, false) => {}
        }
    }

    /// The end of a range that passes, between a depth that fails and one that passes, taken
    /// to the next whole millimetre that still passes.
    fn end(&mut self, fails: Length, passes: Length, upper: bool) -> Length {
        let (mut bad, mut good) = (fails, passes);
        for _ in 0..BISECTIONS {
            let middle = (bad + good) / 2.0;
            if self.passes(middle) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        let parts = good.si() / MILLIMETRE;
        let whole = if upper { parts.ceil() } else { parts.floor() };
        let rounded = Length::from_si(whole * MILLIMETRE);
        let inside = if upper {
            rounded <= passes
        } else {
            rounded >= passes
        };
        if inside && self.passes(rounded) {
            rounded
        } else {
            good
        }
    }

    /// What is not met a millimetre above the least depth.
    fn governing(&mut self, depth: Length, from: Length) -> Vec<Cow<'static, str>> {
        let above = depth - Length::from_si(MILLIMETRE);
        if above < from {
            return Vec::new();
        }
        let at = self.pile.at(above);
        let rules = self.rules.list(self.pile, above, &at);
        let failed = rules.into_iter().filter(|rule| !rule.met);
        failed.map(|rule| rule.rule).collect()
    }

    fn findings(&mut self, depth: Length, torque: Option<&TorqueLaw>) -> AtDepthFindings {
        let at = self.pile.at(depth);
        AtDepthFindings {
            depth,
            top_helix_depth: depth - self.pile.span(),
            rules: self.rules.list(self.pile, depth, &at),
            compression_ultimate: at.compression.map(|s| s.ultimate),
            tension_ultimate: at.tension.map(|s| s.ultimate),
            torque: torque.map(|law| law.at(&at)),
        }
    }
}
