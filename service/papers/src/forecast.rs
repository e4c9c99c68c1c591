//! The table of `length-forecast`: a row for each pile to come.

use bearwell_engine::contract::{Answer, Paper};
use bearwell_engine::forecast::{Outcome, PileForecast, Request};
use bearwell_engine::layout::PlanPoint;
use bearwell_engine::quantity::{Length, RATIO, System, Torque};

use crate::csv::{Csv, Field};

/// Writes the piles to come as CSV: place and torque, the bands of the final depth, and how many
/// of each extension reach the depth of the stated probability.
pub fn forecast_csv(
    request: &Request,
    answer: &Answer<Outcome>,
    system: System,
    _: Paper,
) -> String {
    let mut csv = Csv::new(system);
    csv.text_column("pile");
    csv.column("x", Length::ROLE);
    csv.column("y", Length::ROLE);
    csv.column("required_torque", Torque::ROLE);
    for name in [
        "minimum_depth",
        "driven_depth",
        "median",
        "band_50_from",
        "band_50_to",
        "band_80_from",
        "band_80_to",
        "band_90_from",
        "band_90_to",
        "at_confidence",
        "nearest_log",
    ] {
        csv.column(name, Length::ROLE);
    }
    csv.column("minimum_governs_ratio", RATIO);
    let kinds = answer.result.extensions.as_ref().map_or(0, Vec::len);
    for kind in 1..=kinds {
        csv.column(&format!("extension_{kind}_count"), RATIO);
    }
    if kinds > 0 {
        csv.column("length", Length::ROLE);
    }
    for (sent, pile) in request.planned.iter().zip(&answer.result.piles) {
        csv.row(fields(sent.position, pile));
    }
    csv.finish()
}

fn fields(position: Option<PlanPoint>, pile: &PileForecast) -> Vec<Field> {
    let mut all = vec![
        Field::text(pile.label.as_str()),
        Field::maybe(position.map(|p| p.x)),
        Field::maybe(position.map(|p| p.y)),
        Field::of(pile.required_torque),
        Field::of(pile.minimum_depth),
        Field::maybe(pile.driven_depth),
        Field::of(pile.median),
    ];
    for band in [pile.band_50, pile.band_80, pile.band_90] {
        all.extend([Field::of(band.from), Field::of(band.to)]);
    }
    all.push(Field::of(pile.at_confidence));
    all.push(Field::maybe(pile.nearest_log));
    all.push(Field::of(pile.minimum_governs_ratio));
    if let Some(pieces) = &pile.pieces {
        let counts = pieces.extension_counts.iter();
        all.extend(counts.map(|count| Field::of(*count as f64)));
        all.push(Field::of(pieces.length));
    }
    all
}
