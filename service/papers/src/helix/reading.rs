//! What a sheet reads out of a request and its answer: helices in both directions, the
//! ultimate a load needs, the curves. Reads, and calculates nothing beyond a proportion.

use bearwell_engine::answer_table::AnswerTable;
use bearwell_engine::basis::EurocodeProof;
use bearwell_engine::contract::{Answer, Check, CheckStatus};
use bearwell_engine::helix::codes::checks;
use bearwell_engine::helix::{
    AxialDirection, AxialResistance, GoverningMode, HelixBasis, HelixBearing, Outcome, Request,
};
use bearwell_engine::quantity::{Force, Length, Size, System};
use bearwell_engine::soil::{GradeChange, Strata};

/// Everything a sheet is drawn from.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// What was asked, the ground from final grade.
    pub request: &'a Request,
    /// What was answered.
    pub answer: &'a Answer<Outcome>,
    /// Units of the sheet.
    pub system: System,
    /// The ground as it is calculated with.
    pub strata: &'a Strata,
    /// For each layer, whether its strength was found from a test or an index.
    pub found: &'a [bool],
    /// How final grade differs from existing grade.
    pub grade_change: Option<GradeChange>,
}

/// For each layer of the ground from final grade, whether its strength was found from a test
/// or an index; `places` are those of the layers in the request.
pub fn found(request: &Request, answer: &Answer<Outcome>, places: &[Option<usize>]) -> Vec<bool> {
    let soil = &request.soil;
    let of = |i: usize| {
        let (label, layer) = (soil.label(i), &soil.layers[i]);
        // two layers may carry one label
        let here = |depth: Length| layer.top <= depth && depth <= layer.bottom;
        let found = &answer.result.derived_strengths;
        found.iter().any(|d| d.layer == label && here(d.depth))
    };
    places.iter().map(|place| place.is_some_and(of)).collect()
}

/// One helix as both directions see it.
#[derive(Debug, Clone, Copy)]
pub struct PlateReading<'a> {
    /// Its label.
    pub label: &'a str,
    /// Its diameter.
    pub diameter: Size,
    /// Its depth.
    pub depth: Length,
    /// Pushed down.
    pub down: Option<&'a HelixBearing>,
    /// Pulled up.
    pub up: Option<&'a HelixBearing>,
}

impl PlateReading<'_> {
    /// Whether it bears in no direction.
    pub fn idle(&self) -> bool {
        [self.down, self.up]
            .into_iter()
            .flatten()
            .all(|h| h.no_credit.is_some())
    }
}

/// Both directions, compression first.
pub const DIRECTIONS: [AxialDirection; 2] = [AxialDirection::Compression, AxialDirection::Tension];

/// Where the pile is pushed or pulled to.
pub fn told(direction: AxialDirection) -> &'static str {
    match direction {
        AxialDirection::Compression => "down",
        AxialDirection::Tension => "up",
    }
}

