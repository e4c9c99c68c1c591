//! Resistance of a pile in one direction: both modes, the lesser, and the label of its
//! embedment. The one entry for other calculations.

use super::adhesion::adhesion;
use super::codes::{methods, warnings};
use super::cylinder::cylinder;
use super::individual::Ground;
use super::methods::{ClayCriticalEmbedment, DrainedBearing, HelixMethods};
use super::outcome::{
    AxialResistance, BearingLaw, CylindricalShear, Embedment, EmbedmentMode, GoverningMode,
    HelixBearing, IndividualBearing, ZoneBearing,
};
use super::pile::{AxialDirection, HelixPlate};
use super::plates::{from_the_top, pile_faults};
use super::settings::{ADHESION_IGNORED_DEPTH, BEARING_ZONE_RATIO, Settings};
use super::uplift::{
    BREAKOUT_KU, BREAKOUT_ROWS, CLAY_BREAKOUT_GROWTH, CLAY_CRITICAL, SAND_TENSION_FACTOR,
    critical_ratio_das, critical_ratio_four, row_at,
};
use super::zone::zone_faults;
use crate::bearing::factors::MEYERHOF_DEPTH_GROWTH;
use crate::contract::{Refusal, SubjectKind, Work, none_of};
use crate::quantity::{AngleUnit, Force};
use crate::shaft::Shaft;
use crate::soil::{Soil, SoilProfile};
use crate::source::{CYLINDER_FORM, DERIVED, FRICTION_ANGLE_40, IBC_1810_3_3_1_9, Sourced};
use crate::trace::Trace;

/// Friction angle above which the answer warns, degrees.
pub static FRICTION_ANGLE_WARNING: Sourced<f64> =
    Sourced::new("friction_angle_warning", 40.0, &FRICTION_ANGLE_40);

/// Ultimate resistance of a pile in one direction, with everything it rests on.
///
/// `at` is the pointer of the object that holds `shaft` and `helices`; faults of the methods
/// are reported at `/methods`. The profile must be whole (`SoilProfile::faults` empty). No
/// design factor is applied: `design` is left out. Refuses a pile that does not fit the
/// profile, soil that is not known where a helix bears on it, and rock.
pub fn axial_resistance(
    profile: &SoilProfile,
    shaft: &Shaft,
    helices: &[HelixPlate],
    direction: AxialDirection,
    options: &HelixMethods,
    at: &str,
    work: &mut Work,
) -> Result<AxialResistance, Refusal> {
    let settings = Settings::of(options);
    let plates = from_the_top(helices);
    let mut issues = pile_faults(profile, shaft, helices, at);
    issues.extend(options.faults(shaft, "/methods"));
    if issues.is_empty() {
        issues = zone_faults(profile, &plates, direction, &settings, at);
    }
    none_of(issues)?;
    let ground = Ground {
        profile,
        shaft,
        plates: &plates,
        direction,
        settings: &settings,
    };
    Ok(resistance(&ground, options, work))
}

fn resistance(ground: &Ground, options: &HelixMethods, work: &mut Work) -> AxialResistance {
    work.method(&methods::INDIVIDUAL_BEARING);
    let helices: Vec<_> = ground
        .plates
        .iter()
        .map(|plate| ground.helix(plate, work))
        .collect();
    take_constants(ground, options, &helices, work);
    work.trace
        .about(|| format!("individual bearing in {}", ground.direction.name()));
    let total = sum_of_helices(&helices, &mut work.trace);
    let cylindrical_shear = cylinder(ground, &helices, work);
    let shaft_adhesion = adhesion(ground, work);
    let embedment = embedment(ground, &helices, work);
    warn_of_steep_friction(ground, &helices, cylindrical_shear.as_ref(), work);
    work.trace
        .about(|| format!("pile in {}", ground.direction.name()));
    let (governing_mode, lesser) = lesser(total, cylindrical_shear.as_ref(), &mut work.trace);
    let ultimate = work.trace.step(
        "Q_ult",
        "Q + Q_shaft",
        lesser + shaft_adhesion,
        [("Q", lesser.into()), ("Q_shaft", shaft_adhesion.into())],
        &DERIVED,
    );
    work.trace.about(String::new);
    AxialResistance {
        direction: ground.direction,
        ultimate,
        governing_mode,
        design: None,
        individual_bearing: IndividualBearing { total, helices },
        cylindrical_shear,
        embedment,
        shaft_adhesion,
    }
}

/// Individual bearing of the pile.
///
/// Q_ind = sum of A_i q_i; resistances of the helices (N). Range: any. Source: IBC
/// 1810.3.3.1.9 item 1. Sign: against the load.
fn sum_of_helices(helices: &[HelixBearing], trace: &mut Trace) -> Force {
    let total: Force = helices.iter().map(|h| h.resistance).sum();
    trace.step(
        "Q_ind",
        "sum of Q over the helices",
        total,
        [("n", (helices.len() as f64).into())],
        &IBC_1810_3_3_1_9,
    )
}

