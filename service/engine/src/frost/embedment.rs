//! Depth of helices and tip against every rule: which apply, which governs, what pile
//! length follows.

use super::codes::{checks, methods, warnings};
use super::constants::{DIAMETERS, FROST_MARGIN, TORQUE_DIAMETERS};
use super::equations::{diameters_depth, margin_depth};
use super::ground::Ground;
use super::outcome::{EmbedmentOutcome, EmbedmentRule, EmbedmentRuleId};
use super::request::{EmbedmentRules, PilePurpose, Request};
use super::tension;
use crate::catalogue::CheckDef;
use crate::contract::{Check, SubjectKind, Work};
use crate::quantity::Length;
use crate::source::{
    BEARWELL_CHOICE, CALLER, FROST_MARGIN_PRACTICE, OBC_DEPTH_OF_FOUNDATIONS, Reference,
    TOP_HELIX_5D, TOP_HELIX_12D,
};

/// One rule for the top helix, with the check that judges it.
struct Rule {
    id: EmbedmentRuleId,
    check: &'static CheckDef,
    depth: Length,
    source: &'static Reference,
}

/// Judges helices and tip, and tells what depth and length would do.
pub fn judge(request: &Request, ground: &Ground, work: &mut Work) -> EmbedmentOutcome {
    work.method(&methods::EMBEDMENT_RULES);
    if request.active_depth.is_some() && request.swelling.is_none() {
        work.warn(
            &warnings::SWELL_UPLIFT_NOT_COVERED,
            "the active zone counts for the depth of the top helix only; uplift by swelling soil on the shaft and the beam is not computed without `swelling`",
        );
    }
    let rules = rules(request, ground, work);
    helices_below_frost(ground, work);
    for rule in &rules {
        work.check(
            Check::at_least(rule.check, rule.depth, ground.top(), rule.source)
                .subject(SubjectKind::Helix, &ground.helices[0].label),
        );
    }
    let by_frost = &rules[0];
    work.check(
        Check::at_least(
            &checks::TIP_FROST_MARGIN,
            by_frost.depth,
            ground.tip,
            by_frost.source,
        )
        .subject(SubjectKind::Pile, request.pile.name()),
    );
    let own = request.embedment.unwrap_or_default();
    summed_up(rules, purpose(request, own), ground)
}

/// The rules that apply, frost first.
fn rules(request: &Request, ground: &Ground, work: &mut Work) -> Vec<Rule> {
    let own = request.embedment.unwrap_or_default();
    let largest = ground.largest();
    let margin = own.frost_margin.unwrap_or_else(|| work.take(&FROST_MARGIN));
    let margin_source = sourced(own.frost_margin, &FROST_MARGIN_PRACTICE);
    let factor = own
        .diameters_factor
        .unwrap_or_else(|| work.take(&DIAMETERS));
    let factor_source = sourced(own.diameters_factor, &TOP_HELIX_5D);
    let trace = &mut work.trace;
    trace.about(|| "embedment by frost".to_owned());
    let mut rules = vec![Rule {
        id: EmbedmentRuleId::FrostMargin,
        check: &checks::TOP_HELIX_FROST_MARGIN,
        depth: margin_depth(ground.base, margin, margin_source, trace),
        source: margin_source,
    }];
    trace.about(|| "embedment by diameters".to_owned());
    rules.push(Rule {
        id: EmbedmentRuleId::Diameters,
        check: &checks::TOP_HELIX_DIAMETERS,
        depth: diameters_depth(ground.cold_surface, factor, largest, factor_source, trace),
        source: factor_source,
    });
    if purpose(request, own) == Some(PilePurpose::TensionByTorque) {
        let factor = work.take(&TORQUE_DIAMETERS);
        let trace = &mut work.trace;
        trace.about(|| "embedment for tension by torque".to_owned());
        rules.push(Rule {
            id: EmbedmentRuleId::TorqueDiameters,
            check: &checks::TOP_HELIX_TORQUE_DIAMETERS,
            depth: diameters_depth(ground.cold_surface, factor, largest, &TOP_HELIX_12D, trace),
            source: &TOP_HELIX_12D,
        });
    }
    rules.extend(by_ground(request, own, work));
    rules
}

