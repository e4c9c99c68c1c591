//! The rule of a design basis in one direction, made once: from an ultimate resistance to
//! the capacity that may be used, and to the utilisation by the load. One path records its
//! working and one does not; the equations are the same. How a rule is made is in
//! `rule_factors.rs` and `rule_eurocode.rs`.

use super::design::least_ultimate;
use super::outcome::{
    AxialResistance, CombinationCapacity, DesignCapacity, DesignCapacityKind, HelixFactor,
};
use super::pile::AxialDirection;
use crate::basis::{
    OwnDesignFactor, ResistanceSample, allowable, calculated_resistance, characteristic_resistance,
    design_resistance, design_strength, factored, own_capacity,
};
use crate::catalogue::CheckDef;
use crate::contract::{Check, SubjectKind, Work, utilisation};
use crate::quantity::Force;
use crate::source::{CALLER, Reference};
use crate::trace::Trace;

/// A design basis, ready for ultimate resistances of one direction.
#[derive(Debug)]
pub(crate) struct DesignRule {
    pub(super) direction: AxialDirection,
    pub(super) kind: DesignCapacityKind,
    /// Of which ultimate loads the least counts: number and least of those beside the soil.
    pub(super) least_of: Option<Option<(usize, Force)>>,
    pub(super) characteristic: Option<Characteristic>,
    /// One for each combination; never empty.
    pub(super) lines: Vec<RuleLine>,
    /// Factors in force, as the answer carries them.
    pub(super) factors: Vec<HelixFactor>,
}

/// What a characteristic resistance comes from.
#[derive(Debug, Clone, Copy)]
pub(super) enum Characteristic {
    /// This calculated resistance together with those of other profiles.
    Calculated {
        model_factor: f64,
        others: Option<ResistanceSample>,
        correlation: (f64, f64),
    },
    /// Measured resistances alone.
    Measured {
        tests: ResistanceSample,
        correlation: (f64, f64),
    },
}

/// One combination.
#[derive(Debug, Clone, Copy)]
pub(super) struct RuleLine {
    pub combination: Option<&'static str>,
    pub margin: Margin,
    pub load: Option<Force>,
}

