//! An elastic shaft on elements that each carry more the further they move: the load and the
//! movement of its head follow from the movement of its tip. Nothing here knows a pile.

use crate::quantity::{Force, Length, Size};
use crate::source::{ELASTIC_COLUMN, MOVEMENT_HYPERBOLA, MOVEMENT_TO_MOBILISE};
use crate::trace::Trace;

/// How an element carries load as it moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum MovementLaw {
    /// A hyperbola to the ultimate, held from there on.
    Hyperbola {
        /// Movement at the ultimate, m.
        at_ultimate: f64,
        failure_ratio: f64,
    },
    /// A straight line to the ultimate, held from there on.
    Line { at_ultimate: f64 },
}

/// Something on the shaft that carries load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Element {
    /// From the head down to it, m.
    pub from_head: f64,
    /// What it carries at most, N.
    pub ultimate: f64,
    pub law: MovementLaw,
}

impl Element {
    /// Load at a movement.
    pub fn load(&self, movement: f64) -> f64 {
        let (movement, ultimate) = (Size::from_si(movement), Force::from_si(self.ultimate));
        let load = match self.law {
            MovementLaw::Hyperbola {
                at_ultimate,
                failure_ratio,
            } => {
                let at = Size::from_si(at_ultimate);
                hyperbola(movement, ultimate, at, failure_ratio, &mut Trace::off())
            }
            MovementLaw::Line { at_ultimate } => line(
                movement,
                ultimate,
                Size::from_si(at_ultimate),
                &mut Trace::off(),
            ),
        };
        load.si()
    }

    /// Movement at which it carries all it can.
    pub const fn at_ultimate(&self) -> f64 {
        match self.law {
            MovementLaw::Hyperbola { at_ultimate, .. } | MovementLaw::Line { at_ultimate } => {
                at_ultimate
            }
        }
    }
}

/// A shaft with its elements, from the head down, the lowest at its tip.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Shaft {
    pub elements: Vec<Element>,
    /// Steel area times elastic modulus, N.
    pub rigidity: f64,
}

/// The head for one movement of the tip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Head {
    pub tip: f64,
    pub load: f64,
    pub movement: f64,
}

/// Halvings of the interval that holds the movement of the tip: as many as a double can tell
/// apart, whatever the load.
pub(crate) const HALVINGS: u32 = 200;

impl Shaft {
    /// The head for a movement of the tip; `each` hears the element, its movement and load,
    /// from the tip up.
    ///
    /// w_i = w_(i+1) + N_i l_i / (A E), N_i = sum of q_j(w_j) from the tip up to i. As every
    /// q_j grows ever more slowly with its movement, load and movement of the head grow with
    /// that of the tip, and P L / (A E) stands off the movement by less and less; so each
    /// question has one answer.
    pub fn head(&self, tip: f64, mut each: impl FnMut(usize, f64, f64)) -> Head {
        let (mut movement, mut load) = (tip, 0.0);
        for (i, element) in self.elements.iter().enumerate().rev() {
            let carried = element.load(movement);
            each(i, movement, carried);
            load += carried;
            let above = match i.checked_sub(1) {
                Some(up) => self.elements[up].from_head,
                None => 0.0,
            };
            movement += load * (element.from_head - above) / self.rigidity;
        }
        Head {
            tip,
            load,
            movement,
        }
    }

    fn at(&self, tip: f64) -> Head {
        self.head(tip, |_, _, _| {})
    }

    /// From the head to the tip, m.
    pub fn length(&self) -> f64 {
        self.elements.last().map_or(0.0, |e| e.from_head)
    }

    /// Change of length with the whole load down to the tip.
    pub fn elastic_line(&self, load: f64) -> f64 {
        load * self.length() / self.rigidity
    }

    /// The greatest load.
    pub fn ultimate(&self) -> f64 {
        self.elements.iter().map(|e| e.ultimate).sum()
    }

    /// A movement of the tip at which every element carries all it can.
    fn enough(&self) -> f64 {
        self.elements
            .iter()
            .map(Element::at_ultimate)
            .fold(0.0, f64::max)
    }

    /// The head under a load, at most the ultimate.
    pub fn under(&self, load: f64) -> Head {
        if load <= 0.0 {
            return self.at(0.0);
        }
        self.meet(self.enough(), |head| head.load >= load)
    }

    /// The head moved by so much.
    pub fn moved(&self, movement: f64) -> Head {
        self.meet(movement, |head| head.movement >= movement)
    }

    /// The head moved by so much beyond its elastic line.
    pub fn moved_net(&self, movement: f64) -> Head {
        let high = movement + self.elastic_line(self.ultimate());
        self.meet(high, |head| {
            head.movement - self.elastic_line(head.load) >= movement
        })
    }

