//! Whether a record is complete: the lists of fields with their clauses, and what of them is
//! missing. Where each field is looked for is in `fields.rs`; whether the pile is any good is
//! judged elsewhere.

use std::borrow::Cow;

use super::codes::{checks, methods, refusals};
use super::completeness_outcome::{Completeness, MissingField};
use super::documents::{RecordField, RecordProfile};
use super::fields::{self, Found};
use super::outcome::LogRow;
use super::request::Request;
use crate::contract::{Check, Issue, SubjectKind, Work, list_length};
use crate::limits::RECORD_FIELDS;
use crate::quantity::Length;
use crate::source::{CALLER, IBC_1705_9, NYC_1814_12_RECORD, RECORD_PRACTICE, Reference};

/// A field of a list with the clause that asks for it.
#[derive(Debug, Clone, PartialEq)]
struct Listed {
    field: RecordField,
    clause: Cow<'static, str>,
    source: &'static Reference,
}

use RecordField as F;

/// International Building Code 1705.9, in the order of its text.
const IBC: &[(RecordField, &str)] = &[
    (F::ContinuousInspection, "1705.9, continuous inspection"),
    (F::Equipment, "1705.9, installation equipment used"),
    (F::PileDimensions, "1705.9, pile dimensions"),
    (F::TipElevation, "1705.9, tip elevations"),
    (F::FinalDepth, "1705.9, final depth"),
    (F::FinalTorque, "1705.9, final installation torque"),
];

/// New York City Building Code 1814.12, by its items.
const NYC: &[(RecordField, &str)] = &[
    (F::PileDimensions, "1814.12, item 1.1"),
    (F::SpecificationSheet, "1814.12, item 1.1"),
    (F::Equipment, "1814.12, item 1.2"),
    (F::IndicatorModel, "1814.12, item 1.3"),
    (F::CalibrationRecord, "1814.12, item 1.4"),
    (F::RotationSpeed, "1814.12, item 1.5"),
    (F::RequiredTorque, "1814.12, item 1.6"),
    (F::TorqueBasis, "1814.12, item 1.6"),
    (F::TorquePerFoot, "1814.12, item 1.7"),
    (F::FinalTorque, "1814.12, item 1.7"),
    (F::FinalAdvance, "1814.12, item 1.7"),
    (F::FieldWelds, "1814.12, item 2"),
];

/// What an installer keeps of a pile, so that someone else can tell years later what it
/// stands on.
const INSTALLER: &[RecordField] = &[
    F::PlanNumber,
    F::Date,
    F::Operator,
    F::Equipment,
    F::PileDimensions,
    F::Sections,
    F::FinalDepth,
    F::TorquePerFoot,
    F::FinalTorque,
    F::RequiredTorque,
    F::CalibrationRecord,
    F::Position,
    F::Inclination,
    F::CutOff,
    F::StopReason,
    F::Deviations,
];

/// The list that a profile stands for, in its order.
fn list(profile: &RecordProfile) -> Vec<Listed> {
    let named = |all: &[(RecordField, &'static str)], source| {
        let one = |&(field, clause): &(RecordField, &'static str)| Listed {
            field,
            clause: clause.into(),
            source,
        };
        all.iter().map(one).collect::<Vec<_>>()
    };
    let same = |all: &[RecordField], clause: Cow<'static, str>, source| {
        let one = |field: &RecordField| Listed {
            field: *field,
            clause: clause.clone(),
            source,
        };
        all.iter().map(one).collect::<Vec<_>>()
    };
    let (mut listed, also) = match profile {
        RecordProfile::Ibc17059(more) => (named(IBC, &IBC_1705_9), &more.also),
        RecordProfile::Nyc181412(more) => (named(NYC, &NYC_1814_12_RECORD), &more.also),
        RecordProfile::InstallerMinimum(more) => {
            let practice = same(INSTALLER, "common practice".into(), &RECORD_PRACTICE);
            (practice, &more.also)
        }
        RecordProfile::Own(own) => {
            return same(&own.fields, own.reference.clone().into(), &CALLER);
        }
    };
    let (clause, source) = match profile {
        RecordProfile::Ibc17059(_) => (
            "1705.9, other data the design professional requires",
            &IBC_1705_9,
        ),
        _ => ("asked for beside the list", &CALLER),
    };
    for more in same(also.as_deref().unwrap_or_default(), clause.into(), source) {
        if listed.iter().all(|l| l.field != more.field) {
            listed.push(more);
        }
    }
    listed
}

