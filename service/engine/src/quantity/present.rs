//! Presentation: how a value leaves the engine. Every quantity is converted to the asked unit
//! system, every number rounded to nine digits, and a non-finite result refused; beside it the
//! digest form (plain SI without `tags`). The JSON itself is written in `writer`.
//!
//! A quantity is recognised by the name under which it serialises (its mark).

use serde::Serialize;

use super::macros::UnitDef;
use super::out::Out;
use super::writer::Writer;

/// Which units an answer is printed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize, serde::Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(feature = "openapi", schema(as = UnitSystem))]
#[serde(rename_all = "snake_case")]
pub enum System {
    /// Metres, kilonewtons, kilopascals.
    #[default]
    Si,
    /// Feet, pounds-force, pounds per square foot.
    UsCustomary,
}

/// The form in which a value leaves the engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Presentation {
    /// For a reader: units of the system, nine digits, finite numbers only.
    Printed(System),
    /// For a reader who sends it again: units of the system where a number of them reads back
    /// the same, and as many digits as that takes. What is `Again` takes this form.
    Again(System),
    /// For the digest of a request: base SI, every bit, without `tags`.
    Digest,
}

impl Presentation {
    /// Unit in which what stands under a mark is printed.
    pub(super) fn unit_of(self, mark: &'static str, out: &mut Out) -> Option<&'static UnitDef> {
        match self {
            Presentation::Digest | Presentation::Again(_) => None,
            Presentation::Printed(system) => out.role_of(mark).map(|role| role.unit(system)),
        }
    }
}

/// A value to be written in the given form.
pub struct In<'a, T: ?Sized>(pub Presentation, pub &'a T);

impl<T: Serialize + ?Sized> In<'_, T> {
    /// Writes it as compact JSON at the end of `out`. An error where a result is not a finite
    /// number; what was written up to there stays.
    pub fn write(&self, out: &mut Vec<u8>) -> Result<(), serde_json::Error> {
        let mut to = Out::after(std::mem::take(out));
        let written = self.1.serialize(Writer::new(&mut to, self.0));
        *out = to.bytes;
        written
    }

    /// Its compact JSON.
    pub fn text(&self) -> Result<String, serde_json::Error> {
        let mut out = Vec::new();
        self.write(&mut out)?;
        String::from_utf8(out).map_err(serde::ser::Error::custom)
    }
}
