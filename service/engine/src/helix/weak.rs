//! Warnings about soil near a helix that is much weaker than what the helix bears on, and
//! about the end of the profile close below it.

use super::bearing::{Seat, soil_bearing};
use super::codes::warnings;
use super::ground::{Disc, Ground};
use super::pile::AxialDirection;
use super::plates::SAME_DEPTH_M;
use super::punching::{WEAK_LAYER_REACH, WEAK_LAYER_SHARE};
use super::zone::{ZonePart, load_side};
use crate::contract::{SubjectKind, Work};
use crate::quantity::SoilStress;
use crate::soil::Strength;
use crate::trace::Trace;

/// Warns of soil within three diameters on the load side that is much weaker than what the
/// helix bears on.
pub(crate) fn look_for_weak_layer(
    ground: &Ground,
    disc: &Disc,
    label: &str,
    seat: &Seat,
    bearing: SoilStress,
    work: &mut Work,
) {
    let reach = WEAK_LAYER_REACH.value;
    let direction = ground.direction.name();
    let own = |part: &ZonePart| {
        let mut off = Trace::off();
        let law = &ground.laws[part.layer];
        soil_bearing(law, seat, ground.direction, ground.settings, &mut off).stress
    };
    let counted = || load_side(ground, disc, reach).filter(|p| !p.above_credit);
    let nearest = match ground.direction {
        AxialDirection::Compression => counted().next(),
        AxialDirection::Tension => counted().next_back(),
    };
    let reference = nearest.map_or(bearing, |p| own(&p).max(bearing));
    for part in counted() {
        let q = own(&part);
        let layer = &ground.strata.layers[part.layer];
        let rock = layer.strength == Strength::Rock;
        if !rock && q.si() < WEAK_LAYER_SHARE.value * reference.si() * (1.0 - 1e-9) {
            work.warn_about(
                &warnings::WEAK_LAYER_NEAR_HELIX,
                SubjectKind::Helix,
                label,
                format!(
                    "in {direction} layer {} within {reach} diameters of helix {label} bears {:.0} % of what the helix bears on",
                    layer.label,
                    100.0 * q.si() / reference.si()
                ),
            );
        }
    }
    let end = disc.depth.si() + reach * disc.diameter.si();
    if ground.direction == AxialDirection::Compression
        && end > ground.strata.depth().si() + SAME_DEPTH_M
    {
        work.warn_about(
            &warnings::PROFILE_ENDS_NEAR_HELIX,
            SubjectKind::Helix,
            label,
            format!(
                "the profile ends within {reach} diameters below helix {label}; whether weaker soil follows is not known"
            ),
        );
    }
}