/// The last factor on the resistance.
#[derive(Debug, Clone, Copy)]
pub(super) enum Margin {
    Safety(f64, &'static Reference),
    Resistance(f64, &'static Reference),
    Partial(f64, &'static Reference),
    Strength(f64, &'static Reference),
    Own(OwnDesignFactor),
}

impl Margin {
    fn source(self) -> &'static Reference {
        match self {
            Margin::Safety(_, source)
            | Margin::Resistance(_, source)
            | Margin::Partial(_, source)
            | Margin::Strength(_, source) => source,
            Margin::Own(_) => &CALLER,
        }
    }

    fn capacity(self, of: Force, trace: &mut Trace) -> Force {
        match self {
            Margin::Safety(fs, source) => allowable(of, fs, source, trace),
            Margin::Resistance(phi, source) => factored(of, phi, source, trace),
            Margin::Partial(gamma, source) => design_resistance(of, gamma, source, trace),
            Margin::Strength(phi, source) => design_strength(of, phi, source, trace),
            Margin::Own(factor) => own_capacity(of, factor, trace),
        }
    }
}

/// What the steps of a combination are about.
pub(super) fn subject(combination: &str, direction: AxialDirection) -> String {
    format!("{} in {}", combination.replace('_', " "), direction.name())
}

/// What every combination of a rule starts from.
struct Start {
    from_ultimate: Force,
    characteristic: Option<Force>,
}

impl DesignRule {
    /// The rule with its working: the capacity as the answer carries it.
    pub fn design(&self, ultimate: Force, trace: &mut Trace) -> DesignCapacity {
        let start = self.start(ultimate, trace);
        let mut capacity: Option<Force> = None;
        let mut combinations = Vec::new();
        for line in &self.lines {
            if let Some(name) = line.combination {
                trace.about(|| subject(name, self.direction));
            }
            let of = line.margin.capacity(start.counts(), trace);
            capacity = Some(capacity.map_or(of, |c| c.min(of)));
            if let Some(name) = line.combination {
                combinations.push(CombinationCapacity {
                    combination: name.into(),
                    capacity: of,
                    effect: line.load,
                });
            }
        }
        DesignCapacity {
            kind: self.kind,
            from_ultimate: start.from_ultimate,
            capacity: capacity.unwrap_or(Force::ZERO),
            characteristic: start.characteristic,
            combinations,
        }
    }

    /// The capacity that may be used, of the least favourable combination. Records nothing
    /// and allocates nothing.
    pub fn capacity(&self, ultimate: Force) -> Force {
        let start = self.start(ultimate, &mut Trace::off()).counts();
        let of = |line: &RuleLine| line.margin.capacity(start, &mut Trace::off());
        self.lines
            .iter()
            .map(of)
            .reduce(Force::min)
            .unwrap_or(Force::ZERO)
    }

    /// The highest utilisation over the combinations that have a load; infinite for a load
    /// on no capacity, none without a load. Whether it passes is for the rounding of a
    /// check. Records nothing and allocates nothing.
    pub fn worst_utilisation(&self, ultimate: Force) -> Option<f64> {
        let start = self.start(ultimate, &mut Trace::off()).counts();
        let of = |line: &RuleLine| {
            let capacity = line.margin.capacity(start, &mut Trace::off());
            let (ratio, passes) = utilisation(line.load?.si(), capacity.si());
            Some(ratio.unwrap_or(if passes { 0.0 } else { f64::INFINITY }))
        };
        self.lines.iter().filter_map(of).reduce(f64::max)
    }

    /// Whether the capacity changes with the calculated resistance; it does not where load
    /// tests stand in its place.
    pub fn follows_calculation(&self) -> bool {
        !matches!(self.characteristic, Some(Characteristic::Measured { .. }))
    }

    /// Whether resistances that were sent are part of the capacity; they hold for one depth.
    pub fn holds_fixed_resistances(&self) -> bool {
        !matches!(
            self.characteristic,
            None | Some(Characteristic::Calculated { others: None, .. })
        )
    }

    /// The capacity of something other than this pile by the last factor on its resistance;
    /// none where the factors are those of a pile by its kind and number of resistances.
    pub fn on_block(&self, ultimate: Force, trace: &mut Trace) -> Option<Force> {
        match (self.characteristic, self.lines.as_slice()) {
            (None, [line]) => Some(line.margin.capacity(ultimate, trace)),
            _ => None,
        }
    }

    /// Factors in force, as the answer carries them.
    pub fn factors(&self) -> &[HelixFactor] {
        &self.factors
    }

    /// A check for each combination that has a load.
    pub fn judge(
        &self,
        def: &'static CheckDef,
        pile: &str,
        resistance: &AxialResistance,
        design: &DesignCapacity,
        work: &mut Work,
    ) {
        let reason = if !self.follows_calculation() {
            "load tests stand in place of the calculated resistance".to_owned()
        } else if design.from_ultimate < resistance.ultimate {
            "another ultimate load of the pile is less than the bearing of the soil".to_owned()
        } else {
            format!("{} governs", resistance.governing_mode.name())
        };
        for (i, line) in self.lines.iter().enumerate() {
            let Some(load) = line.load else {
                continue;
            };
            let by_line = design.combinations.get(i).map(|c| c.capacity);
            let capacity = by_line.unwrap_or(design.capacity);
            let check = Check::at_most(def, load, capacity, line.margin.source())
                .subject(SubjectKind::Pile, pile)
                .reason(reason.clone());
            work.check(match line.combination {
                Some(name) => check.combination(name),
                None => check,
            });
        }
    }

    fn start(&self, ultimate: Force, trace: &mut Trace) -> Start {
        let least = match self.least_of {
            Some(others) => least_ultimate(ultimate, others, trace),
            None => ultimate,
        };
        match self.characteristic {
            None => Start {
                from_ultimate: least,
                characteristic: None,
            },
            Some(Characteristic::Calculated {
                model_factor,
                others,
                correlation,
            }) => {
                let r = calculated_resistance(least, model_factor, trace);
                let sample = others.map_or(ResistanceSample::one(r), |o| o.with(r));
                Start {
                    from_ultimate: least,
                    characteristic: Some(characteristic_resistance(sample, correlation, trace)),
                }
            }
            Some(Characteristic::Measured { tests, correlation }) => Start {
                from_ultimate: tests.least,
                characteristic: Some(characteristic_resistance(tests, correlation, trace)),
            },
        }
    }
}

impl Start {
    fn counts(&self) -> Force {
        self.characteristic.unwrap_or(self.from_ultimate)
    }
}

impl AxialDirection {
    /// The check of a load in this direction.
    pub(super) fn check(self) -> &'static CheckDef {
        use super::codes::checks;
        match self {
            AxialDirection::Compression => &checks::COMPRESSION,
            AxialDirection::Tension => &checks::TENSION,
        }
    }
}
