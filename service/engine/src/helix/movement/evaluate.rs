//! The movement of the head from what was found of the pile: its helices as elements, the
//! load it works at, the answers. The equations are in `model.rs`.

use super::faults::is_unfactored;
use super::model::{Element, Head, MovementLaw, Shaft, elastic_line, hyperbola, line};
use super::outcome::{
    DirectionMovement, HeadMovementFindings, HelixMovement, LoadsAtMovement, MovementAtLoad,
    WorkingLoadSource,
};
use super::request::HeadMovement;
use crate::answer_table::{AnswerColumn, AnswerTable, Cell};
use crate::contract::{Check, SubjectKind, Work};
use crate::helix::codes::{checks, methods, warnings};
use crate::helix::outcome::{AxialResistance, BearingLaw, DesignCapacityKind, HelixBearing};
use crate::helix::pile::AxialDirection;
use crate::helix::request::Request;
use crate::helix::settings::Settings;
use crate::quantity::{
    Force, Length, LengthUnit, Size, SpringStiffness, SteelStress, StressUnit,
};
use crate::source::{
    DERIVED, MOVEMENT_HYPERBOLA, MOVEMENT_TO_MOBILISE, STEEL_MODULUS, Sourced,
};

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
struct Asked<'a> {
    request: &'a Request,
    question: &'a HeadMovement,
    modulus: SteelStress,
    failure_ratio: f64,
    coarse: f64,
    fine: f64,
    head_height: Length,
    largest: Size,
    ignored_depth: Option<Length>,
    no_credit_above: Length,
}

/// The movement of the head of a request without faults.
pub(in crate::helix) fn head_movement(
    request: &Request,
    settings: &Settings,
    found: [Option<&AxialResistance>; 2],
    work: &mut Work,
) -> Option<HeadMovementFindings> {
    let question = request.head_movement.as_ref()?;
    let steel_area = request.pile.shaft.steel_area()?;
    work.method(&methods::HEAD_MOVEMENT);
    work.warn(
        &warnings::HEAD_MOVEMENT_ESTIMATE,
        "movement under load is an estimate from assumed curves; a load test on the site outranks it",
    );
    let diameters = request.pile.helices.iter().map(|h| h.diameter);
    let mut or = |sent: Option<f64>, constant| sent.unwrap_or_else(|| work.take(constant));
    let asked = Asked {
        request,
        question,
        failure_ratio: or(question.failure_ratio, &FAILURE_RATIO),
        coarse: or(question.coarse_movement_ratio, &COARSE_MOVEMENT),
        fine: or(question.fine_movement_ratio, &FINE_MOVEMENT),
        modulus: match question.elastic_modulus {
            Some(sent) => sent,
            None => work.take(&SHAFT_MODULUS),
        },
        head_height: question.head_height.unwrap_or(Length::ZERO),
        largest: diameters.fold(Size::ZERO, Size::max),
        ignored_depth: settings.adhesion_ignored_depth,
        no_credit_above: settings.no_credit_above,
    };
    let rigidity = steel_area.si() * asked.modulus.si();
    let depths = request.pile.helices.iter().map(|h| h.depth);
    let lowest = depths.fold(Length::ZERO, Length::max);
    let [compression, tension] =
        found.map(|r| r.and_then(|r| asked.direction(r, rigidity, work)));
    work.trace.about(String::new);
    Some(HeadMovementFindings {
        steel_area,
        elastic_modulus: asked.modulus,
        length: lowest + asked.head_height,
        failure_ratio: asked.failure_ratio,
        compression,
        tension,
    })
}

