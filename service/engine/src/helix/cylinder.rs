//! The cylinder of soil between the helices: shear along it, layer by layer, with the
//! diameter that tapers from helix to helix.

use super::ground::{Disc, Ground};
use super::law::{DrainedLaw, Law};
use super::methods::CylinderLateralStress;
use super::pile::AxialDirection;
use super::solve::{Borne, Witness};
use super::uplift::ku_cylinder;
use super::zone::{ZonePart, parts_between};
use crate::math;
use crate::math::PI;
use crate::quantity::{Angle, Force, Length, Size, SoilStress};
use crate::soil::Strata;
use crate::source::{CYLINDER_AT_REST, CYLINDER_FORM, DERIVED};
use crate::trace::Trace;

/// Resistance by the cylinder.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Cylinder {
    /// The helix at its end.
    pub end: usize,
    pub end_bearing: Force,
    pub shear: Force,
    pub total: Force,
}

/// Part of the cylinder within one layer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct GapPart {
    pub layer: usize,
    pub top: Length,
    pub bottom: Length,
    pub mean_diameter: Size,
    /// Lateral over vertical effective stress, in sand.
    pub lateral_stress_ratio: Option<f64>,
    pub mean_shear_stress: SoilStress,
    pub shear: Force,
}

/// Resistance by the cylinder between the helices in credit, `found` by their place; none
/// with fewer than two.
pub(crate) fn cylinder(
    ground: &Ground,
    discs: &[Disc],
    found: &impl Fn(usize) -> Option<Borne>,
    trace: &mut Trace,
    witness: &mut impl Witness,
) -> Option<Cylinder> {
    let credited = || (0..discs.len()).filter(|i| found(*i).is_some());
    let (first, last) = (credited().next()?, credited().next_back()?);
    if first == last {
        return None;
    }
    let top = &discs[first];
    let top_ratio = ground.embedment(top).si() / top.diameter.si();
    let mut shear = Force::ZERO;
    let mut upper = first;
    for lower in credited().skip(1) {
        witness.gap(upper, lower, trace);
        shear = shear
            + gap(
                ground,
                &discs[upper],
                &discs[lower],
                top_ratio,
                trace,
                witness,
            );
        upper = lower;
    }
    let end = match ground.direction {
        AxialDirection::Compression => last,
        AxialDirection::Tension => first,
    };
    let end_bearing = found(end).map_or(Force::ZERO, |b| b.resistance);
    witness.whole("cylinder", trace);
    Some(Cylinder {
        end,
        end_bearing,
        shear,
        total: cylinder_total(end_bearing, shear, trace),
    })
}

/// Resistance by the cylinder.
///
/// Q_cyl = Q_end + sum of T; bearing of the helix at the end and shear over the gaps (N). Range:
/// two helices or more. Source: Mooney, Adamczak and Clemence 1985. Sign: against the load.
fn cylinder_total(end_bearing: Force, shear: Force, trace: &mut Trace) -> Force {
    trace.step(
        "Q_cyl",
        "Q_end + sum of T over the gaps",
        end_bearing + shear,
        [("Q_end", end_bearing.into()), ("sum of T", shear.into())],
        &CYLINDER_FORM,
    )
}

fn gap(
    ground: &Ground,
    upper: &Disc,
    lower: &Disc,
    top_ratio: f64,
    trace: &mut Trace,
    witness: &mut impl Witness,
) -> Force {
    let diameter = mean_diameter(upper.diameter, lower.diameter, trace);
    let mut shear = Force::ZERO;
    for zone in parts_between(ground.strata, upper.depth, lower.depth, Length::ZERO) {
        let part = part(ground, &zone, diameter, top_ratio, trace);
        witness.shears(&part);
        shear = shear + part.shear;
    }
    shear
}

fn part(
    ground: &Ground,
    zone: &ZonePart,
    mean_diameter: Size,
    top_ratio: f64,
    trace: &mut Trace,
) -> GapPart {
    let (top, bottom) = (zone.top, zone.bottom);
    let (lateral_stress_ratio, mean_shear_stress) = match &ground.laws[zone.layer] {
        Law::Undrained { su } => (None, *su),
        Law::Drained(law) => {
            let (k, k_tan) = lateral_stress(ground, law, top_ratio, trace);
            let mean = mean_effective_stress(ground.strata, top, bottom, trace);
            (Some(k), sand_shear_stress(mean, k_tan, trace))
        }
        Law::None => (None, SoilStress::ZERO),
    };
    GapPart {
        layer: zone.layer,
        top,
        bottom,
        mean_diameter,
        lateral_stress_ratio,
        mean_shear_stress,
        shear: cylinder_shear(mean_diameter, bottom - top, mean_shear_stress, trace),
    }
}

