//! Load cases and load combinations: from a published set or the caller's list to one
//! row of factors over the load cases that are really there. Knows no geometry.

use std::collections::BTreeMap;

use compact_str::CompactString;

use super::basis::{
    AllowableStressCombinations, AllowableStressEdition, LayoutBasis, LimitStatesCombinations,
    LimitStatesEdition, OwnCombinations,
};
use super::codes::{methods, refusals, warnings};
use super::published::{
    ASCE_7_16_ASD_SET, ASCE_7_16_LRFD_SET, ASCE_7_22_ASD_SET, ASCE_7_22_LRFD_SET, NBC_2020_SET,
    Template,
};
use super::request::{LoadKind, Request};
use super::sent_loads::{cases_of, every_load};
use super::service::service;
use crate::catalogue::refusals::DUPLICATE_LABEL;
use crate::contract::{Issue, Work};
use crate::limits::COMBINATIONS;
use crate::source::Sourced;

/// A load case: a kind of load, or one named case of it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Case {
    pub kind: LoadKind,
    pub name: Option<String>,
}

/// A combination as it acts: a factor for every load case.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Combination {
    pub name: CompactString,
    pub factors: Vec<f64>,
}

/// Load cases and combinations of a request.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Loading {
    pub cases: Vec<Case>,
    pub combinations: Vec<Combination>,
    /// Combinations of service loads, where they are known.
    pub service: Option<Vec<Combination>>,
}

impl Loading {
    /// Index of a load case that is there.
    pub fn case(&self, kind: LoadKind, name: Option<&str>) -> Option<usize> {
        self.cases
            .iter()
            .position(|c| c.kind == kind && c.name.as_deref() == name)
    }
}

/// Finds the cases and forms the combinations; faults go to `issues`.
pub(super) fn loading(request: &Request, work: &mut Work, issues: &mut Vec<Issue>) -> Loading {
    let cases = cases_of(request, issues);
    let mut maker = Maker::of(&cases);
    match chosen(&request.design_basis) {
        Chosen::Published(set, method) => {
            work.method(method);
            let templates = work.take_table(set);
            not_combined(request, templates, issues);
            for t in templates {
                maker.template(t);
            }
        }
        Chosen::Own(own, pointer) => {
            work.method(&methods::COMBINATIONS_OWN);
            maker.own(own, pointer, issues);
            unused(&maker, work);
        }
    }
    let combinations = maker.found;
    if combinations.len() > COMBINATIONS {
        issues.push(
            Issue::new(
                "/design_basis",
                &refusals::TOO_MANY_COMBINATIONS,
                format!("{} with every case", combinations.len()),
            )
            .limit(COMBINATIONS.to_string()),
        );
    }
    if combinations.is_empty() && issues.is_empty() {
        issues.push(Issue::new(
            "/design_basis",
            &refusals::NO_LOAD,
            "every combination is empty with the loads that were sent",
        ));
    }
    let service = service(request, &cases, &combinations, issues);
    Loading {
        cases,
        combinations,
        service,
    }
}

enum Chosen<'a> {
    Published(
        &'static Sourced<&'static [Template]>,
        &'static crate::catalogue::MethodDef,
    ),
    Own(&'a OwnCombinations, &'static str),
}

fn chosen(basis: &LayoutBasis) -> Chosen<'_> {
    match basis {
        LayoutBasis::AllowableStress(loads) => match &loads.combinations {
            AllowableStressCombinations::Published(set) => match set.edition {
                AllowableStressEdition::Asce716 => {
                    Chosen::Published(&ASCE_7_16_ASD_SET, &methods::COMBINATIONS_ASCE_7_16_ASD)
                }
                AllowableStressEdition::Asce722 => {
                    Chosen::Published(&ASCE_7_22_ASD_SET, &methods::COMBINATIONS_ASCE_7_22_ASD)
                }
            },
            AllowableStressCombinations::Own(own) => {
                Chosen::Own(own, "/design_basis/allowable_stress/combinations/own/list")
            }
        },
        LayoutBasis::LimitStates(loads) => match &loads.combinations {
            LimitStatesCombinations::Published(set) => match set.edition {
                LimitStatesEdition::Asce716 => {
                    Chosen::Published(&ASCE_7_16_LRFD_SET, &methods::COMBINATIONS_ASCE_7_16_LRFD)
                }
                LimitStatesEdition::Asce722 => {
                    Chosen::Published(&ASCE_7_22_LRFD_SET, &methods::COMBINATIONS_ASCE_7_22_LRFD)
                }
                LimitStatesEdition::Nbc2020 => {
                    Chosen::Published(&NBC_2020_SET, &methods::COMBINATIONS_NBC_2020)
                }
            },
            LimitStatesCombinations::Own(own) => {
                Chosen::Own(own, "/design_basis/limit_states/combinations/own/list")
            }
        },
    }
}

