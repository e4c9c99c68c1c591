//! Terzaghi's N_gamma, which has no closed form: the published table, and how it is read
//! between its rows. The closed factors are in `factors.rs`.

use crate::math;
use crate::quantity::{Angle, AngleUnit};
use crate::source::{Sourced, TERZAGHI_WIDTH_TABLE};
use crate::trace::Trace;

/// Friction angle in degrees and N_gamma, as printed.
pub static TERZAGHI_NGAMMA: Sourced<[[f64; 2]; 11]> = Sourced::new(
    "terzaghi_ngamma",
    [
        [0.0, 0.0],
        [5.0, 0.5],
        [10.0, 1.2],
        [15.0, 2.5],
        [20.0, 5.0],
        [25.0, 9.7],
        [30.0, 19.7],
        [34.0, 35.0],
        [35.0, 42.4],
        [40.0, 100.4],
        [45.0, 297.5],
    ],
    &TERZAGHI_WIDTH_TABLE,
);

/// Two angles closer than this, in degrees, are one (rounding of unit conversions).
const SAME_DEG: f64 = 1e-9;

/// Bearing factor for width by Terzaghi, read from the published table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TabledWidthFactor {
    /// N_gamma.
    pub value: f64,
    /// Read between two rows.
    pub interpolated: bool,
}

/// Bearing factor for width by Terzaghi.
///
/// N_gamma by the table; between two rows straight in ln N_gamma, below 5 deg straight in
/// N_gamma; phi friction angle. The factor grows nearly as an exponential, so a straight line
/// between rows would lie up to 16 % too high. Range: 0 to 45 deg, held outside. Source:
/// Terzaghi 1943, public tables. Sign: none.
pub fn ngamma_terzaghi(phi: Angle, trace: &mut Trace) -> TabledWidthFactor {
    let rows = &TERZAGHI_NGAMMA.value;
    let degrees = phi.get(AngleUnit::Deg);
    let upper = rows.iter().position(|row| degrees <= row[0] + SAME_DEG);
    let upper = upper.unwrap_or(rows.len() - 1);
    let [at, factor] = rows[upper];
    if upper == 0 || degrees >= at - SAME_DEG {
        let value = trace.step(
            "N_gamma",
            "row of the table",
            factor,
            [("phi", phi.into())],
            &TERZAGHI_WIDTH_TABLE,
        );
        return TabledWidthFactor {
            value,
            interpolated: false,
        };
    }
    let [below_at, below] = rows[upper - 1];
    let share = (degrees - below_at) / (at - below_at);
    let (equation, value) = if below > 0.0 {
        let ln = math::ln(below) * (1.0 - share) + math::ln(factor) * share;
        ("between two rows, straight in ln N_gamma", math::exp(ln))
    } else {
        ("between two rows, straight in N_gamma", factor * share)
    };
    let given = [
        ("phi", phi.into()),
        ("N_gamma below", below.into()),
        ("N_gamma above", factor.into()),
    ];
    let value = trace.step("N_gamma", equation, value, given, &TERZAGHI_WIDTH_TABLE);
    TabledWidthFactor {
        value,
        interpolated: true,
    }
}
