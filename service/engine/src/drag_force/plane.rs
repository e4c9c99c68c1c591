//! The neutral plane from the balance of forces, stretch by stretch.

use super::equations::{maximum_load, neutral_plane, rise_to_nil};
use super::friction::{Friction, Side};
use super::outcome::{DragAt, DragBalance, NeutralPlanePosition};
use crate::contract::utilisation;
use crate::quantity::{Force, Length};
use crate::trace::Trace;

/// Where the load from above reaches the resistance from below, if it does.
enum Found {
    /// Above the first stretch.
    Above,
    At(f64),
    /// Not down to the toe.
    Never,
}

fn find(friction: &Friction, load: f64, toe: f64) -> Found {
    let mut g = load + friction.above - (toe + friction.whole(Side::Lower) - friction.above);
    if g > 0.0 {
        return Found::Above;
    }
    if g == 0.0 {
        return Found::At(friction.top());
    }
    for s in &friction.stretches {
        let next = g + s.force[0] + s.force[1];
        if next >= 0.0 {
            let h = s.bottom - s.top;
            let slope = [0, 1].map(|end| s.ends[0][end] + s.ends[1][end]);
            let curved = (slope[1] - slope[0]) / (2.0 * h);
            return Found::At(s.top + rise_to_nil(g, slope[0], curved, h));
        }
        g = next;
    }
    Found::Never
}

/// The drag force of a neutral plane at a depth.
pub(super) fn drag_at(
    friction: &Friction,
    depth: Length,
    load: Force,
    trace: &mut Trace,
) -> DragAt {
    let drag = Force::from_si(friction.down_to(Side::Upper, depth.si()));
    DragAt {
        depth,
        drag_force: drag,
        maximum_load: maximum_load(load, drag, trace),
    }
}

/// The balance; `Err` where the neutral plane is above the first row of a table.
pub(super) fn balance(
    friction: &Friction,
    load: Force,
    toe: Force,
    trace: &mut Trace,
) -> Result<DragBalance, ()> {
    let shaft = Force::from_si(friction.whole(Side::Lower));
    let held = utilisation(load.si(), (toe + shaft).si()).1;
    let (position, depth) = match find(friction, load.si(), toe.si()) {
        _ if !held => (NeutralPlanePosition::None, None),
        Found::Above if friction.above > 0.0 => return Err(()),
        // more than all of it by less than is printed
        Found::Above => (NeutralPlanePosition::AlongShaft, Some(friction.top())),
        Found::At(depth) => (NeutralPlanePosition::AlongShaft, Some(depth)),
        Found::Never => (NeutralPlanePosition::AtToe, Some(friction.bottom())),
    };
    trace.about(|| "balance of forces".to_owned());
    let plane = depth.map(|z| {
        let z = neutral_plane(Length::from_si(z), load, toe, shaft, trace);
        drag_at(friction, z, load, trace)
    });
    trace.about(String::new);
    Ok(DragBalance {
        toe_resistance: toe,
        shaft_resistance: shaft,
        greatest_drag: Force::from_si(friction.whole(Side::Upper)),
        position,
        neutral_plane: plane,
    })
}
