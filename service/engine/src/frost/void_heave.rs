//! The heave that is predicted under a beam, by its causes: the ways of `ground-heave`, over
//! the frost depth of this calculation. What it meets is in `void_form`.

use super::void_request::{HeavePrediction, HeaveSource};
use crate::contract::{Issue, Work};
use crate::ground_heave::{
    DesignHeave, FreezingHeave, SwellHeave, SwellSource, freezing, swelling,
};
use crate::quantity::{Length, Size};

/// The heave that counts with what it comes from.
#[derive(Debug, Clone)]
pub struct Predicted {
    /// The larger of the causes sent; the upper end of a range.
    pub design: DesignHeave,
    /// Heave by freezing, where it was calculated.
    pub freezing: Option<FreezingHeave>,
    /// Swell, where more than a number was sent.
    pub swell: Option<SwellHeave>,
}

/// Faults in the lengths of lists; `at` points to the prediction.
pub fn lengths(at: &str, heave: &HeavePrediction, issues: &mut Vec<Issue>) {
    if let Some(swell) = &heave.swell {
        swelling::lengths(&format!("{at}/swell"), swell, issues);
    }
}

/// Every fault of a prediction; `at` points to it.
pub fn faults(at: &str, heave: &HeavePrediction, frost_depth: Length) -> Vec<Issue> {
    let mut issues = Vec::new();
    if let Some(HeaveSource::Calculated(sent)) = &heave.frost {
        issues.extend(freezing::faults(
            &format!("{at}/frost/calculated"),
            sent.in_situ.as_ref(),
            sent.segregation.as_ref(),
            frost_depth,
        ));
    }
    if let Some(swell) = &heave.swell {
        issues.extend(swelling::faults(&format!("{at}/swell"), swell));
    }
    issues
}

/// The heave of a prediction without faults; `None` where no cause was sent.
pub fn predict(heave: &HeavePrediction, frost_depth: Length, work: &mut Work) -> Option<Predicted> {
    let mut by_frost: Option<Size> = None;
    let mut freezing = None;
    match &heave.frost {
        Some(HeaveSource::Given(given)) => by_frost = Some(given.movement),
        Some(HeaveSource::Calculated(sent)) => {
            freezing = freezing::heave(
                sent.in_situ.as_ref(),
                sent.segregation.as_ref(),
                frost_depth,
                work,
            );
            by_frost = freezing.as_ref().map(|f| f.movement);
        }
        None => {}
    }
    let swell = heave.swell.as_ref().map(|s| swelling::swell(s, work));
    let design = swelling::larger(by_frost, swell.as_ref())?;
    let is_a_number = matches!(heave.swell, Some(SwellSource::Given(_)));
    Some(Predicted {
        design,
        freezing,
        swell: swell.filter(|_| !is_a_number),
    })
}
