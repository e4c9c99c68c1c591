//! `torque-capacity`: installation torque and axial capacity, both ways; torque of a
//! hydraulic drive head; torsion of the shaft. Bearing by soil strength is in `helix`.

mod card;
pub mod codes;
mod compared;
mod drive_outcome;
mod equipment;
mod options;
mod outcome;
mod request;

#[cfg(feature = "compute")]
mod alternatives;
#[cfg(feature = "compute")]
mod bands;
#[cfg(feature = "compute")]
mod cab_card;
#[cfg(feature = "compute")]
pub mod conditions;
#[cfg(feature = "compute")]
pub mod correlation;
#[cfg(feature = "compute")]
mod evaluate;
#[cfg(feature = "compute")]
pub mod factor;
#[cfg(feature = "compute")]
mod factor_choice;
#[cfg(feature = "compute")]
pub mod hydraulics;
#[cfg(feature = "compute")]
mod judge;
#[cfg(feature = "compute")]
pub mod rounding;
#[cfg(feature = "compute")]
pub mod safety;
#[cfg(feature = "compute")]
mod settle;
#[cfg(feature = "compute")]
mod site_factor;
#[cfg(feature = "compute")]
pub mod speed;
#[cfg(feature = "compute")]
pub mod torsion;

#[cfg(all(test, feature = "compute"))]
mod tests;

#[cfg(feature = "compute")]
pub(crate) use factor_choice::factor_of_shaft;

pub use card::*;
pub use compared::*;
pub use drive_outcome::*;
pub use equipment::*;
pub use options::*;
pub use outcome::*;
pub use request::*;

use crate::contract::Noun;

/// The calculation `torque-capacity`.
#[derive(Debug)]
pub struct TorqueCapacity;

impl Noun for TorqueCapacity {
    const NAME: &'static str = "torque-capacity";
    const SUMMARY: &'static str = "Capacity from installation torque, torque for a load, hydraulic pressure, torque limit of the shaft.";
    type Request = Request;
    type Outcome = Outcome;
}

#[cfg(feature = "compute")]
impl crate::contract::Calculation for TorqueCapacity {
    fn lengths(_: &Request, _: &mut Vec<crate::contract::Issue>) {}

    fn evaluate(
        request: &Request,
        work: &mut crate::contract::Work,
    ) -> Result<Outcome, crate::contract::Refusal> {
        evaluate::evaluate(request, work)
    }
}
