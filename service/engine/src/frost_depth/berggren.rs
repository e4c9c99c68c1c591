//! The modified Berggren equation with its terms, its layered form, and Stefan's equation. How
//! a request becomes ground and season is in `ground` and `winter`.

use super::ground::Slab;
use crate::math::{PI, erf, erfc, exp};
use crate::quantity::{
    FreezingIndex, HeatCapacity, LatentHeat, Length, Season, Temperature, TemperatureDifference,
    ThermalConductivity,
};
use crate::source::{
    BERGGREN_NEUMANN, DERIVED, MODIFIED_BERGGREN_EQUATION, STEFAN_EQUATION, SURFACE_N_FACTORS,
};
use crate::trace::Trace;

/// Thermal ratio up to which the chart of the correction factor goes.
pub const ALPHA_MAX: f64 = 7.0;
/// Fusion parameter up to which the chart goes.
pub const MU_MAX: f64 = 0.5;

/// Temperature at which water freezes, K.
const FREEZING: f64 = 273.15;

/// Freezing index of the surface.
///
/// F_s = n F; n surface factor (1), F freezing index of the air (K s). Range: n above 0. Source:
/// definition of the factor. Below freezing positive.
pub fn surface_index(factor: f64, air: FreezingIndex, trace: &mut Trace) -> FreezingIndex {
    trace.step(
        "F_s",
        "n F",
        air * factor,
        [("n", factor.into()), ("F", air.into())],
        &SURFACE_N_FACTORS,
    )
}

/// Mean cold of the surface over the season.
///
/// v_s = F_s / t; F_s freezing index of the surface (K s), t length of the season (s); K. Range:
/// t above 0. Source: definition. Below freezing positive.
pub fn surface_cold(
    index: FreezingIndex,
    season: Season,
    trace: &mut Trace,
) -> TemperatureDifference {
    trace.step(
        "v_s",
        "F_s / t",
        TemperatureDifference::from_si(index.si() / season.si()),
        [("F_s", index.into()), ("t", season.into())],
        &DERIVED,
    )
}

/// Warmth of the ground when the winter begins.
///
/// v_o = T - T_f; T mean annual temperature (K), T_f = 273.15 K; K. Range: above 0, else the
/// ground is frozen all year. Source: modified Berggren equation. Above freezing positive.
pub fn ground_warmth(mean_annual: Temperature, trace: &mut Trace) -> TemperatureDifference {
    trace.step(
        "v_o",
        "T - T_f",
        TemperatureDifference::from_si(mean_annual.si() - FREEZING),
        [("T", mean_annual.into())],
        &MODIFIED_BERGGREN_EQUATION,
    )
}

/// Thermal ratio.
///
/// alpha = v_o / v_s; both K. Range of the chart: 0 to 7. Source: modified Berggren equation.
/// Positive.
pub fn thermal_ratio(
    warmth: TemperatureDifference,
    cold: TemperatureDifference,
    trace: &mut Trace,
) -> f64 {
    trace.step(
        "alpha",
        "v_o / v_s",
        warmth / cold,
        [("v_o", warmth.into()), ("v_s", cold.into())],
        &MODIFIED_BERGGREN_EQUATION,
    )
}

/// Fusion parameter.
///
/// mu = v_s C / L; v_s mean cold of the surface (K), C heat capacity (J/m3 K), L latent heat
/// (J/m3). Range of the chart: 0 to 0.5. Source: modified Berggren equation. Positive.
pub fn fusion_ratio(
    cold: TemperatureDifference,
    capacity: HeatCapacity,
    latent: LatentHeat,
    trace: &mut Trace,
) -> f64 {
    trace.step(
        "mu",
        "v_s C / L",
        cold.si() * capacity.si() / latent.si(),
        [
            ("v_s", cold.into()),
            ("C", capacity.into()),
            ("L", latent.into()),
        ],
        &MODIFIED_BERGGREN_EQUATION,
    )
}

