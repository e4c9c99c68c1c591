//! Codes of the design basis, beside their texts.

/// Warnings.
pub mod warnings {
    use crate::catalogue::codes;
    codes! { WarningDef:
        UPLIFT_CLAUSES_DISAGREE = "uplift_clauses_disagree", "The clause of helical piles and the general uplift clause give different safety factors in tension; the answer names the one in force.";
        FACTOR_RESTS_ON_TEST = "factor_rests_on_test", "The factor holds only with static load tests on this site that bear the analysis out; none is part of the request.";
        PILE_KIND_ASSIGNED = "pile_kind_assigned", "The code has no partial factors for helical piles; those of the kind of pile that the request names are used.";
        MEASURED_IN_PLACE_OF_CALCULATED = "measured_in_place_of_calculated", "The design resistance comes from load tests alone; it does not change with the soil, the pile or the depth of the request.";
        FIXED_RESISTANCES_OVER_DEPTH = "fixed_resistances_over_depth", "Resistances sent from other profiles or load tests hold for one depth; the capacities over depth keep them as sent.";
        FORMULA_FROM_MEMORY = "formula_from_memory", "An equation was used whose source is only remembered, not seen; confirm it.";
        GROUP_FACTOR_ON_ONE_PILE = "group_factor_on_one_pile", "The safety factor of a group analysed as one is put on a single pile; it holds only where the group has been analysed.";
    }
}

/// Faults.
pub mod refusals {
    use crate::catalogue::codes;
    codes! { RefusalDef:
        TENSION_FACTOR_TWICE = "tension_factor_twice", "A safety factor in tension and a clause for it are sent together; send one of them.";
        ACTIONS_NEEDED = "actions_needed", "The two combinations of design approach 1 have different loads; send characteristic actions in place of a factored load.";
        ACTIONS_AND_DEMAND = "actions_and_demand", "Characteristic actions and a demand are sent together; send one of them.";
        COMBINATION_NOT_IN_APPROACH = "combination_not_in_approach", "Own factors are sent for a combination that the design approach does not have.";
        RESISTANCES_OF_ONE_DEPTH = "resistances_of_one_depth", "Resistances sent from other profiles or load tests hold for one depth; a search over depth cannot rest on them.";
        NO_GROUP_UPLIFT_FACTOR = "no_group_uplift_factor", "The clause in force gives no safety factor for the uplift of a group.";
    }
}
