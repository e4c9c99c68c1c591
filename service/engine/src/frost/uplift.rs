//! Uplift by frozen ground on shaft and beam against what holds the pile down, stage by
//! stage and at two bond stresses.

use super::beam_grip;
use super::bond::{self, Bond};
use super::codes::{checks, methods, warnings};
use super::equations::{frost_force, frozen_length, net_frost_tension, shaft_adfreeze};
use super::factors::{self, Factors};
use super::ground::Ground;
use super::outcome::{
    FrostDemand, FrostFormat, FrostStage, FrostStageOutcome, FrostTensionOutcome, UpliftOutcome,
};
use super::request::{FrostBeam, Request};
use super::tension::{self, Ultimate};
use super::uplift_request::FrostUplift;
use crate::catalogue::CheckDef;
use crate::contract::{Check, Refusal, SubjectKind, Work, utilisation};
use crate::helix::AxialResistance;
use crate::quantity::{Force, ForceUnit, Length, Size, SoilStress};
use crate::source::{IBC_1810_3_3_1_5, OBC_DEPTH_OF_FOUNDATIONS, Reference};

/// What is known of a stage before any force.
struct Stage {
    stage: FrostStage,
    contact_top: Length,
    beam_force: Force,
    dead_load: Force,
}

/// What holds the pile down.
struct Resistance {
    factors: Factors,
    design: Force,
}

/// What is the same in every stage.
struct Case<'a> {
    label: &'a str,
    base: Length,
    perimeter: Size,
    bond: Bond,
    severe: Bond,
    resistance: Option<Resistance>,
}

/// The check of uplift where something is missing for it.
pub fn not_evaluated(request: &Request, reason: &'static str, work: &mut Work) {
    work.check(
        Check::not_evaluated(&checks::FROST_UPLIFT, reason, &OBC_DEPTH_OF_FOUNDATIONS)
            .subject(SubjectKind::Pile, request.pile.name()),
    );
}

/// Judges uplift in every stage.
pub fn judge(
    request: &Request,
    uplift: &FrostUplift,
    ground: &Ground,
    work: &mut Work,
) -> Result<UpliftOutcome, Refusal> {
    work.method(&methods::SHAFT_ADFREEZE);
    let (bond, severe) = bond::pair(&uplift.bond, work);
    let grip = beam_grip::of(request, ground, work);
    let beam_force = grip.as_ref().map_or(Force::ZERO, |g| g.force);
    let (resistance, tension) = resist(request, uplift, ground, work)?;
    let case = Case {
        label: request.pile.name(),
        base: ground.base,
        perimeter: request.pile.shaft.perimeter(),
        bond,
        severe,
        resistance,
    };
    let stages: Vec<_> = stages_of(request, uplift, ground, beam_force)
        .iter()
        .map(|stage| case.judge(stage, work))
        .collect();
    if case.resistance.is_none() {
        not_evaluated(request, "no_resistance", work);
    }
    warn_of_stages(uplift, beam_force, work);
    let worst = worst(&stages);
    Ok(UpliftOutcome {
        bond_stress: case.bond.stress,
        bond_source: case.bond.source,
        severe_bond_stress: case.severe.stress,
        severe_bond_source: case.severe.source,
        shaft_perimeter: case.perimeter,
        beam_grip: grip,
        factors: case.resistance.map(|r| r.factors.shown),
        tension,
        governing_stage: worst.stage,
        tension_path_demand: worst.design.net_frost_tension,
        severe_tension_path_demand: worst.severe.net_frost_tension,
        stages,
    })
}

/// Factors and design resistance, where a resistance was sent.
fn resist(
    request: &Request,
    uplift: &FrostUplift,
    ground: &Ground,
    work: &mut Work,
) -> Result<(Option<Resistance>, Option<FrostTensionOutcome>), Refusal> {
    let Some(sent) = &uplift.resistance else {
        return Ok((None, None));
    };
    let Ultimate {
        force,
        by,
        resistance: from_soil,
        derived,
    } = tension::ultimate(request, &sent.tension, ground, work)?;
    let factors = factors::of(&sent.design_basis, by, work);
    work.method(match factors.shown.format {
        FrostFormat::AllowableStress => &methods::FROST_UPLIFT_ALLOWABLE_STRESS,
        FrostFormat::LimitStates => &methods::FROST_UPLIFT_LIMIT_STATES,
    });
    work.trace.about(|| "tension below frost".to_owned());
    let design = factors.tension.design(force, &mut work.trace);
    work.trace.about(String::new);
    let outcome = FrostTensionOutcome {
        ultimate: force,
        design,
        by,
        counted_helix_count: from_soil.as_ref().map(counted),
        from_soil,
        derived_strengths: derived,
    };
    Ok((Some(Resistance { factors, design }), Some(outcome)))
}

