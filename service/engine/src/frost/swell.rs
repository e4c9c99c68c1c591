//! Uplift by swelling soil on shaft and beam against what holds the pile down below the
//! active zone, stage by stage. Judged by itself, beside uplift by frost.

use super::adhesion::{self, Adhesion};
use super::beam_grip;
use super::codes::{checks, warnings};
use super::ground::Ground;
use super::request::Request;
use super::resist::{self, Resistance};
use super::stages::{self, Asked, FromAbove, Stage};
use super::swell_equations::{net_swell_tension, shaft_swell, swell_force, swelling_length};
use super::swell_outcome::{SwellDemand, SwellOutcome, SwellStage};
use super::swell_request::SwellUplift;
use super::tension::NoCredit;
use super::{FrostResistance, FrostStage};
use crate::contract::{Check, Refusal, SubjectKind, Work};
use crate::quantity::{Force, Length, Size, SoilStress};
use crate::source::BEARWELL_CHOICE;

/// Uplift by swelling with what it was compared with.
pub struct Judged {
    /// For the answer.
    pub outcome: SwellOutcome,
    /// What holds the pile down, where it was sent.
    pub resistance: Option<Resistance>,
}

/// What is the same in every stage.
struct Case<'a> {
    label: &'a str,
    active: Length,
    tip: Length,
    perimeter: Size,
    adhesion: Adhesion,
    resistance: Option<&'a Resistance>,
}

/// What holds the pile down: that of `swelling`, else that of `uplift`.
pub fn resistance_sent<'a>(
    request: &'a Request,
    swelling: &'a SwellUplift,
) -> Option<&'a FrostResistance> {
    let of_frost = request.uplift.as_ref().and_then(|u| u.resistance.as_ref());
    swelling.resistance.as_ref().or(of_frost)
}

/// Judges a request without faults; `None` where active depth or adhesion are missing, which
/// are faults.
pub fn judge(
    request: &Request,
    swelling: &SwellUplift,
    ground: &Ground,
    (weight, void_form_force): (Force, Option<Force>),
    work: &mut Work,
) -> Result<Option<Judged>, Refusal> {
    let (Some(active), Some(sent)) = (request.active_depth, &swelling.adhesion) else {
        return Ok(None);
    };
    let Some(adhesion) = adhesion::of(sent, work) else {
        return Ok(None);
    };
    let grip = beam_grip::of_swelling(request, active, &adhesion, work);
    let no_credit = NoCredit {
        above: active,
        helices: &ground.helices,
        warning: &warnings::GIVEN_TENSION_WITH_ACTIVE_HELIX,
        name: "the active zone",
    };
    let resistance = match resistance_sent(request, swelling) {
        Some(sent) => {
            let about = "tension below the active zone";
            Some(resist::of(request, sent, &no_credit, about, work)?)
        }
        None => None,
    };
    let above = FromAbove {
        beam_force: grip.as_ref().map_or(Force::ZERO, |g| g.force),
        void_form_force,
        dead_load: resistance.as_ref().map_or(Force::ZERO, |r| r.dead_load),
        weight,
    };
    let case = Case {
        label: request.pile.name(),
        active,
        tip: ground.tip,
        perimeter: request.pile.shaft.perimeter(),
        adhesion,
        resistance: resistance.as_ref(),
    };
    let stages: Vec<_> = stages::of(request, ground, &Asked::of_swelling(swelling), &above)
        .iter()
        .map(|stage| case.judge(stage, work))
        .collect();
    if case.resistance.is_none() {
        work.check(
            Check::not_evaluated(&checks::SWELL_UPLIFT, "no_resistance", &BEARWELL_CHOICE)
                .subject(SubjectKind::Pile, request.pile.name()),
        );
    }
    if swelling.loaded_before_wetting() {
        work.warn(
            &warnings::UNLOADED_SWELL_STAGE_LEFT_OUT,
            "the dead load must be on the pile before the soil is wetted; a pile left unloaded is not judged here",
        );
    }
    let outcome = SwellOutcome {
        active_depth: active,
        adhesion: case.adhesion.stress,
        adhesion_source: case.adhesion.source,
        adhesion_factor: case.adhesion.factor,
        capped_by_strength: case.adhesion.capped,
        lower_adhesion: case.adhesion.lower,
        swell_pressure: sent.swell_pressure(),
        shaft_perimeter: case.perimeter,
        beam_grip: grip,
        factors: resistance.as_ref().map(|r| r.factors.shown.clone()),
        tension: resistance.as_ref().map(|r| r.tension.clone()),
        governing_stage: worst(&stages),
        stages,
    };
    Ok(Some(Judged {
        outcome,
        resistance,
    }))
}

impl Case<'_> {
    /// Forces of one stage, with its check.
    fn judge(&self, stage: &Stage, work: &mut Work) -> SwellStage {
        let name = stage.stage.name();
        work.trace.about(|| format!("{name} stage, swelling"));
        let trace = &mut work.trace;
        let length = swelling_length(self.active, self.tip, stage.contact_top, trace);
        let design = self.demand(stage, self.adhesion.stress, length, work);
        let lower = self.adhesion.lower.map(|stress| {
            work.trace
                .about(|| format!("{name} stage, swelling, lower end"));
            self.demand(stage, stress, length, work)
        });
        work.trace.about(String::new);
        if let Some(resistance) = self.resistance {
            let net = design.net_swell_tension.unwrap_or(Force::ZERO);
            work.check(
                resistance
                    .check(&checks::SWELL_UPLIFT, net)
                    .subject(SubjectKind::Pile, self.label)
                    .combination(name),
            );
        }
        SwellStage {
            stage: stage.stage,
            contact_top_depth: stage.contact_top,
            swelling_length: length,
            beam_in_place: stage.beam_in_place,
            dead_load: self.resistance.map(|_| stage.dead_load),
            design,
            lower,
        }
    }

    /// Forces at one adhesion, and what they ask of the pile.
    fn demand(
        &self,
        stage: &Stage,
        adhesion: SoilStress,
        length: Length,
        work: &mut Work,
    ) -> SwellDemand {
        let trace = &mut work.trace;
        let shaft_force = shaft_swell(adhesion, self.perimeter, length, trace);
        let void = stage.void_form_force.unwrap_or(Force::ZERO);
        let swell = swell_force(shaft_force, stage.beam_force, void, trace);
        let compared = self.resistance.map(|r| {
            let (factor, dead) = (r.factors.frost, r.factors.dead);
            r.compare(
                net_swell_tension(factor, swell, dead, stage.dead_load, trace),
                trace,
            )
        });
        SwellDemand {
            shaft_force,
            beam_force: stage.beam_force,
            void_form_force: stage.void_form_force,
            swell_force: swell,
            net_swell_tension: compared.as_ref().map(|c| c.net),
            required_ultimate_tension: compared.as_ref().and_then(|c| c.required),
            utilisation_ratio: compared.as_ref().and_then(|c| c.utilisation),
        }
    }
}

/// The stage that asks most; the first of equals. There is always a service stage.
fn worst(stages: &[SwellStage]) -> FrostStage {
    let asked = |s: &SwellStage| s.design.net_swell_tension.unwrap_or(s.design.swell_force);
    let mut worst = &stages[0];
    for stage in &stages[1..] {
        if asked(stage) > asked(worst) {
            worst = stage;
        }
    }
    worst.stage
}
