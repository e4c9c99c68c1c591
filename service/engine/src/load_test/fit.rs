//! Straight lines by least squares through the points of a load test: the hyperbola of Chin
//! and the break of De Beer. Nothing else is fitted.

use super::curve::{Curve, Point};
use crate::math;
use crate::quantity::{Force, Size};
use crate::source::{BEARWELL_CHOICE, CHIN_1971, DE_BEER_1968, Sourced};
use crate::trace::Trace;

/// Chin: from which part of the largest load the points are taken.
pub static CHIN_FROM: Sourced<f64> = Sourced::new("chin_from_load_ratio", 0.5, &BEARWELL_CHOICE);
/// Chin: fewest points.
pub static CHIN_POINTS: Sourced<usize> = Sourced::new("chin_fewest_points", 4, &BEARWELL_CHOICE);
/// Chin: least coefficient of determination.
pub static CHIN_DETERMINATION: Sourced<f64> =
    Sourced::new("chin_least_determination", 0.95, &BEARWELL_CHOICE);
/// Chin: largest load that is still told, over the largest load of the test. A hyperbola that
/// was not followed to half of what it tends to is a guess.
pub static CHIN_REACH: Sourced<f64> = Sourced::new("chin_reach_ratio", 2.0, &BEARWELL_CHOICE);
/// De Beer: fewest points on each line.
pub static DE_BEER_POINTS: Sourced<usize> =
    Sourced::new("de_beer_fewest_points", 3, &BEARWELL_CHOICE);
/// De Beer: largest slope of the second line over that of the first.
pub static DE_BEER_BREAK: Sourced<f64> = Sourced::new("de_beer_slope_ratio", 0.5, &BEARWELL_CHOICE);
/// De Beer: largest sum of squares of the two lines over that of one line. Loads off at random
/// about one power law leave two thirds of it and more; curves with a break, a twentieth.
pub static DE_BEER_GAIN: Sourced<f64> =
    Sourced::new("de_beer_squares_ratio", 0.25, &BEARWELL_CHOICE);

/// A line y = intercept + slope x by least squares.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted {
    /// Rise of y with x.
    pub slope: f64,
    /// y at x = 0.
    pub intercept: f64,
    /// Sum of the squared distances in y.
    pub squares: f64,
    /// Part of the scatter of y that the line explains; 1 where all are on it.
    pub determination: f64,
}

/// Line through points by least squares.
///
/// slope = sum (x - xm)(y - ym) / sum (x - xm)2, intercept = ym - slope xm
///
/// xm, ym means. None for fewer than two points or for a single x. Source: arithmetic.
pub fn least_squares(points: &[(f64, f64)]) -> Option<Fitted> {
    let n = points.len() as f64;
    let mean_x = points.iter().map(|p| p.0).sum::<f64>() / n;
    let mean_y = points.iter().map(|p| p.1).sum::<f64>() / n;
    let sum = |term: fn(f64, f64) -> f64| -> f64 {
        let each = points.iter().map(|p| term(p.0 - mean_x, p.1 - mean_y));
        each.sum()
    };
    let (xx, xy, yy) = (sum(|x, _| x * x), sum(|x, y| x * y), sum(|_, y| y * y));
    if points.len() < 2 || xx <= 0.0 {
        return None;
    }
    let slope = xy / xx;
    let intercept = mean_y - slope * mean_x;
    let off = |p: &(f64, f64)| p.1 - intercept - slope * p.0;
    let squares = points.iter().map(|p| off(p) * off(p)).sum::<f64>();
    // a level line explains all there is when no point is off it by more than a last bit
    let level = yy <= 1e-24 * n * mean_y * mean_y;
    Some(Fitted {
        slope,
        intercept,
        squares,
        determination: if level {
            1.0
        } else {
            (1.0 - squares / yy).max(0.0)
        },
    })
}

/// Points a line was fitted to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FitRange {
    /// How many.
    pub count: usize,
    /// The first.
    pub first: Point,
    /// The last.
    pub last: Point,
}

fn range(points: &[Point]) -> FitRange {
    FitRange {
        count: points.len(),
        first: points[0],
        last: points[points.len() - 1],
    }
}

/// Why a fit gives no load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NoFit {
    /// So many points, of so many needed.
    TooFew(usize, usize),
    /// The points are not on a straight line: determination, slope.
    Poor(f64, f64),
    /// The second line is not flat enough beside the first: slopes.
    NoBreak(f64, f64),
    /// Two lines are hardly nearer to the points than one: part of the squares that is left.
    OneLine(f64),
    /// The lines do not meet within the curve.
    MeetsOutside,
    /// The hyperbola tends to this load, N: too far beyond the curve.
    TooFarBeyond(f64),
}

/// The load that the hyperbola of Chin tends to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chin {
    /// The load, N.
    pub load: f64,
    /// The line of displacement over load.
    pub line: Fitted,
    /// Its points.
    pub range: FitRange,
}

