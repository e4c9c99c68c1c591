//! Labels and tags: text the caller sends and the service only echoes. They are
//! untrusted; whoever draws or tabulates them must escape them.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use validator::{Validate, ValidationError, ValidationErrors};

/// Most characters in a label, tag name or tag value.
pub const TEXT_MAX: usize = 64;
/// Most tags on one thing.
pub const TAGS_MAX: usize = 8;

/// A name the caller gives to a thing, 1 to 64 characters; echoed, never interpreted.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[cfg_attr(
    feature = "openapi",
    schema(
        min_length = 1,
        max_length = 64,
        pattern = r"^[^\u0000-\u001f\u007f-\u009f]*$"
    )
)]
#[serde(transparent)]
pub struct Label(pub String);

impl Label {
    /// The text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl std::fmt::Display for Label {
    fn fmt(&self, f: &mut std::fmt::Formatter) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

/// Item or cost codes, at most 8 pairs; echoed, never interpreted.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
#[serde(transparent)]
pub struct Tags(pub BTreeMap<String, String>);

fn text_error() -> ValidationError {
    let mut e = ValidationError::new("text_length");
    e.message = Some(format!("1 to {TEXT_MAX} characters without control characters").into());
    e
}

fn well_formed(text: &str) -> bool {
    let n = text.chars().count();
    (1..=TEXT_MAX).contains(&n) && !text.chars().any(char::is_control)
}

impl Validate for Label {
    fn validate(&self) -> Result<(), ValidationErrors> {
        one(well_formed(&self.0).then_some(()).ok_or_else(text_error))
    }
}

impl Validate for Tags {
    fn validate(&self) -> Result<(), ValidationErrors> {
        let ok = self.0.len() <= TAGS_MAX
            && self
                .0
                .iter()
                .all(|(k, v)| well_formed(k) && v.chars().count() <= TEXT_MAX);
        one(ok.then_some(()).ok_or_else(|| {
            let mut e = text_error();
            e.message =
                Some(format!("at most {TAGS_MAX} pairs of 1 to {TEXT_MAX} characters").into());
            e
        }))
    }
}

/// Most characters in a reference.
const REFERENCE_MAX: usize = 200;

/// Whether a text can stand as the reference of a value the caller sends.
pub(crate) fn reference_text(text: &str) -> Result<(), ValidationError> {
    let length = text.trim().chars().count();
    if (1..=REFERENCE_MAX).contains(&length) && !text.chars().any(char::is_control) {
        return Ok(());
    }
    let mut e = ValidationError::new("text_length");
    e.message = Some(format!("1 to {REFERENCE_MAX} characters without control characters").into());
    Err(e)
}

/// A fault of the value itself, not of a member of it.
fn one(result: Result<(), ValidationError>) -> Result<(), ValidationErrors> {
    result.map_err(|e| {
        let mut all = ValidationErrors::new();
        all.add(SELF, e);
        all
    })
}

/// Field name under which a fault of the value itself is filed.
pub const SELF: &str = "";
