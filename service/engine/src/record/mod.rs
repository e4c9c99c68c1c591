//! `installation-record`: the log of a pile as it is turned in, judged; whether its record is
//! complete. Torque and capacity of a single reading are in `torque`.

pub mod codes;
mod completeness_outcome;
mod documents;
mod ground;
mod history;
mod limits;
mod log;
mod outcome;
mod proofs;
mod request;
mod steps;

#[cfg(feature = "compute")]
pub mod spikes;
#[cfg(feature = "compute")]
pub mod window;

pub use completeness_outcome::*;
pub use documents::*;
pub use ground::*;
pub use history::*;
pub use limits::*;
pub use log::*;
pub use outcome::*;
pub use proofs::*;
pub use request::*;
pub use steps::*;

#[cfg(all(test, feature = "compute"))]
mod tests;
