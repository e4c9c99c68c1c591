//! Tests of the installation record.

mod readings;
