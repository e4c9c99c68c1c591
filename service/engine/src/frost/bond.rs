//! Bond stress of frozen soil on the shaft: the value that decides and the severe one
//! that is always shown beside it.

use super::codes::warnings;
use super::constants::{BOND_FINE, BOND_GRAVEL, BOND_LABORATORY_PEAK, BOND_SEVERE};
use super::uplift_request::AdfreezeBond;
use crate::contract::Work;
use crate::quantity::{SoilStress, StressUnit};
use crate::source::{CALLER, SourceNote, Sourced};

/// A bond stress with where it comes from.
#[derive(Debug, Clone)]
pub struct Bond {
    /// Average over the frozen length.
    pub stress: SoilStress,
    /// Where it comes from.
    pub source: SourceNote,
}

fn default(constant: &Sourced<SoilStress>, work: &mut Work) -> Bond {
    Bond {
        stress: work.take(constant),
        source: constant.reference.into(),
    }
}

fn caller(stress: SoilStress) -> Bond {
    Bond {
        stress,
        source: (&CALLER).into(),
    }
}

/// The bond that decides, and the severe one, which is never below it.
pub fn pair(bond: &AdfreezeBond, work: &mut Work) -> (Bond, Bond) {
    let decides = match bond {
        AdfreezeBond::Fine(_) => default(&BOND_FINE, work),
        AdfreezeBond::Gravel(_) => default(&BOND_GRAVEL, work),
        AdfreezeBond::Severe(_) => default(&BOND_SEVERE, work),
        AdfreezeBond::LaboratoryPeak(_) => default(&BOND_LABORATORY_PEAK, work),
        AdfreezeBond::NotSusceptible(_) => caller(SoilStress::ZERO),
        AdfreezeBond::Given(given) => {
            if given.stress < BOND_FINE.value {
                warn_low(given.stress, work);
            }
            caller(given.stress)
        }
    };
    let severe = if decides.stress < BOND_SEVERE.value {
        default(&BOND_SEVERE, work)
    } else {
        decides.clone()
    };
    (decides, severe)
}

fn warn_low(stress: SoilStress, work: &mut Work) {
    work.warn(
        &warnings::BOND_STRESS_LOW,
        format!(
            "{} kPa was sent; 100 kPa is the average for fine soil on steel and 150 to 350 kPa were measured as peaks",
            crate::quantity::round9(stress.get(StressUnit::KPa))
        ),
    );
}
