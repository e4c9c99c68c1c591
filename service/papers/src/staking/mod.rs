//! Tables and drawings for setting out a pile layout: lists of points, piles and taped
//! distances as CSV, the plan as DXF. Every number comes out of the answer.

mod dxf;
mod layers;
mod lists;
mod marks;
mod plan;
mod tape;
mod text;

pub use dxf::DXF;
pub use lists::{piles_csv, staking_csv};
pub use plan::{plan_dxf, site_dxf};
pub use tape::tape_csv;
