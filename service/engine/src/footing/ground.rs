//! Geometry of the base and the stresses in the soil about it. What the soil bears is in
//! `families.rs`.

use super::outcome::{FootingBase, FootingStressKind};
use super::request::{Footing, FootingShape};
use super::soil::{FootingDrained, FootingSoil, FootingStrength};
use crate::contract::Work;
use crate::math::PI;
use crate::quantity::{Angle, Area, Length, SoilStress, UnitWeight};
use crate::soil::WATER_UNIT_WEIGHT;
use crate::source::{DERIVED, UFC_GROUNDWATER};
use crate::trace::Trace;

use super::codes::methods;
use super::options::FootingLocalShear;
use crate::bearing::factors::{local_shear_angle, local_shear_cohesion};

/// Base and soil as the theories see them.
#[derive(Debug, Clone, Copy)]
pub(super) struct Seat {
    /// Geometry and stresses, as answered.
    pub base: FootingBase,
    /// A circle has a shape factor of its own by Terzaghi.
    pub circle: bool,
    /// Friction angle in the factors.
    pub friction_angle: Angle,
    /// Cohesion in the cohesion term.
    pub cohesion: SoilStress,
}

impl FootingShape {
    /// Width, side or diameter.
    pub(super) fn width(&self) -> Length {
        match self {
            Self::Strip(s) => s.width,
            Self::Rectangle(r) => r.width,
            Self::Square(s) => s.width,
            Self::Circle(c) => c.diameter,
        }
    }

    fn width_to_length(&self) -> f64 {
        match self {
            Self::Strip(_) => 0.0,
            Self::Rectangle(r) => (r.width / r.length).min(1.0),
            Self::Square(_) | Self::Circle(_) => 1.0,
        }
    }

    fn area(&self) -> Option<Area> {
        let side = self.width().si();
        match self {
            Self::Strip(_) => None,
            Self::Rectangle(r) => Some(Area::from_si(side * r.length.si())),
            Self::Square(_) => Some(Area::from_si(side * side)),
            Self::Circle(_) => Some(Area::from_si(PI * side * side / 4.0)),
        }
    }
}

/// Water and weights of the soil, defaults filled in.
struct Weights {
    above: UnitWeight,
    below: UnitWeight,
    water: UnitWeight,
    water_depth: Option<Length>,
}

/// The base in its soil, reduced for local shear where asked.
pub(super) fn seat(
    footing: &Footing,
    soil: &FootingSoil,
    local_shear: FootingLocalShear,
    work: &mut Work,
) -> Seat {
    work.method(&methods::FOOTING_GROUNDWATER);
    work.trace.about(|| "soil at the base".to_owned());
    let weights = Weights {
        above: soil.unit_weight,
        below: soil.saturated_unit_weight.unwrap_or(soil.unit_weight),
        water: soil
            .water_unit_weight
            .unwrap_or_else(|| work.take(&WATER_UNIT_WEIGHT)),
        water_depth: soil.water_depth,
    };
    let trace = &mut work.trace;
    let width = footing.shape.width();
    let (stress_kind, overburden, unit_weight_below) = match soil.strength {
        FootingStrength::Drained(_) => (
            FootingStressKind::Effective,
            effective_overburden(footing.depth, &weights, trace),
            Some(unit_weight_below(footing.depth, width, &weights, trace)),
        ),
        FootingStrength::Undrained(_) => (
            FootingStressKind::Total,
            total_overburden(footing.depth, &weights, trace),
            None,
        ),
    };
    let (friction_angle, cohesion) = strength(&soil.strength, local_shear, work);
    let base = FootingBase {
        width,
        area: footing.shape.area(),
        width_to_length_ratio: footing.shape.width_to_length(),
        depth_ratio: footing.depth / width,
        stress_kind,
        overburden,
        unit_weight_below,
    };
    Seat {
        base,
        circle: matches!(footing.shape, FootingShape::Circle(_)),
        friction_angle,
        cohesion,
    }
}

