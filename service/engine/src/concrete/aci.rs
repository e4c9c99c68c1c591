//! Equations of ACI 318-19 in their inch-pound form, one function each.

use super::flexure::{inches, on_area, root_psi};
use crate::math::pow;
use crate::quantity::{
    FlexuralRigidity, Force, Moment, Size, SteelArea, SteelStress, StressUnit, Torque, UnitWeight,
    UnitWeightUnit,
};
use crate::source::{
    ACI_318_19_FLEXURE, ACI_318_19_MINIMUM_STEEL, ACI_318_19_MINIMUM_STIRRUPS, ACI_318_19_SHEAR,
    ACI_318_19_STIFFNESS, ACI_318_19_STIRRUP_SPACING, ACI_318_19_TORSION,
};
use crate::trace::Trace;

/// Depth of the stress block over that of the neutral axis.
///
/// beta_1 = 0.85 - 0.05 (f'c - 4000)/1000, from 0.65 to 0.85; f'c strength of the concrete (psi),
/// 2,500 to 10,000. Source: ACI 318-19, table 22.2.2.4.3.
pub fn block_ratio(concrete: SteelStress, trace: &mut Trace) -> f64 {
    let psi = concrete.get(StressUnit::Psi);
    trace.step(
        "beta_1",
        "0.85 - 0.05 (f'c - 4000 psi)/(1000 psi), 0.65 to 0.85",
        (0.85 - 0.05 * (psi - 4_000.0) / 1_000.0).clamp(0.65, 0.85),
        [("f'c", concrete.into())],
        &ACI_318_19_FLEXURE,
    )
}

/// Strain of the bars from which a section is tension-controlled.
///
/// eps_tc = f_y/E_s + 0.003; f_y yield strength, E_s modulus of the bars (Pa). Source: ACI
/// 318-19, table 21.2.2.
pub fn tension_controlled_strain(
    yield_strength: SteelStress,
    modulus: SteelStress,
    trace: &mut Trace,
) -> f64 {
    trace.step(
        "eps_tc",
        "f_y/E_s + 0.003",
        yield_strength / modulus + 0.003,
        [("f_y", yield_strength.into()), ("E_s", modulus.into())],
        &ACI_318_19_FLEXURE,
    )
}

/// Strength reduction factor in bending, with ties.
///
/// phi = 0.65 + 0.25 (eps_t - eps_ty)/0.003, from 0.65 to 0.90; eps_t strain of the bars, eps_ty
/// strain at yield. Beams must be tension-controlled, where it is 0.90. Source: ACI 318-19,
/// table 21.2.2.
pub fn strength_reduction(strain: f64, yield_strain: f64, trace: &mut Trace) -> f64 {
    trace.step(
        "phi",
        "0.65 + 0.25 (eps_t - eps_ty)/0.003, 0.65 to 0.90",
        (0.65 + 0.25 * (strain - yield_strain) / 0.003).clamp(0.65, 0.90),
        [("eps_t", strain.into()), ("eps_ty", yield_strain.into())],
        &ACI_318_19_FLEXURE,
    )
}