/// Load that a hyperbola through the upper part of the curve tends to.
///
/// s / Q = C_1 s + C_2, Q_ult = 1 / C_1
///
/// s, Q points with at least half of the largest load, m and N, at least 4; C_1, C_2 by least
/// squares. Holds where the points are on a line (determination at least 0.95) that rises, and
/// where Q_ult is at most twice the largest load.
/// Source: Chin 1970, as told elsewhere. Positive; above every load of a hyperbola.
pub fn chin(curve: &Curve, trace: &mut Trace) -> Result<Chin, NoFit> {
    let from = CHIN_FROM.value * curve.peak().load;
    let upper = |p: &&Point| p.load >= from && p.displacement > 0.0;
    let points: Vec<Point> = curve.points.iter().filter(upper).copied().collect();
    let needed = CHIN_POINTS.value;
    if points.len() < needed {
        return Err(NoFit::TooFew(points.len(), needed));
    }
    let plotted: Vec<_> = (points.iter())
        .map(|p| (p.displacement, p.displacement / p.load))
        .collect();
    let line = least_squares(&plotted).ok_or(NoFit::Poor(0.0, 0.0))?;
    if line.determination < CHIN_DETERMINATION.value || line.slope <= 0.0 {
        return Err(NoFit::Poor(line.determination, line.slope));
    }
    let load = 1.0 / line.slope;
    if load > CHIN_REACH.value * curve.peak().load {
        return Err(NoFit::TooFarBeyond(load));
    }
    trace.step(
        "Q_ult",
        "1 / C_1, s / Q = C_1 s + C_2",
        Force::from_si(load),
        [
            ("r2", line.determination.into()),
            ("Q_from", Force::from_si(points[0].load).into()),
        ],
        &CHIN_1971,
    );
    Ok(Chin {
        load,
        line,
        range: range(&points),
    })
}

/// The two lines of De Beer and where they meet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Break {
    /// Load where they meet, N.
    pub load: f64,
    /// The two lines with their points.
    pub lines: [(Fitted, FitRange); 2],
}

/// Load at the break of the curve in logarithmic scales.
///
/// log Q = p_1 + r_1 log s before, p_2 + r_2 log s after; log s = (p_1 - p_2) / (r_2 - r_1)
///
/// s, Q points with load and displacement, m and N, divided where the sum of squares of both
/// lines is least, at least 3 on each side. A break only where r_1 is above nil and r_2 at most
/// half of it, where the two lines leave at most a quarter of the sum of squares of one line
/// through all points, and where they meet within the curve. Source: De Beer 1968, as told
/// elsewhere; the rules of division, slope and squares are choices of this service. Positive.
pub fn de_beer(curve: &Curve, trace: &mut Trace) -> Result<Break, NoFit> {
    let moved = |p: &&Point| p.load > 0.0 && p.displacement > 0.0;
    let points: Vec<Point> = curve.points.iter().filter(moved).copied().collect();
    let side = DE_BEER_POINTS.value;
    if points.len() < 2 * side {
        return Err(NoFit::TooFew(points.len(), 2 * side));
    }
    let plotted: Vec<_> = (points.iter())
        .map(|p| (math::log10(p.displacement), math::log10(p.load)))
        .collect();
    let mut best: Option<(usize, Fitted, Fitted)> = None;
    for at in side..=points.len() - side {
        let halves = least_squares(&plotted[..at]).zip(least_squares(&plotted[at..]));
        if let Some((first, second)) = halves
            && best.is_none_or(|(_, a, b)| first.squares + second.squares < a.squares + b.squares)
        {
            best = Some((at, first, second));
        }
    }
    let (at, first, second) = best.ok_or(NoFit::NoBreak(0.0, 0.0))?;
    if first.slope <= 0.0 || second.slope > DE_BEER_BREAK.value * first.slope {
        return Err(NoFit::NoBreak(first.slope, second.slope));
    }
    let one = least_squares(&plotted).map_or(0.0, |line| line.squares);
    let two = first.squares + second.squares;
    if two > DE_BEER_GAIN.value * one {
        return Err(NoFit::OneLine(if one > 0.0 { two / one } else { 1.0 }));
    }
    let log_s = (first.intercept - second.intercept) / (second.slope - first.slope);
    let s = math::pow(10.0, log_s);
    let load = math::pow(10.0, first.intercept + first.slope * log_s);
    let within = points[0].displacement <= s && s <= curve.last().displacement;
    let peak = curve.peak().load;
    // a level second line at the largest load meets there to a last bit
    if !within || load > peak * (1.0 + 1e-9) {
        return Err(NoFit::MeetsOutside);
    }
    let load = load.min(peak);
    trace.step(
        "Q_u",
        "two lines of log Q against log s meet",
        Force::from_si(load),
        [
            ("s", Size::from_si(s).into()),
            ("r_1", first.slope.into()),
            ("r_2", second.slope.into()),
        ],
        &DE_BEER_1968,
    );
    Ok(Break {
        load,
        lines: [
            (first, range(&points[..at])),
            (second, range(&points[at..])),
        ],
    })
}
