//! Statics of a rectangular section that both codes share: where the bars are, the rectangular
//! stress block, the steel that a moment needs, and the elastic section.

use crate::quantity::{
    FlexuralRigidity, Force, LengthUnit, Moment, Size, SteelArea, SteelStress, StressUnit,
};
use crate::source::{DERIVED, STRESS_BLOCK_WORKED_PAGE, TRANSFORMED_SECTION};
use crate::trace::Trace;

/// Effective depth of bars in one layer.
///
/// d = h - c - d_s - d_b/2; h overall depth (m), c clear cover (m), d_s diameter of the stirrups
/// (m), d_b of the bars (m); any value. Source: geometry.
pub fn effective_depth(
    depth: Size,
    cover: Size,
    stirrup: Size,
    bar: Size,
    trace: &mut Trace,
) -> Size {
    trace.step(
        "d",
        "h - c - d_s - d_b/2",
        depth - cover - stirrup - 0.5 * bar,
        [
            ("h", depth.into()),
            ("c", cover.into()),
            ("d_s", stirrup.into()),
            ("d_b", bar.into()),
        ],
        &DERIVED,
    )
}

/// Depth of the rectangular stress block that balances a tension.
///
/// a = T/(sigma b); T tension of the bars (N), sigma uniform stress of the concrete (Pa), b width
/// (m); sigma, b > 0. Source: equilibrium, as on a worked page.
pub fn stress_block(tension: Force, stress: SteelStress, width: Size, trace: &mut Trace) -> Size {
    trace.step(
        "a",
        "T/(sigma b)",
        Size::from_si(tension.si() / (stress.si() * width.si())),
        [
            ("T", tension.into()),
            ("sigma", stress.into()),
            ("b", width.into()),
        ],
        &STRESS_BLOCK_WORKED_PAGE,
    )
}

/// Moment of the bars about the middle of the stress block.
///
/// M = T (d - a/2); T tension (N), d effective depth (m), a depth of the block (m); a < 2 d.
/// Source: equilibrium, as on a worked page.
pub fn block_moment(tension: Force, depth: Size, block: Size, trace: &mut Trace) -> Moment {
    trace.step(
        "M",
        "T (d - a/2)",
        Moment::from_si(tension.si() * (depth.si() - 0.5 * block.si())),
        [
            ("T", tension.into()),
            ("d", depth.into()),
            ("a", block.into()),
        ],
        &STRESS_BLOCK_WORKED_PAGE,
    )
}

