//! Server.
