//! Codes of `ground-heave`, beside their texts.

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        FROST_HEAVE_INCOMPLETE = "frost_heave_incomplete", "Only one of the two parts of frost heave was sent; the other is not counted.";
        SWELL_MOISTURE_UNKNOWN = "swell_moisture_unknown", "Swell hangs on the moisture of the ground at the time of building, which is not known here.";
        SWELL_LOAD_LEFT_OUT = "swell_load_left_out", "The method leaves out the load on the ground.";
        SWELL_RISE_CONDITIONS = "swell_rise_conditions", "A potential vertical rise holds for the moisture, the load and the depth it was made for only.";
        SWELL_LAYER_STAYS = "swell_layer_stays", "A layer does not swell: the stress on it is at least its swell pressure.";
        SWELL_BY_INDEX_ONLY = "swell_by_index_only", "Swell is known as a range from the plasticity index alone, for screening; what hangs on it is not accepted.";
        FROST_GROUPS_DISAGREE = "frost_groups_disagree", "Two published schemes put the soil into different groups of frost susceptibility.";
        EXPANSIVE_WITHOUT_SWELL = "expansive_without_swell", "The soil counts as expansive and no swell was predicted.";
        SUSCEPTIBLE_WITHOUT_SEGREGATION = "susceptible_without_segregation", "The soil is frost-susceptible and no heave by ice lenses was predicted; a class gives none.";
    }
}

/// Faults and refusals.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        HEAVE_NOT_ASKED = "heave_not_asked", "Nothing is asked: send at least one of `frost`, `swell` and `expansive_soil`.";
        FROST_HEAVE_DATA_MISSING = "frost_heave_data_missing", "Heave by freezing needs `in_situ`, `segregation` or both; it is never assumed.";
        SEGREGATION_POTENTIAL_MISSING = "segregation_potential_missing", "Heave by ice lenses needs the segregation potential of the soil; it is never assumed, and no class gives it.";
        SEGREGATION_WITHOUT_FROST_DEPTH = "segregation_without_frost_depth", "The relation divides by the frost depth; less than 0.05 m is refused.";
        SEGREGATION_BEYOND_FROST_DEPTH = "segregation_beyond_frost_depth", "The lenses of ice come out thicker than all of the ground that freezes: segregation potential, freezing index and frost depth do not belong together.";
        SWELL_DATA_MISSING = "swell_data_missing", "A layer lacks what its swell needs; it is never assumed.";
        SWELL_INDEX_OUTSIDE = "swell_index_outside", "The relation is known for plasticity indices of 10 to 70 % only.";
        SUSCEPTIBILITY_DATA_MISSING = "susceptibility_data_missing", "The group of this soil needs a property that was not sent.";
        FINES_CONTRADICT = "fines_contradict", "The share finer than 0.02 mm is above the share finer than 0.075 mm; no soil has that.";
        EXPANSIVE_SOIL_DATA_MISSING = "expansive_soil_data_missing", "Not one property of the soil was sent.";
    }
}

/// Methods.
pub mod methods {
    use crate::catalogue::methods;
    methods! {
        FROST_HEAVE_IN_SITU = "frost_heave_in_situ", version 1, [ICE_EXPANSION, UFC_FREEZING_VOLUME],
            "Heave of the water in the pores: 0.0906 n S X.";
        FROST_HEAVE_SEGREGATION = "frost_heave_segregation", version 1, [KONRAD_MORGENSTERN_1981, SEGREGATION_INTEGRAL, SEGREGATION_UNDER_LOAD, ICE_EXPANSION],
            "Heave by ice lenses over one winter: 1.09 SP 2 F / X, SP the caller's and reduced under load where asked; the front goes down with the square root of time.";
        FROST_SUSCEPTIBILITY = "frost_susceptibility", version 1, [UFC_FROST_GROUPS, NHI_FROST_GROUPS, USACE_3_PERCENT, AASHTO_HEAVE_RATE, SEGREGATION_CLASSES],
            "Groups by the share finer than 0.02 mm, which counts, and by the share finer than 0.075 mm beside it; classes of a freezing test and of the segregation potential. A value on a boundary goes to the more susceptible group, except where the table prints `above`. No class gives a heave.";
        SWELL_OEDOMETER = "swell_oedometer", version 1, [NELSON_OEDOMETER, UFC_SWELL_UNCERTAIN],
            "Sum over the layers of z C_H log10(s_cv/s_vi), nil where the stress is at least the swell pressure; C_s/(1 + e_0) may stand for C_H.";
        SWELL_VAN_DER_MERWE = "swell_van_der_merwe", version 1, [VAN_DER_MERWE_1964, UFC_SWELL_UNCERTAIN],
            "Sum over the layers of PE times the exact integral of 10^(-D/20 ft) over depth.";
        SWELL_INDEX_SCREENING = "swell_index_screening", version 1, [SEED_1962, SEED_SCATTER, UFC_SWELL_UNCERTAIN],
            "Strain by the plasticity index over the thickness, as a range from nil to a third above the relation; screening only.";
        SWELL_SENT = "swell_sent", version 1, [CALLER, PVR_CHART],
            "Swell or potential vertical rise as the caller sends it.";
        HEAVE_THAT_COUNTS = "heave_that_counts", version 1, [HEAVE_NOT_ADDED],
            "The larger of frost heave and swell, the upper end of a range.";
        EXPANSIVE_SOIL_RULE = "expansive_soil_rule", version 1, [IBC_EXPANSIVE_SOIL],
            "Expansion index above 20 where known, else plasticity index and both shares of fines, all of them.";
    }
}
