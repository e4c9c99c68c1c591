//! Shared parts of the black-box tests.
