//! The section through pile, beam and ground put together from what was judged. Nothing is
//! computed here beside depths.

use super::beam_request::FrostBeam;
use super::ground::{Ground, reaches};
use super::outcome::BeamUnderside;
use super::request::Request;
use super::section_outcome::{
    FrostSection, SectionBeam, SectionForce, SectionForceKind, SectionHelix, SectionPile,
    SectionVoidForm,
};
use super::swell_outcome::SwellOutcome;
use super::uplift_outcome::{FrostStage, FrostTensionOutcome, UpliftOutcome};
use super::void_outcome::VoidFormOutcome;
use crate::drag_force::DragOutcome;
use crate::quantity::{Force, Length};
use crate::text::Label;

/// What was judged, as far as it was asked for.
pub struct Parts<'a> {
    /// Uplift by frost.
    pub frost: Option<&'a UpliftOutcome>,
    /// Uplift by swelling soil.
    pub swell: Option<&'a SwellOutcome>,
    /// The beam's underside.
    pub underside: Option<&'a BeamUnderside>,
    /// The void form.
    pub void_form: Option<&'a VoidFormOutcome>,
    /// Drag of settling ground.
    pub drag: Option<&'a DragOutcome>,
}

/// The section of a request with what was judged.
pub fn of(request: &Request, ground: &Ground, parts: &Parts) -> FrostSection {
    let beam = match &request.beam {
        Some(FrostBeam::InSoil(beam)) => Some(SectionBeam {
            top_depth: beam.height.map(|height| beam.underside_depth - height),
            underside_depth: beam.underside_depth,
            width: beam.width,
        }),
        _ => None,
    };
    FrostSection {
        cold_surface_depth: ground.cold_surface,
        official_frost_base_depth: ground.official_base,
        computed_frost_base_depth: ground.computed_base,
        fill_depth: request.fill_depth,
        active_depth: request.active_depth,
        collapse_depth: request.collapse_depth,
        sleeve_bottom_depth: request
            .uplift
            .as_ref()
            .and_then(|u| u.sleeve.as_ref())
            .map(|s| s.bottom_depth),
        void_form: parts.void_form.map(|form| SectionVoidForm {
            top_depth: beam.as_ref().map(|b| b.underside_depth),
            nominal_thickness: form.nominal_thickness,
            crushed_thickness: form.nominal_thickness - form.usable_thickness,
        }),
        pile: pile(request, ground),
        forces: forces(request, ground, parts, beam.as_ref()),
        beam,
    }
}

fn pile(request: &Request, ground: &Ground) -> SectionPile {
    let moving = [
        request.fill_depth,
        request.active_depth,
        request.collapse_depth,
    ]
    .into_iter()
    .flatten()
    .fold(ground.base, Length::max);
    SectionPile {
        head_depth: ground.head,
        tip_depth: ground.tip,
        shaft_width: request.pile.shaft.width(),
        helices: ground
            .helices
            .iter()
            .map(|helix| SectionHelix {
                label: Label(helix.label.clone()),
                depth: helix.depth,
                diameter: helix.diameter,
                in_moving_ground: !reaches(moving, helix.depth),
            })
            .collect(),
    }
}

/// Collects forces; those that are nil are left out.
struct Forces(Vec<SectionForce>);

impl Forces {
    fn add(
        &mut self,
        kind: SectionForceKind,
        stage: FrostStage,
        force: Force,
        (top_depth, bottom_depth): (Length, Length),
    ) {
        let force = SectionForce {
            kind,
            stage,
            force,
            top_depth,
            bottom_depth,
        };
        if force.force > Force::ZERO && !self.0.contains(&force) {
            self.0.push(force);
        }
    }

    /// The hold of the ground, between the first and the last helix that counts.
    fn hold(&mut self, tension: &FrostTensionOutcome, ground: &Ground, above: Length) {
        let force = tension.ultimate.unwrap_or(tension.design);
        let above = tension.no_credit_above.unwrap_or(above);
        let counted = ground.helices.iter().map(|h| h.depth);
        let mut counted = counted.filter(|depth| *depth > above);
        let top = counted.next().unwrap_or_else(|| ground.deepest());
        let span = (top, ground.deepest());
        let kind = SectionForceKind::TensionResistance;
        self.add(kind, FrostStage::Service, force, span);
    }
}

fn forces(
    request: &Request,
    ground: &Ground,
    parts: &Parts,
    beam: Option<&SectionBeam>,
) -> Vec<SectionForce> {
    use SectionForceKind::{
        BeamAdfreeze, BeamSwell, BeamUndersideSwell, DeadLoad, ShaftAdfreeze, ShaftSwell, VoidForm,
    };
    let mut all = Forces(Vec::new());
    let head = (ground.head, ground.head);
    let underside = beam.map_or(ground.head, |b| b.underside_depth);
    let under = (underside, underside);
    for stage in parts.frost.iter().flat_map(|f| &f.stages) {
        let (name, d) = (stage.stage, &stage.design);
        let frozen = (stage.contact_top_depth, ground.base);
        all.add(ShaftAdfreeze, name, d.shaft_force, frozen);
        let side = parts.frost.and_then(|f| f.beam_grip.as_ref());
        let depth = side.map_or(Length::ZERO, |g| g.frozen_depth);
        all.add(BeamAdfreeze, name, d.beam_force, (Length::ZERO, depth));
        let void = d.void_form_force.unwrap_or(Force::ZERO);
        all.add(VoidForm, name, void, under);
        let dead = stage.dead_load.unwrap_or(Force::ZERO);
        all.add(DeadLoad, name, dead, head);
    }
    for stage in parts.swell.iter().flat_map(|s| &s.stages) {
        let (name, d) = (stage.stage, &stage.design);
        let top = stage.contact_top_depth;
        all.add(
            ShaftSwell,
            name,
            d.shaft_force,
            (top, top + stage.swelling_length),
        );
        let side = parts.swell.and_then(|s| s.beam_grip.as_ref());
        let depth = side.map_or(Length::ZERO, |g| g.active_depth);
        all.add(BeamSwell, name, d.beam_force, (Length::ZERO, depth));
        let void = d.void_form_force.unwrap_or(Force::ZERO);
        all.add(VoidForm, name, void, under);
        let dead = stage.dead_load.unwrap_or(Force::ZERO);
        all.add(DeadLoad, name, dead, head);
    }
    if let Some(force) = parts.underside.and_then(|u| u.swell_force) {
        all.add(BeamUndersideSwell, FrostStage::Service, force, under);
    }
    if let Some(tension) = parts.frost.and_then(|f| f.tension.as_ref()) {
        all.hold(tension, ground, ground.base);
    }
    if let Some(tension) = parts.swell.and_then(|s| s.tension.as_ref()) {
        let active = request.active_depth.unwrap_or(Length::ZERO);
        all.hold(tension, ground, active);
    }
    if let Some(drag) = parts.drag.and_then(|d| d.governing.as_ref()) {
        let top = ground
            .cold_surface
            .max(beam.map_or(Length::ZERO, |b| b.underside_depth));
        let span = (top.min(drag.depth), drag.depth);
        all.add(
            SectionForceKind::Drag,
            FrostStage::Service,
            drag.drag_force,
            span,
        );
    }
    let stage_of = |f: &SectionForce| f.stage != FrostStage::Service;
    all.0.sort_by_key(stage_of);
    all.0
}
