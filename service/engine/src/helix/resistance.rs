//! Resistance of a pile in one direction: both modes, the lesser, and the label of its
//! embedment. The one entry for other calculations.

use super::codes::{methods, warnings};
use super::ground::{Disc, Ground};
use super::law::Law;
use super::methods::{
    ClayCriticalEmbedment, CylinderLateralStress, DrainedBearing, HelixMethods, ShapeDepthFactors,
};
use super::outcome::{
    AxialResistance, BearingLaw, CylindricalShear, Embedment, EmbedmentMode, HelixBearing,
    IndividualBearing, NoCreditReason, ZoneBearing,
};
use super::pile::{AxialDirection, HelixPlate};
use super::plates::{Plate, from_the_top};
use super::record::Record;
use super::settings::{ADHESION_IGNORED_DEPTH, BEARING_ZONE_RATIO, Settings};
use super::solve::{Borne, solve};
use super::uplift::{
    BREAKOUT_KU, BREAKOUT_ROWS, CLAY_BREAKOUT_GROWTH, CLAY_CRITICAL, CYLINDER_ROWS,
    SAND_TENSION_FACTOR, critical_ratio_das, critical_ratio_four,
};
use super::weak::look_for_weak_layer;
use super::zone::zone_faults;
use crate::bearing::factors::MEYERHOF_DEPTH_GROWTH;
use crate::contract::{Refusal, SubjectKind, Work, none_of};
use crate::quantity::{AngleUnit, Length, Size};
use crate::shaft::Shaft;
use crate::soil::{Strata, Strength};
use crate::source::{DERIVED, FRICTION_ANGLE_40, Sourced};

/// Friction angle above which the answer warns, degrees.
pub static FRICTION_ANGLE_WARNING: Sourced<f64> =
    Sourced::new("friction_angle_warning", 40.0, &FRICTION_ANGLE_40);

/// Ultimate resistance of a pile in one direction, with everything it rests on.
///
/// `at` is the pointer of the object that holds `shaft` and `helices`; faults of the methods
/// are reported at `/methods`. The pile must fit the profile (`pile_faults` empty). No
/// design factor is applied: `design` is left out. Refuses soil that is not known where a
/// helix bears on it, and rock.
pub fn axial_resistance(
    strata: &Strata,
    shaft: &Shaft,
    helices: &[HelixPlate],
    direction: AxialDirection,
    options: &HelixMethods,
    at: &str,
    work: &mut Work,
) -> Result<AxialResistance, Refusal> {
    let settings = Settings::of(options);
    let plates = from_the_top(helices);
    let mut issues = options.faults(shaft, "/methods");
    issues.extend(zone_faults(strata, &plates, direction, &settings, at));
    none_of(issues)?;
    let largest = largest(&plates);
    let between = (
        plates.first().map_or(Length::ZERO, |p| p.depth),
        plates.last().map_or(Length::ZERO, |p| p.depth),
    );
    let ground = Ground::new(
        strata,
        shaft,
        direction,
        &settings,
        between,
        largest,
        &mut work.trace,
    );
    Ok(resistance(&ground, &plates, options, work))
}

/// Diameter of the largest helix.
pub(crate) fn largest(plates: &[Plate]) -> Size {
    plates
        .iter()
        .fold(Size::ZERO, |most, p| most.max(p.diameter))
}

fn resistance(
    ground: &Ground,
    plates: &[Plate],
    options: &HelixMethods,
    work: &mut Work,
) -> AxialResistance {
    let discs = ground.discs(plates, &mut work.trace);
    let mut record = Record::new(ground, plates, &discs);
    let solution = solve(ground, &discs, &mut work.trace, &mut record);
    let Record { helices, gaps, .. } = record;
    for ((helix, borne), disc) in helices.iter().zip(&discs) {
        match borne.no_credit {
            Some(reason) => tell_no_credit(ground, &helix.label, reason, work),
            None => {
                look_for_weak_layer(ground, disc, &helix.label, &borne.seat, borne.bearing, work);
            }
        }
    }
    let cylindrical_shear = solution.cylinder.map(|c| CylindricalShear {
        total: c.total,
        end_helix: plates[c.end].label.clone(),
        end_bearing: c.end_bearing,
        shear: c.shear,
        gaps,
    });
    take_constants(ground, options, &helices, cylindrical_shear.as_ref(), work);
    let embedment = embedment(ground, plates, &discs, &helices, work);
    let helices: Vec<HelixBearing> = helices.into_iter().map(|(helix, _)| helix).collect();
    warn_of_steep_friction(ground, &helices, cylindrical_shear.as_ref(), work);
    work.trace.about(String::new);
    AxialResistance {
        direction: ground.direction,
        ultimate: solution.ultimate,
        ultimate_by_punching: (solution.held < solution.ultimate).then_some(solution.held),
        governing_mode: solution.mode,
        design: None,
        individual_bearing: IndividualBearing {
            total: solution.individual,
            helices,
        },
        cylindrical_shear,
        embedment,
        shaft_adhesion: solution.adhesion,
    }
}