/// The lesser of the modes.
///
/// Q = min(Q_ind, Q_cyl); individual bearing and cylinder (N). Range: with fewer than two
/// helices in credit Q_ind alone. Source: both quoted by Tappenden and Sego 2007; the lesser
/// is an upper-bound reading. Sign: against the load.
fn lesser(
    individual: Force,
    cylinder: Option<&CylindricalShear>,
    trace: &mut Trace,
) -> (GoverningMode, Force) {
    let Some(cylinder) = cylinder else {
        return (GoverningMode::IndividualBearing, individual);
    };
    let mode = if cylinder.total < individual {
        GoverningMode::CylindricalShear
    } else {
        GoverningMode::IndividualBearing
    };
    let q = trace.step(
        "Q",
        "min(Q_ind, Q_cyl)",
        individual.min(cylinder.total),
        [
            ("Q_ind", individual.into()),
            ("Q_cyl", cylinder.total.into()),
        ],
        &CYLINDER_FORM,
    );
    (mode, q)
}

/// Notes the methods of the soils that bear, and takes the constants they rest on.
fn take_constants(
    ground: &Ground,
    options: &HelixMethods,
    helices: &[HelixBearing],
    work: &mut Work,
) {
    let s = ground.settings;
    let bearing = |part: &&ZoneBearing| part.law != BearingLaw::NoCredit;
    let parts = || helices.iter().flat_map(|h| &h.zone).filter(bearing);
    let clay = parts().any(|p| p.undrained_strength.is_some());
    let sand = parts().any(|p| p.undrained_strength.is_none());
    work.method(&methods::BEARING_ZONE_METHOD);
    if options.bearing_zone_ratio.is_none() {
        work.take(&BEARING_ZONE_RATIO);
    }
    if s.adhesion_ignored_depth.is_some() {
        work.take(&ADHESION_IGNORED_DEPTH);
    }
    if sand {
        s.note_drained(work);
        if s.drained_bearing == DrainedBearing::Meyerhof1963 {
            work.take(&MEYERHOF_DEPTH_GROWTH);
        }
    }
    match ground.direction {
        AxialDirection::Compression if clay => s.note_undrained(work),
        AxialDirection::Compression => {}
        AxialDirection::Tension => {
            if clay {
                work.method(&methods::CLAY_BREAKOUT);
                work.take(&CLAY_BREAKOUT_GROWTH);
            }
            if sand {
                work.method(if s.sand_tension_factor.is_some() {
                    &methods::NQ_TENSION
                } else {
                    &methods::DAS_BREAKOUT
                });
                work.take(&SAND_TENSION_FACTOR);
                work.take(&BREAKOUT_ROWS);
                work.take(&BREAKOUT_KU);
            }
        }
    }
}

/// Shallow or deep, by the top helix in credit and the soil above it; tension only.
fn embedment(ground: &Ground, helices: &[HelixBearing], work: &mut Work) -> Option<Embedment> {
    if ground.direction != AxialDirection::Tension {
        return None;
    }
    let at = helices.iter().position(|h| h.no_credit.is_none())?;
    let plate = &ground.plates[at];
    let layer = ground.profile.layer_at(plate.depth, false)?;
    work.trace
        .about(|| format!("helix {} in tension", plate.label));
    let critical_ratio = match &ground.profile.layers[layer].soil {
        Soil::Sand(d) => row_at(work.take(&BREAKOUT_ROWS), d.friction_angle).critical,
        Soil::Clay(u) | Soil::Silt(u) => match ground.settings.clay_critical_embedment {
            ClayCriticalEmbedment::Das1980 => {
                work.take(&CLAY_CRITICAL);
                critical_ratio_das(u.undrained_strength, &mut work.trace)
            }
            ClayCriticalEmbedment::FourDiameters => critical_ratio_four(&mut work.trace),
        },
        Soil::Fill(_) | Soil::Organic(_) | Soil::Rock(_) => return None,
    };
    let embedment = ground.embedment(plate);
    let embedment_ratio = work.trace.step(
        "H/D",
        "H / D",
        embedment.si() / plate.diameter.si(),
        [("H", embedment.into()), ("D", plate.diameter.into())],
        &DERIVED,
    );
    // on the limit is deep, with room for the last bit of a converted depth
    let deep = embedment_ratio >= critical_ratio * (1.0 - 1e-9);
    Some(Embedment {
        helix: plate.label.clone(),
        embedment,
        embedment_ratio,
        critical_ratio,
        mode: if deep {
            EmbedmentMode::Deep
        } else {
            EmbedmentMode::Shallow
        },
    })
}

/// Warns of friction angles above 40 degrees that the resistance rests on.
fn warn_of_steep_friction(
    ground: &Ground,
    helices: &[HelixBearing],
    cylinder: Option<&CylindricalShear>,
    work: &mut Work,
) {
    let limit = work.take(&FRICTION_ANGLE_WARNING);
    let bearing = helices
        .iter()
        .flat_map(|h| &h.zone)
        .filter(|p| p.law != BearingLaw::NoCredit)
        .map(|p| &p.layer);
    let sheared = cylinder
        .iter()
        .flat_map(|c| &c.gaps)
        .flat_map(|g| &g.parts)
        .map(|p| &p.layer);
    let used: Vec<&String> = bearing.chain(sheared).collect();
    for (i, layer) in ground.profile.layers.iter().enumerate() {
        let label = ground.profile.label(i);
        if let Soil::Sand(d) = &layer.soil
            && d.friction_angle.get(AngleUnit::Deg) > limit + 1e-9
            && used.contains(&&label)
        {
            work.warn_about(
                &warnings::FRICTION_ANGLE_ABOVE_40,
                SubjectKind::Layer,
                label.clone(),
                format!("layer {label} has a friction angle above {limit} degrees"),
            );
        }
    }
}