/// The root g of Neumann's equation.
///
/// exp(-g^2)/erf(g) - alpha exp(-g^2)/erfc(g) = sqrt(pi) g / mu. The left side falls and the
/// right side grows; since erf(g) > 2 g exp(-g^2) / sqrt(pi), the root is below sqrt(mu / 2).
/// Bisected to the last bit.
fn neumann_root(alpha: f64, mu: f64) -> f64 {
    between(0.0, (mu / 2.0).sqrt(), |g| !below_root(alpha, mu, g))
}

/// Whether g is below the root of Neumann's equation; what it is at a depth decides whether the
/// front has come to rest there, without solving for the root.
fn below_root(alpha: f64, mu: f64, g: f64) -> bool {
    let fall = exp(-g * g);
    // where erfc underflows the warm side has long taken over
    let warm = erfc(g);
    warm > 0.0 && fall / erf(g) - alpha * fall / warm > PI.sqrt() * g / mu
}

/// Correction factor of the modified Berggren equation.
///
/// lambda = g sqrt(2 / mu), g from exp(-g^2)/erf(g) - alpha exp(-g^2)/erfc(g) = sqrt(pi) g / mu;
/// alpha thermal ratio, mu fusion parameter (1). Range: alpha 0 to 7, mu above 0 to 0.5. Source:
/// Neumann's solution with equal properties, which Figure 1 of Aldrich and Paynter (1966) plots.
/// At most 1.
pub fn correction_factor(alpha: f64, mu: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "lambda",
        "g sqrt(2 / mu), exp(-g^2)/erf(g) - alpha exp(-g^2)/erfc(g) = sqrt(pi) g / mu",
        lambda(alpha, mu),
        [("alpha", alpha.into()), ("mu", mu.into())],
        &BERGGREN_NEUMANN,
    )
}

fn lambda(alpha: f64, mu: f64) -> f64 {
    neumann_root(alpha, mu) * (2.0 / mu).sqrt()
}

/// Frost depth in ground of one kind.
///
/// X = lambda sqrt(2 k F_s / L); k mean conductivity (W/m K), F_s freezing index of the surface
/// (K s), L latent heat (J/m3), lambda correction factor (1); m. Range: that of lambda. Source:
/// UFC 3-130 series, where 48 stands for 2 x 24 h. Depth down.
pub fn berggren_depth(
    factor: f64,
    conductivity: ThermalConductivity,
    index: FreezingIndex,
    latent: LatentHeat,
    trace: &mut Trace,
) -> Length {
    let root = (2.0 * conductivity.si() * index.si() / latent.si()).sqrt();
    trace.step(
        "X",
        "lambda sqrt(2 k F_s / L)",
        Length::from_si(factor * root),
        [
            ("lambda", factor.into()),
            ("k", conductivity.into()),
            ("F_s", index.into()),
            ("L", latent.into()),
        ],
        &MODIFIED_BERGGREN_EQUATION,
    )
}

/// What the layered form needs of the winter, base SI.
#[derive(Debug, Clone, Copy)]
pub struct Cold {
    /// Mean cold of the surface, K.
    pub v_s: f64,
    /// Warmth of the ground, K.
    pub v_o: f64,
    /// Length of the season, s.
    pub t: f64,
}

/// Sums over the layers down to a depth, base SI.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Sums {
    /// Of L_n d_n (R_1 + ... + R_n / 2).
    pub heat_resistance: f64,
    /// Of C_n d_n.
    pub capacity: f64,
    /// Of L_n d_n.
    pub latent: f64,
    /// Of R_n.
    pub resistance: f64,
}

