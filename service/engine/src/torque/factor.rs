//! Torque factors: the published values and the shafts each holds for. The choice among
//! them stands in `factor_choice.rs`, what is done with a factor in `correlation.rs`.

use crate::math;
use crate::quantity::{LengthUnit, PerLengthUnit, Size, TorqueFactor, round9};
use crate::shaft::Shaft;
use crate::source::{
    AC358_KT_DIAMETER, AC358_KT_LISTED, BEARWELL_CHOICE, HOYT_CLEMENCE_1989, LIVNEH_EL_NAGGAR_2008,
    PERKO_2009, Sourced,
};
use crate::trace::Trace;

/// A listed shaft: width across (side or outside diameter) and its factor.
#[derive(Debug, Clone, Copy)]
pub struct Listed {
    /// Solid square, else round.
    pub square: bool,
    /// Side or outside diameter.
    pub width: Size,
    /// Torque factor.
    pub factor: TorqueFactor,
}

const fn listed(square: bool, inches: f64, per_ft: f64) -> Listed {
    Listed {
        square,
        width: Size::new(inches, LengthUnit::In),
        factor: TorqueFactor::new(per_ft, PerLengthUnit::PerFt),
    }
}

/// Widths a published factor holds for, ends included.
#[derive(Debug, Clone, Copy)]
pub struct Widths {
    /// Sides of solid squares.
    pub square: Option<(Size, Size)>,
    /// Outside diameters of round shafts.
    pub round: Option<(Size, Size)>,
    /// In words.
    pub text: &'static str,
}

const fn inches(low: f64, high: f64) -> Option<(Size, Size)> {
    Some((
        Size::new(low, LengthUnit::In),
        Size::new(high, LengthUnit::In),
    ))
}

/// The listed shafts with their factors.
pub static LISTED: Sourced<[Listed; 5]> = Sourced::new(
    "torque_factor_listed",
    [
        listed(true, 1.5, 10.0),
        listed(true, 1.75, 10.0),
        listed(false, 2.875, 9.0),
        listed(false, 3.0, 8.0),
        listed(false, 3.5, 7.0),
    ],
    &AC358_KT_LISTED,
);
/// How far a width may be off a published one: 73.0 mm is 2.875 in, 88.9 mm is 3.5 in, 38 mm
/// square is 1.5 in; the nearest two listed widths are 3.2 mm apart.
pub static WIDTH_TOLERANCE: Sourced<Size> = Sourced::new(
    "shaft_width_tolerance",
    Size::new(0.5, LengthUnit::Mm),
    &BEARWELL_CHOICE,
);
/// Shafts the formula by effective diameter holds for.
pub static DIAMETER_WIDTHS: Sourced<Widths> = Sourced::new(
    "torque_factor_diameter_range",
    Widths {
        square: inches(1.5, 3.0),
        round: inches(2.375, 4.5),
        text: "square 1.5 to 3.0 in (38.1 to 76.2 mm), round 2.375 to 4.5 in (60.3 to 114.3 mm)",
    },
    &AC358_KT_DIAMETER,
);
/// 22.285, of d_eff in inches and a factor per foot.
pub static DIAMETER_COEFFICIENT: Sourced<f64> =
    Sourced::new("torque_factor_coefficient", 22.285, &AC358_KT_DIAMETER);
/// -0.9195.
pub static DIAMETER_EXPONENT: Sourced<f64> =
    Sourced::new("torque_factor_exponent", -0.9195, &AC358_KT_DIAMETER);
/// Compression, slender square shafts.
pub static LIVNEH_COMPRESSION: Sourced<TorqueFactor> = Sourced::new(
    "torque_factor_livneh_compression",
    TorqueFactor::new(33.0, PerLengthUnit::PerM),
    &LIVNEH_EL_NAGGAR_2008,
);
/// Tension, slender square shafts.
pub static LIVNEH_TENSION: Sourced<TorqueFactor> = Sourced::new(
    "torque_factor_livneh_tension",
    TorqueFactor::new(24.0, PerLengthUnit::PerM),
    &LIVNEH_EL_NAGGAR_2008,
);
/// Shafts taken for those of the tests.
pub static LIVNEH_WIDTHS: Sourced<Widths> = Sourced::new(
    "torque_factor_livneh_range",
    Widths {
        square: inches(1.5, 1.75),
        round: None,
        text: "solid square 1.5 to 1.75 in (38.1 to 44.5 mm)",
    },
    &LIVNEH_EL_NAGGAR_2008,
);
/// Factor in tension over that in compression, 24/33 = 0.727.
pub static TENSION_REDUCTION: Sourced<f64> = Sourced::new(
    "torque_factor_tension_reduction",
    24.0 / 33.0,
    &LIVNEH_EL_NAGGAR_2008,
);
/// Square 1.5 to 2.0 in, and round below 89 mm (down to the smallest of the criteria).
pub static HOYT_SMALL: Sourced<TorqueFactor> = Sourced::new(
    "torque_factor_hoyt_small",
    TorqueFactor::new(33.0, PerLengthUnit::PerM),
    &HOYT_CLEMENCE_1989,
);
/// Round 89 mm.
pub static HOYT_89: Sourced<TorqueFactor> = Sourced::new(
    "torque_factor_hoyt_89",
    TorqueFactor::new(23.0, PerLengthUnit::PerM),
    &HOYT_CLEMENCE_1989,
);
/// Round 219 mm.
pub static HOYT_219: Sourced<TorqueFactor> = Sourced::new(
    "torque_factor_hoyt_219",
    TorqueFactor::new(9.8, PerLengthUnit::PerM),
    &HOYT_CLEMENCE_1989,
);
/// Shafts of the small ones; the round end is below 89 mm.
pub static HOYT_SMALL_WIDTHS: Sourced<Widths> = Sourced::new(
    "torque_factor_hoyt_range",
    Widths {
        square: inches(1.5, 2.0),
        round: inches(2.375, 3.5),
        text: "square 1.5 to 2.0 in (38.1 to 50.8 mm), round 2.375 in (60.3 mm) to below 89 mm, 89 mm, 219 mm",
    },
    &HOYT_CLEMENCE_1989,
);
/// Diameters of the round shafts tested, 3.5 and 8.625 in.
pub static HOYT_ROUND: Sourced<(Size, Size)> = Sourced::new(
    "torque_factor_hoyt_round",
    (
        Size::new(3.5, LengthUnit::In),
        Size::new(8.625, LengthUnit::In),
    ),
    &HOYT_CLEMENCE_1989,
);
/// 1433, of d_eff in millimetres and a factor per metre.
pub static PERKO_COEFFICIENT: Sourced<f64> =
    Sourced::new("torque_factor_perko_coefficient", 1433.0, &PERKO_2009);