/// Helices that are given credit.
fn counted(resistance: &AxialResistance) -> u32 {
    let helices = &resistance.individual_bearing.helices;
    let counted = helices.iter().filter(|h| h.no_credit.is_none()).count();
    u32::try_from(counted).unwrap_or(u32::MAX)
}

/// The stages to judge: the building stands, and the pile before that unless it is left
/// out.
fn stages_of(
    request: &Request,
    uplift: &FrostUplift,
    ground: &Ground,
    beam_force: Force,
) -> Vec<Stage> {
    let underside = match &request.beam {
        Some(FrostBeam::InSoil(beam)) => beam.underside_depth,
        _ => Length::ZERO,
    };
    let in_service = uplift
        .contact_top_depth
        .unwrap_or_else(|| ground.cold_surface.max(underside));
    let dead_load = uplift
        .resistance
        .as_ref()
        .map_or(Force::ZERO, |r| r.dead_load);
    let mut stages = vec![Stage {
        stage: FrostStage::Service,
        contact_top: in_service,
        beam_force,
        dead_load,
    }];
    if !uplift.loaded_before_winter() {
        let standing = uplift.standing();
        let cast = standing.beam_cast == Some(true);
        stages.push(Stage {
            stage: FrostStage::Construction,
            contact_top: standing.contact_top_depth.unwrap_or(if cast {
                in_service
            } else {
                ground.cold_surface
            }),
            beam_force: if cast { beam_force } else { Force::ZERO },
            dead_load: standing.dead_load.unwrap_or(Force::ZERO),
        });
    }
    stages
}

impl Case<'_> {
    /// Forces of one stage, with its checks.
    fn judge(&self, stage: &Stage, work: &mut Work) -> FrostStageOutcome {
        let name = stage.stage.name();
        work.trace.about(|| format!("{name} stage"));
        let frozen = frozen_length(self.base, stage.contact_top, &mut work.trace);
        let design = self.demand(stage, self.bond.stress, frozen, work);
        work.trace.about(|| format!("{name} stage, severe bond"));
        let severe = self.demand(stage, self.severe.stress, frozen, work);
        work.trace.about(String::new);
        if let Some(resistance) = &self.resistance {
            let decides = resistance.check(&checks::FROST_UPLIFT, &design);
            let informs = resistance.check(&checks::FROST_UPLIFT_SEVERE, &severe);
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
            dead_load: self.resistance.as_ref().map(|_| stage.dead_load),
            design,
            severe,
        }
    }

    /// Forces at one bond stress, and what they ask of the pile.
    fn demand(
        &self,
        stage: &Stage,
        bond: SoilStress,
        frozen: Length,
        work: &mut Work,
    ) -> FrostDemand {
        let trace = &mut work.trace;
        let shaft_force = shaft_adfreeze(bond, self.perimeter, frozen, trace);
        let frost = frost_force(shaft_force, stage.beam_force, trace);
        let mut demand = FrostDemand {
            shaft_force,
            beam_force: stage.beam_force,
            frost_force: frost,
            net_frost_tension: None,
            required_ultimate_tension: None,
            utilisation_ratio: None,
        };
        if let Some(Resistance { factors, design }) = &self.resistance {
            let net = net_frost_tension(factors.frost, frost, factors.dead, stage.dead_load, trace);
            demand.net_frost_tension = Some(net);
            demand.required_ultimate_tension = Some(factors.tension.required(net, trace));
            demand.utilisation_ratio = utilisation(net.si(), design.si()).0;
        }
        demand
    }
}

impl Resistance {
    fn check(&self, def: &'static CheckDef, demand: &FrostDemand) -> Check {
        let source: &'static Reference = match self.factors.shown.format {
            FrostFormat::AllowableStress => &IBC_1810_3_3_1_5,
            FrostFormat::LimitStates => &OBC_DEPTH_OF_FOUNDATIONS,
        };
        let net = demand.net_frost_tension.unwrap_or(Force::ZERO);
        Check::at_most(def, net, self.design, source)
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