/// Least steel in tension.
///
/// A_s,min = max(3 sqrt(f'c), 200) b d/f_y; f'c, f_y (psi), b width, d effective depth (m); f_y
/// up to 80 ksi. Source: ACI 318-19, 9.6.1.2.
pub fn minimum_steel(
    concrete: SteelStress,
    yield_strength: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> SteelArea {
    let stress = root_psi(3.0, concrete).max(SteelStress::new(200.0, StressUnit::Psi));
    trace.step(
        "A_s,min",
        "max(3 sqrt(f'c), 200 psi) b d/f_y",
        SteelArea::from_si(stress / yield_strength * width.si() * depth.si()),
        [
            ("f'c", concrete.into()),
            ("f_y", yield_strength.into()),
            ("b", width.into()),
            ("d", depth.into()),
        ],
        &ACI_318_19_MINIMUM_STEEL,
    )
}

/// Effect of size on shear.
///
/// lambda_s = sqrt(2/(1 + d/10)), at most 1; d effective depth (in), above nil. Source: ACI
/// 318-19, 22.5.5.1.3.
pub fn size_factor(depth: Size, trace: &mut Trace) -> f64 {
    trace.step(
        "lambda_s",
        "sqrt(2/(1 + d/(10 in))), at most 1",
        (2.0 / (1.0 + inches(depth) / 10.0)).sqrt().min(1.0),
        [("d", depth.into())],
        &ACI_318_19_SHEAR,
    )
}

/// Shear of the concrete with at least the least stirrups.
///
/// V_c = 2 lambda sqrt(f'c) b d; lambda factor for lightweight concrete, f'c (psi), b width, d
/// effective depth (m); no axial force. Source: ACI 318-19, table 22.5.5.1 (a).
pub fn concrete_shear_with_stirrups(
    lightweight: f64,
    concrete: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "V_c",
        "2 lambda sqrt(f'c) b d",
        on_area(root_psi(2.0 * lightweight, concrete), width, depth),
        [
            ("lambda", lightweight.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("d", depth.into()),
        ],
        &ACI_318_19_SHEAR,
    )
}

/// Shear of the concrete without the least stirrups.
///
/// V_c = 8 lambda_s lambda rho^(1/3) sqrt(f'c) b d, at most 5 lambda sqrt(f'c) b d; lambda_s size
/// factor, lambda factor for lightweight concrete, rho steel over b d, f'c (psi), b width, d
/// effective depth (m); no axial force. Source: ACI 318-19, table 22.5.5.1 (c) and 22.5.5.1.1.
pub fn concrete_shear_without_stirrups(
    (lightweight, size): (f64, f64),
    steel_ratio: f64,
    concrete: SteelStress,
    (width, depth): (Size, Size),
    trace: &mut Trace,
) -> Force {
    let factor = (8.0 * size * pow(steel_ratio, 1.0 / 3.0)).min(5.0);
    trace.step(
        "V_c",
        "min(8 lambda_s rho^(1/3), 5) lambda sqrt(f'c) b d",
        on_area(root_psi(factor * lightweight, concrete), width, depth),
        [
            ("lambda_s", size.into()),
            ("rho", steel_ratio.into()),
            ("lambda", lightweight.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("d", depth.into()),
        ],
        &ACI_318_19_SHEAR,
    )
}

/// Shear above which a beam must have the least stirrups.
///
/// V = lambda sqrt(f'c) b d, before reduction; lambda factor for lightweight concrete, f'c (psi),
/// b width, d effective depth (m); beams deeper than 10 in. Source: ACI 318-19, 9.6.3.1.
pub fn shear_without_stirrups_limit(
    lightweight: f64,
    concrete: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "V_lim",
        "lambda sqrt(f'c) b d",
        on_area(root_psi(lightweight, concrete), width, depth),
        [
            ("lambda", lightweight.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("d", depth.into()),
        ],
        &ACI_318_19_MINIMUM_STIRRUPS,
    )
}

/// Shear of vertical stirrups.
///
/// V_s = A_v f_yt d/s, at most 8 sqrt(f'c) b d; A_v area of one stirrup (m2), f_yt its yield
/// strength (Pa), s spacing, d effective depth, b width (m), f'c (psi). Source: ACI 318-19,
/// 22.5.8.5.3 and 22.5.1.2.
pub fn stirrup_shear(
    (area, spacing): (SteelArea, Size),
    yield_strength: SteelStress,
    concrete: SteelStress,
    (width, depth): (Size, Size),
    trace: &mut Trace,
) -> Force {
    let cap = on_area(root_psi(8.0, concrete), width, depth);
    trace.step(
        "V_s",
        "min(A_v f_yt d/s, 8 sqrt(f'c) b d)",
        Force::from_si(area.si() * yield_strength.si() * (depth / spacing)).min(cap),
        [
            ("A_v", area.into()),
            ("s", spacing.into()),
            ("f_yt", yield_strength.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("d", depth.into()),
        ],
        &ACI_318_19_SHEAR,
    )
}

/// Least area of a stirrup.
///
/// A_v,min = max(0.75 sqrt(f'c), 50) b s/f_yt; f'c, f_yt (psi), b width, s spacing (m). Source:
/// ACI 318-19, table 9.6.3.4.
pub fn minimum_stirrup(
    concrete: SteelStress,
    yield_strength: SteelStress,
    width: Size,
    spacing: Size,
    trace: &mut Trace,
) -> SteelArea {
    let stress = root_psi(0.75, concrete).max(SteelStress::new(50.0, StressUnit::Psi));
    trace.step(
        "A_v,min",
        "max(0.75 sqrt(f'c), 50 psi) b s/f_yt",
        SteelArea::from_si(stress / yield_strength * width.si() * spacing.si()),
        [
            ("f'c", concrete.into()),
            ("f_yt", yield_strength.into()),
            ("b", width.into()),
            ("s", spacing.into()),
        ],
        &ACI_318_19_MINIMUM_STIRRUPS,
    )
}

/// Greatest spacing of stirrups.
///
/// s_max = min(d/2, 24 in), half of both where V_s > 4 sqrt(f'c) b d; d effective depth, b width
/// (m), V_s shear of the stirrups (N), f'c (psi). Source: ACI 318-19, table 9.7.6.2.2.
pub fn greatest_spacing(
    stirrups: Force,
    concrete: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> Size {
    let heavy = stirrups > on_area(root_psi(4.0, concrete), width, depth);
    let plain = (0.5 * depth).min(Size::new(24.0, crate::quantity::LengthUnit::In));
    trace.step(
        "s_max",
        "min(d/2, 24 in), half where V_s > 4 sqrt(f'c) b d",
        if heavy { 0.5 * plain } else { plain },
        [
            ("V_s", stirrups.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("d", depth.into()),
        ],
        &ACI_318_19_STIRRUP_SPACING,
    )
}

/// Torsion that may be left out of account.
///
/// T_th = phi lambda sqrt(f'c) A_cp2/p_cp; A_cp = b h (m2), p_cp = 2 (b + h) (m), f'c (psi), phi
/// reduction, lambda factor for lightweight concrete; solid section, no axial force. Source: ACI
/// 318-19, table 22.7.4.1 (a).
pub fn torsion_threshold(
    (reduction, lightweight): (f64, f64),
    concrete: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> Torque {
    let (area, perimeter) = (width.si() * depth.si(), 2.0 * (width + depth).si());
    trace.step(
        "T_th",
        "phi lambda sqrt(f'c) (b h)2/(2 (b + h))",
        Torque::from_si(root_psi(reduction * lightweight, concrete).si() * area * area / perimeter),
        [
            ("phi", reduction.into()),
            ("lambda", lightweight.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("h", depth.into()),
        ],
        &ACI_318_19_TORSION,
    )
}

/// Modulus of elasticity of normal-weight concrete.
///
/// E_c = 57000 sqrt(f'c), both psi. Source: ACI 318-19, 19.2.2.1 (b).
pub fn elastic_modulus(concrete: SteelStress, trace: &mut Trace) -> SteelStress {
    trace.step(
        "E_c",
        "57000 sqrt(f'c) psi",
        root_psi(57_000.0, concrete),
        [("f'c", concrete.into())],
        &ACI_318_19_STIFFNESS,
    )
}

/// Modulus of elasticity by the unit weight.
///
/// E_c = 33 w_c^1.5 sqrt(f'c), psi and pcf; w_c unit weight, 90 to 160 pcf. Source: ACI 318-19,
/// 19.2.2.1 (a).
pub fn elastic_modulus_by_weight(
    concrete: SteelStress,
    weight: UnitWeight,
    trace: &mut Trace,
) -> SteelStress {
    let pcf = weight.get(UnitWeightUnit::Pcf);
    trace.step(
        "E_c",
        "33 w_c^1.5 sqrt(f'c) psi",
        root_psi(33.0 * pcf * pcf.sqrt(), concrete),
        [("f'c", concrete.into()), ("w_c", weight.into())],
        &ACI_318_19_STIFFNESS,
    )
}

/// Stress at which concrete cracks in bending.
///
/// f_r = 7.5 lambda sqrt(f'c), psi; lambda factor for lightweight concrete. Source: ACI 318-19,
/// 19.2.3.1.
pub fn rupture_stress(lightweight: f64, concrete: SteelStress, trace: &mut Trace) -> SteelStress {
    trace.step(
        "f_r",
        "7.5 lambda sqrt(f'c)",
        root_psi(7.5 * lightweight, concrete),
        [("lambda", lightweight.into()), ("f'c", concrete.into())],
        &ACI_318_19_STIFFNESS,
    )
}

/// Rigidity of a section as cracked by a moment, after Bischoff.
///
/// I_e = I_cr/(1 - ((2/3) M_cr/M_a)2 (1 - I_cr/I_g)), I_g where M_a <= (2/3) M_cr; times E_c. M_a
/// service moment, M_cr cracking moment (N m), E I_cr cracked, E I_g uncracked rigidity (N m2);
/// 0 < I_cr <= I_g. Source: ACI 318-19, table 24.2.3.5.
pub fn effective_rigidity(
    (service, cracking): (Moment, Moment),
    (cracked, gross): (FlexuralRigidity, FlexuralRigidity),
    trace: &mut Trace,
) -> FlexuralRigidity {
    let share = 2.0 / 3.0 * (cracking / service);
    let value = if share >= 1.0 {
        gross
    } else {
        cracked / (1.0 - share * share * (1.0 - cracked / gross))
    };
    trace.step(
        "E I_e",
        "E I_cr/(1 - ((2/3) M_cr/M_a)2 (1 - I_cr/I_g)), E I_g where M_a <= (2/3) M_cr",
        value,
        [
            ("M_a", service.into()),
            ("M_cr", cracking.into()),
            ("E I_cr", cracked.into()),
            ("E I_g", gross.into()),
        ],
        &ACI_318_19_STIFFNESS,
    )
}
