//! The readings of a log as steps: each stands for the depth since the reading before. How
//! each looks by its standing: a mark of its own form and a dash of its own.

use bearwell_engine::record::{FIRST_READING, Outcome, Request, RowStanding};

use crate::svg::{Svg, mm};

/// Radius of a mark, mm.
pub const MARK: f64 = 0.8;

/// A reading with the depths it stands for, base SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// Upper end, m; the lower end where it stands for none.
    pub from: f64,
    /// Depth of the reading, m.
    pub to: f64,
    /// Torque, N m.
    pub torque: f64,
    /// How it stands.
    pub standing: RowStanding,
    /// Among those that count: the depth of the one before, m.
    pub counts_from: f64,
}

/// The steps of an answer, in the order of its rows; rows without a torque are passed over.
pub fn steps(request: &Request, outcome: &Outcome) -> Vec<Step> {
    let history = request.history.unwrap_or_default();
    let before = [history.pre_drilled_depth, history.disturbed_depth];
    let fresh = before
        .into_iter()
        .flatten()
        .fold(0.0, |a: f64, d| a.max(d.si()));
    let mut all: Vec<Step> = Vec::new();
    let mut counted: Option<f64> = None;
    for row in &outcome.rows {
        let Some(torque) = row.torque else {
            continue;
        };
        let to = row.depth.si();
        let counts = row.standing == RowStanding::Counts;
        // a log that begins deeper says nothing of the ground above
        let begins = if to - fresh > FIRST_READING {
            to
        } else {
            fresh
        };
        let from = match all.last() {
            None => {
                if counts {
                    begins
                } else {
                    0.0
                }
            }
            Some(last) => last.to,
        };
        let counts_from = counted.unwrap_or(begins).min(to);
        if counts {
            counted = Some(to);
        }
        all.push(Step {
            from: from.min(to),
            to,
            torque: torque.si(),
            standing: row.standing,
            counts_from,
        });
    }
    all
}

/// Stroke of the step of a reading.
pub fn dash(standing: RowStanding) -> &'static str {
    match standing {
        RowStanding::Counts | RowStanding::NoTorque => {
            "stroke=\"#000\" stroke-width=\"0.55\" stroke-linejoin=\"round\""
        }
        RowStanding::Spike => "stroke=\"#000\" stroke-width=\"0.3\" stroke-dasharray=\"1.6 0.7\"",
        RowStanding::Unconfirmed => {
            "stroke=\"#000\" stroke-width=\"0.35\" stroke-dasharray=\"0.6 0.6\""
        }
        RowStanding::NotFresh => {
            "stroke=\"#000\" stroke-width=\"0.4\" stroke-linecap=\"round\" stroke-dasharray=\"0.01 0.9\""
        }
    }
}

/// Mark of a reading: a dot that counts, an open diamond for a spike, an open square that is
/// not confirmed, an open ring where the ground was not fresh.
pub fn mark(svg: &mut Svg, standing: RowStanding, (x, y): (f64, f64), r: f64) {
    let open = "fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.3\"";
    match standing {
        RowStanding::Counts | RowStanding::NoTorque => svg.circle((x, y), 0.9 * r, "fill=\"#000\""),
        RowStanding::NotFresh => svg.circle((x, y), r, open),
        RowStanding::Spike => {
            let r = 1.35 * r;
            let d = format!(
                "M{} {}L{} {}L{} {}L{} {}Z",
                mm(x - r),
                mm(y),
                mm(x),
                mm(y - r),
                mm(x + r),
                mm(y),
                mm(x),
                mm(y + r)
            );
            svg.path(&d, open);
        }
        RowStanding::Unconfirmed => {
            let d = format!(
                "M{} {}H{}V{}H{}Z",
                mm(x - r),
                mm(y - r),
                mm(x + r),
                mm(y + r),
                mm(x - r)
            );
            svg.path(&d, open);
        }
    }
}

/// How a reading stands, in words.
pub fn told(standing: RowStanding) -> &'static str {
    match standing {
        RowStanding::Counts => "reading that counts",
        RowStanding::Spike => "spike, left out",
        RowStanding::Unconfirmed => "rise not yet held",
        RowStanding::NotFresh => "ground not fresh",
        RowStanding::NoTorque => "no torque read",
    }
}
