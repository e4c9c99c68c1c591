//! The piles of an answer in rows of members, or as one table of numbers.

use std::ops::{Deref, DerefMut};

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::LayoutPile;
#[cfg(feature = "compute")]
use super::{Outcome, PileDemand};
use crate::answer_table::{AnswerColumn, Cell};
#[cfg(feature = "compute")]
use crate::quantity::{Force, Length, RATIO, Size};

/// The piles with all their members. Written as an empty list where a table stands for them.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PileRows {
    rows: Vec<LayoutPile>,
    tabled: bool,
}

impl From<Vec<LayoutPile>> for PileRows {
    fn from(rows: Vec<LayoutPile>) -> Self {
        Self {
            rows,
            tabled: false,
        }
    }
}

impl Deref for PileRows {
    type Target = Vec<LayoutPile>;
    fn deref(&self) -> &Vec<LayoutPile> {
        &self.rows
    }
}

impl DerefMut for PileRows {
    fn deref_mut(&mut self) -> &mut Vec<LayoutPile> {
        &mut self.rows
    }
}

impl<'a> IntoIterator for &'a PileRows {
    type Item = &'a LayoutPile;
    type IntoIter = std::slice::Iter<'a, LayoutPile>;
    fn into_iter(self) -> Self::IntoIter {
        self.rows.iter()
    }
}

impl Serialize for PileRows {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let written = if self.tabled { &[] } else { &self.rows[..] };
        written.serialize(s)
    }
}

impl<'de> Deserialize<'de> for PileRows {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        Vec::deserialize(d).map(Self::from)
    }
}

/// All piles as a table of numbers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PileTable {
    /// Names of the piles, one a row.
    pub labels: Vec<String>,
    /// The columns: `x` and `y` in plan; `compression` and `tension`, the greatest over all
    /// combinations and support models and never negative, each with the number of its
    /// combination in `combinations` and of its support model in `supports`, counted from 0; with
    /// spring supports `settlement`, the greatest.
    pub columns: Vec<AnswerColumn>,
    /// The rows, each with one number for each column, in their order.
    pub rows: Vec<Vec<Cell>>,
}

#[cfg(feature = "compute")]
impl Outcome {
    /// Puts the table in the place of the rows.
    pub(in crate::layout) fn tabulate(&mut self) {
        let settles = self.piles.iter().all(|p| p.settlement.is_some());
        let mut columns = vec![
            AnswerColumn::of("x", Length::ROLE),
            AnswerColumn::of("y", Length::ROLE),
            AnswerColumn::of("compression", Force::ROLE),
            AnswerColumn::of("compression_combination", RATIO),
            AnswerColumn::of("compression_supports", RATIO),
            AnswerColumn::of("tension", Force::ROLE),
            AnswerColumn::of("tension_combination", RATIO),
            AnswerColumn::of("tension_supports", RATIO),
        ];
        if settles {
            columns.push(AnswerColumn::of("settlement", Size::ROLE));
        }
        let rows = self.piles.iter().map(|pile| {
            let mut row = Vec::with_capacity(columns.len());
            row.extend([Cell::of(pile.at.x), Cell::of(pile.at.y)]);
            for demand in [&pile.compression, &pile.tension] {
                row.push(Cell::of(demand.demand));
                row.extend(self.numbers(demand).map(|n| Cell::of(n as f64)));
            }
            row.extend(pile.settlement.filter(|_| settles).map(Cell::of));
            row
        });
        self.pile_table = Some(PileTable {
            rows: rows.collect(),
            labels: self.piles.iter().map(|p| p.label.clone()).collect(),
            columns,
        });
        self.piles.tabled = true;
    }

    /// The numbers of a demand's combination and support model in their lists.
    fn numbers(&self, demand: &PileDemand) -> [usize; 2] {
        let combinations = &mut self.combinations.iter();
        let combination = combinations.position(|c| c.name == demand.combination);
        let supports = &mut self.supports.iter();
        let model = supports.position(|s| *s == demand.supports);
        // both lists hold whatever governs
        [combination, model].map(Option::unwrap_or_default)
    }
}
