//! Given piles: the figures of the worked plans and the published cases, through the
//! whole calculation.

use super::{FT, LBF, answered, close};
use crate::contract::{Answer, CheckStatus, Verdict};
use crate::layout::{LayoutPile, Outcome, SupportModel};

fn pile<'a>(a: &'a Answer<Outcome>, label: &str) -> &'a LayoutPile {
    a.result.piles.iter().find(|p| p.label == label).unwrap()
}

fn share(p: &LayoutPile, beam: &str) -> f64 {
    let found = p.by_beam.iter().find(|s| s.beam == beam).unwrap();
    found.reaction.si() / LBF
}

/// Line A at 7.2 ft on rigid supports: w = 1,574.75 lb/ft; five equal spans give 15/38,
/// 43/38 and 37/38 of w l (published table), that is 4,476 / 12,830 / 11,040 lb; tributary
/// w l = 11,338 lb. 12,830 over 12,500 is 1.026.
#[test]
fn linnet_line_a() {
    let a = answered("linnet");
    assert_eq!(a.result.pile_count, 24);
    let wl = 1574.75 * 7.2;
    for (label, of38) in [
        ("A1", 15.0),
        ("A2", 43.0),
        ("A3", 37.0),
        ("A4", 37.0),
        ("A5", 43.0),
        ("A6", 15.0),
    ] {
        let p = pile(&a, label);
        assert_eq!(p.rigid.max_combination, "D+0.75L+0.75S");
        close(share(p, "A"), of38 / 38.0 * wl, 1e-12);
    }
    for (label, printed) in [
        ("A1", 4476.0),
        ("A2", 12830.0),
        ("A3", 11040.0),
        ("C5", 12830.0),
    ] {
        let p = pile(&a, label);
        let line = if label.starts_with('A') { "A" } else { "C" };
        assert_eq!(share(p, line).round(), printed);
    }
    for label in ["A2", "A3", "A4", "A5", "C2", "C5"] {
        assert_eq!(
            (pile(&a, label).tributary.unwrap().si() / LBF).round(),
            11338.0
        );
    }
    let u = pile(&a, "A2").utilisation_ratio.unwrap();
    assert_eq!((u * 1000.0).round(), 1026.0);
    assert_eq!(a.verdict, Verdict::Reject);
    let failed: Vec<&str> = a
        .checks
        .iter()
        .filter(|c| c.status == CheckStatus::Fail)
        .map(|c| {
            assert_eq!(c.id, "pile_compression");
            c.subject.as_ref().unwrap().label.as_str()
        })
        .collect();
    assert_eq!(failed, ["A2", "A5", "C2", "C5"]);
    let warning = a
        .warnings
        .iter()
        .find(|w| w.code == "tributary_differs")
        .unwrap();
    assert!(
        warning.detail.contains("A2 (-11.6 %)"),
        "{}",
        warning.detail
    );
    let spring = a.checks.iter().find(|c| c.id == "spring_support").unwrap();
    assert_eq!(spring.status, CheckStatus::NotEvaluated);
    assert!(a.result.statics_residual_ratio <= 1e-9);
}

/// With the governing line loads as one load: 224,913 lb in all (sum of w l over the
/// beams); B1, B3 = 32/28 x 1,056 x 9 = 10,862 lb; E1, E3 10,593 lb and the tributary
/// figures of the plan.
#[test]
fn linnet_with_governing_line_loads() {
    let a = answered("linnet-governing");
    let c = &a.result.combinations[0];
    assert_eq!((c.total_load.si() / LBF).round(), 224_913.0);
    close(c.total_reaction.si(), c.total_load.si(), 1e-12);
    let round = |label: &str| (pile(&a, label).rigid.max.si() / LBF).round();
    let tributary = |label: &str| (pile(&a, label).tributary.unwrap().si() / LBF).round();
    assert_eq!((round("B1"), round("B3")), (10862.0, 10862.0));
    assert_eq!((round("E1"), round("E3")), (10593.0, 10593.0));
    for (label, t) in [
        ("A1", 8574.0),
        ("A2", 11338.0),
        ("A6", 8350.0),
        ("W1", 5809.0),
        ("W2", 10561.0),
        ("E1", 9909.0),
        ("E2", 11008.0),
        ("B2", 9504.0),
        ("M1", 6760.0),
        ("M2", 5320.0),
    ] {
        assert_eq!(tributary(label), t, "{label}");
    }
    let sum: f64 = a
        .result
        .piles
        .iter()
        .map(|p| p.tributary.unwrap().si())
        .sum();
    close(sum, c.total_load.si(), 1e-12);
}

