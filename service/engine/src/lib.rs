//! Bearwell's calculations: pure functions from a typed request to a typed outcome.
//!
//! Knows no HTTP, no files, no clock and no randomness. Everything inside is base SI;
//! units exist only where a quantity is read or presented (`quantity`). Conventions:
//! depth down from final grade, loads positive downwards, compression and tension
//! never negative on the wire, a reaction positive in compression.
#![warn(missing_docs)]

pub mod answer_table;
pub mod basis;
pub mod catalogue;
mod choice;
pub mod concrete;
pub mod contract;
pub mod corrosion;
pub mod date;
pub mod drag_force;
#[cfg(all(test, feature = "compute"))]
mod examples;
pub mod footing;
pub mod forecast;
pub mod frost;
pub mod frost_depth;
pub mod ground_heave;
pub mod helix;
pub mod job;
pub mod layout;
pub mod limits;
pub mod load_test;
pub mod math;
pub mod quantity;
#[cfg(all(test, feature = "compute"))]
mod random;
pub mod record;
pub mod relocation;
pub mod shaft;
pub mod soil;
pub mod source;
pub mod table;
pub mod tape;
pub mod text;
pub mod torque;
pub mod trace;

#[cfg(feature = "compute")]
pub mod beam;
#[cfg(feature = "compute")]
pub mod bearing;
