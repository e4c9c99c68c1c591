//! `installation-record`: the log of a pile as it is turned in, judged; whether its record is
//! complete. Torque and capacity of a single reading are in `torque`.

mod log;

#[cfg(feature = "compute")]
pub mod spikes;
#[cfg(feature = "compute")]
pub mod window;

pub use log::*;

#[cfg(all(test, feature = "compute"))]
mod tests;
