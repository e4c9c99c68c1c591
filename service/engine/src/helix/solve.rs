//! The solution for one direction of load, as numbers: each helix for itself, the cylinder
//! between them, adhesion, the lesser. It allocates nothing, so that a curve can ask it at
//! many depths; whoever wants names and parts listens as a witness.

use super::adhesion::adhesion;
use super::bearing::{Seat, SoilBearing, soil_bearing};
use super::cylinder::{Cylinder, GapPart, cylinder};
use super::ground::{Disc, Ground};
use super::methods::BearingZoneRule;
use super::outcome::{GoverningMode, NoCreditReason};
use super::pile::AxialDirection;
use super::plates::SAME_DEPTH_M;
use super::punching::{Punching, punching};
use super::zone::{ZonePart, load_side};
use crate::limits;
use crate::quantity::{Area, Force, Length, SoilStress};
use crate::soil::Strength;
use crate::source::{BEARING_ZONE, CYLINDER_FORM, DERIVED, IBC_1810_3_3_1_9};
use crate::trace::Trace;

/// Listens to a solution as it is made.
pub(crate) trait Witness {
    /// Helix `i` comes next.
    fn helix(&mut self, _i: usize, _trace: &mut Trace) {}
    /// A part of the zone of helix `i` comes next.
    fn part(&mut self, _i: usize, _part: &ZonePart, _trace: &mut Trace) {}
    /// What that part bears.
    fn bears(&mut self, _part: &ZonePart, _found: &SoilBearing) {}
    /// What helix `i` bears.
    fn borne(&mut self, _i: usize, _borne: &Borne) {}
    /// The cylinder between helices `upper` and `lower` comes next.
    fn gap(&mut self, _upper: usize, _lower: usize, _trace: &mut Trace) {}
    /// What a part of it shears.
    fn shears(&mut self, _part: &GapPart) {}
    /// A layer that adheres to the shaft comes next.
    fn adheres(&mut self, _layer: usize, _trace: &mut Trace) {}
    /// Something about the whole pile comes next.
    fn whole(&mut self, _what: &'static str, _trace: &mut Trace) {}
}

/// A witness of nothing.
pub(crate) struct Silent;

impl Witness for Silent {}

/// What one helix bears.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Borne {
    pub seat: Seat,
    pub no_credit: Option<NoCreditReason>,
    pub bearing: SoilStress,
    pub resistance: Force,
    /// Weaker soil below that it could punch into; compression only.
    pub punching: Option<Punching>,
}

impl Borne {
    /// Resistance with the bearing held at what the weaker soil below takes.
    fn held(&self, area: Area) -> Force {
        match &self.punching {
            Some(p) if p.limit < self.bearing => Force::from_si(area.si() * p.limit.si()),
            _ => self.resistance,
        }
    }
}

/// The solution.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Solution {
    /// Sum of the helices, each for itself.
    pub individual: Force,
    pub cylinder: Option<Cylinder>,
    pub mode: GoverningMode,
    pub adhesion: Force,
    pub ultimate: Force,
    /// The same with each helix held at what weaker soil below it takes.
    pub held: Force,
}

/// Ultimate resistance of helices in their ground, from the top down.
pub(crate) fn solve(
    ground: &Ground,
    discs: &[Disc],
    trace: &mut Trace,
    witness: &mut impl Witness,
) -> Solution {
    let mut all: [Option<Borne>; limits::HELICES] = [None; limits::HELICES];
    for (i, (disc, slot)) in discs.iter().zip(&mut all).enumerate() {
        let borne = bear(ground, disc, i, trace, witness);
        witness.borne(i, &borne);
        *slot = Some(borne);
    }
    let found = |i: usize| all[i].filter(|b| b.no_credit.is_none());
    witness.whole("individual bearing", trace);
    let total = sum_over(&all, discs, |borne, _| borne.resistance);
    let individual = sum_of_helices(total, discs.len(), trace);
    let cylinder = cylinder(ground, discs, &found, trace, witness);
    let adhesion = adhesion(ground, discs, trace, witness);
    witness.whole("pile", trace);
    let (mode, lesser) = lesser(individual, cylinder.map(|c| c.total), trace);
    let ultimate = trace.step(
        "Q_ult",
        "Q + Q_shaft",
        lesser + adhesion,
        [("Q", lesser.into()), ("Q_shaft", adhesion.into())],
        &DERIVED,
    );
    Solution {
        individual,
        cylinder,
        mode,
        adhesion,
        ultimate,
        held: held(&all, discs, cylinder, adhesion, ultimate),
    }
}

fn sum_over(all: &[Option<Borne>], discs: &[Disc], of: impl Fn(&Borne, &Disc) -> Force) -> Force {
    let pairs = all.iter().flatten().zip(discs);
    pairs.map(|(borne, disc)| of(borne, disc)).sum()
}

/// The ultimate resistance with each helix held at what weaker soil below it takes.
fn held(
    all: &[Option<Borne>],
    discs: &[Disc],
    cylinder: Option<Cylinder>,
    adhesion: Force,
    ultimate: Force,
) -> Force {
    let binds = |b: &Borne| b.punching.is_some_and(|p| p.limit < b.bearing);
    if !all.iter().flatten().any(binds) {
        return ultimate;
    }
    let individual = sum_over(all, discs, |borne, disc| borne.held(disc.area));
    let lesser = match cylinder {
        None => individual,
        Some(c) => {
            let end = all[c.end].map_or(Force::ZERO, |b| b.held(discs[c.end].area));
            individual.min(end + c.shear)
        }
    };
    lesser + adhesion
}

