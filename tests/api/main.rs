//! Black-box tests of the service over HTTP, one module a concern.

mod batches;
mod capacities;
mod clients;
mod examples;
mod faulty;
mod figures;
mod framework;
mod layouts;
mod load;
mod moving;
mod pages;
mod plans;
mod problems;
mod records;
mod relocations;
mod sheets;
mod staking;
mod tables;
