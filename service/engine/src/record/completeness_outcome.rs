//! What is said of the completeness of a record. Only types: the lists are in
//! `completeness.rs`.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::documents::RecordField;
use crate::source::SourceNote;

/// Fields of the record against a list.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Completeness {
    /// Nothing is missing.
    pub complete: bool,
    /// Fields the list asks for.
    pub required_count: usize,
    /// Those that are there.
    pub present_count: usize,
    /// Those that are missing, in the order of the list.
    pub missing: Vec<MissingField>,
}

/// A field that is missing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MissingField {
    /// The field.
    pub field: RecordField,
    /// Clause that asks for it.
    pub clause: Cow<'static, str>,
    /// Member of the request that carries it.
    pub member: Cow<'static, str>,
    /// What is missing of it, where it is there in part.
    #[serde(skip_serializing_if = "Option::is_none", default)]
    pub detail: Option<String>,
    /// Where the clause comes from.
    pub source: SourceNote,
}
