//! Tests of `helix-capacity`: published cases, everyday figures, properties, example
//! requests. Each expected number carries its origin.
