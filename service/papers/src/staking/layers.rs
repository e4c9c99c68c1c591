//! The layers of a drawing, by what stands on them.

use std::borrow::Cow;

/// A layer.
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// Its name.
    pub name: Cow<'static, str>,
    /// Its colour, by number.
    pub colour: u32,
}

const fn layer(name: &'static str, colour: u32) -> Layer {
    Layer {
        name: Cow::Borrowed(name),
        colour,
    }
}

/// Layer of the centre lines of beams.
pub const BEAM_CENTRE: &str = "BEAM_CENTRE";
/// Layer of the edges of beams.
pub const BEAM_EDGE: &str = "BEAM_EDGE";
/// Layer of outside form lines.
pub const FORM_LINE: &str = "FORM_LINE";
/// Layer of piles that have no type; those of a type are on `PILE_` and its name.
pub const PILE: &str = "PILE";
/// Layer of the labels of piles.
pub const PILE_LABEL: &str = "PILE_LABEL";
/// Layer of the string lines beside the beams.
pub const STRING_LINE: &str = "STRING_LINE";
/// Layer of what piles keep away from.
pub const KEEP_OUT: &str = "KEEP_OUT";
/// Layer of control points.
pub const CONTROL: &str = "CONTROL";
/// Layer of the notes.
pub const NOTE: &str = "NOTE";

/// The layers that every drawing has.
pub static LAYERS: [Layer; 10] = [
    layer("0", 7),
    layer(BEAM_CENTRE, 8),
    layer(BEAM_EDGE, 7),
    layer(FORM_LINE, 3),
    layer(PILE, 1),
    layer(PILE_LABEL, 7),
    layer(STRING_LINE, 5),
    layer(KEEP_OUT, 1),
    layer(CONTROL, 6),
    layer(NOTE, 7),
];
