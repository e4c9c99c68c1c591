//! Statics: cases calculated elsewhere, the moment of a pile off its line, its share.

use super::*;
use crate::quantity::{LengthUnit, MomentUnit};

/// ST-FEM-D: 40 ft, 2.5 kip/ft and 10 kip at 20 ft on six piles, the third moved 1.5 ft; from
/// PyNiteFEA, PyCBA and an own solver.
#[test]
fn the_third_of_six_piles_moved_along() {
    let answered = answer(&shown("st-fem-d_moved_pile3_plus1.5"));
    let before = [8.09211, 21.4474, 25.4605, 25.4605, 21.4474, 8.09211];
    let after = [7.58104, 24.3526, 27.0042, 20.5757, 22.5838, 7.9027];
    for (i, row) in answered.result.piles.iter().enumerate() {
        near(lbf(row.rigid.before.unwrap()), 1e3 * before[i], 0.1);
        near(lbf(row.rigid.after.unwrap()), 1e3 * after[i], 0.3);
    }
    let second = answered.result.piles[1].rigid.change_ratio.unwrap();
    near(second, 0.135, 5e-4);
    let beam = &answered.result.beams[0];
    let kip_ft = |m: crate::quantity::Moment| m.get(MomentUnit::KipFt);
    near(kip_ft(beam.sagging.before), 21.0526, 1e-3);
    near(kip_ft(beam.sagging.after.unwrap()), 12.4905, 1e-3);
    near(kip_ft(beam.hogging.before), 18.9474, 1e-3);
    near(kip_ft(beam.hogging.after.unwrap()), 19.3517, 1e-3);
    // the hogging moved from the third pile to the second
    near(beam.hogging.at_before.x.get(LengthUnit::Ft), 16.0, 1e-6);
    near(beam.hogging.at.unwrap().x.get(LengthUnit::Ft), 8.0, 1e-6);
    near(kip_ft_shear(beam), 15.1878, 1e-3);
    // bars where the support was, and where it is: 18.7949 hogging over it
    let notes = &answered.result.reinforcement;
    assert_eq!(notes.len(), 2);
    let new = &notes[1];
    assert_eq!(new.place, ReinforcementPlace::TopOverNewSupport);
    near(kip_ft(new.hogging_after), 18.7949, 1e-3);
    let old = &notes[0];
    assert_eq!(old.place, ReinforcementPlace::BottomAtOldSupport);
    near(kip_ft(old.hogging_before), 18.9474, 1e-3);
    assert!(old.hogging_after < old.hogging_before);
    // 9.5 ft for 8 ft, and no strength of the beam was sent
    assert_eq!(answered.verdict, Verdict::Provisional);
    assert!(
        answered
            .checks
            .iter()
            .any(|c| c.id == "relocation_beam_strength")
    );
}

fn kip_ft_shear(beam: &RelocatedBeam) -> f64 {
    beam.shear.after.unwrap().get(ForceUnit::Kip)
}

/// Without the third pile: a pair at 2 ft on either side by the three-moment equation, checked by
/// the sum of moments about both ends.
#[test]
fn a_pair_in_the_stead_of_a_lost_pile_keeps_equilibrium() {
    let mut sent = shown("st-fem-d_moved_pile3_plus1.5");
    sent.events = events(
        r#"[{"stopped_short":{"pile":"3"}},
            {"added":{"pile":{"label":"3a","at":{"x":{"value":14,"unit":"ft"},"y":{"value":0,"unit":"ft"}}}}},
            {"added":{"pile":{"label":"3b","at":{"x":{"value":18,"unit":"ft"},"y":{"value":0,"unit":"ft"}}}}}]"#,
    );
    let answered = answer(&sent);
    let result = answered.result.result.as_ref().expect("it stands");
    let (mut sum, mut moment) = (0.0, 0.0);
    for row in &result.piles {
        let kip = row.rigid.max.get(ForceUnit::Kip);
        sum += kip;
        moment += kip * row.at.x.get(LengthUnit::Ft);
    }
    near(sum, 110.0, 1e-6);
    near(moment, 2.5 * 40.0 * 20.0 + 10.0 * 20.0, 1e-5);
    let notes = &answered.result.reinforcement;
    let places: Vec<_> = notes.iter().map(|n| (n.place, n.pile.as_str())).collect();
    assert_eq!(
        places,
        [
            (ReinforcementPlace::BottomBetweenPair, "3"),
            (ReinforcementPlace::TopOverNewSupport, "3a"),
            (ReinforcementPlace::TopOverNewSupport, "3b"),
        ]
    );
    // the two do not carry alike
    let of = |label: &str| lbf(pile(&answered.result, label).rigid.after.unwrap());
    assert!((of("3a") - of("3b")).abs() > 1_000.0);
}

