//! Equations of heave, one function each. They judge nothing; what they are put together
//! to is in `freezing` and `swelling`.

use crate::math::{exp, log10, pow};
use crate::quantity::{
    FreezingIndex, Length, SegregationPotential, Size, SoilStress, StressSensitivity,
};
use crate::source::{
    DERIVED, ICE_EXPANSION, NELSON_OEDOMETER, SEED_1962, SEGREGATION_INTEGRAL,
    SEGREGATION_UNDER_LOAD, VAN_DER_MERWE_1964,
};
use crate::trace::Trace;

/// Gain of volume of ground whose pore water freezes.
///
/// e = e_w n S; e_w gain of volume of water (1), n porosity (1), S degree of saturation (1).
/// Range: n and S 0 to 1. Source: densities of water and ice. Upward positive.
pub fn freezing_volume(expansion: f64, porosity: f64, saturation: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "e",
        "e_w n S",
        expansion * porosity * saturation,
        [
            ("e_w", expansion.into()),
            ("n", porosity.into()),
            ("S", saturation.into()),
        ],
        &ICE_EXPANSION,
    )
}

/// Heave of the water in the pores.
///
/// h_i = e X; e gain of volume (1), X frost depth (m). Range: e from 0. Source: geometry, the
/// gain goes upwards only. Upward positive.
pub fn in_situ_heave(gain: f64, frost_depth: Length, trace: &mut Trace) -> Size {
    trace.step(
        "h_i",
        "e X",
        Size::from_si(gain * frost_depth.si()),
        [("e", gain.into()), ("X", frost_depth.into())],
        &ICE_EXPANSION,
    )
}

/// Segregation potential under load.
///
/// SP = SP_0 exp(-a p); SP_0 without load (m2/(s K)), a sensitivity (1/Pa), p vertical stress
/// on the front (Pa). Range: a and p from 0. Source: Konrad and Morgenstern (from memory).
pub fn segregation_under_load(
    potential: SegregationPotential,
    sensitivity: StressSensitivity,
    pressure: SoilStress,
    trace: &mut Trace,
) -> SegregationPotential {
    trace.step(
        "SP",
        "SP_0 exp(-a p)",
        potential * exp(-(sensitivity.si() * pressure.si())),
        [
            ("SP_0", potential.into()),
            ("a", sensitivity.into()),
            ("p", pressure.into()),
        ],
        &SEGREGATION_UNDER_LOAD,
    )
}

/// Heave by ice lenses over one winter.
///
/// h_s = b SP 2 F / X; b volume of ice over that of its water (1), SP segregation potential
/// (m2/(s K)), F freezing index at the surface (K s), X depth of frost at the end (m). Range:
/// X above 0. Source: v = SP dT/dx (Konrad and Morgenstern 1981, seen quoted) with x = X
/// sqrt(t/T) and dT/dx = (F/T)/x, integrated over the winter. Upward positive.
pub fn segregation_heave(
    ice_volume: f64,
    potential: SegregationPotential,
    freezing_index: FreezingIndex,
    frost_depth: Length,
    trace: &mut Trace,
) -> Size {
    let drawn = potential.si() * 2.0 * freezing_index.si() / frost_depth.si();
    trace.step(
        "h_s",
        "b SP 2 F / X",
        Size::from_si(ice_volume * drawn),
        [
            ("b", ice_volume.into()),
            ("SP", potential.into()),
            ("F", freezing_index.into()),
            ("X", frost_depth.into()),
        ],
        &SEGREGATION_INTEGRAL,
    )
}

/// Frost heave of both parts.
///
/// h = h_i + h_s (m). Range: both from 0. Source: statement of the two parts. Upward
/// positive.
pub fn freezing_heave(in_situ: Size, segregation: Size, trace: &mut Trace) -> Size {
    trace.step(
        "h",
        "h_i + h_s",
        in_situ + segregation,
        [("h_i", in_situ.into()), ("h_s", segregation.into())],
        &DERIVED,
    )
}

