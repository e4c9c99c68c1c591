//! Numbers and phrases of a sheet in the reader's units. Display only: what decides is in
//! the answer.

use bearwell_engine::contract::Verdict;
use bearwell_engine::layout::{
    AllowableStressCombinations, AllowableStressEdition, CapacityLevel, LayoutBasis,
    LimitStatesCombinations, LimitStatesEdition,
};
use bearwell_engine::quantity::{
    Angle, Area, AreaLoad, Force, Length, Role, Size, SoilStress, System, Torque, TorqueFactor,
    UnitDef, UnitWeight, round9,
};

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

/// Metres in one unit of a size.
pub fn size_factor(system: System) -> f64 {
    unit(Size::ROLE, system).factor
}

/// Newtons in one unit of force.
pub fn force_factor(system: System) -> f64 {
    unit(Force::ROLE, system).factor
}

/// Newton metres in one unit of torque.
pub fn torque_unit_factor(system: System) -> f64 {
    unit(Torque::ROLE, system).factor
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

/// A value in its unit, to at most `decimals` decimals, without needless zeros.
fn shown(si: f64, role: &Role, system: System, decimals: usize) -> String {
    let unit = unit(role, system);
    trimmed((si - unit.offset) / unit.factor, decimals)
}

/// The unit a role is shown in.
fn unit(role: &Role, system: System) -> &'static UnitDef {
    match system {
        System::Si => role.si,
        System::UsCustomary => role.us,
    }
}

/// A depth without its unit, to hundredths.
pub fn depth(l: Length, system: System) -> String {
    grouped(l.si() / length_factor(system), 2)
}

/// A depth with its unit.
pub fn depth_told(l: Length, system: System) -> String {
    format!("{} {}", depth(l, system), length_unit(system))
}

/// Decimals of a size: tenths of a millimetre, thousandths of an inch.
fn size_decimals(system: System) -> usize {
    match system {
        System::Si => 1,
        System::UsCustomary => 3,
    }
}

/// A size without its unit, with all its decimals, as they stand below each other.
pub fn size_in_column(size: Size, system: System) -> String {
    grouped(size.si() / size_factor(system), size_decimals(system))
}

/// A size with its unit.
pub fn size_told(size: Size, system: System) -> String {
    let value = shown(size.si(), Size::ROLE, system, size_decimals(system));
    format!("{value} {}", size_unit(system))
}

/// Name of the unit of a size.
pub fn size_unit(system: System) -> &'static str {
    unit(Size::ROLE, system).name
}

/// A force with its unit.
pub fn force_told(f: Force, system: System) -> String {
    format!("{} {}", force(f, system), force_unit(system))
}

/// A stress in soil without its unit: tenths of a kilopascal, whole pounds per square foot.
pub fn stress(stress: SoilStress, system: System) -> String {
    let decimals = match system {
        System::Si => 1,
        System::UsCustomary => 0,
    };
    shown(stress.si(), SoilStress::ROLE, system, decimals)
}

/// Name of the unit of a stress in soil.
pub fn stress_unit(system: System) -> &'static str {
    unit(SoilStress::ROLE, system).name
}

/// A stress in soil with its unit.
pub fn stress_told(value: SoilStress, system: System) -> String {
    format!("{} {}", stress(value, system), stress_unit(system))
}

/// A load on an area with its unit: tenths of a kilopascal, whole pounds per square foot.
pub fn area_load_told(load: AreaLoad, system: System) -> String {
    let decimals = match system {
        System::Si => 1,
        System::UsCustomary => 0,
    };
    let value = shown(load.si(), AreaLoad::ROLE, system, decimals);
    format!("{value} {}", unit(AreaLoad::ROLE, system).name)
}

/// A unit weight without its unit.
pub fn unit_weight(w: UnitWeight, system: System) -> String {
    shown(w.si(), UnitWeight::ROLE, system, 1)
}

/// Name of the unit of a unit weight, as it is written by hand.
pub fn unit_weight_unit(system: System) -> &'static str {
    match system {
        System::Si => "kN/m3",
        System::UsCustomary => "pcf",
    }
}

/// An angle in degrees.
pub fn angle_told(a: Angle) -> String {
    format!("{}\u{b0}", shown(a.si(), Angle::ROLE, System::Si, 1))
}

/// A torque without its unit.
pub fn torque(t: Torque, system: System) -> String {
    let decimals = match system {
        System::Si => 2,
        System::UsCustomary => 0,
    };
    shown(t.si(), Torque::ROLE, system, decimals)
}

/// Name of the unit of a torque, as it is written by hand.
pub fn torque_unit(system: System) -> &'static str {
    match system {
        System::Si => "kN m",
        System::UsCustomary => "ft-lbf",
    }
}

/// A torque factor without its unit.
pub fn torque_factor(k: TorqueFactor, system: System) -> String {
    shown(k.si(), TorqueFactor::ROLE, system, 2)
}

/// Name of the unit of a torque factor, as it is written by hand.
pub fn torque_factor_unit(system: System) -> &'static str {
    match system {
        System::Si => "per m",
        System::UsCustomary => "per ft",
    }
}

/// An area of helices with its unit.
pub fn area_told(a: Area, system: System) -> String {
    let unit = match system {
        System::Si => "m2",
        System::UsCustomary => "ft2",
    };
    format!("{} {unit}", shown(a.si(), Area::ROLE, system, 3))
}

/// A number with at most `decimals` decimals, without needless zeros.
pub fn trimmed(value: f64, decimals: usize) -> String {
    let full = grouped(value, decimals);
    if full.contains('.') {
        full.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        full
    }
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

/// The verdict as it stands in JSON.
pub fn verdict_code(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Accept => "accept",
        Verdict::Provisional => "provisional",
        Verdict::Reject => "reject",
        Verdict::Continue => "continue",
        Verdict::NotAsked => "not_asked",
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
        assert_eq!(trimmed(2.875, 3), "2.875");
        assert_eq!(trimmed(1_200.0, 1), "1,200");
        assert_eq!(trimmed(18.50, 2), "18.5");
        assert_eq!(trimmed(-0.001, 2), "0");
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
