//! What the rows of the table say: the layout as designed, as it stands, each way out.

use bearwell_engine::contract::{Check, CheckStatus};
use bearwell_engine::layout::PileCost;
use bearwell_engine::relocation::codes::checks;
use bearwell_engine::relocation::{GoverningCheck, LimitToRelax, WayOut, WaysOutReport};

use super::options::Row;
use super::{Subject, told};
use crate::words;

/// Most failures that are told of a row.
const FAILURES: usize = 4;
/// Sources that are told in short: a limit that came with the request, a rule of our own.
const SHORT: [(&str, &str); 2] = [
    ("caller", "limit as sent"),
    ("bearwell_choice", "rule of this service"),
];

/// All rows, in the order of the sheet.
pub fn rows(s: Subject) -> Vec<Row> {
    let mut all = vec![designed(s), now(s)];
    if let Some(report) = &s.answer.result.ways_out {
        let options = report.options.iter().enumerate();
        all.extend(options.map(|(i, way)| option(s, i, way)));
        if report.options.is_empty() {
            all.push(none(report));
        }
        let relaxed_from = report.options.len();
        let limits = report.relax.iter().flatten().enumerate();
        all.extend(limits.map(|(i, limit)| relaxed(s, relaxed_from + i, limit)));
    }
    all
}

/// The letter of a way out.
pub fn letter(index: usize) -> String {
    let letters: Vec<char> = ('A'..='Z').collect();
    match letters.get(index) {
        Some(letter) => letter.to_string(),
        None => (index + 1).to_string(),
    }
}

/// The currency of the costs.
pub fn currency(s: Subject) -> String {
    let report = s.answer.result.ways_out.as_ref();
    let costs = report.iter().flat_map(|r| &r.options);
    let mut named = costs.filter_map(|o| o.cost.as_ref()?.currency.clone());
    let name = named.next().unwrap_or_default();
    crate::svg::fitted(&name, 22.0, crate::svg::Style::PLAIN)
}

fn ratio(ratio: Option<f64>) -> String {
    ratio.map_or("-".to_owned(), words::utilisation)
}

fn designed(s: Subject) -> Row {
    let state = &s.answer.result.before;
    let fails = match (state.failed_count, &state.governing) {
        (0, None) => String::new(),
        (0, Some(governing)) => format!("nothing; governs: {}", short(s, governing).alone()),
        (count, governing) => {
            let worst = governing
                .as_ref()
                .map(|g| format!(", the worst {}", short(s, g).alone()));
            let plural = if count == 1 { "" } else { "s" };
            format!(
                "{} check{plural}{}",
                words::count(count as usize),
                worst.unwrap_or_default()
            )
        }
    };
    Row {
        letter: "was".to_owned(),
        verdict: Some(state.verdict),
        what: format!("As designed, {}.", piles(state.pile_count)),
        piles: ratio(state.max_utilisation_ratio),
        beams: ratio(state.max_beam_utilisation_ratio),
        fails,
        cost: String::new(),
        choice: false,
    }
}

fn piles(count: u32) -> String {
    let plural = if count == 1 { "" } else { "s" };
    format!("{} pile{plural}", words::count(count as usize))
}

/// The layout with the events and nothing more.
fn now(s: Subject) -> Row {
    let state = s.answer.result.after.as_ref();
    let what = match state {
        Some(state) => format!(
            "As it stands, {}; nothing more is done.",
            piles(state.pile_count)
        ),
        None => "As it stands: beams have too few supports left to stand.".to_owned(),
    };
    // what is open and holds nothing back is not for this page
    let matters = |c: &&Check| {
        let own = checks::ALL.iter().any(|def| def.id == c.id);
        let mut reasons = s.answer.verdict_reasons.iter();
        c.status == CheckStatus::Fail || own || reasons.any(|r| r.code == c.id)
    };
    let of = |status: CheckStatus| {
        let of_status = s.answer.checks.iter().filter(|c| c.status == status);
        let mut those: Vec<&Check> = of_status.filter(matters).collect();
        // a capacity of nil has no ratio and is the worst
        let worst = |c: &Check| c.utilisation_ratio.unwrap_or(f64::MAX);
        those.sort_by(|a, b| worst(b).total_cmp(&worst(a)));
        those.into_iter().map(one).collect::<Vec<_>>()
    };
    let mut open = of(CheckStatus::NotEvaluated);
    let judged = &s.answer.checks;
    let held = s.answer.verdict_reasons.iter();
    let held = held.filter(|r| judged.iter().all(|c| c.id != r.code));
    open.extend(held.map(|r| Told::new(&r.code, None, None, None, &r.detail)));
    Row {
        letter: "now".to_owned(),
        verdict: Some(s.answer.verdict),
        what,
        piles: ratio(state.and_then(|s| s.max_utilisation_ratio)),
        beams: ratio(state.and_then(|s| s.max_beam_utilisation_ratio)),
        fails: listed(of(CheckStatus::Fail), open),
        cost: String::new(),
        choice: true,
    }
}

/// A way out.
fn option(s: Subject, index: usize, way: &WayOut) -> Row {
    let events = way.events.iter().map(|e| told::event(e, s.system));
    let events: Vec<String> = events.collect();
    let mut what = told::kind(way.kind).to_owned();
    if !events.is_empty() {
        what += &format!(": {}", events.join("; "));
    }
    let places = told::stretches(&way.stretches, s.system);
    let beside = way
        .offsets
        .as_ref()
        .and_then(|o| told::offsets(o, s.system));
    for range in [places, beside].into_iter().flatten() {
        what += &format!(". Free: {range}");
    }
    what += ".";
    what.extend(told::bars(way.reinforcement.len()).map(|bars| format!(" {bars}")));
    let all = |list: &[GoverningCheck]| list.iter().map(|g| short(s, g)).collect::<Vec<_>>();
    Row {
        letter: letter(index),
        verdict: Some(way.verdict),
        what,
        piles: ratio(way.pile_utilisation_ratio),
        beams: ratio(way.beam_utilisation_ratio),
        fails: listed(all(&way.failed), all(&way.open)),
        cost: way.cost.as_ref().map_or(String::new(), cost),
        choice: true,
    }
}

