//! Drawings and tables of Bearwell's answers: from a request and its answer to the bytes of
//! a sheet.
//!
//! Pure: no files, no clock, no randomness, the same bytes for the same answer. Nothing is
//! calculated here; every number comes out of the answer. Lengths on paper are millimetres.
#![warn(missing_docs)]

mod cab;
mod chart;
mod checks;
mod column;
pub mod csv;
mod depths;
mod figure;
mod foot;
mod forecast;
mod frost;
mod grid;
mod hatch;
mod helix;
mod job;
mod key;
mod layout;
mod load_test;
mod marks;
mod notes;
mod page;
mod panel;
mod pile;
mod place;
mod plan;
mod record;
mod relocation;
mod ruler;
mod spread;
mod staking;
mod strip;
mod svg;
mod table;
mod words;
mod zones;

pub use cab::{cab_card_csv, cab_card_svg};
pub use forecast::forecast_csv;
pub use frost::frost_svg;
pub use helix::helix_svg;
pub use job::{job_csv, job_svg};
pub use layout::{layout_numbers_svg, layout_svg};
pub use load_test::{load_test_csv, load_test_svg};
pub use record::{record_csv, record_svg};
pub use relocation::{decision_svg, ways_out_csv};
pub use staking::{DXF, piles_csv, plan_dxf, site_dxf, staking_csv, tape_csv};
