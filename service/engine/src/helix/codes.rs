//! Codes of `helix-capacity`, beside their texts. Codes shared by all calculations are
//! in `catalogue/common.rs`.

/// Checks.
pub mod checks {
    use crate::catalogue::codes;
    codes! { CheckDef:
        COMPRESSION = "helix_compression", "Load in compression against the capacity of the soil around the helices.";
        TENSION = "helix_tension", "Load in tension against the capacity of the soil around the helices.";
        EMBEDMENT = "helix_embedment", "Depth of the top helix against 5 diameters of the largest helix, or the ratio sent; asked where there is tension or a ratio is sent.";
        PUNCHING = "helix_punching", "Load in compression against the capacity with the bearing of each helix held at what weaker soil, fill, organic or frozen soil within three diameters below it takes.";
        TOP_DEPTH = "helix_top_depth", "Depth of the top helix against the least depth sent for it, such as frost, seasonal change or fill with a margin.";
        LOWEST_DEPTH = "helix_lowest_depth", "Depth of the lowest helix against the least depth specified for it.";
        SPACING = "helix_spacing", "Distance between two helices against 3 diameters of the lower one; advises only, as the cylinder between them is computed.";
        CREDIT = "helix_in_bearing_soil", "Soil on the load side of a helix that bears, against the whole zone; advises only, as such a helix is given nothing.";
        GROUP_COMPRESSION = "group_compression", "Load in compression on a group of piles against the lesser of its piles together and the block of soil between them.";
        GROUP_TENSION = "group_tension", "Load in tension on a group of piles against its piles together, and against the block of soil they lift where that counts.";
        GROUP_SPACING = "group_spacing", "Distance between the piles of a group against 4 diameters of the largest helix; advises only.";
        HEAD_MOVEMENT = "head_movement", "Estimated movement of the head under the working load against the limit sent; the load against the ultimate resistance where no movement holds it.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        HELIX_WITHOUT_CREDIT = "helix_without_credit", "A helix is given no resistance: its soil is fill, organic or frozen, or it lies above the depth from which soil is credited.";
        WEAK_LAYER_NEAR_HELIX = "weak_layer_near_helix", "A layer within three diameters on the load side of a helix bears less than 60 % of what the helix bears on; it may be punched through.";
        PROFILE_ENDS_NEAR_HELIX = "profile_ends_near_helix", "The profile ends within three diameters below a helix.";
        FRICTION_ANGLE_ABOVE_40 = "friction_angle_above_40", "A friction angle above 40 degrees is used; few soils keep it under load, and bearing doubles within five degrees.";
        SHAPE_DEPTH_FACTORS_USED = "shape_depth_factors_used", "Shape and depth factors of footings raise the bearing of the helices. They were made for wide bases at shallow depth; no test on helices is known here that bears them out.";
        CAPACITY_JUMPS = "capacity_jumps", "The ultimate resistance jumps at a depth: a helix or its zone passes soil without credit, or a method in force is not continuous. A pile stopped just short of it may carry much less.";
        HELICES_CLOSE = "helices_close", "Two helices are less than 3 diameters of the lower one apart.";
        RELIABILITY_INDICATIVE = "reliability_indicative", "The reliability index and the probability are indicative: they rest on an assumed distribution and on a statistic that need not hold for this site, and cover neither blunders nor the load of the whole structure.";
        STATISTIC_OF_ANOTHER_METHOD = "statistic_of_another_method", "The statistic was published for another way of calculating the resistance than the one used here; its scatter need not hold.";
        RELIABILITY_NOT_ESTIMATED = "reliability_not_estimated", "A direction is given no estimate: the statistic does not apply to it, no load was sent for it, or nothing resists.";
        GROUP_EFFICIENCY_UNKNOWN = "group_efficiency_unknown", "The piles of a group stand closer than 3 diameters of the largest helix and no efficiency was sent; their sum is not reduced and only the block is set against it.";
        BLOCK_LESS_THAN_PILES = "block_less_than_piles", "The block of soil that a group lifts is less than its piles together, though the piles stand too far apart for the block to count.";
        PROFILE_ENDS_NEAR_BLOCK = "profile_ends_near_block", "The profile ends within two breadths below the block of a group; within one breadth the block is not computed.";
        NO_RULE_FOR_BLOCK = "no_rule_for_block", "The design basis has no rule for the block of a group; the group is not judged.";
        HEAD_MOVEMENT_ESTIMATE = "head_movement_is_estimate", "Movement under load is an estimate from assumed curves of load and movement; consolidation, creep and the group are not in it.";
        HEAD_MOVEMENT_NOT_FOUND = "head_movement_not_found", "Nothing carries the pile, so that no movement can be told.";
        WORKING_LOAD_ASSUMED = "working_load_assumed", "No unfactored load and no allowable capacity is known; the movement is told at half of the ultimate resistance.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        HELIX_NOT_WIDER_THAN_SHAFT = "helix_not_wider_than_shaft", "The helix is not wider than its shaft.";
        HELIX_BELOW_PROFILE = "helix_below_profile", "The helix is below the last layer; no soil is given there.";
        HELICES_COINCIDE = "helices_coincide", "Two helices are at the same depth.";
        PROFILE_ENDS_IN_ZONE = "profile_ends_in_zone", "The profile ends within the soil that a helix bears on in compression; give the soil to that depth.";
        HELIX_IN_ROCK = "helix_in_rock", "Rock above the helix, or in compression at it or in the soil it bears on; helix theory does not apply to it. A pile on rock is a question for a load test.";
        HELIX_IN_HAZARD = "helix_in_hazard", "A helix lies in, bears on or straddles ground noted for boulders, collapse, sensitivity, liquefaction or permafrost; helix theory does not apply to it. It needs a test or a study of the site.";
        NO_CLOSED_WIDTH_FACTOR = "no_closed_width_factor", "The method has no closed N_gamma, so the width term cannot be included.";
        ADHESION_ON_SQUARE_SHAFT = "adhesion_on_square_shaft", "Adhesion is not counted on a square shaft.";
        DEPTH_RANGE_INVERTED = "depth_range_inverted", "The last depth is not below the first.";
        DEPTH_RANGE_ABOVE_GROUND = "depth_range_above_ground", "The first depth would leave a helix above the ground or less than 0.1 m deep.";
        HELIX_SET_INCOMPLETE = "helix_set_incomplete", "No helix of the set is the lowest: the least height above the lowest helix must be 0.";
        GROUP_OF_ONE = "group_of_one", "A group has two piles or more.";
        GROUP_HELICES_OVERLAP = "group_helices_overlap", "Two piles of the group stand closer than the diameter of the largest helix; their helices would be in the same place.";
        LEANING_SIDES_IN_OTHER_SOIL = "leaning_sides_in_other_soil", "Sides that lean out hold in sand and gravel alone; take straight sides, or send the block.";
        HEAD_BELOW_HELIX = "head_below_helix", "The head of the pile is below its top helix.";
        DEMAND_NOT_COMPUTED = "demand_not_computed", "The demand acts in a direction that is not to be computed.";
        RELIABILITY_NEEDS_LOAD = "reliability_needs_load", "A reliability estimate needs an unfactored load where the design basis has no safety factor on it.";
        STATISTIC_DOES_NOT_APPLY = "statistic_does_not_apply", "The published statistic holds for other piles, soils or directions than those of the request.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        INDIVIDUAL_BEARING = "individual_bearing", version 2, [IBC_1810_3_3_1_9, HELIX_AREA_NET, NO_CREDIT_SOILS, HELIX_NOT_IN_ROCK, HAZARDOUS_GROUND], "Sum over the helices of area x bearing. In tension each helix counts with its own embedment; that a top helix fails shallow is in the cylinder. A helix whose soil is fill, organic or frozen is given nothing; rock and hazardous ground are refused.";
        CYLINDRICAL_SHEAR = "cylindrical_shear", version 1, [CYLINDER_FORM, CYLINDER_TAPERED], "Bearing of the lowest helix (compression) or the uppermost (tension) plus shear on the tapered cylinder between the helices in credit: s_u in clay and silt, s'_v K tan phi in sand, nothing in fill and organic soil.";
        BEARING_ZONE_METHOD = "bearing_zone", version 1, [BEARING_ZONE], "Bearing of each soil within the zone on the load side by its own law, averaged by thickness or the weakest; the stress is that at the helix. The zone is cut at the surface, and its part above `no_credit_above` counts nothing.";
        PUNCHING = "helix_punching_by_spread", version 1, [SPREAD_TWO_TO_ONE, WEAK_LAYER_NEAR], "Bearing of a helix held at what a weaker layer that begins within three diameters below it takes, the load spreading by one across for two down on every side. A layer is weaker where by its own law, at its top and under the diameter of the spread load, it bears less than the helix counts; of several the one that takes the least holds; fill, organic and frozen soil take nothing.";
        UNDRAINED_SKEMPTON = "skempton_1951", version 1, [SKEMPTON_1951], "N_c = 6 (1 + 0.2 z/D), at most 9, of a circular plate in clay.";
        UNDRAINED_NINE = "fixed_nine", version 1, [DEEP_CLAY_NINE], "N_c = 9 at any depth.";
        UNDRAINED_CAVITY = "cavity_expansion", version 1, [VESIC_CAVITY], "N_c from the expansion of a cavity by the reduced rigidity index.";
        DRAINED_VESIC = "vesic_1973", version 1, [PRANDTL_REISSNER, VESIC_1973, WIDTH_SHAPE], "N_q of Prandtl and Reissner without depth factor; N_gamma of Vesic where the width term is included.";
        DRAINED_MEYERHOF = "meyerhof_1963", version 1, [PRANDTL_REISSNER, MEYERHOF_1963, MEYERHOF_DEPTH, WIDTH_SHAPE], "N_q of Prandtl and Reissner with a depth factor held from one diameter on; N_gamma of Meyerhof where the width term is included.";
        DRAINED_HANSEN = "hansen_1970", version 1, [PRANDTL_REISSNER, HANSEN_1970, WIDTH_SHAPE], "N_q of Prandtl and Reissner without depth factor; N_gamma of Hansen where the width term is included.";
        DRAINED_TERZAGHI = "terzaghi_1943", version 1, [TERZAGHI_1943], "N_q of Terzaghi for a rough base.";
        DRAINED_OWN = "bearing_factor_sent", version 1, [CALLER], "N_q as sent, for all sand and gravel.";
        SHAPE_DEPTH = "helix_shape_depth_factors", version 1, [VESIC_SHAPE_DEPTH, HANSEN_SHAPE_DEPTH, MEYERHOF_SHAPE_DEPTH, TERZAGHI_SHAPE], "Shape and depth factors of a circular footing that belong to the family in force, on N_q and N_c of sand in compression; s_q of Meyerhof above 10 degrees; the width term keeps its 0.6.";
        LOCAL_SHEAR = "local_shear_two_thirds", version 1, [TERZAGHI_LOCAL_SHEAR], "Friction angle atan(2/3 tan phi) and two thirds of a cohesion in the bearing of loose sand; not in breakout factors and not on the cylinder.";
        STRESS_LIMIT = "usace_1991_critical_depth", version 1, [USACE_CRITICAL_DEPTH], "Effective stress in the N_q term held from 10 (loose) or 20 (dense) helix diameters on.";
        CLAY_BREAKOUT = "clay_breakout", version 1, [CLAY_UPLIFT, DEEP_CLAY_NINE, CLAY_CRITICAL_DAS, CLAY_CRITICAL_FOUR], "Uplift in clay: the lesser of 1.2 (H/D) s_u + s'_v and 9 s_u; continuous. H is counted from the lowest soil above without credit.";
        DAS_BREAKOUT = "das_breakout", version 1, [BREAKOUT_FORM, BREAKOUT_LISTS], "Uplift in sand: s'_v times the lesser of N_q and the breakout factor F_q, which is held from the critical depth ratio on; continuous. H is counted from the lowest soil above without credit.";
        NQ_TENSION = "nq_tension", version 1, [TANG_PHOON_2020, BREAKOUT_FORM, BREAKOUT_LISTS], "Uplift in sand: a share of s'_v N_q from the critical depth ratio on, where shallower the lesser of that share and the breakout factor; jumps there.";
        CYLINDER_KU = "mitsch_clemence_1985", version 1, [MITSCH_CLEMENCE_KU], "Lateral stress on the cylinder in sand in tension, K_u = 0.6 + m H/D up to the critical ratio; 0.6 below 25 degrees.";
        CYLINDER_AT_REST_METHOD = "cylinder_at_rest", version 1, [CYLINDER_AT_REST], "Lateral stress on the cylinder in sand at rest, (1 - sin phi) tan phi, held from 38.2 degrees on, where it is greatest (sin phi = 0.618).";
        ALPHA_ADHESION = "alpha_adhesion", version 1, [ALPHA_API, ALPHA_EXCLUSIONS], "Adhesion alpha s_u on a round shaft in clay and silt, below the ignored depth and from one diameter above the top helix, at mid-height of slices: each layer is cut into equal slices of at most 0.25 m.";
        DEPTH_CURVE = "helix_depth_curve", version 1, [BEARWELL_CHOICE], "Capacities with the pile moved as a whole to equal steps of depth of its lowest helix; the same equations as at one depth.";
        MINIMUM_DEPTH = "helix_minimum_depth", version 1, [BEARWELL_CHOICE], "Least depth of the lowest helix at which the load in compression, with and without punching, the load in tension and the rules of embedment are all met. The range is scanned at 200 equal steps and at every depth at which a helix, its zone or what it could punch into meets a change of the ground; each end of a range that passes is bisected and taken to the next whole millimetre inside it. Between two scanned depths that fail by different rules the search goes on by halves; a range that passes between two that fail by one and the same rule is not seen.";
        HELIX_SETS = "lightest_helix_set", version 1, [STEEL_DENSITY], "Each set is taken to its own least depth; mass = shaft from head to tip by its steel area and plates as flat rings, 7,850 kg/m3, unless masses are sent.";
        EXPECTED_TORQUE = "expected_torque", version 1, [HOYT_CLEMENCE_SCATTER], "Torque = ultimate resistance of the soil / torque factor, with a band of the scatter of measured over computed capacities. It is an expectation, not a target.";
        PILE_GROUP = "pile_group", version 1, [GROUP_SPACING_3D, GROUP_SPACING_4D, GROUP_READING, EN_1997_1_GROUP_SPACING], "Number of piles x efficiency x resistance of one, in compression with each helix held at what weaker soil below it takes, against the block. The efficiency is 1 from 3 diameters of the largest helix on; closer, none is made up. The block in plan is the convex outline of the centres moved out by half the largest helix, corners square: A = A_c + P_c D/2 + D2, P = P_c + 4 D.";
        GROUP_BLOCK_COMPRESSION = "group_block_compression", version 1, [BLOCK_COMPRESSION, BLOCK_BEARING_FACTOR, BLOCK_REACH, SPREAD_TWO_TO_ONE, BLOCK_SHEAR_HEIGHT, BLOCK_SAME_FACTOR], "Base at the lowest helix in credit plus shear on the sides, at any distance between piles. Base: the least over the layers to two breadths below of q (B + h)(L + h)/(B L), h down to the layer; q = s_u 5 (1 + 0.2 B/L)(1 + 0.2 z/B), z/B at most 2.5, with the spread B and L and z the top of the layer, in clay and silt, s'_v N_q without depth factor plus c' N_c in sand and gravel, 0 in fill, organic and frozen soil and in ground noted as hazardous; the look ends at rock. Sides: s_u, s'_m (1 - sin phi) tan phi held from 38.2 degrees on, 0 in the same. The basis gives the block the factor of the pile; EN 1997-1 has none here.";
        GROUP_BLOCK_UPLIFT = "group_block_uplift", version 1, [BLOCK_UPLIFT, BLOCK_LEANING, BLOCK_SAME_FACTOR, GROUP_READING], "Straight sides from the lowest helix in credit to final grade: effective weight A s'_v plus shear on the sides below the depth of credit, as in compression. Or sides 4 vertical to 1 horizontal without shear: V = A Z + P Z2/8 + Z3/12 and its effective weight. It counts where the piles stand closer than 3 diameters of the largest helix, by EN 1997-1 also where they stand within the root of that diameter times the depth of the lowest helix below the lowest soil without credit. Outside allowable stress the basis gives the block the factor of the pile; EN 1997-1 has none here.";
        GROUP_UPLIFT_IBC = "group_uplift_ibc", version 1, [IBC_1810_3_3_1_6], "Allowable uplift of a group: lesser of that of a pile times their number, and 2/3 of the effective weight plus 2/3 of the ultimate shear of the block.";
        GROUP_UPLIFT_NEW_YORK = "group_uplift_new_york", version 1, [NYC_1810_3_4], "Allowable uplift of a group: lesser of that of a pile times their number, and the ultimate of the block over 2.5, or 2 with load tests; at any distance between piles.";
        HEAD_MOVEMENT = "head_movement_hyperbola", version 1, [SHAFT_SHORTENING, ELASTIC_COLUMN, MOVEMENT_TO_MOBILISE, MOVEMENT_HYPERBOLA, STEEL_MODULUS, TEN_PERCENT_GROSS, AC358_10_PERCENT], "An estimate. Each helix carries q_u x / (1 - R_f + R_f x), x its movement over that at the ultimate, held from there on; the movement at the ultimate is 10 % of its diameter in sand and gravel and 5 % in clay and silt, by height of the soils of its zone that bear. q_u is its resistance times one share for all, so that together with adhesion they reach the governing ultimate. Adhesion, lumped at mid-height, is a straight line to 5 mm. The shaft changes length by the load left in it between head, adhesion and helices. The movement of the lowest helix is bisected, at most 200 times. Loads are told at a tenth of the largest helix, where criteria of load tests take the average one, gross and net of P L/(A E) with the whole load down to the lowest helix. R_f = 0.75 puts half the ultimate at a fifth of the movement at the ultimate.";
        ALLOWABLE_STRESS = "helix_allowable_stress", version 1, [IBC_1810_3_3_1_9, IBC_1810_3_3_1_5, NYC_1810_3_4], "Allowable capacity = ultimate / safety factor; in compression of the least ultimate considered; in tension by the general uplift clause unless another is chosen.";
        LIMIT_STATES = "helix_limit_states", version 1, [CANADA_PHI, CANADA_PHI_TENSION], "Factored resistance = resistance factor x ultimate.";
        EUROCODE_7 = "helix_eurocode_7", version 1, [EN_1997_1_2_4_7_3, EN_1997_1_7_6_2, EN_1997_1_MODEL, EN_1997_1_A3, EN_1997_1_A6, EN_1997_1_A7, EN_1997_1_A8, EN_1997_1_A9, EN_1997_1_A10], "Characteristic resistance from calculated or measured resistances by correlation factors, design resistance by the partial factor of the kind of pile the request names: in compression that of the base, or of the total with load tests; design effects of characteristic actions, a check for each combination. Recommended values of annex A.";
        AUSTRALIAN_STANDARD_2159 = "helix_as_2159", version 1, [AS_2159_LOWEST, AS_2159_ROWS, AS_2159_TESTING], "Design geotechnical strength = reduction factor x ultimate, the same factor in compression and in tension, by average risk rating, redundancy and load testing.";
        OWN_FACTORS = "helix_own_factors", version 1, [CALLER], "Capacity by the caller's own divisor or multiplier, of the level the caller states.";
        RELIABILITY_ESTIMATE = "helix_reliability", version 1, [RELIABILITY_LOGNORMAL, RELIABILITY_DEFAULTS, GIAMPA_2016, JMSE_2020_CLAY, TANG_PHOON_2020_RATIOS, FHWA_DRIVEN_PILES, HOYT_CLEMENCE_1989_STATISTICS], "Indicative: first-order index of a lognormal resistance against a lognormal load, and the probability that the load is the larger. Bias is measured over calculated; a source that prints the inverse is inverted.";
    }
}