/// Six piles that do on lines A and C: 11,853 lb at most from the line itself.
#[test]
fn linnet_moved_to_fit() {
    let a = answered("linnet-moved-to-fit");
    assert_eq!(a.verdict, Verdict::Accept);
    let most = ["A2", "A3", "A4", "A5"].map(|l| pile(&a, l).rigid.max.si() / LBF);
    assert_eq!(most.into_iter().fold(0.0, f64::max).round(), 11853.0);
}

/// A3 moved by 9 in along the line: A2 becomes 13,635 lb = 1.091 of 12,500.
#[test]
fn linnet_a3_moved() {
    let a = answered("linnet-a3-moved");
    let p = pile(&a, "A2");
    assert_eq!((p.rigid.max.si() / LBF).round(), 13635.0);
    assert_eq!((p.utilisation_ratio.unwrap() * 1000.0).round(), 1091.0);
}

/// A corner bridged by two piles: tips that share their movement without torsion give
/// 7,209 and 4,720 lb (continuous beams on the next piles), half spans 7,638 and 4,022.
#[test]
fn linnet_corner_bridged() {
    let a = answered("linnet-corner-bridged");
    let (x, y) = (pile(&a, "A1a"), pile(&a, "A1b"));
    assert_eq!((x.tributary.unwrap().si() / LBF).round(), 7638.0);
    assert_eq!((y.tributary.unwrap().si() / LBF).round(), 4022.0);
    assert_eq!((x.rigid.max.si() / LBF).round(), 7209.0);
    assert_eq!((y.rigid.max.si() / LBF).round(), 4720.0);
}

#[test]
fn sums_of_printed_reactions_are_the_total_loads() {
    for name in [
        "linnet",
        "linnet-governing",
        "linnet-springs",
        "sizerin",
        "porch-uplift",
    ] {
        let a = answered(name);
        for c in &a.result.combinations {
            let sum = |spring: bool| -> f64 {
                a.result
                    .piles
                    .iter()
                    .flat_map(|p| p.reactions.as_ref().unwrap())
                    .filter(|r| r.combination == c.name)
                    .map(|r| {
                        if spring {
                            r.spring.unwrap().si()
                        } else {
                            r.rigid.si()
                        }
                    })
                    .sum()
            };
            close(sum(false), c.total_load.si(), 1e-12);
            if a.result.supports.contains(&SupportModel::Spring) {
                close(sum(true), c.total_load.si(), 1e-9);
            }
        }
        assert!(
            a.result.statics_residual_ratio <= 1e-9,
            "{}",
            a.result.statics_residual_ratio
        );
    }
}

/// First interior pile of four equal spans: 32/28 x 24.2625 x 2.4 = 66.55 kN where half
/// spans give 58.2; centre line 1.25D + 1.5L = 14.335 kN/m.
#[test]
fn sizerin() {
    let a = answered("sizerin");
    assert_eq!(a.verdict, Verdict::Accept);
    let p = pile(&a, "P12");
    assert_eq!(p.rigid.max_combination, "1.25D+1.5S+1.0L");
    close(p.rigid.max.si(), 32.0 / 28.0 * 24_262.5 * 2.4, 1e-12);
    close(p.tributary.unwrap().si(), 24_262.5 * 2.4, 1e-12);
    let p = pile(&a, "P22");
    assert_eq!(p.rigid.max_combination, "1.25D+1.5L");
    close(p.rigid.max.si(), 32.0 / 28.0 * 14_335.0 * 2.4, 1e-12);
    let small = answered("sizerin-small-helices");
    assert_eq!(small.verdict, Verdict::Reject);
    let worst = small.result.max_utilisation_ratio.unwrap();
    close(worst, 32.0 / 28.0 * 24.2625 * 2.4 / 55.6, 1e-12);
}

/// ST-CB-2span to 5span (published table), through the whole calculation.
#[test]
fn equal_spans() {
    let of: [(&str, &[f64], f64); 4] = [
        ("st-cb-2span", &[3.0, 10.0, 3.0], 8.0),
        ("st-cb-3span", &[4.0, 11.0, 11.0, 4.0], 10.0),
        ("st-cb-4span", &[11.0, 32.0, 26.0, 32.0, 11.0], 28.0),
        ("st-cb-5span", &[15.0, 43.0, 37.0, 37.0, 43.0, 15.0], 38.0),
    ];
    for (name, parts, whole) in of {
        let a = answered(name);
        assert_eq!(a.verdict, Verdict::NotAsked);
        assert!(a.checks.is_empty());
        for (p, part) in a.result.piles.iter().zip(parts) {
            close(p.rigid.max.si(), part / whole * 30_000.0, 1e-12);
        }
    }
}

