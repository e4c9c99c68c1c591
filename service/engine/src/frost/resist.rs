//! What holds a pile down, ready to be compared: tension resistance of the ground at its
//! design value, and the factors of the comparison.

use super::codes::methods;
use super::factors::{self, Factors};
use super::request::Request;
use super::resistance_request::FrostResistance;
use super::tension::{self, Held, NoCredit};
use super::uplift_outcome::{FrostFormat, FrostTensionOutcome};
use crate::catalogue::CheckDef;
use crate::contract::{Check, Refusal, Work, utilisation};
use crate::helix::AxialResistance;
use crate::quantity::{Force, Length};
use crate::source::{IBC_1810_3_3_1_5, OBC_DEPTH_OF_FOUNDATIONS, Reference};
use crate::trace::Trace;

/// What holds the pile down.
pub struct Resistance {
    /// Factors of the comparison.
    pub factors: Factors,
    /// Design tension resistance.
    pub design: Force,
    /// Dead load once the building stands, unfactored.
    pub dead_load: Force,
    /// The same, for the answer.
    pub tension: FrostTensionOutcome,
}

/// A force compared with what holds the pile down.
pub struct Compared {
    /// Factored force less factored dead load.
    pub net: Force,
    /// Ultimate resistance that this asks for, where the resistance is ultimate.
    pub required: Option<Force>,
    /// Net tension over design resistance.
    pub utilisation: Option<f64>,
}

/// Factors and design resistance of what was sent; `about` names it in the steps.
pub fn of(
    request: &Request,
    sent: &FrostResistance,
    no_credit: &NoCredit,
    about: &'static str,
    work: &mut Work,
) -> Result<Resistance, Refusal> {
    let Held {
        force,
        ultimate,
        by,
        resistance: from_soil,
        derived,
    } = tension::held(request, &sent.tension, no_credit, work)?;
    let factors = factors::of(&sent.design_basis, by, ultimate, work);
    work.method(match factors.shown.format {
        FrostFormat::AllowableStress => &methods::FROST_UPLIFT_ALLOWABLE_STRESS,
        FrostFormat::LimitStates => &methods::FROST_UPLIFT_LIMIT_STATES,
    });
    work.trace.about(|| about.to_owned());
    let design = factors.tension.design(force, &mut work.trace);
    work.trace.about(String::new);
    let tension = FrostTensionOutcome {
        ultimate: ultimate.then_some(force),
        design,
        by,
        no_credit_above: from_soil.as_ref().map(|_| counted_below(sent, no_credit)),
        counted_helix_count: from_soil.as_ref().map(counted),
        from_soil,
        derived_strengths: derived,
    };
    Ok(Resistance {
        factors,
        design,
        dead_load: sent.dead_load,
        tension,
    })
}

/// The deeper of the moving ground and the caller's own depth of no credit.
fn counted_below(sent: &FrostResistance, no_credit: &NoCredit) -> Length {
    let own = match &sent.tension {
        super::FrostTension::FromSoil(soil) => soil.methods.and_then(|m| m.no_credit_above),
        _ => None,
    };
    own.unwrap_or(Length::ZERO).max(no_credit.above)
}

/// Helices that are given credit.
fn counted(resistance: &AxialResistance) -> u32 {
    let helices = &resistance.individual_bearing.helices;
    let counted = helices.iter().filter(|h| h.no_credit.is_none()).count();
    u32::try_from(counted).unwrap_or(u32::MAX)
}

impl Resistance {
    /// Compares a net tension, which the caller has from the factors here.
    pub fn compare(&self, net: Force, trace: &mut Trace) -> Compared {
        Compared {
            net,
            required: self.factors.tension.required(net, trace),
            utilisation: utilisation(net.si(), self.design.si()).0,
        }
    }

    /// The check of a net tension.
    pub fn check(&self, def: &'static CheckDef, net: Force) -> Check {
        let source: &'static Reference = match self.factors.shown.format {
            FrostFormat::AllowableStress => &IBC_1810_3_3_1_5,
            FrostFormat::LimitStates => &OBC_DEPTH_OF_FOUNDATIONS,
        };
        Check::at_most(def, net, self.design, source)
    }
}
