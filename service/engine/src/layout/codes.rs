//! Codes of `pile-layout`, beside their texts.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        PILE_COMPRESSION = "pile_compression", "Greatest compression of a pile over all combinations and support models, against its capacity.";
        PILE_TENSION = "pile_tension", "Greatest tension of a pile over all combinations and support models, against its capacity.";
        BEAM_MOMENT_SAGGING = "beam_moment_sagging", "Greatest moment of a beam with tension at the bottom, against its strength.";
        BEAM_MOMENT_HOGGING = "beam_moment_hogging", "Greatest moment of a beam with tension at the top, against its strength.";
        BEAM_SHEAR = "beam_shear", "Greatest shear of a beam, against its strength.";
        PILE_SPACING = "pile_spacing", "Distance of a pile to the nearest other pile in plan, at least the least spacing.";
        PILE_SPAN = "pile_span", "Longest distance between neighbouring piles along a beam, at most the greatest spacing.";
        PILE_OVERHANG = "pile_overhang", "Length of a beam beyond its last pile, at most the greatest overhang.";
        KEEP_OUT = "keep_out", "Distance of a pile to a thing that piles keep away from, at least its clearance.";
        SPRING_SUPPORT = "spring_support", "Whether the piles were also modelled as springs; reactions on unequal or yielding piles differ from those on rigid ones.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        TRIBUTARY_DIFFERS = "tributary_differs", "Tributary lengths would give another load than the continuous beam on some piles, by more than 5 %; the continuous beam is judged.";
        COMBINATION_UNUSED_LOAD = "combination_unused_load", "A kind of load was sent that no combination takes in.";
        PILE_UPLIFT = "pile_uplift", "Some piles are in tension in some combination; their connection to the beam must carry it.";
        CONTROL_BASELINE_SHORT = "control_baseline_short", "Some piles lie farther from the control points than these from each other, so that an error of a control point is larger at the pile.";
        SEARCH_NOT_PROVEN = "search_not_proven", "It is not proven that fewer piles cannot do; the lower bound is reported.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        BEAM_SEGMENT_ZERO_LENGTH = "beam_segment_zero_length", "Two consecutive points of a beam are one point.";
        BEAM_CROSSES_ITSELF = "beam_crosses_itself", "A beam crosses, touches or doubles back on itself; only its ends may meet.";
        BEAMS_OVERLAP = "beams_overlap", "Two beams lie on each other over a length.";
        BEAM_UNSUPPORTED = "beam_unsupported", "A beam, or beams that are connected, have no pile at all.";
        BEAM_MECHANISM = "beam_mechanism", "A beam can move without resistance: there are too few piles under it. Corners and junctions pass no bending on.";
        LINE_LOAD_OFF_BEAM = "line_load_off_beam", "A line load begins or ends outside its beam, or does not end after it begins.";
        POINT_LOAD_OFF_BEAM = "point_load_off_beam", "A point load is on no beam.";
        PILE_OFF_BEAM = "pile_off_beam", "A pile is on no beam.";
        FORCED_POINT_OFF_BEAM = "forced_point_off_beam", "A forced point is on no beam.";
        PILES_COINCIDE = "piles_coincide", "Two piles stand at one place.";
        RIGIDITY_NEEDED = "rigidity_needed", "The flexural rigidity of this beam is needed: piles are springs, or other beams have one.";
        STIFFNESS_NEEDED = "stiffness_needed", "Some piles have a stiffness and this one has none.";
        CAPACITY_NEEDED = "capacity_needed", "The capacity of a pile is needed: for a search, or because single piles have their own.";
        LOAD_KIND_NOT_COMBINED = "load_kind_not_combined", "The published set has no factor for this kind of load; send own combinations.";
        UNKNOWN_CASE = "unknown_case", "No load of this kind has this case.";
        FACTOR_TWICE = "factor_twice", "Two factors of one combination act on the same loads.";
        NO_LOAD = "no_load", "No load acts in any combination.";
        TOO_MANY_COMBINATIONS = "too_many_combinations", "With its cases the set has more combinations than are accepted.";
        TOO_MANY_LOAD_CASES = "too_many_load_cases", "The loads have more kinds and cases than are accepted.";
        CAPACITY_TWICE = "capacity_twice", "Either one `pile_capacity` or `pile_types`, not both.";
        UNKNOWN_PILE_TYPE = "unknown_pile_type", "No type of pile has this label.";
        COSTS_NEEDED = "costs_needed", "The cost of every type of pile is needed: for least cost, or because others have one.";
        ZONE_CAPACITIES_DIFFER = "zone_capacities_differ", "A soil zone says what every type of pile carries in it, each once.";
        ZONES_OVERLAP = "zones_overlap", "Two soil zones lie over each other.";
        AREA_NOT_SIMPLE = "area_not_simple", "A soil zone or keep-out crosses or touches itself, or two of its points in a row are one.";
        MIN_SPACING_NEEDED = "min_spacing_needed", "A search needs the least distance between piles or their largest helix.";
        FORCED_POINT_BARRED = "forced_point_barred", "A forced point is where no pile may stand.";
        FORBIDDEN_STRETCH_OFF_BEAM = "forbidden_stretch_off_beam", "A forbidden stretch is on no beam, ends outside its beam, or does not end after it begins.";
        JUNCTION_BARRED = "junction_barred", "A corner or junction is where no pile may stand.";
        BEAM_END_BARRED = "beam_end_barred", "No pile may stand near enough to a free beam end.";
        SPACING_CANNOT_BE_MET = "spacing_cannot_be_met", "The spacing limits leave no place for the piles.";
        TOO_MANY_PLACES = "too_many_places", "The staking increment gives more places along a beam than are accepted.";
        TOO_MANY_PILES = "too_many_piles", "The plan would need more piles than are accepted.";
        TOO_MANY_REACTIONS = "too_many_reactions", "More reactions would be listed than are accepted.";
        STATICS_NOT_CLOSED = "statics_not_closed", "Stiffnesses or lengths differ so much that equilibrium is not met to 1e-9; no result is given.";
        CONTROL_POINTS_COINCIDE = "control_points_coincide", "The two control points are one place, on the plan or on site; they give no direction.";
        CONTROL_DISTANCES_DISAGREE = "control_distances_disagree", "The control points are not as far apart on site as on the plan; nothing is scaled to make them fit.";
        CONTROL_CHECK_OFF = "control_check_off", "The check point is not where the two control points put it.";
        PILE_TOP_UNKNOWN_PILE = "pile_top_unknown_pile", "An elevation is given for a pile that is not there.";
        PLAN_TOO_INTERLINKED = "plan_too_interlinked", "Too many beams cross without a pile at the crossing to be solved at once.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        CONTINUOUS_BEAM = "continuous_beam", version 1, [EULER_BERNOULLI, CONTINUOUS_BEAM_TABLE, THREE_MOMENT], "Straight runs of beam as continuous Euler-Bernoulli beams by the direct stiffness method, all load cases at once; runs share vertical movement only where they meet (no torsion). Moments are extreme at zero shear, found exactly. Piles stay connected in tension.";
        SPRING_SUPPORTS = "spring_supports", version 1, [EULER_BERNOULLI], "The same with each pile a linear spring; the worse of rigid and spring supports is judged.";
        TRIBUTARY_LENGTHS = "tributary_lengths", version 1, [TRIBUTARY_PRACTICE], "Each span as a simple beam, an overhang to its last pile. For comparison only.";
        COMBINATIONS_ASCE_7_16_ASD = "combinations_asce_7_16_asd", version 1, [ASCE_7_16_ASD], "Basic combinations of service loads. A load that accompanies another is also left out, so that its relieving effect is not relied on.";
        COMBINATIONS_ASCE_7_16_LRFD = "combinations_asce_7_16_lrfd", version 1, [ASCE_7_16_LRFD], "Basic combinations of factored loads, live load always with the full companion factor. A load that accompanies another is also left out.";
        COMBINATIONS_ASCE_7_22_ASD = "combinations_asce_7_22_asd", version 1, [ASCE_7_22_ASD], "As 7-16 with snow at strength level.";
        COMBINATIONS_ASCE_7_22_LRFD = "combinations_asce_7_22_lrfd", version 1, [ASCE_7_22_LRFD], "As 7-16 with snow at strength level.";
        COMBINATIONS_NBC_2020 = "combinations_nbc_2020", version 1, [NBC_2020_COMBINATIONS], "Ultimate limit states with 1.25 and 0.9 dead load, one companion load or none.";
        COMBINATIONS_OWN = "combinations_own", version 1, [CALLER], "The caller's combinations; a factor without a case is applied with each case of its kind in turn.";
        STAKING = "staking", version 1, [SITE_GRID, BEARWELL_CHOICE], "The plan turned and shifted into the site grid by two control points (their middles on each other, nothing scaled but by the stated factor) or by one point and an angle. Coordinates are rounded to 0.001 ft or 0.1 mm, distances for the tape to 1/16 in or 1 mm, half away from zero, each by itself.";
        PILE_TYPES = "pile_types", version 1, [BEARWELL_CHOICE], "Types of pile in the order of least cost, least compression, least tension, place in the list; a pile takes the first that carries its compression and tension on rigid piles, and on springs the next after it that does; where none does, the one used least.";
        FEWEST_PILES = "fewest_piles", version 1, [LAYOUT_ENUMERATION, THREE_MOMENT], "Fewest piles on each straight run by bounds and by trying every layout with fewer, with continuous-beam reactions and a counted limit of work; then the lowest utilisation, the least sum of squared spans, the first in order of position. The whole plan is analysed at the end.";
    }
}