fn tell_no_credit(ground: &Ground, label: &str, reason: NoCreditReason, work: &mut Work) {
    let direction = ground.direction.name();
    let detail = match reason {
        NoCreditReason::FillOrOrganic => format!(
            "in {direction} helix {label} bears in fill, organic or frozen soil, or its zone reaches it; it is given nothing"
        ),
        NoCreditReason::AboveCreditDepth => format!(
            "in {direction} helix {label} is not below the depth from which soil is credited; it is given nothing"
        ),
    };
    work.warn_about(
        &warnings::HELIX_WITHOUT_CREDIT,
        SubjectKind::Helix,
        label,
        detail,
    );
}

/// Notes the methods of the soils that bear, and takes the constants they rest on.
fn take_constants(
    ground: &Ground,
    options: &HelixMethods,
    helices: &[(HelixBearing, Borne)],
    cylinder: Option<&CylindricalShear>,
    work: &mut Work,
) {
    let s = ground.settings;
    work.method(&methods::INDIVIDUAL_BEARING);
    let bearing = |part: &&ZoneBearing| part.law != BearingLaw::NoCredit;
    let parts = || helices.iter().flat_map(|(h, _)| &h.zone).filter(bearing);
    let clay = parts().any(|p| p.undrained_strength.is_some());
    let sand = parts().any(|p| p.undrained_strength.is_none());
    work.method(&methods::BEARING_ZONE_METHOD);
    if options.bearing_zone_ratio.is_none() {
        work.take(&BEARING_ZONE_RATIO);
    }
    if s.adhesion_ignored_depth.is_some() {
        work.method(&methods::ALPHA_ADHESION);
        work.take(&ADHESION_IGNORED_DEPTH);
    }
    if helices.iter().any(|(h, _)| h.punching.is_some()) {
        work.method(&methods::PUNCHING);
    }
    if sand {
        s.note_drained(work);
        let pushed = ground.direction == AxialDirection::Compression;
        if pushed && s.shape_depth_factors == ShapeDepthFactors::Published {
            work.method(&methods::SHAPE_DEPTH);
            work.warn(
                &warnings::SHAPE_DEPTH_FACTORS_USED,
                "`shape_depth_factors` is `published`",
            );
        }
        if s.drained_bearing == DrainedBearing::Meyerhof1963 {
            work.take(&MEYERHOF_DEPTH_GROWTH);
        }
    }
    if let Some(cylinder) = cylinder {
        take_cylinder(ground, cylinder, work);
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
                work.take_table(&BREAKOUT_ROWS);
                work.take(&BREAKOUT_KU);
            }
        }
    }
}

/// Notes the methods of the cylinder, and takes the constants they rest on.
fn take_cylinder(ground: &Ground, cylinder: &CylindricalShear, work: &mut Work) {
    work.method(&methods::CYLINDRICAL_SHEAR);
    let mut parts = cylinder.gaps.iter().flat_map(|g| &g.parts);
    if !parts.any(|p| p.lateral_stress_ratio.is_some()) {
        return;
    }
    let pulled = ground.direction == AxialDirection::Tension;
    match ground.settings.cylinder_lateral_stress {
        CylinderLateralStress::MitschClemence1985 if pulled => {
            work.method(&methods::CYLINDER_KU);
            work.take_table(&CYLINDER_ROWS);
        }
        CylinderLateralStress::MitschClemence1985 | CylinderLateralStress::AtRest => {
            work.method(&methods::CYLINDER_AT_REST_METHOD);
        }
    }
}

/// Shallow or deep, by the top helix in credit and the soil above it; tension only.
fn embedment(
    ground: &Ground,
    plates: &[Plate],
    discs: &[Disc],
    helices: &[(HelixBearing, Borne)],
    work: &mut Work,
) -> Option<Embedment> {
    if ground.direction != AxialDirection::Tension {
        return None;
    }
    let at = helices.iter().position(|(h, _)| h.no_credit.is_none())?;
    let (plate, disc) = (&plates[at], &discs[at]);
    let layer = ground.strata.layer_at(disc.depth, false)?;
    work.trace
        .about(|| format!("helix {} in tension", plate.label));
    let critical_ratio = match &ground.laws[layer] {
        Law::Drained(law) => {
            work.take_table(&BREAKOUT_ROWS);
            law.breakout.critical
        }
        Law::Undrained { su } => match ground.settings.clay_critical_embedment {
            ClayCriticalEmbedment::Das1980 => {
                work.take_table(&CLAY_CRITICAL);
                critical_ratio_das(*su, &mut work.trace)
            }
            ClayCriticalEmbedment::FourDiameters => critical_ratio_four(&mut work.trace),
        },
        Law::None => return None,
    };
    let embedment = ground.embedment(disc);
    let embedment_ratio = work.trace.step(
        "H/D",
        "H / D",
        embedment.si() / disc.diameter.si(),
        [("H", embedment.into()), ("D", disc.diameter.into())],
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
    for layer in &ground.strata.layers {
        let label = &layer.label;
        if let Strength::Drained { phi, .. } = layer.strength
            && phi.get(AngleUnit::Deg) > limit + 1e-9
            && used.contains(&label)
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
