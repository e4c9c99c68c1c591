//! Rates and tables of loss, each beside its source. No equations.

use super::request::CorrosionGroundKind;
use crate::quantity::{Coat, DurationUnit, LengthUnit, Lifetime, LossRate, LossRateUnit};
use crate::source::{
    AC358_CORROSION, EN_1993_5_NA, EN_1993_5_NOTES, FHWA_CORROSION, FLAT_LOSS, Sourced,
};

/// Zinc lost in a year in the first years, each face.
pub static ZINC_FIRST: Sourced<LossRate> = Sourced::new(
    "fhwa_zinc_first_rate",
    LossRate::new(15.0, LossRateUnit::UmPerYear),
    &FHWA_CORROSION,
);
/// How long that lasts.
pub static ZINC_FIRST_YEARS: Sourced<Lifetime> = Sourced::new(
    "fhwa_zinc_first_years",
    Lifetime::new(2.0, DurationUnit::Year),
    &FHWA_CORROSION,
);
/// Zinc lost in a year after that, each face.
pub static ZINC_LATER: Sourced<LossRate> = Sourced::new(
    "fhwa_zinc_later_rate",
    LossRate::new(4.0, LossRateUnit::UmPerYear),
    &FHWA_CORROSION,
);
/// Steel lost in a year, each face.
pub static STEEL: Sourced<LossRate> = Sourced::new(
    "fhwa_steel_rate",
    LossRate::new(12.0, LossRateUnit::UmPerYear),
    &FHWA_CORROSION,
);

/// Lives of the table, years.
pub const TABLE_YEARS: [f64; 6] = [5.0, 25.0, 50.0, 75.0, 100.0, 125.0];
/// Loss for each face in undisturbed natural soil, mm.
pub static UNDISTURBED: Sourced<[f64; 6]> = Sourced::new(
    "eurocode_loss_undisturbed_natural",
    [0.0, 0.30, 0.60, 0.90, 1.20, 1.50],
    &EN_1993_5_NA,
);
/// The same in polluted natural soil and industrial ground.
pub static POLLUTED: Sourced<[f64; 6]> = Sourced::new(
    "eurocode_loss_polluted_industrial",
    [0.15, 0.75, 1.50, 2.25, 3.00, 3.75],
    &EN_1993_5_NA,
);
/// The same in aggressive natural soil.
pub static AGGRESSIVE: Sourced<[f64; 6]> = Sourced::new(
    "eurocode_loss_aggressive_natural",
    [0.20, 1.00, 1.75, 2.50, 3.25, 4.00],
    &EN_1993_5_NA,
);
/// The same in fill that is neither compacted nor aggressive.
pub static FILL: Sourced<[f64; 6]> = Sourced::new(
    "eurocode_loss_fill",
    [0.18, 0.70, 1.20, 1.70, 2.20, 2.70],
    &EN_1993_5_NA,
);
/// The same in aggressive fill that is not compacted.
pub static AGGRESSIVE_FILL: Sourced<[f64; 6]> = Sourced::new(
    "eurocode_loss_aggressive_fill",
    [0.50, 2.00, 3.25, 4.50, 5.75, 7.00],
    &EN_1993_5_NA,
);
/// Loss in compacted over loss in other fill.
pub static COMPACTED: Sourced<f64> =
    Sourced::new("eurocode_compacted_fill_factor", 0.5, &EN_1993_5_NOTES);

/// Row of the table for a kind of ground.
pub fn row_of(kind: CorrosionGroundKind) -> &'static Sourced<[f64; 6]> {
    match kind {
        CorrosionGroundKind::UndisturbedNatural => &UNDISTURBED,
        CorrosionGroundKind::PollutedIndustrial => &POLLUTED,
        CorrosionGroundKind::AggressiveNatural => &AGGRESSIVE,
        CorrosionGroundKind::Fill => &FILL,
        CorrosionGroundKind::AggressiveFill => &AGGRESSIVE_FILL,
    }
}

/// Steel lost in a year, both faces together.
pub static FLAT: Sourced<LossRate> = Sourced::new(
    "flat_loss_rate",
    LossRate::new(0.003, LossRateUnit::InPerYear),
    &FLAT_LOSS,
);

/// An equation of loss a (t - t_0)^n.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PowerLaw {
    /// Loss in the first year.
    pub first: Coat,
    /// Exponent.
    pub exponent: f64,
    /// Time before the loss begins, years.
    pub delay: f64,
}

/// Of zinc-coated steel.
pub static LAW_ZINC: Sourced<PowerLaw> = Sourced::new(
    "acceptance_loss_zinc_coated",
    PowerLaw {
        first: Coat::new(25.0, LengthUnit::Um),
        exponent: 0.65,
        delay: 0.0,
    },
    &AC358_CORROSION,
);
/// Of bare steel.
pub static LAW_BARE: Sourced<PowerLaw> = Sourced::new(
    "acceptance_loss_bare",
    PowerLaw {
        first: Coat::new(40.0, LengthUnit::Um),
        exponent: 0.80,
        delay: 0.0,
    },
    &AC358_CORROSION,
);
/// Of powder-coated steel.
pub static LAW_POWDER: Sourced<PowerLaw> = Sourced::new(
    "acceptance_loss_powder_coated",
    PowerLaw {
        first: Coat::new(40.0, LengthUnit::Um),
        exponent: 0.80,
        delay: 16.0,
    },
    &AC358_CORROSION,
);
