//! Adhesion of swelling soil on the shaft by the method asked for, with where it comes from;
//! and what is missing for it.

use super::codes::{methods, refusals, warnings};
use super::constants::{
    SWELL_ALPHA, SWELL_ALPHA_LOWER, SWELL_ALPHA_UPPER, SWELL_FULL_DEPTH_MAX, SWELL_FULL_DEPTH_MIN,
};
use super::request::Request;
use super::swell_equations::{adhesion_by_strength, adhesion_share, adhesion_share_capped};
use super::swell_request::SwellAdhesion;
use crate::catalogue::refusals::{ABOVE_MAXIMUM, BELOW_MINIMUM};
use crate::contract::{Issue, Work, utilisation};
use crate::quantity::{Length, SoilStress, in_both_systems};
use crate::source::{CALLER, Reference, SourceNote, Sourced, TXDOT_SWELL_UPLIFT};
use crate::trace::Trace;

/// An adhesion with where it comes from.
#[derive(Debug, Clone)]
pub struct Adhesion {
    /// The stress.
    pub stress: SoilStress,
    /// Where it, or its factor, comes from.
    pub source: SourceNote,
    /// Share of swell pressure or strength.
    pub factor: Option<f64>,
    /// Whether the strength caps it, where one was sent.
    pub capped: Option<bool>,
    /// At the lower end of a range.
    pub lower: Option<SoilStress>,
}

/// What is missing or out of range for the method asked for.
pub fn faults(adhesion: &SwellAdhesion, request: &Request) -> Vec<Issue> {
    let at = format!("/swelling/adhesion/{}", adhesion.name());
    let mut issues = Vec::new();
    let mut need = |there: bool, member: &str| {
        if !there {
            issues.push(Issue::new(
                at.clone(),
                &refusals::SWELL_UPLIFT_WITHOUT_DATA,
                format!("send `{member}`; it is never assumed"),
            ));
        }
    };
    match adhesion {
        SwellAdhesion::AlphaShare(a) => need(a.swell_pressure.is_some(), "swell_pressure"),
        SwellAdhesion::AlphaRange(a) => need(a.swell_pressure.is_some(), "swell_pressure"),
        SwellAdhesion::FullSwellPressure(a) => need(a.swell_pressure.is_some(), "swell_pressure"),
        SwellAdhesion::UndrainedCap(a) => {
            need(a.undrained_strength.is_some(), "undrained_strength");
            need(a.adhesion_factor.is_some(), "adhesion_factor");
        }
        SwellAdhesion::Given(_) => {}
    }
    if let (SwellAdhesion::FullSwellPressure(_), Some(active)) = (adhesion, request.active_depth) {
        issues.extend(outside_method(active));
    }
    issues
}

/// The whole swell pressure is published for 10 to 20 ft of active depth and no other.
fn outside_method(active: Length) -> Option<Issue> {
    let (least, most) = (SWELL_FULL_DEPTH_MIN.value, SWELL_FULL_DEPTH_MAX.value);
    let (code, limit) = if !utilisation(least.si(), active.si()).1 {
        (&BELOW_MINIMUM, least)
    } else if !utilisation(active.si(), most.si()).1 {
        (&ABOVE_MAXIMUM, most)
    } else {
        return None;
    };
    let issue = Issue::new(
        "/active_depth",
        code,
        format!(
            "`full_swell_pressure` holds for an active depth of 10 to 20 ft, not for {}",
            in_both_systems(active.si(), "m")
        ),
    );
    Some(
        issue
            .limit(in_both_systems(limit.si(), "m"))
            .source(&TXDOT_SWELL_UPLIFT),
    )
}

/// The adhesion of a request that has no faults; `None` where its data are missing.
pub fn of(adhesion: &SwellAdhesion, work: &mut Work) -> Option<Adhesion> {
    work.trace.about(|| "adhesion of swelling soil".to_owned());
    let found = match adhesion {
        SwellAdhesion::AlphaShare(a) => {
            work.method(&methods::SWELL_ALPHA_SHARE);
            let (alpha, reference) = match a.alpha_factor {
                Some(own) => (own, &CALLER),
                None => taken(&SWELL_ALPHA, work),
            };
            let pressure = a.swell_pressure?;
            Some(share(
                alpha,
                pressure,
                a.undrained_strength,
                reference,
                &mut work.trace,
            ))
        }
        SwellAdhesion::AlphaRange(a) => {
            work.method(&methods::SWELL_ALPHA_RANGE);
            let (pressure, cap) = (a.swell_pressure?, a.undrained_strength);
            let (lower, reference) = taken(&SWELL_ALPHA_LOWER, work);
            let lower = share(lower, pressure, cap, reference, &mut work.trace).stress;
            let (upper, reference) = taken(&SWELL_ALPHA_UPPER, work);
            let upper = share(upper, pressure, cap, reference, &mut work.trace);
            Some(Adhesion {
                lower: Some(lower),
                ..upper
            })
        }
        SwellAdhesion::FullSwellPressure(a) => {
            work.method(&methods::SWELL_FULL_PRESSURE);
            let pressure = a.swell_pressure?;
            Some(share(
                1.0,
                pressure,
                None,
                &TXDOT_SWELL_UPLIFT,
                &mut work.trace,
            ))
        }
        SwellAdhesion::UndrainedCap(a) => {
            work.method(&methods::SWELL_UNDRAINED_CAP);
            let (factor, strength) = (a.adhesion_factor?, a.undrained_strength?);
            Some(Adhesion {
                stress: adhesion_by_strength(factor, strength, &mut work.trace),
                factor: Some(factor),
                ..sent(SoilStress::ZERO)
            })
        }
        SwellAdhesion::Given(a) => {
            work.method(&methods::SWELL_GIVEN_ADHESION);
            Some(sent(a.adhesion))
        }
    };
    work.trace.about(String::new);
    work.warn(
        &warnings::SWELL_METHODS_DIFFER,
        "published methods for uplift by swelling soil differ by 4 to 10 times and rest on concrete piers; smooth slim steel is not among what was measured",
    );
    found
}

fn taken(constant: &'static Sourced<f64>, work: &mut Work) -> (f64, &'static Reference) {
    (work.take(constant), constant.reference)
}

fn share(
    alpha: f64,
    pressure: SoilStress,
    cap: Option<SoilStress>,
    reference: &'static Reference,
    trace: &mut Trace,
) -> Adhesion {
    let stress = match cap {
        Some(strength) => adhesion_share_capped(alpha, pressure, strength, reference, trace),
        None => adhesion_share(alpha, pressure, reference, trace),
    };
    Adhesion {
        stress,
        source: reference.into(),
        factor: Some(alpha),
        capped: cap.map(|strength| pressure * alpha > strength),
        lower: None,
    }
}

fn sent(stress: SoilStress) -> Adhesion {
    Adhesion {
        stress,
        source: (&CALLER).into(),
        factor: None,
        capped: None,
        lower: None,
    }
}