/// The sums down to a depth, with the conductivity that `of` picks.
pub(super) fn sums(slabs: &[Slab], depth: f64, of: fn(&Slab) -> f64) -> Sums {
    let mut sums = Sums::default();
    for slab in slabs {
        let thickness = (depth - slab.top).min(slab.thickness);
        if thickness <= 0.0 {
            break;
        }
        let resistance = thickness / of(slab);
        sums.heat_resistance += slab.latent * thickness * (sums.resistance + 0.5 * resistance);
        sums.capacity += slab.capacity * thickness;
        sums.latent += slab.latent * thickness;
        sums.resistance += resistance;
    }
    sums
}

/// Why there is no depth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoFront {
    /// The first water that can freeze is not reached.
    WaterNotReached,
    /// It would be below [`DEEPEST`].
    TooDeep,
}

/// Deepest frost that is sought, m.
pub const DEEPEST: f64 = 10.0;
/// Steps per layer in the search for the first depth.
const STEPS: u32 = 64;
/// Step in the last layer, m.
const STEP: f64 = 0.02;

/// Frost depth in layered ground by the layered form of the modified Berggren equation.
///
/// sum L_n d_n (R_1 + ... + R_(n-1) + R_n / 2) = lambda^2 F_s; L_n latent heat (J/m3), d_n
/// thickness (m) and R_n = d_n / k_n resistance (m2 K/W) of what freezes of layer n, F_s (K s),
/// lambda from C and L weighted by thickness over the frozen depth. It follows from the heat
/// L_n dx of a slice that must flow through the resistance above it, (v_s / R) dt, summed over
/// the season and made smaller by lambda^2 as in ground of one kind. The first depth that meets
/// it. Range: that of lambda. Source: derived. Depth down.
pub(super) fn layered_depth(slabs: &[Slab], cold: Cold) -> Result<f64, NoFront> {
    let first = slabs.iter().find(|slab| slab.latent > 0.0);
    let wet = first.ok_or(NoFront::WaterNotReached)?.top;
    let met = |depth: f64| {
        // lambda^2 F_s = 2 g^2 F_s / mu: the g that would meet the sum against the root
        let sums = sums(slabs, depth, |slab| slab.conductivity);
        let mu = cold.v_s * sums.capacity / sums.latent;
        let g = (0.5 * mu * sums.heat_resistance / (cold.v_s * cold.t)).sqrt();
        !below_root(cold.v_o / cold.v_s, mu, g)
    };
    let mut last = wet;
    for slab in slabs.iter().filter(|slab| slab.top >= wet) {
        let (step, count) = if slab.thickness.is_finite() {
            (slab.thickness / f64::from(STEPS), STEPS)
        } else {
            (STEP, (DEEPEST / STEP) as u32)
        };
        for i in 1..=count {
            let next = slab.top + step * f64::from(i);
            if met(next) {
                if last == wet && met(last + 1e-9 * step) {
                    return Err(NoFront::WaterNotReached);
                }
                return Ok(between(last, next, met));
            }
            if next > DEEPEST {
                return Err(NoFront::TooDeep);
            }
            last = next;
        }
    }
    Err(NoFront::TooDeep)
}

/// Where `met` turns from false to true.
fn between(mut low: f64, mut high: f64, met: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..200 {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if met(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

/// Frost depth by latent heat alone.
///
/// X = sqrt(2 k F_s / L), in layers sum L_n d_n (R_1 + ... + R_n / 2) = F_s; symbols as above, k
/// frozen. Range: none, over-predicts. Source: Stefan. Depth down; none above [`DEEPEST`].
pub(super) fn stefan(slabs: &[Slab], index: FreezingIndex, trace: &mut Trace) -> Option<Length> {
    let met = |depth: f64| {
        sums(slabs, depth, |slab| slab.frozen_conductivity).heat_resistance >= index.si()
    };
    if !met(DEEPEST) {
        return None;
    }
    Some(trace.step(
        "X_S",
        "sum L_n d_n (R_1 + ... + R_n / 2) = F_s",
        Length::from_si(between(0.0, DEEPEST, met)),
        [("F_s", index.into())],
        &STEFAN_EQUATION,
    ))
}
