//! What can be fetched with GET as JSON: the catalogues of codes, units, references and
//! limits, and what the service says of itself. One table; routes and document follow.

use bearwell_engine::catalogue;
use bearwell_engine::contract::CALCULATION_BASIS;
use bearwell_engine::limits::{self, Limit};
use bearwell_engine::quantity::{ROLES, UNIT_SETS};
use bearwell_engine::source::{self, Status};
use serde::Serialize;
use utoipa::ToSchema;

use crate::problem::{KINDS, Stage};
use crate::schemas::{Named, collect};

/// A resource that is only read.
pub struct Page {
    /// Where it stands.
    pub path: &'static str,
    /// Name of the operation in the document.
    pub operation: &'static str,
    /// Group in the document.
    pub tag: &'static str,
    /// One line.
    pub summary: &'static str,
    /// What it is for.
    pub about: &'static str,
    /// Its content, as it is sent.
    pub body: fn() -> Vec<u8>,
    /// Adds its schemas and names the one of the content.
    pub schema: fn(&mut Named) -> String,
}

macro_rules! pages {
    ($($path:literal $operation:literal $tag:literal $make:ident -> $type:ty, $summary:literal, $about:literal;)+) => {
        /// Every resource that is only read.
        pub static PAGES: &[Page] = &[$(Page {
            path: $path,
            operation: $operation,
            tag: $tag,
            summary: $summary,
            about: $about,
            body: || line(&$make()),
            schema: collect::<$type>,
        }),+];
    };
}

pages! {
    "/v1/methods" "methods" "catalogues" methods -> Methods, "Methods of calculation",
        "Every method an answer can name, with its version and the references it rests on.";
    "/v1/units" "units" "catalogues" units -> Units, "Quantities and units",
        "Every quantity with the units it is read in and the unit it is printed in; every unit with its factor to base SI and where the factor comes from.";
    "/v1/references" "references" "catalogues" references -> References, "References",
        "Every document the service rests on, with how far it has been checked.";
    "/v1/cautions" "cautions" "catalogues" cautions -> Cautions, "Cautions",
        "Every fixed caution an answer can carry.";
    "/v1/checks" "checks" "catalogues" checks -> Checks, "Checks",
        "Every check an answer can hold.";
    "/v1/warnings" "warnings" "catalogues" warnings -> Warnings, "Warnings",
        "Every warning an answer can hold.";
    "/v1/limits" "limits" "catalogues" limits -> Limits, "Limits",
        "Every limit on the size of a request.";
    "/problems" "problems" "service" problems -> Problems, "Problems and refusals",
        "Every kind of problem, and every code that can stand in the `errors` of one. As HTML where `Accept` prefers it.";
    "/version" "version" "service" version -> Version, "Version",
        "The program's version and the calculation basis in force.";
    "/health/live" "live" "service" live -> Health, "Is the process alive?",
        "Answers as long as the process does.";
    "/health/ready" "ready" "service" ready -> Health, "Is it ready for requests?",
        "Answers with the problem `not_ready` once the service is shutting down, so that a load balancer sends requests elsewhere.";
}

/// Compact JSON with a line end.
pub fn line(content: &impl Serialize) -> Vec<u8> {
    let mut bytes = serde_json::to_vec(content).unwrap_or_default();
    bytes.push(b'\n');
    bytes
}

/// Methods of calculation.
#[derive(Serialize, ToSchema)]
struct Methods {
    /// Set of methods and defaults in force.
    calculation_basis: &'static str,
    /// The methods.
    methods: Vec<MethodEntry>,
}

/// A method of calculation.
#[derive(Serialize, ToSchema)]
struct MethodEntry {
    /// Stable name.
    id: &'static str,
    /// Raised whenever a number can move.
    version: u32,
    /// What it does and where it applies.
    text: &'static str,
    /// Names of the references it rests on.
    references: Vec<&'static str>,
}

fn methods() -> Methods {
    let entries = catalogue::all_methods().into_iter().map(|m| MethodEntry {
        id: m.id,
        version: m.version,
        text: m.text,
        references: m.references.iter().map(|r| r.id).collect(),
    });
    Methods {
        calculation_basis: CALCULATION_BASIS,
        methods: entries.collect(),
    }
}

/// Quantities and units.
#[derive(Serialize, ToSchema)]
struct Units {
    /// The quantities.
    quantities: Vec<QuantityEntry>,
    /// The sets of units they are read in.
    unit_sets: Vec<UnitSetEntry>,
}

/// A quantity.
#[derive(Serialize, ToSchema)]
struct QuantityEntry {
    /// Name of its schema in the API document.
    name: &'static str,
    /// What it is for.
    text: &'static str,
    /// Units it is read in.
    units: Vec<&'static str>,
    /// Unit it is printed in with `si`.
    si: &'static str,
    /// Unit it is printed in with `us_customary`.
    us_customary: &'static str,
}

/// A set of units of one dimension.
#[derive(Serialize, ToSchema)]
struct UnitSetEntry {
    /// Name of its schema in the API document.
    name: &'static str,
    /// What it measures.
    text: &'static str,
    /// The units.
    units: Vec<UnitEntry>,
    /// Spellings that are refused, with what to write.
    refused: Vec<RefusedSpelling>,
}

/// A unit.
#[derive(Serialize, ToSchema)]
struct UnitEntry {
    /// Name on the wire.
    name: &'static str,
    /// SI value of one of it.
    si_factor: f64,
    /// SI value of zero of it.
    si_offset: f64,
    /// Where the factor comes from.
    origin: &'static str,
}

/// A spelling that is refused.
#[derive(Serialize, ToSchema)]
struct RefusedSpelling {
    /// As it is met.
    written: &'static str,
    /// What to do.
    hint: &'static str,
}

