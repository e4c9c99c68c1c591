//! The checks of an answer that fail, are open or advise, in sentences with their numbers.

use bearwell_engine::contract::{Check, CheckStatus, Relation};
use bearwell_engine::quantity::{Shown, System};

use crate::column::{Item, Lead};
use crate::words;

/// Those that fail, then those that are open, then those that advise; `prefix` of their codes
/// is left out.
pub fn items(checks: &[Check], prefix: &str, system: System) -> Vec<Item> {
    let of = |status: CheckStatus, lead: Lead| {
        let those = checks.iter().filter(move |c| c.status == status);
        those.map(move |c| Item {
            lead,
            ..Item::plain(told(c, prefix, system))
        })
    };
    of(CheckStatus::Fail, Lead::Fail)
        .chain(of(CheckStatus::NotEvaluated, Lead::Open))
        .chain(of(CheckStatus::Warn, Lead::Warn))
        .collect()
}

/// Those that pass, in one sentence: the one of each id that uses most of its limit.
pub fn passed(checks: &[Check], prefix: &str) -> Option<String> {
    let failed = |id: &str| {
        let bad = |c: &&Check| c.id == id && c.status != CheckStatus::Pass;
        checks.iter().any(|c| bad(&c))
    };
    let those = checks.iter().filter(|c| c.governing && !failed(&c.id));
    let told: Vec<String> = those
        .map(|c| {
            let name = c.id.strip_prefix(prefix).unwrap_or(&c.id).replace('_', " ");
            match c.utilisation_ratio {
                Some(ratio) => format!("{name} {}", words::utilisation(ratio)),
                None => name,
            }
        })
        .collect();
    (!told.is_empty()).then(|| format!("Pass, 1 is all: {}.", told.join(", ")))
}

/// A check in a sentence.
fn told(check: &Check, prefix: &str, system: System) -> String {
    let name = check.id.strip_prefix(prefix).unwrap_or(&check.id);
    let mut text = name.replace('_', " ");
    if let Some(combination) = &check.combination {
        text += &format!(", {combination}");
    }
    if let (Some(demand), Some(capacity)) = (&check.demand, &check.capacity) {
        let (there, limit, relation) = match check.relation {
            Relation::AtLeast => (capacity, demand, "at least"),
            Relation::AtMost => (demand, capacity, "at most"),
        };
        let (there, limit, unit) = pair(there, limit, system);
        text += &format!(": {there}, {relation} {limit}{unit}");
    }
    if let Some(reason) = &check.reason {
        text += &format!(": {}", reason.replace('_', " "));
    }
    text
}

/// Two numbers of one unit with as many decimals as it takes to tell them apart, and the unit
/// after a space.
fn pair(there: &Shown, limit: &Shown, system: System) -> (String, String, String) {
    let (a, unit) = there.printed(system);
    let (b, _) = limit.printed(system);
    let usual = match unit {
        "ft_lbf" | "lbf" => 0,
        "mm" | "deg" | "rpm" => 1,
        "in" | "1" => 3,
        _ => 2,
    };
    let shown = |decimals: usize| (words::trimmed(a, decimals), words::trimmed(b, decimals));
    let mut decimals = usual;
    while a != b && decimals < 9 && shown(decimals).0 == shown(decimals).1 {
        decimals += 1;
    }
    let (a, b) = shown(decimals);
    let unit = match unit {
        "1" => String::new(),
        "ft_lbf" => " ft-lbf".to_owned(),
        other => format!(" {}", other.replace('_', " ")),
    };
    (a, b, unit)
}

#[cfg(test)]
mod tests {
    use super::*;
    use bearwell_engine::quantity::{MomentUnit, Torque};

    #[test]
    fn numbers_that_differ_read_differently() {
        let shown = |v| Shown::from(Torque::new(v, MomentUnit::FtLbf));
        let us = System::UsCustomary;
        assert_eq!(
            pair(&shown(2777.6), &shown(2777.7), us),
            ("2,777.6".into(), "2,777.7".into(), " ft-lbf".into())
        );
        assert_eq!(
            pair(&shown(1500.0), &shown(2778.0), us),
            ("1,500".into(), "2,778".into(), " ft-lbf".into())
        );
        assert_eq!(pair(&1.0.into(), &0.0.into(), us).2, "");
    }
}
