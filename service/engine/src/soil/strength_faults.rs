//! Faults in how the strength of a layer is sent, that can be seen without its stresses:
//! none or several ways, members that do not go together, tests outside their layer.

use super::codes::refusals;
use super::correlations::undrained::PLASTICITY_RANGE;
use super::cpt::ConeReading;
use super::faults::SAME_DEPTH_M;
use super::profile::{EngineeredFill, Layer, Soil};
use super::spt::{FrictionFromSpt, SptClayForm, SptForm, SptFriction, UndrainedFromSpt};
use super::strength::{Drained, Undrained};
use crate::contract::Issue;
use crate::quantity::Length;
use crate::source::{COARSE_SOIL_CORRELATIONS, PLACEMENT_RECORD};

/// Whether the relation takes (N_1)_60.
pub(super) fn on_n1_60(correlation: SptFriction) -> bool {
    match correlation {
        SptFriction::PeckHansonThornburnWolff | SptFriction::HatanakaUchida1996 => true,
        SptFriction::KulhawyMayne1990
        | SptFriction::ShioiFukui1982Roads
        | SptFriction::ShioiFukui1982Buildings => false,
    }
}

impl Layer {
    /// Faults of the strength as sent; `here` is the pointer of the layer.
    pub(super) fn strength_faults(&self, here: &str) -> Vec<Issue> {
        let at = |kind: &str| format!("{here}/soil/{kind}");
        match &self.soil {
            Soil::Clay(u) => self.undrained_faults(u, &at("clay")),
            Soil::Silt(u) => self.undrained_faults(u, &at("silt")),
            Soil::Sand(d) => self.drained_faults(d, false, &at("sand")),
            Soil::Gravel(d) => self.drained_faults(d, true, &at("gravel")),
            Soil::Fill(fill) => match &fill.engineered {
                Some(fill) => self.engineered_faults(fill, &at("fill/engineered")),
                None => Vec::new(),
            },
            Soil::Organic(_) | Soil::Rock(_) | Soil::Frozen(_) => Vec::new(),
        }
    }

    fn engineered_faults(&self, fill: &EngineeredFill, at: &str) -> Vec<Issue> {
        let ways = [
            fill.clay.map(|_| "clay"),
            fill.sand.map(|_| "sand"),
            fill.gravel.map(|_| "gravel"),
        ];
        let mut issues = Vec::new();
        if ways.iter().flatten().count() != 1 {
            let code = &refusals::ENGINEERED_FILL_NOT_ONE;
            issues.push(Issue::new(at, code, sent(&ways)).source(&PLACEMENT_RECORD));
        }
        if let Some(u) = &fill.clay {
            issues.extend(self.undrained_faults(u, &format!("{at}/clay")));
        }
        if let Some(d) = &fill.sand {
            issues.extend(self.drained_faults(d, false, &format!("{at}/sand")));
        }
        if let Some(d) = &fill.gravel {
            issues.extend(self.drained_faults(d, true, &format!("{at}/gravel")));
        }
        issues
    }

    fn undrained_faults(&self, u: &Undrained, at: &str) -> Vec<Issue> {
        let ways = [
            u.undrained_strength.map(|_| "undrained_strength"),
            u.from_spt.map(|_| "from_spt"),
            u.from_cpt.map(|_| "from_cpt"),
            u.from_stress_history.map(|_| "from_stress_history"),
            u.from_index.map(|_| "from_index"),
        ];
        let mut issues = not_one(&ways, at);
        if let Some(spt) = &u.from_spt {
            let here = format!("{at}/from_spt");
            issues.extend(clay_count_faults(spt, &here));
            issues.extend(self.outside(spt.test_depth, &format!("{here}/test_depth")));
        }
        if let Some(cpt) = &u.from_cpt {
            let here = format!("{at}/from_cpt");
            issues.extend(cone_faults(&cpt.reading, &format!("{here}/reading")));
            issues.extend(self.outside(cpt.test_depth, &format!("{here}/test_depth")));
        }
        if let Some(history) = &u.from_stress_history {
            let here = format!("{at}/from_stress_history/reference_depth");
            issues.extend(self.outside(history.reference_depth, &here));
        }
        if let Some(index) = &u.from_index {
            let here = format!("{at}/from_index/reference_depth");
            issues.extend(self.outside(index.reference_depth, &here));
        }
        issues
    }

    fn drained_faults(&self, d: &Drained, gravel: bool, at: &str) -> Vec<Issue> {
        let ways = [
            d.friction_angle.map(|_| "friction_angle"),
            d.from_spt.map(|_| "from_spt"),
            d.from_cpt.map(|_| "from_cpt"),
            d.from_index.map(|_| "from_index"),
        ];
        let mut issues = not_one(&ways, at);
        if gravel {
            for way in [ways[1], ways[2]].into_iter().flatten() {
                issues.push(
                    Issue::new(
                        format!("{at}/{way}"),
                        &refusals::CORRELATION_NOT_FOR_GRAVEL,
                        "the relations are for relatively clean sand",
                    )
                    .source(&COARSE_SOIL_CORRELATIONS),
                );
            }
        }
        if let Some(spt) = &d.from_spt {
            let here = format!("{at}/from_spt");
            issues.extend(sand_count_faults(spt, &here));
            issues.extend(self.outside(spt.test_depth, &format!("{here}/test_depth")));
        }
        if let Some(cpt) = &d.from_cpt {
            let here = format!("{at}/from_cpt");
            issues.extend(cone_faults(&cpt.reading, &format!("{here}/reading")));
            issues.extend(self.outside(cpt.test_depth, &format!("{here}/test_depth")));
        }
        if let Some(index) = &d.from_index {
            let here = format!("{at}/from_index/reference_depth");
            issues.extend(self.outside(index.reference_depth, &here));
        }
        issues
    }

