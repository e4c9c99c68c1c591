//! Drawings of answers.
