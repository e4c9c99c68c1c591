//! The cylinder of soil between the helices: shear along it, layer by layer, with the
//! diameter that tapers from helix to helix.

use super::codes::methods;
use super::individual::Ground;
use super::methods::CylinderLateralStress;
use super::outcome::{CylinderGap, CylinderPart, CylindricalShear, HelixBearing};
use super::pile::AxialDirection;
use super::plates::Plate;
use super::uplift::{CYLINDER_ROWS, ku_cylinder, row_at};
use super::zone::parts_between;
use crate::contract::Work;
use crate::math;
use crate::math::PI;
use crate::quantity::{Angle, Force, Length, Size, SoilStress};
use crate::soil::{Soil, SoilProfile};
use crate::source::{CYLINDER_AT_REST, CYLINDER_FORM, DERIVED};
use crate::trace::Trace;

/// Resistance by the cylinder, between the helices in credit; none with fewer than two.
pub(crate) fn cylinder(
    ground: &Ground,
    bearings: &[HelixBearing],
    work: &mut Work,
) -> Option<CylindricalShear> {
    let credited: Vec<(&Plate, &HelixBearing)> = ground
        .plates
        .iter()
        .zip(bearings)
        .filter(|(_, b)| b.no_credit.is_none())
        .collect();
    if credited.len() < 2 {
        return None;
    }
    work.method(&methods::CYLINDRICAL_SHEAR);
    let (top, _) = credited[0];
    let top_ratio = ground.embedment(top).si() / top.diameter.si();
    let end = match ground.direction {
        AxialDirection::Compression => credited[credited.len() - 1],
        AxialDirection::Tension => credited[0],
    };
    let gaps: Vec<_> = credited
        .windows(2)
        .map(|pair| gap(ground, pair[0].0, pair[1].0, top_ratio, work))
        .collect();
    work.trace
        .about(|| format!("cylinder in {}", ground.direction.name()));
    let shear: Force = gaps.iter().map(|g| g.shear).sum();
    let total = work.trace.step(
        "Q_cyl",
        "Q_end + sum of T over the gaps",
        end.1.resistance + shear,
        [
            ("Q_end", end.1.resistance.into()),
            ("sum of T", shear.into()),
        ],
        &CYLINDER_FORM,
    );
    Some(CylindricalShear {
        total,
        end_helix: end.0.label.clone(),
        end_bearing: end.1.resistance,
        shear,
        gaps,
    })
}

fn gap(
    ground: &Ground,
    upper: &Plate,
    lower: &Plate,
    top_ratio: f64,
    work: &mut Work,
) -> CylinderGap {
    work.trace.about(|| {
        format!(
            "cylinder from helix {} to {} in {}",
            upper.label,
            lower.label,
            ground.direction.name()
        )
    });
    let mean_diameter = mean_diameter(upper.diameter, lower.diameter, &mut work.trace);
    let parts: Vec<_> = parts_between(ground.profile, upper.depth, lower.depth, Length::ZERO)
        .iter()
        .map(|p| {
            let soil = &ground.profile.layers[p.layer].soil;
            let label = ground.profile.label(p.layer);
            part(
                ground,
                soil,
                label,
                (p.top, p.bottom),
                mean_diameter,
                top_ratio,
                work,
            )
        })
        .collect();
    let length = lower.depth - upper.depth;
    CylinderGap {
        upper: upper.label.clone(),
        lower: lower.label.clone(),
        length,
        spacing_ratio: length.si() / lower.diameter.si(),
        mean_diameter,
        shear: parts.iter().map(|p| p.shear).sum(),
        parts,
    }
}

fn part(
    ground: &Ground,
    soil: &Soil,
    layer: String,
    (top, bottom): (Length, Length),
    diameter: Size,
    top_ratio: f64,
    work: &mut Work,
) -> CylinderPart {
    let height = bottom - top;
    let (ratio, stress) = match soil {
        Soil::Clay(u) | Soil::Silt(u) => (None, u.undrained_strength),
        Soil::Sand(d) => {
            let phi = d.friction_angle;
            let (k, k_tan) = lateral_stress(ground, phi, top_ratio, work);
            let mean = mean_effective_stress(ground.profile, top, bottom, &mut work.trace);
            (Some(k), sand_shear_stress(mean, k_tan, &mut work.trace))
        }
        Soil::Fill(_) | Soil::Organic(_) | Soil::Rock(_) => (None, SoilStress::ZERO),
    };
    CylinderPart {
        layer,
        top,
        bottom,
        lateral_stress_ratio: ratio,
        mean_shear_stress: stress,
        shear: cylinder_shear(diameter, height, stress, &mut work.trace),
    }
}

/// K and K tan phi on the cylinder.
fn lateral_stress(ground: &Ground, phi: Angle, top_ratio: f64, work: &mut Work) -> (f64, f64) {
    let pulled = ground.direction == AxialDirection::Tension;
    match ground.settings.cylinder_lateral_stress {
        CylinderLateralStress::MitschClemence1985 if pulled => {
            work.method(&methods::CYLINDER_KU);
            let row = row_at(work.take(&CYLINDER_ROWS), phi);
            let ku = ku_cylinder(top_ratio, row, &mut work.trace);
            (ku, ku * math::tan(phi.si()))
        }
        CylinderLateralStress::MitschClemence1985 | CylinderLateralStress::AtRest => {
            work.method(&methods::CYLINDER_AT_REST_METHOD);
            let k_tan = at_rest_shear_ratio(phi, &mut work.trace);
            (k_tan / math::tan(phi.si()), k_tan)
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
/// s'_m = (1/h) integral of s'_v dz; exact by trapezia above and below the water table, as
/// s'_v is linear in each. Pa from N/m3 and m. Range: within one layer. Source: definition.
/// Sign: none.
pub(crate) fn mean_effective_stress(
    profile: &SoilProfile,
    top: Length,
    bottom: Length,
    trace: &mut Trace,
) -> SoilStress {
    let cut = profile.water_depth.unwrap_or(bottom).max(top).min(bottom);
    let s = |z: Length| profile.effective_stress(z).si();
    let trapezium = |a: Length, b: Length| (s(a) + s(b)) / 2.0 * (b - a).si();
    let mean = (trapezium(top, cut) + trapezium(cut, bottom)) / (bottom - top).si();
    trace.step(
        "s'_m",
        "mean of s'_v over the height",
        SoilStress::from_si(mean),
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
