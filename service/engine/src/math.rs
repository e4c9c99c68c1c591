//! The one door to transcendental functions.
//!
//! `std` takes these from the platform and their last bits differ between
//! machines; `libm` is the same everywhere. `clippy.toml` bans the std ones.
//! Square root and the four operations are exact by IEEE 754 and need no door.

/// Ratio of a circle's circumference to its diameter.
pub const PI: f64 = std::f64::consts::PI;

/// Sine of an angle in radians.
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}

/// Cosine of an angle in radians.
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}

/// Tangent of an angle in radians.
pub fn tan(x: f64) -> f64 {
    libm::tan(x)
}

/// Arc tangent, in radians.
pub fn atan(x: f64) -> f64 {
    libm::atan(x)
}

/// Angle of the vector (x, y), in radians, -pi to pi.
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// e to the power x.
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Natural logarithm.
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// Logarithm to base 10.
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// x to the power y.
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// Length of the vector (x, y).
pub fn hypot(x: f64, y: f64) -> f64 {
    libm::hypot(x, y)
}

/// Error function, 2/sqrt(pi) times the integral of exp(-t^2) from nil to x.
pub fn erf(x: f64) -> f64 {
    libm::erf(x)
}

/// Complementary error function, 2/sqrt(pi) times the integral of exp(-t^2) from x on.
pub fn erfc(x: f64) -> f64 {
    libm::erfc(x)
}