/// k_p = sqrt(2) E I/R with R = (E I/k)^(1/4): by hand for 200 kip-ft2 and 600 psi (86.4 ksf):
/// R = (200/86.4)^(1/4) = 1.23347 ft, k_p = 229.31 kip-ft; the beam 2 x 9,000/8 = 2,250 kip-ft.
#[test]
fn the_moment_is_shared_between_head_and_beam() {
    let answered = answer(&shown("eccentric-head"));
    let told = answered.result.moved[0].eccentricity.clone().unwrap();
    let moment = told.by_reaction.get(MomentUnit::KipFt);
    let reaction = pile(&answered.result, "P3").compression.after.unwrap();
    near(moment, 0.25 * reaction.get(ForceUnit::Kip), 1e-9);
    let unit = crate::quantity::RotationalSpringUnit::KipFtPerRad;
    let (head, beam) = (
        told.pile_stiffness.unwrap().get(unit),
        told.beam_stiffness.unwrap().get(unit),
    );
    near(head, 229.31, 0.02);
    near(beam, 2_250.0, 1e-6);
    let share = told.pile_moment.unwrap().get(MomentUnit::KipFt);
    near(share, moment * head / (head + beam), 1e-9);
    // both sides are alike, each takes half of the rest
    let torque = told.beam_torque.unwrap().get(MomentUnit::KipFt);
    near(2.0 * torque + share, moment, 1e-9);
    assert_eq!(
        check(&answered, "pile_head_moment", "P3").status,
        CheckStatus::Pass
    );
    assert_eq!(
        check(&answered, "eccentric_beam_torque", "S").status,
        CheckStatus::Pass
    );
    let unknown = answer(&shown("eccentric-head-unknown-torsion"));
    assert_eq!(
        check(&unknown, "pile_head_moment", "P3").status,
        CheckStatus::NotEvaluated
    );
    assert_eq!(unknown.verdict, Verdict::Provisional);
}

/// The stiffness of the head by a beam of many springs: a shaft of 40 relative lengths in 4,000
/// parts on its ground, as continuous beam of the own solver, turned by a couple at its end.
#[test]
fn the_stiffness_of_the_head_is_that_of_a_beam_on_springs() {
    use crate::beam::{Line, LineNode, Load, Network, Shape, Support, solve};
    let (rigidity, subgrade) = (80_000.0, 4.0e6);
    let length: f64 = crate::math::pow(rigidity / subgrade, 0.25);
    let (parts, step) = (1_200, 0.01 * length);
    let nodes: Vec<LineNode> = (0..=parts)
        .map(|node| LineNode {
            node,
            at: node as f64 * step,
        })
        .collect();
    let supports = (0..=parts)
        .map(|i| match i {
            0 => Support::Rigid,
            _ if i == parts => Support::Spring(0.5 * subgrade * step),
            _ => Support::Spring(subgrade * step),
        })
        .collect();
    let network = Network {
        supports,
        lines: vec![Line {
            length: parts as f64 * step,
            rigidity: vec![rigidity; parts],
            nodes,
            loads: vec![Load {
                case: 0,
                shape: Shape::Couple {
                    at: 0.0,
                    moment: 1.0,
                },
            }],
        }],
        cases: 1,
        torsion: None,
    };
    let solution = solve(&network).expect("it stands");
    // the head does not move; the slope there from the deflection of the first part, whose moment
    // falls from 1 by the shear there
    let y1 = solution.deflection[1];
    let shear = -solution.reaction[0];
    let theta = y1 / step + step / (2.0 * rigidity) - shear.abs() * step * step / (6.0 * rigidity);
    let formula = std::f64::consts::SQRT_2 * rigidity / length;
    near(1.0 / theta / formula, 1.0, 0.005);
}
