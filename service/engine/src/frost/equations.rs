//! Equations of frost embedment, adfreeze uplift and void forms, one function each.
//! They judge nothing; what they mean for a pile is in `embedment`, `uplift`, `void_form`.

use crate::quantity::{Area, AreaLoad, Force, Length, Size, SoilStress, UnitWeight};
use crate::source::{
    BABA_2016, CFEM_ADFREEZE, DERIVED, FROST_DEPTH_OFFICIAL, IBC_1810_3_3_1_5, Reference,
    VOID_FORM_RESIDUAL_PRACTICE,
};
use crate::trace::Trace;

/// Depth below final grade to which the ground freezes.
///
/// z_f = z_s + X; z_s depth of the surface exposed to the cold (m), X frost depth (m).
/// Range: both from 0. Source: definition. Depth down.
pub fn frost_base(cold_surface: Length, frost_depth: Length, trace: &mut Trace) -> Length {
    trace.step(
        "z_f",
        "z_s + X",
        cold_surface + frost_depth,
        [("z_s", cold_surface.into()), ("X", frost_depth.into())],
        &FROST_DEPTH_OFFICIAL,
    )
}

/// Depth below final grade to which the ground freezes by a computed depth.
///
/// z_c = z_s + X_c; z_s depth of the surface exposed to the cold (m), X_c computed frost
/// depth (m). Range: both from 0. Source: definition. Depth down.
pub fn computed_frost_base(cold_surface: Length, computed: Length, trace: &mut Trace) -> Length {
    trace.step(
        "z_c",
        "z_s + X_c",
        cold_surface + computed,
        [("z_s", cold_surface.into()), ("X_c", computed.into())],
        &DERIVED,
    )
}

/// The deeper base of frost.
///
/// z_f = max(z_o, z_c); by the official and by the computed depth (m). Range: any. Source: the
/// official depth rules and a computed one never makes it shallower. Depth down.
pub fn deeper_frost_base(official: Length, computed: Length, trace: &mut Trace) -> Length {
    trace.step(
        "z_f",
        "max(z_o, z_c)",
        official.max(computed),
        [("z_o", official.into()), ("z_c", computed.into())],
        &FROST_DEPTH_OFFICIAL,
    )
}

/// Depth of the top helix that a number of helix diameters asks for.
///
/// z_req = z_s + n D; z_s depth of the ground surface at the pile (m), n diameters (1), D
/// diameter of the largest helix (m). Range: n from 0. Source: UFC 3-220-20, 6-4.7 (n = 5);
/// evaluation reports under AC358 (n = 12, tension by torque). Depth down.
pub fn diameters_depth(
    cold_surface: Length,
    factor: f64,
    largest: Size,
    source: &'static Reference,
    trace: &mut Trace,
) -> Length {
    trace.step(
        "z_req",
        "z_s + n D",
        cold_surface + Length::from(largest * factor),
        [
            ("z_s", cold_surface.into()),
            ("n", factor.into()),
            ("D", largest.into()),
        ],
        source,
    )
}

/// Depth that a base and a margin ask for.
///
/// z_req = z_b + m; z_b depth of the base of frost, fill or active zone (m), m margin (m).
/// Range: m from 0. Source: the rule's own. Depth down.
pub fn margin_depth(
    base: Length,
    margin: Length,
    source: &'static Reference,
    trace: &mut Trace,
) -> Length {
    trace.step(
        "z_req",
        "z_b + m",
        base + margin,
        [("z_b", base.into()), ("m", margin.into())],
        source,
    )
}

/// Length of shaft in ground that freezes.
///
/// h = max(z_f - z_c, 0); z_f base of frost (m), z_c depth from which the shaft touches
/// soil (m). Range: any. Source: geometry. Never negative.
pub fn frozen_length(base: Length, contact_top: Length, trace: &mut Trace) -> Length {
    trace.step(
        "h",
        "max(z_f - z_c, 0)",
        (base - contact_top).max(Length::ZERO),
        [("z_f", base.into()), ("z_c", contact_top.into())],
        &DERIVED,
    )
}