    /// A test outside the layer, or at the surface.
    fn outside(&self, depth: Option<Length>, pointer: &str) -> Option<Issue> {
        let z = depth?.si();
        let (top, bottom) = (self.top.si(), self.bottom.si());
        let inside = z >= top - SAME_DEPTH_M && z <= bottom + SAME_DEPTH_M;
        let told = |m: f64| Length::ROLE.in_both_systems(m);
        (!inside || z <= SAME_DEPTH_M).then(|| {
            Issue::new(
                pointer,
                &refusals::TEST_OUTSIDE_LAYER,
                format!("{} is sent", told(z)),
            )
            .limit(format!(
                "{} to {}, below the surface",
                told(top),
                told(bottom)
            ))
        })
    }
}

/// What was sent of several ways, in words.
fn sent(ways: &[Option<&str>]) -> String {
    let names: Vec<_> = ways.iter().flatten().map(|w| format!("`{w}`")).collect();
    if names.is_empty() {
        "none is sent".to_owned()
    } else {
        format!("{} are sent", names.join(" and "))
    }
}

fn not_one(ways: &[Option<&str>], at: &str) -> Vec<Issue> {
    if ways.iter().flatten().count() == 1 {
        return Vec::new();
    }
    vec![Issue::new(at, &refusals::STRENGTH_NOT_ONE, sent(ways))]
}

/// One fault for each of the members that is there.
fn unused(members: &[(&str, bool)], why: &str, at: &str) -> Vec<Issue> {
    let there = members.iter().filter(|m| m.1);
    there
        .map(|(name, _)| Issue::new(format!("{at}/{name}"), &refusals::SPT_MEMBER_UNUSED, why))
        .collect()
}

fn sand_count_faults(spt: &FrictionFromSpt, at: &str) -> Vec<Issue> {
    let on_n1_60 = on_n1_60(spt.correlation.unwrap_or_default());
    let mut issues = Vec::new();
    if spt.form != SptForm::Raw {
        let members = [
            ("energy_ratio", spt.energy_ratio.is_some()),
            ("borehole_factor", spt.borehole_factor.is_some()),
            ("rod_factor", spt.rod_factor.is_some()),
            ("sampler_factor", spt.sampler_factor.is_some()),
        ];
        issues.extend(unused(&members, "only a raw count takes it", at));
    }
    let cap = [(
        "overburden_cap_factor",
        spt.overburden_cap_factor.is_some() && (spt.form == SptForm::N1_60 || !on_n1_60),
    )];
    let why = "overburden is corrected for only where the relation takes (N_1)_60 and another form is sent";
    issues.extend(unused(&cap, why, at));
    if spt.form == SptForm::N1_60 {
        let silty = [("silty_below_water", spt.silty_below_water == Some(true))];
        issues.extend(unused(&silty, "it is made before that for overburden", at));
        if !on_n1_60 {
            issues.push(Issue::new(
                format!("{at}/form"),
                &refusals::SPT_FORM_UNFIT,
                "the relation takes N_60, and (N_1)_60 is sent",
            ));
        }
    }
    issues
}

fn clay_count_faults(spt: &UndrainedFromSpt, at: &str) -> Vec<Issue> {
    let mut issues = Vec::new();
    if spt.form != SptClayForm::Raw {
        let members = [
            ("energy_ratio", spt.energy_ratio.is_some()),
            ("borehole_factor", spt.borehole_factor.is_some()),
            ("rod_factor", spt.rod_factor.is_some()),
            ("sampler_factor", spt.sampler_factor.is_some()),
        ];
        issues.extend(unused(&members, "only a raw count takes it", at));
    }
    let (least, greatest) = PLASTICITY_RANGE.value;
    match spt.plasticity_index_ratio {
        None => issues.push(
            Issue::new(
                at,
                &refusals::PLASTICITY_INDEX_NEEDED,
                "`plasticity_index_ratio` is not sent; send it, or `undrained_strength`",
            )
            .source(PLASTICITY_RANGE.reference),
        ),
        Some(pi) if pi < least - 1e-9 || pi > greatest + 1e-9 => issues.push(
            Issue::new(
                format!("{at}/plasticity_index_ratio"),
                &refusals::PLASTICITY_INDEX_OUTSIDE,
                format!("{pi} is sent"),
            )
            .limit(format!("{least} to {greatest}"))
            .source(PLASTICITY_RANGE.reference),
        ),
        Some(_) => {}
    }
    issues
}

fn cone_faults(cone: &ConeReading, at: &str) -> Option<Issue> {
    let parts = [cone.pore_pressure.is_some(), cone.area_ratio.is_some()];
    let whole = match (cone.total_resistance, cone.cone_resistance) {
        (Some(_), None) => parts == [false, false],
        (None, Some(_)) => parts == [true, true],
        _ => false,
    };
    (!whole).then(|| {
        Issue::new(
            at,
            &refusals::CONE_RESISTANCE_NOT_ONE,
            "neither `total_resistance` alone nor `cone_resistance` with both `pore_pressure` and `area_ratio`",
        )
    })
}
