//! The least distance between piles: the caller's, and three diameters of the largest
//! helix.

use super::offers::Offers;
use crate::contract::{Issue, Work};
use crate::helix::GROUP_SPACING_RATIO;
use crate::layout::codes::refusals;
use crate::layout::equations::helix_spacing;
use crate::layout::request::{PilePlacement, Request};
use crate::quantity::{Length, Size, in_both_systems};
use crate::source::{CALLER, Reference};

/// What is asked of distances between piles.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(in crate::layout) struct Spacing {
    /// The caller's least distance, m.
    own: Option<f64>,
    /// Helix of piles that have none of their own, m.
    helix: Option<f64>,
    /// Diameters from centre to centre.
    ratio: f64,
}

impl Spacing {
    /// Reads it; a search takes the largest helix that any pile may have.
    pub fn of(
        request: &Request,
        offers: Option<&Offers>,
        work: &mut Work,
        issues: &mut Vec<Issue>,
    ) -> Self {
        let of_types = offers.and_then(Offers::largest_helix);
        let (own, helix) = match &request.piles {
            PilePlacement::Given(g) => (g.min_spacing, g.largest_helix.map(|d| d.si())),
            PilePlacement::Search(s) => {
                let named = s.largest_helix.map(|d| d.si());
                let all = [named, of_types].into_iter().flatten();
                let most = all.fold(None, |m: Option<f64>, d| Some(m.map_or(d, |m| m.max(d))));
                (s.min_spacing, most)
            }
        };
        let mut out = Self {
            own: own.map(|v| v.si()),
            helix,
            ratio: GROUP_SPACING_RATIO.value,
        };
        if helix.is_some() || of_types.is_some() {
            out.ratio = work.take(&GROUP_SPACING_RATIO);
        }
        if let PilePlacement::Search(s) = &request.piles {
            if let Some(d) = helix {
                helix_spacing(Size::from_si(d), out.ratio, &mut work.trace);
            }
            match out.all() {
                None => issues.push(Issue::new(
                    "/piles/search",
                    &refusals::MIN_SPACING_NEEDED,
                    "send `min_spacing` or `largest_helix`",
                )),
                Some(least) if Length::from_si(least) > s.max_spacing => {
                    let by_helix = out.own.is_none_or(|own| own < least);
                    let member = match (by_helix, s.largest_helix.is_some()) {
                        (false, _) => "/piles/search/min_spacing",
                        (true, true) => "/piles/search/largest_helix",
                        (true, false) => "/pile_types/types",
                    };
                    let detail = if by_helix {
                        format!(
                            "three diameters of the largest helix are {}, above the greatest spacing",
                            in_both_systems(least, "m")
                        )
                    } else {
                        "the least spacing is above the greatest".to_owned()
                    };
                    issues.push(
                        Issue::new(member, &refusals::SPACING_CANNOT_BE_MET, detail).limit(
                            format!("at most {}", in_both_systems(s.max_spacing.si(), "m")),
                        ),
                    );
                }
                Some(_) => {}
            }
        }
        out
    }

    /// The least distance of all piles.
    pub fn all(&self) -> Option<f64> {
        let by_helix = self.helix.map(|d| self.ratio * d);
        match (self.own, by_helix) {
            (Some(a), Some(b)) => Some(a.max(b)),
            (a, b) => a.or(b),
        }
    }

    /// The least distance of two piles with the helices of their types, and its source.
    pub fn of_pair(&self, helices: [Option<f64>; 2]) -> Option<(f64, &'static Reference)> {
        let larger = helices
            .into_iter()
            .filter_map(|d| d.or(self.helix))
            .fold(None, |m: Option<f64>, d| Some(m.map_or(d, |m| m.max(d))));
        let by_helix = larger.map(|d| (self.ratio * d, GROUP_SPACING_RATIO.reference));
        match (self.own.map(|v| (v, &CALLER)), by_helix) {
            (Some(a), Some(b)) => Some(if b.0 > a.0 { b } else { a }),
            (a, b) => a.or(b),
        }
    }
}
