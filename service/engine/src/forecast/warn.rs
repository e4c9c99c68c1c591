//! What is worth knowing of a forecast: few logs, logs that ended early, piles far from any
//! log, a stated depth that the logs contradict. None of it decides anything.

use super::codes::warnings;
use super::evaluate::{Class, place};
use super::hyper::PRIOR_WIDTHS;
use super::outcome::LogStatus;
use super::report::nearest;
use super::request::Request;
use crate::contract::{SubjectKind, Work};
use crate::math::{PI, atan2, hypot};
use crate::quantity::{Length, Torque, round9};
use crate::source::{FORECAST_PRIORS, Sourced};

/// Logs that met the torque below which they are called few.
pub static FEW: Sourced<usize> = Sourced::new("forecast_few_logs", 6, &FORECAST_PRIORS);
/// Share of logs that ended before their torque above which they are called many.
pub static MANY: Sourced<f64> =
    Sourced::new("forecast_many_not_met_ratio", 1.0 / 3.0, &FORECAST_PRIORS);
/// Piles named in one warning.
const NAMED: usize = 5;

/// All warnings.
pub(super) fn warn(request: &Request, classes: &[Class], positions: bool, work: &mut Work) {
    let placed = request
        .planned
        .iter()
        .filter(|p| p.position.is_some())
        .count()
        + request
            .installed
            .iter()
            .filter(|p| p.position.is_some())
            .count();
    if !positions && placed > 0 {
        let all = request.planned.len() + request.installed.len();
        work.warn(
            &warnings::POSITIONS_MISSING,
            format!("{placed} of {all} piles have a place"),
        );
    }
    for class in classes {
        of_logs(class, work);
        if positions {
            beyond(request, class, work);
            one_side(request, class, work);
        }
    }
}

fn of_logs(class: &Class, work: &mut Work) {
    let shown = Torque::ROLE.in_both_systems(class.torque.si());
    let count = |status| class.logs.iter().filter(|log| log.status == status).count();
    let (met, not_met) = (count(LogStatus::Met), count(LogStatus::NotMet));
    for log in class
        .logs
        .iter()
        .filter(|log| log.status == LogStatus::NotUsable)
    {
        let why = log.reason.as_deref().unwrap_or_default();
        let told = format!("{shown}: {why}");
        work.warn_about(
            &warnings::LOG_NOT_USABLE,
            SubjectKind::Pile,
            log.label.as_str(),
            told,
        );
    }
    if met < FEW.value {
        let told = format!("{met} logs met {shown}, fewer than {}", FEW.value);
        work.warn(&warnings::FEW_LOGS, told);
    }
    if not_met as f64 > MANY.value * (met + not_met) as f64 {
        let told = format!("{not_met} of {} logs did not meet {shown}", met + not_met);
        work.warn(&warnings::MANY_NOT_MET, told);
    }
    if let Some(holds) = class.posterior.widths.first()
        && *holds < 0.5 * PRIOR_WIDTHS.value[0].1
    {
        let told = format!(
            "the stated standard deviation holds with a probability of {}, beforehand {}",
            round9((holds * 1e3).round() / 1e3),
            PRIOR_WIDTHS.value[0].1
        );
        work.warn(&warnings::PRIOR_CONTRADICTED, told);
    }
}

/// Places of the logs that say something of the torque, m.
fn used(request: &Request, class: &Class) -> Vec<(f64, f64)> {
    let logs = request.installed.iter().zip(&class.logs);
    logs.filter(|(_, log)| log.status != LogStatus::NotUsable)
        .filter_map(|(pile, _)| place(&pile.position))
        .collect()
}

/// Piles farther from any log than the two logs farthest apart are from each other: how depths
/// go together over such a distance, no pair of logs has shown.
fn beyond(request: &Request, class: &Class, work: &mut Work) {
    let logs = used(request, class);
    let mut apart = 0.0_f64;
    for (i, a) in logs.iter().enumerate() {
        for b in &logs[..i] {
            apart = apart.max(hypot(a.0 - b.0, a.1 - b.1));
        }
    }
    let far = |pile: &&usize| {
        let from = nearest(request, class, place(&request.planned[**pile].position));
        from.is_some_and(|d| d > apart * (1.0 + 1e-9))
    };
    let far: Vec<&usize> = class.members.iter().filter(far).collect();
    if far.is_empty() {
        return;
    }
    let name = |at: &&usize| format!("`{}`", request.planned[**at].label);
    let mut names: Vec<String> = far.iter().take(NAMED).map(name).collect();
    if far.len() > NAMED {
        names.push(format!("{} more", far.len() - NAMED));
    }
    let told = format!(
        "{}: farther from any log than the {} between the two logs farthest apart",
        names.join(", "),
        Length::ROLE.in_both_systems(apart)
    );
    work.warn(&warnings::BEYOND_LOGS, told);
}

/// All logs on one side of the middle of the piles to come: seen from there, the widest gap
/// between their directions is more than half a turn.
fn one_side(request: &Request, class: &Class, work: &mut Work) {
    let at = class
        .members
        .iter()
        .filter_map(|i| place(&request.planned[*i].position));
    let count = class.members.len() as f64;
    let sum = at.fold((0.0, 0.0), |sum, p| (sum.0 + p.0, sum.1 + p.1));
    let middle = (sum.0 / count, sum.1 / count);
    let away = |p: &(f64, f64)| (p.0 - middle.0, p.1 - middle.1);
    let seen = used(request, class);
    let mut turned: Vec<f64> = seen
        .iter()
        .map(away)
        .filter(|(x, y)| hypot(*x, *y) > 1e-6)
        .map(|(x, y)| atan2(y, x))
        .collect();
    if turned.len() < seen.len() {
        return;
    }
    turned.sort_by(f64::total_cmp);
    let Some((first, last)) = turned.first().zip(turned.last()) else {
        return;
    };
    let around = first + 2.0 * PI - last;
    let gap = turned
        .windows(2)
        .map(|w| w[1] - w[0])
        .fold(around, f64::max);
    if gap > PI + 1e-6 {
        let told = format!(
            "{} logs within {} degrees of a turn, seen from the middle of {} piles to come",
            turned.len(),
            round9(((2.0 * PI - gap) * 180.0 / PI).round()),
            class.members.len()
        );
        work.warn(&warnings::ONE_SIDE, told);
    }
}
