//! The elastic line of a load test, and the criteria that ask where the curve meets a line:
//! Davisson and the movements of the helix. Those read on the shape of the curve are in
//! `shape.rs`.

use super::curve::{Curve, Point};
use crate::quantity::{
    Area, Force, Length, LengthUnit, Size, SpringStiffness, SteelStress, StressUnit,
};
use crate::source::{
    AC358_10_PERCENT, DAVISSON_OFFSET, ELASTIC_COLUMN, LIVNEH_8_PERCENT, Reference, STEEL_MODULUS,
    Sourced, TANG_PHOON_5_PERCENT, TEN_PERCENT_GROSS,
};
use crate::trace::Trace;

/// Elastic modulus of steel, when none is sent.
pub static MODULUS: Sourced<SteelStress> = Sourced::new(
    "load_test_steel_modulus",
    SteelStress::new(200_000.0, StressUnit::MPa),
    &STEEL_MODULUS,
);
/// Part of the offset of Davisson that does not grow with the diameter.
pub static DAVISSON_BASE: Sourced<Size> = Sourced::new(
    "davisson_offset_base",
    Size::new(3.8, LengthUnit::Mm),
    &DAVISSON_OFFSET,
);
/// Diameter over the part of the offset of Davisson that grows with it.
pub static DAVISSON_DIVISOR: Sourced<f64> =
    Sourced::new("davisson_diameter_divisor", 120.0, &DAVISSON_OFFSET);
/// Movement over helix diameter, Tang and Phoon.
pub static SHARE_5_GROSS: Sourced<f64> =
    Sourced::new("helix_5_percent_gross", 0.05, &TANG_PHOON_5_PERCENT);
/// Movement over helix diameter, Livneh and El Naggar.
pub static SHARE_8_NET: Sourced<f64> = Sourced::new("helix_8_percent_net", 0.08, &LIVNEH_8_PERCENT);
/// Movement over helix diameter, acceptance criteria.
pub static SHARE_10_NET: Sourced<f64> =
    Sourced::new("helix_10_percent_net", 0.10, &AC358_10_PERCENT);
/// Movement over helix diameter, the oldest rule.
pub static SHARE_10_GROSS: Sourced<f64> =
    Sourced::new("helix_10_percent_gross", 0.10, &TEN_PERCENT_GROSS);

/// Stiffness of the shaft as a column with the same load over its length.
///
/// K = A E / L
///
/// A steel area, m2; E elastic modulus, Pa; L loaded length, m; all above nil. Source: Hooke's
/// law, UFC 3-220-20 eq. 6-45. Positive.
pub fn elastic_stiffness(
    area: Area,
    modulus: SteelStress,
    length: Length,
    trace: &mut Trace,
) -> SpringStiffness {
    trace.step(
        "K",
        "A E / L",
        SpringStiffness::from_si(area.si() * modulus.si() / length.si()),
        [
            ("A", area.into()),
            ("E", modulus.into()),
            ("L", length.into()),
        ],
        &ELASTIC_COLUMN,
    )
}

/// Elastic shortening of the shaft under a load.
///
/// delta = P / K = P L / (A E)
///
/// P load, N; K stiffness of the shaft, N/m. The load is the same over the length (end
/// bearing); with friction on the shaft the shortening is less. Source: Hooke's law,
/// UFC 3-220-20 eq. 6-45. Shortening in compression, stretching in tension; never negative.
pub fn elastic_shortening(load: Force, stiffness: SpringStiffness, trace: &mut Trace) -> Size {
    trace.step(
        "delta",
        "P / K",
        Size::from_si(load.si() / stiffness.si()),
        [("P", load.into()), ("K", stiffness.into())],
        &ELASTIC_COLUMN,
    )
}

/// Offset of Davisson from the elastic line.
///
/// x = 3.8 mm + D/120
///
/// D diameter, m: of the shaft as published; some take that of the helix. Source: Davisson 1972
/// as given by NeSmith and Siegel. Positive.
pub fn davisson_offset(diameter: Size, trace: &mut Trace) -> Size {
    trace.step(
        "x",
        "3.8 mm + D/120",
        DAVISSON_BASE.value + diameter / DAVISSON_DIVISOR.value,
        [("D", diameter.into())],
        &DAVISSON_OFFSET,
    )
}

/// Movement of the helix at which the pile is said to have failed.
///
/// x = share D
///
/// share part of the diameter; D helix diameter, m. Source: that of the share. Positive.
pub fn helix_movement(share: &Sourced<f64>, diameter: Size, trace: &mut Trace) -> Size {
    trace.step(
        "x",
        "share D",
        diameter * share.value,
        [("share", share.value.into()), ("D", diameter.into())],
        share.reference,
    )
}

/// Load where the curve first meets a line that rises with the load.
///
/// s = x + Q / K, or s = x without an elastic part
///
/// Q load of the curve, N; s its displacement there, m; x offset, m, above nil; K stiffness of
/// the shaft, N/m. None where the last point is still before the line (within a part in 1e9).
/// Source: that of the offset. Positive.
pub fn first_on_line(
    curve: &Curve,
    offset: Size,
    stiffness: Option<SpringStiffness>,
    source: &'static Reference,
    trace: &mut Trace,
) -> Option<Point> {
    let compliance = stiffness.map_or(0.0, |k| 1.0 / k.si());
    let beyond = |p: &Point| p.displacement - p.load * compliance - offset.si();
    let found = curve.points.windows(2).find_map(|pair| {
        let (before, after) = (beyond(&pair[0]), beyond(&pair[1]));
        (after >= 0.0).then(|| pair[0].towards(pair[1], before / (before - after)))
    });
    let last = curve.last();
    let found = found.or_else(|| (beyond(&last) >= -1e-9 * last.displacement).then_some(last))?;
    let (load, displacement) = (
        Force::from_si(found.load),
        Size::from_si(found.displacement),
    );
    let at = ("s", displacement.into());
    match stiffness {
        Some(k) => trace.step(
            "Q",
            "curve at s = x + Q / K",
            load,
            [at, ("x", offset.into()), ("K", k.into())],
            source,
        ),
        None => trace.step(
            "Q",
            "curve at s = x",
            load,
            [at, ("x", offset.into())],
            source,
        ),
    };
    Some(found)
}
