//! The table of calculations. Route, batch, command line and document all follow from
//! it: adding a calculation is adding one line to [`CALCULATIONS`].

use std::sync::atomic::AtomicBool;
use std::sync::{Arc, LazyLock};

use aho_corasick::{AhoCorasick, MatchKind};
use bearwell_engine::catalogue::refusals;
use bearwell_engine::contract::{Answer, Calculation, Issue, Noun, Options, Paper, Work, run};
use bearwell_engine::corrosion::CorrosionLoss;
use bearwell_engine::drag_force::DragForce;
use bearwell_engine::footing::FootingBearing;
use bearwell_engine::forecast::LengthForecast;
use bearwell_engine::frost::FrostEmbedment;
use bearwell_engine::frost_depth::FrostPenetration;
use bearwell_engine::ground_heave::GroundHeave;
use bearwell_engine::helix::HelixCapacity;
use bearwell_engine::job::InstallationJob;
use bearwell_engine::layout::PileLayout;
use bearwell_engine::load_test::LoadTest;
use bearwell_engine::quantity::{In, Presentation, System};
use bearwell_engine::record::InstallationRecord;
use bearwell_engine::relocation::PileRelocation;
use bearwell_engine::torque::TorqueCapacity;
use bearwell_engine::trace::Trace;
use memchr::memmem;
use serde_json::Value;
use utoipa::ToSchema;

use crate::problem::Problem;
use crate::read;
pub use crate::read::CsvBody;
use crate::schemas::{Named, Schemas, collect};
use crate::sheets::{
    ForecastSheets, FrostSheets, HelixSheets, JobSheets, LayoutSheets, LoadTestSheets,
    RecordSheets, RelocationSheets, TorqueSheets,
};

/// Every calculation of the service, one line each.
pub const CALCULATIONS: &[Entry] = &[
    Entry::of::<HelixCapacity, HelixSheets>().heavy_with(&[
        "depth_curve",
        "minimum_depth",
        "helix_sets",
    ]),
    Entry::of::<TorqueCapacity, TorqueSheets>(),
    Entry::of::<FrostEmbedment, FrostSheets>().heavy_with(&["computed"]),
    Entry::of::<FrostPenetration, JsonOnly>().heavy(),
    Entry::of::<GroundHeave, JsonOnly>(),
    Entry::of::<DragForce, JsonOnly>(),
    Entry::of::<CorrosionLoss, JsonOnly>(),
    Entry::of::<PileLayout, LayoutSheets>()
        .heavy()
        .unless(ONE_BEAM),
    Entry::of::<PileRelocation, RelocationSheets>()
        .heavy()
        .unless(ONE_BEAM),
    Entry::of::<FootingBearing, JsonOnly>(),
    Entry::of::<LoadTest, LoadTestSheets>().csv(CsvBody {
        table: "points",
        notes: None,
    }),
    Entry::of::<InstallationRecord, RecordSheets>()
        .csv(CsvBody {
            table: "log",
            notes: Some("notes"),
        })
        .heavy_with(&["relocation"]),
    Entry::of::<InstallationJob, JobSheets>().heavy(),
    Entry::of::<LengthForecast, ForecastSheets>().heavy(),
];

/// One beam on given piles is a band of equations.
const ONE_BEAM: Short = Short {
    bytes: 32 << 10,
    names: &ONE_BEAM_NAMES,
};

static ONE_BEAM_NAMES: LazyLock<AhoCorasick> = LazyLock::new(|| {
    let names = [
        "\"points\"",
        "search",
        "ways_out",
        "outlines",
        "slabs",
        "pattern_load",
        "pile_support",
        "pile_types",
        "lifts_off",
        "staking",
        "keep_outs",
    ];
    // the kind of match for which it looks at several bytes at once
    let built = AhoCorasick::builder()
        .match_kind(MatchKind::LeftmostFirst)
        .build(names);
    built.expect("few short names")
});

const _: () = assert!(unique(CALCULATIONS), "two calculations have one name");

/// The media type every calculation answers in.
pub const JSON: &str = "application/json";
/// The media type of a long table.
pub const CSV: &str = "text/csv";

/// Bytes of an answer of usual size; one that grows is copied.
const WRITTEN_BYTES: usize = 64 << 10;

/// One calculation, with its types turned into plain functions.
pub struct Entry {
    /// Name in the path.
    pub name: &'static str,
    /// The question it answers, one line.
    pub summary: &'static str,
    /// Takes long enough to be kept off the threads that serve connections.
    pub heavy: bool,
    /// Members of a request that make it take long; where its body names one, it is kept off
    /// those threads too.
    pub heavy_with: &'static [&'static str],
    /// What is soon done even so.
    pub short: Option<Short>,
    /// What a body in CSV holds, where one is read.
    pub csv: Option<CsvBody>,
    /// Drawings and tables beside JSON.
    pub sheets: fn() -> Vec<SheetNote>,
    /// Answers one request.
    pub answer: fn(&Ask) -> Result<Reply, Problem>,
    /// Adds its schemas and names the two that stand for request and outcome.
    pub schemas: fn(&mut Named) -> Names,
}