/// Loads of a kind that no published combination takes in are not passed over.
fn not_combined(request: &Request, templates: &[Template], issues: &mut Vec<Issue>) {
    let takes = |kind: LoadKind| {
        templates.iter().any(|t| {
            t.fixed.iter().any(|f| f.0 == kind)
                || t.options.iter().any(|g| g.iter().any(|f| f.0 == kind))
        })
    };
    for (pointer, kind, _) in every_load(request) {
        if !takes(kind) {
            issues.push(Issue::new(
                format!("{pointer}/kind"),
                &refusals::LOAD_KIND_NOT_COMBINED,
                format!("`{}`", code_of(kind)),
            ));
        }
    }
}

fn unused(maker: &Maker, work: &mut Work) {
    for (i, case) in maker.cases.iter().enumerate() {
        if maker.found.iter().all(|c| c.factors[i] == 0.0) {
            let name = case.name.as_deref().map(|n| format!(", case `{n}`"));
            work.warn(
                &warnings::COMBINATION_UNUSED_LOAD,
                format!(
                    "`{}`{} is in no combination",
                    code_of(case.kind),
                    name.unwrap_or_default()
                ),
            );
        }
    }
}

/// Forms combinations out of the cases that are there.
pub(super) struct Maker<'a> {
    cases: &'a [Case],
    pub found: Vec<Combination>,
}

/// Factors by kind, in the order they are written.
type Terms = Vec<(LoadKind, f64)>;

impl<'a> Maker<'a> {
    /// Over these load cases.
    pub fn of(cases: &'a [Case]) -> Self {
        Self {
            cases,
            found: Vec::new(),
        }
    }

    fn has(&self, kind: LoadKind) -> bool {
        self.cases.iter().any(|c| c.kind == kind)
    }

    /// Named cases of a kind; one nameless choice where it has none.
    fn choices(&self, kind: LoadKind) -> Vec<Option<&str>> {
        let named: Vec<_> = self
            .cases
            .iter()
            .filter(|c| c.kind == kind && c.name.is_some())
            .map(|c| c.name.as_deref())
            .collect();
        if named.is_empty() { vec![None] } else { named }
    }

    fn template(&mut self, template: &Template) {
        if template.needs.iter().any(|k| !self.has(*k)) {
            return;
        }
        let mut sets: Vec<Terms> = vec![template.fixed.to_vec()];
        for group in template.options {
            let mut wider = Vec::new();
            for set in &sets {
                wider.push(set.clone());
                for term in group.iter().filter(|t| self.has(t.0)) {
                    let mut with = set.clone();
                    with.push(*term);
                    wider.push(with);
                }
            }
            sets = wider;
        }
        for mut terms in sets {
            if !template.options.is_empty() && terms.len() == template.fixed.len() {
                continue;
            }
            terms.retain(|t| self.has(t.0));
            let terms: Vec<_> = terms.into_iter().map(|(k, f)| (k, None, f)).collect();
            self.with_every_case(&terms, None);
        }
    }

    pub fn own(&mut self, own: &OwnCombinations, pointer: &str, issues: &mut Vec<Issue>) {
        let mut names = BTreeMap::new();
        for (i, combination) in own.list.iter().enumerate() {
            if let Some(first) = names.insert(combination.name.as_str(), i) {
                issues.push(Issue::new(
                    format!("{pointer}/{i}/name"),
                    &DUPLICATE_LABEL,
                    format!("as combination {first} of the list"),
                ));
            }
            let mut terms: Vec<(LoadKind, Option<&str>, f64)> = Vec::new();
            for (j, f) in combination.factors.iter().enumerate() {
                let at = format!("{pointer}/{i}/factors/{j}");
                let case = f.case.as_ref().map(|c| c.as_str());
                if terms.iter().any(|t| t.0 == f.kind) {
                    issues.push(Issue::new(
                        format!("{at}/kind"),
                        &refusals::FACTOR_TWICE,
                        format!("`{}` has a factor already", code_of(f.kind)),
                    ));
                    continue;
                }
                let known = case.is_none() || self.choices(f.kind).contains(&case);
                if self.has(f.kind) && !known {
                    issues.push(Issue::new(
                        format!("{at}/case"),
                        &refusals::UNKNOWN_CASE,
                        format!("no `{}` load has this case", code_of(f.kind)),
                    ));
                }
                if self.has(f.kind) {
                    terms.push((f.kind, case, f.factor));
                }
            }
            self.with_every_case(&terms, Some(combination.name.as_str()));
        }
    }

