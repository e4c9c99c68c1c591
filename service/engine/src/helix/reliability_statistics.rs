//! Published statistics of measured against calculated resistance, with their sources.
//! Where one may be used is decided in `reliability_estimate.rs`.

use super::reliability::{
    PublishedRatio, PublishedStatistic, PublishedStatisticName, StatisticDirection,
};
use crate::source::{
    FHWA_DRIVEN_PILES, GIAMPA_2016, HOYT_CLEMENCE_1989_STATISTICS, JMSE_2020_CLAY,
    RELIABILITY_DEFAULTS, Reference, Sourced, TANG_PHOON_2020_RATIOS,
};
use crate::trace::Trace;

/// Mean of a ratio as printed, which way round, and its coefficient of variation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Statistic {
    pub mean: f64,
    pub given_as: StatisticDirection,
    pub cov: f64,
}

const fn measured(mean: f64, cov: f64) -> Statistic {
    Statistic {
        mean,
        given_as: StatisticDirection::MeasuredOverCalculated,
        cov,
    }
}

const fn calculated(mean: f64, cov: f64) -> Statistic {
    Statistic {
        mean,
        given_as: StatisticDirection::CalculatedOverMeasured,
        cov,
    }
}

/// Where nothing better is sent.
pub(crate) static DEFAULT: Sourced<Statistic> =
    Sourced::new("default", measured(1.0, 0.40), &RELIABILITY_DEFAULTS);
/// Mean load over unfactored load.
pub(crate) static LOAD_BIAS: Sourced<f64> =
    Sourced::new("load_bias_factor", 1.0, &RELIABILITY_DEFAULTS);
/// Coefficient of variation of the load.
pub(crate) static LOAD_COV: Sourced<f64> =
    Sourced::new("load_cov_ratio", 0.15, &RELIABILITY_DEFAULTS);

static GIAMPA: Sourced<Statistic> =
    Sourced::new("giampa_2016", calculated(1.15, 0.14), &GIAMPA_2016);
static HOYT_BEARING: Sourced<Statistic> = Sourced::new(
    "hoyt_clemence_1989_individual_bearing",
    measured(1.56, 0.80),
    &HOYT_CLEMENCE_1989_STATISTICS,
);
static HOYT_CYLINDER: Sourced<Statistic> = Sourced::new(
    "hoyt_clemence_1989_cylindrical_shear",
    measured(1.50, 0.80),
    &HOYT_CLEMENCE_1989_STATISTICS,
);
static HOYT_TORQUE: Sourced<Statistic> = Sourced::new(
    "hoyt_clemence_1989_torque",
    measured(1.49, 0.40),
    &HOYT_CLEMENCE_1989_STATISTICS,
);
static JMSE: Sourced<Statistic> = Sourced::new(
    "jmse_2020_finite_element",
    measured(1.02, 0.10),
    &JMSE_2020_CLAY,
);

/// The published statistic of a name.
pub(crate) fn published(name: PublishedStatisticName) -> &'static Sourced<Statistic> {
    match name {
        PublishedStatisticName::Giampa2016 => &GIAMPA,
        PublishedStatisticName::HoytClemence1989IndividualBearing => &HOYT_BEARING,
        PublishedStatisticName::HoytClemence1989CylindricalShear => &HOYT_CYLINDER,
    }
}

/// Bias of a statistic.
///
/// b_R = m, or 1 / m where m is calculated over measured
///
/// b_R bias, measured over calculated; m mean ratio as printed, above 0. The mean of the
/// inverse of a lognormal ratio is larger by 1 + V^2, which is left out on the safe side; its
/// coefficient of variation V is the same. Source: arithmetic. Positive.
pub(crate) fn bias(statistic: Statistic, source: &'static Reference, trace: &mut Trace) -> f64 {
    let (equation, value) = match statistic.given_as {
        StatisticDirection::MeasuredOverCalculated => ("m", statistic.mean),
        StatisticDirection::CalculatedOverMeasured => ("1 / m", 1.0 / statistic.mean),
    };
    trace.step(
        "b_R",
        equation,
        value,
        [("m", statistic.mean.into())],
        source,
    )
}

fn ratio_of(
    statistic: &Sourced<Statistic>,
    about: &'static str,
    selectable: bool,
) -> PublishedStatistic {
    let Statistic {
        mean,
        given_as,
        cov,
    } = statistic.value;
    PublishedStatistic {
        name: statistic.id.into(),
        about: about.into(),
        given_as: match given_as {
            StatisticDirection::MeasuredOverCalculated => PublishedRatio::MeasuredOverCalculated,
            StatisticDirection::CalculatedOverMeasured => PublishedRatio::CalculatedOverMeasured,
        },
        printed_mean_ratio: Some(mean),
        cov_ratio: Some(cov),
        lowest_ratio: None,
        highest_ratio: None,
        bias_factor: Some(bias(
            statistic.value,
            statistic.reference,
            &mut Trace::off(),
        )),
        selectable,
        source: statistic.reference.into(),
    }
}

fn range_of(
    name: &'static str,
    about: &'static str,
    given_as: PublishedRatio,
    (lowest, highest): (f64, f64),
    source: &'static Reference,
) -> PublishedStatistic {
    PublishedStatistic {
        name: name.into(),
        about: about.into(),
        given_as,
        printed_mean_ratio: None,
        cov_ratio: None,
        lowest_ratio: Some(lowest),
        highest_ratio: Some(highest),
        bias_factor: None,
        selectable: false,
        source: source.into(),
    }
}

/// Every published statistic known here.
pub(crate) fn all() -> Vec<PublishedStatistic> {
    use PublishedRatio::{CalculatedOverMeasured, UpliftOverCompression};
    let driven_mean = 1.48;
    vec![
        ratio_of(
            &GIAMPA,
            "22 shallow helical anchors pulled from sand of 40 to 50 degrees; a limit equilibrium with dilation",
            true,
        ),
        ratio_of(
            &HOYT_BEARING,
            "Helical anchors in tension, 91 tests at 24 sites; individual bearing",
            true,
        ),
        ratio_of(
            &HOYT_CYLINDER,
            "Helical anchors in tension, 91 tests at 24 sites; cylindrical shear",
            true,
        ),
        ratio_of(
            &HOYT_TORQUE,
            "Helical anchors in tension, 91 tests at 24 sites; torque correlation, which is not calculated here",
            false,
        ),
        ratio_of(
            &JMSE,
            "Helical anchors in clay; a large-deformation finite-element analysis, not an equation of this service",
            false,
        ),
        range_of(
            "tang_phoon_2020_stiff_clay",
            "Large-displacement helical piles in very stiff clay",
            UpliftOverCompression,
            (0.8, 1.0),
            &TANG_PHOON_2020_RATIOS,
        ),
        range_of(
            "tang_phoon_2020_dense_sand",
            "Large-displacement helical piles in dense sand",
            UpliftOverCompression,
            (0.6, 0.8),
            &TANG_PHOON_2020_RATIOS,
        ),
        PublishedStatistic {
            printed_mean_ratio: Some(driven_mean),
            bias_factor: Some(1.0 / driven_mean),
            ..range_of(
                "fhwa_driven_piles",
                "213 driven piles, not helical ones; how far calculation can be off",
                CalculatedOverMeasured,
                (0.12, 8.88),
                &FHWA_DRIVEN_PILES,
            )
        },
    ]
}