/// ST-TM-824 and ST-FEM-A, C, D base and D moved (computed with three other solvers;
/// tolerance as printed).
#[test]
fn worked_lines() {
    let kip = 1e3 * LBF;
    for (name, unit, want) in [
        ("st-tm-824", 1e3, vec![3.16071, 9.83929, 9.83929, 3.16071]),
        (
            "st-fem-a_unequal_udl_points",
            kip,
            vec![10.9946, 26.4455, 29.7257, 33.9375, 5.69673],
        ),
        (
            "st-fem-d_base_equal",
            kip,
            vec![8.09211, 21.4474, 25.4605, 25.4605, 21.4474, 8.09211],
        ),
        (
            "st-fem-d_moved_pile3_plus1.5",
            kip,
            vec![7.58104, 24.3526, 27.0042, 20.5757, 22.5838, 7.9027],
        ),
    ] {
        let a = answered(name);
        for (p, w) in a.result.piles.iter().zip(want) {
            close(p.rigid.max.si() / unit, w, 1e-5);
        }
    }
    let a = answered("st-fem-a_unequal_udl_points");
    let b = &a.result.beams[0];
    close(b.sagging.moment.si() / (kip * FT), 36.428, 1e-5);
    close(b.sagging.at.x.si() / FT, 19.5, 1e-12);
    close(b.hogging.moment.si() / (kip * FT), 31.2261, 1e-5);
    close(b.shear.shear.si() / kip, 20.4342, 1e-5);
    let a = answered("st-fem-c_springs");
    let springs = [14.8749, 24.1413, 29.6956, 25.6804, 12.4077];
    let settled = [0.0247916, 0.0402355, 0.0494927, 0.0428007, 0.0206795];
    let rigid = [10.9946, 26.4455, 29.7257, 33.9375, 5.69673];
    for (i, p) in a.result.piles.iter().enumerate() {
        close(p.spring.as_ref().unwrap().max.si() / kip, springs[i], 1e-5);
        close(p.settlement.unwrap().si() / FT, settled[i], 1e-5);
        close(p.rigid.max.si() / kip, rigid[i], 1e-5);
        close(
            p.compression.demand.si() / kip,
            springs[i].max(rigid[i]),
            1e-5,
        );
    }
    close(
        a.result.beams[0].sagging.moment.si() / (kip * FT),
        83.1581,
        1e-5,
    );
    assert_eq!(a.result.beams[0].sagging.supports, SupportModel::Spring);
}

/// Net uplift of a porch pile: 0.6 x 6.0 up less 0.6 x 2.5 of dead load = 2.10 kip at the
/// column, and what the beam adds.
#[test]
fn porch_uplift() {
    let a = answered("porch-uplift");
    let p = pile(&a, "3");
    assert_eq!(p.tension.combination, "0.6D+0.6W[up]");
    // two spans of 6 ft: end share 3/8 x 6 ft of 0.6 x 300 - 0.6 x 50 = 150 lb/ft up
    close(
        p.tension.demand.si() / LBF,
        2100.0 + 0.375 * 6.0 * 150.0,
        1e-12,
    );
    assert_eq!(a.verdict, Verdict::Reject);
    assert!(a.warnings.iter().any(|w| w.code == "pile_uplift"));
}

/// The worked plan on springs of 60 kip/in, beams of 180,000 kip ft2, D+0.75L+0.75S:
/// computed with a separate dense stiffness solution of the whole plan (other program,
/// shared deflections, no torsion), printed to 3 decimals of a pound.
#[test]
fn linnet_on_springs() {
    let a = answered("linnet-springs");
    for (label, want) in [
        ("A1", 7829.965),
        ("A2", 10587.53),
        ("A3", 11763.011),
        ("A4", 11826.435),
        ("A5", 10890.301),
        ("A6", 8586.903),
    ] {
        let reactions = pile(&a, label).reactions.as_ref().unwrap();
        let r = reactions
            .iter()
            .find(|r| r.combination == "D+0.75L+0.75S")
            .unwrap();
        close(r.spring.unwrap().si() / LBF, want, 1e-6);
    }
    // the rigid line still governs A2
    assert_eq!(pile(&a, "A2").compression.supports, SupportModel::Rigid);
    assert_eq!(
        a.result.supports,
        [SupportModel::Rigid, SupportModel::Spring]
    );
    assert!(a.checks.iter().all(|c| c.id != "spring_support"));
}