    /// The least movement of the tip at which something is reached that is reached from there
    /// on, `high` at the latest.
    fn meet(&self, high: f64, reached: impl Fn(&Head) -> bool) -> Head {
        let (mut low, mut high) = (0.0, high);
        for _ in 0..HALVINGS {
            let middle = low + (high - low) / 2.0;
            if middle <= low || middle >= high {
                break;
            }
            if reached(&self.at(middle)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        self.at(high)
    }
}

/// Load of a helix that moves.
///
/// q = q_u x / (1 - R_f + R_f x), x = z/z_u, from z_u on q_u: the hyperbola z/(a + b z) with a =
/// (1 - R_f) z_u/q_u and b = R_f/q_u; z movement and z_u that at the ultimate (m), q_u ultimate
/// (N), R_f failure ratio, q_u over the load it tends to. Range: z from 0 on, R_f from 0 to 0.95.
/// Source: choice of this service through the movements of UFC 3-220-20. Sign: against the
/// movement.
pub fn hyperbola(
    movement: Size,
    ultimate: Force,
    at_ultimate: Size,
    failure_ratio: f64,
    trace: &mut Trace,
) -> Force {
    let x = movement.si() / at_ultimate.si();
    let share = if x >= 1.0 {
        1.0
    } else {
        x / (1.0 - failure_ratio + failure_ratio * x)
    };
    trace.step(
        "q",
        "q_u x / (1 - R_f + R_f x), x = z/z_u, at most q_u",
        ultimate * share,
        [
            ("z", movement.into()),
            ("q_u", ultimate.into()),
            ("z_u", at_ultimate.into()),
            ("R_f", failure_ratio.into()),
        ],
        &MOVEMENT_HYPERBOLA,
    )
}

/// Load of adhesion that moves.
///
/// q = q_u z/z_u, from z_u on q_u; z movement and z_u that at the ultimate (m), q_u ultimate
/// (N). Range: z from 0 on. Source: UFC 3-220-20. Sign: against the movement.
pub fn line(movement: Size, ultimate: Force, at_ultimate: Size, trace: &mut Trace) -> Force {
    let share = (movement.si() / at_ultimate.si()).min(1.0);
    trace.step(
        "q",
        "q_u z/z_u, at most q_u",
        ultimate * share,
        [
            ("z", movement.into()),
            ("q_u", ultimate.into()),
            ("z_u", at_ultimate.into()),
        ],
        &MOVEMENT_TO_MOBILISE,
    )
}

/// Change of length of a shaft with the same load over its length.
///
/// delta = P L / (A E); P load (N), L length (m), A steel area (m2), E elastic modulus (Pa).
/// Range: elastic steel. Source: Hooke's law, UFC 3-220-20 eq. 6-45. Sign: shortening in
/// compression, stretching in tension.
pub fn elastic_line(load: Force, shaft: &Shaft, trace: &mut Trace) -> Size {
    let length = Length::from_si(shaft.length());
    trace.step(
        "delta",
        "P L / (A E)",
        Size::from_si(shaft.elastic_line(load.si())),
        [
            ("P", load.into()),
            ("L", length.into()),
            ("A E", Force::from_si(shaft.rigidity).into()),
        ],
        &ELASTIC_COLUMN,
    )
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn near(got: f64, expected: f64, relative: f64) {
        assert!(
            (got - expected).abs() <= expected.abs() * relative,
            "{got} against {expected}"
        );
    }

    fn shaft() -> impl Strategy<Value = Shaft> {
        let element = (0.3..3.0, 1e3..1e5, 0.002..0.05, 0.0..0.95, any::<bool>());
        let elements = prop::collection::vec(element, 1..6);
        (elements, 1e7..1e9).prop_map(|(list, rigidity)| {
            let mut from_head = 0.0;
            let elements = list
                .into_iter()
                .map(|(gap, ultimate, at_ultimate, r, bends)| {
                    from_head += gap;
                    Element {
                        from_head,
                        ultimate,
                        law: if bends {
                            MovementLaw::Hyperbola {
                                at_ultimate,
                                failure_ratio: r,
                            }
                        } else {
                            MovementLaw::Line { at_ultimate }
                        },
                    }
                });
            Shaft {
                elements: elements.collect(),
                rigidity,
            }
        })
    }

    #[test]
    fn half_the_ultimate_is_at_a_fifth_of_the_movement() {
        let helix = Element {
            from_head: 1.0,
            ultimate: 100.0,
            law: MovementLaw::Hyperbola {
                at_ultimate: 0.01,
                failure_ratio: 0.75,
            },
        };
        near(helix.load(0.002), 50.0, 1e-12);
        near(helix.load(0.01), 100.0, 1e-12);
        near(helix.load(0.5), 100.0, 1e-12);
        assert_eq!(helix.load(0.0), 0.0);
    }

    proptest! {
        /// The questions are answered: the head under the load they come to moves as asked.
        #[test]
        fn each_question_has_its_answer(shaft in shaft(), t in 0.001..1.0, far in 1e-4..0.2) {
            let load = shaft.ultimate() * t;
            near(shaft.under(load).load, load, 1e-9);
            near(shaft.moved(far).movement, far, 1e-9);
            let net = shaft.moved_net(far);
            near(net.movement - shaft.elastic_line(net.load), far, 1e-7);
        }

        /// Beyond its elastic line the head first may hang back, then only gains: once past a
        /// movement it stays past it, so that the bisection has one answer.
        #[test]
        fn past_a_net_movement_the_head_stays_past_it(shaft in shaft(), far in 1e-4..0.1) {
            let found = shaft.moved_net(far).tip;
            for i in 1..40 {
                let tip = found * (1.0 + f64::from(i) / 10.0);
                let head = shaft.at(tip);
                prop_assert!(head.movement - shaft.elastic_line(head.load) >= far * (1.0 - 1e-9));
                let before = shaft.at(found * f64::from(i) / 41.0);
                prop_assert!(before.movement - shaft.elastic_line(before.load) <= far);
            }
        }

        /// On a rigid shaft everything moves as one: the loads at the same movement add up.
        #[test]
        fn a_rigid_shaft_moves_as_one(shaft in shaft(), far in 1e-4..0.1) {
            let rigid = Shaft { rigidity: 1e20, ..shaft };
            let sum: f64 = rigid.elements.iter().map(|e| e.load(far)).sum();
            near(rigid.moved(far).load, sum, 1e-6);
        }
    }
}
