//! Continuous beams and networks of them on rigid or spring supports: pure numbers in
//! base SI, all load cases at once. No plan geometry, no load combinations, no units.
//!
//! Signs: `x` along a line, deflection and loads positive downwards, rotation `dw/dx`,
//! reaction positive upwards, moment positive with tension at the bottom, shear the sum
//! of upward forces to the left. A couple is positive where it acts like a rotation
//! `dw/dx` (clockwise when `x` runs to the right).
//!
//! Without torsion, lines share the deflection of a node where they meet and nothing else.
//! With torsion they share its tilt too: what bends one line at the node twists another.

mod abreast;
mod band;
mod cases;
mod element;
mod extreme;
mod loads;
mod order;
mod recover;
mod solve;
mod sparse;
#[cfg(test)]
mod tests;
#[cfg(test)]
pub(crate) mod three_moment;
mod unknowns;
mod walk;

pub use abreast::{ABREAST, Ends, Known, Pieces};
pub use cases::LineCases;
pub use extreme::{Extremes, Piece, Spot};
pub use solve::{Fault, LineSolution, Loads, Solution, solve, solve_under};
pub use walk::Factors;

/// What holds a node.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Support {
    /// Nothing: lines only meet here.
    Free,
    /// A support that does not move.
    Rigid,
    /// A vertical spring of this stiffness, N/m.
    Spring(f64),
}

/// Lines of beam and the nodes they share.
#[derive(Debug, Clone, PartialEq)]
pub struct Network {
    /// Support of every node.
    pub supports: Vec<Support>,
    /// The straight lines.
    pub lines: Vec<Line>,
    /// Number of load cases.
    pub cases: usize,
    /// Torsion of the lines; without it lines that meet share their deflection only.
    pub torsion: Option<Torsion>,
}

/// What torsion needs to know of every line.
#[derive(Debug, Clone, PartialEq)]
pub struct Torsion {
    /// Direction in plan, a unit vector.
    pub direction: Vec<(f64, f64)>,
    /// Torsional rigidity between consecutive nodes, N m2; one fewer than nodes.
    pub rigidity: Vec<Vec<f64>>,
}

/// One straight line of beam, continuous over its nodes; what lies outside its first and
/// last node is a cantilever.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Length, m.
    pub length: f64,
    /// Nodes in ascending order of place; at least one.
    pub nodes: Vec<LineNode>,
    /// Flexural rigidity between consecutive nodes, N m2; one fewer than nodes.
    pub rigidity: Vec<f64>,
    /// Loads.
    pub loads: Vec<Load>,
}

/// A node on a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LineNode {
    /// Index of the node in the network.
    pub node: usize,
    /// Its place along the line, m.
    pub at: f64,
}

/// A load of one case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// Load case.
    pub case: usize,
    /// The load.
    pub shape: Shape,
}

/// Forms of load on a line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    /// A load that varies evenly along a part of the line, N/m.
    Spread {
        /// Where it begins, m.
        from: f64,
        /// Where it ends, m.
        to: f64,
        /// Intensity where it begins.
        start: f64,
        /// Intensity where it ends.
        end: f64,
    },
    /// A force at a point, N.
    Point {
        /// Where it acts, m.
        at: f64,
        /// The force.
        force: f64,
    },
    /// A couple at a point, N m.
    Couple {
        /// Where it acts, m.
        at: f64,
        /// The couple.
        moment: f64,
    },
}
