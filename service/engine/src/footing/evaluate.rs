//! The course of the calculation: faults, capacities by each theory, the lowest, the load
//! against it, tables.

use std::borrow::Cow;

use super::codes::{cautions, warnings};
use super::design::{Factor, factor};
use super::families::{between_meyerhof_ranges, capacity};
use super::faults::faults;
use super::ground::{Seat, seat};
use super::judge;
use super::options::{FootingFactorUse, FootingLocalShear, FootingMethod};
use super::outcome::{FootingCapacity, FootingLowest, FootingSettings, Outcome};
use super::request::{Footing, Request};
use super::soil::{FootingSoil, FootingStrength};
use super::tables;
use crate::catalogue::cautions as common;
use crate::contract::{Refusal, Work};
use crate::math::PI;
use crate::quantity::{Angle, AngleUnit, SoilStress, round9};
use crate::source::{FRICTION_ANGLE_40, Sourced};

/// Friction angle above which the answer warns, degrees.
pub static FOOTING_FRICTION_WARNING: Sourced<f64> =
    Sourced::new("footing_friction_warning", 40.0, &FRICTION_ANGLE_40);

/// Depth ratios between which the depth factors of Hansen and Vesic are above or below those
/// of a neighbour on the other side of D = B: pi/4 and tan(1).
const DEPTH_FACTOR_FALLS: (f64, f64) = (PI / 4.0, 1.557_407_724_654_902_3);

/// What is left out of every capacity.
const NOT_INCLUDED: [&str; 8] = [
    "eccentric_load",
    "inclined_load",
    "sloping_ground_or_base",
    "layered_ground",
    "settlement",
    "strength_of_the_footing",
    "neighbouring_footings",
    "frost_and_swelling",
];

/// The calculation.
pub(super) fn evaluate(request: &Request, work: &mut Work) -> Result<Outcome, Refusal> {
    faults(request)?;
    let settings = FootingSettings {
        shape_factors: request.shape_factors.unwrap_or(FootingFactorUse::Include),
        depth_factors: request.depth_factors.unwrap_or(FootingFactorUse::Include),
        local_shear: request.local_shear.unwrap_or(FootingLocalShear::None),
    };
    work.caution(&common::ENGINEER_OF_RECORD);
    work.caution(&common::LOCAL_CODE);
    let mut outcome = Outcome {
        label: request.label.clone(),
        tags: request.tags.clone(),
        settings,
        base: None,
        capacities: Vec::new(),
        lowest: None,
        design_basis: None,
        demand_pressure: None,
        factor_tables: Vec::new(),
        depth_table: Vec::new(),
        not_included: Vec::new(),
    };
    if let (Some(footing), Some(soil)) = (&request.footing, &request.soil) {
        one_footing(request, footing, soil, &mut outcome, work);
    }
    factor_tables(request, &mut outcome, work);
    Ok(outcome)
}

/// The theories asked of a soil, or the default.
pub(super) fn methods_of(request: &Request, soil: &FootingSoil) -> Vec<FootingMethod> {
    match (&request.methods, &soil.strength) {
        (Some(methods), _) => methods.clone(),
        (None, FootingStrength::Drained(_)) => vec![FootingMethod::Vesic1973],
        (None, FootingStrength::Undrained(_)) => vec![FootingMethod::Skempton1951],
    }
}

fn one_footing(
    request: &Request,
    footing: &Footing,
    soil: &FootingSoil,
    outcome: &mut Outcome,
    work: &mut Work,
) {
    let settings = outcome.settings;
    let methods = methods_of(request, soil);
    cautions_of(footing, &settings, work);
    let seat = seat(footing, soil, settings.local_shear, work);
    let factor = request.design_basis.as_ref().map(|b| factor(b, work));
    for &method in &methods {
        let mut found = capacity(method, &seat, &settings, work);
        found.design = factor.map(|f| f.design(&found, &seat, work));
        outcome.capacities.push(found);
    }
    warnings_of(&methods, &seat, soil, outcome, work);
    outcome.base = Some(seat.base);
    outcome.design_basis = factor.map(|f| f.used());
    outcome.not_included = NOT_INCLUDED.map(Cow::from).to_vec();
    lowest(request, factor, outcome, work);
}

/// The lowest capacity, and the load against it.
fn lowest(request: &Request, factor: Option<Factor>, outcome: &mut Outcome, work: &mut Work) {
    let mut all = outcome.capacities.iter();
    let Some(first) = all.next() else {
        return;
    };
    let mut lowest: &FootingCapacity = first;
    let mut highest = first.ultimate_gross;
    for other in all {
        if other.ultimate_gross < lowest.ultimate_gross {
            lowest = other;
        }
        highest = SoilStress::from_si(highest.si().max(other.ultimate_gross.si()));
    }
    outcome.lowest = Some(FootingLowest {
        method: lowest.method,
        ultimate_gross: lowest.ultimate_gross,
        spread_ratio: highest / lowest.ultimate_gross,
    });
    let (Some(demand), Some(base), Some(factor)) = (&request.demand, &outcome.base, factor) else {
        return;
    };
    let Some(pressure) = judge::pressure(demand, base, work) else {
        return;
    };
    outcome.demand_pressure = Some(pressure);
    let asked = outcome.capacities.len();
    judge::judge(demand, pressure, lowest, asked, &factor, work);
}

