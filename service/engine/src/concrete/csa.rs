//! Equations of CSA A23.3:19, one function each; shear by its simplified method.

use super::flexure::{millimetres, on_area, root_mpa};
use crate::math::tan;
use crate::quantity::{
    AngleUnit, FlexuralRigidity, Force, LengthUnit, Moment, Size, SteelArea, SteelStress,
    StressUnit, Torque, UnitWeight,
};
use crate::source::{
    CSA_A23_3_19_FLEXURE, CSA_A23_3_19_MINIMUM_STEEL, CSA_A23_3_19_SHEAR,
    CSA_A23_3_19_SIMPLIFIED_SHEAR, CSA_A23_3_19_STIFFNESS, CSA_A23_3_19_STIRRUPS,
    CSA_A23_3_19_TORSION,
};
use crate::trace::Trace;

/// Standard gravity, m/s2 (exact).
const GRAVITY: f64 = 9.806_65;

/// Stress of the block over the strength of the concrete.
///
/// alpha_1 = 0.85 - 0.0015 f'c, at least 0.67; f'c strength of the concrete (MPa). Source: CSA
/// A23.3:19, 10.1.7.
pub fn block_stress_ratio(concrete: SteelStress, trace: &mut Trace) -> f64 {
    trace.step(
        "alpha_1",
        "0.85 - 0.0015 f'c, at least 0.67",
        (0.85 - 0.0015 * concrete.get(StressUnit::MPa)).max(0.67),
        [("f'c", concrete.into())],
        &CSA_A23_3_19_FLEXURE,
    )
}

/// Depth of the stress block over that of the neutral axis.
///
/// beta_1 = 0.97 - 0.0025 f'c, at least 0.67; f'c strength of the concrete (MPa). Source: CSA
/// A23.3:19, 10.1.7.
pub fn block_ratio(concrete: SteelStress, trace: &mut Trace) -> f64 {
    trace.step(
        "beta_1",
        "0.97 - 0.0025 f'c, at least 0.67",
        (0.97 - 0.0025 * concrete.get(StressUnit::MPa)).max(0.67),
        [("f'c", concrete.into())],
        &CSA_A23_3_19_FLEXURE,
    )
}

/// Greatest depth of the neutral axis over the effective depth with which the bars yield.
///
/// (c/d)_max = 700/(700 + f_y); f_y yield strength (MPa). Source: CSA A23.3:19, 10.5.2.
pub fn greatest_axis_ratio(yield_strength: SteelStress, trace: &mut Trace) -> f64 {
    let mpa = yield_strength.get(StressUnit::MPa);
    trace.step(
        "(c/d)_max",
        "700 MPa/(700 MPa + f_y)",
        700.0 / (700.0 + mpa),
        [("f_y", yield_strength.into())],
        &CSA_A23_3_19_FLEXURE,
    )
}

