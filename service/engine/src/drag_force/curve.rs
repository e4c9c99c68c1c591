//! Load and resistance over depth, as a table.

use super::friction::{Friction, Side};
use super::outcome::DragAt;
use crate::answer_table::{AnswerColumn, AnswerTable, Cell};
use crate::quantity::{Force, Length};

/// Equal parts of the shaft in the table, beside the ends of stretches.
const PARTS: u32 = 40;

/// The table. `toe` is the mobilised resistance of the toe, `plane` the neutral plane in force.
pub(super) fn curve(
    friction: &Friction,
    load: Force,
    toe: Option<Force>,
    plane: Option<&DragAt>,
    smooth: bool,
) -> AnswerTable {
    let mut columns = vec![
        AnswerColumn::of("depth", Length::ROLE),
        AnswerColumn::of("load_from_above", Force::ROLE),
    ];
    if toe.is_some() {
        columns.push(AnswerColumn::of("resistance_from_below", Force::ROLE));
    }
    if plane.is_some() {
        columns.push(AnswerColumn::of("load", Force::ROLE));
    }
    let whole = friction.whole(Side::Lower);
    let row = |depth: f64| {
        let above = load.si() + friction.down_to(Side::Upper, depth);
        let lower = friction.down_to(Side::Lower, depth);
        let mut cells = vec![
            Cell::of(Length::from_si(depth)),
            Cell::of(Force::from_si(above)),
        ];
        if let Some(toe) = toe {
            cells.push(Cell::of(Force::from_si(toe.si() + whole - lower)));
        }
        if let Some(plane) = plane {
            let inside = if depth <= plane.depth.si() {
                above
            } else {
                let passed = lower - friction.down_to(Side::Lower, plane.depth.si());
                (plane.maximum_load.si() - passed).max(0.0)
            };
            cells.push(Cell::of(Force::from_si(inside)));
        }
        cells
    };
    AnswerTable {
        columns,
        rows: depths(friction, plane, smooth)
            .into_iter()
            .map(row)
            .collect(),
    }
}

/// Ends of stretches, the neutral plane and, where it is `smooth`, equal parts; ascending.
fn depths(friction: &Friction, plane: Option<&DragAt>, smooth: bool) -> Vec<f64> {
    let (top, bottom) = (friction.top(), friction.bottom());
    let mut all = vec![top];
    all.extend(friction.stretches.iter().map(|s| s.bottom));
    all.extend(
        plane
            .map(|p| p.depth.si())
            .filter(|z| *z > top && *z < bottom),
    );
    if smooth {
        let part = |k: u32| top + (bottom - top) * f64::from(k) / f64::from(PARTS);
        all.extend((1..PARTS).map(part));
    }
    all.sort_by(f64::total_cmp);
    // a part that all but coincides with an end is left out
    let near = (bottom - top) * 1e-9;
    all.dedup_by(|b, a| *b - *a <= near);
    all
}
