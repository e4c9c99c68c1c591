//! Every code the service can print, beside its text. Codes are lower snake_case,
//! unique over all kinds, and are never reused for something else. A calculation keeps
//! its own codes in its folder (`codes.rs`) and is listed here.

mod common;

pub use common::{cautions, checks, refusals, warnings};

/// Name of a check.
#[derive(Debug, PartialEq, Eq)]
pub struct CheckDef {
    /// Stable code.
    pub id: &'static str,
    /// What is judged.
    pub text: &'static str,
}

/// Name of a warning.
#[derive(Debug, PartialEq, Eq)]
pub struct WarningDef {
    /// Stable code.
    pub id: &'static str,
    /// What it tells.
    pub text: &'static str,
}

/// A fixed caution.
#[derive(Debug, PartialEq, Eq)]
pub struct CautionDef {
    /// Stable code.
    pub id: &'static str,
    /// The text to show.
    pub text: &'static str,
}

/// Name of a fault in a request.
#[derive(Debug, PartialEq, Eq)]
pub struct RefusalDef {
    /// Stable code.
    pub id: &'static str,
    /// What it means and what to do.
    pub text: &'static str,
}

/// A method with its version.
#[derive(Debug, PartialEq)]
pub struct MethodDef {
    /// Stable name.
    pub id: &'static str,
    /// Raised whenever a number can move.
    pub version: u32,
    /// What it does and where it applies.
    pub text: &'static str,
    /// Where it comes from.
    pub references: &'static [&'static crate::source::Reference],
}

/// Makes codes of one kind and their list.
macro_rules! codes {
    ($kind:ident: $($name:ident = $id:literal, $text:literal;)*) => {
        $(
        #[doc = $text]
        pub static $name: $crate::catalogue::$kind = $crate::catalogue::$kind { id: $id, text: $text };
        )*
        /// All of this kind here.
        pub static ALL: &[&$crate::catalogue::$kind] = &[$(&$name),*];
    };
}
pub(crate) use codes;

/// Makes methods and their list.
macro_rules! methods {
    ($($name:ident = $id:literal, version $version:literal, [$($reference:ident),* $(,)?], $text:literal;)*) => {
        $(
        #[doc = $text]
        pub static $name: $crate::catalogue::MethodDef = $crate::catalogue::MethodDef {
            id: $id,
            version: $version,
            text: $text,
            references: &[$(&$crate::source::$reference),*],
        };
        )*
        /// All methods here.
        pub static ALL: &[&$crate::catalogue::MethodDef] = &[$(&$name),*];
    };
}
pub(crate) use methods;

/// Every check.
pub fn all_checks() -> Vec<&'static CheckDef> {
    [
        checks::ALL,
        crate::helix::codes::checks::ALL,
        crate::torque::codes::checks::ALL,
        crate::frost::codes::checks::ALL,
        crate::frost_depth::codes::checks::ALL,
        crate::layout::codes::checks::ALL,
        crate::concrete::codes::checks::ALL,
        crate::footing::codes::checks::ALL,
        crate::load_test::codes::checks::ALL,
        crate::record::codes::checks::ALL,
        crate::job::codes::checks::ALL,
        crate::relocation::codes::checks::ALL,
        crate::forecast::codes::checks::ALL,
        crate::drag_force::codes::checks::ALL,
        crate::corrosion::codes::checks::ALL,
    ]
    .concat()
}

/// Every warning.
pub fn all_warnings() -> Vec<&'static WarningDef> {
    [
        warnings::ALL,
        crate::basis::codes::warnings::ALL,
        crate::soil::codes::warnings::ALL,
        crate::helix::codes::warnings::ALL,
        crate::torque::codes::warnings::ALL,
        crate::frost::codes::warnings::ALL,
        crate::frost_depth::codes::warnings::ALL,
        crate::ground_heave::codes::warnings::ALL,
        crate::layout::codes::warnings::ALL,
        crate::footing::codes::warnings::ALL,
        crate::load_test::codes::warnings::ALL,
        crate::record::codes::warnings::ALL,
        crate::job::codes::warnings::ALL,
        crate::relocation::codes::warnings::ALL,
        crate::forecast::codes::warnings::ALL,
        crate::drag_force::codes::warnings::ALL,
        crate::corrosion::codes::warnings::ALL,
    ]
    .concat()
}

/// Every caution.
pub fn all_cautions() -> Vec<&'static CautionDef> {
    [
        cautions::ALL,
        crate::footing::codes::cautions::ALL,
        crate::record::codes::cautions::ALL,
        crate::drag_force::codes::cautions::ALL,
        crate::corrosion::codes::cautions::ALL,
    ]
    .concat()
}

/// Every fault a request can have.
pub fn all_refusals() -> Vec<&'static RefusalDef> {
    [
        refusals::ALL,
        crate::basis::codes::refusals::ALL,
        crate::soil::codes::refusals::ALL,
        crate::helix::codes::refusals::ALL,
        crate::torque::codes::refusals::ALL,
        crate::frost::codes::refusals::ALL,
        crate::frost_depth::codes::refusals::ALL,
        crate::ground_heave::codes::refusals::ALL,
        crate::layout::codes::refusals::ALL,
        crate::concrete::codes::refusals::ALL,
        crate::footing::codes::refusals::ALL,
        crate::load_test::codes::refusals::ALL,
        crate::record::codes::refusals::ALL,
        crate::job::codes::refusals::ALL,
        crate::relocation::codes::refusals::ALL,
        crate::forecast::codes::refusals::ALL,
        crate::drag_force::codes::refusals::ALL,
        crate::corrosion::codes::refusals::ALL,
    ]
    .concat()
}

/// Every method.
pub fn all_methods() -> Vec<&'static MethodDef> {
    [
        crate::soil::codes::methods::ALL,
        crate::helix::codes::methods::ALL,
        crate::torque::codes::methods::ALL,
        crate::frost::codes::methods::ALL,
        crate::frost_depth::codes::methods::ALL,
        crate::ground_heave::codes::methods::ALL,
        crate::layout::codes::methods::ALL,
        crate::concrete::codes::methods::ALL,
        crate::footing::codes::methods::ALL,
        crate::load_test::codes::methods::ALL,
        crate::record::codes::methods::ALL,
        crate::job::codes::methods::ALL,
        crate::relocation::codes::methods::ALL,
        crate::forecast::codes::methods::ALL,
        crate::drag_force::codes::methods::ALL,
        crate::corrosion::codes::methods::ALL,
    ]
    .concat()
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    #[test]
    fn codes_are_snake_case_and_unique_over_all_kinds() {
        let mut all: Vec<(&str, &str)> = Vec::new();
        all.extend(super::all_checks().iter().map(|d| (d.id, "check")));
        all.extend(super::all_warnings().iter().map(|d| (d.id, "warning")));
        all.extend(super::all_cautions().iter().map(|d| (d.id, "caution")));
        all.extend(super::all_refusals().iter().map(|d| (d.id, "refusal")));
        all.extend(super::all_methods().iter().map(|d| (d.id, "method")));
        let mut seen = BTreeMap::new();
        for (id, kind) in all {
            assert!(
                id.bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'_'),
                "{id}"
            );
            assert_eq!(seen.insert(id, kind), None, "`{id}` stands twice");
        }
        let mut references = BTreeMap::new();
        for r in crate::source::all() {
            assert_eq!(references.insert(r.id, ()), None, "`{}` stands twice", r.id);
        }
    }
}
