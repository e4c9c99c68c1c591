//! Checks of depth: as specified, below frost, fill and active zone. Each gives the depth that
//! is missing to `advice.rs` through its numbers.

use super::codes::checks;
use super::found::Found;
use crate::contract::{Check, Work, utilisation};
use crate::frost::constants::FROST_MARGIN;
use crate::quantity::{Length, round9};
use crate::source::{BEARWELL_CHOICE, CALLER, FROST_DEPTH_OFFICIAL, IBC_1810_4_11};

/// All of them.
pub(super) fn judge(found: &Found, work: &mut Work) {
    tip(found, work);
    let depths = found.request.depths;
    match depths.frost_depth {
        Some(frost) => {
            let margin = depths.frost_margin.unwrap_or(FROST_MARGIN.value);
            // where the ground does not freeze there is nothing to be clear of
            let least = if frost > Length::ZERO {
                frost + margin
            } else {
                frost
            };
            let top = found.top_helix();
            let check = Check::at_least(&checks::FROST, least, top, &FROST_DEPTH_OFFICIAL);
            found.put_deeper(check, work);
        }
        None => {
            let why = "no frost depth was sent; it is never inferred from a place";
            found.open(&checks::FROST, why, &FROST_DEPTH_OFFICIAL, work);
        }
    }
    let below = [
        (&checks::FILL, depths.fill_depth),
        (&checks::ACTIVE_ZONE, depths.active_depth),
    ];
    for (def, base) in below {
        if let Some(base) = base {
            let check = Check::at_least(def, base, found.top_helix(), &BEARWELL_CHOICE);
            found.put_deeper(check, work);
        }
    }
}

fn tip(found: &Found, work: &mut Work) {
    let depths = found.request.depths;
    let tip = found.tip();
    match depths.minimum_tip_depth {
        None => {
            let why = "no least depth of the tip was sent";
            found.open(&checks::TIP_DEPTH, why, &IBC_1810_4_11, work);
        }
        Some(least) => {
            let short = !utilisation(least.si(), tip.si()).1;
            let (def, reason) = match &found.stuck {
                Some(why) if short => (&checks::REFUSAL_SHORT, Some(why.clone())),
                _ => (&checks::TIP_DEPTH, None),
            };
            let check = Check::at_least(def, least, tip, &IBC_1810_4_11);
            let check = match reason {
                Some(reason) => check.reason(reason),
                None => check,
            };
            found.put_deeper(check, work);
        }
    }
    let rows = found.log.rows.iter();
    let deepest = Length::from_si(rows.fold(0.0, |a: f64, r| a.max(r.depth)));
    if round9(tip.si()) < round9(deepest.si()) {
        let check = Check::at_least(&checks::LEFT_DEEPEST, deepest, tip, &BEARWELL_CHOICE);
        found.put_deeper(check, work);
    }
    if let Some(most) = depths.maximum_tip_depth {
        let check = Check::at_most(&checks::GREATEST_DEPTH, tip, most, &CALLER);
        found.put(check, work);
    }
}
