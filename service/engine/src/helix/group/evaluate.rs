//! A group of piles from its plan to its capacities: what both directions share, and the
//! order of things. Equations are in the other files of this folder.

use super::bearing::BLOCK_REACH_RATIO;
use super::compression::compression_block;
use super::design::{DirectionOf, block_counts, design_compression, design_tension, judge};
use super::outcome::{BlockPlan, GroupCompression, GroupEfficiency, GroupFindings, GroupTension};
use super::plan::Centres;
use super::request::{BlockShearHeight, PileGroup, UpliftBlock};
use super::together::{lesser, readings, sum_of_piles};
use super::uplift::uplift_block;
use crate::contract::{Check, Work};
use crate::helix::basis::HelixBasis;
use crate::helix::codes::{checks, methods, warnings};
use crate::helix::ground::{Disc, Ground};
use crate::helix::outcome::AxialResistance;
use crate::helix::pile::AxialDirection;
use crate::helix::plates::told;
use crate::helix::request::Request;
use crate::helix::rule::DesignRule;
use crate::helix::settings::Settings;
use crate::quantity::{Force, Length, Size, round9};
use crate::soil::Strata;
use crate::source::{
    CALLER, DERIVED, EN_1997_1_GROUP_SPACING, GROUP_SPACING_3D, GROUP_SPACING_4D, Sourced,
};
use crate::trace::Trace;

/// Distance between centres from which no reduction is made, diameters of the largest helix.
pub static GROUP_SPACING_RATIO: Sourced<f64> =
    Sourced::new("group_spacing_ratio", 3.0, &GROUP_SPACING_3D);
/// Distance between centres that keeps interaction small, diameters of the largest helix.
pub static GROUP_SPACING_ADVISED: Sourced<f64> =
    Sourced::new("group_spacing_advised_ratio", 4.0, &GROUP_SPACING_4D);

/// A direction of a group before anything is computed.
pub(in crate::helix) struct GroupStart<'a> {
    pub group: &'a PileGroup,
    pub ground: Ground<'a>,
    /// Depth of the top helix in credit.
    pub top: Option<Length>,
    /// Depth of the lowest helix in credit, the base of the block.
    pub base: Option<Length>,
}

impl GroupStart<'_> {
    pub fn shear_height(&self) -> BlockShearHeight {
        self.group.shear_height.unwrap_or_default()
    }

    pub fn uplift_block(&self) -> UpliftBlock {
        self.group
            .uplift_block
            .unwrap_or(UpliftBlock::StraightSides)
    }
}

/// What is known of the group whatever the direction.
struct Common<'a> {
    request: &'a Request,
    group: &'a PileGroup,
    strata: &'a Strata,
    settings: &'a Settings,
    centres: Centres,
    plan: BlockPlan,
    largest: Size,
    spacing_ratio: f64,
    efficiency: Option<GroupEfficiency>,
}

/// The group of a request without faults, with what was found of its pile and the rules of
/// the design basis.
pub(in crate::helix) fn group(
    request: &Request,
    strata: &Strata,
    settings: &Settings,
    found: [Option<&AxialResistance>; 2],
    rules: &[(AxialDirection, DesignRule)],
    work: &mut Work,
) -> Option<GroupFindings> {
    let group = request.group.as_ref()?;
    let centres = Centres::of(&group.plan)?;
    let largest = largest(request);
    work.trace.about(|| "group".to_owned());
    work.method(&methods::PILE_GROUP);
    let plan = centres.block(largest, &mut work.trace);
    let spacing_ratio = work.trace.step(
        "s/D",
        "s / D",
        centres.least_spacing.si() / largest.si(),
        [("s", centres.least_spacing.into()), ("D", largest.into())],
        &DERIVED,
    );
    let mut common = Common {
        request,
        group,
        strata,
        settings,
        centres,
        plan,
        largest,
        spacing_ratio,
        efficiency: None,
    };
    common.efficiency = efficiency(&common, work);
    let rule = |d: AxialDirection| rules.iter().find(|(of, _)| *of == d).map(|(_, rule)| rule);
    let [pushed, pulled] = found;
    let compression = pushed.map(|r| common.compression(r, rule(r.direction), work));
    let eurocode_block_spacing = pulled
        .or(pushed)
        .and_then(|r| common.eurocode_spacing(r, &mut work.trace));
    let tension =
        pulled.map(|r| common.tension(r, rule(r.direction), eurocode_block_spacing, work));
    work.trace.about(String::new);
    judge_spacing(&common, work);
    Some(GroupFindings {
        pile_count: centres.count,
        least_spacing: centres.least_spacing,
        spacing_ratio,
        readings: readings(group, compression.is_some(), tension.is_some()),
        efficiency: common.efficiency,
        block_plan: plan,
        eurocode_block_spacing,
        compression,
        tension,
    })
}

