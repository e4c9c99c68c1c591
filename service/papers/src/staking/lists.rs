//! Lists of piles: the points for the instrument, and what each pile carries.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::layout::{LayoutPile, Outcome, PlacedBy, Request};
use bearwell_engine::quantity::{Force, Length, RATIO, System};

use crate::csv::{Csv, Field};

/// Writes the stakes as CSV, in the order that collectors read: point, northing, easting,
/// elevation, description. Coordinates are in the unit of the site grid, whatever the units
/// of the answer, with the decimals of the answer's texts. Without a site grid only the header.
pub fn staking_csv(_: &Request, answer: &Answer<Outcome>, system: System, _: Paper) -> String {
    let mut csv = Csv::new(system);
    csv.text_column("point");
    let staking = answer.result.staking.as_ref();
    let grid = staking.and_then(|s| s.grid.as_ref());
    for name in ["northing", "easting", "elevation"] {
        match grid {
            Some(g) => csv.decimals_column(name, g.unit.length_unit().def().name),
            None => csv.text_column(name),
        }
    }
    csv.text_column("description");
    for stake in staking.map_or(&[][..], |s| &s.points) {
        let Some(site) = &stake.site else {
            continue;
        };
        csv.row([
            Field::text(stake.label.as_str()),
            Field::Decimals(site.northing_text.clone()),
            Field::Decimals(site.easting_text.clone()),
            match &stake.elevation_text {
                Some(text) => Field::Decimals(text.clone()),
                None => Field::Empty,
            },
            Field::text(stake.description.as_str()),
        ]);
    }
    csv.finish()
}

/// Writes the piles as CSV in the given units: place on the plan, loads that govern with
/// their combinations, utilisation, and the place for the tape where staking was asked for.
pub fn piles_csv(_: &Request, answer: &Answer<Outcome>, system: System, _: Paper) -> String {
    let mut csv = Csv::new(system);
    csv.text_column("pile");
    csv.text_column("type");
    csv.column("x", Length::ROLE);
    csv.column("y", Length::ROLE);
    csv.text_column("placed_by");
    csv.column("compression", Force::ROLE);
    csv.text_column("compression_combination");
    csv.column("tension", Force::ROLE);
    csv.text_column("tension_combination");
    csv.column("utilisation", RATIO);
    csv.text_column("x_text");
    csv.text_column("y_text");
    let outcome = &answer.result;
    let stakes = outcome.staking.as_ref().map(|s| &s.points);
    for (i, pile) in outcome.piles.iter().enumerate() {
        let stake = stakes.and_then(|s| s.get(i));
        csv.row([
            Field::text(pile.label.as_str()),
            Field::text(type_of(pile).unwrap_or_default()),
            Field::of(pile.at.x),
            Field::of(pile.at.y),
            Field::text(placed_by(pile.placed_by)),
            Field::of(pile.compression.demand),
            Field::text(pile.compression.combination.as_str()),
            Field::of(pile.tension.demand),
            Field::text(pile.tension.combination.as_str()),
            Field::maybe(pile.utilisation_ratio),
            Field::text(stake.map_or("", |s| s.x_text.as_str())),
            Field::text(stake.map_or("", |s| s.y_text.as_str())),
        ]);
    }
    csv.finish()
}

/// The type of a pile, where there are several.
pub fn type_of(pile: &LayoutPile) -> Option<&str> {
    pile.pile_type.as_deref()
}

/// Why a pile stands where it does, as it stands in JSON.
fn placed_by(by: PlacedBy) -> &'static str {
    match by {
        PlacedBy::Given => "given",
        PlacedBy::ForcedPoint => "forced_point",
        PlacedBy::BeamEnd => "beam_end",
        PlacedBy::Corner => "corner",
        PlacedBy::Junction => "junction",
        PlacedBy::Search => "search",
    }
}
