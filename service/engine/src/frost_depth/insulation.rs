//! How thick a board brings the computed frost depth to a given one: a bracketed search.

use super::berggren::NoFront;
use super::codes::{methods, refusals, warnings};
use super::conduction;
use super::ground::{Layer, Slab, with_board};
use super::methods::{depth, note};
use super::outcome::InsulationOutcome;
use super::request::{FreezingIndexDefinition, FrostDepthMethod, InsulationFor};
use super::winter::Winter;
use crate::contract::{Issue, Refusal, Work};
use crate::quantity::{Length, Size, ThermalResistance};
use crate::source::{FROST_HEAT_CONDUCTION, NOAA_FREEZING_INDEX_100};

/// Thickest board that is looked at, m.
const THICKEST: f64 = 0.6;
/// Most depths in a search.
const DEPTHS: u32 = 60;
/// Difference of depth, and of thickness, at which the search ends, m.
const CLOSE: f64 = 1e-9;

/// Depth of the board below the surface: the top of the layer it lies on; none for a label that
/// no layer has.
pub fn place(asked: &InsulationFor, layers: &[(String, f64)]) -> Option<f64> {
    match &asked.on_top_of {
        None => Some(0.0),
        Some(label) => {
            let found = layers.iter().find(|(name, _)| *name == label.0);
            found.map(|(_, top)| *top)
        }
    }
}

/// The ground and the winter that a board is sought for.
pub struct Sought<'a> {
    /// Layers as sent.
    pub layers: &'a [Layer],
    /// The same for the methods.
    pub slabs: &'a [Slab],
    /// The winter.
    pub winter: &'a Winter,
    /// Method that was asked for.
    pub method: Option<FrostDepthMethod>,
    /// Where the request stands.
    pub at: &'a str,
}

impl Sought<'_> {
    /// Depth with a board of this thickness, the board not counted.
    fn depth(&self, board: Board, thickness: f64, work: &Work) -> Result<f64, Refusal> {
        let laid = if thickness > 0.0 {
            with_board(self.slabs, board.top, board.conductivity, thickness)
        } else {
            self.slabs.to_vec()
        };
        let wet = laid.iter().find(|slab| slab.latent > 0.0);
        let unreached = wet.map_or(0.0, |slab| slab.top);
        let found = match self.method {
            Some(FrostDepthMethod::ModifiedBerggren) => {
                super::berggren::layered_depth(&laid, self.winter.si)
            }
            _ => conduction::frost_depth(&laid, self.winter.si, work)?,
        };
        let through = match found {
            Ok(depth) => depth,
            Err(NoFront::WaterNotReached) => unreached,
            Err(NoFront::TooDeep) => super::berggren::DEEPEST,
        };
        Ok(if through > board.top {
            (through - thickness).max(board.top)
        } else {
            through
        })
    }
}

/// Where the board lies and of what it is, base SI.
#[derive(Clone, Copy)]
struct Board {
    top: f64,
    conductivity: f64,
}

/// Finds the thickness. The wanted depth is below the board and below the first water.
pub fn find(
    asked: &InsulationFor,
    sought: &Sought,
    work: &mut Work,
) -> Result<InsulationOutcome, Refusal> {
    let names: Vec<_> = sought
        .layers
        .iter()
        .map(|layer| (layer.label.clone(), layer.top))
        .collect();
    let board = Board {
        top: place(asked, &names).unwrap_or(0.0),
        conductivity: asked.conductivity.si(),
    };
    let method = match sought.method {
        Some(FrostDepthMethod::ModifiedBerggren) => FrostDepthMethod::ModifiedBerggren,
        _ => FrostDepthMethod::HeatConduction,
    };
    let wanted = asked.depth.si();
    let without = sought.depth(board, 0.0, work)?;
    let (thickness, count) = search(|d| sought.depth(board, d, work), wanted, without)?
        .ok_or_else(|| cannot(asked, sought))?;
    work.method(&methods::FROST_INSULATION);
    note(method, work);
    if thickness > 0.0 && method == FrostDepthMethod::ModifiedBerggren {
        // what the equation is outside of is refused here as it is everywhere
        let laid = with_board(sought.slabs, board.top, board.conductivity, thickness);
        depth(method, &laid, sought.winter, sought.at, work)?.map_err(Refusal::of)?;
    }
    warn(sought.winter, work);
    let thickness = work.trace.step(
        "d_i",
        "thickness that brings the depth to X_w",
        Size::from_si(thickness),
        [
            ("X_w", asked.depth.into()),
            ("k_i", asked.conductivity.into()),
        ],
        &FROST_HEAT_CONDUCTION,
    );
    Ok(InsulationOutcome {
        depth: asked.depth,
        on_top_of: asked.on_top_of.clone(),
        top: Length::from_si(board.top),
        conductivity: asked.conductivity,
        thickness,
        resistance: ThermalResistance::from_si(thickness.si() / board.conductivity),
        depth_without: Length::from_si(without),
        method,
        search_count: count,
    })
}

/// The thinnest board with which the frost is not deeper than wanted, and the depths it took;
/// none where the thickest does not do. Regula falsi after Illinois; the bracket always holds.
fn search(
    depth: impl Fn(f64) -> Result<f64, Refusal>,
    wanted: f64,
    without: f64,
) -> Result<Option<(f64, u32)>, Refusal> {
    if without <= wanted {
        return Ok(Some((0.0, 1)));
    }
    let (mut thin, mut over) = (0.0, without - wanted);
    let (mut thick, mut under) = (THICKEST, depth(THICKEST)? - wanted);
    if under > 0.0 {
        return Ok(None);
    }
    let (mut count, mut short) = (2, -under);
    // how often in a row the thin side has moved; below nil the thick side
    let mut run = 0_i32;
    while count < DEPTHS && thick - thin > CLOSE && short > CLOSE {
        let mut next = thin + (thick - thin) * over / (over - under);
        // far off a straight line, or at the end of the bracket: half of it
        if run.abs() >= 3 || !(next > thin && next < thick) {
            next = 0.5 * (thin + thick);
        }
        let found = depth(next)? - wanted;
        count += 1;
        if found > 0.0 {
            (thin, over) = (next, found);
            under *= if run > 0 { 0.5 } else { 1.0 };
            run = run.max(0) + 1;
        } else {
            (thick, under, short) = (next, found, -found);
            over *= if run < 0 { 0.5 } else { 1.0 };
            run = run.min(0) - 1;
        }
    }
    Ok(Some((thick, count)))
}

fn cannot(asked: &InsulationFor, sought: &Sought) -> Refusal {
    Issue::new(
        format!("{}/insulation_for", sought.at),
        &refusals::INSULATION_CANNOT_HELP,
        format!(
            "a board of {} still lets the frost go below {}",
            Size::ROLE.in_both_systems(THICKEST),
            Length::ROLE.in_both_systems(asked.depth.si())
        ),
    )
    .limit(Size::ROLE.in_both_systems(THICKEST))
    .into()
}

fn warn(winter: &Winter, work: &mut Work) {
    work.warn(
        &warnings::INSULATION_FOR_INFORMATION,
        "the board is taken to reach far sideways, to lie dry and whole, and to be out of the reach of traffic; a frost-protected shallow foundation is designed by its own standard",
    );
    if winter.index.definition != FreezingIndexDefinition::Return100 {
        work.warn(
            &warnings::INSULATION_INDEX_NOT_RETURN_100,
            format!(
                "the index sent is `{}`; {} allows only the one with a return period of 100 years",
                winter.index.definition.name(),
                NOAA_FREEZING_INDEX_100.document
            ),
        );
    }
}
