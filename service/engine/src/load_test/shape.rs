//! Criteria that are read on the shape of the measured curve: Brinch Hansen, Butler and Hoy.
//! Lines fitted to the points are in `fit.rs`.

use super::curve::{Curve, Point};
use crate::quantity::{Force, Size, SpringStiffness, SpringUnit};
use crate::source::{BEARWELL_CHOICE, BRINCH_HANSEN_1963, BUTLER_HOY_1976, Sourced};
use crate::trace::Trace;

/// A criterion of Brinch Hansen: the share of the displacement that takes a share of the load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shares {
    /// Of the displacement at failure.
    pub displacement: f64,
    /// Of the failure load.
    pub load: f64,
}

/// 80 % criterion.
pub static HANSEN_80: Sourced<Shares> = Sourced::new(
    "brinch_hansen_80",
    Shares {
        displacement: 0.25,
        load: 0.8,
    },
    &BRINCH_HANSEN_1963,
);
/// 90 % criterion.
pub static HANSEN_90: Sourced<Shares> = Sourced::new(
    "brinch_hansen_90",
    Shares {
        displacement: 0.5,
        load: 0.9,
    },
    &BRINCH_HANSEN_1963,
);
/// Slope of the steep tangent of Butler and Hoy: 0.05 in per ton of 2,000 lbf.
pub static STEEP_TANGENT: Sourced<SpringStiffness> = Sourced::new(
    "butler_hoy_tangent",
    SpringStiffness::new(40.0, SpringUnit::KipPerIn),
    &BUTLER_HOY_1976,
);
/// Largest load of the last point over that of the steep tangent there. A straight curve whose
/// loads are off by up to 3 % either way comes down to 0.97/1.03 = 0.942 of a tangent that
/// touches it before its end.
pub static LEFT_TANGENT: Sourced<f64> =
    Sourced::new("butler_hoy_left_tangent_ratio", 0.94, &BEARWELL_CHOICE);

/// Failure by a criterion of Brinch Hansen.
///
/// Q(a s_u) = b Q(s_u): a = 0.25, b = 0.8 (80 %); a = 0.5, b = 0.9 (90 %)
///
/// Q(s) load of the measured curve at displacement s, N; s_u displacement at failure, m; the
/// first point where the left side, smaller before, comes up to the right. None where it does
/// not within the curve (within a part in 1e9 at its end). Source: Brinch Hansen 1963, as told
/// elsewhere. Positive.
pub fn brinch_hansen(
    curve: &Curve,
    criterion: &Sourced<Shares>,
    trace: &mut Trace,
) -> Option<Point> {
    let Shares { displacement, load } = criterion.value;
    let end = curve.last().displacement;
    // between these the difference is a straight line
    let knots = curve.points.iter().map(|p| p.displacement);
    let scaled = knots.clone().map(|s| s / displacement);
    let mut stops: Vec<f64> = knots.chain(scaled).filter(|s| *s <= end).collect();
    stops.sort_by(f64::total_cmp);
    stops.dedup();
    let mut below = None;
    for s in stops {
        let (early, late) = (curve.loads_at(displacement * s)?, curve.loads_at(s)?);
        let arriving = early.0 - load * late.0;
        let leaving = early.1 - load * late.1;
        if let Some((from, under)) = below
            && (arriving >= 0.0 || s == end && arriving >= -1e-9 * late.0)
        {
            let share = f64::min(1.0, under / (under - arriving));
            return Some(failure(curve, criterion, from + share * (s - from), trace));
        }
        if below.is_some() && leaving >= 0.0 {
            return Some(failure(curve, criterion, s, trace));
        }
        below = (leaving < 0.0).then_some((s, leaving));
    }
    None
}

fn failure(curve: &Curve, criterion: &Sourced<Shares>, s: f64, trace: &mut Trace) -> Point {
    let loads = curve.loads_at(s).unwrap_or_default();
    let share = criterion.value;
    let equation = if share.load < 0.85 {
        "Q(s_u), Q(0.25 s_u) = 0.8 Q(s_u)"
    } else {
        "Q(s_u), Q(0.5 s_u) = 0.9 Q(s_u)"
    };
    trace.step(
        "Q_u",
        equation,
        Force::from_si(loads.1),
        [("s_u", Size::from_si(s).into())],
        criterion.reference,
    );
    Point {
        load: loads.1,
        displacement: s,
    }
}

/// Why the tangents of Butler and Hoy give no load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NoTangent {
    /// The curve does not become as steep as the steep tangent before its end.
    NotSteepEnough,
    /// It does, but its last point still has this part of the load of the tangent.
    HardlyLeft(f64),
    /// Its first part is as soft as the steep tangent already.
    TooSoft,
}

/// Failure by the two tangents of Butler and Hoy.
///
/// Q = -c / (1/K_t - k), k = min s/Q, c = min (s - Q/K_t)
///
/// s, Q points of the curve, m and N; k slope of the line from the origin that touches the
/// curve, m/N, of the points with a displacement; K_t = 40 kip/in, that is 0.05 in per ton of
/// 2,000 lbf; c intercept of the line with that slope that touches the curve, m. Each touches
/// where the curve is convex. None where the steep one would touch at the last point, or where
/// the load of the last point is more than 0.94 of that of the tangent, (s - c) K_t, there: an
/// error of the loads can look so. Source: Butler and Hoy 1976, as told elsewhere; the 0.94 is a
/// choice of this service. Positive.
pub fn butler_hoy(curve: &Curve, trace: &mut Trace) -> Result<f64, NoTangent> {
    let steep = 1.0 / STEEP_TANGENT.value.si();
    let moved = |p: &&Point| p.load > 0.0 && p.displacement > 0.0;
    let slopes = curve
        .points
        .iter()
        .filter(moved)
        .map(|p| p.displacement / p.load);
    let flat = slopes.fold(f64::INFINITY, f64::min);
    if flat >= steep {
        return Err(NoTangent::TooSoft);
    }
    let intercept = |p: &Point| p.displacement - p.load * steep;
    let (mut least, mut touches) = (0.0, 0);
    for (at, p) in curve.points.iter().enumerate() {
        if intercept(p) < least {
            (least, touches) = (intercept(p), at);
        }
    }
    // a curve flatter than the steep tangent somewhere has points below the line through zero
    if touches + 1 == curve.points.len() {
        return Err(NoTangent::NotSteepEnough);
    }
    let last = curve.last();
    let left = last.load * steep / (last.displacement - least);
    if left > LEFT_TANGENT.value {
        return Err(NoTangent::HardlyLeft(left));
    }
    let load = -least / (steep - flat);
    trace.step(
        "Q_u",
        "-c / (1/K_t - 1/K_0)",
        Force::from_si(load),
        [
            ("c", Size::from_si(least).into()),
            ("K_t", STEEP_TANGENT.value.into()),
            ("K_0", SpringStiffness::from_si(1.0 / flat).into()),
        ],
        STEEP_TANGENT.reference,
    );
    Ok(load)
}