fn units() -> Units {
    let quantities = ROLES.iter().map(|role| QuantityEntry {
        name: role.name,
        text: role.about.trim(),
        units: role.units.iter().map(|u| u.name).collect(),
        si: role.si.name,
        us_customary: role.us.name,
    });
    let sets = UNIT_SETS.iter().map(|set| UnitSetEntry {
        name: set.name,
        text: set.about.trim(),
        units: (set.units.iter())
            .map(|unit| UnitEntry {
                name: unit.name,
                si_factor: unit.factor,
                si_offset: unit.offset,
                origin: unit.origin,
            })
            .collect(),
        refused: (set.hints.iter())
            .map(|&(written, hint)| RefusedSpelling { written, hint })
            .collect(),
    });
    Units {
        quantities: quantities.collect(),
        unit_sets: sets.collect(),
    }
}

/// References.
#[derive(Serialize, ToSchema)]
struct References {
    /// The references.
    references: Vec<ReferenceEntry>,
}

/// A document, clause or practice that a number or a rule comes from.
#[derive(Serialize, ToSchema)]
struct ReferenceEntry {
    /// Stable name.
    id: &'static str,
    /// Document with its edition or year.
    document: &'static str,
    /// Clause, table, equation or page; may be empty.
    locator: &'static str,
    /// How far it has been checked.
    status: Status,
    /// What to know before relying on it; may be empty.
    note: &'static str,
}

fn references() -> References {
    let entries = source::all().map(|r| ReferenceEntry {
        id: r.id,
        document: r.document,
        locator: r.locator,
        status: r.status,
        note: r.note,
    });
    References {
        references: entries.collect(),
    }
}

/// A code with its text.
#[derive(Serialize, ToSchema)]
struct CodeEntry {
    /// Stable code.
    code: &'static str,
    /// What it says.
    text: &'static str,
}

/// Cautions.
#[derive(Serialize, ToSchema)]
struct Cautions {
    /// The cautions.
    cautions: Vec<CodeEntry>,
}

fn cautions() -> Cautions {
    let entries = catalogue::all_cautions().into_iter();
    Cautions {
        cautions: entries.map(|d| code(d.id, d.text)).collect(),
    }
}

fn code(code: &'static str, text: &'static str) -> CodeEntry {
    CodeEntry { code, text }
}

/// Checks.
#[derive(Serialize, ToSchema)]
struct Checks {
    /// The checks; `code` is the `id` of a check in an answer.
    checks: Vec<CodeEntry>,
}

fn checks() -> Checks {
    let entries = catalogue::all_checks().into_iter();
    Checks {
        checks: entries.map(|d| code(d.id, d.text)).collect(),
    }
}

/// Warnings.
#[derive(Serialize, ToSchema)]
struct Warnings {
    /// The warnings.
    warnings: Vec<CodeEntry>,
}

fn warnings() -> Warnings {
    let entries = catalogue::all_warnings().into_iter();
    Warnings {
        warnings: entries.map(|d| code(d.id, d.text)).collect(),
    }
}

/// Limits.
#[derive(Serialize, ToSchema)]
struct Limits {
    /// The limits.
    limits: &'static [Limit],
}

fn limits() -> Limits {
    Limits {
        limits: limits::ALL,
    }
}

/// Problems and refusals.
#[derive(Serialize, ToSchema)]
pub struct Problems {
    /// Kinds of problem.
    pub problems: Vec<ProblemEntry>,
    /// Codes of the faults inside a request.
    refusals: Vec<CodeEntry>,
}

/// A kind of problem.
#[derive(Serialize, ToSchema)]
pub struct ProblemEntry {
    /// Stable code; the last part of a problem's `type`.
    pub code: &'static str,
    /// Status of the response.
    pub status: u16,
    /// Stage at which a request is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stage: Option<Stage>,
    /// One line.
    pub title: &'static str,
    /// What it means and what to do.
    pub text: &'static str,
}

fn problems() -> Problems {
    let kinds = KINDS.iter().map(|kind| ProblemEntry {
        code: kind.slug,
        status: kind.status,
        stage: kind.stage,
        title: kind.title,
        text: kind.text,
    });
    let refusals = catalogue::all_refusals().into_iter();
    Problems {
        problems: kinds.collect(),
        refusals: refusals.map(|d| code(d.id, d.text)).collect(),
    }
}

/// Version.
#[derive(Serialize, ToSchema)]
struct Version {
    /// Name of the program.
    name: &'static str,
    /// Version of the program.
    version: &'static str,
    /// Set of methods and defaults in force.
    calculation_basis: &'static str,
}

fn version() -> Version {
    Version {
        name: "bearwell",
        version: crate::VERSION,
        calculation_basis: CALCULATION_BASIS,
    }
}

/// Health.
#[derive(Serialize, ToSchema)]
struct Health {
    /// `live` or `ready`.
    status: &'static str,
}

fn live() -> Health {
    Health { status: "live" }
}

fn ready() -> Health {
    Health { status: "ready" }
}

/// Kinds of problem, then the codes of refusals, each as an entry of its own.
pub fn all_problems() -> Vec<ProblemEntry> {
    use catalogue::refusals::{CSV_SEPARATOR, NOT_CSV, NOT_JSON};
    // codes of a body that cannot be read
    let syntax = [NOT_JSON.id, NOT_CSV.id, CSV_SEPARATOR.id];
    let refusals = catalogue::all_refusals().into_iter().map(|d| ProblemEntry {
        code: d.id,
        status: if syntax.contains(&d.id) { 400 } else { 422 },
        stage: None,
        title: d.text,
        text: "A code in the `errors` of a problem.",
    });
    problems().problems.into_iter().chain(refusals).collect()
}
