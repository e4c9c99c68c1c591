//! The least depth of the lowest helix at which every rule is met: a scan of the range with
//! every depth at which something changes, and bisection of the ends of what passes.

use std::borrow::Cow;

use super::codes::methods;
use super::curve::range_faults;
use super::depths::{LEAST_HELIX_DEPTH, Movable};
use super::expected_torque::TorqueLaw;
use super::findings::{AtDepthFindings, DepthRange, MinimumDepthFindings};
use super::questions::MinimumDepth;
use super::rules::{DepthRules, met};
use crate::contract::{Issue, Refusal, Work};
use crate::quantity::Length;

/// Equal steps of the scan.
const SCAN_STEPS: u32 = 200;
/// Bisections of one end.
const BISECTIONS: u32 = 40;
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

/// The deepest depth without faults below one that has none.
fn deepest(pile: &Movable, from: Length) -> Result<Length, Vec<Issue>> {
    let faults = pile.faults(from);
    if !faults.is_empty() {
        return Err(faults);
    }
    let (mut good, mut bad) = (from, pile.ground_depth() + Length::from_si(MILLIMETRE));
    for _ in 0..BISECTIONS {
        let middle = (good + bad) / 2.0;
        if pile.faults(middle).is_empty() {
            good = middle;
        } else {
            bad = middle;
        }
    }
    Ok(good)
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
    let mut passing: Vec<DepthRange> = Vec::new();
    let mut nearest = (from, f64::INFINITY);
    let mut last: Option<(Length, bool)> = None;
    for depth in scan(search.pile, from, to) {
        work.go_on()?;
        let worst = search.worst(depth);
        if worst < nearest.1 {
            nearest = (depth, worst);
        }
        let passes = met(worst);
        match (last, passes) {
            (Some((above, false)), true) => passing.push(DepthRange {
                from: search.end(above, depth, true),
                to: depth,
            }),
            (None, true) => passing.push(DepthRange {
                from: depth,
                to: depth,
            }),
            (Some((_, true)), true) => grow(&mut passing, depth),
            (Some((above, true)), false) => {
                let end = search.end(depth, above, false);
                grow(&mut passing, end);
            }
            (_, false) => {}
        }
        last = Some((depth, passes));
    }
    let depth = passing.first().map(|range| range.from);
    passing.truncate(RANGES_TOLD);
    let at = depth.unwrap_or(nearest.0);
    Ok(MinimumDepthFindings {
        searched_from: from,
        searched_to: to,
        depth,
        governed_by: depth.map_or_else(Vec::new, |d| search.governing(d, from)),
        passing,
        at: search.findings(at, torque),
    })
}

fn grow(passing: &mut [DepthRange], to: Length) {
    if let Some(range) = passing.last_mut() {
        range.to = to;
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
    fn worst(&mut self, depth: Length) -> f64 {
        let at = self.pile.at(depth);
        self.rules.worst(self.pile, depth, &at)
    }

    /// The end of a range that passes, between a depth that fails and one that passes, taken
    /// to the next whole millimetre that still passes.
    fn end(&mut self, fails: Length, passes: Length, upper: bool) -> Length {
        let (mut bad, mut good) = (fails, passes);
        for _ in 0..BISECTIONS {
            let middle = (bad + good) / 2.0;
            if met(self.worst(middle)) {
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
        if inside && met(self.worst(rounded)) {
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
