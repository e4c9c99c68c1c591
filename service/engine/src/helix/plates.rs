//! The helices in order of depth, their areas, and the faults a pile can have in a
//! profile.

use super::codes::refusals;
use super::methods::HelixArea;
use super::pile::{AxialDirection, HelixPlate};
use crate::catalogue::refusals::DUPLICATE_LABEL;
use crate::contract::Issue;
use crate::math::PI;
use crate::quantity::{Area, Length, Size, round9};
use crate::shaft::Shaft;
use crate::soil::SoilProfile;
use crate::source::{BEARWELL_CHOICE, DERIVED, HELIX_AREA_NET};
use crate::text::Tags;
use crate::torque::codes::refusals::{SHAFT_DIAGONAL_IMPOSSIBLE, SHAFT_WALL_TOO_THICK};
use crate::torque::factor::WIDTH_TOLERANCE;
use crate::trace::Trace;

/// Two depths closer than this are the same place (rounding of unit conversions).
pub(crate) const SAME_DEPTH_M: f64 = 1e-6;
/// Two helices closer than this would be in the same place: about one plate thickness.
const SAME_PLATE_M: f64 = 0.01;

/// A helix by its place on the pile.
#[derive(Debug, Clone)]
pub(crate) struct Plate<'a> {
    /// Place in the request.
    pub index: usize,
    /// Its label, or its number from the top.
    pub label: String,
    pub tags: &'a Option<Tags>,
    pub diameter: Size,
    pub depth: Length,
}

/// The helices from the top down, whatever their order in the request.
pub(crate) fn from_the_top(helices: &[HelixPlate]) -> Vec<Plate<'_>> {
    let mut order: Vec<usize> = (0..helices.len()).collect();
    order.sort_by(|&a, &b| helices[a].depth.si().total_cmp(&helices[b].depth.si()));
    let place = |(number, index): (usize, usize)| {
        let h = &helices[index];
        Plate {
            index,
            label: match &h.label {
                Some(label) => label.0.clone(),
                None => (number + 1).to_string(),
            },
            tags: &h.tags,
            diameter: h.diameter,
            depth: h.depth,
        }
    };
    order.into_iter().enumerate().map(place).collect()
}

/// Every fault of the pile in the profile; `at` is the pointer of the object that holds
/// `shaft` and `helices`.
pub fn pile_faults(
    profile: &SoilProfile,
    shaft: &Shaft,
    helices: &[HelixPlate],
    at: &str,
) -> Vec<Issue> {
    let mut issues = plate_faults(shaft, helices, at);
    for plate in &from_the_top(helices) {
        if plate.depth.si() > profile.final_depth().si() + SAME_DEPTH_M {
            let known = told(profile.final_depth());
            issues.push(
                Issue::new(
                    format!("{at}/helices/{}/depth", plate.index),
                    &refusals::HELIX_BELOW_PROFILE,
                    format!(
                        "helix {} is at {}; no soil is given below {known}",
                        plate.label,
                        told(plate.depth)
                    ),
                )
                .limit(known),
            );
        }
    }
    issues
}

/// Every fault of the helices on their shaft, whatever the soil; `at` as above.
pub fn plate_faults(shaft: &Shaft, helices: &[HelixPlate], at: &str) -> Vec<Issue> {
    let plates = from_the_top(helices);
    let mut issues = shaft_faults(shaft, at);
    for plate in &plates {
        let here = format!("{at}/helices/{}", plate.index);
        issues.extend(plate_fault(plate, shaft, &here));
        if plates
            .iter()
            .any(|p| p.index < plate.index && p.label == plate.label)
        {
            issues.push(Issue::new(
                here.clone(),
                &DUPLICATE_LABEL,
                format!("two helices are called `{}`", plate.label),
            ));
        }
    }
    for pair in plates.windows(2) {
        let (upper, lower) = (&pair[0], &pair[1]);
        if lower.depth.si() - upper.depth.si() < SAME_PLATE_M {
            let later = upper.index.max(lower.index);
            issues.push(
                Issue::new(
                    format!("{at}/helices/{later}/depth"),
                    &refusals::HELICES_COINCIDE,
                    format!(
                        "helices {} and {} are in the same place, at {}",
                        upper.label,
                        lower.label,
                        told(upper.depth)
                    ),
                )
                .limit(format!(
                    "{} apart",
                    Size::ROLE.in_both_systems(SAME_PLATE_M)
                ))
                .source(&BEARWELL_CHOICE),
            );
        }
    }
    issues
}

