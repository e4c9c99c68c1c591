//! The movement of the head from what was found of the pile: its helices as elements, the
//! load it works at, the answers. The equations are in `model.rs`.

use super::asked::{Asked, COARSE_MOVEMENT, FAILURE_RATIO, FINE_MOVEMENT, SHAFT_MODULUS};
use super::model::{Element, Head, MovementLaw, Shaft, elastic_line, hyperbola, line};
use super::outcome::{
    DirectionMovement, HeadMovementFindings, HelixMovement, LoadsAtMovement, MovementAtLoad,
    WorkingLoadSource,
};
use crate::answer_table::{AnswerColumn, AnswerTable, Cell};
use crate::contract::{Check, SubjectKind, Work};
use crate::helix::codes::{checks, methods, warnings};
use crate::helix::outcome::AxialResistance;
use crate::helix::request::Request;
use crate::helix::settings::Settings;
use crate::quantity::{Force, Length, Size, SpringStiffness};
use crate::source::{
    AC358_10_PERCENT, DERIVED, MOVEMENT_HYPERBOLA, SHAFT_SHORTENING, TEN_PERCENT_GROSS,
};

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
    let [compression, tension] = found.map(|r| r.and_then(|r| asked.direction(r, rigidity, work)));
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
        let at_working_load =
            held.then(|| self.at_load(working_load, resistance, &shaft, adhesion_at, work));
        if working_load_from == WorkingLoadSource::HalfOfUltimate {
            self.not_judged("no unfactored load is known", resistance, work);
        } else {
            self.judge(resistance, working_load, at_working_load.as_ref(), work);
        }
        Some(DirectionMovement {
            ultimate: resistance.ultimate,
            share_factor: share,
            working_load,
            working_load_from,
            at_working_load,
            at_tenth_of_helix: self.at_tenth(&shaft, work),
            points: self.question.point_count.map(|n| points(&shaft, n)),
        })
    }

    fn nothing_carries(&self, resistance: &AxialResistance, work: &mut Work) {
        let direction = resistance.direction.name();
        work.warn(
            &warnings::HEAD_MOVEMENT_NOT_FOUND,
            format!("nothing carries the pile in {direction}"),
        );
        self.not_judged("nothing carries the pile", resistance, work);
    }

    /// A limit that cannot be judged in a direction in which it should be.
    fn not_judged(&self, why: &str, resistance: &AxialResistance, work: &mut Work) {
        if self.question.limit.is_none() || !self.is_judged(resistance) {
            return;
        }
        let why = format!("in {}: {why}", resistance.direction.name());
        work.check(
            Check::not_evaluated(&checks::HEAD_MOVEMENT, why, &MOVEMENT_HYPERBOLA)
                .subject(SubjectKind::Pile, self.request.pile.name()),
        );
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

    /// Loads at a movement of a tenth of the largest helix.
    ///
    /// P_gross where w = 0.1 D, P_net where w - P L/(A E) = 0.1 D; w movement of the head and D
    /// largest helix (m). Range: any. Source: gross by old custom, net as acceptance criteria
    /// read load tests. Sign: positive in both directions.
    fn at_tenth(&self, shaft: &Shaft, work: &mut Work) -> LoadsAtMovement {
        let movement = self.largest / 10.0;
        let gross = Force::from_si(shaft.moved(movement.si()).load);
        let net = Force::from_si(shaft.moved_net(movement.si()).load);
        let given = [("D", self.largest.into())];
        let gross_rule = "load at w = 0.1 D";
        work.trace.step(
            "P_gross",
            gross_rule,
            gross,
            given.clone(),
            &TEN_PERCENT_GROSS,
        );
        let net_rule = "load at w - P L/(A E) = 0.1 D";
        work.trace
            .step("P_net", net_rule, net, given, &AC358_10_PERCENT);
        LoadsAtMovement {
            movement,
            gross,
            net,
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
        &SHAFT_SHORTENING,
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
