//! EN 1997-1 for piles: recommended partial and correlation factors, and the equations
//! from a calculated or measured resistance to a design one, and from actions to effects.

use super::{EurocodeApproach, EurocodePileKind};
use crate::quantity::Force;
use crate::source::{
    EN_1997_1_2_4_7_3, EN_1997_1_7_6_2, EN_1997_1_A3, EN_1997_1_A6, EN_1997_1_A7, EN_1997_1_A8,
    EN_1997_1_A9, EN_1997_1_A10, EN_1997_1_MODEL, Reference, Sourced,
};
use crate::trace::Trace;

/// Partial factors on actions of one set.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ActionFactors {
    /// Unfavourable permanent.
    pub permanent_unfavourable: f64,
    /// Favourable permanent.
    pub permanent_favourable: f64,
    /// Unfavourable variable; favourable variable actions are left out.
    pub variable: f64,
}

/// Partial factors on the resistance of one kind of pile in one set. That of the shaft
/// alone is not used: nothing of a helical pile is taken as shaft.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PileFactors {
    /// Base, compression.
    pub base: f64,
    /// Total, compression.
    pub total: f64,
    /// Tension.
    pub tension: f64,
}

const fn actions(
    permanent_unfavourable: f64,
    permanent_favourable: f64,
    variable: f64,
) -> ActionFactors {
    ActionFactors {
        permanent_unfavourable,
        permanent_favourable,
        variable,
    }
}

const fn pile(base: f64, total: f64, tension: f64) -> PileFactors {
    PileFactors {
        base,
        total,
        tension,
    }
}

/// Set A1.
pub static ACTIONS_A1: Sourced<ActionFactors> = Sourced::new(
    "eurocode_actions_a1",
    actions(1.35, 1.0, 1.5),
    &EN_1997_1_A3,
);
/// Set A2.
pub static ACTIONS_A2: Sourced<ActionFactors> =
    Sourced::new("eurocode_actions_a2", actions(1.0, 1.0, 1.3), &EN_1997_1_A3);

type Sets = [(ResistanceSet, Sourced<PileFactors>); 3];

static DRIVEN: Sets = [
    (
        ResistanceSet::R1,
        Sourced::new("eurocode_driven_r1", pile(1.0, 1.0, 1.25), &EN_1997_1_A6),
    ),
    (
        ResistanceSet::R2,
        Sourced::new("eurocode_driven_r2", pile(1.1, 1.1, 1.15), &EN_1997_1_A6),
    ),
    (
        ResistanceSet::R4,
        Sourced::new("eurocode_driven_r4", pile(1.3, 1.3, 1.6), &EN_1997_1_A6),
    ),
];
static BORED: Sets = [
    (
        ResistanceSet::R1,
        Sourced::new("eurocode_bored_r1", pile(1.25, 1.15, 1.25), &EN_1997_1_A7),
    ),
    (
        ResistanceSet::R2,
        Sourced::new("eurocode_bored_r2", pile(1.1, 1.1, 1.15), &EN_1997_1_A7),
    ),
    (
        ResistanceSet::R4,
        Sourced::new("eurocode_bored_r4", pile(1.6, 1.5, 1.6), &EN_1997_1_A7),
    ),
];
static AUGER: Sets = [
    (
        ResistanceSet::R1,
        Sourced::new("eurocode_auger_r1", pile(1.1, 1.1, 1.25), &EN_1997_1_A8),
    ),
    (
        ResistanceSet::R2,
        Sourced::new("eurocode_auger_r2", pile(1.1, 1.1, 1.15), &EN_1997_1_A8),
    ),
    (
        ResistanceSet::R4,
        Sourced::new("eurocode_auger_r4", pile(1.45, 1.4, 1.6), &EN_1997_1_A8),
    ),
];

/// Sets of partial factors on the resistance of piles.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ResistanceSet {
    /// Combination 1 of design approach 1.
    R1,
    /// Design approach 2.
    R2,
    /// Combination 2 of design approach 1.
    R4,
}

