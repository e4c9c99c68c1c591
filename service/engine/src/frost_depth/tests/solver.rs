//! The layered methods beside closed forms and an independent solution.

use super::berggren::{Cold, DEEPEST, NoFront, correction_factor};
use super::conduction::frost_depth;
use super::ground::Slab;
use super::*;
use crate::math::{erf, erfc, exp};
use crate::random::Random;

const DAY: f64 = 86_400.0;

fn slab(top: f64, thickness: f64, conductivity: f64, capacity: f64, latent: f64) -> Slab {
    Slab {
        top,
        thickness,
        frozen_conductivity: conductivity,
        conductivity,
        capacity,
        latent,
    }
}

fn solve(slabs: &[Slab], v_s: f64, v_o: f64, days: f64) -> Result<f64, NoFront> {
    let t = days * DAY;
    frost_depth(slabs, Cold { v_s, v_o, t }, &Work::default()).expect("not stopped")
}

/// What Neumann's equation is solved to, and its limits: without warmth and nearly without
/// sensible heat lambda goes to 1, with much warmth it falls.
#[test]
fn the_correction_factor_solves_its_equation() {
    let mut random = Random(71);
    for _ in 0..300 {
        let (alpha, mu) = (random.between(0.0, 7.0), random.between(1e-6, 0.5));
        let factor = correction_factor(alpha, mu, &mut Trace::off());
        let g = factor * (mu / 2.0).sqrt();
        let left = exp(-g * g) / erf(g) - alpha * exp(-g * g) / erfc(g);
        near(left, crate::math::PI.sqrt() * g / mu, 1e-10);
        assert!(factor > 0.0 && factor < 1.0);
        let warmer = correction_factor(alpha + 0.01, mu, &mut Trace::off());
        assert!(warmer < factor);
    }
    near(correction_factor(0.0, 1e-9, &mut Trace::off()), 1.0, 1e-9);
}

/// Neumann's solution is exact in ground of one kind; the cells come within 0.4 % of it, from
/// 0.3 m on.
#[test]
fn conduction_meets_neumann_in_ground_of_one_kind() {
    let mut random = Random(5);
    let mut worst = 0.0_f64;
    for _ in 0..25 {
        let (k, c) = (random.between(0.5, 3.0), random.between(1.4e6, 3e6));
        let latent = random.between(2e7, 2e8);
        let (v_s, v_o) = (random.between(2.0, 15.0), random.between(0.3, 9.0));
        let days = random.between(60.0, 220.0);
        let factor = correction_factor(v_o / v_s, v_s * c / latent, &mut Trace::off());
        let exact = factor * (2.0 * k * v_s * days * DAY / latent).sqrt();
        let found = solve(&[slab(0.0, f64::INFINITY, k, c, latent)], v_s, v_o, days).unwrap();
        let off = (found / exact - 1.0).abs();
        assert!(exact < 0.3 || off <= 4e-3, "{found} {exact}");
        worst = worst.max(off);
    }
    assert!(worst > 1e-6, "it is not the same equation twice");
}

/// Depths by an explicit solution in C, cells of 12.5 mm and of 25 mm agreeing to 0.2 %.
#[test]
fn conduction_meets_an_explicit_solution_in_layers() {
    let end = f64::INFINITY;
    let silt = |top| slab(top, end, 1.3154, 1.8946e6, 8.0479e7);
    let with_board = |r: f64| [slab(0.0, 0.05, 0.05 / r, 0.0, 0.0), silt(0.05)];
    let gravel = [
        slab(0.0, 1.0, 2.5, 2.0e6, 3.0e7),
        slab(1.0, end, 1.4, 2.3e6, 1.1e8),
    ];
    let over_gravel = [
        slab(0.0, 0.6, 1.4, 2.3e6, 1.1e8),
        slab(0.6, end, 2.5, 2.0e6, 3.0e7),
    ];
    let sand = [
        slab(0.0, 0.5, 1.0, 1.5e6, 8.0e6),
        slab(0.5, end, 1.5, 2.4e6, 1.2e8),
    ];
    let cases: [(&[Slab], f64, f64, f64, f64); 7] = [
        (&with_board(0.5), 8.68, 2.9, 160.0, 0.05 + 1.218),
        (&with_board(1.0), 8.68, 2.9, 160.0, 0.05 + 0.847),
        (&with_board(2.0), 8.68, 2.9, 160.0, 0.05 + 0.442),
        (&with_board(1.0), 6.0, 7.0, 130.0, 0.05 + 0.285),
        (&gravel, 7.0, 5.0, 140.0, 1.725),
        (&over_gravel, 7.0, 5.0, 140.0, 2.166),
        (&sand, 7.0, 5.0, 140.0, 1.140),
    ];
    for (slabs, v_s, v_o, days, expected) in cases {
        near(solve(slabs, v_s, v_o, days).unwrap(), expected, 6e-3);
    }
}

#[test]
fn what_does_not_freeze_and_what_freezes_too_deep_have_no_depth() {
    let end = f64::INFINITY;
    let board = [
        slab(0.0, 0.2, 0.03, 0.0, 0.0),
        slab(0.2, end, 1.3, 1.9e6, 8e7),
    ];
    assert_eq!(
        solve(&board, 1.0, 10.0, 60.0),
        Err(NoFront::WaterNotReached)
    );
    let dry = [slab(0.0, end, 4.0, 1.6e6, 4e6)];
    assert_eq!(solve(&dry, 25.0, 0.5, 300.0), Err(NoFront::TooDeep));
    assert!(solve(&dry, 5.0, 2.0, 100.0).unwrap() < DEEPEST);
}

/// The layered form goes far too deep under insulation, as its method says.
#[test]
fn the_layered_form_is_too_deep_under_insulation() {
    let layers = vec![board(0.05, 0.035), given(None, (1.3, 1.3), 1.9, 80.0)];
    let frost = frost(&request(winter(1100.0, 5.5, 140.0), layers));
    let berggren = by(&frost, FrostDepthMethod::ModifiedBerggren).unwrap();
    let ground = berggren - 0.05;
    assert!(ground > 1.15 * (frost.depth.si() - 0.05), "{ground}");
    assert!(by(&frost, FrostDepthMethod::Stefan).unwrap() > berggren);
}