fn largest(request: &Request) -> Size {
    let diameters = request.pile.helices.iter().map(|h| h.diameter);
    diameters.fold(Size::ZERO, Size::max)
}

/// What a pile of the group carries over what it carries alone, where that is known.
fn efficiency(common: &Common, work: &mut Work) -> Option<GroupEfficiency> {
    if let Some(factor) = common.group.efficiency_factor {
        return Some(GroupEfficiency {
            efficiency_factor: factor,
            from_request: true,
            source: (&CALLER).into(),
        });
    }
    let limit = work.take(&GROUP_SPACING_RATIO);
    if round9(common.spacing_ratio) >= limit {
        return Some(GroupEfficiency {
            efficiency_factor: 1.0,
            from_request: false,
            source: GROUP_SPACING_RATIO.reference.into(),
        });
    }
    let detail = format!(
        "the piles stand {} apart, {:.2} diameters of the largest helix: what they lose to each other must be in the geotechnical report, send it as `efficiency_factor`; here only the block is set against their sum",
        told(common.centres.least_spacing),
        common.spacing_ratio
    );
    if needs_efficiency(common) {
        work.hold_back(&warnings::GROUP_EFFICIENCY_UNKNOWN, detail);
    } else {
        work.warn(&warnings::GROUP_EFFICIENCY_UNKNOWN, detail);
    }
    None
}

/// Whether a verdict rests on what close piles lose to each other: any load but tension in
/// allowable stress, for which the codes set the sum of the piles beside the block.
fn needs_efficiency(common: &Common) -> bool {
    let stress = matches!(
        common.request.design_basis,
        Some(HelixBasis::AllowableStress(_))
    );
    let demand = common.group.demand;
    demand.is_some_and(|d| d.compression.is_some() || (d.tension.is_some() && !stress))
}

