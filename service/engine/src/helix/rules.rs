//! The rules a pile must meet at a depth: its loads on the design basis, punching, and
//! embedment. Each gives one utilisation; at most 1 is met.

use super::codes::checks;
use super::depths::{AtDepth, Movable};
use super::findings::RuleAtDepth;
use super::geometry::MINIMUM_EMBEDMENT_RATIO;
use super::pile::AxialDirection;
use super::request::Request;
use super::rule::DesignRule;
use super::solve::Solution;
use crate::catalogue::CheckDef;
use crate::contract::utilisation;
use crate::quantity::{Length, round9};

/// The rules in force.
pub(crate) struct DepthRules<'a> {
    pub design: &'a [(AxialDirection, DesignRule)],
    /// Least depth of the top helix as sent.
    pub top_depth: Option<Length>,
    /// Least depth of the top helix in diameters of the largest.
    pub top_ratio: f64,
    /// Least depth of the lowest helix as sent.
    pub lowest_depth: Option<Length>,
}

impl<'a> DepthRules<'a> {
    /// The rules of a request on its design basis.
    pub fn new(request: &Request, design: &'a [(AxialDirection, DesignRule)]) -> Self {
        let embedment = request.embedment_rules();
        Self {
            design,
            top_depth: embedment.top_helix_depth,
            top_ratio: match embedment.top_helix_ratio {
                Some(ratio) => ratio,
                None if request.pulls() => MINIMUM_EMBEDMENT_RATIO.value,
                None => 0.0,
            },
            lowest_depth: embedment.lowest_helix_depth,
        }
    }

    /// Every rule with its utilisation, infinite where nothing is there to meet it.
    fn each(
        &self,
        pile: &Movable,
        depth: Length,
        at: &AtDepth,
        mut tell: impl FnMut(&'static CheckDef, f64),
    ) {
        for (direction, rule) in self.design {
            let solution = match direction {
                AxialDirection::Compression => at.compression,
                AxialDirection::Tension => at.tension,
            };
            let Some(Solution { ultimate, held, .. }) = solution else {
                continue;
            };
            if let Some(u) = rule.worst_utilisation(ultimate) {
                tell(direction.check(), u);
            }
            if held < ultimate
                && let Some(u) = rule.worst_utilisation(held)
            {
                tell(&checks::PUNCHING, u);
            }
        }
        let top = depth - pile.span();
        let least = pile.largest() * self.top_ratio;
        let depths = [
            (
                &checks::EMBEDMENT,
                (self.top_ratio > 0.0).then_some(least),
                top,
            ),
            (&checks::TOP_DEPTH, self.top_depth, top),
            (&checks::LOWEST_DEPTH, self.lowest_depth, depth),
        ];
        for (check, least, there) in depths {
            if let Some(least) = least {
                let (ratio, _) = utilisation(least.si(), there.si());
                tell(check, ratio.unwrap_or(f64::INFINITY));
            }
        }
    }

    /// The highest utilisation at a depth, 0 where there is no rule, and one bit for each rule
    /// that is not met.
    pub fn worst(&self, pile: &Movable, depth: Length, at: &AtDepth) -> (f64, u32) {
        let (mut worst, mut failing) = (0.0_f64, 0);
        self.each(pile, depth, at, |check, u| {
            worst = worst.max(u);
            if !met(u) {
                failing |= bit(check);
            }
        });
        (worst, failing)
    }

    /// Every rule at a depth, as the answer carries it.
    pub fn list(&self, pile: &Movable, depth: Length, at: &AtDepth) -> Vec<RuleAtDepth> {
        let mut rules = Vec::new();
        self.each(pile, depth, at, |check, u| {
            rules.push(RuleAtDepth {
                rule: check.id.into(),
                utilisation_ratio: u.is_finite().then_some(u),
                met: met(u),
            });
        });
        rules
    }
}

/// Whether a utilisation is met, by the printed digits.
fn met(utilisation: f64) -> bool {
    round9(utilisation) <= 1.0
}

/// Place of a rule among all.
fn bit(check: &CheckDef) -> u32 {
    let all = [
        &checks::COMPRESSION,
        &checks::TENSION,
        &checks::PUNCHING,
        &checks::EMBEDMENT,
        &checks::TOP_DEPTH,
        &checks::LOWEST_DEPTH,
    ];
    let place = all.iter().position(|c| c.id == check.id);
    1 << place.unwrap_or(all.len())
}
