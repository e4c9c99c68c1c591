//! The piles of a plan as they stand after events, and the plan they stand on.

use super::outcome::PileFate;
use crate::layout::{self, GivenPile, GivenPiles, GradeBeam, PilePlacement};
use crate::text::Label;

/// A pile of before, of after, or of both.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Tracked {
    pub label: String,
    pub fate: PileFate,
    /// The event that is about it.
    pub event: Option<usize>,
    /// Its number before.
    pub before: Option<usize>,
    /// Its number after.
    pub after: Option<usize>,
    /// The beam along which it moved, how far, and how far off that line it stands.
    pub moved: Option<(usize, f64, f64)>,
}

/// The piles as they stand after events.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Standing {
    /// Every pile of before in order, then those added.
    pub piles: Vec<Tracked>,
    /// Those that stand.
    pub positions: Vec<GivenPile>,
}

/// The plan with the events.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Applied {
    /// Without its piles, see `with`.
    pub layout: layout::Request,
    pub standing: Standing,
    /// Beams that are stronger, by their number, with the event.
    pub stronger: Vec<(usize, usize)>,
}

impl Applied {
    /// The beams as they are now.
    pub fn beams(&self) -> &[GradeBeam] {
        &self.layout.beams
    }

    /// The plan on these piles.
    pub fn with(&self, positions: &[GivenPile]) -> layout::Request {
        let mut layout = self.layout.clone();
        fill(&mut layout, positions.to_vec());
        layout
    }

    /// The plan as it now stands.
    pub fn into_layout(self) -> layout::Request {
        let mut layout = self.layout;
        fill(&mut layout, self.standing.positions);
        layout
    }
}

fn fill(layout: &mut layout::Request, positions: Vec<GivenPile>) {
    if let PilePlacement::Given(given) = &mut layout.piles {
        given.positions = positions;
    }
}

impl Standing {
    /// The pile with a number of after.
    pub fn after(&self, number: usize) -> Option<&Tracked> {
        self.piles.iter().find(|p| p.after == Some(number))
    }

    /// Takes a pile away.
    pub fn remove(&mut self, pile: usize) {
        let Some(gone) = self.piles[pile].after.take() else {
            return;
        };
        self.positions.remove(gone);
        for other in &mut self.piles {
            if let Some(after) = &mut other.after
                && *after > gone
            {
                *after -= 1;
            }
        }
    }

    /// Adds a pile with its label; `moved` says off which line it stands.
    pub fn add(&mut self, pile: GivenPile, event: usize, moved: Option<(usize, f64, f64)>) {
        self.piles.push(Tracked {
            label: pile.label.as_ref().map_or("", Label::as_str).to_owned(),
            fate: PileFate::Added,
            event: Some(event),
            before: None,
            after: Some(self.positions.len()),
            moved,
        });
        self.positions.push(pile);
    }
}

/// The given piles of a plan; none where they are searched.
pub(super) fn given(layout: &layout::Request) -> &[GivenPile] {
    match &layout.piles {
        PilePlacement::Given(g) => &g.positions,
        PilePlacement::Search(_) => &[],
    }
}

/// A plan without its piles.
pub(super) fn without_piles(layout: &layout::Request) -> layout::Request {
    let piles = match &layout.piles {
        PilePlacement::Given(g) => PilePlacement::Given(GivenPiles {
            positions: Vec::new(),
            max_spacing: g.max_spacing,
            min_spacing: g.min_spacing,
            largest_helix: g.largest_helix,
        }),
        PilePlacement::Search(s) => PilePlacement::Search(s.clone()),
    };
    layout::Request {
        piles,
        ..layout.clone()
    }
}