fn cautions_of(footing: &Footing, settings: &FootingSettings, work: &mut Work) {
    work.caution(&common::LOCATE_UTILITIES);
    work.caution(&common::SOIL_PROFILE);
    work.caution(&common::SITE_SAFETY);
    work.caution(&cautions::FOOTING_CENTRAL_LOAD);
    work.caution(&cautions::FOOTING_ONE_SOIL);
    work.caution(&cautions::FOOTING_SETTLEMENT);
    if settings.depth_factors == FootingFactorUse::Include && footing.depth.si() > 0.0 {
        work.caution(&cautions::FOOTING_SOIL_ABOVE);
    }
}

fn warnings_of(
    methods: &[FootingMethod],
    seat: &Seat,
    soil: &FootingSoil,
    outcome: &Outcome,
    work: &mut Work,
) {
    if let FootingStrength::Drained(d) = &soil.strength {
        warn_of_friction([d.friction_angle].iter(), work);
    }
    let ratio = seat.base.depth_ratio;
    let with_depth = outcome.settings.depth_factors == FootingFactorUse::Include;
    let named = |which: fn(FootingMethod) -> bool| {
        let names: Vec<_> = (methods.iter().copied())
            .filter(|m| which(*m))
            .map(FootingMethod::name)
            .collect();
        (!names.is_empty()).then(|| names.join(", "))
    };
    let detail = |names: String| format!("{names}: depth is {} widths", round9(ratio));
    let shallow = |m| matches!(m, FootingMethod::Terzaghi1943 | FootingMethod::Meyerhof1963);
    if ratio > 1.0 + 1e-9
        && let Some(names) = named(shallow)
    {
        work.warn(&warnings::FOOTING_DEEPER_THAN_WIDE, detail(names));
    }
    let falling = |m| matches!(m, FootingMethod::Hansen1970 | FootingMethod::Vesic1973);
    let (from, to) = DEPTH_FACTOR_FALLS;
    if with_depth
        && ratio > from
        && ratio < to
        && let Some(names) = named(falling)
    {
        work.warn(&warnings::FOOTING_DEPTH_FACTOR_FALLS, detail(names));
    }
    let corrected = with_depth || outcome.settings.shape_factors == FootingFactorUse::Include;
    if corrected
        && methods.contains(&FootingMethod::Meyerhof1963)
        && between_meyerhof_ranges(seat.friction_angle)
    {
        let degrees = round9(seat.friction_angle.get(AngleUnit::Deg));
        work.warn(
            &warnings::FOOTING_LOW_FRICTION,
            format!("{degrees} degrees in the factors"),
        );
    }
    if outcome
        .capacities
        .iter()
        .any(|c| c.width_factor_interpolated)
    {
        let degrees = round9(seat.friction_angle.get(AngleUnit::Deg));
        work.warn(
            &warnings::FOOTING_WIDTH_FACTOR_TABLE,
            format!("at {degrees} degrees"),
        );
    }
}

fn warn_of_friction<'a>(angles: impl Iterator<Item = &'a Angle>, work: &mut Work) {
    let limit = FOOTING_FRICTION_WARNING.value;
    let highest = angles
        .map(|a| a.get(AngleUnit::Deg))
        .fold(0.0_f64, f64::max);
    if highest > limit * (1.0 + 1e-9) {
        work.take(&FOOTING_FRICTION_WARNING);
        work.warn(
            &warnings::FOOTING_FRICTION_ABOVE_40,
            format!("{} degrees", round9(highest)),
        );
    }
}

fn factor_tables(request: &Request, outcome: &mut Outcome, work: &mut Work) {
    let Some(table) = &request.factor_table else {
        return;
    };
    let local_shear = outcome.settings.local_shear;
    if let Some(angles) = &table.friction_angles {
        let default = [FootingMethod::Vesic1973];
        let methods = request.methods.as_deref().unwrap_or(&default);
        for &method in methods {
            if method != FootingMethod::Skempton1951 {
                let table = tables::by_friction(method, angles, local_shear, work);
                outcome.factor_tables.push(table);
            }
        }
    }
    if let Some(ratios) = &table.depth_ratios {
        let shape = table.width_to_length_ratio.unwrap_or(1.0);
        outcome.depth_table = tables::by_depth(ratios, shape, work);
    }
}
