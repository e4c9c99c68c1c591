//! Piles together: totals and pieces against closed forms and counting out.

use super::super::job::{Need, loadings, pieces, total};
use super::super::mixture::{Depth, Part};
use super::super::pieces::{assemblies, reach};
use super::*;
use crate::quantity::{Length, LengthUnit};

const FT: f64 = 0.3048;

fn pile(mean: f64, sd: f64) -> Depth {
    let part = Part {
        weight: 1.0,
        mean: mean * FT,
        sd: sd * FT,
    };
    Depth {
        parts: vec![part],
        passed: None,
        least: 0.0,
    }
}

/// 24 piles, mean 19 ft, standard deviation 3 ft: 456 ft in the mean; not exceeded with 0.9:
/// 456 + 1.2816 x 3 x 24^0.5 = 474.8 ft of independent piles, 24 (19 + 1.2816 x 3) = 548.3 ft
/// of piles that are deep together.
#[test]
fn both_totals_of_24_piles() {
    let piles = vec![pile(19.0, 3.0); 24];
    let none = total(&piles, &[0.0; 24], 0.9);
    near(none.mean / FT, 456.0, 1e-3);
    near(none.independent / FT, 474.835, 0.01);
    near(none.by_model / FT, none.independent / FT, 1e-9);
    near(none.fully_correlated / FT, 548.272, 1e-3);
    assert_eq!((none.independent / FT).round(), 475.0);
    assert_eq!((none.fully_correlated / FT).round(), 548.0);
    // half of the variance in common: 456 + 1.2816 x 3 x (24 + 24 x 23 / 2)^0.5 = 522.6 ft
    let half = total(&piles, &[0.5_f64.sqrt(); 24], 0.9);
    near(half.by_model / FT, 522.59, 0.05);
    // 500 piles, where hardly anything is left given the factor: 9,500 + 1.2816 x 3 x (500 x
    // (1 + 499 / 2))^0.5
    let many = total(&vec![pile(19.0, 3.0); 500], &[0.5_f64.sqrt(); 500], 0.9);
    near(
        many.by_model / FT,
        9500.0 + 3.844_655 * (500.0 * 250.5_f64).sqrt(),
        3.0,
    );
    let most = total(&piles, &[0.999; 24], 0.9);
    assert!((most.by_model - most.fully_correlated).abs() < 0.001 * most.fully_correlated);
}

/// One pile is its own total.
#[test]
fn one_pile_is_its_own_total() {
    let one = total(&[pile(19.0, 3.0)], &[0.0], 0.9);
    near(one.by_model / FT, 19.0 + 3.0 * 1.281_551_6, 1e-6);
    near(one.by_model, one.independent, 1e-12);
}

/// With a least depth of 19 ft the mean grows by 3 / (2 pi)^0.5 ft a pile.
#[test]
fn a_least_depth_lengthens_the_mean() {
    let mut piles = vec![pile(19.0, 3.0); 10];
    piles.iter_mut().for_each(|p| p.least = 19.0 * FT);
    let found = total(&piles, &[0.0; 10], 0.9);
    near(found.mean / FT, 190.0 + 10.0 * 3.0 * 0.398_942_3, 0.01);
}

/// Equal correlations rho of equal piles: a^2 = rho.
#[test]
fn loadings_carry_the_covariance_of_all_pairs() {
    let moments = vec![(6.0, 4.0); 5];
    for a in loadings(&moments, &[4.0 * 4.0 * 0.3; 5]) {
        near(a * a, 0.3, 1e-12);
    }
    let unequal = [3.0, 1.0, 2.0, 0.0, -1.0];
    let a = loadings(&moments, &unequal);
    let b: Vec<f64> = a.iter().map(|a| 2.0 * a).collect();
    let (sum, squares) = (b.iter().sum::<f64>(), b.iter().map(|b| b * b).sum::<f64>());
    near(sum * sum - squares, 6.0, 1e-12);
    assert_eq!(&a[3..], [0.0, 0.0]);
    assert_eq!(loadings(&moments[..1], &[0.0]), [0.0]);
}

/// Three piles that need 1, 2 or 3 pieces with 0.5, 0.3, 0.2, counted out by hand: 27 ways.
#[test]
fn independent_pieces_are_counted_out() {
    let need = Need {
        steps: vec![(1, 0.5), (2, 0.8), (3, 1.0)],
    };
    let shares = [0.5, 0.3, 0.2];
    let mut sums = [0.0; 10];
    for (i, a) in shares.iter().enumerate() {
        for (j, b) in shares.iter().enumerate() {
            for (k, c) in shares.iter().enumerate() {
                sums[i + j + k + 3] += a * b * c;
            }
        }
    }
    let all = vec![need; 3];
    for p in [0.5, 0.7, 0.9, 0.95, 0.99] {
        let mut sum = 0.0;
        let wanted = (0..10).find(|n| {
            sum += sums[*n];
            sum >= p
        });
        let found = pieces(&all, &[0.0; 3], p);
        assert_eq!(Some(found.independent), wanted, "{p}");
        assert_eq!(found.by_model, found.independent, "{p}");
        near(found.mean, 3.0 * 1.7, 1e-12);
        // together each needs the same: 3, 6 or 9
        let together = if p <= 0.5 {
            3
        } else if p <= 0.8 {
            6
        } else {
            9
        };
        assert_eq!(found.fully_correlated, together, "{p}");
    }
    assert_eq!(pieces(&all, &[0.999; 3], 0.9).by_model, 9);
    assert!(pieces(&all, &[0.9; 3], 0.95).by_model >= pieces(&all, &[0.0; 3], 0.95).by_model);
}

/// A deeper pile may need fewer of a short piece: 1 short, then 1 long.
#[test]
fn pieces_need_not_grow_with_depth() {
    let need = Need {
        steps: vec![(0, 0.2), (1, 0.7), (0, 1.0)],
    };
    let found = pieces(&[need.clone(), need], &[0.0, 0.0], 0.9);
    assert_eq!((found.independent, found.fully_correlated), (2, 2));
    near(found.mean, 1.0, 1e-12);
}

/// Lead 7 ft, extensions 5 and 7 ft, 1 ft above grade: by the rule 6; 11, 13; 18 (7 + 5), 20
/// (7 + 7), and 16 (5 + 5), as long as one piece does not reach.
#[test]
fn as_few_pieces_as_reach() {
    let all = assemblies(7.0, &[5.0, 7.0], 1.0, 21.0).unwrap();
    let told: Vec<(f64, &[usize])> = all.iter().map(|a| (a.reach, &a.counts[..])).collect();
    let expected: [(f64, &[usize]); 8] = [
        (6.0, &[0, 0]),
        (11.0, &[1, 0]),
        (13.0, &[0, 1]),
        (16.0, &[2, 0]),
        (18.0, &[1, 1]),
        (20.0, &[0, 2]),
        (21.0, &[3, 0]),
        (23.0, &[2, 1]),
    ];
    assert_eq!(told[..8], expected);
    assert_eq!(assemblies(7.0, &[0.1], 1.0, 21.0), None);
    let ft = |v| Length::new(v, LengthUnit::Ft);
    let reached = reach(ft(7.0), ft(12.0), ft(1.0), &mut Trace::off());
    near(reached.get(LengthUnit::Ft), 18.0, 1e-12);
}
