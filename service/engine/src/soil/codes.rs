//! Codes of the soil profile, beside their texts: faults, warnings and the methods that
//! turn tests into strengths.

/// Faults of a profile.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        LAYER_INVERTED = "layer_inverted", "A layer's bottom is not below its top.";
        LAYER_GAP = "layer_gap", "There is a gap between two layers, or the first does not begin at depth 0.";
        LAYER_OVERLAP = "layer_overlap", "Two layers overlap.";
        LAYER_SATURATED_LIGHTER = "layer_saturated_lighter", "The saturated unit weight is below the unit weight above water.";
        LAYER_SATURATED_TOO_HEAVY = "layer_saturated_too_heavy", "The saturated unit weight exceeds the unit weight above water by more than that of water; no soil holds that much.";
        LAYER_LIGHTER_THAN_WATER = "layer_lighter_than_water", "Where there is water the layer would be lighter than water.";
        UNIT_WEIGHT_NOT_ONE = "unit_weight_not_one", "A layer takes exactly one of `unit_weight` and `dry_unit_weight`.";
        DRY_WEIGHT_UNPAIRED = "dry_weight_unpaired", "`dry_unit_weight` and `water_content_ratio` go together, and `specific_gravity_ratio` goes with them.";
        SATURATED_WEIGHT_TWICE = "saturated_weight_twice", "`saturated_unit_weight` and `specific_gravity_ratio` are sent together; send one of them.";
        SATURATED_WEIGHT_UNKNOWN = "saturated_weight_unknown", "There is water in a layer given by its dry unit weight; send `saturated_unit_weight` or `specific_gravity_ratio`.";
        DRY_WEIGHT_IMPOSSIBLE = "dry_weight_impossible", "The dry unit weight leaves no pores between grains of this specific gravity, or less than the water content fills.";
        WATER_GIVEN_TWICE = "water_given_twice", "`water_depth` and `pore_pressures` are sent together; send one of them.";
        PORE_PRESSURES_NOT_DOWNWARD = "pore_pressures_not_downward", "Each depth of `pore_pressures` must be below the one before it.";
        PORE_PRESSURE_STARTS_ABOVE_ZERO = "pore_pressure_starts_above_zero", "The first of `pore_pressures` must be zero, as there is no pressure above it.";
        EFFECTIVE_STRESS_NOT_POSITIVE = "effective_stress_not_positive", "The pore pressure carries all of the weight above: the ground would lift or boil, and nothing bears on it.";
        CUT_BELOW_PROFILE = "cut_below_profile", "The cut takes all of the soil that is given away.";
        CUT_BELOW_WATER = "cut_below_water", "The cut goes below the water; send the water as it will be after the cut, with the profile from final grade.";
        STRENGTH_NOT_ONE = "strength_not_one", "A soil takes exactly one way to its strength; none or several are sent.";
        ENGINEERED_FILL_NOT_ONE = "engineered_fill_not_one", "Engineered fill takes exactly one of `clay`, `sand` and `gravel`.";
        CORRELATION_NOT_FOR_GRAVEL = "correlation_not_for_gravel", "The relations of penetration tests are for sand; in gravel stones raise the readings. Send a friction angle or a relative density.";
        TEST_OUTSIDE_LAYER = "test_outside_layer", "The depth of a test lies outside its layer, or at the surface where there is no stress.";
        SPT_FORM_UNFIT = "spt_form_unfit", "The relation takes N_60, which cannot be had from (N_1)_60; send the count as `raw` or `n60`, or choose another relation.";
        SPT_MEMBER_UNUSED = "spt_member_unused", "A correction that this form of blow count already holds or this relation does not take; leave it out.";
        SPT_SILTY_ABOVE_WATER = "spt_silty_above_water", "The correction for silty sand below water is asked for a test where there is no water.";
        PLASTICITY_INDEX_NEEDED = "plasticity_index_needed", "Undrained strength from a blow count needs the plasticity index; without it send `undrained_strength`.";
        PLASTICITY_INDEX_OUTSIDE = "plasticity_index_outside", "The relation is known for plasticity indices of 15 to 60 % only; send `undrained_strength`.";
        CONE_RESISTANCE_NOT_ONE = "cone_resistance_not_one", "Send `total_resistance`, or `cone_resistance` with `pore_pressure` and `area_ratio`.";
        CONE_BELOW_OVERBURDEN = "cone_below_overburden", "The total resistance of the cone is not above the total overburden stress at its depth.";
        DERIVED_STRENGTH_OUTSIDE = "derived_strength_outside", "The strength found lies outside what is accepted when it is sent; check the test, or send the strength.";
    }
}

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        STRENGTH_FROM_CORRELATION = "strength_from_correlation", "A strength was found by correlation; its scatter is large. Confirm it by tests on the soil or by a load test.";
        SPT_ENERGY_UNKNOWN = "spt_energy_unknown", "A raw blow count came without its energy ratio; 60 % was taken.";
        BLOW_COUNT_HELD = "blow_count_held", "A blow count above the range of its relation was held at the end of it.";
        FRICTION_ANGLE_HELD = "friction_angle_held", "A friction angle found above 45 degrees was held at 45.";
        BEHAVIOUR_INDEX_DIFFERS = "behaviour_index_differs", "The soil behaviour type index of the cone contradicts the kind of soil sent.";
        ENGINEERED_FILL_ON_RECORD = "engineered_fill_on_record", "Fill is counted as engineered on the record named; the record was not judged.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        UNIT_WEIGHT_FROM_PHASES = "unit_weight_from_phases", version 1, [DERIVED], "Unit weights from the dry unit weight: gamma = gamma_d (1 + w) and, saturated, gamma_d (1 - 1/G_s) + gamma_w.";
        GRADE_CHANGE = "grade_change", version 1, [DERIVED], "Layers and water given from existing grade, taken to final grade: a cut takes soil and its weight away, a fill adds weight and carries nothing. Strengths from tests are found under the stresses of existing grade, at which they were made, and kept.";
        PORE_PRESSURE_PROFILE = "pore_pressure_profile", version 1, [DERIVED], "Pore pressure as straight lines between the points sent, zero above the first, as in water at rest below the last; soil is saturated wherever the pressure is above zero.";
        SPT_N60 = "spt_n60_correction", version 1, [SPT_ENERGY, SPT_ENERGY_ASSUMED], "N_60 = N (energy ratio/60 %) x borehole x rod x sampler correction.";
        SPT_OVERBURDEN = "spt_overburden_correction", version 1, [LIAO_WHITMAN_1986, OVERBURDEN_CAP_PRACTICE, REFERENCE_PRESSURE], "(N_1)_60 = C_N N_60, C_N = sqrt(p_a/s'_v) at the depth of the test, at most 1.7 unless another limit is sent.";
        SPT_SILTY = "spt_silty_sand_below_water", version 1, [SPT_SILTY_SAND], "N_60 above 15 in saturated very fine or silty sand counts as 15 + 0.5 (N_60 - 15).";
        FRICTION_SPT_PECK = "friction_spt_peck_hanson_thornburn_wolff", version 1, [PECK_HANSON_THORNBURN, COARSE_SOIL_CORRELATIONS, SPT_RANGE, FRICTION_ANGLE_45, CORRELATION_UNCERTAINTY], "phi' = 27.1 + 0.3 N - 0.00054 N^2 degrees with (N_1)_60 up to 60.";
        FRICTION_SPT_KULHAWY = "friction_spt_kulhawy_mayne_1990", version 1, [KULHAWY_MAYNE_SPT, COARSE_SOIL_CORRELATIONS, SPT_RANGE, FRICTION_ANGLE_45, REFERENCE_PRESSURE, CORRELATION_UNCERTAINTY], "phi' = atan{[N_60/(12.2 + 20.3 s'_v/p_a)]^0.34}, N_60 up to 60, at most 45 degrees.";
        FRICTION_SPT_HATANAKA = "friction_spt_hatanaka_uchida_1996", version 1, [HATANAKA_UCHIDA_1996, COARSE_SOIL_CORRELATIONS, SPT_RANGE, FRICTION_ANGLE_45, CORRELATION_UNCERTAINTY], "phi' = sqrt(15.4 N) + 20 degrees with (N_1)_60 up to 60, at most 45 degrees.";
        FRICTION_SPT_SHIOI_ROADS = "friction_spt_shioi_fukui_1982_roads", version 1, [SHIOI_FUKUI_1982, COARSE_SOIL_CORRELATIONS, SPT_RANGE, FRICTION_ANGLE_45, CORRELATION_UNCERTAINTY], "phi' = sqrt(15 N_60) + 15 degrees, N_60 up to 60.";
        FRICTION_SPT_SHIOI_BUILDINGS = "friction_spt_shioi_fukui_1982_buildings", version 1, [SHIOI_FUKUI_1982, COARSE_SOIL_CORRELATIONS, SPT_RANGE, FRICTION_ANGLE_45, CORRELATION_UNCERTAINTY], "phi' = 0.3 N_60 + 27 degrees, N_60 up to 60.";
        UNDRAINED_SPT = "undrained_spt_salgado_2008", version 1, [SALGADO_2008, SPT_RANGE, REFERENCE_PRESSURE, CORRELATION_UNCERTAINTY], "s_u = alpha' p_a N_60, alpha' by plasticity index from 15 to 60 %, N_60 up to 100.";
        UNDRAINED_CPT = "undrained_cpt_cone_factor", version 1, [CONE_FACTOR_UFC, CONE_TOTAL_RESISTANCE, CORRELATION_UNCERTAINTY], "s_u = (q_t - s_v)/N_kt, N_kt 15 unless another is sent.";
        FRICTION_CPT_KULHAWY = "friction_cpt_kulhawy_mayne_1990", version 1, [KULHAWY_MAYNE_CPT, CONE_TOTAL_RESISTANCE, COARSE_SOIL_CORRELATIONS, FRICTION_ANGLE_45, REFERENCE_PRESSURE, CORRELATION_UNCERTAINTY], "phi' = 17.6 + 11 log10[(q_t/p_a)/sqrt(s'_v/p_a)] degrees, at most 45.";
        FRICTION_CPT_ROBERTSON = "friction_cpt_robertson_campanella_1983", version 1, [ROBERTSON_CAMPANELLA_1983, CONE_TOTAL_RESISTANCE, COARSE_SOIL_CORRELATIONS, FRICTION_ANGLE_45, CORRELATION_UNCERTAINTY], "tan phi' = [log10(q_t/s'_v) + 0.29]/2.68, at most 45 degrees.";
        BEHAVIOUR_INDEX = "soil_behaviour_index", version 1, [ROBERTSON_WRIDE_1998, REFERENCE_PRESSURE], "I_c of the normalised resistance and friction of a cone, with the exponent that goes with it; compared with the kind of soil sent, below 2.5 for sand and above 2.7 for clay and silt.";
        UNDRAINED_SHANSEP = "undrained_shansep", version 1, [LADD_FOOTT_1974, CORRELATION_UNCERTAINTY], "s_u = s'_v S OCR^m at one depth for the layer, S 0.22 and m 0.8 unless others are sent.";
        UNDRAINED_PLASTICITY = "undrained_skempton_1957", version 1, [SKEMPTON_1957, LADD_FOOTT_1974, CORRELATION_UNCERTAINTY], "s_u = s'_v (0.11 + 0.37 PI) OCR^m at one depth for the layer, m 0.8 unless another is sent.";
        FRICTION_DENSITY = "friction_bolton_1986", version 1, [BOLTON_1986, BOLTON_1987, BEARING_MEAN_STRESS, FRICTION_ANGLE_45, CORRELATION_UNCERTAINTY], "phi' = phi_cv + 3 I_R degrees, I_R = I_D (10 - ln p') - 1 between 0 and 4, at most 45 degrees; p' the mean stress at failure, s'_v sqrt(N_q) and at least 150 kPa unless it is sent.";
    }
}