fn strength(
    strength: &FootingStrength,
    local_shear: FootingLocalShear,
    work: &mut Work,
) -> (Angle, SoilStress) {
    let (phi, c) = match *strength {
        FootingStrength::Drained(FootingDrained {
            friction_angle,
            cohesion,
        }) => (friction_angle, cohesion.unwrap_or(SoilStress::ZERO)),
        FootingStrength::Undrained(u) => (Angle::ZERO, u.undrained_strength),
    };
    match local_shear {
        FootingLocalShear::None => (phi, c),
        FootingLocalShear::TwoThirds => {
            work.method(&methods::FOOTING_LOCAL_SHEAR);
            (
                local_shear_angle(phi, &mut work.trace),
                local_shear_cohesion(c, &mut work.trace),
            )
        }
    }
}

/// Thickness of soil above the water table within a depth.
fn dry(depth: Length, weights: &Weights) -> Length {
    match weights.water_depth {
        Some(water) if water < depth => water,
        _ => depth,
    }
}

/// Effective overburden at the base.
///
/// s'_v = gamma h + (gamma_sat - gamma_w)(D - h); h height above water within the depth D
/// (m), gamma, gamma_sat, gamma_w unit weights above and below water and of water (N/m3).
/// Range: from 0. Source: definition. Sign: compression.
fn effective_overburden(depth: Length, w: &Weights, trace: &mut Trace) -> SoilStress {
    let above = dry(depth, w);
    let wet = depth - above;
    let stress = w.above.si() * above.si() + (w.below.si() - w.water.si()) * wet.si();
    trace.step(
        "s'_v",
        "gamma h + (gamma_sat - gamma_w)(D - h)",
        SoilStress::from_si(stress),
        [
            ("gamma", w.above.into()),
            ("gamma_sat", w.below.into()),
            ("gamma_w", w.water.into()),
            ("D", depth.into()),
            ("h", above.into()),
        ],
        &DERIVED,
    )
}

/// Total overburden at the base.
///
/// s_v = gamma h + gamma_sat (D - h); h height above water within the depth D (m), gamma and
/// gamma_sat unit weights above and below water (N/m3). Range: from 0. Source: definition.
/// Sign: compression.
fn total_overburden(depth: Length, w: &Weights, trace: &mut Trace) -> SoilStress {
    let above = dry(depth, w);
    let stress = w.above.si() * above.si() + w.below.si() * (depth - above).si();
    trace.step(
        "s_v",
        "gamma h + gamma_sat (D - h)",
        SoilStress::from_si(stress),
        [
            ("gamma", w.above.into()),
            ("gamma_sat", w.below.into()),
            ("D", depth.into()),
            ("h", above.into()),
        ],
        &DERIVED,
    )
}

/// Mean effective unit weight below the base.
///
/// gamma' = [gamma h + (gamma_sat - gamma_w)(B - h)] / B; h height above water within one
/// width B below the base (m), unit weights in N/m3. Range: B above 0. Source: UFC 3-220-20
/// 5-3.2 and eq. 5-15. Sign: none.
fn unit_weight_below(depth: Length, width: Length, w: &Weights, trace: &mut Trace) -> UnitWeight {
    let above = match w.water_depth {
        Some(water) => Length::from_si((water - depth).si().clamp(0.0, width.si())),
        None => width,
    };
    let share = above / width;
    let mean = w.above.si() * share + (w.below.si() - w.water.si()) * (1.0 - share);
    trace.step(
        "gamma'",
        "[gamma h + (gamma_sat - gamma_w)(B - h)] / B",
        UnitWeight::from_si(mean),
        [
            ("gamma", w.above.into()),
            ("gamma_sat", w.below.into()),
            ("gamma_w", w.water.into()),
            ("B", width.into()),
            ("h", above.into()),
        ],
        &UFC_GROUNDWATER,
    )
}