/// The rules by fill, active zone and soil that collapses.
fn by_ground(request: &Request, own: EmbedmentRules, work: &mut Work) -> Vec<Rule> {
    let trace = &mut work.trace;
    let mut rules = Vec::new();
    let mut add = |id, about: &'static str, check, base: Option<Length>, margin: Option<Length>| {
        let Some(base) = base else { return };
        trace.about(|| about.to_owned());
        let margin = margin.unwrap_or(Length::ZERO);
        rules.push(Rule {
            id,
            check,
            depth: margin_depth(base, margin, &BEARWELL_CHOICE, trace),
            source: &BEARWELL_CHOICE,
        });
    };
    add(
        EmbedmentRuleId::Fill,
        "embedment by fill",
        &checks::TOP_HELIX_BELOW_FILL,
        request.fill_depth,
        own.fill_margin,
    );
    add(
        EmbedmentRuleId::ActiveZone,
        "embedment by active zone",
        &checks::TOP_HELIX_BELOW_ACTIVE_ZONE,
        request.active_depth,
        own.active_margin,
    );
    add(
        EmbedmentRuleId::CollapsingSoil,
        "embedment by collapsing soil",
        &checks::TOP_HELIX_BELOW_COLLAPSE,
        request.collapse_depth,
        own.collapse_margin,
    );
    trace.about(String::new);
    rules
}

fn sourced<T>(own: Option<T>, default: &'static Reference) -> &'static Reference {
    if own.is_some() { &CALLER } else { default }
}

/// What the pile is for: as sent, or by torque where anything says so.
fn purpose(request: &Request, own: EmbedmentRules) -> Option<PilePurpose> {
    let by_torque = own.tension_by_torque == Some(true) || tension::by_torque(request);
    own.purpose
        .or(by_torque.then_some(PilePurpose::TensionByTorque))
}

/// No helix in ground that freezes; one exactly at the base of frost passes.
fn helices_below_frost(ground: &Ground, work: &mut Work) {
    for helix in &ground.helices {
        let mut check = Check::at_least(
            &checks::HELIX_BELOW_FROST,
            ground.base,
            helix.depth,
            &OBC_DEPTH_OF_FOUNDATIONS,
        )
        .subject(SubjectKind::Helix, &helix.label);
        if !check.passed() {
            check = check.reason(
                "ice grows under a plate in ground that freezes and lifts it; 1,900 to 2,500 kPa were measured without a limit being reached (Domaschuk 1982)",
            );
        }
        work.check(check);
    }
}

fn summed_up(rules: Vec<Rule>, purpose: Option<PilePurpose>, ground: &Ground) -> EmbedmentOutcome {
    let mut deepest = &rules[0];
    for rule in &rules[1..] {
        if rule.depth > deepest.depth {
            deepest = rule;
        }
    }
    let (required, governed_by) = (deepest.depth, deepest.id);
    let enough = crate::contract::utilisation(required.si(), ground.top().si()).1;
    let required_tip = required + (ground.tip - ground.top());
    EmbedmentOutcome {
        largest_helix_diameter: ground.largest(),
        top_helix_depth: ground.top(),
        tip_depth: ground.tip,
        purpose,
        required_top_helix_depth: required,
        governed_by,
        shortfall: if enough {
            Length::ZERO
        } else {
            required - ground.top()
        },
        required_tip_depth: required_tip,
        minimum_pile_length: required_tip - ground.head,
        rules: rules
            .into_iter()
            .map(|rule| EmbedmentRule {
                rule: rule.id,
                required_depth: rule.depth,
                source: rule.source.into(),
            })
            .collect(),
    }
}
