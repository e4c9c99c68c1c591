//! Where a verdict turns within the band of a torque factor from tests on the site, it is
//! held back. Bands of a reading, and the factor in tension, are in `judge.rs`.

use super::codes::warnings;
use super::outcome::{CapacityByTorque, RequiredTorque, RequiredTorqueOutcome};
use crate::catalogue::CheckDef;
use crate::contract::{Work, utilisation};
use crate::quantity::{Force, Torque};

/// A capacity that carries the load at one end of the band and not at the other.
pub(super) fn hold_capacity(
    load: Force,
    capacity: &CapacityByTorque,
    passed: bool,
    def: &'static CheckDef,
    work: &mut Work,
) {
    let Some((least, greatest)) = capacity.design_least.zip(capacity.design_greatest) else {
        return;
    };
    let fits = |design: Force| utilisation(load.si(), design.si()).1;
    if passed != fits(least) || passed != fits(greatest) {
        let shown = |force: Force| Force::ROLE.in_both_systems(force.si());
        hold(def, "capacity", shown(least), shown(greatest), work);
    }
}

/// A required torque within a limit at one end of the band and above it at the other.
pub(super) fn hold_required(
    required: &RequiredTorqueOutcome,
    limit: Torque,
    passed: bool,
    def: &'static CheckDef,
    work: &mut Work,
) {
    let sides = [&required.compression, &required.tension];
    let greatest_of = |pick: fn(&RequiredTorque) -> Option<Torque>| {
        let of = |side: &RequiredTorque| pick(side).unwrap_or(side.torque);
        sides.into_iter().flatten().map(of).reduce(Torque::max)
    };
    let least = greatest_of(|side| side.torque_least);
    let greatest = greatest_of(|side| side.torque_greatest);
    let Some((least, greatest)) = least.zip(greatest) else {
        return;
    };
    let fits = |torque: Torque| utilisation(torque.si(), limit.si()).1;
    if passed != fits(least) || passed != fits(greatest) {
        let shown = |torque: Torque| Torque::ROLE.in_both_systems(torque.si());
        hold(def, "required torque", shown(least), shown(greatest), work);
    }
}

fn hold(def: &'static CheckDef, what: &str, least: String, greatest: String, work: &mut Work) {
    work.hold_back(
        &warnings::SITE_FACTOR_BAND,
        format!("`{}`: {what} from {least} to {greatest}", def.id),
    );
}