/// Requests of a calculation that takes long that are soon done: short ones that name one thing
/// once at most and others not at all.
#[derive(Debug, Clone, Copy)]
pub struct Short {
    /// Bytes of the body, at most.
    pub bytes: usize,
    /// The member that stands in the body once at most, and then those that do not stand in it;
    /// all are looked for in one pass.
    pub names: &'static LazyLock<AhoCorasick>,
}

impl Short {
    /// Whether a body is one of these, by a look at its bytes. An escape may hide a name.
    fn holds(&self, body: &[u8]) -> bool {
        if body.len() > self.bytes || memchr::memchr(b'\\', body).is_some() {
            return false;
        }
        let mut found = self.names.find_iter(body);
        let first = found.next().map(|name| name.pattern().as_usize());
        first.is_none() || (first == Some(0) && found.next().is_none())
    }
}

fn names(body: &[u8], member: &str) -> bool {
    memmem::find(body, member.as_bytes()).is_some()
}

/// Names of a calculation's schemas.
pub struct Names {
    /// Schema of the request.
    pub request: String,
    /// Schema of the result.
    pub outcome: String,
}

/// What is asked for, besides what stands in the body.
pub struct Ask<'a> {
    /// The request as it came.
    pub body: &'a [u8],
    /// What the body holds where it is CSV; else it is JSON.
    pub csv: Option<CsvBody>,
    /// Schemas of the service.
    pub schemas: &'a Schemas,
    /// Media type of the answer; one the calculation has.
    pub media: &'a str,
    /// Sheet or table asked for outside of the body.
    pub form: Option<&'a str>,
    /// Ends the work once it is true.
    pub stop: Option<Arc<AtomicBool>>,
}

/// An answer, ready to be sent.
#[derive(Debug)]
pub struct Reply {
    /// Its media type.
    pub media: &'static str,
    /// Its bytes; JSON is still without its line end.
    pub body: Vec<u8>,
}

impl Reply {
    /// The bytes as they are sent.
    pub fn into_bytes(mut self) -> Vec<u8> {
        if self.media == JSON {
            self.body.push(b'\n');
        }
        self.body
    }
}

/// The drawings and tables of a calculation.
pub trait Sheets<C: Calculation> {
    /// For each media type the first is the default.
    const ALL: &'static [Sheet<C>];
}

/// Draws an answer to a request.
pub type Draw<C> =
    fn(&<C as Noun>::Request, &Answer<<C as Noun>::Outcome>, System, Paper) -> String;

/// A drawing or table.
pub struct Sheet<C: Calculation> {
    /// What it is.
    pub note: SheetNote,
    /// Draws it.
    pub draw: Draw<C>,
}

/// What a drawing or table is.
#[derive(Debug, Clone, Copy)]
pub struct SheetNote {
    /// Its media type.
    pub media: &'static str,
    /// Its name, for the member `form`.
    pub form: &'static str,
    /// What it shows.
    pub about: &'static str,
}

/// No drawing and no table.
pub struct JsonOnly;

impl<C: Calculation> Sheets<C> for JsonOnly {
    const ALL: &'static [Sheet<C>] = &[];
}

impl Entry {
    /// The entry of a calculation with its sheets.
    pub const fn of<C: Calculation, S: Sheets<C>>() -> Self {
        Self {
            name: C::NAME,
            summary: C::SUMMARY,
            heavy: false,
            heavy_with: &[],
            short: None,
            csv: None,
            sheets: || S::ALL.iter().map(|sheet| sheet.note).collect(),
            answer: answer::<C, S>,
            schemas: |named| Names {
                request: collect::<C::Request>(named),
                outcome: collect_outcome::<C>(named),
            },
        }
    }

    /// Marks it as taking long.
    pub const fn heavy(self) -> Self {
        Self {
            heavy: true,
            ..self
        }
    }

    /// The same entry; a request that names one of these members takes long.
    pub const fn heavy_with(self, members: &'static [&'static str]) -> Self {
        Self {
            heavy_with: members,
            ..self
        }
    }

    /// The same entry; these of its requests are soon done.
    pub const fn unless(self, short: Short) -> Self {
        Self {
            short: Some(short),
            ..self
        }
    }

    /// The same entry; its request is read from CSV too.
    pub const fn csv(self, body: CsvBody) -> Self {
        Self {
            csv: Some(body),
            ..self
        }
    }

    /// Media types of a request, JSON first.
    pub fn reads(&self) -> Vec<&'static str> {
        let csv = self.csv.map(|_| CSV);
        [JSON].into_iter().chain(csv).collect()
    }

    /// What a body of a media type of [`Entry::reads`] holds where it is CSV.
    pub fn csv_of(&self, media: &str) -> Option<CsvBody> {
        self.csv.filter(|_| media == CSV)
    }

    /// Whether a request takes long, by a look at its bytes: a member that is only named
    /// in a text does no harm.
    pub fn takes_long(&self, body: &[u8]) -> bool {
        let soon = self.short.is_some_and(|short| short.holds(body));
        (self.heavy && !soon) || self.heavy_with.iter().any(|member| names(body, member))
    }

    /// Media types of the answer, the default first.
    pub fn media(&self) -> Vec<&'static str> {
        let mut all = vec![JSON];
        for sheet in (self.sheets)() {
            if !all.contains(&sheet.media) {
                all.push(sheet.media);
            }
        }
        all
    }
}

