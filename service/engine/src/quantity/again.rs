//! Parts of an answer that are requests themselves: written so that they read back as the same
//! numbers, to the last bit.

use std::ops::Deref;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::macros::UnitDef;
use super::round9;

/// The name under which serde serialises it; tells the presenter what it is.
pub(super) const MARK: &str = "$Again";

/// A request, or a part of one, that is to be sent again. Printed in the units of the answer with
/// as many digits as it takes to read back the same, nine as a rule.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Again<T>(pub T);

impl<T> Deref for Again<T> {
    type Target = T;
    fn deref(&self) -> &T {
        &self.0
    }
}

impl<T: Serialize> Serialize for Again<T> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.serialize_newtype_struct(MARK, &self.0)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Again<T> {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        T::deserialize(d).map(Again)
    }
}

/// A base-SI value as it is written to read back the same: the number and its unit. The base unit
/// where no number of the other one does.
pub(super) fn written(
    value: f64,
    unit: &'static UnitDef,
    base: &'static UnitDef,
) -> (f64, &'static UnitDef) {
    // what a reader of that number holds
    let read = |shown: f64| shown * unit.factor + unit.offset;
    let exact = (value - unit.offset) / unit.factor;
    let near = [round9(exact), exact, exact.next_up(), exact.next_down()];
    let found = near.into_iter().find(|shown| read(*shown) == value);
    found.map_or((value, base), |shown| (shown, unit))
}

#[cfg(test)]
mod tests {
    use super::super::{Force, In, Length, Presentation, System};
    use super::*;
    use proptest::prelude::*;

    #[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
    struct Thing {
        length: Length,
        force: Option<Force>,
        ratio: f64,
    }

    fn there_and_back(thing: &Thing, system: System) -> String {
        let again = Again(thing.clone());
        let form = Presentation::Printed(system);
        let text = In(form, &again).text().expect("it prints");
        let back: Thing = serde_json::from_str(&text).expect("it reads");
        assert_eq!(back, *thing, "{text}");
        text
    }

    proptest! {
        #[test]
        fn what_is_written_reads_back_bit_for_bit(
            length in -1e4f64..1e4, force in 0f64..1e7, ratio in 0f64..10.0,
        ) {
            let thing = Thing {
                length: Length::from_si(length),
                force: Some(Force::from_si(force)),
                ratio,
            };
            there_and_back(&thing, System::Si);
            there_and_back(&thing, System::UsCustomary);
        }
    }

    #[test]
    fn clean_numbers_stay_clean() {
        let thing = Thing {
            length: serde_json::from_str(r#"{"value":15.15,"unit":"ft"}"#).expect("a length"),
            force: None,
            ratio: 0.75,
        };
        assert_eq!(
            there_and_back(&thing, System::UsCustomary),
            r#"{"length":{"value":15.15,"unit":"ft"},"force":null,"ratio":0.75}"#
        );
        // outside of it nine digits are printed as ever
        let third = Thing {
            ratio: 1.0 / 3.0,
            ..thing
        };
        let form = Presentation::Printed(System::UsCustomary);
        let text = In(form, &third).text().expect("it prints");
        assert!(text.ends_with(r#""ratio":0.333333333}"#), "{text}");
    }
}
