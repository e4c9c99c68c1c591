//! Uplift by frozen ground on shaft and beam against what holds the pile down, stage by
//! stage and at two bond stresses.

use super::beam_grip;
use super::bond::{self, Bond};
use super::codes::{checks, methods, warnings};
use super::equations::{
    frost_force, frost_force_with_void_form, frozen_length, net_frost_tension, shaft_adfreeze,
};
use super::ground::Ground;
use super::measures;
use super::request::Request;
use super::resist::{self, Resistance};
use super::stages::{self, Asked, FromAbove, Stage};
use super::tension::NoCredit;
use super::uplift_outcome::{FrostDemand, FrostStageOutcome, UpliftOutcome};
use super::uplift_request::FrostUplift;
use crate::contract::{Check, Refusal, SubjectKind, Work};
use crate::quantity::{Force, ForceUnit, Length, Size, SoilStress};
use crate::source::OBC_DEPTH_OF_FOUNDATIONS;

/// What is the same in every stage.
struct Case<'a> {
    label: &'a str,
    base: Length,
    perimeter: Size,
    bond: Bond,
    severe: Bond,
    sleeved: bool,
    resistance: Option<&'a Resistance>,
}

/// Uplift by frost with what it was compared with.
pub struct Judged {
    /// For the answer.
    pub outcome: UpliftOutcome,
    /// What holds the pile down, where it was sent.
    pub resistance: Option<Resistance>,
}

/// The check of uplift where something is missing for it.
pub fn not_evaluated(request: &Request, reason: &'static str, work: &mut Work) {
    work.check(
        Check::not_evaluated(&checks::FROST_UPLIFT, reason, &OBC_DEPTH_OF_FOUNDATIONS)
            .subject(SubjectKind::Pile, request.pile.name()),
    );
}

/// Judges uplift in every stage; `weight` and `void_form_force` come on the pile from
/// elsewhere.
pub fn judge(
    request: &Request,
    uplift: &FrostUplift,
    ground: &Ground,
    (weight, void_form_force): (Force, Option<Force>),
    work: &mut Work,
) -> Result<Judged, Refusal> {
    work.method(&methods::SHAFT_ADFREEZE);
    let (bond, severe) = bond::pair(&uplift.bond, work);
    let sleeve = measures::sleeve(uplift, ground, work);
    measures::coating(uplift, work);
    let grip = beam_grip::of(request, ground, work);
    let beam_force = grip.as_ref().map_or(Force::ZERO, |g| g.force);
    let no_credit = NoCredit {
        above: ground.base,
        helices: &ground.helices,
        warning: &warnings::GIVEN_TENSION_WITH_FROZEN_HELIX,
        name: "ground that freezes",
    };
    let resistance = match &uplift.resistance {
        Some(sent) => {
            let about = "tension below frost";
            Some(resist::of(request, sent, &no_credit, about, work)?)
        }
        None => None,
    };
    let above = FromAbove {
        beam_force,
        void_form_force,
        dead_load: resistance.as_ref().map_or(Force::ZERO, |r| r.dead_load),
        weight,
    };
    let case = Case {
        label: request.pile.name(),
        base: ground.base,
        perimeter: request.pile.shaft.perimeter(),
        bond,
        severe,
        sleeved: sleeve.as_ref().is_some_and(|s| s.credited),
        resistance: resistance.as_ref(),
    };
    let stages: Vec<_> = stages::of(request, ground, &Asked::of_frost(uplift), &above)
        .iter()
        .map(|stage| case.judge(stage, work))
        .collect();
    if case.resistance.is_none() {
        not_evaluated(request, "no_resistance", work);
    }
    warn_of_stages(uplift, beam_force, work);
    let worst = worst(&stages);
    let outcome = UpliftOutcome {
        bond_stress: case.bond.stress,
        bond_source: case.bond.source,
        severe_bond_stress: case.severe.stress,
        severe_bond_source: case.severe.source,
        shaft_perimeter: case.perimeter,
        beam_grip: grip,
        sleeve,
        factors: resistance.as_ref().map(|r| r.factors.shown.clone()),
        tension: resistance.as_ref().map(|r| r.tension.clone()),
        governing_stage: worst.stage,
        tension_path_demand: worst.design.net_frost_tension,
        severe_tension_path_demand: worst.severe.net_frost_tension,
        stages,
    };
    Ok(Judged {
        outcome,
        resistance,
    })
}

