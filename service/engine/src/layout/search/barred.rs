//! Meetings and forced points where no pile may stand. Along the runs it is `Places` that
//! leaves places out.

use crate::layout::plan::{Place, Plan};
use crate::layout::types::{Along, Stretch, Terrain};
use crate::quantity::in_both_systems;

/// Why no pile may stand at each meeting; none where one may.
pub(in crate::layout) fn meetings(
    plan: &Plan,
    terrain: &Terrain,
    stretches: &[Stretch],
) -> Vec<Option<String>> {
    plan.meetings
        .iter()
        .map(|m| {
            let (run, at) = m.on[0];
            let place = Place {
                run,
                at,
                meeting: None,
            };
            let by_thing = thing(plan, terrain, &place);
            by_thing.or_else(|| {
                m.on.iter()
                    .find_map(|(run, at)| stretch(stretches, *run, *at))
            })
        })
        .collect()
}

/// Why no pile may stand at a place; none where one may.
pub(super) fn why(
    plan: &Plan,
    terrain: &Terrain,
    stretches: &[Stretch],
    barred: &[Option<String>],
    place: &Place,
) -> Option<String> {
    match place.meeting {
        Some(m) => barred[m].clone(),
        None => thing(plan, terrain, place).or_else(|| stretch(stretches, place.run, place.at)),
    }
}

/// The keep-out that bars a point.
fn thing(plan: &Plan, terrain: &Terrain, place: &Place) -> Option<String> {
    let mut along = Along::new(terrain, place.run, &plan.runs[place.run], &[]);
    along.barrier(place.at).map(|k| {
        let b = &terrain.barriers[k];
        let p = plan.point_of(place);
        format!(
            "keep-out {} is {} away and needs {}",
            b.name(),
            in_both_systems(b.distance(p), "m"),
            in_both_systems(b.clearance, "m")
        )
    })
}

/// The forbidden stretch that bars a place.
fn stretch(stretches: &[Stretch], run: usize, at: f64) -> Option<String> {
    let own = stretches.iter().find(|s| s.run == run && s.holds(at));
    own.map(|s| format!("forbidden stretch {} of the list", s.index))
}
