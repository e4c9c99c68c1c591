//! Quantities: numbers that know their dimension and their role, the units they
//! are read in, and the one place where they are presented. No engineering here.

mod again;
mod decimal;
mod macros;
mod out;
mod present;
mod round;
mod shown;
mod table;
#[cfg(test)]
mod tests;
mod writer;
#[cfg(test)]
mod writer_tests;

pub use again::Again;
pub use macros::{Quantity, Role, UnitDef, UnitSet};
pub use present::{In, Presentation, System};
pub use round::round9;
pub use shown::{RATIO, Shown};
pub use table::*;

/// What is said of a unit that a quantity does not take.
fn unknown_unit(got: &str, hint: Option<&str>, known: &[UnitDef]) -> String {
    let list: Vec<_> = known.iter().map(|u| format!("`{}`", u.name)).collect();
    match hint {
        Some(hint) => format!("unknown unit `{got}`: {hint}; one of {}", list.join(", ")),
        None => format!("unknown unit `{got}`: one of {}", list.join(", ")),
    }
}

/// A base-SI value in both unit systems, for error texts: `0.3048 m (1 ft)`. Takes the
/// first role of that unit; where the role is known, use [`Role::in_both_systems`].
pub fn in_both_systems(value: f64, base_unit: &str) -> String {
    match ROLES.iter().find(|r| r.base.name == base_unit) {
        Some(role) => role.in_both_systems(value),
        None => format!("{value} {base_unit}"),
    }
}

impl UnitDef {
    /// A base-SI value in this unit, as it is printed: rounded to nine digits.
    pub fn printed(&self, value: f64) -> f64 {
        round9((value - self.offset) / self.factor)
    }
}

impl Role {
    /// The unit in which this role is printed.
    pub const fn unit(&self, system: System) -> &'static UnitDef {
        match system {
            System::Si => self.si,
            System::UsCustomary => self.us,
        }
    }

    /// What is said of a unit this role does not take.
    pub fn unknown_unit(&self, got: &str) -> String {
        match UNIT_SETS.iter().find(|set| set.units == self.units) {
            Some(set) => set.unknown(got),
            None => unknown_unit(got, None, self.units),
        }
    }

    /// A base-SI value as this role is shown in both unit systems: `25.4 mm (1 in)`.
    pub fn in_both_systems(&self, value: f64) -> String {
        let si = round9((value - self.si.offset) / self.si.factor);
        let us = round9((value - self.us.offset) / self.us.factor);
        if self.si.name == self.us.name {
            format!("{si} {}", self.si.name)
        } else {
            format!("{si} {} ({} {})", self.si.name, sig4(us), self.us.name)
        }
    }
}

fn sig4(v: f64) -> f64 {
    format!("{v:.3e}").parse().unwrap_or(v)
}

#[cfg(feature = "openapi")]
fn quantity_schema(
    role: &'static Role,
    unit_set: &str,
) -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
    use utoipa::openapi::schema::{AdditionalProperties, ObjectBuilder, Type};
    use utoipa::openapi::{Ref, RefOr};
    ObjectBuilder::new()
        .description(Some(format!(
            "{} Printed in `{}` (`si`) or `{}` (`us_customary`).",
            role.about.trim(),
            role.si.name,
            role.us.name
        )))
        .property(
            "value",
            ObjectBuilder::new()
                .schema_type(Type::Number)
                .description(Some("The number, in `unit`.")),
        )
        .property("unit", RefOr::Ref(Ref::from_schema_name(unit_set)))
        .required("value")
        .required("unit")
        .additional_properties(Some(AdditionalProperties::FreeForm(false)))
        .into()
}