impl Case<'_> {
    /// Forces of one stage, with its checks.
    fn judge(&self, stage: &Stage, work: &mut Work) -> FrostStageOutcome {
        let name = stage.stage.name();
        work.trace.about(|| format!("{name} stage"));
        let frozen = frozen_length(self.base, stage.contact_top, &mut work.trace);
        let bonded = if self.sleeved { Length::ZERO } else { frozen };
        let design = self.demand(stage, self.bond.stress, bonded, work);
        work.trace.about(|| format!("{name} stage, severe bond"));
        let severe = self.demand(stage, self.severe.stress, frozen, work);
        work.trace.about(String::new);
        if let Some(resistance) = self.resistance {
            let net = |demand: &FrostDemand| demand.net_frost_tension.unwrap_or(Force::ZERO);
            let decides = resistance.check(&checks::FROST_UPLIFT, net(&design));
            let informs = resistance.check(&checks::FROST_UPLIFT_SEVERE, net(&severe));
            for check in [decides, informs.advisory()] {
                work.check(
                    check
                        .subject(SubjectKind::Pile, self.label)
                        .combination(name),
                );
            }
        }
        FrostStageOutcome {
            stage: stage.stage,
            contact_top_depth: stage.contact_top,
            frozen_length: frozen,
            beam_in_place: stage.beam_in_place,
            dead_load: self.resistance.map(|_| stage.dead_load),
            design,
            severe,
        }
    }

    /// Forces at one bond stress, and what they ask of the pile.
    fn demand(
        &self,
        stage: &Stage,
        bond: SoilStress,
        bonded: Length,
        work: &mut Work,
    ) -> FrostDemand {
        let trace = &mut work.trace;
        let shaft_force = shaft_adfreeze(bond, self.perimeter, bonded, trace);
        let frost = match stage.void_form_force {
            Some(void) => frost_force_with_void_form(shaft_force, stage.beam_force, void, trace),
            None => frost_force(shaft_force, stage.beam_force, trace),
        };
        let compared = self.resistance.map(|r| {
            let (frost_factor, dead_factor) = (r.factors.frost, r.factors.dead);
            let net = net_frost_tension(frost_factor, frost, dead_factor, stage.dead_load, trace);
            r.compare(net, trace)
        });
        FrostDemand {
            shaft_force,
            beam_force: stage.beam_force,
            void_form_force: stage.void_form_force,
            frost_force: frost,
            net_frost_tension: compared.as_ref().map(|c| c.net),
            required_ultimate_tension: compared.as_ref().and_then(|c| c.required),
            utilisation_ratio: compared.as_ref().and_then(|c| c.utilisation),
        }
    }
}

fn warn_of_stages(uplift: &FrostUplift, beam_force: Force, work: &mut Work) {
    if uplift.loaded_before_winter() {
        work.warn(
            &warnings::CONSTRUCTION_STAGE_LEFT_OUT,
            "the dead load must be on the pile before the ground freezes; a pile left standing over winter is not judged here",
        );
    }
    if let Some(resistance) = &uplift.resistance
        && beam_force > resistance.dead_load
    {
        work.warn(
            &warnings::BEAM_GRIP_EXCEEDS_DEAD_LOAD,
            format!(
                "frost grips the beam with {} kN, the dead load is {} kN; a bond break or backfill that does not heave takes the grip away",
                tenths(beam_force),
                tenths(resistance.dead_load)
            ),
        );
    }
}

/// A force in kN with one decimal, for texts.
fn tenths(force: Force) -> String {
    format!("{:.1}", force.get(ForceUnit::KN))
}

/// The stage that asks most; the first of equals. There is always a service stage.
fn worst(stages: &[FrostStageOutcome]) -> &FrostStageOutcome {
    let asked = |s: &FrostStageOutcome| s.design.net_frost_tension.unwrap_or(s.design.frost_force);
    let mut worst = &stages[0];
    for stage in &stages[1..] {
        if asked(stage) > asked(worst) {
            worst = stage;
        }
    }
    worst
}
