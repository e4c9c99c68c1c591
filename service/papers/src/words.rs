//! Numbers and phrases of a sheet in the reader's units. Display only: what decides is in
//! the answer.

use bearwell_engine::contract::Verdict;
use bearwell_engine::layout::{
    AllowableStressCombinations, AllowableStressEdition, CapacityLevel, LayoutBasis,
    LimitStatesCombinations, LimitStatesEdition,
};
use bearwell_engine::quantity::{Force, Length, System, round9};

/// Name of the unit of force.
pub fn force_unit(system: System) -> &'static str {
    match system {
        System::Si => Force::ROLE.si.name,
        System::UsCustomary => Force::ROLE.us.name,
    }
}

/// Name of the unit of length on the ground.
pub fn length_unit(system: System) -> &'static str {
    match system {
        System::Si => Length::ROLE.si.name,
        System::UsCustomary => Length::ROLE.us.name,
    }
}

/// Metres in one unit of length on the ground.
pub fn length_factor(system: System) -> f64 {
    match system {
        System::Si => Length::ROLE.si.factor,
        System::UsCustomary => Length::ROLE.us.factor,
    }
}

/// A force without its unit: whole pounds, tenths of a kilonewton.
pub fn force(f: Force, system: System) -> String {
    match system {
        System::Si => grouped(f.si() / Force::ROLE.si.factor, 1),
        System::UsCustomary => grouped(f.si() / Force::ROLE.us.factor, 0),
    }
}

/// A coordinate or distance without its unit: hundredths of a foot, millimetres as metres.
pub fn length(l: Length, system: System) -> String {
    let decimals = match system {
        System::Si => 3,
        System::UsCustomary => 2,
    };
    grouped(l.si() / length_factor(system), decimals)
}

/// A utilisation to three decimals; one above 1 never reads 1.
pub fn utilisation(ratio: f64) -> String {
    let ratio = round9(ratio);
    let thousandths = (ratio * 1000.0).round();
    let shown = if ratio > 1.0 {
        thousandths.max(1001.0)
    } else {
        thousandths
    };
    grouped(shown / 1000.0, 3)
}

/// A number with a fixed count of decimals, thousands set apart by commas.
pub fn grouped(value: f64, decimals: usize) -> String {
    let plain = format!("{:.decimals$}", value.abs());
    let (whole, part) = plain.split_once('.').unwrap_or((&plain, ""));
    let mut out = String::new();
    if value < 0.0 && plain.bytes().any(|b| (b'1'..=b'9').contains(&b)) {
        out.push('-');
    }
    for (i, c) in whole.chars().enumerate() {
        if i > 0 && (whole.len() - i) % 3 == 0 {
            out.push(',');
        }
        out.push(c);
    }
    if !part.is_empty() {
        out.push('.');
        out.push_str(part);
    }
    out
}

/// A count of things.
pub fn count(n: usize) -> String {
    grouped(n as f64, 0)
}

/// The verdict as a heading and as a sentence.
pub fn verdict(verdict: Verdict) -> (&'static str, &'static str) {
    match verdict {
        Verdict::Accept => ("ACCEPT", "every needed check passes"),
        Verdict::Provisional => ("PROVISIONAL", "something needed could not be judged"),
        Verdict::Reject => ("REJECT", "something fails"),
        Verdict::Continue => ("CONTINUE", "what fails can still be met deeper"),
        Verdict::NotAsked => ("NOT JUDGED", "no demand was sent against a capacity"),
    }
}

/// The design basis in words.
pub fn basis(basis: &LayoutBasis) -> String {
    match basis {
        LayoutBasis::AllowableStress(loads) => match &loads.combinations {
            AllowableStressCombinations::Own(_) => {
                "allowable stress, combinations as sent".to_owned()
            }
            AllowableStressCombinations::Published(set) => format!(
                "allowable stress, {}",
                match set.edition {
                    AllowableStressEdition::Asce716 => "ASCE 7-16 2.4",
                    AllowableStressEdition::Asce722 => "ASCE 7-22 2.4",
                }
            ),
        },
        LayoutBasis::LimitStates(loads) => match &loads.combinations {
            LimitStatesCombinations::Own(_) => "limit states, combinations as sent".to_owned(),
            LimitStatesCombinations::Published(set) => format!(
                "limit states, {}",
                match set.edition {
                    LimitStatesEdition::Asce716 => "ASCE 7-16 2.3",
                    LimitStatesEdition::Asce722 => "ASCE 7-22 2.3",
                    LimitStatesEdition::Nbc2020 => "NBC 2020",
                }
            ),
        },
    }
}

/// The level of a capacity.
pub fn level(level: CapacityLevel) -> &'static str {
    match level {
        CapacityLevel::Allowable => "allowable",
        CapacityLevel::Factored => "factored",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_read_well() {
        assert_eq!(grouped(224_913.4, 0), "224,913");
        assert_eq!(grouped(-1_234.56, 1), "-1,234.6");
        assert_eq!(grouped(-0.001, 2), "0.00");
        assert_eq!(grouped(999.0, 0), "999");
    }

    #[test]
    fn a_utilisation_above_one_never_reads_one() {
        assert_eq!(utilisation(1.0), "1.000");
        assert_eq!(utilisation(0.999_96), "1.000");
        assert_eq!(utilisation(1.000_000_1), "1.001");
        // what is printed decides: this one passes
        assert_eq!(utilisation(1.000_000_000_4), "1.000");
        assert_eq!(utilisation(1.026), "1.026");
        assert_eq!(utilisation(12.3456), "12.346");
    }
}