impl<'a> Subject<'a> {
    /// The result.
    pub fn outcome(&self) -> &'a Outcome {
        &self.answer.result
    }

    /// Resistance in a direction, where it was asked for.
    pub fn resistance(&self, direction: AxialDirection) -> Option<&'a AxialResistance> {
        match direction {
            AxialDirection::Compression => self.outcome().compression.as_ref(),
            AxialDirection::Tension => self.outcome().tension.as_ref(),
        }
    }

    /// Both directions that were asked for.
    pub fn resistances(&self) -> impl Iterator<Item = &'a AxialResistance> {
        let this = *self;
        DIRECTIONS
            .into_iter()
            .filter_map(move |d| this.resistance(d))
    }

    /// The helices from the top down.
    pub fn plates(&self) -> Vec<PlateReading<'a>> {
        let of = |d| {
            self.resistance(d)
                .map_or(&[][..], |r| &r.individual_bearing.helices)
        };
        let (down, up) = (of(AxialDirection::Compression), of(AxialDirection::Tension));
        (0..down.len().max(up.len()))
            .filter_map(|i| {
                let (down, up) = (down.get(i), up.get(i));
                let any = down.or(up)?;
                Some(PlateReading {
                    label: &any.label,
                    diameter: any.diameter,
                    depth: any.depth,
                    down,
                    up,
                })
            })
            .collect()
    }

    /// Depth of the lowest helix as sent.
    pub fn lowest(&self) -> Length {
        let helices = self.request.pile.helices.iter();
        helices.map(|h| h.depth).fold(Length::ZERO, Length::max)
    }

    /// Depth above which nothing is credited, where there is one.
    pub fn no_credit_above(&self) -> Option<Length> {
        self.outcome()
            .methods
            .no_credit_above
            .filter(|depth| *depth > Length::ZERO)
    }

    /// Whether the strength of layer `i` was found from a test or an index.
    pub fn found(&self, i: usize) -> bool {
        self.found.get(i).copied().unwrap_or(false)
    }

    /// Checks of a load in a direction.
    fn load_checks(&self, direction: AxialDirection) -> impl Iterator<Item = &'a Check> {
        let id = match direction {
            AxialDirection::Compression => checks::COMPRESSION.id,
            AxialDirection::Tension => checks::TENSION.id,
        };
        self.answer.checks.iter().filter(move |c| c.id == id)
    }

    /// The ultimate resistance at which the load in a direction would use all of the
    /// capacity: that of the answer times the utilisation, since the capacity is in
    /// proportion to it. None without a load, or where the basis has no such proportion.
    pub fn needed(&self, direction: AxialDirection) -> Option<Force> {
        if !in_proportion(self.request.design_basis.as_ref()) {
            return None;
        }
        let design = self.resistance(direction)?.design.as_ref()?;
        let mut highest: Option<f64> = None;
        for check in self.load_checks(direction) {
            if check.status == CheckStatus::NotEvaluated {
                continue;
            }
            let ratio = check.utilisation_ratio?;
            highest = Some(highest.map_or(ratio, |h: f64| h.max(ratio)));
        }
        let needed = design.from_ultimate * highest?;
        (needed > Force::ZERO).then_some(needed)
    }

    /// Whether a load in a direction was sent to be judged.
    pub fn demands(&self, direction: AxialDirection) -> bool {
        let judged = |c: &Check| c.demand.as_ref().is_some_and(|d| d.value() > 0.0);
        self.load_checks(direction).any(judged)
    }

    /// The points of the curve, where they were asked for.
    pub fn points(&self) -> Option<&'a AnswerTable> {
        let points = self.outcome().depth_curve.as_ref()?.points.as_ref()?;
        (!points.rows.is_empty()).then_some(points)
    }
}

/// Whether the capacity is in proportion to the calculated resistance: not where other
/// profiles or load tests have a part in it.
fn in_proportion(basis: Option<&HelixBasis>) -> bool {
    match basis {
        Some(HelixBasis::Eurocode7(e)) => match &e.proof {
            None => true,
            Some(EurocodeProof::GroundTests(g)) => {
                g.other_profiles.as_ref().is_none_or(Vec::is_empty)
            }
            Some(EurocodeProof::LoadTests(_)) => false,
        },
        _ => true,
    }
}

/// Depth and value of a column of the curve, in base SI; none where it has no such column.
pub fn line(points: &AnswerTable, column: &str) -> Option<Vec<(f64, f64)>> {
    let at = |name: &str| points.columns.iter().position(|c| c.name == name);
    let (depth, value) = (at("depth")?, at(column)?);
    points
        .rows
        .iter()
        .map(|row| Some((row.get(depth)?.value(), row.get(value)?.value())))
        .collect()
}

/// A mode in words.
pub fn mode(mode: GoverningMode) -> &'static str {
    match mode {
        GoverningMode::IndividualBearing => "individual bearing",
        GoverningMode::CylindricalShear => "cylindrical shear",
    }
}