/// A depth in both unit systems.
pub(crate) fn told(depth: Length) -> String {
    Length::ROLE.in_both_systems(depth.si())
}

/// A plate that leaves nothing beside its shaft.
fn plate_fault(plate: &Plate, shaft: &Shaft, here: &str) -> Option<Issue> {
    let width = shaft.effective_diameter();
    let wider = plate.diameter.si() > width.si() * (1.0 + 1e-9);
    let gross = gross_area(plate.diameter).si();
    (!wider || gross <= shaft.gross_area().si()).then(|| {
        Issue::new(
            format!("{here}/diameter"),
            &refusals::HELIX_NOT_WIDER_THAN_SHAFT,
            format!("helix {} is not wider than its shaft", plate.label),
        )
        .limit(Size::ROLE.in_both_systems(width.si()))
    })
}

/// Faults of the shaft itself; its wall is not used here but must be possible.
pub(crate) fn shaft_faults(shaft: &Shaft, at: &str) -> Vec<Issue> {
    let told = |size: Size| Size::ROLE.in_both_systems(size.si());
    match shaft {
        Shaft::Round(round) => round
            .wall_thickness
            .filter(|wall| round9(*wall * 2.0 / round.outside_diameter) > 1.0)
            .map(|wall| {
                Issue::new(
                    format!("{at}/shaft/round/wall_thickness"),
                    &SHAFT_WALL_TOO_THICK,
                    told(wall),
                )
                .limit(told(round.outside_diameter / 2.0))
            })
            .into_iter()
            .collect(),
        Shaft::Square(square) => {
            let sharp = square.side * std::f64::consts::SQRT_2;
            square
                .diagonal
                .filter(|d| round9(*d / square.side) < 1.0 || *d > sharp + WIDTH_TOLERANCE.value)
                .map(|diagonal| {
                    Issue::new(
                        format!("{at}/shaft/square/diagonal"),
                        &SHAFT_DIAGONAL_IMPOSSIBLE,
                        told(diagonal),
                    )
                    .limit(format!("{} to {}", told(square.side), told(sharp)))
                })
                .into_iter()
                .collect()
        }
    }
}

fn gross_area(diameter: Size) -> Area {
    Area::from_si(PI * diameter.si() * diameter.si() / 4.0)
}

/// Area of a helix that bears.
///
/// A = pi D^2/4 - A_shaft, or pi D^2/4 gross; D diameter (m), A_shaft area of the shaft (m2).
/// Range: D above the shaft. Source: IBC 1810.3.3.1.9, geometry. Sign: none.
pub(crate) fn bearing_area(
    diameter: Size,
    lowest: bool,
    shaft: &Shaft,
    direction: AxialDirection,
    rule: HelixArea,
    trace: &mut Trace,
) -> Area {
    let gross = gross_area(diameter);
    let whole = match rule {
        HelixArea::Net => false,
        HelixArea::BottomGross => lowest && direction == AxialDirection::Compression,
        HelixArea::Gross => true,
    };
    if whole {
        return trace.step("A", "pi D^2/4", gross, [("D", diameter.into())], &DERIVED);
    }
    let hub = shaft.gross_area();
    trace.step(
        "A",
        "pi D^2/4 - A_shaft",
        gross - hub,
        [("D", diameter.into()), ("A_shaft", hub.into())],
        &HELIX_AREA_NET,
    )
}