impl<'a> Common<'a> {
    /// A direction, with the depths of its helices in credit.
    fn start(&self, resistance: &AxialResistance, trace: &mut Trace) -> GroupStart<'a> {
        let credited = || {
            let helices = resistance.individual_bearing.helices.iter();
            helices.filter(|h| h.no_credit.is_none()).map(|h| h.depth)
        };
        let base = credited().next_back();
        let reached = base.map_or(Length::ZERO, |b| {
            b + self.plan.breadth * BLOCK_REACH_RATIO.value
        });
        GroupStart {
            group: self.group,
            ground: Ground::new(
                self.strata,
                &self.request.pile.shaft,
                resistance.direction,
                self.settings,
                (base.unwrap_or(Length::ZERO), reached),
                Size::ZERO,
                trace,
            ),
            top: credited().next(),
            base,
        }
    }

    fn efficiency_factor(&self) -> f64 {
        self.efficiency
            .as_ref()
            .map_or(1.0, |e| e.efficiency_factor)
    }

    fn of<'b>(&'b self, of_one: Force, rule: Option<&'b DesignRule>) -> DirectionOf<'b> {
        DirectionOf {
            basis: self.request.design_basis.as_ref(),
            rule,
            piles: f64::from(self.centres.count) * self.efficiency_factor(),
            of_one,
        }
    }

    fn piles(&self, of_one: Force, direction: AxialDirection, trace: &mut Trace) -> Force {
        trace.about(|| format!("group in {}", direction.name()));
        sum_of_piles(of_one, self.centres.count, self.efficiency_factor(), trace)
    }

    fn compression(
        &self,
        resistance: &AxialResistance,
        rule: Option<&DesignRule>,
        work: &mut Work,
    ) -> GroupCompression {
        work.method(&methods::GROUP_BLOCK_COMPRESSION);
        let start = self.start(resistance, &mut work.trace);
        let block = compression_block(&start, &self.plan, work);
        let of_one = resistance
            .ultimate_by_punching
            .unwrap_or(resistance.ultimate);
        let piles = self.piles(of_one, resistance.direction, &mut work.trace);
        let (governing, ultimate) = lesser(piles, block.as_ref().map(|b| b.total), &mut work.trace);
        let unknown = start.base.is_some() && block.is_none();
        let of = self.of(of_one, rule);
        let design = design_compression(&of, block.as_ref().map(|b| b.total), unknown, work);
        if let Some(demand) = &self.group.demand {
            judge(
                &checks::GROUP_COMPRESSION,
                demand.compression,
                design.as_ref(),
                unknown,
                work,
            );
        }
        GroupCompression {
            piles,
            block,
            ultimate,
            governing,
            design: design.map(|(design, _)| design),
        }
    }

    fn tension(
        &self,
        resistance: &AxialResistance,
        rule: Option<&DesignRule>,
        eurocode_spacing: Option<Length>,
        work: &mut Work,
    ) -> GroupTension {
        work.method(&methods::GROUP_BLOCK_UPLIFT);
        let mut off = Trace::off();
        let start = self.start(resistance, &mut off);
        let block = uplift_block(&start, &self.plan, &mut work.trace);
        let of_one = resistance.ultimate;
        let piles = self.piles(of_one, resistance.direction, &mut work.trace);
        let near = work.take(&GROUP_SPACING_RATIO);
        let of = self.of(of_one, rule);
        let counts = block_counts(
            &of,
            round9(self.spacing_ratio) < near,
            eurocode_spacing.is_some_and(|s| self.centres.least_spacing <= s),
        );
        let total = block.as_ref().map(|b| b.total);
        if let Some(total) = total
            && !counts
            && total < piles
        {
            work.warn(
                &warnings::BLOCK_LESS_THAN_PILES,
                format!(
                    "the block lifts at {}, its piles together at {}; at this distance the block does not count",
                    Force::ROLE.in_both_systems(total.si()),
                    Force::ROLE.in_both_systems(piles.si())
                ),
            );
        }
        let counted = block.as_ref().filter(|_| counts);
        let (governing, ultimate) = lesser(piles, counted.map(|b| b.total), &mut work.trace);
        // without a helix in credit there is no block to hold against a tested resistance
        let eurocode = matches!(of.basis, Some(HelixBasis::Eurocode7(_)));
        let design = if eurocode && counts && counted.is_none() {
            None
        } else {
            design_tension(&of, counted, work)
        };
        if let Some(demand) = &self.group.demand {
            judge(
                &checks::GROUP_TENSION,
                demand.tension,
                design.as_ref(),
                false,
                work,
            );
        }
        GroupTension {
            piles,
            block,
            block_counts: counts,
            ultimate,
            governing,
            design: design.map(|(design, _)| design),
        }
    }

    /// Distance between piles below which EN 1997-1 has the block considered.
    ///
    /// s = (D l)^0.5; D diameter of the largest helix, l depth of the lowest helix in credit below
    /// the lowest soil without credit (m). Range: a helix in credit. Source: EN 1997-1 7.6.3, its
    /// pile diameter read as the helix. Sign: none.
    fn eurocode_spacing(&self, resistance: &AxialResistance, trace: &mut Trace) -> Option<Length> {
        let start = self.start(resistance, &mut Trace::off());
        let disc = Disc {
            diameter: self.largest,
            depth: start.base?,
            area: crate::quantity::Area::ZERO,
        };
        let penetration = start.ground.embedment(&disc);
        trace.about(|| "group".to_owned());
        Some(trace.step(
            "s",
            "(D l)^0.5",
            Length::from_si((self.largest.si() * penetration.si()).sqrt()),
            [("D", self.largest.into()), ("l", penetration.into())],
            &EN_1997_1_GROUP_SPACING,
        ))
    }
}

/// Distance between the piles, where the group is judged.
fn judge_spacing(common: &Common, work: &mut Work) {
    if common.group.demand.is_none() {
        return;
    }
    let advised = Length::from(common.largest) * work.take(&GROUP_SPACING_ADVISED);
    work.check(
        Check::at_least(
            &checks::GROUP_SPACING,
            advised,
            common.centres.least_spacing,
            &GROUP_SPACING_4D,
        )
        .advisory(),
    );
}