/// One combination of a design approach: its sets of factors.
#[derive(Debug, Clone, Copy)]
pub struct EurocodeCombination {
    /// Name in checks and factors.
    pub name: &'static str,
    /// Factors on actions.
    pub actions: &'static Sourced<ActionFactors>,
    /// Set of factors on resistance.
    pub resistance: ResistanceSet,
}

static DA1: [EurocodeCombination; 2] = [
    EurocodeCombination {
        name: "da1_combination_1",
        actions: &ACTIONS_A1,
        resistance: ResistanceSet::R1,
    },
    EurocodeCombination {
        name: "da1_combination_2",
        actions: &ACTIONS_A2,
        resistance: ResistanceSet::R4,
    },
];
static DA2: [EurocodeCombination; 1] = [EurocodeCombination {
    name: "da2",
    actions: &ACTIONS_A1,
    resistance: ResistanceSet::R2,
}];

/// The combinations of a design approach; M1 (all 1) in each.
pub fn combinations(approach: EurocodeApproach) -> &'static [EurocodeCombination] {
    match approach {
        EurocodeApproach::Da1 => &DA1,
        EurocodeApproach::Da2 => &DA2,
    }
}

/// Partial factors on the resistance of a kind of pile.
pub fn pile_factors(kind: EurocodePileKind, set: ResistanceSet) -> &'static Sourced<PileFactors> {
    let sets = match kind {
        EurocodePileKind::Driven => &DRIVEN,
        EurocodePileKind::Bored => &BORED,
        EurocodePileKind::ContinuousFlightAuger => &AUGER,
    };
    let [(_, first), rest @ ..] = sets;
    rest.iter()
        .find(|(name, _)| *name == set)
        .map_or(first, |(_, factors)| factors)
}

/// Correlation factors by number of tests: number, on the mean, on the least.
type CorrelationRow = (usize, f64, f64);

/// Static load tests: xi 1 and xi 2.
pub static CORRELATION_TESTS: Sourced<&[CorrelationRow]> = Sourced::new(
    "eurocode_correlation_load_tests",
    &[
        (1, 1.40, 1.40),
        (2, 1.30, 1.20),
        (3, 1.20, 1.05),
        (4, 1.10, 1.00),
        (5, 1.00, 1.00),
    ],
    &EN_1997_1_A9,
);
/// Profiles of ground tests: xi 3 and xi 4.
pub static CORRELATION_PROFILES: Sourced<&[CorrelationRow]> = Sourced::new(
    "eurocode_correlation_ground_tests",
    &[
        (1, 1.40, 1.40),
        (2, 1.35, 1.27),
        (3, 1.33, 1.23),
        (4, 1.31, 1.20),
        (5, 1.29, 1.15),
        (7, 1.27, 1.12),
        (10, 1.25, 1.08),
    ],
    &EN_1997_1_A10,
);

/// Correlation factors on the mean and on the least of `count` resistances; a number
/// between two rows takes the row below it, whose factors are the larger ones.
pub fn correlation(rows: &[CorrelationRow], count: usize) -> (f64, f64) {
    let row = rows.iter().rev().find(|(n, _, _)| *n <= count);
    row.or(rows.first())
        .map_or((1.0, 1.0), |(_, mean, least)| (*mean, *least))
}

/// Model factor of the calculation.
pub static EUROCODE_MODEL_FACTOR: Sourced<f64> =
    Sourced::new("eurocode_model_factor", 1.0, &EN_1997_1_MODEL);

/// Calculated resistance behind its model factor.
///
/// R_cal = R_u / gamma_Rd
///
/// R_cal calculated resistance, N; R_u ultimate resistance by the methods of the request, N;
/// gamma_Rd model factor, at least 1. Source: EN 1997-1, 7.6.2.3(8) note. Positive.
pub fn calculated_resistance(ultimate: Force, model_factor: f64, trace: &mut Trace) -> Force {
    trace.step(
        "R_cal",
        "R_u / gamma_Rd",
        ultimate / model_factor,
        [("R_u", ultimate.into()), ("gamma_Rd", model_factor.into())],
        &EN_1997_1_MODEL,
    )
}

