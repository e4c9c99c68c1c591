//! Bearing capacity of soil, shared by every calculation that needs it: the factors of the
//! classical theories, and their shape and depth factors. How a helix or a footing puts them together is in its own folder.

pub mod factors;
pub mod shape_depth;
pub mod terzaghi_width;
