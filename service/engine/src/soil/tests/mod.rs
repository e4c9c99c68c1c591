//! Tests of the soil profile: published cases, stresses, properties. Each expected number
//! carries its origin.
