//! Reference cases of the drive head and of torsion, by their ids. Tolerances are those of
//! the cases.

use serde_json::json;

use super::*;
use crate::quantity::{LengthUnit, MomentUnit, Size, SteelStress, StressUnit};
use crate::torque::hydraulics::{motor_pressure, motor_torque};
use crate::torque::torsion::{elastic_round, elastic_square, shear_yield, thin_round};
use crate::trace::Trace;

/// ST-HYD-1: 2.5 in3 a turn at 2,000 psi: 795.775 in lbf. ST-HYD-3: 40 in3 x 6 at 1,500 psi:
/// 4,774.65 ft lbf; with the rounded 75.4 for 24 pi, 4,774.54. Form verified, own arithmetic.
#[test]
fn st_hyd_1_and_3_motor_torque() {
    let torque = |drive: Json| {
        let answer = answer(json!({ "drive": drive }));
        assert!(warns(&answer, "efficiency_of_one"));
        answer.result.drive.unwrap().available.unwrap().torque
    };
    let one = torque(json!({
        "displacement": q(2.5, "in3_per_rev"), "mechanical_efficiency_ratio": 1.0,
        "working_pressures": { "inlet": q(2000.0, "psi") },
    }));
    near(one.get(MomentUnit::InLbf), 795.775, 0.01);
    let three = torque(json!({
        "displacement": q(40.0, "in3_per_rev"), "gear_ratio": 6.0, "mechanical_efficiency_ratio": 1.0,
        "working_pressures": { "inlet": q(1500.0, "psi") },
    }));
    near(three.get(MomentUnit::FtLbf), 4774.65, 0.0002);
    near(three.get(MomentUnit::FtLbf), 4774.54, 0.003);
    // the displacement of the whole head gives the same
    let whole = torque(json!({
        "displacement": q(240.0, "in3_per_rev"), "displacement_includes_gear": true,
        "mechanical_efficiency_ratio": 1.0, "working_pressures": { "inlet": q(1500.0, "psi") },
    }));
    near(whole.si(), three.si(), 1e-10);
    let back = motor_pressure(
        three,
        crate::quantity::Displacement::new(240.0, crate::quantity::DisplacementUnit::In3PerRev),
        1.0,
        &mut Trace::off(),
    );
    near(back.get(StressUnit::Psi), 1500.0, 1e-10);
    let again = motor_torque(
        back,
        crate::quantity::Displacement::new(240.0, crate::quantity::DisplacementUnit::In3PerRev),
        1.0,
        &mut Trace::off(),
    );
    near(again.si(), three.si(), 1e-12);
}

/// ST-SHAFT-own, torsion columns (computed; full nominal wall): 0.6 Fy elastic and H3.1 thin.
#[test]
fn st_shaft_own_torsion() {
    for (od, wall, fy, elastic, thin) in [
        (2.875, 0.203, 50.0, 5.32019, 5.69153),
        (3.5, 0.216, 50.0, 8.62045, 9.14787),
        (4.5, 0.237, 35.0, 11.2507, 11.8396),
    ] {
        let (d, t) = (
            Size::new(od, LengthUnit::In),
            Size::new(wall, LengthUnit::In),
        );
        let tau = shear_yield(SteelStress::new(fy, StressUnit::Ksi), &mut Trace::off());
        near(tau.get(StressUnit::Ksi), 0.6 * fy, 1e-10);
        let by_elastic = elastic_round(d, t, tau, &mut Trace::off());
        near(by_elastic.get(MomentUnit::KipFt), elastic, 0.01);
        near(
            thin_round(d, t, tau, &mut Trace::off()).get(MomentUnit::KipFt),
            thin,
            0.01,
        );
        let answer = answer(json!({
            "shaft": { "round": { "outside_diameter": q(od, "in"), "wall_thickness": q(wall, "in") } },
            "torsion": { "section": { "yield_strength": q(fy, "ksi"), "design_wall_ratio": 1.0 } },
        }));
        let section = answer
            .result
            .torsion
            .as_ref()
            .unwrap()
            .section
            .as_ref()
            .unwrap();
        near(section.elastic.get(MomentUnit::KipFt), elastic, 0.01);
        near(
            section.thin_wall.unwrap().get(MomentUnit::KipFt),
            thin,
            0.01,
        );
        assert_eq!(section.estimate, section.elastic);
        assert!(answer.checks.is_empty());
    }
}

/// The factor 0.208 of a square: Saint-Venant's series for the largest shear stress and the
/// torsion constant, summed here; 0.20817 (status: derived).
#[test]
fn torsion_of_a_square_agrees_with_the_series() {
    use crate::math::{PI, exp};
    let sech = |x: f64| 2.0 / (exp(x) + exp(-x));
    let tanh = |x: f64| (exp(x) - exp(-x)) / (exp(x) + exp(-x));
    let (mut stress, mut stiffness) = (0.0, 0.0);
    for i in 0..60 {
        let n = f64::from(2 * i + 1);
        stress += sech(n * PI / 2.0) / (n * n);
        stiffness += tanh(n * PI / 2.0) / (n * n * n * n * n);
    }
    // tau_max = G theta a (1 - 8/pi2 sum), T = G theta a4 (1/3)(1 - 192/pi5 sum)
    let tau = 1.0 - 8.0 / (PI * PI) * stress;
    let constant = (1.0 - 192.0 / (PI * PI * PI * PI * PI) * stiffness) / 3.0;
    near(constant, 0.1406, 0.05);
    near(constant / tau, 0.208, 0.1);
    let bar = elastic_square(
        Size::new(1.75, LengthUnit::In),
        SteelStress::new(42.0, StressUnit::Ksi),
        &mut Trace::off(),
    );
    // 0.208 x 1.75^3 x 42 = 46.8195 kip in
    near(bar.get(MomentUnit::KipIn), 46.8195, 0.001);
}
