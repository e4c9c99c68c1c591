//! Depths of the helices and distances between them, judged. The same rules over depth are
//! in `rules.rs`.

use super::codes::{checks, warnings};
use super::plates::{Plate, from_the_top};
use super::questions::EmbedmentRules;
use super::request::Request;
use super::resistance::largest;
use crate::contract::{Check, CheckStatus, SubjectKind, Work};
use crate::quantity::{Length, Size};
use crate::source::{CALLER, HELIX_SPACING_3D, Sourced, TOP_HELIX_5D};

/// Least depth of the top helix where there is tension, diameters of the largest helix.
pub static MINIMUM_EMBEDMENT_RATIO: Sourced<f64> =
    Sourced::new("minimum_embedment_ratio", 5.0, &TOP_HELIX_5D);
/// Distance between helices that keeps their interaction small, diameters of the lower one.
pub static SPACING_RATIO: Sourced<f64> =
    Sourced::new("helix_spacing_ratio", 3.0, &HELIX_SPACING_3D);

/// Depth of the top helix and distances between helices.
pub(super) fn judge_geometry(request: &Request, work: &mut Work) {
    let plates = from_the_top(&request.pile.helices);
    if let (Some(top), Some(lowest)) = (plates.first(), plates.last()) {
        judge_embedment(request, top, lowest, largest(&plates), work);
    }
    for pair in plates.windows(2) {
        judge_spacing(&pair[0], &pair[1], request.is_judged(), work);
    }
}

fn judge_embedment(request: &Request, top: &Plate, lowest: &Plate, largest: Size, work: &mut Work) {
    let rules = request.embedment_rules();
    let ratio = match rules.top_helix_ratio {
        Some(ratio) => ratio,
        None if request.pulls() => work.take(&MINIMUM_EMBEDMENT_RATIO),
        None => 0.0,
    };
    let source = |sent: bool| if sent { &CALLER } else { &TOP_HELIX_5D };
    if ratio > 0.0 {
        let least = Length::from(largest) * ratio;
        let source = source(rules.top_helix_ratio.is_some());
        work.check(
            Check::at_least(&checks::EMBEDMENT, least, top.depth, source)
                .subject(SubjectKind::Helix, &top.label),
        );
    }
    for (def, least, plate) in [
        (&checks::TOP_DEPTH, rules.top_helix_depth, top),
        (&checks::LOWEST_DEPTH, rules.lowest_helix_depth, lowest),
    ] {
        if let Some(least) = least {
            work.check(
                Check::at_least(def, least, plate.depth, &CALLER)
                    .subject(SubjectKind::Helix, &plate.label),
            );
        }
    }
}

fn judge_spacing(upper: &Plate, lower: &Plate, asked: bool, work: &mut Work) {
    let least = Length::from(lower.diameter) * work.take(&SPACING_RATIO);
    let spacing = lower.depth - upper.depth;
    let check = Check::at_least(&checks::SPACING, least, spacing, &HELIX_SPACING_3D)
        .subject(SubjectKind::Helix, &lower.label)
        .advisory();
    if check.status == CheckStatus::Warn {
        work.warn_about(
            &warnings::HELICES_CLOSE,
            SubjectKind::Helix,
            &lower.label,
            format!(
                "helix {} is {:.2} diameters below helix {}",
                lower.label,
                spacing.si() / lower.diameter.si(),
                upper.label
            ),
        );
    }
    if asked {
        work.check(check);
    }
}

impl Request {
    /// Rules of embedment as sent.
    pub(super) fn embedment_rules(&self) -> EmbedmentRules {
        let asked = self.minimum_depth.and_then(|m| m.embedment);
        asked.unwrap_or_default()
    }
}