/// Resistances that a characteristic value is taken from, by number, sum and least.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ResistanceSample {
    /// How many.
    pub count: usize,
    /// Their sum.
    pub sum: Force,
    /// The least of them.
    pub least: Force,
}

impl ResistanceSample {
    /// Of a list; none for an empty one.
    pub fn of(list: impl Iterator<Item = Force>) -> Option<Self> {
        list.fold(None, |sample: Option<Self>, r| {
            Some(sample.map_or(Self::one(r), |s| s.with(r)))
        })
    }

    /// Of one resistance.
    pub fn one(resistance: Force) -> Self {
        Self {
            count: 1,
            sum: resistance,
            least: resistance,
        }
    }

    /// With one more.
    pub fn with(self, resistance: Force) -> Self {
        Self {
            count: self.count + 1,
            sum: self.sum + resistance,
            least: self.least.min(resistance),
        }
    }
}

/// Characteristic resistance.
///
/// R_k = min(R_mean / xi_mean, R_least / xi_least)
///
/// R_k characteristic resistance, N; R_mean, R_least mean and least of n calculated or
/// measured resistances, N; xi correlation factors by n, at least 1. Range: n at least 1.
/// Source: EN 1997-1, 7.6.2.2(8) and 7.6.2.3(5); in tension 7.6.3.2 and 7.6.3.3. Positive.
pub fn characteristic_resistance(
    sample: ResistanceSample,
    (xi_mean, xi_least): (f64, f64),
    trace: &mut Trace,
) -> Force {
    let n = sample.count as f64;
    let mean = sample.sum / n;
    trace.step(
        "R_k",
        "min(R_mean / xi_mean, R_least / xi_least)",
        (mean / xi_mean).min(sample.least / xi_least),
        [
            ("n", n.into()),
            ("R_mean", mean.into()),
            ("xi_mean", xi_mean.into()),
            ("R_least", sample.least.into()),
            ("xi_least", xi_least.into()),
        ],
        &EN_1997_1_7_6_2,
    )
}

/// Design resistance.
///
/// R_d = R_k / gamma
///
/// R_d design resistance, N; R_k characteristic resistance, N; gamma partial factor of base
/// or total in compression, of tension in tension, at least 1. Source: EN 1997-1, 7.6.2 and
/// 7.6.3, values of annex A. Positive.
pub fn design_resistance(
    characteristic: Force,
    gamma: f64,
    source: &'static Reference,
    trace: &mut Trace,
) -> Force {
    trace.step(
        "R_d",
        "R_k / gamma",
        characteristic / gamma,
        [("R_k", characteristic.into()), ("gamma", gamma.into())],
        source,
    )
}

/// Design effect of the actions on a pile in one direction.
///
/// E_d = gamma_G G_unf + gamma_Q Q - gamma_G;fav G_fav, at least 0
///
/// E_d design effect, N; G_unf and Q unfavourable permanent and variable actions, N; G_fav
/// favourable permanent action, N (none in compression); gamma partial factors. Range: any.
/// Source: EN 1997-1, 2.4.7.3, values of annex A.3. In the direction of the load, never
/// negative.
pub fn design_effect(
    unfavourable: Force,
    variable: Force,
    favourable: Force,
    gamma: ActionFactors,
    trace: &mut Trace,
) -> Force {
    let effect = gamma.permanent_unfavourable * unfavourable + gamma.variable * variable
        - gamma.permanent_favourable * favourable;
    trace.step(
        "E_d",
        "gamma_G G_unf + gamma_Q Q - gamma_G;fav G_fav, at least 0",
        effect.max(Force::ZERO),
        [
            ("G_unf", unfavourable.into()),
            ("gamma_G", gamma.permanent_unfavourable.into()),
            ("Q", variable.into()),
            ("gamma_Q", gamma.variable.into()),
            ("G_fav", favourable.into()),
            ("gamma_G;fav", gamma.permanent_favourable.into()),
        ],
        &EN_1997_1_2_4_7_3,
    )
}