impl Asked<'_> {
    fn direction(
        &self,
        resistance: &AxialResistance,
        rigidity: f64,
        work: &mut Work,
    ) -> Option<DirectionMovement> {
        let direction = resistance.direction;
        let individual = resistance.individual_bearing.total;
        if resistance.ultimate <= Force::ZERO {
            self.nothing_carries(resistance, work);
            return None;
        }
        let by_helices = resistance.ultimate - resistance.shaft_adhesion;
        let share = if individual > Force::ZERO {
            by_helices / individual
        } else {
            0.0
        };
        let (shaft, adhesion_at) = self.shaft(resistance, share, rigidity, work);
        let (working_load, working_load_from) = self.working_load(resistance, work);
        work.trace
            .about(|| format!("head of the pile in {}", direction.name()));
        let held = working_load <= resistance.ultimate;
        let at_working_load = held
            .then(|| self.at_load(working_load, resistance, &shaft, adhesion_at, work));
        self.judge(resistance, working_load, at_working_load.as_ref(), work);
        Some(DirectionMovement {
            ultimate: resistance.ultimate,
            share_factor: share,
            working_load,
            working_load_from,
            at_working_load,
            at_tenth_of_helix: self.at_tenth(&shaft),
            points: self.question.point_count.map(|n| points(&shaft, n)),
        })
    }

    fn nothing_carries(&self, resistance: &AxialResistance, work: &mut Work) {
        let direction = resistance.direction.name();
        work.warn(
            &warnings::HEAD_MOVEMENT_NOT_FOUND,
            format!("nothing carries the pile in {direction}"),
        );
        if self.question.limit.is_some() && self.is_judged(resistance) {
            work.check(
                Check::not_evaluated(
                    &checks::HEAD_MOVEMENT,
                    format!("in {direction}: nothing carries the pile"),
                    &MOVEMENT_HYPERBOLA,
                )
                .subject(SubjectKind::Pile, self.request.pile.name()),
            );
        }
    }

    /// The shaft with its elements from the head down, and the place of adhesion among them.
    fn shaft(
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
    fn working_load(
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
        let demand = self.request.demand.filter(|_| is_unfactored(self.request))?;
        match resistance.direction {
            AxialDirection::Compression => demand.compression,
            AxialDirection::Tension => demand.tension,
        }
    }

    /// Whether a limit is judged in this direction: under a load of its own.
    fn is_judged(&self, resistance: &AxialResistance) -> bool {
        is_unfactored(self.request) || self.sent(resistance).is_some()
    }

    fn at_load(
        &self,
        load: Force,
        resistance: &AxialResistance,
        shaft: &Shaft,
        adhesion_at: Option<usize>,
        work: &mut Work,
    ) -> MovementAtLoad {
        let head = shaft.under(load.si());
        let mut carried = vec![(0.0, 0.0); shaft.elements.len()];
        shaft.head(head.tip, |i, movement, q| carried[i] = (movement, q));
        let labels = &resistance.individual_bearing.helices;
        let first = adhesion_at.map_or(0, |at| at + 1);
        let helices = labels.iter().enumerate().map(|(i, helix)| {
            let (movement, q) = carried[first + i];
            HelixMovement {
                label: helix.label.clone(),
                movement: Size::from_si(movement),
                load: Force::from_si(q),
                movement_at_ultimate: helix
                    .no_credit
                    .is_none()
                    .then(|| Size::from_si(shaft.elements[first + i].at_ultimate())),
            }
        });
        let helices: Vec<_> = helices.collect();
        let name = resistance.direction.name();
        for (i, element) in shaft.elements.iter().enumerate().rev() {
            let what = match i.checked_sub(first) {
                Some(helix) => format!("helix {}", helices[helix].label),
                None => "shaft".to_owned(),
            };
            work.trace.about(|| format!("{what} in {name}"));
            record(element, carried[i].0, work);
        }
        work.trace.about(|| format!("head of the pile in {name}"));
        MovementAtLoad {
            load,
            movement: record_head(&head, load, work),
            shaft_part: Size::from_si(head.movement - head.tip),
            helix_part: Size::from_si(head.tip),
            elastic_line: elastic_line(load, shaft, &mut work.trace),
            secant_stiffness: secant(load, Size::from_si(head.movement), work),
            helices,
            adhesion: Force::from_si(adhesion_at.map_or(0.0, |at| carried[at].1)),
        }
    }

    fn at_tenth(&self, shaft: &Shaft) -> LoadsAtMovement {
        let movement = self.largest / 10.0;
        LoadsAtMovement {
            movement,
            gross: Force::from_si(shaft.moved(movement.si()).load),
            net: Force::from_si(shaft.moved_net(movement.si()).load),
        }
    }

    fn judge(
        &self,
        resistance: &AxialResistance,
        load: Force,
        at: Option<&MovementAtLoad>,
        work: &mut Work,
    ) {
        let Some(limit) = self.question.limit.filter(|_| self.is_judged(resistance)) else {
            return;
        };
        let name = resistance.direction.name();
        let def = &checks::HEAD_MOVEMENT;
        let check = match at {
            Some(at) => Check::at_most(def, at.movement, limit, &MOVEMENT_HYPERBOLA)
                .reason(format!("in {name}; an estimate")),
            // no movement holds such a load: the load itself is beyond what there is
            None => Check::at_most(def, load, resistance.ultimate, &MOVEMENT_HYPERBOLA)
                .reason(format!("in {name} the working load is above the ultimate resistance, so that no movement holds it")),
        };
        work.check(check.subject(SubjectKind::Pile, self.request.pile.name()));
    }
}

/// Records what an element carries at its movement.
fn record(element: &Element, movement: f64, work: &mut Work) {
    let (movement, ultimate) = (Size::from_si(movement), Force::from_si(element.ultimate));
    let at = Size::from_si(element.at_ultimate());
    match element.law {
        MovementLaw::Hyperbola { failure_ratio, .. } => {
            hyperbola(movement, ultimate, at, failure_ratio, &mut work.trace)
        }
        MovementLaw::Line { .. } => line(movement, ultimate, at, &mut work.trace),
    };
}

/// Records the movement of the head.
fn record_head(head: &Head, load: Force, work: &mut Work) -> Size {
    work.trace.step(
        "w",
        "z of the lowest helix + sum of N l/(A E), N the load left in the shaft",
        Size::from_si(head.movement),
        [("P", load.into()), ("z", Size::from_si(head.tip).into())],
        &crate::source::SHAFT_SHORTENING,
    )
}

/// Load over movement.
///
/// K = P / w; P load (N) and w movement of the head (m). Range: some load. Source: definition.
/// Sign: positive in both directions.
fn secant(load: Force, movement: Size, work: &mut Work) -> Option<SpringStiffness> {
    (movement > Size::ZERO).then(|| {
        work.trace.step(
            "K",
            "P / w",
            SpringStiffness::from_si(load.si() / movement.si()),
            [("P", load.into()), ("w", movement.into())],
            &DERIVED,
        )
    })
}

/// The curve in equal steps of load.
fn points(shaft: &Shaft, count: u32) -> AnswerTable {
    let last = f64::from(count - 1);
    let ultimate = shaft.ultimate();
    let rows = (0..count).map(|i| {
        let load = ultimate * (f64::from(i) / last);
        vec![
            Cell::of(Force::from_si(load)),
            Cell::of(Size::from_si(shaft.under(load).movement)),
        ]
    });
    AnswerTable {
        columns: vec![
            AnswerColumn::of("load", Force::ROLE),
            AnswerColumn::of("movement", Size::ROLE),
        ],
        rows: rows.collect(),
    }
}
