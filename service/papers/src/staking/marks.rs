//! Marks of piles, told apart by their shape: each is a block of the drawing. Lengths in
//! metres around the centre of the pile.

/// The shape of a mark.
#[derive(Debug)]
pub struct Mark {
    /// Closed outlines.
    pub outlines: &'static [&'static [(f64, f64)]],
    /// Open strokes.
    pub strokes: &'static [&'static [(f64, f64)]],
    /// Radius of a circle.
    pub circle: Option<f64>,
}

const R: f64 = 0.12;
const CROSS: &[&[(f64, f64)]] = &[&[(-R, 0.0), (R, 0.0)], &[(0.0, -R), (0.0, R)]];

/// One mark for each kind of pile in turn; the last for all further ones.
pub static MARKS: [Mark; 6] = [
    Mark {
        outlines: &[],
        strokes: CROSS,
        circle: Some(R),
    },
    Mark {
        outlines: &[&[(-R, -R), (R, -R), (R, R), (-R, R)]],
        strokes: CROSS,
        circle: None,
    },
    Mark {
        outlines: &[&[(-R, 0.0), (0.0, -R), (R, 0.0), (0.0, R)]],
        strokes: CROSS,
        circle: None,
    },
    Mark {
        outlines: &[&[(-R, -0.07), (R, -0.07), (0.0, 0.14)]],
        strokes: CROSS,
        circle: None,
    },
    Mark {
        outlines: &[&[(-R, -R), (R, -R), (R, R), (-R, R)]],
        strokes: CROSS,
        circle: Some(R),
    },
    Mark {
        outlines: &[&[(-R, 0.07), (R, 0.07), (0.0, -0.14)]],
        strokes: CROSS,
        circle: None,
    },
];

/// The name of its block.
pub fn name(mark: usize) -> String {
    format!("PILE_MARK_{}", mark + 1)
}