/// One helix bearing for itself.
fn bear(
    ground: &Ground,
    disc: &Disc,
    i: usize,
    trace: &mut Trace,
    witness: &mut impl Witness,
) -> Borne {
    let s = ground.settings;
    witness.helix(i, trace);
    let seat = ground.seat(disc, trace);
    let no_credit = no_credit(ground, disc);
    let mut sum = ZoneSum::default();
    for part in load_side(ground, disc, s.bearing_zone_ratio) {
        let found = if no_credit.is_some() || part.above_credit {
            SoilBearing::NONE
        } else {
            witness.part(i, &part, trace);
            let law = &ground.laws[part.layer];
            soil_bearing(law, &seat, ground.direction, s, trace)
        };
        witness.bears(&part, &found);
        sum.add(&part, found.stress);
    }
    witness.helix(i, trace);
    let bearing = match no_credit {
        Some(_) => SoilStress::ZERO,
        None => sum.together(s.bearing_zone_rule, trace),
    };
    let punching = match (ground.direction, no_credit) {
        (AxialDirection::Compression, None) => punching(ground, disc, bearing, trace),
        _ => None,
    };
    Borne {
        resistance: helix_resistance(disc.area, bearing, trace),
        seat,
        no_credit,
        bearing,
        punching,
    }
}

/// Why a helix is given no credit, if it is not.
fn no_credit(ground: &Ground, disc: &Disc) -> Option<NoCreditReason> {
    let credited = ground.settings.no_credit_above.si();
    if credited > 0.0 && disc.depth.si() <= credited + SAME_DEPTH_M {
        return Some(NoCreditReason::AboveCreditDepth);
    }
    let dead = |layer: usize| ground.strata.layers[layer].strength == Strength::NoCredit;
    // fill within the zone counts above the depth of credit too: a deeper one gives no more
    let in_zone =
        || load_side(ground, disc, ground.settings.bearing_zone_ratio).any(|p| dead(p.layer));
    (ground.touching(disc).is_some_and(dead) || in_zone()).then_some(NoCreditReason::FillOrOrganic)
}

/// Bearing of a zone as its parts are met.
#[derive(Default)]
struct ZoneSum {
    count: usize,
    first: f64,
    least: f64,
    sum: f64,
    height: f64,
}

impl ZoneSum {
    fn add(&mut self, part: &ZonePart, bearing: SoilStress) {
        let (q, h) = (bearing.si(), part.height());
        if self.count == 0 {
            (self.first, self.least) = (q, q);
        }
        self.count += 1;
        self.least = self.least.min(q);
        self.sum += q * h;
        self.height += h;
    }

    /// Bearing of the soils of a zone taken together.
    ///
    /// q = sum q_i h_i / sum h_i, or the least q_i; q_i bearing of each soil by its own law
    /// (Pa), h_i height of its part of the zone (m). Range: at least one part; a zone of no
    /// height is its one soil. Source: UFC 3-220-20, 6-5.4.3.2; depth of the zone by choice.
    /// Sign: none.
    fn together(&self, rule: BearingZoneRule, trace: &mut Trace) -> SoilStress {
        match rule {
            BearingZoneRule::Weakest => trace.step(
                "q_zone",
                "least q of the zone",
                SoilStress::from_si(self.least),
                [],
                &BEARING_ZONE,
            ),
            BearingZoneRule::ThicknessMean => {
                let mean = if self.count > 1 && self.height > 0.0 {
                    self.sum / self.height
                } else {
                    self.first
                };
                trace.step(
                    "q_zone",
                    "sum of q h over the zone / height of the zone",
                    SoilStress::from_si(mean),
                    [("height", Length::from_si(self.height).into())],
                    &BEARING_ZONE,
                )
            }
        }
    }
}

/// Resistance of a helix.
///
/// Q = A q; A area that bears (m2), q bearing (Pa). Range: any. Source: IBC 1810.3.3.1.9 item
/// 1. Sign: against the load.
fn helix_resistance(area: Area, bearing: SoilStress, trace: &mut Trace) -> Force {
    trace.step(
        "Q",
        "A q_zone",
        Force::from_si(area.si() * bearing.si()),
        [("A", area.into()), ("q_zone", bearing.into())],
        &IBC_1810_3_3_1_9,
    )
}

/// Individual bearing of the pile.
///
/// Q_ind = sum of A_i q_i; resistances of the helices (N). Range: any. Source: IBC
/// 1810.3.3.1.9 item 1. Sign: against the load.
fn sum_of_helices(total: Force, count: usize, trace: &mut Trace) -> Force {
    trace.step(
        "Q_ind",
        "sum of Q over the helices",
        total,
        [("n", (count as f64).into())],
        &IBC_1810_3_3_1_9,
    )
}

/// The lesser of the modes.
///
/// Q = min(Q_ind, Q_cyl); individual bearing and cylinder (N). Range: with fewer than two
/// helices in credit Q_ind alone. Source: both quoted by Tappenden and Sego 2007; the lesser
/// is an upper-bound reading. Sign: against the load.
fn lesser(individual: Force, cylinder: Option<Force>, trace: &mut Trace) -> (GoverningMode, Force) {
    let Some(cylinder) = cylinder else {
        return (GoverningMode::IndividualBearing, individual);
    };
    let mode = if cylinder < individual {
        GoverningMode::CylindricalShear
    } else {
        GoverningMode::IndividualBearing
    };
    let q = trace.step(
        "Q",
        "min(Q_ind, Q_cyl)",
        individual.min(cylinder),
        [("Q_ind", individual.into()), ("Q_cyl", cylinder.into())],
        &CYLINDER_FORM,
    );
    (mode, q)
}
