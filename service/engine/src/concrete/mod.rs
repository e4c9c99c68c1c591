//! Reinforced concrete sections of grade beams: strength in bending and one-way shear, least
//! steel, cover and rigidity by ACI 318-19 or CSA A23.3:19. Knows no plan, no loads and no piles.

pub mod codes;
mod outcome;
mod request;

#[cfg(feature = "compute")]
pub mod aci;
#[cfg(feature = "compute")]
mod aci_section;
#[cfg(feature = "compute")]
pub mod constants;
#[cfg(feature = "compute")]
pub mod csa;
#[cfg(feature = "compute")]
mod csa_section;
#[cfg(feature = "compute")]
mod faults;
#[cfg(feature = "compute")]
pub mod flexure;
#[cfg(feature = "compute")]
mod judge;
#[cfg(feature = "compute")]
mod section;
#[cfg(all(test, feature = "compute"))]
mod tests;

pub use outcome::*;
pub use request::*;

#[cfg(feature = "compute")]
pub(crate) use judge::judge;
#[cfg(feature = "compute")]
pub(crate) use section::{references, strength};