/// Where nothing works: what would have to give.
fn none(report: &WaysOutReport) -> Row {
    let kinds: Vec<&str> = report.tried.iter().map(|t| told::kind(t.kind)).collect();
    Row {
        letter: "-".to_owned(),
        verdict: None,
        what: format!(
            "No way out within the limits; tried: {}.",
            kinds.join(", ").to_lowercase()
        ),
        piles: String::new(),
        beams: String::new(),
        fails: String::new(),
        cost: String::new(),
        choice: false,
    }
}

/// A limit that could be relaxed, and what it would allow.
fn relaxed(s: Subject, index: usize, limit: &LimitToRelax) -> Row {
    let row = option(s, index, &limit.option);
    let about = limit
        .subject
        .as_ref()
        .map_or(String::new(), |l| format!(" {l}"));
    let change = match (&limit.from, &limit.to) {
        (Some(from), Some(to)) => format!(
            ": {} instead of {}",
            told::shown(to, s.system),
            told::shown(from, s.system)
        ),
        (None, Some(to)) => format!(": {}", told::shown(to, s.system)),
        _ => String::new(),
    };
    let limit_told = format!("{}{about}", limit.limit.replace('_', " "));
    let own = |g: &GoverningCheck| {
        g.check == limit.limit && g.subject.as_ref().map(|s| &s.label) == limit.subject.as_ref()
    };
    let what = if limit.option.failed.iter().all(own) {
        format!("If {limit_told} gave way{change}. {}", row.what)
    } else {
        format!(
            "No limit alone would do. Missed most: {limit_told}{change}. {}",
            row.what
        )
    };
    Row { what, ..row }
}

fn cost(cost: &PileCost) -> String {
    words::grouped(cost.value, 2)
}

/// A check as it stands in the table.
#[derive(Debug, Clone, PartialEq)]
struct Told {
    id: String,
    /// What it is about, with its number.
    about: String,
    /// Its combination and its source.
    within: String,
}

impl Told {
    fn new(
        id: &str,
        about: Option<&str>,
        used: Option<String>,
        combination: Option<&str>,
        cite: &str,
    ) -> Self {
        let about = about.map(str::to_owned).into_iter().chain(used);
        let within: Vec<&str> = combination.into_iter().chain([cite]).collect();
        Self {
            id: id.replace('_', " "),
            about: about.collect::<Vec<_>>().join(" "),
            within: within.join("; "),
        }
    }

    fn alone(&self) -> String {
        together(std::slice::from_ref(self))
    }
}

/// A source as it stands in the table.
fn cited<'a>(id: &str, cite: &'a str) -> &'a str {
    let short = SHORT.iter().find(|(known, _)| *known == id);
    short.map_or(cite, |(_, told)| told)
}

/// A check with its number and its source.
fn one(check: &Check) -> Told {
    let about = check.subject.as_ref().map(|s| s.label.as_str());
    let used = match (check.status, check.utilisation_ratio) {
        (CheckStatus::NotEvaluated, _) => check.reason.as_ref().map(|r| told::open(r)),
        (_, Some(ratio)) => Some(words::utilisation(ratio)),
        (_, None) => match &check.reason {
            Some(reason) => Some(told::open(reason)),
            None => Some("nothing is there".to_owned()),
        },
    };
    let cite = cited(&check.source.id, &check.source.cite);
    Told::new(&check.id, about, used, check.combination.as_deref(), cite)
}

/// A check of a way out with its number and its source.
fn short(s: Subject, check: &GoverningCheck) -> Told {
    let about = check.subject.as_ref().map(|s| s.label.as_str());
    let used = check.utilisation_ratio.map(words::utilisation);
    let mut sources = s.answer.checks.iter().map(|c| &c.source);
    let known = sources.find(|note| note.id == check.source);
    let cite = known.map_or_else(
        || check.source.replace('_', " "),
        |note| note.cite.to_string(),
    );
    let cite = cited(&check.source, &cite);
    Told::new(
        &check.check,
        about,
        used,
        check.combination.as_deref(),
        cite,
    )
}

/// Checks of one name and one source in one go.
fn together(checks: &[Told]) -> String {
    let first = &checks[0];
    let about: Vec<&str> = checks.iter().map(|c| c.about.as_str()).collect();
    let about = about.join(", ");
    let gap = if about.is_empty() { "" } else { " " };
    format!("{}{gap}{about} ({})", first.id, first.within)
}

/// What fails, then what is open; `nothing` where neither is there.
fn listed(failed: Vec<Told>, open: Vec<Told>) -> String {
    let told = |word: &str, all: Vec<Told>| {
        let more = all.len().saturating_sub(FAILURES);
        let those = &all[..all.len() - more];
        let alike = |a: &Told, b: &Told| a.id == b.id && a.within == b.within;
        let mut parts: Vec<String> = those.chunk_by(alike).map(together).collect();
        if more > 0 {
            parts.push(format!("and {} more", words::count(more)));
        }
        (!parts.is_empty()).then(|| format!("{word}: {}.", parts.join("; ")))
    };
    let parts = [told("Fails", failed), told("Open", open)];
    let all: Vec<String> = parts.into_iter().flatten().collect();
    if all.is_empty() {
        "nothing".to_owned()
    } else {
        all.join(" ")
    }
}
