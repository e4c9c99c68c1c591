//! The load against what the soil may bear by the lowest of the theories. No capacity is made
//! here.

use super::codes::checks;
use super::design::Factor;
use super::options::{FootingAction, FootingDemand, FootingPressureKind};
use super::outcome::{FootingBase, FootingCapacity};
use crate::contract::{Check, Work};
use crate::quantity::SoilStress;
use crate::source::{CALLER, DERIVED};

/// Pressure the load makes on the base.
///
/// q = Q / A, of a strip Q / B; Q load (N, N/m), A area (m2), B width (m). Range: shape and
/// load belong together. Source: definition. Sign: positive.
pub(super) fn pressure(
    demand: &FootingDemand,
    base: &FootingBase,
    work: &mut Work,
) -> Option<SoilStress> {
    let trace = &mut work.trace;
    trace.about(|| "load".to_owned());
    Some(match (demand.action, base.area) {
        (FootingAction::Pressure(p), _) => trace.step("q", "as sent", p.pressure, [], &CALLER),
        (FootingAction::Load(l), Some(area)) => trace.step(
            "q",
            "Q / A",
            SoilStress::from_si(l.force.si() / area.si()),
            [("Q", l.force.into()), ("A", area.into())],
            &DERIVED,
        ),
        (FootingAction::LineLoad(l), None) => trace.step(
            "q",
            "Q / B",
            SoilStress::from_si(l.intensity.si() / base.width.si()),
            [("Q", l.intensity.into()), ("B", base.width.into())],
            &DERIVED,
        ),
        // refused before
        (FootingAction::Load(_), None) | (FootingAction::LineLoad(_), Some(_)) => return None,
    })
}

/// The check of the load by the lowest theory.
pub(super) fn judge(
    demand: &FootingDemand,
    pressure: SoilStress,
    lowest: &FootingCapacity,
    asked: usize,
    factor: &Factor,
    work: &mut Work,
) {
    let Some(design) = &lowest.design else {
        return;
    };
    let (name, capacity) = match demand.counted {
        FootingPressureKind::Gross => ("gross", design.gross),
        FootingPressureKind::Net => ("net", design.net),
    };
    let method = lowest.method.name();
    let reason = match asked {
        1 => format!("{name} pressure by {method}"),
        many => format!("{name} pressure by {method}, the lowest of {many} theories"),
    };
    let check = Check::at_most(&checks::FOOTING_PRESSURE, pressure, capacity, factor.source);
    work.check(check.reason(reason));
}