/// Uplift of frozen soil on the shaft.
///
/// F_s = tau p h; tau average bond stress (Pa), p perimeter (m), h frozen length (m); N.
/// Range: tau from 0. Source: Canadian Foundation Engineering Manual (2006), frost action
/// (from memory). Upward positive.
pub fn shaft_adfreeze(
    bond: SoilStress,
    perimeter: Size,
    frozen: Length,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "F_s",
        "tau p h",
        Force::from_si(bond.si() * perimeter.si() * frozen.si()),
        [
            ("tau", bond.into()),
            ("p", perimeter.into()),
            ("h", frozen.into()),
        ],
        &CFEM_ADFREEZE,
    )
}

/// Uplift of frozen soil on the sides of a beam, carried to one pile.
///
/// F_b = tau_b n h_b L; tau_b bond stress on the sides (Pa), n sides in touch with soil
/// (1), h_b frozen depth of side (m), L tributary length (m); N. Range: n 1 or 2. Source:
/// as for the shaft, statics for the share. Upward positive.
pub fn beam_adfreeze(
    bond: SoilStress,
    sides: u32,
    frozen: Length,
    tributary: Length,
    trace: &mut Trace,
) -> Force {
    let n = f64::from(sides);
    trace.step(
        "F_b",
        "tau_b n h_b L",
        Force::from_si(bond.si() * n * frozen.si() * tributary.si()),
        [
            ("tau_b", bond.into()),
            ("n", n.into()),
            ("h_b", frozen.into()),
            ("L", tributary.into()),
        ],
        &CFEM_ADFREEZE,
    )
}

/// Frost force on shaft and beam together.
///
/// F = F_s + F_b; N. Range: both from 0. Source: statics. Upward positive.
pub fn frost_force(shaft: Force, beam: Force, trace: &mut Trace) -> Force {
    trace.step(
        "F",
        "F_s + F_b",
        shaft + beam,
        [("F_s", shaft.into()), ("F_b", beam.into())],
        &DERIVED,
    )
}

/// Frost force on shaft and beam with the force of the crushed void form.
///
/// F = F_s + F_b + F_v; N. Range: all from 0. Source: statics. Upward positive.
pub fn frost_force_with_void_form(
    shaft: Force,
    beam: Force,
    void_form: Force,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "F",
        "F_s + F_b + F_v",
        shaft + beam + void_form,
        [
            ("F_s", shaft.into()),
            ("F_b", beam.into()),
            ("F_v", void_form.into()),
        ],
        &DERIVED,
    )
}

/// Weight of the shaft as if all of it were under water.
///
/// W = A L (gamma_s - gamma_w); A area of the steel (m2), L length (m), gamma_s, gamma_w unit
/// weight of steel and water (N/m3). Range: gamma_s from gamma_w. Source: statics. Downward
/// positive.
pub fn submerged_weight(
    area: Area,
    length: Length,
    steel: UnitWeight,
    water: UnitWeight,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "W",
        "A L (gamma_s - gamma_w)",
        Force::from_si(area.si() * length.si() * (steel.si() - water.si())),
        [
            ("A", area.into()),
            ("L", length.into()),
            ("gamma_s", steel.into()),
            ("gamma_w", water.into()),
        ],
        &DERIVED,
    )
}

/// Tension that is left of the frost force once dead load has been counted.
///
/// N = max(gamma_F F - gamma_D D, 0); F frost force (N), D dead load (N), gamma their
/// factors (1). Range: gamma_F from 1, gamma_D 0 to 1. Source: statics; the factors are
/// choices, codes give none (Baba 2016). Tension positive, never negative.
pub fn net_frost_tension(
    frost_factor: f64,
    frost: Force,
    dead_factor: f64,
    dead: Force,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "N",
        "max(gamma_F F - gamma_D D, 0)",
        (frost * frost_factor - dead * dead_factor).max(Force::ZERO),
        [
            ("gamma_F", frost_factor.into()),
            ("F", frost.into()),
            ("gamma_D", dead_factor.into()),
            ("D", dead.into()),
        ],
        &BABA_2016,
    )
}