/// Tension that a moment needs.
///
/// T = 2 M/(d + sqrt(d2 - 2 M/(sigma b))), the lesser root of M = T (d - T/(2 sigma b)); M
/// moment (N m), sigma stress of the block (Pa), b width (m), d effective depth (m); none where
/// the section cannot hold the moment with any steel. Source: equilibrium.
pub fn tension_for(
    moment: Moment,
    stress: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> Option<Force> {
    let line = stress.si() * width.si();
    let under = depth.si() * depth.si() - 2.0 * moment.si() / line;
    (under >= 0.0).then(|| {
        trace.step(
            "T",
            "2 M/(d + sqrt(d2 - 2 M/(sigma b)))",
            Force::from_si(2.0 * moment.si() / (depth.si() + under.sqrt())),
            [
                ("M", moment.into()),
                ("sigma", stress.into()),
                ("b", width.into()),
                ("d", depth.into()),
            ],
            &DERIVED,
        )
    })
}

/// Strain of the bars when the concrete fails.
///
/// eps_t = eps_cu (d - c)/c; eps_cu strain of the concrete at failure, d effective depth (m), c
/// depth of the neutral axis (m); c > 0. Source: plane sections.
pub fn steel_strain(concrete: f64, depth: Size, axis: Size, trace: &mut Trace) -> f64 {
    trace.step(
        "eps_t",
        "eps_cu (d - c)/c",
        concrete * ((depth - axis) / axis),
        [
            ("eps_cu", concrete.into()),
            ("d", depth.into()),
            ("c", axis.into()),
        ],
        &DERIVED,
    )
}

/// Flexural rigidity of the uncracked rectangle.
///
/// E I_g = E_c b h3/12; E_c modulus of the concrete (Pa), b width, h overall depth (m); any
/// value. Source: geometry.
pub fn gross_rigidity(
    modulus: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> FlexuralRigidity {
    let h = depth.si();
    trace.step(
        "E I_g",
        "E_c b h3/12",
        FlexuralRigidity::from_si(modulus.si() * width.si() * h * h * h / 12.0),
        [
            ("E_c", modulus.into()),
            ("b", width.into()),
            ("h", depth.into()),
        ],
        &TRANSFORMED_SECTION,
    )
}

/// Flexural rigidity of the cracked rectangle with bars in tension alone.
///
/// E I_cr = E_c b x3/3 + E_s A_s (d - x)2, x from b x2/2 = n A_s (d - x), n = E_s/E_c; E_c, E_s
/// moduli (Pa), A_s steel (m2), b width, d effective depth (m); all above nil. Source:
/// equilibrium with plane sections.
pub fn cracked_rigidity(
    modulus: SteelStress,
    steel_modulus: SteelStress,
    steel: SteelArea,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> FlexuralRigidity {
    let transformed = steel_modulus / modulus * steel.si();
    let (b, d) = (width.si(), depth.si());
    let root = transformed * transformed + 2.0 * b * transformed * d;
    let x = (root.sqrt() - transformed) / b;
    let inertia = b * x * x * x / 3.0 + transformed * (d - x) * (d - x);
    trace.step(
        "E I_cr",
        "E_c b x3/3 + E_s A_s (d - x)2, b x2/2 = n A_s (d - x)",
        FlexuralRigidity::from_si(modulus.si() * inertia),
        [
            ("E_c", modulus.into()),
            ("E_s", steel_modulus.into()),
            ("A_s", steel.into()),
            ("b", width.into()),
            ("d", depth.into()),
            ("x", Size::from_si(x).into()),
        ],
        &TRANSFORMED_SECTION,
    )
}

/// Moment that cracks the rectangle.
///
/// M_cr = f_r b h2/6; f_r stress at cracking (Pa), b width, h overall depth (m); any value.
/// Source: elastic bending of the uncracked rectangle.
pub fn cracking_moment(
    rupture: SteelStress,
    width: Size,
    depth: Size,
    trace: &mut Trace,
) -> Moment {
    trace.step(
        "M_cr",
        "f_r b h2/6",
        Moment::from_si(rupture.si() * width.si() * depth.si() * depth.si() / 6.0),
        [
            ("f_r", rupture.into()),
            ("b", width.into()),
            ("h", depth.into()),
        ],
        &TRANSFORMED_SECTION,
    )
}

/// A multiple of the root of a strength, both in psi.
pub(super) fn root_psi(factor: f64, strength: SteelStress) -> SteelStress {
    SteelStress::new(
        factor * strength.get(StressUnit::Psi).sqrt(),
        StressUnit::Psi,
    )
}

/// A multiple of the root of a strength, both in MPa.
pub(super) fn root_mpa(factor: f64, strength: SteelStress) -> SteelStress {
    SteelStress::new(
        factor * strength.get(StressUnit::MPa).sqrt(),
        StressUnit::MPa,
    )
}

/// A stress on the area of shear.
pub(super) fn on_area(stress: SteelStress, width: Size, depth: Size) -> Force {
    Force::from_si(stress.si() * width.si() * depth.si())
}

/// A length as it counts in an equation in inches.
pub(super) fn inches(size: Size) -> f64 {
    size.get(LengthUnit::In)
}

/// A length as it counts in an equation in millimetres.
pub(super) fn millimetres(size: Size) -> f64 {
    size.get(LengthUnit::Mm)
}
