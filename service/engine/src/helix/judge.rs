//! What a design basis makes of the ultimate resistances: the factors in force, the
//! capacities that may be used, and the loads judged against them. The rule itself is in
//! `rule.rs`, the equations in `design.rs` and `crate::basis`.

use super::codes::checks;
use super::design::ultimates;
use super::outcome::{AxialResistance, HelixFactor, UltimateItem};
use super::pile::AxialDirection;
use super::request::Request;
use super::rule::DesignRule;
use crate::basis::codes::warnings::FIXED_RESISTANCES_OVER_DEPTH;
use crate::contract::Work;

/// Factors and ultimate loads of both directions, as the answer carries them.
#[derive(Default)]
pub(super) struct UsableCapacities {
    pub factors: Vec<HelixFactor>,
    pub ultimates: Vec<UltimateItem>,
    /// The rule of the design basis by direction, where it has one.
    pub rules: Vec<(AxialDirection, DesignRule)>,
}

impl UsableCapacities {
    /// Fills in the design capacity of a resistance and judges the load against it.
    pub fn add(&mut self, request: &Request, resistance: &mut AxialResistance, work: &mut Work) {
        let basis = request.design_basis.as_ref();
        let direction = resistance.direction;
        if direction == AxialDirection::Compression {
            self.ultimates = ultimates(resistance.ultimate, basis);
        }
        let demand = request.demand.as_ref();
        let rule = basis.and_then(|b| DesignRule::new(b, direction, demand, work));
        let Some(rule) = rule else {
            return;
        };
        self.factors.extend_from_slice(rule.factors());
        if request.depth_curve.is_some() && rule.holds_fixed_resistances() {
            work.warn(
                &FIXED_RESISTANCES_OVER_DEPTH,
                format!("capacities in {} over depth", direction.name()),
            );
        }
        work.trace.about(|| format!("pile in {}", direction.name()));
        let design = rule.design(resistance.ultimate, &mut work.trace);
        work.trace.about(String::new);
        let pile = request.pile.name();
        rule.judge(direction.check(), pile, resistance, &design, work);
        judge_punching(&rule, pile, resistance, work);
        resistance.design = Some(design);
        self.rules.push((direction, rule));
    }
}

/// The load against the capacity with each helix held at what weaker soil below it takes,
/// where there is such soil.
fn judge_punching(rule: &DesignRule, pile: &str, resistance: &AxialResistance, work: &mut Work) {
    let helices = &resistance.individual_bearing.helices;
    if !rule.follows_calculation() || helices.iter().all(|h| h.punching.is_none()) {
        return;
    }
    let held = resistance
        .ultimate_by_punching
        .unwrap_or(resistance.ultimate);
    work.trace
        .about(|| "pile in compression, held by punching".to_owned());
    let design = rule.design(held, &mut work.trace);
    work.trace.about(String::new);
    rule.judge(&checks::PUNCHING, pile, resistance, &design, work);
}