fn collect_outcome<C: Calculation>(named: &mut Named) -> String
where
    C::Outcome: ToSchema,
{
    collect::<C::Outcome>(named)
}

/// Reads, validates, calculates and writes one request. One in CSV is read as the JSON it
/// stands for, and its faults are told in its own lines.
fn answer<C: Calculation, S: Sheets<C>>(ask: &Ask) -> Result<Reply, Problem> {
    let Some(csv) = ask.csv else {
        return answer_json::<C, S>(ask, ask.body);
    };
    let root = ask.schemas.get(&<C::Request as ToSchema>::name());
    let root = root.unwrap_or(&Value::Null);
    let file = read::Sheet::read(ask.body, csv, ask.schemas, root)?;
    answer_json::<C, S>(ask, file.json()).map_err(|problem| file.explain(problem))
}

fn answer_json<C: Calculation, S: Sheets<C>>(ask: &Ask, body: &[u8]) -> Result<Reply, Problem> {
    let mut sheet = None;
    let call = read::request::<C>(body, ask.schemas, |options| {
        match choose::<C, S>(ask, options) {
            Ok(chosen) => {
                sheet = chosen;
                None
            }
            Err(issue) => Some(*issue),
        }
    })?;
    let trace = if call.options.steps() {
        Trace::on()
    } else {
        Trace::off()
    };
    let answer = run::<C>(&call, Work::new(trace, ask.stop.clone()))?;
    let system = call.options.system();
    if let Some(sheet) = sheet {
        let paper = call.options.paper.unwrap_or(match system {
            System::Si => Paper::A4,
            System::UsCustomary => Paper::Letter,
        });
        let body = (sheet.draw)(&call.request, &answer, system, paper).into_bytes();
        let media = sheet.note.media;
        return Ok(Reply { media, body });
    }
    // most answers are longer than what was asked
    let mut written = Vec::with_capacity(2 * body.len() + WRITTEN_BYTES);
    match In(Presentation::Printed(system), &answer).write(&mut written) {
        Ok(()) => Ok(Reply {
            media: JSON,
            body: written,
        }),
        Err(error) => {
            tracing::error!(calculation = C::NAME, %error, "an answer could not be written");
            Err(Problem::internal())
        }
    }
}

/// The sheet that is asked for; none for JSON.
fn choose<C: Calculation, S: Sheets<C>>(
    ask: &Ask,
    options: &Options,
) -> Result<Option<&'static Sheet<C>>, Box<Issue>> {
    let form = ask.form.or(options.form.as_deref());
    let of_media = S::ALL.iter().filter(|sheet| sheet.note.media == ask.media);
    let Some(form) = form else {
        return Ok(of_media.into_iter().next());
    };
    let known: Vec<&str> = of_media.clone().map(|sheet| sheet.note.form).collect();
    let found = of_media.into_iter().find(|sheet| sheet.note.form == form);
    found.map(Some).ok_or_else(|| {
        let detail = format!(
            "`{}` is no form of {}; {}",
            form,
            ask.media,
            read::hint(form, &known)
        );
        let pointer = if options.form.is_some() { "/form" } else { "" };
        Box::new(Issue::new(pointer, &refusals::UNKNOWN_FORM, detail))
    })
}

const fn unique(entries: &[Entry]) -> bool {
    let mut i = 0;
    while i < entries.len() {
        let mut j = i + 1;
        while j < entries.len() {
            if same(entries[i].name.as_bytes(), entries[j].name.as_bytes()) {
                return false;
            }
            j += 1;
        }
        i += 1;
    }
    true
}

const fn same(a: &[u8], b: &[u8]) -> bool {
    if a.len() != b.len() {
        return false;
    }
    let mut i = 0;
    while i < a.len() {
        if a[i] != b[i] {
            return false;
        }
        i += 1;
    }
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_takes_long_is_told_by_the_body() {
        let find = |name| CALCULATIONS.iter().find(|e| e.name == name);
        let entry = find("helix-capacity").expect("an entry");
        assert!(entry.takes_long(br#"{"soil": {}, "minimum_depth": {}}"#));
        assert!(!entry.takes_long(br#"{"soil": {}, "pile": {}}"#));
        let entry = find("pile-layout").expect("an entry");
        let beam = br#"{"beams": [{"points": []}], "piles": {"given": {}}}"#;
        assert!(!entry.takes_long(beam));
        let spaced = [&beam[..], &[b' '; 32 << 10]].concat();
        for body in [
            &br#"{"beams": [{"points": []}], "piles": {"search": {}}}"#[..],
            br#"{"beams": [{"points": []}, {"points": []}]}"#,
            br#"{"beams": [{"points": []}], "piles": {"se\u0061rch": {}}}"#,
            &spaced,
        ] {
            assert!(entry.takes_long(body));
        }
    }
}
