//! The parts of a plan of piles: beams with their form lines and openings, piles by type,
//! the ground with what piles keep away from, slabs, and what all of that means.

pub mod beams;
pub mod claims;
pub mod ground;
pub mod key;
pub mod kinds;
pub mod moves;
pub mod openings;
pub mod piles;
pub mod shape;
pub mod slabs;
pub mod tags;
