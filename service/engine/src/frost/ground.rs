//! The depths of a request put in order: base of frost, helices from the top down, tip. No
//! judgement; what can contradict among them is in `ground_faults`.

use super::request::Request;
use super::{depth, equations};
use crate::contract::utilisation;
use crate::quantity::{Length, Size};
use crate::trace::Trace;

/// One helix with its name.
#[derive(Debug, Clone)]
pub struct FrostHelix {
    /// Its label, or its number from the top.
    pub label: String,
    /// Depth below final grade.
    pub depth: Length,
    /// Diameter.
    pub diameter: Size,
}

/// Depths below final grade, in order.
#[derive(Debug, Clone)]
pub struct Ground {
    /// Surface that is exposed to the cold.
    pub cold_surface: Length,
    /// Base of frost that is used.
    pub base: Length,
    /// Base of frost by the jurisdiction's depth.
    pub official_base: Length,
    /// Base of frost by the computed depth.
    pub computed_base: Option<Length>,
    /// Helices from the top down.
    pub helices: Vec<FrostHelix>,
    /// Tip of the pile.
    pub tip: Length,
    /// Head of the pile.
    pub head: Length,
}

impl Ground {
    /// Puts the depths of a request in order, with a computed frost depth where there is one.
    /// The list of helices is not empty.
    pub fn of(request: &Request, computed: Option<Length>, trace: &mut Trace) -> Self {
        let helices = ordered(request);
        let deepest = helices.last().map_or(Length::ZERO, |h| h.depth);
        let cold_surface = request.frost.cold_surface();
        let official_base =
            equations::frost_base(cold_surface, request.frost.official_depth, trace);
        let computed_base =
            computed.map(|depth| equations::computed_frost_base(cold_surface, depth, trace));
        let base = match computed_base.filter(|_| depth::counts(&request.frost)) {
            Some(computed) => equations::deeper_frost_base(official_base, computed, trace),
            None => official_base,
        };
        Self {
            cold_surface,
            base,
            official_base,
            computed_base,
            tip: request.tip_depth.unwrap_or(deepest),
            head: request.head_depth.unwrap_or(Length::ZERO),
            helices,
        }
    }

    /// Depth of the top helix.
    pub fn top(&self) -> Length {
        self.helices.first().map_or(Length::ZERO, |h| h.depth)
    }

    /// Diameter of the largest helix.
    pub fn largest(&self) -> Size {
        self.helices
            .iter()
            .fold(Size::ZERO, |most, h| most.max(h.diameter))
    }

    /// Depth of the deepest helix.
    pub fn deepest(&self) -> Length {
        self.helices.last().map_or(Length::ZERO, |h| h.depth)
    }
}

/// Whether `depth` is at least `limit`, by the one rule for limits: a depth exactly at the
/// base of ground that moves is below it.
pub fn reaches(limit: Length, depth: Length) -> bool {
    utilisation(limit.si(), depth.si()).1
}

fn ordered(request: &Request) -> Vec<FrostHelix> {
    let mut places: Vec<usize> = (0..request.pile.helices.len()).collect();
    let depth = |i: &usize| request.pile.helices[*i].depth.si();
    places.sort_by(|a, b| depth(a).total_cmp(&depth(b)));
    places
        .into_iter()
        .enumerate()
        .map(|(rank, index)| {
            let helix = &request.pile.helices[index];
            FrostHelix {
                label: match &helix.label {
                    Some(label) => label.0.clone(),
                    None => (rank + 1).to_string(),
                },
                depth: helix.depth,
                diameter: helix.diameter,
            }
        })
        .collect()
}
