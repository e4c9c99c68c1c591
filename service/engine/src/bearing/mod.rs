//! Bearing capacity of soil, shared by every calculation that needs it: the factors of the
//! classical theories. How a helix or a footing puts them together is in its own folder.

pub mod factors;