/// -0.92.
pub static PERKO_EXPONENT: Sourced<f64> =
    Sourced::new("torque_factor_perko_exponent", -0.92, &PERKO_2009);

/// Torque factor of shafts that are not listed.
///
/// K_t = 22.285 d_eff^-0.9195
///
/// K_t torque factor, per ft; d_eff outside diameter or diagonal between opposite corners,
/// in. Valid for square shafts of 1.5 to 3.0 in and round ones of 2.375 to 4.5 in. Source:
/// acceptance criteria AC358, revision of October 2016. Positive.
pub fn factor_by_diameter(d_eff: Size, trace: &mut Trace) -> TorqueFactor {
    let power = math::pow(d_eff.get(LengthUnit::In), DIAMETER_EXPONENT.value);
    trace.step(
        "K_t",
        "22.285 d_eff^-0.9195 (in, 1/ft)",
        TorqueFactor::new(DIAMETER_COEFFICIENT.value * power, PerLengthUnit::PerFt),
        [("d_eff", d_eff.into())],
        &AC358_KT_DIAMETER,
    )
}

/// Torque factor by regression on test results.
///
/// K_t = 1433 d_eff^-0.92
///
/// K_t torque factor, per m; d_eff effective diameter, mm. Used within the range of
/// [`factor_by_diameter`]. Source: Perko 2009, from memory. Positive.
pub fn factor_by_regression(d_eff: Size, trace: &mut Trace) -> TorqueFactor {
    let power = math::pow(d_eff.get(LengthUnit::Mm), PERKO_EXPONENT.value);
    trace.step(
        "K_t",
        "1433 d_eff^-0.92 (mm, 1/m)",
        TorqueFactor::new(PERKO_COEFFICIENT.value * power, PerLengthUnit::PerM),
        [("d_eff", d_eff.into())],
        &PERKO_2009,
    )
}

/// Torque factor in tension where only that in compression is published.
///
/// K_t,red = K_t x 24/33
///
/// K_t torque factor in compression, per m. From tests of slender square shafts; for other
/// shafts an indication. Source: Livneh and El Naggar 2008. Positive.
pub fn reduced_in_tension(factor: TorqueFactor, trace: &mut Trace) -> TorqueFactor {
    trace.step(
        "K_t,red",
        "K_t x 24/33",
        factor * TENSION_REDUCTION.value,
        [("K_t", factor.into())],
        &LIVNEH_EL_NAGGAR_2008,
    )
}

/// The listed shaft of this shape whose width is this one to within the tolerance.
pub fn find_listed(shaft: &Shaft) -> Option<Listed> {
    let square = matches!(shaft, Shaft::Square(_));
    LISTED
        .value
        .into_iter()
        .find(|row| row.square == square && same_width(row.width, shaft.width()))
}

/// Whether two widths differ by no more than the tolerance, last bits aside.
pub(super) fn same_width(a: Size, b: Size) -> bool {
    round9((a.si() - b.si()).abs() / WIDTH_TOLERANCE.value.si()) <= 1.0
}

pub(super) fn within(widths: &Widths, shaft: &Shaft) -> bool {
    let ends = match shaft {
        Shaft::Round(_) => widths.round,
        Shaft::Square(_) => widths.square,
    };
    ends.is_some_and(|(low, high)| {
        let width = shaft.width();
        (width >= low || same_width(width, low)) && (width <= high || same_width(width, high))
    })
}

/// What acceptance criteria AC358 give for the shaft: the listed value, else the formula.
pub(crate) fn by_criteria(shaft: &Shaft) -> Option<TorqueFactor> {
    match find_listed(shaft) {
        Some(row) => Some(row.factor),
        None if within(&DIAMETER_WIDTHS.value, shaft) => Some(factor_by_diameter(
            shaft.effective_diameter(),
            &mut Trace::off(),
        )),
        None => None,
    }
}
