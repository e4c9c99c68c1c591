//! A plan to draw where beams no longer stand and nothing could be analysed: centre lines as
//! they were sent, piles without loads.

use bearwell_engine::layout::{
    LayoutBeam, LayoutPile, MomentExtreme, Outcome, PileDemand, PlacedBy, PlanPoint, ReactionRange,
    Request, ShearExtreme, SpacingSummary, SupportModel,
};
use bearwell_engine::quantity::{Force, Length, Moment};
use bearwell_engine::relocation::RelocatedPile;

/// An outcome with places and nothing else.
pub fn outcome(request: &Request, piles: &[RelocatedPile]) -> Outcome {
    let piles: Vec<LayoutPile> = piles
        .iter()
        .filter_map(|p| Some(pile(p.label.clone(), p.at?)))
        .collect();
    let beams = request.beams.iter().enumerate().map(|(i, beam)| {
        let label = beam.label.as_ref().map(|l| l.as_str().to_owned());
        let label = label.unwrap_or_else(|| format!("B{}", i + 1));
        line(label, beam.points.clone())
    });
    let outlines = request.outlines.iter().flatten().enumerate();
    let sides = outlines.map(|(i, outline)| {
        let label = outline.label.as_ref().map(|l| l.as_str().to_owned());
        let label = label.unwrap_or_else(|| format!("F{}", i + 1));
        line(label, outline.points.clone())
    });
    Outcome {
        pile_count: u32::try_from(piles.len()).unwrap_or(u32::MAX),
        max_utilisation_ratio: None,
        statics_residual_ratio: 0.0,
        supports: Vec::new(),
        piles: piles.into(),
        pile_table: None,
        beams: beams.chain(sides).collect(),
        outlines: None,
        joined_ends: None,
        combinations: Vec::new(),
        spacing: SpacingSummary {
            longest_span: None,
            nearest_piles: None,
            longest_overhang: Length::ZERO,
        },
        type_counts: None,
        total_cost: None,
        slabs: None,
        pattern: None,
        pile_support: None,
        lift_off: None,
        total_settlement: None,
        differential_settlement: None,
        search: None,
        staking: None,
    }
}

fn pile(label: String, at: PlanPoint) -> LayoutPile {
    let demand = PileDemand {
        demand: Force::ZERO,
        combination: Default::default(),
        supports: SupportModel::Rigid,
        pattern_governs: None,
    };
    LayoutPile {
        label,
        tags: None,
        at,
        placed_by: PlacedBy::Given,
        pile_type: None,
        soil_zones: None,
        compression: demand.clone(),
        tension: demand,
        utilisation_ratio: None,
        rigid: ReactionRange {
            max: Force::ZERO,
            max_combination: Default::default(),
            min: Force::ZERO,
            min_combination: Default::default(),
        },
        spring: None,
        settlement: None,
        tributary: None,
        pattern: None,
        by_beam: Vec::new(),
        reactions: None,
    }
}

fn line(label: String, points: Vec<PlanPoint>) -> LayoutBeam {
    let at = points.first().copied().unwrap_or(PlanPoint {
        x: Length::ZERO,
        y: Length::ZERO,
    });
    let moment = MomentExtreme {
        moment: Moment::ZERO,
        at,
        combination: Default::default(),
        supports: SupportModel::Rigid,
        pattern_governs: None,
    };
    LayoutBeam {
        label,
        tags: None,
        points,
        length: Length::ZERO,
        width: None,
        edges: None,
        sagging: moment.clone(),
        hogging: moment,
        shear: ShearExtreme {
            shear: Force::ZERO,
            at,
            combination: Default::default(),
            supports: SupportModel::Rigid,
            pattern_governs: None,
        },
        strength: None,
        deflection: None,
        torsion: None,
    }
}
