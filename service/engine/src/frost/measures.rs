//! Measures against the bond on the shaft: a sleeve, which counts only under conditions, and
//! a coating, which never does.

use super::codes::warnings;
use super::ground::{Ground, reaches};
use super::uplift_outcome::{SleeveFault, SleeveOutcome};
use super::uplift_request::FrostUplift;
use crate::contract::Work;

/// The sleeve of a request, and whether it counts; a warning says why not.
pub fn sleeve(uplift: &FrostUplift, ground: &Ground, work: &mut Work) -> Option<SleeveOutcome> {
    let sleeve = uplift.sleeve.as_ref()?;
    let mut not_credited = Vec::new();
    if !reaches(ground.base, sleeve.bottom_depth) {
        not_credited.push(SleeveFault::EndsInFrost);
        work.warn(
            &warnings::SLEEVE_NOT_CREDITED,
            "the sleeve ends above the base of frost; the shaft below it is gripped, and ice can grow under its end",
        );
    }
    if sleeve.free_to_heave.is_none() {
        not_credited.push(SleeveFault::NotStatedFree);
        work.warn(
            &warnings::SLEEVE_NOT_CREDITED,
            "that the sleeve itself can heave freely was not stated; one that jams lifts the pile with the full bond on its outside",
        );
    }
    Some(SleeveOutcome {
        bottom_depth: sleeve.bottom_depth,
        credited: not_credited.is_empty(),
        not_credited,
    })
}

/// Says that a coating counts nothing.
pub fn coating(uplift: &FrostUplift, work: &mut Work) {
    if let Some(coating) = &uplift.coating {
        work.warn(
            &warnings::COATING_NOT_CREDITED,
            format!(
                "{coating}: no number for a coating is safe to credit; the bond is that of bare steel unless a tested one is sent as `given`"
            ),
        );
    }
}
