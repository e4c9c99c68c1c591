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
        BEAM_DEFLECTION = "beam_deflection", "Deflection of a beam between its piles or of a free end under service loads, against the limit sent.";
        PILE_WITHIN_WALL_WIDTH = "pile_within_wall_width", "Distance of a pile's centre from the centre line, at most half the width of the supported wall; a condition for a single row without lateral bracing.";
        SINGLE_ROW_STOREYS = "single_row_storeys", "Storeys over a single row of piles without lateral bracing, at most two.";
        SINGLE_ROW_HEIGHT = "single_row_height", "Height of a building over a single row of piles without lateral bracing, at most 35 ft.";
        SINGLE_ROW_BUILDING = "single_row_building", "Whether the building is one under which a single row of piles may stand without lateral bracing.";
        BEAM_TORSION = "beam_torsion", "Greatest torque of a beam, against its strength.";
        TOTAL_SETTLEMENT = "total_settlement", "Greatest settlement of a pile on spring supports, under the loads of the combinations, at most the limit.";
        DIFFERENTIAL_SETTLEMENT = "differential_settlement", "Difference of settlement of neighbouring piles along a beam by their distance, on spring supports, at most the limit.";
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
        PATTERN_WITHOUT_LOAD = "pattern_without_load", "A kind of load may be absent on single spans, and no load of this kind was sent.";
        PILE_STIFFNESS_ESTIMATED = "pile_stiffness_estimated", "The stiffness of the piles is an estimate from the ground; reactions on springs follow from it.";
        PILE_STIFFNESS_UNUSUAL = "pile_stiffness_unusual", "The stiffness of the piles is outside of what is usual for light piles.";
        STIFFNESS_BAND_GOVERNS = "stiffness_band_governs", "Within the band of the estimated stiffness a pile carries more than any in this answer.";
        CONCRETE_CODE_DIFFERS = "concrete_code_differs", "The load combinations and the concrete code of a section are of two countries.";
        PILE_OFF_LINE = "pile_off_line", "Some piles stand off the centre line of their beam; the moment about its axis that this makes is told and not judged.";
        PILE_LIFTS_OFF = "pile_lifts_off", "A beam lifts off some piles in some combination; they carry nothing then.";
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
        BEAM_TOO_WIDE = "beam_too_wide", "A beam is so wide that a part of it between two corners has no length left on one edge, or that a corner is too sharp for it.";
        OUTLINE_SIDE_ZERO_LENGTH = "outline_side_zero_length", "Two consecutive points of a form line are one point.";
        OUTLINE_CROSSES_ITSELF = "outline_crosses_itself", "A form line crosses, touches or doubles back on itself; only its ends may meet.";
        OUTLINE_INSIDE_UNCLEAR = "outline_inside_unclear", "An open form line does not say on which side the building lies, or a ring does.";
        OUTLINE_INSET_OUTSIDE = "outline_inset_outside", "The centre line would not lie within the beam: the inset is not less than the width.";
        OUTLINE_SIDE_UNKNOWN = "outline_side_unknown", "The form line has no side of this number.";
        OUTLINE_SIDE_TWICE = "outline_side_twice", "A side of a form line is listed twice.";
        OUTLINE_CORNER_TOO_SHARP = "outline_corner_too_sharp", "A corner of a form line is too sharp for beams along it.";
        OUTLINE_SIDES_STEP = "outline_sides_step", "Two sides of a form line go straight on, or nearly, with different insets or widths, so that their lines do not meet there; draw the step.";
        OUTLINE_SIDE_VANISHES = "outline_side_vanishes", "A side of a form line is too short for its beam: its centre line or inner face would have no length left or point the other way, as in a bay narrower than two insets.";
        OUTLINE_TOO_NARROW = "outline_too_narrow", "The building is too narrow at a place: centre lines or inner faces of beams that are no neighbours would meet.";
        JOIN_NOTHING = "join_nothing", "A beam is to be joined to the beam of an outline, and none of its ends stands in one.";
        JOIN_MISSES = "join_misses", "The end of a beam stands in the width of an outline's beam, and cannot be moved along its own axis onto its centre line.";
        OPENING_OFF_BEAM = "opening_off_beam", "An opening begins or ends outside its beam, does not end after it begins, lies over a corner, or leaves no beam on one side of it.";
        OPENINGS_OVERLAP = "openings_overlap", "Two openings lie on each other, or leave no beam between them.";
        LOAD_OVER_NO_BEAM = "load_over_no_beam", "A line load lies over an opening where there is no beam and no header to carry it.";
        BEAM_UNSUPPORTED = "beam_unsupported", "A beam, or beams that are connected, have no pile at all.";
        BEAM_MECHANISM = "beam_mechanism", "A beam can move without resistance: there are too few piles under it. Corners and junctions pass no bending on.";
        LINE_LOAD_OFF_BEAM = "line_load_off_beam", "A line load begins or ends outside its beam, or does not end after it begins.";
        POINT_LOAD_OFF_BEAM = "point_load_off_beam", "A point load is on no beam.";
        PILE_OFF_BEAM = "pile_off_beam", "A pile is on no beam.";
        FORCED_POINT_OFF_BEAM = "forced_point_off_beam", "A forced point is on no beam.";
        PILES_COINCIDE = "piles_coincide", "Two piles stand at one place.";
        RIGIDITY_NEEDED = "rigidity_needed", "The flexural rigidity of this beam is needed: piles are springs, torsion is included, or other beams have one.";
        TORSIONAL_RIGIDITY_NEEDED = "torsional_rigidity_needed", "The torsional rigidity of this beam is needed: torsion is included.";
        STIFFNESS_ON_ROCK = "stiffness_on_rock", "A pile on rock does not move and has no stiffness.";
        MOMENT_OFF_BEAM = "moment_off_beam", "A couple is not on the beam it names.";
        GIVEN_PILES_ONLY = "given_piles_only", "A search does not take this in; analyse the piles that it finds as given ones.";
        LIFT_OFF_NO_EQUILIBRIUM = "lift_off_no_equilibrium", "In a combination the piles cannot keep the beams in equilibrium by pushing alone.";
        STIFFNESS_NEEDED = "stiffness_needed", "Some piles have a stiffness and this one has none.";
        CAPACITY_NEEDED = "capacity_needed", "The capacity of a pile is needed: for a search, or because single piles have their own.";
        STRENGTH_GIVEN_TWICE = "strength_given_twice", "A beam has a section and a strength beside it; send one of them.";
        STRENGTH_CHECK_WITHOUT_SECTION = "strength_check_without_section", "`strength_check` brings service loads to the strength of sections, and no beam has a section; strengths that are sent are at the level of the design basis already.";
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
        SLAB_CORNERS_COINCIDE = "slab_corners_coincide", "Two consecutive corners of a slab are one point; the first corner is not repeated at the end.";
        SLAB_CROSSES_ITSELF = "slab_crosses_itself", "Two edges of a slab cross, touch or lie on each other.";
        SLAB_WITHOUT_AREA = "slab_without_area", "The corners of a slab are on one line.";
        SLAB_NOT_CONVEX = "slab_not_convex", "A slab with a corner that points inwards cannot span to the nearest edge; split it, or let it span one way.";
        SLAB_EDGE_WITHOUT_BEAM = "slab_edge_without_beam", "An edge of a slab carries load and is not on beams all along.";
        SLAB_STRIPS_UNCLEAR = "slab_strips_unclear", "The beam that the strips of a slab are square to is not known, carries no edge of the slab, or turns under it.";
        NOT_TOGETHER = "not_together", "Two wishes of the request are not analysed together.";
        PATTERN_OF_DEAD_LOAD = "pattern_of_dead_load", "Permanent load is always there; it cannot be absent on single spans.";
        PATTERN_TOO_LARGE = "pattern_too_large", "More spans, counted once for each load case that may be absent, than are accepted.";
        PATTERN_WITH_OPEN_TYPES = "pattern_with_open_types", "Piles take one of several types by what they carry with all loads everywhere; with loads that may be absent on single spans their types must be told.";
        STIFFNESS_GIVEN_TWICE = "stiffness_given_twice", "The stiffness of the piles is sent as a number and is also to be found; send one.";
        SUPPORT_CARRIES_NOTHING = "support_carries_nothing", "No stiffness can be found: the ground gives the pile no resistance in compression.";
        SUPPORT_LOAD_ABOVE_ULTIMATE = "support_load_above_ultimate", "The load at which the stiffness of a pile is to be found is more than the ground carries.";
        SUPPORT_STIFFNESS_OUT_OF_RANGE = "support_stiffness_out_of_range", "The stiffness found for the piles, or an end of its band, is outside of what is accepted.";
        PLAN_TOO_INTERLINKED = "plan_too_interlinked", "Too many beams cross without a pile at the crossing to be solved at once.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        CONTINUOUS_BEAM = "continuous_beam", version 1, [EULER_BERNOULLI, CONTINUOUS_BEAM_TABLE, THREE_MOMENT], "Straight runs of beam as continuous Euler-Bernoulli beams by the direct stiffness method, all load cases at once; runs share vertical movement only where they meet (no torsion, unless it is included). Moments are extreme at zero shear, found exactly. Piles stay connected in tension, unless they are said to let go.";
        SPRING_SUPPORTS = "spring_supports", version 1, [EULER_BERNOULLI], "The same with each pile a linear spring; the worse of rigid and spring supports is judged.";
        PATTERN_LOAD = "pattern_load", version 1, [EULER_BERNOULLI, PATTERN_SUPERPOSITION], "Load cases that may be absent are cut at the piles; each part, one case on one span, on one overhang or over one pile, is solved by itself. The greatest value of a reaction, a moment or a shear is that of all loads less every part that makes it smaller, point by point and combination by combination, which covers every way to load the spans. Moments are extreme at zero shear between the places where a part changes sign. Tributary loads, shares by beam, the list of reactions and settlements are with all loads everywhere. In a search, layouts are first sought with all loads everywhere, which bounds the number of piles from below since absent loads only raise demands; the plan as a whole is rated, mended and judged with them.";
        SLAB_TWO_WAY = "slab_two_way", version 1, [SLAB_TRIBUTARY], "Every point of a convex slab goes to the edge it is nearest to, square to it, onto the beam there. The width that goes to an edge varies evenly between the places where bisectors meet: triangles and trapezoids on a rectangle. The beam takes it as a load that varies evenly, on its centre line: no torsion from the edge of the slab is counted.";
        SLAB_ONE_WAY = "slab_one_way", version 1, [SLAB_ONE_WAY], "Strips side by side in one direction, each a simple beam with half of its load at either end. Edges along the strips get nothing.";
        PILE_SUPPORT = "pile_support", version 1, [SPRINGS_IN_SERIES, SHAFT_SHORTENING, MOVEMENT_HYPERBOLA], "Load over movement of the head of a pile at one service load, by the estimate of `helix-capacity`: the shaft, with the load that is left in it from helix to helix, on helices that follow a hyperbola. The same spring is used for all loads and both directions. For its band the helices move twice, and half, as far.";
        TORSION_OF_BEAMS = "torsion_of_beams", version 1, [EULER_BERNOULLI, UNIFORM_TORSION], "Beams that meet share the tilt of their node as well as its vertical movement: vertical displacement and two rotations a node, members with flexural and torsional rigidity at any angle. Piles let the beams turn freely. A straight run that meets no other has no torque. In place of the release at corners and junctions.";
        PILES_THAT_PUSH = "piles_that_push", version 1, [PUSHING_SUPPORTS], "Each combination solved for itself: piles that would pull are let go, piles that the beam comes down on are taken back, until no pile pulls and no beam is below a pile's head.";
        TRIBUTARY_LENGTHS = "tributary_lengths", version 1, [TRIBUTARY_PRACTICE], "Each span as a simple beam, an overhang to its last pile. For comparison only.";
        FORM_LINE = "form_line", version 1, [FORM_LINE_GEOMETRY], "Beams along an outside form line: every side is moved inwards by its inset, in parallel, and cut off where it meets the sides beside it. Ends of other beams are moved onto a centre line along their own axis, only where that was asked for.";
        WALL_OPENINGS = "wall_openings", version 1, [HEADER_STATICS], "Over an opening in a wall a header carries line loads to the two jambs as a simple beam; what goes with the beam itself acts on below. Where there is no beam, the beam ends on either side.";
        COMBINATIONS_ASCE_7_16_ASD = "combinations_asce_7_16_asd", version 1, [ASCE_7_16_ASD], "Basic combinations of service loads. A load that accompanies another is also left out, so that its relieving effect is not relied on.";
        COMBINATIONS_ASCE_7_16_LRFD = "combinations_asce_7_16_lrfd", version 1, [ASCE_7_16_LRFD], "Basic combinations of factored loads, live load always with the full companion factor. A load that accompanies another is also left out.";
        COMBINATIONS_ASCE_7_22_ASD = "combinations_asce_7_22_asd", version 1, [ASCE_7_22_ASD], "As 7-16 with snow at strength level.";
        COMBINATIONS_ASCE_7_22_LRFD = "combinations_asce_7_22_lrfd", version 1, [ASCE_7_22_LRFD], "As 7-16 with snow at strength level.";
        COMBINATIONS_NBC_2020 = "combinations_nbc_2020", version 1, [NBC_2020_COMBINATIONS], "Ultimate limit states with 1.25 and 0.9 dead load, one companion load or none.";
        COMBINATIONS_OWN = "combinations_own", version 1, [CALLER], "The caller's combinations; a factor without a case is applied with each case of its kind in turn.";
        STAKING = "staking", version 1, [SITE_GRID, BEARWELL_CHOICE], "The plan turned and shifted into the site grid by two control points (their middles on each other, nothing scaled but by the stated factor) or by one point and an angle. Coordinates are rounded to 0.001 ft or 0.1 mm, distances for the tape to 1/16 in or 1 mm, half away from zero, each by itself.";
        PILE_TYPES = "pile_types", version 1, [BEARWELL_CHOICE], "Types of pile in the order of least cost, least compression, least tension, place in the list; a pile takes the first that carries its compression and tension on rigid piles, and on springs the next after it that does; where none does, the one used least.";
        DEFLECTION_BY_CURVATURE = "deflection_by_curvature", version 1, [CURVATURE_INTEGRAL, IBC_1604_3_CANTILEVER], "Deflection between neighbouring piles of a straight run from the chord through their heads, and of a free end from that chord drawn on, by exact integration of M/(E I); greatest where the slope is nil. The span of a free end is twice its length. Rigidity as in the analysis, constant along each beam; at once, without creep; in service combinations only, with every load on all spans.";
        SINGLE_ROW_BRACING = "single_row_bracing", version 1, [IBC_1810_2_2, IBC_1810_2_2_LIMITS], "Every pile is judged as one of a single row without lateral bracing, whether or not other beams cross there: its centre within the width of the supported wall (the narrowest where walls meet), a dwelling of one or two families or light construction, at most two storeys and at most 35 ft. Groups of three or more under a rigid cap, which are braced in themselves, are not looked for.";
        LEAST_COST = "least_cost", version 1, [LAYOUT_ENUMERATION, THREE_MOMENT], "Least cost on each straight run by branch and bound over every number of piles that could cost less: a pile that stands costs at least the cheapest type for the least it can carry, the rest at least what a convex function below the costs gives for the load that is left; a pile that runs share is counted with the cheapest type for the least they bring there, in plans that cost less than the one found. The whole plan is analysed at the end.";
        FEWEST_PILES = "fewest_piles", version 2, [LAYOUT_ENUMERATION, THREE_MOMENT, EULER_BERNOULLI], "Fewest piles on each straight run by bounds and by trying every layout with fewer, with continuous-beam reactions and a counted limit of work. Where beams meet without a pile, where a gap is left, or where nothing was found, every connected part is tried as a whole: all choices of the runs together, what they bring to each other by statics of the whole part, piles rigid and as springs. Then, in this order: a layout that is its own mirror image where one is wished, the lowest utilisation, the least sum of squared spans, symmetry of the spans, the first in order of position. The whole plan is analysed at the end. Where nothing keeps the limits, each limit alone is let give way and the search done again.";
    }
}
