//! To be written by its owner.
pub mod codes;
