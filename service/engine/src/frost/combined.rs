//! Frost and swelling soil at one time, where the caller says that both can peak together:
//! forces added, held by the ground below both.

use super::codes::{checks, methods, warnings};
use super::ground::Ground;
use super::request::Request;
use super::resist::{self, Resistance};
use super::swell_equations::{combined_force, net_swell_tension};
use super::swell_outcome::{CombinedStage, CombinedUplift, SwellOutcome};
use super::swell_request::SwellUplift;
use super::tension::NoCredit;
use super::uplift_outcome::UpliftOutcome;
use super::{FrostStageOutcome, SwellStage, swell};
use crate::contract::{Refusal, SubjectKind, Work};
use crate::quantity::Force;

/// Both together with what they were compared with.
pub struct Judged {
    /// For the answer.
    pub outcome: CombinedUplift,
    /// What holds the pile down, where it was sent.
    pub resistance: Option<Resistance>,
}

/// Judges both together in the stages that both have; `None` unless the caller asks for it.
pub fn judge(
    request: &Request,
    swelling: &SwellUplift,
    (frost, swell): (&UpliftOutcome, &SwellOutcome),
    ground: &Ground,
    work: &mut Work,
) -> Result<Option<Judged>, Refusal> {
    if swelling.peaks_with_frost != Some(true) {
        return Ok(None);
    }
    work.method(&methods::FROST_AND_SWELL);
    let no_credit = NoCredit {
        above: ground.base.max(swell.active_depth),
        helices: &ground.helices,
        warning: &warnings::GIVEN_TENSION_WITH_ACTIVE_HELIX,
        name: "ground that freezes or swells",
    };
    let resistance = match swell::resistance_sent(request, swelling) {
        Some(sent) => {
            let about = "tension below frost and the active zone";
            Some(resist::of(request, sent, &no_credit, about, work)?)
        }
        None => None,
    };
    let mut stages = Vec::new();
    for cold in &frost.stages {
        if let Some(wet) = swell.stages.iter().find(|s| s.stage == cold.stage) {
            stages.push(together(request, (cold, wet), resistance.as_ref(), work));
        }
    }
    let outcome = CombinedUplift {
        tension: resistance.as_ref().map(|r| r.tension.clone()),
        stages,
    };
    Ok(Some(Judged {
        outcome,
        resistance,
    }))
}

fn together(
    request: &Request,
    (cold, wet): (&FrostStageOutcome, &SwellStage),
    resistance: Option<&Resistance>,
    work: &mut Work,
) -> CombinedStage {
    let name = cold.stage.name();
    work.trace
        .about(|| format!("{name} stage, frost and swelling"));
    let void = cold.design.void_form_force.unwrap_or(Force::ZERO);
    let (frost, swell) = (cold.design.frost_force, wet.design.swell_force);
    let force = combined_force(frost, swell, void, &mut work.trace);
    let dead = match (cold.dead_load, wet.dead_load) {
        (Some(a), Some(b)) => Some(a.min(b)),
        (a, b) => a.or(b),
    };
    let compared = resistance.map(|r| {
        let (factor, share) = (r.factors.frost, r.factors.dead);
        let held = dead.unwrap_or(Force::ZERO);
        let net = net_swell_tension(factor, force, share, held, &mut work.trace);
        r.compare(net, &mut work.trace)
    });
    work.trace.about(String::new);
    if let (Some(r), Some(c)) = (resistance, &compared) {
        work.check(
            r.check(&checks::FROST_AND_SWELL_UPLIFT, c.net)
                .subject(SubjectKind::Pile, request.pile.name())
                .combination(name),
        );
    }
    CombinedStage {
        stage: cold.stage,
        beam_in_place: cold.beam_in_place || wet.beam_in_place,
        force,
        dead_load: dead,
        net_tension: compared.as_ref().map(|c| c.net),
        required_ultimate_tension: compared.as_ref().and_then(|c| c.required),
        utilisation_ratio: compared.as_ref().and_then(|c| c.utilisation),
    }
}