    /// One combination for every choice of cases that the terms leave open.
    fn with_every_case(&mut self, terms: &[(LoadKind, Option<&str>, f64)], name: Option<&str>) {
        let mut picks: Vec<Vec<Option<String>>> = vec![Vec::new()];
        for (kind, case, _) in terms {
            let choices: Vec<Option<String>> = match case {
                Some(case) => vec![Some((*case).to_owned())],
                None => self
                    .choices(*kind)
                    .iter()
                    .map(|c| c.map(str::to_owned))
                    .collect(),
            };
            picks = picks
                .into_iter()
                .flat_map(|pick| {
                    choices.iter().map(move |c| {
                        let mut longer = pick.clone();
                        longer.push(c.clone());
                        longer
                    })
                })
                .collect();
            if picks.len() > 4 * COMBINATIONS {
                break;
            }
        }
        for pick in picks {
            self.push(terms, &pick, name);
        }
    }

    fn push(
        &mut self,
        terms: &[(LoadKind, Option<&str>, f64)],
        pick: &[Option<String>],
        name: Option<&str>,
    ) {
        let factors: Vec<f64> = self
            .cases
            .iter()
            .map(|case| {
                terms
                    .iter()
                    .zip(pick)
                    .find(|((kind, _, _), chosen)| {
                        *kind == case.kind && (case.name.is_none() || case.name == **chosen)
                    })
                    .map_or(0.0, |((_, _, f), _)| *f)
            })
            .collect();
        if factors.iter().all(|f| *f == 0.0) || self.found.iter().any(|c| c.factors == factors) {
            return;
        }
        let name = match name {
            Some(own) => own_name(own, terms, pick),
            None => written(terms, pick),
        };
        self.found.push(Combination {
            name: name.into(),
            factors,
        });
    }
}

fn own_name(own: &str, terms: &[(LoadKind, Option<&str>, f64)], pick: &[Option<String>]) -> String {
    let open: Vec<&str> = terms
        .iter()
        .zip(pick)
        .filter(|((_, given, _), _)| given.is_none())
        .filter_map(|(_, chosen)| chosen.as_deref())
        .collect();
    if open.is_empty() {
        own.to_owned()
    } else {
        format!("{own} [{}]", open.join(", "))
    }
}

/// A combination written out: `D+0.75L+0.45W[west]`.
fn written(terms: &[(LoadKind, Option<&str>, f64)], pick: &[Option<String>]) -> String {
    let mut out = String::new();
    for ((kind, _, factor), case) in terms.iter().zip(pick) {
        if !out.is_empty() {
            out.push('+');
        }
        if *factor != 1.0 {
            out.push_str(&factor.to_string());
        }
        out.push_str(symbol_of(*kind));
        if let Some(case) = case {
            out.push_str(&format!("[{case}]"));
        }
    }
    out
}

fn symbol_of(kind: LoadKind) -> &'static str {
    match kind {
        LoadKind::Dead => "D",
        LoadKind::Live => "L",
        LoadKind::RoofLive => "Lr",
        LoadKind::Snow => "S",
        LoadKind::Wind => "W",
        LoadKind::Seismic => "E",
        LoadKind::Frost => "F",
        LoadKind::Swell => "H",
        LoadKind::Other => "X",
    }
}

/// Name of a kind as it stands on the wire.
pub(super) fn code_of(kind: LoadKind) -> &'static str {
    match kind {
        LoadKind::Dead => "dead",
        LoadKind::Live => "live",
        LoadKind::RoofLive => "roof_live",
        LoadKind::Snow => "snow",
        LoadKind::Wind => "wind",
        LoadKind::Seismic => "seismic",
        LoadKind::Frost => "frost",
        LoadKind::Swell => "swell",
        LoadKind::Other => "other",
    }
}