/// K and K tan phi on the cylinder.
fn lateral_stress(
    ground: &Ground,
    law: &DrainedLaw,
    top_ratio: f64,
    trace: &mut Trace,
) -> (f64, f64) {
    let pulled = ground.direction == AxialDirection::Tension;
    let tangent = law.friction.tangent;
    match ground.settings.cylinder_lateral_stress {
        CylinderLateralStress::MitschClemence1985 if pulled => {
            let ku = ku_cylinder(top_ratio, law.cylinder, trace);
            (ku, ku * tangent)
        }
        CylinderLateralStress::MitschClemence1985 | CylinderLateralStress::AtRest => {
            let k_tan = if trace.is_on() {
                at_rest_shear_ratio(law.friction.angle, trace)
            } else {
                law.at_rest
            };
            (k_tan / tangent, k_tan)
        }
    }
}

/// Mean diameter of the cylinder between two helices.
///
/// D_m = (D_upper + D_lower)/2; diameters (m). Range: any. Source: mean of the two ends; that
/// the surface follows the taper is from Livneh and El Naggar 2008. Sign: none.
pub fn mean_diameter(upper: Size, lower: Size, trace: &mut Trace) -> Size {
    trace.step(
        "D_m",
        "(D_upper + D_lower)/2",
        (upper + lower) / 2.0,
        [("D_upper", upper.into()), ("D_lower", lower.into())],
        &DERIVED,
    )
}

/// Shear of sand at rest against a vertical surface, over the vertical effective stress.
///
/// K tan phi = (1 - sin phi) tan phi; phi friction angle. Range: 0 to 50 deg; from 38.2 deg,
/// where it is greatest, it is held so that denser sand never counts less. Source: choice of
/// this service. Sign: none.
pub fn at_rest_shear_ratio(phi: Angle, trace: &mut Trace) -> f64 {
    // sin of the angle at which (1 - sin phi) tan phi is greatest: sin (1 + sin) = 1
    let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
    let sin = math::sin(phi.si()).min(golden);
    let tan = sin / (1.0 - sin * sin).sqrt();
    trace.step(
        "K tan phi",
        "(1 - sin phi) tan phi, held from 38.2 deg",
        (1.0 - sin) * tan,
        [("phi", phi.into())],
        &CYLINDER_AT_REST,
    )
}

/// Mean vertical effective stress over a height within one layer.
///
/// s'_m = (1/h) integral of s'_v dz; exact by trapezia, as s'_v is linear between the depths at
/// which the unit weight or the water pressure changes. Pa from N/m3 and m. Range: within one layer. Source: definition.
/// Sign: none.
pub(crate) fn mean_effective_stress(
    strata: &Strata,
    top: Length,
    bottom: Length,
    trace: &mut Trace,
) -> SoilStress {
    trace.step(
        "s'_m",
        "mean of s'_v over the height",
        strata.mean_effective_stress(top, bottom),
        [("top", top.into()), ("bottom", bottom.into())],
        &DERIVED,
    )
}

/// Shear stress of sand on the cylinder.
///
/// tau = s'_m K tan phi; s'_m mean vertical effective stress (Pa), K lateral stress coefficient,
/// phi friction angle. Range: drained loading. Source: Mitsch and Clemence 1985. Sign: against
/// the load.
pub fn sand_shear_stress(mean: SoilStress, k_tan: f64, trace: &mut Trace) -> SoilStress {
    trace.step(
        "tau",
        "s'_m K tan phi",
        mean * k_tan,
        [("s'_m", mean.into()), ("K tan phi", k_tan.into())],
        &CYLINDER_FORM,
    )
}

/// Shear on the cylinder over a height within one layer.
///
/// T = pi D_m h tau; D_m mean diameter and h height (m), tau shear stress, s_u in clay (Pa).
/// Range: any. Source: Mooney, Adamczak and Clemence 1985. Sign: against the load.
pub fn cylinder_shear(
    diameter: Size,
    height: Length,
    stress: SoilStress,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "T",
        "pi D_m h tau",
        Force::from_si(PI * diameter.si() * height.si() * stress.si()),
        [
            ("D_m", diameter.into()),
            ("h", height.into()),
            ("tau", stress.into()),
        ],
        &CYLINDER_FORM,
    )
}
