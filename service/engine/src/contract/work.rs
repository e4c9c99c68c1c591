//! What a calculation writes to while it runs: steps, checks, warnings, cautions and
//! methods. It also carries the signal to stop.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use super::answer::{Caution, DefaultUsed, MethodUse, VerdictReason, Warning};
use super::check::{Check, Subject, SubjectKind};
use super::issue::Refusal;
use crate::catalogue::{CautionDef, MethodDef, WarningDef, warnings};
use crate::quantity::Shown;
use crate::source::{Sourced, Status};
use crate::trace::Trace;

/// The workbench of one calculation.
#[derive(Debug, Default)]
pub struct Work {
    /// Where equations record themselves.
    pub trace: Trace,
    pub(crate) checks: Vec<Check>,
    pub(crate) warnings: Vec<Warning>,
    pub(crate) cautions: Vec<Caution>,
    pub(crate) methods: Vec<MethodUse>,
    pub(crate) defaults: Vec<DefaultUsed>,
    pub(crate) hold_backs: Vec<VerdictReason>,
    stop: Option<Arc<AtomicBool>>,
}

impl Work {
    /// A workbench; `stop` ends the work at its next counted step once it is true.
    pub fn new(trace: Trace, stop: Option<Arc<AtomicBool>>) -> Self {
        Self {
            trace,
            stop,
            ..Default::default()
        }
    }

    /// A workbench for a part of the work that is judged by itself: it records steps where this
    /// one does, and stops with it.
    pub fn beside(&self) -> Self {
        let trace = if self.trace.is_on() {
            Trace::on()
        } else {
            Trace::off()
        };
        Self::new(trace, self.stop.clone())
    }

    /// A workbench for a trial whose working nobody reads; it stops with this one.
    pub fn quietly(&self) -> Self {
        Self::new(Trace::off(), self.stop.clone())
    }

    /// Takes over the cautions, methods and defaults of a part.
    pub fn take_over(
        &mut self,
        cautions: Vec<Caution>,
        methods: Vec<MethodUse>,
        defaults: Vec<DefaultUsed>,
    ) {
        for default in defaults {
            self.used(default);
        }
        for caution in cautions {
            if self.cautions.iter().all(|c| c.code != caution.code) {
                self.cautions.push(caution);
            }
        }
        for method in methods {
            if self.methods.iter().all(|m| m.id != method.id) {
                self.methods.push(method);
            }
        }
    }

    /// Adds a judged check.
    pub fn check(&mut self, check: Check) {
        self.checks.push(check);
    }

    /// Adds a warning about the whole answer.
    pub fn warn(&mut self, def: &'static WarningDef, detail: impl Into<String>) {
        self.push_warning(def, None, detail.into());
    }

    /// Adds a warning about one thing.
    pub fn warn_about(
        &mut self,
        def: &'static WarningDef,
        kind: SubjectKind,
        label: impl Into<String>,
        detail: impl Into<String>,
    ) {
        self.push_warning(def, Some(Subject::new(kind, label)), detail.into());
    }

    fn push_warning(&mut self, def: &'static WarningDef, subject: Option<Subject>, detail: String) {
        let warning = Warning {
            code: def.id.into(),
            subject,
            detail,
        };
        if !self.warnings.contains(&warning) {
            self.warnings.push(warning);
        }
    }

    /// Adds a warning that also holds the verdict back to `provisional`.
    pub fn hold_back(&mut self, def: &'static WarningDef, detail: impl Into<String>) {
        let detail = detail.into();
        self.push_warning(def, None, detail.clone());
        self.hold_backs.push(VerdictReason {
            code: def.id.into(),
            subject: None,
            detail,
        });
    }

    /// Adds a fixed caution, once.
    pub fn caution(&mut self, def: &'static CautionDef) {
        if self.cautions.iter().all(|c| c.code != def.id) {
            self.cautions.push(Caution {
                code: def.id.into(),
                text: def.text.into(),
            });
        }
    }

    /// Notes a method as used, once.
    pub fn method(&mut self, def: &'static MethodDef) {
        if self.methods.iter().all(|m| m.id != def.id) {
            self.methods.push(MethodUse {
                id: def.id.into(),
                version: def.version,
            });
        }
    }

    fn used(&mut self, default: DefaultUsed) {
        if !self.defaults.contains(&default) {
            self.defaults.push(default);
        }
    }

    /// Takes a default: it is listed in the answer, and one whose source is only remembered leaves
    /// a warning.
    pub fn take<T: Copy + Into<Shown>>(&mut self, constant: &Sourced<T>) -> T {
        self.note(constant, Some(constant.value.into()))
    }

    /// Takes a default table or set of values; it is listed by its name and source.
    pub fn take_table<T: Copy>(&mut self, constant: &Sourced<T>) -> T {
        self.note(constant, None)
    }

    fn note<T: Copy>(&mut self, constant: &Sourced<T>, value: Option<Shown>) -> T {
        self.used(DefaultUsed {
            name: constant.id.into(),
            value,
            reference: constant.reference.id.into(),
            status: constant.reference.status,
        });
        if constant.reference.status == Status::Memory {
            self.warn(
                &warnings::DEFAULT_FROM_MEMORY,
                format!(
                    "{}: {} (source `{}` not seen, confirm it)",
                    constant.id, constant.reference.document, constant.reference.id
                ),
            );
        }
        constant.value
    }

    /// To be called at every counted step of a long search.
    pub fn go_on(&self) -> Result<(), Refusal> {
        match &self.stop {
            Some(stop) if stop.load(Ordering::Relaxed) => Err(Refusal::interrupted()),
            _ => Ok(()),
        }
    }
}