/// Strain in a tenfold change of stress from the swell index.
///
/// C = C_s / (1 + e_0); C_s swell index (1), e_0 void ratio (1). Range: e_0 above 0. Source:
/// definition of the void ratio.
pub fn strain_index(swell_index: f64, void_ratio: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "C",
        "C_s / (1 + e_0)",
        swell_index / (1.0 + void_ratio),
        [("C_s", swell_index.into()), ("e_0", void_ratio.into())],
        &DERIVED,
    )
}

/// Swell of a layer by the oedometer method.
///
/// rho = z C log10(max(s_cv/s_vi, 1)); z thickness (m), C strain in a tenfold change of stress
/// (1), s_cv swell pressure at constant volume (Pa), s_vi vertical effective stress (Pa).
/// Range: both stresses above 0; nil where s_vi is at least s_cv. Source: Nelson and others
/// (from memory). Upward positive.
pub fn oedometer_swell(
    thickness: Length,
    index: f64,
    swell_pressure: SoilStress,
    stress: SoilStress,
    trace: &mut Trace,
) -> Size {
    let ratio = swell_pressure / stress;
    let decades = if ratio > 1.0 { log10(ratio) } else { 0.0 };
    trace.step(
        "rho",
        "z C log10(max(s_cv/s_vi, 1))",
        Size::from_si(thickness.si() * index * decades),
        [
            ("z", thickness.into()),
            ("C", index.into()),
            ("s_cv", swell_pressure.into()),
            ("s_vi", stress.into()),
        ],
        &NELSON_OEDOMETER,
    )
}

/// Swell of a layer by expansiveness and depth.
///
/// H = PE d/ln(10) (10^(-t/d) - 10^(-b/d)), which is PE times the integral of 10^(-D/d) from t
/// to b; PE strain at the surface (1), d depth of a tenth, 20 ft (m), t top and b bottom of the
/// layer (m). Range: b at least t, t from 0. Source: Van der Merwe 1964 (from memory), the
/// integral exact. Upward positive.
pub fn depth_swell(
    unit_heave: f64,
    tenth: Length,
    top: Length,
    bottom: Length,
    trace: &mut Trace,
) -> Size {
    let share = |depth: Length| exp(-LN_10 * (depth / tenth));
    let integral = tenth.si() / LN_10 * (share(top) - share(bottom));
    trace.step(
        "H",
        "PE d/ln(10) (10^(-t/d) - 10^(-b/d))",
        Size::from_si(unit_heave * integral),
        [
            ("PE", unit_heave.into()),
            ("d", tenth.into()),
            ("t", top.into()),
            ("b", bottom.into()),
        ],
        &VAN_DER_MERWE_1964,
    )
}

/// Natural logarithm of ten.
const LN_10: f64 = std::f64::consts::LN_10;

/// Strain of swell by the plasticity index.
///
/// S = k (100 PI)^m / 100; PI plasticity index (1), k 2.16e-3 and m 2.44 with both in per cent
/// (1). Range: PI 0.1 to 0.7, compacted clay under nearly no load. Source: Seed, Woodward and
/// Lundgren 1962. Upward positive.
pub fn index_strain(plasticity: f64, coefficient: f64, exponent: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "S",
        "k (100 PI)^m / 100",
        coefficient * pow(100.0 * plasticity, exponent) / 100.0,
        [
            ("PI", plasticity.into()),
            ("k", coefficient.into()),
            ("m", exponent.into()),
        ],
        &SEED_1962,
    )
}

/// Swell by a strain over the ground that can become wet.
///
/// H = S (1 + v) z; S strain by the relation (1), v scatter that is added (1), z thickness
/// (m). Range: all from 0. Source: geometry. Upward positive.
pub fn strain_swell(strain: f64, scatter: f64, thickness: Length, trace: &mut Trace) -> Size {
    trace.step(
        "H",
        "S (1 + v) z",
        Size::from_si(strain * (1.0 + scatter) * thickness.si()),
        [
            ("S", strain.into()),
            ("v", scatter.into()),
            ("z", thickness.into()),
        ],
        &DERIVED,
    )
}

/// Sum of the swell of all layers.
///
/// H = sum of the layers (m). Range: each from 0. Source: statics of a column. Upward
/// positive.
pub fn swell_sum(layers: impl Iterator<Item = Size>, trace: &mut Trace) -> Size {
    trace.step("H", "sum of the layers", layers.sum::<Size>(), [], &DERIVED)
}
