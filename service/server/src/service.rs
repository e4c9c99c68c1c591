//! The service without HTTP: the table of calculations with its schemas and document.
//! Everything a door (HTTP, command line) needs to answer a request.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::OnceLock;

use crate::problem::Problem;
use crate::schemas::{Schemas, collect_shared};
use crate::table::{Ask, CALCULATIONS, Entry, Names, Reply};

/// A table of calculations, ready to answer.
pub struct Service {
    /// The calculations.
    pub entries: &'static [Entry],
    /// Names of their schemas, in the same order.
    pub names: Vec<Names>,
    /// Every schema of the document.
    pub schemas: Schemas,
    document: OnceLock<String>,
}

impl Service {
    /// A service of these calculations.
    pub fn new(entries: &'static [Entry]) -> Self {
        let mut schemas = Schemas::default();
        let mut names = Vec::with_capacity(entries.len());
        // one calculation at a time: all together fill a hundred MiB
        for entry in entries {
            let mut named = Vec::new();
            names.push((entry.schemas)(&mut named));
            schemas.add(named);
        }
        let mut shared = Vec::new();
        collect_shared(&mut shared);
        schemas.add(shared);
        crate::document::answers(&mut schemas, &names);
        let requests: Vec<String> = names.iter().map(|n| n.request.clone()).collect();
        for name in &requests {
            schemas.share(name);
        }
        schemas.open_answers(&requests);
        Self {
            entries,
            names,
            schemas,
            document: OnceLock::new(),
        }
    }

    /// The service as it is shipped.
    pub fn standard() -> &'static Self {
        static STANDARD: OnceLock<Service> = OnceLock::new();
        STANDARD.get_or_init(|| Self::new(CALCULATIONS))
    }

    /// The calculation of that name.
    pub fn entry(&self, name: &str) -> Option<&'static Entry> {
        self.entries.iter().find(|entry| entry.name == name)
    }

    /// Answers one request. A panic is a fault of the service and becomes a problem.
    pub fn answer(&self, entry: &Entry, ask: &Ask) -> Result<Reply, Problem> {
        catch_unwind(AssertUnwindSafe(|| (entry.answer)(ask))).unwrap_or_else(|_| {
            tracing::error!(calculation = entry.name, "a calculation panicked");
            Err(Problem::internal())
        })
    }

    /// The API document; made once.
    pub fn document(&self) -> &str {
        self.document
            .get_or_init(|| crate::document::document(self))
    }
}