/// Allowable tension. R_d = R / FS; R ultimate (N), FS safety factor (1). Range: FS from 1.
/// Source: IBC 1810.3.3.1.5. Tension positive.
pub fn allowable_tension(ultimate: Force, safety: f64, trace: &mut Trace) -> Force {
    trace.step(
        "R_d",
        "R / FS",
        ultimate / safety,
        [("R", ultimate.into()), ("FS", safety.into())],
        &IBC_1810_3_3_1_5,
    )
}

/// Factored tension resistance. R_d = phi R; R ultimate (N), phi resistance factor (1).
/// Range: phi 0 to 1. Source: limit states design. Tension positive.
pub fn factored_tension(ultimate: Force, phi: f64, trace: &mut Trace) -> Force {
    trace.step(
        "R_d",
        "phi R",
        ultimate * phi,
        [("R", ultimate.into()), ("phi", phi.into())],
        &DERIVED,
    )
}

/// Ultimate tension that a net tension asks for, allowable stress. R_req = N FS; N net
/// tension (N), FS safety factor (1). Range: FS from 1. Source: IBC 1810.3.3.1.5. Tension
/// positive.
pub fn required_by_safety(net: Force, safety: f64, trace: &mut Trace) -> Force {
    trace.step(
        "R_req",
        "N FS",
        net * safety,
        [("N", net.into()), ("FS", safety.into())],
        &IBC_1810_3_3_1_5,
    )
}

/// Ultimate tension that a net tension asks for, limit states. R_req = N / phi; N net
/// tension (N), phi resistance factor (1). Range: phi above 0. Source: limit states
/// design. Tension positive.
pub fn required_by_phi(net: Force, phi: f64, trace: &mut Trace) -> Force {
    trace.step(
        "R_req",
        "N / phi",
        net / phi,
        [("N", net.into()), ("phi", phi.into())],
        &DERIVED,
    )
}

/// Thickness of a void form that is free for movement.
///
/// t_u = t (1 - r); t nominal thickness (m), r crushed over nominal thickness (1). Range: r
/// 0 to 0.95. Source: geometry; r = 0.40 is a rule of thumb. Never negative.
pub fn usable_void(nominal: Size, residual: f64, trace: &mut Trace) -> Size {
    trace.step(
        "t_u",
        "t (1 - r)",
        nominal * (1.0 - residual),
        [("t", nominal.into()), ("r", residual.into())],
        &VOID_FORM_RESIDUAL_PRACTICE,
    )
}

/// Nominal thickness of a void form that takes a heave.
///
/// t_req = (H + m) / (1 - r); H heave (m), m clearance (m), r crushed over nominal
/// thickness (1). Range: r 0 to 0.95. Source: geometry.
pub fn required_void(heave: Size, margin: Size, residual: f64, trace: &mut Trace) -> Size {
    trace.step(
        "t_req",
        "(H + m) / (1 - r)",
        (heave + margin) / (1.0 - residual),
        [
            ("H", heave.into()),
            ("m", margin.into()),
            ("r", residual.into()),
        ],
        &DERIVED,
    )
}

/// Weight of wet concrete on a form. w = gamma_c d; gamma_c unit weight (N/m3), d depth of
/// concrete (m); Pa. Range: any. Source: statics. Downward positive.
pub fn concrete_load(unit_weight: UnitWeight, depth: Length, trace: &mut Trace) -> AreaLoad {
    trace.step(
        "w",
        "gamma_c d",
        AreaLoad::from_si(unit_weight.si() * depth.si()),
        [("gamma_c", unit_weight.into()), ("d", depth.into())],
        &DERIVED,
    )
}