/// Least steel in tension.
///
/// A_s,min = 0.2 sqrt(f'c) b h/f_y; f'c, f_y (MPa), b width in tension, h overall depth (m).
/// Source: CSA A23.3:19, 10.5.1.2.
pub fn minimum_steel(
    concrete: SteelStress,
    yield_strength: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> SteelArea {
    trace.step(
        "A_s,min",
        "0.2 sqrt(f'c) b h/f_y",
        SteelArea::from_si(root_mpa(0.2, concrete) / yield_strength * width.si() * depth.si()),
        [
            ("f'c", concrete.into()),
            ("f_y", yield_strength.into()),
            ("b", width.into()),
            ("h", depth.into()),
        ],
        &CSA_A23_3_19_MINIMUM_STEEL,
    )
}

/// Depth that counts for shear.
///
/// d_v = max(0.9 d, 0.72 h); d effective depth, h overall depth (m). Source: CSA A23.3:19, 2.3.
pub fn shear_depth(effective: Size, depth: Size, trace: &mut Trace) -> Size {
    trace.step(
        "d_v",
        "max(0.9 d, 0.72 h)",
        (0.9 * effective).max(0.72 * depth),
        [("d", effective.into()), ("h", depth.into())],
        &CSA_A23_3_19_SHEAR,
    )
}

/// Share of the concrete in shear without the least stirrups.
///
/// beta = 230/(1000 + s_ze), s_ze = 35 d_v/(15 + a_g), at least 0.85 d_v; d_v depth for shear, a_g
/// size of the aggregate (mm). With 20 mm it is 230/(1000 + d_v). Source: CSA A23.3:19, 11.3.6.3.
pub fn shear_share_without_stirrups(depth: Size, aggregate: Size, trace: &mut Trace) -> f64 {
    let v = millimetres(depth);
    let spacing = (35.0 * v / (15.0 + millimetres(aggregate))).max(0.85 * v);
    trace.step(
        "beta",
        "230/(1000 + s_ze), s_ze = max(35 d_v/(15 + a_g), 0.85 d_v) in mm",
        230.0 / (1_000.0 + spacing),
        [("d_v", depth.into()), ("a_g", aggregate.into())],
        &CSA_A23_3_19_SIMPLIFIED_SHEAR,
    )
}

/// Share of the concrete in shear with at least the least stirrups.
///
/// beta = 0.18. Source: CSA A23.3:19, 11.3.6.3.
pub fn shear_share_with_stirrups(trace: &mut Trace) -> f64 {
    trace.step("beta", "0.18", 0.18, [], &CSA_A23_3_19_SIMPLIFIED_SHEAR)
}

/// Shear of the concrete.
///
/// V_c = phi_c lambda beta sqrt(f'c) b d_v; phi_c factor on concrete, lambda for lightweight
/// concrete, beta its share, f'c (MPa), b width, d_v depth for shear (m); sqrt(f'c) up to 8 MPa.
/// Source: CSA A23.3:19, 11.3.4.
pub fn concrete_shear(
    (factor, lightweight, share): (f64, f64, f64),
    concrete: SteelStress,
    (width, depth): (Size, Size),
    trace: &mut Trace,
) -> Force {
    let root = root_mpa(1.0, concrete).min(SteelStress::new(8.0, StressUnit::MPa));
    trace.step(
        "V_c",
        "phi_c lambda beta sqrt(f'c) b d_v",
        on_area(factor * lightweight * share * root, width, depth),
        [
            ("phi_c", factor.into()),
            ("lambda", lightweight.into()),
            ("beta", share.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("d_v", depth.into()),
        ],
        &CSA_A23_3_19_SHEAR,
    )
}

/// Shear of vertical stirrups.
///
/// V_s = phi_s A_v f_y d_v cot(35 deg)/s; phi_s factor on bars, A_v area of one stirrup (m2), f_y
/// its yield strength (Pa), s spacing, d_v depth for shear (m). Source: CSA A23.3:19, 11.3.5.1
/// with the angle of the simplified method.
pub fn stirrup_shear(
    factor: f64,
    (area, spacing): (SteelArea, Size),
    yield_strength: SteelStress,
    depth: Size,
    trace: &mut Trace,
) -> Force {
    let theta = crate::quantity::Angle::new(35.0, AngleUnit::Deg);
    let ratio = depth / spacing / tan(theta.si());
    trace.step(
        "V_s",
        "phi_s A_v f_y d_v cot(theta)/s",
        Force::from_si(factor * area.si() * yield_strength.si() * ratio),
        [
            ("phi_s", factor.into()),
            ("A_v", area.into()),
            ("s", spacing.into()),
            ("f_y", yield_strength.into()),
            ("d_v", depth.into()),
            ("theta", theta.into()),
        ],
        &CSA_A23_3_19_SHEAR,
    )
}

/// Greatest shear that a section takes with any stirrups.
///
/// V_max = 0.25 phi_c f'c b d_v; phi_c factor on concrete, f'c (Pa), b width, d_v depth for shear
/// (m). Source: CSA A23.3:19, 11.3.3.
pub fn greatest_shear(
    factor: f64,
    concrete: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "V_max",
        "0.25 phi_c f'c b d_v",
        on_area(0.25 * factor * concrete, width, depth),
        [
            ("phi_c", factor.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("d_v", depth.into()),
        ],
        &CSA_A23_3_19_SHEAR,
    )
}

/// Least area of a stirrup.
///
/// A_v,min = 0.06 sqrt(f'c) b s/f_y; f'c, f_y (MPa), b width, s spacing (m). Source: CSA
/// A23.3:19, 11.2.8.2.
pub fn minimum_stirrup(
    concrete: SteelStress,
    yield_strength: SteelStress,
    width: Size,
    spacing: Size,
    trace: &mut Trace,
) -> SteelArea {
    trace.step(
        "A_v,min",
        "0.06 sqrt(f'c) b s/f_y",
        SteelArea::from_si(root_mpa(0.06, concrete) / yield_strength * width.si() * spacing.si()),
        [
            ("f'c", concrete.into()),
            ("f_y", yield_strength.into()),
            ("b", width.into()),
            ("s", spacing.into()),
        ],
        &CSA_A23_3_19_STIRRUPS,
    )
}

/// Greatest spacing of stirrups.
///
/// s_max = min(0.7 d_v, 600 mm), half of both where V_r > 0.125 lambda phi_c f'c b d_v; V_r shear
/// resistance (N), d_v depth for shear, b width (m), f'c (Pa). Source: CSA A23.3:19, 11.3.8.
pub fn greatest_spacing(
    resistance: Force,
    (factor, lightweight): (f64, f64),
    concrete: SteelStress,
    (width, depth): (Size, Size),
    trace: &mut Trace,
) -> Size {
    let heavy = resistance > on_area(0.125 * lightweight * factor * concrete, width, depth);
    let plain = (0.7 * depth).min(Size::new(600.0, LengthUnit::Mm));
    trace.step(
        "s_max",
        "min(0.7 d_v, 600 mm), half where V_r > 0.125 lambda phi_c f'c b d_v",
        if heavy { 0.5 * plain } else { plain },
        [
            ("V_r", resistance.into()),
            ("lambda", lightweight.into()),
            ("phi_c", factor.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("d_v", depth.into()),
        ],
        &CSA_A23_3_19_STIRRUPS,
    )
}

/// Torsion that may be left out of account.
///
/// T = 0.25 (0.38 lambda phi_c sqrt(f'c) A_c2/p_c); A_c = b h (m2), p_c = 2 (b + h) (m), f'c
/// (MPa), phi_c factor on concrete, lambda for lightweight concrete. Source: CSA A23.3:19,
/// 11.2.9.1.
pub fn torsion_threshold(
    (factor, lightweight): (f64, f64),
    concrete: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> Torque {
    let (area, perimeter) = (width.si() * depth.si(), 2.0 * (width + depth).si());
    let stress = root_mpa(0.25 * 0.38 * lightweight * factor, concrete);
    trace.step(
        "T_th",
        "0.25 (0.38 lambda phi_c sqrt(f'c) (b h)2/(2 (b + h)))",
        Torque::from_si(stress.si() * area * area / perimeter),
        [
            ("phi_c", factor.into()),
            ("lambda", lightweight.into()),
            ("f'c", concrete.into()),
            ("b", width.into()),
            ("h", depth.into()),
        ],
        &CSA_A23_3_19_TORSION,
    )
}

/// Modulus of elasticity of concrete of normal density.
///
/// E_c = 4500 sqrt(f'c), both MPa; f'c 20 to 40 MPa. Source: CSA A23.3:19, 8.6.2.3.
pub fn elastic_modulus(concrete: SteelStress, trace: &mut Trace) -> SteelStress {
    trace.step(
        "E_c",
        "4500 sqrt(f'c) MPa",
        root_mpa(4_500.0, concrete),
        [("f'c", concrete.into())],
        &CSA_A23_3_19_STIFFNESS,
    )
}

/// Modulus of elasticity by the density.
///
/// E_c = (3300 sqrt(f'c) + 6900) (gamma_c/2300)^1.5, MPa and kg/m3; gamma_c density from the unit
/// weight by standard gravity, 1,500 to 2,500 kg/m3. Source: CSA A23.3:19, 8.6.2.2.
pub fn elastic_modulus_by_weight(
    concrete: SteelStress,
    weight: UnitWeight,
    trace: &mut Trace,
) -> SteelStress {
    let ratio = weight.si() / GRAVITY / 2_300.0;
    let normal = root_mpa(3_300.0, concrete) + SteelStress::new(6_900.0, StressUnit::MPa);
    trace.step(
        "E_c",
        "(3300 sqrt(f'c) + 6900) (gamma_c/2300)^1.5 MPa",
        ratio * ratio.sqrt() * normal,
        [("f'c", concrete.into()), ("w_c", weight.into())],
        &CSA_A23_3_19_STIFFNESS,
    )
}

/// Stress at which a beam is taken to crack: half of the modulus of rupture.
///
/// f_r/2 = 0.5 (0.6 lambda sqrt(f'c)), MPa; lambda factor for lightweight concrete. Source: CSA
/// A23.3:19, 8.6.4 and 9.8.2.3.
pub fn cracking_stress(lightweight: f64, concrete: SteelStress, trace: &mut Trace) -> SteelStress {
    trace.step(
        "f_r/2",
        "0.5 (0.6 lambda sqrt(f'c))",
        root_mpa(0.3 * lightweight, concrete),
        [("lambda", lightweight.into()), ("f'c", concrete.into())],
        &CSA_A23_3_19_STIFFNESS,
    )
}

/// Rigidity of a section as cracked by a moment, after Branson.
///
/// I_e = I_cr + (I_g - I_cr) (M_cr/M_a)3, at most I_g; times E_c. M_a service moment, M_cr
/// cracking moment (N m), E I_cr cracked, E I_g uncracked rigidity (N m2). Source: CSA A23.3:19,
/// 9.8.2.3.
pub fn effective_rigidity(
    (service, cracking): (Moment, Moment),
    (cracked, gross): (FlexuralRigidity, FlexuralRigidity),
    trace: &mut Trace,
) -> FlexuralRigidity {
    let share = (cracking / service).min(1.0);
    trace.step(
        "E I_e",
        "E I_cr + (E I_g - E I_cr) (M_cr/M_a)3, at most E I_g",
        cracked + (gross - cracked) * (share * share * share),
        [
            ("M_a", service.into()),
            ("M_cr", cracking.into()),
            ("E I_cr", cracked.into()),
            ("E I_g", gross.into()),
        ],
        &CSA_A23_3_19_STIFFNESS,
    )
}
