//! Client.
