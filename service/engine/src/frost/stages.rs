//! The stages in which uplift is judged: the building stands, and the pile before that.
//! The same for frost and for swelling soil.

use super::ground::Ground;
use super::request::Request;
use super::swell_request::SwellUplift;
use super::uplift_outcome::FrostStage;
use super::uplift_request::FrostUplift;
use super::{FrostBeam, StandingOverWinter};
use crate::quantity::{Force, Length};

/// What is known of a stage before any force on the shaft.
#[derive(Debug, Clone)]
pub struct Stage {
    /// Which stage.
    pub stage: FrostStage,
    /// Depth from which the shaft touches soil.
    pub contact_top: Length,
    /// Force on the beam's sides.
    pub beam_force: Force,
    /// Force of the crushed void form, where its pressure was sent.
    pub void_form_force: Option<Force>,
    /// Dead load with the pile's counted weight.
    pub dead_load: Force,
    /// Whether the beam is on the pile.
    pub beam_in_place: bool,
}

/// What the request says of contact and of the pile before it is loaded.
pub struct Asked {
    /// Contact once the building stands.
    pub service_contact: Option<Length>,
    /// The unloaded pile, unless it is left out.
    pub before: Option<StandingOverWinter>,
}

impl Asked {
    /// Of uplift by frost.
    pub fn of_frost(uplift: &FrostUplift) -> Self {
        Self {
            service_contact: uplift.contact_top_depth,
            before: (!uplift.loaded_before_winter()).then(|| uplift.standing()),
        }
    }

    /// Of uplift by swelling soil.
    pub fn of_swelling(swelling: &SwellUplift) -> Self {
        let unloaded = swelling.unloaded();
        Self {
            service_contact: swelling.contact_top_depth,
            before: (!swelling.loaded_before_wetting()).then_some(StandingOverWinter {
                dead_load: unloaded.dead_load,
                contact_top_depth: unloaded.contact_top_depth,
                beam_cast: unloaded.beam_cast,
            }),
        }
    }
}

/// Forces and loads that come on the pile from above the shaft.
pub struct FromAbove {
    /// Force on the beam's sides.
    pub beam_force: Force,
    /// Force of the crushed void form, where its pressure was sent.
    pub void_form_force: Option<Force>,
    /// Dead load once the building stands.
    pub dead_load: Force,
    /// The pile's counted weight.
    pub weight: Force,
}

/// The stages to judge, service first.
pub fn of(request: &Request, ground: &Ground, asked: &Asked, above: &FromAbove) -> Vec<Stage> {
    let underside = match &request.beam {
        Some(FrostBeam::InSoil(beam)) => beam.underside_depth,
        _ => Length::ZERO,
    };
    let in_service = asked
        .service_contact
        .unwrap_or_else(|| ground.cold_surface.max(underside));
    let mut stages = vec![Stage {
        stage: FrostStage::Service,
        contact_top: in_service,
        beam_force: above.beam_force,
        void_form_force: above.void_form_force,
        dead_load: above.dead_load + above.weight,
        beam_in_place: true,
    }];
    if let Some(before) = asked.before {
        let cast = before.beam_cast == Some(true);
        stages.push(Stage {
            stage: FrostStage::Construction,
            contact_top: before.contact_top_depth.unwrap_or(if cast {
                in_service
            } else {
                ground.cold_surface
            }),
            beam_force: if cast { above.beam_force } else { Force::ZERO },
            void_form_force: above.void_form_force.filter(|_| cast),
            dead_load: before.dead_load.unwrap_or(Force::ZERO) + above.weight,
            beam_in_place: cast,
        });
    }
    stages
}