/// What the caller lists, with its pointer.
fn own_list(profile: &RecordProfile) -> Option<(&[RecordField], String, usize)> {
    let (also, tag) = match profile {
        RecordProfile::Ibc17059(more) => (&more.also, "ibc_1705_9"),
        RecordProfile::Nyc181412(more) => (&more.also, "nyc_1814_12"),
        RecordProfile::InstallerMinimum(more) => (&more.also, "installer_minimum"),
        RecordProfile::Own(own) => {
            return Some((&own.fields, "/record_profile/own/fields".to_owned(), 1));
        }
    };
    let fields = also.as_deref()?;
    Some((fields, format!("/record_profile/{tag}/also"), 0))
}

/// Faults in the lengths of the caller's lists.
pub(super) fn lengths(request: &Request, issues: &mut Vec<Issue>) {
    if let Some((fields, pointer, least)) = request.record_profile.as_ref().and_then(own_list) {
        list_length(issues, pointer, fields.len(), least, RECORD_FIELDS);
    }
}

/// Fields that the caller lists twice.
pub(super) fn faults(request: &Request, issues: &mut Vec<Issue>) {
    let Some((fields, pointer, _)) = request.record_profile.as_ref().and_then(own_list) else {
        return;
    };
    for (at, field) in fields.iter().enumerate() {
        if let Some(first) = fields[..at].iter().position(|f| f == field) {
            issues.push(Issue::new(
                format!("{pointer}/{at}"),
                &refusals::FIELD_TWICE,
                format!("`{}` stands at {first} already", fields::name(*field)),
            ));
        }
    }
}

/// The record against the list asked for; none where none was. A field that is missing leaves
/// the verdict `provisional`: the pile itself may be good.
pub(super) fn judge(
    request: &Request,
    rows: &[LogRow],
    window_from: Option<Length>,
    work: &mut Work,
) -> Option<Completeness> {
    let profile = request.record_profile.as_ref()?;
    work.method(&methods::COMPLETENESS);
    let listed = list(profile);
    let required_count = listed.len();
    let mut missing = Vec::new();
    for Listed {
        field,
        clause,
        source,
    } in listed
    {
        let detail = match fields::look(field, request, rows, window_from) {
            Found::There => continue,
            Found::Missing => None,
            Found::InPart(detail) => Some(detail),
        };
        missing.push(MissingField {
            field,
            clause,
            member: fields::member(field).into(),
            detail,
            source: source.into(),
        });
    }
    work.check(check(request, profile, &missing));
    Some(Completeness {
        complete: missing.is_empty(),
        required_count,
        present_count: required_count - missing.len(),
        missing,
    })
}

fn check(request: &Request, profile: &RecordProfile, missing: &[MissingField]) -> Check {
    let source = match profile {
        RecordProfile::Ibc17059(_) => &IBC_1705_9,
        RecordProfile::Nyc181412(_) => &NYC_1814_12_RECORD,
        RecordProfile::InstallerMinimum(_) => &RECORD_PRACTICE,
        RecordProfile::Own(_) => &CALLER,
    };
    let mut check = Check::at_most(&checks::COMPLETE, missing.len() as f64, 0.0, source);
    if !missing.is_empty() {
        let told = |m: &MissingField| format!("`{}` ({})", fields::name(m.field), m.clause);
        let all: Vec<String> = missing.iter().map(told).collect();
        check = check.reason(format!("missing: {}", all.join(", ")));
    }
    let check = check.unproven();
    match &request.label {
        Some(label) => check.subject(SubjectKind::Pile, label.as_str()),
        None => check,
    }
}
