//! The two scales of a section: depths down from grade, and widths of the pile, which are
//! drawn to the same scale or to a whole multiple of it.

use bearwell_engine::quantity::{Length, Size};

use crate::page::Scale;
use crate::words;

/// Depths and widths on paper.
#[derive(Debug, Clone)]
pub struct Depths {
    /// Final grade on paper.
    pub grade: f64,
    /// Scale of depths.
    pub scale: Scale,
    /// Paper millimetres for one metre of depth.
    pub factor: f64,
    /// How many times larger the pile is drawn across than down.
    pub times: u32,
    /// Depth at which the drawing ends, m.
    pub end: f64,
}

impl Depths {
    /// A depth on paper.
    pub fn y(&self, depth: Length) -> f64 {
        self.at(depth.si())
    }

    /// A depth in metres on paper.
    pub fn at(&self, metres: f64) -> f64 {
        self.grade + metres * self.factor
    }

    /// Whether a depth is on the drawing.
    pub fn shows(&self, depth: Length) -> bool {
        depth.si() <= self.end + 1e-9
    }

    /// A width of the pile on paper.
    pub fn across(&self, size: Size) -> f64 {
        size.si() * self.factor * f64::from(self.times)
    }

    /// The scale of widths in words.
    pub fn widths(&self) -> String {
        words::trimmed(self.scale.denominator / f64::from(self.times), 2)
    }

    /// Both scales in words.
    pub fn told(&self, paper: &str) -> [String; 2] {
        let widths = match self.times {
            1 => "Widths of the pile to the same scale.".to_owned(),
            n => format!("Widths of the pile {n} times that, 1:{}.", self.widths()),
        };
        [format!("Depths {} on {paper}.", self.scale.name), widths]
    }
}
