//! The question with its defaults, the helices as elements of a shaft, and the load to ask
//! the movement at.

use super::faults::is_unfactored;
use super::model::{Element, MovementLaw, Shaft};
use super::outcome::WorkingLoadSource;
use super::request::HeadMovement;
use crate::contract::Work;
use crate::helix::codes::warnings;
use crate::helix::outcome::{AxialResistance, BearingLaw, DesignCapacityKind, HelixBearing};
use crate::helix::pile::AxialDirection;
use crate::helix::request::Request;
use crate::quantity::{Force, Length, LengthUnit, Size, SteelStress, StressUnit};
use crate::source::{MOVEMENT_HYPERBOLA, MOVEMENT_TO_MOBILISE, STEEL_MODULUS, Sourced};

/// Movement of a helix at its ultimate over its diameter, sand and gravel.
pub static COARSE_MOVEMENT: Sourced<f64> =
    Sourced::new("coarse_movement_ratio", 0.1, &MOVEMENT_TO_MOBILISE);
/// The same in clay and silt.
pub static FINE_MOVEMENT: Sourced<f64> =
    Sourced::new("fine_movement_ratio", 0.05, &MOVEMENT_TO_MOBILISE);
/// Movement of the shaft at its ultimate adhesion.
pub static ADHESION_MOVEMENT: Sourced<Size> = Sourced::new(
    "adhesion_movement",
    Size::new(5.0, LengthUnit::Mm),
    &MOVEMENT_TO_MOBILISE,
);
/// Failure ratio of the hyperbola.
pub static FAILURE_RATIO: Sourced<f64> =
    Sourced::new("movement_failure_ratio", 0.75, &MOVEMENT_HYPERBOLA);
/// Elastic modulus of the shaft.
pub static SHAFT_MODULUS: Sourced<SteelStress> = Sourced::new(
    "shaft_elastic_modulus",
    SteelStress::new(200_000.0, StressUnit::MPa),
    &STEEL_MODULUS,
);

/// The question with every default filled in.
pub(super) struct Asked<'a> {
    pub request: &'a Request,
    pub question: &'a HeadMovement,
    pub modulus: SteelStress,
    pub failure_ratio: f64,
    pub coarse: f64,
    pub fine: f64,
    pub head_height: Length,
    pub largest: Size,
    pub ignored_depth: Option<Length>,
    pub no_credit_above: Length,
}

impl Asked<'_> {
    /// The shaft with its elements from the head down, and the place of adhesion among them.
    pub fn shaft(
        &self,
        resistance: &AxialResistance,
        share: f64,
        rigidity: f64,
        work: &mut Work,
    ) -> (Shaft, Option<usize>) {
        let from_head = |depth: Length| (depth + self.head_height).si().max(0.0);
        let helices = &resistance.individual_bearing.helices;
        let mut elements: Vec<Element> = helices
            .iter()
            .map(|helix| Element {
                from_head: from_head(helix.depth),
                ultimate: helix.resistance.si() * share,
                law: MovementLaw::Hyperbola {
                    at_ultimate: self.movement_at_ultimate(helix).si(),
                    failure_ratio: self.failure_ratio,
                },
            })
            .collect();
        let adhesion = resistance.shaft_adhesion;
        let adhered = self
            .ignored_depth
            .filter(|_| adhesion > Force::ZERO)
            .zip(helices.first());
        let adhesion_at = adhered.map(|(ignored, top)| {
            let from = ignored.max(self.no_credit_above);
            let to = top.depth - Length::from(top.diameter);
            elements.insert(
                0,
                Element {
                    from_head: from_head((from + to) / 2.0),
                    ultimate: adhesion.si(),
                    law: MovementLaw::Line {
                        at_ultimate: work.take(&ADHESION_MOVEMENT).si(),
                    },
                },
            );
            0
        });
        (Shaft { elements, rigidity }, adhesion_at)
    }

    /// Movement at which a helix carries all it can: by the soils of its zone that bear,
    /// weighted by height.
    fn movement_at_ultimate(&self, helix: &HelixBearing) -> Size {
        let (mut sum, mut heights, mut first) = (0.0, 0.0, None);
        for part in helix.zone.iter().filter(|p| p.law != BearingLaw::NoCredit) {
            let ratio = match part.undrained_strength {
                Some(_) => self.fine,
                None => self.coarse,
            };
            let height = (part.bottom - part.top).si();
            sum += ratio * height;
            heights += height;
            first.get_or_insert(ratio);
        }
        let ratio = if heights > 0.0 {
            sum / heights
        } else {
            first.unwrap_or(self.fine)
        };
        helix.diameter * ratio
    }

    /// The load to ask the movement at. A factored load or capacity is never taken for it.
    pub fn working_load(
        &self,
        resistance: &AxialResistance,
        work: &mut Work,
    ) -> (Force, WorkingLoadSource) {
        if let Some(sent) = self.sent(resistance) {
            return (sent, WorkingLoadSource::Request);
        }
        if let Some(load) = self.demanded(resistance) {
            return (load, WorkingLoadSource::Demand);
        }
        let design = resistance.design.as_ref();
        if let Some(d) = design.filter(|d| d.kind == DesignCapacityKind::Allowable) {
            return (d.capacity, WorkingLoadSource::AllowableCapacity);
        }
        work.warn(
            &warnings::WORKING_LOAD_ASSUMED,
            format!(
                "the movement in {} is told at half of the ultimate resistance; no unfactored load and no allowable capacity is known",
                resistance.direction.name()
            ),
        );
        (resistance.ultimate / 2.0, WorkingLoadSource::HalfOfUltimate)
    }

    fn sent(&self, resistance: &AxialResistance) -> Option<Force> {
        let sent = self.question.working_load?;
        match resistance.direction {
            AxialDirection::Compression => sent.compression,
            AxialDirection::Tension => sent.tension,
        }
    }

    /// The demand where it is unfactored.
    fn demanded(&self, resistance: &AxialResistance) -> Option<Force> {
        let demand = self
            .request
            .demand
            .filter(|_| is_unfactored(self.request))?;
        match resistance.direction {
            AxialDirection::Compression => demand.compression,
            AxialDirection::Tension => demand.tension,
        }
    }

    /// Whether a limit is judged in this direction: under a load sent for it, or under the
    /// allowable capacity where no demand was sent at all.
    pub fn is_judged(&self, resistance: &AxialResistance) -> bool {
        let no_demand = self.request.demand.is_none();
        self.sent(resistance).is_some()
            || self.demanded(resistance).is_some()
            || (is_unfactored(self.request) && no_demand && self.sent_none())
    }

    fn sent_none(&self) -> bool {
        let sent = self.question.working_load.unwrap_or_default();
        sent.compression.is_none() && sent.tension.is_none()
    }
}
