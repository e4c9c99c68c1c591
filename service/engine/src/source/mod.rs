//! Where numbers come from: references with their status, and constants that exist
//! only together with a reference. A `Reference` can be made nowhere but in the
//! files of this folder, so `ALL` is every source the service stands on.

mod axial;
mod codes;
mod concrete;
mod corrosion;
mod drag;
mod footing;
mod forecast;
mod frost;
mod frost_depth;
mod group;
mod heave;
mod load_test;
mod plan_geometry;
mod reliability;
mod soil;
mod structural;
mod torque;

use serde::{Deserialize, Serialize};
use std::borrow::Cow;

pub use axial::*;
pub use codes::*;
pub use concrete::*;
pub use corrosion::*;
pub use drag::*;
pub use footing::*;
pub use forecast::*;
pub use frost::*;
pub use frost_depth::*;
pub use group::*;
pub use heave::*;
pub use load_test::*;
pub use plan_geometry::*;
pub use reliability::*;
pub use soil::*;
pub use structural::*;
pub use torque::*;

/// How far a source has been checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(rename_all = "snake_case")]
pub enum Status {
    /// The published text itself was seen.
    Verified,
    /// Seen quoted or transcribed in another document.
    Secondary,
    /// From memory, not seen: confirm before relying on it.
    Memory,
    /// Common practice or a choice of this service; no source.
    CommonPracticeNoSource,
    /// Follows from statics, geometry or arithmetic; can be checked without a source.
    Derived,
}

/// One document, clause or practice that a number or a rule comes from.
#[derive(Debug, PartialEq)]
pub struct Reference {
    /// Stable name, lower snake_case.
    pub id: &'static str,
    /// Document with its edition or year.
    pub document: &'static str,
    /// Clause, table, equation or page.
    pub locator: &'static str,
    /// How far it has been checked.
    pub status: Status,
    /// What to know before relying on it; may be empty.
    pub note: &'static str,
}

/// A constant that cannot be had without its source.
#[derive(Debug)]
pub struct Sourced<T> {
    /// Name of the constant, lower snake_case.
    pub id: &'static str,
    /// The constant.
    pub value: T,
    /// Its source.
    pub reference: &'static Reference,
}

impl<T> Sourced<T> {
    /// A constant with its source.
    pub const fn new(id: &'static str, value: T, reference: &'static Reference) -> Self {
        Self {
            id,
            value,
            reference,
        }
    }
}

/// A reference as an answer carries it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct SourceNote {
    /// Name of the entry in `GET /v1/references`.
    pub id: Cow<'static, str>,
    /// Document with edition, and clause, table or equation.
    pub cite: Cow<'static, str>,
    /// How far the source has been checked.
    pub status: Status,
}

impl From<&'static Reference> for SourceNote {
    fn from(r: &'static Reference) -> Self {
        Self {
            id: r.id.into(),
            cite: if r.locator.is_empty() {
                r.document.into()
            } else {
                format!("{}, {}", r.document, r.locator).into()
            },
            status: r.status,
        }
    }
}

/// Makes the references of one file and their list.
macro_rules! references {
    ($list:ident: $($(#[doc = $doc:literal])* $name:ident = $id:literal, $document:literal, $locator:literal, $status:ident, $note:literal;)+) => {
        $(
        #[doc = $document]
        $(#[doc = $doc])*
        pub static $name: super::Reference = super::Reference {
            id: $id,
            document: $document,
            locator: $locator,
            status: super::Status::$status,
            note: $note,
        };
        )+
        /// The references of this file.
        pub static $list: &[&super::Reference] = &[$(&$name),+];
    };
}
use references;

/// Every reference, file by file.
pub fn all() -> impl Iterator<Item = &'static Reference> {
    [
        CODES,
        AXIAL,
        GROUP,
        FOOTING,
        SOIL,
        TORQUE,
        LOAD_TEST,
        FORECAST,
        FROST,
        FROST_DEPTH,
        HEAVE,
        DRAG,
        CORROSION,
        STRUCTURAL,
        CONCRETE,
        PLAN_GEOMETRY,
        RELIABILITY,
    ]
    .into_iter()
    .flatten()
    .copied()
}
