//! What is on the steel: zinc as sent, or of the least thickness that the standard asks for.

use super::codes::methods;
use super::section_request::{CorrodedForm, CorrodedSection, SteelCoating, ZincProduct};
use crate::contract::Work;
use crate::quantity::{Coat, LengthUnit, Size, round9};
use crate::source::{ASTM_A123, CALLER, SourceNote, Sourced};

/// Least average zinc by thickness of the steel, um: below 1/16 in, below 1/8, up to 3/16,
/// below 1/4, below 5/8, from 5/8 in.
pub static SHAPES: Sourced<[f64; 6]> = Sourced::new(
    "zinc_structural_shape",
    [45.0, 65.0, 75.0, 75.0, 100.0, 100.0],
    &ASTM_A123,
);
/// The same of strip and bar.
pub static STRIP_AND_BAR: Sourced<[f64; 6]> = Sourced::new(
    "zinc_strip_and_bar",
    [45.0, 65.0, 75.0, 75.0, 75.0, 100.0],
    &ASTM_A123,
);
/// The same of plate.
pub static PLATE: Sourced<[f64; 6]> = Sourced::new(
    "zinc_plate",
    [45.0, 65.0, 75.0, 75.0, 75.0, 100.0],
    &ASTM_A123,
);
/// The same of pipe and tubing.
pub static PIPE_AND_TUBING: Sourced<[f64; 6]> = Sourced::new(
    "zinc_pipe_and_tubing",
    [45.0, 45.0, 75.0, 75.0, 75.0, 75.0],
    &ASTM_A123,
);

/// What is on a face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OnSteel {
    /// Nothing.
    Bare,
    /// Zinc.
    Zinc(Coat),
    /// Powder.
    Powder,
}

/// Row of the standard for a product.
pub fn row_of(product: ZincProduct) -> &'static Sourced<[f64; 6]> {
    match product {
        ZincProduct::StructuralShape => &SHAPES,
        ZincProduct::StripAndBar => &STRIP_AND_BAR,
        ZincProduct::Plate => &PLATE,
        ZincProduct::PipeAndTubing => &PIPE_AND_TUBING,
    }
}

/// Place of a thickness of steel among the columns of the standard.
pub fn band_of(thickness: Size) -> usize {
    let inches = round9(thickness.get(LengthUnit::In));
    if inches < 1.0 / 16.0 {
        0
    } else if inches < 1.0 / 8.0 {
        1
    } else if inches <= 3.0 / 16.0 {
        2
    } else if inches < 1.0 / 4.0 {
        3
    } else if inches < 5.0 / 8.0 {
        4
    } else {
        5
    }
}

/// What is on a section, and where that comes from.
pub fn coating_of(section: &CorrodedSection, work: &mut Work) -> (OnSteel, Option<SourceNote>) {
    match &section.coating {
        None | Some(SteelCoating::Bare(_)) => (OnSteel::Bare, None),
        Some(SteelCoating::Powder(_)) => (OnSteel::Powder, None),
        Some(SteelCoating::Zinc(zinc)) => (OnSteel::Zinc(zinc.thickness), Some((&CALLER).into())),
        Some(SteelCoating::ZincAstmA123(by)) => {
            work.method(&methods::ZINC_ASTM_A123);
            let (own, thickness) = match section.form {
                CorrodedForm::RoundTube(t) => (ZincProduct::PipeAndTubing, t.wall_thickness),
                CorrodedForm::RoundBar(b) => (ZincProduct::StripAndBar, b.diameter),
                CorrodedForm::SquareBar(b) => (ZincProduct::StripAndBar, b.side),
                CorrodedForm::Plate(p) => (ZincProduct::Plate, p.thickness),
            };
            let row = row_of(by.product.unwrap_or(own));
            let zinc = Coat::new(work.take_table(row)[band_of(thickness)], LengthUnit::Um);
            (OnSteel::Zinc(zinc), Some(row.reference.into()))
        }
    }
}
