//! Places along a beam whose first point is not where the caller counts from. Moves what
//! lies along it; says what no longer lies on it.

use crate::catalogue::RefusalDef;
use crate::contract::Issue;
use crate::layout::codes::refusals;
use crate::layout::plan::TOLERANCE;
use crate::layout::request::GradeBeam;
use crate::quantity::{Length, in_both_systems};

/// Moves loads and openings along their beam by a distance; the beam is `length` long as it
/// has become. Faults are filed under `path`.
pub(super) fn moved_along(
    path: &str,
    beam: &mut GradeBeam,
    by: f64,
    length: f64,
    issues: &mut Vec<Issue>,
) {
    let mut place = |at: &mut Length, pointer: String, code: &'static RefusalDef| {
        let now = at.si() + by;
        if now < -TOLERANCE || now > length + TOLERANCE {
            issues.push(
                Issue::new(
                    pointer,
                    code,
                    format!(
                        "{} from where it is measured",
                        in_both_systems(at.si(), "m")
                    ),
                )
                .limit(format!(
                    "the centre line reaches from {} to {}",
                    in_both_systems(-by, "m"),
                    in_both_systems(length - by, "m")
                )),
            );
        }
        *at = Length::from_si(now.clamp(0.0, length));
    };
    for (i, load) in beam.line_loads.iter_mut().flatten().enumerate() {
        let pointer = format!("{path}/line_loads/{i}");
        let code = &refusals::LINE_LOAD_OFF_BEAM;
        if let Some(from) = &mut load.from {
            place(from, format!("{pointer}/from"), code);
        }
        if let Some(to) = &mut load.to {
            place(to, format!("{pointer}/to"), code);
        }
    }
    for (i, opening) in beam.openings.iter_mut().flatten().enumerate() {
        let pointer = format!("{path}/openings/{i}");
        let code = &refusals::OPENING_OFF_BEAM;
        place(&mut opening.from, format!("{pointer}/from"), code);
        place(&mut opening.to, format!("{pointer}/to"), code);
    }
}
